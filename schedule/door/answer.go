package door

import (
	"fmt"
	"slices"

	"swardbook/schedule"
	"swardbook/schedule/ask"
	"swardbook/schedule/ical"
	"swardbook/schedule/page"
	"swardbook/schedule/plan"
)

// Program plans the site that the answers describe, as of a day.
func Program(a ask.Answers, today schedule.Date) (*schedule.Program, error) {
	site, done, problems := Load(a, today)
	if site == nil {
		for _, p := range problems {
			if !p.Warning {
				return nil, fmt.Errorf("the answers do not make a site: %w", p)
			}
		}
	}
	last, err := plan.Through(site, today)
	if err != nil {
		return nil, err
	}
	return plan.Program(site, done, last)
}

// Answer gives the page of the program. to says where the page's links lead, and own
// gives the addresses of the calendar of one person or area. If there are answers from
// before, was, the page tells what moved since.
func Answer(a, was ask.Answers, to page.Answered, own func(Part) page.Own) ([]byte, error) {
	p, err := Program(a, to.Today)
	if err != nil {
		return nil, err
	}
	if was != nil {
		if to.Was, err = Program(was, to.Today); err != nil {
			to.Was = nil // these cannot be planned, as they may be of another release: there is nothing to compare with
		}
	}
	if own != nil {
		for _, part := range Parts(p)[1:] {
			to.Each = append(to.Each, own(part))
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

// Closing is what the last event of a link's calendar says about the calendar. It must hold
// for one that was subscribed to and for one that was saved.
const Closing = "This calendar holds one set of answers, and a saved copy of it does not update: the page under the link has the newest dates. Other answers make another link: subscribe to the new one, and remove this one."

// Part is one calendar of a link: of everything, of one person or of one area.
type Part struct {
	Name string
	ical.Options
}

// Path is where the calendar lies below its link, without ".ics"; "" that of everything.
func (p Part) Path() string {
	switch {
	case p.Person != "":
		return "person/" + p.Person
	case p.Area != "":
		return "area/" + p.Area
	}
	return ""
}

// Parts lists the calendars of a program: the whole one first, then those of people who
// have a job in it, then of areas, if there are several.
func Parts(p *schedule.Program) []Part {
	out := []Part{{Name: p.Title}}
	for _, who := range p.Site.Crew.People {
		if slices.ContainsFunc(p.Entries, func(e schedule.Entry) bool { return e.Who == who.ID }) {
			out = append(out, Part{who.Name, ical.Options{Person: who.ID}})
		}
	}
	if len(p.Site.Areas) > 1 {
		for _, a := range p.Site.Areas {
			out = append(out, Part{a.Name, ical.Options{Area: a.ID}})
		}
	}
	return out
}

// Calendar gives one calendar of a link, by its path, to save. Its events lead to the page
// under the link.
func Calendar(a ask.Answers, path string, today schedule.Date, link string) ([]byte, error) {
	p, err := Program(a, today)
	if err != nil {
		return nil, err
	}
	stamp, err := plan.Stamps(p.Site, today)
	if err != nil {
		return nil, err
	}
	for _, part := range Parts(p) {
		if part.Path() == path {
			part.Page, part.Closing = link, Closing
			return ical.Anew(p, part.Options, plan.Release, stamp, today)
		}
	}
	return nil, fmt.Errorf("there is no calendar of %q", path)
}
