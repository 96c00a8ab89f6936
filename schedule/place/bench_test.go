package place

import (
	"fmt"
	"testing"
)

// yard draws up the tasks of some areas for a year: those of an ordinary program
// with their windows, spacing and order, each area's ideal days a little apart
// from the next one's.
func yard(areas, perDay int, workday func(day int) bool) Problem {
	p := Problem{PerDay: perDay, Bonus: bonus}
	jobs := []struct {
		kind                 string
		rank, from, to, best int
	}{
		{"sample", 0, 200, 240, 210}, {"feed", 2, 0, 40, 10}, {"lime", 3, 0, 85, 20}, {"lime", 3, 190, 270, 215},
		{"phosphorus", 5, 5, 60, 25}, {"feed", 6, 20, 70, 40}, {"feed", 7, 60, 85, 70},
		{"feed", 6, 225, 290, 250}, {"feed", 6, 260, 364, 340}, {"potassium", 8, 20, 80, 40},
	}
	spacing := func(a, b string) int {
		switch {
		case a == "lime" && b == "lime":
			return 120
		case a == "lime" && (b == "feed" || b == "phosphorus"), b == "lime" && (a == "feed" || a == "phosphorus"):
			return 14
		case a == "feed" && b == "feed":
			return 28
		}
		return 0
	}
	for a := range areas {
		base := len(p.Tasks)
		for k, j := range jobs {
			t := Task{Area: a, LeaveOut: leaveOut(j.rank)}
			if k > 0 {
				t.Group = fmt.Sprint(j.kind, k)
			}
			best := j.best + a%3*2
			for d := j.from; d <= j.to; d++ {
				if workday(d) {
					x := float64(d-best) / float64(j.to-j.from)
					t.Days, t.Cost = append(t.Days, d), append(t.Cost, int64(x*x*unit))
				}
			}
			p.Tasks = append(p.Tasks, t)
			for b := range jobs[:k] {
				l := Limit{A: base + b, B: base + k, AThenB: spacing(jobs[b].kind, j.kind), BThenA: spacing(j.kind, jobs[b].kind)}
				if jobs[b].kind == j.kind && jobs[b].rank == j.rank {
					l.Order = 1
				}
				if l.AThenB > 0 {
					p.Limits = append(p.Limits, l)
				}
			}
		}
	}
	return p
}

func everyDay(int) bool { return true }

func twoDaysAWeek(day int) bool { return day%7 == 4 || day%7 == 1 }

func BenchmarkPlace(b *testing.B) {
	for _, areas := range []int{1, 3, 10, 50} {
		for _, perDay := range []int{0, 2, 1} {
			for _, days := range []struct {
				name string
				on   func(int) bool
			}{{"every day", everyDay}, {"two days a week", twoDaysAWeek}} {
				b.Run(fmt.Sprintf("%d areas, %d a day, %s", areas, perDay, days.name), func(b *testing.B) {
					p := yard(areas, perDay, days.on)
					b.ReportAllocs()
					steps := 0
					for b.Loop() {
						steps = Place(p).Steps
					}
					b.ReportMetric(float64(steps), "steps")
				})
			}
		}
	}
}
