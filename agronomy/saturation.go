package agronomy

import (
	"fmt"
	"math"
)

// CECBySum adds up the cation exchange capacity from a sheet in lb/acre (twice
// the ppm) and a buffer pH of the SMP kind: K/780 + Mg/240 + Ca/400 + 12 ×
// (7.0 − buffer pH), the last term not below 0. On soil with free lime the sum
// reads too high.
func CECBySum(k, mg, ca PerAcre, buffer PH) Meq {
	acid := max(0, 12*(7.0-float64(buffer)))                              // [spectrum-cec]
	return Meq(float64(k)/780 + float64(mg)/240 + float64(ca)/400 + acid) // [spectrum-cec]
}

// Saturation is the share of the CEC that a cation holds. The CEC must be
// above 0, and the nutrient a cation; ok is false otherwise.
func Saturation(n Nutrient, ppm PPM, cec Meq) (share Percent, ok bool) {
	w, ok := MeqWeight(n)
	if !ok || cec <= 0 {
		return 0, false
	}
	return Percent(100 * float64(ppm/w) / float64(cec)), true // [atomic-weights]
}

// Saturations gives the share of the CEC of each cation that the report holds,
// in words; nothing without a CEC.
func (r Report) Saturations() []Reason {
	var why []Reason
	for _, n := range []Nutrient{Calcium, Magnesium, Potassium, Sodium} {
		reading := r.Reading(n)
		if share, ok := Saturation(n, reading.PPM, r.CEC); ok && reading.Given {
			w, _ := MeqWeight(n)
			why = append(why, Reason{string(n) + ": " + figures(reading.PPM, 4) + " ppm ÷ " + whole(w) + " ÷ " + figure(r.CEC) + " meq/100 g = " + tenths(share) + " % of the CEC", "atomic-weights"})
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
func sodiumStanding(ppm PPM, cec Meq) standing {
	share, ok := Saturation(Sodium, ppm, cec)
	if !ok {
		return standing{level: Unknown, notes: []Reason{{Text: "Sodium is judged by its share of the CEC: ask the lab for the CEC."}}}
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
	return standing{level: level, enough: true, ppm: ppm, notes: []Reason{{fmt.Sprintf("%s ppm ÷ 230 ÷ %s meq/100 g = %.1f %% of the CEC: %s (under 3 nothing to do, 5 the usual ceiling, 15 sodic; from memory)", figures(ppm, 4), figure(cec), float64(share), level), "handbook60"}}}
}

// SAR is the sodium adsorption ratio of a saturated paste or a water, all in
// meq/L: Na / √((Ca + Mg) / 2). Calcium and magnesium together must be above 0.
func SAR(na, ca, mg float64) (float64, error) {
	if na < 0 || ca < 0 || mg < 0 || ca+mg <= 0 {
		return 0, fmt.Errorf("SAR of Na %g, Ca %g, Mg %g meq/L: calcium and magnesium together must be above 0, and none below; read them off the paste or water report", na, ca, mg)
	}
	return na / math.Sqrt((ca+mg)/2), nil // [slan-sheet]
}

// ESP estimates the exchangeable sodium percentage from the SAR of a saturated
// paste, 0 to 100. The equation is from memory.
func ESP(sar float64) (Percent, error) {
	if sar < 0 || sar > 100 {
		return 0, fmt.Errorf("ESP from an SAR of %g: the equation is for 0 to 100; have the lab measure sodium by itself", sar)
	}
	x := 0.01475*sar - 0.0126 // [handbook60] from memory
	return Percent(max(0, 100*x/(1+x))), nil
}

// gypsumEquivalent is the weight in grams of gypsum that carries one
// equivalent of calcium: 172.17 / 2.
const gypsumEquivalent = 86.09 // [atomic-weights]

// GypsumFor gives the pure gypsum that replaces an excess of exchangeable
// sodium in a layer of soil. Leaching water and drainage must follow it.
func GypsumFor(excess Meq, depth Inches) PerThousand {
	ppm := PPM(float64(excess) * gypsumEquivalent * 10) // meq/100 g to mg/kg
	return ppm.In(depth)
}

// ManganeseIndex is Rutgers' activity index from Mehlich-3 manganese and soil
// pH. Below 25 manganese is likely to be short.
func ManganeseIndex(mn PPM, ph PH) float64 {
	return 101.7 + 3.75*float64(mn) - 15.2*float64(ph) // [rutgers-levels]
}
