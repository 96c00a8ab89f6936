package place

import (
	"cmp"
	"slices"
)

// subset is the search for the tasks of a component that get a day. It goes from task
// to task, the dearest to leave out first, and tries each with a day and then without. It
// turns back where those with a day cannot all have one, and where the sum of costs can
// no longer come down to the best answer yet.
type subset struct {
	*component
	order []int   // the tasks, the dearest to leave out first
	rest  []int64 // of each place in order: what the tasks from there on cost at least
	in    []bool  // of each task: whether it gets a day
}

// search finds the best answer of the component. It begins from an answer that is
// quickly found, so that much can be given up early.
func (c *component) search() {
	n := len(c.tasks)
	h := &subset{c, make([]int, n), make([]int64, n+1), make([]bool, n)}
	for p := range h.order {
		h.order[p] = p
	}
	slices.SortStableFunc(h.order, func(p, q int) int { return cmp.Compare(c.leaveOut(q), c.leaveOut(p)) })
	for m := n - 1; m >= 0; m-- {
		p := h.order[m]
		h.rest[m] = h.rest[m+1] + min(c.lowest(p), c.leaveOut(p))
		h.in[p] = len(c.days[p]) > 0
	}
	at := c.inTurn(h.order)
	c.offer(at, c.improve(at))
	c.feasible(h.in) // most often all can have a day; it is remembered, and so settles every subset
	clear(h.in)
	h.decide(0, 0, 0)
}

// leaveOut gives what it costs to give a task no day.
func (c *component) leaveOut(p int) int64 { return c.s.Tasks[c.tasks[p]].LeaveOut }

// lowest gives the cost of a task's cheapest day.
func (c *component) lowest(p int) int64 {
	if len(c.days[p]) == 0 {
		return unreachable
	}
	return c.days[p][c.low[p]].cost
}

// decide tries the tasks from place m of the order on with a day and without. For the
// tasks before m that is settled: together they cost at least sum, and the part of it
// for those left out is without.
func (h *subset) decide(m int, sum, without int64) {
	if sum+h.rest[m] > h.cost || !h.s.spend(1) {
		return
	}
	if m == len(h.order) {
		h.findDays(h.in, without)
		return
	}
	p := h.order[m]
	if len(h.days[p]) > 0 {
		if h.in[p] = true; h.feasible(h.in) {
			h.decide(m+1, sum+h.lowest(p), without)
		}
		h.in[p] = false
	}
	h.decide(m+1, sum+h.leaveOut(p), without+h.leaveOut(p))
}

// findDays finds the best days for the tasks that get one, where those left out cost
// without. It begins from days that are known to be possible.
func (c *component) findDays(in []bool, without int64) {
	if at := c.witness(in); at != nil {
		c.offer(at, c.improve(at))
	}
	c.branch(in, without)
}

// inTurn gives each task, in the order given, the cheapest day that the ones
// before it leave open; none if they leave it none.
func (c *component) inTurn(order []int) []int {
	at := slices.Repeat([]int{c.s.none}, len(c.tasks))
	for _, p := range order {
		if k := c.cheapestBeside(p, at); k >= 0 {
			at[p] = c.days[p][k].day
		}
	}
	return at
}

// improve moves tasks one by one to the cheapest day that the others leave open,
// as long as that gains anything, and gives the sum of costs.
func (c *component) improve(at []int) int64 {
	for {
		gained, sum := false, int64(0)
		for p, d := range at {
			if d == c.s.none {
				sum += c.leaveOut(p)
				continue
			}
			o := c.days[p][c.cheapestBeside(p, at)]
			gained = gained || o.cost < c.s.cost(c.tasks[p], d)
			at[p] = o.day
			sum += o.cost
		}
		if !gained {
			return sum
		}
	}
}

// cheapestBeside gives the cheapest option that the others on their days leave a task,
// the earliest of equals; -1 if none.
func (c *component) cheapestBeside(p int, at []int) int {
	best := -1
	for k, o := range c.days[p] {
		if (best < 0 || o.cost < c.days[p][best].cost) && c.open(p, o.day, at) {
			best = k
		}
	}
	return best
}

// open tells whether a task can have a day beside the others on theirs: limits and room
// allow it.
func (c *component) open(p, day int, at []int) bool {
	beside := 0
	for q, d := range at {
		if q == p || d == c.s.none {
			continue
		}
		if !c.apart(p, q, day, d) {
			return false
		}
		if d == day && c.s.person[c.tasks[p]] == c.s.person[c.tasks[q]] {
			beside++
		}
	}
	return c.room == nil || beside < c.room[c.s.slot(c.tasks[p], day)]
}
