package climate

import (
	"fmt"
	"slices"
	"strings"
)

// Place is what is known about where the turf grows. A nil, zero or empty
// field is unknown. The most exact knowledge is used: monthly normals before
// the position (latitude and longitude, or the ZIP), before state and half-zone
// (moved by elevation), before either alone; own freeze records replace the
// freeze dates of any of them.
type Place struct {
	ZIP                 string       // US ZIP code, "44109"
	State               string       // US postal code, "OH"
	Hardiness           string       // half-zone, "6a"
	Elevation           *Feet        // above the sea
	Latitude, Longitude *float64     // degrees; south and west are negative
	Highs, Lows         []Fahrenheit // twelve monthly means of the daily highs and lows, January first
	NormalsFrom         string       // what to call Highs and Lows; "" is "monthly normals typed in"
	FirstFreeze         Day          // median day of the first autumn 32 °F night, from own records
	LastFreeze          Day          // median day of the last spring 32 °F night, from own records
}

// PlaceError is one thing wrong with a place. Field is the key of the site
// file that is to be mended.
type PlaceError struct{ Field, Problem, Hint string }

func (e PlaceError) Error() string {
	s := e.Field + ": " + e.Problem
	if e.Hint != "" {
		s += "; " + e.Hint
	}
	return s
}

// PlaceErrors are all the things wrong with a place.
type PlaceErrors []PlaceError

func (e PlaceErrors) Error() string {
	s := make([]string, len(e))
	for i, p := range e {
		s[i] = p.Error()
	}
	return strings.Join(s, "\n")
}

// West tells whether a US state is one of the West in the model, where
// nights, soils and errors differ from the rest. [model] opening
func West(state string) bool {
	switch state {
	case "WA", "OR", "CA", "NV", "ID", "UT", "AZ", "MT", "WY", "CO", "NM": // [model] opening
		return true
	}
	return false
}

// outsideTable names a state or territory without rows of half-zones, and
// gives its middle latitude; name is "" for any other.
func outsideTable(state string) (name string, latitude float64) {
	switch state { // [common] rounded
	case "AK":
		return "Alaska", 62
	case "HI":
		return "Hawaii", 21
	case "PR":
		return "Puerto Rico", 18
	case "VI":
		return "the Virgin Islands", 18
	case "GU":
		return "Guam", 13
	case "MP":
		return "the Northern Mariana Islands", 15
	case "AS":
		return "American Samoa", -14
	case "MH":
		return "the Marshall Islands", 8
	}
	return "", 0
}

const giveNormals = "give the twelve monthly means as mean_high_f and mean_low_f, or the weather service's monthly normals file as normals"

