package sitefile

import (
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/law"
)

var update = flag.Bool("update", false, "write the .want files anew")

func mustRead(t testing.TB, name string) []byte {
	t.Helper()
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func fromTestdata(name string) (io.ReadCloser, error) { return os.DirFS("testdata").Open(name) }

func load(t testing.TB, text string) (*schedule.Site, []schedule.Problem) {
	t.Helper()
	return Load("site.toml", []byte(text), fromTestdata)
}

// A full file comes out as it went in. Spot checks of one value of each kind;
// the mutation tests look at every key.
func TestFullFile(t *testing.T) {
	s, ps := load(t, string(mustRead(t, "testdata/full.toml")))
	for _, p := range ps {
		t.Errorf("%v (%s)", p.Error(), p.Hint)
	}
	if s == nil {
		t.Fatal("no site")
	}
	east, west := s.Areas[0], s.Areas[1]
	lime, starter, liquid := s.Materials[0], s.Materials[1], s.Materials[2]
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"id", s.ID, "alder-court-3k9"},
		{"metric", s.Metric, true},
		{"start", s.Start, schedule.Date{Year: 2026, Month: time.September, Day: 12}},
		{"state", s.Place.State, "OH"},
		{"elevation", *s.Place.Elevation, climate.Feet(900)},
		{"longitude", *s.Place.Longitude, -83.1},
		{"first freeze", s.Place.FirstFreeze, climate.DayOf(time.October, 14)},
		{"days", s.Crew.Days, []time.Weekday{time.Saturday, time.Wednesday}},
		{"away", len(s.Crew.Away), 2},
		{"one day away", s.Crew.Away[1].Days(), 1},
		{"people", s.Crew.People, []schedule.Person{{ID: "mara", Name: "Mara", Absent: []schedule.Span{{From: schedule.Date{Year: 2026, Month: 10, Day: 20}, To: schedule.Date{Year: 2026, Month: 10, Day: 28}}}}, {ID: "tovi", Name: "Tovi"}}},
		{"who", s.Crew.Who, []schedule.Assignment{{Jobs: "lime", Person: "mara"}, {Jobs: "east/potassium", Person: "mara"}, {Jobs: "east", Person: "tovi"}}},
		{"areas in order", []string{east.ID, west.ID}, []string{"east", "west"}},
		{"size", east.Size, agronomy.SquareFeet(2600)},
		{"mixture in order", east.Stand[1].Grass.Name, "fine fescue"},
		{"share", east.Stand[1].Percent, agronomy.Percent(40)},
		{"clippings", east.Clippings, false},
		{"metric size", math.Round(float64(west.Size)), 3444.0},
		{"dormant", west.Dormant && west.Cored, true},
		{"buffer", east.Soil.Buffer, agronomy.Buffer{Method: agronomy.SMP, PH: 6.4}},
		{"acidity", east.Soil.Acidity, agronomy.Meq(2.5)},
		{"texture in the report", east.Soil.Texture, agronomy.SandyLoam},
		{"phosphorus", east.Soil.Phosphorus.PPM, agronomy.PPM(14)},
		{"own optimum, one value", west.Soil.Phosphorus.Wanted.High, agronomy.PPM(30)},
		{"own optimum, found", math.Round(float64(west.Soil.Potassium.PPM)), 117.0},
		{"sieves, coarse first", lime.Fineness[0], material.Sieve{Mesh: 8, Passing: 100}},
		{"packs", lime.OnHand, 1.5},
		{"kind by analysis", starter.Kind, material.FertilizerMaterial},
		{"lasts", starter.Lasts, agronomy.Weeks(8)},
		{"liquid pack", liquid.PackVolume, agronomy.Gallons(2.5)},
		{"local span", s.Local.NoNitrogen[0].Has(law.MonthDay{Month: time.March, Day: 1}), true},
		{"local cap", s.Local.MaxN, 0.7},
		{"sprayer", s.Sprayer, schedule.Sprayer{Tank: 4, Covers: 1000}},
		{"remind", s.Calendar.Remind, []time.Duration{-15 * time.Hour, 7 * time.Hour}},
	} {
		if !reflect.DeepEqual(c.got, c.want) {
			t.Errorf("%s: got %v, want %v", c.what, c.got, c.want)
		}
	}
}

