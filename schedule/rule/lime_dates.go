package rule

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
)

func limeJobs(c *Treatment) schedule.Proposal { return c.dressings }

// dateLime dates the dressings: the first as soon as the ground lets it, half a
// year between two, never under three months; before a sowing all at once,
// worked in.
func (c *Treatment) dateLime() schedule.Proposal {
	l := &c.liming
	p := schedule.Proposal{Left: slices.Clone(l.found.Left), Needs: l.found.Needs, Assumed: l.found.Assumed}
	next := c.Number(schedule.Lime)
	os, last := c.LastUseful(c.Open(), nutrient.LastLime)
	if c.WorksIn() {
		os = []schedule.Opening{{Span: schedule.Span{From: c.Start, To: c.Seeded}, Opens: c.Opens, Closes: "the day of sowing"}}
	}
	if last := c.lastLime(); !last.IsZero() && !c.WorksIn() {
		os = schedule.From(os, last.AddDays(lime.SpacingDays), fmt.Sprintf("%d days after the dressing before", lime.SpacingDays))
	}
	if c.Future() && c.LimeLate && len(l.dressings) > 0 {
		const late = "no day before the sowing is free for lime, so it goes on the young turf, from a first mowing on"
		p.Assumed = append(slices.Clip(p.Assumed), c.Area.Name+": "+late)
		last = append(slices.Clip(last), schedule.Reason{Text: late, Source: "common"})
	}
	var spread, year agronomy.PerThousand // of effective lime, in all and in a year
	for i, d := range l.dressings {
		spread += d.rate * agronomy.PerThousand(d.value.Full) / 100
		year += d.rate * agronomy.PerThousand(d.value.FirstYear) / 100
		j := schedule.Job{Kind: schedule.Lime, N: next(), Area: c.Area, Dose: material.DoseOf(d.stone, d.rate), Tilled: c.WorksIn(),
			Again: !c.WorksIn() && (i > 0 || c.Since(c.Area.Sampled, c.effectiveLime) > 0)} // into a seedbed goes all of it, before the seed
		j.Why = slices.Concat(l.why, l.split(), d.why, last)
		j.Because = fmt.Sprintf("The soil is at pH %s and the grass wants %s.", l.cause.PH.Words(), l.need.Target.Words())
		dressing := "One dressing"
		if n := len(l.dressings); n > 1 {
			dressing = fmt.Sprintf("Dressing %d of %d", i+1, n)
		}
		if ph, _, err := lime.ExpectedPH(l.cause, l.reached(year)); err == nil && !l.need.BelowTable {
			j.Because += fmt.Sprintf(" %s brings about %.1f in a year", dressing, float64(ph))
			if whole, _, err := lime.ExpectedPH(l.cause, l.reached(spread)); err == nil && whole-ph >= 0.05 {
				j.Because += fmt.Sprintf(", %.1f in three", float64(whole))
			}
			j.Because += "."
			j.Why = append(j.Why, schedule.Reason{Text: fmt.Sprintf("With this dressing the pH should come to about %.1f, a year on.", float64(ph)), Source: "nc-home-report"})
		}
		ideal := schedule.Soonest
		var wanted schedule.Date // the day half a year after the dressing before
		if last := c.lastLime(); !last.IsZero() {
			wanted = last.AddDays(lime.SpacingWantedDays)
			ideal = schedule.At(wanted)
		}
		mine := os
		if first := c.firstLime(os); i > 0 && !c.WorksIn() && !first.IsZero() {
			mine = schedule.From(os, first.AddDays(i*lime.SpacingDays), fmt.Sprintf("%d days after the dressing before", lime.SpacingDays))
			wanted = first.AddDays(i * lime.SpacingWantedDays)
			ideal = schedule.At(wanted)
			j.Why = append(j.Why, schedule.Reason{Text: "Half a year between dressings, autumn and spring; never under three months.", Source: "nc-lee-lime, vt-452-717, common"})
		}
		if wanted.After(c.Through) && !c.WorksIn() {
			p.Leave(c.Area, j.Kind, j.N, fmt.Sprintf("half a year after the dressing before it falls on %s, in the next season, which brings what is still wanted then", wanted.Short()), "nc-lee-lime, vt-452-717, common")
			continue
		}
		if c.WorksIn() {
			before := os[0]
			ideal = func(o schedule.Opening) schedule.Date {
				if o == before {
					return c.Seeded.AddDays(-7) // [common] a week ahead of the seed
				}
				return o.From
			}
			if most, _ := lime.Cap(d.stone, true); i > 0 && i == len(l.dressings)-1 && d.rate <= most+1e-9 {
				mine = append(slices.Clip(os), c.limeOnTurf()...)
			}
		}
		c.Finish(&p, j, mine, ideal)
	}
	return p
}

