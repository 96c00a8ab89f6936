package schedule

import (
	"cmp"
	"slices"
)

// round is the jobs of one group that one person could do on one day.
type round []int

// rounds gives each round the day that suits it best, and takes togetherBonus
// off the cost of that day for each of its jobs that may be done then. It tells
// which jobs have a cheaper day elsewhere. first is the answer without rounds and without
// regard to jobs per day.
//
// The jobs of one group and person, in task order, are one round or, if days
// take only so many jobs, as many rounds as that makes. A round's day is the
// one open to most of its jobs, then with the least sum of costs, then the
// earliest. A day is open to a job if it is among its days and keeps every
// limit with where first put the other jobs: so the round's day asks nobody
// else to move. Days must have room for the whole round beside recorded jobs and
// rounds settled before; the more important kinds settle first. A round of one,
// or without a day open to two, has no day.
//
// Rounds are settled before the search, so that they tie no areas together.
func (b *board) rounds(first []int) (cheaper []bool) {
	cheaper = make([]bool, len(b.tasks))
	if b.perDay == 1 {
		return cheaper
	}
	all := b.deal()
	room := slices.Clone(b.room)
	sums := make([]sum, b.out)
	for _, r := range all {
		day, ok := b.roundDay(r, first, room, sums)
		if !ok {
			continue
		}
		for _, i := range r {
			room[b.slot(i, day)]--
			if !b.allowed(i, day) {
				continue
			}
			b.choiceOn(i, day).cost -= togetherBonus * perUnit
			b.floor[i] -= togetherBonus * perUnit
			b.ranked[i] = nil
			cheaper[i] = first[i] != day
		}
	}
	return cheaper
}

// deal splits the tasks that have a group into rounds of two and more, the most
// important kind first.
func (b *board) deal() []round {
	type key struct{ group, who string }
	number := map[key]int{}
	var parties []round
	for i, t := range b.tasks {
		if t.group == "" || t.fixed {
			continue
		}
		k := key{t.group, t.who}
		n, ok := number[k]
		if !ok {
			n = len(parties)
			number[k] = n
			parties = append(parties, nil)
		}
		parties[n] = append(parties[n], i)
	}
	slices.SortStableFunc(parties, func(x, y round) int {
		return cmp.Compare(b.tasks[x[0]].rank, b.tasks[y[0]].rank)
	})
	var all []round
	for _, p := range parties {
		size := len(p)
		if b.perDay > 0 {
			size = b.perDay
		}
		for r := range slices.Chunk(p, size) {
			if len(r) > 1 {
				all = append(all, r)
			}
		}
	}
	return all
}

// sum is the jobs of a round that a day is open to, and what it costs them.
type sum struct {
	jobs int
	cost int64
}

// roundDay chooses the day of one round, with room for a sum a day; see rounds.
func (b *board) roundDay(r round, first, room []int, sums []sum) (day int, ok bool) {
	clear(sums)
	for _, i := range r {
		for _, c := range b.choices[i] {
			if c.day != b.out && b.keeps(i, c.day, first) {
				sums[c.day].jobs++
				sums[c.day].cost += c.cost
			}
		}
	}
	for d, s := range sums {
		if s.jobs < 2 || len(r) > room[b.slot(r[0], d)] {
			continue
		}
		if !ok || s.jobs > sums[day].jobs || s.jobs == sums[day].jobs && s.cost < sums[day].cost {
			day, ok = d, true
		}
	}
	return day, ok
}

// keeps tells whether a task on a day keeps its limits with the others' days.
func (b *board) keeps(i, day int, at []int) bool {
	for k := range b.binding[i] {
		t := &b.binding[i][k]
		if o := at[t.other]; o != b.out && !t.allows(day, o) {
			return false
		}
	}
	return true
}
