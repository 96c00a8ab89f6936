package main

import (
	"fmt"

	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/book"
	"swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
	"swardbook/schedule/text"
)

var checkCommand = command{
	name: "check", args: "FILE",
	what: "read the site file and record book; list problems",
	help: `    swardbook check lawn.toml

Reads the site file and the record book beside it, and lists every problem with
its line, its key and a remedy. Warnings are things that look like a slip; they
stop nothing. Then it lists what the file leaves open and what is assumed in its
place. All keys of a site file have an effect; a key that is not known is an
error.

        --today DATE    as of DATE (default: today)
        --format FORM   text or json
    -o, --output FILE   write to FILE
        --fill          write the short lines of the record book whole
        --taken         with --fill: also a line for each past job without one,
                        marked as taken
        --strict        exit status 4 if there are warnings
        --no-color      no colour

Exit status 3: the site file or the record book has errors.
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		out := flag.NewOutput(fs, "text", "json")
		today := flag.Today(fs)
		strict := fs.Bool("strict", false, "")
		fill, taken := fs.Bool("fill", false, ""), fs.Bool("taken", false, "")
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
			if *taken && !*fill {
				return misuse("--taken goes with --fill")
			}
			if *fill {
				return s.fill(file, *taken, day)
			}
			return s.check(file, out, *strict, day)
		}
	},
}

// checked is what check found, for machines.
type checked struct {
	Format      int                `json:"format"`
	File        string             `json:"file"`
	Fine        bool               `json:"fine"`
	Problems    []problemShown     `json:"problems"`
	Assumptions []string           `json:"assumptions"`
	LeftOut     []schedule.LeftOut `json:"left_out"`
}

type problemShown struct {
	File    string `json:"file"`
	Line    int    `json:"line,omitzero"`
	Key     string `json:"key,omitzero"`
	Message string `json:"message"`
	Hint    string `json:"hint,omitzero"`
	Warning bool   `json:"warning"`
}

// ahead warns of the lines of the record book that are dated after today.
func (l *loaded) ahead(today schedule.Date) (out []schedule.Problem) {
	for _, d := range l.done {
		if d.Date.After(today) {
			out = append(out, schedule.Problem{File: l.record, Line: d.Line, Key: "date", Message: d.Date.Short() + " is still to come", Hint: "is the year right?", Warning: true})
		}
	}
	return out
}

func (s *session) check(file string, out *flag.Output, strict bool, today schedule.Date) error {
	l, err := s.read(file)
	if err != nil {
		return err
	}
	bad := schedule.Fatal(l.problems)
	l.problems = append(l.problems, sitefile.Short(l.record, l.done)...)
	found := checked{Format: 1, File: file, Fine: !bad, Problems: []problemShown{}, Assumptions: []string{}, LeftOut: []schedule.LeftOut{}}
	for _, p := range l.problems {
		found.Problems = append(found.Problems, problemShown(p))
	}
	var p *schedule.Program
	if !bad {
		if p, err = s.program(file, l.site, l.done, today); err != nil {
			return err
		}
		more, err := l.overPlan(p)
		if err != nil {
			return siteError(fmt.Errorf("%s: %w", file, err))
		}
		for _, w := range append(more, l.ahead(today)...) {
			l.problems = append(l.problems, w)
			found.Problems = append(found.Problems, problemShown(w))
		}
		for _, w := range append(p.CrewDoubts(schedule.Date{}), l.site.Awaited(today)...) {
			w.File, w.Line = file, sitefile.LineOf(l.text, w.Key)
			l.problems = append(l.problems, w)
			found.Problems = append(found.Problems, problemShown(w))
		}
		found.Assumptions, found.LeftOut = p.Assumptions, p.LeftOut
	}
	switch {
	case out.Format == "json":
		data, err := asJSON(found)
		if err == nil {
			err = s.write(out.File, data, l.inputs()...)
		}
		if err != nil {
			return err
		}
	case bad:
		s.tell(l.problems)
	default:
		s.tell(l.problems)
		if err := s.write(out.File, []byte(text.Check(l.fine(), p, s.style(out.File, schedule.Date{}))), l.inputs()...); err != nil {
			return err
		}
	}
	switch {
	case bad:
		return exit{code: exitSite}
	case strict && len(l.problems) > 0:
		return exit{exitDiffers, fmt.Errorf("%s", count(len(l.problems), "warning"))}
	}
	return nil
}

// fill writes the short lines of the record book whole, as the program now has them.
func (s *session) fill(file string, taken bool, today schedule.Date) error {
	l, p, err := s.plan(file, today)
	if err != nil {
		return err
	}
	if l.record == "" {
		return misuse("a site file from standard input has no record book beside it")
	}
	text, filled, added := book.Fill(l.book, p.AsOf(today), l.done, taken)
	if filled+added == 0 {
		return s.print("Every line stands by itself: nothing to do.\n")
	}
	if err := rewriteRecord(l.record, l.book, text); err != nil {
		return err
	}
	return s.print(fmt.Sprintf("%s: %s written whole, %d added as taken.\n", l.record, count(filled, "line"), added))
}

// overPlan warns of lines of the record book that brought over twice what the
// site would plan without them.
func (l *loaded) overPlan(p *schedule.Program) ([]schedule.Problem, error) {
	if len(l.done) == 0 {
		return nil, nil
	}
	bare, err := plan.Program(l.site, nil, p.Through)
	if err != nil {
		return nil, err
	}
	out := p.OverPlan(bare)
	for i := range out {
		out[i].File = l.record
	}
	return out, nil
}

// fine writes the verdict on a file without errors, and counts what it holds.
func (l *loaded) fine() string {
	t := fmt.Sprintf("%s: fine: %s, %s", l.file, count(len(l.site.Areas), "area"), count(len(l.site.Materials), "material"))
	if l.book != nil {
		t += ", " + count(len(l.done), "job") + " on record"
	}
	return t
}

func count(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %ss", n, one)
}
