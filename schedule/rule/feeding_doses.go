package rule

import (
	"cmp"
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// seasonPlan is one feeding season with the nitrogen that it is to bring.
type seasonPlan struct {
	growSeason
	openings []schedule.Opening
	inside   schedule.Span        // the part inside the program
	amount   agronomy.PerThousand // of the whole season
	down     agronomy.PerThousand // the part of it on record
	lateDown agronomy.PerThousand // the part of down that was the late dose
	due      agronomy.PerThousand // the part still to come that falls inside the program
	why      []schedule.Reason
	held     bool // the amount was cut to what any 12 months may have, so no dose is rounded up
	cut      bool // doses were left out for want of days
}

// caps gives the most that one dose of a season may bring by common practice, the law,
// and what seedlings bear. Phosphorus is capped at what is wanted and lawful.
func (b *nitrogenYear) caps(s *seasonPlan) (material.Caps, []schedule.Reason) {
	c := b.c
	caps, why := c.nCaps(s.span.From)
	tender := func(as string) { // holds the dose to what seedlings bear
		first := c.Seedlings.FirstN
		caps.N, caps.SolubleN = min(caps.N, first), min(caps.SolubleN, first)
		why = append(why, schedule.Reason{Text: fmt.Sprintf("%s: at most %.1f lb N at once", as, float64(first)), Source: "common"})
	}
	if b.young || s.span.Span == c.feeding.first {
		tender("the stand's first year of feeding")
	}
	if len(s.overs) > 0 {
		tender("seedlings of the overseeding stand among the grass")
	}
	caps.P2O5 = b.phosphorus()
	return caps, why
}

// phosphorus gives how much a dose may bring along, if the law allows any: what is
// still wanted, but [schedule.LeastDose] at least, so that a trace rules no bag out.
func (b *nitrogenYear) phosphorus() agronomy.PerThousand {
	if b.p.left == 0 {
		return 0
	}
	if _, shut := b.c.PhosphorusShut(); shut {
		return 0
	}
	if b.p.tight {
		return min(b.p.left, b.p.single)
	}
	return min(max(b.p.left, schedule.LeastDose), b.p.single)
}

// count gives the number of doses in the whole season, whatever part of it is inside the
// program: the fewest of at most most lb each, as far as its days hold so many. It gives
// the amount, too, less what is no dose of its own, see [fewest].
func (b *nitrogenYear) count(s *seasonPlan, os []schedule.Opening, amount agronomy.PerThousand, m material.Material, most agronomy.PerThousand) (int, agronomy.PerThousand) {
	n, held := fewest(amount, most, schedule.LeastDose)
	if amount-held >= 0.005 {
		s.why = append(s.why, schedule.Reason{Text: fmt.Sprintf("%.2f lb N stays out of the %s share: it would ask for one more walk and bring no more than %.1f lb", float64(amount-held), s.name, float64(schedule.LeastDose)), Source: "common"})
	}
	return min(n, b.fits(s, os, s.span.Span, m, most)), held
}

// days gives the openings in which a season's doses of a material do good.
func (b *nitrogenYear) days(s *seasonPlan, m material.Material) ([]schedule.Opening, []schedule.Reason) {
	return b.c.LastUseful(schedule.Meet(s.openings, []schedule.Opening{s.span}), lastN(m))
}

// skip passes over a season outside the program but keeps its numbers.
func (b *nitrogenYear) skip(s seasonPlan) {
	b.n = s.first + s.places - 1
}

// planDoses splits a season's amount into the fewest doses that the caps allow, spread
// over the season. It keeps those whose best day lies inside the program and that are not
// on record. Where the program starts amid a season with nothing on record,
// [nitrogenYear.catchesUp] decides on doses from before the start.
//
// In autumn a late dose is taken out of the amount first. It is given up again if keeping
// its days free would cost the main doses more nitrogen than it brings.
func (b *nitrogenYear) planDoses(s *seasonPlan) []feed {
	c, f := b.c, &b.c.feeding
	late, rest := []feed(nil), s.amount
	shed := slices.Clone(c.Shed.Stock())
	if s.name == "autumn" {
		late, rest = b.planLate(s)
	}
	caps, capWhy := b.caps(s)
	m, fit, ok := b.carrier(s, rest, caps)
	if !ok {
		f.found.Leave(c.Area, schedule.Nitrogen, b.n+1, "no material for it", "")
		f.late = append(f.late, late...)
		return late
	}
	most := doseCap(m, caps)
	os, last := b.days(s, m)
	first := s.first
	b.n = s.first + s.places - 1
	if len(late) > 0 || s.lateDown > 0 {
		var l feed
		if len(late) > 0 {
			l = late[0]
		}
		before, worth := b.beforeLate(s, os, l, rest, most, m)
		if !worth { // where no main dose is to come, none needs the days of the late one
			n, _ := fewest(rest+l.dose.N, most, schedule.LeastDose)
			ahead, _, _ := b.ahead(s, min(n, b.fits(s, os, s.span.Span, m, most)))
			worth = len(ahead) == 0
		}
		if worth {
			os = before
		} else {
			f.found.Leave(c.Area, schedule.LateNitrogen, l.n, "the main autumn doses need its days, and bring more than a late dose would", "common")
			c.Shed.Restore(shed)
			late, rest = nil, rest+l.dose.N
		}
	}
	count, rest := b.count(s, os, rest, m, most)
	if why := b.noDay(s); why != "" {
		s.why = append(s.why, schedule.Reason{Text: "fewer doses than its days would hold by themselves: " + why})
	}
	f.late = append(f.late, late...)
	for _, l := range late {
		s.due += l.dose.N
	}
	if rest < schedule.LeastDose {
		return late
	}
	if count == 0 && b.young { // what the first year cannot take is told once, for the year
		if !c.upInSpring(b.year + 1) {
			b.leave(first, fmt.Sprintf("no day is left for another feeding this %s: %s", s.name, cmp.Or(b.noDay(s), closing(os, last))))
		}
		return late
	}
	if count == 0 {
		left := fmt.Sprintf("no day is left for %s this %s: %s", c.Measure().NutrientRate(rest, "N"), s.name, cmp.Or(b.noDay(s), closing(os, last)))
		if rest < leastN {
			left = fmt.Sprintf("%s of the %s share is left, too little for a separate job", c.Measure().NutrientRate(rest, "N"), s.name)
		}
		b.leave(first, left)
		s.due += rest
		b.told = true
		return late
	}
	each := rest / agronomy.PerThousand(count)
	if each > most {
		if !b.young { // what the first year cannot take is told once, for the year
			text := fmt.Sprintf("%s of the %s share is left out: the season has room for %s of at most %s",
				c.Measure().NutrientRate(rest-most*agronomy.PerThousand(count), "N"), s.name, word.Plural(count, "dose"), c.Measure().NutrientRate(most, "N"))
			if why := b.noDay(s); why != "" {
				text += ": " + why
			}
			b.leave(first+count, text)
			s.due += rest - most*agronomy.PerThousand(count)
		}
		each, rest = most, most*agronomy.PerThousand(count)
	}
	slots, after, past := b.ahead(s, count)
	want := rest - (s.down - s.lateDown)
	elsewhere := b.elsewhere(s, after, past, each, want)
	want = max(0, want-elsewhere)
	s.due += want
	room := b.fits(s, os, s.inside, m, most) - c.feedingsIn(s.inside)
	if len(slots) == 0 && elsewhere == 0 && want >= leastN && room > 0 { // the doses that are down brought less than their part
		slots = append(slots, slot{s.number(count), count})
		count++
	}
	slots, want = b.rest(s, slots, want)
	slots = b.settle(s, slots, want, most, room)
	return append(late, b.dose(s, slots, count, room, want, most, caps, os, fit, slices.Concat(capWhy, last))...)
}

// slot is the place of one dose in its season: the number n of its job, and i, which
// counts the doses of the season from 0.
type slot struct{ n, i int }

// leave tells that nitrogen is left out, under the number of a job.
func (b *nitrogenYear) leave(n int, reason string) {
	b.c.feeding.found.Leave(b.c.Area, schedule.Nitrogen, n, reason, "")
}

// carrier gives the material that would bring most of a season's nitrogen, were there
// no cap on phosphorus; by it the doses are counted and their days found. fit tells which
// materials the doses may be chosen from. A slow material has an earlier last day and
// longer distances: where a quick one would bring more in the days that are left, the
// season goes by that one, and only quick materials fit.
func (b *nitrogenYear) carrier(s *seasonPlan, amount agronomy.PerThousand, caps material.Caps) (m material.Material, fit func(material.Material) bool, ok bool) {
	caps.P2O5 = 0
	wants, along := b.wants(min(max(amount, schedule.LeastDose), caps.N), caps)
	brings := func(m material.Material) agronomy.PerThousand {
		os, _ := b.days(s, m)
		most := doseCap(m, caps)
		return min(amount, most*agronomy.PerThousand(b.fits(s, os, s.inside, m, most)))
	}
	m, ok = b.c.likely(wants, along, caps, hasN)
	if !ok || !slowN(m) {
		return m, hasN, ok
	}
	if quick, ok := b.c.likely(wants, along, caps, quickN); ok && brings(quick) > brings(m)+schedule.LeastDose {
		s.why = append(s.why, schedule.Reason{Text: word.Capital(word.MaterialName(m)) + " is not used this " + s.name + ": its slow part would act too late, and a quick material still helps", Source: "common"})
		return quick, quickN, true
	}
	return m, hasN, true
}

// ahead lists the doses of a season that are still to come: not on record, and with
// their best day inside the program. after counts those due after the program, and past
// those due before its start, which are to come only if the season catches up.
func (b *nitrogenYear) ahead(s *seasonPlan, count int) (out []slot, after, past int) {
	c := b.c
	taken := map[int]bool{}
	for _, d := range c.ThisYear() {
		if d.Kind == schedule.Nitrogen && !d.NotDone {
			taken[d.N] = true
		}
	}
	for i := range count {
		switch n := s.number(i); {
		case taken[n]:
		case !b.young && b.ideal(s, i, count)(s.span).Before(c.Start):
			past++
			if b.catchesUp(s) {
				out = append(out, slot{n, i})
			}
		case !b.young && b.ideal(s, i, count)(s.span).After(c.Through):
			after++
		default:
			out = append(out, slot{n, i})
		}
	}
	return out, after, past
}

// elsewhere gives the nitrogen of a season's doses that are neither on record nor to come,
// at each a dose, and says what is assumed of that which was due before the program starts.
// open is what of the season's nitrogen is not down.
func (b *nitrogenYear) elsewhere(s *seasonPlan, after, past int, each, open agronomy.PerThousand) agronomy.PerThousand {
	c, later := b.c, each*agronomy.PerThousand(after)
	if past == 0 {
		return later
	}
	before := each * agronomy.PerThousand(past)
	assume := func(n agronomy.PerThousand, text string) {
		c.feeding.found.Assumed = append(c.feeding.found.Assumed, fmt.Sprintf("%s: %s of the %s was due before the program starts and is not on record%s; if it was spread, add it to the record book",
			c.Area.Name, c.Measure().NutrientRate(n, "N"), s.name, text))
	}
	if b.catchesUp(s) {
		assume(before, ", so what still fits is planned")
		return later
	}
	if lost := min(before, open-later); lost >= schedule.LeastDose {
		assume(lost, ": it is not planned and not counted")
	}
	return later + before
}

// catchesUp tells whether doses that fell due before the start are planned after it:
// those of cool-season grass, if nothing is on record before the start, as the day on which
// a program happens to start must not cost it its main feeding. Warm-season grass is fed
// evenly, so the doses still to come are its share of the season.
func (b *nitrogenYear) catchesUp(s *seasonPlan) bool {
	before := schedule.Span{From: s.span.From, To: b.c.Start.AddDays(-1)}
	return b.c.Season == climate.Cool && b.c.between(before, nitrogenOf) == 0
} // [common]

// leastN is the least nitrogen worth a job, in lb/1000 sq ft.
const leastN agronomy.PerThousand = 0.2 // [common]

// rest gives the doses and the amount that are to go down: none where what is wanted is
// too little for a job or no dose is still to come. That is then left out under the number
// of the last dose.
func (b *nitrogenYear) rest(s *seasonPlan, slots []slot, want agronomy.PerThousand) ([]slot, agronomy.PerThousand) {
	why := "too little for a separate job"
	if len(slots) == 0 {
		why = "and no dose of the season is still to come"
	} else if want >= leastN {
		return slots, want
	}
	if b.young || want < schedule.LeastDose { // what the first year cannot take is told once, for the year
		return slots, 0
	}
	n := b.n + 1
	if last := len(slots) - 1; last >= 0 {
		n, slots = slots[last].n, slots[:last]
	}
	b.leave(n, fmt.Sprintf("%s of the %s share is left, %s", b.c.Measure().NutrientRate(want, "N"), s.name, why))
	return slots, 0
}

// settle keeps as many doses as the amount wanted needs and the days left hold, and
// leaves the earlier ones out with the reason.
func (b *nitrogenYear) settle(s *seasonPlan, slots []slot, want, most agronomy.PerThousand, room int) []slot {
	c := b.c
	doses, _ := fewest(want, most, schedule.LeastDose)
	keep := min(len(slots), doses)
	for _, d := range slots[:len(slots)-keep] {
		if b.young {
			continue // a young stand is told this once, for the year
		}
		b.leave(d.n, fmt.Sprintf("what is down this %s covers it: %s of %s", s.name, c.Measure().NutrientRate(s.down, "N"), c.Measure().NutrientRate(s.amount, "N")))
	}
	slots = slots[len(slots)-keep:]
	if room = max(0, room); len(slots) > room {
		s.cut = true
		if !b.young {
			for _, d := range slots[:len(slots)-room] {
				if room == 0 {
					b.leave(d.n, "no day is left for it this "+s.name)
					continue
				}
				b.leave(d.n, fmt.Sprintf("the days left this %s hold %s of at most %s, %s apart", s.name, word.Plural(room, "dose"), c.Measure().NutrientRate(most, "N"), word.Plural(schedule.QuickDays, "day")))
			}
		}
		slots = slots[len(slots)-room:]
	}
	return slots
}

// dose chooses a material for each dose and makes the feeds. What a dose brings less than
// its part is added to the next ones, or to one dose more if the season has room for it;
// what no dose can hold is left out.
func (b *nitrogenYear) dose(s *seasonPlan, slots []slot, count, room int, want, most agronomy.PerThousand, caps material.Caps, os []schedule.Opening, fit func(material.Material) bool, rules []schedule.Reason) []feed {
	c, f := b.c, &b.c.feeding
	var out []feed
	var at []slot // of the doses in out
	even := len(slots)
	rest, shared := want, min(want, most*agronomy.PerThousand(even))
	binds := "the most that one dose may bring, in amounts that can be weighed, held its doses"
	for i := 0; i < len(slots); i++ {
		d := slots[i]
		each := min(most, rest/agronomy.PerThousand(len(slots)-i)) // a dose that its phosphorus held back leaves more to the next
		caps.P2O5 = b.phosphorus()
		if s.held { // no rounding past what 12 months hold
			caps.N = min(caps.N, each)
		}
		wants, along := b.wants(each, caps)
		dose, chosen, ok := c.chooseAlong(wants, along, caps, fit)
		if !ok {
			b.leave(d.n, "no suitable material: "+schedule.FirstText(chosen))
			continue
		}
		if dose.ByCap && (dose.BoundBy == "P2O5" || dose.BoundBy == "K2O") {
			binds = "phosphorus or potassium in the material bound its doses"
		}
		var made []schedule.Reason
		if part := shared / agronomy.PerThousand(even); i > 0 && each > part+schedule.LeastDose/10 {
			made = []schedule.Reason{{Text: fmt.Sprintf("earlier doses brought less than their share, so this one is larger: %.2f lb N/1000 sq ft left, at most %.2f lb at once", float64(rest), float64(most))}}
		}
		rest -= dose.N
		b.p.left, b.k.left = schedule.Remains(b.p.left, dose.P2O5), schedule.Remains(b.k.left, dose.K2O)
		out = append(out, feed{n: d.n, dose: dose, openings: os, why: slices.Concat(s.why, split(even, shared, most), made, rules, dose.Why, chosen)})
		at = append(at, d)
		if last := i == len(slots)-1; last && rest-(want-shared) >= leastN && len(slots) < room && d.i == count-1 {
			slots = append(slots, slot{s.number(count), count})
			count++
		}
	}
	by := ""
	if s.calendar != "" {
		by = ", by the calendar of " + s.calendar
	}
	for i, d := range at {
		out[i].ideal = b.ideal(s, d.i, count)
		which := fmt.Sprintf("Dose %d of %d this %s", d.i+1, count, s.name)
		if count == 1 {
			which = "The " + s.name + " feeding"
		}
		out[i].because = fmt.Sprintf("%s%s; %s a year.", which, by, c.Measure().NutrientRate(b.total, "N"))
	}
	lacks := want - shared // more than all doses together may hold
	short := func(n agronomy.PerThousand, why string) {
		if n >= schedule.LeastDose && !b.young && len(out) > 0 {
			b.leave(b.n+1, fmt.Sprintf("%s of the %s share is short: %s", c.Measure().NutrientRate(n, "N"), s.name, why))
		}
	}
	short(rest-lacks, binds)
	if !s.cut && lacks >= schedule.LeastDose { // if the season was cut, each dose that was left out has said so
		short(lacks, fmt.Sprintf("only %s of at most %s can still follow", word.Plural(len(slots), "dose"), c.Measure().NutrientRate(most, "N")))
	}
	f.nitrogen = append(f.nitrogen, out...)
	return out
}

// doseCap gives the most nitrogen of one dose of a material.
func doseCap(m material.Material, caps material.Caps) agronomy.PerThousand {
	if quick := agronomy.PerThousand(1 - m.SlowShare); quick > 0 {
		return min(caps.N, caps.SolubleN/quick)
	}
	return caps.N
}

// wants gives what sizes a dose, its nitrogen, and what may come along: phosphorus up to
// its cap, and potash in proportion to the nitrogen, so that one lawn food with potash can
// serve the whole year.
func (b *nitrogenYear) wants(n agronomy.PerThousand, caps material.Caps) (w, along material.Wants) {
	k := min(b.k.left, caps.K2O)
	if b.potash > 0 {
		k = min(k, n*b.potash)
	}
	return material.Wants{N: n}, material.Wants{P2O5: min(b.p.left, max(0, caps.P2O5)), K2O: k}
}

// ideal gives the best day of the i-th of count doses: for cool-season grass each feeds an
// equal part of the season's growth, for warm-season grass an equal part of its days.
func (b *nitrogenYear) ideal(s *seasonPlan, i, count int) func(schedule.Opening) schedule.Date {
	c := b.c
	at := (float64(i) + 0.5) / float64(count)
	switch {
	case b.young && i == 0: // [common] seedlings want their first feeding as soon as they may have it
		return schedule.Soonest
	case c.Season == climate.Warm:
		return func(o schedule.Opening) schedule.Date { return o.From.AddDays(int(at * float64(o.Days()))) }
	}
	return func(o schedule.Opening) schedule.Date {
		// Best days too near to each other are set 30 days apart, about their middle.
		days := c.ByGrowth(o, 0.5/float64(count), at, (float64(count)-0.5)/float64(count))
		first, best, last := days[0], days[1], days[2]
		if lack := (count-1)*schedule.QuickDays - last.DaysFrom(first); lack > 0 {
			return schedule.Later(o.From, first.AddDays(-lack/2)).AddDays(i * schedule.QuickDays)
		}
		return best
	}
}
