package schedule

import (
	"cmp"
	"slices"
)

// chooser picks for each knot of a crowd one of its listed ways, so that they
// fit the days, cost least, and of those come earliest.
//
// The plan: knot after knot, of each the ways that owe least first. What is
// picked, the least the others owe, and the price of room that nobody is left
// to fill are a lower bound; turn back when it is above most. Of alike knots
// only the picks in one order are tried; they then share them out by date.
type chooser struct {
	c      *crowd
	alike  []int   // of each knot
	picks  []int   // of each knot
	owes   []int64 // the least the knots from here on owe
	priced []int   // slots that have a price
	could  [][]int // by knot and priced slot: jobs that the knots from here on could put there
	most   int64
}

// choose makes the best answer of the listed ways the crowd's, if it costs at
// most most and is better than the one it has. No listed way owes less than
// its knot is said to owe.
func (c *crowd) choose(owes []int64, most int64) {
	h := &chooser{c: c, most: most}
	paid := int64(0)
	for s, p := range c.price {
		if p > 0 {
			h.priced = append(h.priced, s)
			paid += p * int64(c.b.room[s])
		}
	}
	h.owes, h.could = []int64{0}, [][]int{make([]int, len(h.priced))}
	for n := len(c.alike) - 1; n >= 0; n-- { // from the last, to sum up
		fill := c.fill(n, h.priced)
		for range c.alike[n].members {
			h.alike, h.picks = append(h.alike, n), append(h.picks, 0)
			h.owes = append(h.owes, h.owes[len(h.owes)-1]+owes[n])
			could := slices.Clone(h.could[len(h.could)-1])
			for x, f := range fill {
				could[x] += f
			}
			h.could = append(h.could, could)
		}
	}
	slices.Reverse(h.alike)
	slices.Reverse(h.owes)
	slices.Reverse(h.could)
	h.descend(0, -paid)
}

// fill gives the most jobs that one way of a knot puts in each of some slots.
func (c *crowd) fill(alike int, slots []int) []int {
	most := make([]int, len(slots))
	for _, w := range c.alike[alike].ways {
		for x, s := range slots {
			n := 0
			for _, t := range w.slots {
				if t == s {
					n++
				}
			}
			most[x] = max(most[x], n)
		}
	}
	return most
}

func (h *chooser) descend(i int, owed int64) {
	c := h.c
	if c.b.steps--; c.b.steps < 0 {
		return
	}
	if i == len(h.alike) {
		h.keep()
		return
	}
	ways, from := c.alike[h.alike[i]].ways, 0
	if i > 0 && h.alike[i] == h.alike[i-1] {
		from = h.picks[i-1]
	}
	for n := from; n < len(ways) && owed+ways[n].owed+h.owes[i+1] <= h.most; n++ {
		w := &ways[n]
		if !c.take(w.slots) {
			continue
		}
		h.picks[i] = n
		sum := owed + w.owed
		if sum+h.owes[i+1]+h.unfilled(i+1) <= h.most {
			h.descend(i+1, sum)
		}
		c.free(w.slots)
	}
}

// unfilled gives the price of the room that the knots from i on cannot fill.
func (h *chooser) unfilled(i int) (sum int64) {
	c := h.c
	for x, s := range h.priced {
		if n := c.room[s] - h.could[i][x]; n > 0 {
			sum += c.price[s] * int64(n)
		}
	}
	return sum
}

// keep remembers the picks if they are the best so far.
func (h *chooser) keep() {
	c := h.c
	days, cost := make([]int, len(c.tasks)), int64(0)
	for i := 0; i < len(h.alike); {
		a := c.alike[h.alike[i]]
		var all [][]int
		for _, n := range h.picks[i : i+len(a.members)] {
			cost += a.ways[n].cost
			all = append(all, a.ways[n].days)
		}
		slices.SortFunc(all, slices.Compare)
		for m, tasks := range a.members {
			for p, t := range tasks {
				days[c.place[t]] = all[m][p]
			}
		}
		i += len(all)
	}
	if c.offer(days, cost) {
		h.most = cost
	}
}

// offer makes an answer the crowd's if it is better.
func (c *crowd) offer(days []int, cost int64) bool {
	if c.days != nil && cmp.Or(cmp.Compare(cost, c.cost), slices.Compare(days, c.days)) >= 0 {
		return false
	}
	c.days, c.cost = days, cost
	return true
}

// take counts jobs into slots, if they have room.
func (c *crowd) take(slots []int) bool {
	for n, s := range slots {
		if c.room[s] <= 0 {
			c.free(slots[:n])
			return false
		}
		c.room[s]--
	}
	return true
}

// free takes jobs out of slots.
func (c *crowd) free(slots []int) {
	for _, s := range slots {
		c.room[s]++
	}
}
