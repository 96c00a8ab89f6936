package schedule

import (
	"cmp"
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/nutrient"
)

// Plan makes the program of a site from its site file and its record book and
// from nothing else: the same input gives the same program, whatever the day.
//
// It works in stages. The place gives its year; a sowing still to come is dated
// first, as everything else in its area hangs on it; the record book is worked
// out line by line; each rule then proposes jobs with windows; and [place.Place] puts
// them on days. What finds no day is left out with the reason.
//
// The error is the place's: see [climate.PlaceErrors].
func Plan(site *Site, book []Done) (*Program, error) {
	return planWith(site, book, Kinds(), rules)
}

// planWith is Plan for any table of kinds and the rules that go with it.
func planWith(site *Site, book []Done, kinds kindTable, rules []rule) (*Program, error) {
	pl, err := readBook(site, book, kinds, rules)
	if err != nil {
		return nil, err
	}
	return pl.program(pl.settle(pl.book)), nil
}

// readBook does all of [Plan] that comes before the program itself.
func readBook(site *Site, book []Done, kinds kindTable, rules []rule) (*planner, error) {
	year, err := site.Place.Year()
	if err != nil {
		return nil, err
	}
	pl := &planner{site: site, kinds: kinds, rules: rules, almanac: newAlmanac(year, site.Start, site.Through), law: newLaw(site), sown: map[string]Date{}}
	pl.days = pl.workdays()
	pl.whole = Case{Site: site, almanac: pl.almanac, days: pl.days}
	pl.sow(book)
	pl.read(book)
	return pl, nil
}

// WorkedOut gives the material and the weight that a line of the record book
// brought to its area, as [Plan] reads it: none when the job spreads nothing, or
// when neither the line nor the plan tells. The error is the place's.
func WorkedOut(site *Site, book []Done, line int) (material string, down agronomy.Pounds, err error) {
	pl, err := readBook(site, book, Kinds(), rules)
	if err != nil {
		return "", 0, err
	}
	for _, d := range pl.book {
		if d.Line == line && d.taken == nil {
			return d.dose.Material.ID, d.dose.Rate.Over(site.area(d.area).Size), nil
		}
	}
	return "", 0, nil
}

// settle gathers every job and puts it on a day. A starter that finds none would
// bring what the other feedings leave to it: all is planned again without it.
func (pl *planner) settle(book []down) (proposal, *placement) {
	for pl.noStarter = (map[string]LeftOut{}); ; {
		found := pl.gather(book)
		days := pl.placeJobs(found.jobs)
		before := len(pl.noStarter)
		for _, c := range pl.cases {
			if l, out := pl.starterOut(c, found, days); out {
				pl.noStarter[c.Area.ID] = l
			}
		}
		if len(pl.noStarter) == before {
			return found, days
		}
	}
}

// starterOut tells why a starter that an area's feedings count on is left out.
func (pl *planner) starterOut(c *Case, found proposal, days *placement) (LeftOut, bool) {
	if !c.starterCounts {
		return LeftOut{}, false
	}
	mine := func(j Job) bool { return j.Kind == Starter && j.Area == c.Area }
	if i := slices.IndexFunc(found.jobs, mine); i >= 0 {
		if !days.has(i) {
			return pl.noDay(&found.jobs[i], days, i), true
		}
		return LeftOut{}, false
	}
	if i := slices.IndexFunc(found.left, func(l LeftOut) bool { return l.Kind == Starter && l.Area == c.Area.ID }); i >= 0 {
		return found.left[i], true
	}
	return LeftOut{}, false
}

// planned gives the jobs that follow from what is down. Without a starter to come
// they need no days to be known.
func (pl *planner) planned(book []down) []Job {
	pl.noStarter = nil
	found := pl.gather(book)
	if slices.ContainsFunc(pl.cases, func(c *Case) bool { return c.starterCounts }) {
		found, _ = pl.settle(book)
	}
	return found.jobs
}

// gather collects every job that follows from what is down: those that the
// rules propose, those on record, the sowings and the notices.
func (pl *planner) gather(book []down) proposal {
	found := pl.propose(book)
	found.add(pl.sowing)
	pl.recorded(&found)
	pl.notices(&found)
	found.assumed = append(found.assumed, pl.assumed...)
	return found
}

// read works the record book out, day by day. What was planned for a day
// before a line and is not on record by then is taken as done as planned: it
// keeps its day and counts, until a later line says otherwise.
func (pl *planner) read(lines []Done) {
	keeper := &bookkeeper{site: pl.site, kinds: pl.kinds, plan: pl.planned}
	lines = inOrder(lines)
	for i, l := range lines {
		if (i == 0 || l.Date != lines[i-1].Date) && l.Date.After(pl.site.Start) {
			keeper.book = pl.takenAsDone(keeper.book, l.Date)
		}
		keeper.read(l)
	}
	pl.book, pl.assumed = keeper.book, keeper.assumed
}

