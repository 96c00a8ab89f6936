package climate

import (
	"fmt"
	"math"
)

// Depths the soil model holds for: it was fitted at 2 and 4 in.
const (
	ShallowestSoil Inches = 1 // [model] section 5 fitted at 5 and 10 cm
	DeepestSoil    Inches = 6 // [model] section 5 fitted at 5 and 10 cm
)

// CheckDepth returns an error for a depth the soil model does not hold for.
func CheckDepth(depth Inches) error {
	if depth >= ShallowestSoil && depth <= DeepestSoil {
		return nil
	}
	return fmt.Errorf("soil depth %g in is outside the model, which holds from %g to %g in; ask for a depth between them", float64(depth), float64(ShallowestSoil), float64(DeepestSoil))
}

// SoilX is the conduction curve: the temperature the soil would have without
// snow and without the heat that freezing water gives off. It is the measure
// of how hard the ground freezes. It panics on a depth [CheckDepth] refuses.
func (y *Year) SoilX(depth Inches, d Day) Fahrenheit {
	return Fahrenheit(y.soil(depth).At(float64(d)))
}

// Soil is the normal soil temperature of the day under turf. It panics on a
// depth [CheckDepth] refuses.
func (y *Year) Soil(depth Inches, d Day) Fahrenheit { return y.limited(y.SoilX(depth, d)) }

// SoilOfYear gives [Year.Soil] for every day of the year; index 0 is not used.
func (y *Year) SoilOfYear(depth Inches) (all [daysPerYear + 1]Fahrenheit) {
	x := y.soil(depth)
	for d := 1; d <= daysPerYear; d++ {
		all[d] = y.limited(Fahrenheit(x.At(float64(d))))
	}
	return all
}

// soil is the conduction curve at a depth. [model] section 5
func (y *Year) soil(depth Inches) curve {
	if err := CheckDepth(depth); err != nil {
		panic("climate: " + err.Error())
	}
	m := (y.mean.Mean - 50) / 10 // [model] section 5
	offset := 1.5 + 1.3*m        // [model] section 5
	surface := 1.00 + 0.05*m     // [model] section 5
	if y.West {
		offset += 1.7   // [model] section 5
		surface += 0.14 // [model] section 5
	}
	const damping = 145.0 // cm, the depth by which the yearly swing falls to 1/e [model] section 5
	z := depth.centimeters() / damping
	return y.mean.delayed(y.mean.Mean+offset, surface*math.Exp(-z), z/omega)
}

// frostShare is how much of the frost below 32 °F reaches the soil. [model] section 5
func (y *Year) frostShare() float64 {
	if y.West {
		return 0.25 // [model] section 5
	}
	return 0.10 // [model] section 5
}

// limited holds the conduction curve back below freezing. [model] section 5
func (y *Year) limited(x Fahrenheit) Fahrenheit {
	if x >= 32 {
		return x
	}
	return 32 - Fahrenheit(y.frostShare())*(32-x)
}

// SoilFalls is the day in autumn on which the normal soil temperature falls
// through f. It panics on a depth [CheckDepth] refuses.
func (y *Year) SoilFalls(depth Inches, f Fahrenheit) When {
	d, how := y.soil(depth).falls(y.unlimited(f))
	return y.autumn(d, how, "soil at "+depth.String(), f)
}

// SoilRises is the day in spring on which the normal soil temperature rises
// through f. Under dense turf it is likely a few days later. It panics on a
// depth [CheckDepth] refuses.
func (y *Year) SoilRises(depth Inches, f Fahrenheit) When {
	d, how := y.soil(depth).rises(y.unlimited(f))
	return y.spring(d, how, "soil at "+depth.String(), f)
}

// unlimited is the inverse of limited: the temperature on the conduction curve at which
// the soil has temperature f.
func (y *Year) unlimited(f Fahrenheit) float64 {
	if f >= 32 {
		return float64(f)
	}
	return 32 - float64(32-f)/y.frostShare()
}
