package schedule

import "slices"

// knot is tasks tied by limits, most often those of one area. Its tasks are
// named by their place in it. It is solved in two steps: which of them get a
// day ([whoSearch]), and which days those get ([waySearch]).
type knot struct {
	b     *board
	tasks []int
	order []int   // the tasks, the dearest to leave out first
	gap   [][]int // gap[p][o]: days that o must come after p, if it comes after p
	above int64   // how far above its cheapest days its best were last
	floor int64   // what every way costs at least
	stays stays
}

// never is a gap that no calendar holds.
const never = 1 << 30

func (b *board) newKnot(tasks []int) *knot {
	n := len(tasks)
	k := &knot{b: b, tasks: tasks, order: make([]int, n), gap: make([][]int, n)}
	gaps := make([]int, n*n)
	for p, i := range tasks {
		k.order[p] = p
		if b.perDay != 1 { // then parts may hang together by that alone, and be no knots
			k.floor += b.floor[i]
		}
		k.gap[p] = gaps[p*n : (p+1)*n]
		for o := range tasks {
			if b.perDay == 1 && o != p && b.person[i] > 0 && b.person[i] == b.person[tasks[o]] {
				k.gap[p][o] = 1 // one job a day is a limit too
			}
		}
		for m := range b.binding[i] {
			t := &b.binding[i][m]
			o, inside := slices.BinarySearch(tasks, t.other)
			if !inside {
				continue
			}
			if k.gap[p][o] = max(k.gap[p][o], 1, t.after); t.order == -1 {
				k.gap[p][o] = never
			}
		}
	}
	slices.SortStableFunc(k.order, func(p, o int) int { return b.tasks[tasks[p]].rank - b.tasks[tasks[o]].rank })
	return k
}

// way is one way to place the tasks of a knot.
type way struct {
	alike int   // the knot, see [crowd]
	days  []int // of each task, out for those left out
	slots []int // taken
	cost  int64 // without prices
	owed  int64 // with prices
}

// owes gives the cost of a way with prices on slots.
func (w *way) owes(price []int64) int64 {
	sum := w.cost
	for _, s := range w.slots {
		sum += price[s]
	}
	return sum
}

// way writes out a way from its days.
func (k *knot) way(alike int, days []int) way {
	w := way{alike: alike, days: days, slots: make([]int, 0, len(days))}
	for p, d := range days {
		w.cost += k.b.choiceOn(k.tasks[p], d).cost
		if d != k.b.out {
			w.slots = append(w.slots, k.b.slot(k.tasks[p], d))
		}
	}
	return w
}

// wayAt writes out a way of one of the alike knots, given by its tasks, from the
// days of all.
func (k *knot) wayAt(alike int, tasks, at []int) way {
	days := make([]int, len(tasks))
	for p, i := range tasks {
		days[p] = at[i]
	}
	return k.way(alike, days)
}

// wayOut leaves out all tasks.
func (k *knot) wayOut(alike int) way {
	return k.way(alike, slices.Repeat([]int{k.b.out}, len(k.tasks)))
}

// sameAs tells whether two knots are alike: trading all their days would change
// nothing, and gives the first one the earlier days.
func (k *knot) sameAs(o *knot) bool {
	b := k.b
	if !slices.EqualFunc(k.gap, o.gap, slices.Equal) {
		return false
	}
	sameChoice := func(p, q choice) bool { return p.day == q.day && p.cost == q.cost }
	for p, i := range k.tasks {
		j := o.tasks[p]
		if i > j || b.person[i] != b.person[j] || !slices.EqualFunc(b.choices[i], b.choices[j], sameChoice) {
			return false
		}
	}
	return true
}
