package main

import (
	"encoding/json"
	"slices"

	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/text"
)

var programCommand = command{
	name: "program", args: "FILE",
	what: "the dated program",
	help: `    swardbook program lawn.toml
    swardbook program lawn.toml --next 2

Writes the program of the season that holds today and the start of the next;
JSON and CSV hold all of it. What is due and comes next, all jobs a line each,
what limits each area and what it needs, what was left out and why, what was
assumed.

        --next N        only the next N jobs, how to do them, what to take
                        care of
        --full          the place's year, each job's window and the law as well
        --today DATE    show jobs as of DATE (default: today)
        --area ID       jobs in one area
        --for PERSON    jobs of one person
        --kind KIND     jobs of a kind; several with commas
        --format FORM   text, json, csv or markdown
    -o, --output FILE   write to FILE
        --strict        exit status 4 if anything was left out
        --no-color      no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		out := flag.NewOutput(fs, "text", "json", "csv", "markdown")
		pick := flag.NewChoice(fs)
		today := flag.Today(fs)
		next := fs.Int("next", 0, "")
		full := fs.Bool("full", false, "")
		strict := fs.Bool("strict", false, "")
		return func(s *session, args []string) error {
			file, err := one(args, "FILE")
			if err != nil {
				return err
			}
			if err := out.Check(); err != nil {
				return err
			}
			if *next < 0 || fs.Changed("next") && *next == 0 {
				return misuse("--next: give how many jobs, 1 or more")
			}
			if *full && *next > 0 {
				return misuse("--full and --next ask for different things: give one of them")
			}
			day, err := today(s.now)
			if err != nil {
				return err
			}
			l, p, err := s.plan(file, day)
			if err != nil {
				return err
			}
			if p, err = pick.Apply(p.Settled(day)); err != nil {
				return err
			}
			data, err := s.programAs(p, out, pick.Person, *next, *full, day)
			if err != nil {
				return err
			}
			if err := s.write(out.File, data, l.inputs()...); err != nil {
				return err
			}
			return strictly(*strict, p)
		}
	},
}

// programAs writes a program, or a person's part of it, in one of its forms.
func (s *session) programAs(p *schedule.Program, out *flag.Output, person string, next int, full bool, today schedule.Date) ([]byte, error) {
	switch out.Format {
	case "json":
		line, err := schedule.EncodeJSON(p.AsOf(today))
		if err != nil {
			return nil, err
		}
		return asJSON(json.RawMessage(line))
	case "csv":
		return []byte(text.Entries(p, today).CSV()), nil
	case "markdown":
		return []byte("# " + text.Escape(p.Title) + "\n\n" + text.Short(p.AsOf(today).Around(today), today).Markdown()), nil
	}
	style := s.style(out.File, today)
	p = p.AsOf(today).Around(today)
	switch {
	case person != "" && !slices.ContainsFunc(p.Entries, func(e schedule.Entry) bool { return !e.Kind.Notice() }):
		return []byte(text.Nothing(p, p.Site.PersonName(person), style)), nil
	case full:
		return []byte(text.Full(p, style)), nil
	case next > 0:
		return []byte(text.Next(p, next, style)), nil
	}
	return []byte(text.Program(p, style)), nil
}
