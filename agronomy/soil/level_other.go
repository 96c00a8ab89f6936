package soil

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
)

// GeorgiaRegion is the part of the Southeast whose soils a Mehlich-1 band is
// printed for.
type GeorgiaRegion string

// The two regions of Georgia's sheets.
const (
	CoastalPlain GeorgiaRegion = "coastal"
	Piedmont     GeorgiaRegion = "piedmont"
)

// georgiaBands gives the upper ends of low, medium and high in the sheet's
// lb/acre, which is twice the ppm. Magnesium has no end of high.
func georgiaBands(n agronomy.Nutrient, region GeorgiaRegion) (low, medium, high agronomy.PerAcre, ok bool) {
	switch {
	case n == agronomy.Phosphorus && region == CoastalPlain:
		return 30, 60, 100, true // [uga-sod-769]
	case n == agronomy.Phosphorus:
		return 20, 40, 75, true // [uga-sod-769]
	case n == agronomy.Potassium && region == CoastalPlain:
		return 60, 150, 250, true // [uga-sod-769]
	case n == agronomy.Potassium:
		return 100, 200, 350, true // [uga-sod-769]
	case n == agronomy.Magnesium && region == CoastalPlain:
		return 30, 60, 0, true // [uga-sod-769]
	case n == agronomy.Magnesium:
		return 60, 120, 0, true // [uga-sod-769]
	}
	return 0, 0, 0, false
}

// georgiaScale is the Mehlich-1 scale, with the region chosen from the state
// and the texture.
func georgiaScale(n agronomy.Nutrient, texture agronomy.Texture, state string) (scale, []agronomy.Reason, bool) {
	region, why := georgiaRegion(texture, state)
	low, medium, high, ok := georgiaBands(n, region)
	if !ok {
		return scale{}, nil, false
	}
	s := halves(fmt.Sprintf("Georgia's Mehlich-1 bands, %s soils", region), "uga-sod-769", agronomy.PPM(low/2), agronomy.PPM(medium/2))
	s.Low += justAbove // the low end itself is low here
	if high > 0 {
		s.high = agronomy.PPM(high / 2)
	}
	return s, []agronomy.Reason{why, {Text: "The bands were printed for centipedegrass sod; a reading under half the low end is called very low.", Source: "uga-sod-769, common"}}, true
}

// justAbove moves an edge past readings that are equal to it.
const justAbove = 1e-9

func georgiaRegion(texture agronomy.Texture, state string) (GeorgiaRegion, agronomy.Reason) {
	switch {
	case slices.Contains([]string{"FL", "LA", "MS", "DE"}, state):
		return CoastalPlain, agronomy.Reason{Text: state + " lies on the coastal plain: its bands are used.", Source: "common"}
	case texture == agronomy.Sand || texture == agronomy.LoamySand || texture == agronomy.SandyLoam:
		return CoastalPlain, agronomy.Reason{Text: fmt.Sprintf("A %s is read on the coastal plain's bands.", texture), Source: "common"}
	case texture == "":
		return Piedmont, agronomy.Reason{Text: "No texture is given; the piedmont's bands are used, which call a reading low sooner.", Source: "common"}
	}
	return Piedmont, agronomy.Reason{Text: fmt.Sprintf("A %s is read on the piedmont's bands.", texture), Source: "common"}
}

// ModifiedMorganOptimum gives the University of Massachusetts's optimum in
// ppm. Other states read the same extractant on other bands.
func ModifiedMorganOptimum(n agronomy.Nutrient) (low, high agronomy.PPM, ok bool) {
	switch n {
	case agronomy.Phosphorus:
		return 4, 14, true // [morgan-ranges]
	case agronomy.Potassium:
		return 100, 160, true // [morgan-ranges]
	case agronomy.Magnesium:
		return 50, 120, true // [morgan-ranges]
	case agronomy.Calcium:
		return 1000, 1500, true // [morgan-ranges]
	}
	return 0, 0, false
}

func modifiedMorganScale(n agronomy.Nutrient) (scale, bool) {
	low, high, ok := ModifiedMorganOptimum(n)
	switch {
	case ok:
		s := halves("University of Massachusetts, modified Morgan", "morgan-ranges", low, high)
		s.enough = true
		return s, true
	case n == agronomy.Sulfur:
		s := halves("University of Massachusetts, modified Morgan", "morgan-ranges", 10, 40) // [morgan-ranges] above 10; [slan-sheet] 40
		s.enough = true
		return s, true
	case n == agronomy.Iron:
		s := halves("University of Massachusetts, usual readings by modified Morgan", "morgan-ranges", 2.7, 9.4) // [morgan-ranges]
		s.enough = true
		return s, true
	}
	return scale{}, false
}

