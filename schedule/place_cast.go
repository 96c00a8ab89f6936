package schedule

import "slices"

// cast is those tasks of a knot that all get a day, written out in rows: for
// each task the days it has, one after another. Tasks are named by their place
// in it, choices by their place in their row.
type cast struct {
	k     *knot
	in    []bool // of the knot's tasks
	tasks []int  // their places in the knot
	row   []int  // where the choices of each task begin; one more at the end
	day   []int  // of each choice
	cost  []int64
	slot  []int // of each choice: its person and day
	pairs []pair
	of    [][]side // the pairs of each task

	// What the limits lend to choices, see [cast.lend]: for each choice in
	// sum, for each pair and choice in its ends, which are cut from loans.
	lent, loans           []int64
	firstLent, firstLoans []int64 // as they were without prices
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

// castOf gives the cast of some tasks with all their days.
func (k *knot) castOf(in []bool) *cast {
	for _, c := range k.casts {
		if slices.Equal(c.in, in) {
			return c
		}
	}
	c := k.newCast(in, unreachable)
	k.casts = append(k.casts, c)
	return c
}

// newCast writes out some tasks of a knot, with the days that cost no more than
// the reach above the task's cheapest.
func (k *knot) newCast(in []bool, reach int64) *cast {
	b, c, size := k.b, &cast{k: k, in: slices.Clone(in)}, 0
	for p, i := range k.tasks {
		if in[p] {
			c.tasks = append(c.tasks, p)
			size += len(b.choices[i])
		}
	}
	c.of = make([][]side, len(c.tasks))
	c.row = make([]int, 0, len(c.tasks)+1)
	c.day, c.slot, c.cost = make([]int, 0, size), make([]int, 0, size), make([]int64, 0, size)
	for _, p := range c.tasks {
		i := k.tasks[p]
		c.row = append(c.row, len(c.day))
		days := b.choices[i][:len(b.choices[i])-1]
		most := min(unreachable, cheapest(days)+reach)
		for _, x := range days {
			if x.cost <= most {
				c.day, c.cost, c.slot = append(c.day, x.day), append(c.cost, x.cost), append(c.slot, b.slot(i, x.day))
			}
		}
	}
	c.row = append(c.row, len(c.day))
	c.lent = make([]int64, len(c.day))
	c.tie()
	worth := slices.Clone(c.cost)
	for range firstSweeps {
		c.lend(worth)
	}
	for x, w := range worth {
		if w >= closed { // no limit lets it stand beside the others
			c.lent[x] = unreachable
		}
	}
	c.firstLent, c.firstLoans = slices.Clone(c.lent), slices.Clone(c.loans)
	return c
}

// cheapest gives the least cost of some choices.
func cheapest(of []choice) int64 {
	least := int64(unreachable)
	for k := range of {
		least = min(least, of[k].cost)
	}
	return least
}

// tie writes out the limits as pairs.
func (c *cast) tie() {
	size := 0
	for p, i := range c.tasks {
		for o := p + 1; o < len(c.tasks); o++ {
			after, before := c.k.gap[i][c.tasks[o]], c.k.gap[c.tasks[o]][i]
			if after == 0 || c.implied(i, c.tasks[o]) || c.implied(c.tasks[o], i) || c.day[c.row[p+1]-1] < c.day[c.row[o]] && c.day[c.row[o]]-c.day[c.row[p+1]-1] >= after ||
				c.day[c.row[o+1]-1] < c.day[c.row[p]] && c.day[c.row[p]]-c.day[c.row[o+1]-1] >= before {
				continue
			}
			c.of[p] = append(c.of[p], side{len(c.pairs), 0})
			c.of[o] = append(c.of[o], side{len(c.pairs), 1})
			c.pairs = append(c.pairs, pair{
				{task: p, shut: c.shuts(p, o, before, after)},
				{task: o, shut: c.shuts(o, p, after, before)},
			})
			size += c.width(p) + c.width(o)
		}
	}
	c.loans = make([]int64, size)
	rest := c.loans
	for n := range c.pairs {
		for e := range c.pairs[n] {
			w := len(c.pairs[n][e].shut)
			c.pairs[n][e].lent, rest = rest[:w:w], rest[w:]
		}
	}
}

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

// shuts gives for each choice of p the run that a limit closes to o: o must
// come so many days before or after.
func (c *cast) shuts(p, o, before, after int) []shut {
	days := c.day[c.row[o]:c.row[o+1]]
	all := make([]shut, c.width(p))
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
	return all
}
