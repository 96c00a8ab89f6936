package rule

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/agronomy/material"
	"swardbook/agronomy/soil"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// liming is an area's lime, before its dressings get days.
type liming struct {
	found     schedule.Proposal
	need      lime.Need
	cause     lime.Case
	stone     material.Material
	value     lime.Value           // effective part of the stone's weight
	total     agronomy.PerThousand // of stone, still to go down
	most      agronomy.PerThousand // of stone at once
	now       agronomy.PerThousand // the part of total that is at hand and goes down first; 0: all dressings are equal
	dressings []dressing
	why       []schedule.Reason
	shed      []string // what the stone on hand will do
	ash       string   // why the ash on hand is not used
}

// allDown ends the words of a need that is met by what is down already.
const allDown = "; all of it is down"

// dressing is one dressing of lime: what, how much, and how much of that acts.
type dressing struct {
	stone material.Material
	rate  agronomy.PerThousand
	value lime.Value
	why   []schedule.Reason // how it was rounded to what a person can weigh
}

// brings sums what the dressings bring of something.
func (l *liming) brings(of func(material.Dose) agronomy.PerThousand) agronomy.PerThousand {
	var sum agronomy.PerThousand
	for _, d := range l.dressings {
		sum += of(material.DoseOf(d.stone, d.rate))
	}
	return sum
}

