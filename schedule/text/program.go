package text

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// Program writes a program so that the first screen says what to do: what is
// due and what comes next, then all jobs a line each, what limits each area and
// what it needs, what was left out, and what was assumed.
func Program(p *schedule.Program, style Style) string {
	s := newSheet(style)
	s.program(p)
	s.para(0, "More: swardbook why FILE JOB; swardbook program FILE --full")
	return s.String()
}

// Full writes the whole program: the place's year, each job with its window,
// and the law after what [Program] writes.
func Full(p *schedule.Program, style Style) string {
	s := newSheet(style)
	s.program(p)
	s.place(p)
	s.jobs(p)
	s.list("If nothing more is bought", p.InTheShed)
	s.law(p)
	return s.String()
}

// Next writes the next n jobs, with how to do them and what to take care of.
func Next(p *schedule.Program, n int, style Style) string {
	s := newSheet(style)
	s.head(p.Title)
	s.next(p, n)
	return s.String()
}

// Nothing says in one line that a person has no jobs.
func Nothing(p *schedule.Program, who string, style Style) string {
	s := newSheet(style)
	s.para(0, fmt.Sprintf("%s has no jobs in %s, %s.", who, p.Title, between(p.Start, p.Through)))
	return s.String()
}

func (s *sheet) program(p *schedule.Program) {
	title := p.Title
	if !s.Today.IsZero() {
		title += ", " + s.Today.Words()
	}
	s.head(title)
	s.para(0, where(p)+", "+between(p.Start, p.Through)+". "+s.standing(p))
	for _, t := range p.Awaited {
		s.gap()
		s.para(0, t)
	}
	s.ahead(p)
	s.everyJob(p)
	s.limits(p)
	s.left(p)
	s.assumed(p)
	s.lawLine(p)
}

// where names the place in a few words.
func where(p *schedule.Program) string {
	var all []string
	if place := cmp.Or(p.Place.Where, p.Place.State); place != "" {
		all = append(all, place)
	}
	if p.Place.County != "" {
		all = append(all, "county "+p.Place.County)
	}
	if p.Place.Hardiness != "" {
		all = append(all, "zone "+p.Place.Hardiness)
	}
	if len(all) == 0 {
		return word.Capital("climate from " + p.Place.ClimateFrom)
	}
	return strings.Join(all, ", ")
}

// standing counts the jobs, and says what is taken as done.
func (s *sheet) standing(p *schedule.Program) string {
	n := takenAsDone(p, s.Today)
	switch {
	case s.Today.IsZero():
		return Count(p, s.Today)
	case n == 0:
		return Count(p, s.Today)
	}
	t := fmt.Sprintf("%s %s past, with no line in the record book: taken as done as planned until swardbook record says otherwise.", Count(p, s.Today), word.Plural(n, "job"))
	if s.Today.After(p.Start) && !onRecord(p) {
		t += " To begin today instead, write start = " + s.Today.String() + "."
	}
	return t
}

// onRecord tells whether anything of the program is in the record book.
func onRecord(p *schedule.Program) bool {
	return slices.ContainsFunc(p.Cases, func(c *schedule.Case) bool {
		return slices.ContainsFunc(c.Down, func(d schedule.Down) bool { return d.Line > 0 })
	})
}

// left writes what found no day, one line for areas with the same reason.
func (s *sheet) left(p *schedule.Program) {
	type line struct {
		what, why string
		areas     []string
	}
	var lines []line
	for _, l := range p.LeftOut {
		n := line{what: word.Capital(l.Kind.Noun()), why: word.Sentence(l.Reason)}
		if !l.CarriedTo.IsZero() {
			n.why += " Next time " + l.CarriedTo.Short() + "."
		}
		i := slices.IndexFunc(lines, func(m line) bool { return m.what == n.what && m.why == n.why })
		if i < 0 {
			i, lines = len(lines), append(lines, n)
		}
		if name := areaName(p, l.Area); name != "" && len(p.Areas) > 1 && !slices.Contains(lines[i].areas, name) {
			lines[i].areas = append(lines[i].areas, name)
		}
	}
	if len(lines) == 0 {
		return
	}
	s.head("Left out")
	for _, l := range lines {
		what := l.what
		if len(l.areas) > 0 {
			what += ", " + word.List(l.areas)
		}
		s.hang(2, "-", what+": "+l.why)
	}
}

func areaName(p *schedule.Program, id string) string {
	for _, a := range p.Areas {
		if a.ID == id {
			return a.Name
		}
	}
	return ""
}

// assumed writes what the program takes for granted, one line for areas of
// which the same is said, and what the shed alone will do for an area.
func (s *sheet) assumed(p *schedule.Program) {
	type line struct {
		text  string
		areas []string
	}
	var lines []line
	add := func(area, text string) {
		i := slices.IndexFunc(lines, func(m line) bool { return m.text == text && (len(m.areas) > 0) == (area != "") })
		if i < 0 {
			i, lines = len(lines), append(lines, line{text: text})
		}
		if area != "" {
			lines[i].areas = append(lines[i].areas, area)
		}
	}
	for _, t := range slices.Concat(p.Assumptions, p.InTheShed) {
		area, text := "", t
		for _, a := range p.Areas {
			if rest, ok := strings.CutPrefix(t, a.Name+": "); ok && a.Name != "" {
				area, text = a.Name, rest
			}
		}
		if area != "" || slices.Contains(p.Assumptions, t) {
			add(area, text)
		}
	}
	if p.Site != nil {
		if spend, ok := p.Spending(p.Supplies()); ok && !spend.Reaches() {
			add("", spend.Words())
		}
	}
	if p.Season.SpreadDays > 0 {
		add("", fmt.Sprintf("8 years in 10 the autumn days fall within %s of these; trust a soil thermometer over them", word.Plural(p.Season.SpreadDays, "day")))
	}
	if len(lines) == 0 {
		return
	}
	s.head("Assumed")
	for _, l := range lines {
		if len(l.areas) > 0 && len(p.Areas) > 1 {
			l.text = word.List(l.areas) + ": " + l.text
		}
		s.hang(2, "-", word.Capital(word.Sentence(l.text)))
	}
}

// lawLine names the law in one line; the full program has its words.
func (s *sheet) lawLine(p *schedule.Program) {
	var all []string
	for _, l := range p.Laws {
		if !slices.Contains(all, l.Citation) {
			all = append(all, l.Citation)
		}
	}
	if most := 3; len(all) > most { // [common] the full program has them all
		all = append(all[:most-1], word.Plural(len(all)-most+1, "more provision"))
	}
	s.gap()
	switch {
	case len(all) > 0:
		s.para(0, "Law: "+word.List(all)+"; local codes may add to it, and the label counts before all. No legal advice: ask the extension office.")
	case len(p.LawNotes) > 0:
		s.para(0, "Law: none found here; ask the extension office. The label counts before all.")
	}
}
