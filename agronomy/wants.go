package agronomy

import (
	"math"
	"strconv"
	"strings"
)

// String lists the nutrients that are there: "0.7 lb N, 0.25 lb K2O".
func (w Wants) String() string {
	var parts []string
	for _, p := range []struct {
		name   string
		amount PerThousand
	}{{"N", w.N}, {"P2O5", w.P2O5}, {"K2O", w.K2O}, {"Mg", w.Mg}, {"S", w.S}} {
		if p.amount > 0 {
			parts = append(parts, figure(p.amount)+" lb "+p.name)
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
func (w Wants) total() PerThousand { return w.N + w.P2O5 + w.K2O + w.Mg + w.S }

// within gives what of w lies inside v: the lesser of each nutrient.
func (w Wants) within(v Wants) Wants {
	return Wants{min(w.N, v.N), min(w.P2O5, v.P2O5), min(w.K2O, v.K2O), min(w.Mg, v.Mg), min(w.S, v.S)}
}

// figure writes a number for a working: three significant digits, whole from
// 100 up, no trailing zeros.
func figure[T ~float64](v T) string {
	x := float64(v)
	a := math.Abs(x)
	if a == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return strconv.FormatFloat(x, 'g', 3, 64)
	}
	digits := 0
	if a < 100 {
		digits = min(2-int(math.Floor(math.Log10(a))), 6)
	}
	s := strconv.FormatFloat(x, 'f', digits, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// title is the material's name, or its id where it has none.
func (m Material) title() string {
	if m.Name != "" {
		return m.Name
	}
	return m.ID
}
