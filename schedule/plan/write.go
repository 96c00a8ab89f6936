package plan

import (
	"cmp"
	"slices"
	"strconv"

	"swardbook/agronomy/material"
	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/law"
	"swardbook/schedule/word"
)

// program writes down the proposals, each on its day.
func (pl *planner) program(p schedule.Proposal, days *placement) *schedule.Program {
	jobs := p.Jobs
	out := pl.frame(p)
	turfYear := pl.turfYear()
	out.Entries = make([]schedule.Entry, 0, len(jobs))
	for _, i := range days.byDay() {
		if i >= len(jobs) {
			continue // from before the program
		}
		j := &jobs[i]
		if !days.has(i) {
			out.LeftOut = append(out.LeftOut, pl.noDay(j, days, i))
			continue
		}
		settled := !j.On.IsZero() && j.Kind != schedule.Sow
		j.On = days.on(i)
		e := pl.entry(j, turfYear)
		e.BoundBy = append(e.BoundBy, j.Bound...)
		if !settled {
			e.BoundBy = pl.boundBy(j, days, i)
		}
		out.Entries = append(out.Entries, e)
	}
	if days.Contested {
		out.Assumptions = append(out.Assumptions, "Areas want the same days of the crew: the job that matters more has the day, the others move, and days are exchanged while that gains anything.")
	}
	if days.Stopped {
		out.Assumptions = append(out.Assumptions, "So many jobs compete for the same days that the search stopped before it had tried everything: every limit holds, but a better spread may exist.")
	}
	out.TellSupplies()
	out.OwnIDs()
	slices.SortStableFunc(out.LeftOut, func(a, b schedule.LeftOut) int { return cmp.Compare(a.ID, b.ID) })
	out.NextJobs()
	return out
}

// boundBy says what bound a job's day.
func (pl *planner) boundBy(j *schedule.Job, days *placement, i int) []string {
	w := j.Window()
	var out []string
	if w.Carried != "" {
		out = append(out, w.Carried)
	}
	if j.On == w.Ideal && len(days.Causes[i]) == 0 {
		return append(out, "the ideal day")
	}
	out = append(out, pl.caseOf(j.Area).NearBlocks(j, w, j.On)...)
	if why, waited := days.waits[i]; waited {
		out = append(out, why)
	}
	for _, b := range days.Causes[i][:min(3, len(days.Causes[i]))] { // the days it would have liked best
		if t := days.blockedBy(b); !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	if len(out) == 0 {
		out = append(out, "done together with the same material elsewhere")
	}
	return out
}

func (pl *planner) entry(j *schedule.Job, turfYear string) schedule.Entry {
	s, d := pl.site, j.Dose
	w := j.Window()
	e := schedule.Entry{
		ID: j.ID(), UID: pl.uid(j, turfYear), Kind: j.Kind, Title: j.Title, Summary: j.Summary,
		Date: j.On, Earliest: w.From, Latest: w.To, Ideal: w.Ideal, LastSafe: w.Last, Window: schedule.WindowWords(w),
		Who: s.Who(j.ID()), Steps: j.Steps, IfRain: j.IfRain, Cautions: j.Cautions,
		Because: j.Because, Why: j.Why, State: cmp.Or(j.State, schedule.Planned), Note: j.Note,
		BoundBy: []string{}, Dose: d, WaterIn: j.WaterIn.Low,
	}
	if j.Kind.Notice() {
		e.Who = ""
	}
	e.WhoName = s.PersonName(e.Who)
	if a := j.Area; a != nil {
		e.Area, e.AreaName = a.ID, a.Name
	}
	if j.Spreads() {
		amount := d.For(j.Area.Size)
		e.Material, e.MaterialName, e.ToBuy = d.Material.ID, word.MaterialName(d.Material), d.Material.ToBuy
		e.Rate, e.Pounds, e.Gallons, e.Packs = d.Rate, amount.Weight, amount.Volume, amount.Packs
		if d.Material.Kind != material.LimeMaterial {
			e.N, e.SlowN, e.P2O5, e.K2O = d.N, d.SlowN, d.P2O5, d.K2O
		}
	}
	for _, list := range []*[]string{&e.Steps, &e.Cautions} {
		if *list == nil {
			*list = []string{}
		}
	}
	if e.Why == nil {
		e.Why = []schedule.Reason{}
	}
	return e
}

// uid names the job for calendars: by site, area, job and turf year, never by
// date or title, so that a moved job moves.
func (pl *planner) uid(j *schedule.Job, turfYear string) string {
	return pl.site.ID + "." + j.AreaID() + "." + j.Kind.String() + "." + strconv.Itoa(j.N) + "." + turfYear + "@swardbook"
}

// turfYear is the one in which the program starts, for the grass of the site.
func (pl *planner) turfYear() string {
	season := climate.Cool
	if len(pl.cases) > 0 && !slices.ContainsFunc(pl.cases, func(c *schedule.Case) bool { return c.Season == climate.Cool }) {
		season = climate.Warm
	}
	return strconv.Itoa(pl.almanac.TurfYear(pl.site.Start, season))
}

// frame writes everything of the program but the entries.
func (pl *planner) frame(p schedule.Proposal) *schedule.Program {
	s := pl.site
	out := &schedule.Program{
		Format: 1, Title: s.Title, SiteID: s.ID, Start: s.Start, Through: s.Through, Metric: s.Metric, Site: s,
		Place:   schedule.PlaceShown{Where: pl.almanac.Where, State: s.Place.State, County: s.County, Hardiness: s.Place.Hardiness, ClimateFrom: pl.almanac.From, Better: pl.almanac.Better},
		Season:  pl.almanac.Season(s.Measure(), pl.season()),
		Entries: []schedule.Entry{}, LeftOut: append([]schedule.LeftOut{}, p.Left...), InTheShed: []string{}, Laws: []schedule.LawLine{}, LawNotes: []string{},
	}
	out.Assumptions = []string{}
	for _, a := range s.Assumed {
		out.Assumptions = append(out.Assumptions, a.Text)
	}
	out.Assumptions = append(out.Assumptions, schedule.Unique(p.Assumed)...)
	for _, c := range pl.cases {
		out.Areas = append(out.Areas, c.Shown())
	}
	out.InTheShed = append(out.InTheShed, p.Shed...)
	out.Cases, out.BookNotes, out.Table = pl.cases, pl.assumed, pl.kinds
	pl.laws(out)
	return out
}

func (pl *planner) season() climate.Season {
	if len(pl.cases) > 0 {
		return pl.cases[0].Season
	}
	return climate.Cool
}

// laws lists the rules that the site stands under, once.
func (pl *planner) laws(out *schedule.Program) {
	s := pl.site
	for _, r := range pl.law.Rules {
		out.Laws = append(out.Laws, schedule.LawLine{Text: r.Statement(), Citation: r.Citation, AsOf: r.AsOf, Sure: r.Confidence.String() + ", " + r.How.String()})
	}
	st, _, err := law.For(s.Place.State, s.County, s.CrewIs())
	if err != nil {
		out.LawNotes = append(out.LawNotes, "No state is given, so no state law is looked up: ask the county extension office.", law.NoAdvice)
		return
	}
	out.LawNotes = append(out.LawNotes, st.Lines(s.County, s.CrewIs())...)
}
