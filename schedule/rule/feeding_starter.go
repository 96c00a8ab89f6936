package rule

import (
	"fmt"
	"slices"

	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// lateStarterDays is how long after sowing a starter that was not put down can
// still serve as the first feeding of the young stand.
const lateStarterDays = 84 // [common] within the first growing weeks

// planStarter plans a starter with a coming sowing, or, where none is on
// record, as the first feeding of a stand that is already up.
func (c *Treatment) planStarter(p, k *want) {
	switch {
	case c.Future():
		c.starterWithSeed(p, k)
	case c.Young(c.Start) && c.Start.DaysFrom(c.Seeded) <= lateStarterDays:
		c.starterAfterSeed(p, k)
	}
}

func (c *Treatment) hasStarter() bool {
	return c.DoneSince(schedule.Starter, c.Seeded.AddDays(-14))
}

func (c *Treatment) starterWithSeed(p, k *want) {
	f := &c.feeding
	if c.hasStarter() {
		return
	}
	rules := &c.Seedlings
	caps, capWhy := c.nCaps(c.Seeded)
	caps.N, caps.SolubleN = min(caps.N, rules.StarterN[1]), min(caps.SolubleN, rules.StarterN[1])
	wants := material.Wants{N: rules.StarterN[0], P2O5: rules.StarterP2O5[0]}
	why := slices.Concat(rules.Why, capWhy)
	if c.Area.Soil != nil {
		wants.P2O5 = min(rules.StarterP2O5[1], p.left)
		why = append(why, p.why...)
		if p.left < schedule.LeastDose {
			why = append(why, schedule.Reason{Text: "The report shows enough phosphorus, so the starter brings none.", Source: "gcm-p-seeding"})
		}
	} else {
		f.found.Assumed = append(f.found.Assumed, fmt.Sprintf("%s: no soil report, so the starter brings the usual phosphorus for a new lawn", c.Area.Name))
	}
	c.addStarter(p, k, wants, caps, why, []schedule.Opening{{Span: schedule.Span{From: c.Seeded, To: c.Seeded}, Opens: "with the seed", Closes: "with the seed"}}, schedule.Soonest)
}

func (c *Treatment) starterAfterSeed(p, k *want) {
	f := &c.feeding
	if c.hasStarter() {
		return
	}
	f.found.Assumed = append(f.found.Assumed, fmt.Sprintf("%s: no starter is on record for the sowing of %s, so none is counted; if one went down, add it to the record book",
		c.Area.Name, c.Seeded.Short()))
	if p.left < schedule.LeastDose {
		return
	}
	rules := &c.Seedlings
	caps, capWhy := c.nCaps(c.Start)
	caps.N, caps.SolubleN = min(caps.N, rules.FirstN), min(caps.SolubleN, rules.FirstN)
	wants := material.Wants{N: rules.FirstN, P2O5: min(p.left, p.single), K2O: min(k.left, caps.K2O)}
	os, last := c.LastUseful(c.firstFeeds(), nutrient.LastSolubleN)
	os = schedule.Meet(os, []schedule.Opening{{Span: schedule.Span{From: c.Seeded, To: c.Seeded.AddDays(lateStarterDays)}, Opens: "sowing", Closes: fmt.Sprintf("%d days after sowing", lateStarterDays)}})
	if ws, _ := c.Windows(os, schedule.Soonest); len(ws) == 0 {
		f.found.Leave(c.Area, schedule.Starter, 1, "a starter after the seed finds no day in time: "+closing(os, last), "")
		return
	}
	why := slices.Concat(rules.Why, p.why, capWhy, last, []schedule.Reason{{Text: "A starter that comes after the seed is the first feeding: its nitrogen counts as that.", Source: "common"}})
	c.addStarter(p, k, wants, caps, why, os, schedule.Soonest)
}

// firstFeeds gives the openings from the first feeding of the seedlings on.
func (c *Treatment) firstFeeds() []schedule.Opening {
	gap, _ := nutrient.Spacing(nutrient.SeedUp, nutrient.SolubleNDown)
	return schedule.From(c.Open(), c.Emerged().AddDays(gap.Days), fmt.Sprintf("%s after the seedlings are up", word.Plural(gap.Days, "day")))
}

func (c *Treatment) addStarter(p, k *want, wants material.Wants, caps material.Caps, why []schedule.Reason, os []schedule.Opening, ideal func(schedule.Opening) schedule.Date) {
	f := &c.feeding
	wants.P2O5 = min(wants.P2O5, p.most)
	if wants.P2O5 < schedule.LeastDose {
		wants.P2O5, caps.P2O5 = 0, 0
	} else if reason, shut := c.PhosphorusShut(); shut {
		f.found.Leave(c.Area, schedule.Starter, 1, reason.Text, reason.Source)
		return
	} else {
		caps.P2O5 = min(p.most, max(wants.P2O5, c.Seedlings.StarterP2O5[1]))
	}
	if c.NoStarter.Reason != "" {
		f.found.Left = append(f.found.Left, c.NoStarter)
		return
	}
	d, chosen, ok := c.choose(wants, caps, func(m material.Material) bool {
		return wants.P2O5 == 0 || m.Analysis.P2O5 > 0 && m.Analysis.N > 0
	})
	n := c.Number(schedule.Starter)()
	if !ok {
		f.found.Leave(c.Area, schedule.Starter, n, "no material for it: "+schedule.FirstText(chosen), "")
		return
	}
	p.left, k.left = schedule.Remains(p.left, d.P2O5), schedule.Remains(k.left, d.K2O)
	because := "Seedlings have short roots: a little food beside them carries them through the first weeks."
	if !c.Future() {
		because = fmt.Sprintf("It is the young grass's first feeding, and phosphorus is %s in the soil report.", p.level)
	}
	f.starter = []feed{{n: n, dose: d, openings: os, ideal: ideal, because: because, why: slices.Concat(why, d.Why, chosen)}}
}
