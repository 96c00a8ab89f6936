package main

import (
	"errors"
	"fmt"
	"strings"

	"swardbook/agronomy"
	"swardbook/cmd/swardbook/figure"
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/text"
)

var figureCommand = command{
	name: "figure", args: "NAME ...",
	what: "one calculation by itself, with its working and source",
	help: `    swardbook figure lime --ph 5.1 --buffer smp --buffer-ph 6.4

Works out one figure from what is given on the command line, and shows how.
Amounts carry their unit, US or metric: "2600 sq ft", "240 m2", "0.25 in".

    lime rate mix water spreader growth convert law

"swardbook figure" lists them with an example each;
"swardbook figure NAME --help" tells the rest. Every one takes

        --format FORM   text or json
    -o, --output FILE   write to FILE
        --no-color      no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		fs.SetInterspersed(false)
		return func(s *session, args []string) error {
			if len(args) == 0 {
				return s.print(figureList())
			}
			return s.figure(args[0], args[1:])
		}
	},
}

func figureList() string {
	var b strings.Builder
	for _, f := range figure.All() {
		fmt.Fprintf(&b, "%s: %s\n    swardbook figure %s %s\n", f.Name, f.What, f.Name, f.Example)
	}
	return b.String()
}

func (s *session) figure(name string, args []string) error {
	f, err := figure.Find(name)
	if err != nil {
		return err
	}
	fs := flag.New("figure " + f.Name)
	fs.BoolVar(&s.noColor, "no-color", s.noColor, "")
	out := flag.NewOutput(fs, "text", "json")
	work := f.Define(fs)
	switch err := flag.Parse(fs, args); {
	case errors.Is(err, flag.ErrHelp):
		return s.print(figureUsage(f))
	case err != nil:
		return err
	}
	if err := out.Check(); err != nil {
		return err
	}
	a, err := work()
	if err != nil {
		return err
	}
	data := []byte(text.Working(a.Text, a.More, a.Why, s.style(out.File, schedule.Date{})))
	if out.Format == "json" {
		if data, err = asJSON(figureShown{1, f.Name, a.Text, a.Values, a.Why}); err != nil {
			return err
		}
	}
	return s.write(out.File, data)
}

type figureShown struct {
	Format int               `json:"format"`
	Figure string            `json:"figure"`
	Answer string            `json:"answer"`
	Values map[string]any    `json:"values"`
	Why    []agronomy.Reason `json:"why"`
}

// figureUsage is the help of one figure.
func figureUsage(f figure.Figure) string {
	return "usage: swardbook " + strings.TrimRight("figure "+f.Name+" "+f.Args, " ") + "\n\n    swardbook figure " + f.Name + " " + f.Example + "\n\n" + f.Help + `
        --format FORM   text or json
    -o, --output FILE   write to FILE
        --no-color      no colour
`
}
