package schedule

import "slices"

// stays remembers which tasks of a knot can all have a day beside each other.
type stays struct {
	can, cannot []uint64
	tried       map[uint64][][]int // of the tasks still to come: first days that do not do
}

// canStay tells whether all the given tasks can have a day. It may say yes
// where they cannot, when the steps run out or the tasks are more than a set
// holds; it never says no where they can.
func (k *knot) canStay(in []bool) bool {
	if len(in) > 64 {
		return true
	}
	var set uint64
	first := make([]int, len(in))
	for p, yes := range in {
		if yes {
			set |= 1 << p
		}
	}
	s := &k.stays
	for _, c := range s.can {
		if set&^c == 0 {
			return true
		}
	}
	for _, c := range s.cannot {
		if c&^set == 0 {
			return false
		}
	}
	if s.tried == nil {
		s.tried = map[uint64][][]int{}
	}
	switch yes := k.follow(set, first); {
	case yes && k.b.steps >= 0:
		s.can = append(s.can, set)
		return true
	case k.b.steps < 0:
		return true
	}
	s.cannot = append(s.cannot, set)
	return false
}

// follow tells whether the tasks of a set can follow each other when none may
// come before its first day. A task that comes next may as well come as soon
// as it can: that hinders no other. So orders are tried, not days.
func (k *knot) follow(set uint64, first []int) bool {
	if k.b.steps--; k.b.steps < 0 || set == 0 {
		return true
	}
	b := k.b
	for p := range first {
		if set>>p&1 == 0 {
			first[p] = 0
			continue
		}
		if first[p] = nextDay(b.open[k.tasks[p]], first[p]); first[p] >= b.out {
			return false
		}
	}
	for _, f := range k.stays.tried[set] {
		if noneBefore(first, f) {
			return false
		}
	}
	next := make([]int, len(first))
	for _, p := range k.order {
		if set>>p&1 == 0 || !k.mayLead(p, set, first) {
			continue
		}
		fits := true
		for o := range next {
			if next[o] = max(first[o], first[p]+k.gap[p][o]); set>>o&1 == 1 && o != p && next[o] >= b.out {
				fits = false
				break
			}
		}
		if fits && k.follow(set&^(1<<p), next) {
			return true
		}
	}
	k.stays.tried[set] = append(k.stays.tried[set], slices.Clone(first))
	return false
}

// mayLead tells whether it is worth trying a task as the next one: not if some
// other could come before it and hinder nobody.
func (k *knot) mayLead(p int, set uint64, first []int) bool {
	for q := range first {
		if q == p || set>>q&1 == 0 || first[q] > first[p] || first[q] == first[p] && q > p {
			continue
		}
		hinders := false
		for o := range first {
			if o != q && set>>o&1 == 1 && first[q]+k.gap[q][o] > max(first[o], first[p]) {
				hinders = true
				break
			}
		}
		if !hinders {
			return false
		}
	}
	return true
}

// noneBefore tells whether no day comes before its fellow.
func noneBefore(days, than []int) bool {
	for p, d := range days {
		if d < than[p] {
			return false
		}
	}
	return true
}
