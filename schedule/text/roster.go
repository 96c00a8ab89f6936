package text

import (
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// Roster writes who does which job when: person by person, then who has nothing,
// the jobs that nobody has, and those that were left out.
func Roster(title string, r schedule.Roster, style Style) string {
	s := newSheet(style)
	s.head(title)
	if len(r.People) == 0 {
		s.para(0, "The site file names no people; [crew.people] does, and [crew.who] assigns the jobs.")
	}
	for _, who := range r.People {
		if len(who.Jobs) > 0 {
			s.head(who.Name)
			s.absences(who)
			s.table(2, rosterJobs(who.Jobs))
		}
	}
	if idle := r.Idle(); len(idle) > 0 {
		s.head("Without a job")
		for _, who := range idle {
			s.hang(2, "-", who.Name)
			s.absences(who)
		}
	}
	if len(r.Nobody) > 0 {
		s.head("Nobody's")
		s.table(2, rosterJobs(r.Nobody))
	}
	if len(r.Left) > 0 {
		s.head("Left out")
	}
	for _, l := range r.Left {
		job := l.Job
		if l.WhoName != "" {
			job += ", " + l.WhoName
		}
		why := word.Sentence(l.Reason)
		if !l.CarriedTo.IsZero() {
			why += " Next time " + l.CarriedTo.Short() + "."
		}
		s.hang(2, "-", job+": "+why)
	}
	return s.String()
}

func (s *sheet) absences(who schedule.PersonRoster) {
	var away []string
	for _, span := range who.Absent {
		away = append(away, between(span.From, span.To))
	}
	if len(away) > 0 {
		s.para(2, "Away "+word.List(away)+".")
	}
}

func rosterJobs(jobs []schedule.RosterJob) Table {
	t := Table{Columns: columns("Date", "Job", "State", "Id")}
	for _, j := range jobs {
		t.add(j.Date.Words(), j.Title, j.State, j.ID)
	}
	return t
}

// RosterLines gives the roster as one table: a line a job in order of time within
// each person, a line without a job for a person who has none.
func RosterLines(r schedule.Roster) Table {
	t := Table{Columns: columns("who", "name", "date", "title", "area", "state", "id")}
	lines := func(id, name string, jobs []schedule.RosterJob) {
		for _, j := range jobs {
			t.add(id, name, j.Date.String(), j.Title, j.AreaName, j.State, j.ID)
		}
	}
	for _, who := range r.People {
		lines(who.ID, who.Name, who.Jobs)
		if len(who.Jobs) == 0 {
			t.add(who.ID, who.Name, "", "", "", "", "")
		}
	}
	lines("", "nobody", r.Nobody)
	return t
}
