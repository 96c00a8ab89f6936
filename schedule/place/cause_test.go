package place

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// untrue says what is wrong with a cause, "" nothing: each names a day that would cost
// less, and what closes it.
func untrue(p Problem, a Answer, i int, c Cause) string {
	t := p.Tasks[i]
	k := slices.Index(t.Days, c.Day)
	switch {
	case k < 0:
		return "it is no day of the task"
	case a.Day[i] != Left && t.Cost[k] >= t.Cost[a.Day[i]]:
		return "the day costs no less"
	}
	moved := slices.Clone(a.Day)
	moved[i] = k
	beside := 0
	for j, d := range a.Day {
		if o := p.Tasks[j]; j != i && d != Left && o.Who == t.Who && o.Days[d] == c.Day {
			beside++
		}
	}
	closed := slices.ContainsFunc(p.Limits, func(l Limit) bool { return (l.A == i || l.B == i) && !keptBy(p, l, moved) })
	full := p.PerDay > 0 && beside >= p.PerDay
	switch c.By {
	case ByLimit:
		l := p.Limits[c.Limit]
		if !(l.A == i && l.B == c.Other || l.B == i && l.A == c.Other) || keptBy(p, l, moved) {
			return "the limit leaves the day open"
		}
	case ByRoom:
		if !full {
			return "the day has room"
		}
	case ByGroup:
		if t.Group == "" || a.Day[i] == Left || closed || full {
			return "no group keeps it from the day"
		}
	case ByStop:
		if closed || full || !a.Stopped && !a.Contested {
			return "the search did not stop"
		}
	}
	return ""
}

// Every cause is true, whatever the case and however soon the search is stopped: checked
// from the words of the problem, with no code of the search.
func TestCausesAreTrue(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	seen := map[By]int{}
	check := func(p Problem, a Answer) {
		t.Helper()
		for i := range p.Tasks {
			best := slices.Clone(p.Tasks[i].Cost)
			slices.Sort(best)
			off := len(best) > 0 && !p.Tasks[i].Fixed && (a.Day[i] == Left || p.Tasks[i].Cost[a.Day[i]] > best[0])
			if off != (len(a.Causes[i]) > 0) {
				t.Fatalf("task %d is off its best day: %v, and has %d causes\n%s", i, off, len(a.Causes[i]), show(p))
			}
			for k, c := range a.Causes[i] {
				if why := untrue(p, a, i, c); why != "" {
					t.Fatalf("task %d, cause %+v: %s\n%+v\n%s", i, c, why, a, show(p))
				}
				if k == 0 && p.Tasks[i].Cost[slices.Index(p.Tasks[i].Days, c.Day)] != best[0] {
					t.Fatalf("task %d: the first cause %+v is not of its cheapest day\n%s", i, c, show(p))
				}
				if slices.ContainsFunc(a.Causes[i][:k], func(o Cause) bool { return o.By == c.By && o.Limit == c.Limit && o.Other == c.Other }) {
					t.Fatalf("task %d: the cause %+v is named twice\n%s", i, c, show(p))
				}
				seen[c.By]++
			}
		}
	}
	for n := range 4000 / brief() {
		p := draw(r, n)
		check(p, Place(p))
		check(p, newSolver(p, r.IntN(30)).place())
		for i := range p.Tasks {
			p.Tasks[i].Area = i % 2
		}
		check(p, Place(p))
	}
	for _, areas := range []int{3, 10} {
		for _, perDay := range []int{0, 1, 2} {
			p := yard(areas, perDay, twoDaysAWeek)
			for _, steps := range []int{areaSteps, 100} {
				check(p, newSolver(p, steps).place())
			}
		}
	}
	for by, least := range map[By]int{ByLimit: 100, ByRoom: 100, ByGroup: 2, ByStop: 1} {
		if seen[by] < least {
			t.Errorf("only %d causes of kind %d", seen[by], by)
		}
	}
}
