package plan

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"swardbook/agronomy/material"
	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/law"
	"swardbook/schedule/word"
)

// program turns all jobs with a day inside it into entries, and tells what is left out.
func (pl *planner) program() *schedule.Program {
	out := pl.frame()
	out.Assumptions = append(out.Assumptions, pl.sowing.Assumed...)
	jobs := pl.jobs()
	out.Entries = slices.Grow(out.Entries, len(jobs))
	for _, j := range jobs {
		if j.On.After(pl.last) || j.On.Before(pl.site.Start) {
			continue
		}
		e := pl.entry(j)
		e.BoundBy = append(e.BoundBy, j.Bound...)
		out.Entries = append(out.Entries, e)
		if j.Bare != "" && j.State != schedule.Finished {
			out.Assumptions = append(out.Assumptions, fmt.Sprintf("%s: the starter of %s brings nitrogen alone, so no bag of starter is needed: %s", j.Area.Name, j.On.Short(), j.Bare))
		}
	}
	for _, l := range pl.lives {
		out.LeftOut = append(append(out.LeftOut, l.closed...), l.left...)
		for i := range l.planned {
			if j := &l.planned[i]; j.On.After(pl.last) {
				out.LeftOut = append(out.LeftOut, schedule.LeftOut{ID: j.ID(), Season: j.Season, N: j.N, Kind: j.Kind, Area: j.AreaID(), Date: j.On, CarriedTo: j.On,
					Reason: "it falls after the last day of the program, " + pl.last.Short()})
			}
		}
	}
	out.LeftOut = append(out.LeftOut, pl.sowing.Left...)
	if pl.found.contested {
		out.Assumptions = append(out.Assumptions, "Several jobs want the same days of the crew: the more important job has the day, and the others move.")
	}
	if pl.found.stopped {
		out.Assumptions = append(out.Assumptions, "So many jobs want the same days that not every arrangement was tried: all limits are kept, but better days may exist.")
	}
	out.TellSupplies()
	out.OwnIDs()
	slices.SortStableFunc(out.LeftOut, func(a, b schedule.LeftOut) int { return cmp.Compare(a.ID, b.ID) })
	out.NextJobs()
	out.InSiteUnits()
	return out
}

// jobs gives every job that has a day, in order of time.
func (pl *planner) jobs() []*schedule.Job {
	var out []*schedule.Job
	open := map[string]*schedule.Job{} // what is left of jobs done in part
	add := func(l *life, j *schedule.Job, over bool) {
		if over || j.Rest { // a copy, as its state or its note is its own
			own := *j
			j = &own
		}
		switch {
		case over && j.Rest && j.Kind.Sows():
			j.State = schedule.Missed
		case over && !j.Rest: // a rest is never taken: it joins the next dressing
			j.State, j.Note, j.Closed = schedule.Taken, "not on record: taken as done as planned", l.closedOn(j)
		}
		if j.Rest {
			open[j.ID()] = j
		}
		out = append(out, j)
	}
	for _, l := range pl.lives {
		for i := range l.planned {
			add(l, &l.planned[i], false)
		}
		for i := range l.down.all {
			if j := l.down.all[i].Presumed; j != nil && !j.On.After(pl.last) {
				add(l, j, l.over(j))
			}
		}
	}
	for i := range pl.sowing.Jobs {
		if j := &pl.sowing.Jobs[i]; j.Rest {
			l := pl.life(j.AreaID())
			add(l, j, l.over(j))
		}
	}
	var done []*schedule.Job
	for _, l := range pl.lives {
		recorded := pl.recorded(l)
		for i := range recorded {
			j := &recorded[i]
			if rest := open[j.ID()]; rest != nil {
				words := word.Percent(j.Part) + " of the seed"
				if j.Spreads() {
					words = pl.site.Measure().DoseWords(j.Dose, l.area.Size)
				}
				if j.Spreads() && !j.On.Before(pl.site.Start) {
					rest.Begun = j
				}
				rest.Note = strings.TrimSpace("down already: " + words + ", " + j.On.Short() + ". " + j.Note)
				continue
			}
			done = append(done, j)
		}
	}
	sown := map[string]bool{}
	for _, j := range done {
		sown[j.ID()] = true
	}
	for i := range pl.sowing.Jobs {
		if j := &pl.sowing.Jobs[i]; !j.Rest && !sown[j.ID()] {
			out = append(out, j)
		}
	}
	out = append(out, done...)
	notices := pl.notices()
	for i := range notices {
		out = append(out, &notices[i])
	}
	slices.SortStableFunc(out, func(a, b *schedule.Job) int { return a.On.Compare(b.On) })
	return out
}

