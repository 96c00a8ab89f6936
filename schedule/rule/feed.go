package rule

import (
	"slices"

	"swardbook/schedule"
)

// The feeding jobs turn the area's plan of doses into jobs, kind by kind.

func starterJobs(c *Treatment) schedule.Proposal {
	p := c.feedJobs(schedule.Starter, c.feeding.starter)
	p.Add(c.feeding.found) // the findings of the plan of all doses, added to one kind only, so that they stand once
	return p
}

func phosphorusJobs(c *Treatment) schedule.Proposal {
	return c.feedJobs(schedule.Phosphorus, c.feeding.phosphorus)
}
func nitrogenJobs(c *Treatment) schedule.Proposal {
	return c.feedJobs(schedule.Nitrogen, c.feeding.nitrogen)
}
func lateNitrogenJobs(c *Treatment) schedule.Proposal {
	return c.feedJobs(schedule.LateNitrogen, c.feeding.late)
}
func potassiumJobs(c *Treatment) schedule.Proposal {
	return c.feedJobs(schedule.Potassium, c.feeding.potassium)
}

func (c *Treatment) feedJobs(k schedule.Kind, feeds []feed) schedule.Proposal {
	var p schedule.Proposal
	p.Jobs = slices.Grow(p.Jobs, len(feeds))
	for i := range feeds {
		f := &feeds[i]
		j := schedule.Job{Kind: k, N: f.n, Area: c.Area, Dose: f.dose, Because: f.because, Why: f.why, Bare: f.bare}
		j.Tilled = k == schedule.Starter && c.Future() && !c.Lies() // a starter that goes down with the seed is worked in
		c.Finish(&p, j, f.openings, f.ideal)
	}
	return p
}
