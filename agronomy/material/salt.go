package material

import (
	"fmt"

	"swardbook/agronomy"
	"swardbook/climate"
)

// SaltIndex gives how strongly a material salts the soil water, weight for
// weight, against sodium nitrate at 100. It knows the plain salts by their
// analysis and reports false for all others. The figures are from memory.
func (m Material) SaltIndex() (float64, agronomy.Reason, bool) {
	if m.Liquid || m.SlowShare > 0 {
		return 0, agronomy.Reason{}, false
	}
	for _, s := range []struct {
		name  string
		of    agronomy.Analysis
		index float64
	}{
		{"ammonium nitrate", agronomy.Analysis{N: 34, P2O5: 0, K2O: 0}, 105},       // [common] from memory
		{"ammonium sulfate", agronomy.Analysis{N: 21, P2O5: 0, K2O: 0}, 69},        // [common] from memory
		{"urea", agronomy.Analysis{N: 46, P2O5: 0, K2O: 0}, 75},                    // [common] from memory
		{"potassium chloride", agronomy.Analysis{N: 0, P2O5: 0, K2O: 60}, 116},     // [common] from memory
		{"potassium chloride", agronomy.Analysis{N: 0, P2O5: 0, K2O: 62}, 116},     // [common] from memory
		{"potassium sulfate", agronomy.Analysis{N: 0, P2O5: 0, K2O: 50}, 46},       // [common] from memory
		{"diammonium phosphate", agronomy.Analysis{N: 18, P2O5: 46, K2O: 0}, 34},   // [common] from memory
		{"monoammonium phosphate", agronomy.Analysis{N: 11, P2O5: 52, K2O: 0}, 30}, // [common] from memory
	} {
		if m.Analysis == s.of {
			return s.index, agronomy.Reason{Text: fmt.Sprintf("%s: salt index %s, where sodium nitrate is 100", s.name, agronomy.Figure(s.index)), Source: "common"}, true
		}
	}
	return 0, agronomy.Reason{}, false
}

// The heat above which a material may burn, as the day's high.
const (
	SolubleNHeat climate.Fahrenheit = 85 // [common] 85-90
	SulfurHeat   climate.Fahrenheit = 75 // [common]
)

// HeatLimit gives the day's high above which a material should not go down;
// false for one that heat does not matter to.
func (m Material) HeatLimit() (climate.Fahrenheit, agronomy.Reason, bool) {
	switch {
	case m.Kind == SulfurMaterial:
		return SulfurHeat, agronomy.Reason{Text: "Elemental sulfur burns in heat: only on days under " + SulfurHeat.String() + ".", Source: "common"}, true
	case m.Kind == IronMaterial:
		return SolubleNHeat, burnsInHeat("Iron on the leaf burns"), true
	case m.Liquid && m.Kind == FertilizerMaterial:
		return SolubleNHeat, burnsInHeat("Liquid feed burns leaves"), true
	case m.Analysis.N > 0 && m.SlowShare < 1:
		return SolubleNHeat, burnsInHeat("Quick nitrogen burns"), true
	}
	return 0, agronomy.Reason{}, false
}

// ProductCap gives the most of a material that living turf takes at one time,
// in lb of product per 1000 sq ft, for those that have such a figure. Limes,
// sulfur, and caps by nutrient are elsewhere.
func (m Material) ProductCap() (agronomy.PerThousand, agronomy.Reason, bool) {
	switch m.Kind {
	case MagnesiumMaterial:
		return 2, agronomy.Reason{Text: "magnesium sulfate: 1 to 2 lb per 1000 sq ft at a time", Source: "common"}, true
	case GypsumMaterial:
		return 40, agronomy.Reason{Text: "gypsum: 40 lb per 1000 sq ft at a time on living turf", Source: "common"}, true
	}
	return 0, agronomy.Reason{}, false
}

// burnsInHeat says when to keep off what burns leaves. Warm-season grass is fed in summer,
// when every day is hot: there the hour is what can be chosen.
func burnsInHeat(what string) agronomy.Reason {
	return agronomy.Reason{Text: what + " in heat: not on days above " + SolubleNHeat.String() + "; on warm-season grass, which grows then, in the cool of the morning.", Source: "common"}
}
