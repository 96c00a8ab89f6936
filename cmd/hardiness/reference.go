package main

import (
	"math"

	"swardbook/climate"
)

// harmonics is how many harmonics the curve has from which the 50 °F dates of a station
// are taken. A row has two only, so the errors of a row include what the third would add.
// [model] section 2
const harmonics = 3 // [model] section 2

const terms = 1 + 2*harmonics

var monthStart = [13]float64{0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365}

// fine is a cycle with three harmonics: mean, cosine, sine, cosine, ...
type fine [terms]float64

func (f fine) at(day float64) float64 {
	v := f[0]
	for k := 1; k <= harmonics; k++ {
		s, c := math.Sincos(2 * math.Pi / 365 * float64(k) * (day - 0.5))
		v += f[2*k-1]*c + f[2*k]*s
	}
	return v
}

// fitFine fits the cycle to monthly means by least squares.
func fitFine(months [12]climate.Fahrenheit) fine {
	var a [terms][terms + 1]float64
	for m := range 12 {
		lo, hi := monthStart[m], monthStart[m+1]
		basis := fine{1}
		for k := 1; k <= harmonics; k++ {
			v := 2 * math.Pi / 365 * float64(k)
			basis[2*k-1] = (math.Sin(v*hi) - math.Sin(v*lo)) / (v * (hi - lo))
			basis[2*k] = (math.Cos(v*lo) - math.Cos(v*hi)) / (v * (hi - lo))
		}
		for i := range terms {
			for j := range terms {
				a[i][j] += basis[i] * basis[j]
			}
			a[i][terms] += basis[i] * float64(months[m])
		}
	}
	for p := range terms { // elimination; positive definite
		for i := range terms {
			if i == p {
				continue
			}
			f := a[i][p] / a[p][p]
			for j := p; j <= terms; j++ {
				a[i][j] -= f * a[p][j]
			}
		}
	}
	var f fine
	for i := range terms {
		f[i] = a[i][terms] / a[i][i]
	}
	return f
}

// crossings are the days before and after the warmest day on which the cycle
// passes a level; ok is false if it does not.
func (f fine) crossings(level float64) (fall, spring float64, ok bool) {
	hot, cold := 1.0, 1.0
	for d := 1.0; d <= 365; d++ {
		if f.at(d) > f.at(hot) {
			hot = d
		}
		if f.at(d) < f.at(cold) {
			cold = d
		}
	}
	if f.at(hot) <= level || f.at(cold) >= level {
		return 0, 0, false
	}
	pass := func(step float64) float64 {
		d := hot
		for f.at(d+step) >= level {
			d += step
		}
		for math.Abs(step) > 0.01 {
			step /= 2
			if f.at(d+step) >= level {
				d += step
			}
		}
		return d
	}
	return pass(1), pass(-1), true
}