// NebraskaOptimum gives a Nebraska laboratory's optimum for turf in ppm by
// CEC, for cations drawn with ammonium acetate (from memory: the sheet does
// not name it). Calcium has no upper end printed: high is 0. The classes end at a
// CEC of 20 meq/100 g; above it ok is false.
func NebraskaOptimum(n agronomy.Nutrient, cec agronomy.Meq) (low, high agronomy.PPM, ok bool) {
	row := slices.IndexFunc([]agronomy.Meq{5, 10, 15, 20}, func(top agronomy.Meq) bool { return cec <= top }) // [neb-lab-2007] classes of CEC
	if row < 0 {
		return 0, 0, false
	}
	switch n {
	case agronomy.Potassium:
		return []agronomy.PPM{91, 121, 151, 181}[row], []agronomy.PPM{121, 160, 200, 240}[row], true // [neb-lab-2007]
	case agronomy.Magnesium:
		return []agronomy.PPM{60, 120, 180, 240}[row], []agronomy.PPM{119, 239, 359, 479}[row], true // [neb-lab-2007]
	case agronomy.Calcium:
		return []agronomy.PPM{600, 1200, 1800, 2400}[row], 0, true // [neb-lab-2007]
	}
	return 0, 0, false
}

// DrawnWith is the extractant of a nutrient on a report that names method:
// Bray-1 and Olsen draw phosphorus alone, and their laboratories draw the
// cations with ammonium acetate. [common]
func DrawnWith(method agronomy.Extractant, n agronomy.Nutrient) agronomy.Extractant {
	if _, cation := agronomy.MeqWeight(n); cation && (method == agronomy.Bray1 || method == agronomy.Olsen) {
		return agronomy.AmmoniumAcetate
	}
	return method
}

// cationLabScale serves the reports whose phosphorus is by Bray-1 or Olsen and
// whose cations are by ammonium acetate.
func cationLabScale(n agronomy.Nutrient, method agronomy.Extractant, texture agronomy.Texture) (scale, bool, []agronomy.Reason) {
	switch n {
	case agronomy.Phosphorus:
		if low, high, ok := SLAN(n, method, texture); ok {
			return halves(slanName, "slan-sheet", low, high), true, nil
		}
		return scale{}, false, []agronomy.Reason{{Text: "Ammonium acetate extracts no phosphorus: ask the lab which extractant its P figure is by."}}
	case agronomy.Potassium, agronomy.Magnesium, agronomy.Calcium:
		s, ok := mehlich3Scale(n, texture)
		return s, ok, []agronomy.Reason{{Text: "The figure is by ammonium acetate, which extracts about as much as Mehlich-3: the same bands are used.", Source: "common"}}
	}
	low, high := agronomy.PPM(7), agronomy.PPM(12) // [neb-lab-2007] sulfur
	if n == agronomy.Iron {
		low, high = 5, 20 // [neb-lab-2007]
	}
	s := halves("A Nebraska laboratory's turf scale", "neb-lab-2007", low, high)
	s.enough = true
	return s, true, nil
}

// others shows where other published scales place the same reading, if it is elsewhere.
func others(n agronomy.Nutrient, ppm agronomy.PPM, method agronomy.Extractant, cec agronomy.Meq) []agronomy.Reason {
	var why []agronomy.Reason
	if floor, ok := MLSN(n, DrawnWith(method, n)); ok {
		verdict := "already enough to"
		if ppm < floor {
			verdict = "too little to"
		}
		why = append(why, agronomy.Reason{Text: "The minimum-levels school (MLSN) calls it " + verdict + " keep good turf: its floor is " + agronomy.Whole(floor) + " ppm.", Source: "mlsn-2014"})
	}
	switch method {
	case agronomy.Mehlich3:
		if l, ok := Rutgers(n, agronomy.PerAcre(2*ppm)); ok {
			why = append(why, agronomy.Reason{Text: "Rutgers, whose high is the optimum for all crops, calls it " + string(l) + ".", Source: "rutgers-levels"})
		}
		if low, high, ok := NewHampshire(n); ok {
			why = append(why, agronomy.Reason{Text: "The wider bands of a garden want " + agronomy.Whole(low) + " to " + agronomy.Whole(high) + " ppm.", Source: "common"})
		}
		if n == agronomy.Phosphorus {
			advice := "still advises phosphorus"
			if !PennStateAdvisesP(ppm, false) {
				advice = "advises no phosphorus"
			}
			why = append(why, agronomy.Reason{Text: "Penn State " + advice + ": it stops above 45 ppm on lawns.", Source: "psu-m3p"})
		}
	case agronomy.Bray1, agronomy.Olsen:
		if advised, ok := WashingtonAdvisesP(ppm, method); ok && n == agronomy.Phosphorus {
			says := "Washington expects phosphorus to help: it stops at %s ppm."
			if !advised {
				says = "Washington expects no help from phosphorus from %s ppm up."
			}
			stop := "25"
			if method == agronomy.Olsen {
				stop = "18"
			}
			why = append(why, agronomy.Reason{Text: fmt.Sprintf(says, stop), Source: "wsu-fs058e"})
		}
	}
	if low, high, ok := NebraskaOptimum(n, cec); ok && cec > 0 && DrawnWith(method, n) == agronomy.AmmoniumAcetate {
		wants := "at least " + agronomy.Whole(low) + " ppm"
		if high > 0 {
			wants = agronomy.Whole(low) + " to " + agronomy.Whole(high) + " ppm"
		}
		why = append(why, agronomy.Reason{Text: "A Nebraska laboratory, which goes by the CEC, wants " + wants + " at " + agronomy.Figure(cec) + " meq/100 g.", Source: "neb-lab-2007"})
	}
	return why
}
