package rule

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
)

// planLate takes a late dose out of the autumn's share where it belongs: top
// growth has slowed and roots still take it up, the stand is old enough, the
// care asks for it. It gives the late doses, and how much nitrogen that leaves for the
// other doses of the autumn.
func (b *nitrogenYear) planLate(s *seasonPlan) ([]feed, agronomy.PerThousand) {
	c, f, amount := b.c, &b.c.feeding, s.amount
	n := b.lateNumber()
	leave := func(reason, source string) ([]feed, agronomy.PerThousand) {
		f.found.Leave(c.Area, schedule.LateNitrogen, n, reason, source)
		return nil, amount
	}
	if slices.ContainsFunc(c.DownOf(b.year), func(d schedule.Down) bool { return d.Kind == schedule.LateNitrogen && !d.NotDone }) {
		return nil, amount - s.lateDown
	}
	os := c.lateOpenings(b.year)
	late := nutrient.LateNitrogenFor(c.Season, c.zone(), c.Report.Texture)
	low, high, source, custom := nutrient.LateCustom(c.Place.State)
	switch {
	case c.NoLate != "":
		return leave(c.NoLate, "")
	case c.Area.Care == nutrient.LowCare:
		return leave("low care asks for no late nitrogen", "ksu-eckert")
	case b.young && c.SeasonOf(c.Seeded) == b.year:
		return leave("no late nitrogen in the first autumn of a stand, unless it has been mowed three times by then", "common")
	case len(s.overs) > 0:
		return leave("no late nitrogen on the seedlings of the overseeding", "common")
	case custom && high == 0:
		return leave("by custom of the state no nitrogen is spread so late", source)
	case !late.Wanted:
		return leave(schedule.FirstText(late.Why), "common")
	case len(os) == 0:
		return leave("growth slows only after the last useful day", "soldat-fall, bauer-2012")
	}
	if custom {
		late.Low, late.High = max(late.Low, low), min(late.High, high)
		late.High = max(late.Low, late.High)
	}
	want := late.Low
	if c.Area.Care == nutrient.HighCare {
		want = late.High
	}
	caps, capWhy := c.nCaps(os[0].From)
	want = min(want, caps.SolubleN, b.total*lateShare, amount-s.down)
	if want < schedule.LeastDose {
		return leave("none of the autumn's nitrogen is left for it", "")
	}
	caps.P2O5, caps.K2O = 0, 0
	d, chosen, ok := c.choose(material.Wants{N: want}, caps, func(m material.Material) bool { return m.SlowShare == 0 })
	if !ok {
		return leave("no quick nitrogen for it: "+schedule.FirstText(chosen), "")
	}
	why := append(append([]schedule.Reason{}, late.Why...), capWhy...)
	why = append(why, schedule.Reason{Text: fmt.Sprintf("taken from the autumn's %.2f lb N/1000 sq ft", float64(amount))})
	why = append(append(why, d.Why...), chosen...)
	because := "The leaves have almost stopped growing; the roots still take up a little for spring."
	return []feed{{n: n, dose: d, openings: os, ideal: schedule.Soonest, because: because, why: why}}, amount - d.N
}

// beforeLate cuts the days of the autumn's main doses so that a late dose has its day after
// them. It tells whether that is worth it: no, if more nitrogen would go down without the
// late dose; always, if the late dose is down already.
func (b *nitrogenYear) beforeLate(s *seasonPlan, os []schedule.Opening, late feed, rest, most agronomy.PerThousand, m material.Material) ([]schedule.Opening, bool) {
	end := b.lateOn()
	down := !end.IsZero()
	if !down {
		end = late.openings[len(late.openings)-1].To
	}
	gap, _ := nutrient.Between(nutrient.ThingsOf(m), nutrient.SolubleNDown, false)
	end = end.AddDays(-gap.Days)
	before := schedule.Until(os, end, "a late dose follows")
	brings := func(os []schedule.Opening, amount agronomy.PerThousand) agronomy.PerThousand {
		return min(amount, most*agronomy.PerThousand(b.fits(s, os, s.inside, m, most)))
	}
	return before, down || brings(os, rest+late.dose.N) <= brings(before, rest)+late.dose.N+schedule.LeastDose
}

// lateOn gives the day of the year's late dose on record; unset without one.
func (b *nitrogenYear) lateOn() (on schedule.Date) {
	for _, d := range b.c.DownOf(b.year) {
		if d.Kind == schedule.LateNitrogen && !d.NotDone {
			on = d.Date
		}
	}
	return on
}

// lateNumber numbers the late dose of a turf year: 1 if no dose comes before it,
// else 2.
func (b *nitrogenYear) lateNumber() int {
	c, n := b.c, 1
	taken := slices.ContainsFunc(c.feeding.late, func(f feed) bool { return f.n == n }) ||
		slices.ContainsFunc(c.ThisYear(), func(d *schedule.Down) bool { return d.Kind == schedule.LateNitrogen && d.N == n && !d.NotDone })
	if b.n > 0 || taken {
		n = 2
	}
	return n
}

// lateShare is the most of a year's nitrogen that goes down late.
const lateShare agronomy.PerThousand = 0.25 // [bauer-2012] usual 25 to 50 %: the low end

// lateOpenings gives the days of autumn y between the slowing of growth and
// the last day on which roots are still worth feeding.
func (c *Treatment) lateOpenings(y int) []schedule.Opening {
	a := c.Almanac
	slows, ends := c.Growth.Slows, c.Growth.Ends
	if slows.Never || ends.Never {
		return nil
	}
	o := schedule.Opening{Span: schedule.Span{From: a.On(slows, y).AddDays(1), To: a.On(ends, y)}, Opens: "growth falls to a fifth of its best", Closes: "growth ends"}
	if early := a.Ground.Early; !early.Never {
		if last := a.On(early, y).AddDays(-nutrient.LateDaysToFreeze); last.Before(o.To) {
			o.To, o.Closes = last, fmt.Sprintf("%d days before the ground freezes in an early year", nutrient.LateDaysToFreeze)
		}
	}
	if o.Days() <= 0 {
		return nil
	}
	return schedule.Meet([]schedule.Opening{o}, c.Open())
}

// DoneSince tells whether the record book holds a job of the kind on or after d.
func (c *Treatment) DoneSince(k schedule.Kind, d schedule.Date) bool {
	return slices.ContainsFunc(c.Down, func(r schedule.Down) bool { return r.Kind == k && !r.NotDone && !r.Date.Before(d) })
}

// lateDown sums what went down as the late dose of turf year y.
func (c *Treatment) lateDown(y int) agronomy.PerThousand {
	var sum agronomy.PerThousand
	for _, d := range c.DownOf(y) {
		if d.Kind == schedule.LateNitrogen && !d.NotDone {
			sum += d.Dose.N
		}
	}
	return sum
}
