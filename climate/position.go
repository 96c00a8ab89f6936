package climate

import (
	"fmt"
	"math"
	"slices"
)

const (
	farthestNearest = 100.0 // km [model] section 3b: a place farther from every station is refused
	farthestHeight  = 1.0   // km [common] the change with height is not trusted over a greater difference
)

// position is where a place lies and how it is known.
type position struct {
	lat, lon float64
	field    string // the key it comes from, "zip" or "latitude"
	words    string // "44109, Cleveland OH"
	near     []neighbour
}

// findPosition finds the place's position, if its ZIP or both its latitude
// and its longitude are given, and the stations around it; nil otherwise. Latitude and
// longitude are used before the position of the ZIP. A state that is missing is filled in
// from the ZIP; one that disagrees with the ZIP is replaced, with a doubt.
func (p *Place) findPosition() (at *position, doubts PlaceErrors, err error) {
	if p.ZIP != "" {
		z, err := FindZIP(p.ZIP)
		if err != nil {
			return nil, nil, err
		}
		if z.State == "" && p.Highs != nil {
			return nil, nil, nil // monthly means need no position
		}
		if z.State == "" {
			return nil, nil, PlaceError{"zip", fmt.Sprintf("%s is an address of military mail, which has no place of its own", z.Code), "give latitude and longitude, or " + giveNormals}
		}
		switch {
		case p.State == "":
			p.State = z.State
		case p.State != z.State && !(p.State == "MD" && z.State == "DC"):
			doubts = append(doubts, PlaceError{"state", fmt.Sprintf("the state given is %s, but ZIP %s lies in %s", p.State, z, z.State), "the climate is that of the ZIP; mend the one that is wrong"})
			p.State = z.State
		}
		at = &position{lat: z.Latitude, lon: z.Longitude, field: "zip", words: z.String()}
	}
	if p.Latitude != nil && p.Longitude != nil {
		lat, lon := *p.Latitude, *p.Longitude
		if at != nil {
			if apart := distanceBetween(lat, lon, at.lat, at.lon); apart > 50 { // [common] no ZIP of the adjoining states reaches much farther
				doubts = append(doubts, PlaceError{"zip", fmt.Sprintf("ZIP %s lies %.0f km from latitude %g and longitude %g", at.words, apart, lat, lon), "the climate is that of the latitude and longitude; mend what is wrong"})
			}
		}
		words := fmt.Sprintf("latitude %g, longitude %g", lat, lon)
		if at != nil {
			words = at.words + ", " + words
		}
		at = &position{lat: lat, lon: lon, field: "latitude", words: words}
	}
	if at != nil {
		at.near = nearestStations(at.lat, at.lon, -1)
	}
	return at, doubts, nil
}

// covered tells whether a station is near enough to work the place out.
func (at *position) covered() bool { return at.near[0].distance <= farthestNearest }

// usualZone is the half-zone of the stations around the place at its height.
func (at *position) usualZone(elevation float64) Zone {
	sum, weights := 0.0, 0.0
	for _, n := range at.near {
		w := n.weight(elevation, 0.02) // [model] section 3b
		sum += w * float64(n.zone())
		weights += w
	}
	return Zone(math.Round(sum / weights))
}

