package soil

import "swardbook/agronomy"

// SLAN gives the medium band, in Mehlich-3 ppm for all but Bray and Olsen
// phosphorus, of the sufficiency levels for turf: below, a response to the
// nutrient is likely; inside, about even; above, there is little or none.
func SLAN(n agronomy.Nutrient, method agronomy.Extractant, texture agronomy.Texture) (low, high agronomy.PPM, ok bool) {
	switch {
	case n == agronomy.Phosphorus && method == agronomy.Bray1:
		return 15, 30, true // [slan-sheet]
	case n == agronomy.Phosphorus && method == agronomy.Olsen:
		return 12, 28, true // [slan-sheet]
	case method != agronomy.Mehlich3:
		return 0, 0, false
	}
	switch n {
	case agronomy.Phosphorus:
		return 27, 54, true // [slan-sheet] high from 55 [woods-paper-code]
	case agronomy.Potassium:
		if Sandy(texture) {
			return 50, 116, true // [slan-sheet]
		}
		return 75, 176, true // [slan-sheet]
	case agronomy.Calcium:
		return 500, 750, true // [slan-sheet]
	case agronomy.Magnesium:
		if Sandy(texture) {
			return 60, 120, true // [slan-sheet]
		}
		return 70, 140, true // [slan-sheet]
	case agronomy.Sulfur:
		return 15, 40, true // [slan-sheet]
	}
	return 0, 0, false
}

const slanName = "Sufficiency levels for turf (Carrow and others 2003-2004)"

// mehlich3Scale is the sufficiency scale, and Rutgers' two figures for iron.
func mehlich3Scale(n agronomy.Nutrient, texture agronomy.Texture) (scale, bool) {
	if n == agronomy.Iron {
		s := halves("Rutgers' Mehlich-3 figures for iron", "rutgers-levels", 50, 100) // [rutgers-levels] critical 50, high above 100
		s.enough = true
		return s, true
	}
	low, medium, ok := SLAN(n, agronomy.Mehlich3, texture)
	if !ok {
		return scale{}, false
	}
	s := halves(slanName, "slan-sheet", low, medium)
	s.notes = append(s.notes, agronomy.Reason{Text: "Under the medium band a response is likely (80 to 100 in 100), inside it about even, above it there is little or none; a reading under half the low end is called very low, over twice the high end very high.", Source: "slan-sheet, common"})
	return s, true
}

// MLSN gives the minimum level of the MLSN guidelines in ppm, for Mehlich-3
// and, as estimated equivalents, ammonium acetate and Olsen. They come from
// turf that did well, at pH above 5.5.
func MLSN(n agronomy.Nutrient, method agronomy.Extractant) (agronomy.PPM, bool) {
	switch method {
	case agronomy.Mehlich3:
		switch n {
		case agronomy.Potassium:
			return 37, true // [mlsn-2014]
		case agronomy.Phosphorus:
			return 21, true // [mlsn-2014]
		case agronomy.Calcium:
			return 331, true // [mlsn-2014]
		case agronomy.Magnesium:
			return 47, true // [mlsn-2014]
		case agronomy.Sulfur:
			return 7, true // [mlsn-2014]
		}
	case agronomy.AmmoniumAcetate:
		switch n {
		case agronomy.Potassium:
			return 31, true // [mlsn-manual] estimated
		case agronomy.Magnesium:
			return 41, true // [mlsn-manual] estimated
		case agronomy.Calcium:
			return 248, true // [mlsn-manual] estimated
		}
	case agronomy.Olsen:
		if n == agronomy.Phosphorus {
			return 6, true // [mlsn-2014] 2012 version
		}
	}
	return 0, false
}

// Rutgers places a Mehlich-3 figure in lb/acre, as that laboratory prints it
// (twice the ppm), on its classes for all crops. Its high is the optimum.
func Rutgers(n agronomy.Nutrient, printed agronomy.PerAcre) (Level, bool) {
	var ends [4]agronomy.PerAcre // upper ends of very low, low, medium, high
	switch n {
	case agronomy.Phosphorus:
		ends = [4]agronomy.PerAcre{24, 45, 71, 137} // [rutgers-levels]
	case agronomy.Potassium:
		ends = [4]agronomy.PerAcre{40, 81, 145, 277} // [rutgers-levels]
	case agronomy.Magnesium:
		ends = [4]agronomy.PerAcre{45, 83, 143, 295} // [rutgers-levels]
	case agronomy.Calcium:
		ends = [4]agronomy.PerAcre{615, 1007, 1400, 1790} // [rutgers-levels]
	default:
		return Unknown, false
	}
	for i, l := range []Level{VeryLow, Low, Medium, High} {
		if printed <= ends[i] {
			return l, true
		}
	}
	return VeryHigh, true
}

// NewHampshire gives that state's Mehlich-3 optimum for lawns, in ppm. Its
// potassium starts far above other turf scales.
func NewHampshire(n agronomy.Nutrient) (low, high agronomy.PPM, ok bool) {
	switch n {
	case agronomy.Phosphorus:
		return 30, 50, true // [common]
	case agronomy.Potassium:
		return 170, 280, true // [common]
	case agronomy.Magnesium:
		return 60, 120, true // [common]
	case agronomy.Calcium:
		return 800, 1200, true // [common]
	}
	return 0, 0, false
}

// PennStateAdvisesP says whether phosphorus is advised on established turf at
// a Mehlich-3 reading: lawns up to 45 ppm, greens below 90.
func PennStateAdvisesP(ppm agronomy.PPM, green bool) bool {
	if green {
		return ppm < 90 // [atc-two-datasets]
	}
	return ppm <= 45 // [psu-m3p]
}

// WashingtonAdvisesP says whether phosphorus is likely to help: below 25 ppm
// by Bray-1 (soils of pH 7 or less) or 18 ppm by Olsen (above 7).
func WashingtonAdvisesP(ppm agronomy.PPM, method agronomy.Extractant) (advised, ok bool) {
	switch method {
	case agronomy.Bray1:
		return ppm < 25, true // [wsu-fs058e]
	case agronomy.Olsen:
		return ppm < 18, true // [wsu-fs058e]
	}
	return false, false
}
