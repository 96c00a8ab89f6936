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
		var members [][]int
		for k, knot := range knots {
			if met[crowdOf[k]] {
				crowdOf[k] = first
				members = append(members, knot)
			}
		}
		c := newCrowd(b, members)
		days, ok := c.solve()
		for k, i := range c.tasks {
			at[i] = days[k]
		}
		if !ok {
			b.stopped = true
			return b.makeDo(knots, at)
		}
	}
}

// room gives the jobs a slot can hold beside recorded ones.
func (b *board) room(slot int) int { return max(0, b.perDay-b.load[slot]) }

// fullest finds the person and day, as a slot, with most jobs above its room.
func (b *board) fullest(tasks, days []int) (full int, over bool) {
	most := 0
	for s, n := range b.count(tasks, days) {
		if above := n - b.room(s); above > most {
			full, most, over = s, above, true
		}
	}
	return full, over
}

// count gives the jobs in each slot, recorded ones left aside.
func (b *board) count(tasks, days []int) []int {
	n := make([]int, len(b.load))
	for k, i := range tasks {
		if days[k] != b.out && !b.tasks[i].fixed {
			n[b.slot(i, days[k])]++
		}
	}
	return n
}

// crowd is knots that want the same days.
//
// The plan: solve each knot by itself. If a day then holds too many jobs, at
// most as many as there is room for can stay: either the first of them leaves,
// or it stays and the second leaves, and so on, or the first ones stay and all
// others leave. Each of these is a case for the same search, with only the
// knots solved again whose answer it forbids. The case with the least sum comes
// next every time, of equals the one with the earliest days; so the first that
// fits every day is the answer.
//
// Where many jobs want few days that sum says too little: it lets them all have
// the best day. So after a few cases the search sets prices on days (see
// setPrices) and starts again. With prices the sum of a case is
//
//	costs of days + prices paid - price × room over all days
//
// which is no more than the true cost of any answer that fits: paying for a
// full day cancels out, a day not full pays back less. An answer that fits and
// leaves no priced day part empty costs just its sum, and ends the search as
// before. One that does leave room is kept as the best so far, and the case is
// split: either one more job that could takes the room, or it does not; when
// no more could, what the empty room was counted for is added back to the sum.
type crowd struct {
	b      *board
	knots  [][]int
	tasks  []int // all of theirs, in order
	place  []int // of a task: its place in tasks
	knotOf []int // of a task: its place in knots
	like   []int // by place, see classes
	queue  []crowdCase
	price  []int64    // by slot, nil before they are set
	plain  [][]choice // by place: choices without prices
	best   *crowdCase // fits every day; its cost is its true cost
}

// crowdCase is one set of rulings with the best days they leave each knot.
type crowdCase struct {
	rulings *ruling
	days    []int   // by place in crowd.tasks
	costs   []int64 // by knot
	cost    int64
}

func newCrowd(b *board, knots [][]int) *crowd {
	c := &crowd{b: b, knots: knots}
	c.place, c.knotOf = make([]int, len(b.tasks)), make([]int, len(b.tasks))
	for k, knot := range knots {
		c.tasks = append(c.tasks, knot...)
		for _, i := range knot {
			c.knotOf[i] = k
		}
	}
	slices.Sort(c.tasks)
	for k, i := range c.tasks {
		c.place[i] = k
		c.plain = append(c.plain, b.choices[i])
	}
	c.classes()
	return c
}

// solve gives the crowd's days. It is not ok when the steps ran out; the days
// are then the best that fit or, failing that, the best that do not.
func (c *crowd) solve() (days []int, ok bool) {
	defer c.charge(nil)
	root := c.root()
	c.queue = append(c.queue, root)
	for n := 0; len(c.queue) > 0 && c.b.steps >= 0; n++ {
		c.b.steps -= len(c.tasks) // a case costs about that, besides its knots
		if n == c.b.plainCases {
			root = c.setPrices()
			c.queue = append(c.queue[:0], root)
		}
		next := heap.Pop(c).(crowdCase)
		if c.best != nil && c.best.before(&next) {
			break
		}
		if full, over := c.b.fullest(c.tasks, next.days); over {
			c.relieve(next, full)
		} else if slack, some := c.slackest(next); some {
			c.keep(next)
			c.fill(next, slack)
		} else {
			c.keep(next)
			break
		}
	}
	switch {
	case c.best == nil:
		return root.days, false
	default:
		return c.best.days, c.b.steps >= 0
	}
}

