package schedule

import (
	"fmt"
	"math"
	"slices"

	"swardbook/agronomy"
	"swardbook/climate"
)

// growSeason is one feeding season of a turf year.
type growSeason struct {
	name  string // "autumn", "spring", "summer"
	share float64
	span  opening
}

// shortest is the least part of a season inside the program, in days, for
// which its nitrogen is planned; a season that is only touched belongs to the
// next program.
const shortest = 45 // [common]

// planNitrogen plans the nitrogen of each turf year that the program covers.
func (c *Case) planNitrogen(p, k *want) {
	first := c.almanac.turfYear(c.Start, c.season)
	last := c.almanac.turfYear(c.Through, c.season)
	n := 0
	for y := first; y <= last; y++ {
		n = c.turfYearNitrogen(y, n, p, k)
	}
}

// yearlyN is the nitrogen wanted in one turf year.
type yearlyN struct {
	year  int
	total agronomy.PerThousand
}

// turfYearNitrogen plans one turf year; n is the number of the last dose
// before it, and the result the number of its last.
func (c *Case) turfYearNitrogen(y, n int, p, k *want) int {
	f := &c.feeding
	young := !c.seeded.IsZero() && c.almanac.turfYear(c.seeded, c.season) == y
	need, err := agronomy.NitrogenYear(c.nitrogenCase(young))
	if err != nil {
		f.left = append(f.left, LeftOut{ID: jobID(c.Area.ID, Nitrogen, n+1), Kind: Nitrogen, Area: c.Area.ID, Reason: err.Error()})
		return n
	}
	year, why := need.Year, need.Why
	if n == 0 {
		for _, a := range need.Assumed {
			f.assumed = append(f.assumed, c.Area.Name+": "+a.Text)
		}
	}
	if young {
		rules := agronomy.SeedlingsOf(c.Area.Stand)
		year = max(rules.FirstYear[0], min(rules.FirstYear[1], year))
		why = slices.Concat(why, rules.Why, []Reason{{Text: fmt.Sprintf("first year of the stand: %.2f lb N/1000 sq ft in all", float64(year)), Source: "common"}})
	}
	if l, ok := c.law.AnnualNCap(c.question(Date{})); ok && agronomy.PerThousand(l.Value) < year {
		year = agronomy.PerThousand(l.Value)
		why = append(slices.Clip(why), lawReason(l.Rule))
	}
	f.yearly = append(f.yearly, yearlyN{y, year})
	b := nitrogenYear{c: c, year: y, total: year, why: why, n: n, young: young, p: p, k: k}
	b.plan()
	if b.met {
		text := fmt.Sprintf("nitrogen: %s a year", c.Measure().NutrientRate(year, "N"))
		if len(b.parts) > 0 {
			text = fmt.Sprintf("nitrogen: %s (%s a year)", list(b.parts), c.Measure().NutrientRate(year, "N"))
		}
		f.needs = append(f.needs, Need{Kind: Nitrogen, Total: b.wanted, Text: text, Why: b.why})
	}
	return b.n
}

func (c *Case) nitrogenCase(young bool) agronomy.NitrogenCase {
	nc := agronomy.NitrogenCase{Stand: c.Area.Stand, Care: c.Area.Care, State: c.Place.State, Zone: c.zone(),
		ClippingsReturned: c.Area.Clippings, OrganicMatter: c.report.OrganicMatter, New: young}
	if !c.seeded.IsZero() {
		nc.Age = max(0, float64(c.Start.DaysFrom(c.seeded))/365)
	}
	return nc
}

// zone gives the number of the hardiness zone, 0 when it is not known.
func (c *Case) zone() int {
	z, err := climate.ParseZone(c.Place.Hardiness)
	if err != nil {
		return 0
	}
	return int(z)/2 + 1
}

// nitrogenYear shares a turf year's nitrogen out to its seasons.
type nitrogenYear struct {
	c      *Case
	year   int
	total  agronomy.PerThousand
	why    []Reason
	n      int // number of the last dose
	young  bool
	met    bool // that a season of the year lies inside the program
	told   bool // that a season found no day for its nitrogen
	p, k   *want
	wanted agronomy.PerThousand // in the seasons inside the program
	parts  []string             // the same, season by season, in words
}

