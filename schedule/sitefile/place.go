package sitefile

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/climate"
	"swardbook/schedule/law"
)

// readPlace fills the place and asks package climate whether there can be such a place.
func (r *reader) readPlace(top table) {
	t := top.under("place")
	p := &r.site.Place
	p.ZIP = t.text("zip")
	p.State = stateCode(t.text("state"))
	p.Hardiness = strings.ToLower(t.text("hardiness"))
	if t.text("elevation") != "" {
		before := len(r.problems)
		if e := quantity(t, "elevation", agronomy.ParseElevation); len(r.problems) == before {
			p.Elevation = new(e)
		}
	}
	r.site.County = t.text("county")
	p.Latitude = degrees(t, "latitude", 90)
	p.Longitude = degrees(t, "longitude", 180)
	p.FirstFreeze, p.LastFreeze = freezeDay(t, "first_freeze"), freezeDay(t, "last_freeze")
	r.site.Water = quantity(t, "water_within", between(agronomy.ParseLength, 0, 5280, "up to a mile; without water that near, remove the key"))

	before := len(r.problems)
	celsius := r.readNormals(t)
	if len(r.problems) > before { // package climate would report the same again
		return
	}
	position := p.Latitude != nil && p.Longitude != nil
	if !t.given("zip") && !position && !t.given("state") && !t.given("hardiness") && p.Highs == nil {
		t.wrong("", "nothing is said about the place", `give zip = "44109", or state = "OH" and hardiness = "6a", in [place], or monthly normals`)
		return
	}
	given := *p
	y, err := p.Year()
	r.understood(t, y)
	if p.State != given.State || p.Hardiness != given.Hardiness { // filled in: the plan goes by these too
		y, _ = p.Year()
	}
	r.site.KeepYear(y)
	r.knowCounty(t)
	if p.State == "" {
		r.assume("state not given: no state's law on fertilizer is looked up, so ask whether there is one")
	}
	bad, ok := errors.AsType[climate.PlaceErrors](err)
	if !ok && err != nil {
		bad = climate.PlaceErrors{{Problem: err.Error()}}
	}
	for _, e := range bad {
		name := e.Field
		switch {
		case t.given("normals") && strings.HasPrefix(name, "mean_"):
			name = "normals"
		case celsius:
			name = strings.Replace(name, "_f", "_c", 1)
		}
		if _, reported := t.values[name].(refused); !reported {
			t.wrong(name, e.Problem, e.Hint)
		}
	}
	eastern := p.Longitude != nil && *p.Longitude > 0 && !slices.Contains([]string{"", "AK", "GU", "MP"}, p.State) // the Aleutians and the Marianas reach east
	if eastern && !slices.ContainsFunc(bad, func(e climate.PlaceError) bool { return e.Field == "longitude" }) {
		t.doubt("longitude", fmt.Sprintf("%s is east of Greenwich, where %s is not", written(*p.Longitude), p.State), fmt.Sprintf("west is negative: longitude = -%s", written(*p.Longitude)))
	}
}

// understood tells which place package climate has understood, warns where what was given
// about it does not agree, and fills in what follows from the position but was not given.
func (r *reader) understood(t table, y *climate.Year) {
	if y == nil {
		return
	}
	for _, d := range y.Doubts {
		t.doubt(d.Field, d.Problem, d.Hint)
	}
	p := &r.site.Place
	if z, err := climate.FindZIP(p.ZIP); err == nil {
		r.assume("the ZIP is taken as %s", z)
		if p.State == "" {
			p.State = z.State
			r.assume("state not given: %s, that of the ZIP", z.State)
		}
		if r.site.County == "" && z.County != "" && p.State == z.State {
			r.site.County = z.County
			r.assume("county not given: %s, that of the ZIP; a ZIP may cross a county line, and county in [place] settles it", z.County)
		}
	}
	if p.Hardiness == "" && y.Zone != "" {
		p.Hardiness = y.Zone
		r.assume("hardiness not given: half-zone %s, that of the weather stations around", y.Zone)
	}
}

// knowCounty refuses a county that the state does not have, and spells its name as the list
// of counties does. In a state without a list any name is accepted.
func (r *reader) knowCounty(t table) {
	s := &r.site
	if s.County == "" {
		return
	}
	all := climate.Counties(s.Place.State)
	if len(all) == 0 {
		return
	}
	if i := slices.IndexFunc(all, func(c string) bool { return law.SameCounty(c, s.County) }); i >= 0 {
		s.County = all[i]
		return
	}
	hint := agronomy.NearestName(s.County, all)
	if hint == "" {
		hint = "the name of a county of " + s.Place.State + ", such as " + all[0]
	}
	t.wrong("county", fmt.Sprintf("%s has no county %q", s.Place.State, s.County), hint)
}

