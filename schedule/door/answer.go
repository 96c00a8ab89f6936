package door

import (
	"fmt"

	"swardbook/schedule"
	"swardbook/schedule/ask"
	"swardbook/schedule/ical"
	"swardbook/schedule/page"
	"swardbook/schedule/plan"
)

// Program plans the answers as of a day.
func Program(a ask.Answers, today schedule.Date) (*schedule.Program, error) {
	site, done, problems := ask.Load(a, nil)
	if site == nil {
		for _, p := range problems {
			if !p.Warning {
				return nil, fmt.Errorf("the answers do not make a site: %w", p)
			}
		}
	}
	last, err := plan.LastDay(site, today)
	if err != nil {
		return nil, err
	}
	return plan.Program(site, done, last)
}

// Answer gives the page of the program; to says where its links lead. The answers from
// before, if there are any, are those that what moved is told against.
func Answer(a, was ask.Answers, to page.Answered) ([]byte, error) {
	p, err := Program(a, to.Today)
	if err != nil {
		return nil, err
	}
	if was != nil {
		if to.Was, err = Program(was, to.Today); err != nil {
			to.Was = nil // of another release, or spoilt: there is nothing to tell against
		}
	}
	return page.Answer(p.AsOf(to.Today), to)
}

// Sheet gives the page to print and pin up.
func Sheet(a ask.Answers, today schedule.Date, link string) ([]byte, error) {
	p, err := Program(a, today)
	if err != nil {
		return nil, err
	}
	return page.Sheet(p.Around(today), page.Options{Today: today, Link: link})
}

// closing is what the last event of a saved calendar says of it.
const closing = "This calendar is a copy and does not update. Its page, under the link, has the newest dates."

// Calendar gives the calendar to save, whose events lead to the page under the link.
func Calendar(a ask.Answers, today schedule.Date, link string) ([]byte, error) {
	p, err := Program(a, today)
	if err != nil {
		return nil, err
	}
	stamp, err := plan.Stamps(p.Site, today)
	if err != nil {
		return nil, err
	}
	return ical.Anew(p, ical.Options{Page: link, Closing: closing}, plan.Release, stamp, today)
}