// planLime works out the requirement, what is down already, the stone and the
// dressings.
func (c *Treatment) planLime() liming {
	var l liming
	leave := func(reason string) liming {
		l.found.Leave(c.Area, schedule.Lime, 1, reason, "")
		return l
	}
	if c.Area.Soil == nil || c.Report.PH == 0 {
		return leave("no soil pH is given for this area, and lime is spread only where one is")
	}
	l.cause = c.Site.LimeCase(c.Area)
	need, err := lime.Requirement(l.cause)
	if err != nil {
		return leave(err.Error())
	}
	l.need, c.ground = need, need.Ground
	for _, a := range need.Assumed {
		l.found.Assumed = append(l.found.Assumed, c.Area.Name+": "+a.Text)
	}
	why := slices.Concat(c.Area.Stand.WhyPH(), need.Why)
	if need.Rate == 0 {
		text := fmt.Sprintf("lime: none, pH %s is high enough for %s", c.Report.PH.Words(), c.Area.Stand)
		if l.cause.Printed != nil {
			text = "lime: none, the laboratory asks for none"
		}
		l.found.Needs = []schedule.Need{{Kind: schedule.Lime, Text: text, Why: why}}
		return l
	}
	effective := need.Rate
	down := c.Since(c.Area.Sampled, c.effectiveLime)
	if down > 0 {
		effective = schedule.Remains(need.Rate, down)
		why = append(why, schedule.Reason{Text: fmt.Sprintf("down since the sample: %.1f lb/1000 sq ft of effective lime; %.1f − %.1f = %.1f lb/1000 sq ft left", float64(down), float64(need.Rate), float64(down), float64(effective))})
	}
	if why, stale := c.Stale(); stale {
		return leave(why)
	}
	level := soil.LevelIn(c.Report, agronomy.Magnesium, c.Place.State)
	kind, kindWhy := lime.ChooseStone(c.Report, level)
	l.stone = c.limestone(kind, effective)
	first, firstWhy := c.firstLeft(kind, &l)
	kindWhy = append(kindWhy, firstWhy...)
	l.value = c.limeValue(l.stone)
	all, err := lime.MaterialRate(need.Rate, l.value.Full)
	if err != nil {
		return leave(word.MaterialName(l.stone) + ": " + err.Error())
	}
	l.total = effective * 100 / agronomy.PerThousand(l.value.Full)
	why = slices.Concat(why, kindWhy, l.value.Why, []schedule.Reason{{
		Text:   fmt.Sprintf("%s: %.1f × 100 ÷ %s = %.1f lb/1000 sq ft", word.MaterialName(l.stone), float64(effective), word.Number(float64(l.value.Full), 1), float64(l.total)),
		Source: "psu-report-notes"}})
	most, mostWhy := lime.Cap(l.stone, !c.WorksIn())
	if c.Area.Cored && !c.WorksIn() && !l.stone.Hydrated {
		most, mostWhy = lime.CapCored, schedule.Reason{Text: "Cored turf takes up to 100 lb/1000 sq ft at once.", Source: "purdue-ay18, psu-report-notes"}
	}
	l.why = append(why, mostWhy)
	onSuiting := !need.BelowTable && need.Reaches < c.Report.PH+0.05 // the laboratory asks for lime although the pH suits, and does not say why
	text := fmt.Sprintf("lime: %s of %s in all brings pH %s to %.1f", c.Measure().Rate(all), word.MaterialName(l.stone), c.Report.PH.Words(), float64(need.Reaches))
	switch {
	case need.BelowTable:
		text = fmt.Sprintf("lime: a first %s of %s; the tables do not reach pH %s, so ask the laboratory for a buffer pH before more", c.Measure().Rate(all), word.MaterialName(l.stone), c.Report.PH.Words())
	case onSuiting:
		text = fmt.Sprintf("lime: %s of %s in all, as the laboratory itself asks for", c.Measure().Rate(all), word.MaterialName(l.stone))
	}
	if down > 0 && l.total < roundedLime {
		text += allDown
	}
	l.found.Needs = []schedule.Need{{Kind: schedule.Lime, Total: all, Why: l.why, Text: text}}
	if least := leastLime + c.limeRounding(); l.total < least {
		if down == 0 || l.total >= roundedLime {
			return leave(fmt.Sprintf("only %s is left, too little for a dressing; the retest decides", c.Measure().Rate(l.total)))
		}
		return l
	}
	l.most = most
	left := l.total
	if first.ID != "" {
		half := first.Kind == material.LimeMaterial && c.strict(kind) && !suits(first, kind)
		d := c.leftover(first, half, need.Rate, effective)
		if d.rate >= leastLime {
			l.dressings = append(l.dressings, d)
			l.why = slices.Concat(l.why, d.value.Why)
			left -= d.rate * agronomy.PerThousand(d.value.Full/l.value.Full)
			l.found.Needs[0].Total += d.rate * agronomy.PerThousand(1-d.value.Full/l.value.Full)
			l.found.Needs[0].Text = fmt.Sprintf("lime: %s of %s on hand, then %s of %s", c.Measure().Rate(d.rate), word.MaterialName(first), c.Measure().Rate(max(0, left)), word.MaterialName(l.stone))
			switch {
			case onSuiting:
				l.found.Needs[0].Text += ", as the laboratory itself asks for"
			case !need.BelowTable:
				l.found.Needs[0].Text += fmt.Sprintf(", in all bring pH %s to %.1f", c.Report.PH.Words(), float64(need.Reaches))
			}
		}
	}
	var rest []agronomy.PerThousand
	if left >= leastLime {
		_, held := fewest(left, most, leastLime)
		if held < left {
			l.why = append(l.why, schedule.Reason{Text: c.Measure().Rate(left-held) + " is too little for one more dressing; the retest decides.", Source: "common"})
		}
		rest, err = lime.Dressings(held, most)
	}
	if err != nil {
		return leave(err.Error())
	}
	if first.ID == "" {
		rest = c.atHand(&l, rest)
	}
	if l.now > 0 {
		l.dressings, rest = append(l.dressings, dressing{stone: l.stone, rate: l.now, value: l.value}), rest[1:]
	}
	for _, d := range c.weighed(l.stone, rest, most) {
		l.dressings = append(l.dressings, dressing{l.stone, d.Rate, l.value, d.Why})
	}
	l.onHand(c)
	return l
}

// leastLime is the least dressing worth filling a spreader for, lb/1000 sq ft.
const leastLime agronomy.PerThousand = 5 // [common]

