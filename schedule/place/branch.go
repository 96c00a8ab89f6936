package place

import (
	"cmp"
	"slices"
)

// branch finds the best days of the tasks in, if they beat the best answer yet.
//
// It is branch and bound. The relaxation at first asks for no limit: each task is on its
// cheapest day. Broken limits whose tasks can come in one order only, given their days,
// are then asked for in that order. If there is none of those, the first limit broken,
// going from day to day, gives two branches, one for each order of its tasks; and if all
// limits are kept, an overfull day gives one branch for each task that may have to go
// elsewhere. Each branch is a relaxation with one thing more asked for; the cheapest goes
// first, and one that cannot beat the best answer is given up.
func (c *component) branch(in []bool, without int64) {
	var tasks []int
	var days [][]option
	reach := c.cost - without // how much a day may cost above its task's cheapest, if the sum is to beat the best
	for p := range in {
		if in[p] {
			tasks = append(tasks, p)
			reach -= c.lowest(p)
		}
	}
	if reach < 0 {
		return
	}
	for _, p := range tasks {
		near := make([]option, 0, len(c.days[p]))
		for _, o := range c.days[p] {
			if o.cost-c.lowest(p) <= reach {
				near = append(near, o)
			}
		}
		days = append(days, near)
	}
	b := &branching{c, without, make([]int, len(in))}
	for k, p := range tasks {
		b.place[p] = k
	}
	if n := c.newCut(tasks, days); n.solve(c.cost - without) {
		b.descend(n)
	}
}

// branching is one such branch and bound.
type branching struct {
	*component
	without int64 // the cost of the tasks left out
	place   []int // of each task that gets a day: its place in the cut
}

// descend finds the best days that are to be had from a solved relaxation on down.
func (b *branching) descend(n *cut) {
	for {
		at := n.at
		if b.s.steps < 0 || !b.better(at, n.cost+b.without) {
			return
		}
		asked, p, q := b.askForced(n, at)
		if asked {
			if !n.solve(b.cost - b.without) {
				return
			}
			continue
		}
		if p >= 0 {
			b.explore(b.orders(n, p, q))
			return
		}
		on := b.overfull(at)
		if on == nil {
			b.offer(at, n.cost+b.without)
			return
		}
		b.explore(b.moves(n, on, at))
		return
	}
}

// askForced asks for each broken limit whose tasks can come in one order only. p and q
// are the tasks of the first limit broken, going from day to day; p is -1 if every limit
// is kept.
func (b *branching) askForced(n *cut, at []int) (asked bool, p, q int) {
	p, q = b.broken(at)
	if p < 0 {
		return false, p, q
	}
	for x := range at {
		for y := range at {
			if x == y || at[x] == b.s.none || at[y] == b.s.none || b.apart(x, y, at[x], at[y]) {
				continue
			}
			if !b.canFollow(n, y, x) {
				n.follow(b.place[x], b.place[y], b.gap[x][y])
				asked = true
			}
		}
	}
	return asked, p, q
}

// canFollow tells whether task q can come far enough after task p on any of their days.
func (b *branching) canFollow(n *cut, p, q int) bool {
	first, last := n.days[b.place[p]][0].day, n.days[b.place[q]]
	return last[len(last)-1].day-first >= b.gap[p][q]
}

// orders gives the two branches of a limit: q after p, and p after q.
func (b *branching) orders(n *cut, p, q int) []*cut {
	pq, qp := n.clone(), n.clone()
	pq.follow(b.place[p], b.place[q], b.gap[p][q])
	qp.follow(b.place[q], b.place[p], b.gap[q][p])
	return []*cut{pq, qp}
}

// moves gives the branches of an overfull day: in the first, the first task moves;
// in the next, it stays and the second moves, and so on until the day is full of
// those that stay.
func (b *branching) moves(n *cut, on, at []int) []*cut {
	room := b.room[b.s.slot(b.tasks[on[0]], at[on[0]])]
	var all []*cut
	for k := 0; k <= room; k++ {
		m := n.clone()
		for _, p := range on[:k] {
			m.hold(b.place[p], at[p])
		}
		m.bar(b.place[on[k]], at[on[k]])
		all = append(all, m)
	}
	return all
}

// explore solves the branches and descends into each, the cheapest first.
func (b *branching) explore(branches []*cut) {
	branches = slices.DeleteFunc(branches, func(n *cut) bool { return !n.solve(b.cost - b.without) })
	slices.SortStableFunc(branches, func(m, n *cut) int { return cmp.Compare(m.cost, n.cost) })
	for _, n := range branches {
		b.descend(n)
	}
}
