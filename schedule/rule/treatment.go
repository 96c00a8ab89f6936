package rule

import "swardbook/schedule"

// Treatment is how one area is to be treated: its case, and what its rules
// settle together, the lime first, then the feedings that draw on one shed.
type Treatment struct {
	*schedule.Case
	liming      liming
	dressings   schedule.Proposal // the lime with its windows; the retest hangs on it
	overseeding schedule.Proposal // settled first, as all other rules spare its seedlings
	feeding     feeding
}

// Propose plans one area: what the rules settle together first, then each rule's jobs.
func Propose(c *schedule.Case, rules []Rule) schedule.Proposal {
	t := &Treatment{Case: c}
	t.planOverseed()
	t.liming = t.planLime()
	t.dressings = t.dateLime()
	t.planFeeding()
	var all schedule.Proposal
	for _, r := range rules {
		all.Add(r.Propose(t))
	}
	all.Shed, all.Yearly, all.Starter = t.liming.shed, t.feeding.yearly, len(t.feeding.starter) > 0
	return all
}

// Rule proposes the jobs of one kind. It reads the treatment and nothing else:
// what holds between jobs of different rules is a limit.
type Rule struct {
	Kind    schedule.Kind
	Propose func(*Treatment) schedule.Proposal
}

// All lists the rules in the order in which they are asked. The order decides nothing
// but the order of jobs that fall on one day.
var All = []Rule{
	{schedule.SoilTest, soilTestJobs},
	{schedule.Overseed, overseedJobs},
	{schedule.Lime, limeJobs},
	{schedule.Gypsum, gypsumJobs},
	{schedule.Sulfur, sulfurJobs},
	{schedule.Starter, starterJobs},
	{schedule.Phosphorus, phosphorusJobs},
	{schedule.Nitrogen, nitrogenJobs},
	{schedule.LateNitrogen, lateNitrogenJobs},
	{schedule.Potassium, potassiumJobs},
	{schedule.Magnesium, magnesiumJobs},
	{schedule.Iron, ironJobs},
}