// roundedLime is what may be left of a requirement because its dressings were amounts
// that a person can weigh, lb/1000 sq ft: it counts as none.
const roundedLime agronomy.PerThousand = 1 // [common]

// limeRounding is how much less the dressings since the sample that went down as planned may
// have brought than was worked out, as each was an amount that a person can weigh, see
// [material.Dose.Sayable].
func (c *Treatment) limeRounding() agronomy.PerThousand {
	return c.Since(c.Area.Sampled, func(d *schedule.Down) agronomy.PerThousand {
		step := agronomy.Pounds(5) // [common]
		switch weight := d.Dose.Rate.Over(c.Area.Size); {
		case d.Kind != schedule.Lime || d.NotDone || !d.AsPlanned && d.Presumed == nil:
			return 0
		case weight < 50:
			step = 1
		}
		return agronomy.PerThousand(float64(step) * 1000 / float64(c.Area.Size))
	})
}

// atHand lets the stone in the shed, if it is less than is wanted, go down first by itself
// rather than wait until the rest is bought: if that takes no further dressing, or it is at
// least half of one.
func (c *Treatment) atHand(l *liming, equal []agronomy.PerThousand) []agronomy.PerThousand {
	pack, ok := l.stone.PackWeight()
	if c.WorksIn() || len(equal) == 0 || !ok || l.stone.ToBuy {
		return equal
	}
	have := agronomy.PerThousand(float64(pack) * l.stone.OnHand * 1000 / float64(c.Area.Size))
	left := agronomy.PerThousand(len(equal)) * equal[0]
	now := min(have, l.most)
	if now < leastLime || left-have < leastLime {
		return equal
	}
	later, err := lime.Dressings(left-now, l.most)
	if err != nil || len(later) >= len(equal) && now < equal[0]/2 {
		return equal
	}
	l.now = now
	m := c.Measure()
	l.why = append(l.why, schedule.Reason{Text: fmt.Sprintf("%s is on hand and goes down first; the other %s must be bought and waits for the next sample.",
		word.Capital(m.Weight(now.Over(c.Area.Size))), m.Weight((left - now).Over(c.Area.Size))), Source: "common"})
	return append([]agronomy.PerThousand{now}, later...)
}

// dolomiticMg is the magnesium from which a limestone is called dolomitic, %.
const dolomiticMg agronomy.Percent = 6 // [common] from memory

// limestone picks the lime. If the report calls for one stone, it is that stone: of the
// site's materials the one with the largest effective weight, ground stone before hydrated
// lime; if the site has none, the trade's. If either stone will do, or only the texture
// speaks for one, it is whatever has the largest effective weight. A lime of which none is
// to be bought is picked only if there is enough of it for all.
func (c *Treatment) limestone(kind lime.Stone, effective agronomy.PerThousand) material.Material {
	var best material.Material
	most := -1.0
	for _, m := range c.Shed.Stock() {
		if m.Kind != material.LimeMaterial || !suits(m, kind) && c.strict(kind) {
			continue
		}
		acts := c.effectiveOnHand(m)
		if all := effective * 100 / agronomy.PerThousand(c.limeValue(m).Full); schedule.Short(material.DoseOf(m, all), c.Area.Size) {
			continue
		}
		if m.Hydrated != best.Hydrated && best.ID != "" {
			if !m.Hydrated {
				best, most = m, acts
			}
			continue
		}
		if acts > most {
			best, most = m, acts
		}
	}
	if best.ID != "" {
		return best
	}
	id := "trade-ground-limestone"
	if kind == lime.Dolomitic {
		id = "trade-dolomitic-limestone"
	}
	for _, m := range c.Shed.Trade() {
		if m.ID == id {
			return m
		}
	}
	return material.Material{}
}

