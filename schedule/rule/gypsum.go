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

const (
	pureGypsum agronomy.Percent = 18.62 // % S [atomic-weights] CaSO4·2H2O

	gypsumSpacing = 60 // days [common]
	gypsumYear    = 2  // dressings before the next sample [common]
)

// gypsumJobs replaces sodium where it makes the soil sodic.
func gypsumJobs(c *Treatment) schedule.Proposal {
	var p schedule.Proposal
	if c.Area.Soil == nil || c.NoStand {
		return p
	}
	need, sodic := soil.GypsumOf(c.Report)
	if !sodic {
		return p
	}
	m, pure, gypsumWhy := c.gypsum(schedule.Remains(need.Total, c.Since(c.Area.Sampled, gypsumOf)))
	total := need.Total * 100 / agronomy.PerThousand(pure)
	most, mostWhy, _ := m.ProductCap()
	why := append(slices.Concat(need.Why, gypsumWhy), mostWhy)
	p.Needs = []schedule.Need{{Kind: schedule.Gypsum, Total: total, Why: why,
		Text: fmt.Sprintf("gypsum: %s in all for sodium at %.0f %% of the CEC, then water to carry it away", c.Measure().Rate(total), float64(need.Share))}}
	left := schedule.Remains(total, c.Since(c.Area.Sampled, gypsumOf))
	if left < 5 { // [common] not worth filling a spreader for
		return p
	}
	next := c.Number(schedule.Gypsum)
	parts, err := lime.Dressings(left, most)
	if err != nil {
		p.Leave(c.Area, schedule.Gypsum, next(), err.Error(), "")
		return p
	}
	first := c.After(schedule.Gypsum, gypsumSpacing)
	done := 0
	for _, d := range c.Down {
		if d.Kind == schedule.Gypsum && !d.NotDone && !d.Date.Before(c.Area.Sampled) {
			done++
		}
	}
	for i, d := range c.weighed(m, parts, most) {
		n := next()
		if done+i >= gypsumYear {
			p.Leave(c.Area, schedule.Gypsum, n, fmt.Sprintf("%s of gypsum more would be wanted; a sample after the first %d decides", word.Plural(len(parts)-i, "dressing"), gypsumYear), "common")
			break
		}
		due := first.AddDays(i * gypsumSpacing)
		c.Shed.Take(d, c.Area.Size)
		c.Finish(&p, schedule.Job{Kind: schedule.Gypsum, N: n, Area: c.Area, Dose: d, Why: slices.Concat(why, d.Why),
			Because: fmt.Sprintf("Sodium holds %.0f %% of the CEC and seals the soil; calcium takes its place, and water must then carry it away.", float64(need.Share))},
			schedule.From(c.Open(), due, fmt.Sprintf("%d days after the dressing before", gypsumSpacing)), schedule.Soonest)
	}
	return p
}

// gypsum gives the gypsum to spread for what is needed, and how much of its weight is
// pure. A gypsum that is not to be bought again is used only if there is enough of it for
// the whole need, else that of the trade is.
func (c *Treatment) gypsum(need agronomy.PerThousand) (m material.Material, pure agronomy.Percent, why []schedule.Reason) {
	for _, of := range c.Shed.Materials {
		m = *of
		if m.Kind != material.GypsumMaterial {
			continue
		}
		part := schedule.Reason{Text: word.MaterialName(m) + ": its sulfur is not given, so it is taken as pure", Source: "common"}
		if pure = 100; m.Sulfur > 0 {
			pure = min(100, 100*m.Sulfur/pureGypsum)
			part = schedule.Reason{Text: fmt.Sprintf("%s: %s %% sulfur of the 18.6 in pure gypsum, %.0f %% pure", word.MaterialName(m), agronomy.Figure(m.Sulfur), float64(pure)), Source: "atomic-weights"}
		}
		if !schedule.Short(material.DoseOf(m, need*100/agronomy.PerThousand(pure)), c.Area.Size) {
			return m, pure, append(why, part)
		}
		why = append(why, tooLittle(m))
	}
	return m, pure, why
}

// gypsumOf gives the gypsum that went down.
func gypsumOf(d *schedule.Down) agronomy.PerThousand {
	if d.Dose.Material.Kind != material.GypsumMaterial {
		return 0
	}
	return d.Dose.Rate
}
