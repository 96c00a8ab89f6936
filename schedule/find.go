package schedule

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/climate"
	"swardbook/schedule/word"
)

// Find looks a job up by its id ("east/lime/2026-1"), or by a part that fits only
// one job: "lime/2026-1", "east/lime", "lime". An older id ("east/lime/1") is that of
// the first season. It gives the entry, or what was left
// out. The error names jobs that come near.
func (p *Program) Find(job string) (*Entry, *LeftOut, error) {
	job = strings.Trim(strings.TrimSpace(job), "/")
	var ids []string
	for i := range p.Entries {
		if p.Entries[i].ID == job {
			return &p.Entries[i], nil, nil
		}
		ids = append(ids, p.Entries[i].ID)
	}
	for i := range p.LeftOut {
		if p.LeftOut[i].ID == job {
			return nil, &p.LeftOut[i], nil
		}
		ids = append(ids, p.LeftOut[i].ID)
	}
	if id := p.olderID(job); id != "" {
		return p.Find(id)
	}
	var near []string
	for _, id := range ids {
		if job != "" && fits(id, job) && !slices.Contains(near, id) {
			near = append(near, id)
		}
	}
	switch len(near) {
	case 1:
		return p.Find(near[0])
	case 0:
		hint := agronomy.NearestName(job, Unique(ids))
		if hint == "" {
			hint = strings.Join(Unique(ids), ", ")
		}
		return nil, nil, fmt.Errorf("no job %q; there is %s", job, hint)
	}
	return nil, nil, fmt.Errorf("%q fits several jobs: %s", job, strings.Join(near, ", "))
}

// olderID turns an id without a season ("east/lime/1") into that of the first season
// that has such a job; "" if the name is none.
func (p *Program) olderID(job string) string {
	area, k, season, n, err := p.Kinds().JobName(job)
	if err != nil || n == 0 || season > 0 {
		return ""
	}
	first, year, areas := "", 0, map[string]bool{}
	try := func(id string) {
		a, kind, s, number, err := p.Kinds().JobName(id)
		if err != nil || kind != k || number != n || area != "" && a != area {
			return
		}
		if areas[a] = true; first == "" || s < year {
			first, year = id, s
		}
	}
	for _, e := range p.Entries {
		try(e.ID)
	}
	for _, l := range p.LeftOut {
		try(l.ID)
	}
	if len(areas) > 1 { // it may be any of them
		return ""
	}
	return first
}

// fits tells whether the parts of a name stand in an id, in order.
func fits(id, name string) bool {
	want := strings.Split(name, "/")
	for part := range strings.SplitSeq(id, "/") {
		if len(want) > 0 && part == want[0] {
			want = want[1:]
		}
	}
	return len(want) == 0
}

// Standing says in a word how a job stands on a day. "done" and "missed" are on record.
// A job that is not on record is "planned" before its day, "due" from its day to the end of
// its window or until the next line or answer of its area, and then "taken": it counts as
// done as planned until the record book says otherwise. A starter that goes down with the
// seed is due as long as the sowing. What is left of a job done in part is never taken, as
// it joins the next dressing; what is left of a sowing joins none and is "missed". A notice
// is "past" after its day.
func (p *Program) Standing(e *Entry, today Date) string {
	latest := e.Latest
	if seed := p.seedOf(e); seed != nil {
		latest = seed.Latest
	}
	switch {
	case e.State != Planned && !p.stillOpen(e, today):
		return string(e.State)
	case e.Kind.Notice() && today.After(e.Date):
		return past
	case today.After(latest) && e.Rest && e.Kind.Sows():
		return string(Missed)
	case today.After(latest) && e.Rest:
		return string(Finished)
	case today.After(latest):
		return string(Taken)
	case !today.Before(e.Date):
		return string(Due)
	}
	return string(Planned)
}

// stillOpen tells of a job that the program takes as done whether it is not yet on a day:
// what closes it is still to come, or the sowing whose seed it goes down with is due.
func (p *Program) stillOpen(e *Entry, today Date) bool {
	if e.State != Taken || today.IsZero() {
		return false
	}
	seed := p.seedOf(e)
	return today.Before(e.Closed) || seed != nil && !today.After(seed.Latest)
}

