package main

import (
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/text"
)

var whyCommand = command{
	name: "why", args: "FILE JOB",
	what: "the working of one job: figures, sources, window, day",
	help: `    swardbook why lawn.toml east/lime/1

Says how one job comes about, step by step from the report to the bag, each step
with its source; then its window, its best day, and what bound its day; then the
sources in full. A job that was left out is explained the same way.

JOB is the job's id, or as much of it as fits one job only: lime/1, east/lime.

        --today DATE    show its state as of DATE (default: today)
        --format FORM   text or json
    -o, --output FILE   write to FILE
        --no-color      no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		out := flag.NewOutput(fs, "text", "json")
		today := flag.Today(fs)
		return func(s *session, args []string) error {
			if err := exactly(args, "FILE JOB"); err != nil {
				return err
			}
			if err := out.Check(); err != nil {
				return err
			}
			day, err := today(s.now)
			if err != nil {
				return err
			}
			l, p, err := s.plan(args[0], day)
			if err != nil {
				return err
			}
			p = p.Settled(day)
			e, left, err := p.Find(args[1])
			if err != nil {
				return misuse("%s", err)
			}
			if e != nil {
				now, _, _ := p.AsOf(day).Find(e.ID)
				e.GoodDay = now.GoodDay
			}
			var data []byte
			switch {
			case out.Format == "json" && e != nil:
				data, err = asJSON(whyShown{e, p.Grounds(e)})
			case out.Format == "json":
				data, err = asJSON(left)
			case e != nil:
				data = []byte(text.Why(p, e, s.style(out.File, day)))
			default:
				data = []byte(text.LeftOut(left, s.style(out.File, day)))
			}
			if err != nil {
				return err
			}
			return s.write(out.File, data, l.inputs()...)
		}
	},
}

// whyShown is an entry of the program with where the rest of it comes from.
type whyShown struct {
	*schedule.Entry
	Grounds []schedule.Ground `json:"grounds"`
}
