package main

import (
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/text"
)

var rosterCommand = command{
	name: "roster", args: "FILE",
	what: "who does what when; who has no job; which jobs have nobody",
	help: `    swardbook roster lawn.toml

Lists the jobs of the season and of the start of the next, person by person,
then who has nothing to do and what is nobody's. [crew.who] assigns jobs by the
job's name ("west/lime/1"), by area and kind ("west/lime"), by area, by kind;
the most exact wins. [crew.absent] keeps a person's jobs off their days away.
One person's own calendar is: swardbook calendar lawn.toml --for PERSON.

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
			r := p.Around(day).Roster(day)
			return s.tabled(out, rosterShown{1, p.Title, r},
				func() text.Table { return text.RosterLines(r) },
				func(st text.Style) string { return text.Roster(p.Title, r, st) }, l.inputs()...)
		}
	},
}

type rosterShown struct {
	Format int    `json:"format"`
	Title  string `json:"title"`
	schedule.Roster
}
