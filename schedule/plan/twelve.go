package plan

import (
	"cmp"
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/schedule"
)

// dated is the nitrogen of a job with its day. i is the job's place in the placement; -1
// for what is down.
type dated struct {
	on schedule.Date
	n  agronomy.PerThousand
	i  int
}

// overTwelve finds the first placed job with which the 12 months that end on its day have
// more than the most, and the first day on which they have room again.
func (pl *planner) overTwelve(p *placement) (job int, until schedule.Date, why string, over bool) {
	for _, c := range pl.cases {
		most, why := c.TwelveMonths()
		if most == schedule.Unlimited {
			continue
		}
		all := nitrogenDays(c, p)
		for k, last := range all {
			if last.i < 0 || p.problem.Tasks[last.i].Fixed {
				continue
			}
			sum := agronomy.PerThousand(0)
			for m := k; m >= 0 && last.on.DaysFrom(all[m].on) <= schedule.LastOf12; m-- {
				sum += all[m].n
				until = all[m].on.AddDays(schedule.LastOf12 + 1)
			}
			if sum <= most+1e-6 {
				continue
			}
			return last.i, until, fmt.Sprintf("no more than %s in any 12 months: %s", c.Measure().NutrientRate(most, "N"), why.Text), true
		}
	}
	return 0, schedule.Date{}, "", false
}

// nitrogenDays lists the nitrogen of an area by day, from 12 months before the plan's
// start.
func nitrogenDays(c *schedule.Case, p *placement) []dated {
	var all []dated
	down := c.DownIn(schedule.Span{From: c.Start.AddDays(-schedule.LastOf12), To: c.Start.AddDays(4000)})
	for i := range down {
		if d := &down[i]; !d.NotDone && d.Dose.N > 0 {
			all = append(all, dated{d.Date, d.Dose.N, -1}) // with what is left of a job done in part
		}
	}
	for i, j := range p.jobs {
		if j.Area == c.Area && !j.Rest && j.State != schedule.Finished && j.Dose.N > 0 && p.has(i) {
			all = append(all, dated{p.on(i), j.Dose.N, i})
		}
	}
	slices.SortStableFunc(all, func(a, b dated) int { return cmp.Or(a.on.Compare(b.on), cmp.Compare(a.i, b.i)) })
	return all
}
