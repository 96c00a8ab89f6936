package rule

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/soil"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// soilTestJobs asks for a sample: at once where there is no report; between two
// dressings of lime; a year after sowing; a year after the last where sulfur,
// gypsum, phosphorus or potassium mends a shortage; else three years after it.
func soilTestJobs(c *Treatment) schedule.Proposal {
	var p schedule.Proposal
	how := soil.HowToSample(c.Future() && c.Area.Soil == nil)
	j := schedule.Job{Kind: schedule.SoilTest, N: c.Number(schedule.SoilTest)(), Area: c.Area}
	os := slices.Clone(c.Almanac.Open)
	last := c.Area.Sampled
	for i := range c.Down {
		if d := &c.Down[i]; d.Kind == schedule.SoilTest && !d.NotDone {
			last = schedule.Later(last, d.Date)
		}
	}
	first := c.limeDown()
	stale, tooOld := c.Stale()
	if c.Area.Soil == nil || tooOld { // a sample whose results never came is waited for a year at most
		if again := last.AddMonths(12); !last.IsZero() && !again.After(c.Start) { // [common]
			j.Why = []schedule.Reason{{Text: "No results of the sample of " + last.Short() + " have been entered."}}
			if tooOld {
				j.Why = append(j.Why, schedule.Reason{Text: stale + ".", Source: "psu-report-notes, vt-fall-2008, purdue-sampling"})
			}
			c.Finish(&p, j, os, schedule.Soonest)
			return p
		}
	}
	if c.Area.Soil != nil && last.After(c.Area.Sampled) && (first.IsZero() || !last.Before(first.AddMonths(how.AfterLime[0]-1))) {
		p.Leave(c.Area, schedule.SoilTest, j.N, "the sample of "+last.Short()+" decides; enter its results in the site file", "")
		return p
	}
	switch {
	case c.Area.Soil == nil && last.IsZero():
		j.Why = []schedule.Reason{{Text: "There is no soil report, so lime, phosphorus and potassium cannot be planned yet."}}
		c.Finish(&p, j, os, schedule.Soonest)
		return p
	case c.Area.Soil == nil:
		text := "a sample was taken on " + last.Short() + "; enter its results in the site file"
		if !c.Answer.IsZero() {
			text = "a sample was taken on " + last.Short() + "; its answer is expected by " + c.Answer.Short()
		}
		p.Leave(c.Area, schedule.SoilTest, j.N, text, "")
		return p
	case !first.IsZero():
		from, to := first.AddMonths(how.AfterLime[0]), first.AddMonths(how.AfterLime[1])
		j.Why = []schedule.Reason{{Text: fmt.Sprintf("Lime goes down first; a sample %d to %d months later shows how far the pH has moved, before any more lime.", how.AfterLime[0], how.AfterLime[1]), Source: "psu-report-notes, uga-792"}}
		os = schedule.Meet(os, []schedule.Opening{{Span: schedule.Span{From: from, To: to}, Opens: fmt.Sprintf("%d months after the lime", how.AfterLime[0]), Closes: fmt.Sprintf("%d months after the lime", how.AfterLime[1])}})
		c.Finish(&p, j, os, schedule.At(from.AddDays(7)))
		return p
	case !c.Seeded.IsZero() && last.Before(c.Seeded.AddMonths(6)):
		due := c.Seeded.AddMonths(12)
		j.Why = []schedule.Reason{{Text: "A new lawn is sampled again after its first year.", Source: "common"}}
		os = schedule.Meet(os, []schedule.Opening{{Span: schedule.Span{From: due.AddDays(-30), To: due.AddDays(120)}, Opens: "a year after sowing", Closes: "four months later"}})
		c.Finish(&p, j, os, schedule.At(due))
		return p
	}
	_, sodic := soil.GypsumOf(c.Report)
	if sodic || c.lowersPH() && c.Report.PH <= soil.SulfurFreeLime {
		due := last.AddMonths(12)
		j.Why = []schedule.Reason{{Text: "While sulfur goes down, a sample each year decides whether to go on.", Source: "purdue-sulfur"}}
		if sodic {
			j.Why = []schedule.Reason{{Text: "While gypsum goes down, a sample each year shows what sodium is left.", Source: "common"}}
		}
		os = schedule.Meet(os, []schedule.Opening{{Span: schedule.Span{From: due, To: due.AddDays(150)}, Opens: "a year after the last sample", Closes: "five months later"}})
		c.Finish(&p, j, os, schedule.Soonest)
		return p
	}
	if short := c.shortOf(); short != "" {
		due := last.AddMonths(12)
		j.Why = []schedule.Reason{{Text: "The soil is short of " + short + ", which the program makes up: a sample a year after the last shows how far it has come.", Source: "common"}}
		if due.Before(c.Start) {
			due = c.Start
		}
		os = schedule.Meet(os, []schedule.Opening{{Span: schedule.Span{From: due, To: due.AddDays(150)}, Opens: "a year after the last sample", Closes: "five months later"}})
		c.Finish(&p, j, os, schedule.Soonest)
		return p
	}
	due := last.AddMonths(12 * how.RetestIn)
	j.Why = []schedule.Reason{{Text: fmt.Sprintf("The last sample is of %s; published intervals run from one to five years, three is the usual one.", last.Short()), Source: "psu-report-notes, vt-fall-2008, purdue-sampling"}}
	if due.Before(c.Start) {
		due = c.Start
		j.Why = append(j.Why, schedule.Reason{Text: "The report is more than three years old."})
	}
	if due.After(c.Through) {
		p.Left = append(p.Left, schedule.LeftOut{N: j.N, Kind: schedule.SoilTest, Area: c.Area.ID, CarriedTo: due,
			Reason: fmt.Sprintf("the report of %s is good for three years", last.Short()), Source: "psu-report-notes, vt-fall-2008, purdue-sampling"})
		return p
	}
	os = schedule.Meet(os, []schedule.Opening{{Span: schedule.Span{From: due, To: due.AddDays(150)}, Opens: "three years after the last sample", Closes: "five months later"}})
	c.Finish(&p, j, os, schedule.Soonest)
	return p
}

// shortOf names what the soil is short of and the program makes up.
func (c *Treatment) shortOf() string {
	var short []string
	for _, n := range []agronomy.Nutrient{agronomy.Phosphorus, agronomy.Potassium} {
		if l := soil.LevelIn(c.Report, n, c.Place.State); l == soil.Low || l == soil.VeryLow {
			short = append(short, string(n))
		}
	}
	return word.List(short)
}

// limeDown gives the day of the first dressing after the sample: on record, or
// the best day of the first one planned; unset without lime.
func (c *Treatment) limeDown() schedule.Date {
	for i := range c.Down {
		if d := &c.Down[i]; d.Kind == schedule.Lime && !d.NotDone && d.Date.After(c.Area.Sampled) && d.Dose.Rate > 0 {
			return d.Date
		}
	}
	if len(c.dressings.Jobs) == 0 {
		return schedule.Date{}
	}
	return c.dressings.Jobs[0].Windows[0].Ideal
}
