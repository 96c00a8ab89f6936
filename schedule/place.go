package schedule

import (
	"math"
	"math/bits"
	"slices"
)

// task is one job to place on a day.
type task struct {
	id    string
	rank  int       // importance of its kind: 0 the highest, see leaveOut
	who   string    // who does it, "" for the crew; jobs per day are counted for each
	group string    // same kind and material: prefers the day of its fellows in other areas; "" has none
	days  []Date    // days on which it may be done, ascending
	cost  []float64 // of each of days: 0 on the ideal day, below 1000
	fixed bool      // recorded: stands on its one day and only pushes the others
}

// limit holds between two tasks when both are placed on days.
// It is never bent; between two recorded tasks it says nothing.
type limit struct {
	a, b   int    // indexes of the tasks, which never share a day
	aThenB int    // if a comes first, b comes at least this many days later
	bThenA int    // if b comes first, a comes at least this many days later
	order  int8   // +1: a must not come after b; -1: b must not come after a
	why    string // the reason, for people
}

// placed is the answer: each task's day, and what bound it.
type placed struct {
	day    []int       // for each task an index into its days, -1 when left out
	cost   float64     // the sum that was made least
	proven bool        // false when the search stopped before proving it least
	bound  [][]blocker // for each task what kept it from days it would rather have
}

const (
	left = -1 // in placed.day: left out

	// togetherBonus is what a job gains on the day of its round. With weight 1
	// it is worth moving a job by a seventh of its window (0.02 = 0.14²).
	togetherBonus = 0.02 // [common]

	// Costs are counted in whole millionths, so that sums are exact in any
	// order and equal costs are equal.
	perUnit = 1_000_000

	// searchSteps bounds the search by counted steps, never by time, so that the
	// answer is the same on every machine. An area needs a few dozen to some
	// thousands.
	searchSteps = 200_000

	crowdSteps = 30_000 // the same for crowds, whose steps are dearer

	unreachable = math.MaxInt64 / 4 // above every sum of costs
)

// units gives a cost in the whole numbers that are searched.
func units(cost float64) int64 { return int64(math.Round(cost * perUnit)) }

// place puts the tasks on days so that every limit holds, no person has more
// than jobsPerDay jobs on a day (0 is no limit), and the sum of costs is least:
//
//	the cost of each placed task's day
//	+ leaveOut of each task left out
//	- togetherBonus for each task on the day of its round (see rounds)
//
// Of several answers with that sum it takes the one that places the first task
// earliest, then the second, and so on; left out counts as later than any day. If
// the steps run out among answers with that sum, it is the earliest yet found.
//
// The plan: only limits and jobs per day tie tasks together. Tasks that limits
// could tie form a knot, most often an area. At first each task is a part of its
// own. Parts of a knot are joined where their days break a limit, and solved as
// one ([knot.solve]); parts that together overfill a day are joined and solved as
// a crowd ([board.relieve]). Each step solves a relaxed problem exactly and adds
// the rest only where the relaxed answer breaks it, so the final answer is least
// for the whole problem, and effort grows with the number of areas where days are
// not contested.
func place(tasks []task, limits []limit, jobsPerDay int) placed {
	return newBoard(tasks, limits, jobsPerDay).place()
}

func (b *board) place() placed {
	at := make([]int, len(b.tasks)) // the day of each task
	knots := b.knots(b.all)
	b.solveAll(knots, at)
	cheaper := b.rounds(at)
	b.solveAll(slices.DeleteFunc(slices.Clone(knots), func(k *knot) bool {
		return !slices.ContainsFunc(k.tasks, func(i int) bool { return cheaper[i] })
	}), at)
	b.relieve(knots, at)
	p := placed{day: make([]int, len(b.tasks)), proven: !b.stopped, bound: b.explain(at)}
	var sum int64
	for i := range b.tasks {
		c := b.choiceOn(i, at[i])
		p.day[i] = c.index
		sum += c.cost
	}
	p.cost = float64(sum) / perUnit
	return p
}