// seedOf gives the sowing whose seed a starter goes down with, while it is not on record:
// the starter waits for it; nil if there is none.
func (p *Program) seedOf(e *Entry) *Entry {
	if e.Kind != Starter || e.Earliest != e.Latest {
		return nil
	}
	i := slices.IndexFunc(p.Entries, func(o Entry) bool {
		return o.Kind == Sow && o.Area == e.Area && o.Date == e.Date && !o.Rest && (o.State == Planned || o.State == Due)
	})
	if i < 0 {
		return nil
	}
	return &p.Entries[i]
}

const past = "past"

// Settled gives the program with what a day has settled and no more: a job that a later
// line or answer closes is as open as any, and what was left of a job done in part is no
// job once its days are over, but the part on record is.
func (p *Program) Settled(today Date) *Program {
	q := *p
	q.Entries = slices.Clone(p.Entries)
	changed := false
	for i := range q.Entries {
		e := &q.Entries[i]
		if p.stillOpen(e, today) {
			e.State, e.Note, changed = Planned, "", true
		}
		if e.Begun != nil && p.Standing(e, today) == string(Finished) {
			*e, changed = *e.Begun, true
		}
		if e.State == Planned && today.After(e.Latest) {
			if seed := p.seedOf(e); seed != nil && !today.After(seed.Latest) {
				e.Latest, e.LastSafe = seed.Latest, seed.LastSafe
			}
		}
	}
	if changed {
		slices.SortStableFunc(q.Entries, func(a, b Entry) int { return a.Date.Compare(b.Date) })
		q.NextJobs()
	}
	return &q
}

// AsOf gives the program as a day sees it: each job in its state, each area with
// the report and the needs that then hold.
func (p *Program) AsOf(today Date) *Program {
	q := *p.Settled(today)
	for i := range q.Entries {
		e := &q.Entries[i]
		if e.State = State(p.Standing(e, today)); e.State == past {
			e.State = Finished
		}
		if e.State == Due {
			e.GoodDay = q.goodDay(e, today)
		}
	}
	q.used = q.usedUp()
	for _, w := range p.Site.Awaited(today) {
		q.Awaited = append(q.Awaited, word.Sentence(w.Message)+" "+word.Sentence(word.Capital(w.Hint)))
	}
	q.Areas = slices.Clone(p.Areas)
	var shed []string
	for i := range q.Areas {
		var now *Case
		for _, c := range p.Chapters {
			if c.Area.ID == q.Areas[i].ID && (!c.Start.After(today) || c.first(p.Chapters)) {
				now = c
			}
		}
		if now != nil {
			if a := &q.Areas[i]; a.of != now.Area || a.Moved != nil {
				*a = now.Shown()
			}
			shed = append(shed, now.shedWords()...)
		}
	}
	var then []string // what the shed was to do for the areas when the last was read
	for _, c := range p.Cases {
		then = append(then, c.shedWords()...)
	}
	q.InTheShed = append(shed, slices.DeleteFunc(slices.Clone(p.InTheShed), func(t string) bool { return slices.Contains(then, t) })...)
	return &q
}

// shedWords says what the lime on hand does for the area, in the site's units.
func (c *Case) shedWords() []string { return c.Site.speaker().all(slices.Clone(c.InShed)) }

// first tells whether no other case of the area comes before it.
func (c *Case) first(all []*Case) bool {
	i := slices.IndexFunc(all, func(o *Case) bool { return o.Area.ID == c.Area.ID })
	return all[i] == c
}

// Filter gives the program cut to one area, one person and some kinds; empty
// values do not cut. Notices for the whole site stay, whatever the area or the
// person.
func (p *Program) Filter(area, person string, ks []Kind) *Program {
	q := *p
	q.Entries = []Entry{}
	for _, e := range p.Entries {
		whole := e.Kind.Notice()
		if (area == "" || e.Area == area || whole && e.Area == "") && (person == "" || e.Who == person || whole) &&
			(len(ks) == 0 || slices.Contains(ks, e.Kind)) {
			q.Entries = append(q.Entries, e)
		}
	}
	q.LeftOut = []LeftOut{}
	for _, l := range p.LeftOut {
		if (area == "" || l.Area == area) && (len(ks) == 0 || slices.Contains(ks, l.Kind)) {
			q.LeftOut = append(q.LeftOut, l)
		}
	}
	if area != "" {
		q.Areas = slices.DeleteFunc(slices.Clone(p.Areas), func(a AreaShown) bool { return a.ID != area })
	}
	return &q
}

