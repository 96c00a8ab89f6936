package schedule

// The feeding jobs turn the area's plan of doses into jobs, kind by kind.

func starterJobs(c *Case) proposal {
	p := c.feedJobs(Starter, c.feeding.starter)
	p.add(c.feeding.proposal) // what the plan of doses found, once
	return p
}

func phosphorusJobs(c *Case) proposal   { return c.feedJobs(Phosphorus, c.feeding.phosphorus) }
func nitrogenJobs(c *Case) proposal     { return c.feedJobs(Nitrogen, c.feeding.nitrogen) }
func lateNitrogenJobs(c *Case) proposal { return c.feedJobs(LateNitrogen, c.feeding.late) }
func potassiumJobs(c *Case) proposal    { return c.feedJobs(Potassium, c.feeding.potassium) }

func (c *Case) feedJobs(k Kind, feeds []feed) proposal {
	var p proposal
	for _, f := range feeds {
		j := Job{Kind: k, N: f.n, Area: c.Area, Dose: f.dose, Because: f.because, Why: f.why}
		j.Tilled = k == Starter && c.future() // goes down with the seed
		p.finish(c, j, f.openings, f.ideal)
	}
	return p
}
