package rule

import (
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
)

// starterN sums the nitrogen of the starters planned that may fall in a span.
func (c *Treatment) starterN(s schedule.Span) agronomy.PerThousand {
	var sum agronomy.PerThousand
	for _, f := range c.feeding.starter {
		if f.touches(s) {
			sum += f.dose.N
		}
	}
	return sum
}

// feedingsIn counts the feedings on record in a span, which take up room beside the
// doses still to come. A starter does not: the first feeding keeps its distance from
// it, see [Treatment.firstFeeds].
func (c *Treatment) feedingsIn(s schedule.Span) int {
	n := 0
	for _, d := range c.DownIn(s) {
		if d.Kind == schedule.Nitrogen && !d.NotDone {
			n++
		}
	}
	return n
}

// touches tells whether an opening of the feed reaches into a span.
func (d feed) touches(s schedule.Span) bool {
	return slices.ContainsFunc(d.openings, func(o schedule.Opening) bool { return !o.To.Before(s.From) && !o.From.After(s.To) })
}

// hasN and quickN tell the materials with nitrogen, and those of them that act quickly.
func hasN(m material.Material) bool   { return m.Analysis.N > 0 }
func quickN(m material.Material) bool { return hasN(m) && !slowN(m) }

// slowN tells the materials that count as slow nitrogen.
func slowN(m material.Material) bool { return nutrient.ThingsOf(m)&nutrient.SlowNDown != 0 }

// lastN tells which last useful day a material's nitrogen has.
func lastN(m material.Material) nutrient.LastKind {
	if slowN(m) {
		return nutrient.LastSlowN
	}
	return nutrient.LastSolubleN
}

// fits counts the doses of a material that find room in the openings at their
// spacing, on days on which the crew works.
func (c *Treatment) fits(os []schedule.Opening, inside schedule.Span, m material.Material, dose agronomy.PerThousand) int {
	gap, _ := nutrient.Between(nutrient.ThingsOf(m), nutrient.ThingsOf(m), false)
	days := max(1, gap.Days)
	if quick := dose * agronomy.PerThousand(1-m.SlowShare); 2*quick > c.MostN.Soluble30Days {
		days = max(days, schedule.QuickDays)
	}
	n := 0
	var next schedule.Date
	for _, o := range os {
		last := schedule.Earlier(o.To, inside.To)
		for d := schedule.Later(schedule.Later(o.From, inside.From), next); !d.After(last); d = d.Next() {
			if _, away := c.Crew.AwayOn(d); !away && c.Crew.Works(d) {
				n++
				d = d.AddDays(days - 1)
				next = d.AddDays(1)
			}
		}
	}
	return n
}

// fits is [Treatment.fits] for the doses of a season, less those that were planned before
// and found no day beside the other jobs.
func (b *nitrogenYear) fits(s *seasonPlan, os []schedule.Opening, inside schedule.Span, m material.Material, dose agronomy.PerThousand) int {
	return max(0, b.c.fits(os, inside, m, dose)-b.inVain(s))
}

// inVain counts the doses of a season that found no day beside the other jobs.
func (b *nitrogenYear) inVain(s *seasonPlan) (n int) {
	for number, times := range b.c.NoFeeding {
		if s.numbers(number) {
			n += times
		}
	}
	return n
}

// noDay says that doses of a season found no day beside the other jobs; "" if none was
// planned in vain.
func (b *nitrogenYear) noDay(s *seasonPlan) string {
	if b.inVain(s) == 0 {
		return ""
	}
	return "the distance from other jobs, and the days that are closed, leave no day for one more"
}

// closing says what ended the days of a season: the last useful day, else what closes
// its last opening.
func closing(os []schedule.Opening, why []schedule.Reason) string {
	if len(why) > 0 {
		return why[0].Text
	}
	if len(os) > 0 {
		return os[len(os)-1].Closes
	}
	return "the ground is not open or growth has ended"
}
