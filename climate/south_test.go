package climate

import (
	"testing"
	"time"
)

// Canberra Airport, Australia (35.3 S, 577 m), long-term means since 1939,
// Bureau of Meteorology station 070014, °C: from memory; the Bureau's monthly
// summary of June 2007 gives 12.2 and 1.0 for June, and the Australian Bureau
// of Statistics 19.6 and 6.4 for the year.
var (
	canberraHighs = [12]Celsius{28.0, 27.1, 24.5, 20.0, 15.6, 12.3, 11.4, 13.0, 16.2, 19.4, 22.7, 26.1}
	canberraLows  = [12]Celsius{13.2, 13.1, 10.7, 6.7, 3.2, 1.0, -0.1, 1.0, 3.3, 6.1, 8.8, 11.4}
)

func canberra() Place {
	p := Place{Latitude: new(-35.3)}
	for m := range 12 {
		p.Highs = append(p.Highs, canberraHighs[m].Fahrenheit())
		p.Lows = append(p.Lows, canberraLows[m].Fahrenheit())
	}
	return p
}

// In the South autumn is in April. Canberra's frosts run from about April or
// May to October.
func TestSouthernPlace(t *testing.T) {
	y := yearOf(t, canberra())
	if !y.Southern {
		t.Error("not taken as southern")
	}
	near(t, "year's mean high", float64((y.high.Cycle.Mean-32)/1.8), 19.6, 0.2)
	near(t, "year's mean low", float64((y.low.Cycle.Mean-32)/1.8), 6.4, 0.2)
	for _, c := range []struct {
		name     string
		w        When
		from, to time.Month
	}{
		{"first freeze", y.FirstFreeze(), 4, 5},
		{"last freeze", y.LastFreeze(), 9, 11},
		{"growth slows", y.GrowthSlows(Cool), 5, 6},
		{"growth begins", y.GrowthBegins(Cool), 7, 8},
		{"soil falls through 50", y.SoilFalls(2, 50), 5, 6},
		{"soil rises through 50", y.SoilRises(2, 50), 7, 9},
	} {
		if m := c.w.Day().Month(); c.w.Never || m < c.from || m > c.to {
			t.Errorf("%s: %s, want month %d to %d", c.name, c.w.Day(), c.from, c.to)
		}
	}
	if w := y.SeedWindow(Cool); !w.Main.OK || w.Main.Open.Day().Month() < 2 || w.Main.Close.Day().Month() > 4 || !w.Spring.OK || w.Spring.Open.Day().Month() < 7 {
		t.Errorf("sowing %s to %s; spring from %s", w.Main.Open.Day(), w.Main.Close.Day(), w.Spring.Open.Day())
	}
	if y.Coldest().Month() != time.July || y.Warmest().Month() != time.January {
		t.Errorf("coldest %s, warmest %s", y.Coldest(), y.Warmest())
	}
}

// The same climate half a year later gives the same dates half a year later:
// nothing knows the calendar.
func TestSouthMirrorsNorth(t *testing.T) {
	for _, s := range allStations(t)[:3000] {
		if s.ff50 < 0 {
			continue
		}
		north := yearOf(t, Place{Latitude: &s.lat, Highs: s.highs, Lows: s.lows})
		south := *north
		turn := func(c curve) curve { return newCurve(c.Cycle.delayed(c.Mean, 1, daysPerYear/2.0)) }
		south.mean, south.low, south.high = turn(north.mean), turn(north.low), turn(north.high)
		south.freezes = medians{}
		south.pairFreezes()
		a, b := north.Events(), south.Events()
		for i := range a {
			if a[i].When.Never != b[i].When.Never || !a[i].When.Never && apartInYear(a[i].When.D+daysPerYear/2.0, b[i].When.D) > 0.1 {
				t.Fatalf("%s %s: %+v and %+v", s.id, a[i].Name, a[i].When, b[i].When)
			}
		}
		if a, b := north.FreezeOdds(260, 30), south.FreezeOdds(wrap(260+182), 30); a-b > 0.05 || b-a > 0.05 {
			t.Fatalf("%s: odds %.2f and %.2f", s.id, a, b)
		}
	}
}

func apartInYear(a, b float64) float64 {
	d := a - b
	for d > daysPerYear/2.0 {
		d -= daysPerYear
	}
	for d < -daysPerYear/2.0 {
		d += daysPerYear
	}
	return max(d, -d)
}

// Without a latitude the coldest month tells the hemisphere.
func TestHemisphereFromTheMonths(t *testing.T) {
	p := canberra()
	p.Latitude = nil
	if y := yearOf(t, p); !y.Southern {
		t.Error("not taken as southern")
	}
	p.Latitude = new(35.3) // the sign forgotten
	if y := yearOf(t, p); len(y.Notes) == 0 {
		t.Error("nothing said about July cold at 35 north")
	}
}
