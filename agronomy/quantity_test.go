package agronomy

import (
	"errors"
	"math"
	"strings"
	"testing"
)

func TestQuantities(t *testing.T) {
	f := func(x float64, err error) func(text string, want float64) {
		return func(text string, want float64) {
			t.Helper()
			if err != nil {
				t.Errorf("%s: %v", text, err)
			} else if math.Abs(x-want) > 1e-4*max(1, want) {
				t.Errorf("%s = %v, want %v", text, x, want)
			}
		}
	}
	area := func(s string, want float64) { v, err := ParseArea(s); f(float64(v), err)(s, want) }
	area("2600 sq ft", 2600)
	area("2,600 ft2", 2600)
	area("2600 ft²", 2600)
	area("2600 Sq. Ft.", 2600)
	area("320 m2", 3444.4513)
	area("320m²", 3444.4513)
	area("0.25 acre", 10890)
	area("1/4 acre", 10890)
	area("0.1 ha", 10763.9104)
	weight := func(s string, want float64) { v, err := ParseWeight(s); f(float64(v), err)(s, want) }
	weight("40 lb", 40)
	weight("18 kg", 39.6832)
	weight("8 oz", 0.5)
	weight("0 lb", 0)
	volume := func(s string, want float64) { v, err := ParseVolume(s); f(float64(v), err)(s, want) }
	volume("2.5 gal", 2.5)
	volume("10 L", 2.64172)
	depth := func(s string, want float64) { v, err := ParseDepth(s); f(float64(v), err)(s, want) }
	depth("0.25 in", 0.25)
	depth("6 2/3 in", 6.66667)
	depth("6 mm", 0.2362)
	depth("10 cm", 3.937)
	length := func(s string, want float64) { v, err := ParseLength(s); f(float64(v), err)(s, want) }
	length("30 ft", 30)
	length("9 m", 29.5276)
	elevation := func(s string, want float64) { v, err := ParseElevation(s); f(float64(v), err)(s, want) }
	elevation("900 ft", 900)
	elevation("270 m", 885.827)
	rate := func(s string, want float64) { v, err := ParseRate(s); f(float64(v), err)(s, want) }
	rate("0.7 lb/1000 sq ft", 0.7)
	rate("0.7 lb / 1,000 sq ft", 0.7)
	rate("43.56 lb/acre", 1)
	rate("4.88243 g/m2", 1)
	rate("50 kg/ha", 1.02408)
	density := func(s string, want float64) { v, err := ParseDensity(s); f(float64(v), err)(s, want) }
	density("9.6 lb/gal", 9.6)
	density("1.15 kg/L", 9.5972)
	watering := func(s string, want float64) { v, err := ParseWatering(s); f(float64(v), err)(s, want) }
	watering("0.4 in/h", 0.4)
	watering("10 mm/h", 0.3937)
	percent := func(s string, want float64) { v, err := ParsePercent(s); f(float64(v), err)(s, want) }
	percent("2.1 %", 2.1)
	percent("2.1%", 2.1)
	weeks := func(s string, want float64) { v, err := ParseWeeks(s); f(float64(v), err)(s, want) }
	weeks("8 weeks", 8)
	weeks("90 days", 12.85714)
	weeks("3 months", 13.0446)
	coverage := func(s string, want float64) { v, err := ParseCoverage(s); f(float64(v), err)(s, want) }
	coverage("1000 sq ft per gal", 1000)
	coverage("25 m2 per L", 1018.65)

	if a, err := ParseElevation("-280 ft"); err != nil || a != -280 {
		t.Errorf("-280 ft: %v, %v", a, err)
	}
	if a, err := ParseAnalysis("18-24-12"); err != nil || a != (Analysis{18, 24, 12}) {
		t.Errorf("18-24-12: %v, %v", a, err)
	}
	if a, err := ParseAnalysis("12.5-0-0"); err != nil || a != (Analysis{12.5, 0, 0}) {
		t.Errorf("12.5-0-0: %v, %v", a, err)
	}
}

