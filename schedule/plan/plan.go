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

// Program makes the program of a site through a last day from its site file and
// its record book and from nothing else: the same input gives the same program,
// whatever the day. A site with a last day of its own ends there; without one the
// caller's counts, see [Through].
//
// Each area is planned a season at a time, and in a season from one event to the
// next: a day on record, the answer to a soil sample, the season's end. What was
// planned for days before the event counts as down from then on; then the event is
// read, and what is left of the season is planned anew. So nothing that comes later
// changes what came before, and a later last day moves no earlier entry.
//
// The error is the place's: see [climate.PlaceErrors].
func Program(site *schedule.Site, book []schedule.Done, last schedule.Date) (*schedule.Program, error) {
	return With(site, book, last, schedule.Kinds(), scrule.All)
}

// With is [Program] for any table of kinds and the rules that go with it.
func With(site *schedule.Site, book []schedule.Done, last schedule.Date, kinds schedule.KindTable, rules []scrule.Rule) (*schedule.Program, error) {
	pl, err := newPlanner(site, book, last, kinds, rules)
	if err != nil {
		return nil, err
	}
	pl.live(book)
	return pl.program(), nil
}

// Through gives the last day of a program that is asked for on a day: the site's
// own, else the end of the season after the one that holds the day, for the area whose
// season ends last, so that at least a year lies ahead. It is no last safe day: that is
// the climate's, see [climate.Year.Ground].
func Through(site *schedule.Site, today schedule.Date) (schedule.Date, error) {
	if !site.Through.IsZero() {
		return site.Through, nil
	}
	year, err := site.Year()
	if err != nil {
		return schedule.Date{}, err
	}
	return lastDay(site, schedule.NewAlmanac(year, site.Start, site.Start), today), nil
}

func lastDay(site *schedule.Site, a *schedule.Almanac, today schedule.Date) schedule.Date {
	last := schedule.Date{}
	for _, area := range site.Areas {
		s := area.Stand.Season()
		begun := schedule.Later(site.Start, area.Seeded)
		y := max(a.TurfYear(today, s), a.SeasonOf(begun, s))
		last = schedule.Later(last, a.YearBegins(y+2, s).AddDays(-1))
	}
	return last
}

// planner is one run of [Program]: what its steps share.
type planner struct {
	site    *schedule.Site
	kinds   schedule.KindTable
	rules   []scrule.Rule
	almanac *schedule.Almanac
	last    schedule.Date
	days    []schedule.Workday // every day from the site's start on
	law     *schedule.SiteLaw
	lives   []*life                    // of the areas, in the order of the file
	used    map[string]float64         // the packs of each material, by its id, that are down or presumed so
	sown    map[string]schedule.Date   // of each area with a sowing, on record or to come: its day, unset if none was found
	resown  map[string][]schedule.Date // of each area sown in parts: the days of the other parts, on record or to come
	sowing  schedule.Proposal          // the sowings to come, with their day in On
	notes   []string                   // about the record book
	found   struct {                   // what the placing found, over all seasons
		contested, stopped bool
	}

	cases     []*schedule.Case            // of the areas that are being planned
	noStarter map[string]schedule.LeftOut // of each area whose starter finds no day: why, see settle
	limeLate  map[string]bool             // the areas of which no lime finds a day before the sowing, see settle
	overseeds map[string]schedule.Date    // of each area whose overseeding has not its best day: the day, see settle
	noFeeding map[string]map[int]int      // of each area: how many doses of a feeding's season, by its number, found no day, see settle
	noLate    map[string]string           // of each area whose late dose finds no day: why, see settle
}

