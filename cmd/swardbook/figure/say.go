package figure

import (
	"math"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule/word"
)

// us and metric are the two systems of units; an amount is said in both.
var us, metric = word.Measure{}, word.Measure{Metric: true}

func both(say func(word.Measure) string) string { return say(us) + " (" + say(metric) + ")" }

func bothRates(r agronomy.PerThousand) string {
	return both(func(m word.Measure) string { return m.Rate(r) })
}

// bothNutrients writes "1 lb N, 0.25 lb P₂O₅ per 1,000 sq ft (4.9 g N, 1.2 g P₂O₅/m²)".
func bothNutrients(w material.Wants) string {
	var metric []string
	for _, p := range []struct {
		name   string
		amount agronomy.PerThousand
	}{{"N", w.N}, {"P₂O₅", w.P2O5}, {"K₂O", w.K2O}, {"Mg", w.Mg}, {"S", w.S}} {
		if p.amount > 0 {
			metric = append(metric, word.Figures(p.amount.GramsPerM2(), 2)+" g "+p.name)
		}
	}
	if metric == nil {
		return w.String()
	}
	return w.String() + " per 1,000 sq ft (" + strings.Join(metric, ", ") + "/m²)"
}

func bothWeights(p agronomy.Pounds) string {
	return both(func(m word.Measure) string { return m.Weight(p) })
}

func bothVolumes(g agronomy.Gallons) string {
	return both(func(m word.Measure) string { return m.Volume(g) })
}

func bothAreas(a agronomy.SquareFeet) string {
	return both(func(m word.Measure) string { return m.Area(a) })
}

func rounded(v float64, decimals int) float64 {
	scale := math.Pow10(decimals)
	return math.Round(v*scale) / scale
}
