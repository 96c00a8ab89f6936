package schedule

import (
	"math"
	"time"

	"swardbook/agronomy/nutrient"
	"swardbook/climate"
)

// Almanac lays the events of the place's year on dates. Year y holds the
// spring, the warmest day and the autumn that belong together; its autumn may
// reach into the next calendar year, and in the southern half of the world its
// spring lies in the one before.
type Almanac struct {
	*climate.Year
	start, through Date

	Ground           climate.Ground
	freeze, soil50   climate.When // the first freeze; soil at 2 in falls through 50 °F
	Warmest, Coldest climate.When
	Open             []Opening // stretches of open ground around the program
	lasts            map[lastKey]lastRule
	growths          map[climate.Season]*Growth
}

// Growth is the course of one kind of grass through the place's year.
type Growth struct {
	Begins, Slows, Ends climate.When
	potential           [366]float64 // by the day of the year, 0 to 1
	heat                [2]climate.Day
	hot                 bool // the year has a heat
}

type lastKey struct {
	kind   nutrient.LastKind
	season climate.Season
}

// NewAlmanac lays the year of a place on the dates around a program.
func NewAlmanac(y *climate.Year, start, through Date) *Almanac {
	warm := climate.When{D: float64(y.Warmest())}
	cold := climate.When{D: float64(y.Coldest())}
	if cold.D > warm.D { // the winter before the warmest day, on one line with it
		cold.D -= 365
	}
	a := &Almanac{Year: y, start: start, through: through, Ground: y.Ground(), freeze: y.FirstFreeze(), soil50: y.SoilFalls(2, 50), Warmest: warm, Coldest: cold, lasts: map[lastKey]lastRule{}, growths: map[climate.Season]*Growth{}}
	a.Open = a.openGround()
	return a
}

// To gives the same almanac for a program with another last day.
func (a *Almanac) To(through Date) *Almanac {
	b := *a
	b.through, b.lasts = through, map[lastKey]lastRule{}
	b.Open = b.openGround()
	return &b
}

// GrowthOf gives the course of a kind of grass, worked out once.
func (a *Almanac) GrowthOf(s climate.Season) *Growth {
	g, known := a.growths[s]
	if !known {
		g = &Growth{Begins: a.GrowthBegins(s), Slows: a.GrowthSlows(s), Ends: a.GrowthEnds(s)}
		for day := climate.Day(1); day <= 365; day++ {
			g.potential[day] = a.Growth(day, s)
		}
		g.heat[0], g.heat[1], g.hot = a.Year.Heat(s)
		a.growths[s] = g
	}
	return g
}

// Heat is [climate.Year.Heat], worked out once.
func (a *Almanac) Heat(s climate.Season) (from, to climate.Day, ok bool) {
	g := a.GrowthOf(s)
	return g.heat[0], g.heat[1], g.hot
}

// on gives the growth potential of a date, 0 to 1.
func (g *Growth) on(d Date) float64 { return g.potential[d.DayOfYear()] }

// On gives the date of an event in year y.
func (a *Almanac) On(w climate.When, y int) Date {
	n := int(math.Round(w.D))
	for n < 1 {
		n, y = n+365, y-1
	}
	for n > 365 {
		n, y = n-365, y+1
	}
	return Date{y, time.January, 1}.OnDay(climate.Day(n))
}

// After gives the first date of an event on or after d; the unset date for an
// event that never comes.
func (a *Almanac) After(w climate.When, d Date) Date {
	if w.Never {
		return Date{}
	}
	for y := d.Year - 2; ; y++ {
		if on := a.On(w, y); !on.Before(d) {
			return on
		}
	}
}

// Years lists the years whose season can touch the program or come next
// after it.
func (a *Almanac) Years() []int {
	var ys []int
	for y := a.start.Year - 1; y <= a.through.Year+2; y++ {
		ys = append(ys, y)
	}
	return ys
}

// TurfYear names the growing year in which d falls: for cool-season grass it
// runs from the warmest day, as an autumn and the spring after it build one
// stand; for warm-season grass from the coldest.
func (a *Almanac) TurfYear(d Date, s climate.Season) int {
	y := d.Year + 1
	for a.YearBegins(y, s).After(d) {
		y--
	}
	return y
}

// joinsNext is how many days before a turf year begins a start or a sowing already
// belongs to it: so late the old season brings nothing more.
const joinsNext = 45 // [unl-calc, ill-1995] spring feeding ends in May to early June

// SeasonOf names the season to which a start or a sowing on d belongs. If it slips past
// the day on which the turf year begins by a week, its jobs keep their season and so
// their names.
func (a *Almanac) SeasonOf(d Date, s climate.Season) int { return a.TurfYear(d.AddDays(joinsNext), s) }

// YearBegins gives the first day of a turf year.
func (a *Almanac) YearBegins(y int, s climate.Season) Date {
	if s == climate.Cool {
		return a.On(a.Warmest, y)
	}
	return a.On(a.Coldest, y)
}
