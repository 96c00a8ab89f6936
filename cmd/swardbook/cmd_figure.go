package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"swardbook/agronomy"
	"swardbook/schedule"
	"swardbook/schedule/text"
)

// figure is one calculation by itself. setup defines its flags and gives what
// works it out.
type figure struct {
	name    string
	args    string
	what    string
	example string // arguments that give an answer
	help    string
	setup   func(*pflag.FlagSet) func(*asked) (answer, error)
}

// answer is what a calculation comes to.
type answer struct {
	text   string
	values map[string]any // for machines: the unit is in the key
	why    []agronomy.Reason
	more   []string // lines after the answer
}

// figures are all calculations.
func figures() []figure {
	return []figure{limeFigure, rateFigure, mixFigure, waterFigure, spreaderFigure, growthFigure, convertFigure, lawFigure}
}

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
	setup: func(fs *pflag.FlagSet) func(*session, []string) error {
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
	for _, f := range figures() {
		fmt.Fprintf(&b, "%s: %s\n    swardbook figure %s %s\n", f.name, f.what, f.name, f.example)
	}
	return b.String()
}

func (s *session) figure(name string, args []string) error {
	f, err := findFigure(name)
	if err != nil {
		return err
	}
	fs := pflag.NewFlagSet("figure "+f.name, pflag.ContinueOnError)
	fs.Usage = func() {}
	fs.SetOutput(io.Discard)
	fs.BoolVar(&s.noColor, "no-color", s.noColor, "")
	out := outputFlags(fs, "text", "json")
	work := f.setup(fs)
	switch err := fs.Parse(args); {
	case errors.Is(err, pflag.ErrHelp):
		return s.print(f.usage())
	case err != nil:
		return misuse("%s; see swardbook figure %s --help", lowerFirst(err.Error()), f.name)
	}
	if err := out.check(); err != nil {
		return err
	}
	if f.args == "" && fs.NArg() > 0 {
		return misuse("%q is one argument too many; see swardbook figure %s --help", fs.Arg(0), f.name)
	}
	q := &asked{fs: fs, args: fs.Args(), read: map[string]bool{}}
	a, err := work(q)
	if q.err != nil { // a flag that could not be read comes first
		err = q.err
	}
	if err == nil {
		err = q.idle()
	}
	if err != nil {
		return exit{exitUse, err}
	}
	data := []byte(text.Working(a.text, a.more, a.why, s.style(out.file, schedule.Date{})))
	if out.format == "json" {
		if data, err = asJSON(figureShown{1, f.name, a.text, a.values, a.why}); err != nil {
			return err
		}
	}
	return s.write(out.file, data)
}

type figureShown struct {
	Format int               `json:"format"`
	Figure string            `json:"figure"`
	Answer string            `json:"answer"`
	Values map[string]any    `json:"values"`
	Why    []agronomy.Reason `json:"why"`
}

func findFigure(name string) (figure, error) {
	var names []string
	for _, f := range figures() {
		if f.name == name {
			return f, nil
		}
		names = append(names, f.name)
	}
	return figure{}, misuse("no figure %q; known: %s", name, agronomy.NearestName(name, names))
}

func (f figure) usage() string {
	return "usage: swardbook " + strings.TrimRight("figure "+f.name+" "+f.args, " ") + "\n\n    swardbook figure " + f.name + " " + f.example + "\n\n" + f.help + `
        --format FORM   text or json
    -o, --output FILE   write to FILE
        --no-color      no colour
`
}

// asked are the flags of a figure as they are read; the first that cannot be
// read is kept.
type asked struct {
	fs   *pflag.FlagSet
	args []string
	err  error
	read map[string]bool
}

func (q *asked) given(flag string) bool {
	q.read[flag] = true
	return q.fs.Changed(flag)
}

func (q *asked) text(flag string) string {
	q.read[flag] = true
	v, _ := q.fs.GetString(flag)
	return v
}

func (q *asked) yes(flag string) bool {
	q.read[flag] = true
	v, _ := q.fs.GetBool(flag)
	return v
}

