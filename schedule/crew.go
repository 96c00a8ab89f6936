package schedule

import (
	"slices"
	"strings"
	"time"

	"swardbook/schedule/word"
)

// Crew is who does the work, and when.
type Crew struct {
	Paid       bool
	Budget     float64        // for what is to be bought, in the site's own money; 0 none
	Days       []time.Weekday // empty: every day
	Away       []Span         // of the whole crew
	JobsPerDay int            // per person, or for the crew; 0 no limit
	People     []Person
	Who        []Assignment // in the order of the file
}

// Person is one of the crew.
type Person struct {
	ID, Name string
	Absent   []Span
}

// Assignment gives jobs to a person. Jobs names one by its id, or all of a kind in
// an area ("west/lime"), of an area, of a kind.
type Assignment struct{ Jobs, Person string }

// exactness says how exactly a name means the job of an id: by the id, the id
// without its season, its area and kind, its area, its kind; 0 not at all.
func exactness(name, id string) int {
	area, rest, _ := strings.Cut(id, "/")
	kind, number, _ := strings.Cut(rest, "/")
	_, n, _ := strings.Cut(number, "-")
	return 1 + slices.Index([]string{kind, area, area + "/" + kind, area + "/" + kind + "/" + n, id}, name)
}

// Who finds the person for the job of an id: the most exact name wins.
func (s *Site) Who(id string) string {
	who, best := "", 0
	for _, a := range s.Crew.Who {
		if n := exactness(a.Jobs, id); n > best {
			who, best = a.Person, n
		}
	}
	return who
}

// PersonName gives the name behind a person's id.
func (s *Site) PersonName(id string) string {
	for _, p := range s.Crew.People {
		if p.ID == id {
			return p.Name
		}
	}
	return id
}

// Works tells whether d is one of the crew's days.
func (cr *Crew) Works(d Date) bool {
	return len(cr.Days) == 0 || slices.Contains(cr.Days, d.Weekday())
}

// AwayOn tells whether the crew is away on d, and when.
func (cr *Crew) AwayOn(d Date) (Span, bool) { return spanWith(cr.Away, d) }

// absent gives the person of a job and the days when they are not there.
func (s *Site) absent(id string) (name string, days []Span) {
	if len(s.Crew.People) == 0 {
		return "", nil
	}
	who := s.Who(id)
	for _, p := range s.Crew.People {
		if p.ID == who {
			return p.Name, p.Absent
		}
	}
	return "", nil
}

func spanWith(all []Span, d Date) (Span, bool) {
	for _, s := range all {
		if s.Has(d) {
			return s, true
		}
	}
	return Span{}, false
}

// DayWords names the crew's days.
func (cr *Crew) DayWords() string {
	var names []string
	for _, w := range cr.Days {
		names = append(names, w.String())
	}
	return "work days are " + word.List(names)
}
