package ical

import (
	"fmt"
	"slices"
	"time"

	"swardbook/schedule"
)

// Changes is what an update did, each event as its title and day.
type Changes struct {
	Added, Changed, Cancelled, Restored, Dropped []string
}

// How long an event stays in the file after its day. // [common]
const (
	cancelledDays = 30 // long enough to be seen on every phone
	historyMonths = 12 // a record of the season before
)

// Update makes the calendar of a program anew on top of old, which is what the file holds
// now. An event whose content changed gets the next SEQUENCE, and now as its stamp, or a
// second after its old stamp if that is later; all others keep theirs, so that out equals
// old when nothing changed.
//
// A job that left the program is cancelled, and its event is dropped 30 days past its day.
// A past job that was done, or that lies before the program's first day, stays as it was
// for a year and is then dropped, also if the program still has it. In the calendar of a
// person or an area that has left the site all jobs still to do are cancelled; 60 days later
// out is nil, and the file can be removed.
//
// Errors are [*Refused] when old is another program's, another calendar's or
// cannot be read, and [*Unwritable] as in [Write]. Nothing may be written then.
func Update(old []byte, p *schedule.Program, o Options, now time.Time) (out []byte, changes Changes, err error) {
	if Gone(p, o) {
		return endCalendar(old, p, o, now)
	}
	c, err := choose(p, o)
	if err != nil {
		return nil, changes, err
	}
	before, now, err := readOwn(old, c.id, now)
	if err != nil {
		return nil, changes, err
	}
	had := make(map[string]Event, len(before.events))
	for _, e := range before.events {
		had[e.UID] = e
	}
	all := slices.Clone(c.events)
	c.forget(dayOf(now))
	stays := make(map[string]bool, len(c.events))
	for _, e := range c.events {
		stays[e.UID] = true
	}
	for _, e := range all {
		if was, known := had[e.UID]; known && !stays[e.UID] {
			changes.Dropped = append(changes.Dropped, was.words())
			delete(had, e.UID)
		}
	}
	for i := range c.events {
		e := &c.events[i]
		was, known := had[e.UID]
		delete(had, e.UID)
		switch {
		case !known:
			e.Sequence, e.Stamp = first(now), now
			changes.Added = append(changes.Added, e.words())
			continue
		case was.equal(e.Content):
			*e = was
			continue
		case was.Cancelled:
			changes.Restored = append(changes.Restored, e.words())
		default:
			changes.Changed = append(changes.Changed, e.words())
		}
		*e = was.revised(e.Content, now)
	}
	for _, e := range before.events { // in the order of the file
		if _, left := had[e.UID]; !left {
			continue
		}
		switch fate(e, p.Start, dayOf(now)) {
		case drop:
			changes.Dropped = append(changes.Dropped, e.words())
		case cancel:
			c.events = append(c.events, e.revised(cancelled(e, p, ""), now))
			changes.Cancelled = append(changes.Cancelled, e.words())
		case keep:
			c.events = append(c.events, e)
		}
	}
	out, err = encode(c)
	return out, changes, err
}

// readOwn reads the calendar that old must be, and sets the clock to whole seconds.
func readOwn(old []byte, id string, now time.Time) (calendar, time.Time, error) {
	before, err := read(old)
	if err != nil {
		return before, now, err
	}
	if before.id != id {
		return before, now, &Refused{fmt.Sprintf("the file holds the calendar %q, not %q", before.id, id), otherName}
	}
	now, err = settled(now)
	return before, now, err
}

// revised gives the event new content, the next SEQUENCE and a later stamp.
func (e Event) revised(c Content, now time.Time) Event {
	e.Content = c
	e.Sequence++
	if least := e.Stamp.Add(time.Second); now.Before(least) {
		now = least
	}
	e.Stamp = now
	return e
}

// What becomes of an event whose job is no longer in the calendar's choice.
const (
	keep = iota
	cancel
	drop
)

// fate decides what becomes of it. A job from before the program's first day is history
// only once its day is past: if the program merely starts later now, the job is still on
// somebody's phone as one to do.
func fate(e Event, start, today schedule.Date) int {
	stale := today.After(e.Date.AddDays(cancelledDays))
	switch {
	case e.Cancelled && stale:
		return drop
	case e.Cancelled:
		return keep
	case (e.Date.Before(start) || over(e.Summary)) && e.Date.Before(today): // what was done, or counted as done, is never called off
		if today.After(e.Date.AddMonths(historyMonths)) {
			return drop
		}
		return keep
	case stale:
		return drop
	}
	return cancel
}

// cancelled is the content that tells a reader not to do the job, why, and more.
func cancelled(e Event, p *schedule.Program, more string) Content {
	c := e.Content
	title := bareTitle(e.Summary)
	c.Summary = titled(cancelledTitle, title)
	head := "Do not do this job: " + title + "."
	if e.Categories == "Lawn,"+schedule.LastSafe.Category() { // there was nothing to do
		head = title + ": no longer in this calendar."
	}
	c.Description = clean(head + "\n" + whyGone(e, p) + more + "\n\n" + e.Link)
	c.Cancelled = true
	c.Remind = nil
	return c
}

// whyGone says why a job is no longer in the calendar.
func whyGone(e Event, p *schedule.Program) string {
	for _, now := range p.Entries {
		switch {
		case now.UID != e.UID:
		case now.State == schedule.Finished && !now.Kind.Notice():
			return "It is done already."
		case now.Kind.Notice():
			return "It is in everybody's calendar."
		case now.WhoName != "":
			return "It is now for " + oneLine(now.WhoName) + "."
		default:
			return "It is no longer this person's."
		}
	}
	for _, out := range p.LeftOut {
		if !tells(e.Description, out.ID) {
			continue
		}
		why := "Why: " + oneLine(sourced(out.Reason, out.Source))
		if !out.CarriedTo.IsZero() {
			why += "\nIt is put off to " + out.CarriedTo.Short() + "."
		}
		return why
	}
	return "The program no longer has it."
}
