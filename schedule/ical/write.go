package ical

import (
	"fmt"
	"slices"
	"strings"

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
	Closing string          // what the last event says besides, of the calendar and not of its job; "" nothing
}

// Unwritable is the error of [Write] and [Update] when the program and the
// options make no sound calendar.
type Unwritable struct{ Why, Hint string }

func (e *Unwritable) Error() string { return e.Why + "; " + e.Hint }

// Write makes the calendar of a program that has not been published before:
// every SEQUENCE is 0, and every stamp is midnight of the program's first day,
// so that no clock is needed. It fails with [*Unwritable] rather than write an
// empty calendar, two events with one id, or a link that no client can follow.
func Write(p *schedule.Program, o Options) ([]byte, error) {
	c, err := choose(p, o)
	if err != nil {
		return nil, err
	}
	if !datable(p.Start) {
		return nil, &Unwritable{fmt.Sprintf("the program starts on %q", p.Start), "a calendar holds the years 1970 to 2200"}
	}
	for i := range c.events {
		c.events[i].Stamp = p.Start.Time()
	}
	return encode(c)
}

// Anew makes the calendar of a program for a reader of earlier ones that nobody has
// kept: whoever makes it, and however often, gives the same bytes. Every event has the
// one SEQUENCE, and the midnight of its stamp's day. What lies over a year behind today is
// left out, as by [Update].
func Anew(p *schedule.Program, o Options, sequence int, stamp func(*schedule.Entry) schedule.Date, today schedule.Date) ([]byte, error) {
	c, err := choose(p, o)
	if err != nil {
		return nil, err
	}
	stamps := make(map[string]schedule.Date, len(p.Entries))
	for i := range p.Entries {
		stamps[p.Entries[i].UID] = stamp(&p.Entries[i])
	}
	c.events = slices.DeleteFunc(c.events, func(e Event) bool { return today.After(e.Date.AddMonths(historyMonths)) })
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

// close lets the last event say what the options ask for.
func (c *calendar) close(words string) {
	if words == "" || len(c.events) == 0 {
		return
	}
	last := slices.MaxFunc(c.events, byDay)
	i := slices.IndexFunc(c.events, func(e Event) bool { return e.UID == last.UID })
	c.events[i].Description = strings.TrimSpace(c.events[i].Description + "\n\n" + clean(words))
}
