package climate

import "strconv"

// Fahrenheit is a temperature in degrees Fahrenheit, or a difference of two
// where the name says so.
type Fahrenheit float64

// Celsius converts the temperature.
func (f Fahrenheit) Celsius() Celsius { return Celsius((f - 32) / 1.8) }

// String writes the temperature for people, in both units: "50 °F (10 °C)".
func (f Fahrenheit) String() string {
	return number(float64(f)) + " °F (" + number(float64(f.Celsius())) + " °C)"
}

// Celsius is a temperature in degrees Celsius.
type Celsius float64

// Fahrenheit converts the temperature.
func (c Celsius) Fahrenheit() Fahrenheit { return Fahrenheit(c*1.8 + 32) }

// Inches is a length or depth in inches.
type Inches float64

// centimeters converts a depth.
func (i Inches) centimeters() float64 { return float64(i) * 2.54 }

// String writes the depth for people, in both units: "2 in (5 cm)".
func (i Inches) String() string {
	return number(float64(i)) + " in (" + strconv.FormatFloat(i.centimeters(), 'f', 0, 64) + " cm)"
}

// Feet is a height above the sea in feet.
type Feet float64

// Meters converts the height.
func (f Feet) Meters() Meters { return Meters(f * 0.3048) }

// Meters is a height above the sea in metres.
type Meters float64

// Feet converts the height.
func (m Meters) Feet() Feet { return Feet(m / 0.3048) }

// number writes x with at most one decimal and no trailing zero.
func number(x float64) string {
	s := strconv.FormatFloat(x, 'f', 1, 64)
	if n := len(s) - 2; n > 0 && s[n:] == ".0" {
		s = s[:n]
	}
	if s == "-0" {
		return "0"
	}
	return s
}
