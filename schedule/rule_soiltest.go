package schedule

import (
	"fmt"
	"slices"

	"swardbook/agronomy/soil"
)

// soilTestJobs asks for a sample: at once where there is no report; between two
// dressings of lime; a year after sowing; else three years after the last.
func soilTestJobs(c *treatment) proposal {
	var p proposal
	how := soil.HowToSample(c.future() && c.Area.Soil == nil)
	j := Job{Kind: SoilTest, N: c.number(SoilTest)(), Area: c.Area}
	os := slices.Clone(c.almanac.open)
	last := c.Area.Sampled
	for _, d := range c.down {
		if d.kind == SoilTest && !d.missed {
			last = Later(last, d.Date)
		}
	}
	first := c.limeDown()
	if c.Area.Soil != nil && last.After(c.Area.Sampled) && (first.IsZero() || !last.Before(first.AddMonths(how.AfterLime[0]-1))) {
		p.leave(c.Area, SoilTest, j.N, "a sample was taken on "+last.Short()+"; enter its results in the site file", "")
		return p
	}
	switch {
	case c.Area.Soil == nil && last.IsZero():
		j.Why = []Reason{{Text: "There is no soil report, so lime, phosphorus and potassium cannot be planned yet."}}
		c.finish(&p, j, os, soonest)
		return p
	case c.Area.Soil == nil:
		j.Why = []Reason{{Text: "A sample was taken on " + last.Short() + "; enter its results in the site file."}}
		p.leave(c.Area, SoilTest, j.N, j.Why[0].Text, "")
		return p
	case !first.IsZero():
		from, to := first.AddMonths(how.AfterLime[0]), first.AddMonths(how.AfterLime[1])
		j.Why = []Reason{{Text: fmt.Sprintf("Lime goes down first; a sample %d to %d months later shows how far the pH has moved, before any more lime.", how.AfterLime[0], how.AfterLime[1]), Source: "psu-report-notes, uga-792"}}
		os = meet(os, []opening{{Span{from, to}, fmt.Sprintf("%d months after the lime", how.AfterLime[0]), fmt.Sprintf("%d months after the lime", how.AfterLime[1])}})
		c.finish(&p, j, os, at(from.AddDays(7)))
		return p
	case !c.seeded.IsZero() && last.Before(c.seeded.AddMonths(6)):
		due := c.seeded.AddMonths(12)
		j.Why = []Reason{{Text: "A new lawn is sampled again after its first year.", Source: "common"}}
		os = meet(os, []opening{{Span{due.AddDays(-30), due.AddDays(120)}, "a year after sowing", "four months later"}})
		c.finish(&p, j, os, at(due))
		return p
	}
	if c.tooChalky() && c.report.PH <= soil.SulfurFreeLime {
		due := last.AddMonths(12)
		j.Why = []Reason{{Text: "While sulfur goes down, a sample each year decides whether to go on.", Source: "purdue-sulfur"}}
		os = meet(os, []opening{{Span{due, due.AddDays(150)}, "a year after the last sample", "five months later"}})
		c.finish(&p, j, os, soonest)
		return p
	}
	due := last.AddMonths(12 * how.RetestIn)
	j.Why = []Reason{{Text: fmt.Sprintf("The last sample is of %s; published intervals run from one to five years, three is the usual one.", last.Short()), Source: "psu-report-notes, vt-fall-2008, purdue-sampling"}}
	if due.Before(c.Start) {
		due = c.Start
		j.Why = append(j.Why, Reason{Text: "The report is more than three years old."})
	}
	if due.After(c.Through) {
		p.left = append(p.left, LeftOut{ID: j.ID(), Kind: SoilTest, Area: c.Area.ID, CarriedTo: due,
			Reason: fmt.Sprintf("the report of %s is good for three years", last.Short()), Source: "psu-report-notes, vt-fall-2008, purdue-sampling"})
		return p
	}
	os = meet(os, []opening{{Span{due, due.AddDays(150)}, "three years after the last sample", "five months later"}})
	c.finish(&p, j, os, soonest)
	return p
}

// limeDown gives the day of the first dressing after the sample: on record, or
// the best day of the first one planned; unset without lime.
func (c *treatment) limeDown() Date {
	for _, d := range c.down {
		if d.kind == Lime && !d.missed && d.Date.After(c.Area.Sampled) && d.dose.Rate > 0 {
			return d.Date
		}
	}
	if len(c.dressings.jobs) == 0 {
		return Date{}
	}
	return c.dressings.jobs[0].Windows[0].Ideal
}
