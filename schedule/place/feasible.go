package place

import "slices"

// known remembers which sets of tasks of a component can all have a day. A set has a
// bit for each task.
type known struct {
	can    []arrangement
	cannot []uint64
	tried  map[uint64][][]int // of each set of tasks still to come: the first days from which it cannot go on
}

// arrangement is a set of tasks with days that fit together.
type arrangement struct {
	set uint64
	day []int
}

// setSize is the most tasks that a set holds: the bits of its number.
const setSize = 64

// feasible tells whether all the tasks in can have a day. It may say yes where
// they cannot, if the steps run out or the tasks are more than a set holds; it never
// says no where they can.
func (c *component) feasible(in []bool) bool {
	if len(in) > setSize {
		return true
	}
	set := setOf(in)
	for _, k := range c.known.can {
		if set&^k.set == 0 {
			return true
		}
	}
	for _, k := range c.known.cannot {
		if k&^set == 0 {
			return false
		}
	}
	if c.known.tried == nil {
		c.known.tried = map[uint64][][]int{}
	}
	day := make([]int, len(in))
	yes := c.sequence(set, make([]int, len(in)), day)
	switch {
	case c.s.steps < 0:
		return true
	case yes:
		c.known.can = append(c.known.can, arrangement{set, day})
	default:
		c.known.cannot = append(c.known.cannot, set)
	}
	return yes
}

// witness gives days that fit together for the tasks in, as [component.feasible] found
// them; nil if it found none before the steps ran out.
func (c *component) witness(in []bool) []int {
	if len(in) > setSize {
		return nil
	}
	set := setOf(in)
	for _, k := range c.known.can {
		if set&^k.set == 0 {
			at := slices.Clone(k.day)
			for p := range at {
				if !in[p] {
					at[p] = c.s.none
				}
			}
			return at
		}
	}
	return nil
}

func setOf(in []bool) (set uint64) {
	for p, yes := range in {
		if yes {
			set |= 1 << p
		}
	}
	return set
}

// sequence tells whether all tasks of a set can still have a day, and writes their days
// into day. It builds up an order: set holds the tasks that are not in it yet, first the
// earliest day that the order so far leaves to each of them. Whichever task comes next
// takes the first day it can, as that hinders the others least; so orders are tried,
// not days.
//
// For a task that is in the order, first is its day if that is the latest day so far
// and its person's room counts, as the next task may fall on the same day; else 0.
func (c *component) sequence(set uint64, first, day []int) bool {
	if set == 0 || !c.s.spend(len(first)) {
		return true
	}
	for p := range first {
		if set>>p&1 == 1 {
			if first[p] = c.nextDay(p, first[p]); first[p] == c.s.none {
				return false
			}
		}
	}
	for _, f := range c.known.tried[set] {
		if noneBefore(first, f) {
			return false
		}
	}
	next := make([]int, len(first))
	for p := range first {
		if set>>p&1 == 0 || !c.mayLead(p, set, first) {
			continue
		}
		if c.follow(p, set, first, next) && c.sequence(set&^(1<<p), next, day) {
			day[p] = first[p]
			return true
		}
	}
	c.known.tried[set] = append(c.known.tried[set], slices.Clone(first))
	return false
}

// follow puts task p next in the order: next becomes what first is after it. It tells
// whether each task of the set still has a day.
func (c *component) follow(p int, set uint64, first, next []int) bool {
	d, beside := first[p], 1
	person := c.s.person[c.tasks[p]]
	for q := range next {
		next[q] = 0
		if set>>q&1 == 0 && first[q] == d && c.s.person[c.tasks[q]] > 0 {
			next[q] = d
			if c.s.person[c.tasks[q]] == person {
				beside++
			}
		}
	}
	if person > 0 {
		next[p] = d
	}
	full := c.room != nil && beside >= c.room[c.s.slot(c.tasks[p], d)]
	for q := range next {
		if set>>q&1 == 0 || q == p {
			continue
		}
		next[q] = max(first[q], d+c.gap[p][q])
		if full && person == c.s.person[c.tasks[q]] {
			next[q] = max(next[q], d+1)
		}
		if next[q] >= c.s.none {
			return false
		}
	}
	return true
}

// mayLead tells whether it is worth trying task p as the next one: not if some task q
// could come before it and move no other to a later day, as then q before p is as good.
func (c *component) mayLead(p int, set uint64, first []int) bool {
	for q := range first {
		if q == p || set>>q&1 == 0 || first[q] > first[p] || first[q] == first[p] && q > p {
			continue
		}
		hinders := false
		for o := range first {
			if o == q || set>>o&1 == 0 {
				continue
			}
			person := c.s.person[c.tasks[q]]
			takesRoom := c.room != nil && first[q] == first[p] && person > 0 && person == c.s.person[c.tasks[o]]
			if takesRoom || first[q]+c.gap[q][o] > max(first[o], first[p]) {
				hinders = true
				break
			}
		}
		if !hinders {
			return false
		}
	}
	return true
}

// nextDay gives the first day of a task that is not before a given one; none if there
// is none.
func (c *component) nextDay(p, from int) int {
	days := c.days[p]
	k, _ := slices.BinarySearchFunc(days, from, func(o option, d int) int { return o.day - d })
	if k == len(days) {
		return c.s.none
	}
	return days[k].day
}

// noneBefore tells whether no task's day comes before its day in the other list.
func noneBefore(days, than []int) bool {
	for p, d := range days {
		if d < than[p] {
			return false
		}
	}
	return true
}
