package climate

import (
	_ "embed"
	"math"
	"strconv"
	"strings"
)

// hardinessTable has one row per state and half-zone, then pooled rows with
// "*" for the zone or the state. data/README.md describes its columns.
//
//go:embed data/hardiness.csv
var hardinessTable string

// elsewhereTable has the pooled rows of Alaska and Hawaii, in the same columns.
//
//go:embed data/elsewhere.csv
var elsewhereTable string

// row is one row of the table: a place's ten numbers and their errors. An error is 0 if
// the table does not give it.
type row struct {
	state, zone       string
	stations          int
	lat, lon          float64
	elevation         Meters  // unknown for a row without stations
	mean, spread      Cycle   // daily mean temperature; daily high minus low
	month             float64 // °F, typical error of one month's mean
	fall50, spring50  float64 // days, error of the day the air passes 50 °F
	firstFreeze, last float64 // days, error of the freeze medians
	observed          medians // mean of the published medians of its stations
	mostFreeze        bool    // half of the stations publish a median: most years have a freeze
}

// stateRows is the part of the table that lists the state's half-zones, one a
// line; "" for a state it does not know.
func stateRows(state string) string {
	start := strings.Index(hardinessTable, "\n"+state+",")
	if len(state) != 2 || start < 0 {
		return ""
	}
	rows := hardinessTable[start+1:]
	end := 0
	for strings.HasPrefix(rows[end:], state+",") {
		end += strings.IndexByte(rows[end:], '\n') + 1
	}
	return rows[:end]
}

// hasState tells whether the table has rows of half-zones for the state.
func hasState(state string) bool { return stateRows(state) != "" }

// findRow reads the row of a state and zone; "*" pools. Only that row is parsed.
func findRow(state, zone string) (row, bool) {
	for _, table := range [2]string{hardinessTable, elsewhereTable} {
		if start := strings.Index(table, "\n"+state+","+zone+","); start >= 0 {
			line, _, _ := strings.Cut(table[start+1:], "\n")
			return parseRow(line), true
		}
	}
	return row{}, false
}

// nearestZone returns the state's listed half-zone closest to z; of two
// equally close ones the colder, whose frosts come earlier.
func nearestZone(state string, z Zone) Zone {
	best := Zone(-1)
	for line := range strings.Lines(stateRows(state)) {
		name, _, _ := strings.Cut(line[len(state)+1:], ",")
		listed, err := ParseZone(name)
		if err != nil { // the pooled rows have no zone
			continue
		}
		if best < 0 || distance(listed, z) < distance(best, z) || distance(listed, z) == distance(best, z) && listed < best {
			best = listed
		}
	}
	return best
}

func distance(a, b Zone) int { return max(int(a-b), int(b-a)) }

func parseRow(line string) row {
	f := strings.Split(line, ",")
	n := func(i int) float64 { // the table is ours and tested: a blank is 0
		x, _ := strconv.ParseFloat(f[i], 64)
		return x
	}
	r := row{
		state: f[0], zone: f[1], stations: int(n(2)),
		lat: n(4), lon: n(5), elevation: Meters(n(6)),
		mean:   Cycle{n(7), n(8), n(9), n(10), n(11)},
		spread: Cycle{n(12), n(13), n(14), n(15), n(16)},
		month:  n(20), fall50: n(21), spring50: n(22),
		firstFreeze: n(28), last: n(29),
	}
	if f[25] != "" {
		r.observed = medians{median{d: n(25), known: true}, median{d: n(26), known: true}}
		r.mostFreeze = 2*n(27) >= n(2)
	}
	return r
}

// Moves of the ten numbers, [model] section 3: mean air temperature first,
// daily range second.
type move struct{ mean, spread Cycle }

var (
	// elevation alone, per km
	perKm = move{Cycle{-5.40, 2.14, -0.10, 0.62, 0.18}, Cycle{-0.38, 0.00, 0.28, 0.85, -0.01}} // [model] section 3
	// half-zones: b z + q z z, z in units of 10 °F
	perZone       = move{Cycle{4.373, 1.488, 0.363, 0.080, 0.071}, Cycle{-1.785, 0.425, 0.129, -0.045, -0.220}} // [model] section 3
	perZoneSquare = move{Cycle{0.109, 0.178, 0.014, -0.063, -0.112}, Cycle{-0.278, 0.213, 0.078, 0.095, 0.040}} // [model] section 3
)

func (r *row) add(k float64, m move) {
	r.mean = r.mean.Plus(k, m.mean)
	r.spread = r.spread.Plus(k, m.spread)
}

// toZone moves the row from its own half-zone to another.
func (r *row) toZone(from, to Zone) {
	steps := float64(to - from)
	z := (from.middle() + to.middle()) / 2
	r.add(steps/2, perZone) // [model] section 3: (b + 2 q z)/2 a step
	r.add(steps*z, perZoneSquare)
}

// mirror moves the row by half a year, to the other half of the world.
func (r *row) mirror() {
	r.mean = r.mean.delayed(r.mean.Mean, 1, daysPerYear/2.0)
	r.spread = r.spread.delayed(r.spread.Mean, 1, daysPerYear/2.0)
	for _, m := range [2]*median{&r.observed.first, &r.observed.last} {
		m.d += daysPerYear / 2.0
	}
}

