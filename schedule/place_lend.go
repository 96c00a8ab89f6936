package schedule

import "slices"

const firstSweeps = 4

// closed is above the worth of every open choice.
const closed = unreachable / 2

// lend sharpens the lower bound of a knot, the sum of the least worth of each
// row. A limit costs nothing by itself, but it closes choices. So it lends: it
// takes some of the worth of one task's choices and gives each choice of the
// other task the least of what it took from those it leaves open. For every
// answer what a limit gave and took is at most even, so the bound holds, and
// each lending can only raise it. A choice's worth is then its cost and price
// and all that was lent to it.
//
// One sweep lends from each task to the later ones, then back.
func (k *knot) lend(worth []int64) {
	k.b.steps -= 1 + len(k.pairs)/4 // a sweep costs about that
	for p := range k.tasks {
		k.pass(p, worth, true)
	}
	for p := len(k.tasks) - 1; p >= 0; p-- {
		k.pass(p, worth, false)
	}
}

// pass lends from one task, in equal parts, to the later or earlier ones.
func (k *knot) pass(p int, worth []int64, later bool) {
	on, back := 0, 0
	for _, e := range k.of[p] {
		if (k.pairs[e.pair][1-e.end].task > p) == later {
			on++
		} else {
			back++
		}
	}
	if on == 0 {
		return
	}
	parts := int64(max(on, back))
	n := k.width(p)
	k.b.scratch = slices.Grow(k.b.scratch[:0], 4*n+2)[:4*n+2]
	give, kept := k.b.scratch[:n], k.b.scratch[n:2*n]
	before, after := k.b.scratch[2*n:3*n+1], k.b.scratch[3*n+1:]
	own, lent := worth[k.row[p]:k.row[p+1]], k.lent[k.row[p]:k.row[p+1]]
	for x, w := range own {
		give[x] = 0
		if w < closed {
			give[x] = w / parts
		}
	}
	for _, e := range k.of[p] {
		mine, other := &k.pairs[e.pair][e.end], &k.pairs[e.pair][1-e.end]
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
				lent[x] -= g
				mine.lent[x] -= g
				kept[x] = -mine.lent[x]
			}
			before[x+1] = min(before[x], kept[x])
		}
		for x := n - 1; x >= 0; x-- {
			after[x] = min(after[x+1], kept[x])
		}
		from, to := k.row[other.task], k.row[other.task+1]
		theirs, theirLent := worth[from:to], k.lent[from:to]
		for y, s := range other.shut {
			v := min(before[s.first], after[s.last])
			if s.but >= 0 {
				v = min(v, kept[s.but])
			}
			if v >= closed {
				theirs[y] = unreachable
			}
			if theirs[y] < closed {
				more := v - other.lent[y]
				theirs[y] += more
				theirLent[y] += more
				other.lent[y] = v
			}
		}
	}
}