// recorded gives the jobs of the record book. Lines about the same job are one job, and
// what they brought adds up. A missed job is given too, unless it is planned again or was
// done after all.
func (pl *planner) recorded(l *life) []schedule.Job {
	var out []schedule.Job
	at := map[string]int{}
	m := pl.site.Measure()
	parts, by := map[string][]string{}, map[string]string{}
	for i := range l.down.all {
		d := &l.down.all[i]
		if d.Presumed != nil {
			continue
		}
		j := schedule.Job{Kind: d.Kind, Season: d.Season, N: d.N, Area: l.area, Dose: d.Dose, Part: d.Part, On: d.Date, By: d.By, State: schedule.Finished, Note: d.Note}
		switch {
		case d.NotDone:
			j.State = schedule.Missed
		case d.Taken:
			j.State, j.Note = schedule.Taken, "not on record: taken as done as planned"
		}
		why := "the soil report of " + d.Date.Short()
		if d.Line > 0 {
			why = fmt.Sprintf("line %d of the record book", d.Line)
		}
		j.Why = []schedule.Reason{{Text: why}}
		id := j.ID()
		by[id] = cmp.Or(d.By, by[id])
		if n, again := at[id]; again {
			o := &out[n]
			if j.State == schedule.Missed || o.State == schedule.Missed {
				if j.State != schedule.Missed {
					out[n] = j
				}
			} else {
				j.Dose, j.Part, j.Why = material.Sum(o.Dose, d.Dose), min(1, o.Part+d.Part), append(o.Why, j.Why...)
				out[n] = j
			}
		} else {
			at[id] = len(out)
			out = append(out, j)
		}
		if d.Dose.Rate > 0 {
			parts[id] = append(parts[id], m.DoseWords(d.Dose, l.area.Size)+" on "+d.Date.Short())
		} else if d.Part > 0 {
			parts[id] = append(parts[id], word.Percent(d.Part)+" of the seed on "+d.Date.Short())
		}
	}
	planned := map[string]bool{}
	for i := range l.planned {
		planned[l.planned[i].ID()] = !l.planned[i].Rest
	}
	for i := range l.down.all {
		if p := l.down.all[i].Presumed; p != nil && !p.Rest {
			planned[p.ID()] = true
		}
	}
	out = slices.DeleteFunc(out, func(j schedule.Job) bool { return planned[j.ID()] })
	for i := range out {
		j := &out[i]
		what := word.Capital(j.Kind.Noun()) + " on"
		if j.OnlyNitrogen() {
			what = "Food for new seed on"
		}
		j.Title = what + " " + l.area.Name
		j.Summary = j.Title
		if j.Dose.Rate > 0 {
			j.Title = word.Title(what, l.area.Name, m.Amount(j.Dose, l.area.Size), "", schedule.TitleLength)
			j.Summary += ", " + m.DoseWords(j.Dose, l.area.Size)
		} else if j.Part > 0 && j.Part < 1-schedule.LeastRest {
			part := word.Percent(j.Part) + " of the seed"
			j.Title = word.Title(what, l.area.Name, part, "", schedule.TitleLength)
			j.Summary += ", " + part
		}
		if lines := parts[j.ID()]; len(lines) > 1 {
			j.Note = strings.TrimSpace(j.Note + " " + word.Capital(word.List(lines)) + ".")
		}
		if by := by[j.ID()]; by != "" {
			j.Summary += ", by " + pl.site.PersonName(by)
		}
		j.Summary += "."
	}
	return out
}

// boundBy says what kept a job from better days, or that it has the ideal one.
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
	for _, b := range days.Causes[i][:min(3, len(days.Causes[i]))] { // the causes for the days that would have cost least
		if t := days.blockedBy(b); !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	if len(out) == 0 {
		out = append(out, "done together with the same material elsewhere")
	}
	return out
}

