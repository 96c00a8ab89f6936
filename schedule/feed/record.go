package feed

import (
	"context"
	"errors"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/book"
	"swardbook/schedule/text"
	"swardbook/schedule/word"
)

var errNoProgram = errors.New("the files of this site have errors, so nothing can be recorded until they are mended")

// unusable is the error of a form that a person can mend.
type unusable struct {
	wrong []string
	doubt bool // it may be right: a person who confirms it may send it again
}

func (u *unusable) Error() string { return strings.Join(u.wrong, "; ") }

// outcome is what a recorded job did to the rest of the program.
type outcome struct {
	Line    string // as it stands in the record book
	Beside  string // which lines it adds to; "" none
	Tally   string // "2 moved, 1 grew"; "" nothing changed
	Changes []changeView
}

type changeView struct{ Job, ID, What, Text string }

// recordedPage confirms a record.
type recordedPage struct {
	head
	outcome
}

// record writes what a form says into the record book and re-plans the site.
// The same form again gives the same outcome and no second line.
func (f *Feed) record(s *site, e entry) (outcome, error) {
	if err := s.take(context.Background()); err != nil {
		return outcome{}, err
	}
	defer s.release()
	if o, again := s.recorded[e.ID]; again {
		return o, nil
	}
	now := f.o.Now()
	r, err := inTurn(context.Background(), f, func() (*reading, error) { // the newest, which may be newer than what is shown
		return read(f.o.Sites, s.name, now, f.o.Plan), nil
	})
	if err != nil {
		return outcome{}, err
	}
	if r.program == nil {
		return outcome{}, errNoProgram
	}
	d, amount, err := e.done(r, day(now))
	if err != nil {
		return outcome{}, err
	}
	type answer struct {
		line  book.Line
		after *schedule.Program
	}
	a, err := inTurn(context.Background(), f, func() (a answer, err error) {
		a.line, a.after, err = r.with(s.name, d, amount, e.Sure != "", day(now), f.o.Plan)
		return a, err
	})
	if err != nil {
		return outcome{}, err
	}
	if err := book.Append(f.o.Sites, recordBook(s.name), a.line.Text); err != nil {
		return outcome{}, err
	}
	lines := strings.Split(strings.TrimSpace(a.line.Text), "\n")
	o := outcomeOf(lines[len(lines)-1], r.program, a.after)
	o.Beside = a.line.Beside()
	s.recorded[e.ID] = o
	f.look(s)
	f.o.Log.Info("recorded", "site", s.logName(), "job", d.Job, "changes", text.Tally(schedule.Compare(r.program, a.after)))
	return o, nil
}

// done reads the form as a line of the record book, and says all that is wrong
// with it at once.
func (e entry) done(r *reading, today schedule.Date) (d schedule.Done, amount string, err error) {
	u := &unusable{}
	d = schedule.Done{Job: e.Job, By: e.By, Note: e.Note}
	d.Area, _, _ = strings.Cut(e.Job, "/")
	if _, known := about(r.program, e.Job, today); !known {
		u.wrong = append(u.wrong, "There is no such job in the program now.")
	}
	switch e.What {
	case allDone:
		amount = e.Amount
	case partly:
		if amount = e.Amount; amount == "" {
			u.wrong = append(u.wrong, "Say how much of the job was done: an amount such as 40 lb, or a share such as half.")
		}
	case missed:
		if d.Missed = true; e.Amount != "" {
			u.wrong = append(u.wrong, "A missed job has no amount. If something was put down, choose “only part of it”.")
		}
	default:
		u.wrong = append(u.wrong, "Say whether the job was done, done in part, or missed.")
	}
	switch d.Date, err = schedule.ParseDate(e.Date); {
	case err != nil:
		u.wrong = append(u.wrong, "The date cannot be read: write it as "+today.String()+".")
	case d.Date.After(today):
		u.wrong = append(u.wrong, "The date is still to come.")
	}
	if strings.ContainsRune(e.Note, 0) {
		u.wrong = append(u.wrong, "The note holds a NUL character, which is no part of a text: write the note anew.")
	}
	if !knows(r.site, e.By) {
		u.wrong = append(u.wrong, "The site file knows nobody of that name.")
	}
	if u.wrong != nil {
		return d, amount, u
	}
	return d, amount, nil
}

// with writes a job as a line of the record book and gives the program as it
// will be with it, or says what is wrong with the line.
func (r *reading) with(name string, d schedule.Done, amount string, sure bool, today schedule.Date, plan schedule.Planner) (book.Line, *schedule.Program, error) {
	line := book.NewLine(recordBook(name), r.book, r.program, d, amount, today)
	u := &unusable{doubt: len(line.Wrong) == 0}
	wrong := line.Wrong
	if !sure {
		wrong = append(wrong, line.Doubts...)
	}
	for _, p := range wrong {
		w := p.Message
		if p.Key != "" {
			w = p.Key + ": " + w
		}
		if p.Hint != "" {
			w += " (" + p.Hint + ")"
		}
		u.wrong = append(u.wrong, word.Capital(w)+".")
	}
	if u.doubt && u.wrong != nil {
		u.wrong = append(u.wrong, "The line would read: "+line.Last())
	}
	if u.wrong != nil {
		return line, nil, u
	}
	p, err := plan(r.site, line.Done, r.program.Through)
	if err != nil {
		return line, nil, &unusable{wrong: []string{word.Capital(err.Error()) + "."}}
	}
	return line, p, nil
}

func outcomeOf(line string, was, is *schedule.Program) outcome {
	titles := map[string]string{}
	for _, p := range []*schedule.Program{was, is} {
		for _, e := range p.Entries {
			titles[e.ID] = e.Title
		}
	}
	o := outcome{Line: strings.TrimSpace(line)}
	changes := schedule.Compare(was, is)
	if len(changes) > 0 {
		o.Tally = text.Tally(changes)
	}
	for _, c := range changes {
		o.Changes = append(o.Changes, changeView{titles[c.ID], c.ID, c.What, c.Text})
	}
	return o
}
