package schedule

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/agronomy/soil"
	"swardbook/schedule/law"
)

// feeding is an area's plan of doses before they get days. It is worked out
// once, in the order in which materials serve each other: the starter, then
// nitrogen, then what those leave short of phosphorus and potassium. The rules
// of the single kinds only turn their part of it into jobs.
type feeding struct {
	found                                          proposal
	starter, nitrogen, late, phosphorus, potassium []feed

	yearly []yearlyN
	first  Span // the stand's first feeding season; unset for an established one
}

// feed is one dose with the openings in which it belongs.
type feed struct {
	n        int
	dose     material.Dose
	openings []opening
	ideal    func(opening) Date
	because  string
	why      []Reason
}

// want is what an area still needs of a nutrient that the report speaks of.
type want struct {
	left   agronomy.PerThousand // still to go down
	single agronomy.PerThousand // most at once
	most   agronomy.PerThousand // phosphorus: most at once by law, whatever is wanted
	level  soil.Level
	why    []Reason
	beyond []Reason // what is not planned at all, and why
}

func (c *treatment) planFeeding() {
	c.feeding = feeding{}
	if c.noStand {
		return
	}
	shed := slices.Clone(c.shed.materials)
	if !c.feed(c.asPlanned(Phosphorus, p2o5Of), c.asPlanned(Potassium, k2oOf)) {
		copy(c.shed.materials, shed)
		c.feed(0, 0)
	}
}

// feed plans all doses. A straight dose that went down as planned was what the
// feedings leave short, so they still see what they saw when it was planned:
// what is left and what so went down. It tells whether they leave the latter;
// if not, more has changed since, and they may see only what is left.
func (c *treatment) feed(downP, downK agronomy.PerThousand) bool {
	f := &c.feeding
	*f = feeding{}
	p, k := c.wantP(), c.wantK()
	wholeP, wholeK := p.left, k.left
	p.left, k.left = p.left+downP, k.left+downK
	c.planStarter(&p, &k)
	c.planNitrogen(&p, &k)
	if p.left < downP-dust || k.left < downK-dust {
		return false
	}
	p.left, k.left = remains(p.left, downP), remains(k.left, downK)
	p.brought(wholeP, "P₂O₅")
	k.brought(wholeK, "K₂O")
	f.phosphorus = c.straights(Phosphorus, p)
	f.potassium = c.straights(Potassium, k)
	return true
}

// wantP reads the need of phosphorus, less what is down since the sample, and
// asks the law whether any may go down.
func (c *treatment) wantP() want {
	w := c.wantOf(Phosphorus, "P₂O₅", p2o5Of, c.needP, c.noP)
	w.most = unlimited
	q := c.asked
	if l, ok := c.law.PCap(q); ok {
		w.most = agronomy.PerThousand(l.Value)
		w.why = append(slices.Clip(w.why), lawReason(l.Rule))
	}
	if l, ok := c.law.PAnnualCap(q); ok {
		year := remains(agronomy.PerThousand(l.Value), c.since(c.Start.AddDays(-365), p2o5Of))
		w.most = min(w.most, year)
		if w.left > year {
			w.beyond = append(w.beyond, Reason{Text: "more phosphorus than the law allows in a year: " + l.Rule.Statement(), Source: l.Rule.Citation})
			w.left = year
		}
	}
	w.single = min(w.single, w.most)
	return w
}

// brought tells what the starter and the feedings bring of a whole want.
func (w *want) brought(whole agronomy.PerThousand, oxide string) {
	if by := whole - w.left; by >= 0.005 {
		w.why = append(slices.Clip(w.why), Reason{Text: "the starter and the feedings bring some along: " + hundredths(whole) + " − " + hundredths(by) + " = " + hundredths(w.left) + " lb " + oxide + "/1000 sq ft left"})
	}
}

// unlimited is more than any dose.
const unlimited agronomy.PerThousand = 1000

func (c *treatment) wantK() want {
	need, err := nutrient.PotassiumNeed(c.report, c.Place.State, c.future())
	return c.wantOf(Potassium, "K₂O", k2oOf, need, err)
}

func p2o5Of(d down) agronomy.PerThousand { return d.dose.P2O5 }
func k2oOf(d down) agronomy.PerThousand  { return d.dose.K2O }

// asPlanned sums what went down since the start in the jobs of a kind that were
// done as planned.
func (c *treatment) asPlanned(k Kind, of func(down) agronomy.PerThousand) agronomy.PerThousand {
	return c.between(Span{Later(c.Start, c.Area.Sampled), c.Through}, func(d down) agronomy.PerThousand {
		if d.kind != k || !d.AsPlanned && d.taken == nil {
			return 0
		}
		return of(d)
	})
}

