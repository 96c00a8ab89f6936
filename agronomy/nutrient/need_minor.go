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
		n.Why = append(n.Why, agronomy.Reason{Text: "Nothing is wanted. Turf grows over a wide ratio of calcium to magnesium; there is no need to balance them.", Source: "common"})
		return n, nil
	}
	if !reading.Wanted.Given {
		sc, _, _ := soil.ScaleFor(agronomy.Magnesium, r.Method, r.Texture, state)
		r.Magnesium.PPM, r.Magnesium.Wanted = s.Ppm, agronomy.Optimum{Given: true, Low: sc.Low, High: sc.Medium}
	}
	n.byOptimum(r, agronomy.Magnesium)
	n.limit(yearMg, singleMg, "Mg")
	n.Why = append(n.Why, agronomy.Reason{Text: "If lime is needed too, dolomitic lime brings the magnesium; otherwise magnesium sulfate, or potassium-magnesium sulfate.", Source: "psu-report-notes"})
	return n, nil
}

// mlsnLayer is the weight of 1 ppm in the 10 cm layer of the minimum-levels
// arithmetic, lb/1000 sq ft. [mlsn-manual]
const mlsnLayer = 0.0307

// mlsnUse is the potassium that cool-season grass takes out of that layer with a
// year's nitrogen: half a pound for a pound. [mlsn-k-2to1]
func mlsnUse(nitrogen agronomy.PerThousand) agronomy.PPM {
	return agronomy.PPM(float64(nitrogen) * 0.5 / mlsnLayer) // [mlsn-k-2to1]
}
