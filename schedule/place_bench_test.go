package schedule

import (
	"fmt"
	"testing"
)

// yard draws up the jobs of some areas for a year that starts on 1 September:
// the kinds of an ordinary program with their windows, spacing and order, each
// area's ideal days a little apart from the next one's.
func yard(areas int, workday func(Date) bool) (tasks []task, limits []limit) {
	start := Date{2026, 9, 1}
	jobs := []struct {
		kind           Kind
		n              int
		from, to, best int
	}{
		{SoilTest, 0, 200, 240, 210}, {Starter, 1, 0, 40, 10}, {Lime, 1, 0, 85, 20}, {Lime, 2, 190, 270, 215},
		{Phosphorus, 1, 5, 60, 25}, {Nitrogen, 1, 20, 70, 40}, {LateNitrogen, 1, 60, 85, 70},
		{Nitrogen, 2, 225, 290, 250}, {Nitrogen, 3, 260, 364, 340}, {Potassium, 1, 20, 80, 40},
	}
	spacing := func(a, b Kind) (days int) {
		feeds := func(k Kind) bool { return k == Nitrogen || k == LateNitrogen || k == Starter }
		switch {
		case a == Lime && b == Lime:
			return 120
		case a == Lime && (feeds(b) || b == Phosphorus), b == Lime && (feeds(a) || a == Phosphorus):
			return 14
		case feeds(a) && feeds(b):
			return 28
		}
		return 0
	}
	for a := range areas {
		base := len(tasks)
		for _, j := range jobs {
			t := task{id: fmt.Sprint(a, "/", j.kind, "/", j.n), rank: kinds.rank(j.kind)}
			if j.kind != SoilTest {
				t.group = fmt.Sprint(j.kind, j.n)
			}
			best := j.best + a%3*2
			for d := j.from; d <= j.to; d++ {
				if day := start.AddDays(d); workday(day) {
					x := float64(d-best) / float64(j.to-j.from)
					t.days = append(t.days, day)
					t.cost = append(t.cost, x*x)
				}
			}
			tasks = append(tasks, t)
		}
		for x := range jobs {
			for y := x + 1; y < len(jobs); y++ {
				l := limit{a: base + x, b: base + y, why: fmt.Sprint(jobs[x].kind, " and ", jobs[y].kind)}
				l.aThenB = spacing(jobs[x].kind, jobs[y].kind)
				l.bThenA = l.aThenB
				if jobs[x].kind == jobs[y].kind {
					l.order = 1
				}
				if l.aThenB > 0 || l.order != 0 {
					limits = append(limits, l)
				}
			}
		}
	}
	return tasks, limits
}

func everyDay(Date) bool { return true }

func twoDaysAWeek(d Date) bool { return d.Weekday() == 6 || d.Weekday() == 3 }

func BenchmarkPlace(b *testing.B) {
	for _, areas := range []int{1, 3, 10, 50} {
		for _, perDay := range []int{0, 2, 1} {
			for _, days := range []struct {
				name string
				on   func(Date) bool
			}{{"every day", everyDay}, {"two days a week", twoDaysAWeek}} {
				b.Run(fmt.Sprintf("%d areas, %d a day, %s", areas, perDay, days.name), func(b *testing.B) {
					tasks, limits := yard(areas, days.on)
					b.ReportAllocs()
					proven := 1.0
					for b.Loop() {
						if !place(tasks, limits, perDay).proven {
							proven = 0
						}
					}
					b.ReportMetric(proven, "proven")
				})
			}
		}
	}
}