func (c *treatment) wantOf(k Kind, oxide string, of func(down) agronomy.PerThousand, n nutrient.Need, err error) want {
	f := &c.feeding
	if c.Area.Soil == nil {
		f.found.leave(c.Area, k, 1, "there is no soil report for this area, and "+k.String()+" is never spread without one", "")
		return want{}
	}
	if err != nil {
		f.found.leave(c.Area, k, 1, err.Error(), "")
		return want{}
	}
	for _, a := range n.Assumed {
		f.found.assumed = append(f.found.assumed, c.Area.Name+": "+a.Text)
	}
	w := want{left: n.Year, single: n.Single, level: n.Level, why: n.Why}
	if n.Carried > 0 {
		w.beyond = append(w.beyond, Reason{Text: fmt.Sprintf("%s more is beyond what turf can use in a year; the next report decides", c.Measure().NutrientRate(n.Carried, oxide)), Source: "common"})
	}
	if since := c.since(c.Area.Sampled, of); since > 0 && n.Year > 0 {
		w.left = remains(n.Year, since)
		w.why = append(slices.Clip(w.why), Reason{Text: c.Measure().NutrientRate(since, oxide) + " has gone down since the sample: " + hundredths(n.Year) + " − " + hundredths(since) + " = " + hundredths(w.left) + " lb " + oxide + "/1000 sq ft left"})
	}
	f.found.needs = append(f.found.needs, Need{Kind: k, Total: n.Year, Text: c.needText(k, n.Year, oxide, n.Level), Why: w.why})
	return w
}

func (c *treatment) needText(k Kind, total agronomy.PerThousand, oxide string, level soil.Level) string {
	if total == 0 {
		return k.String() + ": none, the reading is " + string(level)
	}
	return k.String() + ": " + c.Measure().NutrientRate(total, oxide) + ", the reading is " + string(level)
}

// choose picks a material for a want and draws it from the shed.
func (c *treatment) choose(w material.Wants, caps material.Caps, fit func(material.Material) bool) (material.Dose, []Reason, bool) {
	ms, quick, passed := c.offers(fit)
	d, why, ok := material.Choose(ms[:quick], w, caps, c.Area.Size)
	if !ok {
		d, why, ok = material.Choose(ms, w, caps, c.Area.Size)
	}
	if ok {
		c.shed.take(d, c.Area.Size)
	}
	why = append(why, passed...)
	if d.N > 0 && len(c.dressings.jobs) > 0 { // its distance from the lime hangs on this
		_, form := d.Material.Ammonium()
		why = append(why, form)
	}
	return d, why, ok
}

// likely gives the material that choose would pick.
func (c *treatment) likely(w material.Wants, caps material.Caps, fit func(material.Material) bool) (material.Material, bool) {
	ms, quick, _ := c.offers(fit)
	m, ok := material.Likely(ms[:quick], w, caps, c.Area.Size)
	if !ok {
		m, ok = material.Likely(ms, w, caps, c.Area.Size)
	}
	return m, ok
}

// offers lists the materials to choose from: the shed's first, then what the
// trade sells, and last, after the quick ones, the trade's slow ones, as a slow
// material is bought only where no quick one will do. The law's word on slow
// nitrogen, and an area that takes only quick nitrogen, narrow the choice. The
// list holds until the next is asked for.
func (c *treatment) offers(fit func(material.Material) bool) (ms []material.Material, quick int, passed []Reason) {
	ms, slow := c.shed.offered[:0], c.shed.slow[:0]
	for i := range c.shed.materials {
		m := &c.shed.materials[i]
		if m.Kind == material.LimeMaterial || m.Kind == material.SulfurMaterial || m.Kind == material.GypsumMaterial {
			continue
		}
		if why := c.unfit(m); why != "" {
			if !m.ToBuy {
				passed = append(passed, Reason{Text: "passed over: " + materialName(*m) + ", " + why})
			}
			continue
		}
		switch {
		case fit != nil && !fit(*m):
		case m.ToBuy && m.SlowShare > 0:
			slow = append(slow, *m)
		default:
			ms = append(ms, *m)
		}
	}
	quick = len(ms)
	ms = append(ms, slow...)
	c.shed.offered, c.shed.slow = ms, slow
	return ms, quick, passed
}

// unfit says why the site or the law rules a material out.
func (c *treatment) unfit(m *material.Material) string {
	if m.Analysis.N == 0 {
		return ""
	}
	if c.Area.SolubleOnly && m.SlowShare > 0 {
		return "the area takes quick nitrogen only"
	}
	q := c.asked
	q.SlowShare, q.Liquid = m.SlowShare, m.Liquid
	if l, ok := c.law.SlowShareMin(q); ok && m.SlowShare < l.Value {
		return fmt.Sprintf("the law asks for %.0f %% slow nitrogen (%s)", l.Value*100, l.Rule.Citation)
	}
	return ""
}

