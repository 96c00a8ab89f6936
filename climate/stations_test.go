package climate

import (
	"compress/gzip"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"sync"
	"testing"
)

// normalsStation is a station of the US Climate Normals 1981-2010 with its
// published freeze days and degree days; -1 where not published.
type normalsStation struct {
	id, state, zone               string
	lat, lon                      float64
	elevation                     Meters
	highs, lows                   []Fahrenheit
	ff50, ff90, lf50, lf90, gdd50 float64
}

func (s normalsStation) place() Place {
	return Place{State: s.state, Latitude: &s.lat, Highs: s.highs, Lows: s.lows}
}

// stations reads the stations used: all 5,912 of the contiguous states.
var stations = sync.OnceValues(func() (all []normalsStation, err error) {
	f, err := os.Open("testdata/stations.csv.gz")
	if err != nil {
		return nil, err
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		return nil, err
	}
	records, err := csv.NewReader(z).ReadAll()
	if err != nil {
		return nil, err
	}
	column := map[string]int{}
	for i, name := range records[0] {
		column[name] = i
	}
	for _, r := range records[1:] {
		n := func(name string) float64 {
			s := r[column[name]]
			if s == "" {
				return -1
			}
			x, e := strconv.ParseFloat(s, 64)
			if e != nil {
				err = e
			}
			return x
		}
		s := normalsStation{id: r[column["id"]], state: r[column["state"]], zone: r[column["zone"]],
			lat: n("lat"), lon: n("lon"), elevation: Meters(n("elev_m")),
			ff50: n("ff50"), ff90: n("ff90"), lf50: n("lf50"), lf90: n("lf90"), gdd50: n("gdd50")}
		for m := 1; m <= 12; m++ {
			s.highs = append(s.highs, Fahrenheit(n(fmt.Sprintf("tx%02d", m))))
			s.lows = append(s.lows, Fahrenheit(n(fmt.Sprintf("tn%02d", m))))
		}
		all = append(all, s)
	}
	return all, err
})

func allStations(t testing.TB) []normalsStation {
	t.Helper()
	all, err := stations()
	if err != nil || len(all) != 5912 {
		t.Fatal(len(all), err)
	}
	return all
}

func stationByID(t testing.TB, id string) normalsStation {
	t.Helper()
	for _, s := range allStations(t) {
		if s.id == id {
			return s
		}
	}
	t.Fatal("no station", id)
	return normalsStation{}
}

func yearOf(t testing.TB, p Place) *Year {
	t.Helper()
	y, err := p.Year()
	if err != nil {
		t.Fatal(err)
	}
	return y
}

// byRule is the station's year by its own normals and the freeze rule alone.
func (s normalsStation) byRule(t testing.TB) *Year {
	y := yearOf(t, s.place())
	y.freezes = medians{}
	return y
}

// biasAndSD are the mean of the errors and their standard deviation about it.
func biasAndSD(errors []float64) (bias, sd float64) {
	for _, e := range errors {
		bias += e / float64(len(errors))
	}
	for _, e := range errors {
		sd += (e - bias) * (e - bias) / float64(len(errors))
	}
	return bias, math.Sqrt(sd)
}

// Freeze dates from each station's own normals against its published medians
// and 90 % dates. [ncei-normals] [model] section 4, with 10 % of slack
func TestFreezeDatesFromOwnNormals(t *testing.T) {
	var first, last, late, early []float64
	west := map[bool][]float64{}
	for _, s := range allStations(t) {
		y := yearOf(t, s.place())
		if y.low.min() >= 34 { // [model] section 4 gives the errors for colder places
			continue
		}
		ff, lf := y.FirstFreeze(), y.LastFreeze()
		if s.ff50 > 0 && !ff.Never {
			first = append(first, ff.D-s.ff50)
			west[y.West] = append(west[y.West], ff.D-s.ff50)
			if s.ff90 > 0 {
				late = append(late, ff.D+eightInTen*ff.YearSD-s.ff90)
			}
		}
		if s.lf50 > 0 && !lf.Never {
			last = append(last, lf.D-s.lf50)
			if s.lf90 > 0 {
				early = append(early, lf.D-eightInTen*lf.YearSD-s.lf90)
			}
		}
	}
	for _, c := range []struct {
		name     string
		errors   []float64
		bias, sd float64 // as measured
	}{
		{"first freeze", first, 0.0, 3.6}, // [model] section 4
		{"first, East", west[false], 0.0, 3.3},
		{"first, West", west[true], 0.0, 4.4},
		{"last freeze", last, -0.2, 4.4},
		{"first, 90 % date", late, 0.0, 4.0},
		{"last, 90 % (early) date", early, -0.2, 4.1},
	} {
		if len(c.errors) < 200 {
			t.Errorf("%s: only %d stations", c.name, len(c.errors))
		}
		bias, sd := biasAndSD(c.errors)
		t.Logf("%s: %d stations, bias %.2f, SD %.2f days", c.name, len(c.errors), bias, sd)
		if math.Abs(bias) > 1 || sd > 5.5 {
			t.Errorf("%s: bias %.2f, SD %.2f days: over 1 and 5.5", c.name, bias, sd)
		}
		near(t, c.name+" bias", bias, c.bias, 0.6)
		near(t, c.name+" SD", sd, c.sd, 0.1*c.sd)
	}
}

