package schedule

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// oneIdeal is a job free on every day of a span, with one ideal day in it.
func oneIdeal(id string, span, ideal int) task {
	t := task{id: id, rank: kinds.rank(Nitrogen)}
	for d := range span {
		x := float64(d-ideal) / float64(span)
		t.days = append(t.days, Date{2026, 9, 1}.AddDays(d))
		t.cost = append(t.cost, x*x)
	}
	return t
}

func recorded(id string, on Date) task {
	return task{id: id, rank: kinds.rank(Lime), fixed: true, days: []Date{on}, cost: []float64{0}}
}

func dates(tasks []task, p placed) (s []string) {
	for i, d := range p.day {
		if d == left {
			s = append(s, "left out")
		} else {
			s = append(s, tasks[i].days[d].Time().Format("2 Jan"))
		}
	}
	return s
}

func reasons(tasks []task, bound []blocker) (s []string) {
	for _, b := range bound {
		other := ""
		if b.other >= 0 {
			other = " (" + tasks[b.other].id + ")"
		}
		s = append(s, b.why+other+" on "+b.day.Time().Format("2 Jan"))
	}
	return s
}

func TestPlaceSituations(t *testing.T) {
	apart := func(a, b, days int) limit {
		return limit{a: a, b: b, aThenB: days, bThenA: days, why: fmt.Sprint(days, " days apart")}
	}
	rank := func(t task, k Kind) task { t.rank = kinds.rank(k); return t }
	group := func(t task, g string) task { t.group = g; return t }
	who := func(t task, w string) task { t.who = w; return t }
	gone := task{id: "no days", rank: kinds.rank(Sow)}
	for _, c := range []struct {
		name   string
		tasks  []task
		limits []limit
		perDay int
		want   string
		bound  string // of the last task
	}{
		{name: "nothing to do"},
		{name: "alone on its ideal day", tasks: []task{oneIdeal("feed", 30, 9)}, want: "10 Sep"},
		{name: "no day at all", tasks: []task{gone}, want: "left out"},
		{name: "a recorded job pushes, and never moves",
			tasks:  []task{recorded("lime", Date{2026, 9, 8}), oneIdeal("feed", 30, 9)},
			limits: []limit{apart(0, 1, 14)}, want: "8 Sep, 22 Sep", bound: "14 days apart (lime) on 10 Sep"},
		{name: "recorded jobs too near each other stay",
			tasks:  []task{recorded("a", Date{2026, 9, 8}), recorded("b", Date{2026, 9, 9})},
			limits: []limit{apart(0, 1, 14)}, want: "8 Sep, 9 Sep"},
		{name: "recorded jobs close every day",
			tasks:  []task{recorded("a", Date{2026, 9, 8}), recorded("b", Date{2026, 9, 20}), oneIdeal("feed", 25, 13)},
			limits: []limit{apart(0, 2, 14), apart(1, 2, 14)}, want: "8 Sep, 20 Sep, left out",
			bound: "14 days apart (a) on 14 Sep; 14 days apart (b) on 14 Sep"},
		{name: "the more important kind stays when one must go",
			tasks:  []task{rank(oneIdeal("feed", 5, 2), Nitrogen), rank(oneIdeal("sow", 5, 0), Sow)},
			limits: []limit{apart(0, 1, 14)}, want: "left out, 1 Sep"},
		{name: "the sample comes first, also when that costs",
			tasks:  []task{oneIdeal("feed", 30, 3), rank(oneIdeal("sample", 30, 9), SoilTest)},
			limits: []limit{{a: 1, b: 0, order: 1, why: "sample first"}},
			want:   "7 Sep, 6 Sep", bound: "sample first (feed) on 10 Sep"},
		{name: "equal costs go to the earlier day, first for the first task",
			tasks:  []task{oneIdeal("a", 9, 4), oneIdeal("b", 9, 4)},
			limits: []limit{apart(0, 1, 1)}, want: "4 Sep, 5 Sep", bound: ""},
		{name: "six alike on one ideal day, one a day", perDay: 1,
			tasks: []task{oneIdeal("a", 9, 4), oneIdeal("b", 9, 4), oneIdeal("c", 9, 4),
				oneIdeal("d", 9, 4), oneIdeal("e", 9, 4), oneIdeal("f", 9, 4)},
			want:  "2 Sep, 3 Sep, 4 Sep, 5 Sep, 6 Sep, 7 Sep",
			bound: "no more than 1 job a day on 5 Sep"},
		{name: "more jobs than days",
			tasks:  []task{oneIdeal("a", 2, 0), oneIdeal("b", 2, 0), oneIdeal("c", 2, 0)},
			perDay: 1, want: "1 Sep, 2 Sep, left out", bound: "no more than 1 job a day on 1 Sep"},
		{name: "two people have a day each",
			tasks:  []task{who(oneIdeal("a", 9, 4), "mara"), who(oneIdeal("b", 9, 4), "finn")},
			perDay: 1, want: "5 Sep, 5 Sep"},
		{name: "a recorded job takes its place in the day",
			tasks:  []task{recorded("lime", Date{2026, 9, 5}), oneIdeal("feed", 9, 4)},
			perDay: 1, want: "5 Sep, 4 Sep", bound: "no more than 1 job a day on 5 Sep"},
		{name: "fellows meet on one day",
			tasks: []task{group(oneIdeal("a", 40, 4), "lime"), group(oneIdeal("b", 40, 8), "lime")},
			want:  "7 Sep, 7 Sep", bound: "done on the day of the same job in other areas on 9 Sep"},
		{name: "fellows too far apart do not",
			tasks: []task{group(oneIdeal("a", 40, 4), "lime"), group(oneIdeal("b", 40, 30), "lime")},
			want:  "5 Sep, 1 Oct"},
	} {
		p := place(c.tasks, c.limits, c.perDay)
		if got := strings.Join(dates(c.tasks, p), ", "); got != c.want || !p.proven {
			t.Errorf("%s: got %s, want %s; proven %v", c.name, got, c.want, p.proven)
			continue
		}
		if n := len(c.tasks) - 1; c.bound != "" {
			if got := strings.Join(reasons(c.tasks, p.bound[n]), "; "); !strings.HasPrefix(got, c.bound) {
				t.Errorf("%s: bound by %q, want %q", c.name, got, c.bound)
			}
		}
	}
}