// Year is the year of the site's place: as it was planned by, else worked out.
func (p *Program) Year() (*climate.Year, error) {
	if len(p.Chapters) > 0 {
		return p.Chapters[0].Almanac.Year, nil
	}
	return p.Site.Year()
}

// CaseOf gives the case of an area; nil for none.
func (p *Program) CaseOf(area string) *Case {
	for _, c := range p.Cases {
		if c.Area.ID == area {
			return c
		}
	}
	return nil
}

// SeasonBegins gives the first day of a season of the area, or the day from which
// what was done counts to it.
func (c *Case) SeasonBegins(year int) Date {
	begins := c.Almanac.YearBegins(year, c.Season)
	if year == c.SeasonOf(Later(c.Site.Start, c.Seeded)) {
		begins = begins.AddDays(-joinsNext)
	}
	return begins
}

// nearJob is how far a line that names a kind alone may lie from the job it is
// about, in days.
const nearJob = 60 // [common]

// Meant finds the job that a line of the record book is about. A line without season and
// number means the nearest job of its kind that is not on record yet or, if none is near,
// a new one of the season that holds its day. The entry is nil if the program has no such
// job, or all of it is on record.
func (p *Program) Meant(area string, k Kind, season, n int, on Date) (int, int, *Entry) {
	c := p.CaseOf(area)
	if c == nil {
		return 0, 0, nil
	}
	var best *Entry
	off, last := nearJob+1, 0
	of := season
	if of == 0 {
		of = c.Almanac.TurfYear(on, c.Season)
		if first := c.SeasonOf(Later(c.Site.Start, c.Seeded)); of == first-1 && !on.Before(c.Site.Start) {
			of = first
		}
	}
	for i := range p.Entries {
		e := &p.Entries[i]
		if e.Area != area || e.Kind != k {
			continue
		}
		_, _, year, number, err := p.Kinds().JobName(e.ID)
		if err != nil || year != of {
			continue
		}
		last = max(last, number)
		open := e.State != Finished && (e.State != Missed || e.Rest)
		if n > 0 {
			if number == n && open {
				best = e
			}
			continue
		}
		if d := e.Date.DaysFrom(on); open && max(d, -d) < off {
			off, best = max(d, -d), e
		}
	}
	switch {
	case n > 0:
		return of, n, best
	case best != nil:
		_, _, _, n, _ = p.Kinds().JobName(best.ID)
		return of, n, best
	}
	for _, d := range c.Down {
		if d.Kind == k && d.Season == of {
			last = max(last, d.N)
		}
	}
	return of, last + 1, nil
}

// startOfNext is how much of the season to come is shown beside the one that holds
// the day.
const startOfNext = 60 // [common] days: its first jobs

// Around gives the program cut to the season that holds a day and the start of the
// next, area by area, with the place's year as it lies in that season.
func (p *Program) Around(today Date) *Program {
	if len(p.Cases) == 0 || today.IsZero() {
		return p
	}
	today = Later(p.Start, Earlier(today, p.Through))
	spans, years := map[string]Span{}, map[string]int{}
	for i, c := range p.Cases {
		y := max(c.Almanac.TurfYear(today, c.Season), c.SeasonOf(Later(p.Start, c.Seeded)))
		s := Span{c.Almanac.YearBegins(y, c.Season), c.Almanac.YearBegins(y+1, c.Season).AddDays(startOfNext)}
		spans[c.Area.ID], years[c.Area.ID] = s, y
		if i == 0 {
			spans[""] = s
		}
	}
	q := *p
	first := p.Cases[0]
	q.Season = first.Almanac.Season(first.Measure(), first.Season, Later(p.Start, spans[""].From))
	q.Season.Words = p.Season.Words
	shown := func(e *Entry) bool {
		return spans[e.Area].Has(e.Date) || e.Area != "" && e.Season == years[e.Area]
	}
	n := 0
	for i := range p.Entries {
		if shown(&p.Entries[i]) {
			n++
		}
	}
	q.Entries, q.LeftOut = make([]Entry, 0, n), []LeftOut{}
	for i := range p.Entries {
		e := &p.Entries[i]
		if shown(e) {
			q.Entries = append(q.Entries, *e)
		} else if e.Date.After(today) && !e.Kind.Notice() && (q.Later.IsZero() || e.Date.Before(q.Later)) {
			q.Later = e.Date
		}
	}
	for _, l := range p.LeftOut {
		if l.Season == years[l.Area] {
			q.LeftOut = append(q.LeftOut, l)
		}
	}
	return &q
}
