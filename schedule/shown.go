package schedule

import (
	"fmt"
	"math"

	"swardbook/agronomy/soil"
	"swardbook/climate"
)

// shown writes down what an area's report means.
func (c *Case) shown() AreaShown {
	a := AreaShown{ID: c.Area.ID, Name: c.Area.Name, Size: c.Area.Size, Stand: c.Area.Stand.String(),
		Findings: []FindingShown{}, Needs: []Need{}}
	isNew := c.future() || c.young(c.Start)
	for _, f := range soil.Findings(c.report, c.Area.Stand, c.Place.State, isNew) {
		s := FindingShown{Rank: f.Rank, Reading: f.Reading, Value: f.Value, Unit: f.Unit, Level: f.Level, Text: f.Text, Source: f.Source, Why: f.Why}
		a.Findings = append(a.Findings, s)
	}
	if c.Area.Soil != nil {
		pale := soil.WhyPale(c.report, c.Area.Stand, c.Place.State, isNew)
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
	a.Needs = append(a.Needs, c.needs...)
	return a
}

// season lays the place's year around the program.
func (a *almanac) season(m Measure, grass climate.Season) Season {
	s := Season{
		FirstFreeze:  a.odds(a.freeze, a.start),
		LastFreeze:   a.odds(a.LastFreeze(), a.start),
		SoilBelow50:  a.after(a.soil50, a.start),
		SoilBelow40:  a.after(a.SoilFalls(2, 40), a.start),
		GrowthEnds:   a.after(a.growth(grass).ends, a.start),
		GrowthBegins: a.after(a.growth(grass).begins, a.start),
		GroundFreeze: Freeze{Early: a.after(a.ground.Early, a.start), Median: a.after(a.ground.Median, a.start)},
		LastSafe:     a.after(a.ground.LastSafe, a.start),
		Reopens:      a.after(a.ground.Reopens, a.start),
	}
	fall := a.soil50
	if fall.Never {
		fall = a.freeze
	}
	s.SpreadDays = int(math.Round(1.2816 * fall.SD)) // [model] section 7: 8 years in 10
	s.Words = append(s.Words, "ground: "+a.ground.Kind.String())
	if s.SpreadDays > 0 {
		s.Words = append(s.Words, fmt.Sprintf("8 years in 10 the autumn soil dates lie within %s of these; trust a soil thermometer over the table", Plural(s.SpreadDays, "day")))
	}
	s.Words = append(s.Words, a.Notes...)
	return s
}

// odds gives the dates by which an event has come in 1, 5 and 9 years of 10.
func (a *almanac) odds(w climate.When, from Date) Odds {
	if w.Never {
		return Odds{}
	}
	mid := a.after(w, from)
	return Odds{
		P10: mid.AddDays(int(math.Round(w.Early() - w.D))),
		P50: mid,
		P90: mid.AddDays(int(math.Round(w.Late() - w.D))),
	}
}