// newPlanner sets up a run. The almanac and the days must reach beyond the last day of
// the program: to the end of the season of any line, sample or sowing.
func newPlanner(site *schedule.Site, book []schedule.Done, last schedule.Date, kinds schedule.KindTable, rules []scrule.Rule) (*planner, error) {
	year, err := site.Year()
	if err != nil {
		return nil, err
	}
	pl := &planner{site: site, kinds: kinds, rules: rules, law: schedule.NewLaw(site), used: map[string]float64{}, sown: map[string]schedule.Date{}, resown: map[string][]schedule.Date{}}
	pl.almanac = schedule.NewAlmanac(year, site.Start, site.Start)
	if pl.last = last; !site.Through.IsZero() {
		pl.last = site.Through
	} else if last.Before(site.Start) {
		pl.last = lastDay(site, pl.almanac, site.Start)
	}
	latest := pl.last // a line or a sample may lie after the last day
	for i := range book {
		latest = schedule.Later(latest, book[i].Date)
	}
	for i := range site.Areas {
		for _, r := range site.Areas[i].AllReports() {
			latest = schedule.Later(latest, r.Sampled)
		}
	}
	horizon := latest
	for i := range site.Areas {
		a := &site.Areas[i]
		s := a.Stand.Season()
		for _, day := range []schedule.Date{latest, a.Seeded} {
			horizon = schedule.Later(horizon, pl.almanac.YearBegins(pl.almanac.SeasonOf(schedule.Later(site.Start, day), s)+1, s))
		}
	}
	pl.almanac = pl.almanac.To(horizon)
	pl.days = pl.workdays(horizon.AddDays(sowAhead))
	return pl, nil
}

// sowAhead is for how many days after the wished one a sowing is looked for, so that all
// windows of a year come round.
const sowAhead = 400 // [common]

// anotherSowing is from how many days after a sowing on record the day that the site file
// asks for is another sowing.
const anotherSowing = 120 // [common]

// sow dates the sowings that are still to come.
func (pl *planner) sow(book []schedule.Done) {
	left := pl.sownOn(book)
	coming := func(a *schedule.Area) bool {
		day, done := pl.sown[a.ID]
		for _, d := range pl.resown[a.ID] {
			day = schedule.Later(day, d)
		}
		anew := done && a.Seeded.DaysFrom(day) > anotherSowing
		return (!done || anew) && !a.Seeded.IsZero() && !a.Seeded.Before(pl.site.Start)
	}
	for i := range pl.site.Areas {
		if a := &pl.site.Areas[i]; left[a.ID] >= schedule.LeastRest && !coming(a) {
			pl.sowRest(a, left[a.ID])
		}
	}
	var jobs []schedule.Job
	pl.cases = nil
	for i := range pl.site.Areas {
		a := &pl.site.Areas[i]
		if !coming(a) {
			continue
		}
		c := pl.newCase(&life{area: a, year: pl.almanac.SeasonOf(a.Seeded, a.Stand.Season())}, schedule.NewShed(pl.site, nil))
		c.Start, c.Begins, c.Through, c.Opens = pl.site.Start, pl.site.Start, a.Seeded.AddDays(sowAhead), startOpens
		c.Days = pl.days
		pl.cases = append(pl.cases, c)
		if day, before := pl.sown[a.ID]; before {
			pl.notes = append(pl.notes, fmt.Sprintf("%s was sown on %s; the site file asks for another sowing on %s, so it is planned", a.Name, day.Short(), a.Seeded.Short()))
		}
		pl.sown[a.ID], pl.resown[a.ID] = schedule.Date{}, nil
		p := scrule.Sow(&scrule.Treatment{Case: c})
		pl.name(c, &p)
		pl.sowing.Left = append(pl.sowing.Left, p.Left...)
		jobs = append(jobs, p.Jobs...)
	}
	if len(pl.cases) == 0 {
		return
	}
	days := pl.placeJobs(jobs, nil)
	for i := range jobs {
		j := &jobs[i]
		if !days.has(i) {
			pl.sowing.Left = append(pl.sowing.Left, pl.noDay(j, days, i))
			continue
		}
		j.Bound = pl.bound(j, days, i)
		pl.sown[j.Area.ID] = j.On
		j.Season = pl.almanac.SeasonOf(j.On, j.Area.Stand.Season())
		c := pl.cases[slices.IndexFunc(pl.cases, func(c *schedule.Case) bool { return c.Area.ID == j.Area.ID })]
		if words := scrule.SowingWords(c, j); words != "" {
			j.Summary += " " + words
			if w := j.Window(); w.Carried != "" {
				pl.sowing.Assumed = append(pl.sowing.Assumed, fmt.Sprintf("%s: the sowing is %s; it moves to %s", j.Area.Name, w.Carried, j.On.Short()))
			} else if scrule.SownAsAsked(j) {
				pl.sowing.Assumed = append(pl.sowing.Assumed, fmt.Sprintf("%s: the day of the sowing is the one asked for. %s", j.Area.Name, words))
			}
		}
		if wish := j.Area.Seeded; j.On != wish {
			j.Why = append(j.Why, schedule.Reason{Text: fmt.Sprintf("the site file asks for %s; %s", wish.Short(), cmp.Or(j.Window().Carried, "the nearest possible day is "+j.On.Short()))})
		}
		pl.sowing.Jobs = append(pl.sowing.Jobs, *j)
	}
}

