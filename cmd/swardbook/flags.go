package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"swardbook/agronomy"
	"swardbook/schedule"
)

// output is where a result goes, and in what form.
type output struct {
	file   string
	format string
	forms  []string
}

// outputFlags defines -o, and --format if there is more than one form.
func outputFlags(fs *pflag.FlagSet, forms ...string) *output {
	o := &output{forms: forms}
	fs.StringVarP(&o.file, "output", "o", "", "")
	if len(forms) > 1 {
		fs.StringVar(&o.format, "format", forms[0], "")
	} else {
		o.format = forms[0]
	}
	return o
}

func (o *output) check() error {
	if !slices.Contains(o.forms, o.format) {
		return misuse("--format: %q is not one of %s", o.format, strings.Join(o.forms, ", "))
	}
	return nil
}

// choice cuts a program to what was asked for.
type choice struct {
	area, person string
	kinds        []string
}

func choiceFlags(fs *pflag.FlagSet) *choice {
	c := &choice{}
	fs.StringVar(&c.area, "area", "", "")
	fs.StringVar(&c.person, "for", "", "")
	fs.StringSliceVar(&c.kinds, "kind", nil, "")
	return c
}

// apply checks the names against the site and cuts the program.
func (c *choice) apply(p *schedule.Program) (*schedule.Program, error) {
	kinds, err := kindsOf(c.kinds)
	if err != nil {
		return nil, err
	}
	if err := knownArea(p.Site, c.area); err != nil {
		return nil, err
	}
	if err := knownPerson(p.Site, c.person); err != nil {
		return nil, err
	}
	if c.area == "" && c.person == "" && kinds == nil {
		return p, nil
	}
	return p.Filter(c.area, c.person, kinds), nil
}

func knownArea(s *schedule.Site, id string) error {
	var ids []string
	for _, a := range s.Areas {
		ids = append(ids, a.ID)
	}
	return known("--area", "area", id, ids)
}

func knownPerson(s *schedule.Site, id string) error {
	var ids []string
	for _, p := range s.Crew.People {
		ids = append(ids, p.ID)
	}
	return known("--for", "person", id, ids)
}

func known(flag, what, id string, ids []string) error {
	switch near := agronomy.NearestName(id, ids); {
	case id == "" || slices.Contains(ids, id):
		return nil
	case len(ids) == 0:
		return misuse("%s: the site file names no %s", flag, what)
	case near == "":
		return misuse("%s: unknown %s %q", flag, what, id)
	default:
		return misuse("%s: unknown %s %q; known: %s", flag, what, id, near)
	}
}

// todayFlag defines --today; see dayFlag.
func todayFlag(fs *pflag.FlagSet) func(*session) (schedule.Date, error) { return dayFlag(fs, "today") }

// dayFlag defines a flag for a day; without it the clock is asked, once.
func dayFlag(fs *pflag.FlagSet, name string) func(*session) (schedule.Date, error) {
	given := fs.String(name, "", "")
	return func(s *session) (schedule.Date, error) {
		if *given == "" {
			y, m, d := s.now().Date()
			return schedule.Date{Year: y, Month: m, Day: d}, nil
		}
		return dateFlag("--"+name, *given)
	}
}

func dateFlag(flag, given string) (schedule.Date, error) {
	d, err := schedule.ParseDate(given)
	if err != nil {
		return d, misuse("%s: %s", flag, err)
	}
	return d, nil
}

// asJSON writes a value as indented JSON.
func asJSON(v any) ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(v); err != nil {
		return nil, fmt.Errorf("could not write JSON: %w", err)
	}
	return b.Bytes(), nil
}

// strictly turns left-out jobs into exit code 4, if asked.
func strictly(strict bool, p *schedule.Program) error {
	if !strict || len(p.LeftOut) == 0 {
		return nil
	}
	what := "1 job was left out"
	if n := len(p.LeftOut); n > 1 {
		what = fmt.Sprintf("%d jobs were left out", n)
	}
	return exit{exitDiffers, fmt.Errorf("%s", what)}
}
