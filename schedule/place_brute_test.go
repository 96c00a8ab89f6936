package schedule

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
)

// exhaust finds the answer that place promises by trying every arrangement. It
// shares no code with the search: days stay dates, limits are checked in pairs.
func exhaust(tasks []task, limits []limit, perDay int) (days []int, cost int64) {
	nobodyMoves, _ := tryAll(tasks, limits, 0, make([]map[Date]bool, len(tasks)))
	return tryAll(tasks, limits, perDay, roundDays(tasks, limits, perDay, nobodyMoves))
}

// tryAll walks all arrangements in the order of the tie rule, so the first of
// equals stays.
func tryAll(tasks []task, limits []limit, perDay int, bonus []map[Date]bool) (best []int, least int64) {
	day := make([]int, len(tasks))
	var walk func(i int, cost int64)
	walk = func(i int, cost int64) {
		if i == len(tasks) {
			if best == nil || cost < least {
				best, least = slices.Clone(day), cost
			}
			return
		}
		t := tasks[i]
		for k := range t.days {
			day[i] = k
			if !lawful(tasks[:i+1], limits, perDay, day[:i+1]) {
				continue
			}
			c := units(t.cost[k])
			if bonus[i][t.days[k]] {
				c -= 20_000
			}
			walk(i+1, cost+c)
		}
		if !t.fixed {
			day[i] = left
			walk(i+1, cost+leaveOut(t.rank))
		}
	}
	walk(0, 0)
	return best, least
}

// lawful checks every limit and every person's days, straight from their words.
func lawful(tasks []task, limits []limit, perDay int, day []int) bool {
	for _, l := range limits {
		if l.a >= len(tasks) || l.b >= len(tasks) || day[l.a] == left || day[l.b] == left ||
			tasks[l.a].fixed && tasks[l.b].fixed {
			continue
		}
		gap := tasks[l.b].days[day[l.b]].DaysFrom(tasks[l.a].days[day[l.a]])
		switch {
		case gap == 0,
			gap > 0 && gap < l.aThenB,
			gap < 0 && -gap < l.bThenA,
			gap < 0 && l.order > 0,
			gap > 0 && l.order < 0:
			return false
		}
	}
	type mark struct {
		who string
		on  Date
	}
	jobs, free := map[mark]int{}, map[mark]bool{}
	for i, t := range tasks {
		if day[i] != left {
			m := mark{t.who, t.days[day[i]]}
			jobs[m]++
			free[m] = free[m] || !t.fixed
		}
	}
	for m, n := range jobs {
		if perDay > 0 && n > perDay && free[m] {
			return false // recorded jobs may be too many only by themselves
		}
	}
	return true
}

// roundDays is the rule of rounds over again, by counting.
func roundDays(tasks []task, limits []limit, perDay int, at []int) []map[Date]bool {
	bonus := make([]map[Date]bool, len(tasks))
	if perDay == 1 {
		return bonus
	}
	taken := map[string]int{}
	slot := func(who string, d Date) string { return fmt.Sprint(who, "|", d) }
	for _, t := range tasks {
		if t.fixed {
			taken[slot(t.who, t.days[0])]++
		}
	}
	members := map[[2]string][]int{}
	var names [][2]string
	for i, t := range tasks {
		if n := [2]string{t.group, t.who}; t.group != "" && !t.fixed {
			if members[n] == nil {
				names = append(names, n)
			}
			members[n] = append(members[n], i)
		}
	}
	slices.SortStableFunc(names, func(x, y [2]string) int {
		return tasks[members[x][0]].rank - tasks[members[y][0]].rank
	})
	for _, name := range names {
		for m := members[name]; len(m) > 0; {
			r := m
			if perDay > 0 && len(m) > perDay {
				r = m[:perDay]
			}
			m = m[len(r):]
			if len(r) < 2 {
				continue
			}
			count, sum := map[Date]int{}, map[Date]int64{}
			var all []Date
			for _, i := range r {
				for k, d := range tasks[i].days {
					try := slices.Clone(at)
					try[i] = k
					if alone := func() bool {
						for _, l := range limits {
							if (l.a == i || l.b == i) && !lawful(tasks, []limit{l}, 0, try) {
								return false
							}
						}
						return true
					}; alone() {
						count[d]++
						sum[d] += units(tasks[i].cost[k])
						all = append(all, d)
					}
				}
			}
			slices.SortFunc(all, func(x, y Date) int {
				switch {
				case count[x] != count[y]:
					return count[y] - count[x]
				case sum[x] != sum[y]:
					return int(sum[x] - sum[y])
				}
				return x.Compare(y)
			})
			for _, d := range all {
				s := slot(tasks[r[0]].who, d)
				if count[d] < 2 || perDay > 0 && taken[s]+len(r) > perDay {
					continue
				}
				taken[s] += len(r)
				for _, i := range r {
					if bonus[i] == nil {
						bonus[i] = map[Date]bool{}
					}
					bonus[i][d] = true
				}
				break
			}
		}
	}
	return bonus
}

