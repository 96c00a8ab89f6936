package place

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
)

const (
	unit  = 1_000_000
	bonus = 20_000
)

// leaveOut is a cost of leaving out like the planner's: each rank outweighs
// three of the one below.
func leaveOut(rank int) int64 { return 1000 * unit << (2 * (11 - rank)) }

// exhaust finds the answer that Place promises for one area by trying every
// arrangement. It shares no code with the search: limits are checked in pairs.
func exhaust(p Problem) (days []int, cost int64) {
	nobodyMoves, _ := tryAll(p, 0, make([]map[int]bool, len(p.Tasks)))
	return tryAll(p, p.PerDay, groupDays(p, nobodyMoves))
}

// tryAll walks all arrangements in the order of the tie rule, so the first of
// equals stays.
func tryAll(p Problem, perDay int, gain []map[int]bool) (best []int, least int64) {
	day := make([]int, len(p.Tasks))
	var walk func(i int, cost int64)
	walk = func(i int, cost int64) {
		if i == len(p.Tasks) {
			if best == nil || cost < least {
				best, least = slices.Clone(day), cost
			}
			return
		}
		t := p.Tasks[i]
		for k := range t.Days {
			day[i] = k
			if !lawful(p, i+1, perDay, day) {
				continue
			}
			c := t.Cost[k]
			if gain[i][t.Days[k]] {
				c -= p.Bonus
			}
			walk(i+1, cost+c)
		}
		if !t.Fixed {
			day[i] = Left
			walk(i+1, cost+t.LeaveOut)
		}
	}
	walk(0, 0)
	return best, least
}

// keptBy checks one limit, straight from its words.
func keptBy(p Problem, l Limit, day []int) bool {
	a, b := p.Tasks[l.A], p.Tasks[l.B]
	if day[l.A] == Left || day[l.B] == Left || a.Fixed && b.Fixed {
		return true
	}
	gap := b.Days[day[l.B]] - a.Days[day[l.A]]
	switch {
	case gap == 0,
		gap > 0 && gap < l.AThenB,
		gap < 0 && -gap < l.BThenA,
		gap < 0 && l.Order > 0,
		gap > 0 && l.Order < 0:
		return false
	}
	return true
}

// lawful checks every limit and every person's days of the first n tasks.
func lawful(p Problem, n, perDay int, day []int) bool {
	for _, l := range p.Limits {
		if l.A < n && l.B < n && !keptBy(p, l, day) {
			return false
		}
	}
	type mark struct {
		who string
		on  int
	}
	tasks, free := map[mark]int{}, map[mark]bool{}
	for i, t := range p.Tasks[:n] {
		if day[i] != Left {
			m := mark{t.Who, t.Days[day[i]]}
			tasks[m]++
			free[m] = free[m] || !t.Fixed
		}
	}
	for m, n := range tasks {
		if perDay > 0 && n > perDay && free[m] {
			return false // fixed tasks may be too many only by themselves
		}
	}
	return true
}

// groupDays is the rule of same-day groups over again, by counting.
func groupDays(p Problem, at []int) []map[int]bool {
	gain := make([]map[int]bool, len(p.Tasks))
	if p.PerDay == 1 {
		return gain
	}
	taken := map[string]int{}
	slot := func(who string, d int) string { return fmt.Sprint(who, "|", d) }
	for _, t := range p.Tasks {
		if t.Fixed {
			taken[slot(t.Who, t.Days[0])]++
		}
	}
	members := map[[2]string][]int{}
	var names [][2]string
	for i, t := range p.Tasks {
		if n := [2]string{t.Group, t.Who}; t.Group != "" && !t.Fixed {
			if members[n] == nil {
				names = append(names, n)
			}
			members[n] = append(members[n], i)
		}
	}
	slices.SortStableFunc(names, func(x, y [2]string) int {
		return int((p.Tasks[members[y][0]].LeaveOut - p.Tasks[members[x][0]].LeaveOut) / unit)
	})
	for _, name := range names {
		for m := members[name]; len(m) > 0; {
			r := m
			if p.PerDay > 0 && len(m) > p.PerDay {
				r = m[:p.PerDay]
			}
			m = m[len(r):]
			if len(r) < 2 {
				continue
			}
			count, sum := map[int]int{}, map[int]int64{}
			var all []int
			for _, i := range r {
				for k, d := range p.Tasks[i].Days {
					try := slices.Clone(at)
					try[i] = k
					broken := func(l Limit) bool { return (l.A == i || l.B == i) && !keptBy(p, l, try) }
					if !slices.ContainsFunc(p.Limits, broken) {
						count[d]++
						sum[d] += p.Tasks[i].Cost[k]
						all = append(all, d)
					}
				}
			}
			slices.SortFunc(all, func(x, y int) int {
				switch {
				case count[x] != count[y]:
					return count[y] - count[x]
				case sum[x] != sum[y]:
					return int(sum[x] - sum[y])
				}
				return x - y
			})
			for _, d := range all {
				s := slot(p.Tasks[r[0]].Who, d)
				if count[d] < 2 || p.PerDay > 0 && taken[s]+len(r) > p.PerDay {
					continue
				}
				taken[s] += len(r)
				for _, i := range r {
					if gain[i] == nil {
						gain[i] = map[int]bool{}
					}
					gain[i][d] = true
				}
				break
			}
		}
	}
	return gain
}

