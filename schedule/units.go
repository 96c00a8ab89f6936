package schedule

import (
	"strings"

	"swardbook/schedule/word"
)

// speaker puts sentences into metric units where the site is metric: they are made in the
// units of the sources.
type speaker struct {
	word.Measure
	names []string // of areas and materials, which stay as a person wrote them
}

func (s *Site) speaker() speaker {
	sp := speaker{Measure: s.Measure()}
	if !s.Metric {
		return sp
	}
	for _, a := range s.Areas {
		sp.names = append(sp.names, a.Name)
	}
	for _, d := range s.Materials {
		sp.names = append(sp.names, d.Name, d.ID)
	}
	return sp
}

// say changes texts in place.
func (sp speaker) say(texts ...*string) {
	for _, t := range texts {
		*t = sp.Say(*t, false, sp.names...)
	}
}

// all gives changed copies of texts, and leaves these, which cases share, as they are.
func (sp speaker) all(texts []string) []string {
	if len(texts) == 0 {
		return texts
	}
	out := make([]string, len(texts))
	for i, t := range texts {
		out[i] = sp.Say(t, false, sp.names...)
	}
	return out
}

// why is all for reasons.
func (sp speaker) why(rs []Reason) []Reason {
	if len(rs) == 0 {
		return rs
	}
	out := make([]Reason, len(rs))
	for i, r := range rs {
		out[i] = Reason{Text: sp.Say(r.Text, published(r.Source), sp.names...), Source: r.Source}
	}
	return out
}

// published tells the reasons that say what a source prints: its own figure then
// stands in brackets.
func published(source string) bool {
	for key := range strings.SplitSeq(source, ", ") {
		switch key {
		case "", "common", "definitions", "atomic-weights":
		default:
			return true
		}
	}
	return false
}

// Reasons gives reasons that the program does not hold in the units of its site.
func (p *Program) Reasons(rs []Reason) []Reason {
	if !p.Metric || p.Site == nil {
		return rs
	}
	return p.Site.speaker().why(rs)
}

// area puts what is shown of an area into the site's units.
func (sp speaker) area(a *AreaShown) {
	if !sp.Metric {
		return
	}
	for i := range a.Findings {
		f := &a.Findings[i]
		sp.say(&f.Text)
		f.Why = sp.why(f.Why)
	}
	for i := range a.Needs {
		n := &a.Needs[i]
		sp.say(&n.Text)
		n.Why = sp.why(n.Why)
	}
	a.Pale, a.Moved = sp.all(a.Pale), sp.all(a.Moved)
}

// InSiteUnits puts every sentence of a program into the units of its site. Its
// areas have theirs from [Case.Shown].
func (p *Program) InSiteUnits() {
	if !p.Metric {
		return
	}
	sp := p.Site.speaker()
	for i := range p.Entries {
		for e := &p.Entries[i]; e != nil; e = e.Begun {
			sp.say(&e.Window, &e.IfRain, &e.Because, &e.Note)
			e.Steps, e.Cautions, e.BoundBy, e.Why = sp.all(e.Steps), sp.all(e.Cautions), sp.all(e.BoundBy), sp.why(e.Why)
		}
	}
	for i := range p.LeftOut {
		sp.say(&p.LeftOut[i].Reason)
	}
	for i := range p.Laws {
		p.Laws[i].Text = sp.Say(p.Laws[i].Text, true, sp.names...)
	}
	p.InTheShed, p.Assumptions, p.LawNotes = sp.all(p.InTheShed), sp.all(p.Assumptions), sp.all(p.LawNotes)
	p.Season.Words, p.Place.Better = sp.all(p.Season.Words), sp.all(p.Place.Better)
	sp.say(&p.Place.ClimateFrom)
}
