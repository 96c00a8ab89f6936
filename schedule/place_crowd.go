package schedule

import (
	"cmp"
	"container/heap"
	"slices"
)

// relieve moves jobs off days that hold more than one person may do. It starts
// from the best days of each knot by itself, and while a day is overfull joins
// the knots that meet there into one crowd and solves that. What it returns is
// best for all, since each crowd got what is best for it alone.
func (b *board) relieve(knots [][]int, at []int) []int {
	if b.perDay == 0 {
		return at
	}
	crowdOf := make([]int, len(knots)) // of each knot
	knotOf := make([]int, len(b.tasks))
	everyone := make([]int, len(b.tasks))
	for k, knot := range knots {
		crowdOf[k] = k
		for _, i := range knot {
			knotOf[i] = k
		}
	}
	for i := range everyone {
		everyone[i] = i
	}
	b.steps = searchSteps
	for {
		full, over := b.fullest(everyone, at)
		if !over {
			return at
		}
		met := map[int]bool{} // crowds that meet on the day
		first := len(knots)
		for i, d := range at {
			if d != b.out && !b.tasks[i].fixed && b.slot(i, d) == full {
				c := crowdOf[knotOf[i]]
				met[c] = true
				first = min(first, c)
			}
		}
		c := crowd{b: b, place: make([]int, len(b.tasks)), knotOf: make([]int, len(b.tasks))}
		for k, knot := range knots {
			if met[crowdOf[k]] {
				crowdOf[k] = first
				c.knots = append(c.knots, knot)
				c.tasks = append(c.tasks, knot...)
			}
		}
		slices.Sort(c.tasks)
		days, ok := c.solve()
		if !ok {
			b.stopped = true
			return b.makeDo(knots)
		}
		for k, i := range c.tasks {
			at[i] = days[k]
		}
	}
}

// fullest finds the person and day, as a slot, with most jobs above the number
// allowed. Recorded jobs count, but a day with nothing else is let be.
func (b *board) fullest(tasks, days []int) (full int, over bool) {
	load := slices.Clone(b.load)
	for k, i := range tasks {
		if days[k] != b.out && !b.tasks[i].fixed {
			load[b.slot(i, days[k])]++
		}
	}
	most := b.perDay
	for s, n := range load {
		if n > most && n > b.load[s] {
			full, most, over = s, n, true
		}
	}
	return full, over
}

// crowd is knots that want the same days.
//
// The plan: solve each knot by itself. If a day then holds too many jobs, at
// most as many as there is room for can stay: either the first of them leaves,
// or it stays and the second leaves, and so on, or the first ones stay and all
// others leave. Each case is a case for the same search, with only the knots
// solved again whose answer it forbids. The case with the least sum comes next
// every time, of equals the one with the earliest days; so the first that fits
// every day is the answer.
type crowd struct {
	b      *board
	knots  [][]int
	tasks  []int // all of theirs, in order
	place  []int // of a task: its place in tasks
	knotOf []int // of a task: its place in knots
	queue  []crowdCase
}

// crowdCase is one set of rulings with the best days they leave each knot.
type crowdCase struct {
	rulings *ruling
	days    []int   // by place in crowd.tasks
	costs   []int64 // by knot
	cost    int64
}

// solve gives the crowd's days. It is not ok when the steps ran out.
func (c *crowd) solve() (days []int, ok bool) {
	for k, i := range c.tasks {
		c.place[i] = k
	}
	root := crowdCase{days: make([]int, len(c.tasks)), costs: make([]int64, len(c.knots))}
	for k, knot := range c.knots {
		for _, i := range knot {
			c.knotOf[i] = k
		}
		if !c.again(&root, k) {
			return nil, false
		}
	}
	c.queue = append(c.queue, root)
	for len(c.queue) > 0 && c.b.steps >= 0 {
		best := heap.Pop(c).(crowdCase)
		full, over := c.b.fullest(c.tasks, best.days)
		if !over {
			return best.days, true
		}
		c.branch(best, full)
	}
	return nil, false
}

// branch queues the cases of one overfull day.
func (c *crowd) branch(from crowdCase, full int) {
	b := c.b
	day := full % b.out
	var here, others []int
	room := max(0, b.perDay-b.load[full])
	for k, i := range c.tasks {
		if b.slot(i, day) != full || !b.allowed(i, day) || !from.rulings.allows(i, day) {
			continue
		}
		switch {
		case from.rulings.keeps(i, day):
			room--
		case from.days[k] == day:
			here = append(here, i)
		default:
			others = append(others, i)
		}
	}
	stay := from.rulings
	for k := 0; k <= room; k++ {
		next := &ruling{here[k], day, false, stay}
		if k == room {
			for _, i := range here[k+1:] {
				next = &ruling{i, day, false, next}
			}
			for _, i := range others {
				next = &ruling{i, day, false, next}
			}
		}
		c.add(from, next)
		stay = &ruling{here[k], day, true, stay}
	}
}

// add queues a case, unless its rulings leave no answer.
func (c *crowd) add(from crowdCase, r *ruling) {
	next := crowdCase{r, slices.Clone(from.days), slices.Clone(from.costs), from.cost}
	broken := make([]bool, len(c.knots))
	for x := r; x != from.rulings; x = x.up {
		if on := from.days[c.place[x.task]] == x.day; on != x.stay {
			broken[c.knotOf[x.task]] = true
		}
	}
	for k := range c.knots {
		if broken[k] && !c.again(&next, k) {
			return
		}
	}
	heap.Push(c, next)
}

// again solves one knot of a case anew.
func (c *crowd) again(n *crowdCase, k int) bool {
	days, cost := c.b.solve(c.knots[k], n.rulings)
	if days == nil {
		return false
	}
	for m, i := range c.knots[k] {
		n.days[c.place[i]] = days[m]
	}
	n.cost += cost - n.costs[k]
	n.costs[k] = cost
	return true
}

// keeps tells whether a ruling holds the task on the day.
func (r *ruling) keeps(i, day int) bool {
	for ; r != nil; r = r.up {
		if r.stay && r.task == i && r.day == day {
			return true
		}
	}
	return false
}

// The queue is a heap, least sum first, then earliest days.

func (c *crowd) Len() int      { return len(c.queue) }
func (c *crowd) Swap(i, j int) { c.queue[i], c.queue[j] = c.queue[j], c.queue[i] }
func (c *crowd) Push(x any)    { c.queue = append(c.queue, x.(crowdCase)) }
func (c *crowd) Less(i, j int) bool {
	x, y := &c.queue[i], &c.queue[j]
	return cmp.Or(cmp.Compare(x.cost, y.cost), slices.Compare(x.days, y.days)) < 0
}
func (c *crowd) Pop() any {
	last := len(c.queue) - 1
	x := c.queue[last]
	c.queue[last] = crowdCase{}
	c.queue = c.queue[:last]
	return x
}
