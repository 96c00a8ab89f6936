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
	for _, i := range k.tasks {
		ideal := b.ideal(i)
		b.part[i], at[i], b.floor[i] = i, ideal.day, ideal.cost
	}
	for {
		grown := b.parts(k.join(at))
		if grown == nil {
			return
		}
		for _, part := range grown {
			if b.newKnot(part).settle(at); b.steps >= 0 {
				b.setFloor(part, at)
			}
		}
	}
}

// join joins the parts that break a limit of the knot between them, and gives
// one task of each break.
func (k *knot) join(at []int) (broken []int) {
	b := k.b
	for p, i := range k.tasks {
		if at[i] == b.out {
			continue
		}
		for q := p + 1; q < len(k.tasks); q++ {
			o := k.tasks[q]
			d, e := at[i], at[o]
			if e == b.out || b.part[i] == b.part[o] || d <= e && e-d >= k.gap[p][q] || d > e && d-e >= k.gap[q][p] {
				continue
			}
			b.merge(i, o)
			broken = append(broken, i)
		}
	}
	return broken
}

// merge makes one part of those of two tasks. A part goes by its first task.
func (b *board) merge(i, o int) {
	first, gone := min(b.part[i], b.part[o]), max(b.part[i], b.part[o])
	for t, p := range b.part {
		if p == gone {
			b.part[t] = first
		}
	}
}

// parts gives the tasks of each part that one of some tasks is in.
func (b *board) parts(of []int) (all [][]int) {
	seen := make([]bool, len(b.tasks))
	for _, i := range of {
		first := b.part[i]
		if seen[first] {
			continue
		}
		seen[first] = true
		var part []int
		for t, p := range b.part {
			if p == first {
				part = append(part, t)
			}
		}
		all = append(all, part)
	}
	return all
}

// setFloor keeps what a part costs on its best days.
func (b *board) setFloor(part, at []int) {
	sum := int64(0)
	for _, i := range part {
		sum += b.choiceOn(i, at[i]).cost
		b.floor[i] = 0
	}
	b.floor[part[0]] = sum
}

// ideal gives a task's cheapest choice, the earliest of equals.
func (b *board) ideal(i int) *choice {
	best := &b.choices[i][0]
	for n := range b.choices[i] {
		if c := &b.choices[i][n]; c.cost < best.cost {
			best = c
		}
	}
	return best
}

// settle finds the least-cost days of a knot's tasks, the earliest of equals,
// and writes them down. If the steps run out (steps below 0 afterwards) it gives
// the best found.
func (k *knot) settle(at []int) {
	b := k.b
	b.inTurn(k.tasks, at, nil)
	b.shift(k.tasks, at)
	first := k.wayAt(0, k.tasks, at)
	s := k.who(nil, nil, first.cost)
	s.days = func(without int64) int64 {
		return s.near(without, func(c *cast) (int64, bool) {
			var best []int
			var least int64
			ws := c.search(func(choice []int, owed int64) int64 {
				best, least = slices.Clone(choice), owed
				return owed - 1
			})
			low := ws.cheapest(c.most)
			if best != nil {
				ws.earliest(best, least)
				if w := c.way(0, best); w.cost < first.cost || slices.Compare(w.days, first.days) < 0 {
					first, s.most = w, w.cost
				}
			}
			return low, best != nil
		})
	}
	s.start()
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
