package climate

import (
	"fmt"
	"math"
)

// Levels of the normal daily low at which half of the years have had their
// first, or last, night of 32 °F. [model] section 4
const (
	firstFreezeEast, firstFreezeWest = 42.8, 39.7 // [model] section 4
	lastFreezeEast, lastFreezeWest   = 42.6, 40.4 // [model] section 4
	lastFreezePerDegree              = -0.11      // [model] section 4, °F per degree of latitude
	neutralLatitude                  = 39.0       // [model] section 4
)

// FirstFreeze is the first night of autumn at or below 32 °F: the median of
// the years, or of the place's own records. It is Never where most years have
// none, and Never and Below where any month may freeze.
func (y *Year) FirstFreeze() When {
	level := firstFreezeEast
	if y.West {
		level = firstFreezeWest
	}
	d, how := y.low.falls(level)
	return y.freeze(d, how, y.freezes.first, "first autumn freeze", y.errors.firstFreeze, 6.8, 1.62) // [model] section 4
}

// LastFreeze is the last night of spring at or below 32 °F; see [Year.FirstFreeze].
func (y *Year) LastFreeze() When {
	level := lastFreezeEast
	if y.West {
		level = lastFreezeWest
	}
	d, how := y.low.rises(level + lastFreezePerDegree*(y.latitude-neutralLatitude))               // [model] section 4
	return y.freeze(d, how, y.freezes.last, "last spring freeze", y.errors.lastFreeze, 6.1, 1.84) // [model] section 4
}

// median is a median freeze day that comes from a source other than the freeze rule, with
// its error in days.
type median struct {
	d, sd      float64
	known, own bool // own: of the place's own records
	none       bool // it is known that most years have none
}

type medians struct{ first, last median }

// freeze adds the year-to-year spread a + b/g, g the slope of the daily low. [model] section 4
func (y *Year) freeze(d float64, how crossing, instead median, what string, placeSD, a, b float64) When {
	if instead.known {
		d, how, placeSD = instead.d, crosses, instead.sd
	}
	if instead.none {
		how = staysAbove
	}
	if instead.own {
		what += ", from own records"
	}
	switch how {
	case staysAbove:
		return When{Never: true, Words: what + ": none in most years"}
	case staysBelow:
		return When{Never: true, Below: true, Words: what + ": any month may freeze"}
	}
	g := max(math.Abs(y.low.slope(d)), 0.10) // [model] section 4
	yearSD := a + b/g
	return When{D: d, SD: math.Hypot(placeSD, yearSD), YearSD: yearSD, Words: what}
}

// FreezeOdds is the chance, 0 to 1, that frosts are not yet over on a day or
// begin again within the given number of days (0 or more) after it: the risk
// to a seeding that must stand that long. It is 0 where most years do not
// freeze.
func (y *Year) FreezeOdds(from Day, days int) float64 {
	start := float64(from)
	for start < y.low.warmest-daysPerYear/2.0 {
		start += daysPerYear
	}
	for start >= y.low.warmest+daysPerYear/2.0 {
		start -= daysPerYear
	}
	first, last := y.FirstFreeze(), y.LastFreeze()
	if first.Below || last.Below {
		return 1
	}
	over := 1.0
	if !last.Never {
		over = last.chance(start)
	}
	return 1 - over*(1-first.chance(start+float64(max(days, 0))))
}

// inSingleNights tells whether the normal daily low stays so high that
// freezes, if any, come in single nights, which the rule misses. [model] section 4
func (y *Year) inSingleNights() bool { return y.low.min() > 34 } // [model] section 4

// useObserved replaces the dates of the freeze rule by the medians observed around the
// place, where freezes come in single nights: there the rule is late in autumn and early
// in spring, or finds no freeze at all. [model] section 4
func (y *Year) useObserved(m medians) {
	if !y.inSingleNights() {
		return
	}
	for m.first.known && m.first.d > y.low.warmest+daysPerYear { // a row moved to the South has its days half a year later
		m.first.d -= daysPerYear
	}
	for m.last.known && m.last.d > y.low.warmest {
		m.last.d -= daysPerYear
	}
	y.freezes = m
}

