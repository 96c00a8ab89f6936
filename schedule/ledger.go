package schedule

import (
	"cmp"
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule/word"
)

// Ledger is the nutrients down and planned in each area, over time, against
// their limits.
type Ledger struct {
	Areas []AreaLedger `json:"areas"`
	Notes []string     `json:"notes,omitzero"` // about the record book: lines that count for nothing
}

// AreaLedger is the ledger of one area.
type AreaLedger struct {
	Area    string        `json:"area"`
	Name    string        `json:"name"`
	Lines   []LedgerLine  `json:"lines"`
	Limits  []LedgerLimit `json:"limits"`
	Verdict string        `json:"verdict"` // "did we over-apply?" in one sentence
}

// How sure it is that the application of a ledger line is down.
const (
	OnRecord    = "on record"
	TakenAsDone = "taken as done" // its day is past and it is not on record
	ToCome      = "planned"
)

// LedgerLine is one application, down or planned.
type LedgerLine struct {
	Date    Date                 `json:"date"`
	Job     string               `json:"job"`
	Text    string               `json:"text"`
	State   string               `json:"state"` // [OnRecord], [TakenAsDone] or [ToCome]
	Down    bool                 `json:"down"`  // on record or taken as done
	N       agronomy.PerThousand `json:"n_lb_per_1000_sqft"`
	SlowN   agronomy.PerThousand `json:"slow_n_lb_per_1000_sqft"`
	P2O5    agronomy.PerThousand `json:"p2o5_lb_per_1000_sqft"`
	K2O     agronomy.PerThousand `json:"k2o_lb_per_1000_sqft"`
	Lime    agronomy.PerThousand `json:"lime_lb_per_1000_sqft"`
	FeedsTo Date                 `json:"feeds_to,omitzero"`          // last day on which its nitrogen feeds
	SumN    agronomy.PerThousand `json:"sum_n_lb_per_1000_sqft"`     // since the start of the turf year
	Feeding agronomy.PerThousand `json:"feeding_n_lb_per_1000_sqft"` // what is still to be released of all slow nitrogen down by then
}

// LedgerLimit is one limit and how near the area comes to it.
type LedgerLimit struct {
	What   string               `json:"what"` // "nitrogen in a year", "quick nitrogen in 30 days", …
	Limit  agronomy.PerThousand `json:"limit_lb_per_1000_sqft"`
	Most   agronomy.PerThousand `json:"most_lb_per_1000_sqft"` // the most that comes together under it
	Down   agronomy.PerThousand `json:"down_lb_per_1000_sqft"` // the most of what is down
	Passed bool                 `json:"passed"`
	Source string               `json:"source,omitzero"`
}

// applied is one application behind a line.
type applied struct {
	LedgerLine
	dose material.Dose
}

func (c *Case) ledger(p *Program, today Date, in Span) AreaLedger {
	l := AreaLedger{Area: c.Area.ID, Name: c.Area.Name}
	all := c.Applications(p, today)
	c.feed(all)
	m := c.Measure()
	for i := range all {
		all[i].Text = m.DoseWords(all[i].dose, c.Area.Size)
	}
	all = slices.DeleteFunc(all, func(a applied) bool { return !in.Has(a.Date) })
	l.Lines, l.Limits = lines(all), c.Limits(all)
	l.Verdict = verdict(c, l)
	return l
}

// lines gives the lines of applications as they are shown.
func lines(all []applied) []LedgerLine {
	out := make([]LedgerLine, len(all))
	for i := range all {
		out[i] = all[i].rounded()
	}
	return out
}

// Verdict gives the verdict of an area's part of [Program.Ledger] alone.
func (c *Case) Verdict(p *Program, today Date) string {
	in := p.whole()
	all := slices.DeleteFunc(c.Applications(p, today), func(a applied) bool { return !in.Has(a.Date) })
	return verdict(c, AreaLedger{Lines: lines(all), Limits: c.Limits(all)})
}

func (l LedgerLine) rounded() LedgerLine {
	for _, r := range []*agronomy.PerThousand{&l.N, &l.SlowN, &l.P2O5, &l.K2O, &l.Lime, &l.SumN, &l.Feeding} {
		*r = rounded(*r, 3)
	}
	return l
}

