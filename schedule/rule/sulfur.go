package rule

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// sulfurJobs lowers a pH that is above the range of the grass, where the site
// file asks for it and it can be done on turf: else a high pH is accepted.
func sulfurJobs(c *Treatment) schedule.Proposal {
	var p schedule.Proposal
	if !c.lowersPH() {
		return p
	}
	_, _, high := c.Area.Stand.TargetPH()
	target := max(6.5, high) // [sulfur-table] the table ends at 6.5
	if c.Report.TargetPH > 0 {
		target = max(6.5, c.Report.TargetPH)
	}
	depth := c.Report.Depth
	if depth == 0 {
		depth = 4 // [nc-sampling]
	}
	leave := func(reason string) schedule.Proposal {
		p.Leave(c.Area, schedule.Sulfur, 1, reason, "purdue-sulfur")
		return p
	}
	need, err := lime.SulfurToLower(c.Report.PH, target, c.Report.Texture, depth)
	if err != nil {
		return leave(err.Error())
	}
	if need.Total < leastSulfur {
		if need.Total > 0 {
			return leave(fmt.Sprintf("%s would be enough, less than the error of a reading", c.Measure().Rate(need.Total)))
		}
		return p
	}
	need.Why = append(need.Why, schedule.Reason{Text: "First drop vinegar on dry soil: where it fizzes, the soil holds free lime and sulfur is wasted.", Source: "common"})
	p.Needs = []schedule.Need{{Kind: schedule.Sulfur, Total: need.Total, Why: need.Why, Text: fmt.Sprintf("sulfur: %s in all would bring pH %s to %s", c.Measure().Rate(need.Total), c.Report.PH.Words(), target.Words())}}
	if why, stale := c.Stale(); stale {
		return leave(why)
	}
	down := c.Since(c.Area.Sampled, schedule.SulfurOf)
	left := schedule.Remains(need.Total, down)
	if !schedule.WorthJob(left) || down > 0 && left < roundedSulfur {
		return p
	}
	m, passed, ok := c.sulfurMaterial(left)
	if !ok {
		return leave("no elemental sulfur is known")
	}
	year := c.Since(c.Start.AddDays(-364), schedule.SulfurOf)
	pure := agronomy.PerThousand(m.Sulfur) / 100
	parts, _ := lime.SulfurPlan(left)
	for i := range parts {
		parts[i] /= pure
	}
	_, years := lime.SulfurPlan(need.Total)
	os, last := c.LastUseful(c.Open(), nutrient.LastSulfur)
	next := c.Number(schedule.Sulfur)
	first := c.After(schedule.Sulfur, lime.SulfurSpacingDays)
	for i, d := range c.weighed(m, parts, lime.SulfurCap/pure) {
		n, part := next(), d.Rate*pure
		if year += part; year > lime.SulfurCapYear+schedule.Dust {
			p.Leave(c.Area, schedule.Sulfur, n, fmt.Sprintf("%s of sulfur more would pass 10 lb/1000 sq ft in a year; the whole takes %s and a retest each", word.Plural(len(parts)-i, "dressing"), word.Plural(years, "year")), "purdue-sulfur")
			break
		}
		down += part
		due := first.AddDays(i * lime.SulfurSpacingDays)
		because := fmt.Sprintf("The soil is at pH %s, the grass does best under %s, and the site file asks to lower it", c.Report.PH.Words(), high.Words())
		if ph, _, err := lime.PHAfterSulfur(c.Report.PH, c.Report.Texture, depth, down); err == nil {
			because += fmt.Sprintf("; this takes it to about %.1f some warm months later", float64(ph))
		}
		j := schedule.Job{Kind: schedule.Sulfur, N: n, Area: c.Area, Dose: d, Why: slices.Concat(need.Why, passed, last, d.Why), Because: because + "."}
		if down == part {
			j.Steps = []string{"First drip vinegar on a little dry soil: where it fizzes, the soil holds free lime and sulfur is wasted, so leave it."}
		}
		c.Shed.Take(d, c.Area.Size)
		c.Finish(&p, j, os,
			func(o schedule.Opening) schedule.Date { return schedule.Later(o.From, due) })
	}
	return p
}

// leastSulfur is the least sulfur in all that is worth the work, lb/1000 sq ft.
const leastSulfur agronomy.PerThousand = 1 // [common]

// roundedSulfur is what may be left of the sulfur because what went down were amounts that a
// person can weigh, lb/1000 sq ft: it counts as none.
const roundedSulfur agronomy.PerThousand = 0.5 // [common]

// lowersPH tells whether sulfur is asked for and the pH is above the range of
// the grass, or above the target given.
func (c *Treatment) lowersPH() bool {
	_, _, high := c.Area.Stand.TargetPH()
	if c.Report.TargetPH > 0 {
		high = c.Report.TargetPH
	}
	return c.Report.LowerPH && c.Report.PH > high
}

// sulfurMaterial gives what brings an amount of sulfur.
func (c *Treatment) sulfurMaterial(need agronomy.PerThousand) (m material.Material, passed []schedule.Reason, ok bool) {
	for _, m := range c.Shed.Materials {
		switch {
		case m.Kind != material.SulfurMaterial || m.Sulfur <= 0:
		case schedule.Short(material.DoseOf(*m, need*100/agronomy.PerThousand(m.Sulfur)), c.Area.Size):
			passed = append(passed, tooLittle(*m))
		default:
			return *m, passed, true
		}
	}
	return material.Material{}, passed, false
}
