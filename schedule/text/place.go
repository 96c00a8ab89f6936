package text

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// place writes where the site is, and the dates of its year.
func (s *sheet) place(p *schedule.Program) {
	s.head("The place")
	var where []string
	switch {
	case p.Place.Where != "":
		where = append(where, p.Place.Where)
	case p.Place.State != "":
		where = append(where, p.Place.State)
	}
	if p.Place.Hardiness != "" {
		where = append(where, "hardiness zone "+p.Place.Hardiness)
	}
	where = append(where, "climate from "+p.Place.ClimateFrom)
	s.para(2, word.Sentence(strings.Join(where, ", ")))
	z, m := p.Season, measure(p)
	type row struct {
		what string
		day  schedule.Date
		note string
	}
	odds := func(o schedule.Odds) string {
		if o.P10.IsZero() || o.P90.IsZero() {
			return ""
		}
		return "8 years in 10: " + between(o.P10, o.P90)
	}
	soil := "Soil at " + m.Depth(2) + " under "
	rows := []row{
		{"First freeze", z.FirstFreeze.P50, odds(z.FirstFreeze)},
		{"Last freeze", z.LastFreeze.P50, odds(z.LastFreeze)},
		{soil + m.Temperature(50), z.SoilBelow50, ""},
		{"Growth ends", z.GrowthEnds, ""},
		{soil + m.Temperature(40), z.SoilBelow40, ""},
		{"Last safe day", z.LastSafe, "nothing goes down after it until the ground reopens"},
		{"Ground frozen", z.GroundFreeze.Median, early(z.GroundFreeze.Early)},
		{"Ground open again", z.Reopens, ""},
		{"Growth begins", z.GrowthBegins, ""},
	}
	rows = slices.DeleteFunc(rows, func(r row) bool { return r.day.IsZero() })
	slices.SortStableFunc(rows, func(a, b row) int { return a.day.Compare(b.day) })
	t := Table{Columns: columns("", "", "")}
	for _, r := range rows {
		t.add(r.what, r.day.Short(), r.note)
	}
	s.bare(2, t)
	for _, w := range z.Words {
		s.para(2, word.Capital(word.Sentence(w)))
	}
	if len(p.Place.Better) > 0 {
		s.para(2, "More exact with: "+word.Sentence(strings.Join(p.Place.Better, "; ")))
	}
}

func early(d schedule.Date) string {
	if d.IsZero() {
		return ""
	}
	return "in an early year by " + d.Short()
}

// area writes the heading of an area.
func (s *sheet) area(p *schedule.Program, a *schedule.AreaShown) {
	s.head(fmt.Sprintf("%s: %s, %s", a.Name, measure(p).Area(a.Size), a.Stand))
}

func measure(p *schedule.Program) word.Measure { return word.Measure{Metric: p.Metric} }

// needs writes the totals wanted, with their working if asked.
func (s *sheet) needs(a *schedule.AreaShown, working bool) {
	if len(a.Needs) == 0 {
		return
	}
	s.para(2, "Needs:")
	for _, n := range a.Needs {
		s.hang(4, "-", n.Text)
		if working {
			s.working(8, n.Why)
		}
	}
}

// leftOut writes the jobs that found no day.
func (s *sheet) leftOut(all []schedule.LeftOut) {
	if len(all) == 0 {
		return
	}
	s.head("Left out")
	for _, l := range all {
		s.hang(2, "-", leftOut(l))
	}
}

func leftOut(l schedule.LeftOut) string {
	t := l.ID + ": " + word.Sentence(l.Reason)
	if !l.CarriedTo.IsZero() {
		t += " Its next time is " + l.CarriedTo.Short() + "."
	}
	if from := word.ShortSources(l.Source); from != "" {
		t += " [" + from + "]"
	}
	return t
}

// law writes the rules that the program keeps, with where they stand.
func (s *sheet) law(p *schedule.Program) {
	if len(p.Laws)+len(p.LawNotes) == 0 {
		return
	}
	s.head("Law")
	for _, l := range p.Laws {
		s.hang(2, "-", fmt.Sprintf("%s [%s; as of %s; %s]", word.Sentence(l.Text), l.Citation, l.AsOf, l.Sure))
	}
	for _, n := range p.LawNotes {
		s.para(2, n)
	}
}

// bare writes a table without its heading.
func (s *sheet) bare(indent int, t Table) {
	if len(t.Rows) == 0 {
		return
	}
	widths := s.narrow(t, indent)
	for _, r := range t.Rows {
		s.row(indent, widths, t.Columns, r, false)
	}
}
