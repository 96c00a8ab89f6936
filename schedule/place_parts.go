package schedule

import "slices"

// solve finds the least-cost days of a knot by itself, the earliest of equals,
// and writes them down. If the steps run out (steps below 0 afterwards) it gives
// the best found.
//
// The plan: at first each task is a part of its own and has its cheapest day.
// Parts that break a limit between them are joined and settled as one, until no
// limit is broken: then what is best for each part is best for all.
func (k *knot) solve(at []int) {
	b := k.b
	part := make([]int, len(k.tasks)) // of each task: the first task of its part
	for p, i := range k.tasks {
		part[p], at[i] = p, b.idealDay(i)
	}
	for {
		joined := k.join(part, at)
		if joined == nil {
			return
		}
		for p := range part {
			if joined[p] {
				b.newKnot(k.members(part, p)).settle(at)
			}
		}
	}
}

// join joins the parts that break a limit between them, and tells by first task
// which parts have grown; nil if none has.
func (k *knot) join(part, at []int) (grown []bool) {
	b := k.b
	for p, i := range k.tasks {
		if at[i] == b.out {
			continue
		}
		for o := p + 1; o < len(k.tasks); o++ {
			d, e := at[i], at[k.tasks[o]]
			if e == b.out || part[p] == part[o] || d <= e && e-d >= k.gap[p][o] || d > e && d-e >= k.gap[o][p] {
				continue
			}
			x, y := min(part[p], part[o]), max(part[p], part[o])
			if grown == nil {
				grown = make([]bool, len(part))
			}
			grown[x], grown[y] = true, false
			for q := range part {
				if part[q] == y {
					part[q] = x
				}
			}
		}
	}
	return grown
}

// members gives the tasks of the part that begins with the one at p.
func (k *knot) members(part []int, p int) (tasks []int) {
	for q, i := range k.tasks {
		if part[q] == p {
			tasks = append(tasks, i)
		}
	}
	return tasks
}

// idealDay gives a task its cheapest day, the earliest of equals.
func (b *board) idealDay(i int) int {
	best := &b.choices[i][0]
	for n := range b.choices[i] {
		if c := &b.choices[i][n]; c.cost < best.cost {
			best = c
		}
	}
	return best.day
}

// near is how far above the sum of its cheapest days a part first looks for its
// best days: most days then need no thought.
const near = perUnit / 20

// settle finds the least-cost days of a knot's tasks, the earliest of equals,
// and writes them down. If the steps run out (steps below 0 afterwards) it gives
// the best found.
func (k *knot) settle(at []int) {
	b := k.b
	b.inTurn(k.tasks, at, nil)
	b.shift(k.tasks, at)
	first := k.wayAt(0, k.tasks, at)
	s := k.who(nil, nil, first.cost)
	s.days = func(without int64) (low int64) {
		cheapest := without
		for p, in := range s.in {
			if in {
				cheapest += s.least[p]
			}
		}
		for reach, all := int64(near), false; !all; reach *= 8 {
			if all = reach >= s.most-cheapest; all {
				reach = s.most - cheapest
			}
			c := k.newCast(s.in, reach)
			var best []int
			var least int64
			ws := c.search(nil, nil, func(choice []int, owed int64) int64 {
				best, least = slices.Clone(choice), owed
				return owed - 1
			})
			if low = without + ws.cheapest(cheapest+reach-without); best != nil {
				ws.earliest(best, least)
				if w := c.way(0, best); w.cost < first.cost || slices.Compare(w.days, first.days) < 0 {
					first, s.most = w, w.cost
				}
				break
			}
			if b.steps < 0 {
				break
			}
		}
		return low
	}
	s.decide(0, 0, 0)
	for p, i := range k.tasks {
		at[i] = first.days[p]
	}
}

// shift moves tasks one by one to the cheapest day that the others leave them,
// while that gains anything.
func (b *board) shift(tasks, at []int) {
	for gained := true; gained; {
		gained = false
		for _, i := range tasks {
			owed := b.choiceOn(i, at[i]).cost
			for _, x := range b.rank(i) {
				if x.cost >= owed {
					break
				}
				if b.keeps(i, x.day, at) {
					at[i], gained = x.day, true
					break
				}
			}
		}
	}
}