// before orders cases: least sum first, then earliest days.
func (x *crowdCase) before(y *crowdCase) bool {
	return cmp.Or(cmp.Compare(x.cost, y.cost), slices.Compare(x.days, y.days)) < 0
}

// root gives the case without rulings.
func (c *crowd) root() crowdCase {
	root := crowdCase{days: make([]int, len(c.tasks)), costs: make([]int64, len(c.knots))}
	for k := range c.knots {
		c.again(&root, k)
	}
	for s, p := range c.price {
		root.cost -= p * int64(c.b.room(s))
	}
	return root
}

// keep remembers days that fit, if they are the best so far.
func (c *crowd) keep(x crowdCase) {
	x.cost = 0
	for k, d := range x.days {
		x.cost += costOn(c.plain[k], d)
	}
	if c.best == nil || x.before(c.best) {
		c.best = &x
	}
}

// relieve queues the cases of one overfull slot.
func (c *crowd) relieve(from crowdCase, full int) {
	b, day := c.b, full%c.b.out
	room := b.room(full)
	var here, others, staying []int
	for k, i := range c.tasks {
		switch {
		case !c.could(from, i, full):
		case from.rulings.keeps(i, day):
			room--
			staying = append(staying, i)
		case from.days[k] == day:
			here = append(here, i)
		default:
			others = append(others, i)
		}
	}
	r := from.rulings
	for k := 0; k < room; k++ {
		c.add(from, c.leave(here[k], day, staying, r))
		r = &ruling{here[k], day, day, true, r}
		staying = append(staying, here[k])
	}
	for _, i := range slices.Concat(here[room:], others) {
		r = c.leave(i, day, staying, r)
	}
	c.add(from, r)
}

// leave rules that a task must not be on a day. Beside one that stays there and
// is alike it need not look on both sides: of alike tasks the first goes first.
func (c *crowd) leave(i, day int, staying []int, up *ruling) *ruling {
	r := &ruling{i, day, day, false, up}
	for _, o := range staying {
		if c.like[c.place[o]] == c.like[c.place[i]] {
			if o < i {
				r.first = 0
			} else {
				r.last = c.b.out
			}
		}
	}
	return r
}

// classes numbers the tasks so that alike ones have one number: without limits,
// of one person, with the same days at the same costs. Trading their days
// changes nothing, so they keep their order.
func (c *crowd) classes() {
	for k, i := range c.tasks {
		c.like = append(c.like, k)
		if len(c.knots[c.knotOf[i]]) > 1 {
			continue
		}
		for m, o := range c.tasks[:k] {
			if c.b.person[o] == c.b.person[i] && len(c.knots[c.knotOf[o]]) == 1 &&
				slices.EqualFunc(c.plain[m], c.plain[k], func(x, y choice) bool { return x.day == y.day && x.cost == y.cost }) {
				c.like[k] = c.like[m]
				break
			}
		}
	}
}

// could tells whether a task may be in a slot under the rulings of a case.
func (c *crowd) could(x crowdCase, i, slot int) bool {
	day := slot % c.b.out
	return c.b.slot(i, day) == slot && c.b.allowed(i, day) && x.rulings.allows(i, day)
}

// add queues a case, unless its rulings leave no answer.
func (c *crowd) add(from crowdCase, r *ruling) {
	next := crowdCase{r, slices.Clone(from.days), slices.Clone(from.costs), from.cost}
	broken := make([]bool, len(c.knots))
	for x := r; x != from.rulings; x = x.up {
		if !x.permits(from.days[c.place[x.task]]) {
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
		if r.stay && r.task == i && r.first == day {
			return true
		}
	}
	return false
}

// The queue is a heap.

func (c *crowd) Len() int           { return len(c.queue) }
func (c *crowd) Less(i, j int) bool { return c.queue[i].before(&c.queue[j]) }
func (c *crowd) Swap(i, j int)      { c.queue[i], c.queue[j] = c.queue[j], c.queue[i] }
func (c *crowd) Push(x any)         { c.queue = append(c.queue, x.(crowdCase)) }
func (c *crowd) Pop() any {
	last := len(c.queue) - 1
	x := c.queue[last]
	c.queue[last] = crowdCase{}
	c.queue = c.queue[:last]
	return x
}