// Applications joins the record book with what is planned, by date.
func (c *Case) Applications(p *Program, today Date) []applied {
	out := make([]applied, 0, len(p.Entries))
	add := func(d Date, job, state string, dose *material.Dose) {
		a := applied{LedgerLine{Date: d, Job: job, State: state, Down: state != ToCome,
			N: dose.N, SlowN: dose.SlowN, P2O5: dose.P2O5, K2O: dose.K2O}, *dose}
		if dose.Material.Kind == material.LimeMaterial {
			a.N, a.SlowN, a.P2O5, a.K2O, a.Lime = 0, 0, 0, 0, dose.Rate
		}
		out = append(out, a)
	}
	for i := range c.Down {
		d := &c.Down[i]
		if !d.NotDone && d.Presumed == nil && d.Dose.Rate > 0 {
			state := OnRecord
			if d.Taken {
				state = TakenAsDone
			}
			add(d.Date, JobID(d.AreaID, d.Kind, d.Season, d.N), state, &d.Dose)
		}
	}
	for i := range p.Entries {
		e := &p.Entries[i]
		if e.Area != c.Area.ID || e.Dose.Rate == 0 {
			continue
		}
		state := ToCome
		switch p.Standing(e, today) {
		case string(Planned), string(Due):
		case string(Taken):
			state = TakenAsDone
		default:
			continue // it stands among the lines of the book
		}
		add(e.Date, e.ID, state, &e.Dose)
	}
	slices.SortStableFunc(out, func(a, b applied) int {
		return cmp.Or(a.Date.Compare(b.Date), cmp.Compare(a.Job, b.Job))
	})
	return out
}

// Limits measures the applications against the year, 30 days, single doses and
// the law.
func (c *Case) Limits(all []applied) []LedgerLimit {
	lim := c.MostN
	n := func(a *applied) agronomy.PerThousand { return a.N }
	quick := func(a *applied) agronomy.PerThousand { return a.N - a.SlowN }
	p2o5 := func(a *applied) agronomy.PerThousand { return a.P2O5 }
	k2o := func(a *applied) agronomy.PerThousand { return a.K2O }
	var out []LedgerLimit
	add := func(what string, limit agronomy.PerThousand, source string, days int, of func(*applied) agronomy.PerThousand) {
		l := LedgerLimit{What: what, Limit: limit, Source: source}
		l.Most, l.Down = most(all, false, days, of), most(all, true, days, of)
		l.Passed = l.Most > limit+1e-6
		out = append(out, l)
	}
	for _, y := range c.Yearly {
		from, to := c.Almanac.YearBegins(y.Year, c.Season), c.Almanac.YearBegins(y.Year+1, c.Season).AddDays(-1)
		l := LedgerLimit{What: fmt.Sprintf("nitrogen wanted, year from %s", from.Short()), Limit: y.Total}
		for i := range all {
			a := &all[i]
			if !(Span{from, to}).Has(a.Date) {
				continue
			}
			l.Most += a.N
			if a.Down {
				l.Down += a.N
			}
		}
		l.Passed = l.Most > l.Limit+LeastDose
		if l.Most > 0 {
			out = append(out, l)
		}
	}
	if lim.Year > 0 {
		add("nitrogen in any 12 months", lim.Year, "ksu-eckert", 365, n)
	}
	add("quick nitrogen in any 30 days", lim.Soluble30Days, "common", 30, quick)
	add("quick nitrogen at once", lim.Soluble, "md-ag-6-224", 1, quick)
	q := c.Asked
	if l, ok := c.Law.NCap(q); ok {
		add("nitrogen at once, by law", agronomy.PerThousand(l.Value), l.Rule.Citation, 1, n)
	}
	if l, ok := c.Law.SolubleCap(q); ok {
		add("quick nitrogen at once, by law", agronomy.PerThousand(l.Value), l.Rule.Citation, 1, quick)
	}
	if l, ok := c.Law.AnnualNCap(q); ok {
		add("nitrogen in any 12 months, by law", agronomy.PerThousand(l.Value), l.Rule.Citation, 365, n)
	}
	if l, ok := c.Law.PCap(q); ok {
		add("phosphorus (P₂O₅) at once, by law", agronomy.PerThousand(l.Value), l.Rule.Citation, 1, p2o5)
	}
	if l, ok := c.Law.PAnnualCap(q); ok {
		add("phosphorus (P₂O₅) in any 12 months, by law", agronomy.PerThousand(l.Value), l.Rule.Citation, 365, p2o5)
	}
	add("potassium (K₂O) at once", MostKAtOnce, "common", 1, k2o)
	return out
}

