package schedule

import (
	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
)

// pool is the nitrogen that went down on one day and feeds equally long.
type pool struct {
	dose    material.Dose
	on      Date
	feedsTo Date // unset: longer than is followed
}

// feed works out for applications in order of time how long the nitrogen of each
// feeds, how much of the turf year's is down by then, and how much of what is down is
// still to be released.
func (c *Case) feed(all []applied) {
	var before, on []pool // down on days before; on the day
	var begins Date
	var year, coming agronomy.PerThousand
	for i := range all {
		a := &all[i]
		if i == 0 || a.Date != all[i-1].Date {
			before, on, coming = append(before, on...), nil, 0
			n := 0
			for _, b := range before {
				if b.feedsTo.IsZero() || b.feedsTo.After(a.Date) {
					before[n] = b
					n++
					coming += b.dose.N - nutrient.Released(b.dose, a.Date.DaysFrom(b.on), c.growthAfter(b.on))
				}
			}
			before = before[:n]
			if y := c.Almanac.YearBegins(c.Almanac.TurfYear(a.Date, c.Season), c.Season); y != begins {
				begins, year = y, 0
			}
		}
		if a.N > 0 {
			a.FeedsTo = c.pour(&on, a)
			coming += max(0, a.dose.N-nutrient.Released(a.dose, 0, nil))
		}
		year += a.N
		a.SumN, a.Feeding = year, max(0, coming)
	}
}

// pour adds an application to the day's pools, and gives the day to which it feeds.
func (c *Case) pour(on *[]pool, a *applied) Date {
	life, _ := nutrient.FeedsOf(a.dose.Material)
	for i := range *on {
		p := &(*on)[i]
		if l, _ := nutrient.FeedsOf(p.dose.Material); l == life {
			p.dose = material.Sum(p.dose, a.dose)
			return p.feedsTo
		}
	}
	p := pool{dose: a.dose, on: a.Date}
	if days, ok := nutrient.FeedsUntil(a.dose, c.growthAfter(a.Date)); ok {
		p.feedsTo = a.Date.AddDays(days)
	}
	*on = append(*on, p)
	return p.feedsTo
}

// growthAfter gives the growth by the days since a day.
func (c *Case) growthAfter(d Date) func(day int) float64 {
	return func(day int) float64 { return c.Growth.on(d.AddDays(day)) }
}
