package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
	scrule "swardbook/schedule/rule"
	"swardbook/schedule/word"
)

// inOrder sorts the lines of a record book by day.
func inOrder(lines []schedule.Done) []schedule.Done {
	slices.SortStableFunc(lines, func(a, c schedule.Done) int {
		return cmp.Or(a.Date.Compare(c.Date), cmp.Compare(a.Line, c.Line))
	})
	return lines
}

// line adds one line of the record book to what is down. A line that stands by itself is
// read as it is; a short one, "as planned" or "half", is read against the plan that the
// lines before it led to. A line about a job that was planned or presumed done takes its
// place; what it leaves of the dose first planned stays due. anew tells whether the line
// says anything that the plan did not hold.
func (pl *planner) line(d schedule.Done) (anew bool) {
	_, k, season, n, err := pl.kinds.JobName(d.Job)
	if err != nil {
		pl.assume(d, err.Error()+"; the line is not counted")
		return false
	}
	l := pl.life(pl.areaOf(d))
	if l == nil {
		pl.assume(d, fmt.Sprintf("no area %q; the line is not counted", pl.areaOf(d)))
		return false
	}
	down := schedule.Down{Done: d, AreaID: l.area.ID, Kind: k, Season: season, N: n, NotDone: d.Missed, Taken: d.Taken}
	if down.Season == 0 {
		down.Season = pl.seasonOn(l, d.Date)
	}
	if down.N == 0 {
		down.N = pl.number(l, down)
	}
	planned := pl.takeBack(l, down)
	if d.Missed || !k.Spreads() {
		if k.Sows() && !d.Missed {
			down.Part = l.area.SeedPart(k, &d)
		}
		pl.put(l, down)
		if d.Missed && k.Sows() && planned != nil && planned.Rest {
			l.closed = append(l.closed, noRest(l.area, k, down.Season, down.N, planned.Part, calledOff, d.Date))
		}
		if rest, ok := restOfSeed(l, down, planned); ok && rest.Window().To.Before(d.Date) {
			scrule.DescribeRest(l.now, &rest)
			pl.presume(l, &rest)
			return true
		} else if ok {
			l.planned = append(l.planned, rest)
			return true
		}
		if k.Samples() && !d.Missed {
			pl.awaitResults(l, down)
		}
		return d.Missed || k != schedule.Sow && !pl.asPlanned(l, down, planned)
	}
	switch dose, why := pl.doseOf(l, down, planned); {
	case why != "":
		pl.assume(d, why)
	default:
		down.Dose = dose
		if d.Content == nil && planned != nil {
			down.Of = firstPlanned(l, down, planned).Over(l.area.Size)
		}
	}
	pl.put(l, down)
	if rest, ok := pl.rest(l, down, planned); ok {
		l.planned = append(l.planned, rest)
		return true
	}
	return !pl.asPlanned(l, down, planned)
}

// awaitResults tells, as something left out, that the results of a sample on record are
// still to be entered.
func (pl *planner) awaitResults(l *life, d schedule.Down) {
	if slices.ContainsFunc(l.reports, func(r schedule.SoilReport) bool { return !r.Sampled.AddDays(nearTaken).Before(d.Date) }) {
		return
	}
	n := d.N + 1
	l.left = append(l.left, schedule.LeftOut{ID: schedule.JobID(l.area.ID, d.Kind, d.Season, n), Season: d.Season, N: n, Kind: d.Kind, Area: l.area.ID, Date: d.Date,
		Reason: "a sample was taken on " + d.Date.Short() + "; enter its results in the site file"})
}

// near is by what share an amount may differ from the plan and still be as planned: people
// round, and a spreader is no scale.
const near = 0.06 // [common]

// asPlanned tells whether a line says no more than that a job was done as it was planned,
// on a day from which all planned jobs keep their distance.
func (pl *planner) asPlanned(l *life, d schedule.Down, planned *schedule.Job) bool {
	if planned == nil || planned.Rest || d.Season != l.year {
		return false
	}
	if d.Kind.Spreads() {
		if d.Dose.Material.ID != planned.Dose.Material.ID || !alike(d.Dose.Rate, planned.Dose.Rate) || !alike(d.Dose.N, planned.Dose.N) ||
			!alike(d.Dose.P2O5, planned.Dose.P2O5) || !alike(d.Dose.K2O, planned.Dose.K2O) {
			return false
		}
	}
	if d.Kind.Sows() && d.Date != planned.On {
		return false // its seedlings are up on other days
	}
	jobs := make([]*schedule.Job, 0, len(l.planned)+1)
	for _, j := range l.planned {
		j.On = schedule.Date{}
		jobs = append(jobs, &j)
	}
	done := *planned
	done.State, done.Dose, done.On = schedule.Finished, d.Dose, d.Date
	for _, lim := range limitsBetween(append(jobs, &done)) {
		if lim.B != len(jobs) {
			continue
		}
		days := d.Date.DaysFrom(l.planned[lim.A].On)
		if days >= 0 && days < lim.AThenB || days <= 0 && -days < lim.BThenA {
			return false
		}
	}
	return true
}

