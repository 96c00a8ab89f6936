package rule

import (
	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// morePlaces is for how many doses beyond its places a season keeps numbers.
const morePlaces = 10 // more than its days ever hold

// scheme numbers the doses of a year, so that one dose more or less renames no other.
// Each feeding season gets places: as many as its share would take doses of quick
// nitrogen, but no more than its days hold, whatever is down, in the shed or inside the
// program. A dose has the number of its place. Doses beyond the places of a season are
// numbered after all places of the year.
func (b *nitrogenYear) scheme(seasons []growSeason) {
	n := b.n
	for i := range seasons {
		s := &seasons[i]
		s.first, s.places = n+1, b.places(*s)
		n += s.places
	}
	for i := range seasons {
		seasons[i].more = n + i*morePlaces
	}
}

// places counts the places of a season, see scheme.
func (b *nitrogenYear) places(s growSeason) int {
	c := b.c
	if s.usual != nil {
		s = *s.usual
	}
	plan := seasonPlan{growSeason: s, openings: c.Open(), amount: b.total * agronomy.PerThousand(s.share)}
	if b.young {
		first := c.firstFeed()
		if s.span.To.Before(first) {
			return 0
		}
		if plan.amount = b.total; s.span.From.After(first) {
			plan.amount = min(plan.amount, c.Seedlings.SpringN[1])
		}
		plan.openings = schedule.From(plan.openings, first, "")
	}
	caps, _ := b.caps(&plan)
	urea := material.Material{Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 46}}
	os, _ := b.days(&plan, urea)
	most := doseCap(urea, caps)
	doses, _ := fewest(plan.amount, most, schedule.LeastDose)
	return min(doses, c.fits(os, s.span.Span, urea, most))
}

// number gives the number of the i-th dose of a season, counted from 0.
func (s *growSeason) number(i int) int {
	if i < s.places {
		return s.first + i
	}
	return s.more + i - s.places + 1
}

// numbers tells whether a number is one of the season's doses.
func (s *growSeason) numbers(n int) bool {
	return n >= s.first && n < s.first+s.places || n > s.more && n <= s.more+morePlaces
}
