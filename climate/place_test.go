package climate

import (
	"errors"
	"math"
	"strings"
	"testing"
)

func flat(v Fahrenheit) []Fahrenheit {
	s := make([]Fahrenheit, 12)
	for i := range s {
		s[i] = v
	}
	return s
}

// What is wrong with a place is said by field, with a remedy, all at once.
func TestPlaceProblems(t *testing.T) {
	warm, cold := flat(70), flat(50)
	for name, c := range map[string]struct {
		place Place
		want  []string // "field: text"
	}{
		"nothing known":     {Place{}, []string{"state: nothing is known"}},
		"zone without half": {Place{State: "OH", Hardiness: "6"}, []string{"hardiness: hardiness zone \"6\" lacks its half"}},
		"two at once":       {Place{State: "ZZ", Hardiness: "14a"}, []string{"state: unknown state", "hardiness: hardiness zone \"14a\" is off the map"}},
		"territory":         {Place{State: "PR", Hardiness: "13a"}, []string{"state: the hardiness table does not cover Puerto Rico"}},
		"too far a zone":    {Place{State: "ND", Hardiness: "9a"}, []string{"hardiness: no place in ND is in zone 9a"}},
		"zone of nowhere":   {Place{Hardiness: "1a", Latitude: new(60.0)}, []string{"hardiness: zone 1a is not in the table"}},
		"half of the world": {Place{Hardiness: "9a"}, []string{"latitude: zone 9a alone does not say in which half of the world"}},
		"sign of longitude": {Place{State: "OH", Latitude: new(40.0), Longitude: new(83.0)}, []string{"longitude: 83 is in the eastern half of the world"}},
		"hot zone":          {Place{Hardiness: "13b"}, []string{"hardiness: zone 13b is not in the table"}},
		"south":             {Place{State: "OH", Hardiness: "6a", Latitude: new(-40.0)}, []string{"latitude: -40 is outside the 48"}},
		"not in the state":  {Place{State: "OH", Hardiness: "6a", Latitude: new(30.0)}, []string{"latitude: 30 is not in OH"}},
		"elsewhere":         {Place{State: "OH", Hardiness: "6a", Latitude: new(30.0), Longitude: new(-120.0)}, []string{"latitude: latitude 30, longitude -120: the nearest weather station known is 396 km away"}},
		"no sign":           {Place{State: "OH", Hardiness: "6a", Longitude: new(83.0)}, []string{"west is negative: did you mean -83?"}},
		"not on earth":      {Place{State: "OH", Latitude: new(99.0), Longitude: new(math.NaN()), Elevation: new(Feet(math.Inf(1)))}, []string{"elevation: ", "latitude: ", "longitude: "}},
		"a peak":            {Place{State: "CO", Hardiness: "5a", Elevation: new(Feet(14000))}, []string{"elevation: 14000 ft is outside"}},
		"eleven months":     {Place{Highs: warm[:11], Lows: cold}, []string{"mean_high_f: 11 monthly values"}},
		"no lows":           {Place{Highs: warm}, []string{"mean_low_f: 0 monthly values"}},
		"exchanged":         {Place{Highs: cold, Lows: warm}, []string{"mean_low_f: month 1: the low, 70, is not below the high, 50, and 11 months more like it"}},
		"not a number":      {Place{Highs: flat(Fahrenheit(math.NaN())), Lows: cold}, []string{"mean_high_f: value 1, NaN"}},
		"tenths":            {Place{Highs: flat(700), Lows: cold}, []string{"mean_high_f: value 1, 700, is no monthly mean"}},
		"Celsius":           {Place{Highs: flat(21), Lows: flat(10)}, []string{"mean_high_f: the hottest month's mean high is 21 °F"}},
		"bad day":           {Place{State: "OH", Hardiness: "6a", FirstFreeze: 400}, []string{"first_freeze: day 400 is not in the year"}},
		"spring in autumn":  {Place{State: "OH", Hardiness: "6a", FirstFreeze: DayOf(5, 2)}, []string{"first_freeze: 2 May is not in the autumn"}},
		"autumn in spring":  {Place{State: "OH", Hardiness: "6a", LastFreeze: DayOf(10, 14)}, []string{"last_freeze: 14 Oct is not in the spring"}},
	} {
		_, err := c.place.Year()
		var problems PlaceErrors
		if !errors.As(err, &problems) {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, want := range c.want {
			if !strings.Contains(err.Error(), want) {
				t.Errorf("%s: %v; want %q", name, err, want)
			}
		}
		for _, p := range problems {
			if p.Field == "" || p.Problem == "" || p.Hint == "" {
				t.Errorf("%s: %+v lacks a part", name, p)
			}
		}
	}
}

// Each kind of knowledge of a place is used and named in Year.From, and Year.Better says what
// would narrow the dates.
func TestKnowledgeUsed(t *testing.T) {
	s := stationByID(t, "USW00094846")
	full := Place{State: "IL", Hardiness: "6a", Elevation: new(Feet(660)), Latitude: &s.lat, Longitude: &s.lon, Highs: s.highs, Lows: s.lows,
		NormalsFrom: "station file ohare.csv", FirstFreeze: DayOf(10, 14), LastFreeze: DayOf(5, 2)}
	noOwn := full
	noOwn.FirstFreeze, noOwn.LastFreeze = 0, 0
	typed := noOwn
	typed.NormalsFrom = ""
	moved := typed
	moved.Highs, moved.Lows = nil, nil
	up := moved
	up.Latitude, up.Longitude = nil, nil
	row := up
	row.Elevation = nil
	state, zone := row, row
	state.Hardiness, zone.State, zone.Latitude = "", "", new(40.0)
	lastMeanSD := Fahrenheit(-1)
	for _, c := range []struct {
		place        Place
		from, better string
	}{
		{full, "station file ohare.csv, freeze dates from own records", ""},
		{noOwn, "station file ohare.csv", "first and last freezes"},
		{typed, "monthly normals typed in", "first and last freezes"},
		{moved, "the 20 nearest weather stations (the nearest 0 km away, 1981-2010), 660 ft (201 m) up, as given", ""},
		{up, "state and hardiness zone, moved to the elevation", "first and last freezes"},
		{row, "state and hardiness zone", ""},
		{state, "state alone", "hardiness zone"},
		{zone, "hardiness zone alone", "state"},
	} {
		y := yearOf(t, c.place)
		if y.From != c.from {
			t.Errorf("from %q, want %q", y.From, c.from)
		}
		if !strings.Contains(strings.Join(y.Better, "; "), c.better) {
			t.Errorf("%s: better %q lacks %q", y.From, y.Better, c.better)
		}
		if y.MeanSD < lastMeanSD {
			t.Errorf("%s: error %.2f °F, less than of better knowledge, %.2f", y.From, float64(y.MeanSD), float64(lastMeanSD))
		}
		lastMeanSD = y.MeanSD
	}
}

// What would narrow the dates is told with its days, the most helpful first,
// and nothing that would not.
func TestMoreExact(t *testing.T) {
	for name, c := range map[string]struct {
		place Place
		want  string // the whole list, joined by "; "
	}{
		// By position in the West the elevation takes the place's error in spring
		// from 13.0 to 6.9 days, beside 11 from year to year: 1.28 × 17.0 and 13.0.
		// [model] section 3b, 7
		"West":      {Place{ZIP: "81435"}, "elevation (soil at 50 °F in spring to ± 17 days instead of 22); the middle dates"},
		"East":      {Place{ZIP: "44109"}, "the middle dates of your own first and last freezes over ten years or more (last freeze to ± 14 days instead of 16)"},
		"by state":  {Place{State: "CO"}, "the middle dates of your own first and last freezes over ten years or more (last freeze to ± 16 days instead of 24); ZIP code (soil at 50 °F in spring to ± 22 days instead of 29); hardiness zone ("},
		"all known": {Place{ZIP: "44109", Elevation: new(Feet(700)), FirstFreeze: DayOf(10, 25), LastFreeze: DayOf(4, 25)}, ""},
		"no freeze": {Place{ZIP: "33040"}, ""},
	} {
		got := strings.Join(yearOf(t, c.place).Better, "; ")
		if !strings.HasPrefix(got, c.want) || c.want == "" && got != "" {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// A zone alone is taken to the half of the world that its latitude names; it
// says which rules come from elsewhere. Places below the sea are taken.
func TestZoneAloneAbroad(t *testing.T) {
	north, south := yearOf(t, Place{Hardiness: "9b", Latitude: new(37.0)}), yearOf(t, Place{Hardiness: "9b", Latitude: new(-37.0)})
	near(t, "half a year", math.Abs(float64(north.Coldest()-south.Coldest())), 182.5, 1)
	if north.Southern || !south.Southern {
		t.Error("which half of the world")
	}
	if a, b := north.FirstFreeze(), south.FirstFreeze(); a.Never || b.Never || math.Abs(math.Remainder(b.D-a.D, 365))-182.5 > 1 {
		t.Errorf("first freeze %s and %s", a.Day(), b.Day())
	}
	if l := south.LastFreeze(); l.Never || l.D > south.low.warmest || l.D < south.low.warmest-365 {
		t.Errorf("last freeze %v", l.D)
	}
	berlin := yearOf(t, Place{Hardiness: "8a", Latitude: new(52.5), Longitude: new(13.4)})
	if got := strings.Join(berlin.Notes, " "); !strings.Contains(got, "fitted on places in the United States") || berlin.From != "hardiness zone alone" {
		t.Errorf("%q, %q", berlin.From, got)
	}
	valley := yearOf(t, Place{Latitude: new(36.46), Longitude: new(-116.87), Elevation: new(Feet(-190))}) // a station of the list lies there
	if hottest := valley.High(DayOf(7, 15)); hottest < 112 || hottest > 120 {
		t.Errorf("Death Valley in July: %v", hottest)
	}
}

// Own freeze records move the freeze dates only.
func TestOwnFreezeRecords(t *testing.T) {
	plain := yearOf(t, Place{State: "OH", Hardiness: "6a"})
	own := yearOf(t, Place{State: "OH", Hardiness: "6a", FirstFreeze: DayOf(10, 24)})
	if d := own.FirstFreeze().Day(); d != DayOf(10, 24) {
		t.Errorf("first freeze %s", d)
	}
	if own.LastFreeze() != plain.LastFreeze() || own.Mean(100) != plain.Mean(100) || own.SoilFalls(2, 50) != plain.SoilFalls(2, 50) {
		t.Error("own first freeze moved something else")
	}
	if got := strings.Join(own.Notes, " "); !strings.Contains(got, "24 Oct, 11 days later than the model's 13 Oct") {
		t.Errorf("notes %q", got)
	}
	if own.FirstFreeze().SD >= plain.FirstFreeze().SD {
		t.Error("own records must narrow the spread")
	}
	// Places that freeze in January, and records where the model expects none.
	gulf := yearOf(t, Place{State: "TX", Hardiness: "9b", FirstFreeze: DayOf(1, 6), LastFreeze: DayOf(1, 28)})
	if a, b := gulf.FirstFreeze(), gulf.LastFreeze(); a.Day() != 6 || a.D != 371 || b.D != 28 {
		t.Errorf("%+v %+v", a, b)
	}
	keys := yearOf(t, Place{State: "FL", Hardiness: "11b", FirstFreeze: DayOf(1, 6)})
	if got := strings.Join(keys.Notes, " "); !strings.Contains(got, "the model expects none") || keys.FirstFreeze().Never {
		t.Errorf("notes %q", got)
	}
}

// A zone a step or two off the state's list is moved; DC is Maryland.
func TestZoneNotListed(t *testing.T) {
	listed, step := yearOf(t, Place{State: "OH", Hardiness: "6a"}), yearOf(t, Place{State: "OH", Hardiness: "5b"})
	diff := listed.mean.Mean - step.mean.Mean
	near(t, "one half-zone", diff, 2.1, 0.3) // [model] section 3
	z5, z6 := -1.25, -0.75
	near(t, "one half-zone, exactly", diff, (4.373+2*0.109*(z5+z6)/2)/2, 1e-6) // [model] section 3
	if len(step.Notes) == 0 || !strings.Contains(step.Notes[0], "Zone 5b is not listed for OH") {
		t.Errorf("notes %q", step.Notes)
	}
	if a, b := yearOf(t, Place{State: "DC", Hardiness: "7b"}), yearOf(t, Place{State: "MD", Hardiness: "7b"}); a.mean != b.mean {
		t.Error("DC is not MD")
	}
	bare := yearOf(t, Place{State: "CT", Hardiness: "7b", Elevation: new(Feet(50))}) // a row without a station
	if got := strings.Join(bare.Notes, " "); !strings.Contains(got, "No weather station") || !strings.Contains(got, "elevation could not be used") {
		t.Errorf("notes %q", got)
	}
}

// Alaska and Hawaii have one row each, say so, and ask for normals; the spread
// is that of a whole state.
func TestPooledStates(t *testing.T) {
	for _, p := range []Place{{State: "AK", Hardiness: "4b"}, {State: "hi"}, {ZIP: "99501"}, {ZIP: "96860"}} {
		y := yearOf(t, p)
		if !strings.Contains(strings.Join(y.Notes, " "), "One row stands for all of") || len(y.Better) == 0 && p.ZIP == "99501" || y.MeanSD < 6 {
			t.Errorf("%+v: %q, better %q, ± %v", p, y.Notes, y.Better, y.MeanSD)
		}
	}
	alaska := yearOf(t, Place{ZIP: "99501"})
	near(t, "Alaska, published first freezes", alaska.FirstFreeze().D, 268.9, 1e-9) // data/elsewhere.csv
	if w := alaska.SoilFalls(2, 50); w.Within() < 25 {
		t.Errorf("soil at 50 °F in Alaska to ± %d days", w.Within())
	}
	if w := yearOf(t, Place{ZIP: "96860"}).FirstFreeze(); !w.Never {
		t.Errorf("Hawaii freezes on %s", w.Day())
	}
}

// Outside the table normals do all the work.
func TestAlaskaFromNormals(t *testing.T) {
	// Anchorage, US Climate Normals 1981-2010, from memory, rounded.
	highs := []Fahrenheit{23, 27, 34, 44, 56, 63, 65, 64, 55, 40, 28, 25}
	lows := []Fahrenheit{11, 14, 19, 29, 40, 48, 52, 50, 42, 29, 17, 13}
	y := yearOf(t, Place{State: "AK", Hardiness: "5a", Highs: highs, Lows: lows})
	if d := y.FirstFreeze().Day(); d < DayOf(9, 5) || d > DayOf(10, 10) {
		t.Errorf("first freeze %s", d)
	}
	if y.Southern || y.Ground().Kind != GroundMostWinters {
		t.Errorf("%+v", y.Ground())
	}
	if got := strings.Join(y.Notes, " "); !strings.Contains(got, "between 24.5 and 49.5 degrees") {
		t.Errorf("the clipped latitude is not named: %q", got)
	}
}
