package agronomy

import (
	"fmt"

	"swardbook/climate"
)

// SaltIndex gives how strongly a material salts the soil water, weight for
// weight, against sodium nitrate at 100. It knows the plain salts by their
// analysis and reports false for all others. The figures are from memory.
func (m Material) SaltIndex() (float64, Reason, bool) {
	if m.Liquid || m.SlowShare > 0 {
		return 0, Reason{}, false
	}
	for _, s := range []struct {
		name  string
		of    Analysis
		index float64
	}{
		{"ammonium nitrate", Analysis{34, 0, 0}, 105},       // [common] from memory
		{"ammonium sulfate", Analysis{21, 0, 0}, 69},        // [common] from memory
		{"urea", Analysis{46, 0, 0}, 75},                    // [common] from memory
		{"potassium chloride", Analysis{0, 0, 60}, 116},     // [common] from memory
		{"potassium chloride", Analysis{0, 0, 62}, 116},     // [common] from memory
		{"potassium sulfate", Analysis{0, 0, 50}, 46},       // [common] from memory
		{"diammonium phosphate", Analysis{18, 46, 0}, 34},   // [common] from memory
		{"monoammonium phosphate", Analysis{11, 52, 0}, 30}, // [common] from memory
	} {
		if m.Analysis == s.of {
			return s.index, Reason{fmt.Sprintf("%s: salt index %s, where sodium nitrate is 100", s.name, figure(s.index)), "common"}, true
		}
	}
	return 0, Reason{}, false
}

// The heat above which a material may burn, as the day's high.
const (
	SolubleNHeat climate.Fahrenheit = 85 // [common] 85-90
	SulfurHeat   climate.Fahrenheit = 75 // [common]
)

// HeatLimit gives the day's high above which a material should not go down;
// false for one that heat does not matter to.
func (m Material) HeatLimit() (climate.Fahrenheit, Reason, bool) {
	switch {
	case m.Kind == SulfurMaterial:
		return SulfurHeat, Reason{"Elemental sulfur burns in heat: only on days under " + SulfurHeat.String() + ".", "common"}, true
	case m.Liquid && m.Kind == FertilizerMaterial:
		return SolubleNHeat, Reason{"Liquid feed burns leaves in heat: not on days above " + SolubleNHeat.String() + ".", "common"}, true
	case m.Analysis.N > 0 && m.SlowShare < 1:
		return SolubleNHeat, Reason{"Quick nitrogen burns in heat: not on days above " + SolubleNHeat.String() + ".", "common"}, true
	}
	return 0, Reason{}, false
}

// ProductCap gives the most of a material that living turf takes at one time,
// in lb of product per 1000 sq ft, for those that have such a figure. Limes,
// sulfur, and caps by nutrient are elsewhere.
func (m Material) ProductCap() (PerThousand, Reason, bool) {
	switch m.Kind {
	case MagnesiumMaterial:
		return 2, Reason{"magnesium sulfate: 1 to 2 lb per 1000 sq ft at a time", "common"}, true
	case GypsumMaterial:
		return 40, Reason{"gypsum: 40 lb per 1000 sq ft at a time on living turf", "common"}, true
	}
	return 0, Reason{}, false
}
