package agronomy

import (
	"fmt"
	"slices"
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
func georgiaBands(n Nutrient, region GeorgiaRegion) (low, medium, high PerAcre, ok bool) {
	switch {
	case n == Phosphorus && region == CoastalPlain:
		return 30, 60, 100, true // [uga-sod-769]
	case n == Phosphorus:
		return 20, 40, 75, true // [uga-sod-769]
	case n == Potassium && region == CoastalPlain:
		return 60, 150, 250, true // [uga-sod-769]
	case n == Potassium:
		return 100, 200, 350, true // [uga-sod-769]
	case n == Magnesium && region == CoastalPlain:
		return 30, 60, 0, true // [uga-sod-769]
	case n == Magnesium:
		return 60, 120, 0, true // [uga-sod-769]
	}
	return 0, 0, 0, false
}

// Georgia places a Mehlich-1 figure in the sheet's lb/acre.
func Georgia(n Nutrient, region GeorgiaRegion, printed PerAcre) (Level, bool) {
	low, medium, high, ok := georgiaBands(n, region)
	switch {
	case !ok:
		return Unknown, false
	case printed <= low:
		return Low, true
	case printed <= medium:
		return Medium, true
	case high == 0 || printed <= high:
		return High, true
	}
	return VeryHigh, true
}

// georgiaScale is the Mehlich-1 scale, with the region chosen from the state
// and the texture.
func georgiaScale(n Nutrient, texture Texture, state string) (scale, []Reason, bool) {
	region, why := georgiaRegion(texture, state)
	low, medium, high, ok := georgiaBands(n, region)
	if !ok {
		return scale{}, nil, false
	}
	s := halves(fmt.Sprintf("Georgia's Mehlich-1 bands, %s soils", region), "uga-sod-769", PPM(low/2), PPM(medium/2))
	s.low += justAbove // the low end itself is low here
	if high > 0 {
		s.high = PPM(high / 2)
	}
	return s, []Reason{why, {"The bands were printed for centipedegrass sod; a reading under half the low end is called very low.", "uga-sod-769, common"}}, true
}

// justAbove moves an edge past readings that are equal to it.
const justAbove = 1e-9

func georgiaRegion(texture Texture, state string) (GeorgiaRegion, Reason) {
	switch {
	case slices.Contains([]string{"FL", "LA", "MS", "DE"}, state):
		return CoastalPlain, Reason{state + " lies on the coastal plain: its bands are used.", "common"}
	case texture == Sand || texture == LoamySand || texture == SandyLoam:
		return CoastalPlain, Reason{fmt.Sprintf("A %s is read on the coastal plain's bands.", texture), "common"}
	case texture == "":
		return Piedmont, Reason{"No texture is given; the piedmont's bands are used, which call a reading low sooner.", "common"}
	}
	return Piedmont, Reason{fmt.Sprintf("A %s is read on the piedmont's bands.", texture), "common"}
}

// ModifiedMorganOptimum gives the University of Massachusetts's optimum in
// ppm. Other states read the same extractant on other bands.
func ModifiedMorganOptimum(n Nutrient) (low, high PPM, ok bool) {
	switch n {
	case Phosphorus:
		return 4, 14, true // [morgan-ranges]
	case Potassium:
		return 100, 160, true // [morgan-ranges]
	case Magnesium:
		return 50, 120, true // [morgan-ranges]
	case Calcium:
		return 1000, 1500, true // [morgan-ranges]
	}
	return 0, 0, false
}

func modifiedMorganScale(n Nutrient) (scale, bool) {
	low, high, ok := ModifiedMorganOptimum(n)
	switch {
	case ok:
		s := halves("University of Massachusetts, modified Morgan", "morgan-ranges", low, high)
		s.enough = true
		return s, true
	case n == Sulfur:
		s := halves("University of Massachusetts, modified Morgan", "morgan-ranges", 10, 40) // [morgan-ranges] above 10; [slan-sheet] 40
		s.enough = true
		return s, true
	case n == Iron:
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
func NebraskaOptimum(n Nutrient, cec Meq) (low, high PPM, ok bool) {
	row := slices.IndexFunc([]Meq{5, 10, 15, 20}, func(top Meq) bool { return cec <= top }) // [neb-lab-2007] classes of CEC
	if row < 0 {
		return 0, 0, false
	}
	switch n {
	case Potassium:
		return []PPM{91, 121, 151, 181}[row], []PPM{121, 160, 200, 240}[row], true // [neb-lab-2007]
	case Magnesium:
		return []PPM{60, 120, 180, 240}[row], []PPM{119, 239, 359, 479}[row], true // [neb-lab-2007]
	case Calcium:
		return []PPM{600, 1200, 1800, 2400}[row], 0, true // [neb-lab-2007]
	}
	return 0, 0, false
}

// drawnWith is the extractant of a nutrient on a report that names method:
// Bray-1 and Olsen draw phosphorus alone, and their laboratories draw the
// cations with ammonium acetate. [common]
func drawnWith(method Extractant, n Nutrient) Extractant {
	if _, cation := MeqWeight(n); cation && (method == Bray1 || method == Olsen) {
		return AmmoniumAcetate
	}
	return method
}

// cationLabScale serves the reports whose phosphorus is by Bray-1 or Olsen and
// whose cations are by ammonium acetate.
func cationLabScale(n Nutrient, method Extractant, texture Texture) (scale, bool, []Reason) {
	switch n {
	case Phosphorus:
		if low, high, ok := SLAN(n, method, texture); ok {
			return halves(slanName, "slan-sheet", low, high), true, nil
		}
		return scale{}, false, []Reason{{Text: "Ammonium acetate draws no phosphorus: ask the lab which extractant its P figure is by."}}
	case Potassium, Magnesium, Calcium:
		s, ok := mehlich3Scale(n, texture)
		return s, ok, []Reason{{"The figure is by ammonium acetate, which draws about as much as Mehlich-3: the same bands are used.", "common"}}
	}
	low, high := PPM(7), PPM(12) // [neb-lab-2007] sulfur
	if n == Iron {
		low, high = 5, 20 // [neb-lab-2007]
	}
	s := halves("A Nebraska laboratory's turf scale", "neb-lab-2007", low, high)
	s.enough = true
	return s, true, nil
}

// others shows how other published scales see the same reading, where they
// part from the one that ships.
func others(n Nutrient, ppm PPM, method Extractant, cec Meq) []Reason {
	var why []Reason
	if floor, ok := MLSN(n, drawnWith(method, n)); ok {
		verdict := "already enough to"
		if ppm < floor {
			verdict = "too little to"
		}
		why = append(why, Reason{"The minimum-levels school (MLSN) calls it " + verdict + " keep good turf: its floor is " + whole(floor) + " ppm.", "mlsn-2014"})
	}
	switch method {
	case Mehlich3:
		if l, ok := Rutgers(n, PerAcre(2*ppm)); ok {
			why = append(why, Reason{"Rutgers, whose high is the optimum for all crops, calls it " + string(l) + ".", "rutgers-levels"})
		}
		if low, high, ok := NewHampshire(n); ok {
			why = append(why, Reason{"New Hampshire, with the wider bands of a garden, wants " + whole(low) + " to " + whole(high) + " ppm.", "unh-lawn-report"})
		}
		if n == Phosphorus {
			advice := "still advises phosphorus"
			if !PennStateAdvisesP(ppm, false) {
				advice = "advises no phosphorus"
			}
			why = append(why, Reason{"Penn State " + advice + ": it stops above 45 ppm on lawns.", "psu-m3p"})
		}
	case Bray1, Olsen:
		if advised, ok := WashingtonAdvisesP(ppm, method); ok && n == Phosphorus {
			says := "Washington expects phosphorus to help: it stops at %s ppm."
			if !advised {
				says = "Washington expects no help from phosphorus from %s ppm up."
			}
			stop := "25"
			if method == Olsen {
				stop = "18"
			}
			why = append(why, Reason{fmt.Sprintf(says, stop), "wsu-fs058e"})
		}
	}
	if low, high, ok := NebraskaOptimum(n, cec); ok && cec > 0 && drawnWith(method, n) == AmmoniumAcetate {
		wants := "at least " + whole(low) + " ppm"
		if high > 0 {
			wants = whole(low) + " to " + whole(high) + " ppm"
		}
		why = append(why, Reason{"A Nebraska laboratory, which goes by the CEC, wants " + wants + " at " + figure(cec) + " meq/100 g.", "neb-lab-2007"})
	}
	return why
}
