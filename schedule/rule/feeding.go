package rule

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/agronomy/soil"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// feeding is an area's plan of doses before they get days. It is worked out once, in an
// order in which each part sees what the ones before it bring along: the starter, then
// nitrogen, then straight phosphorus and potassium for what is still short. The rules of
// the single kinds only turn their part of it into jobs.
type feeding struct {
	found                                          schedule.Proposal
	starter, nitrogen, late, phosphorus, potassium []feed

	potash agronomy.PerThousand // lb of K₂O that may come along with a pound of nitrogen, so that the year's is spread evenly
	yearly []schedule.YearlyN
	first  schedule.Span // the season in which the stand is still fed as seedlings are; unset for an established one
}

// feed is one dose with the openings in which it belongs.
type feed struct {
	n        int
	dose     material.Dose
	openings []schedule.Opening
	ideal    func(schedule.Opening) schedule.Date
	because  string
	why      []schedule.Reason
	bare     string // a starter without phosphorus: why it has none
}

// want is what an area still needs of a nutrient that the report speaks of.
type want struct {
	left   agronomy.PerThousand // still to go down
	single agronomy.PerThousand // most at once
	most   agronomy.PerThousand // phosphorus: most at once by law, whatever is wanted
	level  soil.Level
	why    []schedule.Reason
	tight  bool              // phosphorus: the law caps the year, so no dose is rounded up
	beyond []schedule.Reason // why a part of the need is not planned at all
}

// planFeeding plans the doses, see [feeding]. If the first try finds that the feedings
// have changed, the shed is put back as it was, and they are planned anew.
func (c *Treatment) planFeeding() {
	c.feeding = feeding{}
	if c.NoStand {
		return
	}
	c.newForPhosphorus()
	shed := slices.Clone(c.Shed.Stock())
	if !c.feed(c.asPlanned(schedule.Phosphorus, p2o5Of), c.asPlanned(schedule.Potassium, k2oOf)) {
		c.Shed.Restore(shed)
		c.feed(0, 0)
	}
}

// feed plans all doses. downP and downK are straight phosphorus and potassium that went
// down as planned. Their amounts were worked out as the part of the need that the
// feedings do not bring. If the feedings were now planned for what is left of the need,
// they would bring less than they did then. So they are planned for the need as it was
// then: what is left, and downP and downK as well. feed is false if the feedings would
// then bring some of what is down already: more has changed since, and the caller plans
// again with 0 and 0.
func (c *Treatment) feed(downP, downK agronomy.PerThousand) bool {
	f := &c.feeding
	*f = feeding{}
	p, k := c.wantP(), c.wantK()
	wholeP, wholeK := p.left, k.left
	p.left, k.left = p.left+downP, k.left+downK
	c.planStarter(&p, &k)
	c.planNitrogen(&p, &k)
	if rounded := schedule.LeastDose / 2; p.left < downP-rounded || k.left < downK-rounded { // a dose is rounded to what can be weighed
		return false
	}
	p.left, k.left = schedule.Remains(p.left, downP), schedule.Remains(k.left, downK)
	p.brought(wholeP, "P₂O₅")
	k.brought(wholeK, "K₂O")
	f.phosphorus = c.straights(schedule.Phosphorus, p)
	f.potassium = c.straights(schedule.Potassium, k)
	return true
}

// wantP gives the need of phosphorus, less what went down since the sample, and no more
// than the law allows at once and in a year.
func (c *Treatment) wantP() want {
	w := c.wantOf(schedule.Phosphorus, "P₂O₅", p2o5Of, c.NeedP, c.NoP)
	w.most = schedule.Unlimited
	q := c.Asked
	if l, ok := c.Law.PCap(q); ok {
		w.most = agronomy.PerThousand(l.Value)
		w.why = append(slices.Clip(w.why), schedule.LawReason(l.Rule))
	}
	if l, ok := c.Law.PAnnualCap(q); ok {
		w.tight = true
		year := schedule.Remains(agronomy.PerThousand(l.Value), c.Since(c.Start.AddDays(-365), p2o5Of))
		w.most = min(w.most, year)
		if w.left > year {
			w.beyond = append(w.beyond, schedule.Reason{Text: "more phosphorus than the law allows in a year: " + l.Rule.Statement(), Source: l.Rule.Citation})
			w.left = year
		}
	}
	if c.Area.Stand[0].Grass.Name == "centipedegrass" && w.left > centipedeP {
		w.beyond = append(w.beyond, schedule.Reason{Text: "more phosphorus than centipedegrass takes in a year, at most 1 lb P₂O₅: it yellows from more", Source: "common"})
		w.left = centipedeP
	}
	w.single = min(w.single, w.most)
	return w
}

