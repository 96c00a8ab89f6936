package plan

import (
	"cmp"
	"maps"
	"slices"

	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
	scrule "swardbook/schedule/rule"
)

// life is one area on its way through the seasons. It stands at the day of the last event:
// what is down so far, what is planned for the rest of the season, what is known of the
// soil.
type life struct {
	area    *schedule.Area        // as the site file has it
	reports []schedule.SoilReport // all of the site file, by sampling day
	known   int                   // how many of them have been answered so far
	year    int                   // the season, named by the year it begins
	begins  schedule.Date         // first day of the season, or of the program
	ends    schedule.Date         // last day of the season
	from    schedule.Date         // first day on which anything new may be placed
	opens   string                // what that day is, in words
	told    []schedule.Date       // the days of lines and answers, in order of time
	down    downs
	planned []schedule.Job     // with their days, none before from
	left    []schedule.LeftOut // of this season
	closed  []schedule.LeftOut // of the seasons before
	now     *schedule.Case     // the case of the last plan
	shown   *schedule.Case     // the case of the last plan that a line, an answer or the start led to, which the program shows
	all     []*schedule.Case   // the cases of all plans
}

// What the day from which a plan runs is, in words.
const (
	startOpens  = "start of the program"
	seasonOpens = "the season begins"
	lineOpens   = "the last line on record"
	answerOpens = "the answer to the soil sample"
	staleOpens  = "the soil report is three years old"
)

// live goes through the events of all areas in order of time.
func (pl *planner) live(book []schedule.Done) {
	pl.sow(book)
	for i := range pl.site.Areas {
		pl.lives = append(pl.lives, pl.begin(&pl.site.Areas[i]))
	}
	lines := inOrder(append(slices.Clip(book), pl.samples(book)...))
	for len(lines) > 0 && lines[0].Date.Before(pl.site.Start) {
		pl.line(lines[0])
		lines = lines[1:]
	}
	for _, l := range pl.lives {
		for l.known < len(l.reports) && !l.reports[l.known].Answer().After(pl.site.Start) {
			l.known++
		}
	}
	pl.plan(pl.lives)
	horizon := pl.last
	if len(lines) > 0 {
		horizon = schedule.Later(horizon, lines[len(lines)-1].Date)
	}
	for {
		next := horizon.Next()
		if len(lines) > 0 {
			next = lines[0].Date
		}
		for _, l := range pl.lives {
			next = schedule.Earlier(next, l.ends.Next())
			if l.known < len(l.reports) {
				next = schedule.Earlier(next, l.reports[l.known].Answer())
			}
			if day, ok := l.stale(); ok {
				next = schedule.Earlier(next, day)
			}
		}
		if next.After(horizon) {
			break
		}
		pl.turn(next, nil) // the season's end and the answer come first, so that lines of the same day are read against the new plan
		n := 0
		for n < len(lines) && lines[n].Date == next {
			n++
		}
		pl.turn(next, lines[:n])
		lines = lines[n:]
	}
}

// stale gives the day on which the report in force will be too old to plan by; false if
// there is no report, or that day is past.
func (l *life) stale() (schedule.Date, bool) {
	if l.known == 0 || l.reports[l.known-1].Sampled.IsZero() {
		return schedule.Date{}, false
	}
	day := l.reports[l.known-1].Sampled.AddMonths(schedule.StaleAfter)
	return day, day.After(l.from)
}

// begin gives the life of an area as it stands on the first day of the program.
func (pl *planner) begin(a *schedule.Area) *life {
	l := &life{area: a, down: newDowns(), reports: a.AllReports(), from: pl.site.Start, begins: pl.site.Start, opens: startOpens}
	season := a.Stand.Season()
	begun := schedule.Later(pl.site.Start, a.Seeded)
	if day := pl.sown[a.ID]; !day.IsZero() {
		begun = schedule.Later(pl.site.Start, day)
	}
	l.year = pl.almanac.SeasonOf(begun, season)
	l.ends = pl.almanac.YearBegins(l.year+1, season).AddDays(-1)
	return l
}

// turn takes the areas to which something happens on a day forward to that day, and plans
// what is left of their season anew. An area whose lines only say that jobs were done as
// planned keeps its plan.
func (pl *planner) turn(day schedule.Date, lines []schedule.Done) {
	var turned []*life
	anew := map[*life]bool{} // the areas to be planned anew
	for _, l := range pl.lives {
		ended := l.ends.Before(day)
		answered := l.known < len(l.reports) && !l.reports[l.known].Answer().After(day)
		threeYears, aged := l.stale()
		aged = aged && !threeYears.After(day)
		told := slices.ContainsFunc(lines, func(d schedule.Done) bool { return pl.areaOf(d) == l.area.ID })
		if !ended && !answered && !told && !aged {
			continue
		}
		anew[l] = ended || answered || aged
		pl.freeze(l, day, ended)
		l.from = day
		if ended {
			season := l.area.Stand.Season()
			l.closed, l.left = append(l.closed, l.left...), nil
			l.year++
			l.begins, l.ends, l.opens = l.ends.Next(), pl.almanac.YearBegins(l.year+1, season).AddDays(-1), seasonOpens
		}
		if aged {
			l.opens = staleOpens
		}
		if answered {
			l.known++
			l.opens = answerOpens
		}
		if told {
			l.opens = lineOpens
		}
		if answered || told {
			l.told = append(l.told, day)
		}
	}
	for _, d := range lines {
		if l := pl.life(pl.areaOf(d)); pl.line(d) {
			anew[l] = true
		}
	}
	for _, l := range pl.lives {
		if anew[l] {
			turned = append(turned, l)
		}
	}
	if len(turned) > 0 {
		pl.plan(turned)
	}
}

