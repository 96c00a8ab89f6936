package ical

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"swardbook/schedule"
)

// calendar is a file: what it is called, and its events.
type calendar struct {
	id     string // names site, area, person and kinds
	name   string // at most 40 characters
	source string // public address; "" none
	events []Event
	shared *Shared // what is shared with other calendars of the program; nil: nothing
}

// choose makes the calendar that a program and the options ask for. Its events
// have neither SEQUENCE nor stamps yet. Jobs without a person are in nobody's
// own calendar; the notices for the whole site are in everybody's.
func choose(p *schedule.Program, o Options) (calendar, error) {
	c, err := head(p, &o)
	if err != nil {
		return c, err
	}
	link, remind := o.Page, usualRemind()
	if p.Site != nil {
		link = cmp.Or(p.Site.Calendar.Link, link)
		if p.Site.Calendar.Remind != nil {
			remind = p.Site.Calendar.Remind
		}
	}
	if link != "" {
		ok := false
		if link, ok = webLink(link); !ok {
			return c, &Unwritable{"calendar.link is no address that a calendar can hold", "write it as https://example.org/lawn/"}
		}
	}
	if len(remind) > 2 {
		return c, &Unwritable{fmt.Sprintf("the site asks for %d reminders", len(remind)), "give at most two, as some phones show no more"}
	}
	t := newTeller(p, o, link)
	seen := make(map[string]bool, len(p.Entries))
	c.events = make([]Event, 0, len(p.Entries))
	for i := range p.Entries {
		e := &p.Entries[i]
		switch {
		case !plainID(e.UID):
			return c, &Unwritable{fmt.Sprintf("job %s has the calendar id %q", e.ID, e.UID), "ids hold 1 to 255 letters, digits, hyphens, dots and at signs"}
		case seen[e.UID]:
			return c, &Unwritable{fmt.Sprintf("two jobs have the calendar id %s", e.UID), "one of them would be lost; give each job its own"}
		case !datable(e.Date):
			return c, &Unwritable{fmt.Sprintf("job %s falls on %q", e.ID, e.Date), "a calendar holds the years 1970 to 2200"}
		case oneLine(e.Title) == "":
			return c, &Unwritable{fmt.Sprintf("job %s has no title", e.ID), "an event without one shows as an empty line"}
		}
		seen[e.UID] = true
		if o.holds(e) {
			c.events = append(c.events, Event{UID: e.UID, Content: o.Shared.content(t, e, remind)})
		}
	}
	c.close(o.Closing)
	return c, nil
}

// holds tells whether a job belongs to the calendar.
func (o *Options) holds(e *schedule.Entry) bool {
	if o.Kinds != nil && !slices.Contains(o.Kinds, e.Kind) {
		return false
	}
	if e.Kind.Notice() && e.Area == "" {
		return true
	}
	return (o.Area == "" || e.Area == o.Area) && (o.Person == "" || e.Who == o.Person)
}

// head names the calendar and checks the options. It gives them back with their addresses
// checked and their kinds in the order of the table of kinds.
func head(p *schedule.Program, o *Options) (calendar, error) {
	var c calendar
	var choice []string
	if o.Area != "" {
		i := slices.IndexFunc(p.Areas, func(a schedule.AreaShown) bool { return a.ID == o.Area })
		if i < 0 {
			return c, &Unwritable{fmt.Sprintf("the site has no area %q", o.Area), "its areas are " + areaIDs(p)}
		}
		choice = append(choice, p.Areas[i].Name)
	}
	if o.Person != "" {
		name, ok := personName(p, o.Person)
		if !ok {
			return c, &Unwritable{fmt.Sprintf("the site has no person %q", o.Person), "name one from [crew.people]"}
		}
		choice = append(choice, name)
	}
	if err := o.settle(p); err != nil {
		return c, err
	}
	for _, k := range o.Kinds {
		choice = append(choice, k.String())
	}
	c.id, c.source, c.shared = o.id(p.SiteID), o.Address, o.Shared
	if !plainID(c.id) {
		return c, &Unwritable{fmt.Sprintf("the calendar would be called %q", c.id), "ids hold letters, digits and hyphens, and fewer kinds make it shorter"}
	}
	c.name = calendarName(p, choice)
	return c, nil
}

// id names the calendar: the site, and what part of it was chosen.
func (o *Options) id(site string) string {
	if o.Area != "" {
		site += ".area-" + o.Area
	}
	if o.Person != "" {
		site += ".for-" + o.Person
	}
	for _, k := range o.Kinds {
		site += "." + k.String()
	}
	return site
}

// settle checks the addresses, and puts the kinds in the order of the table of kinds.
func (o *Options) settle(p *schedule.Program) error {
	if o.Kinds != nil {
		all := p.Kinds()
		for _, k := range o.Kinds {
			if !slices.Contains(all, k) {
				return &Unwritable{fmt.Sprintf("%q is no kind of job", k), fmt.Sprint("the kinds are ", all)}
			}
		}
		o.Kinds = slices.DeleteFunc(all, func(k schedule.Kind) bool { return !slices.Contains(o.Kinds, k) })
	}
	for _, address := range []*string{&o.Address, &o.Record, &o.Page} {
		if *address == "" {
			continue
		}
		link, ok := webLink(*address)
		if !ok {
			return &Unwritable{fmt.Sprintf("%q is no web address", *address), "write it as https://example.org/lawn.ics"}
		}
		*address = link
	}
	return nil
}

// nameLimit is how much of a calendar's name phones show. // [common]
const nameLimit = 40

// calendarName is the title of the site, and what part of it was chosen.
func calendarName(p *schedule.Program, choice []string) string {
	title := plainName(p.Title, nameLimit)
	if title == "" {
		title = plainName(p.SiteID, nameLimit)
	}
	if len(choice) == 0 {
		return title
	}
	part := plainName(strings.Join(choice, " "), nameLimit/2)
	return plainName(title, nameLimit-len([]rune(part))-len(" - ")) + " - " + part
}

func areaIDs(p *schedule.Program) string {
	var ids []string
	for _, a := range p.Areas {
		ids = append(ids, a.ID)
	}
	return strings.Join(ids, ", ")
}

func personName(p *schedule.Program, id string) (string, bool) {
	if p.Site != nil {
		for _, who := range p.Site.Crew.People {
			if who.ID == id {
				return who.Name, true
			}
		}
	}
	for _, e := range p.Entries {
		if e.Who == id {
			return e.WhoName, true
		}
	}
	return "", false
}

// datable tells whether a calendar may hold a day: one in a year that is no slip of the
// pen.
func datable(d schedule.Date) bool {
	return 1970 <= d.Year && d.Year <= 2200 && d == d.AddDays(0)
}

// dayOf gives the day on which a moment falls, in UTC.
func dayOf(t time.Time) schedule.Date {
	y, m, d := t.UTC().Date()
	return schedule.Date{Year: y, Month: m, Day: d}
}
