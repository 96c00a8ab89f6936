package main

import (
	"errors"
	"fmt"
	"strings"

	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/book"
	"swardbook/schedule/plan"
	"swardbook/schedule/text"
)

var recordCommand = command{
	name: "record", args: "FILE JOB [AMOUNT]",
	what: "add a line to the record book",
	help: `    swardbook record lawn.toml east/lime/1
    swardbook record lawn.toml east/lime/1 half --by mara --note "ran out"
    swardbook record lawn.toml east/lime/1 --missed

Writes down what was really done, and says what changes in the rest of the
program. Without AMOUNT the job went as planned. AMOUNT is a weight, a volume,
packs or a share: "96 lb", "18 kg", "2.5 gal", "1.5 packs", half, "50 %".

What is left to the plan is written out, material and amount, so that the line
holds whatever the site file says later. Of two lines for one job the last in
the book counts.

JOB is the job's id, or as much of it as fits one job only. What was put down
before the program, or beside it, is recorded by its kind and area:

    swardbook record lawn.toml starter "10 lb" --area east --material starter
        --date 2026-08-24

        --date DATE      the day it was done (default: today)
        --missed         it was not done, and will not be on that day
        --by PERSON      who did it
        --note TEXT      what else there is to say
        --material ID    another material than planned
        --area ID        the area, where JOB is a kind alone
        --no-color       no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		r := &recording{}
		day := flag.Day(fs, "date")
		fs.StringVar(&r.done.By, "by", "", "")
		fs.StringVar(&r.done.Note, "note", "", "")
		fs.StringVar(&r.done.Material, "material", "", "")
		fs.StringVar(&r.done.Area, "area", "", "")
		fs.BoolVar(&r.done.Missed, "missed", false, "")
		return func(s *session, args []string) error {
			if len(args) == 3 {
				r.amount, args = args[2], args[:2]
			}
			if err := exactly(args, "FILE JOB"); err != nil {
				return err
			}
			if r.done.Missed && r.amount != "" {
				return misuse("--missed and an amount cannot both be; part of the job done is an amount, like half")
			}
			var err error
			if r.done.Date, err = day(s.now); err != nil {
				return err
			}
			return s.record(args[0], args[1], r)
		}
	},
}

// recording is one line for the record book.
type recording struct {
	done   schedule.Done
	amount string
}

func (s *session) record(file, job string, r *recording) error {
	l, before, err := s.plan(file)
	if err != nil {
		return err
	}
	if l.record == "" {
		return misuse("a site file from standard input has no record book beside it")
	}
	if err := r.settle(before, job); err != nil {
		return err
	}
	line, err := l.newLine(r.done, r.amount)
	if err != nil {
		return err
	}
	after, err := plan.Program(l.site, line.Done)
	if err != nil {
		return siteError(err)
	}
	if err := appendRecord(l.record, line.Text); err != nil {
		return err
	}
	changes := schedule.Compare(before, after)
	answer := "Recorded in " + l.record + ": " + line.Text
	if old := line.Replaced(); old != "" {
		answer += old + "\n"
	}
	if len(changes) == 0 {
		answer += "Nothing else changes.\n"
	} else {
		answer += "In the program: " + text.Tally(changes) + ".\n" + text.Changes(changes, s.style("", schedule.Date{}))
	}
	return s.print(answer)
}

// settle finds the job that is meant, and its area.
func (r *recording) settle(p *schedule.Program, job string) error {
	d := &r.done
	if err := flag.KnownArea(p.Site, d.Area); err != nil {
		return err
	}
	if d.By != "" && len(p.Site.Crew.People) > 0 {
		if err := flag.KnownPerson(p.Site, d.By); err != nil {
			return misuse("%s", strings.Replace(err.Error(), "--for", "--by", 1))
		}
	}
	_, kind, number, kindErr := schedule.JobName(job)
	alone := kindErr == nil && number == 0
	if alone && (d.Area != "" || d.Date.Before(p.Start)) { // beside the program, or before it
		d.Job = kind.String()
		if d.Area == "" && len(p.Site.Areas) == 1 {
			d.Area = p.Site.Areas[0].ID
		}
		return nil
	}
	e, left, err := p.Find(job)
	switch {
	case err != nil && alone:
		return misuse("%s; for a job beside the program say where it was: --area", err)
	case err != nil:
		return misuse("%s", err)
	case e != nil && e.Kind.Notice():
		return misuse("%s marks a day; there is nothing to do and nothing to record", e.ID)
	case e != nil:
		d.Job, d.Area = e.ID, e.Area
	default:
		d.Job, d.Area = left.ID, left.Area
	}
	return nil
}

// newLine writes the line, or says what is wrong with it.
func (l *loaded) newLine(d schedule.Done, amount string) (book.Line, error) {
	line, err := book.NewLine(l.record, l.book, l.site, d, amount)
	if err != nil {
		return line, siteError(err)
	}
	var wrong []error
	for _, p := range line.Wrong {
		wrong = append(wrong, fmt.Errorf("%s: %s (%s)", p.Key, p.Message, p.Hint))
	}
	if len(wrong) > 0 {
		return line, exit{exitUse, errors.Join(wrong...)}
	}
	return line, nil
}
