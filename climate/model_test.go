package climate

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
)

// readCSV returns the rows of a testdata file, each as column name to text.
func readCSV(t testing.TB, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	c := csv.NewReader(f)
	c.Comment = '#'
	all, err := c.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	rows := make([]map[string]string, 0, len(all)-1)
	for _, record := range all[1:] {
		row := make(map[string]string, len(record))
		for i, name := range all[0] {
			row[name] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

// num reads a figure; ok is false for a blank.
func num(t testing.TB, row map[string]string, column string) (x float64, ok bool) {
	t.Helper()
	s, has := row[column]
	if !has {
		t.Fatalf("no column %q", column)
	}
	if s == "" {
		return 0, false
	}
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x, true
}

func near(t testing.TB, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.3f, want %.3f within %g", what, got, want, within)
	}
}

// The worked places: from the ten numbers of the two cycles to every date. [model] section 8
func TestWorkedPlaces(t *testing.T) {
	for _, r := range readCSV(t, "places.csv") {
		x := func(column string) float64 { v, _ := num(t, r, column); return v }
		y := newYear("test", r["west"] == "1",
			Cycle{x("mean_f"), x("c1_f"), x("s1_f"), x("c2_f"), x("s2_f")},
			Cycle{x("dtr_mean_f"), x("dtr_c1_f"), x("dtr_s1_f"), x("dtr_c2_f"), x("dtr_s2_f")},
			errorsOfNormals())
		y.latitude = x("lat")
		first, last, ground := y.FirstFreeze(), y.LastFreeze(), y.Ground()
		when := func(column string, w When) {
			want, ok := num(t, r, column)
			if ok == w.Never {
				t.Errorf("%s %s %s: never %v, want %q", r["name"], r["source"], column, w.Never, r[column])
			} else if ok {
				near(t, r["name"]+" "+r["source"]+" "+column, w.D, want, 0.2)
			}
		}
		when("ff50", first)
		when("lf50", last)
		near(t, r["name"]+" ff_sd", first.YearSD, x("ff_sd"), 0.1)
		near(t, r["name"]+" lf_sd", last.YearSD, x("lf_sd"), 0.1)
		near(t, r["name"]+" ff10", first.D-eightInTen*first.YearSD, x("ff10"), 0.2)
		near(t, r["name"]+" lf10", last.D+eightInTen*last.YearSD, x("lf10"), 0.2)
		when("air50_fall", y.AirFalls(50))
		when("air50_spring", y.AirRises(50))
		const ten Inches = 10 / 2.54
		when("s10_spring50", y.SoilRises(ten, 50))
		when("s10_spring55", y.SoilRises(ten, 55))
		when("s10_fall70", y.SoilFalls(ten, 70))
		when("s10_fall60", y.SoilFalls(ten, 60))
		when("s10_fall50", y.SoilFalls(ten, 50))
		when("x5_50", y.SoilFalls(fiveCentimeters, 50))
		when("x5_45", y.SoilFalls(fiveCentimeters, 45))
		when("x5_40", y.SoilFalls(fiveCentimeters, 40))
		when("x5_36", ground.Early)
		near(t, r["name"]+" x5_min", y.soil(fiveCentimeters).min(), x("x5_min"), 0.1)
		when("last_safe", ground.LastSafe)
	}
}

func fromNormals(highs, lows []Fahrenheit, state string, lat float64) Place {
	return Place{State: state, Latitude: &lat, Highs: highs, Lows: lows}
}

func coefficientsNear(t *testing.T, what string, got Cycle, want [5]float64, within float64) {
	t.Helper()
	for i, g := range [5]float64{got.Mean, got.C1, got.S1, got.C2, got.S2} {
		near(t, what+" coefficient "+strconv.Itoa(i), g, want[i], within)
	}
}

// The worked example of a station: Chicago O'Hare. [model] section 8
func TestWorkedStation(t *testing.T) {
	highs := []Fahrenheit{31.0, 35.3, 46.6, 59.0, 70.0, 79.7, 84.1, 81.9, 74.8, 62.3, 48.2, 34.8} // [ncei-normals]
	lows := []Fahrenheit{16.5, 20.1, 29.2, 38.8, 48.3, 58.1, 63.9, 62.9, 54.3, 42.8, 32.4, 20.7}  // [ncei-normals]
	y := yearOf(t, fromNormals(highs, lows, "IL", 41.995))
	coefficientsNear(t, "mean", y.mean.Cycle, [5]float64{49.939, -23.582, -8.050, -1.497, 0.251}, 0.001)
	coefficientsNear(t, "range", y.high.Plus(-1, y.low.Cycle), [5]float64{18.322, -3.463, -0.003, -1.140, -0.800}, 0.001)
	const ten Inches = 10 / 2.54
	for _, c := range []struct {
		day                                 Day
		mean, spread, low, x5, x10, s5, s10 float64
	}{
		{15, 23.91, 13.58, 17.11, 26.31, 27.21, 31.43, 31.52},
		{105, 48.66, 20.48, 38.42, 49.43, 48.75, 49.43, 48.75},
		{196, 73.48, 20.33, 63.32, 74.01, 73.07, 74.01, 73.07},
		{288, 53.45, 18.89, 44.01, 55.71, 56.41, 55.71, 56.41},
		{349, 28.16, 14.47, 20.93, 30.93, 32.17, 31.89, 32.17},
	} {
		at := c.day.String()
		near(t, at+" mean", float64(y.Mean(c.day)), c.mean, 0.006)
		near(t, at+" range", float64(y.High(c.day)-y.Low(c.day)), c.spread, 0.006)
		near(t, at+" low", float64(y.Low(c.day)), c.low, 0.006)
		near(t, at+" X 5 cm", float64(y.SoilX(fiveCentimeters, c.day)), c.x5, 0.006)
		near(t, at+" X 10 cm", float64(y.SoilX(ten, c.day)), c.x10, 0.006)
		near(t, at+" soil 5 cm", float64(y.Soil(fiveCentimeters, c.day)), c.s5, 0.006)
		near(t, at+" soil 10 cm", float64(y.Soil(ten, c.day)), c.s10, 0.006)
	}
	first, last := y.FirstFreeze(), y.LastFreeze()
	near(t, "first freeze", first.D, 290.8, 0.06)
	near(t, "last freeze", last.D, 115.6, 0.06)
	near(t, "first freeze year SD", first.YearSD, 10.5, 0.06)
	near(t, "last freeze year SD", last.YearSD, 11.2, 0.06)
	near(t, "first freeze SD", first.SD, math.Hypot(4, first.YearSD), 1e-9)     // [model] section 7
	near(t, "last freeze SD", last.SD, math.Hypot(4.5, last.YearSD), 1e-9)      // [model] section 7
	near(t, "early first freeze", first.Early(), first.D-1.2816*first.SD, 1e-9) // [model] section 4
	near(t, "late first freeze", first.Late(), first.D+1.2816*first.SD, 1e-9)
	near(t, "soil SD, autumn", y.SoilFalls(2, 50).SD, 9, 1e-9)  // [model] section 7
	near(t, "soil SD, spring", y.SoilRises(2, 50).SD, 10, 1e-9) // [model] section 7
	near(t, "air 50 spring", y.AirRises(50).D, 108.4, 0.06)
	near(t, "air 50 autumn", y.AirFalls(50).D, 295.4, 0.06)
	near(t, "soil 50 spring", y.SoilRises(ten, 50).D, 108.4, 0.06)
	near(t, "soil 50 autumn", y.SoilFalls(ten, 50).D, 302.8, 0.06)
	near(t, "soil 55 spring", y.SoilRises(ten, 55).D, 122.1, 0.06)
	near(t, "last safe day", y.Ground().LastSafe.D, 316.3, 0.06)
	if got := y.Ground().LastSafe.Day(); got != DayOf(11, 12) {
		t.Errorf("last safe day %s, want Nov 12", got)
	}
}

// The worked row of the table, and its move to the station. [model] section 8
func TestWorkedRow(t *testing.T) {
	y := yearOf(t, Place{State: "IL", Hardiness: "6a"})
	coefficientsNear(t, "mean", y.mean.Cycle, [5]float64{51.89, -23.70, -7.33, -1.72, -0.23}, 0.001)
	near(t, "first freeze", y.FirstFreeze().D, 290.9, 0.1)
	near(t, "last freeze", y.LastFreeze().D, 109.5, 0.1)
	const ten Inches = 10 / 2.54
	near(t, "soil 50 spring", y.SoilRises(ten, 50).D, 100.0, 0.1)
	near(t, "soil 50 autumn", y.SoilFalls(ten, 50).D, 307.4, 0.1)
	near(t, "last safe", y.Ground().LastSafe.D, 321.1, 0.1)
	near(t, "least X", y.soil(fiveCentimeters).min(), 27.9, 0.06)

	up := Meters(203).Feet()
	higher := up + Meters(1000).Feet()
	raised := yearOf(t, Place{State: "IL", Hardiness: "6a", Elevation: &higher})
	same := Meters(198).Feet() // the row's own height
	level := yearOf(t, Place{State: "IL", Hardiness: "6a", Elevation: &same})
	near(t, "unmoved mean", level.mean.Mean, 51.89, 0.001)
	near(t, "a kilometre and 5 m up", raised.mean.Mean, 51.89-5.40*1.005, 0.001) // [model] section 3
	// The errors shrink by the factors of section 7.
	near(t, "errors, elevation", level.errors.fall/y.errors.fall, 0.95, 1e-9)
	co := yearOf(t, Place{State: "CO", Hardiness: "6a"})
	feet := Feet(5300)
	co1 := yearOf(t, Place{State: "CO", Hardiness: "6a", Elevation: &feet})
	near(t, "West, elevation", co1.errors.spring/co.errors.spring, 0.8, 1e-9)
	near(t, "West, freezes", co1.errors.lastFreeze/co.errors.lastFreeze, 0.9, 1e-9)
}

// The worked station of the West: Boise. [model] section 8
func TestWorkedWest(t *testing.T) {
	s := stationByID(t, "USW00024131")
	y := yearOf(t, s.place())
	coefficientsNear(t, "mean", y.mean.Cycle, [5]float64{52.472, -20.984, -5.989, -1.143, 3.322}, 0.001)
	near(t, "first freeze", y.FirstFreeze().D, 292.1, 0.06)
	near(t, "last freeze", y.LastFreeze().D, 107.2, 0.06)
	near(t, "X through 40", y.SoilFalls(fiveCentimeters, 40).D, 323.1, 0.06)
	near(t, "early ground freeze", y.Ground().Early.D, 334.5, 0.06)
	near(t, "last safe", y.Ground().LastSafe.D, 316.1, 0.06)
	near(t, "least X", y.soil(fiveCentimeters).min(), 31.35, 0.01)
	near(t, "least soil", float64(y.Soil(fiveCentimeters, wrap(y.soil(fiveCentimeters).coldest))), 32-0.25*(32-31.35), 0.01) // [model] section 5, West
	if !y.West || y.Ground().Kind != GroundMostWinters {
		t.Errorf("west %v, %s", y.West, y.Ground().Kind)
	}
}