// freeze makes what was planned for days before a given one count as down. The rest of a
// job done in part never does: it stays planned until its window closes, or the season
// ends; what is then still missing joins the next dressing, or is seed that was missed.
func (pl *planner) freeze(l *life, day schedule.Date, ended bool) {
	var ahead []schedule.Job
	for i := range l.planned {
		j := &l.planned[i]
		switch {
		case j.Rest && !ended && !j.Window().To.Before(day):
			ahead = append(ahead, *j)
		case j.Rest && !ended && !j.Kind.Sows():
		case j.On.Before(day):
			pl.presume(l, j)
		default:
			ahead = append(ahead, *j)
		}
	}
	l.planned = ahead
}

// presume counts a job as down that is not on record; the rest of one is not done.
func (pl *planner) presume(l *life, j *schedule.Job) {
	pl.put(l, schedule.Down{Done: schedule.Done{Date: j.On}, AreaID: j.Area.ID, Kind: j.Kind, Season: j.Season, N: j.N, Dose: j.Dose, Presumed: j, NotDone: j.Rest})
}

// over tells whether a job that is presumed done is no longer due, as a line or an answer
// of its area came after its day. The rest of a job done in part stays due until its window
// closes.
func (l *life) over(j *schedule.Job) bool {
	due := j.On
	if j.Rest {
		due = schedule.Later(due, j.Window().To)
	}
	return slices.ContainsFunc(l.told, due.Before)
}

// closedOn gives the day of the first line or answer after the day of a job that is over.
func (l *life) closedOn(j *schedule.Job) schedule.Date {
	return l.told[slices.IndexFunc(l.told, j.On.Before)]
}

// plan plans the rest of the season of some areas together. The jobs of the other areas
// keep their days.
func (pl *planner) plan(lives []*life) {
	for _, l := range lives {
		l.planned = slices.DeleteFunc(l.planned, func(j schedule.Job) bool { return !j.Rest })
		l.left = nil
	}
	found, days := pl.settle(lives)
	of := map[string]*life{}
	for i, l := range lives {
		of[l.area.ID] = l
		l.planned = make([]schedule.Job, 0, len(found.Jobs)/len(lives)+1)
		c := pl.cases[i]
		l.now = c
		l.all = append(l.all, c)
		if l.opens != seasonOpens && l.opens != staleOpens || l.shown == nil {
			l.shown = c
		}
	}
	for i := range found.Jobs {
		j := &found.Jobs[i]
		l := of[j.Area.ID]
		if !days.has(i) {
			l.left = append(l.left, pl.noDay(j, days, i))
			continue
		}
		j.Bound = pl.bound(j, days, i)
		if j.Kind == schedule.Lime && j.Tilled && j.On.After(l.now.Seeded) {
			scrule.OnTurf(l.now, j)
		}
		l.planned = append(l.planned, *j)
	}
	for _, o := range found.Left {
		of[o.Area].left = append(of[o.Area].left, o)
	}
	pl.found.contested = pl.found.contested || days.Contested
	pl.found.stopped = pl.found.stopped || days.Stopped
}

// rests gives the rests of jobs done in part that still have a window, to be placed anew.
func (l *life) rests(c *schedule.Case) (out []schedule.Job) {
	for _, j := range l.planned {
		var open []schedule.Window
		for _, w := range j.Windows {
			if w.From = schedule.Later(w.From, l.from); !w.To.Before(w.From) {
				w.Ideal = schedule.Later(w.Ideal, w.From)
				open = append(open, w)
			}
		}
		if j.Rest && j.Kind.Sows() { // it takes the day that its area was planned for
			for i := range open {
				if day := c.OverseedOn; open[i].Has(day) {
					open[i].From, open[i].Ideal = day, day
				}
			}
		}
		if j.Rest && len(open) > 0 {
			j.On, j.Windows = schedule.Date{}, open
			scrule.DescribeRest(c, &j)
			out = append(out, j)
		}
	}
	return out
}

// put adds to what is down, and draws it from the shed.
func (pl *planner) put(l *life, d schedule.Down) {
	l.down.put(d)
	pl.draw(l, d, 1)
}

