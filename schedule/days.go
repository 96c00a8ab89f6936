package schedule

import (
	"maps"
	"math"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/agronomy/material"
	"swardbook/schedule/law"
)

// workday is one day of the program with what it means for every job.
type workday struct {
	Date
	shut   string // why the crew does not work
	frozen bool
}

// workdays lists the days of the program.
func (pl *planner) workdays() []workday {
	crew, open := &pl.site.Crew, pl.almanac.open
	days := make([]workday, 0, Span{pl.site.Start, pl.site.Through}.Days())
	words := crew.dayWords()
	for d := pl.site.Start; len(days) < cap(days); d = d.next() {
		day := workday{Date: d, frozen: true}
		if !crew.works(d) {
			day.shut = words
		} else if s, away := crew.away(d); away {
			day.shut = "the crew is away from " + s.From.Short() + " to " + s.To.Short()
		}
		days = append(days, day)
	}
	for _, o := range open {
		from, to := o.From.DaysFrom(pl.site.Start), o.To.DaysFrom(pl.site.Start)
		for n := max(0, from); n <= min(len(days)-1, to); n++ {
			days[n].frozen = false
		}
	}
	return days
}

// dayRules are the reasons of one job's own against a day: they need no other
// job to be known.
type dayRules struct {
	c                *Case
	job              *Job
	closed           closures
	heatFrom, heatTo int            // days of the year; 0 none
	aged             map[int]string // phosphorus by the age of the report in months
}

func (c *Case) dayRules(j *Job) *dayRules {
	r := &dayRules{c: c, job: j}
	if j.spreads() {
		r.closed = c.closuresFor(j.Dose)
		if from, to, ok := c.almanac.Heat(c.season); ok {
			r.heatFrom, r.heatTo = int(from), int(to)
		}
	}
	return r
}

// against says why the job may not be done on d; "" if it may.
func (r *dayRules) against(day *workday) string {
	j, c, d := r.job, r.c, day.Date
	if j.Kind.Notice() {
		return ""
	}
	if day.shut != "" {
		return day.shut
	}
	if j.Kind.Sows() { // its windows know how warm the soil is
		return ""
	}
	if day.frozen {
		return "the ground may be frozen"
	}
	if !j.spreads() {
		return ""
	}
	if w := r.closed.on(d); w != "" {
		return w
	}
	if r.hot(d) && j.Dose.SolubleN > c.mostN.Heat {
		return "normal highs pass 85 °F, too hot for so much quick nitrogen"
	}
	if j.Dose.Material.Kind == material.SulfurMaterial && c.almanac.High(d.DayOfYear()) >= lime.SulfurHottestAir {
		return "normal highs pass 75 °F, too hot for sulfur"
	}
	if j.Dose.N > 0 {
		if l, ok := c.law.NCap(c.questionDay(d)); ok && j.Dose.N > agronomy.PerThousand(l.Value)+1e-9 {
			return "more nitrogen than the law lets on that day: " + l.Rule.Citation
		}
	}
	if j.Dose.P2O5 > 0 {
		return r.phosphorusOn(d)
	}
	return ""
}

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

// phosphorusOn asks whether the report is young enough on the day.
func (r *dayRules) phosphorusOn(d Date) string {
	if len(r.c.law.Rules) == 0 {
		return ""
	}
	age := months(r.c.Area.Sampled, d)
	if w, ok := r.aged[age]; ok {
		return w
	}
	w := ""
	if why, shut := r.c.phosphorusShutBy(r.c.question(d)); shut {
		w = why.Text
	}
	if r.aged == nil {
		r.aged = map[int]string{}
	}
	r.aged[age] = w
	return w
}

// questionDay is a question that only the day matters to.
func (c *Case) questionDay(d Date) law.Question {
	q := c.asked
	q.Date = law.MonthDay{Month: d.Month, Day: d.Day}
	return q
}

// works tells whether d is one of the crew's days.
func (cr *Crew) works(d Date) bool {
	return len(cr.Days) == 0 || slices.Contains(cr.Days, d.Weekday())
}

// away tells whether the crew is away on d, and when.
func (cr *Crew) away(d Date) (Span, bool) {
	for _, s := range cr.Away {
		if s.Has(d) {
			return s, true
		}
	}
	return Span{}, false
}

// dayWords names the crew's days.
func (cr *Crew) dayWords() string {
	var names []string
	for _, w := range cr.Days {
		names = append(names, w.String())
	}
	return "work days are " + list(names)
}

// carryCost is what a carry to a later window costs. It sets which job gives
// way, not whether one fits.
const carryCost = 10 // [common] more than any day of the window before

// candidates gives the days on which a job may go, each with its cost in units:
// weight × (distance from the ideal day ÷ window length)², and carryCost for
// each window passed over.
func (c *Case) candidates(j *Job) (days []int, cost []int64, blocked map[string]int) {
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
	weight, next, first := j.Kind.of().Weight, 0, c.Start.number()
	shut, run := "", 0 // days in a row are mostly shut for one reason
	note := func() {
		if run > 0 {
			blocked[shut] += run
		}
	}
	for i, w := range j.Windows {
		length, ideal := float64(max(1, w.Days())), w.Ideal.DaysFrom(c.Start)
		from, to := w.From.DaysFrom(c.Start), w.To.DaysFrom(c.Start)
		for n := max(from, next); n <= to; n++ { // windows may touch
			d := &c.days[n]
			if why := rules.against(d); why != "" {
				if why != shut {
					note()
					shut, run = why, 0
				}
				run++
				continue
			}
			off := float64(n-ideal) / length
			days = append(days, first+n)
			cost = append(cost, units(math.Min(900, weight*off*off+carryCost*float64(i))))
		}
		next = max(next, to+1)
	}
	note()
	return days, cost, blocked
}

// nearBlocks lists why days nearer to the ideal than the chosen one are shut
// to the job itself.
func (c *Case) nearBlocks(j *Job, w Window, chosen Date) []string {
	rules := c.dayRules(j)
	var out []string
	step := 1
	if chosen.Before(w.Ideal) {
		step = -1
	}
	for n := w.Ideal.DaysFrom(c.Start); c.days[n].Date != chosen; n += step {
		if why := rules.against(&c.days[n]); why != "" && !slices.Contains(out, why) {
			out = append(out, why)
		}
	}
	return out
}

// mostBlocks joins the reasons that shut a job out of every day, the most
// frequent first.
func mostBlocks(blocked map[string]int) string {
	whys := slices.Sorted(maps.Keys(blocked))
	slices.SortStableFunc(whys, func(a, b string) int { return blocked[b] - blocked[a] })
	return strings.Join(whys, "; ")
}
