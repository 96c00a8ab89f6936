package schedule

import "slices"

const (
	lendSweeps = 4
	worthwhile = 8 // a sweep that raised the bound by less than this part of what it lacks is the last
)

// closed is above the worth of every open choice.
const closed = unreachable / 2

// lend sharpens the lower bound of a cast, the sum of the least worth of each
// row. A limit costs nothing by itself, but it closes choices. So it lends: it
// takes some of the worth of one task's choices and gives each choice of the
// other task the least of what it took from those it leaves open. For every
// answer what a limit gave and took is at most even, so the bound holds, and
// each lending can only raise it. A choice's worth is then its cost and price
// and all that was lent to it.
//
// One sweep lends from each task to the later ones, then back.
func (c *cast) lend() {
	c.k.b.steps -= 1 + len(c.pairs)/4 // a sweep costs about that
	for p := range c.tasks {
		c.pass(p, true)
	}
	for p := len(c.tasks) - 1; p >= 0; p-- {
		c.pass(p, false)
	}
}

// pass lends from one task, in equal parts, to the later or earlier ones.
func (c *cast) pass(p int, later bool) {
	on, back := 0, 0
	for _, e := range c.of[p] {
		if (c.pairs[e.pair][1-e.end].task > p) == later {
			on++
		} else {
			back++
		}
	}
	if on == 0 {
		return
	}
	b, parts := c.k.b, int64(max(on, back))
	n := c.width(p)
	b.scratch = slices.Grow(b.scratch[:0], 4*n+2)[:4*n+2]
	give, kept := b.scratch[:n], b.scratch[n:2*n]
	before, after := b.scratch[2*n:3*n+1], b.scratch[3*n+1:]
	own := c.worth[c.row[p]:c.row[p+1]]
	for x, w := range own {
		give[x] = 0
		if w < closed {
			give[x] = w / parts
		}
	}
	for _, e := range c.of[p] {
		mine, other := &c.pairs[e.pair][e.end], &c.pairs[e.pair][1-e.end]
		if (other.task > p) != later {
			continue
		}
		// kept is what the limit holds against each choice of p; before and
		// after are the least of kept before and from a choice.
		before[0], after[n] = unreachable, unreachable
		for x, g := range give {
			kept[x] = unreachable
			if own[x] < closed {
				own[x] -= g
				mine.lent[x] -= g
				kept[x] = -mine.lent[x]
			}
			before[x+1] = min(before[x], kept[x])
		}
		for x := n - 1; x >= 0; x-- {
			after[x] = min(after[x+1], kept[x])
		}
		theirs := c.worth[c.row[other.task]:c.row[other.task+1]]
		for y, s := range other.shut {
			v := min(before[s.first], after[s.last])
			if v >= closed {
				theirs[y] = unreachable
			}
			if theirs[y] < closed {
				theirs[y] += v - other.lent[y]
				other.lent[y] = v
			}
		}
	}
}