// most gives the largest sum within any run of so many days, of all or only of what is
// down.
func most(all []applied, down bool, days int, of func(*applied) agronomy.PerThousand) agronomy.PerThousand {
	type day struct {
		on  Date
		sum agronomy.PerThousand
	}
	on := make([]day, 0, len(all))
	for i := range all {
		a := &all[i]
		if down && !a.Down {
			continue
		}
		if n := len(on); n == 0 || on[n-1].on != a.Date {
			on = append(on, day{on: a.Date})
		}
		on[len(on)-1].sum += of(a)
	}
	var best agronomy.PerThousand
	for i, first := range on {
		var sum agronomy.PerThousand
		for _, d := range on[i:] {
			if d.on.DaysFrom(first.on) >= days {
				break
			}
			sum += d.sum
		}
		best = max(best, sum)
	}
	return best
}

func verdict(c *Case, l AreaLedger) string {
	m := c.Measure()
	var down, passed []string
	var n, taken agronomy.PerThousand
	for _, x := range l.Lines {
		if x.Down {
			n += x.N
		}
		if x.State == TakenAsDone {
			taken += x.N
		}
	}
	for _, x := range l.Limits {
		switch {
		case x.Down > x.Limit+1e-6:
			down = append(down, fmt.Sprintf("%s: %s against %s", x.What, m.Rate(x.Down), m.Rate(x.Limit)))
		case x.Passed:
			passed = append(passed, x.What)
		}
	}
	switch {
	case len(down) > 0:
		return "Over the limit: " + word.List(down) + "."
	case len(passed) > 0:
		return "Within limits so far; with what is planned, over the limit: " + word.List(passed) + "."
	case n == 0:
		return "Within limits: no nitrogen is down yet, and what is planned keeps every limit."
	}
	unsure := ""
	switch {
	case taken > 0 && taken > n-1e-6:
		unsure = " (none of it on record, all taken as done as planned)"
	case taken > 0:
		unsure = fmt.Sprintf(" (%s of it not on record, taken as done as planned)", m.NutrientRate(taken, "N"))
	}
	return fmt.Sprintf("Within limits: %s is down%s, and what is planned keeps every limit.", m.NutrientRate(n, "N"), unsure)
}

// Ledger gives the nutrients of every area against their limits, as of a day: a job whose
// window is over by then counts as taken as done. If the day is unset, only a job before a
// line of the record book does.
func (p *Program) Ledger(today Date) Ledger {
	return p.ledgerIn(today, func(*Case) Span { return p.whole() })
}

// whole is the span of [Program.Ledger].
func (p *Program) whole() Span { return Span{Date{}, p.Through.AddDays(Endless)} }

// LedgerAround is [Program.Ledger] of the 12 months around a day.
func (p *Program) LedgerAround(today Date) Ledger {
	return p.ledgerIn(today, func(*Case) Span { return Span{today.AddMonths(-6), today.AddMonths(6)} })
}

// LedgerOf is [Program.Ledger] of one season.
func (p *Program) LedgerOf(season int, today Date) Ledger {
	return p.ledgerIn(today, func(c *Case) Span {
		return Span{c.SeasonBegins(season), c.Almanac.YearBegins(season+1, c.Season).AddDays(-1)}
	})
}

func (p *Program) ledgerIn(today Date, in func(*Case) Span) Ledger {
	l := Ledger{Areas: []AreaLedger{}, Notes: p.BookNotes}
	for _, c := range p.Cases {
		l.Areas = append(l.Areas, c.ledger(p, today, in(c)))
	}
	return l
}
