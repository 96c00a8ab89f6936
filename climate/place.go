package climate

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Place is what is known about where the turf grows. A nil, zero or empty
// field is unknown. The most exact knowledge is used: monthly normals before
// state and half-zone (moved by elevation, latitude and longitude) before
// either alone; own freeze records replace the freeze dates of any of them.
type Place struct {
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
	}
	return "", 0
}

const giveNormals = "give the twelve monthly means as mean_high_f and mean_low_f, or the weather service's monthly normals file as normals"

// Range of the stations behind the table, [model] opening: its moves hold
// within it.
const (
	lowestStation, highestStation     = Meters(-40), Meters(3450) // [ncei-normals] stations used
	southernStation, northernStation  = 24.5, 49.5                // [ncei-normals] stations used
	westernStation, easternStation    = -125.0, -66.5             // [ncei-normals] stations used
	farthestLatitude, farthestDegrees = 7.0, 10.0                 // [common] no state reaches farther from a row's middle
)

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
		fail("elevation", "the model holds from -130 ft to 11,300 ft (-40 m to 3,450 m)", "%.0f ft is outside what the model was fitted on", float64(*e))
	}
	if l := p.Latitude; l != nil && !(*l >= -66 && *l <= 72) {
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
	if p.Highs != nil {
		y = p.fromNormals(zone)
	} else {
		y, problems = p.fromTable(zone)
	}
	if len(problems) > 0 {
		return nil, problems
	}
	if problems = y.useOwnFreezes(p.FirstFreeze, p.LastFreeze); len(problems) > 0 {
		return nil, problems
	}
	return y, nil
}

// checkNormals looks for the slips of typed and ordered monthly means.
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
			if !(v >= -80 && v <= 130) {
				problems = append(problems, PlaceError{s.field, fmt.Sprintf("value %d, %g, is no monthly mean in °F", m+1, float64(v)), "monthly means lie between -80 and 130 °F; tenths of a degree must be divided by 10"})
			}
		}
	}
	if len(problems) > 0 {
		return problems
	}
	for m := range 12 {
		if highs[m] <= lows[m] {
			problems = append(problems, PlaceError{"mean_low_f", fmt.Sprintf("month %d: the low, %g, is not below the high, %g", m+1, float64(lows[m]), float64(highs[m])), "the two lists may have changed places"})
		}
	}
	if hottest := slices.Max(highs); len(problems) == 0 && hottest < 50 {
		problems = append(problems, PlaceError{"mean_high_f", fmt.Sprintf("the hottest month's mean high is %g °F, too cold for turf", float64(hottest)), "if these are degrees Celsius use mean_high_c and mean_low_c"})
	}
	return problems
}

// fromNormals fits the year to the monthly means; the table serves only the
// latitude of the state. [model] section 2
func (p Place) fromNormals(zone Zone) *Year {
	var mean, spread [12]Fahrenheit
	for m := range 12 {
		mean[m] = (p.Highs[m] + p.Lows[m]) / 2
		spread[m] = p.Highs[m] - p.Lows[m]
	}
	from := p.NormalsFrom
	if from == "" {
		from = "monthly normals typed in"
	}
	y := newYear(from, West(p.State), FitCycle(mean), FitCycle(spread), errorsOfNormals())
	r, inTable := p.anyRow(zone)
	outside, middle := outsideTable(p.State)
	switch {
	case p.Latitude != nil:
		y.setLatitude(*p.Latitude)
	case inTable:
		y.setLatitude(r.lat)
	case outside != "":
		y.setLatitude(middle)
	default:
		y.Better = append(y.Better, "latitude")
		y.note("The latitude is not known: the spring freeze date is worked out for 39 degrees.")
	}
	y.Southern = y.mean.coldest > y.mean.warmest && coldInNorthernSummer(y.mean)
	if l := p.Latitude; l != nil {
		if y.mean.max()-y.mean.min() > 10 && (*l < 0) != y.Southern && math.Abs(*l) > 15 {
			y.note("The coldest time is %s, which is odd at latitude %g: check its sign and the order of the months.", wrap(y.mean.coldest), *l)
		}
		y.Southern = *l < 0
	}
	if inTable && p.Hardiness != "" && p.State != "" && math.Abs(y.mean.Mean-r.mean.Mean) > max(6, 3*r.month) {
		y.note("The normals are %.0f °F away from what is usual for %s %s: check that both belong to this place.", math.Abs(y.mean.Mean-r.mean.Mean), p.State, zone)
	}
	return y
}

// anyRow is the row of the state and zone, else of the state.
func (p Place) anyRow(zone Zone) (row, bool) {
	if p.State == "" {
		return row{}, false
	}
	if zone >= 0 {
		if r, ok := findRow(p.State, zone.String()); ok {
			return r, true
		}
	}
	return findRow(p.State, "*")
}