func (b *nitrogenYear) plan() {
	c := b.c
	seasons, sharesWhy := c.growSeasons(b.year)
	if len(seasons) == 0 {
		if b.n == 0 {
			c.feeding.left = append(c.feeding.left, LeftOut{ID: jobID(c.Area.ID, Nitrogen, 1), Kind: Nitrogen, Area: c.Area.ID,
				Reason: fmt.Sprintf("the place is never warm enough for %s grass to grow well", c.season)})
		}
		return
	}
	b.why = append(slices.Clip(b.why), sharesWhy)
	left := b.total
	if b.young {
		left -= c.between(Span{c.seeded.AddDays(-14), c.almanac.yearBegins(b.year+1, c.season).AddDays(-1)}, nitrogenOf)
		for _, s := range c.feeding.starter {
			left -= s.dose.N
		}
		for _, s := range seasons { // each season takes off its own
			left += b.youngDown(s)
		}
	} else {
		left = max(0, left-b.outside(seasons))
	}
	for _, s := range seasons {
		left = b.season(s, left)
	}
	if b.met && b.young && !b.told && left >= trace {
		next := "before the summer; the next autumn counts it"
		if c.season == climate.Warm {
			next = "before growth ends; the next summer counts it"
		}
		b.leave(b.n+1, fmt.Sprintf("%s of the first year does not fit %s", c.Measure().NutrientRate(left, "N"), next))
	}
}

// outside sums what went down in the turf year between its feeding seasons,
// for example in the heat of summer: it counts against the year all the same.
func (b *nitrogenYear) outside(seasons []growSeason) agronomy.PerThousand {
	var sum agronomy.PerThousand
	for _, d := range b.c.down {
		inSeason := func(s growSeason) bool { return s.span.Has(d.Date) }
		if !d.missed && d.kind != LateNitrogen && b.c.almanac.turfYear(d.Date, b.c.season) == b.year && !slices.ContainsFunc(seasons, inSeason) {
			sum += d.dose.N
		}
	}
	return sum
}

func nitrogenOf(d down) agronomy.PerThousand { return d.dose.N }

// season plans one season's doses and gives what the year has left after it.
func (b *nitrogenYear) season(s growSeason, left agronomy.PerThousand) agronomy.PerThousand {
	c, f := b.c, &b.c.feeding
	plan := seasonPlan{growSeason: s, openings: c.open(), amount: b.total * agronomy.PerThousand(s.share), why: slices.Clip(b.why),
		inside: Span{Later(s.span.From, c.Start), Earlier(s.span.To, c.Through)}}
	if s.share < 1 {
		plan.why = append(plan.why, Reason{Text: fmt.Sprintf("%s share: %.2f × %.2f = %.2f lb N/1000 sq ft", s.name, float64(b.total), s.share, float64(plan.amount))})
	}
	if b.young {
		b.youngSeason(&plan, left)
	} else {
		b.lessDown(&plan, left)
	}
	switch {
	case plan.inside.Days() <= 0:
		b.skip(plan)
		return left - plan.down
	case plan.inside.To == c.Through && plan.inside.Days() < min(shortest, s.span.Days()):
		f.left = append(f.left, LeftOut{ID: jobID(c.Area.ID, Nitrogen, b.n+1), Kind: Nitrogen, Area: c.Area.ID,
			Reason: "the " + s.name + " only begins before the end of the program; its nitrogen belongs to the next one", CarriedTo: s.span.From})
		b.skip(plan)
		return left - plan.down
	}
	b.twelveMonths(&plan)
	left -= plan.down
	wanted := plan.down
	for _, d := range b.planDoses(&plan) {
		left -= d.dose.N
		if b.young {
			wanted += d.dose.N
		}
	}
	if b.young {
		b.wanted = b.total
		wanted += c.starterN(plan.inside)
	} else {
		wanted += plan.due
		b.wanted += wanted
	}
	if b.met = true; wanted < trace {
		return left
	}
	b.parts = append(b.parts, fmt.Sprintf("%s in %s %d", c.Measure().NutrientRate(wanted, "N"), s.name, s.span.From.Year))
	return left
}