// TestPlaceKeepsEveryLimit holds the answer to the laws on sites too large to
// exhaust, also where the search gives up.
func TestPlaceKeepsEveryLimit(t *testing.T) {
	for _, areas := range []int{1, 3, 10, 50} {
		for _, perDay := range []int{0, 1, 2} {
			tasks, limits := yard(areas, twoDaysAWeek)
			p := place(tasks, limits, perDay)
			if !lawful(tasks, limits, perDay, p.day) {
				t.Errorf("%d areas, %d a day: a limit is broken", areas, perDay)
			}
			if perDay == 0 && !p.proven {
				t.Errorf("%d areas: not proven least", areas)
			}
			for i, d := range p.day {
				cheapest := slices.Min(tasks[i].cost)
				if (d == left || tasks[i].cost[d] > cheapest) && len(p.bound[i]) == 0 {
					t.Errorf("%d areas, %d a day: %s is off its best day without a reason", areas, perDay, tasks[i].id)
				}
			}
		}
	}
}

// Alike is judged by what lies inside two knots, whatever ties lead out of them.
func TestSameAs(t *testing.T) {
	tasks := make([]task, 5)
	for i := range tasks {
		tasks[i] = task{days: []Date{{2026, 9, 1}, {2026, 9, 2}, {2026, 9, 9}}, cost: []float64{0, 1, 2}}
	}
	apart := func(a, b, days int) limit { return limit{a: a, b: b, aThenB: days, bThenA: days} }
	b := newBoard(tasks, []limit{apart(0, 1, 5), apart(0, 2, 5), apart(3, 4, 5), apart(1, 2, 3)}, 0)
	x, y, z := b.newKnot([]int{0, 1}), b.newKnot([]int{3, 4}), b.newKnot([]int{1, 2})
	if !x.sameAs(y) || y.sameAs(x) || x.sameAs(z) {
		t.Errorf("alike: %t, %t the other way round, %t with another gap", x.sameAs(y), y.sameAs(x), x.sameAs(z))
	}
}