// centipedeP is the most P₂O₅ a year on centipedegrass, in lb/1000 sq ft.
const centipedeP agronomy.PerThousand = 1.0 // [common]

// brought adds to the working how much of a want the starter and the feedings bring;
// whole is the want without them.
func (w *want) brought(whole agronomy.PerThousand, oxide string) {
	if by := whole - w.left; by >= 0.005 {
		w.why = append(slices.Clip(w.why), schedule.Reason{Text: "the starter and the feedings bring some along: " + word.Hundredths(whole) + " − " + word.Hundredths(by) + " = " + word.Hundredths(w.left) + " lb " + oxide + "/1000 sq ft left"})
	}
}

func (c *Treatment) wantK() want {
	need, err := nutrient.PotassiumNeed(c.Report, c.Place.State, c.Future())
	return c.wantOf(schedule.Potassium, "K₂O", k2oOf, need, err)
}

func p2o5Of(d *schedule.Down) agronomy.PerThousand { return d.Dose.P2O5 }
func k2oOf(d *schedule.Down) agronomy.PerThousand  { return d.Dose.K2O }

// asPlanned sums what jobs of a kind brought this season, since the sample, that were
// done as planned or are presumed to be.
func (c *Treatment) asPlanned(k schedule.Kind, of func(*schedule.Down) agronomy.PerThousand) agronomy.PerThousand {
	return c.between(schedule.Span{From: schedule.Later(c.Begins, c.Area.Sampled), To: c.Through}, func(d *schedule.Down) agronomy.PerThousand {
		if d.Kind != k || !d.AsPlanned && d.Presumed == nil {
			return 0
		}
		return of(d)
	})
}

// wantOf gives what is still to go down of a nutrient's need, and tells the need or why
// it is not known. of takes the nutrient from a dose.
func (c *Treatment) wantOf(k schedule.Kind, oxide string, of func(*schedule.Down) agronomy.PerThousand, n nutrient.Need, err error) want {
	f := &c.feeding
	if c.Area.Soil == nil {
		f.found.Leave(c.Area, k, 1, "there is no soil report for this area, and "+k.String()+" is never spread without one", "")
		return want{}
	}
	if err != nil {
		f.found.Leave(c.Area, k, 1, err.Error(), "")
		return want{}
	}
	if why, stale := c.Stale(); stale {
		if n.Year > 0 {
			f.found.Leave(c.Area, k, 1, why, "psu-report-notes")
		}
		return want{}
	}
	for _, a := range n.Assumed {
		f.found.Assumed = append(f.found.Assumed, c.Area.Name+": "+a.Text)
	}
	w := want{left: n.Year, single: n.Single, level: n.Level, why: n.Why}
	if n.Carried > 0 {
		w.beyond = append(w.beyond, schedule.Reason{Text: fmt.Sprintf("%s more is beyond what turf can use in a year; the next report decides", c.Measure().NutrientRate(n.Carried, oxide)), Source: "common"})
	}
	text := c.needText(k, n.Year, oxide, n.Level)
	if since := c.Since(c.Area.Sampled, of); since > 0 && n.Year > 0 {
		if w.left = schedule.Remains(n.Year, since); !schedule.WorthJob(w.left) {
			text += allDown
		}
		w.why = append(slices.Clip(w.why), schedule.Reason{Text: c.Measure().NutrientRate(since, oxide) + " has gone down since the sample: " + word.Hundredths(n.Year) + " − " + word.Hundredths(since) + " = " + word.Hundredths(w.left) + " lb " + oxide + "/1000 sq ft left"})
	}
	if ash := c.liming.brings(func(d material.Dose) agronomy.PerThousand { return of(&schedule.Down{Dose: d}) }); ash > 0 && n.Year > 0 {
		w.left = schedule.Remains(w.left, ash)
		w.why = append(slices.Clip(w.why), schedule.Reason{Text: "the wood ash brings " + word.Hundredths(ash) + " lb " + oxide + "/1000 sq ft", Source: "common"})
	}
	f.found.Needs = append(f.found.Needs, schedule.Need{Kind: k, Total: n.Year, Text: text, Why: w.why})
	return w
}

