package rule

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/soil"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// ironWait is how long after coming up a young stand is left alone by sprays.
const ironWait = 42 // [common] days, about three mowings

// ironJobs sprays iron once in the growing season where a high pH makes a shortage likely.
// The pH is left as it is: iron sprayed on the leaves mends the pale color that a high pH
// causes.
func ironJobs(c *Treatment) schedule.Proposal {
	var p schedule.Proposal
	if c.Area.Soil == nil || c.NoStand {
		return p
	}
	why, likely := soil.IronShort(c.Report, c.Area.Stand)
	if !likely || slices.ContainsFunc(c.ThisYear(), func(d *schedule.Down) bool { return d.Kind == schedule.Iron && !d.NotDone }) {
		return p
	}
	rate := func(m material.Material) agronomy.PerThousand {
		return soil.IronRate * 100 / agronomy.PerThousand(m.Iron)
	}
	i := slices.IndexFunc(c.Shed.Materials, func(m *material.Material) bool {
		if m.Kind != material.IronMaterial || m.Iron <= 0 {
			return false
		}
		short := schedule.Short(material.DoseOf(*m, rate(*m)), c.Area.Size)
		if short {
			why = append(why, tooLittle(*m))
		}
		return !short
	})
	n := c.Number(schedule.Iron)()
	if i < 0 {
		p.Leave(c.Area, schedule.Iron, n, "no material with iron is known", "")
		return p
	}
	m := *c.Shed.Materials[i]
	why = append(why, schedule.Reason{Text: fmt.Sprintf("2 oz of iron sulfate, a fifth of it iron, in water on 1000 sq ft; of this material, %s %% iron, %s lb.", agronomy.Figure(m.Iron), agronomy.Figures(rate(m), 2)), Source: "nc-centipede, atomic-weights"},
		schedule.Reason{Text: "Iron put on the soil is tied up like the iron in it; on the leaf it colors in one to three days.", Source: "az-iron"})
	os := schedule.Meet(c.Open(), c.Growing())
	if up := c.Emerged(); !up.IsZero() {
		os = schedule.From(os, up.AddDays(ironWait), "the young grass has been mowed three times")
	}
	d := c.weigh(m, rate(m), schedule.Unlimited)
	c.Shed.Take(d, c.Area.Size)
	c.Finish(&p, schedule.Job{Kind: schedule.Iron, N: n, Area: c.Area, Dose: d, Why: append(why, d.Why...),
		Because: fmt.Sprintf("At pH %s iron is hard for this grass to get; spray only if the young leaves are pale, for color is all it gives.", c.Report.PH.Words())}, os, schedule.Soonest)
	return p
}

// ironSteps say how to spray a salt of iron that comes dry.
func ironSteps(weight agronomy.Pounds, size agronomy.SquareFeet, m word.Measure) []string {
	water := agronomy.Gallons(size / 1000 * 3) // [common] 3 gal wet the leaves of 1000 sq ft
	return []string{
		"Only if young leaves are pale: try one strip first, and look again in three days.", // [az-iron]
		fmt.Sprintf("Dissolve %s in about %s of water in a plastic can or sprayer, and spray all of it evenly over the leaves the same day.", m.Weight(weight), m.Volume(water)),
		"Rinse what falls on paving at once: iron stains it rust-brown for good.",
	}
}
