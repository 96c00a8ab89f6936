package agronomy

import (
	"fmt"
	"math"
	"strings"
)

// RangeError says that a figure lies outside what a method covers, and what
// to do about it. No number is ever given beyond a printed range.
type RangeError struct {
	What      string  // "buffer pH", "depth of liming"
	Value     float64 // as given
	Low, High float64 // the range that is covered
	Remedy    string  // what to do, as a sentence without its full stop
}

func (e *RangeError) Error() string {
	return fmt.Sprintf("%s %s is outside %s to %s: %s", e.What, short(e.Value), short(e.Low), short(e.High), e.Remedy)
}

// within gives a RangeError unless low ≤ v ≤ high; not-a-number is outside.
func within[T ~float64](what string, v, low, high T, remedy string) error {
	if v >= low && v <= high {
		return nil
	}
	return &RangeError{what, float64(v), float64(low), float64(high), remedy}
}

// between draws a straight line from (x0, y0) to (x1, y1) and reads it at x.
func between(x, x0, y0, x1, y1 float64) float64 {
	if x0 == x1 {
		return y0
	}
	return y0 + (y1-y0)*(x-x0)/(x1-x0)
}

// short writes a figure of a working with two decimals below 10, one below
// 100 and none above, without idle zeros.
func short[T ~float64](x T) string {
	v, digits := float64(x), 100.0
	switch a := math.Abs(v); {
	case a >= 100:
		digits = 1
	case a >= 10:
		digits = 10
	}
	text := fmt.Sprint(math.Round(v*digits) / digits)
	if _, ok := any(x).(PH); ok && !strings.Contains(text, ".") {
		text += ".0" // as laboratories print a pH
	}
	return text
}

// Words writes a pH as laboratories do: one decimal, or two where it has them.
func (ph PH) Words() string { return short(ph) }

// fine is short with a digit more below 10, for tons per acre in a sum.
func fine(x float64) string {
	if math.Abs(x) < 10 {
		return fmt.Sprint(math.Round(x*1000) / 1000)
	}
	return short(x)
}
