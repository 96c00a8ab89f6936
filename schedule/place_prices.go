package schedule

import (
	"container/heap"
	"slices"
)

const (
	priceRounds = 120
	patience    = 4             // rounds without gain before the stride is halved
	firstStep   = perUnit / 100 // of a price for each job too many
)

// setPrices looks for the prices on a person's days that raise the least sum
// most, and leaves them charged; it gives the case to start from. In each round
// days with too many jobs grow dearer and days with room cheaper, in
// proportion, and the knots choose again. The stride grows while that raises
// the sum; when it has not for a few rounds, the search for prices goes back to
// the best and takes half the stride. Any prices from 0 up keep the search
// exact; good ones make it short.
func (c *crowd) setPrices() (best crowdCase) {
	price := make([]int64, len(c.b.load))
	var kept []int64
	stride := int64(firstStep)
	idle := 0
	for range priceRounds {
		c.charge(price)
		x := c.root()
		if kept == nil || x.cost > best.cost {
			best, kept, idle = x, slices.Clone(price), 0
			stride += stride / 8
		} else if idle++; idle == patience {
			stride, idle = stride/2, 0
			copy(price, kept)
			x = best
		}
		for s, n := range c.b.count(c.tasks, x.days) {
			price[s] = max(0, price[s]+stride*int64(n-c.b.room(s)))
		}
		if stride == 0 || slices.Equal(price, kept) {
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
		c.add(from, &ruling{i, day, day, true, from.rulings})
		c.add(from, &ruling{i, day, day, false, from.rulings})
		return
	}
	from.cost += c.price[slot] * int64(c.b.room(slot)-n)
	from.rulings = &ruling{task: settles, first: slot, up: from.rulings}
	heap.Push(c, from)
}

// settles stands in place of a task in a ruling that a slot's empty room has
// been added back; its first is the slot.
const settles = -1

func (r *ruling) settled(slot int) bool {
	for ; r != nil; r = r.up {
		if r.task == settles && r.first == slot {
			return true
		}
	}
	return false
}
