package rule

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
)

// magnesiumJobs brings magnesium where the report is short of it and no
// dolomitic lime will.
func magnesiumJobs(c *Treatment) schedule.Proposal {
	var p schedule.Proposal
	if c.Area.Soil == nil || !c.Report.Magnesium.Given || c.NoStand {
		return p
	}
	n, err := nutrient.MagnesiumNeed(c.Report, c.Place.State)
	if err != nil {
		p.Leave(c.Area, schedule.Magnesium, 1, err.Error(), "")
		return p
	}
	left := schedule.Remains(n.Year, c.Since(c.Area.Sampled, func(d *schedule.Down) agronomy.PerThousand { return d.Dose.Mg }))
	p.Needs = []schedule.Need{{Kind: schedule.Magnesium, Total: n.Year, Text: c.needText(schedule.Magnesium, n.Year, "Mg", n.Level), Why: n.Why}}
	if !schedule.WorthJob(left) {
		return p
	}
	if why, stale := c.Stale(); stale {
		p.Leave(c.Area, schedule.Magnesium, 1, why, "psu-report-notes")
		return p
	}
	if l := &c.liming; len(l.dressings) > 0 {
		brings := l.brings(func(d material.Dose) agronomy.PerThousand { return d.Mg })
		if brings >= left/2 { // [common] the rest comes with the next report
			p.Needs[0].Why = append(slices.Clip(p.Needs[0].Why), schedule.Reason{Text: fmt.Sprintf("The lime brings %.2f lb Mg/1000 sq ft, so no magnesium goes down by itself.", float64(brings)), Source: "psu-report-notes"})
			return p
		}
	}
	if left < n.Year && c.DoneSince(schedule.Magnesium, c.Area.Sampled) {
		p.Leave(c.Area, schedule.Magnesium, c.Number(schedule.Magnesium)(), fmt.Sprintf("another %s is needed, but growing turf takes only so much at a time; the next report decides", c.Measure().NutrientRate(left, "Mg")), "")
		return p
	}
	d, chosen, ok := c.choose(material.Wants{Mg: min(left, n.Single)}, material.Caps{P2O5: 0, K2O: 0}, nil)
	num := c.Number(schedule.Magnesium)()
	if !ok {
		p.Leave(c.Area, schedule.Magnesium, num, "no suitable material: "+schedule.FirstText(chosen), "")
		return p
	}
	why := slices.Concat(n.Why, d.Why, chosen)
	if most, reason, ok := d.Material.ProductCap(); ok && d.Rate > most {
		d = material.DoseOf(d.Material, most).SayableWithin(c.Area.Size, c.Metric)
		why = append(why, reason)
		if more := c.Measure().NutrientRate(left-d.Mg, "Mg"); schedule.WorthJob(left - d.Mg) {
			p.Leave(c.Area, schedule.Magnesium, num+1, fmt.Sprintf("another %s is needed, but growing turf takes only so much at a time; the next report decides", more), reason.Source)
		} else {
			why = append(why, schedule.Reason{Text: more + " more would be wanted, too little for a job; the next report decides", Source: "common"})
		}
	}
	os, last := c.LastUseful(schedule.Meet(c.Open(), c.Growing()), nutrient.LastMagnesium)
	c.Finish(&p, schedule.Job{Kind: schedule.Magnesium, N: num, Area: c.Area, Dose: d, Because: fmt.Sprintf("Magnesium is %s in the soil report.", n.Level), Why: append(why, last...)}, os, schedule.Soonest)
	return p
}
