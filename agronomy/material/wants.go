package material

import (
	"strings"

	"swardbook/agronomy"
)

// String lists the nutrients that are there: "0.7 lb N, 0.25 lb K₂O".
func (w Wants) String() string {
	var parts []string
	for _, p := range []struct {
		name   string
		amount agronomy.PerThousand
	}{{"N", w.N}, {"P₂O₅", w.P2O5}, {"K₂O", w.K2O}, {"Mg", w.Mg}, {"S", w.S}} {
		if p.amount > 0 {
			parts = append(parts, agronomy.Figure(p.amount)+" lb "+p.name)
		}
	}
	if parts == nil {
		return "nothing"
	}
	return strings.Join(parts, ", ")
}

// Plus adds two lots, nutrient by nutrient.
func (w Wants) Plus(v Wants) Wants {
	return Wants{w.N + v.N, w.P2O5 + v.P2O5, w.K2O + v.K2O, w.Mg + v.Mg, w.S + v.S}
}

// total is the weight of all nutrients together.
func (w Wants) total() agronomy.PerThousand { return w.N + w.P2O5 + w.K2O + w.Mg + w.S }

// within gives what of w lies inside v: the lesser of each nutrient.
func (w Wants) within(v Wants) Wants {
	return Wants{min(w.N, v.N), min(w.P2O5, v.P2O5), min(w.K2O, v.K2O), min(w.Mg, v.Mg), min(w.S, v.S)}
}

// Title is the material's name, or its id where it has none.
func (m Material) Title() string {
	if m.Name != "" {
		return m.Name
	}
	return m.ID
}