// stateCode gives the two letters of a state by its code or its name.
func stateCode(text string) string {
	for _, s := range law.States() {
		if strings.EqualFold(s.Name, text) {
			return s.Code
		}
	}
	return strings.ToUpper(text)
}

func degrees(t table, name string, most float64) *float64 {
	switch t.values[name].(type) {
	case int64, float64:
		d := t.number(name, -most, most)
		return &d
	}
	return nil
}

func freezeDay(t table, name string) climate.Day {
	s := t.text(name)
	if s == "" {
		return 0
	}
	m, d, ok := monthDay(s)
	if !ok {
		t.wrong(name, fmt.Sprintf("%q is not a day of the year", s), `month and day, like "10-14"`)
		return 0
	}
	return climate.DayOf(m, d)
}

// readNormals fills in the monthly means, which may be given in only one of three ways: in
// °F, in °C or as a station file. It tells whether they were given in °C.
func (r *reader) readNormals(t table) (celsius bool) {
	p := &r.site.Place
	inF := t.given("mean_high_f") || t.given("mean_low_f")
	inC := t.given("mean_high_c") || t.given("mean_low_c")
	switch {
	case inF && inC:
		t.wrong(firstGiven(t, "mean_high_c", "mean_low_c"), "monthly means are given in °F and in °C", "keep one pair, mean_high_f and mean_low_f or mean_high_c and mean_low_c")
	case t.given("normals") && (inF || inC):
		t.wrong("normals", "monthly means are given as a file and as numbers", "keep one of the two")
	case t.given("normals"):
		r.readStation(t)
	case inF:
		p.Highs, p.Lows = means(t, "mean_high_f"), means(t, "mean_low_f")
	case inC:
		celsius = true
		p.Highs, p.Lows = means(t, "mean_high_c"), means(t, "mean_low_c")
		for i := range p.Highs {
			p.Highs[i] = climate.Celsius(p.Highs[i]).Fahrenheit()
		}
		for i := range p.Lows {
			p.Lows[i] = climate.Celsius(p.Lows[i]).Fahrenheit()
		}
	}
	if p.Highs != nil {
		p.NormalsFrom = "monthly normals typed in"
		if name := t.text("normals"); name != "" {
			p.NormalsFrom = "station file " + name
		}
	}
	return celsius
}

func firstGiven(t table, names ...string) string {
	for _, n := range names {
		if t.given(n) {
			return n
		}
	}
	return names[0]
}

// means reads twelve monthly means in the unit of the key.
func means(t table, name string) []climate.Fahrenheit {
	if !t.given(name) {
		t.wrong(name, "is missing", "give the highs and the lows, twelve values each")
		return nil
	}
	list, _ := t.values[name].([]any)
	if list == nil {
		return nil
	}
	if len(list) != 12 {
		t.wrong(name, fmt.Sprintf("has %d values where there must be 12", len(list)), "one for each month, January first")
		return nil
	}
	low, high := -80.0, 130.0 // [common] wider than any monthly mean, °F
	if strings.HasSuffix(name, "_c") {
		low, high = -62, 54
	}
	out := make([]climate.Fahrenheit, 12)
	for i, v := range list {
		var x float64
		switch v := v.(type) {
		case int64:
			x = float64(v)
		case float64:
			x = v
		}
		if !(x >= low && x <= high) {
			t.wrong(name, fmt.Sprintf("value %d, %.6g, is no monthly mean", i+1, x), fmt.Sprintf("means lie between %g and %g; tenths of a degree must be divided by 10", low, high))
			return nil
		}
		out[i] = climate.Fahrenheit(x)
	}
	return out
}

// readStation reads the station file beside the site file.
func (r *reader) readStation(t table) {
	name := t.text("normals")
	if name == "" {
		return
	}
	if !fs.ValidPath(name) || strings.ContainsAny(name, `\:`) {
		t.wrong("normals", fmt.Sprintf("%q leads out of the folder of the site file", name), "put the station file beside the site file and give its name")
		return
	}
	f, err := r.open(name)
	if err != nil {
		reason := err
		if e, ok := errors.AsType[*fs.PathError](err); ok {
			reason = e.Err
		}
		t.wrong("normals", fmt.Sprintf("cannot open %q: %v", name, reason), "the path is relative to the site file")
		return
	}
	defer f.Close()
	highs, lows, err := climate.ParseNormals(f)
	if err != nil {
		t.wrong("normals", fmt.Sprintf("%s: %v", name, strings.ReplaceAll(err.Error(), "\n", "; ")), "it must be the monthly normals of one station, as the weather service publishes them")
		return
	}
	r.site.Place.Highs, r.site.Place.Lows = highs, lows
}
