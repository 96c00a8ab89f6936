package rule

import (
	"fmt"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/soil"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// describe writes the words of a job: title, first line, steps, water, what to
// do if it rains, cautions.
func (c *Treatment) describe(j *schedule.Job) {
	m := c.Measure()
	if j.Because == "" && len(j.Why) > 0 {
		j.Because = j.Why[0].Text
	}
	other := ""
	if j.Rest && j.Kind.Sows() {
		other = "the other " + word.Percent(j.Part)
	}
	j.Title = word.Title(j.Kind.Of().Verb, c.Area.Name, other, "", schedule.TitleLength)
	switch {
	case j.Spreads():
		c.describeSpread(j, m)
	case j.Kind == schedule.Overseed:
		c.describeOverseed(j, m)
	case j.Kind.Sows():
		c.describeSow(j, m)
	case j.Kind.Samples():
		c.describeSample(j, m)
	}
}

// DescribeRest writes the words of what is left of a job done in part.
func DescribeRest(c *schedule.Case, j *schedule.Job) {
	j.Title, j.Summary, j.Steps, j.Cautions = "", "", nil, nil
	j.Because, _, _ = strings.Cut(j.Because, thisBrings) // that of the whole dose
	if j.Kind.Sows() {
		j.Why = nil // that of sowing the whole area
	} else {
		j.Why = j.Why[:max(0, len(j.Why)-1)] // the last reason works out the weight of the whole dose
	}
	(&Treatment{Case: c}).describe(j)
}

func (c *Treatment) describeSample(j *schedule.Job, m word.Measure) {
	how := soil.HowToSample(c.Future() && c.Area.Soil == nil)
	depth := how.Depth
	if c.Report.Depth > 0 {
		depth = c.Report.Depth
	}
	j.Summary = fmt.Sprintf("Take a soil sample of %s: %s to %s, mixed, to the same laboratory as before.", c.Area.Name, word.Plural(how.Cores, "core"), m.Depth(depth))
	if c.Area.Soil == nil {
		j.Summary = fmt.Sprintf("Take a soil sample of %s: %s to %s, mixed, and ask the laboratory for pH, buffer pH, P, K, Ca and Mg.", c.Area.Name, word.Plural(how.Cores, "core"), m.Depth(depth))
	}
	if c.liming.need.BelowTable {
		j.Summary = strings.TrimSuffix(j.Summary, ".") + "; ask for a buffer pH: so acid a soil needs one to tell how much lime."
	}
	for _, s := range how.Steps {
		j.Steps = append(j.Steps, s.Text)
		if s.Source != "" {
			j.Why = append(j.Why, s)
		}
	}
	j.Why = append(j.Why, how.Why...)
	j.Steps = append(j.Steps, "Enter the results in the site file and run the program again: it moves the jobs.")
	j.IfRain = "If the soil is soaked, wait until it crumbles."
}

func (c *Treatment) describeSow(j *schedule.Job, m word.Measure) {
	seed := c.seed(j, m, func(bare agronomy.PerThousand) agronomy.PerThousand { return bare }, "on bare soil")
	j.Summary = fmt.Sprintf("Sow %s, %s.", c.Area.Name, m.Area(c.Area.Size))
	if len(seed) > 0 {
		j.Summary = fmt.Sprintf("Sow %s, %s, with %s.", c.Area.Name, m.Area(c.Area.Size), word.List(seed))
	}
	j.Steps = []string{
		"Rake the bed fine and level; sow half the seed one way and half across, rake it in lightly and roll.",
		fmt.Sprintf("Keep the top %s moist: a little water two to four times a day until it is up, then less often and deeper.", m.Depth(0.5)), // [common]
		"Mow for the first time when it is a third taller than its mowing height, on dry soil with a sharp blade.",
		"Keep off it until it has been mowed three or four times.",
	}
	j.IfRain = "A downpour washes seed away: wait for it to pass, or cover the seed lightly."
	j.Cautions = seedCautions()
}

// seedCautions are what to mind where seed goes down.
func seedCautions() []string {
	return []string{material.OffSeedlings().Text, "Treated seed is not feed: keep it from children and animals."}
}

// seed gives the seed of each grass of the stand by its rate on bare soil, and adds
// the rates to the working.
func (c *Treatment) seed(j *schedule.Job, m word.Measure, rate func(agronomy.PerThousand) agronomy.PerThousand, where string) (seed []string) {
	total := agronomy.Percent(0)
	for _, s := range c.Area.Stand {
		total += s.Percent
	}
	for _, s := range c.Area.Stand {
		low, high := rate(s.Grass.SeedRate[0]), rate(s.Grass.SeedRate[1])
		if high == 0 {
			continue
		}
		part := agronomy.PerThousand(1)
		if total > 0 {
			part = agronomy.PerThousand(s.Percent / total)
		}
		if j.Rest {
			part *= agronomy.PerThousand(j.Part)
		}
		seed = append(seed, fmt.Sprintf("%s to %s of %s", m.Weight((low*part).Over(c.Area.Size)), m.Weight((high*part).Over(c.Area.Size)), s.Grass.Name))
		j.Why = append(j.Why, schedule.Reason{Text: s.Grass.Name + ": " + word.Figures(float64(low), 3) + " to " + word.Figures(float64(high), 3) + " lb of seed/1000 sq ft " + where, Source: s.Grass.SeedSource})
	}
	return seed
}
