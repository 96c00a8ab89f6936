package main

import (
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule/page"
)

var sheetCommand = command{
	name: "sheet", args: "FILE",
	what: "a page to print and hand over (HTML)",
	help: `    swardbook sheet lawn.toml -o lawn.html
    swardbook sheet lawn.toml --for mara -o mara.html

Writes the program as one HTML file, for phone, desk and paper. Printed it is
a page to pin up, for one area or two: what is due or next, with how and what to
mind; all dates with amount, who and a box; what to buy, whom to ask; the year,
drawn. On the screen whatever else the program says stands behind headings that
open: each job, what the soil report says, the law, the workings and their
sources. It needs no network and no script.

        --today DATE    tell what is next and what is due as of DATE
                        (default: today)
        --area ID       one area
        --for PERSON    jobs of one person
        --full          open all headings, and print what is behind them
        --strict        exit status 4 if anything was left out
    -o, --output FILE   write to FILE
        --no-color      no colour in what is said
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		out := flag.NewOutput(fs, "html")
		today := flag.Today(fs)
		area := fs.String("area", "", "")
		person := fs.String("for", "", "")
		full := fs.Bool("full", false, "")
		strict := fs.Bool("strict", false, "")
		return func(s *session, args []string) error {
			file, err := one(args, "FILE")
			if err != nil {
				return err
			}
			day, err := today(s.now)
			if err != nil {
				return err
			}
			l, p, err := s.plan(file, day)
			if err != nil {
				return err
			}
			if err := flag.KnownArea(p.Site, *area); err != nil {
				return err
			}
			if err := flag.KnownPerson(p.Site, *person); err != nil {
				return err
			}
			data, err := page.Sheet(p.Around(day), page.Options{Today: day, Area: *area, Person: *person, Link: p.Site.Calendar.Link, Full: *full})
			if err != nil {
				return err
			}
			if err := s.write(out.File, data, l.inputs()...); err != nil {
				return err
			}
			return strictly(*strict, p.Filter(*area, *person, nil))
		}
	},
}