// Year works out the climate of the place. The error is a [PlaceErrors] that
// lists everything that must be mended first.
func (p Place) Year() (*Year, error) {
	var problems PlaceErrors
	fail := func(field, hint, format string, args ...any) {
		problems = append(problems, PlaceError{field, fmt.Sprintf(format, args...), hint})
	}
	p.State = strings.ToUpper(strings.TrimSpace(p.State))
	if p.State == "DC" {
		p.State = "MD" // [model] data: DC has no station of its own
	}
	outside, _ := outsideTable(p.State)
	if p.State != "" && !hasState(p.State) && outside == "" {
		fail("state", "write a US postal code such as OH; elsewhere leave it out and "+giveNormals, "unknown state %q", p.State)
	}
	at, doubts, err := p.findPosition()
	if bad, ok := err.(PlaceError); ok {
		problems = append(problems, bad)
	}
	if p.State == "DC" {
		p.State = "MD"
	}
	outside, _ = outsideTable(p.State)
	zone := Zone(-1)
	if strings.TrimSpace(p.Hardiness) != "" {
		z, err := ParseZone(p.Hardiness)
		if err != nil {
			problem, hint, _ := strings.Cut(err.Error(), "; ")
			fail("hardiness", hint, "%s", problem)
		} else {
			zone = z
		}
	}
	if e := p.Elevation; e != nil && !(e.Meters() >= lowestStation && e.Meters() <= highestStation) {
		fail("elevation", "the model holds from -300 ft to 11,300 ft (-90 m to 3,450 m)", "%.0f ft is outside what the model was fitted on", float64(*e))
	}
	if l := p.Latitude; l != nil && !(*l >= -66 && *l <= 72) { // [common]
		fail("latitude", "degrees north, southern places negative; no lawn grows poleward of 66 south or 72 north", "%g is no latitude of a lawn", *l)
	}
	if l := p.Longitude; l != nil && !(*l >= -180 && *l <= 180) {
		fail("longitude", "degrees east, from -180 to 180; places in the Americas are negative", "%g is no longitude", *l)
	}
	problems = append(problems, checkNormals(p.Highs, p.Lows)...)
	for _, own := range []struct {
		field string
		day   Day
	}{{"first_freeze", p.FirstFreeze}, {"last_freeze", p.LastFreeze}} {
		if own.day < 0 || own.day > daysPerYear {
			fail(own.field, "write the month and day, such as 10-14", "day %d is not in the year", int(own.day))
		}
	}
	if len(problems) > 0 {
		return nil, problems
	}

	var y *Year
	switch {
	case p.Highs != nil:
		y = p.fromNormals(zone, at)
	case at != nil && outside == "" && (at.covered() || zone < 0 || p.State != ""):
		y, problems = p.fromStations(at, zone)
	default:
		y, problems = p.fromTable(zone)
	}
	if len(problems) > 0 {
		return nil, problems
	}
	y.Doubts = append(doubts, y.Doubts...)
	if zone >= 0 {
		y.Zone = zone.String()
	}
	if p.ZIP != "" {
		y.note("%s.", ZIPCredit)
	}
	if p.Highs == nil {
		y.note("The figures are normals of 1981-2010; recent years run about half a degree (°F) warmer, the first freeze two or three days later.") // [model] section 7
	}
	if p.State == "" && (at == nil || !at.covered()) {
		y.note("The rules for freezes, soil and frozen ground were fitted on places in the United States; elsewhere they may be off by more than the spread says.")
	}
	y.pairFreezes()
	y.noteFreezes(zone)
	if problems = y.useOwnFreezes(p.FirstFreeze, p.LastFreeze); len(problems) > 0 {
		return nil, problems
	}
	y.Better = y.moreExact(p, at, zone)
	return y, nil
}

// checkNormals looks for slips in monthly means that were typed in: too few values, a
// wrong unit, highs and lows exchanged.
func checkNormals(highs, lows []Fahrenheit) (problems PlaceErrors) {
	if highs == nil && lows == nil {
		return nil
	}
	for _, s := range []struct {
		field  string
		values []Fahrenheit
	}{{"mean_high_f", highs}, {"mean_low_f", lows}} {
		if len(s.values) != 12 {
			problems = append(problems, PlaceError{s.field, fmt.Sprintf("%d monthly values where there must be 12", len(s.values)), "give one for each month, January first, both for the highs and the lows"})
		}
		for m, v := range s.values {
			if !(v >= -80 && v <= 130) { // [common] no station's monthly mean lies outside
				problems = append(problems, PlaceError{s.field, fmt.Sprintf("value %d, %g, is no monthly mean in °F", m+1, float64(v)), "monthly means lie between -80 and 130 °F; tenths of a degree must be divided by 10"})
			}
		}
	}
	if len(problems) > 0 {
		return problems
	}
	var wrong []string
	for m := range 12 {
		if highs[m] <= lows[m] {
			wrong = append(wrong, fmt.Sprintf("month %d: the low, %g, is not below the high, %g", m+1, float64(lows[m]), float64(highs[m])))
		}
	}
	if len(wrong) > 0 {
		problem := wrong[0]
		if n := len(wrong) - 1; n > 0 {
			problem += fmt.Sprintf(", and %s more like it", plural(n, "month"))
		}
		problems = append(problems, PlaceError{"mean_low_f", problem, "the two lists may have changed places"})
	}
	if hottest := slices.Max(highs); len(problems) == 0 && hottest < 50 {
		problems = append(problems, PlaceError{"mean_high_f", fmt.Sprintf("the hottest month's mean high is %g °F, too cold for turf", float64(hottest)), "if these are degrees Celsius use mean_high_c and mean_low_c"})
	}
	return problems
}
