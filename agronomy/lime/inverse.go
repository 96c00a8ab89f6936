package lime

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
)

// ExpectedPH gives the pH to expect, about a year on, from an amount of fully
// effective lime in the depth of the case. It turns round the method that
// Requirement takes for the same case: more lime never gives a lower pH,
// and the amount of a requirement gives its target. Where a table answers one
// amount for several targets, the one nearest c.Target counts; c.Target may be
// 0. More than the method's highest target takes gives a RangeError.
func ExpectedPH(c Case, effective agronomy.PerThousand) (agronomy.PH, []agronomy.Reason, error) {
	m, c, err := c.inverse(effective)
	if err != nil || effective == 0 {
		return c.PH, []agronomy.Reason{{Text: "No lime: the pH stays as it is.", Source: ""}}, err
	}
	reached := m.reached(effective, c.Target)
	low, high := m.reachedSpread(effective, c.Target)
	return reached, append([]agronomy.Reason{
		{Text: fmt.Sprintf("%s lb/1000 sq ft of effective lime in %s in, by %s turned round: pH %s to about %.1f; %.1f to %.1f as far as the method may be off", agronomy.Short(effective), agronomy.Short(c.Depth), m.name, agronomy.Short(c.PH), float64(reached), float64(low), float64(high)), Source: ""},
		{Text: "That is after about a year and if mixed to that depth; spread on the turf it changes the top inch more and the rest less.", Source: "nc-home-report, vt-452-717"},
	}, m.notes...), nil
}

// ExpectedPHSpread gives the least and the most pH to expect from an amount, as
// far as the methods differ. The most ends at the highest target the method covers.
func ExpectedPHSpread(c Case, effective agronomy.PerThousand) (low, high agronomy.PH, err error) {
	m, c, err := c.inverse(effective)
	if err != nil || effective == 0 {
		return c.PH, c.PH, err
	}
	low, high = m.reachedSpread(effective, c.Target)
	return low, high, nil
}

// inverse settles the case and finds the method, if the amount is within it.
func (c Case) inverse(effective agronomy.PerThousand) (limeMethod, Case, error) {
	c, _, err := c.settle()
	if err != nil {
		return limeMethod{}, c, err
	}
	if err := within("lime, lb/1000 sq ft,", effective, 0, 2000, "give the amount that is spread"); err != nil { // [common]
		return limeMethod{}, c, err
	}
	m, err := limeMethodFor(c)
	if err != nil {
		return m, c, err
	}
	m = m.asPrinted(c)
	if most := m.need(m.top); effective > most && effective > 0 {
		return m, c, &RangeError{"lime, lb/1000 sq ft,", float64(effective), 0, float64(most),
			fmt.Sprintf("more than it takes to reach pH %s, where %s ends; spread less, and retest", agronomy.Short(m.top), m.name)}
	}
	return m, c, nil
}

// asPrinted stretches a method so that it asks for the laboratory's own amount
// at the target: the laboratory knows how hard this soil is to move.
func (m limeMethod) asPrinted(c Case) limeMethod {
	if c.Printed == nil || c.Target > m.top {
		return m
	}
	ours := m.need(c.Target)
	if ours <= 0 || *c.Printed <= 0 {
		return m
	}
	need, spread, by := m.need, m.spread, *c.Printed/ours
	m.need = func(t agronomy.PH) agronomy.PerThousand { return by * need(t) }
	m.spread = func(t agronomy.PH) (low, high agronomy.PerThousand) {
		low, high = spread(t)
		return by * low, by * high
	}
	m.notes = append(slices.Clip(m.notes), agronomy.Reason{Text: fmt.Sprintf("The method is stretched by %s, so that the laboratory's own %s lb reach the target.", agronomy.Short(by), agronomy.Short(*c.Printed))})
	return m
}

// reached gives the target that takes the amount: of several, the nearest to wish.
func (m limeMethod) reached(amount agronomy.PerThousand, wish agronomy.PH) agronomy.PH {
	const slack = 1e-9
	first := m.search(func(t agronomy.PH) bool { return m.need(t) >= amount*(1-slack) })
	last := m.search(func(t agronomy.PH) bool { return m.need(t) > amount*(1+slack) })
	return min(max(wish, first), last)
}

// search finds the lowest pH up to the top at which ok becomes true, to less
// than a millionth.
func (m limeMethod) search(ok func(agronomy.PH) bool) agronomy.PH {
	low, high := agronomy.PH(3.5), m.top // below the start nothing is needed
	for range 24 {
		mid := (low + high) / 2
		if ok(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// reachedSpread asks how far the amount goes if the need is the high or the low
// end of its spread.
func (m limeMethod) reachedSpread(amount agronomy.PerThousand, wish agronomy.PH) (low, high agronomy.PH) {
	at := m.reached(amount, wish)
	need := m.need(at)
	least, most := m.spread(at)
	low, high = at, m.top
	if most > need {
		low = min(at, m.reached(amount*need/most, 0))
	}
	if least > 0 {
		if more := amount * max(1, need/least); more <= m.need(m.top) {
			high = max(at, m.reached(more, 0))
		}
	}
	return low, high
}
