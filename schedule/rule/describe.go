package rule

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

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
	j.Title = j.Kind.Of().Verb + " " + c.Area.Name
	switch {
	case j.Spreads():
		c.describeSpread(j, m)
	case j.Kind.Sows():
		c.describeSow(j, m)
	case j.Kind.Samples():
		c.describeSample(j, m)
	}
	if utf8.RuneCountInString(j.Title) > schedule.TitleLength {
		j.Title = string([]rune(j.Title)[:schedule.TitleLength-1]) + "…"
	}
}

func (c *Treatment) describeSpread(j *schedule.Job, m word.Measure) {
	d, size := j.Dose, c.Area.Size
	a := d.For(size)
	whole := m.Amount(d, size)
	amount, _, _ := strings.Cut(whole, " (")
	for _, shown := range []string{whole, amount} {
		if t := j.Title + ", " + shown; utf8.RuneCountInString(t) <= schedule.TitleLength {
			j.Title = t
			break
		}
	}
	do := "Spread"
	if d.Material.Liquid {
		do = "Spray"
	}
	packs := ""
	if a.Packs > 0 {
		packs = " (" + word.Packs(a.Packs)
		if p, ok := d.Material.PackWeight(); ok && !d.Material.Liquid {
			packs += " of " + m.Weight(p)
		}
		packs += ")"
	}
	rate := m.Rate(d.Rate)
	if a.Volume > 0 {
		rate = m.VolumeRate(d.Gallons)
	}
	j.Summary = do + " " + amount + " of " + word.MaterialName(d.Material) + packs + " over " + c.Area.Name + ", " + m.Area(size) + ": " + rate
	var brings []string
	for _, n := range []struct {
		rate agronomy.PerThousand
		name string
	}{{d.N, "N"}, {d.P2O5, "P₂O₅"}, {d.K2O, "K₂O"}, {d.Mg, "Mg"}} {
		if n.rate >= 0.05 && d.Material.Kind != material.LimeMaterial {
			brings = append(brings, m.NutrientRate(n.rate, n.name))
		}
	}
	if len(brings) > 0 {
		j.Summary += "; brings " + word.List(brings)
	}
	j.Summary += "."
	j.Why = append(slices.Clip(j.Why), amountReason(d, size))
	j.Steps = slices.Grow(j.Steps, 4)
	if d.Material.ToBuy {
		j.Steps = append(j.Steps, "Buy "+word.MaterialName(d.Material)+" first: none is in the shed.")
	}
	j.Steps = append(j.Steps, c.machineSteps(j, m)...)
	j.WaterIn = d.WaterIn(material.Use(j.Kind.String()))
	j.Steps = append(j.Steps, c.waterStep(j, m)...)
	j.IfRain = c.ifRain(j, m)
	cautions := material.Cautions(d.Material, material.Use(j.Kind.String()))
	j.Cautions = slices.Grow(j.Cautions, len(cautions)+6)
	for _, r := range cautions {
		j.Cautions = append(j.Cautions, r.Text)
	}
	for _, r := range material.WeatherCautions(d.Material) {
		if r != material.HeavyRain() { // IfRain says it, with what to do
			j.Cautions = append(j.Cautions, r.Text)
		}
	}
	if !c.Seeded.IsZero() && j.Windows[0].From.Before(c.Seeded.AddMonths(12)) {
		j.Cautions = append(j.Cautions, material.OffSeedlings().Text)
	}
	j.Cautions = append(j.Cautions, c.lawConditions(j, m)...)
}

// amountReason ends the working: from the rate to the weight and the packs.
func amountReason(d material.Dose, size agronomy.SquareFeet) schedule.Reason {
	a := d.For(size)
	text := word.Figures(float64(d.Rate), 3) + " lb/1000 sq ft × " + word.Figures(float64(size), 4) + " sq ft ÷ 1000 = " + word.Figures(float64(a.Weight), 4) + " lb of " + word.MaterialName(d.Material)
	if a.Volume > 0 {
		text += "; ÷ " + word.Figures(float64(d.Material.Density), 3) + " lb/gal = " + word.Figures(float64(a.Volume), 3) + " gal"
	}
	if p, ok := d.Material.PackWeight(); ok && a.Packs > 0 {
		text += "; ÷ " + word.Figures(float64(p), 4) + " lb a pack = " + word.Figures(a.Packs, 3) + " packs"
	}
	return schedule.Reason{Text: text}
}

