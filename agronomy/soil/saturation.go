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

// GypsumNeed is the pure gypsum that brings a sodic soil under the usual
// ceiling of sodium.
type GypsumNeed struct {
	Total  agronomy.PerThousand // for the depth
	Share  agronomy.Percent     // of the CEC that sodium holds
	Excess agronomy.Meq         // over the ceiling, per 100 g
	Why    []agronomy.Reason
}

// GypsumOf gives the gypsum for a report, over its depth or 4 in; false where
// sodium does not hold 15 % of the CEC, or is not known. Gypsum is for sodium and
// never for compaction.
func GypsumOf(r agronomy.Report) (GypsumNeed, bool) {
	share, ok := Saturation(agronomy.Sodium, r.Sodium.PPM, r.CEC)
	if !ok || !r.Sodium.Given || share < sodiumSodic {
		return GypsumNeed{}, false
	}
	depth := r.Depth
	if depth <= 0 {
		depth = sampleDepth
	}
	n := GypsumNeed{Share: share, Excess: agronomy.Meq(float64(r.CEC) * float64(share-sodiumHigh) / 100)}
	n.Total = GypsumFor(n.Excess, depth)
	n.Why = []agronomy.Reason{
		{Text: fmt.Sprintf("Sodium holds %.1f %% of a CEC of %s meq/100 g, and 15 %% makes a soil sodic; down to 5 %% that is %.2f meq/100 g too much.", float64(share), agronomy.Figure(r.CEC), float64(n.Excess)), Source: "handbook60"},
		{Text: fmt.Sprintf("%.2f meq/100 g × 861 ppm × %s in of soil = %.1f lb/1000 sq ft of pure gypsum (a published rule asks 1.7 tons for each meq in an acre-foot of 4 million lb, the same for as much soil). Not all of it exchanges: some add a tenth to a third.", float64(n.Excess), agronomy.Figure(depth), float64(n.Total)), Source: "sodic-gypsum, ndsu-gypsum"},
		{Text: "Gypsum is for sodium only. It does nothing for compaction, and nothing without drainage and water to carry the sodium away.", Source: "common"},
	}
	return n, true
}

// GypsumFor gives the pure gypsum that replaces an excess of exchangeable
// sodium in a layer of soil. Leaching water and drainage must follow it.
func GypsumFor(excess agronomy.Meq, depth agronomy.Inches) agronomy.PerThousand {
	ppm := agronomy.PPM(float64(excess) * gypsumEquivalent * 10) // meq/100 g to mg/kg
	return ppm.In(depth)
}
