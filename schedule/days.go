package schedule

import (
	"maps"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/climate"
	"swardbook/schedule/law"
)

// Workday is what one day of the program means for every job.
type Workday struct {
	Shut   string // why the crew does not work
	Frozen bool
}

// dayRules are the reasons of one job's own against a day: they need no other
// job to be known.
type dayRules struct {
	c                *Case
	job              *Job
	closed           closures
	person           string         // whose job it is
	absent           []Span         // when they are not there
	heatFrom, heatTo int            // days of the year; 0: no heat
	aged             map[int]string // what phosphorusOn answers, by the age of the report in months
}

// dayRules gathers what may forbid a day to a job.
func (c *Case) dayRules(j *Job) *dayRules {
	r := &dayRules{c: c, job: j}
	r.person, r.absent = c.Site.absent(j.ID())
	if j.Spreads() {
		r.closed = c.closuresFor(j.Dose)
		if from, to, ok := c.Almanac.Heat(c.Season); ok {
			r.heatFrom, r.heatTo = int(from), int(to)
		}
	}
	return r
}

// ironHottest is the normal high from which many a day is over the 85 °F that iron
// on the leaf of cool-season grass bears.
const ironHottest climate.Fahrenheit = 80 // [common]

// against says why the job may not be done on d; "" if it may.
func (r *dayRules) against(d Date, day *Workday) string {
	j, c := r.job, r.c
	if j.Kind.Notice() {
		return ""
	}
	if day.Shut != "" {
		return day.Shut
	}
	if s, away := spanWith(r.absent, d); away {
		return r.person + " is away from " + s.From.Short() + " to " + s.To.Short()
	}
	if j.Kind.Sows() { // its windows know how warm the soil is
		return ""
	}
	if day.Frozen {
		return "the ground may be frozen"
	}
	if !j.Spreads() {
		return ""
	}
	if w := r.closed.on(d); w != "" {
		return w
	}
	if j.Dose.SolubleN > c.MostN.Heat && r.hot(d) {
		return "normal highs pass 85 °F, too hot for so much quick nitrogen"
	}
	if j.Dose.Material.Kind == material.IronMaterial && c.Season == climate.Cool && c.Almanac.High(d.DayOfYear()) >= ironHottest {
		return "normal highs pass 80 °F, too hot for iron on the leaf"
	}
	if j.Dose.Material.Kind == material.SulfurMaterial && c.Almanac.High(d.DayOfYear()) >= lime.SulfurHottestAir {
		return "normal highs pass 75 °F, too hot for sulfur"
	}
	if j.Dose.N > 0 {
		if l, ok := c.Law.NCap(c.questionDay(d)); ok && j.Dose.N > agronomy.PerThousand(l.Value)+1e-9 {
			return "more nitrogen than the law lets on that day: " + l.Rule.Citation
		}
	}
	if j.Dose.P2O5 > 0 {
		return r.phosphorusOn(d)
	}
	return ""
}

// hot tells whether d lies in the heat of the year, which may span its end.
func (r *dayRules) hot(d Date) bool {
	if r.heatFrom == 0 {
		return false
	}
	day := int(d.DayOfYear())
	if r.heatFrom <= r.heatTo {
		return day >= r.heatFrom && day <= r.heatTo
	}
	return day >= r.heatFrom || day <= r.heatTo
}

// phosphorusOn says why the law shuts phosphorus on d; "" if it does not. On one day or
// another only the age of the soil report can differ.
func (r *dayRules) phosphorusOn(d Date) string {
	if len(r.c.Law.Rules) == 0 {
		return ""
	}
	age := Months(r.c.Area.Sampled, d)
	if w, ok := r.aged[age]; ok {
		return w
	}
	w := ""
	if why, shut := r.c.phosphorusShutBy(r.c.Question(d)); shut {
		w = why.Text
	}
	if r.aged == nil {
		r.aged = map[int]string{}
	}
	r.aged[age] = w
	return w
}

// questionDay asks about d where the law looks at nothing else that changes from day to
// day; [Case.Question] asks in full.
func (c *Case) questionDay(d Date) law.Question {
	q := c.Asked
	q.Date = law.MonthDay{Month: d.Month, Day: d.Day}
	return q
}

