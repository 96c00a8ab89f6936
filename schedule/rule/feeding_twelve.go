package rule

import (
	"fmt"

	"swardbook/schedule"
)

// latest gives the last day on which a feed may go down.
func (c *Treatment) latest(f feed) schedule.Date {
	var last schedule.Date
	for _, o := range f.openings {
		last = schedule.Later(last, schedule.Earlier(o.To, c.Through))
	}
	return last
}

// hold cuts a season's amount to what the 12 months that end with it may still have.
func (b *nitrogenYear) hold(s *seasonPlan) {
	c, f := b.c, &b.c.feeding
	most, why := c.TwelveMonths()
	run := schedule.Span{From: s.inside.To.AddDays(-schedule.LastOf12), To: s.inside.To}
	room := most - (c.between(run, nitrogenOf) - s.down)
	for _, feeds := range [][]feed{f.starter, f.nitrogen, f.late} {
		for _, d := range feeds {
			if !c.latest(d).Before(run.From) {
				room -= d.dose.N
			}
		}
	}
	room = max(0, room)
	if s.amount <= room+1e-9 {
		return
	}
	if over := s.amount - room; over >= schedule.LeastDose && !b.young {
		f.found.Leave(c.Area, schedule.Nitrogen, b.n+1, fmt.Sprintf("%s of the %s share would pass %s in any 12 months: %s", c.Measure().NutrientRate(over, "N"), s.name, c.Measure().NutrientRate(most, "N"), why.Text), why.Source)
	}
	s.amount, s.held = room, true
	s.why = append(s.why, schedule.Reason{Text: fmt.Sprintf("only %.2f lb N/1000 sq ft is left of the most in any 12 months: %s", float64(room), why.Text), Source: why.Source})
}
