package main

import (
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/text"
)

var materialsCommand = command{
	name: "materials", args: "FILE",
	what: "what to use or buy, how many packs, by when, the cost",
	help: `    swardbook materials lawn.toml

Lists each material, for the season that holds today and the start of the next:
what the program still takes of it, what is on hand, how many
whole packs to buy by which day, what they cost, and what is left over; with a
budget in the site file also what to buy first.

        --today DATE    as of DATE (default: today)
        --format FORM   text, json, csv or markdown
    -o, --output FILE   write to FILE
        --no-color      no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		out := flag.NewOutput(fs, "text", "json", "csv", "markdown")
		today := flag.Today(fs)
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
			p = p.AsOf(day).Around(day)
			all := p.Supplies()
			shown := suppliesShown{Format: 1, Title: p.Title, Materials: all}
			if spend, ok := p.Spending(all); ok {
				shown.Spending = &spend
			}
			return s.tabled(out, shown,
				func() text.Table { return text.Supplies(all) },
				func(st text.Style) string { return text.Materials(p.Title, all, shown.Spending, p.Site.Measure(), st) }, l.inputs()...)
		}
	},
}

type suppliesShown struct {
	Format    int                `json:"format"`
	Title     string             `json:"title"`
	Materials []schedule.Supply  `json:"materials"`
	Spending  *schedule.Spending `json:"spending,omitzero"`
}
