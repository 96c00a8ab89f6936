package ical

import (
	"slices"
	"strings"
	"time"

	"swardbook/schedule"
)

// goneDays is for how many days the calendar of a person or an area that has left the site
// keeps its cancelled events, before it ends. // [common]
const goneDays = 60

// ends stands in every event that was cancelled because its calendar ends.
const ends = "This calendar ends: its subscription can be removed."

// Gone tells whether the options name a person or an area that the site does not have: one
// that never was there, or that has left.
func Gone(p *schedule.Program, o Options) bool {
	if o.Person != "" {
		if _, known := personName(p, o.Person); !known {
			return true
		}
	}
	return o.Area != "" && !slices.ContainsFunc(p.Areas, func(a schedule.AreaShown) bool { return a.ID == o.Area })
}

// endCalendar cancels the jobs still to do in the calendar of a person or an area that has
// left the site, and says in them whose they are now; what is past stays. The days until
// the calendar ends count from the first event that was cancelled so; if there is none to
// cancel, it ends at once.
func endCalendar(old []byte, p *schedule.Program, o Options, now time.Time) (out []byte, changes Changes, err error) {
	if err := o.settle(p); err != nil {
		return nil, changes, err
	}
	c, now, err := readOwn(old, o.id(p.SiteID), now)
	if err != nil {
		return nil, changes, err
	}
	c.source = o.Address
	var since time.Time
	for i := range c.events {
		e := &c.events[i]
		switch {
		case e.Cancelled && strings.Contains(e.Description, ends):
			if since.IsZero() || e.Stamp.Before(since) {
				since = e.Stamp
			}
		case !e.Cancelled && stillToDo(*e, p, dayOf(now)):
			*e = e.revised(cancelled(*e, p, "\n"+ends), now)
			changes.Cancelled = append(changes.Cancelled, e.words())
		}
	}
	if since.IsZero() && changes.Cancelled == nil || !since.IsZero() && now.After(since.AddDate(0, 0, goneDays)) {
		changes = Changes{}
		for _, e := range c.events {
			changes.Dropped = append(changes.Dropped, e.words())
		}
		return nil, changes, nil
	}
	out, err = encode(c)
	return out, changes, err
}

// stillToDo tells whether an event is of a job that is not done and can still be done today
// or later.
func stillToDo(e Event, p *schedule.Program, today schedule.Date) bool {
	if over(e.Summary) || strings.HasPrefix(e.Summary, missedTitle) {
		return false
	}
	if !e.Date.Before(today) {
		return true
	}
	i := slices.IndexFunc(p.Entries, func(now schedule.Entry) bool { return now.UID == e.UID })
	return i >= 0 && p.Entries[i].State != schedule.Finished && p.Entries[i].State != schedule.Missed && !p.Entries[i].Latest.Before(today)
}