// takenAsDone adds to the book what was planned for days before d.
func (pl *planner) takenAsDone(book []down, d Date) []down {
	found, days := pl.settle(book)
	jobs := found.jobs
	for i := range jobs {
		j := jobs[i]
		if !days.has(i) || !j.On.IsZero() || j.Area == nil || j.Kind == Sow {
			continue
		}
		j.On = days.on(i)
		if j.On.Before(d) {
			j.bound = pl.boundBy(&j, days, i)
			book = append(book, down{Done: Done{Date: j.On}, area: j.Area.ID, kind: j.Kind, n: j.N, dose: j.Dose, taken: &j})
		}
	}
	return byDate(book)
}

// planner carries what the stages share.
type planner struct {
	site    *Site
	kinds   kindTable
	rules   []rule
	almanac *almanac
	days    []workday
	law     *siteLaw
	book    []down
	cases   []*Case
	whole   Case            // for what is nobody's area: the notices
	sown    map[string]Date // areas still to be sown: the day, unset if none was found
	sowing  proposal        // the sow jobs, with their day in On
	assumed []string        // about the record book

	noStarter map[string]LeftOut // areas whose starter finds no day, see settle
}

// usualJobs is about what one area gets in a year; more only costs time.
const usualJobs = 8

// propose asks every rule about every area.
func (pl *planner) propose(book []down) proposal {
	all := proposal{jobs: make([]Job, 0, usualJobs*len(pl.site.Areas)), assumed: pl.site.notPlanned()}
	pl.cases = pl.cases[:0]
	sh := newShed(pl.site, book)
	for i := range pl.site.Areas {
		c := pl.newCase(&pl.site.Areas[i], book, sh)
		if day, ok := pl.sown[c.Area.ID]; ok {
			c.seeded, c.noStand = day, day.IsZero()
		}
		c.noStarter = pl.noStarter[c.Area.ID]
		c.seedlings = nutrient.SeedlingsOf(c.Area.Stand)
		c.needP, c.noP = nutrient.PhosphorusNeed(c.report, c.Place.State, c.future())
		c.asked = c.question(Date{})
		p := treat(c, pl.rules)
		c.needs, c.yearly, c.starterCounts = p.needs, p.yearly, p.starter
		all.add(p)
		pl.cases = append(pl.cases, c)
		for _, a := range c.Area.Assumed {
			all.assumed = append(all.assumed, a.Text)
		}
		if why, mixed := c.Area.Stand.Mixed(); mixed {
			all.assumed = append(all.assumed, c.Area.Name+": "+why.Text)
		}
	}
	return all
}

// sow dates the sowings that are still to come.
func (pl *planner) sow(book []Done) {
	for _, d := range book { // a sowing on record is the day
		area, k, _, err := pl.kinds.jobName(d.Job)
		if a := pl.site.area(cmp.Or(d.Area, area)); err == nil && k == Sow && a != nil && !d.Missed {
			pl.sown[a.ID] = d.Date
		}
	}
	coming := func(a *Area) bool {
		_, done := pl.sown[a.ID]
		return !done && !a.Seeded.IsZero() && !a.Seeded.Before(pl.site.Start)
	}
	areas := pl.site.Areas
	if !slices.ContainsFunc(areas, func(a Area) bool { return coming(&a) }) {
		return
	}
	var jobs []Job
	for i := range areas {
		c := pl.newCase(&areas[i], nil, newShed(pl.site, nil))
		pl.cases = append(pl.cases, c)
		if coming(c.Area) {
			pl.sown[c.Area.ID] = Date{}
			p := sowJobs(&treatment{Case: c})
			pl.sowing.left = append(pl.sowing.left, p.left...)
			jobs = append(jobs, p.jobs...)
		}
	}
	days := pl.placeJobs(jobs)
	for i := range jobs {
		j := &jobs[i]
		if !days.has(i) {
			pl.sowing.left = append(pl.sowing.left, pl.noDay(j, days, i))
			continue
		}
		j.On = days.on(i)
		pl.sown[j.Area.ID] = j.On
		if wish := j.Area.Seeded; j.On != wish {
			j.Why = append(j.Why, Reason{Text: fmt.Sprintf("the site file asks for %s; %s", wish.Short(), cmp.Or(j.window().Carried, "the nearest day that holds is "+j.On.Short()))})
		}
		pl.sowing.jobs = append(pl.sowing.jobs, *j)
	}
}

// recorded adds the jobs of the record book and drops those they settle. Of
// several under one id the last counts.
func (pl *planner) recorded(p *proposal) {
	var jobs []Job
	last := map[string]int{} // where the job that counts stands in jobs
	for _, c := range pl.cases {
		for _, j := range c.recordedJobs() {
			last[j.ID()] = len(jobs)
			jobs = append(jobs, j)
		}
	}
	p.jobs = slices.DeleteFunc(p.jobs, func(o Job) bool {
		_, settled := last[o.ID()]
		return settled
	})
	for i, j := range jobs {
		if last[j.ID()] == i {
			p.jobs = append(p.jobs, j)
		}
	}
}
