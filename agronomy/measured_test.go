package agronomy

import (
	"math"
	"strings"
	"testing"
)

// The sides of a lawn make its area: products worked by hand; 1 m is 3.28084 ft by
// definition, so 10 m by 20 m is 2152.78 sq ft.
func TestAreaFromItsSides(t *testing.T) {
	for text, want := range map[string]float64{
		"40 x 65 ft":                     2600,
		"40 x 65 - 24 x 30 ft":           2600 - 720,
		"40ft x 65ft - 24 ft x 30 ft":    1880,
		"40 × 65 − 24 × 30 ft":           1880,
		"40 by 65 ft":                    2600,
		"10 x 20 m":                      2152.782,
		"40 x 65 + 10 x 10 - 24 x 30 ft": 1980,
		"1,000 x 2 ft":                   2000,
		"10 m x 20 ft":                   656.168,
		"2600 sq ft":                     2600,
	} {
		got, err := ParseArea(text)
		if err != nil || math.Abs(float64(got)-want) > 0.001 {
			t.Errorf("%q: %v sq ft, %v; want %v", text, float64(got), err, want)
		}
	}
	for text, says := range map[string]string{
		"40 x 65":                "unit",
		"40 x ft":                "not a length",
		"40 x 65 x 2 ft":         "a length and a width",
		"24 x 30 - 40 x 65 ft":   "believable",
		"40 x 65 - 40 x 65 ft":   "believable",
		"40 x 65 lb":             "unit of length",
		"40 x 65 - ft":           "a length and a width",
		"99999999 x 99999999 ft": "believable",
	} {
		if got, err := ParseArea(text); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v, %v; want an error with %q", text, float64(got), err, says)
		}
	}
}