// Each testdata/*.toml has beside it a .want file with the problems to be reported.
func TestProblems(t *testing.T) {
	files, _ := filepath.Glob("testdata/*.toml")
	if len(files) < 10 {
		t.Fatalf("only %d files", len(files))
	}
	for _, f := range files {
		name := strings.TrimSuffix(filepath.Base(f), ".toml")
		t.Run(name, func(t *testing.T) {
			s, ps := Load("site.toml", mustRead(t, f), fromTestdata)
			var b strings.Builder
			for _, p := range ps {
				b.WriteString(p.Error() + "\n")
				if p.Hint != "" {
					b.WriteString("  hint: " + p.Hint + "\n")
				}
			}
			if (s == nil) != schedule.Fatal(ps) {
				t.Errorf("site is nil: %t, fatal: %t", s == nil, schedule.Fatal(ps))
			}
			want := strings.TrimSuffix(f, ".toml") + ".want"
			if *update {
				if err := os.WriteFile(want, []byte(b.String()), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			if got := b.String(); got != string(mustRead(t, want)) {
				t.Errorf("got\n%s\nwant\n%s", got, mustRead(t, want))
			}
		})
	}
}

// Files that are no site file at all.
func TestUnreadable(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		line int
		want string
	}{
		"big":        {strings.Repeat("# filler\n", 1<<20/8), 0, "more than the"},
		"utf-16":     {"\xff\xfet\x00", 1, "UTF-16"},
		"bytes":      {"title = 'x'\n# \xff\n", 2, "not UTF-8"},
		"zero":       {"title = 'x'\n\n\x00", 3, "zero byte"},
		"deep list":  {"title = 'x'\na = " + strings.Repeat("[", 400000), 2, "nested more than"},
		"deep table": {"title = 'x'\n" + strings.Repeat("a.", 200000) + "b = 1", 2, "nested more than"},
		"empty":      {"", 0, "no area"},
		"bare CR":    {"title = 'x'\rstart = 2026-09-12\r", 1, ""},
	} {
		s, ps := load(t, c.text)
		if s != nil || len(ps) == 0 || ps[0].Line != c.line || !strings.Contains(ps[0].Message, c.want) || ps[0].Hint == "" {
			t.Errorf("%s: got %+v", name, ps)
		}
	}
}

// A file with a thousand mistakes ends in a count, not in a thousand lines.
func TestManyProblems(t *testing.T) {
	var b strings.Builder
	for i := range 1000 {
		fmt.Fprintf(&b, "x%d = 1\n", i)
	}
	_, ps := load(t, b.String())
	if last := ps[len(ps)-1]; len(ps) != maxProblems+1 || !strings.Contains(last.Message, "more problems") {
		t.Errorf("%d problems, last %v", len(ps), last)
	}
	b.Reset()
	for i := range maxAreas + 1 {
		fmt.Fprintf(&b, "[area.a%d]\n", i)
	}
	if _, ps = load(t, b.String()); !slices.ContainsFunc(ps, func(p schedule.Problem) bool { return strings.Contains(p.Message, "501 areas") }) {
		t.Errorf("501 areas: %v", ps[0])
	}
}

// CRLF reads as LF does.
func TestLineEnds(t *testing.T) {
	text := string(mustRead(t, "testdata/full.toml"))
	a, _ := load(t, text)
	b, ps := load(t, strings.ReplaceAll(text, "\n", "\r\n"))
	if len(ps) > 0 || !reflect.DeepEqual(a, b) {
		t.Errorf("CRLF differs: %v", ps)
	}
}

// What is left out and has a default is named.
func TestDefaultsAreNamed(t *testing.T) {
	s, ps := load(t, `
title = "Çedar Row, the 2nd"
start = 2026-09-12
[place]
state = "OH"
[area.front]
size = "2600 sq ft"
grass = "tall fescue"
[area.front.soil]
sampled = 2026-08-11
ph = 6.2
[material.urea]
analysis = "46-0-0"
`)
	if s == nil || len(ps) > 0 {
		t.Fatal(ps)
	}
	if s.ID != "edar-row-the-2nd" || !s.Through.IsZero() || s.Areas[0].Care != "medium" || !s.Areas[0].Clippings || s.Areas[0].Name != s.Title {
		t.Errorf("%+v", s)
	}
	said := fmt.Sprint(s.Assumed, s.Areas[0].Assumed)
	for _, want := range []string{"edar-row-the-2nd", "US units", "any day of the week", "urea: no packs", "taken as medium", "taken as returned", "depth of the sample"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not named in %s", want, said)
		}
	}
}

