package schedule

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
)

func limeJobs(c *treatment) proposal { return c.dressings }

// dateLime dates the dressings: the first as soon as the ground lets it, half a
// year between two, never under three months; before a sowing all at once,
// worked in.
func (c *treatment) dateLime() proposal {
	l := &c.liming
	p := proposal{left: slices.Clone(l.found.left), needs: l.found.needs, assumed: l.found.assumed}
	next := c.number(Lime)
	os, last := c.lastUseful(c.open(), nutrient.LastLime)
	if c.future() {
		os = []opening{{Span{c.Start, c.seeded}, "start of the program", "the day of sowing"}}
	}
	if last := c.lastLime(); !last.IsZero() && !c.future() {
		os = from(os, last.AddDays(lime.SpacingDays), fmt.Sprintf("%d days after the dressing before", lime.SpacingDays))
	}
	spread := agronomy.PerThousand(0)
	for i, rate := range l.dressings {
		spread += rate
		j := Job{Kind: Lime, N: next(), Area: c.Area, Dose: material.DoseOf(l.stone, rate), Tilled: c.future(),
			Again: i > 0 || c.since(c.Area.Sampled, effectiveLime) > 0}
		j.Why = slices.Concat(l.why, split(len(l.dressings), l.total, l.most), last)
		j.Because = fmt.Sprintf("The soil is at pH %s and should be at %s", l.cause.PH.Words(), l.need.Target.Words())
		if n := len(l.dressings); n > 1 {
			j.Because += fmt.Sprintf("; dressing %d of %d", i+1, n)
		}
		j.Because += "."
		if ph, _, err := lime.ExpectedPH(l.cause, l.reached(spread)); err == nil {
			j.Because = strings.TrimSuffix(j.Because, ".") + fmt.Sprintf(", which takes it to about %.1f in a year.", float64(ph))
			j.Why = append(j.Why, Reason{Text: fmt.Sprintf("With this dressing the pH should come to about %.1f, a year on.", float64(ph)), Source: "nc-home-report"})
		}
		ideal := soonest
		if last := c.lastLime(); !last.IsZero() {
			ideal = at(last.AddDays(lime.SpacingWantedDays))
		}
		mine := os
		if first := c.firstLime(os); i > 0 && !first.IsZero() {
			mine = from(os, first.AddDays(i*lime.SpacingDays), fmt.Sprintf("%d days after the dressing before", lime.SpacingDays))
			ideal = at(first.AddDays(i * lime.SpacingWantedDays))
			j.Why = append(j.Why, Reason{Text: "Half a year between dressings, autumn and spring; never under three months.", Source: "nc-lee-lime, vt-452-717, common"})
		}
		if c.future() {
			ideal = at(c.seeded.AddDays(-7)) // [common] a week ahead of the seed
		}
		c.finish(&p, j, mine, ideal)
	}
	return p
}

// lastLime gives the day of the last dressing on record; unset without one.
func (c *treatment) lastLime() Date {
	var last Date
	for _, d := range c.down {
		if d.kind == Lime && !d.missed && d.dose.Rate > 0 {
			last = Later(last, d.Date)
		}
	}
	return last
}

// firstLime gives the day from which the dressings of this program are
// counted: the first open day.
func (c *treatment) firstLime(os []opening) Date {
	ws, _ := c.windows(os, soonest)
	if len(ws) == 0 {
		return Date{}
	}
	return ws[0].Ideal
}

// finish gives a job its windows and words and adds it, or leaves it out where
// no window lies inside the program.
func (c *treatment) finish(p *proposal, j Job, os []opening, ideal func(opening) Date) {
	if d, ok := c.notBefore(j.Kind, j.N); ok {
		os = from(os, d, "the day after it was missed")
		j.Note = "missed on " + d.AddDays(-1).Short() + ", proposed again"
	}
	var next Date
	j.Windows, next = c.windows(os, ideal)
	if len(j.Windows) == 0 {
		l := LeftOut{ID: j.ID(), Kind: j.Kind, Area: j.areaID(), CarriedTo: next}
		l.Reason = "no window for it inside the program"
		if next.IsZero() && len(os) == 0 {
			l.Reason = "the place has no window for it"
		}
		p.left = append(p.left, l)
		return
	}
	c.describe(&j)
	p.jobs = append(p.jobs, j)
}
