package agronomy

import (
	"bytes"
	"math"
	"strconv"
	"strings"
)

// String lists the nutrients that are there: "0.7 lb N, 0.25 lb K₂O".
func (w Wants) String() string {
	var parts []string
	for _, p := range []struct {
		name   string
		amount PerThousand
	}{{"N", w.N}, {"P₂O₅", w.P2O5}, {"K₂O", w.K2O}, {"Mg", w.Mg}, {"S", w.S}} {
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
func figure[T ~float64](v T) string { return figures(v, 3) }

// whole writes a number without decimals.
func whole[T ~float64](v T) string { return strconv.FormatFloat(float64(v), 'f', 0, 64) }

// tenths writes a number with one decimal.
func tenths[T ~float64](v T) string { return strconv.FormatFloat(float64(v), 'f', 1, 64) }

// figures writes a number with n significant digits, but never less than its
// whole part, and without trailing zeros.
func figures[T ~float64](v T, n int) string {
	x := float64(v)
	a := math.Abs(x)
	if a == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return strconv.FormatFloat(x, 'g', n, 64)
	}
	decimals := n - 1
	for edge := 10.0; a >= edge && decimals > 0; edge *= 10 {
		decimals--
	}
	for edge := 1.0; a < edge && decimals < n+3; edge /= 10 {
		decimals++
	}
	var room [40]byte
	b := strconv.AppendFloat(room[:0], x, 'f', decimals, 64)
	if decimals > 0 {
		b = bytes.TrimRight(bytes.TrimRight(b, "0"), ".")
	}
	return string(b)
}

// title is the material's name, or its id where it has none.
func (m Material) title() string {
	if m.Name != "" {
		return m.Name
	}
	return m.ID
}