// choice is one way to settle a task: a day, or to leave it out, which stands
// as the day after the last of all days.
type choice struct {
	day   int // days after the first day of the board
	index int // into task.days, or left
	cost  int64
}

// tie is a limit seen from one of its tasks.
type tie struct {
	other  int // task
	limit  int
	before int  // days needed when the other comes first
	after  int  // days needed when the other comes later
	order  int8 // +1: this one must not come after the other; -1: nor before it
}

// allows tells whether the tie lets its own task be on day d and the other on o.
func (t *tie) allows(d, o int) bool {
	switch {
	case d == o:
		return false
	case d < o:
		return t.order != -1 && o-d >= t.after
	default:
		return t.order != 1 && d-o >= t.before
	}
}

// board is the problem in the form in which it is searched: days as small
// numbers, costs as whole numbers, ties by task. A task's day is written as a
// choice.day throughout; out is the day that stands for left out.
type board struct {
	tasks   []task
	limits  []limit
	perDay  int // jobs per day for each person, 0 for no limit
	origin  Date
	out     int
	words   int        // uint64s in a set of days, out included
	choices [][]choice // of each task, ascending by day, out last (not for fixed)
	ranked  [][]choice // the same by cost, then day; made when first needed
	open    [][]uint64 // the days among a task's choices
	ties    [][]tie    // all limits, by task
	binding [][]tie    // of those, the ones between tasks yet to be placed that can bind
	all     []int      // every task
	part    []int      // of each task: the first of those whose days are settled with its own
	floor   []int64    // summed over the tasks of a part, what they cost at least
	person  []int      // of each task; 0 for people whose jobs all fit one day
	room    []int      // by slot: the jobs it holds beside recorded ones
	steps   int        // left to spend on the search at hand
	stopped bool       // a search ran out of steps

	crowdSteps int
	who        whoSearch // the one at hand, and so on: their tables are used again
	way        waySearch
	cast       cast
	levels     []int64 // of way
	scratch    []int64 // of lend
	jobsOn     []int   // by slot, see count
	first      []int   // by slot, see meet
}

func newBoard(tasks []task, limits []limit, jobsPerDay int) *board {
	b := &board{tasks: tasks, limits: limits, perDay: jobsPerDay, crowdSteps: crowdSteps}
	n, total := len(tasks), 0
	lo, hi := math.MaxInt, math.MinInt
	for _, t := range tasks {
		if len(t.days) > 0 {
			if d := t.days[0].number(); d < lo {
				lo, b.origin = d, t.days[0]
			}
			hi = max(hi, t.days[len(t.days)-1].number())
		}
		total += len(t.days) + 1
	}
	if hi >= lo {
		b.out = hi - lo + 1
	}
	b.words = b.out/64 + 1
	b.ties, b.binding, b.part = make([][]tie, n), make([][]tie, n), make([]int, n)
	for i := range b.part {
		b.part[i] = i
	}
	b.all, b.floor = slices.Clone(b.part), make([]int64, n)
	b.choices, b.ranked, b.open = make([][]choice, n), make([][]choice, n), make([][]uint64, n)
	tied := make([]int, n)
	for _, l := range limits {
		tied[l.a]++
		tied[l.b]++
	}
	ties := make([]tie, 2*len(limits))
	for i, n := range tied {
		b.ties[i], ties = ties[:0:n], ties[n:]
	}
	for k, l := range limits {
		b.ties[l.a] = append(b.ties[l.a], tie{l.b, k, l.bThenA, l.aThenB, l.order})
		b.ties[l.b] = append(b.ties[l.b], tie{l.a, k, l.aThenB, l.bThenA, -l.order})
	}
	all := make([]choice, 0, total)
	bits := make([]uint64, n*b.words)
	for i := range tasks {
		from := len(all)
		all = b.appendChoices(all, i, lo)
		b.choices[i] = all[from:len(all):len(all)]
		b.open[i] = bits[i*b.words : (i+1)*b.words]
		for _, c := range b.choices[i] {
			setDay(b.open[i], c.day)
		}
	}
	for i := range tasks {
		for _, t := range b.ties[i] {
			if b.canBind(i, t) {
				b.binding[i] = append(b.binding[i], t)
			}
		}
	}
	b.makeRoom()
	return b
}

