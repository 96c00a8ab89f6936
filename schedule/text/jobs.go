package text

import (
	"fmt"
	"strconv"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// jobs writes each dated job with its window.
func (s *sheet) jobs(p *schedule.Program) {
	if len(p.Entries) == 0 {
		return
	}
	s.head("Each job with its window")
	for i := range p.Entries {
		s.job(p, &p.Entries[i])
	}
}

// next writes the next jobs: what is due on a day, and what comes after it.
func (s *sheet) next(p *schedule.Program, n int) {
	s.para(0, "Next, from "+day(s.Today)+":")
	shown := 0
	for i := range p.Entries {
		e := &p.Entries[i]
		if st := p.Standing(e, s.Today); st != "due" && st != "planned" {
			continue
		}
		if shown++; shown > n {
			return
		}
		s.job(p, e)
		for _, step := range e.Steps {
			s.hang(6, "-", step)
		}
		if e.IfRain != "" {
			s.hang(6, "-", "Rain: "+e.IfRain)
		}
		if len(e.Cautions) > 0 {
			s.para(6, "Take care:")
		}
		for _, caution := range e.Cautions {
			s.hang(6, "-", caution)
		}
	}
	if shown == 0 {
		s.para(2, "nothing more in this program, which ends on "+p.Through.Short()+".")
	}
}

// job writes one job in a few lines.
func (s *sheet) job(p *schedule.Program, e *schedule.Entry) {
	s.gap()
	state := p.Standing(e, s.Today)
	title := clean(e.Date.Words() + ": " + e.Title)
	mark := ""
	switch state {
	case string(schedule.Taken):
		state += " as done"
	case string(schedule.Due):
		state += " until " + e.Latest.Short()
	}
	if state != string(schedule.Planned) {
		mark = " (" + state + ")"
	}
	lines := wrap(title, s.Width-4-len(mark))
	for i, l := range lines {
		indent := "  "
		if i > 0 {
			indent = "      "
		}
		if i == len(lines)-1 {
			s.b.WriteString(indent + s.bold(l) + s.faint(mark) + "\n")
		} else {
			s.b.WriteString(indent + s.bold(l) + "\n")
		}
	}
	s.para(6, e.Summary)
	s.para(6, when(e))
	var who []string
	if name := whoName(e); name != "" {
		who = append(who, "For "+name+".")
	}
	who = append(who, "Job: "+e.ID)
	s.para(6, strings.Join(who, " "))
	if e.Note != "" {
		s.para(6, "Record book: "+e.Note)
	}
}

// when writes the window of a job and its last safe day.
func when(e *schedule.Entry) string {
	if e.Kind.Notice() || e.State == schedule.Finished || e.Earliest.IsZero() || e.Latest.IsZero() {
		return ""
	}
	t := "Window " + between(e.Earliest, e.Latest)
	switch {
	case e.LastSafe == e.Latest:
		t += ", its last safe day"
	case !e.LastSafe.IsZero():
		t += "; last safe day " + e.LastSafe.Short()
	}
	if !e.Ideal.IsZero() && e.Ideal != e.Date {
		t += "; best about " + e.Ideal.Short()
	}
	return t + "."
}

func whoName(e *schedule.Entry) string {
	if e.WhoName != "" {
		return e.WhoName
	}
	return e.Who
}

func takenAsDone(p *schedule.Program, today schedule.Date) int {
	n := 0
	for i := range p.Entries {
		if p.Standing(&p.Entries[i], today) == string(schedule.Taken) {
			n++
		}
	}
	return n
}

// Count says how many jobs a program has, and in what state.
func Count(p *schedule.Program, today schedule.Date) string {
	jobs, notices, done, missed := 0, 0, 0, 0
	for i := range p.Entries {
		switch e := &p.Entries[i]; {
		case e.Kind.Notice():
			notices++
		case e.State == schedule.Finished:
			done++
		case e.State == schedule.Missed:
			missed++
		default:
			jobs++
		}
	}
	t := word.Plural(jobs, "job") + " planned"
	for _, c := range []struct {
		n    int
		what string
	}{{done, "done"}, {missed, "missed"}, {notices, "notice"}, {len(p.LeftOut), "left out"}} {
		switch {
		case c.n > 1 && c.what == "notice":
			t += fmt.Sprintf(", %d notices", c.n)
		case c.n > 0:
			t += fmt.Sprintf(", %d %s", c.n, c.what)
		}
	}
	return t + "."
}

// Entries gives the jobs of a program as a table with the fields of its JSON.
func Entries(p *schedule.Program, today schedule.Date) Table {
	t := Table{Columns: columns("date", "kind", "area", "title", "material", "#rate_lb_per_1000_sqft", "#amount_lb", "#amount_gal", "#packs",
		"#n_lb_per_1000_sqft", "#p2o5_lb_per_1000_sqft", "#k2o_lb_per_1000_sqft", "#water_in_inches", "earliest", "latest", "ideal", "who", "state", "id", "summary")}
	for i := range p.Entries {
		e := &p.Entries[i]
		t.add(e.Date.String(), e.Kind.String(), e.Area, e.Title, e.Material, figure(e.Rate), figure(e.Pounds), figure(e.Gallons), figure(e.Packs),
			figure(e.N), figure(e.P2O5), figure(e.K2O), figure(e.WaterIn), e.Earliest.String(), e.Latest.String(), e.Ideal.String(), whoName(e),
			p.Standing(e, today), e.ID, e.Summary)
	}
	return t
}

// Short gives the jobs of a program as a short table for people.
func Short(p *schedule.Program, today schedule.Date) Table {
	t := Table{Columns: columns("Date", "Job", "Window", "Who", "State", "Id")}
	for i := range p.Entries {
		e := &p.Entries[i]
		window := ""
		if !e.Kind.Notice() && !e.Earliest.IsZero() {
			window = between(e.Earliest, e.Latest)
		}
		t.add(e.Date.Words(), e.Title, window, whoName(e), p.Standing(e, today), e.ID)
	}
	return t
}

// figure writes a number for a spreadsheet: no unit, no thousands comma.
func figure[T ~float64](v T) string {
	return strconv.FormatFloat(round(float64(v)), 'f', -1, 64)
}
