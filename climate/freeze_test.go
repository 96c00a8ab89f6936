package climate

import (
	"strings"
	"testing"
)

// Where freezes come in single nights the rule alone is about twice as
// uncertain as elsewhere. [model] section 4
func TestSingleNightsByRule(t *testing.T) {
	var errors []float64
	for _, s := range allStations(t) {
		y := s.byRule(t)
		w := y.FirstFreeze()
		if y.low.min() <= 34 || w.Never || s.ff50 <= 0 {
			continue
		}
		errors = append(errors, w.D-s.ff50)
		near(t, s.id+" error of the median", y.errors.firstFreeze, 8, 1e-9) // [model] section 4
	}
	_, sd := biasAndSD(errors)
	t.Logf("%d stations, SD %.1f days", len(errors), sd)
	near(t, "SD", sd, 8, 1.5) // [model] section 4
}

// Half-zone 9b has an average yearly low of 25 to 30 °F, so no place in it is
// free of frost: 74 % of the stations of FL, TX and LA there publish a median
// freeze. [usda-zones] [ncei-normals] Wherever the cell's stations publish
// medians there is a first freeze and a last, and the warning of single nights.
func TestNoZoneOfFreezesIsCalledFreeOfThem(t *testing.T) {
	publish, all := 0, 0
	for _, s := range allStations(t) {
		if s.zone == "9b" && (s.state == "FL" || s.state == "TX" || s.state == "LA") {
			all++
			if s.ff50 > 0 {
				publish++
			}
		}
	}
	near(t, "share that publishes", float64(publish)/float64(all), 0.74, 0.05)
	for _, c := range []struct {
		state, zone string
		first, last Day // mean of the cell's published medians, data/hardiness.csv
	}{{"TX", "9b", DayOf(12, 12), DayOf(2, 11)}, {"FL", "9b", DayOf(12, 25), DayOf(2, 5)}, {"LA", "9b", DayOf(12, 16), DayOf(2, 9)},
		{"FL", "10b", DayOf(1, 10), DayOf(1, 13)}} {
		y := yearOf(t, Place{State: c.state, Hardiness: c.zone})
		first, last := y.FirstFreeze(), y.LastFreeze()
		if first.Never || last.Never {
			t.Errorf("%s %s: first %q, last %q", c.state, c.zone, first.Words, last.Words)
			continue
		}
		near(t, c.state+c.zone+" first", float64(first.Day()), float64(c.first), 1)
		near(t, c.state+c.zone+" last", float64(last.Day()), float64(c.last), 1)
		if got := strings.Join(y.Notes, " "); !strings.Contains(got, "single nights") {
			t.Errorf("%s %s: no warning of single nights in %q", c.state, c.zone, got)
		}
	}
	for line := range strings.Lines(hardinessTable) {
		f := strings.Split(line, ",")
		z, err := ParseZone(f[1])
		if lowest, _ := z.Bounds(); err != nil || lowest >= 30 || f[0] == "*" {
			continue
		}
		y := yearOf(t, Place{State: f[0], Hardiness: f[1]})
		if y.FirstFreeze().Never || y.LastFreeze().Never {
			t.Errorf("%s %s, average yearly low under 30 °F, is called free of freezes", f[0], f[1])
		}
	}
}

// The observed medians in the table's rows are as exact as stated: at the stations of the
// East in half-zones where the daily low stays above 34 °F. [model] section 4
func TestSingleNightsFromTable(t *testing.T) {
	var first, last []float64
	for _, s := range allStations(t) {
		y := yearOf(t, Place{State: s.state, Hardiness: s.zone})
		if y.West || !y.inSingleNights() || s.ff50 <= 0 {
			continue
		}
		if ff, lf := y.FirstFreeze(), y.LastFreeze(); !ff.Never {
			first, last = append(first, ff.D-s.ff50), append(last, lf.D-s.lf50)
		}
	}
	for i, errors := range [][]float64{first, last} {
		bias, sd := biasAndSD(errors)
		t.Logf("%d stations, bias %.1f, SD %.1f days", len(errors), bias, sd)
		near(t, "bias", bias, 0, 1)
		claimed := []float64{rowFirst, rowLast}[i]
		near(t, "SD", sd, claimed, 0.1*claimed)
	}
}

// By its own normals McAllen, Texas, has no freeze. The stations around its ZIP, or the row
// of its zone, show that it has; with the normals alone the user is told that the rule
// misses freezes in single nights. [model] section 4
func TestSingleNightsWithOwnNormals(t *testing.T) {
	// McAllen Miller Airport, US Climate Normals 1981-2010, from memory, rounded.
	own := Place{Highs: []Fahrenheit{71, 75, 81, 87, 91, 95, 97, 98, 93, 87, 79, 71}, Lows: []Fahrenheit{51, 54, 60, 66, 72, 75, 76, 76, 73, 66, 58, 51}}
	near, zone := own, own
	near.ZIP = "78501"
	zone.State, zone.Hardiness = "TX", "9b"
	for name, p := range map[string]Place{"with its ZIP": near, "with its zone": zone} {
		y := yearOf(t, p)
		if y.FirstFreeze().Never || y.LastFreeze().Never || !strings.Contains(strings.Join(y.Notes, " "), "single nights") {
			t.Errorf("%s: %v, %v, %q", name, y.FirstFreeze(), y.LastFreeze(), y.Notes)
		}
	}
	own.Lows = []Fahrenheit{46, 49, 55, 62, 68, 72, 73, 73, 70, 62, 53, 46} // a cooler place
	if y := yearOf(t, own); !y.FirstFreeze().Never || !strings.Contains(strings.Join(y.Notes, " "), "a rule that misses freezes in single nights") {
		t.Errorf("by themselves: %v, %q", y.FirstFreeze(), y.Notes)
	}
}
