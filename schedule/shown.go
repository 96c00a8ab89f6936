package schedule

import (
	"fmt"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/agronomy/soil"
	"swardbook/climate"
	"swardbook/schedule/word"
)

// Shown writes down what an area's report means.
func (c *Case) Shown() AreaShown {
	a := AreaShown{ID: c.Area.ID, Name: c.Area.Name, Size: c.Area.Size, Stand: c.Area.Stand.String(),
		Findings: []FindingShown{}, Needs: []Need{}, of: c.Area}
	isNew := c.Future() || c.Young(c.Start)
	if f, old := c.oldReport(); old {
		a.Findings = append(a.Findings, f)
	}
	for _, f := range soil.Findings(c.Report, c.Area.Stand, c.Place.State, isNew) {
		s := FindingShown{Rank: len(a.Findings) + 1, Reading: f.Reading, Value: f.Value, Unit: f.Unit, Level: f.Level, Text: f.Text, Source: f.Source, Why: f.Why}
		a.Findings = append(a.Findings, s)
	}
	if c.Area.Soil != nil {
		pale := soil.WhyPale(c.Report, c.Area.Stand, c.Place.State, isNew)
		for _, r := range pale.Fits {
			a.Pale = append(a.Pale, "Fits: "+r.Text)
		}
		for _, r := range pale.Against {
			a.Pale = append(a.Pale, "Does not fit: "+r.Text)
		}
		for _, r := range pale.LookNext {
			a.Pale = append(a.Pale, "Look next: "+r.Text)
		}
	}
	a.Needs = append(a.Needs, c.Needs...)
	a.Moved = c.moved()
	c.Site.speaker().area(&a)
	return a
}

// moved says how the readings moved from one report to the next, up to the one in
// force, and what was to be expected of the lime that went down between.
func (c *Case) moved() (out []string) {
	area := c.Site.Area(c.Area.ID)
	if area == nil {
		return nil
	}
	all := area.AllReports()
	years := map[int]int{}
	for _, r := range all {
		years[r.Sampled.Year]++
	}
	when := func(d Date) string { // the year, or the day where the year has several reports
		if years[d.Year] > 1 {
			return "on " + d.Short()
		}
		return fmt.Sprintf("in %d", d.Year)
	}
	for i := 1; i < len(all) && !all[i].Sampled.After(c.Area.Sampled); i++ {
		was, is := all[i-1], all[i]
		if was.Soil.PH > 0 && is.Soil.PH > 0 {
			before := *area
			before.Soil = was.Soil
			var down agronomy.PerThousand
			for _, d := range c.Down {
				if !d.NotDone && !d.Date.Before(was.Sampled) && d.Date.Before(is.Sampled) {
					down += c.EffectiveLime(&before, d.Dose)
				}
			}
			expected := ""
			cause := c.Site.LimeCase(&before)
			if ph, _, err := lime.ExpectedPH(cause, down); err == nil && down > 0 {
				expected = fmt.Sprintf("%.1f expected, ", float64(ph))
			} else if need, none := lime.Requirement(cause); none == nil && down > need.Rate && need.Rate > 0 {
				expected = fmt.Sprintf("%.1f or more expected, ", float64(need.Reaches))
			}
			out = append(out, fmt.Sprintf("pH %s %s, %s%s found %s", was.Soil.PH.Words(), when(was.Sampled), expected, is.Soil.PH.Words(), when(is.Sampled)))
		}
		for _, n := range []agronomy.Nutrient{agronomy.Phosphorus, agronomy.Potassium, agronomy.Magnesium} {
			x, y := was.Soil.Reading(n), is.Soil.Reading(n)
			if x.Given && y.Given {
				out = append(out, fmt.Sprintf("%s %s ppm %s, %s ppm found %s", n, word.Reading(float64(x.PPM)), when(was.Sampled), word.Reading(float64(y.PPM)), when(is.Sampled)))
			}
		}
	}
	return out
}

// oldReport is the finding that comes before all others where the report is over
// three years old at the start.
func (c *Case) oldReport() (f FindingShown, old bool) {
	years := soil.HowToSample(false).RetestIn
	if c.Area.Soil == nil || c.Area.Sampled.IsZero() || !c.Area.Sampled.AddMonths(12*years).Before(c.Start) {
		return f, false
	}
	text := fmt.Sprintf("It is of %s, over %d years old: take a sample before more lime, phosphorus or potassium goes down, for what follows may no longer hold.", c.Area.Sampled.Short(), years)
	return FindingShown{Rank: 1, Reading: "report", Level: soil.Unknown, Text: text, Source: "psu-report-notes",
		Why: []Reason{{Text: "Reports are repeated every one to five years, three being the usual interval.", Source: "psu-report-notes, vt-fall-2008"}}}, true
}

// Season lays the place's year around a day.
func (a *Almanac) Season(m word.Measure, grass climate.Season, from Date) Season {
	soil40 := a.SoilFalls(2, 40)
	s := Season{
		FirstFreeze:  a.odds(a.freeze, from),
		LastFreeze:   a.odds(a.LastFreeze(), from),
		SoilBelow50:  a.After(a.soil50, from),
		SoilBelow40:  a.After(soil40, from),
		GrowthEnds:   a.After(a.GrowthOf(grass).Ends, from),
		GrowthBegins: a.After(a.GrowthOf(grass).Begins, from),
		GroundFreeze: Freeze{Early: a.After(a.Ground.Early, from), Median: a.After(a.Ground.Median, from)},
		LastSafe:     a.After(a.Ground.LastSafe, from),
		Reopens:      a.After(a.Ground.Reopens, from),
	}
	fall := a.soil50
	if fall.Never {
		fall = a.freeze
	}
	s.SpreadDays = fall.Within()
	s.Spread40Days, s.SpringDays = soil40.Within(), a.GrowthOf(grass).Begins.Within()
	s.Words = append(s.Words, "ground: "+a.Ground.Kind.String())
	if s.SpreadDays > 0 {
		s.Words = append(s.Words, fmt.Sprintf("8 years in 10 the autumn soil dates lie within %s of these; trust a soil thermometer over the table", word.Plural(s.SpreadDays, "day")))
	}
	s.Words = append(s.Words, a.Notes...)
	return s
}

// odds gives the dates by which an event has come in 1, 5 and 9 years of 10.
func (a *Almanac) odds(w climate.When, from Date) Odds {
	if w.Never {
		return Odds{}
	}
	mid := a.After(w, from)
	return Odds{
		P10: mid.AddDays(-w.Before()),
		P50: mid,
		P90: mid.AddDays(w.After()),
	}
}

// Measure gives the site's own way of showing amounts.
func (s *Site) Measure() word.Measure { return word.Measure{Metric: s.Metric} }

// Amount writes the value of a finding with its unit: two decimals under 10,
// one under 100, none above, as no laboratory knows more.
func (f FindingShown) Amount() string {
	if f.Reading == "ph" {
		return agronomy.PH(f.Value).Words()
	}
	return strings.TrimSpace(word.Reading(f.Value) + " " + f.Unit)
}
