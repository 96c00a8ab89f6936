package rule

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// thisBrings begins what the words of a job say of its amount.
const thisBrings = " This brings "

// describeSpread writes the words of a job that puts a material down.
func (c *Treatment) describeSpread(j *schedule.Job, m word.Measure) {
	d, size := j.Dose, c.Area.Size
	a := d.For(size)
	packs, other := word.InPacks(a.Packs), ""
	if j.Rest {
		other = "the other "
	}
	verb := j.Kind.Of().Verb
	if j.OnlyNitrogen() {
		verb = "Feed new seed on"
	}
	j.Title = word.Title(verb, c.Area.Name, other+m.Amount(d, size), packs, schedule.TitleLength)
	do, amount := "Spread ", m.Measured(a.Weight)
	if d.Material.Sprayed() {
		do = "Spray "
	}
	if a.Volume > 0 {
		amount = m.Volume(a.Volume)
	}
	j.Summary = do + other + amount + " of " + word.MaterialName(d.Material) + packs + " on " + c.Area.Name + "."
	if brings := m.Brings(d); brings != "" {
		j.Because = strings.TrimSpace(word.Sentence(j.Because) + thisBrings + brings + ".")
	}
	j.Why = append(slices.Clip(j.Why), amountReason(d, size))
	j.Steps = slices.Grow(j.Steps, 4)
	if d.Material.ToBuy {
		j.Steps = append(j.Steps, "Buy "+word.MaterialName(d.Material)+" first: none is in the shed.")
	}
	j.Steps = append(j.Steps, c.machineSteps(j, m)...)
	j.WaterIn = d.WaterIn(material.Use(j.Kind.String()))
	j.Steps = append(j.Steps, c.waterStep(j, m)...)
	j.IfRain = c.ifRain(j, m)
	j.Cautions = c.cautions(j, m)
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
	if d.Material.Kind == material.IronMaterial && !d.Material.Liquid {
		return ironSteps(d.For(size).Weight, size, m)
	}
	if d.Material.Liquid {
		if c.Sprayer.Tank > 0 && c.Sprayer.Covers > 0 {
			if f, err := d.Spray(size, c.Sprayer.Tank, c.Sprayer.Covers); err == nil {
				steps := []string{fmt.Sprintf("Fill the tank half with water, add the product, then the rest of the water: %s of product to a full tank of %s, which covers %s.", m.Volume(f.Product), m.Volume(f.Full), m.Area(f.Covers))}
				if f.Count == 1 {
					steps[0] = fmt.Sprintf("One fill is enough: half the water, %s of product, then water to %s.", m.Volume(f.InLast), m.Volume(f.Last))
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
	step := "Set the spreader to half the rate, " + m.Rate(s.HalfRate) + ". Edges first, then " + m.Measured(s.HalfWeight) + " one way, " + m.Weight(s.HalfWeight) + " across; shut while turning."
	if s.Walk > 0 {
		j.Why = append(j.Why, schedule.Reason{Text: "At " + m.Length(c.Spreader.Width) + " wide that is about " + m.Length(s.Walk) + " of walking each way"})
	}
	return []string{step, unmarked(s.HalfRate, m)}
}

// unmarked is how to set a spreader whose dial does not say pounds: by eye, or
// by catching what it drops on a sheet. // [common]
func unmarked(half agronomy.PerThousand, m word.Measure) string {
	return "Unmarked dial? Smallest opening, walk until half is gone, then across. Catch test: " + m.Caught(half) + "."
}

func (c *Treatment) waterStep(j *schedule.Job, m word.Measure) []string {
	w := j.WaterIn
	switch {
	case w.High == 0 && j.Dose.Material.Sprayed():
		return []string{"Leave it on the leaf for some hours; do not water it in."}
	case w.High == 0:
		return nil
	}
	how := ""
	if minutes, err := material.WaterMinutes(w.Low, c.Area.Sprinkler); err == nil && c.Area.Sprinkler > 0 {
		how = " (" + word.Plural(int(minutes+0.5), "minute") + " of the sprinkler)"
	} else if v, err := material.WaterVolume(w.Low, c.Area.Size); err == nil {
		how = " (" + m.Volume(v) + " in all)"
	}
	return []string{"Water in " + m.Depth(w.Low) + how + " within " + word.Plural(w.WithinHours, "hour") + "."}
}

func (c *Treatment) ifRain(j *schedule.Job, m word.Measure) string {
	heavy := m.Depth(1) // [common] an inch in a day
	wait := "If " + heavy + " or more is forecast within a day, wait for " + c.nextWorkDay() + "."
	switch {
	case j.Dose.Material.Sprayed():
		return "If rain is near, or " + heavy + " or more is forecast within a day, wait for " + c.nextWorkDay() + "."
	case j.WaterIn.High == 0:
		return wait
	}
	return wait + " A light rain of " + m.Depth(j.WaterIn.High) + " waters it in."
}

// nextWorkDay names the days on which the crew can make up for a wet one.
func (c *Treatment) nextWorkDay() string {
	var days []string
	for _, d := range c.Crew.Days {
		days = append(days, d.String())
	}
	switch n := len(days); {
	case n == 0 || n == 7:
		return "a drier day"
	case n > 3:
		return "the next work day"
	}
	return "the next " + strings.Join(days, " or ")
}