func BenchmarkLoad(b *testing.B) {
	text := mustRead(b, "testdata/three.toml")
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if s, ps := Load("site.toml", text, fromTestdata); s == nil {
			b.Fatal(ps)
		}
	}
}

// A material whose name says that it is a pesticide is taken as one, unless its key
// pesticide says it is none; with that key any material may be one.
func TestPesticideByNameOrKey(t *testing.T) {
	full := string(mustRead(t, "testdata/full.toml"))
	for _, c := range []struct {
		with      string
		pesticide bool
		said      bool
	}{
		{`name = "weed and feed"`, true, true},
		{"name = \"weed and feed\"\npesticide = false", false, false},
		{`name = "seaweed feed"`, false, false},
		{"name = \"seaweed feed\"\npesticide = true", true, false},
	} {
		s, ps := load(t, strings.Replace(full, "[material.starter]\n", "[material.starter]\n"+c.with+"\n", 1))
		if s == nil {
			t.Fatalf("%s: %v", c.with, ps)
		}
		said := strings.Contains(assumed(s), "material starter: pesticide not given, taken as true")
		if s.Materials[1].ID != "starter" || s.Materials[1].Pesticide != c.pesticide || said != c.said {
			t.Errorf("%s: pesticide %t, said %t", c.with, s.Materials[1].Pesticide, said)
		}
	}
}

