package nutrient

import (
	"math"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

func TestReleased(t *testing.T) {
	m := material.Material{Analysis: agronomy.Analysis{N: 20}, SlowShare: 0.4, Lasts: 8}
	d := material.DoseOf(m, 5) // 1 lb N: 0.6 at once, 0.4 over 56 days
	cold := func(day int) float64 {
		if day > 28 {
			return GrowthFloor
		}
		return 0.5
	}
	for name, c := range map[string]struct {
		days   int
		growth func(int) float64
		want   float64
	}{
		"the day before":     {-1, nil, 0},
		"the day itself":     {0, nil, 0.6},
		"half its life":      {28, nil, 0.8},
		"its whole life":     {56, nil, 1},
		"long after":         {400, nil, 1},
		"held back by cold":  {56, cold, 0.8},
		"until the cold":     {28, cold, 0.8},
		"growing all along":  {56, func(int) float64 { return GrowthFloor + 0.01 }, 1},
		"never growing":      {100, func(int) float64 { return 0 }, 0.6},
		"two days of growth": {2, nil, 0.6 + 0.4*2/56},
	} {
		if got := Released(d, c.days, c.growth); !matches(float64(got), c.want) {
			t.Errorf("%s: %v lb, want %v", name, got, c.want)
		}
	}
	before := agronomy.PerThousand(0)
	for day := range 120 {
		now := Released(d, day, cold)
		if now < before || now > d.N*(1+1e-9) {
			t.Fatalf("day %d: %v after %v of %v", day, now, before, d.N)
		}
		before = now
	}
}

// Common practice: a starter sold for 90 days still feeds when a quick
// nitrogen goes on at week six, so that both count on that day.
func TestStarterStillFeedsAtWeekSix(t *testing.T) {
	starter := material.DoseOf(material.Material{Analysis: agronomy.Analysis{N: 18, P2O5: 24, K2O: 12}, SlowShare: 0.4, Lasts: 90.0 / 7}, 5)
	last, ok := FeedsUntil(starter, nil)
	if !ok || last != 90 {
		t.Errorf("feeds until day %d, %v; want 90", last, ok)
	}
	if down := Released(starter, 42, nil); down >= starter.N || down <= starter.SolubleN {
		t.Errorf("at week six %v of %v lb is down", down, starter.N)
	}
}

func TestFeedsUntil(t *testing.T) {
	for name, c := range map[string]struct {
		m      material.Material
		growth func(int) float64
		want   int
		ok     bool
	}{
		"quick":                     {material.Material{Analysis: agronomy.Analysis{N: 46}}, nil, 28, true},
		"slow by its label":         {material.Material{Analysis: agronomy.Analysis{N: 40}, SlowShare: 0.5, Lasts: 12}, nil, 84, true},
		"slow without a label":      {material.Material{Analysis: agronomy.Analysis{N: 40}, SlowShare: 0.5}, nil, 56, true},
		"every second day too cold": {material.Material{Analysis: agronomy.Analysis{N: 46}}, func(d int) float64 { return float64(d % 2) }, 55, true},
		"where nothing grows":       {material.Material{Analysis: agronomy.Analysis{N: 46}}, func(int) float64 { return 0 }, 0, false},
	} {
		if got, ok := FeedsUntil(material.DoseOf(c.m, 1), c.growth); got != c.want || ok != c.ok {
			t.Errorf("%s: day %d, %v; want %d, %v", name, got, ok, c.want, c.ok)
		}
	}
	if _, why := FeedsOf((material.Material{SlowShare: 0.5})); why.Source != "common" {
		t.Errorf("an assumed life without its source: %+v", why)
	}
}

func matches(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(1, math.Abs(a), math.Abs(b)) }