func TestQuantitiesRefused(t *testing.T) {
	area := func(s string) error { _, err := ParseArea(s); return err }
	depth := func(s string) error { _, err := ParseDepth(s); return err }
	rate := func(s string) error { _, err := ParseRate(s); return err }
	grade := func(s string) error { _, err := ParseAnalysis(s); return err }
	percent := func(s string) error { _, err := ParsePercent(s); return err }
	for _, tt := range []struct {
		text  string
		parse func(string) error
		says  string
	}{
		{"", area, "plain number"},
		{"2600", area, "needs a unit"},
		{"2600 sqaure feet", area, `did you mean "square feet"`},
		{"2600 lb", area, "no unit of area"},
		{"0 sq ft", area, "believable"},
		{"1e308 sq ft", area, "no unit"},
		{"NaN sq ft", area, "plain number"},
		{"Inf m2", area, "plain number"},
		{"-3 m2", area, "plain number"},
		{"2,60 ft2", area, "write a point: 2.60 ft2"},
		{"0,250 acre", area, "write a point: 0.250 acre"},
		{"00,250 acre", area, "write a point: 00.250 acre"},
		{"0,250,000 ft2", area, "plain number"},
		{"0,7 lb/1000 sq ft", rate, "write a point: 0.7 lb/1000 sq ft"},
		{"99999999999999999999 acre", area, "plain number"},
		{"5000 acre", area, "1 to 43560000 sq ft"},
		{"0 in", depth, "above 0"},
		{"90 in", depth, "60 in"},
		{"1/0 in", depth, "no unit"},
		{"3000 lb/1000 sq ft", rate, "believable"},
		{"101 %", percent, "believable"},
		{"18-24", grade, "three numbers"},
		{"18-24-twelve", grade, "not a number"},
		{"50-40-30", grade, "120 %"},
		{strings.Repeat("1", 500) + " ft2", area, "plain number"},
	} {
		err := tt.parse(tt.text)
		var q *QuantityError
		if !errors.As(err, &q) || !strings.Contains(err.Error(), tt.says) {
			t.Errorf("%q: %v, want a quantity error with %q", tt.text, err, tt.says)
		} else if q.Hint == "" {
			t.Errorf("%q: no hint", tt.text)
		}
	}
}

func FuzzQuantity(f *testing.F) {
	for _, s := range []string{"2,600 ft2", "320 m²", "1/4 acre", "6 2/3 in", "0.7 lb/1000 sq ft", "18-24-12", "2.1 %", "28 lb/acre in 6.67 in", "32 ppm P2O5", "1.9 meq/100 g", "-280 ft", "1e308", "\xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		sound := func(what string, x float64, err error, low, high float64) {
			switch {
			case err != nil && x != 0:
				t.Errorf("%s of %q: %v beside %v", what, text, x, err)
			case err == nil && !(x >= low && x <= high):
				t.Errorf("%s of %q: %v outside its bounds", what, text, x)
			}
		}
		area, err := ParseArea(text)
		sound("area", float64(area), err, 1, 1000*SquareFeetPerAcre)
		weight, err := ParseWeight(text)
		sound("weight", float64(weight), err, 0, 1e6)
		volume, err := ParseVolume(text)
		sound("volume", float64(volume), err, 0, 1e5)
		depth, err := ParseDepth(text)
		sound("depth", float64(depth), err, 0, 60)
		length, err := ParseLength(text)
		sound("length", float64(length), err, 0, 1e6)
		rate, err := ParseRate(text)
		sound("rate", float64(rate), err, 0, 2000)
		density, err := ParseDensity(text)
		sound("density", float64(density), err, 5, 25)
		watering, err := ParseWatering(text)
		sound("watering", float64(watering), err, 0, 10)
		percent, err := ParsePercent(text)
		sound("percent", float64(percent), err, 0, 100)
		weeks, err := ParseWeeks(text)
		sound("weeks", float64(weeks), err, 0, 104)
		coverage, err := ParseCoverage(text)
		sound("coverage", float64(coverage), err, 10, 20000)
		grade, err := ParseAnalysis(text)
		sound("analysis", float64(grade.N+grade.P2O5+grade.K2O), err, 0, 100)
		if _, err := ParseElevation(text); err != nil && err.Error() == "" {
			t.Errorf("elevation of %q: an error without words", text)
		}
	})
}

func TestNearestName(t *testing.T) {
	for _, tt := range []struct{ got, want string }{
		{"fescue", "tall fescue, fine fescue"},
		{"Kentucky Blugrass", "Kentucky bluegrass"},
		{"ryegras", "perennial ryegrass"},
		{"zoysia", "zoysiagrass"},
		{"bermuda grass", "bermudagrass"},
		{"st augustine", "St. Augustinegrass"},
	} {
		if got := NearestName(tt.got, GrassNames()); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.got, got, tt.want)
		}
	}
	if got := NearestName("sampld", []string{"sampled", "depth"}); got != "sampled" {
		t.Errorf("sampld: %q", got)
	}
}
