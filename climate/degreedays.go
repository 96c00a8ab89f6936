package climate

import "math"

// dayToDay is the scatter of single days about the normal, used all year.
const dayToDay = 8.0 // °F [model] section 2

// DegreeDays is the yearly sum of growing degree days, in °F, to be expected
// above a base temperature. It comes within 12 ± 77 of published base-50
// totals. [model] section 2
func (y *Year) DegreeDays(base Fahrenheit) float64 {
	sum := 0.0
	for d := Day(1); d <= daysPerYear; d++ {
		sum += y.DegreeDay(d, base)
	}
	return sum
}

// DegreeDay is the growing degree days, in °F, to be expected on one day. [model] section 2
func (y *Year) DegreeDay(d Day, base Fahrenheit) float64 {
	z := float64(y.Mean(d) - base)
	u := z / dayToDay
	return z*normalLaw(u) + dayToDay*math.Exp(-u*u/2)/math.Sqrt(2*math.Pi) // [model] section 2
}
