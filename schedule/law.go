package schedule

import (
	"fmt"
	"slices"

	"swardbook/agronomy/material"
	"swardbook/schedule/law"
	"swardbook/schedule/word"
)

// NewLaw gives the law for the site's state and crew, tightened by the
// site's own local rules.
func NewLaw(s *Site) *SiteLaw {
	_, rules, err := law.For(s.Place.State, s.County, s.CrewIs())
	if err != nil {
		rules = nil
	}
	l := &SiteLaw{Rules: rules.With(s.Local), days: map[law.Nutrient][]string{}}
	l.AsksSlow = slices.ContainsFunc(l.Rules, func(r law.Rule) bool { return r.Kind == law.SlowNitrogen })
	return l
}

// CrewIs tells what the crew is to the law: homeowners, or people who are paid for it.
func (s *Site) CrewIs() law.Who {
	if s.Crew.Paid {
		return law.Paid
	}
	return law.Homeowner
}

// Question sets out what the law must know about the area. An unset day leaves
// dates aside.
func (c *Case) Question(on Date) law.Question {
	q := law.Question{
		State: c.Place.State, County: c.County, Who: c.CrewIs(), Local: c.Local,
		SlowShare: law.Unknown, WaterFeet: law.Unknown, ReportAgeMonths: law.Unknown,
		Grass: c.Area.Stand[0].Grass.Name,
	}
	day := on
	if on.IsZero() {
		day = c.Start
	} else {
		q.Date = law.MonthDay{Month: on.Month, Day: on.Day}
	}
	switch {
	case c.Future() || c.Young(day):
		q.Turf = law.New
	case c.Repaired(day):
		q.Turf = law.Repair
	}
	if c.Area.Soil != nil {
		q.Report = law.Enough
		if c.NoP == nil && c.NeedP.Year > 0 {
			q.Report = law.Low
		}
		if !c.Area.Sampled.IsZero() {
			q.ReportAgeMonths = max(0, Months(c.Area.Sampled, day))
		}
	}
	return q
}

// Months counts the completed months between two days.
func Months(from, to Date) int {
	n := (to.Year-from.Year)*12 + int(to.Month) - int(from.Month)
	if to.Day < from.Day {
		n--
	}
	return n
}

// closures are the spans of law and local rule that close days to a dose.
type closures []closure

type closure struct {
	law.ClosedSpan
	why string // put in words for the first day that is closed
}

// closuresFor gives the spans in which the law forbids a dose.
func (c *Case) closuresFor(d material.Dose) closures {
	n := Nutrients(d)
	if n == 0 {
		return nil
	}
	q := c.Asked
	q.P2O5Percent = float64(d.Material.Analysis.P2O5)
	q.Liquid = d.Material.Liquid
	q.SlowShare = d.Material.SlowShare
	var out closures
	for _, s := range c.Law.Closed(n) {
		if !s.Warn && s.Rule.LiftedBy(q) == 0 {
			out = append(out, closure{ClosedSpan: s})
		}
	}
	return out
}

// on says why d is closed; "" if it is open.
func (cl closures) on(d Date) string {
	m := law.MonthDay{Month: d.Month, Day: d.Day}
	for i := range cl {
		s := &cl[i]
		if !s.Span.Has(m) {
			continue
		}
		if s.why == "" {
			s.why = "closed by law: " + s.Rule.Statement() + " (" + s.Rule.Citation + ")"
		}
		return s.why
	}
	return ""
}

// LawReason gives a rule as a reason.
func LawReason(r law.Rule) Reason {
	return Reason{Text: r.Statement(), Source: r.Citation}
}

// PhosphorusShut asks the law whether phosphorus is shut for this area.
func (c *Case) PhosphorusShut() (Reason, bool) { return c.phosphorusShutBy(c.Asked) }

func (c *Case) phosphorusShutBy(q law.Question) (Reason, bool) {
	f, ok := c.Law.Phosphorus(q)
	if !ok || f.Verdict == law.Yes {
		return Reason{}, false
	}
	text := "the law here shuts phosphorus: " + f.Text
	if f.Verdict == law.MustAsk {
		text = "the law here does not settle it, so ask first: " + f.Text
	}
	return Reason{Text: text, Source: f.Rule.Citation}, true
}

// SiteLaw is the rules that a site stands under, and what they say of the day.
type SiteLaw struct {
	law.Rules
	AsksSlow bool // some rule asks for slow nitrogen
	days     map[law.Nutrient][]string
}

// OfTheDay gathers what the law says of ground, rain and paving into one
// sentence for each citation, once for the whole site.
func (l *SiteLaw) OfTheDay(n law.Nutrient) []string {
	if said, known := l.days[n]; known {
		return said
	}
	var cited []string
	says := map[string][]string{}
	add := func(f law.Finding, text string) {
		key := f.Rule.Brief()
		if f.Rule.Scope != "" {
			key += ", in " + f.Rule.Scope
		}
		if _, ok := says[key]; !ok {
			cited = append(cited, key)
		}
		if !slices.Contains(says[key], text) {
			says[key] = append(says[key], text)
		}
	}
	for _, f := range l.Ground(n) {
		add(f, "not on "+f.Rule.Ground.String()+" ground")
	}
	for _, f := range l.Rain(n) {
		add(f, "not in heavy rain or before it")
	}
	for _, f := range l.Impervious(n) {
		add(f, "nothing left on paving")
	}
	var out []string
	for _, key := range cited {
		out = append(out, fmt.Sprintf("By law %s (%s).", word.List(says[key]), key))
	}
	l.days[n] = out
	return out
}

// FirstDay gives the day on which the job's first window opens; its own day if it has no
// window.
func (j *Job) FirstDay() Date {
	if len(j.Windows) == 0 {
		return j.On
	}
	return j.Windows[0].From
}

// Nutrients names the nutrients of a dose that the law counts: none in lime.
func Nutrients(d material.Dose) law.Nutrient {
	var n law.Nutrient
	if d.Material.Kind == material.LimeMaterial {
		return 0
	}
	if d.N > 0 {
		n |= law.Nitrogen
	}
	if d.P2O5 > 0 {
		n |= law.Phosphorus
	}
	if d.K2O > 0 {
		n |= law.Potassium
	}
	return n
}
