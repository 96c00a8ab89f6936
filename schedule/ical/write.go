package ical

import (
	"fmt"

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