// lessDown takes off a season's amount what the record book says went down in
// it, and what an earlier season took of the year beyond its share.
func (b *nitrogenYear) lessDown(s *seasonPlan, left agronomy.PerThousand) {
	s.down = b.c.between(s.span.Span, func(d down) agronomy.PerThousand {
		if d.kind == LateNitrogen {
			return 0
		}
		return d.dose.N
	})
	if s.name == "autumn" { // the late dose is taken out of it, though it goes down after it
		s.lateDown = b.c.lateDown(b.year)
		s.down += s.lateDown
	}
	if s.down > 0 {
		s.why = append(s.why, Reason{Text: fmt.Sprintf("already down this %s: %.2f − %.2f = %.2f lb N/1000 sq ft left", s.name, float64(s.amount), float64(s.down), float64(max(0, s.amount-s.down)))})
	}
	if s.down > s.amount {
		s.why = append(s.why, Reason{Text: fmt.Sprintf("%.2f lb N more than planned went down this %s; what follows is cut by it", float64(s.down-s.amount), s.name)})
	}
	if s.amount > left {
		s.amount = max(0, left)
		s.why = append(s.why, Reason{Text: fmt.Sprintf("only %.2f lb N/1000 sq ft of the year is left", float64(s.amount))})
	}
}

// twelveMonths holds a season to what is left of the most in any 12 months, by
// custom or by law, once what is down and planned before it is counted.
func (b *nitrogenYear) twelveMonths(s *seasonPlan) {
	c, f := b.c, &b.c.feeding
	most, why := agronomy.LimitsOfNitrogen(c.season).Year, Reason{Text: "cool-season lawns need no more in any 12 months", Source: "ksu-eckert"}
	if l, ok := c.law.AnnualNCap(c.question(Date{})); ok && (most == 0 || agronomy.PerThousand(l.Value) < most) {
		most, why = agronomy.PerThousand(l.Value), lawReason(l.Rule)
	}
	if most == 0 || s.inside.Days() <= 0 {
		return
	}
	run := Span{s.inside.To.AddDays(-364), s.inside.To}
	room := most - (c.between(run, nitrogenOf) - s.down)
	for _, feeds := range [][]feed{f.starter, f.nitrogen, f.late} {
		for _, d := range feeds {
			if !d.latest(c).Before(run.From) {
				room -= d.dose.N
			}
		}
	}
	room = max(0, room)
	if s.amount <= room+1e-9 {
		return
	}
	if over := s.amount - room; over >= trace && !b.young {
		f.left = append(f.left, LeftOut{ID: jobID(c.Area.ID, Nitrogen, b.n+1), Kind: Nitrogen, Area: c.Area.ID, Source: why.Source,
			Reason: fmt.Sprintf("%s of the %s share would pass %s in any 12 months: %s", c.Measure().NutrientRate(over, "N"), s.name, c.Measure().NutrientRate(most, "N"), why.Text)})
	}
	s.amount = room
	s.why = append(s.why, Reason{Text: fmt.Sprintf("only %.2f lb N/1000 sq ft is left of the most in any 12 months: %s", float64(room), why.Text), Source: why.Source})
}

// latest gives the last day on which a feed may go down.
func (d feed) latest(c *Case) Date {
	last := c.seeded // a starter with the seed
	for _, o := range d.openings {
		last = Later(last, Earlier(o.To, c.Through))
	}
	return last
}

// youngDown sums the feedings on record that a season of the first year counts
// among its own doses: all but the starter.
func (b *nitrogenYear) youngDown(s growSeason) agronomy.PerThousand {
	c := b.c
	return c.between(Span{Later(s.span.From, c.seeded.AddDays(-14)), s.span.To}, func(d down) agronomy.PerThousand {
		if d.kind == Starter {
			return 0
		}
		return d.dose.N
	})
}

// youngSeason holds a season of the first year to what seedlings stand.
func (b *nitrogenYear) youngSeason(s *seasonPlan, left agronomy.PerThousand) {
	c := b.c
	rules := agronomy.SeedlingsOf(c.Area.Stand)
	s.openings = c.firstFeeds()
	s.amount, s.down = max(0, left), b.youngDown(s.growSeason)
	first := c.emerged().AddDays(rules.FirstDays)
	if s.span.To.Before(first) {
		s.amount = 0
		return
	}
	if s.name == "spring" && s.span.From.After(first) {
		s.amount = min(s.amount, rules.SpringN[1])
		s.why = append(s.why, Reason{Text: fmt.Sprintf("the spring after sowing: up to %.1f lb N/1000 sq ft, once mowed %d times", float64(rules.SpringN[1]), rules.SpringMowings), Source: "common"})
	}
}

// between sums what has gone down in a span.
func (c *Case) between(s Span, of func(down) agronomy.PerThousand) agronomy.PerThousand {
	var sum agronomy.PerThousand
	for _, r := range c.down {
		if !r.missed && s.Has(r.Date) {
			sum += of(r)
		}
	}
	return sum
}