// strict tells whether the report calls for one stone by its figures.
func (c *Treatment) strict(kind lime.Stone) bool {
	l := soil.LevelIn(c.Report, agronomy.Magnesium, c.Place.State)
	return kind == lime.Calcitic || kind == lime.Dolomitic && (l == soil.Low || l == soil.VeryLow)
}

func suits(m material.Material, kind lime.Stone) bool {
	dolomitic := m.Magnesium >= dolomiticMg
	return kind == lime.EitherStone || dolomitic == (kind == lime.Dolomitic)
}

// effectiveOnHand gives the effective pounds of a lime on hand. A pack of unknown size
// counts as one pound, so that some is more than none.
func (c *Treatment) effectiveOnHand(m material.Material) float64 {
	pack, ok := m.PackWeight()
	if !ok {
		pack = 1
	}
	return float64(pack) * m.OnHand * float64(c.limeValue(m).Full) / 100
}

// firstLeft gives a lime on hand that is used up before the one that was picked: ordinary
// limestone if the rest brings the magnesium; a stone of which there is too little and none
// is to be bought; or wood ash, which never goes on a young stand.
func (c *Treatment) firstLeft(kind lime.Stone, l *liming) (material.Material, []schedule.Reason) {
	for _, m := range c.Shed.Stock() {
		switch {
		case m.OnHand <= 0 || m.ID == l.stone.ID || m.Hydrated:
		case m.Kind == material.LimeMaterial && kind == lime.Dolomitic && c.strict(kind) && !suits(m, kind):
			return m, []schedule.Reason{{Text: "The " + word.MaterialName(m) + " on hand goes first, for up to half of the lime; the rest is dolomitic and brings the magnesium.", Source: "common"}}
		case m.Kind == material.LimeMaterial && m.NoRebuy && (suits(m, kind) || !c.strict(kind)):
			return m, []schedule.Reason{{Text: "The " + word.MaterialName(m) + " on hand goes first; none of it is to be bought, so another stone brings the rest.", Source: "common"}}
		case m.Kind == material.WoodAsh && (c.Future() || c.Young(c.Start)):
			l.ash = word.MaterialName(m) + " stays off the young stand: ash burns seedlings."
		case m.Kind == material.WoodAsh:
			return m, []schedule.Reason{{Text: "Wood ash: at most 20 lb/1000 sq ft a year, only under pH 7, never on seedlings; its potash counts.", Source: "common"}}
		}
	}
	return material.Material{}, nil
}

// ashYear is the most wood ash in a year, lb/1000 sq ft.
const ashYear agronomy.PerThousand = 20 // [common]

// leftover is the dressing of a lime that is used up first: all that is on hand, but of
// stone, if half is set, at most half of what the soil wants, and of ash at most a year's
// amount.
func (c *Treatment) leftover(m material.Material, half bool, whole, effective agronomy.PerThousand) dressing {
	d := dressing{stone: m, value: c.limeValue(m)}
	most := effective * 100 / agronomy.PerThousand(d.value.Full)
	cap, _ := lime.Cap(m, !c.WorksIn())
	if m.Kind == material.WoodAsh {
		cap = schedule.Remains(ashYear, c.Since(c.Start.AddDays(-364), func(d *schedule.Down) agronomy.PerThousand {
			if d.Dose.Material.Kind != material.WoodAsh {
				return 0
			}
			return d.Dose.Rate
		}))
	} else if half {
		gone := c.Since(c.Area.Sampled, func(o *schedule.Down) agronomy.PerThousand {
			if o.Dose.Material.Kind != material.LimeMaterial || suits(o.Dose.Material, lime.Dolomitic) {
				return 0
			}
			return c.EffectiveLime(c.Area, o.Dose)
		})
		most = min(most, schedule.Remains(whole/2, gone)*100/agronomy.PerThousand(d.value.Full))
	}
	d.rate = min(most, cap)
	if pack, ok := m.PackWeight(); ok {
		if all := agronomy.PerThousand(float64(pack) * m.OnHand * 1000 / float64(c.Area.Size)); all <= d.rate {
			d.rate = all // it is used up
			return d
		}
	}
	weighed := c.weigh(m, d.rate, d.rate)
	d.rate, d.why = weighed.Rate, weighed.Why
	return d
}

