package schedule

import (
	"swardbook/agronomy/material"
	"swardbook/schedule/law"
)

// newLaw gives the law for the site's state and crew, tightened by the
// site's own local rules.
func newLaw(s *Site) *siteLaw {
	_, rules, err := law.For(s.Place.State, s.crewIs())
	if err != nil {
		rules = nil
	}
	return &siteLaw{rules.With(s.Local), map[law.Nutrient][]string{}}
}

func (s *Site) crewIs() law.Who {
	if s.Crew.Paid {
		return law.Paid
	}
	return law.Homeowner
}

// question sets out what the law must know about the area. An unset day leaves
// dates aside.
func (c *Case) question(on Date) law.Question {
	q := law.Question{
		State: c.Place.State, Who: c.crewIs(), Local: c.Local,
		SlowShare: law.Unknown, WaterFeet: law.Unknown, ReportAgeMonths: law.Unknown,
		Grass: c.Area.Stand[0].Grass.Name,
	}
	day := on
	if on.IsZero() {
		day = c.Start
	} else {
		q.Date = law.MonthDay{Month: on.Month, Day: on.Day}
	}
	if c.future() || c.young(day) {
		q.Turf = law.New
	}
	if c.Area.Soil != nil {
		q.Report = law.Enough
		if c.noP == nil && c.needP.Year > 0 {
			q.Report = law.Low
		}
		if !c.Area.Sampled.IsZero() {
			q.ReportAgeMonths = max(0, months(c.Area.Sampled, day))
		}
	}
	return q
}

// months counts the completed months between two days.
func months(from, to Date) int {
	n := (to.Year-from.Year)*12 + int(to.Month) - int(from.Month)
	if to.Day < from.Day {
		n--
	}
	return n
}

// closures are the spans of law and local rule that close days to a dose.
type closures []closure

type closure struct {
	span law.Span
	why  string
}

func (c *Case) closuresFor(d material.Dose) closures {
	n := nutrients(d)
	if n == 0 {
		return nil
	}
	q := c.asked
	q.P2O5Percent = float64(d.Material.Analysis.P2O5)
	q.Liquid = d.Material.Liquid
	q.SlowShare = d.Material.SlowShare
	var out closures
	for _, s := range c.law.Closed(n) {
		if !s.Warn && s.Rule.LiftedBy(q) == 0 {
			out = append(out, closure{s.Span, "closed by law: " + s.Rule.Statement() + " (" + s.Rule.Citation + ")"})
		}
	}
	return out
}

func (cl closures) on(d Date) string {
	m := law.MonthDay{Month: d.Month, Day: d.Day}
	for i := range cl {
		if cl[i].span.Has(m) {
			return cl[i].why
		}
	}
	return ""
}
