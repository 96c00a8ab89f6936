package schedule

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
)

// magnesiumJobs brings magnesium where the report is short of it and no
// dolomitic lime will.
func magnesiumJobs(c *treatment) proposal {
	var p proposal
	if c.Area.Soil == nil || !c.report.Magnesium.Given || c.noStand {
		return p
	}
	n, err := nutrient.MagnesiumNeed(c.report, c.Place.State)
	if err != nil {
		p.leave(c.Area, Magnesium, 1, err.Error(), "")
		return p
	}
	left := remains(n.Year, c.since(c.Area.Sampled, func(d down) agronomy.PerThousand { return d.dose.Mg }))
	p.needs = []Need{{Kind: Magnesium, Total: n.Year, Text: c.needText(Magnesium, n.Year, "Mg", n.Level), Why: n.Why}}
	if !worthJob(left) {
		return p
	}
	if l := &c.liming; len(l.dressings) > 0 {
		brings := l.total * agronomy.PerThousand(l.stone.Magnesium) / 100
		if brings >= left/2 { // [common] the rest comes with the next report
			p.needs[0].Why = append(slices.Clip(p.needs[0].Why), Reason{Text: fmt.Sprintf("The lime brings %.2f lb Mg/1000 sq ft, so no magnesium goes down by itself.", float64(brings)), Source: "psu-report-notes"})
			return p
		}
	}
	if left < n.Year && c.doneSince(Magnesium, c.Area.Sampled) {
		p.leave(c.Area, Magnesium, c.number(Magnesium)(), fmt.Sprintf("%s more would be wanted, but living turf takes only so much of it at a time; the next report decides", c.Measure().NutrientRate(left, "Mg")), "")
		return p
	}
	d, chosen, ok := c.choose(material.Wants{Mg: min(left, n.Single)}, material.Caps{P2O5: 0, K2O: 0}, nil)
	num := c.number(Magnesium)()
	if !ok {
		p.leave(c.Area, Magnesium, num, "no material for it: "+firstText(chosen), "")
		return p
	}
	why := slices.Concat(n.Why, d.Why, chosen)
	if most, reason, ok := d.Material.ProductCap(); ok && d.Rate > most {
		d = material.DoseOf(d.Material, most)
		why = append(why, reason)
		p.leave(c.Area, Magnesium, num+1, fmt.Sprintf("%s more would be wanted, but living turf takes only so much of it at a time; the next report decides", c.Measure().NutrientRate(left-d.Mg, "Mg")), reason.Source)
	}
	os, last := c.lastUseful(meet(c.open(), c.growing()), nutrient.LastMagnesium)
	c.finish(&p, Job{Kind: Magnesium, N: num, Area: c.Area, Dose: d, Because: fmt.Sprintf("Magnesium is %s in the soil report.", n.Level), Why: append(why, last...)}, os, soonest)
	return p
}

// sulfurJobs lowers a pH that is above the range of the grass, where that can
// be done on turf.
func sulfurJobs(c *treatment) proposal {
	var p proposal
	if !c.tooChalky() {
		return p
	}
	_, _, high := c.Area.Stand.TargetPH()
	target := max(6.5, high) // [sulfur-table] the table ends at 6.5
	if c.report.TargetPH > 0 {
		target = max(6.5, c.report.TargetPH)
	}
	depth := c.report.Depth
	if depth == 0 {
		depth = 4 // [nc-sampling]
	}
	leave := func(reason string) proposal {
		p.leave(c.Area, Sulfur, 1, reason, "purdue-sulfur")
		return p
	}
	need, err := lime.SulfurToLower(c.report.PH, target, c.report.Texture, depth)
	if err != nil {
		return leave(err.Error())
	}
	if need.Total == 0 {
		return p
	}
	p.needs = []Need{{Kind: Sulfur, Total: need.Total, Why: need.Why, Text: fmt.Sprintf("sulfur: %s in all would bring pH %s to %s", c.Measure().Rate(need.Total), c.report.PH.Words(), target.Words())}}
	m, ok := c.sulfurMaterial()
	if !ok {
		return leave("no elemental sulfur is known")
	}
	left := remains(need.Total, c.since(c.Area.Sampled, sulfurOf))
	if !worthJob(left) {
		return p
	}
	year := c.since(c.Start.AddDays(-364), sulfurOf)
	parts, _ := lime.SulfurPlan(left)
	_, years := lime.SulfurPlan(need.Total)
	os, last := c.lastUseful(c.open(), nutrient.LastSulfur)
	next := c.number(Sulfur)
	first := c.after(Sulfur, lime.SulfurSpacingDays)
	for i, part := range parts {
		n := next()
		if year += part; year > lime.SulfurCapYear+dust {
			p.leave(c.Area, Sulfur, n, fmt.Sprintf("%s of sulfur more would pass 10 lb/1000 sq ft in a year; the whole takes %s and a retest each", Plural(len(parts)-i, "dressing"), Plural(years, "year")), "purdue-sulfur")
			break
		}
		d := material.DoseOf(m, part*100/agronomy.PerThousand(m.Sulfur))
		due := first.AddDays(i * lime.SulfurSpacingDays)
		c.finish(&p, Job{Kind: Sulfur, N: n, Area: c.Area, Dose: d, Why: slices.Concat(need.Why, last),
			Because: fmt.Sprintf("The soil is at pH %s; the grass does best under %s.", c.report.PH.Words(), high.Words())}, os,
			func(o opening) Date { return Later(o.From, due) })
	}
	return p
}

// sulfurOf gives the elemental sulfur that a sulfur job brought.
func sulfurOf(d down) agronomy.PerThousand {
	if d.kind != Sulfur {
		return 0
	}
	return d.dose.Rate * agronomy.PerThousand(d.dose.Material.Sulfur) / 100
}

// tooChalky tells whether the pH is further above the range of the grass than
// a reading may be off.
func (c *treatment) tooChalky() bool {
	_, _, high := c.Area.Stand.TargetPH()
	return c.report.PH > high+0.3 // [tristate-1995] a shortfall of 0.2 to 0.3 is none
}

func (c *treatment) sulfurMaterial() (material.Material, bool) {
	for _, m := range c.shed.materials {
		if m.Kind == material.SulfurMaterial && m.Sulfur > 0 {
			return m, true
		}
	}
	return material.Material{}, false
}
