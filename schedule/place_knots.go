package schedule

import (
	"cmp"
	"math"
	"slices"
)

// knots gathers those of some tasks that are tied by limits that can bind, each
// knot in task order.
func (b *board) knots(tasks []int) []*knot {
	loose := make([]bool, len(b.tasks))
	for _, i := range tasks {
		loose[i] = true
	}
	all := make([]int, 0, len(tasks))
	var knots []*knot
	for _, i := range tasks {
		if !loose[i] {
			continue
		}
		loose[i] = false
		from := len(all)
		all = append(all, i)
		for k := from; k < len(all); k++ {
			for _, t := range b.binding[all[k]] {
				if loose[t.other] {
					loose[t.other] = false
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
		k.solve(at)
		b.stopped = b.stopped || b.steps < 0
	}
}

// inTurn gives each of some tasks, the most important first, the cheapest day
// that the ones before it leave open and that has room. Without room days hold
// all.
func (b *board) inTurn(tasks, at, room []int) {
	for _, i := range tasks {
		at[i] = b.out
	}
	order := slices.Clone(tasks)
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(b.tasks[x].rank, b.tasks[y].rank) })
	for _, i := range order {
		for _, x := range b.rank(i) {
			if x.day == b.out {
				break
			}
			s := b.slot(i, x.day)
			if room != nil && room[s] <= 0 || !b.keeps(i, x.day, at) {
				continue
			}
			if at[i] = x.day; room != nil {
				room[s]--
			}
			break
		}
	}
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