// entry turns a job with its day into an entry.
func (pl *planner) entry(j *schedule.Job) schedule.Entry {
	s, d := pl.site, j.Dose
	w := j.Window()
	e := schedule.Entry{
		ID: j.ID(), UID: schedule.UID(s.ID, j.AreaID(), j.Kind, j.Season, j.N), Kind: j.Kind, Season: j.Season, Rest: j.Rest, Title: j.Title, Summary: j.Summary,
		Date: j.On, Earliest: w.From, Latest: w.To, Ideal: w.Ideal, LastSafe: w.Last, Window: schedule.WindowWords(w),
		Who: cmp.Or(j.By, s.Who(j.ID())), Steps: j.Steps, IfRain: j.IfRain, Cautions: j.Cautions,
		Because: j.Because, Why: j.Why, State: cmp.Or(j.State, schedule.Planned), Note: j.Note, Closed: j.Closed,
		BoundBy: []string{}, Dose: d, WaterIn: j.WaterIn.Low,
	}
	if j.Begun != nil {
		begun := pl.entry(j.Begun)
		e.Begun = &begun
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

// frame makes the program with everything but its entries and what is left out.
func (pl *planner) frame() *schedule.Program {
	s := pl.site
	out := &schedule.Program{
		Format: 1, Title: s.Title, SiteID: s.ID, Start: s.Start, Through: pl.last, Metric: s.Metric, Site: s,
		Place:   schedule.PlaceShown{Where: pl.almanac.Where, State: s.Place.State, County: s.County, Hardiness: s.Place.Hardiness, ClimateFrom: pl.almanac.From, Better: pl.almanac.Better},
		Season:  pl.almanac.Season(s.Measure(), pl.season(), s.Start),
		Entries: []schedule.Entry{}, LeftOut: []schedule.LeftOut{}, InTheShed: []string{}, Laws: []schedule.LawLine{}, LawNotes: []string{},
	}
	out.Assumptions = []string{}
	for _, a := range s.Assumed {
		out.Assumptions = append(out.Assumptions, a.Text)
	}
	assumed := pl.site.NotPlanned()
	for _, l := range pl.lives {
		assumed = append(assumed, l.shown.Notes...)
		for _, a := range l.area.Assumed {
			assumed = append(assumed, a.Text)
		}
		if why, mixed := l.area.Stand.Mixed(); mixed {
			assumed = append(assumed, l.area.Name+": "+why.Text)
		}
	}
	out.Assumptions = append(out.Assumptions, schedule.Unique(append(assumed, pl.notes...))...)
	for _, l := range pl.lives {
		c := *l.shown
		c.Down, c.Yearly = l.down.all, l.yearly()
		out.Areas = append(out.Areas, c.Shown())
		out.InTheShed = append(out.InTheShed, c.InShed...)
		out.Cases = append(out.Cases, &c)
		out.Chapters = append(out.Chapters, l.all...)
	}
	out.BookNotes, out.Table = pl.notes, pl.kinds
	pl.laws(out)
	return out
}

// yearly gives the nitrogen planned for each season, by the last plan of each.
func (l *life) yearly() (out []schedule.YearlyN) {
	for i, c := range l.all {
		if i+1 == len(l.all) || l.all[i+1].Year != c.Year {
			out = append(out, c.Yearly...)
		}
	}
	return out
}

// season gives the season of the first area's grass, which stands for the site.
func (pl *planner) season() climate.Season {
	if len(pl.site.Areas) > 0 {
		return pl.site.Areas[0].Stand.Season()
	}
	return climate.Cool
}

// laws lists the rules that the site stands under, once.
func (pl *planner) laws(out *schedule.Program) {
	s := pl.site
	for _, r := range pl.law.Rules {
		if r.Extent == law.InTown { // the notes say to ask about it
			continue
		}
		out.Laws = append(out.Laws, schedule.LawLine{Text: r.Statement(), Citation: r.Citation, AsOf: r.Dated(), Dated: r.AsOf, Sure: r.Confidence.String() + ", " + r.How.String()})
	}
	st, _, err := law.For(s.Place.State, s.County, s.CrewIs())
	if err != nil {
		out.LawNotes = append(out.LawNotes, "No state is given, so no state law is looked up: ask the county extension office.", law.NoAdvice)
		return
	}
	out.LawNotes = append(out.LawNotes, st.Lines(s.County, s.CrewIs())...)
}
