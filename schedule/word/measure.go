package word

import (
	"bytes"
	"math"
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/climate"
)

// Measure writes amounts for people in the units a site asks for. Every
// rounding of a shown amount happens here.
type Measure struct{ Metric bool }

func Reading(v float64) string {
	switch {
	case v < 10:
		return Number(v, 2)
	case v < 100:
		return Number(v, 1)
	}
	return Number(v, 0)
}

// Hundredths writes a number of a calculation that is shown, with two decimals.
func Hundredths[T ~float64](v T) string { return strconv.FormatFloat(float64(v), 'f', 2, 64) }

// Number writes v with at most the given decimals, without trailing zeros,
// and with commas between the thousands.
func Number(v float64, decimals int) string {
	var room [40]byte
	b := strconv.AppendFloat(room[:0], v, 'f', decimals, 64)
	whole := bytes.IndexByte(b, '.')
	if whole < 0 {
		whole = len(b)
	} else {
		b = bytes.TrimRight(bytes.TrimRight(b, "0"), ".")
	}
	sign := 0
	if b[0] == '-' {
		sign = 1
	}
	if string(b) == "-0" {
		return "0"
	}
	for i := whole - 3; i > sign; i -= 3 {
		b = slices.Insert(b, i, ',')
	}
	return string(b)
}

// Figures writes v with about the given number of significant figures, never
// dropping whole units.
func Figures(v float64, n int) string {
	if v == 0 {
		return "0"
	}
	before := int(math.Floor(math.Log10(math.Abs(v)))) + 1
	return Number(v, max(0, n-before))
}

// Fine writes a weight so exactly that it can be read back: with three figures, as no
// scale at home shows more.
func (m Measure) Fine(p agronomy.Pounds) string {
	if m.Metric {
		if kg := p.Kilograms(); kg >= 1 || kg == 0 {
			return Figures(kg, 3) + " kg"
		}
		return Figures(p.Kilograms()*1000, 3) + " g"
	}
	if p >= 1 || p == 0 {
		return Figures(float64(p), 3) + " lb"
	}
	return Figures(float64(p)*16, 3) + " oz"
}

// Weight writes "96 lb", "6 oz", "44 kg" or "180 g".
func (m Measure) Weight(p agronomy.Pounds) string {
	if m.Metric {
		if kg := p.Kilograms(); kg >= 1 || kg == 0 {
			return Figures(kg, 3) + " kg"
		}
		return Figures(p.Kilograms()*1000, 2) + " g"
	}
	switch {
	case p == 0 || p >= 10:
		return Number(float64(p), 0) + " lb"
	case p >= 1:
		return Number(float64(p), 1) + " lb"
	}
	return Figures(float64(p)*16, 2) + " oz"
}

// Measured writes a weight as a person measures it out: for less than a pound it adds
// how much of a cup that fills, at about a pound to the pint. // [common]
func (m Measure) Measured(p agronomy.Pounds) string {
	text := m.Weight(p)
	if p <= 0 || p >= 1 {
		return text
	}
	if m.Metric {
		ml := p.Kilograms() * 1000 * 473 / 454 // a pint is 473 mL, a pound 454 g
		if ml >= 20 {
			ml = math.Round(ml/10) * 10
		}
		return text + " (about " + Number(ml, 0) + " mL)"
	}
	switch cups := math.Round(float64(p)*8) / 4; {
	case cups == 0:
		return text + " (about " + Plural(max(1, int(math.Round(float64(p)*32))), "tablespoon") + ")"
	case cups <= 1:
		return text + " (about " + Number(cups, 2) + " cup)"
	default:
		return text + " (about " + Number(cups, 2) + " cups)"
	}
}

// Volume writes "2.4 gal", "30 fl oz", "9 L" or "350 mL".
func (m Measure) Volume(g agronomy.Gallons) string {
	if m.Metric {
		if l := g.Liters(); l >= 1 || l == 0 {
			return Figures(l, 2) + " L"
		}
		return Figures(g.Liters()*1000, 2) + " mL"
	}
	if g >= 1 || g == 0 {
		return Figures(float64(g), 2) + " gal"
	}
	return Figures(float64(g)*128, 2) + " fl oz"
}

