package main

import (
	"slices"

	"github.com/spf13/pflag"

	"swardbook/schedule"
	"swardbook/schedule/text"
)

var ledgerCommand = command{
	name: "ledger", args: "FILE",
	what: "nutrients down and planned against limits",
	help: `    swardbook ledger lawn.toml

Lists what is down, from the record book, and what is planned, area by area and
in order of time, and holds it against the limits: did we put down too much?

        --area ID       one area
        --format FORM   text, json, csv or markdown (the lines)
    -o, --output FILE   write to FILE
        --no-color      no colour
`,
	setup: func(fs *pflag.FlagSet) func(*session, []string) error {
		out := outputFlags(fs, "text", "json", "csv", "markdown")
		area := fs.String("area", "", "")
		return func(s *session, args []string) error {
			file, err := one(args, "FILE")
			if err != nil {
				return err
			}
			if err := out.check(); err != nil {
				return err
			}
			in, p, err := s.plan(file)
			if err != nil {
				return err
			}
			if err := knownArea(p.Site, *area); err != nil {
				return err
			}
			l := p.Ledger()
			if *area != "" {
				l.Areas = slices.DeleteFunc(l.Areas, func(a schedule.AreaLedger) bool { return a.Area != *area })
			}
			return s.tabled(out, ledgerShown{1, p.Title, l.Areas},
				func() text.Table { return text.LedgerLines(l) },
				func(st text.Style) string { return text.Ledger(p.Title, l, p.Site.Measure(), st) }, in.inputs()...)
		}
	},
}

type ledgerShown struct {
	Format int                   `json:"format"`
	Title  string                `json:"title"`
	Areas  []schedule.AreaLedger `json:"areas"`
}
