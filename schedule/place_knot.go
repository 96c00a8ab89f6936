package schedule

import "slices"

// knot is tasks tied by limits, written out in rows: for each task the choices
// it has, one after another, leaving out last. Tasks are named by their place
// in it, choices by their place in their row.
type knot struct {
	b     *board
	tasks []int
	row   []int   // where the choices of each task begin; one more at the end
	day   []int   // of each choice
	cost  []int64 // of each choice, without prices
	slot  []int   // of each choice: its person and day, -1 when left out
	pairs []pair
	of    [][]side // the pairs of each task

	// What the limits lend to choices, see [knot.lend]: for each choice in
	// sum, for each pair and choice in its ends, which are cut from loans.
	lent, loans           []int64
	firstLent, firstLoans []int64 // as they were without prices
}

// pair is a limit between two tasks of a knot.
type pair [2]end

// end is one task of a pair, with what the limit lends to each of its choices.
type end struct {
	task int
	lent []int64
	shut []shut // by choice: which of the other's choices it closes
}

// shut is a run of choices from first to before last, but for one.
type shut struct{ first, last, but int32 }

// side names an end of a pair.
type side struct{ pair, end int }

func (b *board) newKnot(tasks []int) *knot {
	k := &knot{b: b, tasks: tasks, of: make([][]side, len(tasks))}
	size := 0
	for _, i := range tasks {
		size += len(b.choices[i])
	}
	k.row = make([]int, 0, len(tasks)+1)
	k.day, k.slot, k.cost = make([]int, 0, size), make([]int, 0, size), make([]int64, 0, size)
	for _, i := range tasks {
		k.row = append(k.row, len(k.day))
		for _, x := range b.choices[i] {
			s := -1
			if x.day != b.out {
				s = b.slot(i, x.day)
			}
			k.day, k.cost, k.slot = append(k.day, x.day), append(k.cost, x.cost), append(k.slot, s)
		}
	}
	k.row = append(k.row, len(k.day))
	k.lent = make([]int64, size)
	k.tie()
	worth := slices.Clone(k.cost)
	for range firstSweeps {
		k.lend(worth)
	}
	k.firstLent, k.firstLoans = slices.Clone(k.lent), slices.Clone(k.loans)
	return k
}

// tie writes out the limits as pairs.
func (k *knot) tie() {
	b, size := k.b, 0
	for p, i := range k.tasks {
		for n := range b.binding[i] {
			t := &b.binding[i][n]
			o, _ := slices.BinarySearch(k.tasks, t.other)
			if o < p {
				continue
			}
			back := tie{before: t.after, after: t.before, together: t.together, order: -t.order}
			k.of[p] = append(k.of[p], side{len(k.pairs), 0})
			k.of[o] = append(k.of[o], side{len(k.pairs), 1})
			k.pairs = append(k.pairs, pair{
				{task: p, shut: k.shuts(p, o, t)},
				{task: o, shut: k.shuts(o, p, &back)},
			})
			size += k.width(p) + k.width(o)
		}
	}
	k.loans = make([]int64, size)
	rest := k.loans
	for n := range k.pairs {
		for e := range k.pairs[n] {
			w := len(k.pairs[n][e].shut)
			k.pairs[n][e].lent, rest = rest[:w:w], rest[w:]
		}
	}
}

// width gives the number of choices of a task.
func (k *knot) width(p int) int { return k.row[p+1] - k.row[p] }

// shuts gives for each choice of p the run that a tie closes to o.
func (k *knot) shuts(p, o int, t *tie) []shut {
	days := k.day[k.row[o] : k.row[o+1]-1] // leaving out is never closed
	all := make([]shut, k.width(p))
	first, last, same := 0, 0, 0
	for x := range all[:len(all)-1] {
		d := k.day[k.row[p]+x]
		lo, hi := d-max(0, t.before-1), d+max(0, t.after-1)
		if t.order == 1 { // this one must not come after the other
			lo = 0
		}
		if t.order == -1 {
			hi = k.b.out
		}
		for first < len(days) && days[first] < lo {
			first++
		}
		for last < len(days) && days[last] <= hi {
			last++
		}
		for same < len(days) && days[same] < d {
			same++
		}
		all[x] = shut{int32(first), int32(last), -1}
		if t.together && same < len(days) && days[same] == d {
			all[x].but = int32(same)
		}
	}
	all[len(all)-1].but = -1
	return all
}

// sameAs tells whether two knots, given by their tasks, are alike: trading all
// their days would change nothing, and gives the first one the earlier days.
func (b *board) sameAs(x, y []int) bool {
	if len(x) != len(y) {
		return false
	}
	sameChoice := func(p, q choice) bool { return p.day == q.day && p.cost == q.cost }
	for m, i := range x {
		o := y[m]
		if i > o || b.person[i] != b.person[o] || len(b.binding[i]) != len(b.binding[o]) ||
			!slices.EqualFunc(b.choices[i], b.choices[o], sameChoice) {
			return false
		}
		for n, t := range b.binding[i] {
			u := b.binding[o][n]
			t.other, _ = slices.BinarySearch(x, t.other)
			u.other, _ = slices.BinarySearch(y, u.other)
			t.limit, u.limit = 0, 0
			if t != u {
				return false
			}
		}
	}
	return true
}
