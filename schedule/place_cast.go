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
	firstLent, firstLoans []int64 // as they were without prices, if it is searched again
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
	c.firstLent, c.firstLoans = slices.Clone(c.lent), slices.Clone(c.loans)
	k.casts = append(k.casts, c)
	return c
}

// newCast writes out some tasks of a knot, with the days that cost no more than
// the reach above the task's cheapest.
func (k *knot) newCast(in []bool, reach int64) *cast {
	b, c := k.b, &cast{k: k, in: slices.Clone(in)}
	most := make([]int64, len(k.tasks))
	size := 0
	for p, i := range k.tasks {
		if !in[p] {
			continue
		}
		c.tasks = append(c.tasks, p)
		days := b.choices[i][:len(b.choices[i])-1]
		most[p] = min(unreachable, cheapest(days)+reach)
		for _, x := range days {
			if x.cost <= most[p] {
				size++
			}
		}
	}
	n := len(c.tasks)
	ints, costs := make([]int, 2*size+n+1), make([]int64, 2*size)
	c.day, c.slot, c.row = ints[:0:size], ints[size:size:2*size], ints[2*size:2*size]
	c.cost, c.lent = costs[:0:size], costs[size:]
	for _, p := range c.tasks {
		i := k.tasks[p]
		c.row = append(c.row, len(c.day))
		for _, x := range b.choices[i][:len(b.choices[i])-1] {
			if x.cost <= most[p] {
				c.day, c.cost, c.slot = append(c.day, x.day), append(c.cost, x.cost), append(c.slot, b.slot(i, x.day))
			}
		}
	}
	c.row = append(c.row, size)
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
	type bind struct{ p, o, before, after int }
	var binds []bind
	size := 0
	sides := make([]int, len(c.tasks))
	for p, i := range c.tasks {
		for o := p + 1; o < len(c.tasks); o++ {
			q := c.tasks[o]
			after, before := c.k.gap[i][q], c.k.gap[q][i]
			if after == 0 || c.implied(i, q) || c.implied(q, i) || c.apart(p, o) >= after || c.apart(o, p) >= before {
				continue
			}
			binds = append(binds, bind{p, o, before, after})
			sides[p]++
			sides[o]++
			size += c.width(p) + c.width(o)
		}
	}
	c.pairs, c.loans, c.of = make([]pair, len(binds)), make([]int64, size), make([][]side, len(c.tasks))
	shuts, all, loans := make([]shut, size), make([]side, 2*len(binds)), c.loans
	for p, n := range sides {
		c.of[p], all = all[:0:n], all[n:]
	}
	end := func(pair, e, p, o, before, after int) {
		w := c.width(p)
		t := &c.pairs[pair][e]
		t.task = p
		t.lent, loans = loans[:w:w], loans[w:]
		t.shut, shuts = shuts[:w:w], shuts[w:]
		c.shuts(t.shut, p, o, before, after)
		c.of[p] = append(c.of[p], side{pair, e})
	}
	for n, x := range binds {
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

// shuts writes down for each choice of p the run that a limit closes to o: o
// must come so many days before or after.
func (c *cast) shuts(all []shut, p, o, before, after int) {
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
