package schedule

import (
	"cmp"
	"math"
	"slices"
)

// knots gathers the tasks tied by limits that can bind, each knot in task order.
func (b *board) knots() []*knot {
	seen := make([]bool, len(b.tasks))
	all := make([]int, 0, len(b.tasks))
	var knots []*knot
	for i := range b.tasks {
		if seen[i] {
			continue
		}
		seen[i] = true
		from := len(all)
		all = append(all, i)
		for k := from; k < len(all); k++ {
			for _, t := range b.binding[all[k]] {
				if !seen[t.other] {
					seen[t.other] = true
					all = append(all, t.other)
				}
			}
		}
		knot := all[from:len(all):len(all)]
		slices.Sort(knot)
		knots = append(knots, b.newKnot(knot))
	}
	return knots
}

// solveAll solves each knot by itself and writes down the days of its tasks.
// Each has an equal share of the steps.
func (b *board) solveAll(knots []*knot, at []int) {
	for _, k := range knots {
		b.steps = searchSteps / len(knots)
		days := k.solve()
		b.stopped = b.stopped || b.steps < 0
		for m, i := range k.tasks {
			at[i] = days[m]
		}
	}
}

// ideal gives every task its cheapest day, if no limit minds: then nothing
// needs searching.
func (k *knot) ideal() (days []int, ok bool) {
	b := k.b
	days = make([]int, len(k.tasks))
	for p, i := range k.tasks {
		best := choice{cost: math.MaxInt64}
		for _, c := range b.choices[i] {
			if c.cost < best.cost {
				best = c
			}
		}
		days[p] = best.day
	}
	for p, d := range days {
		if d != b.out && !k.keeps(p, d, days) {
			return nil, false
		}
	}
	return days, true
}

// rank gives a task's choices by cost, then day.
func (b *board) rank(i int) []choice {
	if b.ranked[i] == nil {
		b.ranked[i] = byCost(b.choices[i])
	}
	return b.ranked[i]
}

// byCost sorts choices by cost, then day. Costs mostly rise on both sides of
// the ideal day, so it first deals outwards from the cheapest, and sorts only
// if that did not do.
func byCost(by []choice) []choice {
	ideal := 0
	for k := range by {
		if by[k].cost < by[ideal].cost {
			ideal = k
		}
	}
	sorted, rising := make([]choice, 0, len(by)), true
	before, after, last := ideal-1, ideal, int64(math.MinInt64)
	for len(sorted) < len(by) {
		next := after
		if after == len(by) || before >= 0 && by[before].cost <= by[after].cost {
			next = before
			before--
		} else {
			after++
		}
		rising = rising && (by[next].cost > last || by[next].cost == last && by[next].day > sorted[len(sorted)-1].day)
		last = by[next].cost
		sorted = append(sorted, by[next])
	}
	if !rising {
		slices.SortFunc(sorted, func(x, y choice) int { return cmp.Or(cmp.Compare(x.cost, y.cost), cmp.Compare(x.day, y.day)) })
	}
	return sorted
}
