package agronomy

// The oxides of the trade. A bag and some reports count phosphorus as P2O5
// and potassium as K2O; the soil scales count the elements.
const (
	P2O5PerP    = 2.29132  // [atomic-weights] 141.943 / 61.948
	PPerP2O5    = 0.436429 // [atomic-weights]
	K2OPerK     = 1.20460  // [atomic-weights] 94.195 / 78.196
	KPerK2O     = 0.830150 // [atomic-weights]
	CaPerCaO    = 0.714696 // [atomic-weights] 40.078 / 56.077
	MgPerMgO    = 0.603042 // [atomic-weights] 24.305 / 40.304
	NaPerNa2O   = 0.741864 // [atomic-weights] 45.980 / 61.979
	SPerSulfate = 0.333750 // [atomic-weights] 32.06 / 96.06
)

// SoilPerAcreInch is the weight of an acre-inch of soil, in pounds, that this
// tool uses at every depth: 2,000,000 lb in 6 2/3 inches, 1.324 g/cm3. Other
// texts put the 2,000,000 lb into 6 inches (11 % more) or 7 (5 % less).
const SoilPerAcreInch = 300000.0 // [definitions]

// PoundsPerPloughLayer is the weight of an acre of soil to plough depth, as sheets take
// it, in pounds.
const PoundsPerPloughLayer = 2000000.0 // [tx-plantanswers]

// In gives the weight of an element that a reading stands for in a layer of
// soil: ppm × 300,000 lb × depth / 1,000,000 / 43.56.
func (p PPM) In(depth Inches) PerThousand { return p.InSoil(SoilPerAcreInch * float64(depth)) }

// InPloughLayer gives the same for the 2,000,000 lb of a whole plough layer,
// as "ppm × 2" on many sheets does.
func (p PPM) InPloughLayer() PerThousand { return p.InSoil(PoundsPerPloughLayer) }

func (p PPM) InSoil(poundsPerAcre float64) PerThousand {
	return PerAcre(float64(p) * poundsPerAcre / 1e6).PerThousand()
}

// PPM gives the reading that an amount an acre makes in a layer of soil.
// The depth must be above 0.
func (r PerAcre) PPM(depth Inches) PPM {
	return PPM(float64(r) * 1e6 / (SoilPerAcreInch * float64(depth)))
}

// MeqWeight is the ppm that make 1 meq/100 g of a cation: its atomic weight
// over its charge, times ten.
func MeqWeight(n Nutrient) (PPM, bool) {
	switch n {
	case Potassium:
		return 390.98, true // [atomic-weights] 390 on the sheets
	case Calcium:
		return 200.39, true // [atomic-weights]
	case Magnesium:
		return 121.53, true // [atomic-weights]
	case Sodium:
		return 229.90, true // [atomic-weights]
	}
	return 0, false
}
