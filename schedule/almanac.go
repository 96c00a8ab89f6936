package schedule

import (
	"math"
	"time"

	"swardbook/agronomy/nutrient"
	"swardbook/climate"
)

// almanac lays the events of the place's year on dates. Year y holds the
// spring, the warmest day and the autumn that belong together; its autumn may
// reach into the next calendar year, and in the southern half of the world its
// spring lies in the one before.
type almanac struct {
	*climate.Year
	start, through Date

	ground           climate.Ground
	freeze, soil50   climate.When // the first freeze; soil at 2 in falls through 50 °F
	warmest, coldest climate.When
	open             []opening // stretches of open ground around the program
	lasts            map[lastKey]lastRule
	growths          map[climate.Season]*growth
}

// growth is the course of one kind of grass through the place's year.
type growth struct {
	begins, slows, ends climate.When
	potential           [366]float64 // by the day of the year, 0 to 1
}

type lastKey struct {
	kind   nutrient.LastKind
	season climate.Season
}

func newAlmanac(y *climate.Year, start, through Date) *almanac {
	warm := climate.When{D: float64(y.Warmest())}
	cold := climate.When{D: float64(y.Coldest())}
	if cold.D > warm.D { // the winter before the warmest day, on one line with it
		cold.D -= 365
	}
	a := &almanac{Year: y, start: start, through: through, ground: y.Ground(), freeze: y.FirstFreeze(), soil50: y.SoilFalls(2, 50), warmest: warm, coldest: cold, lasts: map[lastKey]lastRule{}, growths: map[climate.Season]*growth{}}
	a.open = a.openGround()
	return a
}

// growth gives the course of a kind of grass, worked out once.
func (a *almanac) growth(s climate.Season) *growth {
	g, known := a.growths[s]
	if !known {
		g = &growth{begins: a.GrowthBegins(s), slows: a.GrowthSlows(s), ends: a.GrowthEnds(s)}
		for day := climate.Day(1); day <= 365; day++ {
			g.potential[day] = a.Growth(day, s)
		}
		a.growths[s] = g
	}
	return g
}

// on gives the growth potential of a date, 0 to 1.
func (g *growth) on(d Date) float64 { return g.potential[d.DayOfYear()] }

// on gives the date of an event in year y.
func (a *almanac) on(w climate.When, y int) Date {
	n := int(math.Round(w.D))
	for n < 1 {
		n, y = n+365, y-1
	}
	for n > 365 {
		n, y = n-365, y+1
	}
	return Date{y, time.January, 1}.onDay(climate.Day(n))
}

// after gives the first date of an event on or after d; the unset date for an
// event that never comes.
func (a *almanac) after(w climate.When, d Date) Date {
	if w.Never {
		return Date{}
	}
	for y := d.Year - 2; ; y++ {
		if on := a.on(w, y); !on.Before(d) {
			return on
		}
	}
}

// years lists the years whose season can touch the program or come next
// after it.
func (a *almanac) years() []int {
	var ys []int
	for y := a.start.Year - 1; y <= a.through.Year+2; y++ {
		ys = append(ys, y)
	}
	return ys
}

// turfYear names the growing year in which d falls: for cool-season grass it
// runs from the warmest day, as an autumn and the spring after it build one
// stand; for warm-season grass from the coldest.
func (a *almanac) turfYear(d Date, s climate.Season) int {
	y := d.Year + 1
	for a.yearBegins(y, s).After(d) {
		y--
	}
	return y
}

// yearBegins gives the first day of a turf year.
func (a *almanac) yearBegins(y int, s climate.Season) Date {
	if s == climate.Cool {
		return a.on(a.warmest, y)
	}
	return a.on(a.coldest, y)
}