// seasonPlan is a season with what it is to bring.
type seasonPlan struct {
	growSeason
	openings []opening
	inside   Span                 // the part inside the program
	amount   agronomy.PerThousand // of the whole season
	down     agronomy.PerThousand // of it, on record
	lateDown agronomy.PerThousand // of that, what went down as the late dose
	due      agronomy.PerThousand // of what is left, the part of the doses that fall inside the program
	why      []Reason
}

// caps holds a season's doses to common practice, the law, and what seedlings
// stand. Phosphorus is let in only as far as it is wanted and lawful.
func (b *nitrogenYear) caps(s *seasonPlan) (agronomy.Caps, []Reason) {
	c := b.c
	caps, why := c.nCaps(s.span.From)
	if b.young && s.span.Has(c.emerged().AddDays(agronomy.SeedlingsOf(c.Area.Stand).FirstDays)) {
		first := agronomy.SeedlingsOf(c.Area.Stand).FirstN
		caps.N, caps.SolubleN = min(caps.N, first), min(caps.SolubleN, first)
	}
	caps.P2O5 = b.phosphorus()
	return caps, why
}

// phosphorus gives how much a dose may bring along: what is still wanted, or a
// trace where less is, if the law lets any in.
func (b *nitrogenYear) phosphorus() agronomy.PerThousand {
	if b.p.left == 0 {
		return 0
	}
	if _, shut := b.c.phosphorusShut(); shut {
		return 0
	}
	return min(max(b.p.left, trace), b.p.single)
}

// count gives the doses of the whole season, whatever part of it is inside the
// program: the fewest that the caps let, as far as they fit.
func (b *nitrogenYear) count(s *seasonPlan, m agronomy.Material, most agronomy.PerThousand) int {
	n := int(math.Ceil(float64(s.amount/most) - 1e-9))
	os, _ := b.c.lastUseful(meet(s.openings, []opening{s.span}), lastN(m))
	return min(n, b.c.fits(os, s.span.Span, m, most))
}

// skip passes over a season outside the program but keeps its numbers.
func (b *nitrogenYear) skip(s seasonPlan) {
	caps, _ := b.caps(&s)
	urea := agronomy.Material{Kind: agronomy.FertilizerMaterial, Analysis: agronomy.Analysis{N: 46}}
	b.n += b.count(&s, urea, doseCap(urea, caps))
}

// planDoses splits a season's amount into the fewest doses that the caps let,
// spread over the season, and keeps those whose best day lies inside the
// program and that the record book has not settled.
func (b *nitrogenYear) planDoses(s *seasonPlan) []feed {
	c, f := b.c, &b.c.feeding
	late, rest := []feed(nil), s.amount
	if s.name == "autumn" {
		late, rest = b.planLate(s)
		f.late = append(f.late, late...)
	}
	for _, l := range late {
		s.due += l.dose.N
	}
	caps, capWhy := b.caps(s)
	m, ok := b.material(rest, caps)
	if !ok {
		f.left = append(f.left, LeftOut{ID: jobID(c.Area.ID, Nitrogen, b.n+1), Kind: Nitrogen, Area: c.Area.ID, Reason: "no material for it"})
		return late
	}
	most := doseCap(m, caps)
	whole := *s
	whole.amount = rest
	count := b.count(&whole, m, most)
	first := b.n + 1
	b.n += count
	if rest < trace {
		return late
	}
	os, last := c.lastUseful(meet(s.openings, []opening{s.span}), lastN(m))
	if count == 0 {
		b.leave(first, fmt.Sprintf("%s finds no day this %s: %s", c.Measure().NutrientRate(rest, "N"), s.name, closing(os, last)))
		s.due += rest
		b.told = true
		return late
	}
	each := rest / agronomy.PerThousand(count)
	if each > most {
		if !b.young { // what the first year cannot take is told once, for the year
			b.leave(first+count, fmt.Sprintf("%s of the %s share does not fit: the season holds %s of at most %s",
				c.Measure().NutrientRate(rest-most*agronomy.PerThousand(count), "N"), s.name, plural(count, "dose"), c.Measure().NutrientRate(most, "N")))
			s.due += rest - most*agronomy.PerThousand(count)
		}
		each = most
	}
	slots := b.ahead(s, first, count, each)
	want := min(each*agronomy.PerThousand(len(slots)), rest-(s.down-s.lateDown))
	s.due += max(0, want)
	slots = b.settle(s, slots, want, most, os, m)
	return append(late, b.dose(s, slots, count, want, most, caps, os, slices.Concat(capWhy, last))...)
}

