package schedule

import (
	"cmp"
	"slices"
)

const (
	makeDoSteps  = 2_000 // for one knot
	makeDoPasses = 10
)

// makeDo gives a lawful answer when the search ran out of steps. It starts from
// days that may overfill some: the jobs in order of importance, each on the day
// wished or else on the cheapest still open to it; then each knot in turn as
// well as it can beside the others, while that gains anything.
func (b *board) makeDo(knots [][]int, wish []int) []int {
	at := make([]int, len(b.tasks))
	load := slices.Clone(b.load)
	order := make([]int, len(b.tasks))
	for i := range at {
		order[i] = i
		at[i] = b.out
		if b.tasks[i].fixed {
			at[i] = wish[i]
		}
	}
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(b.tasks[x].rank, b.tasks[y].rank) })
	fits := func(i, day int) bool {
		return day == b.out || b.keeps(i, day, at) && load[b.slot(i, day)] < b.perDay
	}
	for _, i := range order {
		if b.tasks[i].fixed {
			continue
		}
		day := wish[i]
		if day == b.out || !b.allowed(i, day) || !fits(i, day) {
			by := b.rank(i)
			day = by[slices.IndexFunc(by, func(c choice) bool { return fits(i, c.day) })].day
		}
		b.move(i, day, at, load)
	}
	for range makeDoPasses {
		gained := false
		for _, knot := range knots {
			gained = b.improve(knot, at, load) || gained
		}
		if !gained {
			break
		}
	}
	return at
}

// improve solves one knot beside the others' days, and tells whether that
// gained anything.
func (b *board) improve(knot, at, load []int) bool {
	if b.tasks[knot[0]].fixed {
		return false
	}
	was, before := make([]int, len(knot)), int64(0)
	for m, i := range knot {
		was[m] = at[i]
		before += costOn(b.choices[i], at[i])
		b.move(i, b.out, at, load)
	}
	var full *ruling
	for _, i := range knot {
		for _, c := range b.choices[i] {
			if c.day != b.out && load[b.slot(i, c.day)] >= b.perDay {
				full = &ruling{i, c.day, c.day, false, full}
			}
		}
	}
	b.steps = makeDoSteps
	days, cost := b.solve(knot, full)
	gained := days != nil && cost < before
	if !gained {
		days = was
	}
	for m, i := range knot {
		b.move(i, days[m], at, load)
	}
	for _, i := range knot {
		if at[i] != b.out && load[b.slot(i, at[i])] > b.perDay { // two of its own on a day with room for one
			gained = false
		}
	}
	if !gained {
		for m, i := range knot {
			b.move(i, was[m], at, load)
		}
	}
	return gained
}

// move puts a task on another day.
func (b *board) move(i, day int, at, load []int) {
	if at[i] != b.out {
		load[b.slot(i, at[i])]--
	}
	if day != b.out {
		load[b.slot(i, day)]++
	}
	at[i] = day
}