// bound puts a placed job on its day, and says what kept it from a better one.
func (pl *planner) bound(j *schedule.Job, days *placement, i int) []string {
	j.On = days.on(i)
	return pl.boundBy(j, days, i)
}

// settle has the rules propose the jobs of some areas, and puts them on days. The other
// feedings are planned without what a starter brings; if the starter then finds no day,
// everything is proposed again without it. The same is done where an overseeding gets
// another day than the one that its starter and feedings were proposed for, where no lime
// finds a day before a sowing, and where a feeding or the late dose finds no day: then the
// season's nitrogen is shared out anew among fewer doses. An area that gets less nitrogen
// by that is planned as at first, and what finds no day there is left out.
func (pl *planner) settle(lives []*life) (schedule.Proposal, *placement) {
	pl.noStarter, pl.overseeds, pl.limeLate = map[string]schedule.LeftOut{}, map[string]schedule.Date{}, map[string]bool{}
	pl.noFeeding, pl.noLate = map[string]map[int]int{}, map[string]string{}
	fewer := map[string]agronomy.PerThousand{} // of the areas whose doses became fewer: the nitrogen before
	final := map[string]bool{}                 // the areas whose doses stay as they are
	for {
		found := pl.propose(lives)
		days := pl.placeJobs(found.Jobs, lives)
		before := len(pl.noStarter)
		for _, c := range pl.cases {
			if l, out := pl.starterOut(c, found, days); out {
				pl.noStarter[c.Area.ID] = l
			}
		}
		late := pl.limesLate(found, days)
		moved := pl.overseedsMove(found, days)
		if late || moved || len(pl.noStarter) > before {
			clear(fewer)
			continue
		}
		brings := nitrogen(found, days)
		again := false
		for area, n := range fewer {
			if brings[area] < n-schedule.Dust {
				delete(pl.noFeeding, area)
				delete(pl.noLate, area)
				final[area], again = true, true
			}
		}
		clear(fewer)
		if !again {
			for _, area := range pl.feedingsOut(found, days, final) {
				fewer[area], again = brings[area], true
			}
		}
		if !again {
			return found, days
		}
	}
}

// nitrogen sums what the jobs with a day bring each area.
func nitrogen(found schedule.Proposal, days *placement) map[string]agronomy.PerThousand {
	sum := map[string]agronomy.PerThousand{}
	for i := range found.Jobs {
		if days.has(i) {
			sum[found.Jobs[i].AreaID()] += found.Jobs[i].Dose.N
		}
	}
	return sum
}

// feedingsOut notes the feedings and late doses that found no day, but in the areas that
// are final, and gives the areas in which there are such.
func (pl *planner) feedingsOut(found schedule.Proposal, days *placement, final map[string]bool) (areas []string) {
	for i := range found.Jobs {
		j := &found.Jobs[i]
		area := j.AreaID()
		if j.Rest || days.has(i) || final[area] {
			continue
		}
		switch j.Kind {
		case schedule.Nitrogen:
			if pl.noFeeding[area] == nil {
				pl.noFeeding[area] = map[int]int{}
			}
			pl.noFeeding[area][j.N]++
		case schedule.LateNitrogen:
			days.trial = true
			pl.noLate[area] = pl.noDay(j, days, i).Reason
		default:
			continue
		}
		if !slices.Contains(areas, area) {
			areas = append(areas, area)
		}
	}
	return areas
}

