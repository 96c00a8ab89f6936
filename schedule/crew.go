package schedule

import (
	"fmt"
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

// Roster is who does which job when, the whole crew on one page.
type Roster struct {
	People []PersonRoster `json:"people"` // in the order of the file
	Nobody []RosterJob    `json:"nobody"` // jobs that no person has
	Left   []RosterLeft   `json:"left_out"`
}

// RosterLeft is a job that fell out, so that whoever counts on it knows.
type RosterLeft struct {
	ID        string `json:"id"`
	Job       string `json:"job"` // what and where
	Who       string `json:"who,omitzero"`
	WhoName   string `json:"who_name,omitzero"`
	Reason    string `json:"reason"`
	CarriedTo Date   `json:"carried_to,omitzero"`
}

// PersonRoster is what one person has to do, and has done.
type PersonRoster struct {
	ID     string      `json:"id"`
	Name   string      `json:"name"`
	Absent []Span      `json:"absent,omitzero"`
	Jobs   []RosterJob `json:"jobs"`
}

// RosterJob is one job of a roster.
type RosterJob struct {
	ID       string `json:"id"`
	Date     Date   `json:"date"`
	Title    string `json:"title"`
	AreaName string `json:"area_name,omitzero"`
	State    string `json:"state"`
}

// Roster deals the jobs of the program out to the crew, as of a day. Notices are
// nobody's work and not in it.
func (p *Program) Roster(today Date) Roster {
	p = p.Settled(today)
	r := Roster{People: []PersonRoster{}, Nobody: []RosterJob{}, Left: []RosterLeft{}}
	for _, who := range p.Site.Crew.People {
		r.People = append(r.People, PersonRoster{ID: who.ID, Name: who.Name, Absent: who.Absent, Jobs: []RosterJob{}})
	}
	for i := range p.Entries {
		e := &p.Entries[i]
		if e.Kind.Notice() {
			continue
		}
		j := RosterJob{ID: e.ID, Date: e.Date, Title: e.Title, AreaName: e.AreaName, State: p.Standing(e, today)}
		jobs := &r.Nobody
		if k := slices.IndexFunc(r.People, func(who PersonRoster) bool { return who.ID == e.Who }); k >= 0 {
			jobs = &r.People[k].Jobs
		}
		*jobs = append(*jobs, j)
	}
	for _, l := range p.LeftOut {
		if l.Kind.Notice() {
			continue
		}
		o := RosterLeft{ID: l.ID, Job: word.Capital(l.Kind.Noun()), Who: p.Site.Who(l.ID), Reason: l.Reason, CarriedTo: l.CarriedTo}
		if a := p.Site.Area(l.Area); a != nil {
			o.Job += " on " + a.Name
		}
		if o.Who != "" {
			o.WhoName = p.Site.PersonName(o.Who)
		}
		r.Left = append(r.Left, o)
	}
	return r
}

// Idle lists the persons without a job.
func (r Roster) Idle() []PersonRoster {
	return slices.DeleteFunc(slices.Clone(r.People), func(who PersonRoster) bool { return len(who.Jobs) > 0 })
}

// CrewDoubts warns of jobs that are nobody's while others have a person, of persons
// without a job, and of a name under [crew.who] that means no job of the program.
func (p *Program) CrewDoubts(today Date) (out []Problem) {
	r := p.Roster(today)
	doubt := func(key, message, hint string) {
		out = append(out, Problem{Key: key, Message: message, Hint: hint, Warning: true})
	}
	dealt := slices.ContainsFunc(r.People, func(who PersonRoster) bool { return len(who.Jobs) > 0 })
	var open []string
	for _, j := range r.Nobody {
		if j.State != string(Finished) && j.State != string(Missed) {
			open = append(open, j.ID)
		}
	}
	count := len(open)
	for i, id := range open { // the names by which they can be given away
		open[i] = id[:strings.LastIndexByte(id, '/')]
	}
	open = Unique(open)
	if dealt && len(open) > 0 {
		doubt("crew.who", fmt.Sprintf("nobody has %s: %s", word.Plural(count, "job"), word.List(open)), "give one of these, a kind or an area to a person; swardbook roster shows the whole")
	}
	for _, who := range r.Idle() {
		doubt("crew.people."+who.ID, who.Name+" has no job", "give one under [crew.who], or take the person out")
	}
	for _, a := range p.Site.Crew.Who {
		meant := func(id string) bool { return exactness(a.Jobs, id) > 0 }
		if !slices.ContainsFunc(p.Entries, func(e Entry) bool { return meant(e.ID) }) && !slices.ContainsFunc(p.LeftOut, func(l LeftOut) bool { return meant(l.ID) }) {
			doubt("crew.who."+quotedKey(a.Jobs), "the program has no such job", "if it is a job of an earlier season, the line has done its work and may go")
		}
	}
	return out
}

// quotedKey writes a name of jobs as it must stand in the file.
func quotedKey(name string) string {
	if strings.Contains(name, "/") {
		return `"` + name + `"`
	}
	return name
}
