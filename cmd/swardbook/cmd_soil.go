package main

import (
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/text"
)

var soilCommand = command{
	name: "soil", args: "FILE",
	what: "what the soil report means, and what it asks for",
	help: `    swardbook soil lawn.toml

Says what each reading means, ranked by what limits the grass most; what each
area needs in all; and, as far as a report can tell, why it is pale there.

        --why           with every step of the working, and its source
        --today DATE    as of DATE (default: today)
        --area ID       one area
        --format FORM   text, json, csv or markdown (the findings)
    -o, --output FILE   write to FILE
        --no-color      no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		out := flag.NewOutput(fs, "text", "json", "csv", "markdown")
		today := flag.Today(fs)
		working := fs.Bool("why", false, "")
		area := fs.String("area", "", "")
		return func(s *session, args []string) error {
			file, err := one(args, "FILE")
			if err != nil {
				return err
			}
			if err := out.Check(); err != nil {
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
			if p, err = (&flag.Choice{Area: *area}).Apply(p.AsOf(day)); err != nil {
				return err
			}
			return s.tabled(out, soilShown{1, p.Title, p.Areas},
				func() text.Table { return text.Findings(p) },
				func(st text.Style) string { return text.Soil(p, *working, st) }, l.inputs()...)
		}
	},
}

type soilShown struct {
	Format int                  `json:"format"`
	Title  string               `json:"title"`
	Areas  []schedule.AreaShown `json:"areas"`
}
