package schedule

import (
	"fmt"
	"slices"

	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
)

// lateStarterDays is how long after sowing a starter that was not put down can
// still serve as the first feeding of the young stand.
const lateStarterDays = 84 // [common] within the first growing weeks

// planStarter plans a starter with a coming sowing, or, where none is on
// record, as the first feeding of a stand that is already up.
func (c *treatment) planStarter(p, k *want) {
	switch {
	case c.future():
		c.starterWithSeed(p, k)
	case c.young(c.Start) && c.Start.DaysFrom(c.seeded) <= lateStarterDays:
		c.starterAfterSeed(p, k)
	}
}

func (c *treatment) hasStarter() bool {
	return c.doneSince(Starter, c.seeded.AddDays(-14))
}

func (c *treatment) starterWithSeed(p, k *want) {
	f := &c.feeding
	if c.hasStarter() {
		return
	}
	rules := &c.seedlings
	caps, capWhy := c.nCaps(c.seeded)
	caps.N, caps.SolubleN = min(caps.N, rules.StarterN[1]), min(caps.SolubleN, rules.StarterN[1])
	wants := material.Wants{N: rules.StarterN[0], P2O5: rules.StarterP2O5[0]}
	why := slices.Concat(rules.Why, capWhy)
	if c.Area.Soil != nil {
		wants.P2O5 = min(rules.StarterP2O5[1], p.left)
		why = append(why, p.why...)
		if p.left < trace {
			why = append(why, Reason{Text: "The report shows enough phosphorus, so the starter brings none.", Source: "gcm-p-seeding"})
		}
	} else {
		f.found.assumed = append(f.found.assumed, fmt.Sprintf("%s: no soil report, so the starter brings the usual phosphorus for a new lawn", c.Area.Name))
	}
	c.addStarter(p, k, wants, caps, why, []opening{{Span{c.seeded, c.seeded}, "with the seed", "with the seed"}}, soonest)
}

func (c *treatment) starterAfterSeed(p, k *want) {
	f := &c.feeding
	if c.hasStarter() {
		return
	}
	f.found.assumed = append(f.found.assumed, fmt.Sprintf("%s: no starter is on record for the sowing of %s, so none is counted; if one went down, add it to the record book",
		c.Area.Name, c.seeded.Short()))
	if p.left < trace {
		return
	}
	rules := &c.seedlings
	caps, capWhy := c.nCaps(c.Start)
	caps.N, caps.SolubleN = min(caps.N, rules.FirstN), min(caps.SolubleN, rules.FirstN)
	wants := material.Wants{N: rules.FirstN, P2O5: min(p.left, p.single), K2O: min(k.left, caps.K2O)}
	os, last := c.lastUseful(c.firstFeeds(), nutrient.LastSolubleN)
	os = meet(os, []opening{{Span{c.seeded, c.seeded.AddDays(lateStarterDays)}, "sowing", fmt.Sprintf("%d days after sowing", lateStarterDays)}})
	if ws, _ := c.windows(os, soonest); len(ws) == 0 {
		f.found.leave(c.Area, Starter, 1, "a starter after the seed finds no day in time: "+closing(os, last), "")
		return
	}
	why := slices.Concat(rules.Why, p.why, capWhy, last, []Reason{{Text: "A starter that comes after the seed is the first feeding: its nitrogen counts as that.", Source: "common"}})
	c.addStarter(p, k, wants, caps, why, os, soonest)
}

// firstFeeds gives the openings from the first feeding of the seedlings on.
func (c *treatment) firstFeeds() []opening {
	gap, _ := nutrient.Spacing(nutrient.SeedUp, nutrient.SolubleNDown)
	return from(c.open(), c.emerged().AddDays(gap.Days), fmt.Sprintf("%s after the seedlings are up", Plural(gap.Days, "day")))
}

func (c *treatment) addStarter(p, k *want, wants material.Wants, caps material.Caps, why []Reason, os []opening, ideal func(opening) Date) {
	f := &c.feeding
	wants.P2O5 = min(wants.P2O5, p.most)
	if wants.P2O5 < trace {
		wants.P2O5, caps.P2O5 = 0, 0
	} else if reason, shut := c.phosphorusShut(); shut {
		f.found.leave(c.Area, Starter, 1, reason.Text, reason.Source)
		return
	} else {
		caps.P2O5 = min(p.most, max(wants.P2O5, c.seedlings.StarterP2O5[1]))
	}
	if c.noStarter.Reason != "" {
		f.found.left = append(f.found.left, c.noStarter)
		return
	}
	d, chosen, ok := c.choose(wants, caps, func(m material.Material) bool {
		return wants.P2O5 == 0 || m.Analysis.P2O5 > 0 && m.Analysis.N > 0
	})
	n := c.number(Starter)()
	if !ok {
		f.found.leave(c.Area, Starter, n, "no material for it: "+firstText(chosen), "")
		return
	}
	p.left, k.left = remains(p.left, d.P2O5), remains(k.left, d.K2O)
	because := "Seedlings have short roots: a little food beside them carries them through the first weeks."
	if !c.future() {
		because = fmt.Sprintf("It is the young grass's first feeding, and phosphorus is %s in the soil report.", p.level)
	}
	f.starter = []feed{{n: n, dose: d, openings: os, ideal: ideal, because: because, why: slices.Concat(why, d.Why, chosen)}}
}
