package rule

import (
	"cmp"
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
	dressings []agronomy.PerThousand
	why       []schedule.Reason
	shed      []string // what the stone on hand will do
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
		return leave("there is no soil pH for this area, and lime is never spread without one")
	}
	l.cause = c.Site.LimeCase(c.Area)
	need, err := lime.Requirement(l.cause)
	if err != nil {
		return leave(err.Error())
	}
	l.need = need
	for _, a := range need.Assumed {
		l.found.Assumed = append(l.found.Assumed, c.Area.Name+": "+a.Text)
	}
	why := slices.Concat(c.Area.Stand.WhyPH(), need.Why)
	if need.Rate == 0 {
		text := fmt.Sprintf("lime: none, pH %s is high enough for %s", c.Report.PH.Words(), c.Area.Stand)
		if l.cause.Printed != nil {
			text = "lime: none, the laboratory itself asks for none"
		}
		l.found.Needs = []schedule.Need{{Kind: schedule.Lime, Text: text, Why: why}}
		return l
	}
	effective := need.Rate
	if d := c.Since(c.Area.Sampled, l.acts(c)); d > 0 {
		effective = schedule.Remains(need.Rate, d)
		why = append(why, schedule.Reason{Text: fmt.Sprintf("down since the sample: %.1f lb/1000 sq ft of effective lime; %.1f − %.1f = %.1f lb/1000 sq ft left", float64(d), float64(need.Rate), float64(d), float64(effective))})
	}
	if why, stale := c.Stale(); stale {
		return leave(why)
	}
	level := soil.LevelIn(c.Report, agronomy.Magnesium, c.Place.State)
	kind, kindWhy := lime.ChooseStone(c.Report, level)
	l.stone = c.limestone(kind)
	l.value = lime.ValueOf(l.stone, c.Place.State, need.Ground)
	all, err := lime.MaterialRate(need.Rate, l.value.Full)
	if err != nil {
		return leave(word.MaterialName(l.stone) + ": " + err.Error())
	}
	l.total = effective * 100 / agronomy.PerThousand(l.value.Full)
	why = slices.Concat(why, kindWhy, l.value.Why, []schedule.Reason{{
		Text:   fmt.Sprintf("%s: %.1f × 100 ÷ %s = %.1f lb/1000 sq ft", word.MaterialName(l.stone), float64(effective), word.Number(float64(l.value.Full), 1), float64(l.total)),
		Source: "psu-report-notes"}})
	most, mostWhy := lime.Cap(l.stone, !c.Future())
	if c.Area.Cored && !c.Future() && !l.stone.Hydrated {
		most, mostWhy = lime.CapCored, schedule.Reason{Text: "Cored turf takes up to 100 lb/1000 sq ft at once.", Source: "purdue-ay18, psu-report-notes"}
	}
	l.why = append(why, mostWhy)
	text := fmt.Sprintf("lime: %s of %s in all brings pH %s to %.1f", c.Measure().Rate(all), word.MaterialName(l.stone), c.Report.PH.Words(), float64(need.Reaches))
	if need.BelowTable {
		text = fmt.Sprintf("lime: a first %s of %s, for no table reaches pH %s; ask the laboratory for a buffer pH before more", c.Measure().Rate(all), word.MaterialName(l.stone), c.Report.PH.Words())
	}
	l.found.Needs = []schedule.Need{{Kind: schedule.Lime, Total: all, Why: l.why, Text: text}}
	if l.total < 5 { // [common] not worth filling a spreader for
		if l.total > 0 {
			return leave(fmt.Sprintf("only %s is left, too little for a dressing; the retest decides", c.Measure().Rate(l.total)))
		}
		return l
	}
	l.most = most
	l.dressings, err = lime.Dressings(l.total, most)
	if err != nil {
		return leave(err.Error())
	}
	l.onHand(c)
	return l
}

// limestone picks the lime: what there is most of in the shed, ground stone
// before hydrated lime, else the trade's stone of the kind that suits.
func (c *Treatment) limestone(kind lime.Stone) material.Material {
	stock := slices.Clone(c.Shed.Stock())
	slices.SortStableFunc(stock, func(a, b material.Material) int {
		return cmp.Or(boolOrder(a.Hydrated, b.Hydrated), cmp.Compare(b.OnHand, a.OnHand))
	})
	for _, m := range stock {
		if m.Kind == material.LimeMaterial {
			return m
		}
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

func boolOrder(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// onHand says what the stone in the shed will do if no more is bought, and
// draws it.
func (l *liming) onHand(c *Treatment) {
	if l.stone.ToBuy {
		return
	}
	m := c.Measure()
	pack, ok := l.stone.PackWeight()
	if !ok {
		return
	}
	have := pack * agronomy.Pounds(l.stone.OnHand)
	want := l.total.Over(c.Area.Size)
	if have >= want {
		l.shed = append(l.shed, fmt.Sprintf("%s: the %s in the shed covers all the lime this area needs.", c.Area.Name, word.MaterialName(l.stone)))
	} else if have > 0 {
		rate := agronomy.PerThousand(float64(have) * 1000 / float64(c.Area.Size))
		text := fmt.Sprintf("%s: the %s of %s in the shed is %s", c.Area.Name, m.Weight(have), word.MaterialName(l.stone), m.Rate(rate))
		if ph, _, err := lime.ExpectedPH(l.cause, l.reached(rate, l.value.FirstYear)); err == nil {
			alone := "by itself it"
			if l.reached(0, l.value.Full) > 0.5 {
				alone = "with what is down already it"
			}
			text += fmt.Sprintf("; %s takes the soil from pH %s to about %.1f after a year, where %s is wanted", alone, l.cause.PH.Words(), float64(ph), l.need.Target.Words())
		}
		l.shed = append(l.shed, text+".")
	} else {
		l.shed = append(l.shed, fmt.Sprintf("%s: there is no lime left in the shed for this area, so its pH stays at %s.", c.Area.Name, l.cause.PH.Words()))
	}
	c.Shed.Take(material.DoseOf(l.stone, l.total), c.Area.Size)
}

// reached gives the effective lime that is down once a rate of the stone, of
// which so much acts, has been spread on top of what is down already.
func (l *liming) reached(rate agronomy.PerThousand, acts agronomy.Percent) agronomy.PerThousand {
	before := l.need.Rate - l.total*agronomy.PerThousand(l.value.Full)/100
	return before + rate*agronomy.PerThousand(acts)/100
}

// acts tells how much effective lime a job on record brought.
func (l *liming) acts(c *Treatment) func(schedule.Down) agronomy.PerThousand {
	return func(d schedule.Down) agronomy.PerThousand {
		if !schedule.Lime.ServedBy(d.Dose.Material) {
			return 0
		}
		return d.Dose.Rate * agronomy.PerThousand(lime.ValueOf(d.Dose.Material, c.Place.State, l.need.Ground).Full) / 100
	}
}