// pairFreezes gives a place with only a first or only a last freeze the other one too. The
// rules for the two differ by a degree or so, and one may find no freeze where the other
// does: the missing freeze is put on the coldest day.
func (y *Year) pairFreezes() {
	first, last := y.FirstFreeze(), y.LastFreeze()
	switch {
	case first.Never && !first.Below && !last.Never:
		y.freezes.first = median{d: y.low.coldest, sd: y.errors.firstFreeze, known: true}
	case last.Never && !last.Below && !first.Never:
		y.freezes.last = median{d: y.low.coldest - daysPerYear, sd: y.errors.lastFreeze, known: true}
	}
}

// noteFreezes says what is unusual about the freezes of the place, and what its half-zone
// means for them; a zone below 0 is not known.
func (y *Year) noteFreezes(zone Zone) {
	first := y.FirstFreeze()
	if y.inSingleNights() && !first.Never {
		y.note("Freezes come only in single nights here, so their dates are less sure than elsewhere.")
	}
	if first.Never && !first.Below && !y.freezes.first.none && y.low.min() < firstFreezeEast+5 { // [common] °F above the rule's level, where there is no doubt
		y.note("No freeze is expected in most years, by a rule that misses freezes in single nights: ask people who have lived there long.")
	}
	if zone < 0 || !first.Never && !y.inSingleNights() {
		return
	}
	lowest, highest := zone.Bounds()
	if lowest < 32 && !(first.Never && first.Below) {
		y.note("Zone %s means that the lowest night of the year averages %.0f to %.0f °F: be ready to cover what a freeze would kill.", zone, float64(lowest), float64(highest))
	}
}

// useOwnFreezes replaces the model's freeze days by the medians of the place's own
// records. It moves the freeze dates only, not the temperatures.
func (y *Year) useOwnFreezes(first, last Day) (problems PlaceErrors) {
	if first == 0 && last == 0 {
		return nil
	}
	model := [2]When{y.FirstFreeze(), y.LastFreeze()}
	if first != 0 {
		own := median{d: float64(first), known: true, own: true} // taken as exact
		for own.d < y.low.warmest {
			own.d += daysPerYear
		}
		y.freezes.first = own
		if own.d > y.low.coldest+45 { // [common] past midwinter it is no autumn
			problems = append(problems, PlaceError{"first_freeze", fmt.Sprintf("%s is not in the autumn of this place", first), "first_freeze is the first freeze after summer, last_freeze the last one before it"})
		}
	}
	if last != 0 {
		own := median{d: float64(last), known: true, own: true}
		for own.d > y.low.warmest {
			own.d -= daysPerYear
		}
		y.freezes.last = own
		if own.d < y.low.coldest-daysPerYear-45 { // [common]
			problems = append(problems, PlaceError{"last_freeze", fmt.Sprintf("%s is not in the spring of this place", last), "first_freeze is the first freeze after summer, last_freeze the last one before it"})
		}
	}
	y.From += ", freeze dates from own records"
	for i, own := range [2]When{y.FirstFreeze(), y.LastFreeze()} {
		if (i == 0 && first == 0) || (i == 1 && last == 0) {
			continue
		}
		switch {
		case model[i].Never:
			y.note("Your records put the %s on %s; the model expects none in most years. The records are used.", [2]string{"first freeze", "last freeze"}[i], own.Day())
		default:
			shift := own.D - model[i].D
			y.note("Your records put the %s on %s, %s than the model's %s; the temperatures themselves are not moved.", [2]string{"first freeze", "last freeze"}[i], own.Day(), apart(shift), model[i].Day())
			if math.Abs(shift) > 3*model[i].SD {
				y.note("That is far from the model: check the record and the place.")
			}
		}
	}
	return problems
}

func apart(days float64) string {
	n := int(math.Round(math.Abs(days)))
	if days < 0 {
		return plural(n, "day") + " earlier"
	}
	return plural(n, "day") + " later"
}