// slot is the place of one dose in its season.
type slot struct{ n, i int }

func (b *nitrogenYear) leave(n int, reason string) {
	f := &b.c.feeding
	f.left = append(f.left, LeftOut{ID: jobID(b.c.Area.ID, Nitrogen, n), Kind: Nitrogen, Area: b.c.Area.ID, Reason: reason})
}

// material gives the material that would carry most of a season's nitrogen:
// one that is not held back by phosphorus.
func (b *nitrogenYear) material(amount agronomy.PerThousand, caps agronomy.Caps) (agronomy.Material, bool) {
	caps.P2O5 = 0
	d, _, ok := b.c.pick(b.wants(min(max(amount, trace), caps.N), caps), caps, hasN)
	return d.Material, ok
}

// ahead lists the doses of a season that are still to come: not on record, and
// with their best day inside the program. What fell due before the start and
// is not on record is an assumption.
func (b *nitrogenYear) ahead(s *seasonPlan, first, count int, each agronomy.PerThousand) []slot {
	c := b.c
	taken := map[int]bool{}
	for _, d := range c.thisYear() {
		if d.kind == Nitrogen && !d.missed {
			taken[d.n] = true
		}
	}
	var out []slot
	past := 0
	for i := range count {
		switch n := first + i; {
		case taken[n]:
		case !b.young && b.ideal(s, i, count)(s.span).Before(c.Start):
			past++
		case !b.young && b.ideal(s, i, count)(s.span).After(c.Through):
		default:
			out = append(out, slot{n, i})
		}
	}
	if past > 0 && s.down == 0 {
		c.feeding.assumed = append(c.feeding.assumed, fmt.Sprintf("%s: %s of the %s fell due before the program starts and is not on record, so it is neither planned nor counted; if it went down, add it to the record book",
			c.Area.Name, c.Measure().NutrientRate(each*agronomy.PerThousand(past), "N"), s.name))
	}
	return out
}

// leastN is the least nitrogen worth a job, in lb/1000 sq ft.
const leastN agronomy.PerThousand = 0.2 // [common]

// settle keeps as many doses as what is still wanted takes and as find room,
// the latest ones, and leaves the others out with the reason.
func (b *nitrogenYear) settle(s *seasonPlan, slots []slot, want, most agronomy.PerThousand, os []opening, m agronomy.Material) []slot {
	c := b.c
	keep := len(slots)
	if want < leastN {
		keep = 0
	} else {
		keep = min(keep, int(math.Ceil(float64(want/most)-1e-9)))
	}
	for _, d := range slots[:len(slots)-keep] {
		if b.young {
			continue // told once, for the year
		}
		b.leave(d.n, fmt.Sprintf("what is down this %s covers it: %s of %s", s.name, c.Measure().NutrientRate(s.down, "N"), c.Measure().NutrientRate(s.amount, "N")))
	}
	slots = slots[len(slots)-keep:]
	room := max(0, c.fits(os, s.inside, m, most)-c.startersIn(s.inside))
	if len(slots) > room {
		if !b.young {
			for _, d := range slots[:len(slots)-room] {
				b.leave(d.n, fmt.Sprintf("the days left this %s hold %s, at %s apart", s.name, plural(room, "dose"), plural(quickDays, "day")))
			}
		}
		slots = slots[len(slots)-room:]
	}
	return slots
}

// dose chooses the material of each dose.
func (b *nitrogenYear) dose(s *seasonPlan, slots []slot, count int, want, most agronomy.PerThousand, caps agronomy.Caps, os []opening, rules []Reason) []feed {
	c, f := b.c, &b.c.feeding
	if b.young {
		want = min(want, most*agronomy.PerThousand(len(slots)))
	}
	var out []feed
	rest := want
	for i, d := range slots {
		each := min(most, rest/agronomy.PerThousand(len(slots)-i)) // a dose that its phosphorus held back leaves more to the next
		caps.P2O5 = b.phosphorus()
		dose, chosen, ok := c.choose(b.wants(each, caps), caps, hasN)
		if !ok {
			b.leave(d.n, "no material for it: "+firstText(chosen))
			continue
		}
		rest -= dose.N
		b.p.left, b.k.left = max(0, b.p.left-dose.P2O5), max(0, b.k.left-dose.K2O)
		because := fmt.Sprintf("Dose %d of %d this %s; the grass gets %s in a year.", d.i+1, count, s.name, c.Measure().NutrientRate(b.total, "N"))
		out = append(out, feed{n: d.n, dose: dose, openings: os, ideal: b.ideal(s, d.i, count), because: because,
			why: slices.Concat(s.why, split(len(slots), want, most), rules, dose.Why, chosen)})
	}
	if rest >= trace && !b.young && len(out) > 0 {
		b.leave(b.n+1, fmt.Sprintf("%s of the %s share is short: phosphorus or potassium in the material bound its doses, or the days hold no more", c.Measure().NutrientRate(rest, "N"), s.name))
	}
	f.nitrogen = append(f.nitrogen, out...)
	return out
}

