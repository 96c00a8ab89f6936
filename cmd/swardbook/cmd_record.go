package main

import (
	"errors"
	"fmt"
	"strings"

	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
	"swardbook/schedule/book"
	"swardbook/schedule/sitefile"
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
packs or a share: "96 lb", "18 kg", "2.5 gal", "1.5 packs", half, "50 %"; of
seed its weight or share.

The line is written whole, with what the bag holds and what was planned, so that
it holds whatever the site file says later. Lines for one job add up: half twice
is the whole, and after half the job stays due for the rest.

What looks like a slip is refused with the reason: twice the planned amount or
more than goes down at once, a day still to come or before the area was sown, a
bag that does not serve the job.

JOB is the job's id, or as much of it as fits one job only. What was put down
before the program, or beside it, is recorded by its kind and area:

    swardbook record lawn.toml starter "10 lb" --area east --material starter
        --date 2026-08-24

        --date DATE      the day it was done (default: --today)
        --today DATE     the day it is (default: from the clock)
        --instead        strike out the lines for the same job: this one counts
        --sure           record what looks like a slip
        --missed         it was not done, and will not be on that day
        --by PERSON      who did it
        --note TEXT      what else there is to say
        --material ID    another material than planned
        --area ID        the area, where JOB is a kind alone
        --no-color       no colour
`,
	setup: func(fs *flag.Set) func(*session, []string) error {
		r := &recording{}
		date := flag.Day(fs, "date")
		today := flag.Today(fs)
		fs.BoolVar(&r.instead, "instead", false, "")
		fs.BoolVar(&r.sure, "sure", false, "")
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
			if r.today, err = today(s.now); err != nil {
				return err
			}
			if r.done.Date = r.today; fs.Changed("date") {
				if r.done.Date, err = date(s.now); err != nil {
					return err
				}
			}
			return s.record(args[0], args[1], r)
		}
	},
}

// recording is one line for the record book.
type recording struct {
	done          schedule.Done
	amount        string
	today         schedule.Date
	instead, sure bool
}

func (s *session) record(file, job string, r *recording) error {
	l, before, err := s.plan(file, r.today)
	if err != nil {
		return err
	}
	if l.record == "" {
		return misuse("a site file from standard input has no record book beside it")
	}
	if err := r.settle(before, job); err != nil {
		return err
	}
	was, struck := before, []int(nil)
	if r.instead {
		if l.book, struck, err = r.strike(l, before); err != nil {
			return err
		}
		l.done, _ = sitefile.LoadRecord(l.record, l.book, l.site)
		if was, err = s.program(file, l.site, l.done, r.today); err != nil {
			return err
		}
	}
	line, err := l.newLine(was, r)
	if err != nil {
		return err
	}
	after, err := s.program(file, l.site, line.Done, r.today)
	if err != nil {
		return err
	}
	if r.instead {
		err = strikeRecord(l.record, struck)
	}
	if err == nil {
		err = appendRecord(l.record, line.Text)
	}
	if err != nil {
		return err
	}
	changes := schedule.Compare(before, after)
	answer := "Recorded in " + l.record + ": " + line.Last() + "\n"
	switch {
	case len(struck) > 0:
		answer += "It takes the place of " + book.Numbered(struck) + ", struck out.\n"
	case len(line.Before) > 0:
		answer += line.Beside() + "; --instead would take its place.\n"
	}
	if len(changes) == 0 {
		answer += "Nothing else changes.\n"
	} else {
		answer += "In the program: " + text.Tally(changes) + ".\n" + text.Changes(changes, s.style("", schedule.Date{}))
	}
	return s.print(answer)
}

// strike gives the book without the lines about the job, and which those are.
func (r *recording) strike(l *loaded, p *schedule.Program) ([]byte, []int, error) {
	line := book.NewLine(l.record, l.book, p, r.done, r.amount, r.today)
	if len(line.Before) == 0 {
		return nil, nil, misuse("--instead: no line about %s is on record", r.done.Job)
	}
	return book.Struck(l.book, line.Before), line.Before, nil
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
	area, kind, _, number, kindErr := schedule.JobName(job)
	alone := kindErr == nil && number == 0 && !kind.Notice()
	if alone && area != "" && p.Site.Area(area) != nil {
		d.Area = area // the job of that kind nearest in time is meant
	}
	if alone && (d.Area != "" || d.Date.Before(p.Start)) { // a job that the program need not have, or from before its start
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
func (l *loaded) newLine(p *schedule.Program, r *recording) (book.Line, error) {
	line := book.NewLine(l.record, l.book, p, r.done, r.amount, r.today)
	var wrong []error
	for _, p := range line.Wrong {
		wrong = append(wrong, fmt.Errorf("%s: %s (%s)", p.Key, p.Message, p.Hint))
	}
	if !r.sure {
		for _, p := range line.Doubts {
			wrong = append(wrong, fmt.Errorf("%s: %s (%s --sure records it)", p.Key, p.Message, p.Hint))
		}
		if len(line.Doubts) > 0 {
			wrong = append(wrong, errors.New("--sure would add the line: "+line.Last()))
		}
	}
	if len(wrong) > 0 {
		return line, exit{exitUse, errors.Join(wrong...)}
	}
	return line, nil
}
