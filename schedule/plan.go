package schedule

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/climate"
	"swardbook/schedule/law"
)

// Plan makes the program of a site from its site file and its record book and
// from nothing else: the same input gives the same program, whatever the day.
//
// It works in stages. The place gives its year; a sowing still to come is dated
// first, as everything else in its area hangs on it; the record book is worked
// out line by line; each rule then proposes jobs with windows; and [place] puts
// them on days. What finds no day is left out with the reason.
//
// The error is the place's: see [climate.PlaceErrors].
func Plan(site *Site, book []Done) (*Program, error) {
	year, err := site.Place.Year()
	if err != nil {
		return nil, err
	}
	pl := &planner{site: site, almanac: newAlmanac(year, site.Start, site.Through), sown: map[string]Date{}}
	pl.sow(book)
	pl.read(book)
	return pl.program(pl.gather(pl.book)), nil
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
	keeper := &bookkeeper{site: pl.site, plan: func(b []down) []Job { return pl.gather(b).jobs }}
	lines = inOrder(lines)
	for i, l := range lines {
		if i > 0 && l.Date == lines[i-1].Date {
			keeper.read(l)
			continue
		}
		if l.Date.After(pl.site.Start) {
			keeper.book = pl.takenAsDone(keeper.book, l.Date)
		}
		keeper.read(l)
	}
	pl.book, pl.assumed = keeper.book, keeper.assumed
}

