package main

import (
	"fmt"
	"strings"

	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/sitefile"
	"swardbook/schedule/text"
)

// varied makes the program of a file as it stands, and one for each value.
func (s *session) varied(file, vary string, today schedule.Date) ([]text.Variant, []string, error) {
	key, values, err := flag.ParseVary(vary)
	if err != nil {
		return nil, nil, misuse("--vary: %s", err)
	}
	l, p, err := s.plan(file, today)
	if err != nil {
		return nil, nil, err
	}
	all := []text.Variant{{Label: "as it stands", Program: p}}
	path := ""
	for _, value := range values {
		changed, whole, err := sitefile.With(l.text, key, value)
		if err != nil {
			return nil, nil, misuse("--vary: %s", err)
		}
		path = whole
		name := file + " with " + path + " = " + value
		p, problems, err := s.programOf(l, name, changed, today)
		if err != nil {
			return nil, nil, err
		}
		if schedule.Fatal(problems) {
			s.tell(problems)
			return nil, nil, exit{code: exitSite}
		}
		all = append(all, text.Variant{Label: value, Program: p})
	}
	s.tellIdle(l, path, all, today)
	return against(all), l.inputs(), nil
}

// programOf plans a changed text of a loaded file.
func (s *session) programOf(l *loaded, name string, changed []byte, today schedule.Date) (*schedule.Program, []schedule.Problem, error) {
	site, problems := sitefile.Load(name, changed, opener(folderOf(l.file)))
	if schedule.Fatal(problems) {
		return nil, problems, nil
	}
	done := l.done
	if l.book != nil { // read against the changed site
		if done, problems = sitefile.LoadRecord(l.record, l.book, site); schedule.Fatal(problems) {
			return nil, problems, nil
		}
	}
	p, err := s.program(name, site, done, today)
	return p, nil, err
}

// tellIdle adds a note to each value that gives the same program as the value before it.
// The note names the keys of the same table that decide instead: without one of them, the
// two programs would differ.
func (s *session) tellIdle(l *loaded, path string, all []text.Variant, today schedule.Date) {
	for i := 1; i < len(all); i++ {
		was, is := &all[i-1], &all[i]
		if i == 1 && len(all) > 2 { // of several values the first may be the file's own
			continue
		}
		if !same(was.Program, is.Program) {
			continue
		}
		is.Note = "The same program as the file as it stands."
		if i > 1 {
			is.Note = fmt.Sprintf("The same program as with %s.", was.Label)
		}
		if by := s.deciders(l, path, was.Label, is.Label, i > 1, today); len(by) > 0 {
			is.Note += fmt.Sprintf(" Without %s the two would differ: what stands there decides.", strings.Join(by, " or "))
		}
	}
}

func same(a, b *schedule.Program) bool {
	return len(schedule.Compare(a, b)) == 0 && len(schedule.Compare(b, a)) == 0
}

// deciders lists the keys that stand beside the varied key and hide its effect: with one
// of them removed from the file, the two values give two different programs.
func (s *session) deciders(l *loaded, path, a, b string, both bool, today schedule.Date) (by []string) {
	for _, other := range sitefile.Beside(l.text, path) {
		without := sitefile.Without(l.text, other)
		if len(without) == len(l.text) {
			continue
		}
		var two []*schedule.Program
		for i, value := range []string{a, b} {
			changed := without
			if both || i > 0 {
				var err error
				if changed, _, err = sitefile.With(without, path, value); err != nil {
					break
				}
			}
			p, problems, err := s.programOf(l, l.file, changed, today)
			if err != nil || schedule.Fatal(problems) {
				break
			}
			two = append(two, p)
		}
		if len(two) == 2 && !same(two[0], two[1]) {
			by = append(by, other)
		}
	}
	return by
}
