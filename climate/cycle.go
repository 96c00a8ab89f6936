package climate

import "math"

const omega = 2 * math.Pi / daysPerYear

// Cycle is a smooth yearly course of a temperature, or of a difference of
// two, in °F: T(t) = Mean + C1 cos wt + S1 sin wt + C2 cos 2wt + S2 sin 2wt,
// w = 2 pi / 365, t = days since 1 January 00:00. [model] section 2
type Cycle struct{ Mean, C1, S1, C2, S2 float64 }

// Plus adds k times another cycle, coefficient by coefficient.
func (c Cycle) Plus(k float64, o Cycle) Cycle {
	return Cycle{c.Mean + k*o.Mean, c.C1 + k*o.C1, c.S1 + k*o.S1, c.C2 + k*o.C2, c.S2 + k*o.S2}
}

// delayed returns a cycle about a new mean, whose swing is that of c multiplied by
// factor and `lag` days later.
func (c Cycle) delayed(mean, factor, lag float64) Cycle {
	s, k := math.Sincos(omega * lag)
	s2, k2 := 2*s*k, k*k-s*s
	return Cycle{
		Mean: mean,
		C1:   factor * (c.C1*k - c.S1*s), S1: factor * (c.C1*s + c.S1*k),
		C2: factor * (c.C2*k2 - c.S2*s2), S2: factor * (c.C2*s2 + c.S2*k2),
	}
}

// At is the value at day number d, which is t + 0.5: noon of calendar day d.
func (c Cycle) At(d float64) float64 {
	s, k := math.Sincos(omega * (d - 0.5))
	return c.Mean + c.C1*k + c.S1*s + c.C2*(k*k-s*s) + c.S2*2*s*k
}

// slope is the change per day at d, over the ten days around it. [model] section 4
func (c Cycle) slope(d float64) float64 { return (c.At(d+5) - c.At(d-5)) / 10 }

// curve is a cycle with its turning points: the day number of the warmest
// point (1 to 365) and of the coldest point after it.
type curve struct {
	Cycle
	warmest, coldest float64
}

func newCurve(c Cycle) curve {
	hot, cold := 1.0, 1.0
	highest, lowest := math.Inf(-1), math.Inf(1)
	for d := 1.0; d <= daysPerYear; d += 4 {
		v := c.At(d)
		if v > highest {
			hot, highest = d, v
		}
		if v < lowest {
			cold, lowest = d, v
		}
	}
	hot, cold = c.peak(hot, 1), c.peak(cold, -1)
	hot = float64(wrap(math.Floor(hot))) + hot - math.Floor(hot)
	for cold <= hot {
		cold += daysPerYear
	}
	for cold > hot+daysPerYear {
		cold -= daysPerYear
	}
	return curve{c, hot, cold}
}

// peak finds the turning point within 4 days of d by ternary search; sign is 1 for the
// warmest point, -1 for the coldest.
func (c Cycle) peak(d, sign float64) float64 {
	lo, hi := d-4, d+4
	for range 18 { // to a hundredth of a day
		a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
		if sign*c.At(a) < sign*c.At(b) {
			lo = a
		} else {
			hi = b
		}
	}
	return (lo + hi) / 2
}

func (c curve) max() float64 { return c.At(c.warmest) }
func (c curve) min() float64 { return c.At(c.coldest) }

// delayed is [Cycle.delayed] for a curve: its turning points come `lag` days later.
func (c curve) delayed(mean, factor, lag float64) curve {
	return curve{c.Cycle.delayed(mean, factor, lag), c.warmest + lag, c.coldest + lag}
}

// crossing is how a curve meets a level.
type crossing int

const (
	crosses crossing = iota
	staysAbove
	staysBelow
)

// falls finds the first day number after the warmest point on which the curve is at the
// level; rises finds the last one before the warmest point. Between those two days the
// curve stays above the level, whatever it does in winter.
func (c curve) falls(level float64) (float64, crossing) {
	return c.walk(level, c.coldest)
}

func (c curve) rises(level float64) (float64, crossing) {
	return c.walk(level, c.coldest-daysPerYear)
}

// walk steps from the warmest point toward the coldest one at `end` until a step passes
// the level, and finds the crossing within that step by bisection.
func (c curve) walk(level, end float64) (float64, crossing) {
	if c.max() <= level {
		return 0, staysBelow
	}
	if c.min() >= level {
		return 0, staysAbove
	}
	const stride = 3.0
	step := math.Copysign(stride, end-c.warmest)
	above, below := c.warmest, end
	for n := 1; n < int(math.Abs(end-c.warmest)/stride)+1; n++ {
		d := c.warmest + float64(n)*step
		if c.At(d) < level {
			below = d
			break
		}
		above = d
	}
	for math.Abs(below-above) > 0.001 {
		mid := (above + below) / 2
		if c.At(mid) < level {
			below = mid
		} else {
			above = mid
		}
	}
	return (above + below) / 2, crosses
}

// FitCycle finds the cycle whose averages over the calendar months come closest to
// the twelve monthly means: ordinary least squares. [model] section 2
func FitCycle(months [12]Fahrenheit) Cycle {
	var a [5][6]float64 // normal equations with the right-hand side in the last column
	for m := range 12 {
		basis := monthBasis(m)
		for i := range 5 {
			for j := range 5 {
				a[i][j] += basis[i] * basis[j]
			}
			a[i][5] += basis[i] * float64(months[m])
		}
	}
	for p := range 5 { // elimination; the matrix is positive definite, no pivoting needed
		for i := range 5 {
			if i == p {
				continue
			}
			f := a[i][p] / a[p][p]
			for j := p; j < 6; j++ {
				a[i][j] -= f * a[p][j]
			}
		}
	}
	x := func(i int) float64 { return a[i][5] / a[i][i] }
	return Cycle{x(0), x(1), x(2), x(3), x(4)}
}

// Month is the cycle's mean over a calendar month, 0 for January. [model] section 2
func (c Cycle) Month(m int) Fahrenheit {
	b := monthBasis(m)
	return Fahrenheit(c.Mean + c.C1*b[1] + c.S1*b[2] + c.C2*b[3] + c.S2*b[4])
}

// monthBasis is the average of 1, cos wt, sin wt, cos 2wt, sin 2wt over month m.
func monthBasis(m int) [5]float64 {
	a, b := float64(monthStart[m]), float64(monthStart[m+1])
	mean := func(v float64) (cos, sin float64) {
		sa, ca := math.Sincos(v * a)
		sb, cb := math.Sincos(v * b)
		return (sb - sa) / (v * (b - a)), (ca - cb) / (v * (b - a))
	}
	c1, s1 := mean(omega)
	c2, s2 := mean(2 * omega)
	return [5]float64{1, c1, s1, c2, s2}
}
