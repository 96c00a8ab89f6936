package climate

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// Places of the ZIP list, read from the plain file.
func TestFindZIP(t *testing.T) {
	for _, want := range []ZIP{
		{"00501", "Holtsville", "NY", "Suffolk", 40.82, -73.05}, // the first
		{"01001", "Agawam", "MA", "Hampden", 42.07, -72.62},
		{"01002", "Amherst", "MA", "Hampshire", 42.37, -72.46},
		{"96860", "Jbphh", "HI", "Honolulu", 21.32, -157.87}, // listed a second time without a state
		{"96960", "Marshall Islands", "MH", "Marshall Islands", 7.11, 171.24},
		{"09012", "APO AE", "", "", 49.43, 7.60},
	} {
		got, err := FindZIP(want.Code)
		if err != nil || math.Abs(got.Latitude-want.Latitude)+math.Abs(got.Longitude-want.Longitude) > 1e-9 {
			t.Errorf("%s: %+v %v", want.Code, got, err)
		}
		got.Latitude, got.Longitude = want.Latitude, want.Longitude
		if got != want {
			t.Errorf("%+v, want %+v", got, want)
		}
	}
	if z, err := FindZIP(" 01001-1234 "); err != nil || z.Code != "01001" {
		t.Errorf("%+v %v", z, err)
	}
	for code, want := range map[string]string{
		"4410": "is no ZIP code", "4410a": "is no ZIP code", "": "is no ZIP code", "441099": "is no ZIP code", "44109-1": "is no ZIP code",
		"00901": "begins with 009", "44100": "there is no ZIP code 44100", "99999": "there is no ZIP code 99999", "00000": "begins with 000",
	} {
		if z, err := FindZIP(code); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v %v, want %q", code, z, err, want)
		}
	}
}

// Every ZIP of the list can be found, and the nearest ZIP to its position is
// at its position.
func TestEveryZIP(t *testing.T) {
	found := 0
	for number := range 100000 {
		code := string([]byte{'0' + byte(number/10000), '0' + byte(number/1000%10), '0' + byte(number/100%10), '0' + byte(number/10%10), '0' + byte(number%10)})
		z, err := FindZIP(code)
		if err != nil {
			continue
		}
		found++
		if z.Code != code || z.Place == "" || z.State != "" && z.County == "" || z.State != "" && len(z.State) != 2 {
			t.Errorf("%+v", z)
		}
		if z.State != "" && number%997 == 0 {
			if _, km := NearestZIP(z.Latitude, z.Longitude); km > 0.01 {
				t.Errorf("%s: nearest ZIP %.2f km away", code, km)
			}
		}
	}
	if found != 41488 { // 41,490 rows, two of them a second row of a code
		t.Errorf("%d ZIP codes", found)
	}
}

