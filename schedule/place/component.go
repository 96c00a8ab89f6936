package place

import (
	"cmp"
	"slices"
)

// components splits tasks into the connected components of the limits that can
// bind, each in task order.
func (s *solver) components(tasks []int) (all [][]int) {
	loose := make([]bool, len(s.Tasks))
	for _, i := range tasks {
		loose[i] = true
	}
	for _, i := range tasks {
		if !loose[i] {
			continue
		}
		loose[i] = false
		c := []int{i}
		for k := 0; k < len(c); k++ {
			for _, t := range s.binding[c[k]] {
				if loose[t.other] {
					loose[t.other] = false
					c = append(c, t.other)
				}
			}
		}
		slices.Sort(c)
		all = append(all, c)
	}
	return all
}

// solve finds the least-cost days of some tasks in the room given, the earliest
// of equals, and writes them into at. If room is nil, a day holds any number.
func (s *solver) solve(tasks, room, at []int) {
	s.steps = s.areaSteps
	c := s.newComponent(tasks, room)
	if !c.onCheapest() {
		c.search()
	}
	s.spent += s.areaSteps - max(0, s.steps)
	s.stopped = s.stopped || s.steps < 0
	for p, i := range tasks {
		at[i] = c.best[p]
	}
}

// solveIn finds the least-cost days of some tasks in the room given. Their
// components are solved one by one; those that together overfill a day are then
// solved as one.
func (s *solver) solveIn(tasks, room, at []int) {
	parts := s.components(tasks)
	for _, part := range parts {
		s.solve(part, room, at)
	}
	for full := s.overfull(tasks, room, at); full > 0; full = s.overfull(tasks, room, at) {
		var joined []int
		var others [][]int
		for _, part := range parts {
			if slices.ContainsFunc(part, func(i int) bool { return s.slot(i, at[i]) == full }) {
				joined = append(joined, part...)
			} else {
				others = append(others, part)
			}
		}
		slices.Sort(joined)
		s.solve(joined, room, at)
		parts = append(others, joined)
	}
}

// overfull gives a slot that some tasks overfill, 0 if they overfill none.
func (s *solver) overfull(tasks, room, at []int) int {
	taken := map[int]int{}
	for _, i := range tasks {
		slot := s.slot(i, at[i])
		if taken[slot]++; taken[slot] > room[slot] {
			return slot
		}
	}
	return 0
}

// component is some tasks that are solved together. Inside it a task is named by its
// place among them (p, q, o), not by its index in the problem (i).
type component struct {
	s     *solver
	tasks []int
	room  []int      // of each slot: how many tasks it holds; nil: any number
	days  [][]option // of each task: its options on days with room
	low   []int      // of each task: its cheapest option, the earliest of equals
	gap   [][]int    // gap[p][q]: at least so many days from p to q, where p comes first
	known known      // sets of tasks that can, or cannot, all have a day
	best  []int      // the best answer yet: the day of each task
	cost  int64      // what the best answer costs
}

// never is a gap longer than any calendar: that order of two tasks is ruled out.
const never = 1 << 30

func (s *solver) newComponent(tasks, room []int) *component {
	n := len(tasks)
	c := &component{s: s, tasks: tasks, room: room, cost: unreachable}
	c.days, c.low, c.gap = make([][]option, n), make([]int, n), make([][]int, n)
	gaps := make([]int, n*n)
	for p, i := range tasks {
		c.days[p] = s.options[i]
		if room != nil && s.person[i] > 0 {
			full := func(o option) bool { return room[s.slot(i, o.day)] <= 0 }
			c.days[p] = slices.DeleteFunc(slices.Clone(c.days[p]), full)
		}
		for k, o := range c.days[p] {
			if o.cost < c.days[p][c.low[p]].cost {
				c.low[p] = k
			}
		}
		c.gap[p] = gaps[p*n : (p+1)*n]
		for q, o := range tasks {
			if room != nil && s.PerDay == 1 && q != p && s.person[i] > 0 && s.person[i] == s.person[o] {
				c.gap[p][q] = 1 // one task a day is a limit too
			}
		}
		for k := range s.binding[i] {
			t := &s.binding[i][k]
			q, inside := slices.BinarySearch(tasks, t.other)
			if !inside {
				continue
			}
			if c.gap[p][q] = max(c.gap[p][q], 1, t.after); t.last {
				c.gap[p][q] = never
			}
		}
	}
	return c
}

// onCheapest tells whether every task can have its cheapest day, or is cheapest left
// out; if so, that is the best answer.
func (c *component) onCheapest() bool {
	at, sum := make([]int, len(c.tasks)), int64(0)
	for p := range c.tasks {
		at[p] = c.s.none
		if c.lowest(p) < c.leaveOut(p) {
			at[p] = c.days[p][c.low[p]].day
		}
		sum += min(c.lowest(p), c.leaveOut(p))
	}
	if p, _ := c.broken(at); p >= 0 || c.overfull(at) != nil {
		return false
	}
	c.offer(at, sum)
	return true
}

// broken gives the two tasks whose limit is the first to be broken, going from
// day to day; p is -1 if every limit is kept.
func (c *component) broken(at []int) (p, q int) {
	p, first := -1, c.s.none
	for a := range at {
		for b := a + 1; b < len(at); b++ {
			if last := max(at[a], at[b]); last < first && !c.apart(a, b, at[a], at[b]) {
				p, q, first = a, b, last
			}
		}
	}
	return p, q
}

// apart tells whether two tasks keep their limit on two days.
func (c *component) apart(p, q, d, e int) bool {
	return d <= e && e-d >= c.gap[p][q] || e <= d && d-e >= c.gap[q][p]
}

// overfull gives the tasks of one person on a day that is too many for it; nil if there
// is no such day.
func (c *component) overfull(at []int) []int {
	if c.room == nil {
		return nil
	}
	for p, i := range c.tasks {
		if at[p] == c.s.none || c.s.person[i] == 0 {
			continue
		}
		slot := c.s.slot(i, at[p])
		var on []int
		for q, o := range c.tasks {
			if at[q] == at[p] && c.s.slot(o, at[q]) == slot {
				on = append(on, q)
			}
		}
		if len(on) > c.room[slot] {
			return on
		}
	}
	return nil
}

// offer takes an answer as the best yet if it is better.
func (c *component) offer(at []int, cost int64) {
	if c.better(at, cost) {
		c.best, c.cost = slices.Clone(at), cost
	}
}

// better tells whether an answer costs less than the best yet or, at the same cost, is
// earlier.
func (c *component) better(at []int, cost int64) bool {
	return cmp.Or(cmp.Compare(cost, c.cost), slices.Compare(at, c.best)) < 0
}