// toElevation moves the row to a height.
func (r *row) toElevation(to Meters) {
	r.add(float64(to-r.elevation)/1000, perKm)
}

// placeErrors are the errors of what is worked out for a place, as standard deviations: of
// a monthly mean in °F, of dates in days. They come on top of the year-to-year spread.
type placeErrors struct {
	month                   Fahrenheit
	fall, spring            float64 // a temperature crossed in autumn, in spring
	fall40                  float64 // the same in autumn at 40 °F and below
	firstFreeze, lastFreeze float64
	frozen                  float64 // the first frozen soil, year-to-year spread included
}

// Year-to-year spread of the day the smoothed temperature passes a level, and
// the whole spread of the first frozen soil. [model] section 7
const (
	yearFall, yearFall40                   = 8.0, 11.0  // [model] section 7; corrected at 40 °F and below
	yearSpring, yearSpringSouth            = 9.0, 11.0  // [model] section 7; corrected south of 41 degrees
	southOfNorth                           = 41.0       // [model] section 7, degrees
	frozenTable, frozenNormals             = 20.0, 16.0 // [model] section 7
	normalsFall, normalsSpring             = 9.0, 10.0  // [model] section 7, whole spread from own normals
	normalsFirst, normalsLast              = 4.0, 4.5   // [model] section 7, error of the median
	singleNights                           = 8.0        // [model] section 4, error where freezes come in single nights
	rowFirst, rowLast                      = 7.3, 8.2   // [model] section 4, error of a row's observed medians in such places
	normalsMonth                Fahrenheit = 0.6        // [model] section 2, residual of two harmonics
)

func errorsOfNormals() placeErrors {
	return placeErrors{
		month:       normalsMonth,
		fall:        math.Sqrt(normalsFall*normalsFall - yearFall*yearFall),
		fall40:      math.Sqrt(normalsFall*normalsFall - yearFall*yearFall),
		spring:      math.Sqrt(normalsSpring*normalsSpring - yearSpring*yearSpring),
		firstFreeze: normalsFirst, lastFreeze: normalsLast, frozen: frozenNormals,
	}
}

// Errors, in days, of the medians observed by the stations around a position where
// freezes come in single nights. For the East they are the study's; for the West they come
// from leaving out each station in turn, and are larger than the study's 10.1 and 17.5.
const (
	nearFirstEast, nearFirstWest = 7.6, 14.1 // [model] section 4
	nearLastEast, nearLastWest   = 9.5, 22.7 // [model] section 4
)

// errorsOfPosition are the errors of a place that is worked out from the stations around
// it, with or without its elevation. They were measured on all 5,912 stations, each left
// out in turn; the study left out 1,800 and came within 9 % of these. The spread of the
// first frozen soil is that for monthly normals, with the error of the air's autumn dates
// added. [model] section 3b, 7
func errorsOfPosition(west, elevation bool) placeErrors {
	e := placeErrors{month: 1.26, fall: 3.5, fall40: 3.8, spring: 4.3, firstFreeze: 5.7, lastFreeze: 5.7} // [model] section 3b
	switch {
	case west && elevation:
		e = placeErrors{month: 1.86, fall: 5.3, fall40: 5.4, spring: 6.9, firstFreeze: 9.3, lastFreeze: 10.4} // [model] section 3b
	case west:
		e = placeErrors{month: 2.80, fall: 8.0, fall40: 7.0, spring: 13.0, firstFreeze: 9.6, lastFreeze: 12.3} // [model] section 3b
	case elevation:
		e = placeErrors{month: 1.09, fall: 3.1, fall40: 3.3, spring: 3.8, firstFreeze: 5.7, lastFreeze: 5.7} // [model] section 3b
	}
	e.frozen = math.Hypot(frozenNormals, e.fall40)
	return e
}

// errorsOfRow takes the row's own errors; where it has none, the typical ones
// of the East or, for the West and for a zone without a state, of the West.
func errorsOfRow(r row, west bool) placeErrors {
	fall, spring, first, last := math.Sqrt(9*9-8*8.0), math.Sqrt(11*11-9*9.0), 6.0, 7.0 // [model] section 7, East
	if west || r.state == "*" {
		fall, spring, first, last = math.Sqrt(12*12-8*8.0), math.Sqrt(19*19-9*9.0), 10, 14 // [model] section 7, West
	}
	if outside, _ := outsideTable(r.state); outside != "" {
		fall = r.month / 0.45 // [common] °F a day, the slope of the mean in autumn and spring
		spring = fall
	}
	or := func(given, typical float64) float64 {
		if given > 0 {
			return given
		}
		return typical
	}
	return placeErrors{
		month: Fahrenheit(r.month),
		fall:  or(r.fall50, fall), fall40: or(r.fall50, fall), spring: or(r.spring50, spring),
		firstFreeze: or(r.firstFreeze, first), lastFreeze: or(r.last, last),
		frozen: frozenTable,
	}
}

// sharpen shrinks the errors for a row moved to the place's height. [model] section 7
func (e *placeErrors) sharpen(west bool) {
	temperature, freeze := 0.95, 0.95 // [model] section 7, East
	if west {
		temperature, freeze = 0.8, 0.9 // [model] section 7
	}
	e.month *= Fahrenheit(temperature)
	e.fall *= temperature
	e.fall40 *= temperature
	e.spring *= temperature
	e.firstFreeze *= freeze
	e.lastFreeze *= freeze
}