// overseedsMove notes the day of each overseeding that is not on the day that its area
// was planned for, and tells whether there is one. A day is noted once for each area.
func (pl *planner) overseedsMove(found schedule.Proposal, days *placement) (moved bool) {
	for i := range found.Jobs {
		j := &found.Jobs[i]
		if j.Kind != schedule.Overseed || !days.has(i) {
			continue
		}
		_, noted := pl.overseeds[j.AreaID()]
		if c := pl.caseOf(j.Area); !noted && !slices.Contains(c.Oversown, days.on(i)) {
			pl.overseeds[j.AreaID()], moved = days.on(i), true
		}
	}
	return moved
}

// limesLate notes the areas of which no lime finds a day before the sowing, and tells
// whether there is one. Once noted, the lime of an area is for the turf.
func (pl *planner) limesLate(found schedule.Proposal, days *placement) (late bool) {
	for _, c := range pl.cases {
		limes, placed := 0, 0
		for i := range found.Jobs {
			if j := &found.Jobs[i]; j.Kind == schedule.Lime && j.Tilled && !j.Rest && j.Area == c.Area {
				limes++
				if days.has(i) && !days.on(i).After(c.Seeded) {
					placed++
				}
			}
		}
		if limes > 0 && placed == 0 {
			pl.limeLate[c.Area.ID], late = true, true
		}
	}
	return late
}

// starterOut tells why a starter is left out that an area's other feedings were planned
// beside; false if none is.
func (pl *planner) starterOut(c *schedule.Case, found schedule.Proposal, days *placement) (schedule.LeftOut, bool) {
	if !c.StarterCounts {
		return schedule.LeftOut{}, false
	}
	for i := range found.Jobs {
		if j := &found.Jobs[i]; j.Kind == schedule.Starter && j.Area == c.Area && !days.has(i) {
			days.trial = true
			return pl.noDay(j, days, i), true
		}
	}
	if i := slices.IndexFunc(found.Left, func(l schedule.LeftOut) bool { return l.Kind == schedule.Starter && l.Area == c.Area.ID }); i >= 0 {
		return found.Left[i], true
	}
	return schedule.LeftOut{}, false
}

// usualJobs is about how many jobs one area gets in a year. It only sizes a slice.
const usualJobs = 8

// propose makes the cases of some areas, each in its season, and asks every rule about
// them.
func (pl *planner) propose(lives []*life) schedule.Proposal {
	all := schedule.Proposal{Jobs: make([]schedule.Job, 0, usualJobs*len(lives))}
	pl.cases = pl.cases[:0:0]
	sh := schedule.NewShed(pl.site, pl.packs(lives))
	for _, l := range lives {
		c := pl.newCase(l, sh)
		if day, ok := pl.sown[c.Area.ID]; ok {
			c.Seeded, c.NoStand = day, day.IsZero()
		}
		c.NoStarter, c.OverseedOn = pl.noStarter[c.Area.ID], pl.overseeds[c.Area.ID]
		c.NoFeeding, c.NoLate = pl.noFeeding[c.Area.ID], pl.noLate[c.Area.ID]
		c.LimeLate = pl.limeLate[c.Area.ID]
		c.Seedlings = nutrient.SeedlingsOf(c.Area.Stand)
		c.NeedP, c.NoP = nutrient.PhosphorusNeed(c.Report, c.Place.State, c.Future())
		c.Asked = c.Question(schedule.Date{})
		p := scrule.Propose(c, pl.rules)
		pl.name(c, &p)
		c.Needs, c.Yearly, c.StarterCounts, c.Notes, c.InShed = p.Needs, p.Yearly, p.Starter, p.Assumed, p.Shed
		p.Jobs = append(p.Jobs, l.rests(c)...)
		all.Add(p)
		pl.cases = append(pl.cases, c)
	}
	return all
}

// name gives the jobs that the rules proposed in a case their season, and what they left
// out an id.
func (pl *planner) name(c *schedule.Case, p *schedule.Proposal) {
	for i := range p.Jobs {
		p.Jobs[i].Season = c.Year
	}
	for i := range p.Left {
		l := &p.Left[i]
		l.Season, l.Date, l.ID = c.Year, c.Start, schedule.JobID(c.Area.ID, l.Kind, c.Year, l.N)
	}
}
