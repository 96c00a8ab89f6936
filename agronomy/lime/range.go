package lime

import (
	"fmt"

	"swardbook/agronomy"
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
	return fmt.Sprintf("%s %s is outside %s to %s: %s", e.What, agronomy.Short(e.Value), agronomy.Short(e.Low), agronomy.Short(e.High), e.Remedy)
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
