package climate

import (
	"fmt"
	"math"
)

// Year is the climate of a place: smooth cycles of the daily mean, high and
// low, and everything that follows from them. It is made by [Place.Year] and
// does not change. A day's figure is what is normal for the day; single days
// scatter about it by 5 to 9 °F.
type Year struct {
	From     string      // the knowledge used, such as "state and hardiness zone"
	Where    string      // the place as understood, such as "44109, Cleveland OH"; "" if not by position
	Better   []string    // what would narrow its dates, by how much, best first
	Notes    []string    // what the user should know about these figures
	Doubts   PlaceErrors // what is given twice and does not agree
	Zone     string      // half-zone: as given, or that of the stations around; "" if neither
	Southern bool        // summer lies about January
	West     bool        // the constants of the western states are used
	MeanSD   Fahrenheit  // typical error of a month's mean at this place

	mean, low, high curve
	errors          placeErrors
	latitude        float64 // degrees from the equator, within the range fitted
	freezes         medians // used instead of the dates of the freeze rule, where known
}

// FromCycles is the year of a place whose daily mean and daily range (high
// minus low) are known as cycles, with the errors of monthly normals; west is
// as [West] says, latitude in degrees.
func FromCycles(mean, spread Cycle, west bool, latitude float64) *Year {
	y := newYear("cycles of the daily mean and range", west, mean, spread, errorsOfNormals())
	y.setLatitude(latitude)
	return y
}

// newYear joins the cycles of the mean and of the daily range. [model] section 2
func newYear(from string, west bool, mean, spread Cycle, e placeErrors) *Year {
	y := &Year{
		From: from, West: west, MeanSD: e.month, errors: e, latitude: neutralLatitude,
		mean: newCurve(mean),
		low:  newCurve(mean.Plus(-0.5, spread)), // [model] section 2
		high: newCurve(mean.Plus(0.5, spread)),  // [model] section 2
	}
	if y.inSingleNights() {
		y.errors.firstFreeze = max(y.errors.firstFreeze, singleNights)
		y.errors.lastFreeze = max(y.errors.lastFreeze, singleNights)
	}
	return y
}

// setLatitude keeps the distance from the equator, within the range the
// spring freeze rule was fitted on.
func (y *Year) setLatitude(lat float64) {
	y.latitude = min(max(math.Abs(lat), southernStation), northernStation)
	if y.latitude != math.Abs(lat) {
		y.note("The spring freeze rule was fitted between 24.5 and 49.5 degrees; it is used as at %g degrees.", y.latitude)
	}
}

func (y *Year) note(format string, args ...any) {
	y.Notes = append(y.Notes, fmt.Sprintf(format, args...))
}

func (y *Year) doubt(field, hint, format string, args ...any) {
	y.Doubts = append(y.Doubts, PlaceError{field, fmt.Sprintf(format, args...), hint})
}

// Mean is the normal mean air temperature of the day.
func (y *Year) Mean(d Day) Fahrenheit { return Fahrenheit(y.mean.At(float64(d))) }

// High is the normal daily high.
func (y *Year) High(d Day) Fahrenheit { return Fahrenheit(y.high.At(float64(d))) }

// Low is the normal daily low.
func (y *Year) Low(d Day) Fahrenheit { return Fahrenheit(y.low.At(float64(d))) }

// Warmest is the day with the highest normal mean air temperature.
func (y *Year) Warmest() Day { return wrap(y.mean.warmest) }

// Coldest is the day with the lowest normal mean air temperature.
func (y *Year) Coldest() Day { return wrap(y.mean.coldest) }

// AirFalls is the day in autumn on which the normal mean air temperature falls
// through f.
func (y *Year) AirFalls(f Fahrenheit) When {
	d, how := y.mean.falls(float64(f))
	return y.autumn(d, how, "mean air temperature", f)
}

// AirRises is the day in spring on which the normal mean air temperature rises
// through f.
func (y *Year) AirRises(f Fahrenheit) When {
	d, how := y.mean.rises(float64(f))
	return y.spring(d, how, "mean air temperature", f)
}

