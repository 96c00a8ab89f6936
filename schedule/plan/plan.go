package plan

import (
	"cmp"
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
	scrule "swardbook/schedule/rule"
)

// Program makes the program of a site from its site file and its record book and
// from nothing else: the same input gives the same program, whatever the day.
//
// It works in stages. The place gives its year; a sowing still to come is dated
// first, as everything else in its area hangs on it; the record book is worked
// out line by line; each rule then proposes jobs with windows; and [place.Place] puts
// them on days. What finds no day is left out with the reason.
//
// The error is the place's: see [climate.PlaceErrors].
func Program(site *schedule.Site, book []schedule.Done) (*schedule.Program, error) {
	return With(site, book, schedule.Kinds(), scrule.All)
}

// With is [Program] for any table of kinds and the rules that go with it.
func With(site *schedule.Site, book []schedule.Done, kinds schedule.KindTable, rules []scrule.Rule) (*schedule.Program, error) {
	pl, err := readBook(site, book, kinds, rules)
	if err != nil {
		return nil, err
	}
	return pl.program(pl.settle(pl.book)), nil
}

// readBook does all of [Program] that comes before the program itself.
func readBook(site *schedule.Site, book []schedule.Done, kinds schedule.KindTable, rules []scrule.Rule) (*planner, error) {
	year, err := site.Place.Year()
	if err != nil {
		return nil, err
	}
	pl := &planner{site: site, kinds: kinds, rules: rules, almanac: schedule.NewAlmanac(year, site.Start, site.Through), law: schedule.NewLaw(site), sown: map[string]schedule.Date{}}
	pl.days = pl.workdays()
	pl.whole = schedule.Case{Site: site, Almanac: pl.almanac, Days: pl.days}
	pl.sow(book)
	pl.read(book)
	return pl, nil
}

// WorkedOut gives the material and the weight that a line of the record book
// brought to its area, as [Program] reads it: none when the job spreads nothing, or
// when neither the line nor the plan tells. The error is the place's.
func WorkedOut(site *schedule.Site, book []schedule.Done, line int) (material string, down agronomy.Pounds, err error) {
	pl, err := readBook(site, book, schedule.Kinds(), scrule.All)
	if err != nil {
		return "", 0, err
	}
	for _, d := range pl.book {
		if d.Line == line && d.Presumed == nil {
			return d.Dose.Material.ID, d.Dose.Rate.Over(site.Area(d.AreaID).Size), nil
		}
	}
	return "", 0, nil
}

// settle gathers every job and puts it on a day. A starter that finds none would
// bring what the other feedings leave to it: all is planned again without it.
func (pl *planner) settle(book []schedule.Down) (schedule.Proposal, *placement) {
	for pl.noStarter = (map[string]schedule.LeftOut{}); ; {
		found := pl.gather(book)
		days := pl.placeJobs(found.Jobs)
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
func (pl *planner) starterOut(c *schedule.Case, found schedule.Proposal, days *placement) (schedule.LeftOut, bool) {
	if !c.StarterCounts {
		return schedule.LeftOut{}, false
	}
	mine := func(j schedule.Job) bool { return j.Kind == schedule.Starter && j.Area == c.Area }
	if i := slices.IndexFunc(found.Jobs, mine); i >= 0 {
		if !days.has(i) {
			return pl.noDay(&found.Jobs[i], days, i), true
		}
		return schedule.LeftOut{}, false
	}
	if i := slices.IndexFunc(found.Left, func(l schedule.LeftOut) bool { return l.Kind == schedule.Starter && l.Area == c.Area.ID }); i >= 0 {
		return found.Left[i], true
	}
	return schedule.LeftOut{}, false
}

// planned gives the jobs that follow from what is down. Without a starter to come
// they need no days to be known.
func (pl *planner) planned(book []schedule.Down) []schedule.Job {
	pl.noStarter = nil
	found := pl.gather(book)
	if slices.ContainsFunc(pl.cases, func(c *schedule.Case) bool { return c.StarterCounts }) {
		found, _ = pl.settle(book)
	}
	return found.Jobs
}

// gather collects every job that follows from what is down: those that the
// rules propose, those on record, the sowings and the notices.
func (pl *planner) gather(book []schedule.Down) schedule.Proposal {
	found := pl.propose(book)
	found.Add(pl.sowing)
	pl.recorded(&found)
	pl.notices(&found)
	found.Assumed = append(found.Assumed, pl.assumed...)
	return found
}

// read works the record book out, day by day. What was planned for a day
// before a line and is not on record by then is taken as done as planned: it
// keeps its day and counts, until a later line says otherwise.
func (pl *planner) read(lines []schedule.Done) {
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
func (pl *planner) takenAsDone(book []schedule.Down, d schedule.Date) []schedule.Down {
	found, days := pl.settle(book)
	jobs := found.Jobs
	for i := range jobs {
		j := jobs[i]
		if !days.has(i) || !j.On.IsZero() || j.Area == nil || j.Kind == schedule.Sow {
			continue
		}
		j.On = days.on(i)
		if j.On.Before(d) {
			j.Bound = pl.boundBy(&j, days, i)
			book = append(book, schedule.Down{Done: schedule.Done{Date: j.On}, AreaID: j.Area.ID, Kind: j.Kind, N: j.N, Dose: j.Dose, Presumed: &j})
		}
	}
	return byDate(book)
}

// planner carries what the stages share.
type planner struct {
	site    *schedule.Site
	kinds   schedule.KindTable
	rules   []scrule.Rule
	almanac *schedule.Almanac
	days    []schedule.Workday
	law     *schedule.SiteLaw
	book    []schedule.Down
	cases   []*schedule.Case
	whole   schedule.Case            // for what is nobody's area: the notices
	sown    map[string]schedule.Date // areas still to be sown: the day, unset if none was found
	sowing  schedule.Proposal        // the sow jobs, with their day in On
	assumed []string                 // about the record book

	noStarter map[string]schedule.LeftOut // areas whose starter finds no day, see settle
}

// usualJobs is about what one area gets in a year; more only costs time.
const usualJobs = 8

// propose asks every rule about every area.
func (pl *planner) propose(book []schedule.Down) schedule.Proposal {
	all := schedule.Proposal{Jobs: make([]schedule.Job, 0, usualJobs*len(pl.site.Areas)), Assumed: pl.site.NotPlanned()}
	pl.cases = pl.cases[:0]
	sh := schedule.NewShed(pl.site, book)
	for i := range pl.site.Areas {
		c := pl.newCase(&pl.site.Areas[i], book, sh)
		if day, ok := pl.sown[c.Area.ID]; ok {
			c.Seeded, c.NoStand = day, day.IsZero()
		}
		c.NoStarter = pl.noStarter[c.Area.ID]
		c.Seedlings = nutrient.SeedlingsOf(c.Area.Stand)
		c.NeedP, c.NoP = nutrient.PhosphorusNeed(c.Report, c.Place.State, c.Future())
		c.Asked = c.Question(schedule.Date{})
		p := scrule.Propose(c, pl.rules)
		c.Needs, c.Yearly, c.StarterCounts = p.Needs, p.Yearly, p.Starter
		all.Add(p)
		pl.cases = append(pl.cases, c)
		for _, a := range c.Area.Assumed {
			all.Assumed = append(all.Assumed, a.Text)
		}
		if why, mixed := c.Area.Stand.Mixed(); mixed {
			all.Assumed = append(all.Assumed, c.Area.Name+": "+why.Text)
		}
	}
	return all
}

// sow dates the sowings that are still to come.
func (pl *planner) sow(book []schedule.Done) {
	for _, d := range book { // a sowing on record is the day
		area, k, _, err := pl.kinds.JobName(d.Job)
		if a := pl.site.Area(cmp.Or(d.Area, area)); err == nil && k == schedule.Sow && a != nil && !d.Missed {
			pl.sown[a.ID] = d.Date
		}
	}
	coming := func(a *schedule.Area) bool {
		_, done := pl.sown[a.ID]
		return !done && !a.Seeded.IsZero() && !a.Seeded.Before(pl.site.Start)
	}
	areas := pl.site.Areas
	if !slices.ContainsFunc(areas, func(a schedule.Area) bool { return coming(&a) }) {
		return
	}
	var jobs []schedule.Job
	for i := range areas {
		c := pl.newCase(&areas[i], nil, schedule.NewShed(pl.site, nil))
		pl.cases = append(pl.cases, c)
		if coming(c.Area) {
			pl.sown[c.Area.ID] = schedule.Date{}
			p := scrule.Sow(&scrule.Treatment{Case: c})
			pl.sowing.Left = append(pl.sowing.Left, p.Left...)
			jobs = append(jobs, p.Jobs...)
		}
	}
	days := pl.placeJobs(jobs)
	for i := range jobs {
		j := &jobs[i]
		if !days.has(i) {
			pl.sowing.Left = append(pl.sowing.Left, pl.noDay(j, days, i))
			continue
		}
		j.On = days.on(i)
		pl.sown[j.Area.ID] = j.On
		if words := scrule.SowingWords(pl.caseOf(j.Area), j); words != "" {
			j.Summary += " " + words
		}
		if wish := j.Area.Seeded; j.On != wish {
			j.Why = append(j.Why, schedule.Reason{Text: fmt.Sprintf("the site file asks for %s; %s", wish.Short(), cmp.Or(j.Window().Carried, "the nearest day that holds is "+j.On.Short()))})
		}
		pl.sowing.Jobs = append(pl.sowing.Jobs, *j)
	}
}

// recorded adds the jobs of the record book and drops those they settle. Of
// several under one id the last counts.
func (pl *planner) recorded(p *schedule.Proposal) {
	var jobs []schedule.Job
	last := map[string]int{} // where the job that counts stands in jobs
	for _, c := range pl.cases {
		for _, j := range c.RecordedJobs() {
			last[j.ID()] = len(jobs)
			jobs = append(jobs, j)
		}
	}
	p.Jobs = slices.DeleteFunc(p.Jobs, func(o schedule.Job) bool {
		_, settled := last[o.ID()]
		return settled
	})
	for i, j := range jobs {
		if last[j.ID()] == i {
			p.Jobs = append(p.Jobs, j)
		}
	}
}
