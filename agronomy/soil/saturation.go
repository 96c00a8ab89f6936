package soil

import (
	"fmt"

	"swardbook/agronomy"
)

// Saturation is the share of the CEC that a cation holds. The CEC must be
// above 0, and the nutrient a cation; ok is false otherwise.
func Saturation(n agronomy.Nutrient, ppm agronomy.PPM, cec agronomy.Meq) (share agronomy.Percent, ok bool) {
	w, ok := agronomy.MeqWeight(n)
	if !ok || cec <= 0 {
		return 0, false
	}
	return agronomy.Percent(100 * float64(ppm/w) / float64(cec)), true // [atomic-weights]
}

// Saturations gives the share of the CEC of each cation that the report holds,
// in words; nothing without a CEC.
func Saturations(r agronomy.Report) []agronomy.Reason {
	var why []agronomy.Reason
	for _, n := range []agronomy.Nutrient{agronomy.Calcium, agronomy.Magnesium, agronomy.Potassium, agronomy.Sodium} {
		reading := r.Reading(n)
		if share, ok := Saturation(n, reading.PPM, r.CEC); ok && reading.Given {
			w, _ := agronomy.MeqWeight(n)
			why = append(why, agronomy.Reason{Text: string(n) + ": " + agronomy.Figures(reading.PPM, 4) + " ppm ÷ " + agronomy.Whole(w) + " ÷ " + agronomy.Figure(r.CEC) + " meq/100 g = " + agronomy.Tenths(share) + " % of the CEC", Source: "atomic-weights"})
		}
	}
	return why
}

// Sodium's share of the CEC, in percent, where each class begins.
const (
	sodiumWatch = 3  // [handbook60] from memory: below, nothing to do
	sodiumHigh  = 5  // [handbook60] from memory: the usual ceiling
	sodiumSodic = 15 // [handbook60] from memory: a sodic soil
)

// sodiumStanding places sodium by its share of the CEC, the only scale for it.
func sodiumStanding(ppm agronomy.PPM, cec agronomy.Meq) standing {
	share, ok := Saturation(agronomy.Sodium, ppm, cec)
	if !ok {
		return standing{Level: Unknown, notes: []agronomy.Reason{{Text: "Sodium is judged by its share of the CEC: ask the lab for the CEC."}}}
	}
	level := Low
	switch {
	case share >= sodiumSodic:
		level = VeryHigh
	case share >= sodiumHigh:
		level = High
	case share >= sodiumWatch:
		level = Medium
	}
	return standing{Level: level, enough: true, Ppm: ppm, notes: []agronomy.Reason{{Text: fmt.Sprintf("%s ppm ÷ 230 ÷ %s meq/100 g = %.1f %% of the CEC: %s (under 3 nothing to do, 5 the usual ceiling, 15 sodic; from memory)", agronomy.Figures(ppm, 4), agronomy.Figure(cec), float64(share), level), Source: "handbook60"}}}
}

// gypsumEquivalent is the weight in grams of gypsum that carries one
// equivalent of calcium: 172.17 / 2.
const gypsumEquivalent = 86.09 // [atomic-weights]

// GypsumFor gives the pure gypsum that replaces an excess of exchangeable
// sodium in a layer of soil. Leaching water and drainage must follow it.
func GypsumFor(excess agronomy.Meq, depth agronomy.Inches) agronomy.PerThousand {
	ppm := agronomy.PPM(float64(excess) * gypsumEquivalent * 10) // meq/100 g to mg/kg
	return ppm.In(depth)
}
