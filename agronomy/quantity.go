package agronomy

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"swardbook/climate"
)

// QuantityError says why a quantity such as "40 lb" could not be read.
type QuantityError struct {
	Text    string // what was given
	Problem string
	Hint    string
}

func (e *QuantityError) Error() string {
	return fmt.Sprintf("%q: %s (%s)", e.Text, e.Problem, e.Hint)
}

// Feet is a length on the ground.
type Feet = climate.Feet

// SquareFeetPerGallon is how far a sprayer's gallon goes.
type SquareFeetPerGallon float64

// measure is one kind of quantity: what each unit's name stands for in the
// kind's own unit [definitions], and the sizes that are believable [common].
type measure struct {
	what      string
	own       string // the kind's own unit
	units     map[string]float64
	low, high float64 // in the kind's own unit, both allowed
	above     bool    // low itself is refused
	example   string
}

var (
	areas = measure{"an area", "sq ft", map[string]float64{
		"sq ft": 1, "ft2": 1, "sqft": 1, "square feet": 1, "square foot": 1, "sf": 1,
		"m2": SquareFeetPerMeter2, "sq m": SquareFeetPerMeter2, "square meters": SquareFeetPerMeter2, "square metres": SquareFeetPerMeter2,
		"acre": SquareFeetPerAcre, "acres": SquareFeetPerAcre, "ac": SquareFeetPerAcre,
		"ha": 10000 * SquareFeetPerMeter2, "sq yd": 9, "yd2": 9, "square yards": 9,
	}, 1, 1000 * SquareFeetPerAcre, false, `"2600 sq ft", "320 m2", "0.25 acre"`}
	weights = measure{"a weight", "lb", map[string]float64{
		"lb": 1, "lbs": 1, "pound": 1, "pounds": 1, "oz": 1.0 / 16, "ounces": 1.0 / 16,
		"kg": PoundsPerKilogram, "g": PoundsPerKilogram / 1000, "ton": PoundsPerTon, "tons": PoundsPerTon, "t": 1000 * PoundsPerKilogram,
	}, 0, 1e6, false, `"40 lb", "8 oz", "18 kg"`}
	volumes = measure{"a volume", "gal", map[string]float64{
		"gal": 1, "gallon": 1, "gallons": 1, "qt": 0.25, "pt": 0.125, "fl oz": 1.0 / 128,
		"l": 1 / LitersPerGallon, "liter": 1 / LitersPerGallon, "liters": 1 / LitersPerGallon, "litre": 1 / LitersPerGallon, "litres": 1 / LitersPerGallon, "ml": 0.001 / LitersPerGallon,
	}, 0, 1e5, false, `"2.5 gal", "10 L"`}
	depths = measure{"a depth", "in", map[string]float64{
		"in": 1, "inch": 1, "inches": 1, `"`: 1, "mm": 1 / MillimetersPerInch, "cm": 10 / MillimetersPerInch,
	}, 0, 60, true, `"4 in", "6 mm", "10 cm"`}
	lengths = measure{"a length", "ft", map[string]float64{
		"ft": 1, "foot": 1, "feet": 1, "'": 1, "yd": 3, "m": FeetPerMeter, "meters": FeetPerMeter, "metres": FeetPerMeter,
		"in": 1.0 / 12, "cm": FeetPerMeter / 100, "mi": 5280, "km": 1000 * FeetPerMeter,
	}, 0, 1e6, false, `"30 ft", "9 m"`}
	rates = measure{"a rate", "lb/1000 sq ft", map[string]float64{
		"lb/1000 sq ft": 1, "lb/1000 ft2": 1, "lb/1000 sqft": 1, "lb/m": 1, "lb per 1000 sq ft": 1, "lbs/1000 sq ft": 1, "lb per 1000": 1, "lb/1000": 1,
		"oz/1000 sq ft": 1.0 / 16,
		"lb/acre":       1000.0 / SquareFeetPerAcre, "lb/a": 1000.0 / SquareFeetPerAcre, "lbs/acre": 1000.0 / SquareFeetPerAcre, "lbs/a": 1000.0 / SquareFeetPerAcre, "lb/ac": 1000.0 / SquareFeetPerAcre, "lb per acre": 1000.0 / SquareFeetPerAcre,
		"ton/acre": PoundsPerTon * 1000.0 / SquareFeetPerAcre, "tons/acre": PoundsPerTon * 1000.0 / SquareFeetPerAcre,
		"g/m2": 1 / GramsPerM2PerThousand, "kg/100 m2": 10 / GramsPerM2PerThousand, "kg/ha": 0.1 / GramsPerM2PerThousand, "t/ha": 100 / GramsPerM2PerThousand,
	}, 0, 2000, false, `"0.7 lb/1000 sq ft", "40 lb/acre", "5 g/m2", "50 kg/ha"`}
	densities = measure{"a density", "lb/gal", map[string]float64{
		"lb/gal": 1, "lbs/gal": 1, "lb per gal": 1, "lb/gallon": 1, "kg/l": PoundsPerKilogram * LitersPerGallon, "g/ml": PoundsPerKilogram * LitersPerGallon, "g/cm3": PoundsPerKilogram * LitersPerGallon,
	}, 5, 25, false, `"9.6 lb/gal", "1.15 kg/L"`}
	waterings = measure{"a rate of watering", "in/h", map[string]float64{
		"in/h": 1, "in/hr": 1, "in/hour": 1, "inches/hour": 1, "in per hour": 1, "mm/h": 1 / MillimetersPerInch, "mm/hr": 1 / MillimetersPerInch, "mm/hour": 1 / MillimetersPerInch, "cm/h": 10 / MillimetersPerInch,
	}, 0, 10, true, `"0.4 in/h", "10 mm/h"`}
	percents = measure{"a percentage", "%", map[string]float64{
		"%": 1, "percent": 1,
	}, 0, 100, false, `"2.1 %"`}
	times = measure{"a length of time", "weeks", map[string]float64{
		"week": 1, "weeks": 1, "wk": 1, "day": 1.0 / 7, "days": 1.0 / 7, "d": 1.0 / 7, "month": 365.25 / 12 / 7, "months": 365.25 / 12 / 7,
	}, 0, 104, false, `"8 weeks", "90 days", "3 months"`}
	coverages = measure{"a coverage", "sq ft per gal", map[string]float64{
		"sq ft per gal": 1, "ft2 per gal": 1, "sq ft/gal": 1, "ft2/gal": 1, "sqft/gal": 1, "sq ft per gallon": 1,
		"m2 per l": SquareFeetPerMeter2 * LitersPerGallon, "m2/l": SquareFeetPerMeter2 * LitersPerGallon,
	}, 10, 20000, false, `"1000 sq ft per gal", "25 m2 per L"`}
)

