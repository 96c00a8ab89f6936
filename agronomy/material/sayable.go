package material

import (
	"fmt"
	"math"

	"swardbook/agronomy"
)

// Sayable rounds a dose to an amount that a person can weigh or measure out on the
// area, and gives the dose of that amount: down where up would pass a cap. Steps:
// ounces under 1 lb, a tenth under 10, one under 50, above it five or half a pack,
// whichever is nearer; in metric 10 g, 0.1 kg, 0.5 kg and 2 kg; liquids in fluid
// ounces and tenths of a gallon, or 10 mL and tenths of a liter. [common]
func (d Dose) Sayable(area agronomy.SquareFeet, c Caps, metric bool) Dose {
	weight := float64(d.Rate.Over(area))
	if !(weight > 0) || math.IsInf(weight, 1) {
		return d
	}
	steps := d.steps(weight, metric)
	best, found := d, false
	for _, step := range steps {
		for _, w := range []float64{math.Round(weight/step) * step, math.Floor(weight/step+1e-9) * step} {
			rate, err := RateOf(agronomy.Pounds(w), area)
			if err != nil || w <= 0 {
				continue
			}
			x := DoseOf(d.Material, rate)
			if c.passedBy(x) {
				continue
			}
			if !found || math.Abs(float64(x.Rate-d.Rate)) < math.Abs(float64(best.Rate-d.Rate)) {
				best, found = x, true
			}
		}
	}
	if !found || math.Abs(float64(best.Rate/d.Rate-1)) < 1e-9 {
		return d
	}
	best.BoundBy, best.ByCap, best.Over, best.Under = d.BoundBy, d.ByCap, d.Over, d.Under
	best.Why = append(d.Why[:len(d.Why):len(d.Why)], agronomy.Reason{
		Text: fmt.Sprintf("%s lb on the area, rounded to what a person can weigh: %s lb, so %s lb of product per 1000 sq ft", agronomy.Figures(weight, 4), agronomy.Figures(float64(best.Rate.Over(area)), 4), agronomy.Figures(float64(best.Rate), 4)), Source: "common"})
	return best
}

// SayableWithin rounds a dose that stands at its most down to an amount that a person
// can weigh, in the steps of [Dose.Sayable]. What is less than a step stays as it is.
func (d Dose) SayableWithin(area agronomy.SquareFeet, metric bool) Dose {
	weight := float64(d.Rate.Over(area))
	if !(weight > 0) || math.IsInf(weight, 1) {
		return d
	}
	best := 0.0
	for _, step := range d.steps(weight, metric) {
		best = max(best, math.Floor(weight/step+1e-9)*step)
	}
	rate, err := RateOf(agronomy.Pounds(best), area)
	if err != nil || best <= 0 {
		return d
	}
	return DoseOf(d.Material, rate)
}

// steps gives the steps in which an amount of the material is measured, in pounds.
func (d Dose) steps(weight float64, metric bool) []float64 {
	const perKilogram = agronomy.PoundsPerKilogram
	m := d.Material
	switch density := float64(m.Density); {
	case m.Liquid && density > 0 && metric:
		const perLiter = 1 / agronomy.LitersPerGallon
		if weight/density < perLiter {
			return []float64{density * perLiter / 100}
		}
		return []float64{density * perLiter / 10}
	case m.Liquid && density > 0:
		if weight < density {
			return []float64{density / FluidOuncesPerGallon}
		}
		return []float64{density / 10}
	case metric && weight < perKilogram:
		return []float64{perKilogram / 100}
	case metric && weight < 5*perKilogram:
		return []float64{perKilogram / 10}
	case metric && weight < 25*perKilogram:
		return []float64{perKilogram / 2}
	case metric:
		return m.orHalfAPack(2 * perKilogram)
	case weight < 1:
		return []float64{1.0 / 16}
	case weight < 10:
		return []float64{0.1}
	case weight < 50:
		return []float64{1}
	}
	return m.orHalfAPack(5)
}

func (m Material) orHalfAPack(step float64) []float64 {
	if p, ok := m.PackWeight(); ok {
		return []float64{step, float64(p) / 2}
	}
	return []float64{step}
}

// passedBy tells whether a dose passes one of the caps.
func (c Caps) passedBy(d Dose) bool {
	over := func(cap, brings agronomy.PerThousand) bool { return cap >= 0 && brings > cap*(1+1e-9) }
	return over(c.N, d.N) || over(c.SolubleN, d.SolubleN) || over(c.P2O5, d.P2O5) || over(c.K2O, d.K2O)
}