func (c *Treatment) needText(k schedule.Kind, total agronomy.PerThousand, oxide string, level soil.Level) string {
	if total == 0 {
		return k.String() + ": none, the reading is " + string(level)
	}
	return k.String() + ": " + c.Measure().NutrientRate(total, oxide) + ", the reading is " + string(level)
}

// choose picks the material that serves a want best, and draws the dose from the shed.
func (c *Treatment) choose(w material.Wants, caps material.Caps, fit func(material.Material) bool) (material.Dose, []schedule.Reason, bool) {
	return c.chooseAlong(w, material.Wants{}, caps, fit)
}

// chooseAlong is choose for a dose that may bring other nutrients along. The dose is
// rounded to what a person can weigh.
func (c *Treatment) chooseAlong(w, along material.Wants, caps material.Caps, fit func(material.Material) bool) (material.Dose, []schedule.Reason, bool) {
	ms, quick, passed := c.offers(fit)
	d, why, ok := material.ChooseAlong(ms[:quick], w, along, caps, c.Area.Size)
	if !ok {
		d, why, ok = material.ChooseAlong(ms, w, along, caps, c.Area.Size)
	}
	if ok {
		d = d.Sayable(c.Area.Size, caps, c.Metric)
		if schedule.Short(d, c.Area.Size) {
			m := d.Material
			d, why, ok = c.chooseAlong(w, along, caps, but(fit, m))
			return d, append(why, tooLittle(m)), ok
		}
		c.Shed.Take(d, c.Area.Size)
	}
	why = append(why, passed...)
	if d.N > 0 && len(c.dressings.Jobs) > 0 { // its distance from the lime depends on the form of its nitrogen
		_, form := d.Material.Ammonium()
		why = append(why, form)
	}
	return d, why, ok
}

// tooLittle says why a material of which none is to be bought is passed over.
func tooLittle(m material.Material) schedule.Reason {
	return schedule.Reason{Text: fmt.Sprintf("not used: %s, %s on hand is too little for it, and none is to be bought", word.MaterialName(m), word.Packs(m.OnHand))}
}

// but gives a test that passes what fit passes, except one material.
func but(fit func(material.Material) bool, out material.Material) func(material.Material) bool {
	return func(m material.Material) bool { return m.ID != out.ID && (fit == nil || fit(m)) }
}

// likely gives the material that chooseAlong would pick for nitrogen, and draws nothing.
func (c *Treatment) likely(w, along material.Wants, caps material.Caps, fit func(material.Material) bool) (material.Material, bool) {
	ms, quick, _ := c.offers(fit)
	m, ok := material.Likely(ms[:quick], w, along, caps, c.Area.Size)
	if !ok {
		m, ok = material.Likely(ms, w, along, caps, c.Area.Size)
	}
	if ok && m.Analysis.N > 0 && schedule.Short(material.DoseOf(m, w.N*100/agronomy.PerThousand(m.Analysis.N)), c.Area.Size) {
		return c.likely(w, along, caps, but(fit, m))
	}
	return m, ok
}

// offers lists the materials to choose from: the shed's first, then what the
// trade sells, and last, after the quick ones, the trade's slow ones, as a slow
// material is bought only where no quick one will do. What the law says of slow nitrogen,
// and an area that takes only quick nitrogen, narrow the choice. quick counts the
// materials before the trade's slow ones; passed says which of the shed's were ruled out,
// and why. The next call overwrites the list.
func (c *Treatment) offers(fit func(material.Material) bool) (ms []*material.Material, quick int, passed []schedule.Reason) {
	ms, slow := c.Shed.Offered[:0], c.Shed.Slow[:0]
	for _, m := range c.Shed.Materials {
		if m.Kind == material.LimeMaterial || m.Kind == material.SulfurMaterial || m.Kind == material.GypsumMaterial || m.Kind == material.WoodAsh {
			continue
		}
		if why := c.unfit(m); why != "" {
			if !m.ToBuy {
				passed = append(passed, schedule.Reason{Text: "not used: " + word.MaterialName(*m) + ", " + why})
			}
			continue
		}
		switch {
		case fit != nil && !fit(*m):
		case m.ToBuy && slowN(*m):
			slow = append(slow, m)
		default:
			ms = append(ms, m)
		}
	}
	quick = len(ms)
	ms = append(ms, slow...)
	c.Shed.Offered, c.Shed.Slow = ms, slow
	return ms, quick, passed
}

