package nutrient

import (
	"math"

	"swardbook/agronomy"
)

// The growth potential says how fast grass can grow at a mean air temperature,
// 0 to 1: exp(−½ ((T − best) / spread)²). Over a half is good growth; at a
// tenth or less there is almost none. Warm-season grass is held at 1 above its
// best temperature. It says when grass grows, not how much to feed it: by
// itself it would put half the year's nitrogen into the summer of an inland
// place, where every calendar for cool-season grass feeds the fall.

// GrowthPotentialC is the form in Celsius, the one of the published scripts.
func GrowthPotentialC(mean float64, s agronomy.Season) float64 {
	if s == agronomy.Warm {
		return growth(mean, 31, 7, true) // [gp-code] [gp-pace]
	}
	return growth(mean, 20, 5.5, false) // [gp-code]
}

// GrowthPotentialF is the form in Fahrenheit, as printed for New York's golf
// courses. Its warm spread, 12 °F, is a little under the other's 7 °C.
func GrowthPotentialF(mean float64, s agronomy.Season) float64 {
	if s == agronomy.Warm {
		return growth(mean, 88, 12, true) // [ny-nmp-2019]
	}
	return growth(mean, 68, 10, false) // [ny-nmp-2019] [gp-grounds]
}

func growth(t, best, spread float64, hold bool) float64 {
	if hold && t > best {
		return 1
	}
	z := (t - best) / spread
	return math.Exp(-0.5 * z * z)
}