// draw counts the packs that went down (sign 1), or that come back (sign -1) when a line
// takes the place of a job presumed done.
func (pl *planner) draw(l *life, d schedule.Down, sign float64) {
	if d.Dose.Rate > 0 && !d.NotDone {
		pl.used[d.Dose.Material.ID] += sign * pl.site.PacksUsed(d.Date, d.Dose, l.area.Size)
	}
}

// packs counts, of each material, the packs that are not to be had when some areas are
// planned anew: those used, and those that the plans of the other areas, and rests, will
// use.
func (pl *planner) packs(lives []*life) map[string]float64 {
	out := make(map[string]float64, len(pl.used))
	maps.Copy(out, pl.used)
	for _, l := range pl.lives {
		for i := range l.planned {
			if j := &l.planned[i]; j.Spreads() {
				out[j.Dose.Material.ID] += pl.site.PacksUsed(j.On, j.Dose, l.area.Size)
			}
		}
	}
	return out
}

// samples gives a line for each soil sample that only its report tells of, if the answer
// comes after the start: a sample with a report was taken, whether or not the book says so.
func (pl *planner) samples(book []schedule.Done) (out []schedule.Done) {
	for _, l := range pl.lives {
		for _, r := range l.reports {
			if r.Sampled.IsZero() || !r.Answer().After(pl.site.Start) {
				continue
			}
			near := slices.ContainsFunc(book, func(d schedule.Done) bool {
				_, k, _, _, err := pl.kinds.JobName(d.Job)
				off := d.Date.DaysFrom(r.Sampled)
				return err == nil && k == schedule.SoilTest && pl.areaOf(d) == l.area.ID && !d.Missed && max(off, -off) <= nearTaken
			})
			if !near {
				out = append(out, schedule.Done{Date: r.Sampled, Area: l.area.ID, Job: schedule.SoilTest.String(), AsPlanned: true})
			}
		}
	}
	return out
}

// areaOf gives the area of a line: that of its area column, else of its job.
func (pl *planner) areaOf(d schedule.Done) string {
	if d.Area != "" {
		return d.Area
	}
	area, _, _, _, _ := pl.kinds.JobName(d.Job)
	return cmp.Or(area, d.Area)
}

// life finds the life of an area.
func (pl *planner) life(area string) *life {
	for _, l := range pl.lives {
		if l.area.ID == area {
			return l
		}
	}
	return nil
}

// seasonOn names the season of an area that holds a day.
func (pl *planner) seasonOn(l *life, d schedule.Date) int {
	if !d.Before(l.begins) || l.begins == pl.site.Start && !d.Before(pl.almanac.YearBegins(l.year, l.area.Stand.Season())) {
		return l.year
	}
	return pl.almanac.TurfYear(d, l.area.Stand.Season())
}

// newCase gathers what the rules read about an area as its life stands.
func (pl *planner) newCase(l *life, sh *schedule.Shed) *schedule.Case {
	a := *l.area
	a.Soil, a.Sampled, a.Received = nil, schedule.Date{}, schedule.Date{}
	if l.known > 0 {
		r := l.reports[l.known-1]
		a.Soil, a.Sampled, a.Received = r.Soil, r.Sampled, r.Received
	}
	season := a.Stand.Season()
	c := &schedule.Case{Site: pl.site, Area: &a, Year: l.year, Begins: l.begins, Start: l.from, Opens: l.opens, Through: l.ends,
		Almanac: pl.almanac, Season: season, Growth: pl.almanac.GrowthOf(season), Law: pl.law, MostN: nutrient.LimitsOfNitrogen(season), Shed: sh, Seeded: a.Seeded}
	c.Report, _ = a.Report()
	if l.known < len(l.reports) && l.reports[l.known].Sampled.Before(l.from) {
		c.Answer = l.reports[l.known].Answer()
	}
	if !l.from.IsZero() {
		c.Days = pl.days[l.from.DaysFrom(pl.site.Start):]
	}
	c.Oversown = slices.Clone(pl.resown[a.ID])
	for i := range pl.sowing.Jobs { // what is left of a sowing, until its window closes
		if j := &pl.sowing.Jobs[i]; j.Rest && j.AreaID() == a.ID && !j.Window().To.Before(l.from) && j.On != pl.sown[a.ID] && !slices.Contains(c.Oversown, j.On) {
			c.Oversown = append(c.Oversown, j.On)
		}
	}
	for i := range l.planned {
		if j := &l.planned[i]; j.Rest && j.Kind.Sows() {
			c.Oversown = append(c.Oversown, cmp.Or(pl.overseeds[a.ID], schedule.Later(schedule.Later(j.Window().From, j.Window().Ideal), l.from)))
		}
	}
	c.Down = slices.Clip(l.down.sums)
	for _, j := range l.planned { // the rest of a job done in part counts as down with the job
		if !j.Rest {
			continue
		}
		c.Down = slices.Clone(c.Down)
		for i := len(c.Down) - 1; i >= 0; i-- {
			if d := &c.Down[i]; d.Kind == j.Kind && d.Season == j.Season && d.N == j.N && !d.NotDone {
				d.Dose = material.Sum(j.Dose, d.Dose)
				break
			}
		}
	}
	return c
}