// ParseArea reads an area: 1 square foot to 1000 acres, or its sides, "40 x 65 ft",
// with others taken off, "40 x 65 - 24 x 30 ft".
func ParseArea(text string) (SquareFeet, error) {
	if a, ok, err := measured(text); ok {
		return a, err
	}
	return read[SquareFeet](areas, text)
}

// ParseWeight reads a weight: 0 to 1,000,000 lb.
func ParseWeight(text string) (Pounds, error) { return read[Pounds](weights, text) }

// ParseVolume reads a volume: 0 to 100,000 gallons.
func ParseVolume(text string) (Gallons, error) { return read[Gallons](volumes, text) }

// ParseDepth reads a depth of soil or water: above 0 to 60 inches.
func ParseDepth(text string) (Inches, error) { return read[Inches](depths, text) }

// ParseLength reads a distance on the ground: 0 to 1,000,000 feet.
func ParseLength(text string) (Feet, error) { return read[Feet](lengths, text) }

// ParseElevation reads a height over the sea: -1500 to 20,000 feet.
func ParseElevation(text string) (Feet, error) {
	m := lengths
	m.what, m.low, m.high, m.example = "an elevation", -1500, 20000, `"900 ft", "270 m"`
	if below, ok := strings.CutPrefix(strings.TrimSpace(text), "-"); ok {
		m.low, m.high = 0, 1500
		f, err := read[Feet](m, below)
		return -f, err
	}
	return read[Feet](m, text)
}

