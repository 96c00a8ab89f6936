package text

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy/material"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// working writes reasons as numbered steps, each with its sources in short.
func (s *sheet) working(indent int, why []schedule.Reason) {
	var steps []string
	for _, r := range why {
		t := word.Capital(word.Sentence(r.Text))
		if from := word.ShortSources(r.Source); from != "" {
			t += " [" + from + "]"
		}
		steps = append(steps, t)
	}
	s.numbered(indent, steps)
}

// citations writes in full every source that reasons name, each once.
func (s *sheet) citations(why ...[]schedule.Reason) {
	var keys []string
	seen := map[string]bool{}
	for _, rs := range why {
		for _, r := range rs {
			for _, ref := range word.Cited(r.Source) {
				if !seen[ref.Key] {
					seen[ref.Key] = true
					keys = append(keys, ref.Key)
				}
			}
		}
	}
	if len(keys) == 0 {
		return
	}
	s.head("Sources")
	for _, key := range keys {
		for _, ref := range word.Cited(key) {
			s.hang(2, "-", reference(ref))
		}
	}
}

// reference names a source in full, says how far it was checked, and ends with
// its address.
func reference(r word.Reference) string {
	t := word.Sentence(r.Cite())
	if r.How != "" {
		t += " " + word.Capital(r.Checked()) + "."
	}
	if r.Where != "" {
		t += " " + r.Where
	}
	return t
}

// Why writes the working of one job: the dose, step by step from the report to
// the bag, then the window, and what kept the job from a better day.
func Why(p *schedule.Program, e *schedule.Entry, style Style) string {
	s := newSheet(style)
	s.head(e.Title)
	s.para(0, e.Summary)
	state := p.Standing(e, s.Today)
	if state == string(schedule.Due) {
		state += ", " + until(e)
		if !e.GoodDay.IsZero() {
			state += ", next good day " + weekday(e.GoodDay, s.Today)
		}
	}
	s.para(0, fmt.Sprintf("%s, %s; job %s.", e.Date.Words(), state, e.ID))
	if e.Note != "" {
		s.para(0, "Record book: "+e.Note)
	}
	s.dose(p, e)
	if len(e.Why) > 0 {
		s.head("How it is worked out")
		s.working(2, e.Why)
	}
	s.head("The day")
	if w := when(e); w != "" {
		s.para(2, w)
	}
	if e.Window != "" {
		s.para(2, word.Capital(word.Sentence(e.Window)))
	}
	if len(e.BoundBy) > 0 {
		for _, b := range e.BoundBy {
			s.hang(2, "-", word.Capital(word.Sentence(b)))
		}
	} else if !e.Ideal.IsZero() && e.State == schedule.Planned {
		s.para(2, "The best day was free.")
	}
	if len(e.Steps) > 0 {
		s.head("How to do it")
		s.numbered(2, e.Steps)
		if slices.ContainsFunc(e.Steps, func(t string) bool { return strings.Contains(t, "Catch test: ") }) {
			s.para(2, "What fell in a catch test, as a rate: swardbook figure spreader.")
		}
		if e.IfRain != "" {
			s.hang(2, "-", "Rain: "+e.IfRain)
		}
	}
	s.list("Take care", e.Cautions)
	if e.Material != "" {
		var all []string
		cautions := slices.Concat(material.Cautions(e.Dose.Material, material.Use(e.Kind.String())), material.WeatherCautions(e.Dose.Material))
		for _, r := range p.Reasons(cautions) {
			all = append(all, r.Text)
		}
		s.list("What goes with "+e.MaterialName+", in full", all)
	}
	grounds := p.Grounds(e)
	all := [][]schedule.Reason{e.Why}
	if len(grounds) > 0 {
		s.head("Where the other figures come from")
		for _, g := range grounds {
			s.para(2, g.Of)
			s.working(4, g.Why)
			all = append(all, g.Why)
		}
	}
	s.citations(all...)
	return s.String()
}

// dose writes what goes down and what it brings.
func (s *sheet) dose(p *schedule.Program, e *schedule.Entry) {
	if e.Rate == 0 {
		return
	}
	m := measure(p)
	s.head("Dose")
	name := e.MaterialName
	if name == "" {
		name = e.Material
	}
	if e.ToBuy {
		name += ", to buy"
	}
	t := Table{Columns: columns("", "")}
	t.add("Material", name)
	t.add("Rate", m.Rate(e.Rate))
	amount := m.Weight(e.Pounds)
	if e.Gallons > 0 {
		amount = m.Volume(e.Gallons) + ", " + amount
	}
	if e.Packs >= 0.05 { // smaller parts of a pack are not mentioned
		amount += ", " + word.Packs(e.Packs)
	}
	t.add("For the area", amount)
	var brings []string
	for _, n := range []struct {
		name string
		rate float64
	}{{"N", float64(e.N)}, {"P₂O₅", float64(e.P2O5)}, {"K₂O", float64(e.K2O)}} {
		if n.rate > 0 {
			brings = append(brings, nutrient(m, n.rate, n.name))
		}
	}
	if len(brings) > 0 {
		t.add("Brings", strings.Join(brings, "; "))
	}
	if e.SlowN > 0 {
		t.add("Of that slow", nutrient(m, float64(e.SlowN), "N"))
	}
	if e.WaterIn > 0 {
		t.add("Water in", m.Depth(e.WaterIn))
	}
	s.bare(2, t)
}

// LeftOut writes why a job has no day.
func LeftOut(l *schedule.LeftOut, style Style) string {
	s := newSheet(style)
	s.b.WriteString(s.bold(clean(l.ID)+" was left out") + "\n")
	s.para(0, word.Capital(word.Sentence(l.Reason)))
	if !l.CarriedTo.IsZero() {
		s.para(0, "Its next time is "+l.CarriedTo.Short()+".")
	}
	s.citations([]schedule.Reason{{Source: l.Source}})
	return s.String()
}

// Working writes the answer of one calculation by itself, what else there is
// to say of it, and how it comes about.
func Working(answer string, more []string, why []schedule.Reason, style Style) string {
	s := newSheet(style)
	s.head(answer)
	for _, m := range more {
		if len(more) == 1 {
			s.para(0, m)
		} else {
			s.hang(0, "-", m)
		}
	}
	if len(why) > 0 {
		s.head("How it is worked out")
		s.working(2, why)
	}
	s.citations(why)
	return s.String()
}

// Check writes the verdict on a site file, what the program assumes because the file does
// not say it, and what cannot be planned.
func Check(verdict string, p *schedule.Program, style Style) string {
	s := newSheet(style)
	s.para(0, verdict)
	s.list("Assumed, as the file does not say", p.Assumptions)
	s.leftOut(p.LeftOut)
	return s.String()
}

// round keeps three decimals of small amounts and two of large ones, so that
// no shown figure has a tail of nines.
func round(v float64) float64 {
	if math.Abs(v) >= 100 {
		return math.Round(v*100) / 100
	}
	return math.Round(v*1000) / 1000
}

// places writes v with a fixed number of decimals.
func places(v float64, n int) string { return strconv.FormatFloat(v, 'f', n, 64) }
