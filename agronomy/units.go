package agronomy

import "swardbook/climate"

// Amounts. Each is a plain number in the unit its name or comment gives.
type (
	// Pounds is a weight in avoirdupois pounds.
	Pounds float64
	// Gallons is a volume in US gallons.
	Gallons float64
	// SquareFeet is an area.
	SquareFeet float64
	// PerThousand is a rate in pounds per 1000 square feet.
	PerThousand float64
	// PerAcre is a rate in pounds per acre.
	PerAcre float64
	// TonsPerAcre is a rate in short tons (2000 lb) per acre.
	TonsPerAcre float64
	// PPM is parts per million by weight of dry soil, the same as mg/kg.
	PPM float64
	// Meq is milliequivalents per 100 g of soil, the same as cmol(+)/kg.
	Meq float64
	// Percent is parts per hundred: 40 means 40 %.
	Percent float64
	// PH is an acidity reading, 0 to 14; 0 stands for "not given".
	PH float64
	// PoundsPerGallon is the density of a liquid.
	PoundsPerGallon float64
	// InchesPerHour is a rate of watering.
	InchesPerHour float64
	// Weeks is a length of time.
	Weeks float64
)

// Inches is a depth of soil or of water.
type Inches = climate.Inches

// Season tells cool-season from warm-season grass.
type Season = climate.Season

// The two growth seasons.
const (
	Cool = climate.Cool
	Warm = climate.Warm
)

// Conversions that follow from the definitions of the units.
const (
	SquareFeetPerAcre     = 43560         // [definitions]
	PoundsPerTon          = 2000          // [definitions] short ton
	PoundsPerKilogram     = 2.20462262185 // [definitions]
	SquareFeetPerMeter2   = 10.7639104167 // [definitions]
	GramsPerM2PerThousand = 4.88242763638 // [definitions] 1 lb/1000 sq ft in g/m2
	LitersPerGallon       = 3.785411784   // [definitions]
	MillimetersPerInch    = 25.4          // [definitions]
	FeetPerMeter          = 3.28083989501 // [definitions]
)

// Over gives the weight that a rate makes on an area.
func (r PerThousand) Over(a SquareFeet) Pounds { return Pounds(float64(r) * float64(a) / 1000) }

// PerAcre gives the same rate per acre.
func (r PerThousand) PerAcre() PerAcre { return PerAcre(float64(r) * SquareFeetPerAcre / 1000) }

// GramsPerM2 gives the same rate in grams per square metre.
func (r PerThousand) GramsPerM2() float64 { return float64(r) * GramsPerM2PerThousand }

// PerThousand gives the same rate per 1000 square feet.
func (r PerAcre) PerThousand() PerThousand {
	return PerThousand(float64(r) * 1000 / SquareFeetPerAcre)
}

// PerThousand gives the same rate in pounds per 1000 square feet.
func (r TonsPerAcre) PerThousand() PerThousand {
	return PerAcre(float64(r) * PoundsPerTon).PerThousand()
}

// Kilograms gives the same weight in kilograms.
func (p Pounds) Kilograms() float64 { return float64(p) / PoundsPerKilogram }

// Meters2 gives the same area in square metres.
func (a SquareFeet) Meters2() float64 { return float64(a) / SquareFeetPerMeter2 }

// Liters gives the same volume in litres.
func (g Gallons) Liters() float64 { return float64(g) * LitersPerGallon }

// Analysis is the guaranteed analysis of a fertilizer: N-P2O5-K2O in percent.
type Analysis struct{ N, P2O5, K2O Percent }
