package ical

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"swardbook/schedule"
)

// Options chooses what part of a program a calendar holds, and what addresses
// it mentions. The zero value is the whole program without addresses.
type Options struct {
	Area    string          // id of the one area; "" all
	Person  string          // id of the one person; "" everybody
	Kinds   []schedule.Kind // nil all
	Address string          // public address of the feed; "" none
	Record  string          // address of the done form, to which job=ID is added; "" none
	Page    string          // address of the page that shows the jobs, where the site names none itself; "" none
	Closing string          // a sentence about the calendar, added to its last event; "" none
	Shared  *Shared         // what is shared with other calendars of the program; nil: nothing
}

// Unwritable is the error of [Write] and [Update] when the program and the
// options make no sound calendar.
type Unwritable struct{ Why, Hint string }

func (e *Unwritable) Error() string { return e.Why + "; " + e.Hint }

// Write makes the calendar of a program that has not been published before: every
// stamp is now, and every SEQUENCE begins at the minutes since 2020, so that no reader of
// an earlier file of the same jobs takes it for the older one. What is more than a year
// past is left out, as by [Update]. It fails with [*Unwritable] rather than write an
// empty calendar, two events with one id, or a link that no client can follow.
func Write(p *schedule.Program, o Options, now time.Time) ([]byte, error) {
	c, err := choose(p, o)
	if err != nil {
		return nil, err
	}
	if now, err = settled(now); err != nil {
		return nil, err
	}
	c.forget(dayOf(now))
	for i := range c.events {
		c.events[i].Sequence, c.events[i].Stamp = first(now), now
	}
	return encode(c)
}

// settled gives the time in whole seconds, unless no calendar can hold it.
func settled(now time.Time) (time.Time, error) {
	now = now.UTC().Truncate(time.Second)
	if !datable(dayOf(now)) {
		return now, &Unwritable{fmt.Sprintf("the clock says %s", now.Format(time.DateOnly)), "set it right"}
	}
	return now, nil
}

// first is the SEQUENCE of an event that is new: the minutes since 2020.
func first(now time.Time) int {
	return max(0, int(now.Sub(time.Date(2020, 1, 1, 0, 0, 0, 0, time.UTC)).Minutes()))
}

// Anew makes the calendar of a program where the file that readers had before was not
// kept, so that nothing can be updated. It makes the same bytes whenever and wherever it
// runs on a day: every event has the SEQUENCE given, and as its stamp the midnight that
// begins the day given for it. What is more than a year past is left out, as by [Update].
func Anew(p *schedule.Program, o Options, sequence int, stamp func(*schedule.Entry) schedule.Date, today schedule.Date) ([]byte, error) {
	c, err := choose(p, o)
	if err != nil {
		return nil, err
	}
	stamps := make(map[string]schedule.Date, len(p.Entries))
	for i := range p.Entries {
		stamps[p.Entries[i].UID] = stamp(&p.Entries[i])
	}
	c.forget(today)
	for i := range c.events {
		e := &c.events[i]
		day := stamps[e.UID]
		if !datable(day) {
			return nil, &Unwritable{fmt.Sprintf("%s is stamped with the day %q", e.words(), day), "a calendar holds the years 1970 to 2200"}
		}
		e.Sequence, e.Stamp = sequence, day.Time()
	}
	return encode(c)
}

// forget leaves out what is more than a year past on a day, unless nothing else is there:
// the program of a class long past can still be looked at.
func (c *calendar) forget(today schedule.Date) {
	old := func(e Event) bool { return today.After(e.Date.AddMonths(historyMonths)) }
	if slices.ContainsFunc(c.events, func(e Event) bool { return !old(e) }) {
		c.events = slices.DeleteFunc(c.events, old)
	}
}

// close adds the closing sentence of the options to the last event.
func (c *calendar) close(words string) {
	if words == "" || len(c.events) == 0 {
		return
	}
	last := slices.MaxFunc(c.events, byDay)
	i := slices.IndexFunc(c.events, func(e Event) bool { return e.UID == last.UID })
	c.events[i].Description = strings.TrimSpace(c.events[i].Description + "\n\n" + clean(words))
}