// machineSteps say how to put the dose down evenly.
func (c *Treatment) machineSteps(j *schedule.Job, m word.Measure) []string {
	d, size := j.Dose, c.Area.Size
	if d.Material.Liquid {
		if c.Sprayer.Tank > 0 && c.Sprayer.Covers > 0 {
			if f, err := d.Spray(size, c.Sprayer.Tank, c.Sprayer.Covers); err == nil {
				steps := []string{fmt.Sprintf("Fill the tank half with water, add the product, then the rest of the water: %s of product to a full tank of %s, which covers %s.", m.Volume(f.Product), m.Volume(f.Full), m.Area(f.Covers))}
				if f.Count == 1 {
					steps[0] = fmt.Sprintf("One fill does it: half the water, %s of product, then water to %s.", m.Volume(f.InLast), m.Volume(f.Last))
				} else {
					steps = append(steps, fmt.Sprintf("%s in all; the last is %s with %s of product.", word.Plural(f.Count, "fill"), m.Volume(f.Last), m.Volume(f.InLast)))
				}
				return append(steps, "Spray out what is left on the same area, then rinse the tank.")
			}
		}
		return []string{"Calibrate the sprayer with plain water first, then spray the whole amount evenly over the area."}
	}
	if j.Tilled {
		steps := []string{"Spread it evenly on the bare soil, half one way and half across."}
		if j.Kind == schedule.Lime {
			steps = append(steps, fmt.Sprintf("Till it in %s deep before sowing.", m.Depth(max(4, c.Report.Depth))))
		} else {
			steps = append(steps, "Rake it into the top inch with the seed.")
		}
		return steps
	}
	s, err := material.SpreadOver(d.Rate, size, c.Spreader.Width)
	if err != nil {
		return nil
	}
	half := m.Weight(s.HalfWeight)
	step := "Set the spreader to half, " + m.Rate(s.HalfRate) + ". Walk the area one way with " + half + ", then across with the other " + half + "."
	if s.Walk > 0 {
		step += " With a " + m.Length(c.Spreader.Width) + " spread that is about " + m.Length(s.Walk) + " of walking each way."
	}
	return []string{step, "Do the edges first; shut the spreader while turning."}
}

func (c *Treatment) waterStep(j *schedule.Job, m word.Measure) []string {
	w := j.WaterIn
	switch {
	case w.High == 0 && j.Dose.Material.Liquid:
		return []string{"Leave it on the leaf for some hours; do not water it in."}
	case w.High == 0:
		return nil
	}
	depth := w.Low
	step := "Water in with " + m.Depth(w.Low) + " to " + m.Depth(w.High)
	var how []string
	if v, err := material.WaterVolume(depth, c.Area.Size); err == nil {
		how = append(how, m.Volume(v)+" in all for "+m.Depth(depth))
	}
	if c.Area.Sprinkler > 0 {
		if min, err := material.WaterMinutes(depth, c.Area.Sprinkler); err == nil {
			how = append(how, word.Plural(int(min+0.5), "minute")+" of the sprinkler")
		}
	}
	if len(how) > 0 {
		step += " (" + strings.Join(how, ", ") + ")"
	}
	return []string{step + " within " + word.Plural(w.WithinHours, "hour") + "."}
}

func (c *Treatment) ifRain(j *schedule.Job, m word.Measure) string {
	heavy := m.Depth(1) // [common] an inch in a day
	if j.Dose.Material.Liquid {
		return "If rain is near or " + heavy + " or more is forecast within a day, wait for the next work day in the window."
	}
	wait := "If " + heavy + " or more of rain is forecast within a day, wait for the next work day in the window"
	if j.WaterIn.High == 0 {
		return wait + "."
	}
	return wait + "; a light rain of about " + m.Depth(j.WaterIn.High) + " does the watering in. Never on soaked ground."
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
	for _, s := range how.Steps {
		j.Steps = append(j.Steps, s.Text)
		if s.Source != "" {
			j.Why = append(j.Why, s)
		}
	}
	j.Steps = append(j.Steps, "Enter the results in the site file and make the program again; the jobs move by themselves.")
	j.IfRain = "If the soil is soaked, wait until it crumbles."
}

func (c *Treatment) describeSow(j *schedule.Job, m word.Measure) {
	var seed []string
	total := agronomy.Percent(0)
	for _, s := range c.Area.Stand {
		total += s.Percent
	}
	for _, s := range c.Area.Stand {
		low, high := s.Grass.SeedRate[0], s.Grass.SeedRate[1]
		if high == 0 {
			continue
		}
		part := agronomy.PerThousand(1)
		if total > 0 {
			part = agronomy.PerThousand(s.Percent / total)
		}
		seed = append(seed, fmt.Sprintf("%s to %s of %s", m.Weight((low*part).Over(c.Area.Size)), m.Weight((high*part).Over(c.Area.Size)), s.Grass.Name))
		j.Why = append(j.Why, schedule.Reason{Text: s.Grass.Name + ": " + word.Figures(float64(low), 3) + " to " + word.Figures(float64(high), 3) + " lb of seed/1000 sq ft on bare soil", Source: s.Grass.SeedSource})
	}
	j.Summary = fmt.Sprintf("Sow %s, %s.", c.Area.Name, m.Area(c.Area.Size))
	if len(seed) > 0 {
		j.Summary = fmt.Sprintf("Sow %s, %s, with %s.", c.Area.Name, m.Area(c.Area.Size), word.List(seed))
	}
	j.Steps = []string{
		"Rake the bed fine and level; sow half the seed one way and half across, rake it in lightly and roll.",
		fmt.Sprintf("Keep the top %s moist: a little water two to four times a day until it is up, then less often and deeper.", m.Depth(0.5)), // [common]
		"Mow first when it stands a third above its mowing height, on dry soil with a sharp blade.",
		"Keep feet off until it has been mowed three or four times.",
	}
	j.IfRain = "A downpour washes seed away: wait for it to pass, or cover the seed lightly."
	j.Cautions = []string{material.OffSeedlings().Text, "Treated seed is not feed: keep it from children and animals."}
}