// smallCase draws a case that can be exhausted.
func smallCase(r *rand.Rand) (tasks []task, limits []limit, perDay int) {
	start := Date{2026, 2, 20}
	n := 1 + r.IntN(5)
	span := 3 + r.IntN(12)
	coarse := r.IntN(2) == 0 // few different costs: many ties
	for i := range n {
		t := task{id: fmt.Sprint("job", i), rank: r.IntN(len(kinds))}
		t.who = []string{"", "mara"}[r.IntN(2)]
		t.group = []string{"", "lime", "lime", "feed"}[r.IntN(4)]
		for _, d := range r.Perm(span)[:min(span, 1+r.IntN(6))] {
			t.days = append(t.days, start.AddDays(d))
		}
		slices.SortFunc(t.days, Date.Compare)
		ideal := r.IntN(span)
		for _, d := range t.days {
			x := float64(d.DaysFrom(start)-ideal) / float64(span)
			c := x * x
			if coarse {
				c = float64(int(3*c)) / 10
			} else if r.IntN(4) == 0 {
				c += r.Float64() / 5
			}
			t.cost = append(t.cost, c)
		}
		if r.IntN(6) == 0 {
			t.fixed, t.days, t.cost = true, t.days[:1], t.cost[:1]
		}
		tasks = append(tasks, t)
	}
	for a := range n {
		for b := range n {
			if a != b && r.IntN(4) == 0 {
				limits = append(limits, limit{a: a, b: b, aThenB: r.IntN(span), bThenA: r.IntN(span),
					order: int8(r.IntN(3) - 1), why: fmt.Sprint("limit ", a, "-", b)})
			}
		}
	}
	return tasks, limits, r.IntN(4)
}

// alikeCase draws a case of two or three areas that differ in nothing.
func alikeCase(r *rand.Rand) (tasks []task, limits []limit, perDay int) {
	one, ties, _ := smallCase(r)
	one = one[:min(len(one), 1+r.IntN(2))]
	copies := 2
	if len(one) == 1 || len(one[0].days)*len(one[1].days) <= 12 {
		copies = 3
	}
	for c := range copies {
		for i, t := range one {
			t.id, t.group, t.fixed = fmt.Sprint("job", i, " area", c), "", false
			tasks = append(tasks, t)
		}
		for _, l := range ties {
			if l.a < len(one) && l.b < len(one) {
				l.a, l.b = l.a+c*len(one), l.b+c*len(one)
				limits = append(limits, l)
			}
		}
	}
	return tasks, limits, 1 + r.IntN(2)
}

