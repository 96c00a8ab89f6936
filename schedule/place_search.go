package schedule

// solve finds the least-cost days of one knot by itself, the earliest of
// equals. If the steps run out (steps below 0 afterwards) it gives the best
// found.
func (b *board) solve(knot []int) (days []int) {
	if days, ok := b.cheapest(knot); ok {
		return days
	}
	n := len(knot)
	s := knotSearch{b: b, knot: knot, best: unreachable}
	s.local = make([]int, len(b.tasks))
	for m, i := range knot {
		s.local[i] = m
	}
	s.size = n * b.words
	if need := (n + 1) * s.size; len(b.arena) < need {
		b.arena = make([]uint64, need)
	}
	s.open = b.arena
	s.pick = make([]int, (n+1)*n)
	s.set = make([]bool, n)
	s.busy = make([]bool, n)
	s.clashes = make([]int, n)
	for m, i := range knot {
		copy(s.open[m*b.words:], b.open[i])
	}
	s.descend(0)
	return s.days
}

// knotSearch finds the least-cost days of one knot.
//
// The plan: at each step every task takes the cheapest day still open to it.
// That sum is a lower bound; if no limit is broken it is also an answer, the
// best one below this step. Otherwise each broken limit must cost something
// more: the cheapest lawful pair of days of its two tasks less what the two
// take now. Limits without a task in common add up, which sharpens the bound.
// If the bound cannot beat the best answer so far, turn back. If it can, take
// the task that breaks most limits and try its open days, the cheapest first,
// each time closing for its neighbours the days that the limits now forbid.
type knotSearch struct {
	b       *board
	knot    []int
	local   []int    // of a task: its place in knot
	size    int      // words of one level
	open    []uint64 // by level, task: the days still open
	pick    []int    // by level, task: index of its cheapest open day in board.rank
	set     []bool   // tasks tried on one day at the moment
	busy    []bool   // scratch: tasks already used to sharpen the bound
	clashes []int    // scratch: broken limits of each task
	days    []int    // best answer so far
	best    int64
}

func (s *knotSearch) descend(level int) {
	b, n := s.b, len(s.knot)
	if b.steps < 0 {
		return
	}
	b.steps--
	pick := s.pick[level*n : (level+1)*n]
	sum := int64(0)
	for m, i := range s.knot {
		by := b.rank(i)
		open := s.at(level, m)
		for !hasDay(open, by[pick[m]].day) { // leaving out stays open
			pick[m]++
		}
		sum += by[pick[m]].cost
	}
	if sum > s.best || sum == s.best && !s.earlier(pick) {
		return
	}
	m, more := s.worstClash(level, pick, sum)
	if m < 0 {
		s.best = sum
		s.days = s.days[:0]
		for m, i := range s.knot {
			s.days = append(s.days, b.rank(i)[pick[m]].day)
		}
		return
	}
	if more > s.best-sum {
		return
	}
	by := b.rank(s.knot[m])
	s.set[m] = true
	rest := sum - by[pick[m]].cost
	for p := pick[m]; p < len(by) && rest <= s.best-by[p].cost; p++ {
		if hasDay(s.at(level, m), by[p].day) {
			s.try(level, m, p)
			s.descend(level + 1)
		}
	}
	s.set[m] = false
}

// at gives the open days of a task at a level.
func (s *knotSearch) at(level, m int) []uint64 {
	from := level*s.size + m*s.b.words
	return s.open[from : from+s.b.words]
}

// earlier tells whether the cheapest open days come before the best answer's.
func (s *knotSearch) earlier(pick []int) bool {
	for m, i := range s.knot {
		if d := s.b.rank(i)[pick[m]].day; d != s.days[m] {
			return d < s.days[m]
		}
	}
	return false
}

// worstClash finds the task whose cheapest day breaks most limits, -1 if none
// does, and by how much at least the broken limits raise the sum.
func (s *knotSearch) worstClash(level int, pick []int, sum int64) (worst int, more int64) {
	b := s.b
	worst = -1
	clear(s.clashes)
	clear(s.busy)
	for m, i := range s.knot {
		c := b.rank(i)[pick[m]]
		if s.set[m] || c.day == b.out {
			continue
		}
		for k := range b.binding[i] {
			t := &b.binding[i][k]
			o := s.local[t.other]
			if t.other < i || s.set[o] {
				continue
			}
			if d := b.rank(t.other)[pick[o]].day; d == b.out || t.allows(c.day, d) {
				continue
			}
			s.clashes[m]++
			s.clashes[o]++
			if !s.busy[m] && !s.busy[o] && more <= s.best-sum {
				s.busy[m], s.busy[o] = true, true
				more += s.pairExcess(level, m, o, t, pick)
			}
		}
	}
	for m, c := range s.clashes {
		if c > 0 && (worst < 0 || c > s.clashes[worst]) {
			worst = m
		}
	}
	return worst, more
}

// pairExcess gives how much the cheapest lawful pair of two tasks' open days
// costs above the cheapest of each.
func (s *knotSearch) pairExcess(level, m, o int, t *tie, pick []int) int64 {
	x, y := s.b.rank(s.knot[m])[pick[m]:], s.b.rank(s.knot[o])[pick[o]:]
	openX, openY := s.at(level, m), s.at(level, o)
	least := int64(unreachable)
	for _, cx := range x {
		if cx.cost >= least-y[0].cost {
			break
		}
		if !hasDay(openX, cx.day) {
			continue
		}
		for _, cy := range y {
			if cy.cost >= least-cx.cost {
				break
			}
			if hasDay(openY, cy.day) && (cx.day == s.b.out || cy.day == s.b.out || t.allows(cx.day, cy.day)) {
				least = cx.cost + cy.cost
				break
			}
		}
	}
	return least - x[0].cost - y[0].cost
}

// try copies a level to the next with one task on one of its days, and closes
// what the limits then forbid its neighbours.
func (s *knotSearch) try(level, m, p int) {
	b, n := s.b, len(s.knot)
	copy(s.open[(level+1)*s.size:(level+2)*s.size], s.open[level*s.size:(level+1)*s.size])
	next := s.pick[(level+1)*n : (level+2)*n]
	copy(next, s.pick[level*n:(level+1)*n])
	day := b.rank(s.knot[m])[p].day
	next[m] = p
	own := s.at(level+1, m)
	clear(own)
	setDay(own, day)
	if day == b.out {
		return
	}
	for k := range b.binding[s.knot[m]] {
		t := &b.binding[s.knot[m]][k]
		if o := s.local[t.other]; !s.set[o] {
			t.close(s.at(level+1, o), day, b.out)
		}
	}
}

// close removes from the other task's open days those the tie forbids when its
// own task is on day d. Leaving out stays open.
func (t *tie) close(open []uint64, d, out int) {
	keep := t.together && hasDay(open, d)
	lo, hi := d-t.before+1, d+t.after-1
	if t.order == 1 { // this one must not come after the other
		lo = 0
	}
	if t.order == -1 {
		hi = out - 1
	}
	clearRun(open, max(0, min(lo, d)), min(out-1, max(hi, d)))
	if keep {
		setDay(open, d)
	}
}
