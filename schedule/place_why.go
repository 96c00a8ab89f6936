package schedule

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// blocker is one thing that kept a job from a day it would rather have.
type blocker struct {
	why   string // for people
	other int    // the task on the other side of a limit, -1 when it is no limit
	day   Date   // the best of the days it closed
}

// explain says, for each task not on its cheapest day, what closed the cheaper
// ones, the cheapest first; for a task left out, what closed them all. Each
// cause is named once, with the best day it closed.
func (b *board) explain(at []int) [][]blocker {
	room := slices.Clone(b.room)
	for i, d := range at {
		if d != b.out && !b.tasks[i].fixed {
			room[b.slot(i, d)]--
		}
	}
	bound := make([][]blocker, len(b.tasks))
	for i, t := range b.tasks {
		if !t.fixed {
			bound[i] = b.blockers(i, at, room)
		}
	}
	return bound
}

func (b *board) blockers(i int, at, room []int) (found []blocker) {
	t := &b.tasks[i]
	own := int64(math.MaxInt64)
	if k := b.choiceOn(i, at[i]).index; k != left {
		own = units(t.cost[k])
	}
	var better []choice // the days it would rather have, at their given cost
	for k, d := range t.days {
		if c := units(t.cost[k]); c < own {
			better = append(better, choice{d.DaysFrom(b.origin), k, c})
		}
	}
	slices.SortStableFunc(better, func(x, y choice) int { return cmp.Compare(x.cost, y.cost) })
	name := func(why string, c choice) {
		same := func(f blocker) bool { return f.why == why && f.other == -1 }
		if !slices.ContainsFunc(found, same) {
			found = append(found, blocker{why, -1, t.days[c.index]})
		}
	}
	named := make([]bool, len(b.ties[i])) // one for each other task, of which a long record book brings many
	for _, c := range better {
		closed, slot := false, b.slot(i, c.day)
		for k, l := range b.ties[i] {
			if o := at[l.other]; o != b.out && !l.allows(c.day, o) {
				closed = true
				if !named[k] {
					named[k] = true
					found = append(found, blocker{b.limits[l.limit].why, l.other, t.days[c.index]})
				}
			}
		}
		switch {
		case room[slot] <= 0:
			name(b.fullDay(), c)
		case closed:
		case own != math.MaxInt64 && b.choiceOn(i, at[i]).cost < own:
			name("done on the day of the same job in other areas", c)
		default:
			name("the search stopped before it had tried every arrangement", c)
		}
	}
	return found
}

func (b *board) fullDay() string {
	if b.perDay == 1 {
		return "no more than 1 job a day"
	}
	return fmt.Sprintf("no more than %d jobs a day", b.perDay)
}