// alike tells whether two amounts are [near].
func alike(a, b agronomy.PerThousand) bool {
	off := a - b
	return max(off, -off) <= near*max(a, b)+schedule.Dust
}

// How many days a line that names only a kind may lie from the job that it is about.
const (
	nearPlanned = 60 // [common] from the ideal day of a job still to come
	nearTaken   = 21 // [common] from the day of a job presumed done; while that is due, any number
)

// number gives the number of a line that names only a kind: that of the job of the
// season whose day is nearest, if it is near enough, else a new one. Lines of one day
// that name the same kind are one job.
func (pl *planner) number(l *life, d schedule.Down) int {
	if d.Kind == schedule.Sow {
		return 1 // a stand is sown once, though in parts
	}
	day := alone{season{d.Kind, d.Season}, d.Date}
	n, again := l.down.alone[day]
	if !again {
		n = pl.newNumber(l, d)
		l.down.alone[day] = n
	}
	return n
}

// newNumber finds the job for [planner.number].
func (pl *planner) newNumber(l *life, d schedule.Down) int {
	best, n, last, same := math.MaxInt, 0, l.down.last[season{d.Kind, d.Season}], false
	near := func(j *schedule.Job, day schedule.Date, most int) {
		off := day.DaysFrom(d.Date)
		mine := d.Material != "" && d.Material == j.Dose.Material.ID // of jobs on one day the one with that bag is meant
		if off = max(off, -off); off <= most && (off < best || off == best && (mine && !same || mine == same && most != nearPlanned)) {
			best, n, same = off, j.N, mine
		}
	}
	for i := range l.planned {
		if j := &l.planned[i]; j.Kind == d.Kind && j.Season == d.Season {
			last = max(last, j.N)
			near(j, j.Window().Ideal, nearPlanned)
		}
	}
	for _, j := range l.down.presumed {
		if j.Kind == d.Kind && j.Season == d.Season {
			most := nearTaken
			if !d.Date.Before(j.On) && !d.Date.After(j.Window().To) {
				most = math.MaxInt
			}
			near(j, j.On, most)
		}
	}
	if n > 0 {
		return n
	}
	return last + 1
}

// takeBack removes the job that a line is about from what is planned or presumed done, and
// gives it; nil if there is no such job.
func (pl *planner) takeBack(l *life, d schedule.Down) (planned *schedule.Job) {
	for i := range l.planned {
		if j := l.planned[i]; j.Kind == d.Kind && j.Season == d.Season && j.N == d.N {
			l.planned = slices.Delete(l.planned, i, i+1)
			return &j
		}
	}
	o, found := l.down.takeBack(d)
	if !found {
		return nil
	}
	pl.draw(l, o, -1)
	return o.Presumed
}

// doseOf works out what a line brought, or says why that cannot be known.
func (pl *planner) doseOf(l *life, d schedule.Down, planned *schedule.Job) (material.Dose, string) {
	m, ok := pl.material(d, planned)
	if !ok {
		return material.Dose{}, "the material is not known, so the line is not counted; name it in the material column"
	}
	rate, ok := rateOf(d.Done, m, l.area, planned)
	if !ok {
		return material.Dose{}, "there is no planned job to take the amount from, so the line is not counted; give the amount"
	}
	return material.DoseOf(m, rate), ""
}

// material gives what a line put down: what it says itself, else the material that it
// names, else the planned one, else the only one of the site that can serve the job.
func (pl *planner) material(d schedule.Down, planned *schedule.Job) (material.Material, bool) {
	if d.Content != nil { // the line says itself what the bag held
		return *d.Content, true
	}
	if d.Material != "" {
		for _, m := range append(slices.Clone(pl.site.Materials), material.TradeMaterials()...) {
			if m.ID == d.Material {
				return m, true
			}
		}
		return material.Material{}, false
	}
	if planned != nil {
		return planned.Dose.Material, true
	}
	var fit []material.Material
	for _, m := range pl.site.Materials {
		if d.Kind.ServedBy(m) {
			fit = append(fit, m)
		}
	}
	if len(fit) == 1 { // only one bag in the shed can have been meant
		return fit[0], true
	}
	return material.Material{}, false
}

