package climate

import (
	"math"
	"testing"
)

// The soil model, fed with the air of the year 2020, against the soil of that
// year at 88 sites. [uscrn] [model] section 5: rms 3.2 °F at 5 cm and 3.1 at
// 10 cm against 15-day means (E 2.9, W 3.7 at 5 cm); bias -0.1.
func TestSoilOf2020(t *testing.T) {
	const ten Inches = 10 / 2.54
	for _, depth := range []struct {
		prefix string
		depth  Inches
		limit  float64
	}{{"s5_", fiveCentimeters, 3.2}, {"s10_", ten, 3.1}} { // [model] section 5
		var all []float64
		for _, r := range readCSV(t, "soil_months_2020.csv") {
			air, complete := monthsOf(t, r, "air")
			if !complete {
				continue
			}
			y := FromCycles(FitCycle(air), Cycle{Mean: 20}, West(r["state"]), 40)
			for m := range 12 {
				want, ok := num(t, r, column(depth.prefix, m))
				if !ok {
					continue
				}
				got := 0.0 // mean over the month's days, as observed
				for d := monthStart[m] + 1; d <= monthStart[m+1]; d++ {
					got += float64(y.Soil(depth.depth, Day(d))) / float64(monthStart[m+1]-monthStart[m])
				}
				all = append(all, got-want)
			}
		}
		bias, sd := biasAndSD(all)
		rms := math.Hypot(bias, sd)
		t.Logf("%s: %d months, bias %.2f, rms %.2f °F", depth.prefix, len(all), bias, rms)
		if len(all) < 900 || math.Abs(bias) > 0.4 || rms > 1.1*depth.limit {
			t.Errorf("%s: %d months, bias %.2f, rms %.2f °F", depth.prefix, len(all), bias, rms)
		}
	}
}

func column(prefix string, m int) string {
	return prefix + string(rune('0'+(m+1)/10)) + string(rune('0'+(m+1)%10))
}

func monthsOf(t *testing.T, r map[string]string, prefix string) (v [12]Fahrenheit, complete bool) {
	for m := range v {
		x, ok := num(t, r, column(prefix, m))
		if !ok {
			return v, false
		}
		v[m] = Fahrenheit(x)
	}
	return v, true
}

// Whether the ground freezes, from the table, against the sites of 2020 that
// had frozen soil months. [uscrn] [model] section 6
func TestGroundKindOf2020(t *testing.T) {
	right, all := 0, 0
	for _, r := range readCSV(t, "soil_months_2020.csv") {
		soil, complete := monthsOf(t, r, "s5_")
		y, err := Place{State: r["state"], Hardiness: r["zone"]}.Year()
		if !complete || err != nil {
			continue
		}
		all++
		coldest := soil[0]
		for _, v := range soil {
			coldest = min(coldest, v)
		}
		kind := y.Ground().Kind
		if coldest < 31.5 && kind == GroundMostWinters || coldest >= 31.5 && coldest < 40 && kind != GroundNever || coldest >= 40 && kind != GroundMostWinters {
			right++
		}
	}
	t.Logf("%d of %d sites", right, all)
	if all < 60 || float64(right) < 0.85*float64(all) {
		t.Errorf("%d of %d sites as expected", right, all)
	}
}

func TestDepthOutsideTheModel(t *testing.T) {
	for depth, ok := range map[Inches]bool{0.9: false, 1: true, 2: true, 6: true, 6.1: false, Inches(math.NaN()): false, -2: false} {
		if err := CheckDepth(depth); (err == nil) != ok {
			t.Errorf("%g in: %v", float64(depth), err)
		}
	}
	y := yearOf(t, Place{State: "OH", Hardiness: "6a"})
	defer func() {
		if recover() == nil {
			t.Error("a depth of 20 in must not be answered")
		}
	}()
	y.Soil(20, 1)
}

// Deeper soil swings less and later; below freezing it is held back.
func TestSoilLaws(t *testing.T) {
	for _, p := range []Place{{State: "ND", Hardiness: "4a"}, {State: "OH", Hardiness: "6a"}, {State: "FL", Hardiness: "10b"}, {State: "WA", Hardiness: "8b"}} {
		y := yearOf(t, p)
		a, b := y.soil(1), y.soil(6)
		if !(b.max() < a.max() && b.min() > a.min() && b.warmest > a.warmest) {
			t.Errorf("%s: soil at 6 in does not lag that at 1 in", p.State)
		}
		for d := Day(1); d <= 365; d++ {
			x, s := y.SoilX(2, d), y.Soil(2, d)
			if x >= 32 && s != x || x < 32 && !(s > x && s < 32) {
				t.Fatalf("%s %s: soil %v from %v", p.State, d, s, x)
			}
		}
		if w := y.SoilFalls(2, 31.9); !w.Never {
			near(t, p.State+" soil on the day it falls through 31.9", float64(y.limited(Fahrenheit(y.soil(2).At(w.D)))), 31.9, 0.01)
		}
	}
}