func coldInNorthernSummer(c curve) bool {
	cold := wrap(c.coldest)
	return cold > DayOf(4, 30) && cold < DayOf(11, 1)
}

// fromTable takes the year from the hardiness table, moved to the place as
// far as it is known. [model] section 3
func (p Place) fromTable(zone Zone) (*Year, PlaceErrors) {
	if name, _ := outsideTable(p.State); name != "" {
		return nil, PlaceErrors{{"state", "the hardiness table does not cover " + name, giveNormals}}
	}
	if p.State == "" && zone < 0 {
		return nil, PlaceErrors{{"state", "nothing is known about the place", "give state and hardiness; outside the 48 adjoining states " + giveNormals}}
	}
	var notes []string
	state, listed := "*", "*"
	if p.State != "" {
		state = p.State
	}
	near := zone
	if zone >= 0 {
		listed = zone.String()
		if p.State != "" {
			near = nearestZone(p.State, zone)
			listed = near.String()
			if distance(near, zone) > 2 {
				return nil, PlaceErrors{{"hardiness", fmt.Sprintf("no place in %s is in zone %s; the nearest is %s", p.State, zone, near), "look the zone up again, or " + giveNormals}}
			}
		}
	}
	r, ok := findRow(state, listed)
	if !ok {
		return nil, PlaceErrors{{"hardiness", fmt.Sprintf("zone %s is not in the table", zone), giveNormals}}
	}
	var from string
	var better []string
	switch {
	case zone < 0:
		from, better = "state alone", []string{"hardiness zone"}
	case p.State == "":
		from, better = "hardiness zone alone", []string{"state"}
	default:
		from = "state and hardiness zone"
	}
	if near != zone {
		r.toZone(near, zone)
		notes = append(notes, fmt.Sprintf("Zone %s is not listed for %s: the figures are those of %s, moved by %s. How far off they may be was not measured; check the zone.", zone, p.State, near, plural(distance(near, zone), "half-zone")))
	}
	if r.stations == 0 {
		notes = append(notes, fmt.Sprintf("No weather station stands behind %s %s: its figures follow from the state and the zone by a rule.", state, listed))
	}
	if problems := p.tooFar(r); len(problems) > 0 {
		return nil, problems
	}
	isWest := West(p.State)
	e := errorsOfRow(r, isWest)
	lat := r.lat
	if p.Latitude != nil {
		lat = *p.Latitude
	}
	onePlace := p.State != "" && zone >= 0 // the errors of moved rows were measured for these only
	switch {
	case p.Elevation != nil && r.stations == 0:
		notes = append(notes, "The elevation could not be used: how high the zone's places lie is not known without a station.")
	case p.Elevation != nil && p.Latitude != nil && p.Longitude != nil:
		r.toPosition(p.Elevation.Meters(), *p.Latitude, *p.Longitude)
		from += ", moved to the elevation, latitude and longitude"
		if onePlace {
			e.sharpen(isWest, true)
		}
	case p.Elevation != nil:
		r.toElevation(p.Elevation.Meters())
		from += ", moved to the elevation"
		better = append(better, "latitude and longitude")
		if onePlace {
			e.sharpen(isWest, false)
		}
	default:
		switch {
		case r.stations == 0: // cannot be moved
		case isWest:
			better = append(better, "elevation, which counts for most in the West")
		default:
			better = append(better, "elevation")
		}
		if p.Latitude != nil || p.Longitude != nil {
			notes = append(notes, "Latitude and longitude hardly help without the elevation, so the temperatures were not moved by them.")
		}
	}
	y := newYear(from, isWest, r.mean, r.spread, e)
	y.setLatitude(lat)
	y.Notes = append(y.Notes, notes...)
	y.Better = append(better, "twelve monthly mean highs and lows of a nearby station, or its monthly normals file")
	return y, nil
}

// tooFar refuses a position that cannot belong to the row.
func (p Place) tooFar(r row) (problems PlaceErrors) {
	check := func(field string, given *float64, low, high, middle, reach float64) {
		if given == nil {
			return
		}
		if *given < low || *given > high {
			problems = append(problems, PlaceError{field, fmt.Sprintf("%g is outside the 48 adjoining states, which the hardiness table covers", *given), giveNormals})
		} else if p.State != "" && math.Abs(*given-middle) > reach {
			problems = append(problems, PlaceError{field, fmt.Sprintf("%g is not in %s", *given, p.State), fmt.Sprintf("its stations of this zone lie about %.1f", middle)})
		}
	}
	check("latitude", p.Latitude, southernStation, northernStation, r.lat, farthestLatitude)
	check("longitude", p.Longitude, westernStation, easternStation, r.lon, farthestDegrees)
	return problems
}

func plural(n int, what string) string {
	if n == 1 {
		return "one " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
