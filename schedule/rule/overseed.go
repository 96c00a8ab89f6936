package rule

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
	"swardbook/schedule/law"
	"swardbook/schedule/word"
)

// overseedWaits is for how many months after the wished day a day for an overseeding is
// looked for, and for how many months an overseeding that is down counts.
const overseedWaits = 12 // [common]

// planOverseed settles when thin turf is sown over: a day on record, one before the
// program that the site file names, or the best day about the one it asks for. The other
// rules then keep away from its seedlings.
func (c *Treatment) planOverseed() {
	p, wish := &c.overseeding, c.Area.Overseed
	down := false // whether the wished overseeding is on record
	for i := range c.Down {
		d := &c.Down[i]
		if d.Kind != schedule.Overseed || d.NotDone || d.Date.AddMonths(overseedWaits).Before(c.Begins) {
			continue
		}
		if !slices.Contains(c.Oversown, d.Date) {
			c.Oversown = append(c.Oversown, d.Date)
		}
		if off := d.Date.DaysFrom(wish); !wish.IsZero() && off >= -nearOverseed && (off <= nearOverseed || !wish.Before(c.Site.Start)) { // one that was planned may have had to wait
			down = true
		}
	}
	slices.SortFunc(c.Oversown, schedule.Date.Compare)
	switch {
	case down || wish.IsZero() || c.NoStand || !wish.AddMonths(overseedWaits).After(c.Begins):
		return
	case wish.Before(c.Site.Start):
		c.Oversown = append(c.Oversown, wish)
		slices.SortFunc(c.Oversown, schedule.Date.Compare)
		p.Assumed = append(p.Assumed, fmt.Sprintf("%s: sown over on %s, as the site file says", c.Area.Name, wish.Short()))
		return
	case wish.After(c.Through):
		return // it belongs to a later season, which plans it
	}
	j := schedule.Job{Kind: schedule.Overseed, N: c.Number(schedule.Overseed)(), Area: c.Area,
		Because: "Seed sown into thin turf fills it before weeds do."}
	days := c.sowingDays(schedule.Overseed, wish)
	j.Why = append(days.why, schedule.Reason{Text: "the site file asks for " + wish.Short()})
	c.Finish(p, j, days.openings, days.ideal)
	days.mark(p)
	if len(p.Jobs) == 0 {
		if n := len(p.Left); n > 0 && days.not != "" {
			p.Left[n-1].Reason = days.not
		}
		return
	}
	made := &p.Jobs[0]
	open, cost, _ := c.Candidates(made)
	if len(open) == 0 {
		return // it will be left out, with the reasons that close its days
	}
	best := 0
	for i := range cost {
		if cost[i] < cost[best] {
			best = i
		}
	}
	over := schedule.FromNumber(open[best])
	if day := c.OverseedOn; !day.IsZero() { // it keeps the day that all else is planned for
		over = day
		for _, w := range made.Windows {
			if !w.From.After(day) && !w.To.Before(day) {
				w.From, w.Ideal, w.To = day, day, day
				made.Windows = []schedule.Window{w}
				break
			}
		}
	}
	c.Oversown = append(c.Oversown, over)
	if c.Young(over) {
		made.Why = append(made.Why, schedule.Reason{Text: "The stand is in its first year and fed as seedlings are: the seed gets no starter of its own.", Source: "common"})
	}
	if days.not != "" {
		p.Assumed = append(p.Assumed, fmt.Sprintf("%s: the overseeding is %s; it moves to %s", c.Area.Name, days.not, over.Short()))
	}
	on := *made
	on.On = over
	if words := SowingWords(c.Case, &on); words != "" {
		made.Summary += " " + words
	}
}

// nearOverseed is how many days before or after the wished day an overseeding on record
// counts as the one wished for.
const nearOverseed = 60 // [common]

func overseedJobs(c *Treatment) schedule.Proposal { return c.overseeding }

// describeOverseed writes the words of an overseeding.
func (c *Treatment) describeOverseed(j *schedule.Job, m word.Measure) {
	seed := c.seed(j, m, agronomy.OverseedRate, "sown over")
	j.Why = append(j.Why, schedule.Reason{Text: "Standing turf takes half the seed of bare soil; cored first, as seed must touch the ground.", Source: "unl-renovate"})
	j.Summary = fmt.Sprintf("Sow seed over %s, %s.", c.Area.Name, m.Area(c.Area.Size))
	if len(seed) > 0 {
		j.Summary = fmt.Sprintf("Sow seed over %s, %s: %s.", c.Area.Name, m.Area(c.Area.Size), word.List(seed))
	}
	j.Steps = []string{
		"Mow as low as the grass bears and rake off what lies between the plants.",
		"Core in three passes, a day or two after watering, so that seed falls on soil.",
		"Sow half the seed one way and half across, and drag it in.",
		fmt.Sprintf("Keep the top %s to %s moist with a little water several times a day for two weeks; once mowed, water less often and deeper.", m.Depth(0.5), m.Depth(1)), // [unl-renovate]
		"Go on mowing the old grass, on dry ground, so that it does not shade the young.",                                                                                    // [common]
	}
	j.IfRain = "A downpour washes seed away: wait for it to pass."
	j.Cautions = seedCautions()
}

