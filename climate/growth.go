package climate

import "math"

// Season is the growth season of a grass.
type Season int

const (
	Cool Season = iota // cool-season grasses, such as the fescues, ryegrass, bluegrass
	Warm               // warm-season grasses, such as bermudagrass and zoysiagrass
)

// String writes the season: "cool-season" or "warm-season".
func (s Season) String() string {
	if s == Warm {
		return "warm-season"
	}
	return "cool-season"
}

// optimum and width of the growth potential. [gp-code] [gp-pace]
func (s Season) optimum() (best, width Celsius) {
	if s == Warm {
		return 31, 7 // [gp-code]
	}
	return 20, 5.5 // [gp-code]
}

// GrowthPotential is the share of its best growth, 0 to 1, that a grass
// reaches at a mean air temperature: exp(-((T - best)/width)² / 2). A
// warm-season grass keeps 1 above its optimum. [gp-code] [gp-pace]
func GrowthPotential(mean Fahrenheit, s Season) float64 {
	best, width := s.optimum()
	if s == Warm && mean.Celsius() > best {
		return 1 // [gp-pace]
	}
	x := float64((mean.Celsius() - best) / width)
	return math.Exp(-x * x / 2)
}

// growthAt is the mean air temperature on the cold side of the optimum at
// which the growth potential has the given value.
func (s Season) growthAt(potential float64) Fahrenheit {
	best, width := s.optimum()
	return (best - width*Celsius(math.Sqrt(-2*math.Log(potential)))).Fahrenheit()
}

// Growth potentials that mark the season's turns.
const (
	almostNone  = 0.10 // [gp-pace] at or below it there is almost no growth
	littleTaken = 0.20 // [soldat-fall] the share of soluble N still taken up in mid October
)

// Growth is the growth potential, 0 to 1, at the day's normal mean air temperature.
func (y *Year) Growth(d Day, s Season) float64 { return GrowthPotential(y.Mean(d), s) }

// GrowthEnds is the day in autumn on which top growth all but ends: the growth
// potential falls through 0.10. [gp-pace]
func (y *Year) GrowthEnds(s Season) When {
	return y.AirFalls(s.growthAt(almostNone)).growth(s, "growth ends", "grows all year", "to grow")
}

// GrowthSlows is the day in autumn from which nitrogen is no longer worth its
// while: the growth potential falls through 0.20, which for cool-season grass
// is about a mean of 50 °F. [soldat-fall]
func (y *Year) GrowthSlows(s Season) When {
	return y.AirFalls(s.growthAt(littleTaken)).growth(s, "nitrogen uptake no longer worth it", "takes up nitrogen all year", "for nitrogen to be worth it")
}

// GrowthBegins is the day in spring on which growth begins: the growth
// potential rises through 0.10. [gp-pace]
func (y *Year) GrowthBegins(s Season) When {
	return y.AirRises(s.growthAt(almostNone)).growth(s, "growth begins", "grows all year", "to grow")
}

func (w When) growth(s Season, event, always, tooCold string) When {
	switch {
	case w.Never && w.Below:
		w.Words = s.String() + " grass: it is never warm enough " + tooCold
	case w.Never:
		w.Words = s.String() + " grass " + always
	default:
		w.Words = s.String() + " grass: " + event
	}
	return w
}

// hot is the normal daily high from which heat strains cool-season grass.
const hot Fahrenheit = 85 // [common] no soluble nitrogen above 85 to 90 °F

// Heat is the stretch of days, from and to included, whose normal high is at
// or above 85 °F, when cool-season grass should be left alone; ok is false where there is
// no such day, and for warm-season grass, which likes the heat. In the South of the world
// the stretch may run over the year's end.
func (y *Year) Heat(s Season) (from, to Day, ok bool) {
	if s == Warm {
		return 0, 0, false
	}
	start, how := y.high.rises(float64(hot))
	switch how {
	case staysAbove:
		return 1, daysPerYear, true
	case staysBelow:
		return 0, 0, false
	}
	end, _ := y.high.falls(float64(hot))
	if start <= end && math.Ceil(start) > math.Floor(end) { // too short to hold a whole day
		return 0, 0, false
	}
	return wrap(math.Ceil(start)), wrap(math.Floor(end)), true
}
