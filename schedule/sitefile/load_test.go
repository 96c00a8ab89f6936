package sitefile

import (
	"io"
	"math"
	"os"
	"reflect"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/law"
)

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
		{"people", s.Crew.People, []schedule.Person{{ID: "mara", Name: "Mara"}, {ID: "tovi", Name: "Tovi"}}},
		{"who", s.Crew.Who, []schedule.Assignment{{KindOrArea: "lime", Person: "mara"}, {KindOrArea: "east", Person: "tovi"}}},
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
		{"sieves, coarse first", lime.Fineness[0], agronomy.Sieve{Mesh: 8, Passing: 100}},
		{"packs", lime.OnHand, 1.5},
		{"kind by analysis", starter.Kind, agronomy.FertilizerMaterial},
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
