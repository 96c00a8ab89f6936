package schedule

import "slices"

const (
	waySteps  = 1000 // to find the cheapest way of one knot
	firstStep = 64   // how far above the bound it looks first
)

// way is one way to place the tasks of a knot.
type way struct {
	alike  int   // the knot, see [crowd]
	choice []int // of each task, into its row
	slots  []int // taken
	cost   int64 // without prices
	owed   int64 // with prices
}

// owes gives the cost of a way with prices on slots.
func (w *way) owes(price []int64) int64 {
	sum := w.cost
	for _, s := range w.slots {
		sum += price[s]
	}
	return sum
}

// way writes out a way from its choices.
func (k *knot) way(alike int, choice []int) way {
	w := way{alike: alike, choice: slices.Clone(choice)}
	for p, x := range choice {
		x += k.row[p]
		w.cost += k.cost[x]
		if k.slot[x] >= 0 {
			w.slots = append(w.slots, k.slot[x])
		}
	}
	return w
}

// wayOut leaves out all tasks.
func (k *knot) wayOut(alike int) way {
	choice := make([]int, len(k.tasks))
	for p := range choice {
		choice[p] = k.width(p) - 1
	}
	return k.way(alike, choice)
}

// waySearch looks for ways to place a knot with prices on slots, beside the
// jobs that others have put in them.
//
// The plan: of the tasks not yet settled take the one with fewest choices
// worth trying, and try them, the least worth first, each time closing for its
// neighbours what the limits forbid and taking back what they had lent. Turn
// back when the bound, what is settled and the least worth of each other row,
// is above most.
type waySearch struct {
	k      *knot
	levels [][]int64 // worth of all choices, by number of tasks settled
	least  [][]int64 // of each row, by level
	from   []int     // of each row: the first choice within most, see [waySearch.start]
	to     []int     // and past the last one
	choice []int     // of settled tasks, -1 for the others
	room   []int     // by slot
	bound  int64     // before any is settled
	most   int64
	found  func(choice []int, owed int64) (most int64) // tells the new most
	hit    bool                                        // found was called
}

// cheapest gives the way that owes least, if that is at most most, and a lower
// bound of what every way owes, which is the least itself unless its steps run
// out. It looks near the bound first, and farther until it finds one.
func (k *knot) cheapest(alike int, price []int64, room []int, most int64) (best way, low int64, ok bool) {
	b := k.b
	s := k.search(price, room, func(choice []int, owed int64) int64 {
		best = k.way(alike, choice)
		best.owed = owed
		return owed - 1
	})
	all := b.steps
	b.steps = waySteps
	root := slices.Clone(s.levels[0])
	low = s.bound
	for reach := int64(firstStep); low <= most && !s.hit; reach *= 8 {
		copy(s.levels[0], root)
		if s.start(min(most, s.bound+reach)); b.steps < 0 {
			break
		}
		low = s.most + 1
	}
	b.steps = all - waySteps + b.steps
	return best, low, s.hit
}

// within calls each with every way that owes at most most.
func (k *knot) within(price []int64, room []int, most int64, each func(choice []int, owed int64)) {
	s := k.search(price, room, func(choice []int, owed int64) int64 {
		each(choice, owed)
		return most
	})
	s.start(most)
}

// search sets up a search. The prices may be nil.
func (k *knot) search(price []int64, room []int, found func(choice []int, owed int64) int64) *waySearch {
	b, n := k.b, len(k.tasks)
	s := &waySearch{k: k, room: room, choice: slices.Repeat([]int{-1}, n), found: found}
	size := len(k.day) + n
	b.levels = slices.Grow(b.levels[:0], (n+1)*size)[:(n+1)*size]
	for l := range n + 1 {
		from := b.levels[l*size : (l+1)*size]
		s.levels, s.least = append(s.levels, from[n:]), append(s.least, from[:n])
	}
	copy(k.lent, k.firstLent)
	copy(k.loans, k.firstLoans)
	worth := s.levels[0]
	for x, slot := range k.slot {
		worth[x] = k.cost[x] + k.lent[x]
		switch {
		case slot < 0:
		case room[slot] <= 0:
			worth[x] = unreachable
		case price != nil:
			worth[x] += price[slot]
		}
	}
	k.lend(worth)
	for p := range k.tasks {
		s.least[0][p] = slices.Min(worth[k.row[p]:k.row[p+1]])
		s.bound += s.least[0][p]
	}
	s.from, s.to = make([]int, n), make([]int, n)
	return s
}

// start searches with a new most. Going down never lowers the bound, so choices
// that are above most by themselves are left aside for good.
func (s *waySearch) start(most int64) {
	s.most = most
	for p, low := range s.least[0] {
		from, to := s.k.row[p], s.k.row[p+1]
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
	k := s.k
	if k.b.steps--; k.b.steps < 0 || bound > s.most {
		return
	}
	if level == len(k.tasks) {
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
	k := s.k
	few, regret := len(k.day)+1, int64(0)
	for p, c := range s.choice {
		if c >= 0 {
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
	k := s.k
	slot := k.slot[x]
	if slot >= 0 && s.room[slot] <= 0 {
		return
	}
	was, worth, least := s.levels[level], s.levels[level+1], s.least[level+1]
	copy(least, s.least[level])
	base += was[x]
	x -= k.row[p]
	s.choice[p] = x
	for o, c := range s.choice {
		if c < 0 {
			copy(worth[s.from[o]:s.to[o]], was[s.from[o]:s.to[o]])
		}
	}
	for _, e := range k.of[p] {
		mine, other := &k.pairs[e.pair][e.end], &k.pairs[e.pair][1-e.end]
		o := other.task
		if s.choice[o] >= 0 {
			continue
		}
		start := k.row[o]
		low := int64(unreachable)
		shut, lent := mine.shut[x], mine.lent[x]
		first, last, but := start+int(shut.first), start+int(shut.last), start+int(shut.but)
		for y := s.from[o]; y < s.to[o]; y++ {
			if w := worth[y]; w >= closed || y >= first && y < last && (y != but || shut.but < 0) {
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
		if slot >= 0 {
			s.room[slot]--
		}
		s.descend(level+1, base, base+others)
		if slot >= 0 {
			s.room[slot]++
		}
	}
	s.choice[p] = -1
}