// CarryCost is what it costs to pass over a window for a later one. It sets which job
// gives way, not whether one fits.
const CarryCost = 10 // [common] more than any day of the window before

// Candidates gives the days on which a job may go, each with its cost in units:
// weight × (distance from the ideal day ÷ window length)², and [CarryCost] for each window
// passed over. blocked counts the days that each reason takes away.
func (c *Case) Candidates(j *Job) (days []int, cost []int64, blocked map[string]int) {
	rules := c.dayRules(j)
	blocked = map[string]int{}
	total := 0
	for _, w := range j.Windows {
		total += w.Days()
	}
	if n := len(c.Crew.Days); n > 0 {
		total = total*n/7 + 2*len(j.Windows)
	}
	days, cost = make([]int, 0, total), make([]int64, 0, total)
	weight, next, first := j.Kind.Of().Weight, 0, c.Start.Number()
	shut, run := "", 0 // days in a row are mostly shut for one reason
	note := func() {
		if run > 0 {
			blocked[shut] += run
		}
	}
	for i, w := range j.Windows {
		length, ideal := float64(max(1, w.Days())), w.Ideal.DaysFrom(c.Start)
		from, to := w.From.DaysFrom(c.Start), w.To.DaysFrom(c.Start)
		n := max(from, next) // windows may touch
		for d := c.Start.AddDays(n); n <= to; n, d = n+1, d.Next() {
			if why := rules.against(d, &c.Days[n]); why != "" {
				if why != shut {
					note()
					shut, run = why, 0
				}
				run++
				continue
			}
			off := float64(n-ideal) / length
			days = append(days, first+n)
			cost = append(cost, Units(min(900, weight*off*off+CarryCost*float64(i))))
		}
		next = max(next, to+1)
	}
	note()
	return days, cost, blocked
}

// NearBlocks lists why days nearer to the ideal than the chosen one are shut
// to the job itself.
func (c *Case) NearBlocks(j *Job, w Window, chosen Date) []string {
	rules := c.dayRules(j)
	var out []string
	step := 1
	if chosen.Before(w.Ideal) {
		step = -1
	}
	for d := w.Ideal; d != chosen; d = d.AddDays(step) {
		if why := rules.against(d, &c.Days[d.DaysFrom(c.Start)]); why != "" && !slices.Contains(out, why) {
			out = append(out, why)
		}
	}
	return out
}

// MostBlocks joins the reasons that took days away from a job, that of the most days
// first.
func MostBlocks(blocked map[string]int) string {
	whys := slices.Sorted(maps.Keys(blocked))
	slices.SortStableFunc(whys, func(a, b string) int { return blocked[b] - blocked[a] })
	return strings.Join(whys, "; ")
}

// goodDay gives the first day, from one on, on which a due job may be done: the crew
// works, its person is there, nothing forbids it, and what is on record, or has a good
// day of its own already, is far enough behind; unset if its window holds none.
func (p *Program) goodDay(e *Entry, from Date) Date {
	var c *Case
	for _, o := range p.Chapters {
		if o.Area.ID == e.Area && (c == nil || !o.Start.After(from)) {
			c = o
		}
	}
	if c == nil || from.Before(c.Start) {
		return Date{}
	}
	_, _, _, n, _ := p.Kinds().JobName(e.ID)
	j := &Job{Kind: e.Kind, Season: e.Season, N: n, Area: c.Area, Dose: e.Dose}
	for i := range p.Entries {
		o := &p.Entries[i]
		if o == e || o.Area != e.Area || o.State != Finished && o.GoodDay.IsZero() {
			continue
		}
		on := Later(o.Date, o.GoodDay)
		if apart, kept := nutrient.Spacing((&Job{Kind: o.Kind, Dose: o.Dose}).Things(), j.Things()); kept {
			from = Later(from, on.AddDays(apart.Days))
		}
	}
	rules := c.dayRules(j)
	for n := from.DaysFrom(c.Start); n < len(c.Days) && !from.After(e.Latest); n, from = n+1, from.Next() {
		if rules.against(from, &c.Days[n]) == "" {
			return from
		}
	}
	return Date{}
}
