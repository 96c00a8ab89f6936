package place

import (
	"cmp"
	"slices"
)

// Cause is one thing that keeps a task from days that cost less than its own.
type Cause struct {
	By    By
	Limit int // ByLimit: which one
	Other int // ByLimit: the task on its other side
	Day   int // the best of the days it closes
}

// By tells what kind of thing it is.
type By int

const (
	ByLimit By = iota // a limit with another task
	ByRoom            // the day is full
	ByGroup           // the task is done on the day of its group instead
	ByStop            // the search stopped before it had tried everything
)

// causes gives, for each task not on its cheapest day, what closes the cheaper
// ones, the cheapest first; for a task left out, what closes them all. Each cause
// is named once, with the best day it closes.
func (s *solver) causes(at []int) [][]Cause {
	room := slices.Clone(s.room)
	for i, d := range at {
		if !s.Tasks[i].Fixed {
			room[s.slot(i, d)]--
		}
	}
	all := make([][]Cause, len(s.Tasks))
	for i := range s.Tasks {
		if !s.Tasks[i].Fixed {
			all[i] = s.causesOf(i, at, room)
		}
	}
	return all
}

func (s *solver) causesOf(i int, at, room []int) (found []Cause) {
	t := &s.Tasks[i]
	own := int64(unreachable)
	if k := s.index(i, at[i]); k != Left {
		own = t.Cost[k]
	}
	var better []option // the days it would rather have, at their given cost
	for k, d := range t.Days {
		if t.Cost[k] < own {
			better = append(better, option{d - s.origin, t.Cost[k]})
		}
	}
	slices.SortStableFunc(better, func(x, y option) int { return cmp.Compare(x.cost, y.cost) })
	for _, o := range better {
		closed := false
		name := func(by By, limit, other int) {
			closed = true
			same := func(c Cause) bool { return c.By == by && c.Limit == limit && c.Other == other }
			if !slices.ContainsFunc(found, same) {
				found = append(found, Cause{by, limit, other, o.day + s.origin})
			}
		}
		for k := range s.ties[i] {
			l := &s.ties[i][k]
			if d := at[l.other]; d != s.none && !l.allows(o.day, d) {
				name(ByLimit, l.limit, l.other)
			}
		}
		switch {
		case room[s.slot(i, o.day)] <= 0:
			name(ByRoom, 0, 0)
		case closed:
		case own != unreachable && s.cost(i, at[i]) < own:
			name(ByGroup, 0, 0)
		default:
			name(ByStop, 0, 0)
		}
	}
	return found
}