// Each line of the full file is read into its own place, in the unit of that place.
func TestEveryValue(t *testing.T) {
	s := fullSite(t)
	east, west, stone, starter, liquid := s.Areas[0], s.Areas[1], s.Materials[0], s.Materials[1], s.Materials[2]
	near := func(x, y float64) bool { return math.Abs(x-y) < 1e-6*math.Abs(y) }
	optional := func(r *agronomy.PerThousand) any {
		if r == nil {
			return nil
		}
		return *r
	}
	for _, c := range []struct{ got, want any }{
		{s.Title, "Glimmock green"}, {s.Through, day(2027, 9, 11)}, {s.Place.ZIP, "43017"}, {s.County, "Delaware"}, {s.Place.Hardiness, "6a"}, {*s.Place.Latitude, 40.1}, {s.Place.LastFreeze, climate.DayOf(time.May, 2)},
		{near(float64(s.Water), 9/0.3048), true}, {s.Crew.Paid, true}, {s.Crew.Budget, 120.0}, {s.Crew.JobsPerDay, 2}, {s.Crew.Away, []schedule.Span{{From: day(2026, 10, 3), To: day(2026, 10, 11)}, {From: day(2026, 12, 24), To: day(2026, 12, 24)}}},
		{east.Name, "East lawn"}, {east.Stand[0].Grass.Name, "perennial ryegrass"}, {east.Stand[0].Percent, agronomy.Percent(60)}, {len(east.Stand), 2}, {east.Seeded, day(2026, 8, 24)}, {east.Overseed, day(2027, 9, 5)}, {east.Dormant, false}, {east.Texture, agronomy.SandyLoam},
		{string(east.Care), "low"}, {near(float64(east.Sprinkler), 10/25.4), true}, {east.SolubleOnly, true}, {east.Cored, false}, {east.Sampled, day(2026, 8, 11)}, {east.Received, day(2026, 8, 20)}, {east.Reports == nil, true},
		{east.Soil.Depth, agronomy.Inches(4)}, {east.Soil.Method, agronomy.Mehlich3}, {east.Soil.PH, agronomy.PH(5.1)}, {east.Soil.CEC, agronomy.Meq(7.4)}, {east.Soil.OrganicMatter, agronomy.Percent(2.1)}, {east.Soil.LowerPH, false}, {east.Soil.TargetPH, agronomy.PH(6.5)},
		{east.Soil.Potassium.PPM, agronomy.PPM(61)}, {east.Soil.Calcium.PPM, agronomy.PPM(520)}, {east.Soil.Magnesium.PPM, agronomy.PPM(48)}, {east.Soil.Sulfur.PPM, agronomy.PPM(9)}, {east.Soil.Sodium.PPM, agronomy.PPM(18)}, {east.Soil.Iron.PPM, agronomy.PPM(72)},
		{optional(east.Soil.Printed.Lime), agronomy.PerThousand(42)}, {optional(east.Soil.Printed.Nitrogen), agronomy.PerThousand(3)}, {optional(east.Soil.Printed.Phosphate), agronomy.PerThousand(1)}, {optional(east.Soil.Printed.Potash), agronomy.PerThousand(2)}, // 70 % of 60 lb
		{west.Name, "West"}, {west.Stand[0].Percent, agronomy.Percent(100)}, {west.Clippings, true}, {west.Soil.Phosphorus.PPM, agronomy.PPM(28)}, {west.Soil.Phosphorus.Wanted.Low, agronomy.PPM(30)}, {west.Soil.Calcium.Given, false},
		{near(float64(west.Soil.Potassium.Wanted.Low), 0.4*390.98), true}, {near(float64(west.Soil.Potassium.Wanted.High), 0.6*390.98), true}, {optional(west.Soil.Printed.Lime), nil},
		{stone.ID, "limestone"}, {stone.Name, "pelletized limestone"}, {stone.Kind, material.LimeMaterial}, {stone.CCE, agronomy.Percent(90)}, {stone.ECCE, agronomy.Percent(76)}, {stone.Hydrated, false}, {stone.Magnesium, agronomy.Percent(1.5)}, {stone.Pesticide, false}, {stone.Pack, agronomy.Pounds(40)},
		{stone.Price, 7.25}, {stone.NoRebuy, false}, {stone.Fineness, []material.Sieve{{Mesh: 8, Passing: 100}, {Mesh: 20, Passing: 98}, {Mesh: 60, Passing: 75}, {Mesh: 100, Passing: 60}}}, {s.Counted, map[string]schedule.Date{"limestone": day(2026, 9, 12)}},
		{starter.Name, "starter 18-24-12"}, {starter.Analysis, agronomy.Analysis{N: 18, P2O5: 24, K2O: 12}}, {starter.SlowShare, 0.4}, {starter.Sulfur, agronomy.Percent(3)}, {starter.Iron, agronomy.Percent(2)}, {near(float64(starter.Pack), 11.3*2.20462262185), true}, {starter.OnHand, 1.0}, {starter.Liquid, false},
		{liquid.Liquid, true}, {liquid.Density, agronomy.PoundsPerGallon(9.6)}, {liquid.Analysis.N, agronomy.Percent(12)}, {s.Local.NoNitrogen, []law.Span{{From: law.MonthDay{Month: 11, Day: 15}, To: law.MonthDay{Month: 3, Day: 1}}}}, {len(s.Local.NoPhosphorus), 0}, {s.Local.Note, "Borough ordinance, see the clerk"},
		{s.Spreader.Width, agronomy.Feet(4)}, {s.Calendar.Link, "https://example.org/lawn/"}, {s.Calendar.Secret, "quiet-heron-4711-plum"},
	} {
		if !reflect.DeepEqual(c.got, c.want) {
			t.Errorf("got %v, want %v", c.got, c.want)
		}
	}
	flags := set(t, string(mustRead(t, "testdata/full.toml")), "crew.paid", "false", "area.east.soluble_only", "false", "area.east.cored", "true", "area.west.cored", "false", "material.limestone.hydrated", "true", "material.limestone.rebuy", "false", "area.east.soil.lower_ph", "true",
		"area.east.clippings", "Returned", "material.starter.name", "Lawn food", "material.limestone.pesticide", "true", "calendar.remind", `["30m before", "2d before"]`, "units", "us")
	s, ps := load(t, flags)
	if s == nil {
		t.Fatal(ps)
	}
	if s.Crew.Paid || s.Areas[0].SolubleOnly || !s.Areas[0].Cored || s.Areas[1].Cored || !s.Materials[0].Hydrated || !s.Materials[0].NoRebuy || !s.Areas[0].Soil.LowerPH || !s.Areas[0].Clippings || s.Materials[1].Name != "Lawn food" || !s.Materials[0].Pesticide || s.Metric ||
		!slices.Equal(s.Calendar.Remind, []time.Duration{-30 * time.Minute, -48 * time.Hour}) {
		t.Errorf("%+v", s)
	}
}
