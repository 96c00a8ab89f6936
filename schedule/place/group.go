package place

import (
	"cmp"
	"slices"
)

// gather gives each same-day group the day that suits it best, and takes the bonus
// off that day for each of its tasks that may be done then. It tells which of these
// tasks are on another day so far. at is the answer without groups and room.
//
// The tasks of one group and person are one same-day group or, if that is more than a
// day holds, are cut in task order into several. A group's day is the one open to most of
// its tasks; of equals, with the least sum of costs; of equals, the earliest. A day is
// open to a task if it keeps every limit with the days in at: so the group's day makes no
// other task move. The day must have room for the whole group beside fixed tasks and the
// groups before it; the groups dearest to leave out choose first. A group of one, or
// without a day open to two, gets no day.
//
// Groups are settled before the search, so that they tie no areas together.
func (s *solver) gather(at []int) (gains []bool) {
	gains = make([]bool, len(s.Tasks))
	if s.PerDay == 1 || s.Bonus == 0 {
		return gains
	}
	room := slices.Clone(s.room)
	for _, group := range s.groups() {
		day, ok := s.groupDay(group, at, room)
		if !ok {
			continue
		}
		for _, i := range group {
			room[s.slot(i, day)]--
			if k, open := slices.BinarySearchFunc(s.options[i], day, func(o option, d int) int { return o.day - d }); open {
				s.options[i][k].cost -= s.Bonus
				gains[i] = at[i] != day
			}
		}
	}
	return gains
}

// groups lists the same-day groups of two and more, the dearest to leave out
// first.
func (s *solver) groups() (all [][]int) {
	type key struct{ group, who string }
	number := map[key]int{}
	var whole [][]int
	for i := range s.Tasks {
		t := &s.Tasks[i]
		if t.Group == "" || t.Fixed {
			continue
		}
		k := key{t.Group, t.Who}
		n, known := number[k]
		if !known {
			n = len(whole)
			number[k], whole = n, append(whole, nil)
		}
		whole[n] = append(whole[n], i)
	}
	slices.SortStableFunc(whole, func(x, y []int) int {
		return cmp.Compare(s.Tasks[y[0]].LeaveOut, s.Tasks[x[0]].LeaveOut)
	})
	for _, w := range whole {
		size := len(w)
		if s.PerDay > 0 {
			size = s.PerDay
		}
		for group := range slices.Chunk(w, size) {
			if len(group) > 1 {
				all = append(all, group)
			}
		}
	}
	return all
}

// groupDay chooses the day of one group; see [solver.gather].
func (s *solver) groupDay(group, at, room []int) (day int, ok bool) {
	first, last := s.none, 0
	for _, i := range group {
		if days := s.options[i]; len(days) > 0 {
			first, last = min(first, days[0].day), max(last, days[len(days)-1].day)
		}
	}
	type sum struct {
		tasks int
		cost  int64
	}
	sums := make([]sum, max(0, last-first+1)) // by day
	for _, i := range group {
		for _, o := range s.options[i] {
			if s.keeps(i, o.day, at) {
				sums[o.day-first].tasks++
				sums[o.day-first].cost += o.cost
			}
		}
	}
	var best sum
	for k, x := range sums {
		d := first + k
		if x.tasks < 2 || len(group) > room[s.slot(group[0], d)] {
			continue
		}
		if !ok || x.tasks > best.tasks || x.tasks == best.tasks && x.cost < best.cost {
			day, best, ok = d, x, true
		}
	}
	return day, ok
}
