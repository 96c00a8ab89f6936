package schedule

import (
	"container/heap"
	"slices"
)

const (
	priceRounds = 120
	firstStep   = perUnit / 100 // of a price for each job too many
)

// setPrices looks for the prices on a person's days that raise the least sum
// most, and leaves them charged; it gives the case to start from. In each round
// days with too many jobs grow dearer and days with room cheaper, in
// proportion, and the knots choose again. The stride grows while that raises
// the sum and shrinks when it does not. Any prices from 0 up keep the search
// exact; good ones make it short.
func (c *crowd) setPrices() (best crowdCase) {
	price := make([]int64, len(c.b.load))
	var kept []int64
	stride := int64(firstStep)
	idle := 0
	for range priceRounds {
		c.charge(price)
		x := c.root()
		switch {
		case kept == nil || x.cost > best.cost:
			best, kept, idle = x, slices.Clone(price), 0
			stride += stride / 8
		default:
			if idle++; idle == 4 {
				stride, idle = stride/2, 0
			}
		}
		steady := true
		for s, n := range c.b.count(c.tasks, x.days) {
			next := max(0, price[s]+stride*int64(n-c.b.room(s)))
			steady = steady && next == price[s]
			price[s] = next
		}
		if steady {
			break
		}
	}
	c.charge(kept)
	return best
}

// charge adds the prices to the crowd's choices; nil takes them off.
func (c *crowd) charge(price []int64) {
	if price == nil && c.price == nil {
		return
	}
	c.price = slices.Clone(price)
	for k, i := range c.tasks {
		c.b.choices[i] = c.plain[k]
		if price != nil {
			c.b.choices[i] = slices.Clone(c.plain[k])
			for m := range c.b.choices[i] {
				if x := &c.b.choices[i][m]; x.day != c.b.out {
					x.cost += price[c.b.slot(i, x.day)]
				}
			}
		}
		c.b.ranked[i] = nil
	}
}

// slackest finds the priced slot whose empty room was counted for most.
func (c *crowd) slackest(x crowdCase) (slot int, some bool) {
	most := int64(0)
	for s, n := range c.b.count(c.tasks, x.days) {
		if len(c.price) == 0 || c.price[s] == 0 || x.rulings.settled(s) {
			continue
		}
		if lost := c.price[s] * int64(c.b.room(s)-n); lost > most {
			slot, most, some = s, lost, true
		}
	}
	return slot, some
}

// fill splits a case by whether one more job takes the empty room of a slot.
func (c *crowd) fill(from crowdCase, slot int) {
	day := slot % c.b.out
	n := 0
	for k, i := range c.tasks {
		if !c.could(from, i, slot) {
			continue
		}
		if from.days[k] == day {
			n++
			continue
		}
		c.add(from, &ruling{i, day, true, from.rulings})
		c.add(from, &ruling{i, day, false, from.rulings})
		return
	}
	from.cost += c.price[slot] * int64(c.b.room(slot)-n)
	from.rulings = &ruling{settles, slot, false, from.rulings}
	heap.Push(c, from)
}

// settles stands in place of a task in a ruling that a slot's empty room has
// been added back; its day is the slot.
const settles = -1

func (r *ruling) settled(slot int) bool {
	for ; r != nil; r = r.up {
		if r.task == settles && r.day == slot {
			return true
		}
	}
	return false
}