// Rate writes a product rate: "37 lb per 1,000 sq ft" or "180 g/m²".
func (m Measure) Rate(r agronomy.PerThousand) string { return m.rate(r, "") }

// NutrientRate writes a nutrient rate: "0.5 lb N per 1,000 sq ft".
func (m Measure) NutrientRate(r agronomy.PerThousand, nutrient string) string {
	return m.rate(r, " "+nutrient)
}

func (m Measure) rate(r agronomy.PerThousand, of string) string {
	if m.Metric {
		return Figures(r.GramsPerM2(), 2) + " g" + of + "/m²"
	}
	return Figures(float64(r), 2) + " lb" + of + " per 1,000 sq ft"
}

// Caught writes how much falls at a rate on a sheet that is laid out to catch it:
// "1.2 lb on a sheet of 100 sq ft" or "590 g on a sheet of 10 m²".
func (m Measure) Caught(r agronomy.PerThousand) string {
	sheet := agronomy.SquareFeet(100)
	if m.Metric {
		sheet = 10 * agronomy.SquareFeetPerMeter2
	}
	return m.Weight(r.Over(sheet)) + " on a sheet of " + m.Area(sheet)
}

// VolumeRate writes a liquid rate: "30 fl oz per 1,000 sq ft" or "95 mL per 10 m²".
func (m Measure) VolumeRate(perThousand agronomy.Gallons) string {
	if m.Metric {
		tenth := agronomy.Gallons(float64(perThousand) * 10 / agronomy.SquareFeet(1000).Meters2())
		return m.Volume(tenth) + " per 10 m²"
	}
	return m.Volume(perThousand) + " per 1,000 sq ft"
}

// Area writes "2,600 sq ft" or "240 m²".
func (m Measure) Area(a agronomy.SquareFeet) string {
	if m.Metric {
		return Figures(a.Meters2(), 3) + " m²"
	}
	return Number(float64(a), 0) + " sq ft"
}

// Depth writes "0.25 in" or "6 mm".
func (m Measure) Depth(d agronomy.Inches) string {
	if m.Metric {
		mm := float64(d) * agronomy.MillimetersPerInch
		if mm >= 50 {
			return Number(mm/10, 0) + " cm"
		}
		return Number(mm, 0) + " mm"
	}
	return Number(float64(d), 2) + " in"
}

// Length writes "30 ft" or "9 m".
func (m Measure) Length(f climate.Feet) string {
	if m.Metric {
		return Figures(float64(f.Meters()), 2) + " m"
	}
	return Number(float64(f), 1) + " ft"
}

// Temperature writes "50 °F" or "10 °C".
func (m Measure) Temperature(f climate.Fahrenheit) string {
	if m.Metric {
		return Number(float64(f.Celsius()), 0) + " °C"
	}
	return Number(float64(f), 0) + " °F"
}

// Wind writes a speed in miles an hour: "10 mph" or "16 km/h".
func (m Measure) Wind(mph float64) string {
	if m.Metric {
		return Number(mph*1.609344, 0) + " km/h" // a mile is 1.609344 km
	}
	return Number(mph, 0) + " mph"
}

// Packs writes "2.4 packs", "0.3 pack" or "1/2 pack"; for less than a twentieth of a pack,
// "a little".
func Packs(n float64) string {
	switch r := math.Round(n*10) / 10; {
	case n == 0:
		return "none"
	case r == 0:
		return "a little"
	case r == 0.5:
		return "1/2 pack"
	case r <= 1:
		return Number(r, 1) + " pack"
	default:
		return Number(r, 1) + " packs"
	}
}

// List joins words as a sentence does: "a, b and c".
func List(words []string) string {
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return words[0]
	default:
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
}
