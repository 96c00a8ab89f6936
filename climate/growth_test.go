package climate

import "testing"

// Growth potential as published in tables and scripts.
func TestGrowthPotentialPublished(t *testing.T) {
	for _, c := range []struct {
		mean Celsius
		s    Season
		want float64
	}{
		{0, Cool, 0.0013}, {5, Cool, 0.0243}, {10, Cool, 0.1915}, {15, Cool, 0.6615}, {18, Cool, 0.9360}, // [gp-code]
		{20, Cool, 1}, {22, Cool, 0.9360}, {25, Cool, 0.6615}, {30, Cool, 0.1915}, {35, Cool, 0.0243}, // [gp-code]
		{5, Warm, 0.0010}, {10, Warm, 0.0111}, {15, Warm, 0.0734}, {20, Warm, 0.2909}, {25, Warm, 0.6926}, // [gp-code]
		{28, Warm, 0.9122}, {31, Warm, 1}, {35, Warm, 1}, // [gp-code] [gp-pace]
	} {
		near(t, c.s.String()+" growth", GrowthPotential(c.mean.Fahrenheit(), c.s), c.want, 0.0005)
	}
}

// The year of Kings Park, New York, as printed in whole percent with an
// optimum of 68 °F and a width of 10; 5.5 °C is 9.9 °F. [ny-nmp-2019]
func TestGrowthPotentialYear(t *testing.T) {
	mean := [12]Fahrenheit{30.4, 32.9, 39.6, 50.0, 59.7, 69.0, 74.1, 73.0, 66.1, 55.3, 45.9, 35.8} // [ny-nmp-2019]
	percent := [12]float64{0, 0, 2, 20, 71, 100, 83, 88, 98, 45, 9, 1}                             // [ny-nmp-2019]
	for m := range 12 {
		near(t, "month", 100*GrowthPotential(mean[m], Cool), percent[m], 1.2)
	}
}

// The temperatures of the growth thresholds: a potential of 0.2 lies about a
// mean of 50 °F for cool-season grass. [soldat-fall]
func TestGrowthThresholds(t *testing.T) {
	near(t, "cool 0.20", float64(Cool.growthAt(littleTaken)), 50, 0.5)
	for _, s := range []Season{Cool, Warm} {
		for _, p := range []float64{almostNone, littleTaken} {
			near(t, s.String(), GrowthPotential(s.growthAt(p), s), p, 1e-9)
		}
	}
}

// At Madison a fifth of the soluble nitrogen put down in mid October was taken up: the day
// on which growth slows lies about then. [soldat-fall]
func TestGrowthSlowsAtMadison(t *testing.T) {
	y := yearOf(t, Place{State: "WI", Hardiness: "5b"})
	near(t, "growth slows", y.GrowthSlows(Cool).D, float64(DayOf(10, 15)), 7)
	near(t, "growth in mid October", y.Growth(DayOf(10, 15), Cool), 0.20, 0.06)
	near(t, "growth in mid September", y.Growth(DayOf(9, 15), Cool), 0.80, 0.10)
}

func TestHeat(t *testing.T) {
	if from, to, ok := yearOf(t, Place{State: "NC", Hardiness: "8a"}).Heat(Cool); !ok || from.Month() < 5 || from.Month() > 6 || to.Month() < 8 || to.Month() > 9 {
		t.Errorf("North Carolina 8a: %s to %s, %v", from, to, ok)
	}
	y := yearOf(t, Place{State: "NC", Hardiness: "8a"})
	from, to, _ := y.Heat(Cool)
	if y.High(from) < hot || y.High(from-1) >= hot || y.High(to) < hot || y.High(to+1) >= hot {
		t.Errorf("heat from %s (%v) to %s (%v)", from, y.High(from), to, y.High(to))
	}
	if _, _, ok := y.Heat(Warm); ok {
		t.Error("warm-season grass has no heat to fear")
	}
	if _, _, ok := yearOf(t, Place{State: "ND", Hardiness: "4a"}).Heat(Cool); ok {
		t.Error("North Dakota 4a has no normal high of 85 °F")
	}
}