// From the table, the errors stay within those measured by leaving the
// station out, and the spread printed for a place is honest: the station's
// median lies within 1.28 SD of the place in about 8 of 10.
func TestFreezeDatesFromTable(t *testing.T) {
	var first, last []float64
	inside, moved, movedInside := 0, []float64{}, 0
	for _, s := range allStations(t) {
		if s.ff50 <= 0 || s.lf50 <= 0 {
			continue
		}
		y := yearOf(t, Place{State: s.state, Hardiness: s.zone})
		ff, lf := y.FirstFreeze(), y.LastFreeze()
		if ff.Never || lf.Never || y.low.min() >= 34 {
			continue
		}
		first, last = append(first, ff.D-s.ff50), append(last, lf.D-s.lf50)
		if math.Abs(ff.D-s.ff50) <= eightInTen*y.errors.firstFreeze {
			inside++
		}
		feet := s.elevation.Feet()
		if y, err := (Place{State: s.state, Hardiness: s.zone, Elevation: &feet}).Year(); err != nil {
			t.Errorf("%s %s: %v", s.id, s.state, err)
		} else if ff := y.FirstFreeze(); !ff.Never {
			moved = append(moved, ff.D-s.ff50)
			if math.Abs(ff.D-s.ff50) <= eightInTen*y.errors.firstFreeze {
				movedInside++
			}
		}
	}
	for name, errors := range map[string][]float64{"first": first, "last": last, "first, moved": moved} {
		bias, sd := biasAndSD(errors)
		t.Logf("%s: %d stations, bias %.2f, SD %.2f days", name, len(errors), bias, sd)
		limit := 7.1 // [model] section 4, left out
		if name == "last" {
			limit = 9.2 // [model] section 4
		}
		if math.Abs(bias) > 1 || sd > limit {
			t.Errorf("%s: bias %.2f, SD %.2f days", name, bias, sd)
		}
	}
	for name, share := range map[string]float64{
		"row":   float64(inside) / float64(len(first)),
		"moved": float64(movedInside) / float64(len(moved)),
	} {
		t.Logf("%s: %.0f %% inside 1.28 SD", name, 100*share)
		if share < 0.75 || share > 0.90 { // 79 % on unseen stations [model] section 3
			t.Errorf("%s: %.0f %% of first freezes inside 1.28 SD", name, 100*share)
		}
	}
}

// A place whose curve stays above the freeze level has no freeze in most
// years, and publishes none. [model] section 4
func TestPlacesThatDoNotFreeze(t *testing.T) {
	published, never, wrong := 0, 0, 0
	for _, s := range allStations(t) {
		if s.ff50 > 0 {
			published++
		}
		if y := s.byRule(t); y.FirstFreeze().Never {
			never++
			if s.ff50 > 0 {
				wrong++
			}
		}
	}
	t.Logf("%d stations without a freeze, %d of them publish one", never, wrong)
	near(t, "share of freezing stations called free of freezes", float64(wrong)/float64(published), 0.044, 0.001)
}

// Growing degree days against the published base-50 totals. [ncei-normals]
// [model] section 2: 12 ± 77, median relative error 1.2 %
func TestDegreeDaysPublished(t *testing.T) {
	var errors, relative []float64
	for i, s := range allStations(t) {
		if s.gdd50 <= 0 || i%4 != 0 { // a quarter is plenty, and quick
			continue
		}
		e := yearOf(t, s.place()).DegreeDays(50) - s.gdd50
		errors = append(errors, e)
		relative = append(relative, math.Abs(e)/s.gdd50)
	}
	bias, sd := biasAndSD(errors)
	slices.Sort(relative)
	median := relative[len(relative)/2]
	t.Logf("%d stations, %.1f ± %.1f, median relative error %.4f", len(errors), bias, sd, median)
	near(t, "bias", bias, 12, 8)
	near(t, "SD", sd, 77, 8)
	near(t, "median relative error", median, 0.012, 0.002)
}

// The monthly means of a fitted cycle come back as they went in, to the
// residual of two harmonics. [model] section 2
func TestCycleResidual(t *testing.T) {
	var mean, high, low []float64
	for _, s := range allStations(t) {
		y := yearOf(t, s.place())
		for m := range 12 {
			mean = append(mean, float64(y.mean.Month(m)-(s.highs[m]+s.lows[m])/2))
			high = append(high, float64(y.high.Month(m)-s.highs[m]))
			low = append(low, float64(y.low.Month(m)-s.lows[m]))
		}
	}
	for name, c := range map[string]struct {
		errors []float64
		rms    float64
	}{"mean": {mean, 0.59}, "high": {high, 0.66}, "low": {low, 0.69}} { // [model] section 2
		bias, sd := biasAndSD(c.errors)
		near(t, name+" bias", bias, 0, 0.001)
		near(t, name+" residual", sd, c.rms*math.Sqrt(12.0/7), 0.3) // rms over 12 or over the 7 degrees left
	}
}

// Five unlike places: the table's dates lie within the printed spread of
// those from the place's own normals.
func TestTableAgreesWithNormals(t *testing.T) {
	for _, id := range []string{"USW00024011", "USW00094846", "USW00024233", "USW00013722", "USW00012839"} {
		s := stationByID(t, id)
		own := yearOf(t, s.place())
		table := yearOf(t, Place{State: s.state, Hardiness: s.zone})
		mine, theirs := own.Events(), table.Events()
		for i, e := range theirs {
			a, b := mine[i].When, e.When
			if a.Never || b.Never {
				continue
			}
			if math.Abs(a.D-b.D) > eightInTen*b.SD {
				t.Errorf("%s %s %s: table %s, normals %s, spread ± %.0f", s.state, s.zone, e.Name, b.Day(), a.Day(), eightInTen*b.SD)
			}
		}
	}
}
