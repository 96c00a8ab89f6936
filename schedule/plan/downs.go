package plan

import (
	"slices"

	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// downs is what is down in an area, in order of time: every line of its record book and
// every job that is presumed done. A book that is long has many lines for few days, so the
// rules read sums: one for what a job brought on one day out of one bag.
type downs struct {
	all      []schedule.Down
	sums     []schedule.Down // of all, in the same order
	presumed []*schedule.Job // the jobs of all that are presumed done, in the same order
	last     map[season]int  // the highest number of a job on record or presumed
	alone    map[alone]int   // the number given to the lines of a day that name only a kind
}

// season is the key for the jobs of a kind in one season.
type season struct {
	kind schedule.Kind
	year int
}

// alone is the key for lines of one day that name only a kind.
type alone struct {
	season
	day schedule.Date
}

func newDowns() downs { return downs{last: map[season]int{}, alone: map[alone]int{}} }

// put adds a line or a presumed job in its place by date.
func (l *downs) put(d schedule.Down) {
	s := season{d.Kind, d.Season}
	l.last[s] = max(l.last[s], d.N)
	if d.Presumed != nil {
		i := len(l.presumed)
		for i > 0 && l.presumed[i-1].On.After(d.Date) {
			i--
		}
		l.presumed = slices.Insert(l.presumed, i, d.Presumed)
	}
	i := len(l.all)
	for i > 0 && l.all[i-1].Date.After(d.Date) {
		i--
	}
	l.all = slices.Insert(l.all, i, d)
	if i < len(l.all)-1 {
		l.sumFrom(d.Date)
		return
	}
	l.add(&d)
}

// takeBack removes the presumed job that a line is about, and gives it; false if there is
// none.
func (l *downs) takeBack(d schedule.Down) (schedule.Down, bool) {
	i := slices.IndexFunc(l.presumed, func(j *schedule.Job) bool { return j.Kind == d.Kind && j.Season == d.Season && j.N == d.N })
	if i < 0 {
		return schedule.Down{}, false
	}
	at := len(l.all) - 1
	for l.all[at].Presumed != l.presumed[i] {
		at--
	}
	o := l.all[at]
	l.presumed = slices.Delete(l.presumed, i, i+1)
	l.all = slices.Delete(l.all, at, at+1)
	l.sumFrom(o.Date)
	return o, true
}

// sumFrom makes the sums of a day and all days after it anew.
func (l *downs) sumFrom(day schedule.Date) {
	n, all := len(l.sums), len(l.all)
	for n > 0 && !l.sums[n-1].Date.Before(day) {
		n--
	}
	for all > 0 && !l.all[all-1].Date.Before(day) {
		all--
	}
	l.sums = slices.Clip(l.sums[:n])
	for i := range l.all[all:] {
		l.add(&l.all[all+i])
	}
}

// add counts what is down last into the sums.
func (l *downs) add(d *schedule.Down) {
	for i := len(l.sums) - 1; i >= 0 && l.sums[i].Date == d.Date; i-- {
		if o := &l.sums[i]; oneBag(o, d) {
			o.Dose = material.Sum(o.Dose, d.Dose)
			return
		}
	}
	l.sums = append(l.sums, *d)
}

// oneBag tells whether two things on one day are one job out of one bag.
func oneBag(a, b *schedule.Down) bool {
	m, o := &a.Dose.Material, &b.Dose.Material
	return a.Presumed == nil && b.Presumed == nil && a.Kind == b.Kind && a.Season == b.Season && a.N == b.N &&
		a.NotDone == b.NotDone && a.Taken == b.Taken && a.AsPlanned == b.AsPlanned &&
		m.ID == o.ID && m.Kind == o.Kind && m.Analysis == o.Analysis && m.SlowShare == o.SlowShare && m.Lasts == o.Lasts && m.Liquid == o.Liquid &&
		m.CCE == o.CCE && m.ECCE == o.ECCE && slices.Equal(m.Fineness, o.Fineness) && m.Hydrated == o.Hydrated && m.Magnesium == o.Magnesium && m.Sulfur == o.Sulfur
}