// rateOf gives the rate of a line: from the amount that it gives, or its share of the
// planned rate.
func rateOf(d schedule.Done, m material.Material, a *schedule.Area, planned *schedule.Job) (agronomy.PerThousand, bool) {
	over := func(p agronomy.Pounds) agronomy.PerThousand {
		return agronomy.PerThousand(float64(p) * 1000 / float64(a.Size))
	}
	switch {
	case d.Weight > 0:
		return over(d.Weight), true
	case d.Volume > 0:
		p, ok := m.WeightOf(d.Volume)
		return over(p), ok
	case d.Packs > 0:
		p, ok := m.PackWeight()
		return over(p * agronomy.Pounds(d.Packs)), ok
	case planned == nil:
		return 0, false
	case d.Share > 0:
		return planned.Dose.Rate * agronomy.PerThousand(d.Share), true
	}
	return planned.Dose.Rate, true
}

// restShare is the share of the dose first planned from which a missing rest is worth a
// job: less is within what a person weighs out.
const restShare = 0.1 // [common]

// firstPlanned is the dose first planned of a job of which the plan may hold only the
// rest: that, and what is down of it.
func firstPlanned(l *life, d schedule.Down, planned *schedule.Job) agronomy.PerThousand {
	first := planned.Dose.Rate
	for _, o := range l.down.all {
		if planned.Rest && o.Presumed == nil && o.Kind == d.Kind && o.Season == d.Season && o.N == d.N {
			first += o.Dose.Rate
		}
	}
	return first
}

// rest gives what a line leaves of a job whose window is still open: the same job, with
// the part of its dose that is still missing; false if that is no job.
func (pl *planner) rest(l *life, d schedule.Down, planned *schedule.Job) (schedule.Job, bool) {
	if planned == nil || d.NotDone || d.Dose.Rate == 0 || planned.Dose.Rate == 0 || planned.Season != l.year {
		return schedule.Job{}, false
	}
	if d.Dose.Material.ID != planned.Dose.Material.ID {
		return schedule.Job{}, false // after another material the rules decide what is still missing
	}
	first := planned.Dose.Rate
	if d.Of > 0 { // the dose first planned, of which the plan may hold only the rest
		first = agronomy.PerThousand(float64(d.Of) * 1000 / float64(l.area.Size))
		if !planned.Rest {
			first = max(first, planned.Dose.Rate)
		}
	}
	left := planned.Dose.Rate - d.Dose.Rate
	w := planned.Window()
	if left < first*restShare || w.To.Before(d.Date) {
		return schedule.Job{}, false
	}
	j := *planned
	j.Dose, j.Rest = material.DoseOf(planned.Dose.Material, left), true
	j.On, j.Bound = schedule.Later(d.Date, planned.On), nil
	return j, true
}

// restOfSeed gives what a line leaves of an overseeding, whether or not its window is still
// open; false if that is no job. What is left of the stand's own sowing is dated with the
// sowings.
func restOfSeed(l *life, d schedule.Down, planned *schedule.Job) (schedule.Job, bool) {
	if planned == nil || d.NotDone || d.Kind != schedule.Overseed || planned.Season != l.year {
		return schedule.Job{}, false
	}
	left := cmp.Or(planned.Part, 1) - d.Part
	w := planned.Window()
	w.To = schedule.Later(w.To, schedule.Earlier(w.Last, l.ends)) // the crew had it on one day
	if left < schedule.LeastRest {
		return schedule.Job{}, false
	}
	j := *planned
	j.Part, j.Rest, j.Windows = left, true, []schedule.Window{w}
	j.On, j.Bound = schedule.Earlier(schedule.Later(d.Date, planned.On), w.To), nil
	return j, true
}

// noRest tells that what is left of a sowing has no day, and why.
func noRest(a *schedule.Area, k schedule.Kind, season, n int, left float64, why string, day schedule.Date) schedule.LeftOut {
	n++
	return schedule.LeftOut{ID: schedule.JobID(a.ID, k, season, n), Season: season, N: n, Kind: k, Area: a.ID, Date: day,
		Reason: word.Percent(left) + " of the seed is not down, and " + why + " " + day.Short(), Source: "common"}
}

// assume notes what a line is taken to mean.
func (pl *planner) assume(d schedule.Done, text string) {
	pl.notes = append(pl.notes, fmt.Sprintf("record book line %d: %s", d.Line, text))
}
