package schedule

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy/material"
	"swardbook/climate"
	"swardbook/schedule/law"
)

// program writes down the proposals, each on its day.
func (pl *planner) program(p proposal, days *placement) *Program {
	jobs := p.jobs
	out := pl.frame(p)
	turfYear := pl.turfYear()
	out.Entries = make([]Entry, 0, len(jobs))
	for _, i := range days.byDay() {
		if i >= len(jobs) {
			continue // from before the program
		}
		j := &jobs[i]
		if !days.has(i) {
			out.LeftOut = append(out.LeftOut, pl.noDay(j, days, i))
			continue
		}
		settled := !j.On.IsZero() && j.Kind != Sow
		j.On = days.on(i)
		e := pl.entry(j, turfYear)
		e.BoundBy = append(e.BoundBy, j.bound...)
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
	out.tellSupplies()
	out.ownIDs()
	slices.SortStableFunc(out.LeftOut, func(a, b LeftOut) int { return cmp.Compare(a.ID, b.ID) })
	out.nextJobs()
	return out
}

// ownIDs gives what is left out numbers of its own, after those of the jobs.
func (p *Program) ownIDs() {
	if len(p.LeftOut) == 0 {
		return
	}
	taken, last := make(map[string]bool, len(p.Entries)+len(p.LeftOut)), map[string]int{}
	mark := func(id string) {
		taken[id] = true
		if i := strings.LastIndexByte(id, '/'); i >= 0 {
			n, _ := strconv.Atoi(id[i+1:])
			last[id[:i]] = max(last[id[:i]], n)
		}
	}
	for _, e := range p.Entries {
		mark(e.ID)
	}
	for i := range p.LeftOut {
		l := &p.LeftOut[i]
		if taken[l.ID] {
			of := cmp.Or(l.Area, "site") + "/" + l.Kind.String()
			l.ID = of + "/" + strconv.Itoa(last[of]+1)
		}
		mark(l.ID)
	}
}

// boundBy says what bound a job's day.
func (pl *planner) boundBy(j *Job, days *placement, i int) []string {
	w := j.window()
	var out []string
	if w.Carried != "" {
		out = append(out, w.Carried)
	}
	if j.On == w.Ideal && len(days.Causes[i]) == 0 {
		return append(out, "the ideal day")
	}
	out = append(out, pl.caseOf(j.Area).nearBlocks(j, w, j.On)...)
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

func (pl *planner) entry(j *Job, turfYear string) Entry {
	s, d := pl.site, j.Dose
	w := j.window()
	e := Entry{
		ID: j.ID(), UID: pl.uid(j, turfYear), Kind: j.Kind, Title: j.Title, Summary: j.Summary,
		Date: j.On, Earliest: w.From, Latest: w.To, Ideal: w.Ideal, LastSafe: w.Last, Window: windowWords(w),
		Who: s.who(j.Kind, j.Area), Steps: j.Steps, IfRain: j.IfRain, Cautions: j.Cautions,
		Because: j.Because, Why: j.Why, State: cmp.Or(j.State, Planned), Note: j.Note,
		BoundBy: []string{}, Dose: d, WaterIn: j.WaterIn.Low,
	}
	if j.Kind.Notice() {
		e.Who = ""
	}
	e.WhoName = s.personName(e.Who)
	if a := j.Area; a != nil {
		e.Area, e.AreaName = a.ID, a.Name
	}
	if j.spreads() {
		amount := d.For(j.Area.Size)
		e.Material, e.MaterialName, e.ToBuy = d.Material.ID, materialName(d.Material), d.Material.ToBuy
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
		e.Why = []Reason{}
	}
	return e
}

func windowWords(w Window) string {
	switch {
	case w.Opens == "":
		return ""
	case w.Opens == w.Closes:
		return w.Opens
	}
	return "opens: " + w.Opens + "; closes: " + w.Closes
}

// uid names the job for calendars: by site, area, job and turf year, never by
// date or title, so that a moved job moves.
func (pl *planner) uid(j *Job, turfYear string) string {
	return pl.site.ID + "." + j.areaID() + "." + j.Kind.String() + "." + strconv.Itoa(j.N) + "." + turfYear + "@swardbook"
}

// turfYear is the one in which the program starts, for the grass of the site.
func (pl *planner) turfYear() string {
	season := climate.Cool
	if len(pl.cases) > 0 && !slices.ContainsFunc(pl.cases, func(c *Case) bool { return c.season == climate.Cool }) {
		season = climate.Warm
	}
	return strconv.Itoa(pl.almanac.turfYear(pl.site.Start, season))
}

// nextJobs tells each entry which job comes next in its area.
func (p *Program) nextJobs() {
	next := map[string]string{}
	for i := len(p.Entries) - 1; i >= 0; i-- {
		e := &p.Entries[i]
		if e.Area == "" {
			continue
		}
		e.Next = next[e.Area]
		if e.State == Planned {
			next[e.Area] = e.ID
		}
	}
}

// frame writes everything of the program but the entries.
func (pl *planner) frame(p proposal) *Program {
	s := pl.site
	out := &Program{
		Format: 1, Title: s.Title, SiteID: s.ID, Start: s.Start, Through: s.Through, Metric: s.Metric, Site: s,
		Place:   PlaceShown{State: s.Place.State, Hardiness: s.Place.Hardiness, ClimateFrom: pl.almanac.From, Better: pl.almanac.Better},
		Season:  pl.almanac.season(s.Measure(), pl.season()),
		Entries: []Entry{}, LeftOut: append([]LeftOut{}, p.left...), InTheShed: []string{}, Laws: []LawLine{}, LawNotes: []string{},
	}
	out.Assumptions = []string{}
	for _, a := range s.Assumed {
		out.Assumptions = append(out.Assumptions, a.Text)
	}
	out.Assumptions = append(out.Assumptions, unique(p.assumed)...)
	for _, c := range pl.cases {
		out.Areas = append(out.Areas, c.shown())
	}
	out.InTheShed = append(out.InTheShed, p.shed...)
	out.cases, out.bookNotes, out.table = pl.cases, pl.assumed, pl.kinds
	pl.laws(out)
	return out
}

func (pl *planner) season() climate.Season {
	if len(pl.cases) > 0 {
		return pl.cases[0].season
	}
	return climate.Cool
}

// laws lists the rules that the site stands under, once.
func (pl *planner) laws(out *Program) {
	s := pl.site
	for _, r := range pl.law.Rules {
		out.Laws = append(out.Laws, LawLine{Text: r.Statement(), Citation: r.Citation, AsOf: r.AsOf, Sure: r.Confidence.String() + ", " + r.How.String()})
	}
	st, _, err := law.For(s.Place.State, s.crewIs())
	if err != nil {
		out.LawNotes = append(out.LawNotes, "No state is given, so no state law is looked up: ask the county extension office.", law.NoAdvice)
		return
	}
	out.LawNotes = append(out.LawNotes, st.Lines(s.crewIs())...)
}

func unique(words []string) []string {
	var out []string
	for _, w := range words {
		if !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}