// fromStations works the year out from the stations nearest to the place. [model] section 3b
func (p Place) fromStations(at *position, zone Zone) (*Year, PlaceErrors) {
	nearest := at.near[0]
	if !at.covered() {
		if l := p.Longitude; l != nil && *l > 0 && nearestStations(at.lat, -at.lon, -1)[0].distance <= farthestNearest {
			return nil, PlaceErrors{{"longitude", fmt.Sprintf("%g is in the eastern half of the world", *l), fmt.Sprintf("west is negative: did you mean %g?", -*l)}}
		}
		return nil, PlaceErrors{{at.field, fmt.Sprintf("%s: the nearest weather station known is %.0f km away, farther than the %.0f km that a climate may be taken from", at.words, nearest.distance, farthestNearest), giveNormals}}
	}
	elevation := usualElevation(at.near)
	known := p.Elevation != nil
	if known {
		elevation = float64(p.Elevation.Meters()) / 1000
		least := math.Inf(1)
		for _, n := range at.near {
			least = min(least, math.Abs(n.elevation-elevation))
		}
		if least > farthestHeight {
			return nil, PlaceErrors{{"elevation", fmt.Sprintf("%.0f ft is more than 3,300 ft (1 km) from the height of every weather station near %s", float64(*p.Elevation), at.words), "check the elevation and the place"}}
		}
	}
	state := p.State
	if state == "" {
		state = nearest.state()
	}
	var mean, spread [12]Fahrenheit
	highs, lows := monthsAt(at.near, elevation)
	for m := range 12 {
		mean[m], spread[m] = (highs[m]+lows[m])/2, highs[m]-lows[m]
	}
	height := "as the country around"
	if known {
		height = "as given"
	}
	from := fmt.Sprintf("the %d nearest weather stations (the nearest %.0f km away, 1981-2010), %.0f ft (%.0f m) up, %s", len(at.near), nearest.distance, float64(Meters(1000*elevation).Feet()), 1000*elevation, height)
	y := newYear(from, West(state), FitCycle(mean), FitCycle(spread), errorsOfPosition(West(state), known))
	y.Where = at.words
	y.setLatitude(at.lat)
	usual := at.usualZone(elevation)
	y.useNeighbours(at.near, elevation, usual)
	if p.State != "" && !slices.ContainsFunc(at.near, func(n neighbour) bool { return n.state() == p.State }) {
		y.doubt("state", "check the state and the place", "the state given is %s, but the stations around %s lie in %s", p.State, at.words, nearest.state())
	}
	y.Zone = usual.String()
	if zone >= 0 && distance(usual, zone) > 1 { // [model] section 3b
		y.doubt("hardiness", "the climate is that of the stations; check the zone and the place", "the zone given is %s, but the stations around %s lie in %s", zone, at.words, usual)
	}
	return y, nil
}

// nearErrors are the errors, in days, of the medians published around a place where
// freezes come in single nights. [model] section 4
func (y *Year) nearErrors() (first, last float64) {
	if y.West {
		return nearFirstWest, nearLastWest
	}
	return nearFirstEast, nearLastEast
}

// useNeighbours corrects the dates of the freeze rule by the medians that the stations
// around publish. As a rule it moves a date by as many days as those medians differ from
// the rule's at the stations. Where freezes come in single nights, the mean of the medians
// replaces the date if half of the nearest dozen stations publish one. If fewer do, the
// others may just not publish theirs: so the mean is used as well where the rule finds no
// freeze although the half-zone freezes nearly every year. Where the rule finds none and
// neither holds, there is no freeze in most years. [model] section 3b, 4
func (y *Year) useNeighbours(near []neighbour, elevation float64, zone Zone) {
	single := y.inSingleNights()
	firstSD, lastSD := y.errors.firstFreeze, y.errors.lastFreeze
	if single {
		firstSD, lastSD = y.nearErrors()
	}
	lowest, _ := zone.Bounds()
	use := func(m *median, rule When, sd float64, spring bool) {
		observed, any, half := observedFreeze(near, elevation, spring)
		switch {
		case single && (half || any && rule.Never && lowest < 30): // [usda-zones] under 30 °F it freezes in nearly every year
			*m = median{d: observed, sd: sd, known: true}
		case !rule.Never:
			*m = median{d: rule.D + beyondRule(near, elevation, spring), sd: sd, known: true}
		case single:
			*m = median{none: true}
		}
	}
	first, last := y.FirstFreeze(), y.LastFreeze()
	use(&y.freezes.first, first, firstSD, false)
	use(&y.freezes.last, last, lastSD, true)
}
