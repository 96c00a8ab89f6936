package rule

import (
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// cautions are what to take care of on the day, in few words, for a phone: the label,
// what to wear, the ground and the weather, what to keep clean, who stays off, the law.
// A caution that the dose, the steps or the line about rain give already is left out; the
// command "why" has all that goes with a material.
func (c *Treatment) cautions(j *schedule.Job, m word.Measure) []string {
	out := append([]string{"The label and local codes come first."}, c.care(j, m)...)
	young := !c.Seeded.IsZero() && j.Windows[0].From.Before(c.Seeded.AddMonths(12))
	if young || slices.ContainsFunc(c.Oversown, func(over schedule.Date) bool {
		return j.Windows[0].From.Before(c.OverGreen(over).AddDays(lateStarterDays))
	}) {
		out = append(out, material.OffSeedlings().Text)
	}
	return append(out, c.lawConditions(j, m)...)
}

// care is what goes with a material, in short; a material that is caustic, that
// feeds fire or that this table does not know keeps its cautions in full.
func (c *Treatment) care(j *schedule.Job, m word.Measure) []string {
	d := j.Dose.Material
	wear, bad, clean := "Wear gloves.", "wet leaves, wilted grass, frozen or soaked ground", "Keep it off paving and drains; leave a strip beside water."
	switch {
	case d.Hydrated, d.Analysis == (agronomy.Analysis{N: 34}): // ammonium nitrate
		return fullCare(d, j.Kind)
	case d.Kind == material.LimeMaterial, d.Kind == material.GypsumMaterial:
		wear, bad, clean = "Wear gloves, eye protection and a dust mask.", "frozen or soaked ground", "Wash it off leaves, sweep paving, keep it out of drains and open water."
	case d.Kind == material.WoodAsh:
		wear, bad, clean = "Wear gloves, eye protection and a dust mask; only cold ash of clean wood.", "seedlings, frozen or soaked ground", "Wash it off leaves, sweep paving, keep it out of drains and open water."
	case d.Kind == material.IronMaterial:
		wear, bad, clean = "Wear gloves, eye protection and old clothes.", "wet leaves, wilted grass, frozen or soaked ground", "It stains paving, stone, siding and shoes rust-brown for good: keep it off them, and out of drains. Never in one tank with a weed killer; some days between the two."
	case d.Kind == material.SulfurMaterial:
		wear, bad = "Wear goggles, gloves and a dust mask; no sparks.", "wet leaves, frozen or soaked ground"
	case d.Kind == material.FertilizerMaterial && d.Liquid:
		wear, bad = "Wear gloves and eye protection; rinse the sprayer, as salt corrodes it.", "wilted grass, frozen or soaked ground"
	case d.Kind != material.FertilizerMaterial && d.Kind != material.MagnesiumMaterial:
		return fullCare(d, j.Kind)
	}
	bad = "Not on " + bad
	if d.Liquid || d.Kind != material.FertilizerMaterial && d.Kind != material.MagnesiumMaterial {
		bad += ", nor in wind above " + m.Wind(10) // [common] dust and spray drift
	}
	if heat, _, ok := d.HeatLimit(); ok {
		if c.Season == climate.Warm && d.Kind != material.SulfurMaterial {
			bad += ", nor in noon heat" // [common] it is fed in summer, when every day is hot
		} else {
			bad += ", nor over " + m.Temperature(heat)
		}
	}
	if len(c.waterEdge(m)) > 0 {
		clean = "Keep it off paving and drains."
	}
	off := "watered in and dry."
	if j.WaterIn.High == 0 {
		off = "dry."
	}
	return []string{wear, bad + ".", clean, "Children and pets stay off until it is " + off}
}

// fullCare gives the cautions of a material as they stand, without the rain,
// which a job's own line tells.
func fullCare(m material.Material, k schedule.Kind) []string {
	var out []string
	for _, r := range slices.Concat(material.Cautions(m, material.Use(k.String())), material.WeatherCautions(m)) {
		if r != material.HeavyRain() {
			out = append(out, r.Text)
		}
	}
	return out
}