// doseCap gives the most nitrogen of one dose of a material.
func doseCap(m agronomy.Material, caps agronomy.Caps) agronomy.PerThousand {
	if quick := agronomy.PerThousand(1 - m.SlowShare); quick > 0 {
		return min(caps.N, caps.SolubleN/quick)
	}
	return caps.N
}

// wants is a dose's nitrogen with what it may bring along.
func (b *nitrogenYear) wants(n agronomy.PerThousand, caps agronomy.Caps) agronomy.Wants {
	return agronomy.Wants{N: n, P2O5: min(b.p.left, max(0, caps.P2O5)), K2O: min(b.k.left, caps.K2O)}
}

// ideal gives the best day of a dose: cool-season grass is fed as it grows,
// warm-season grass evenly.
func (b *nitrogenYear) ideal(s *seasonPlan, i, count int) func(opening) Date {
	c := b.c
	at := (float64(i) + 0.5) / float64(count)
	switch {
	case b.young && i == 0 && s.span.Has(c.emerged().AddDays(28)): // [turf-trade-est] the first feeding
		return soonest
	case c.season == climate.Warm:
		return func(o opening) Date { return o.From.AddDays(int(at * float64(o.Days()))) }
	}
	return c.byGrowth(at)
}

// starterN sums the nitrogen of the starters planned in a span.
func (c *Case) starterN(s Span) agronomy.PerThousand {
	var sum agronomy.PerThousand
	for _, f := range c.feeding.starter {
		if len(f.openings) == 0 && s.Has(c.seeded) || len(f.openings) > 0 && c.startersIn(s) > 0 {
			sum += f.dose.N
		}
	}
	return sum
}

// startersIn counts the starters that are a feeding in a span, planned or on
// record.
func (c *Case) startersIn(s Span) int {
	n := 0
	for _, d := range c.down {
		if d.kind == Starter && !d.missed && s.Has(d.Date) && d.Date.After(c.emerged()) {
			n++
		}
	}
	for _, f := range c.feeding.starter {
		for _, o := range f.openings {
			if !o.To.Before(s.From) && !o.From.After(s.To) {
				n++
				break
			}
		}
	}
	return n
}

func hasN(m agronomy.Material) bool { return m.Analysis.N > 0 }

func lastN(m agronomy.Material) agronomy.LastKind {
	if slices.Contains(m.Things(), agronomy.SlowNDown) {
		return agronomy.LastSlowN
	}
	return agronomy.LastSolubleN
}

// fits counts the doses of a material that find room in the openings at their
// spacing, on days on which the crew works.
func (c *Case) fits(os []opening, inside Span, m agronomy.Material, dose agronomy.PerThousand) int {
	gap, _ := agronomy.Between(m.Things(), m.Things(), false)
	days := max(1, gap.Days)
	if quick := dose * agronomy.PerThousand(1-m.SlowShare); 2*quick > agronomy.LimitsOfNitrogen(c.season).Soluble30Days {
		days = max(days, quickDays)
	}
	n := 0
	var next Date
	for _, o := range os {
		last := Earlier(o.To, inside.To)
		for d := Later(Later(o.From, inside.From), next); !d.After(last); d = d.AddDays(1) {
			if _, away := c.Crew.away(d); !away && c.Crew.works(d) {
				n++
				d = d.AddDays(days - 1)
				next = d.AddDays(1)
			}
		}
	}
	return n
}

func closing(os []opening, why []Reason) string {
	if len(why) > 0 {
		return why[0].Text
	}
	if len(os) > 0 {
		return os[len(os)-1].closes
	}
	return "the ground is not open or growth has ended"
}
