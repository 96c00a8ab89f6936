package schedule

import "slices"

// whoSearch decides which tasks of a knot get a day, and has the best days
// looked for.
//
// The plan: task by task, the dearest to leave out first, with a day or
// without, as long as those with a day can all have one beside each other and
// what is decided and the least the others owe is not above most.
type whoSearch struct {
	k     *knot
	least []int64 // of each task: the least that a day of its own owes
	rest  []int64 // by place in the order: the least that the tasks from there on owe
	in    []bool  // of each task: has a day
	most  int64
	open  int64 // what the ways that were not looked at to the end owe at least
	days  func(without int64) (low int64)
}

// who sets up a search, but for days: told what is owed without a day, it looks
// for the days of those in, and gives what every such way owes at least.
func (k *knot) who(price []int64, room []int, most int64) *whoSearch {
	b, n := k.b, len(k.tasks)
	s := &whoSearch{k: k, least: make([]int64, n), rest: make([]int64, n+1), in: make([]bool, n), most: most, open: unreachable}
	for p, i := range k.tasks {
		s.least[p] = unreachable
		for _, x := range b.choices[i] {
			if x.day == b.out {
				continue
			}
			owed, slot := x.cost, b.slot(i, x.day)
			if room != nil && room[slot] <= 0 {
				continue
			}
			if price != nil {
				owed += price[slot]
			}
			s.least[p] = min(s.least[p], owed)
		}
		s.in[p] = s.least[p] < unreachable
	}
	for m := n - 1; m >= 0; m-- {
		p := k.order[m]
		s.rest[m] = s.rest[m+1] + min(s.least[p], leaveOut(b.tasks[k.tasks[p]].rank))
	}
	k.canStay(s.in) // most often they all can, and then nothing else is asked
	clear(s.in)
	return s
}

// decide settles the tasks from a place in the order on. The settled ones owe
// owed at least, of which without is for those left out.
func (s *whoSearch) decide(m int, owed, without int64) {
	b := s.k.b
	if owed+s.rest[m] > s.most {
		return
	}
	if b.steps--; b.steps < 0 {
		s.open = min(s.open, owed+s.rest[m])
		return
	}
	if m == len(s.k.order) {
		low := s.days(without)
		if b.steps < 0 {
			s.open = min(s.open, low)
		}
		return
	}
	p := s.k.order[m]
	if s.least[p] < unreachable {
		if s.in[p] = true; s.k.canStay(s.in) {
			s.decide(m+1, owed+s.least[p], without)
		}
		s.in[p] = false
	}
	out := leaveOut(b.tasks[s.k.tasks[p]].rank)
	s.decide(m+1, owed+out, without+out)
}

// best gives the way that owes least, if that is at most most, and a lower
// bound of what every way owes, which is the least itself unless its steps run
// out.
func (k *knot) best(alike int, price []int64, room []int, most int64) (best way, low int64, ok bool) {
	b := k.b
	all := b.steps
	b.steps = waySteps
	s := k.who(price, room, most)
	s.days = func(without int64) int64 {
		c := k.castOf(s.in)
		return without + c.search(price, room, func(choice []int, owed int64) int64 {
			best, ok = c.way(alike, choice), true
			best.owed = owed + without
			s.most = best.owed - 1
			return s.most - without
		}).cheapest(s.most-without)
	}
	s.decide(0, 0, 0)
	b.steps = all - waySteps + b.steps
	return best, min(s.most+1, s.open), ok
}

// within calls found with every way that owes at most most.
func (k *knot) within(price []int64, room []int, most int64, found func(way)) {
	s := k.who(price, room, most)
	s.days = func(without int64) int64 {
		c := k.castOf(s.in)
		c.search(price, room, func(choice []int, owed int64) int64 {
			w := c.way(0, choice)
			w.owed = owed + without
			found(w)
			return most - without
		}).start(most - without)
		return without
	}
	s.decide(0, 0, 0)
}

// way writes out a way of a knot in which only a cast has days.
func (c *cast) way(alike int, choice []int) way {
	days := slices.Repeat([]int{c.k.b.out}, len(c.k.tasks))
	for p, x := range choice {
		days[c.tasks[p]] = c.day[c.row[p]+x]
	}
	return c.k.way(alike, days)
}
