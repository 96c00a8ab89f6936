package rule

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/climate"
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
	case c.Young(c.Start) && c.Start.DaysFrom(c.Sprouts()) <= lateStarterDays:
		c.starterAfterSeed(p, k)
	default:
		for i, over := range c.Oversown {
			again := i > 0 && !over.After(c.OverFed(c.Oversown[i-1])) // the starter of the overseeding before serves this one too
			if !again && !c.Young(over) {                             // what a young stand gets serves the new seed as well
				c.starterOverseed(p, k, over)
			}
		}
	}
}

// newForPhosphorus works out the need of phosphorus as for new turf until the stand's first
// feeding season ends, whatever day the program starts on.
func (c *Treatment) newForPhosphorus() {
	first := c.firstSeason()
	if c.Future() || first == (schedule.Span{}) || c.Start.After(first.To) {
		return
	}
	n, err := nutrient.PhosphorusNeed(c.Report, c.Place.State, true)
	c.NeedP, c.NoP = n.Up(), err
	c.Asked = c.Question(schedule.Date{})
}

// hasStarter tells whether a starter for the stand's own sowing is on record.
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
	caps.N, caps.SolubleN = min(caps.N, rules.StarterN[1]), min(caps.SolubleN, rules.FirstN)
	wants := material.Wants{N: caps.N, P2O5: rules.StarterP2O5[0]} // sized by its phosphorus, as far as the nitrogen lets
	why := slices.Concat(rules.Why, capWhy)
	if stale, old := c.Stale(); old {
		f.found.Assumed = append(f.found.Assumed, fmt.Sprintf("%s: %s, so the starter brings the usual phosphorus for a new lawn", c.Area.Name, stale))
	} else if c.Area.Soil != nil {
		wants.P2O5 = min(rules.StarterP2O5[1], p.left)
		why = append(why, p.why...)
		if p.left < schedule.LeastDose {
			wants.N = rules.StarterN[0]
			why = append(why, schedule.Reason{Text: "Seed needs no phosphorus where " + c.noPhosphorus(p) + ".", Source: "gcm-p-seeding"})
		}
	} else if _, shut := c.PhosphorusShut(); !shut {
		f.found.Assumed = append(f.found.Assumed, fmt.Sprintf("%s: no soil report, so the starter brings the usual phosphorus for a new lawn", c.Area.Name))
	}
	os := []schedule.Opening{{Span: schedule.Span{From: c.Seeded, To: c.Seeded}, Opens: "with the seed", Closes: "with the seed"}}
	if c.Lies() {
		os = c.greenUp()
		why = append(why, schedule.Reason{Text: "The seed lies through the cold, so its starter waits for the green: on frozen ground it would wash off.", Source: "common"})
	}
	c.addStarter(p, k, wants, caps, why, os, schedule.Soonest)
}

func (c *Treatment) starterAfterSeed(p, k *want) {
	f := &c.feeding
	if c.hasStarter() {
		return
	}
	f.found.Assumed = append(f.found.Assumed, fmt.Sprintf("%s: no starter is on record for the sowing of %s, so none is counted; if one went down, add it to the record book",
		c.Area.Name, c.Seeded.Short()))
	if p.left < schedule.LeastDose {
		f.found.Leave(c.Area, schedule.Starter, c.Number(schedule.Starter)(), "a starter after the seed is only for phosphorus, and "+c.noPhosphorus(p)+"; the first feeding brings the nitrogen", "common")
		return
	}
	rules := &c.Seedlings
	caps, capWhy := c.nCaps(c.Start)
	caps.N, caps.SolubleN = min(caps.N, rules.StarterN[1]), min(caps.SolubleN, rules.FirstN)
	wants := material.Wants{N: caps.N, P2O5: min(p.left, p.single)}
	os, last := c.LastUseful(c.greenUp(), nutrient.LastSolubleN) // from the first mowing on
	if ws, _ := c.Windows(os, schedule.Soonest); len(ws) == 0 {
		f.found.Leave(c.Area, schedule.Starter, 1, "no day is left in time for a starter after the seed: "+closing(os, last), "")
		return
	}
	why := slices.Concat(rules.Why, p.why, capWhy, last, []schedule.Reason{{Text: "A starter that comes after the seed is the first feeding: its nitrogen counts as that.", Source: "common"}})
	c.addStarter(p, k, wants, caps, why, os, schedule.Soonest)
}

// greenUp gives the openings of a starter that comes after the seed: from a first
// mowing, or from the beginning of growth where the seed lay through the cold. For a
// stand that comes up in spring, the heat of summer ends these openings.
func (c *Treatment) greenUp() []schedule.Opening {
	os, from, opens := c.Open(), c.Seeded, "sowing"
	if c.Lies() {
		os, from, opens = c.Almanac.Open, c.Sprouts(), "growth begins"
	}
	os = schedule.Meet(os, []schedule.Opening{{Span: schedule.Span{From: from, To: c.Sprouts().AddDays(lateStarterDays)}, Opens: opens, Closes: fmt.Sprintf("%d days after %s", lateStarterDays, opens)}})
	if up := c.Emerged(); c.Season == climate.Cool && c.upInSpring(up.Year) {
		if o, ok := c.spring(up.Year); ok {
			os = schedule.Until(os, o.To, o.Closes)
		}
	}
	return os
}

