package schedule

import (
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
)

// starterN sums the nitrogen of the starters planned in a span.
func (c *treatment) starterN(s Span) agronomy.PerThousand {
	var sum agronomy.PerThousand
	for _, f := range c.feeding.starter {
		if f.touches(s) {
			sum += f.dose.N
		}
	}
	return sum
}

// feedingsIn counts the feedings in a span that take up room beside the doses
// still to come: those on record, and a planned starter, but not a starter that
// goes down with the seed.
func (c *treatment) feedingsIn(s Span) int {
	n := 0
	for _, d := range c.down {
		if (d.kind == Nitrogen || d.kind == Starter && d.Date.After(c.emerged())) && !d.missed && s.Has(d.Date) {
			n++
		}
	}
	for _, f := range c.feeding.starter {
		if !c.future() && f.touches(s) {
			n++
		}
	}
	return n
}

// touches tells whether an opening of the feed reaches into a span.
func (d feed) touches(s Span) bool {
	return slices.ContainsFunc(d.openings, func(o opening) bool { return !o.To.Before(s.From) && !o.From.After(s.To) })
}

func hasN(m material.Material) bool { return m.Analysis.N > 0 }

func lastN(m material.Material) nutrient.LastKind {
	if nutrient.ThingsOf(m)&nutrient.SlowNDown != 0 {
		return nutrient.LastSlowN
	}
	return nutrient.LastSolubleN
}

// fits counts the doses of a material that find room in the openings at their
// spacing, on days on which the crew works.
func (c *treatment) fits(os []opening, inside Span, m material.Material, dose agronomy.PerThousand) int {
	gap, _ := nutrient.Between(nutrient.ThingsOf(m), nutrient.ThingsOf(m), false)
	days := max(1, gap.Days)
	if quick := dose * agronomy.PerThousand(1-m.SlowShare); 2*quick > c.mostN.Soluble30Days {
		days = max(days, quickDays)
	}
	n := 0
	var next Date
	for _, o := range os {
		last := Earlier(o.To, inside.To)
		for d := Later(Later(o.From, inside.From), next); !d.After(last); d = d.next() {
			if _, away := c.Crew.away(d); !away && c.Crew.works(d) {
				n++
				d = d.AddDays(days - 1)
				next = d.AddDays(1)
			}
		}
	}
	return n
}

func closing(os []opening, why []Reason) string {
	if len(why) > 0 {
		return why[0].Text
	}
	if len(os) > 0 {
		return os[len(os)-1].closes
	}
	return "the ground is not open or growth has ended"
}
