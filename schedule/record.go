package schedule

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

// down is a line of the record book, worked out: which job it is and what it
// brought.
type down struct {
	Done
	area   string
	kind   Kind
	n      int // number of the job within kind and area
	dose   material.Dose
	missed bool
	taken  *Job // not on record: a job taken as done as planned
}

// JobName splits the job column of a record: a kind ("lime"), a kind with its
// number ("lime/1"), or a whole id ("east/lime/1"). The number is 0 if none was
// given.
func JobName(job string) (area string, k Kind, n int, err error) { return kinds.jobName(job) }

func (t kindTable) jobName(job string) (area string, k Kind, n int, err error) {
	parts := strings.Split(job, "/")
	if len(parts) == 3 {
		area, parts = parts[0], parts[1:]
	}
	if len(parts) > 2 {
		return "", Kind{}, 0, fmt.Errorf("%q is no job; write a kind such as lime, or an id such as east/lime/1", job)
	}
	k, ok := t.named(parts[0])
	if !ok {
		return "", Kind{}, 0, fmt.Errorf("unknown kind of job %q", parts[0])
	}
	if len(parts) == 2 {
		n, err = strconv.Atoi(parts[1])
		if err != nil || n < 1 {
			return "", Kind{}, 0, fmt.Errorf("%q has no number after the kind; write it as %s/1", job, k)
		}
	}
	return area, k, n, nil
}

// bookkeeper works the record book out line by line. A line that says "as
// planned", or a share of the plan, is read against the plan that the lines
// before it lead to.
type bookkeeper struct {
	site    *Site
	kinds   kindTable
	plan    func([]down) []Job // the jobs that follow from what is down
	book    []down
	assumed []string
}

// inOrder sorts the lines of a record book by day.
func inOrder(lines []Done) []Done {
	lines = slices.Clone(lines)
	slices.SortStableFunc(lines, func(a, c Done) int {
		return cmp.Or(a.Date.Compare(c.Date), cmp.Compare(a.Line, c.Line))
	})
	return lines
}

// byDate sorts what is down by day.
func byDate(book []down) []down {
	slices.SortStableFunc(book, func(a, b down) int { return a.Date.Compare(b.Date) })
	return book
}

// read adds one line to the book. A line about a job that was taken as done
// takes its place.
func (b *bookkeeper) read(l Done) {
	d, ok := b.line(l)
	if !ok {
		return
	}
	b.book = slices.DeleteFunc(b.book, func(o down) bool {
		return o.taken != nil && o.area == d.area && o.kind == d.kind && o.n == d.n
	})
	b.book = byDate(append(b.book, d))
}

func (b *bookkeeper) line(l Done) (down, bool) {
	area, k, n, err := b.kinds.jobName(l.Job)
	if err != nil {
		b.assume(l, err.Error()+"; the line counts for nothing")
		return down{}, false
	}
	plan := sync.OnceValue(func() []Job { return b.plan(b.book) }) // asked for at most once
	d := down{Done: l, area: cmp.Or(l.Area, area), kind: k, n: n, missed: l.Missed}
	a := b.site.area(d.area)
	if a == nil {
		b.assume(l, fmt.Sprintf("no area %q; the line counts for nothing", d.area))
		return down{}, false
	}
	if d.n == 0 {
		d.n = b.number(plan(), d.area, k, l.Date)
	}
	if l.Missed || !k.Spreads() {
		return d, true
	}
	var planned *Job
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
	d.dose = material.DoseOf(m, rate)
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
func (b *bookkeeper) number(jobs []Job, area string, k Kind, on Date) int {
	best, n, last := nearPlanned+1, 0, 0
	for _, j := range jobs {
		if j.areaID() != area || j.Kind != k {
			continue
		}
		last = max(last, j.N)
		if j.State == Finished || len(j.Windows) == 0 {
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
		if d.area == area && d.kind == k {
			last = max(last, d.n)
		}
	}
	return last + 1
}

func plannedIn(jobs []Job, d down) *Job {
	for i := range jobs {
		if j := &jobs[i]; j.areaID() == d.area && j.Kind == d.kind && j.N == d.n {
			return j
		}
	}
	return nil
}

func (b *bookkeeper) material(l Done, k Kind, planned *Job) (material.Material, bool) {
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
		if k.servedBy(m) {
			fit = append(fit, m)
		}
	}
	if len(fit) == 1 { // only one bag in the shed can have been meant
		return fit[0], true
	}
	return material.Material{}, false
}

func (b *bookkeeper) rate(l Done, m material.Material, a *Area, planned *Job) (agronomy.PerThousand, bool) {
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

func (b *bookkeeper) assume(l Done, text string) {
	b.assumed = append(b.assumed, fmt.Sprintf("record book line %d: %s", l.Line, text))
}

// area finds an area by its id.
func (s *Site) area(id string) *Area {
	for i := range s.Areas {
		if s.Areas[i].ID == id {
			return &s.Areas[i]
		}
	}
	return nil
}

// recordedJobs turns what is down in the program's time into jobs with a day.
func (c *Case) recordedJobs() []Job {
	var out []Job
	m := c.Measure()
	for _, d := range c.thisYear() {
		if d.missed || d.Date.Before(c.Start) || d.Date.After(c.Through) {
			continue
		}
		if d.taken != nil {
			j := *d.taken
			j.Note = "not on record: taken as done as planned"
			out = append(out, j)
			continue
		}
		j := Job{Kind: d.kind, N: d.n, Area: c.Area, Dose: d.dose, On: d.Date, State: Finished, Note: d.Note}
		j.Title = Capital(d.kind.Noun()) + " on " + c.Area.Name
		j.Summary = j.Title
		if d.dose.Rate > 0 {
			j.Summary += ", " + m.doseWords(d.dose, c.Area.Size)
		}
		if d.By != "" {
			j.Summary += ", by " + c.personName(d.By)
		}
		j.Summary += "."
		j.Why = []Reason{{Text: fmt.Sprintf("line %d of the record book", d.Line)}}
		out = append(out, j)
	}
	return out
}
