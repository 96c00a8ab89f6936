package climate

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
)

// The station's file as the weather service lays it out, with many more
// columns, quotes, padded values and codes for missing ones.
func TestParseNormalsFile(t *testing.T) {
	f, err := os.Open("testdata/normals_station.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	highs, lows, err := ParseNormals(f)
	if err != nil {
		t.Fatal(err)
	}
	s := stationByID(t, "USW00094846")
	if !slices.Equal(highs, s.highs) || !slices.Equal(lows, s.lows) {
		t.Errorf("highs %v, lows %v", highs, lows)
	}
}

var (
	exampleHighs = [12]string{"31.0", "35.3", "46.6", "59.0", "70.0", "79.7", "84.1", "81.9", "74.8", "62.3", "48.2", "34.8"}
	exampleLows  = [12]string{"16.5", "20.1", "29.2", "38.8", "48.3", "58.1", "63.9", "62.9", "54.3", "42.8", "32.4", "20.7"}
)

// normalsCSV writes a file; edit may change a month's date, high and low.
func normalsCSV(header string, edit func(m int, date, high, low string) (string, string, string)) string {
	var b strings.Builder
	b.WriteString(header + "\n")
	for m := range 12 {
		date, high, low := edit(m, fmt.Sprintf("%02d", m+1), exampleHighs[m], exampleLows[m])
		fmt.Fprintf(&b, "%s,%s,%s\n", date, high, low)
	}
	return b.String()
}

const normalsHeader = "DATE,MLY-TMAX-NORMAL,MLY-TMIN-NORMAL"

func same(_ int, d, h, l string) (string, string, string) { return d, h, l }

func TestParseNormalsForms(t *testing.T) {
	tenths := func(s string) string { return strings.Replace(s, ".", "", 1) }
	for name, text := range map[string]string{
		"plain":          normalsCSV(normalsHeader, same),
		"month column":   normalsCSV("month,mly-tmax-normal,mly-tmin-normal", func(m int, d, h, l string) (string, string, string) { return fmt.Sprint(m + 1), h, l }),
		"year and month": normalsCSV(normalsHeader, func(m int, d, h, l string) (string, string, string) { return "2010" + d, h, l }),
		"dashed":         normalsCSV(normalsHeader, func(m int, d, h, l string) (string, string, string) { return "2006-" + d, h, l }),
		"tenths":         normalsCSV(normalsHeader, func(m int, d, h, l string) (string, string, string) { return d, tenths(h), tenths(l) }),
		"tenths, letters": normalsCSV(normalsHeader, func(m int, d, h, l string) (string, string, string) {
			return d, tenths(h) + "S", tenths(l) + "C"
		}),
		"letters":     normalsCSV(normalsHeader, func(m int, d, h, l string) (string, string, string) { return d, h + "R", l + "Q" }),
		"padded":      normalsCSV(normalsHeader, func(m int, d, h, l string) (string, string, string) { return d, `"     ` + h + `"`, `"  ` + l + `"` }),
		"mark, CRLF":  "\ufeff" + strings.ReplaceAll(normalsCSV(normalsHeader, same), "\n", "\r\n"),
		"quoted head": normalsCSV(`"DATE","MLY-TMAX-NORMAL","MLY-TMIN-NORMAL"`, same),
		"title above": "Monthly normals\n" + normalsCSV(normalsHeader, same) + "\n\n",
	} {
		highs, lows, err := ParseNormals(strings.NewReader(text))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for m := range 12 {
			near(t, name+" high", float64(highs[m]), atof(exampleHighs[m]), 1e-9)
			near(t, name+" low", float64(lows[m]), atof(exampleLows[m]), 1e-9)
		}
	}
}

func atof(s string) float64 {
	var x float64
	fmt.Sscan(s, &x)
	return x
}

func TestParseNormalsProblems(t *testing.T) {
	at := func(month int, high, low string) string {
		return normalsCSV(normalsHeader, func(m int, d, h, l string) (string, string, string) {
			if m+1 == month {
				return d, high, low
			}
			return d, h, l
		})
	}
	for name, c := range map[string]struct{ text, want string }{
		"empty":         {"", "no header with MLY-TMAX-NORMAL"},
		"other file":    {"a,b\n1,2\n", "no header with MLY-TMAX-NORMAL"},
		"no low column": {"DATE,MLY-TMAX-NORMAL\n01,3\n", "line 1: the header has no column MLY-TMIN-NORMAL"},
		"no month":      {"X,MLY-TMAX-NORMAL,MLY-TMIN-NORMAL\n", "no column DATE or month"},
		"missing":       {at(3, "-9999", "29.2"), "line 4: MLY-TMAX-NORMAL: -9999 is the code"},
		"missing, 1":    {at(3, "-9999.0", "29.2"), "is the code for a value that is missing"},
		"trace":         {at(4, "59.0", "-7777"), "line 5: MLY-TMIN-NORMAL: -7777 is the code"},
		"trace, tenths": {at(4, "59.0", "-777.7"), "-777.7 is the code"},
		"undefined":     {at(1, "-6666", "1"), "line 2: MLY-TMAX-NORMAL: -6666"},
		"blank":         {at(12, "", "20.7"), "line 13: MLY-TMAX-NORMAL: no value"},
		"word":          {at(12, "cold", "20.7"), `"cold" is not a number`},
		"infinite":      {at(12, "1e999", "20.7"), "is not a number"},
		"highs under":   {at(7, "63.9", "84.1"), "month 7: the low, 84.1, is not below the high, 63.9"},
		"twelve of one": {normalsCSV(normalsHeader, func(m int, d, h, l string) (string, string, string) { return "07", h, l }), "line 3: month 7 is given a second time, first on line 2"},
		"thirteen":      {normalsCSV(normalsHeader, same) + "13,1,0\n", `line 14: "13" is no month`},
		"eleven":        {strings.Join(strings.Split(normalsCSV(normalsHeader, same), "\n")[:12], "\n"), "month 12 is missing"},
		"two stations":  {"STATION," + normalsHeader + "\nA,01,31,16\nB,02,35,20\n", "line 3: a second station, B, after A"},
		"short row":     {normalsHeader + "\n01\n", "month 2 is missing"},
		"Celsius": {normalsCSV(normalsHeader, func(m int, d, h, l string) (string, string, string) {
			return d, fmt.Sprintf("%.1f", (atof(h)-32)/1.8), fmt.Sprintf("%.1f", (atof(l)-32)/1.8)
		}), "degrees Celsius use mean_high_c"},
		"hundreds": {at(2, "353.0", "20.1"), "is no monthly mean in °F"},
	} {
		if _, _, err := ParseNormals(strings.NewReader(c.text)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}

func FuzzNormals(f *testing.F) {
	f.Add(normalsCSV(normalsHeader, same))
	f.Add(normalsCSV(normalsHeader, func(m int, d, h, l string) (string, string, string) { return d, h + "S", "-7777" }))
	f.Add("\ufeff\"DATE\",\"MLY-TMAX-NORMAL\"\n\"01\",\"")
	f.Fuzz(func(t *testing.T, text string) {
		highs, lows, err := ParseNormals(strings.NewReader(text))
		if err != nil {
			if err.Error() == "" {
				t.Error("an error without words")
			}
			return
		}
		y, err := Place{Highs: highs, Lows: lows}.Year()
		if err != nil {
			t.Fatalf("accepted, then refused: %v", err)
		}
		for _, e := range y.Events() {
			if e.When.D != e.When.D || e.When.SD != e.When.SD || e.When.Words == "" {
				t.Errorf("%s: %+v", e.Name, e.When)
			}
		}
	})
}
