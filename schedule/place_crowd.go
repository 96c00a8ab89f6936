package schedule

import (
	"cmp"
	"slices"
)

// relieve moves jobs off days that hold more than one person may do. It starts
// from the best days of each part by itself. While a day is overfull it joins the
// parts that meet there, and where that breaks a limit, the parts it is broken
// between, and solves them as one crowd. What it ends with is best for all, since
// each crowd got what is best for it alone.
func (b *board) relieve(knots []*knot, at []int) {
	if b.perDay == 0 {
		return
	}
	spare, c := b.crowdSteps, &crowd{b: b}
	for {
		var grown []int
		for _, k := range knots {
			grown = append(grown, k.join(at)...)
		}
		if grown == nil {
			grown = b.meet(at)
		}
		if grown == nil {
			return
		}
		for _, part := range b.parts(grown) {
			c.gather(b.knots(part))
			b.steps = spare / 2
			days, ok := c.solve()
			spare -= spare/2 - max(0, b.steps)
			for k, i := range c.tasks {
				at[i] = days[k]
			}
			b.stopped = b.stopped || !ok
		}
	}
}

// meet joins the parts that meet on an overfull day, and gives one job of each
// such day.
func (b *board) meet(at []int) (jobs []int) {
	b.count(at)
	b.first = zeros(b.first, len(b.room)) // of each slot: one more than its first job
	for i, d := range at {
		if d == b.out || b.tasks[i].fixed {
			continue
		}
		s := b.slot(i, d)
		switch {
		case b.jobsOn[s] <= b.room[s]:
		case b.first[s] == 0:
			b.first[s] = i + 1
			jobs = append(jobs, i)
		default:
			b.merge(b.first[s]-1, i)
		}
	}
	return jobs
}

// count counts the jobs in each slot, recorded ones left aside.
func (b *board) count(days []int) {
	b.jobsOn = zeros(b.jobsOn, len(b.room))
	for i, d := range days {
		if d != b.out && !b.tasks[i].fixed {
			b.jobsOn[b.slot(i, d)]++
		}
	}
}

// crowd is knots that want the same days.
//
// The plan: knots that choose for themselves all want the best days. Prices on
// days make each pay for the room it takes, so that they spread; with the right
// ones ([pricing]) what all owe, less the worth of the room, is a lower bound
// of every answer and most often all but reached. An answer that costs no more
// than some reach above the bound gives no knot a way that owes more than that
// reach above its least. So the ways within reach are listed for each knot, and
// the best answer made of those ([chooser]) is the best of all if it is within
// reach itself. The reach starts at nothing and grows until one is.
type crowd struct {
	b      *board
	alike  []*alike
	tasks  []int // all of theirs, in order
	place  []int // of a task: its place in tasks
	takers []int // by slot: tasks that could take it
	room   []int // by slot: jobs it can still take

	days []int // by place: the best so far, which fits
	cost int64 // of that

	known []way   // ways found on the way to the prices
	price []int64 // by slot
	row   []int   // by slot: in the pricing, 0 for none yet
	owes  []int64 // the least that each alike owes
	bound int64   // what every answer costs at least
}

// alike is the knots that differ in nothing, worked out once for all.
type alike struct {
	*knot
	members [][]int // the tasks of each
	ways    []way   // listed, the cheapest with prices first
}

// gather makes the crowd one of some knots. The tables of another are used
// again.
func (c *crowd) gather(knots []*knot) {
	b, slots := c.b, len(c.b.room)
	*c = crowd{b: b, place: zeros(c.place, len(b.tasks)), room: zeros(c.room, slots), takers: zeros(c.takers, slots),
		price: zeros(c.price, slots), row: zeros(c.row, slots)}
	for _, knot := range knots {
		if b.tasks[knot.tasks[0]].fixed {
			continue
		}
		c.tasks = append(c.tasks, knot.tasks...)
		n := slices.IndexFunc(c.alike, func(a *alike) bool { return a.sameAs(knot) })
		if n < 0 {
			n = len(c.alike)
			c.alike = append(c.alike, &alike{knot: knot})
		}
		c.alike[n].members = append(c.alike[n].members, knot.tasks)
		for _, i := range knot.tasks {
			for _, x := range b.choices[i] {
				if x.day != b.out {
					c.takers[b.slot(i, x.day)]++
				}
			}
		}
	}
	copy(c.room, b.room)
	slices.Sort(c.tasks)
	for p, i := range c.tasks {
		c.place[i] = p
	}
}

// zeros gives n zeros, in the room of a table if it has that many.
func zeros[T any](table []T, n int) []T {
	table = slices.Grow(table[:0], n)[:n]
	clear(table)
	return table
}

// crowdReach is how far above the bound answers are looked for when none is on
// it: a thousandth.
const crowdReach = perUnit / 1000

// solve gives the crowd's days, which fit, and whether they are proven best.
func (c *crowd) solve() (days []int, proven bool) {
	c.makeDo()
	if c.b.steps < 0 {
		return c.days, false
	}
	c.setPrices()
	if c.reach(0) { // most often an answer is on the bound
		return c.days, true
	}
	c.makeDoPriced()
	c.chooseKnown()
	for reach := int64(crowdReach); c.b.steps >= 0; reach *= 4 {
		if c.reach(reach) {
			return c.days, true
		}
	}
	return c.days, c.cost <= c.bound
}

// reach looks for the best answer within reach of the bound, and tells whether
// the crowd now has it.
func (c *crowd) reach(reach int64) bool {
	most := min(c.cost, c.bound+reach)
	if c.list(most - c.bound); c.b.steps >= 0 {
		c.choose(c.owes, most)
	}
	return c.b.steps >= 0 && c.cost <= most
}

// list finds for each knot the ways within reach of the least it owes.
func (c *crowd) list(reach int64) {
	for n, a := range c.alike {
		a.ways = a.ways[:0]
		a.within(c.price, c.room, c.owes[n]+reach, func(w way) { a.ways = append(a.ways, w) })
		a.sortWays()
	}
}

// chooseKnown offers the best answer made of ways known from the pricing that
// some steps find.
func (c *crowd) chooseKnown() {
	owes := make([]int64, len(c.alike))
	for n, a := range c.alike {
		a.ways = a.ways[:0]
		for _, w := range c.known {
			if w.alike == n && !slices.ContainsFunc(a.ways, func(o way) bool { return slices.Equal(o.days, w.days) }) {
				w.owed = w.owes(c.price)
				a.ways = append(a.ways, w)
			}
		}
		a.sortWays()
		owes[n] = a.ways[0].owed
	}
	all := c.b.steps
	c.b.steps = makeDoSteps
	c.choose(owes, c.cost)
	c.b.steps = all - makeDoSteps + c.b.steps
}

func (a *alike) sortWays() {
	slices.SortStableFunc(a.ways, func(x, y way) int { return cmp.Compare(x.owed, y.owed) })
}
