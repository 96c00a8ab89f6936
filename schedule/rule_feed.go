package schedule

// The feeding jobs turn the area's plan of doses into jobs, kind by kind.

func starterJobs(c *treatment) proposal {
	p := c.feedJobs(Starter, c.feeding.starter)
	p.add(c.feeding.found) // what the plan of doses found, once
	return p
}

func phosphorusJobs(c *treatment) proposal   { return c.feedJobs(Phosphorus, c.feeding.phosphorus) }
func nitrogenJobs(c *treatment) proposal     { return c.feedJobs(Nitrogen, c.feeding.nitrogen) }
func lateNitrogenJobs(c *treatment) proposal { return c.feedJobs(LateNitrogen, c.feeding.late) }
func potassiumJobs(c *treatment) proposal    { return c.feedJobs(Potassium, c.feeding.potassium) }

func (c *treatment) feedJobs(k Kind, feeds []feed) proposal {
	var p proposal
	for _, f := range feeds {
		j := Job{Kind: k, N: f.n, Area: c.Area, Dose: f.dose, Because: f.because, Why: f.why}
		j.Tilled = k == Starter && c.future() // goes down with the seed
		c.finish(&p, j, f.openings, f.ideal)
	}
	return p
}
