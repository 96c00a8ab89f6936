package nutrient

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/soil"
)

// MagnesiumNeed gives a year's magnesium as the element, from the shortage
// below the low end of the scale or the lab's optimum. Dolomitic lime brings
// it with it; a need of magnesium asks the planner for such a lime first.
func MagnesiumNeed(r agronomy.Report, state string) (Need, error) {
	reading := r.Magnesium
	if !reading.Given {
		return Need{Level: soil.Unknown}, fmt.Errorf("magnesium is %w: it cannot be planned without a figure", ErrNoReading)
	}
	s := soil.StandingOf(r, agronomy.Magnesium, state)
	n := Need{Level: s.Level, Single: singleMg, Why: slices.Concat(reading.Steps, s.Why())}
	switch {
	case s.Level == soil.Unknown:
		return n, fmt.Errorf("magnesium: %w: %s", ErrNoScale, s.Why()[0].Text)
	case s.Level != soil.Low && s.Level != soil.VeryLow:
		n.Why = append(n.Why, agronomy.Reason{Text: "Nothing is wanted. Turf grows over a wide ratio of calcium to magnesium; there is no need to balance them.", Source: "ohio-real"})
		return n, nil
	}
	if !reading.Wanted.Given {
		sc, _, _ := soil.ScaleFor(agronomy.Magnesium, r.Method, r.Texture, state)
		r.Magnesium.PPM, r.Magnesium.Wanted = s.Ppm, agronomy.Optimum{Given: true, Low: sc.Low, High: sc.Medium}
	}
	n.byOptimum(r, agronomy.Magnesium)
	n.limit(yearMg, singleMg, "Mg")
	n.Why = append(n.Why, agronomy.Reason{Text: "If lime is wanted too, dolomitic lime brings the magnesium; otherwise magnesium sulfate, or potassium-magnesium sulfate.", Source: "psu-report-notes"})
	return n, nil
}

// SulfurNutrientNeed gives a year's sulfur as a plant food, the element, to be brought
// as sulfate: half a pound where it is low, one where very low.
func SulfurNutrientNeed(r agronomy.Report, state string) (Need, error) {
	if !r.Sulfur.Given {
		return Need{Level: soil.Unknown}, fmt.Errorf("sulfur is %w: it cannot be planned without a figure", ErrNoReading)
	}
	s := soil.StandingOf(r, agronomy.Sulfur, state)
	n := Need{Level: s.Level, Single: yearSulfur, Why: slices.Concat(r.Sulfur.Steps, s.Why())}
	switch s.Level {
	case soil.Unknown:
		return n, fmt.Errorf("sulfur: %w: %s", ErrNoScale, s.Why()[0].Text)
	case soil.Low:
		n.Year = 0.5 // [common] from memory
	case soil.VeryLow:
		n.Year = yearSulfur
	}
	if n.Year > 0 {
		n.Why = append(n.Why, agronomy.Reason{Text: fmt.Sprintf("%.1f lb S a year as sulfate; ammonium sulfate brings 1.14 lb with each pound of nitrogen (from memory).", float64(n.Year)), Source: "common"})
	}
	return n, nil
}

// mlsnKPerN is the potassium that grass takes up for a pound of nitrogen.
func mlsnKPerN(s agronomy.Season) float64 {
	if s == agronomy.Warm {
		return 0.667 // [mlsn-k-2to1] seashore paspalum 1.0
	}
	return 0.5 // [mlsn-k-2to1]
}

// gramsPerPPM is the weight of 1 ppm in g/m2 of a layer of soil in the
// minimum-levels arithmetic: 0.15 at 10 cm and 1.5 g/cm3.
func gramsPerPPM(depthCM, bulkDensity float64) float64 {
	return depthCM * bulkDensity / 100 // [mlsn-manual]
}

// MLSNUse is the potassium in ppm that a year of nitrogen takes out of the
// layer.
func MLSNUse(nitrogenGramsPerM2 float64, s agronomy.Season, depthCM, bulkDensity float64) agronomy.PPM {
	return agronomy.PPM(nitrogenGramsPerM2 * mlsnKPerN(s) / gramsPerPPM(depthCM, bulkDensity))
}

// MLSNPotassium is the potassium (the element, g/m2) that keeps a soil at the
// minimum level after a year's growth: use + floor − found, never below 0. The
// floor is for Mehlich-3 and soils of pH above 5.5.
func MLSNPotassium(nitrogenGramsPerM2 float64, found agronomy.PPM, s agronomy.Season, depthCM, bulkDensity float64) float64 {
	floor, _ := soil.MLSN(agronomy.Potassium, agronomy.Mehlich3)
	short := MLSNUse(nitrogenGramsPerM2, s, depthCM, bulkDensity) + floor - found
	return max(0, float64(short)) * gramsPerPPM(depthCM, bulkDensity)
}

// TexasBalance is what a year's crop of bermudagrass wants of an element, less
// what the soil holds in its plough layer.
func TexasBalance(wanted agronomy.PerThousand, found agronomy.PPM) agronomy.PerThousand {
	return max(0, wanted-found.InPloughLayer()) // [tx-plantanswers]
}

// Removal is what leaves with the clippings for an amount of nitrogen: N, P2O5
// and K2O as about 4 : 1 : 3.
func Removal(n agronomy.PerThousand) (p2o5, k2o agronomy.PerThousand) {
	return n * 0.25, n * 0.75 // [kussow-ratio]
}
