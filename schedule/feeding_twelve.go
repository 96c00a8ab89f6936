package schedule

import (
	"cmp"
	"fmt"
	"slices"

	"swardbook/agronomy"
)

// What any 12 months hold, by custom or by law, binds doses of several seasons
// and turf years. So each season is held to what is left of it, and each dose,
// once it has a day, waits until the 12 months that end with it have room.

// twelveMonths gives the most nitrogen in any 12 months; unlimited if nothing
// limits it.
func (c *Case) twelveMonths() (most agronomy.PerThousand, why Reason) {
	most = c.mostN.Year
	why = Reason{Text: "cool-season lawns need no more in any 12 months", Source: "ksu-eckert"}
	if l, ok := c.law.AnnualNCap(c.asked); ok && (most == 0 || agronomy.PerThousand(l.Value) < most) {
		most, why = agronomy.PerThousand(l.Value), lawReason(l.Rule)
	}
	if most == 0 {
		most = unlimited
	}
	return most, why
}

// lastOf12 is the last day, counted from the first, of a run of 12 months.
const lastOf12 = 364

// latest gives the last day on which a feed may go down.
func (c *treatment) latest(f feed) Date {
	var last Date
	for _, o := range f.openings {
		last = Later(last, Earlier(o.To, c.Through))
	}
	return last
}

// hold cuts a season to what the 12 months that end with it have room for.
func (b *nitrogenYear) hold(s *seasonPlan) {
	c, f := b.c, &b.c.feeding
	most, why := c.twelveMonths()
	run := Span{s.inside.To.AddDays(-lastOf12), s.inside.To}
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
	if over := s.amount - room; over >= trace && !b.young {
		f.found.leave(c.Area, Nitrogen, b.n+1, fmt.Sprintf("%s of the %s share would pass %s in any 12 months: %s", c.Measure().NutrientRate(over, "N"), s.name, c.Measure().NutrientRate(most, "N"), why.Text), why.Source)
	}
	s.amount = room
	s.why = append(s.why, Reason{Text: fmt.Sprintf("only %.2f lb N/1000 sq ft is left of the most in any 12 months: %s", float64(room), why.Text), Source: why.Source})
}

// dated is nitrogen with its day; i is the place of its job among those placed,
// -1 for what is on record.
type dated struct {
	on Date
	n  agronomy.PerThousand
	i  int
}

// overTwelve finds the first job that takes the 12 months that end with it over
// their most, and the day until which it has to wait.
func (pl *planner) overTwelve(p *placement) (job int, until Date, why string, over bool) {
	for _, c := range pl.cases {
		most, why := c.twelveMonths()
		if most == unlimited {
			continue
		}
		all := c.nitrogenDays(p)
		for k, last := range all {
			if last.i < 0 || p.problem.Tasks[last.i].Fixed {
				continue
			}
			sum := agronomy.PerThousand(0)
			for m := k; m >= 0 && last.on.DaysFrom(all[m].on) <= lastOf12; m-- {
				sum += all[m].n
				until = all[m].on.AddDays(lastOf12 + 1)
			}
			if sum <= most+1e-6 {
				continue
			}
			return last.i, until, fmt.Sprintf("12 months hold no more than %s: %s", c.Measure().NutrientRate(most, "N"), why.Text), true
		}
	}
	return 0, Date{}, "", false
}

// nitrogenDays lists the nitrogen of an area by day.
func (c *Case) nitrogenDays(p *placement) []dated {
	var all []dated
	for _, d := range c.down {
		if !d.missed && d.taken == nil && d.dose.N > 0 {
			all = append(all, dated{d.Date, d.dose.N, -1})
		}
	}
	for i := range p.jobs {
		if j := &p.jobs[i]; j.Area == c.Area && j.State != Finished && j.Dose.N > 0 && p.has(i) {
			all = append(all, dated{p.on(i), j.Dose.N, i})
		}
	}
	slices.SortStableFunc(all, func(a, b dated) int { return cmp.Or(a.on.Compare(b.on), cmp.Compare(a.i, b.i)) })
	return all
}