// limeOnTurf gives the openings of a last dressing that, beside the other dressings,
// found no day before the seed: it goes on the turf, once the others have reacted.
func (c *Treatment) limeOnTurf() []schedule.Opening {
	os, _ := c.LastUseful(c.Open(), nutrient.LastLime)
	return schedule.From(os, c.Seeded.AddDays(lime.SpacingDays), fmt.Sprintf("%d days after the dressing before", lime.SpacingDays))
}

// WorksIn tells whether lime is worked into a seedbed: before a sowing that is still to
// come, unless none of it finds a day there.
func (c *Treatment) WorksIn() bool { return c.Future() && !c.LimeLate }

// OnTurf writes a dressing that was to be worked in before the seed, and found no day
// there, as one for the young turf.
func OnTurf(c *schedule.Case, j *schedule.Job) {
	j.Tilled = false
	DescribeRest(c, j)
	j.Why = append(j.Why, schedule.Reason{Text: "It found no day before the seed, where it would have been worked in, so it goes on the turf.", Source: "common"})
}

// split is the working of how lime was split into dressings: equal parts of one stone,
// after what is at hand and goes first.
func (l *liming) split() []schedule.Reason {
	n, sum := 0, agronomy.PerThousand(0)
	for _, d := range l.dressings {
		if d.stone.ID == l.stone.ID {
			n, sum = n+1, sum+d.rate
		}
	}
	if l.now > 0 {
		n, sum = n-1, sum-l.now
	}
	return split(max(n, 1), sum, l.most)
}

// lastLime gives the day of the last dressing on record; unset without one.
func (c *Treatment) lastLime() schedule.Date {
	var last schedule.Date
	for i := range c.Down {
		if d := &c.Down[i]; d.Kind == schedule.Lime && !d.NotDone && d.Dose.Rate > 0 {
			last = schedule.Later(last, d.Date)
		}
	}
	return last
}

// firstLime gives the day from which the dressings of this program are
// counted: the first open day.
func (c *Treatment) firstLime(os []schedule.Opening) schedule.Date {
	ws, _ := c.Windows(os, schedule.Soonest)
	if len(ws) == 0 {
		return schedule.Date{}
	}
	return ws[0].Ideal
}

// Finish gives a job its windows and words and adds it, or leaves it out where
// no window lies inside the program.
func (c *Treatment) Finish(p *schedule.Proposal, j schedule.Job, os []schedule.Opening, ideal func(schedule.Opening) schedule.Date) {
	if d, ok := c.NotBefore(j.Kind, j.N); ok {
		os = schedule.From(os, d, "the day after it was missed")
		j.Note = "missed on " + d.AddDays(-1).Short() + ", proposed again"
	}
	var next schedule.Date
	j.Windows, next = c.Windows(os, ideal)
	if len(j.Windows) == 0 {
		l := schedule.LeftOut{N: j.N, Kind: j.Kind, Area: j.AreaID(), CarriedTo: next}
		l.Reason = "no window for it before the season ends"
		if next.IsZero() && len(os) == 0 {
			l.Reason = "the place has no window for it"
		}
		p.Left = append(p.Left, l)
		return
	}
	p.Jobs = append(p.Jobs, j)
	c.describe(&p.Jobs[len(p.Jobs)-1])
}