// takenAsDone adds to the book what was planned for days before d.
func (pl *planner) takenAsDone(book []down, d Date) []down {
	jobs := pl.gather(book).jobs
	days := pl.placeJobs(jobs, func(i int) *Case { return pl.caseOf(jobs[i].Area) })
	for i := range jobs {
		j := jobs[i]
		if days.day[i] < 0 || !j.On.IsZero() || j.Area == nil || j.Kind == Sow {
			continue
		}
		j.On = days.tasks[i].days[days.day[i]]
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
	almanac *almanac
	book    []down
	cases   []*Case
	sown    map[string]Date // areas still to be sown: the day, unset if none was found
	sowing  proposal        // the sow jobs, with their day in On
	assumed []string        // about the record book
}

// propose asks every rule about every area.
func (pl *planner) propose(book []down) proposal {
	var all proposal
	pl.cases = pl.cases[:0]
	sh := newShed(pl.site, book)
	for i := range pl.site.Areas {
		c := newCase(pl.site, &pl.site.Areas[i], pl.almanac, book, sh)
		if day, ok := pl.sown[c.Area.ID]; ok {
			c.seeded, c.noStand = day, day.IsZero()
		}
		if n, err := agronomy.PhosphorusNeed(c.report, c.Place.State, c.future()); err == nil {
			c.asksP = n.Year > 0
		}
		c.asked = c.question(Date{})
		c.liming = c.planLime()
		c.dressings = c.dateLime()
		c.planFeeding()
		pl.cases = append(pl.cases, c)
		for _, r := range rules {
			p := r.propose(c)
			c.needs = append(c.needs, p.needs...)
			all.add(p)
		}
		for _, a := range c.Area.Assumed {
			all.assumed = append(all.assumed, a.Text)
		}
	}
	return all
}

// sow dates the sowings that are still to come.
func (pl *planner) sow(book []Done) {
	var jobs []Job
	var cases []*Case
	for i := range pl.site.Areas {
		a := &pl.site.Areas[i]
		c := newCase(pl.site, a, pl.almanac, nil, newShed(pl.site, nil))
		for _, d := range book { // a sowing on record is the day
			if _, k, _, err := JobName(d.Job); err == nil && k == Sow && d.Area == a.ID && !d.Missed {
				pl.sown[a.ID] = d.Date
			}
		}
		if _, done := pl.sown[a.ID]; done || !c.future() {
			continue
		}
		pl.sown[a.ID] = Date{}
		p := sowJobs(c)
		pl.sowing.left = append(pl.sowing.left, p.left...)
		for range p.jobs {
			cases = append(cases, c)
		}
		jobs = append(jobs, p.jobs...)
	}
	pl.cases = cases
	days := pl.placeJobs(jobs, func(i int) *Case { return cases[i] })
	for i := range jobs {
		j := &jobs[i]
		if days.day[i] < 0 {
			pl.sowing.left = append(pl.sowing.left, pl.noDay(j, days, i))
			continue
		}
		j.On = days.tasks[i].days[days.day[i]]
		pl.sown[j.Area.ID] = j.On
		if wish := j.Area.Seeded; j.On != wish {
			j.Why = append(j.Why, Reason{Text: fmt.Sprintf("the site file asks for %s; %s", wish.Short(), cmp.Or(j.window().Carried, "the nearest day that holds is "+j.On.Short()))})
		}
		pl.sowing.jobs = append(pl.sowing.jobs, *j)
	}
}

// recorded adds the jobs of the record book and drops those they settle.
func (pl *planner) recorded(p *proposal) {
	for _, c := range pl.cases {
		for _, j := range c.recordedJobs() {
			p.jobs = slices.DeleteFunc(p.jobs, func(o Job) bool { return o.ID() == j.ID() })
			p.jobs = append(p.jobs, j)
		}
	}
}

// notices adds the closing and the reopening of the season.
func (pl *planner) notices(p *proposal) {
	a, m := pl.almanac, pl.site.Measure()
	closes, reopens := a.ground.LastSafe, a.ground.Reopens
	last := "After today the ground may freeze: nothing more is spread until it is open again."
	lastWhy := []Reason{{Text: fmt.Sprintf("soil at 2 in is expected to fall through %s a week later; the date is good to %s either way", m.Temperature(40), plural(int(1.28*closes.SD+0.5), "day")), Source: "model"}}
	if a.ground.Kind == climate.GroundNever {
		season := climate.Cool
		if len(pl.cases) > 0 {
			season = pl.cases[0].season
		}
		closes, reopens = a.GrowthEnds(season), a.GrowthBegins(season)
		last = "Growth ends about now: what is fed after this is not taken up. The ground itself does not freeze here."
		lastWhy = []Reason{{Text: "growth potential falls through a tenth", Source: "gp-pace"}}
	}
	add := func(k Kind, w climate.When, title, summary string, why []Reason, steps ...string) {
		if w.Never {
			return
		}
		n := 0
		for d := a.after(w, pl.site.Start); !d.After(pl.site.Through); d = a.after(w, d.AddDays(1)) {
			n++
			p.jobs = append(p.jobs, Job{Kind: k, N: n, Title: title, Summary: summary, Steps: steps, Why: why,
				Windows: []Window{{Span: Span{d, d}, Ideal: d, Opens: w.Words, Closes: w.Words}}})
		}
	}
	add(LastSafe, closes, "Last safe day to spread", last, lastWhy,
		"Put away what is left, dry and off the floor, in its own bag.",
		"Trust a soil thermometer over the date: under "+m.Temperature(40)+" at 2 in, stop sooner.")
	add(Reopen, reopens, "Ground and growth open again", "The ground is expected to be open and the grass to wake: the season's jobs begin.",
		[]Reason{{Text: "the ground reopens, or growth begins where it never freezes", Source: "model, gp-pace"}},
		"Look before the first job: no frost in the top inch, no standing water.")
}

// placement is the answer of the search with what it was asked.
type placement struct {
	placed
	jobs    []Job // those to place, and after them what went down before the program
	tasks   []task
	blocked []map[string]int
}

// byDay lists the tasks by their day; those left out keep their place among
// themselves.
func (p placement) byDay() []int {
	order := make([]int, len(p.tasks))
	number := make([]int, len(p.tasks))
	for i := range order {
		order[i] = i
		if d := p.day[i]; d >= 0 {
			number[i] = p.tasks[i].days[d].number()
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return number[a] - number[b] })
	return order
}

// blockedBy says in words what shut a day, and which other job did it.
func (p placement) blockedBy(b blocker) string {
	if b.other < 0 {
		return b.why
	}
	other := jobWords(p.jobs[b.other].Kind)
	if d := p.day[b.other]; d >= 0 {
		other += ", " + p.tasks[b.other].days[d].Short()
	}
	return fmt.Sprintf("%s (%s)", strings.TrimSuffix(b.why, "."), other)
}

func (pl *planner) placeJobs(jobs []Job, caseOf func(int) *Case) placement {
	all := append(slices.Clip(jobs), pl.before()...)
	out := placement{jobs: all, tasks: make([]task, len(all)), blocked: make([]map[string]int, len(all))}
	for i := range all {
		j := &all[i]
		t := task{id: j.ID(), rank: j.Kind.rank(), area: pl.areaIndex(j.Area), who: pl.site.who(j.Kind, j.Area)}
		switch {
		case !j.On.IsZero():
			t.fixed, t.days, t.cost = true, []Date{j.On}, []float64{0}
		default:
			t.days, t.cost, out.blocked[i] = caseOf(i).candidates(j)
		}
		if j.Kind.Notice() {
			t.who = "notice/" + t.id // a notice is nobody's work
		}
		if j.spreads() {
			t.group = string(j.Kind) + "/" + j.Dose.Material.ID
		}
		out.tasks[i] = t
	}
	out.placed = place(out.tasks, limitsBetween(all, climate.Cool), pl.site.Crew.JobsPerDay)
	return out
}

// before gives what went down so shortly before the program that its jobs
// still keep their distance from it.
func (pl *planner) before() []Job {
	var out []Job
	for _, c := range pl.cases {
		for _, d := range c.down {
			if !d.missed && d.Date.Before(c.Start) && c.Start.DaysFrom(d.Date) < agronomy.LongestSpacing() {
				out = append(out, Job{Kind: d.kind, N: d.n, Area: c.Area, Dose: d.dose, On: d.Date, State: Finished})
			}
		}
	}
	return out
}

func (pl *planner) areaIndex(a *Area) int {
	if a == nil {
		return -1
	}
	return slices.IndexFunc(pl.site.Areas, func(b Area) bool { return b.ID == a.ID })
}

func (pl *planner) caseOf(a *Area) *Case {
	if i := pl.areaIndex(a); i >= 0 && i < len(pl.cases) {
		return pl.cases[i]
	}
	return &Case{Site: pl.site, almanac: pl.almanac}
}

// noDay says why a job was left out.
func (pl *planner) noDay(j *Job, days placement, i int) LeftOut {
	l := LeftOut{ID: j.ID(), Kind: j.Kind, Area: j.areaID()}
	var whys []string
	for _, b := range days.bound[i] {
		if w := days.blockedBy(b); !slices.Contains(whys, w) {
			whys = append(whys, w)
		}
	}
	if w := mostBlocks(days.blocked[i]); w != "" {
		whys = append(whys, w)
	}
	if len(whys) == 0 {
		whys = []string{"another job matters more"}
	}
	w := j.Windows[len(j.Windows)-1]
	l.Reason = fmt.Sprintf("no day from %s to %s holds: %s", j.Windows[0].From.Short(), w.To.Short(), list(whys))
	return l
}

// window gives the window that holds the job's day, or its first.
func (j *Job) window() Window {
	for _, w := range j.Windows {
		if w.Has(j.On) {
			return w
		}
	}
	if len(j.Windows) > 0 {
		return j.Windows[0]
	}
	return Window{Span: Span{j.On, j.On}, Ideal: j.On}
}

// program puts the proposals on days and writes the program down.
func (pl *planner) program(p proposal) *Program {
	jobs := p.jobs
	days := pl.placeJobs(jobs, func(i int) *Case { return pl.caseOf(jobs[i].Area) })
	out := pl.frame(p)
	out.Entries = make([]Entry, 0, len(jobs))
	for _, i := range days.byDay() {
		if i >= len(jobs) {
			continue // from before the program
		}
		j := &jobs[i]
		if days.day[i] < 0 {
			out.LeftOut = append(out.LeftOut, pl.noDay(j, days, i))
			continue
		}
		settled := !j.On.IsZero() && j.Kind != Sow
		j.On = days.tasks[i].days[days.day[i]]
		e := pl.entry(j)
		e.BoundBy = append(e.BoundBy, j.bound...)
		if !settled {
			e.BoundBy = pl.boundBy(j, days, i)
		}
		out.Entries = append(out.Entries, e)
	}
	if !days.proven {
		out.Assumptions = append(out.Assumptions, "So many jobs compete for the same days that the search stopped before it had tried everything: every limit holds, but a better spread may exist.")
	}
	out.InTheShed = append(out.InTheShed, out.withoutBuying()...)
	out.ownIDs()
	slices.SortStableFunc(out.LeftOut, func(a, b LeftOut) int { return cmp.Compare(a.ID, b.ID) })
	out.nextJobs()
	return out
}

// ownIDs gives what is left out numbers of its own, after those of the jobs.
func (p *Program) ownIDs() {
	taken, last := map[string]bool{}, map[string]int{}
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
			of := cmp.Or(l.Area, "site") + "/" + string(l.Kind)
			l.ID = of + "/" + strconv.Itoa(last[of]+1)
		}
		mark(l.ID)
	}
}

