package main

import (
	"strings"

	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/page"
	"swardbook/schedule/text"
)

var compareCommand = command{
	name: "compare", args: "FILE FILE | FILE --vary KEY=VALUES",
	what: "what differs between programs",
	help: `    swardbook compare last-year.toml lawn.toml
    swardbook compare lawn.toml --vary hardiness=5b,6a,6b
    swardbook compare lawn.toml --vary area.east.soil.ph=5.0..6.5/0.5
    swardbook compare lawn.toml --vary area.east.seeded=2026-08-20..2026-09-20/10

Lays programs beside the first and lists what moved, grew, shrank, appeared or
vanished. --vary makes a program for each value of one key of the site file
and compares it with the file as it stands; where a value makes no difference,
it says which other key decides. KEY is the key's whole path, or its last part
where only one key ends so. VALUES are parted by commas, or run from one to
another by a step; for dates the step is in days.

        --vary KEY=VALUES   the key and its values
        --today DATE        as of DATE (default: today)
        --format FORM       text, json, csv, markdown, or html: a page with the
                            programs under each other on one axis of time
    -o, --output FILE       write to FILE
        --exit-code         exit status 4 if the programs differ
        --no-color          no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		out := flag.NewOutput(fs, "text", "json", "csv", "markdown", "html")
		today := flag.Today(fs)
		vary := fs.String("vary", "", "")
		exitCode := fs.Bool("exit-code", false, "")
		return func(s *session, args []string) error {
			if err := out.Check(); err != nil {
				return err
			}
			day, err := today(s.now)
			if err != nil {
				return err
			}
			all, inputs, err := s.variants(args, *vary, day)
			if err != nil {
				return err
			}
			key, _, _ := strings.Cut(*vary, "=")
			data, err := s.compared(all, out, key)
			if err != nil {
				return err
			}
			if err := s.write(out.File, data, inputs...); err != nil {
				return err
			}
			for _, v := range all[1:] {
				if *exitCode && len(v.Changes) > 0 {
					return exit{code: exitDiffers}
				}
			}
			return nil
		}
	},
}

// variants makes the programs that are to be compared, the first one first.
func (s *session) variants(args []string, vary string, today schedule.Date) (all []text.Variant, inputs []string, err error) {
	if vary != "" {
		file, err := one(args, "FILE")
		if err != nil {
			return nil, nil, err
		}
		return s.varied(file, vary, today)
	}
	if len(args) == 1 {
		return nil, nil, misuse("a second FILE is missing, or --vary KEY=VALUES")
	}
	if err := exactly(args, "FILE FILE"); err != nil {
		return nil, nil, err
	}
	for _, file := range args {
		l, p, err := s.plan(file, today)
		if err != nil {
			return nil, nil, err
		}
		inputs = append(inputs, l.inputs()...)
		all = append(all, text.Variant{Label: file, Program: p})
	}
	return against(all), inputs, nil
}

// against compares every program with the first.
func against(all []text.Variant) []text.Variant {
	for i := range all[1:] {
		v := &all[i+1]
		v.Changes = schedule.Compare(all[0].Program, v.Program)
	}
	return all
}

type comparedShown struct {
	Format   int            `json:"format"`
	First    string         `json:"first"`
	Programs []changesShown `json:"programs"`
}

type changesShown struct {
	Label   string            `json:"label"`
	Note    string            `json:"note,omitzero"`
	Changes []schedule.Change `json:"changes"`
}

func (s *session) compared(all []text.Variant, out *flag.Output, key string) ([]byte, error) {
	switch out.Format {
	case "json":
		shown := comparedShown{Format: 1, First: all[0].Label}
		for _, v := range all[1:] {
			c := changesShown{v.Label, v.Note, v.Changes}
			if c.Changes == nil {
				c.Changes = []schedule.Change{}
			}
			shown.Programs = append(shown.Programs, c)
		}
		return asJSON(shown)
	case "html":
		var laid []page.Variant
		for i, v := range all {
			if i > 0 && key != "" {
				v.Label = key + " = " + v.Label
			}
			laid = append(laid, page.Variant{Label: v.Label, Program: v.Program, Note: v.Note})
		}
		return page.Comparison(laid, page.Options{})
	case "csv":
		return []byte(text.ChangeTable(all).CSV()), nil
	case "markdown":
		return []byte(text.ChangeTable(all).Markdown()), nil
	}
	return []byte(text.Compare(all[0].Program.Title, all, s.style(out.File, schedule.Date{}))), nil
}