// The place is understood, its year taken from the stations, and what cannot
// be a lawn's place is refused.
func TestYearByPosition(t *testing.T) {
	y := yearOf(t, Place{ZIP: "44109"})
	if y.Where != "44109, Cleveland OH" || y.West || !strings.Contains(y.From, "20 nearest weather stations (the nearest ") {
		t.Errorf("%q, %q", y.Where, y.From)
	}
	lat, lon := 41.48, -81.67
	p := yearOf(t, Place{Latitude: &lat, Longitude: &lon})
	near(t, "first freeze", p.FirstFreeze().D, 304.4+4.8, 0.15) // [model] section 3b, worked
	near(t, "last freeze", p.LastFreeze().D, 108.6-4.8, 0.15)   // [model] section 3b, worked
	near(t, "spread", p.FirstFreeze().SD, math.Hypot(5.7, p.FirstFreeze().YearSD), 1e-9)
	if leadville := yearOf(t, Place{Latitude: new(39.48), Longitude: new(-106.04), Elevation: new(Meters(2774).Feet())}); !leadville.West {
		t.Error("the West is told by the stations")
	}

	for name, c := range map[string]struct {
		place Place
		want  string // in the doubts, or in the error if it begins with "!"
	}{
		"agrees":           {Place{ZIP: "44109", State: "OH", Hardiness: "7a"}, ""},
		"zone off by one":  {Place{ZIP: "44109", Hardiness: "6b"}, ""},
		"DC":               {Place{ZIP: "20500", State: "DC"}, ""},
		"another state":    {Place{ZIP: "44109", State: "PA"}, "state: the state given is PA, but ZIP 44109, Cleveland OH lies in OH"},
		"another zone":     {Place{ZIP: "44109", Hardiness: "9a"}, "hardiness: the zone given is 9a, but the stations around 44109, Cleveland OH lie in 7a"},
		"state far away":   {Place{Latitude: &lat, Longitude: &lon, State: "TX"}, "state: the state given is TX, but the stations around latitude 41.48, longitude -81.67 lie in OH"},
		"position and ZIP": {Place{ZIP: "90001", Latitude: &lat, Longitude: &lon}, "zip: ZIP 90001, Los Angeles CA lies 3"},
		"military":         {Place{ZIP: "09012"}, "!zip: 09012 is an address of military mail"},
		"no such ZIP":      {Place{ZIP: "44100"}, "!zip: there is no ZIP code 44100"},
		"territory":        {Place{ZIP: "96960"}, "!does not cover the Marshall Islands"},
		"at sea":           {Place{Latitude: new(35.0), Longitude: new(-70.0)}, "!farther than the 100 km"},
		"Europe":           {Place{Latitude: new(52.0), Longitude: new(13.0)}, "!farther than the 100 km"},
		"a peak in Ohio":   {Place{ZIP: "44109", Elevation: new(Feet(8000))}, "!elevation: 8000 ft is more than 3,300 ft"},
	} {
		y, err := c.place.Year()
		got := ""
		if err == nil {
			got = y.Doubts.Error()
		} else {
			got = "!" + err.Error()
		}
		if want, isError := strings.CutPrefix(c.want, "!"); isError != (err != nil) || !strings.Contains(got, want) || want == "" && got != "" {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
	// South of Texas freezes come in single nights; on the Keys in none.
	if y := yearOf(t, Place{ZIP: "78501"}); y.FirstFreeze().Never || y.LastFreeze().Never || !strings.Contains(strings.Join(y.Notes, " "), "single nights") {
		t.Errorf("McAllen: %v %v %q", y.FirstFreeze(), y.LastFreeze(), y.Notes)
	}
	// Valdosta, Georgia, zone 9a: most stations around publish no freeze medians,
	// yet every winter brings frosts; 20 to 25 °F is the average yearly low. [usda-zones]
	if y := yearOf(t, Place{ZIP: "31601"}); y.FirstFreeze().Never || y.LastFreeze().Never {
		t.Errorf("Valdosta: %v %v", y.FirstFreeze(), y.LastFreeze())
	}
	// No place where it freezes nearly every year is called free of freezes, and
	// none has a last freeze without a first: a sample of all ZIP codes.
	for number := 0; number < 100000; number += 37 {
		z, err := FindZIP(fmt.Sprintf("%05d", number))
		if err != nil || !hasState(z.State) {
			continue
		}
		y := yearOf(t, Place{ZIP: z.Code})
		zone, err := ParseZone(y.Zone)
		if err != nil {
			t.Fatal(err)
		}
		lowest, _ := zone.Bounds()
		if f, l := y.FirstFreeze(), y.LastFreeze(); f.Never != l.Never || f.Never && !f.Below && lowest < 30 || !f.Never && l.D >= f.D {
			t.Errorf("%s, zone %s: %v %v", z, zone, f, l)
		}
	}
	if y := yearOf(t, Place{ZIP: "33040"}); !y.FirstFreeze().Never || !y.LastFreeze().Never {
		t.Errorf("Key West: %v %v", y.FirstFreeze(), y.LastFreeze())
	}
}

func BenchmarkYearByPosition(b *testing.B) {
	for b.Loop() {
		y, err := Place{ZIP: "44109"}.Year()
		if err != nil {
			b.Fatal(err)
		}
		y.Events()
	}
}
