package main

import (
	"bytes"
	"encoding/csv"
	"io"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

const (
	stationFile = "../../climate/testdata/stations.csv.gz"
	zoneFile    = "testdata/zones.csv"
	shipped     = "../../climate/data/hardiness.csv"
)

// The shipped table follows from the stations and the zones, to one unit in
// the last digit (processors differ in the last bit).
func TestRebuildGivesTheShippedTable(t *testing.T) {
	var b bytes.Buffer
	if err := run(&b, stationFile, zoneFile); err != nil {
		t.Fatal(err)
	}
	got, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	f, err := os.Open(shipped)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	want, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(got) != len(want) {
		t.Fatalf("%d rows, shipped %d", len(got), len(want))
	}
	for i := range want {
		for j, w := range want[i] {
			if !sameFigure(got[i][j], w) {
				t.Errorf("row %d %s %s, %s: %s, shipped %s", i+1, want[i][0], want[i][1], want[0][j], got[i][j], w)
			}
		}
	}
}

// The packed stations follow from the plain file byte for byte; so do the
// packed ZIP codes, where their plain file is at hand.
func TestPackGivesTheShippedFiles(t *testing.T) {
	for _, c := range []struct {
		name, from, shipped string
		pack                func(io.Writer, string) error
	}{
		{"stations", stationFile, "../../climate/data/stations.bin", packStations},
		{"zips", "../../../shared/reference/climate/zips.csv.gz", "../../climate/data/zips.bin", packZIPs},
	} {
		t.Run(c.name, func(t *testing.T) {
			if _, err := os.Stat(c.from); c.name == "zips" && err != nil {
				t.Skip("the plain ZIP list is not part of the project: see climate/data/README.md")
			}
			var b bytes.Buffer
			if err := c.pack(&b, c.from); err != nil {
				t.Fatal(err)
			}
			want, err := os.ReadFile(c.shipped)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(b.Bytes(), want) {
				t.Errorf("%d bytes differ from the %d shipped", b.Len(), len(want))
			}
		})
	}
}

// A list small enough to check by hand is packed in the layout described. Where two rows
// have the same code, the one with a state is kept.
func TestPackZIPs(t *testing.T) {
	list := "zip,place,state,county,lat,lon\n00501,Holtsville,NY,Suffolk,40.82,-73.05\n96860,FPO AA,,,21.34,-157.98\n96860,Jbphh,HI,Honolulu,21.32,-157.87\n"
	name := filepath.Join(t.TempDir(), "z.csv")
	if err := os.WriteFile(name, []byte(list), 0o600); err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := packZIPs(&b, name); err != nil {
		t.Fatal(err)
	}
	got := b.Bytes()
	text := "Holtsville\nHonolulu\nJbphh\nSuffolk\n"
	if want := 16 + 2*1001 + 2 + 2*8 + 2*4 + 4 + len(text); len(got) != want || !bytes.HasSuffix(got, []byte(text)) {
		t.Errorf("%d bytes, want %d: %q", len(got), want, got)
	}
	if n := got[0]; n != 2 || got[16+2*1001] != 1 || got[16+2*1001+1] != 60 {
		t.Errorf("%d ZIP codes, last digits %v", n, got[16+2*1001:16+2*1001+2])
	}
	for _, bad := range []string{"zip,place,state,county,lat,lon\n501,Holtsville,NY,Suffolk,40.82,-73.05\n", "zip,place,state,county,lat,lon\n00501,Holtsville,New York,Suffolk,40.82,-73.05\n"} {
		if err := os.WriteFile(name, []byte(bad), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := packZIPs(io.Discard, name); err == nil {
			t.Errorf("packed %q", bad)
		}
	}
}

func sameFigure(a, b string) bool {
	if a == b {
		return true
	}
	x, errX := strconv.ParseFloat(a, 64)
	y, errY := strconv.ParseFloat(b, 64)
	if errX != nil || errY != nil {
		return false
	}
	_, decimals, _ := strings.Cut(b, ".")
	return math.Abs(x-y) < 1.5*math.Pow10(-max(len(decimals), 1))
}

// The weights of the additive model are those by which package climate moves a row from one
// half-zone to another. [model] section 3
func TestAdditiveModel(t *testing.T) {
	s, err := readStations(stationFile)
	if err != nil {
		t.Fatal(err)
	}
	if len(s) != 5912 { // [model] opening
		t.Fatalf("%d stations", len(s))
	}
	m, err := fitAdditive(s)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ got, want float64 }{
		{m.b.mean.Mean, 4.373}, {m.b.mean.C1, 1.488}, {m.b.spread.Mean, -1.785}, {m.b.spread.S2, -0.220}, // [model] section 3
		{m.q.mean.Mean, 0.109}, {m.q.mean.C1, 0.178}, {m.q.spread.Mean, -0.278}, {m.q.spread.S2, 0.040}, // [model] section 3
	} {
		if math.Abs(c.got-c.want) > 0.0006 {
			t.Errorf("%.4f, want %.3f", c.got, c.want)
		}
	}
}

const head = "state,lat,lon,elev_m,zone,tx01,tx02,tx03,tx04,tx05,tx06,tx07,tx08,tx09,tx10,tx11,tx12,tn01,tn02,tn03,tn04,tn05,tn06,tn07,tn08,tn09,tn10,tn11,tn12,ff50,lf50\n"

func stationLine(state, zone string, shift float64) string {
	line := state + ",40,-90,200," + zone
	for _, base := range []float64{0, -20} {
		for _, v := range []float64{33, 37, 48, 61, 72, 81, 85, 83, 76, 64, 49, 36} {
			line += "," + strconv.FormatFloat(v+base+shift, 'f', 1, 64)
		}
	}
	return line + ",285,118\n"
}

func TestBadInputIsNamed(t *testing.T) {
	good := head + stationLine("OH", "6a", 0) + stationLine("OH", "6b", 2) + stationLine("OH", "7a", 5)
	zones := "state,zone,zips,lat,lon\nOH,6a,10,,\n"
	for name, c := range map[string]struct{ stations, zones, want string }{
		"no column":        {strings.Replace(good, "tn12", "other", 1), zones, "no column tn12"},
		"not a number":     {strings.Replace(good, ",200,", ",high,", 1), zones, `:2: elev_m: "high" is not a number`},
		"blank month":      {strings.Replace(good, ",33.0,", ",,", 1), zones, "tx01 is blank"},
		"bad zone":         {strings.Replace(good, "6a", "14a", 1), zones, "14a"},
		"one zone only":    {head + stationLine("OH", "6a", 0) + stationLine("OH", "6a", 1), zones, "too few zones"},
		"state unknown":    {good, zones + "IN,6a,3,,\n", "no station in IN"},
		"nowhere":          {good, zones + "OH,5b,3,,\n", "OH 5b has neither a station nor a position"},
		"short line":       {good + "OH,40\n", zones, "wrong number of fields"},
		"empty file":       {"", zones, "no header"},
		"position by half": {good, zones + "OH,5b,3,41,\n", "lon is blank"},
	} {
		dir := t.TempDir()
		s, z := filepath.Join(dir, "s.csv"), filepath.Join(dir, "z.csv")
		if err := os.WriteFile(s, []byte(c.stations), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(z, []byte(c.zones), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := run(io.Discard, s, z); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want %q", name, err, c.want)
		}
	}
}
