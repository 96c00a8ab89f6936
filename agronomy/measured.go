package agronomy

import (
	"fmt"
	"strings"
)

// between writes what stands between two sides as x, and a minus sign as a hyphen.
var between = strings.NewReplacer("×", "x", "*", "x", " by ", "x", "−", "-")

// measured reads an area from its sides: "40 x 65 ft", less or with others,
// "40 x 65 - 24 x 30 ft". A side without a unit has that of the next one. It
// reports false for a text that is not of this form.
func measured(text string) (SquareFeet, bool, error) {
	s := between.Replace(strings.ToLower(text))
	if !strings.Contains(s, "x") {
		return 0, false, nil
	}
	fail := func(problem string) (SquareFeet, bool, error) {
		return 0, true, &QuantityError{text, problem, `like "40 x 65 ft", or with beds taken off "40 x 65 - 24 x 30 ft"`}
	}
	s = strings.ReplaceAll(s, "-", "+-")
	var sum SquareFeet
	unit := ""
	terms := strings.Split(s, "+")
	for i := len(terms) - 1; i >= 0; i-- {
		term, less := strings.CutPrefix(strings.TrimSpace(terms[i]), "-")
		pair := strings.Split(term, "x")
		if len(pair) != 2 {
			return fail(fmt.Sprintf("%q is not a length and a width", strings.TrimSpace(term)))
		}
		area := SquareFeet(1)
		for j := 1; j >= 0; j-- {
			x, own, ok := Number(strings.TrimSpace(pair[j]))
			if !ok {
				return fail(fmt.Sprintf("%q is not a length", strings.TrimSpace(pair[j])))
			}
			if own = PlainUnit(own); own != "" {
				unit = own
			}
			feet, known := lengths.units[unit]
			switch {
			case unit == "":
				return fail("the sides need a unit")
			case !known:
				return fail(fmt.Sprintf("%q is no unit of length", unit))
			}
			area *= SquareFeet(x * feet)
		}
		if less {
			area = -area
		}
		sum += area
	}
	if sum < SquareFeet(areas.low) || sum > SquareFeet(areas.high) {
		return fail(fmt.Sprintf("makes %.6g sq ft, which is not a believable size", float64(sum)))
	}
	return sum, true, nil
}