// unfit says why the site or the law rules a material out.
func (c *Treatment) unfit(m *material.Material) string {
	if m.Analysis.N == 0 {
		return ""
	}
	if c.Area.SolubleOnly && m.SlowShare > 0 {
		return "the area takes quick nitrogen only"
	}
	if !c.Law.AsksSlow {
		return ""
	}
	q := c.Asked
	q.SlowShare, q.Liquid = m.SlowShare, m.Liquid
	if l, ok := c.Law.SlowShareMin(q); ok && m.SlowShare < l.Value {
		return fmt.Sprintf("the law asks for %.0f %% slow nitrogen (%s)", l.Value*100, l.Rule.Citation)
	}
	return ""
}

// nCaps gives the most nitrogen and quick nitrogen of one dose on a day, with the
// reasons: common practice or the law, whichever is stricter.
func (c *Treatment) nCaps(on schedule.Date) (material.Caps, []schedule.Reason) {
	lim := c.MostN
	caps := material.Caps{N: lim.Single, SolubleN: lim.Soluble, P2O5: -1, K2O: schedule.MostKAtOnce}
	why := []schedule.Reason{lim.Why[0], lim.Why[1]}
	q := c.Question(on)
	if l, ok := c.Law.NCap(q); ok && agronomy.PerThousand(l.Value) < caps.N {
		caps.N = agronomy.PerThousand(l.Value)
		why = append(why, schedule.LawReason(l.Rule))
	}
	if l, ok := c.Law.SolubleCap(q); ok && agronomy.PerThousand(l.Value) < caps.SolubleN {
		caps.SolubleN = agronomy.PerThousand(l.Value)
		why = append(why, schedule.LawReason(l.Rule))
	}
	caps.SolubleN = min(caps.SolubleN, caps.N)
	return caps, why
}

// straights splits what is still short of phosphorus or potassium into the fewest doses
// of a straight material, which has no nitrogen.
func (c *Treatment) straights(k schedule.Kind, w want) (out []feed) {
	f := &c.feeding
	next := c.Number(k)
	defer func() {
		for _, b := range w.beyond {
			f.found.Leave(c.Area, k, next(), b.Text, b.Source)
		}
	}()
	if !schedule.WorthJob(w.left) {
		return nil
	}
	if w.left < leastStraight {
		f.found.Leave(c.Area, k, next(), fmt.Sprintf("%s is left, too little to spread by itself: a feeding of the next season brings it, or the next report decides", c.Measure().NutrientRate(w.left, k.Nutrient())), "common")
		return nil
	}
	gap, _ := nutrient.Spacing(nutrient.PotassiumDown, nutrient.PotassiumDown)
	first := c.After(k, gap.Days)
	kind := nutrient.LastPhosphorus
	caps := material.Caps{N: 0, SolubleN: 0, P2O5: -1, K2O: 0}
	if k == schedule.Phosphorus {
		if why, ok := c.PhosphorusShut(); ok {
			f.found.Leave(c.Area, k, 1, why.Text, why.Source)
			return nil
		}
		w.single = min(w.single, max(w.most-c.traceP(), schedule.LeastDose)) // the phosphorus that a feeding brings along may go down on the same day
	} else {
		first = schedule.Later(first, c.starterDay()) // the young grass's first feeding is no later than its potash
		kind = nutrient.LastPotassium
		caps = material.Caps{N: 0, SolubleN: 0, P2O5: 0, K2O: -1}
	}
	if w.single <= 0 {
		w.single = w.left
	}
	n := int(math.Ceil(float64(w.left/w.single) - 1e-9))
	rest := w.left
	os := schedule.Meet(c.Open(), c.Growing())
	os, last := c.LastUseful(os, kind)
	for _, over := range c.Oversown {
		if to := c.OverFed(over); c.starterN(schedule.Span{From: over, To: to}) > 0 { // it comes first, if it is not far off
			os = append(schedule.Until(os, over.AddDays(-lateStarterDays), "the overseeding"), schedule.From(os, to, c.overFedWords(over))...)
		}
	}
	for i := range n {
		each := min(rest/agronomy.PerThousand(n-i), w.single) // what rounding left of one goes into the next
		wants := material.Wants{P2O5: each}
		if caps.P2O5 = w.single; w.tight { // no rounding past the law's year
			caps.P2O5 = min(w.single, rest)
		}
		if k == schedule.Potassium {
			wants, caps.P2O5, caps.K2O = material.Wants{K2O: each}, 0, w.single
		}
		d, chosen, ok := c.choose(wants, caps, nil)
		if !ok {
			f.found.Leave(c.Area, k, next(), "no suitable material: "+schedule.FirstText(chosen), "")
			continue
		}
		if k == schedule.Potassium {
			rest -= d.K2O
		} else {
			rest -= d.P2O5
		}
		due := first.AddDays(i * gap.Days)
		why := slices.Concat(w.why, split(n, w.left, w.single), d.Why, chosen, last)
		because := fmt.Sprintf("%s is %s in the soil report", word.Capital(k.String()), w.level)
		if n > 1 {
			because += fmt.Sprintf("; dose %d of %d", i+1, n)
		}
		because += "."
		out = append(out, feed{n: next(), dose: d, openings: os, why: why, because: because,
			ideal: func(o schedule.Opening) schedule.Date { return c.withFeeding(o, schedule.Later(o.From, due), d) }})
	}
	return out
}