// When is one dated event of the year.
//
// D is the day number: D rounded is the calendar day, and noon of calendar day
// d is D = d. Events of autumn lie after the warmest day of the year and
// events of spring before it, on one line: in the North an autumn event of 11
// January has D = 376, and in the South, where the warmest day is in January,
// a spring event of 10 September has D = -112.
//
// SD is the standard deviation in days for one coming year at this place: the
// error of the median and the year-to-year spread together; YearSD is the
// year-to-year spread alone. [model] section 7
type When struct {
	D      float64
	SD     float64
	YearSD float64
	Never  bool // does not happen here in most years; D and SD are 0
	Below  bool // with Never: the temperature stays below the level all year, not above it
	// Quantile marks an event whose D is itself the date in an early or a middling
	// year, so that no early and late day are to be given for it.
	Quantile bool
	Words    string // what happens, such as "soil at 2 in (5 cm) falls through 50 °F (10 °C)"
}

// eightInTen is the normal law's factor for the 10 % and 90 % dates.
const eightInTen = 1.2816 // [model] section 4

// Day is the calendar day of the event, 0 if it never comes.
func (w When) Day() Day {
	if w.Never {
		return 0
	}
	return wrap(w.D)
}

// Early is the day number before which the event comes in one year in ten.
func (w When) Early() float64 { return w.D - eightInTen*w.SD }

// Late is the day number after which the event comes in one year in ten.
func (w When) Late() float64 { return w.D + eightInTen*w.SD }

// EarlyDay and LateDay are the calendar days of Early and Late, 0 if the event
// never comes.
func (w When) EarlyDay() Day { return w.dayAt(w.Early()) }

func (w When) LateDay() Day { return w.dayAt(w.Late()) }

func (w When) dayAt(d float64) Day {
	if w.Never {
		return 0
	}
	return wrap(d)
}

// Before and After are the whole days from the event's day back to its early
// and on to its late day.
func (w When) Before() int { return whole(w.D) - whole(w.Early()) }

func (w When) After() int { return whole(w.Late()) - whole(w.D) }

// whole rounds a day number or a number of days; every date and span is rounded by it.
func whole(days float64) int { return int(math.Floor(days + 0.5)) }

// Within is the whole days either way of D within which 8 years in 10 fall.
func (w When) Within() int { return whole(eightInTen * w.SD) }

// chance is the share of years in which the event has come by day number d.
func (w When) chance(d float64) float64 {
	if w.Never {
		return 0
	}
	return normalLaw((d - w.D) / w.SD)
}

// moved is the event `days` later under another name, with the same spread.
func (w When) moved(days float64, words string) When {
	w.Words = words
	if !w.Never {
		w.D += days
	}
	return w
}

// autumn makes the event of a temperature that falls through f on day d, spring that of
// one that rises through f; what names the temperature. [model] section 7
func (y *Year) autumn(d float64, how crossing, what string, f Fahrenheit) When {
	place, year := y.errors.fall, yearFall
	if f <= 40 { // [model] section 7, corrections
		place, year = y.errors.fall40, yearFall40
	}
	return passing(d, how, what, "falls", f, math.Hypot(place, year), year)
}

func (y *Year) spring(d float64, how crossing, what string, f Fahrenheit) When {
	year := yearSpring
	if y.latitude < southOfNorth { // [model] section 7, corrections
		year = yearSpringSouth
	}
	return passing(d, how, what, "rises", f, math.Hypot(y.errors.spring, year), year)
}

func passing(d float64, how crossing, what, verb string, f Fahrenheit, sd, yearSD float64) When {
	switch how {
	case staysAbove:
		return When{Never: true, Words: what + " stays above " + f.String() + " all year"}
	case staysBelow:
		return When{Never: true, Below: true, Words: what + " stays below " + f.String() + " all year"}
	}
	return When{D: d, SD: sd, YearSD: yearSD, Words: what + " " + verb + " through " + f.String()}
}

func normalLaw(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }
