package place

import (
	"math"
	"slices"
)

// solver is the problem in the form in which it is searched: days are counted from
// 1, and each task knows its limits. A task left out is on the day none, which is later
// than all others.
type solver struct {
	Problem
	origin    int        // the day before the first
	none      int        // the day of a task left out
	areas     [][]int    // the tasks of each area, less the fixed ones
	options   [][]option // of each task, ascending by day
	ties      [][]tie    // of each task: its limits
	binding   [][]tie    // of each task: those of them that days of two tasks, neither fixed, can break
	person    []int      // of each task: the number of its person; 0: all tasks of that person fit one day
	room      []int      // of each slot: how many tasks it holds beside the fixed ones
	areaSteps int        // steps that each component may take
	steps     int        // steps that the component at hand may still take
	spent     int        // steps that all have taken
	stopped   bool       // some component ran out of steps
	flood     flood      // kept, so that its tables are made once
}

// option is a day on which a task may be done: no fixed task closes it. On the day of
// its group the bonus is off its cost.
type option struct {
	day  int
	cost int64
}

// tie is a limit seen from one of its tasks.
type tie struct {
	other, limit  int
	before, after int  // days needed when the other comes before, or after
	first, last   bool // this task must come before, or after the other
}

// allows tells whether the tie lets its own task be on day d and the other on o.
func (t *tie) allows(d, o int) bool {
	switch {
	case d < o:
		return !t.last && o-d >= t.after
	case d > o:
		return !t.first && d-o >= t.before
	}
	return false
}

// unreachable is above every sum of costs.
const unreachable = math.MaxInt64 / 8

func newSolver(p Problem, areaSteps int) *solver {
	n := len(p.Tasks)
	s := &solver{Problem: p, areaSteps: areaSteps}
	s.options, s.ties, s.binding = make([][]option, n), make([][]tie, n), make([][]tie, n)
	first, last := math.MaxInt, math.MinInt
	for i := range p.Tasks {
		if days := p.Tasks[i].Days; len(days) > 0 {
			first, last = min(first, days[0]), max(last, days[len(days)-1])
		}
	}
	if last >= first {
		s.origin, s.none = first-1, last-first+2
	}
	for k, l := range p.Limits {
		s.ties[l.A] = append(s.ties[l.A], tie{l.B, k, l.BThenA, l.AThenB, l.Order > 0, l.Order < 0})
		s.ties[l.B] = append(s.ties[l.B], tie{l.A, k, l.AThenB, l.BThenA, l.Order < 0, l.Order > 0})
	}
	for i := range p.Tasks {
		s.options[i] = s.optionsOf(i)
	}
	s.sortByArea()
	for i := range s.ties {
		for _, t := range s.ties[i] {
			if s.canBind(i, &t) {
				s.binding[i] = append(s.binding[i], t)
			}
		}
	}
	s.countRoom()
	return s
}

// sortByArea lists the tasks of each area that are not fixed. Areas with a limit
// between them count as one.
func (s *solver) sortByArea() {
	area := make([]int, len(s.Tasks))
	for i := range s.Tasks {
		area[i] = s.Tasks[i].Area
	}
	for _, l := range s.Limits {
		one, other := area[l.A], area[l.B]
		if one == other {
			continue
		}
		for i := range area {
			if area[i] == other {
				area[i] = one
			}
		}
	}
	number := map[int]int{}
	for i, a := range area {
		if s.Tasks[i].Fixed {
			continue
		}
		n, known := number[a]
		if !known {
			n = len(s.areas)
			number[a], s.areas = n, append(s.areas, nil)
		}
		s.areas[n] = append(s.areas[n], i)
	}
}

// optionsOf lists a task's days, less those that fixed tasks close.
func (s *solver) optionsOf(i int) []option {
	t := &s.Tasks[i]
	all := make([]option, 0, len(t.Days))
	for k, d := range t.Days {
		if d -= s.origin; t.Fixed || s.openBesideFixed(i, d) {
			all = append(all, option{d, t.Cost[k]})
		}
	}
	return all
}

// openBesideFixed tells whether every fixed task leaves the day to a task.
func (s *solver) openBesideFixed(i, day int) bool {
	for k := range s.ties[i] {
		t := &s.ties[i][k]
		o := &s.Tasks[t.other]
		if o.Fixed && len(o.Days) > 0 && !t.allows(day, o.Days[0]-s.origin) {
			return false
		}
	}
	return true
}

// canBind tells whether two tasks, neither fixed, have days that break a tie. It looks
// at their first and last days only: it may say yes where no days break it, never no
// where some do.
func (s *solver) canBind(i int, t *tie) bool {
	x, y := s.options[i], s.options[t.other]
	if s.Tasks[i].Fixed || s.Tasks[t.other].Fixed || len(x) == 0 || len(y) == 0 {
		return false
	}
	x0, x1, y0, y1 := x[0].day, x[len(x)-1].day, y[0].day, y[len(y)-1].day
	return !(x1 < y0 && t.allows(x1, y0) || x0 > y1 && t.allows(x0, y1))
}

// countRoom numbers the people who have more tasks than fit one day and counts
// what their days hold beside fixed tasks.
func (s *solver) countRoom() {
	s.person = make([]int, len(s.Tasks))
	tasks, number := map[string]int{}, map[string]int{}
	for i := range s.Tasks {
		tasks[s.Tasks[i].Who]++
	}
	for i := range s.Tasks {
		who := s.Tasks[i].Who
		if s.PerDay == 0 || tasks[who] <= s.PerDay {
			continue
		}
		if number[who] == 0 {
			number[who] = len(number) + 1
		}
		s.person[i] = number[who]
	}
	s.room = slices.Repeat([]int{s.PerDay}, 1+len(number)*s.none)
	s.room[0] = math.MaxInt / 2
	for i := range s.Tasks {
		if t := &s.Tasks[i]; t.Fixed && len(t.Days) > 0 {
			slot := s.slot(i, t.Days[0]-s.origin)
			s.room[slot] = max(0, s.room[slot]-1)
		}
	}
}

// slot gives the place in the table of room for one day of the person who does a task.
// Slot 0 holds any number: it stands for tasks left out, and for every day of people
// whose tasks all fit one day.
func (s *solver) slot(i, day int) int {
	if p := s.person[i]; p > 0 && day < s.none {
		return (p-1)*s.none + day
	}
	return 0
}

// index gives the place of a day among the Days of a task, or Left.
func (s *solver) index(i, day int) int {
	if k, found := slices.BinarySearch(s.Tasks[i].Days, day+s.origin); found && day < s.none {
		return k
	}
	return Left
}

// cost gives what a task costs on a day, less the bonus; on none, what it costs to
// leave it out.
func (s *solver) cost(i, day int) int64 {
	k, found := slices.BinarySearchFunc(s.options[i], day, func(o option, d int) int { return o.day - d })
	if found {
		return s.options[i][k].cost
	}
	return s.Tasks[i].LeaveOut
}

// keeps tells whether a task on a day keeps its limits with the others on theirs.
func (s *solver) keeps(i, day int, at []int) bool {
	for k := range s.binding[i] {
		t := &s.binding[i][k]
		if o := at[t.other]; o != s.none && !t.allows(day, o) {
			return false
		}
	}
	return true
}

// spend counts steps and tells whether any are left.
func (s *solver) spend(n int) bool {
	s.steps -= n
	return s.steps >= 0
}