// onHand says what the lime in the shed will do if no more is bought, and draws
// it.
func (l *liming) onHand(c *Treatment) {
	if l.ash != "" {
		l.shed = append(l.shed, c.Area.Name+": "+l.ash)
	}
	var seen []string
	for _, d := range l.dressings {
		if !d.stone.ToBuy && !slices.Contains(seen, d.stone.ID) {
			seen = append(seen, d.stone.ID)
			l.tellOnHand(c, d)
		}
	}
}

func (l *liming) tellOnHand(c *Treatment, d dressing) {
	m := c.Measure()
	pack, ok := d.stone.PackWeight()
	if !ok {
		return
	}
	var rate agronomy.PerThousand // wanted of this stone
	for _, o := range l.dressings {
		if o.stone.ID == d.stone.ID {
			rate += o.rate
		}
	}
	have, want := pack*agronomy.Pounds(d.stone.OnHand), rate.Over(c.Area.Size)
	name := word.MaterialName(d.stone)
	switch {
	case have >= want-1e-6 && d.stone.ID == l.stone.ID:
		l.shed = append(l.shed, fmt.Sprintf("%s: the %s in the shed covers all the lime this area needs.", c.Area.Name, name))
	case have > 0:
		spread := min(rate, agronomy.PerThousand(float64(have)*1000/float64(c.Area.Size)))
		some := "the " + m.Weight(have) + " of "
		if used := spread.Over(c.Area.Size); used < have-1e-6 {
			some = m.Weight(used) + " of the " + m.Weight(have) + " of "
		}
		text := fmt.Sprintf("%s: %s%s in the shed is %s", c.Area.Name, some, name, m.Rate(spread))
		if ph, _, err := lime.ExpectedPH(l.cause, l.reached(spread*agronomy.PerThousand(d.value.FirstYear)/100)); err == nil && !l.need.BelowTable {
			alone := "by itself it"
			if l.reached(0) > 0.5 {
				alone = "with what is down already it"
			}
			text += fmt.Sprintf("; %s takes the soil from pH %s to about %.1f after a year, where %s is wanted", alone, l.cause.PH.Words(), float64(ph), l.need.Target.Words())
		}
		l.shed = append(l.shed, text+".")
	default:
		text := fmt.Sprintf("%s: no lime is left in the shed for this area, so its pH stays at %s.", c.Area.Name, l.cause.PH.Words())
		if ph, _, err := lime.ExpectedPH(l.cause, l.reached(0)); err == nil && l.reached(0) > 0.5 {
			text = fmt.Sprintf("%s: no lime is left in the shed for this area; what is down already takes the soil from pH %s to about %.1f, where %s is wanted.", c.Area.Name, l.cause.PH.Words(), float64(ph), l.need.Target.Words())
		}
		l.shed = append(l.shed, text)
	}
	c.Shed.Take(material.DoseOf(d.stone, rate), c.Area.Size)
}

// reached gives the effective lime that is down once more of it is added, but at most
// what is needed, as dressings are rounded to what a person can weigh.
func (l *liming) reached(more agronomy.PerThousand) agronomy.PerThousand {
	return min(l.need.Rate, l.need.Rate-l.total*agronomy.PerThousand(l.value.Full)/100+more)
}

// limeValue is [schedule.Site.LimeValue] for the area, with the requirement known.
func (c *Treatment) limeValue(m material.Material) lime.Value {
	return lime.ValueOf(m, c.Place.State, c.ground)
}

// effectiveLime gives the effective lime that a job on record brought.
func (c *Treatment) effectiveLime(d *schedule.Down) agronomy.PerThousand {
	return c.EffectiveLime(c.Area, d.Dose)
}