// idle tells of a flag that was given and had no part in the answer.
func (q *asked) idle() (err error) {
	q.fs.Visit(func(f *pflag.Flag) {
		if err == nil && !q.read[f.Name] && !slices.Contains([]string{"format", "output", "no-color", "material"}, f.Name) {
			err = fmt.Errorf("--%s has no part in this answer; leave it out", f.Name)
		}
	})
	return err
}

// wrong notes what is wrong with a flag.
func (q *asked) wrong(flag string, err error) {
	if q.err == nil {
		q.err = fmt.Errorf("--%s: %w", flag, err)
	}
}

// need asks for a flag that has no default.
func (q *asked) need(flags ...string) {
	for _, f := range flags {
		if !q.given(f) && q.err == nil {
			q.err = fmt.Errorf("--%s is missing", f)
		}
	}
}

// quantityOf reads a flag with a unit; a flag that was not given is 0.
func quantityOf[T any](q *asked, flag string, parse func(string) (T, error)) (v T) {
	if !q.given(flag) {
		return v
	}
	v, err := parse(q.text(flag))
	if err != nil {
		q.wrong(flag, err)
	}
	return v
}

// rate reads a rate; a plain number is lb per 1,000 sq ft.
func (q *asked) rate(flag string) agronomy.PerThousand {
	return quantityOf(q, flag, func(t string) (agronomy.PerThousand, error) {
		if _, err := strconv.ParseFloat(t, 64); err == nil {
			t += " lb/1000 sq ft"
		}
		return agronomy.ParseRate(t)
	})
}

// number reads a plain number from low to high; a flag that was not given is 0.
func (q *asked) number(flag string, low, high float64) float64 {
	if !q.given(flag) {
		return 0
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(q.text(flag), "%")), 64)
	if err != nil || !(v >= low && v <= high) {
		q.wrong(flag, fmt.Errorf("%q is not a number from %s to %s", q.text(flag), schedule.Number(low, 2), schedule.Number(high, 2)))
	}
	return v
}

// oneOf reads a word; a flag that was not given is "".
func oneOf[T ~string](q *asked, flag string, words ...T) T {
	v := T(strings.ToLower(q.text(flag)))
	if q.given(flag) && !slices.Contains(words, v) {
		near := agronomy.NearestName(string(v), plain(words))
		if near == "" {
			near = join(words)
		}
		q.wrong(flag, fmt.Errorf("unknown %q; known: %s", q.text(flag), near))
	}
	return v
}

func plain[T ~string](words []T) []string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = string(w)
	}
	return out
}

// texts defines text flags.
func texts(fs *pflag.FlagSet, names ...string) {
	for _, n := range names {
		fs.String(n, "", "")
	}
}

// Both measures, to say an amount in US and in metric.
var us, metric = schedule.Measure{}, schedule.Measure{Metric: true}

func both(say func(schedule.Measure) string) string { return say(us) + " (" + say(metric) + ")" }

func bothRates(r agronomy.PerThousand) string {
	return both(func(m schedule.Measure) string { return m.Rate(r) })
}

// bothNutrients writes "1 lb N, 0.25 lb P₂O₅ per 1,000 sq ft (4.9 g N, 1.2 g P₂O₅/m²)".
func bothNutrients(w agronomy.Wants) string {
	var metric []string
	for _, p := range []struct {
		name   string
		amount agronomy.PerThousand
	}{{"N", w.N}, {"P₂O₅", w.P2O5}, {"K₂O", w.K2O}, {"Mg", w.Mg}, {"S", w.S}} {
		if p.amount > 0 {
			metric = append(metric, schedule.Figures(p.amount.GramsPerM2(), 2)+" g "+p.name)
		}
	}
	if metric == nil {
		return w.String()
	}
	return w.String() + " per 1,000 sq ft (" + strings.Join(metric, ", ") + "/m²)"
}

func bothWeights(p agronomy.Pounds) string {
	return both(func(m schedule.Measure) string { return m.Weight(p) })
}

func bothVolumes(g agronomy.Gallons) string {
	return both(func(m schedule.Measure) string { return m.Volume(g) })
}

func bothAreas(a agronomy.SquareFeet) string {
	return both(func(m schedule.Measure) string { return m.Area(a) })
}