// smallCase draws a case that can be exhausted.
func smallCase(r *rand.Rand) (p Problem) {
	n := 1 + r.IntN(5)
	span := 3 + r.IntN(12)
	coarse := r.IntN(2) == 0 // few different costs: many ties
	for range n {
		t := Task{LeaveOut: leaveOut(r.IntN(12))}
		t.Who = []string{"", "mara"}[r.IntN(2)]
		t.Group = []string{"", "lime", "lime", "feed"}[r.IntN(4)]
		for _, d := range r.Perm(span)[:min(span, 1+r.IntN(6))] {
			t.Days = append(t.Days, 50+d)
		}
		slices.Sort(t.Days)
		ideal := r.IntN(span)
		for _, d := range t.Days {
			x := float64(d-50-ideal) / float64(span)
			c := x * x
			if coarse {
				c = float64(int(3*c)) / 10
			} else if r.IntN(4) == 0 {
				c += r.Float64() / 5
			}
			t.Cost = append(t.Cost, int64(c*unit))
		}
		if r.IntN(6) == 0 {
			t.Fixed, t.Days, t.Cost = true, t.Days[:1], t.Cost[:1]
		}
		p.Tasks = append(p.Tasks, t)
	}
	for a := range n {
		for b := range n {
			if a != b && r.IntN(4) == 0 {
				p.Limits = append(p.Limits, Limit{A: a, B: b, AThenB: r.IntN(span), BThenA: r.IntN(span), Order: r.IntN(3) - 1})
			}
		}
	}
	p.PerDay, p.Bonus = r.IntN(4), bonus
	return p
}

// alikeCase draws a case of two or three parts that differ in nothing.
func alikeCase(r *rand.Rand) (p Problem) {
	one := smallCase(r)
	one.Tasks = one.Tasks[:min(len(one.Tasks), 1+r.IntN(2))]
	n, copies := len(one.Tasks), 2
	if n == 1 || len(one.Tasks[0].Days)*len(one.Tasks[1].Days) <= 12 {
		copies = 3
	}
	for c := range copies {
		for _, t := range one.Tasks {
			t.Group, t.Fixed = "", false
			p.Tasks = append(p.Tasks, t)
		}
		for _, l := range one.Limits {
			if l.A < n && l.B < n {
				l.A, l.B = l.A+c*n, l.B+c*n
				p.Limits = append(p.Limits, l)
			}
		}
	}
	p.PerDay, p.Bonus = 1+r.IntN(2), bonus
	return p
}

// chainCase draws a case of two chains of tasks that one person does on few days.
func chainCase(r *rand.Rand) (p Problem) {
	span := 5 + r.IntN(4)
	for i := range 6 {
		t := Task{LeaveOut: leaveOut(r.IntN(3))}
		for _, d := range r.Perm(span)[:2+r.IntN(3)] {
			t.Days = append(t.Days, d)
			t.Cost = append(t.Cost, int64(r.IntN(8))*unit/10)
		}
		slices.Sort(t.Days)
		p.Tasks = append(p.Tasks, t)
		if i%3 > 0 {
			p.Limits = append(p.Limits, Limit{A: i - 1, B: i, AThenB: r.IntN(4), BThenA: r.IntN(4)})
		}
	}
	p.PerDay, p.Bonus = 1+r.IntN(2), bonus
	return p
}

// draw gives the nth case: half of them small ones, a quarter each of the
// others.
func draw(r *rand.Rand, n int) Problem {
	switch n % 4 {
	case 2:
		return alikeCase(r)
	case 3:
		return chainCase(r)
	}
	return smallCase(r)
}

func count(b bool) int {
	if b {
		return 1
	}
	return 0
}

// brief divides the number of cases: 10 under -short, as for a look between two
// edits.
func brief() int {
	if testing.Short() {
		return 10
	}
	return 1
}