// leastStraight is the least of a straight phosphorus or potassium dose that is worth
// a walk, in lb/1000 sq ft.
const leastStraight agronomy.PerThousand = 0.3 // [common]

// sameWalk is how long a straight dose waits for a feeding's best day, so that one
// walk does both.
const sameWalk = 45 // [common]

// withFeeding gives the best day of a feeding that comes in an opening soon after a
// day, else the day itself.
func (c *Treatment) withFeeding(o schedule.Opening, day schedule.Date, d material.Dose) schedule.Date {
	day = schedule.Later(day, c.Start)
	best := day.AddDays(sameWalk + 1)
	for _, feeds := range [][]feed{c.feeding.starter, c.feeding.nitrogen} {
		for _, f := range feeds {
			if d.K2O > 0 && (f.dose.K2O >= schedule.SmallK || f.dose.K2O+d.K2O > schedule.MostKAtOnce) || d.P2O5 > 0 && f.dose.P2O5 >= schedule.SmallP {
				continue // the two must keep a distance, so one walk cannot do both
			}
			for _, fo := range f.openings {
				if on := schedule.Later(f.ideal(fo), schedule.Later(fo.From, c.Start)); !on.Before(day) && on.Before(best) && o.Has(on) && fo.Has(on) {
					best = on
				}
			}
		}
	}
	if best.DaysFrom(day) > sameWalk {
		return day
	}
	return best
}

// traceP gives the most phosphorus that a feeding brings along without keeping its
// distance from other phosphorus.
func (c *Treatment) traceP() agronomy.PerThousand {
	var most agronomy.PerThousand
	for _, feeds := range [][]feed{c.feeding.starter, c.feeding.nitrogen} {
		for _, f := range feeds {
			if f.dose.P2O5 < schedule.SmallP {
				most = max(most, f.dose.P2O5)
			}
		}
	}
	return most
}

// starterDay gives the first day on which a starter to come can go down; unset if there
// is none to come. If no work day is left, it is the day on which the starter's first
// opening begins.
func (c *Treatment) starterDay() schedule.Date {
	if len(c.feeding.starter) == 0 || len(c.feeding.starter[0].openings) == 0 {
		return schedule.Date{}
	}
	os := c.feeding.starter[0].openings
	ws, _ := c.Windows(os, schedule.Soonest)
	for _, w := range ws {
		for d := w.From; !d.After(w.To); d = d.Next() {
			if _, away := c.Crew.AwayOn(d); !away && c.Crew.Works(d) {
				return d
			}
		}
	}
	return os[0].From
}

// split is the working of how a total was split into doses; none for a single dose.
func split(n int, total, single agronomy.PerThousand) []schedule.Reason {
	if n == 1 {
		return nil
	}
	return []schedule.Reason{{Text: word.Hundredths(total) + " lb ÷ " + word.Hundredths(single) + " lb at once: " + strconv.Itoa(n) + " doses of " + word.Hundredths(total/agronomy.PerThousand(n)) + " lb/1000 sq ft", Source: "common"}}
}

// Growing gives the openings from the beginning of growth to its end.
func (c *Treatment) Growing() []schedule.Opening {
	begins, ends := c.Growth.Begins, c.Growth.Ends
	if begins.Never || ends.Never {
		if begins.Below || ends.Below {
			return nil
		}
		return c.Almanac.Between(c.Almanac.Coldest, lastDay(c.Almanac.Coldest), "the turf year begins", "the turf year ends")
	}
	return c.Almanac.Between(begins, ends, "growth begins", "growth ends")
}