// nCaps are the most nitrogen and quick nitrogen of one dose: common practice
// and the law, the stricter of the two, each with its reason.
func (c *treatment) nCaps(on Date) (material.Caps, []Reason) {
	lim := c.mostN
	caps := material.Caps{N: lim.Single, SolubleN: lim.Soluble, P2O5: -1, K2O: kAtOnce}
	why := []Reason{lim.Why[0], lim.Why[1]}
	q := c.question(on)
	if l, ok := c.law.NCap(q); ok && agronomy.PerThousand(l.Value) < caps.N {
		caps.N = agronomy.PerThousand(l.Value)
		why = append(why, lawReason(l.Rule))
	}
	if l, ok := c.law.SolubleCap(q); ok && agronomy.PerThousand(l.Value) < caps.SolubleN {
		caps.SolubleN = agronomy.PerThousand(l.Value)
		why = append(why, lawReason(l.Rule))
	}
	caps.SolubleN = min(caps.SolubleN, caps.N)
	return caps, why
}

func lawReason(r law.Rule) Reason {
	return Reason{Text: r.Statement(), Source: r.Citation}
}

// straights splits what is still short of phosphorus or potassium into the
// fewest doses of a material without nitrogen.
func (c *treatment) straights(k Kind, w want) (out []feed) {
	f := &c.feeding
	next := c.number(k)
	defer func() {
		for _, b := range w.beyond {
			f.found.leave(c.Area, k, next(), b.Text, b.Source)
		}
	}()
	if !worthJob(w.left) {
		return nil
	}
	kind := nutrient.LastPhosphorus
	caps := material.Caps{N: 0, SolubleN: 0, P2O5: -1, K2O: 0}
	if k == Phosphorus {
		if why, ok := c.phosphorusShut(); ok {
			f.found.leave(c.Area, k, 1, why.Text, why.Source)
			return nil
		}
	} else {
		kind = nutrient.LastPotassium
		caps = material.Caps{N: 0, SolubleN: 0, P2O5: 0, K2O: -1}
	}
	if w.single <= 0 {
		w.single = w.left
	}
	n := int(math.Ceil(float64(w.left/w.single) - 1e-9))
	each := w.left / agronomy.PerThousand(n)
	wants := material.Wants{P2O5: each}
	if k == Potassium {
		wants = material.Wants{K2O: each}
	}
	os := meet(c.open(), c.growing())
	os, last := c.lastUseful(os, kind)
	gap, _ := nutrient.Spacing(nutrient.PotassiumDown, nutrient.PotassiumDown)
	first := c.after(k, gap.Days)
	for i := range n {
		d, chosen, ok := c.choose(wants, caps, nil)
		if !ok {
			f.found.leave(c.Area, k, next(), "no material for it: "+firstText(chosen), "")
			continue
		}
		due := first.AddDays(i * gap.Days)
		why := slices.Concat(w.why, split(n, w.left, w.single), d.Why, chosen, last)
		because := fmt.Sprintf("%s is %s in the soil report", Capital(k.String()), w.level)
		if n > 1 {
			because += fmt.Sprintf("; dose %d of %d", i+1, n)
		}
		because += "."
		out = append(out, feed{n: next(), dose: d, openings: os, why: why, because: because,
			ideal: func(o opening) Date { return Later(o.From, due) }})
	}
	return out
}

// kAtOnce is the most potassium that goes down at once.
const kAtOnce agronomy.PerThousand = 1.0 // [common]

// split says how a total became doses.
func split(n int, total, single agronomy.PerThousand) []Reason {
	if n == 1 {
		return nil
	}
	return []Reason{{Text: hundredths(total) + " ÷ " + hundredths(single) + " at once: " + strconv.Itoa(n) + " doses of " + hundredths(total/agronomy.PerThousand(n)) + " lb/1000 sq ft", Source: "common"}}
}

// growing gives the openings from the beginning of growth to its end.
func (c *treatment) growing() []opening {
	begins, ends := c.growth.begins, c.growth.ends
	if begins.Never || ends.Never {
		if begins.Below || ends.Below {
			return nil
		}
		return c.almanac.between(c.almanac.coldest, lastDay(c.almanac.coldest), "the turf year begins", "the turf year ends")
	}
	return c.almanac.between(begins, ends, "growth begins", "growth ends")
}

// phosphorusShut asks the law whether phosphorus is shut for this area.
func (c *Case) phosphorusShut() (Reason, bool) { return c.phosphorusShutBy(c.asked) }

func (c *Case) phosphorusShutBy(q law.Question) (Reason, bool) {
	f, ok := c.law.Phosphorus(q)
	if !ok || f.Verdict == law.Yes {
		return Reason{}, false
	}
	text := "the law here shuts phosphorus: " + f.Text
	if f.Verdict == law.MustAsk {
		text = "the law here does not settle it, so ask first: " + f.Text
	}
	return Reason{Text: text, Source: f.Rule.Citation}, true
}

func firstText(rs []Reason) string {
	if len(rs) == 0 {
		return "none fits"
	}
	return rs[0].Text
}
