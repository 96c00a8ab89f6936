package schedule

import "slices"

const (
	waySteps  = 1000 // to find the cheapest way of one knot
	firstStep = 64   // how far above the bound it looks first
)

// waySearch looks for ways to place a cast.
//
// The plan: of the tasks not yet settled take the one with fewest choices
// worth trying, and try them, the least worth first, each time closing for its
// neighbours what the limits forbid and taking back what they had lent. Turn
// back when the bound, what is settled and the least worth of each other row,
// is above most.
type waySearch struct {
	c      *cast
	levels [][]int64 // worth of all choices, by number of tasks settled
	least  [][]int64 // of each row, by level
	from   []int     // of each row: the first choice within most, see [waySearch.start]
	to     []int     // and past the last one
	choice []int     // of settled tasks, -1 for the others
	bound  int64     // before any is settled
	most   int64
	found  func(choice []int, owed int64) (most int64) // tells the new most
	hit    bool                                        // found was called
}

// cheapest calls found with ways that owe at most most, near the bound first
// and farther until there is one. It gives a lower bound of what every way
// owes, which is the least itself unless the steps run out.
func (s *waySearch) cheapest(most int64) (low int64) {
	low = s.bound
	for reach := int64(firstStep); low <= most && !s.hit; reach *= 3 {
		if s.start(min(most, s.bound+reach)); s.c.k.b.steps < 0 {
			break
		}
		low = s.most + 1
	}
	return low
}

// earliest turns a way into the earliest that owes no more: with the earliest
// day for the first task, then for the second, and so on.
func (s *waySearch) earliest(best []int, owed int64) {
	s.found = func(choice []int, owed int64) int64 {
		copy(best, choice)
		return -unreachable // one is enough
	}
	bound := s.bound
	for p := range best {
		row, low := s.c.worth[s.c.row[p]:s.c.row[p+1]], s.least[0][p]
		all := slices.Clone(row)
		try := func(x int) {
			for y := range row {
				row[y] = unreachable
			}
			row[x], s.least[0][p], s.bound = all[x], all[x], bound-low+all[x]
		}
		for x := 0; x < best[p]; x++ {
			if bound-low+all[x] <= owed {
				try(x)
				s.start(owed)
			}
		}
		try(best[p])
		bound = s.bound
	}
}

// search sets up a search.
func (c *cast) search(found func(choice []int, owed int64) int64) *waySearch {
	b, n := c.k.b, len(c.tasks)
	s := &b.way
	*s = waySearch{c: c, choice: s.choice[:0], from: zeros(s.from, n), to: zeros(s.to, n), levels: s.levels[:0], least: s.least[:0], bound: c.bound, found: found}
	for range n {
		s.choice = append(s.choice, -1)
	}
	size := len(c.day) + n
	b.levels = slices.Grow(b.levels[:0], (n+1)*size)[:(n+1)*size]
	for l := range n + 1 {
		from := b.levels[l*size : (l+1)*size]
		s.levels, s.least = append(s.levels, from[n:]), append(s.least, from[:n])
	}
	copy(s.least[0], c.least)
	return s
}

// start searches with a new most. Going down never lowers the bound, so choices
// that are above most by themselves are left aside for good.
func (s *waySearch) start(most int64) {
	s.most = most
	copy(s.levels[0], s.c.worth)
	for p, low := range s.least[0] {
		from, to := s.c.row[p], s.c.row[p+1]
		top := most - s.bound + low
		for from < to && s.levels[0][from] > top {
			from++
		}
		for to > from && s.levels[0][to-1] > top {
			to--
		}
		s.from[p], s.to[p] = from, to
	}
	s.descend(0, 0, s.bound)
}

// descend settles one more task. Settled ones owe base; bound is base and the
// least worth of the others.
func (s *waySearch) descend(level int, base, bound int64) {
	b := s.c.k.b
	if b.steps--; b.steps < 0 || bound > s.most {
		return
	}
	if level == len(s.choice) {
		s.hit = true
		s.most = s.found(s.choice, base)
		return
	}
	p := s.next(level, bound)
	worth, others := s.levels[level], bound-s.least[level][p]
	for {
		x := s.from[p]
		for y := x; y < s.to[p]; y++ {
			if worth[y] < worth[x] {
				x = y
			}
		}
		if worth[x] >= closed || others+worth[x] > s.most {
			return
		}
		s.try(level, p, x, base, others-base)
		worth[x] = unreachable
	}
}

// next chooses the task with fewest choices within most, of those the one
// whose second choice costs most.
func (s *waySearch) next(level int, bound int64) (best int) {
	few, regret := len(s.c.day)+1, int64(0)
	for p, x := range s.choice {
		if x >= 0 {
			continue
		}
		low := s.least[level][p]
		n, lows, second, top := 0, 0, int64(unreachable), s.most-bound+low
		for _, w := range s.levels[level][s.from[p]:s.to[p]] {
			if w <= top {
				n++
				if w == low {
					lows++
				} else {
					second = min(second, w)
				}
			}
		}
		if lows > 1 {
			second = low
		}
		if r := second - low; n < few || n == few && r > regret {
			best, few, regret = p, n, r
		}
	}
	return best
}

// try settles a task on a choice, if its day has room. The other unsettled
// tasks owe others at least.
func (s *waySearch) try(level, p, x int, base, others int64) {
	c := s.c
	slot := c.slot[x]
	if c.room != nil && c.room[slot] <= 0 {
		return
	}
	was, worth, least := s.levels[level], s.levels[level+1], s.least[level+1]
	copy(least, s.least[level])
	base += was[x]
	x -= c.row[p]
	s.choice[p] = x
	for o, x := range s.choice {
		if x < 0 {
			copy(worth[s.from[o]:s.to[o]], was[s.from[o]:s.to[o]])
		}
	}
	for _, e := range c.of[p] {
		mine, other := &c.pairs[e.pair][e.end], &c.pairs[e.pair][1-e.end]
		o := other.task
		if s.choice[o] >= 0 {
			continue
		}
		start := c.row[o]
		low := int64(unreachable)
		shut, lent := mine.shut[x], mine.lent[x]
		first, last := start+int(shut.first), start+int(shut.last)
		for y := s.from[o]; y < s.to[o]; y++ {
			if w := worth[y]; w >= closed || y >= first && y < last {
				worth[y] = unreachable
			} else {
				w -= lent + other.lent[y-start]
				worth[y] = w
				low = min(low, w)
			}
		}
		others += low - least[o]
		least[o] = low
		if base+others > s.most {
			break
		}
	}
	if base+others <= s.most {
		if c.room != nil {
			c.room[slot]--
		}
		s.descend(level+1, base, base+others)
		if c.room != nil {
			c.room[slot]++
		}
	}
	s.choice[p] = -1
}