// appendChoices adds the choices of one task: its days less those that a
// recorded job closes, then leaving it out.
func (b *board) appendChoices(all []choice, i, origin int) []choice {
	t := &b.tasks[i]
	alone := t.fixed || !slices.ContainsFunc(b.ties[i], func(t tie) bool { return b.tasks[t.other].fixed })
	for k, d := range t.days {
		c := choice{d.number() - origin, k, units(t.cost[k])}
		if alone || b.openBeside(i, c.day, origin) {
			all = append(all, c)
		}
	}
	if t.fixed && len(t.days) > 0 {
		return all
	}
	return append(all, choice{b.out, left, leaveOut(t.rank)})
}

// openBeside tells whether the recorded jobs leave a day open.
func (b *board) openBeside(i, day, origin int) bool {
	for k := range b.ties[i] {
		t := &b.ties[i][k]
		o := &b.tasks[t.other]
		if o.fixed && len(o.days) > 0 && !t.allows(day, o.days[0].number()-origin) {
			return false
		}
	}
	return true
}

// canBind tells whether two tasks yet to be placed have days that break a tie.
// It may say yes where none do; it never says no where some do.
func (b *board) canBind(i int, t tie) bool {
	x, y := b.choices[i], b.choices[t.other]
	if b.tasks[i].fixed || b.tasks[t.other].fixed || len(x) == 1 || len(y) == 1 {
		return false
	}
	x0, x1 := x[0].day, x[len(x)-2].day
	y0, y1 := y[0].day, y[len(y)-2].day
	return !(x1 < y0 && t.allows(x1, y0) || x0 > y1 && t.allows(x0, y1))
}

// makeRoom numbers the people who have more jobs than fit one day, and tells
// what their days hold beside recorded jobs. All other days hold any number.
func (b *board) makeRoom() {
	b.person = make([]int, len(b.tasks))
	jobs, number := map[string]int{}, map[string]int{}
	for i := range b.tasks {
		jobs[b.tasks[i].who]++
	}
	for i := range b.tasks {
		who := b.tasks[i].who
		if b.perDay == 0 || jobs[who] <= b.perDay {
			continue
		}
		if number[who] == 0 {
			number[who] = len(number) + 1
		}
		b.person[i] = number[who]
	}
	b.room = slices.Repeat([]int{b.perDay}, 1+len(number)*b.out)
	b.room[0] = math.MaxInt
	for i, t := range b.tasks {
		if t.fixed && len(t.days) > 0 {
			if s := b.slot(i, b.choices[i][0].day); b.room[s] > 0 {
				b.room[s]--
			}
		}
	}
}

// slot is the place of a task's person and a day in a table of people by days.
// All who have no more jobs than fit one day share one place for all their days.
func (b *board) slot(i, day int) int {
	if p := b.person[i]; p > 0 {
		return (p-1)*b.out + day + 1
	}
	return 0
}

// choiceOn gives a task's choice of a day.
func (b *board) choiceOn(i, day int) *choice {
	k, _ := slices.BinarySearchFunc(b.choices[i], day, func(c choice, d int) int { return c.day - d })
	return &b.choices[i][k]
}

// allowed tells whether a task may be on a day or, on out, be left out.
func (b *board) allowed(i, day int) bool { return hasDay(b.open[i], day) }

// Sets of days are bits.

func setDay(s []uint64, d int)      { s[d>>6] |= 1 << (d & 63) }
func hasDay(s []uint64, d int) bool { return s[d>>6]>>(d&63)&1 == 1 }

// nextDay gives the first day of a set from a day on; past all, math.MaxInt.
func nextDay(s []uint64, from int) int {
	for w := from >> 6; w < len(s); w++ {
		m := s[w]
		if w == from>>6 {
			m &= ^uint64(0) << (from & 63)
		}
		if m != 0 {
			return w<<6 + bits.TrailingZeros64(m)
		}
	}
	return math.MaxInt
}
