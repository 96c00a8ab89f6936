package main

import (
	"slices"

	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/text"
)

var ledgerCommand = command{
	name: "ledger", args: "FILE",
	what: "nutrients down and planned against limits",
	help: `    swardbook ledger lawn.toml

Lists what is down, from the record book, what is taken as done since its day is
past, and what is planned, area by area and in order of time, and holds it
against the limits: did we put down too much? Shown are the 12 months around
today, or one season.

        --today DATE    as of DATE (default: today)
        --season YEAR   the season that begins in YEAR
        --area ID       one area
        --format FORM   text, json, csv or markdown (the lines)
    -o, --output FILE   write to FILE
        --no-color      no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		out := flag.NewOutput(fs, "text", "json", "csv", "markdown")
		today := flag.Today(fs)
		area := fs.String("area", "", "")
		season := fs.Int("season", 0, "")
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
			in, p, err := s.plan(file, day)
			if err != nil {
				return err
			}
			if err := flag.KnownArea(p.Site, *area); err != nil {
				return err
			}
			l := p.LedgerAround(day)
			if *season != 0 {
				l = p.LedgerOf(*season, day)
			}
			if *area != "" {
				l.Areas = slices.DeleteFunc(l.Areas, func(a schedule.AreaLedger) bool { return a.Area != *area })
			}
			return s.tabled(out, ledgerShown{1, p.Title, l},
				func() text.Table { return text.LedgerLines(l) },
				func(st text.Style) string { return text.Ledger(p.Title, l, p.Site.Measure(), st) }, in.inputs()...)
		}
	},
}

type ledgerShown struct {
	Format int    `json:"format"`
	Title  string `json:"title"`
	schedule.Ledger
}