// ParseRate reads an amount for an area: 0 to 2000 lb/1000 sq ft.
func ParseRate(text string) (PerThousand, error) { return read[PerThousand](rates, text) }

// ParseDensity reads the density of a liquid: 5 to 25 lb a gallon.
func ParseDensity(text string) (PoundsPerGallon, error) {
	return read[PoundsPerGallon](densities, text)
}

// ParseWatering reads a sprinkler's rate: above 0 to 10 inches an hour.
func ParseWatering(text string) (InchesPerHour, error) { return read[InchesPerHour](waterings, text) }

// ParsePercent reads a percentage: 0 to 100.
func ParsePercent(text string) (Percent, error) { return read[Percent](percents, text) }

// ParseWeeks reads a length of time: 0 to 104 weeks. A month is a twelfth of a year.
func ParseWeeks(text string) (Weeks, error) { return read[Weeks](times, text) }

// ParseCoverage reads how far a sprayer's gallon goes: 10 to 20,000 sq ft.
func ParseCoverage(text string) (SquareFeetPerGallon, error) {
	return read[SquareFeetPerGallon](coverages, text)
}

// ParseAnalysis reads a guaranteed analysis, "18-24-12": three percentages
// that together make no more than 100.
func ParseAnalysis(text string) (Analysis, error) {
	parts := strings.Split(strings.TrimSpace(text), "-")
	fail := func(problem string) (Analysis, error) {
		return Analysis{}, &QuantityError{text, problem, `write N-P2O5-K2O as on the bag, like "18-24-12"`}
	}
	if len(parts) != 3 {
		return fail("not an analysis of three numbers")
	}
	var grades [3]Percent
	for i, p := range parts {
		x, rest, ok := Number(strings.TrimSpace(p))
		if !ok || rest != "" {
			return fail(fmt.Sprintf("%q is not a number", p))
		}
		grades[i] = Percent(x)
	}
	if sum := grades[0] + grades[1] + grades[2]; sum > 100 {
		return fail(fmt.Sprintf("the three numbers make %g %%, more than the bag holds", sum))
	}
	return Analysis{grades[0], grades[1], grades[2]}, nil
}

// read turns a text into a quantity of its kind.
func read[Q ~float64](m measure, text string) (Q, error) {
	x, unit, ok := Number(strings.TrimSpace(text))
	if point, comma := DecimalComma(text); comma {
		return 0, &QuantityError{text, CommaProblem, "for a part write a point: " + point}
	}
	if !ok {
		return 0, &QuantityError{text, "not " + m.what + ": it must begin with a plain number", "like " + m.example}
	}
	unit = PlainUnit(unit)
	factor, known := m.units[unit]
	if unit == "" {
		return 0, &QuantityError{text, m.what + " needs a unit", "like " + m.example}
	}
	if !known {
		hint := "like " + m.example
		if near := closest(unit, slices.Sorted(maps.Keys(m.units))); near != "" {
			hint = fmt.Sprintf("did you mean %q? %s", near, hint)
		}
		return 0, &QuantityError{text, fmt.Sprintf("%q is no unit of %s", unit, strings.TrimPrefix(strings.TrimPrefix(m.what, "an "), "a ")), hint}
	}
	v := x * factor
	if v < m.low || v > m.high || m.above && v == m.low {
		from := fmt.Sprintf("from %g", m.low)
		if m.above {
			from = fmt.Sprintf("above %g", m.low)
		}
		return 0, &QuantityError{text, "not a believable size", fmt.Sprintf("%s %s to %s %s", m.what, from, strconv.FormatFloat(m.high, 'f', -1, 64), m.own)}
	}
	return Q(v), nil
}

