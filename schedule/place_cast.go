package schedule

import "slices"

// cast is those tasks of a knot that all get a day, written out in rows: for
// each task the days it may have, one after another. Tasks are named by their
// place in it, choices by their place in their row.
type cast struct {
	k     *knot
	most  int64   // what its ways may owe
	tasks []int   // their places in the knot
	row   []int   // where the choices of each task begin; one more at the end
	day   []int   // of each choice
	slot  []int   // of each choice: its person and day
	worth []int64 // of each choice: what it owes and what the limits lent it, see [cast.lend]
	least []int64 // of each task: the least worth
	bound int64   // what every way owes at least: the sum of those
	room  []int   // by slot; nil without bounds
	pairs []pair
	of    [][]side // the pairs of each task

	binds []bind // scratch of tie, and what its pairs are cut from
	sides []side
	shuts []shut
	loans []int64
}

// pair is a limit between two tasks of a cast.
type pair [2]end

// end is one task of a pair, with what the limit lends to each of its choices.
type end struct {
	task int
	lent []int64
	shut []shut // by choice: which of the other's choices it closes
}

// shut is a run of choices from first to before last.
type shut struct{ first, last int32 }

// side names an end of a pair.
type side struct{ pair, end int }

// newCast writes out the tasks that have a day, with the days that owe no more
// than the reach above the task's least, for ways that owe no more than the reach
// above the sum of those. It takes the room of the one before.
func (s *whoSearch) newCast(reach, without int64) *cast {
	k, b, c := s.k, s.k.b, &s.k.b.cast
	c.k, c.room, c.most = k, s.room, reach
	whole := true // no day is left aside
	c.tasks, c.row, c.day, c.slot, c.worth = c.tasks[:0], c.row[:0], c.day[:0], c.slot[:0], c.worth[:0]
	for p, i := range k.tasks {
		if !s.in[p] {
			continue
		}
		c.tasks, c.row = append(c.tasks, p), append(c.row, len(c.day))
		most := s.least[p] + reach
		c.most += s.least[p]
		for n := range b.choices[i] {
			x := &b.choices[i][n]
			if x.day == b.out {
				continue
			}
			switch owed := s.owes(i, x); {
			case owed <= most:
				c.day, c.worth, c.slot = append(c.day, x.day), append(c.worth, owed), append(c.slot, b.slot(i, x.day))
			case owed < unreachable:
				whole = false
			}
		}
	}
	c.row = append(c.row, len(c.day))
	if most := s.most - without; whole || c.most > most {
		c.most = most
	}
	c.tie()
	c.sum()
	for range lendSweeps {
		was := c.bound
		c.lend()
		if c.sum(); c.bound >= c.most-nearReach || c.bound-was <= (c.most-c.bound)/worthwhile {
			break
		}
	}
	return c
}

// sum finds the least worth of each row, and the bound that they make.
func (c *cast) sum() {
	c.least, c.bound = c.least[:0], 0
	for p := range c.tasks {
		low := int64(unreachable)
		for _, w := range c.worth[c.row[p]:c.row[p+1]] {
			low = min(low, w)
		}
		c.least, c.bound = append(c.least, low), min(unreachable, c.bound+low)
	}
}

// bind is a limit between two tasks of a cast.
type bind struct{ p, o, before, after int }

// tie writes out the limits as pairs.
func (c *cast) tie() {
	size, n := 0, len(c.tasks)
	c.binds, c.of = c.binds[:0], zeros(c.of, n)
	sides := make([]int, n)
	for p, i := range c.tasks {
		for o := p + 1; o < n; o++ {
			q := c.tasks[o]
			after, before := c.k.gap[i][q], c.k.gap[q][i]
			if after == 0 || c.implied(i, q) || c.implied(q, i) || c.apart(p, o) >= after || c.apart(o, p) >= before {
				continue
			}
			c.binds = append(c.binds, bind{p, o, before, after})
			sides[p]++
			sides[o]++
			size += c.width(p) + c.width(o)
		}
	}
	c.pairs, c.loans = slices.Grow(c.pairs[:0], len(c.binds))[:len(c.binds)], zeros(c.loans, size)
	c.shuts, c.sides = slices.Grow(c.shuts[:0], size)[:size], slices.Grow(c.sides[:0], 2*len(c.binds))[:2*len(c.binds)]
	shuts, all, loans := c.shuts, c.sides, c.loans
	for p, n := range sides {
		c.of[p], all = all[:0:n], all[n:]
	}
	end := func(pair, e, p, o, before, after int) {
		w := c.width(p)
		t := &c.pairs[pair][e]
		t.task = p
		t.lent, loans = loans[:w:w], loans[w:]
		t.shut, shuts = shuts[:w:w], shuts[w:]
		c.shut(t.shut, p, o, before, after)
		c.of[p] = append(c.of[p], side{pair, e})
	}
	for n, x := range c.binds {
		end(n, 0, x.p, x.o, x.before, x.after)
		end(n, 1, x.o, x.p, x.after, x.before)
	}
}

// apart gives the days from the last day of one task to the first of another.
func (c *cast) apart(first, then int) int { return c.day[c.row[then]] - c.day[c.row[first+1]-1] }

// implied tells whether one task must come before another, and so long before
// it by way of a third that the limit between the two says nothing more.
func (c *cast) implied(first, last int) bool {
	gap := c.k.gap
	if gap[last][first] != never {
		return false
	}
	for _, m := range c.tasks {
		if gap[m][first] == never && gap[last][m] == never && gap[first][m]+gap[m][last] >= gap[first][last] {
			return true
		}
	}
	return false
}

// width gives the number of choices of a task.
func (c *cast) width(p int) int { return c.row[p+1] - c.row[p] }

// shut writes down for each choice of p the run that a limit closes to o: o
// must come so many days before or after.
func (c *cast) shut(all []shut, p, o, before, after int) {
	days := c.day[c.row[o]:c.row[o+1]]
	first, last := 0, 0
	for x := range all {
		d := c.day[c.row[p]+x]
		for first < len(days) && days[first] <= d-before {
			first++
		}
		for last < len(days) && days[last] < d+after {
			last++
		}
		all[x] = shut{int32(first), int32(last)}
	}
}
