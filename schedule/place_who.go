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
	price []int64 // by slot; nil where days are free
	room  []int   // by slot; nil where days hold all
	least []int64 // of each task: the least that a day of its own owes
	ideal []int   // that day, the earliest of equals
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
	s := &b.who
	*s = whoSearch{k: k, price: price, room: room, least: zeros(s.least, n), ideal: zeros(s.ideal, n), rest: zeros(s.rest, n+1), in: zeros(s.in, n), most: most, open: unreachable}
	for p, i := range k.tasks {
		s.least[p] = unreachable
		for n := range b.choices[i] {
			x := &b.choices[i][n]
			if x.day == b.out {
				continue
			}
			if owed := s.owes(i, x); owed < s.least[p] {
				s.least[p], s.ideal[p] = owed, x.day
			}
		}
	}
	for m := n - 1; m >= 0; m-- {
		p := k.order[m]
		s.rest[m] = s.rest[m+1] + min(s.least[p], leaveOut(b.tasks[k.tasks[p]].rank))
	}
	return s
}

// owes gives the cost of a task's day with its price; unreachable on a full day.
func (s *whoSearch) owes(i int, x *choice) int64 {
	slot := s.k.b.slot(i, x.day)
	switch {
	case s.room != nil && s.room[slot] <= 0:
		return unreachable
	case s.price != nil:
		return x.cost + s.price[slot]
	}
	return x.cost
}

// near calls look with casts of the tasks in, of the cheapest days first and of
// more of them until it tells that it has found a way: most days need no thought.
// It begins as far above the cheapest days as the best was last time, and no
// nearer than the floor. It passes on the lower bound that look gives of what
// each way of a cast owes.
func (s *whoSearch) near(without int64, look func(c *cast) (low int64, found bool)) (low int64) {
	for reach := max(nearReach, s.k.above, s.k.floor-without-s.cheapest()); ; reach *= 8 {
		c := s.newCast(min(reach, s.most-without-s.cheapest()), without)
		last := c.most == s.most-without
		low, found := look(c)
		if found {
			s.k.above = low - s.cheapest()
		}
		if found || last || s.k.b.steps < 0 {
			return without + min(low, c.most+1)
		}
	}
}

// cheapest sums the cheapest days of the tasks in.
func (s *whoSearch) cheapest() (sum int64) {
	for p, in := range s.in {
		if in {
			sum += s.least[p]
		}
	}
	return sum
}

// nearReach is how far above the sum of the cheapest days it looks first.
const nearReach = perUnit / 20

// start looks for the best: most often all tasks can have a day, and then
// nothing else is asked.
func (s *whoSearch) start() {
	for p, least := range s.least {
		s.in[p] = least < unreachable
	}
	s.k.canStay(s.in)
	clear(s.in)
	s.decide(0, 0, 0)
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
	if most < k.floor {
		return way{}, most + 1, false
	}
	s := k.who(price, room, most)
	if w, ok := s.unhindered(alike); ok {
		return w, min(w.owed, most+1), w.owed <= most
	}
	b := k.b
	all := b.steps
	b.steps = waySteps
	s.days = func(without int64) int64 {
		return s.near(without, func(c *cast) (int64, bool) {
			ws := c.search(func(choice []int, owed int64) int64 {
				best, ok = c.way(alike, choice), true
				best.owed = owed + without
				s.most = best.owed - 1
				return s.most - without
			})
			return ws.cheapest(c.most), ws.hit
		})
	}
	s.start()
	b.steps = all - waySteps + b.steps
	return best, min(s.most+1, s.open), ok
}

// unhindered gives each task what owes least, a day or to be left out, and
// tells whether that fits together: then no way owes less.
func (s *whoSearch) unhindered(alike int) (w way, ok bool) {
	k := s.k
	days, owed := make([]int, len(k.tasks)), int64(0)
	for p, i := range k.tasks {
		days[p] = s.ideal[p]
		least := s.least[p]
		if out := leaveOut(k.b.tasks[i].rank); out < least {
			days[p], least = k.b.out, out
		}
		owed += least
		if !k.fits(p, days, s.room) {
			return way{}, false
		}
	}
	w = k.way(alike, days)
	w.owed = owed
	return w, true
}

// fits tells whether a task keeps its limits with those before it, and whether
// its day has room for it beside them.
func (k *knot) fits(p int, days, room []int) bool {
	b, d := k.b, days[p]
	if d == b.out {
		return true
	}
	beside := 1
	for q, e := range days[:p] {
		if e == b.out {
			continue
		}
		if d <= e && e-d < k.gap[p][q] || d >= e && d-e < k.gap[q][p] {
			return false
		}
		if d == e && b.person[k.tasks[p]] == b.person[k.tasks[q]] {
			beside++
		}
	}
	return room == nil || beside <= room[b.slot(k.tasks[p], d)]
}

// within calls found with every way that owes at most most.
func (k *knot) within(price []int64, room []int, most int64, found func(way)) {
	s := k.who(price, room, most)
	s.days = func(without int64) int64 {
		c := s.newCast(most-without-s.cheapest(), without)
		c.search(func(choice []int, owed int64) int64 {
			w := c.way(0, choice)
			w.owed = owed + without
			found(w)
			return most - without
		}).start(c.most)
		return without
	}
	s.start()
}

// way writes out a way of a knot in which only a cast has days.
func (c *cast) way(alike int, choice []int) way {
	days := slices.Repeat([]int{c.k.b.out}, len(c.k.tasks))
	for p, x := range choice {
		days[c.tasks[p]] = c.day[c.row[p]+x]
	}
	return c.k.way(alike, days)
}