// Number splits a text into its leading number and the rest. Thousands may be
// set off by commas ("2,600"), and a part may be a fraction ("1/4", "6 2/3").
// Signs, exponents and decimal commas are not read.
func Number(text string) (x float64, rest string, ok bool) {
	if len(text) > 64 {
		return 0, "", false
	}
	end := 0
	for end < len(text) && (text[end] >= '0' && text[end] <= '9' || text[end] == '.' || text[end] == ',') {
		end++
	}
	x, ok = decimal(text[:end])
	if !ok {
		return 0, "", false
	}
	rest = text[end:]
	if below, found := strings.CutPrefix(rest, "/"); found { // "1/4 in"
		if d, after, ok := wholeNumber(below); ok && d > 0 {
			return x / d, strings.TrimSpace(after), true
		}
	}
	if spaced := strings.TrimLeft(rest, " "); spaced != rest { // "6 2/3 in"
		if n, after, ok := wholeNumber(spaced); ok {
			if below, found := strings.CutPrefix(after, "/"); found {
				if d, after, ok := wholeNumber(below); ok && d > 0 && n < d {
					return x + n/d, strings.TrimSpace(after), true
				}
			}
		}
	}
	return x, strings.TrimSpace(rest), true
}

const CommaProblem = "a comma sets off thousands here, and this one does not"

// DecimalComma tells a number whose one comma cannot set off thousands, such as
// "0,250 acre" or "12,5 kg", and gives the text with a point in its place.
func DecimalComma(text string) (point string, ok bool) {
	text = strings.TrimSpace(text)
	whole, rest, ok := strings.Cut(text, ",")
	end := strings.IndexFunc(rest, func(c rune) bool { return c < '0' || c > '9' })
	if end < 0 {
		end = len(rest)
	}
	digits := strings.Trim(whole, "0123456789") == "" && whole != ""
	if !ok || !digits || end == 0 || end == 3 && whole[0] != '0' || strings.ContainsAny(rest[end:], ",.") {
		return "", false
	}
	return whole + "." + rest, true
}

// PointThousands tells a number whose one point may be meant to set off
// thousands, as in "5.200 sq ft", and gives the text with a comma in its place.
func PointThousands(text string) (comma string, ok bool) {
	text = strings.TrimSpace(text)
	whole, rest, ok := strings.Cut(text, ".")
	digits := func(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }
	if !ok || !digits(whole) || len(whole) > 3 || whole[0] == '0' || len(rest) < 3 || !digits(rest[:3]) || len(rest) > 3 && rest[3] >= '0' && rest[3] <= '9' {
		return "", false
	}
	return whole + "," + rest, true
}

// decimal reads digits with at most one point and commas only between groups
// of three digits, the first of them not begun with a 0: "0,250" is meant as a
// part.
func decimal(s string) (float64, bool) {
	whole, _, _ := strings.Cut(s, ".")
	if groups := strings.Split(whole, ","); len(groups) > 1 {
		for i, g := range groups {
			if i == 0 && (len(g) < 1 || len(g) > 3 || g[0] == '0') || i > 0 && len(g) != 3 {
				return 0, false
			}
		}
		s = strings.Join(groups, "") + s[len(whole):]
	}
	x, err := strconv.ParseFloat(s, 64)
	return x, err == nil && x < 1e15
}

// wholeNumber reads up to three leading digits.
func wholeNumber(s string) (x float64, rest string, ok bool) {
	end := 0
	for end < len(s) && s[end] >= '0' && s[end] <= '9' {
		end++
	}
	if end == 0 || end > 3 {
		return 0, "", false
	}
	n, err := strconv.Atoi(s[:end])
	return float64(n), s[end:], err == nil
}

var unitSpellings = strings.NewReplacer("²", "2", "^2", "2", "³", "3", "1,000", "1000", " / ", "/", " /", "/", "/ ", "/", "sq. ft.", "sq ft", "sq. ft", "sq ft", "₂", "2", "₅", "5")

// PlainUnit writes a unit the way the tables do: small letters, single spaces,
// plain 2 for a raised one, no space around a stroke.
func PlainUnit(s string) string {
	s = unitSpellings.Replace(strings.ToLower(strings.Join(strings.Fields(s), " ")))
	return strings.TrimSuffix(s, ".")
}