// chainCase draws a case of two chains of jobs that one person does on few days.
func chainCase(r *rand.Rand) (tasks []task, limits []limit, perDay int) {
	start := Date{2026, 2, 20}
	span := 5 + r.IntN(4)
	for i := range 6 {
		t := task{id: fmt.Sprint("job", i), rank: r.IntN(3)}
		for _, d := range r.Perm(span)[:2+r.IntN(3)] {
			t.days = append(t.days, start.AddDays(d))
			t.cost = append(t.cost, float64(r.IntN(8))/10)
		}
		slices.SortFunc(t.days, Date.Compare)
		tasks = append(tasks, t)
		if i%3 > 0 {
			limits = append(limits, limit{a: i - 1, b: i, aThenB: r.IntN(4), bThenA: r.IntN(4), why: fmt.Sprint("limit ", i)})
		}
	}
	return tasks, limits, 1 + r.IntN(2)
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

func TestPlaceAgainstExhaustion(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	moved, out, crowded, gaveUp := 0, 0, 0, 0
	for n := range 10_000 {
		draw := smallCase
		switch n % 4 {
		case 2:
			draw = alikeCase
		case 3:
			draw = chainCase
		}
		tasks, limits, perDay := draw(r)
		want, cost := exhaust(tasks, limits, perDay)
		got := place(tasks, limits, perDay)
		if got.cost != float64(cost)/perUnit || !slices.Equal(got.day, want) || !got.proven {
			t.Fatalf("case %d, %d a day:\n got %v cost %v proven %v\nwant %v cost %v\n%s", n, perDay,
				got.day, int64(got.cost*perUnit), got.proven, want, cost, show(tasks, limits))
		}
		if again := place(tasks, limits, perDay); fmt.Sprint(again) != fmt.Sprint(got) {
			t.Fatalf("case %d: twice the same case, two answers", n)
		}
		// Where the search gives up the answer must still be lawful, and no
		// better than the best.
		b := newBoard(tasks, limits, perDay)
		b.crowdSteps = r.IntN(100)
		hasty := b.place()
		if !lawful(tasks, limits, perDay, hasty.day) || hasty.cost < got.cost ||
			hasty.proven && hasty.cost != got.cost {
			t.Fatalf("case %d, %d a day, in haste:\n got %v cost %v proven %v\nbest %v cost %v\n%s", n, perDay,
				hasty.day, hasty.cost, hasty.proven, got.day, got.cost, show(tasks, limits))
		}
		gaveUp += b2i(!hasty.proven)
		loose := place(tasks, limits, 0)
		for i := range tasks {
			moved += b2i(len(got.bound[i]) > 0)
			out += b2i(got.day[i] == left)
		}
		crowded += b2i(!slices.Equal(loose.day, got.day))
	}
	// The cases must be worth their time.
	if moved < 1000 || out < 1000 || crowded < 500 || gaveUp < 100 {
		t.Errorf("cases too easy: %d jobs off their cheapest day, %d left out, %d cases changed by jobs per day, %d given up",
			moved, out, crowded, gaveUp)
	}
}

// TestWhoCanStay holds the search over orders to one over days: whether all the
// jobs of a case can have a day beside each other.
func TestWhoCanStay(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	answers := [2]int{}
	for n := range 3000 {
		var tasks []task
		var limits []limit
		for len(tasks) < 6 {
			more, ties, _ := smallCase(r)
			for i := range more {
				more[i].fixed = false
			}
			for _, l := range ties {
				l.a, l.b = l.a+len(tasks), l.b+len(tasks)
				limits = append(limits, l)
			}
			if k := len(tasks); k > 0 { // so that all hang together
				gap := r.IntN(4)
				limits = append(limits, limit{a: k - 1, b: k, aThenB: gap, bThenA: gap, order: int8(r.IntN(3) - 1)})
			}
			tasks = append(tasks, more...)
		}
		day := make([]int, len(tasks))
		var fit func(i int) bool
		fit = func(i int) bool {
			if i == len(tasks) {
				return true
			}
			for day[i] = range tasks[i].days {
				if lawful(tasks[:i+1], limits, 0, day[:i+1]) && fit(i+1) {
					return true
				}
			}
			return false
		}
		want := fit(0)
		b := newBoard(tasks, limits, 0)
		b.steps = searchSteps
		got := true
		for _, k := range b.knots(b.all) {
			got = got && k.canStay(slices.Repeat([]bool{true}, len(k.tasks)))
		}
		if got != want {
			t.Fatalf("case %d: can stay %v, want %v\n%s", n, got, want, show(tasks, limits))
		}
		answers[b2i(got)]++
	}
	if min(answers[0], answers[1]) < 200 {
		t.Errorf("cases too easy: %v", answers)
	}
}

func show(tasks []task, limits []limit) (s string) {
	for i, t := range tasks {
		s += fmt.Sprintf("%d rank %d who %q group %q fixed %v: %v %v\n", i, t.rank, t.who, t.group, t.fixed, t.days, t.cost)
	}
	for _, l := range limits {
		s += fmt.Sprintf("%+v\n", l)
	}
	return s
}