// firstFeeds gives the openings from the first feeding of the seedlings on.
func (c *Treatment) firstFeeds() []schedule.Opening {
	first := c.firstFeed()
	os := schedule.From(c.Open(), first, fmt.Sprintf("%s after most of the seedlings are up", word.Plural(first.DaysFrom(c.Emerged()), "day")))
	var starter schedule.Date
	if !c.Future() || c.Lies() {
		starter = c.starterDay()
	}
	for i := range c.Down {
		if d := &c.Down[i]; d.Kind == schedule.Starter && !d.NotDone && d.Date.After(c.Seeded) {
			starter = d.Date
		}
	}
	if !starter.IsZero() {
		os = schedule.From(os, starter.AddDays(schedule.QuickDays), fmt.Sprintf("%s after the starter", word.Plural(schedule.QuickDays, "day")))
	}
	return os
}

// noPhosphorus says why a starter brings no phosphorus.
func (c *Treatment) noPhosphorus(p *want) string {
	stale, old := c.Stale()
	switch {
	case c.Area.Soil == nil && p.most >= schedule.LeastDose:
		return "there is no soil report that asks for any"
	case c.NoP != nil:
		return c.NoP.Error()
	case old:
		return stale
	case c.NeedP.Year > 0 && p.left < schedule.LeastDose:
		return "what the soil report asks for is down or planned already"
	case c.NeedP.Year > 0 || c.Area.Soil == nil:
		return "the law leaves none for it"
	}
	return fmt.Sprintf("phosphorus is %s in the soil report", p.level)
}

// addStarter plans a starter. One that goes with seed brings nitrogen alone where no
// phosphorus is wanted or lawful; one that comes after the seed is then no starter.
func (c *Treatment) addStarter(p, k *want, wants material.Wants, caps material.Caps, why []schedule.Reason, os []schedule.Opening, ideal func(schedule.Opening) schedule.Date) {
	f := &c.feeding
	afterSeed := !c.Future() && !c.Repaired(os[0].From)
	next := c.Number(schedule.Starter)
	for range f.starter {
		next()
	}
	for _, l := range f.found.Left {
		if l.Kind == schedule.Starter {
			next()
		}
	}
	n := next()
	bare := ""
	if wants.P2O5 = min(wants.P2O5, p.most); wants.P2O5 < schedule.LeastDose {
		bare = c.noPhosphorus(p)
	}
	reason, shut := c.PhosphorusShut()
	if wants.P2O5 < schedule.LeastDose {
		wants.P2O5, caps.P2O5 = 0, 0
	} else if shut && afterSeed {
		f.found.Leave(c.Area, schedule.Starter, n, reason.Text, reason.Source)
		return
	} else if shut { // the seed gets what else a starter brings
		wants.P2O5, caps.P2O5, bare = 0, 0, strings.TrimSuffix(reason.Text, ".")
		wants.N = min(wants.N, max(c.Seedlings.StarterN[0], schedule.LeastDose))
		why = append(slices.Clip(why), reason)
	} else {
		caps.P2O5 = min(p.most, max(wants.P2O5, c.Seedlings.StarterP2O5[1]))
	}
	if c.NoStarter.Reason != "" && c.NoStarter.N == n {
		f.found.Left = append(f.found.Left, c.NoStarter)
		return
	}
	along := material.Wants{K2O: min(k.left, c.Seedlings.StarterN[0])}
	d, chosen, ok := c.chooseAlong(wants, along, caps, func(m material.Material) bool {
		return wants.P2O5 == 0 || m.Analysis.N > 0 && 2*m.Analysis.P2O5 >= m.Analysis.N // [common] less is a feeding, no starter
	})
	if !ok {
		f.found.Leave(c.Area, schedule.Starter, n, "no suitable material: "+schedule.FirstText(chosen), "")
		return
	}
	p.left, k.left = schedule.Remains(p.left, d.P2O5), schedule.Remains(k.left, d.K2O)
	because := "Seedlings have short roots: a little food beside them carries them through the first weeks."
	if afterSeed {
		because = fmt.Sprintf("It is the young grass's first feeding, and phosphorus is %s in the soil report.", p.level)
	}
	if bare != "" && d.P2O5 == 0 {
		because = "Seedlings have short roots: a little nitrogen beside them carries them through the first weeks; no phosphorus, as " + bare + "."
	} else {
		bare = ""
	}
	f.starter = append(f.starter, feed{n: n, dose: d, openings: os, ideal: ideal, because: because, why: slices.Concat(why, d.Why, chosen), bare: bare})
}
