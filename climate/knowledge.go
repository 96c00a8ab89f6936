package climate

import (
	"fmt"
	"math"
)

// Range of the stations that the hardiness table was made from. Moving a row of the table
// by elevation, latitude or longitude is trusted only within it. [model] opening
const (
	lowestStation, highestStation     = Meters(-90), Meters(3450) // [ncei-normals] stations used; [common] the lowest land lies 50 m below the lowest station
	southernStation, northernStation  = 24.5, 49.5                // [ncei-normals] stations used
	westernStation, easternStation    = -125.0, -66.5             // [ncei-normals] stations used
	farthestLatitude, farthestDegrees = 7.0, 10.0                 // [common] no state reaches farther from a row's middle
)

// fromNormals fits the year to the monthly means; the table serves only the
// latitude of the state. [model] section 2
func (p Place) fromNormals(zone Zone, at *position) *Year {
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
	case at != nil:
		y.setLatitude(at.lat)
		y.Where = at.words
	case p.Latitude != nil:
		y.setLatitude(*p.Latitude)
	case inTable:
		y.setLatitude(r.lat)
	case outside != "":
		y.setLatitude(middle)
	default:
		y.note("The latitude is not known: the spring freeze date is worked out for 39 degrees.")
	}
	y.Southern = coldInNorthernSummer(y.mean)
	if l := p.Latitude; l != nil {
		if y.mean.max()-y.mean.min() > 10 && (*l < 0) != y.Southern && math.Abs(*l) > 15 { // [common] nearer the equator the coldest time may fall in either half of the year
			y.note("The coldest time is %s, which is odd at latitude %g: check its sign and the order of the months.", wrap(y.mean.coldest), *l)
		}
		y.Southern = *l < 0
	}
	if inTable && p.Hardiness != "" && p.State != "" && math.Abs(y.mean.Mean-r.mean.Mean) > max(6, 3*r.month) { // [common] three times the row's own error
		y.note("The normals are %.0f °F away from what is usual for %s %s: check that both belong to this place.", math.Abs(y.mean.Mean-r.mean.Mean), p.State, zone)
	}
	switch {
	case at != nil && at.covered() && y.inSingleNights():
		elevation := usualElevation(at.near)
		y.useNeighbours(at.near, elevation, at.usualZone(elevation))
	case inTable && !y.West:
		y.useRow(r)
	}
	return y
}

// anyRow is the row of the state and zone; if the table has none, that of the whole state.
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
	outside, _ := outsideTable(p.State)
	if outside != "" {
		if _, pooled := findRow(p.State, "*"); !pooled {
			return nil, PlaceErrors{{"state", "the hardiness table does not cover " + outside, giveNormals}}
		}
		zone = -1
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
	from := "state and hardiness zone"
	switch {
	case zone < 0:
		from = "state alone"
	case p.State == "":
		from = "hardiness zone alone"
		if p.Latitude == nil {
			return nil, PlaceErrors{{"latitude", fmt.Sprintf("zone %s alone does not say in which half of the world the place lies", zone), "in the United States give state or zip; elsewhere the latitude, south negative, and better twelve monthly means"}}
		}
		if *p.Latitude < 0 {
			r.mirror()
			from += ", half a year later for the southern half of the world"
		}
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
	onePlace := p.State != "" && zone >= 0 // moved rows had their errors measured with both known
	switch {
	case p.Elevation != nil && r.stations == 0:
		notes = append(notes, "The elevation could not be used: how high the zone's places lie is not known without a station.")
	case p.Elevation != nil:
		r.toElevation(p.Elevation.Meters())
		from += ", moved to the elevation"
		if onePlace {
			e.sharpen(isWest)
		}
	case p.State != "" && (p.Latitude != nil || p.Longitude != nil):
		notes = append(notes, "Latitude and longitude help together, not one of them alone: the temperatures are those of the state and zone.")
	}
	y := newYear(from, isWest, r.mean, r.spread, e)
	y.setLatitude(lat)
	if outside != "" {
		y.note("One row stands for all of %s, whose places differ by more than the dates here say: %s.", outside, giveNormals)
		y.freezes = r.observed
		y.freezes.first.sd, y.freezes.last.sd = e.firstFreeze, e.lastFreeze
	} else {
		y.useRow(r)
	}
	y.Notes = append(y.Notes, notes...)
	y.Southern = p.State == "" && *p.Latitude < 0
	return y, nil
}

// useRow replaces the dates of the freeze rule by the mean of the medians that the row's
// stations publish, where freezes come in single nights and half of the stations publish
// one. In the West those medians are no better than the rule, so there they replace only a
// freeze that the rule does not find. A row without a station takes the medians of the row
// for the half-zone in all states. [model] section 4
func (y *Year) useRow(r row) {
	if r.stations == 0 {
		r, _ = findRow("*", r.zone)
	}
	if !r.mostFreeze {
		return
	}
	m := r.observed
	m.first.sd, m.last.sd = rowFirst, rowLast
	if y.West {
		m.first.sd, m.last.sd = y.errors.firstFreeze, y.errors.lastFreeze
		if !y.FirstFreeze().Never {
			m.first = median{}
		}
		if !y.LastFreeze().Never {
			m.last = median{}
		}
	}
	y.useObserved(m)
}

// tooFar refuses a position that cannot belong to the row.
func (p Place) tooFar(r row) (problems PlaceErrors) {
	check := func(field string, given *float64, low, high, middle, reach float64) {
		if given == nil || !hasState(p.State) {
			return
		}
		if turned := -*given; field == "longitude" && turned >= low && turned <= high {
			problems = append(problems, PlaceError{field, fmt.Sprintf("%g is in the eastern half of the world", *given), fmt.Sprintf("west is negative: did you mean %g?", turned)})
		} else if *given < low || *given > high {
			problems = append(problems, PlaceError{field, fmt.Sprintf("%g is outside the 48 adjoining states, which the hardiness table covers", *given), giveNormals})
		} else if math.Abs(*given-middle) > reach {
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
