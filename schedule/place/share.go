package place

import (
	"cmp"
	"slices"
)

// sharing is the plain way in which areas share days that they contest: see
// [solver.share].
type sharing struct {
	*solver
	at    []int   // of each task: its day
	room  []int   // of each slot: how many more tasks it holds
	alone [][]int // of each area: the days it would take if it were alone
	cost  []int64 // of each area: what its days cost
	best  []int64 // of each area: what they would cost if it were alone
}

// The effort for exchanges between areas, in steps.
const (
	exchangeSteps = 3_000   // for one component in one exchange
	shareSteps    = 250_000 // for all exchanges
)

// share lets the areas share their days where together they overfill one, and
// tells whether they did. at is what each would do alone.
//
// A contested day goes to the task that is dearer to leave out; one that has to give way
// takes the cheapest day still open to it. Then each area that pays more than it would
// alone tries three things: to take its best days anew while all others stay; to take
// them before an area that is on a day it would have had, which then takes its own anew;
// and to be solved together with that area, as if the two were one. What lowers the sum
// is kept, until nothing does.
func (s *solver) share(at []int) (contested bool) {
	var all []int
	for _, tasks := range s.areas {
		all = append(all, tasks...)
	}
	if s.overfull(all, s.room, at) == 0 {
		return false
	}
	h := &sharing{solver: s, at: at, room: slices.Clone(s.room)}
	for a, tasks := range s.areas {
		h.alone = append(h.alone, nil)
		for _, i := range tasks {
			h.alone[a] = append(h.alone[a], at[i])
		}
		h.best = append(h.best, h.sum(a))
	}
	h.giveWay(all)
	for a := range s.areas {
		h.cost = append(h.cost, h.sum(a))
	}
	h.exchange()
	return true
}

// giveWay gives each task, the dearest to leave out first, the day it would have
// if its area were alone or, if that is taken, the cheapest one open to it.
func (h *sharing) giveWay(tasks []int) {
	wish := slices.Clone(h.at)
	for _, i := range tasks {
		h.at[i] = h.none
	}
	slices.Sort(tasks)
	slices.SortStableFunc(tasks, func(i, j int) int { return cmp.Compare(h.Tasks[j].LeaveOut, h.Tasks[i].LeaveOut) })
	for _, i := range tasks {
		open := func(day int) bool { return h.room[h.slot(i, day)] > 0 && h.keeps(i, day, h.at) }
		day, least := h.none, h.Tasks[i].LeaveOut
		for _, o := range h.options[i] {
			if o.cost < least && open(o.day) {
				day, least = o.day, o.cost
			}
		}
		if wish[i] != h.none && open(wish[i]) {
			day = wish[i]
		}
		h.at[i] = day
		h.room[h.slot(i, day)]--
	}
}

// exchange goes from area to area until nothing gains or the steps for it are spent.
// Then the answer is contested, which it is in any case, but not stopped: so what the
// exchanges do to stopped is undone.
func (h *sharing) exchange() {
	steps, stopped := h.areaSteps, h.stopped
	h.areaSteps = min(steps, exchangeSteps)
	until := h.spent + shareSteps
	for gained := true; gained; {
		gained = false
		for a := range h.areas {
			if h.cost[a] == h.best[a] || h.spent >= until {
				continue
			}
			gained = h.retry([]int{a}) || gained
			for _, b := range h.rivals(a) {
				if h.spent < until && (h.retry([]int{a}, []int{b}) || h.retry([]int{a, b})) {
					gained = true
				}
			}
		}
	}
	h.areaSteps, h.stopped = steps, stopped
}

// sum gives what the days of an area cost.
func (h *sharing) sum(a int) (sum int64) {
	for _, i := range h.areas[a] {
		sum += h.solver.cost(i, h.at[i])
	}
	return sum
}

// lift takes the tasks of an area off their days.
func (h *sharing) lift(a int) {
	for _, i := range h.areas[a] {
		h.room[h.slot(i, h.at[i])]++
		h.at[i] = h.none
	}
}

// drop counts the tasks of an area into their days.
func (h *sharing) drop(a int) {
	for _, i := range h.areas[a] {
		h.room[h.slot(i, h.at[i])]--
	}
	h.cost[a] = h.sum(a)
}

// retry lets some areas take their best days anew, turn by turn, beside all
// others, and keeps that if it gains. The areas of one turn are solved as one.
func (h *sharing) retry(turns ...[]int) bool {
	before, had, now := slices.Clone(h.at), int64(0), int64(0)
	areas := slices.Concat(turns...)
	for _, a := range areas {
		had += h.cost[a]
		h.lift(a)
	}
	for _, turn := range turns {
		var tasks []int
		for _, a := range turn {
			tasks = append(tasks, h.areas[a]...)
		}
		slices.Sort(tasks)
		h.solveIn(tasks, h.room, h.at)
		for _, a := range turn {
			h.drop(a)
			now += h.cost[a]
		}
	}
	if now < had {
		return true
	}
	for _, a := range areas {
		h.lift(a)
	}
	copy(h.at, before)
	for _, a := range areas {
		h.drop(a)
	}
	return false
}

// rivals lists the areas that are on a day which an area would have taken.
func (h *sharing) rivals(a int) (all []int) {
	wants := map[int]bool{}
	for k, i := range h.areas[a] {
		if d := h.alone[a][k]; d != h.at[i] {
			wants[h.slot(i, d)] = true
		}
	}
	delete(wants, 0)
	for b, tasks := range h.areas {
		if b != a && slices.ContainsFunc(tasks, func(i int) bool { return wants[h.slot(i, h.at[i])] }) {
			all = append(all, b)
		}
	}
	return all
}