func TestPlaceAgainstExhaustion(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	moved, out, crowded, gaveUp := 0, 0, 0, 0
	cases := 10_000 / brief()
	for n := range cases {
		p := draw(r, n)
		want, cost := exhaust(p)
		got := Place(p)
		if got.Cost != cost || !slices.Equal(got.Day, want) || got.Stopped || got.Contested {
			t.Fatalf("case %d:\n got %+v\nwant %v cost %v\n%s", n, got, want, cost, show(p))
		}
		if again := Place(p); fmt.Sprint(again) != fmt.Sprint(got) {
			t.Fatalf("case %d: twice the same case, two answers", n)
		}
		// Where the search gives up the answer must still be lawful, and no
		// better than the best.
		hasty := newSolver(p, r.IntN(30)).place()
		if !lawful(p, len(p.Tasks), p.PerDay, hasty.Day) || !hasty.Stopped && hasty.Cost != got.Cost {
			t.Fatalf("case %d, in haste:\n got %+v\nbest %+v\n%s", n, hasty, got, show(p))
		}
		gaveUp += count(hasty.Stopped)
		loose := p
		loose.PerDay = 0
		for i := range p.Tasks {
			moved += count(len(got.Causes[i]) > 0)
			out += count(got.Day[i] == Left)
		}
		crowded += count(!slices.Equal(Place(loose).Day, got.Day))
	}
	// The cases must be worth their time.
	if moved < cases/10 || out < cases/10 || crowded < cases/20 || gaveUp < cases/100 {
		t.Errorf("cases too easy: %d tasks off their cheapest day, %d left out, %d cases changed by tasks per day, %d given up",
			moved, out, crowded, gaveUp)
	}
}

// TestAreasAgainstExhaustion makes areas of the parts of the same cases. What
// areas share they share the plain way: it must be lawful and say that days were
// contested wherever it is not the best; and it must be near the best.
func TestAreasAgainstExhaustion(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	contested, best, lost := 0, 0, 0
	cases := 2000 / brief()
	for n := range cases {
		p := draw(r, 2+n%2)
		for i := range p.Tasks {
			p.Tasks[i].Area = areaOf(p, i)
		}
		want, cost := exhaust(p)
		got := Place(p)
		if !lawful(p, len(p.Tasks), p.PerDay, got.Day) || got.Cost < cost || got.Cost > cost && !got.Contested {
			t.Fatalf("case %d:\n got %+v\nwant %v cost %v\n%s", n, got, want, cost, show(p))
		}
		contested += count(got.Contested)
		best += count(got.Contested && got.Cost == cost)
		for i := range p.Tasks {
			lost += count(got.Day[i] == Left) - count(want[i] == Left)
		}
	}
	t.Logf("%d contested, %d of them at the least cost, %d more left out", contested, best, lost)
	if contested < cases/2 || best < contested*99/100 || lost > contested/500 {
		t.Errorf("%d contested, %d of them at the least cost, %d more left out", contested, best, lost)
	}
}

// areaOf gives the part of an alikeCase or a chainCase that a task is in: the
// first task that limits tie it to.
func areaOf(p Problem, i int) int {
	for first := true; first; {
		first = false
		for _, l := range p.Limits {
			if max(l.A, l.B) == i && min(l.A, l.B) < i {
				i, first = min(l.A, l.B), true
			}
		}
	}
	return i
}

// TestFeasible holds the search over orders to one over days: whether all the
// tasks of a case can have a day beside each other.
func TestFeasible(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	answers := [2]int{}
	for n := range 4000 {
		p := Problem{PerDay: r.IntN(4)}
		for len(p.Tasks) < 6 {
			more := smallCase(r)
			k := len(p.Tasks)
			for i := range more.Tasks {
				more.Tasks[i].Fixed = false
			}
			for _, l := range more.Limits {
				l.A, l.B = l.A+k, l.B+k
				p.Limits = append(p.Limits, l)
			}
			if k > 0 { // so that all hang together
				gap := r.IntN(4)
				p.Limits = append(p.Limits, Limit{A: k - 1, B: k, AThenB: gap, BThenA: gap, Order: r.IntN(3) - 1})
			}
			p.Tasks = append(p.Tasks, more.Tasks...)
		}
		day := make([]int, len(p.Tasks))
		var fit func(i int) bool
		fit = func(i int) bool {
			if i == len(p.Tasks) {
				return true
			}
			for day[i] = range p.Tasks[i].Days {
				if lawful(p, i+1, p.PerDay, day) && fit(i+1) {
					return true
				}
			}
			return false
		}
		want := fit(0)
		s := newSolver(p, areaSteps)
		s.steps = areaSteps
		c := s.newComponent(s.areas[0], s.room)
		all := slices.Repeat([]bool{true}, len(p.Tasks))
		got := c.feasible(all)
		if got != want {
			t.Fatalf("case %d: feasible %v, want %v\n%s", n, got, want, show(p))
		}
		if got {
			for p, d := range c.witness(all) {
				day[p] = s.index(p, d)
			}
			if !lawful(p, len(p.Tasks), p.PerDay, day) {
				t.Fatalf("case %d: a schedule that breaks a limit\n%s", n, show(p))
			}
		}
		answers[count(got)]++
	}
	if min(answers[0], answers[1]) < 200 {
		t.Errorf("cases too easy: %v", answers)
	}
}

func show(p Problem) (s string) {
	for i, t := range p.Tasks {
		s += fmt.Sprintf("%d: %+v\n", i, t)
	}
	return s + fmt.Sprintf("%+v, %d a day\n", p.Limits, p.PerDay)
}
