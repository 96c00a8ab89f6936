package plan

import (
	"cmp"
	"fmt"
	"slices"
	"sync"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// bookkeeper works the record book out line by line. A line that says "as
// planned", or a share of the plan, is read against the plan that the lines
// before it lead to.
type bookkeeper struct {
	site    *schedule.Site
	kinds   schedule.KindTable
	plan    func([]schedule.Down) []schedule.Job // the jobs that follow from what is down
	book    []schedule.Down
	assumed []string
}

// inOrder sorts the lines of a record book by day.
func inOrder(lines []schedule.Done) []schedule.Done {
	lines = slices.Clone(lines)
	slices.SortStableFunc(lines, func(a, c schedule.Done) int {
		return cmp.Or(a.Date.Compare(c.Date), cmp.Compare(a.Line, c.Line))
	})
	return lines
}

// byDate sorts what is down by day.
func byDate(book []schedule.Down) []schedule.Down {
	slices.SortStableFunc(book, func(a, b schedule.Down) int { return a.Date.Compare(b.Date) })
	return book
}

// read adds one line to the book. A line about a job that was taken as done
// takes its place.
func (b *bookkeeper) read(l schedule.Done) {
	d, ok := b.line(l)
	if !ok {
		return
	}
	b.book = slices.DeleteFunc(b.book, func(o schedule.Down) bool {
		return o.Presumed != nil && o.AreaID == d.AreaID && o.Kind == d.Kind && o.N == d.N
	})
	b.book = byDate(append(b.book, d))
}

func (b *bookkeeper) line(l schedule.Done) (schedule.Down, bool) {
	area, k, n, err := b.kinds.JobName(l.Job)
	if err != nil {
		b.assume(l, err.Error()+"; the line counts for nothing")
		return schedule.Down{}, false
	}
	plan := sync.OnceValue(func() []schedule.Job { return b.plan(b.book) }) // asked for at most once
	d := schedule.Down{Done: l, AreaID: cmp.Or(l.Area, area), Kind: k, N: n, NotDone: l.Missed}
	a := b.site.Area(d.AreaID)
	if a == nil {
		b.assume(l, fmt.Sprintf("no area %q; the line counts for nothing", d.AreaID))
		return schedule.Down{}, false
	}
	if d.N == 0 {
		d.N = b.number(plan(), d.AreaID, k, l.Date)
	}
	if l.Missed || !k.Spreads() {
		return d, true
	}
	var planned *schedule.Job
	if l.AsPlanned || l.Share > 0 || l.Material == "" {
		planned = plannedIn(plan(), d)
	}
	m, ok := b.material(l, k, planned)
	if !ok {
		b.assume(l, "the material is not known, so the line counts for nothing; name it in the material column")
		return d, true
	}
	rate, ok := b.rate(l, m, a, planned)
	if !ok {
		b.assume(l, "there is no planned job to take the amount from, so the line counts for nothing; give the amount")
		return d, true
	}
	d.Dose = material.DoseOf(m, rate)
	return d, true
}

// How far a record that names only a kind may lie from the job it settles, in
// days: from one still to come, and from one taken as done.
const (
	nearPlanned = 60 // [common]
	nearTaken   = 21 // [common]
)

// number gives the number of a record that names only a kind: that of the
// job whose day is nearest, if it is near enough, else a new one.
func (b *bookkeeper) number(jobs []schedule.Job, area string, k schedule.Kind, on schedule.Date) int {
	best, n, last := nearPlanned+1, 0, 0
	for _, j := range jobs {
		if j.AreaID() != area || j.Kind != k {
			continue
		}
		last = max(last, j.N)
		if j.State == schedule.Finished || len(j.Windows) == 0 {
			continue
		}
		day, most := j.Windows[0].Ideal, nearPlanned
		if !j.On.IsZero() {
			day, most = j.On, nearTaken
		}
		off := day.DaysFrom(on)
		if off = max(off, -off); off <= most && (off < best || off == best && !j.On.IsZero()) {
			best, n = off, j.N
		}
	}
	if n > 0 {
		return n
	}
	for _, d := range b.book {
		if d.AreaID == area && d.Kind == k {
			last = max(last, d.N)
		}
	}
	return last + 1
}

func plannedIn(jobs []schedule.Job, d schedule.Down) *schedule.Job {
	for i := range jobs {
		if j := &jobs[i]; j.AreaID() == d.AreaID && j.Kind == d.Kind && j.N == d.N {
			return j
		}
	}
	return nil
}

func (b *bookkeeper) material(l schedule.Done, k schedule.Kind, planned *schedule.Job) (material.Material, bool) {
	if l.Material != "" {
		for _, m := range append(slices.Clone(b.site.Materials), material.TradeMaterials()...) {
			if m.ID == l.Material {
				return m, true
			}
		}
		return material.Material{}, false
	}
	if planned != nil {
		return planned.Dose.Material, true
	}
	var fit []material.Material
	for _, m := range b.site.Materials {
		if k.ServedBy(m) {
			fit = append(fit, m)
		}
	}
	if len(fit) == 1 { // only one bag in the shed can have been meant
		return fit[0], true
	}
	return material.Material{}, false
}

func (b *bookkeeper) rate(l schedule.Done, m material.Material, a *schedule.Area, planned *schedule.Job) (agronomy.PerThousand, bool) {
	over := func(p agronomy.Pounds) agronomy.PerThousand {
		return agronomy.PerThousand(float64(p) * 1000 / float64(a.Size))
	}
	switch {
	case l.Weight > 0:
		return over(l.Weight), true
	case l.Volume > 0:
		p, ok := m.WeightOf(l.Volume)
		return over(p), ok
	case l.Packs > 0:
		p, ok := m.PackWeight()
		return over(p * agronomy.Pounds(l.Packs)), ok
	case planned == nil:
		return 0, false
	case l.Share > 0:
		return planned.Dose.Rate * agronomy.PerThousand(l.Share), true
	}
	return planned.Dose.Rate, true
}

func (b *bookkeeper) assume(l schedule.Done, text string) {
	b.assumed = append(b.assumed, fmt.Sprintf("record book line %d: %s", l.Line, text))
}