// boundBy says what bound a job's day.
func (pl *planner) boundBy(j *Job, days placement, i int) []string {
	w := j.window()
	var out []string
	if w.Carried != "" {
		out = append(out, w.Carried)
	}
	if j.On == w.Ideal && len(days.bound[i]) == 0 {
		return append(out, "the ideal day")
	}
	out = append(out, pl.caseOf(j.Area).nearBlocks(j, w, j.On)...)
	for _, b := range days.bound[i][:min(3, len(days.bound[i]))] { // the days it would have liked best
		if t := days.blockedBy(b); !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	if len(out) == 0 {
		out = append(out, "done together with the same material elsewhere")
	}
	return out
}

func (pl *planner) entry(j *Job) Entry {
	s, d := pl.site, j.Dose
	w := j.window()
	e := Entry{
		ID: j.ID(), UID: pl.uid(j), Kind: j.Kind, Title: j.Title, Summary: j.Summary,
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
		if d.Material.Kind != agronomy.LimeMaterial {
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
func (pl *planner) uid(j *Job) string {
	season := climate.Cool
	if len(pl.cases) > 0 && !slices.ContainsFunc(pl.cases, func(c *Case) bool { return c.season == climate.Cool }) {
		season = climate.Warm
	}
	return fmt.Sprintf("%s.%s.%s.%d.%d@swardbook", pl.site.ID, j.areaID(), j.Kind, j.N, pl.almanac.turfYear(pl.site.Start, season))
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
		out.InTheShed = append(out.InTheShed, c.liming.shed...)
	}
	out.cases = pl.cases
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
	st, rules, err := law.For(s.Place.State, s.crewIs())
	if err != nil {
		out.LawNotes = append(out.LawNotes, "No state is given, so no state law is looked up: ask the county extension office.", law.NoAdvice)
		return
	}
	for _, r := range rules.With(s.Local) {
		out.Laws = append(out.Laws, LawLine{Text: r.Statement(), Citation: r.Citation, AsOf: r.AsOf, Sure: r.Confidence.String() + ", " + r.How.String()})
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
