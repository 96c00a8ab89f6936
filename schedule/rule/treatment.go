package rule

import (
	"math"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// Treatment is how one area is to be treated: its case, and what its rules settle
// together: first the overseeding, then the lime, then the feedings, which draw on one
// shed.
type Treatment struct {
	*schedule.Case
	ground      bool // the lime requirement is in ordinary ground limestone
	liming      liming
	dressings   schedule.Proposal // the lime with its windows; the day of the next soil sample depends on it
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

// All lists the rules in the order in which they are asked. It decides only the order of
// jobs that fall on one day.
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

// fewest gives the least number of parts of at most most that bring an amount, and what
// they bring. An excess over full parts that is no more than least gets no part of its
// own, so that an amount a little above the most at once does not become two thin parts.
func fewest(amount, most, least agronomy.PerThousand) (int, agronomy.PerThousand) {
	n := int(math.Ceil(float64(amount/most) - 1e-9))
	if full := most * agronomy.PerThousand(n-1); n > 1 && amount-full < least+schedule.Dust {
		return n - 1, full
	}
	return n, amount
}

// weighed turns the parts of an amount into doses that a person can weigh, each of at most
// most: what rounding takes from one is added to the next.
func (c *Treatment) weighed(m material.Material, parts []agronomy.PerThousand, most agronomy.PerThousand) []material.Dose {
	var left agronomy.PerThousand
	for _, p := range parts {
		left += p
	}
	out := make([]material.Dose, len(parts))
	for i := range parts {
		out[i] = c.weigh(m, min(left/agronomy.PerThousand(len(parts)-i), most), most)
		left -= out[i].Rate
	}
	return out
}

// weigh rounds a rate of a material to an amount that a person can weigh on the area: down
// where up would pass the most at once, or what is there of the material.
func (c *Treatment) weigh(m material.Material, rate, most agronomy.PerThousand) material.Dose {
	exact := material.DoseOf(m, rate)
	d := exact.Sayable(c.Area.Size, material.NoCaps(), c.Metric)
	pack, known := m.PackWeight()
	have := pack * agronomy.Pounds(m.OnHand)
	runsOut := known && exact.Rate.Over(c.Area.Size) <= have && d.Rate.Over(c.Area.Size) > have
	if d.Rate > most+schedule.Dust || runsOut {
		return exact.SayableWithin(c.Area.Size, c.Metric)
	}
	return d
}
