package schedule

// treatment is how one area is to be treated: its case, and what its rules
// settle together, the lime first, then the feedings that draw on one shed.
type treatment struct {
	*Case
	liming    liming
	dressings proposal // the lime with its windows; the retest hangs on it
	feeding   feeding
}

// treat asks the rules about one area.
func treat(c *Case, rules []rule) proposal {
	t := &treatment{Case: c}
	t.liming = t.planLime()
	t.dressings = t.dateLime()
	t.planFeeding()
	var all proposal
	for _, r := range rules {
		all.add(r.propose(t))
	}
	all.shed, all.yearly, all.starter = t.liming.shed, t.feeding.yearly, len(t.feeding.starter) > 0
	return all
}

// rule proposes the jobs of one kind. It reads the treatment and nothing else:
// what holds between jobs of different rules is a limit.
type rule struct {
	kind    Kind
	propose func(*treatment) proposal
}

// rules are asked in this order; the order decides nothing but the order of
// jobs that fall on one day.
var rules = []rule{
	{SoilTest, soilTestJobs},
	{Lime, limeJobs},
	{Sulfur, sulfurJobs},
	{Starter, starterJobs},
	{Phosphorus, phosphorusJobs},
	{Nitrogen, nitrogenJobs},
	{LateNitrogen, lateNitrogenJobs},
	{Potassium, potassiumJobs},
	{Magnesium, magnesiumJobs},
}