// starterOverseed plans the starter that goes with the seed of an overseeding, a light
// one, as the old grass takes part of it.
func (c *Treatment) starterOverseed(p, k *want, over schedule.Date) {
	green, last := c.OverGreen(over), c.OverFed(over)
	f, rules := &c.feeding, &c.Seedlings
	if slices.ContainsFunc(c.DownIn(schedule.Span{From: over.AddDays(-schedule.WithSeedDays), To: schedule.Later(last, c.Start)}), func(d schedule.Down) bool { return d.Kind == schedule.Starter && !d.NotDone }) {
		return
	}
	if last.Before(c.Start) {
		if c.Start.DaysFrom(green) <= lateStarterDays {
			f.found.Assumed = append(f.found.Assumed, fmt.Sprintf("%s: no starter is on record for the overseeding of %s, and it is too late for one; if one went down, add it to the record book", c.Area.Name, over.Short()))
		}
		return
	}
	caps, capWhy := c.nCaps(green)
	caps.N, caps.SolubleN = min(caps.N, rules.FirstN), min(caps.SolubleN, rules.FirstN)
	if need, err := nutrient.NitrogenYear(c.nitrogenCase(false)); err == nil && need.Year >= leastN && need.Year < caps.N { // grass that lives on little
		caps.N, capWhy = need.Year, append(slices.Clip(capWhy), schedule.Reason{Text: fmt.Sprintf("no more than the %.2f lb N that the old grass gets in a year", float64(need.Year)), Source: "common"})
	}
	wants := material.Wants{N: caps.N, P2O5: rules.StarterP2O5[0]}
	asked := c.Asked
	defer func() { c.Asked = asked }()
	c.Asked.Turf = law.Repair
	why := slices.Concat(rules.Why, capWhy)
	if c.Area.Soil != nil {
		wants.P2O5 = min(wants.P2O5, p.left)
		why = append(why, p.why...)
	} else {
		if _, shut := c.PhosphorusShut(); !shut {
			f.found.Assumed = append(f.found.Assumed, fmt.Sprintf("%s: no soil report, so the starter brings the usual phosphorus for seed", c.Area.Name))
		}
		p.most = schedule.Unlimited
	}
	if l, ok := c.Law.PCap(c.Asked); ok {
		p.most = min(p.most, agronomy.PerThousand(l.Value))
	}
	os := []schedule.Opening{{Span: schedule.Span{From: green, To: last}, Opens: "with the seed", Closes: c.overFedWords(over)}}
	if green != over {
		os[0].Opens = "growth begins"
		why = append(why, schedule.Reason{Text: fmt.Sprintf("The seed of %s lies until growth begins on %s, and its starter waits for the green: before it no root takes the food up, and rain carries it off.", over.Short(), green.Short()), Source: "common"})
	}
	c.addStarter(p, k, wants, caps, why, os, schedule.Soonest)
}

// overFedWords says what the last day for the starter of an overseeding is.
func (c *Treatment) overFedWords(over schedule.Date) string {
	if c.OverGreen(over) != over {
		return "two weeks after growth begins"
	}
	return "two weeks after the overseeding"
}

// overseedStarter gives the nitrogen of the starters, down or to come, that belong to the
// overseedings of a turf year, or only to some of them.
func (c *Treatment) overseedStarter(year int, overs []schedule.Date) (sum agronomy.PerThousand) {
	var from schedule.Date
	for _, over := range overs {
		span := schedule.Span{From: schedule.Later(from, over.AddDays(-schedule.WithSeedDays)), To: c.OverFed(over)}
		from = span.To.Next()                                        // no starter counts for two
		if c.Almanac.TurfYear(c.OverGreen(over), c.Season) != year { // it counts in the turf year in which its grass turns green
			continue
		}
		sum += c.starterN(span) + c.between(span, func(d *schedule.Down) agronomy.PerThousand {
			if d.Kind != schedule.Starter {
				return 0
			}
			return d.Dose.N
		})
	}
	return sum
}

// spareSeedlings cuts the feeding season in which the seedlings of an overseeding are young
// to two thirds of its nitrogen, and lets it begin when they may be fed.
func (c *Treatment) spareSeedlings(seasons []growSeason) []growSeason {
	for _, over := range c.Oversown {
		green := c.OverGreen(over)
		for i := range seasons {
			s := &seasons[i]
			if green.After(s.span.To) || green.AddDays(lateStarterDays).Before(s.span.From) {
				continue
			}
			if len(s.overs) == 0 {
				usual := *s
				s.usual = &usual
				s.share *= c.Seedlings.BareSpotShare
				s.why = append(slices.Clip(s.why), schedule.Reason{Text: "seedlings of the overseeding stand in it: two thirds of the usual nitrogen, as more burns them", Source: "vt-452-717"})
			}
			s.overs = append(s.overs, over)
			os := c.afterOverseeding(s.overs)
			if first := os[0]; s.span.From.Before(first.From) {
				s.span.From, s.span.Opens = schedule.Earlier(first.From, s.span.To), first.Opens
			}
			break
		}
	}
	return seasons
}

// afterOverseeding gives the openings in which the seedlings of some overseedings may be
// fed.
func (c *Treatment) afterOverseeding(overs []schedule.Date) []schedule.Opening {
	gap, _ := nutrient.Spacing(nutrient.SeedUp, nutrient.SolubleNDown)
	return schedule.From(c.Open(), c.OverUp(overs[len(overs)-1]).AddDays(gap.Days), fmt.Sprintf("%s after most of the seedlings are up", word.Plural(gap.Days, "day")))
}

// counts gives the days whose nitrogen belongs to a season. If seedlings of an overseeding
// stand in it, they begin with the days of their starter.
func (c *Treatment) counts(s growSeason) schedule.Span {
	if len(s.overs) > 0 {
		return schedule.Span{From: schedule.Earlier(s.span.From, s.overs[0].AddDays(-schedule.WithSeedDays)), To: s.span.To}
	}
	return s.span.Span
}
