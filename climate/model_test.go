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

// The worked places: from ten Cycle to every date. [model] section 8
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
