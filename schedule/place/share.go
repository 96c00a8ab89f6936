package place

import (
	"cmp"
	"slices"
)

// sharing is the plain way in which areas share days that they contest.
type sharing struct {
	*solver
	at    []int
	room  []int   // by slot: what the days still hold
	alone [][]int // of each area: the days it would take if it were alone
	cost  []int64 // of each area: what its days cost
	best  []int64 // of each area: what they would cost if it were alone
}

// The effort for exchanges between areas: for one of them, and for all.
const (
	exchangeSteps = 20_000
	shareSteps    = 600_000
)

// share lets the areas share their days where together they overfill one, and
// tells whether they did. at is what each would do alone.
//
// A contested day goes to the dearer task. The areas whose tasks had to give way
// are solved again beside all others, the one with the dearest of them first. Then
// areas that are worse off than alone try to better themselves: by themselves,
// beside the others as they now are, and with one area that is on a day they
// would have taken, the two solved together as if they were one. What gains is
// kept, until nothing gains.
func (s *solver) share(at []int) (contested bool) {
	h := &sharing{solver: s, at: at, room: slices.Clone(s.room)}
	turn := h.standOrGiveWay()
	if len(turn) == 0 {
		return false
	}
	for _, a := range turn {
		h.lift(a)
	}
	for _, a := range turn {
		h.settle(a)
	}
	h.exchange()
	return true
}

// exchange lets the areas better themselves until nothing gains, or the steps
// for it are spent. What has no gain within its steps is no sign that days are not the
// best for an area: it says nothing about having stopped.
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
			gained = h.retry(a) || gained
			for _, b := range h.rivals(a) {
				if h.spent < until {
					gained = h.retry(a, b) || gained
				}
			}
		}
	}
	h.areaSteps, h.stopped = steps, stopped
}

// standOrGiveWay gives each task, the dearest first, the day that its area would
// take alone, if that day has room. It lists the areas with a task that found
// none, the dearest such task first.
func (h *sharing) standOrGiveWay() (turn []int) {
	area := make([]int, len(h.Tasks))
	var order []int
	for a, tasks := range h.areas {
		order = append(order, tasks...)
		h.alone = append(h.alone, nil)
		for _, i := range tasks {
			area[i] = a
			h.alone[a] = append(h.alone[a], h.at[i])
		}
		h.cost = append(h.cost, h.sum(a))
	}
	h.best = slices.Clone(h.cost)
	slices.Sort(order)
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(h.Tasks[j].LeaveOut, h.Tasks[i].LeaveOut) })
	for _, i := range order {
		slot := h.slot(i, h.at[i])
		if h.room[slot] > 0 {
			h.room[slot]--
			continue
		}
		h.at[i] = h.none
		if !slices.Contains(turn, area[i]) {
			turn = append(turn, area[i])
		}
	}
	return turn
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

// settle finds the best days of an area, whose tasks are off their days, in the
// room there is.
func (h *sharing) settle(a int) {
	h.solveIn(h.areas[a], h.room, h.at, unreachable)
	h.drop(a)
}

// retry solves some areas again beside the others as if they were one, and
// keeps that if it gains.
func (h *sharing) retry(areas ...int) bool {
	before, had := slices.Clone(h.at), int64(0)
	var tasks []int
	for _, a := range areas {
		had += h.cost[a]
		tasks = append(tasks, h.areas[a]...)
		h.lift(a)
	}
	slices.Sort(tasks)
	gained := h.solveIn(tasks, h.room, h.at, had) < had
	if !gained {
		copy(h.at, before)
	}
	for _, a := range areas {
		h.drop(a)
	}
	return gained
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
