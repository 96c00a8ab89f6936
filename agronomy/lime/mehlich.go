package lime

import "swardbook/agronomy"

// The Mehlich equation of North Carolina ends where its buffer starts.
const (
	ncDepth   agronomy.Inches = 8   // from memory [nc-lime-factor]
	ncEnds    agronomy.PH     = 6.6 // [nc-lime-factor]
	ncTarget  agronomy.PH     = 6.5 // [nc-lime-factor]
	ncLowest  agronomy.PH     = 4.0 // [common] lowest buffer reading taken; none is printed
	pennDepth agronomy.Inches = 7   // not printed: the 7.0 column is 1000 lb/acre a meq, the plow layer [psu-turf-lime]
)

// MehlichAcidity gives the acidity behind a Mehlich buffer pH of 4.0 to 6.6, in
// meq per 100 cm3 of soil. [nc-lime-factor]
func MehlichAcidity(buffer agronomy.PH) (agronomy.Meq, error) {
	if err := within("Mehlich buffer pH", buffer, ncLowest, ncEnds, "the buffer itself starts at 6.6; ask the laboratory for the acidity in meq/100 cm3"); err != nil {
		return 0, err
	}
	return agronomy.Meq(4 * (6.6 - float64(buffer))), nil // [nc-lime-factor]
}

// MehlichNC gives ground limestone for an 8 inch layer (the depth is from
// memory) by North Carolina's equation, less the credit for lime of the last
// year: soil pH under 6.6, target up to 6.5. [nc-lime-factor]
func MehlichNC(ph, target agronomy.PH, acidity agronomy.Meq, credit agronomy.TonsPerAcre) (agronomy.TonsPerAcre, error) {
	if err := within("target pH", target, 4.0, ncTarget, "North Carolina's equation goes up to 6.5"); err != nil {
		return 0, err
	}
	if err := within("acidity, meq/100 cm3,", acidity, 0, 40, "check the report: acidity is a few units per 100 cm3"); err != nil { // [common]
		return 0, err
	}
	if ph >= target {
		return 0, nil
	}
	return max(0, ncTons(ph, target, acidity)-credit), nil // [nc-lime-factor]
}

// ncTons is North Carolina's equation.
func ncTons(ph, target agronomy.PH, acidity agronomy.Meq) agronomy.TonsPerAcre {
	return agronomy.TonsPerAcre(float64(acidity) * max(0, float64(target-ph)) / float64(ncEnds-ph)) // [nc-lime-factor]
}

// MehlichNCPH turns MehlichNC round: the pH to expect from an amount worked
// into 8 inches. [nc-lime-factor]
func MehlichNCPH(ph agronomy.PH, acidity agronomy.Meq, lime agronomy.TonsPerAcre) (agronomy.PH, error) {
	if err := within("soil pH", ph, 3.5, ncEnds, "North Carolina's equation holds under pH 6.6"); err != nil { // [nc-lime-factor]
		return 0, err
	}
	if lime == 0 {
		return ph, nil
	}
	reached := ph + agronomy.PH(float64(lime)/float64(acidity)*float64(ncEnds-ph)) // [nc-lime-factor]
	return reached, within("expected pH", reached, 3.5, ncTarget, "spread less; North Carolina's equation goes up to 6.5")
}

// LimeCredit gives what lime spread within the last year still has to do, in
// North Carolina's reading: 8 % a month on mineral soil, 16 % on organic soil.
// That the credit so runs out after 12 or 6 months is our reading. [nc-lime-factor]
func LimeCredit(spread agronomy.PerThousand, monthsAgo float64, organic bool) agronomy.PerThousand {
	monthly := 0.08 // [nc-lime-factor]
	if organic {
		monthly = 0.16 // [nc-lime-factor]
	}
	return agronomy.PerThousand(float64(spread) * min(1, max(0, 1-monthly*monthsAgo)))
}

// MehlichPennField gives lime of 100 % CCE for the plow layer (7 inches) by
// exchangeable acidity, Penn State's field rule, to pH 6.5 or 7.0.
// [psu-agronomy-guide-lime]
func MehlichPennField(ph agronomy.PH, acidity agronomy.Meq, target agronomy.PH) (agronomy.PerAcre, error) {
	if err := within("acidity, meq/100 g,", acidity, 0, 40, "check the report: acidity is a few units per 100 g"); err != nil { // [common]
		return 0, err
	}
	switch {
	case target != 6.5 && target != 7.0: // [psu-agronomy-guide-lime]
		return 0, &RangeError{"target pH", float64(target), 6.5, 7.0, "Penn State's field rule is for 6.5 and 7.0 only"}
	case ph >= target:
		return 0, nil
	case target == 7.0:
		return agronomy.PerAcre(acidity * 1000), nil // [psu-agronomy-guide-lime]
	case acidity > 4.0: // [psu-agronomy-guide-lime]
		return agronomy.PerAcre(acidity * 840), nil // [psu-agronomy-guide-lime]
	}
	return 2000, nil // [psu-agronomy-guide-lime]
}

// MehlichPennTurf gives lb of CCE per 1000 sq ft for the plow layer, about 7
// inches, from an exchangeable acidity above 0 and up to 25.7 meq/100 g, to pH
// 6.0, 6.5 or 7.0 or between. The row is the next at or above the acidity; none
// when the pH is at the target. [psu-turf-lime]
func MehlichPennTurf(ph agronomy.PH, acidity agronomy.Meq, target agronomy.PH) (agronomy.PerThousand, error) {
	if err := within("target pH", target, 6.0, 7.0, "Penn State's turf table is for 6.0 to 7.0"); err != nil { // [psu-turf-lime]
		return 0, err
	}
	row, err := pennTurfRow(acidity)
	if err != nil || ph >= target {
		return 0, err
	}
	return agronomy.PerThousand(along(knots(pennTurfTargets, row), target)), nil
}

// pennTurfTargets are the targets of the table. [psu-turf-lime]
var pennTurfTargets = []agronomy.PH{6.0, 6.5, 7.0}

// pennTurfRow gives the needs for the targets of the table.
func pennTurfRow(acidity agronomy.Meq) ([]float64, error) {
	last := pennTurfRows[len(pennTurfRows)-1][0]
	if err := within("exchangeable acidity, meq/100 g,", float64(acidity), 0, last, "ask the laboratory for its own lime figure"); err != nil {
		return nil, err
	}
	i := 0
	for float64(acidity) > pennTurfRows[i][0] {
		i++
	}
	return pennTurfRows[i][1:], nil
}

// pennTurfRows holds acidity in meq/100 g and lb/1000 sq ft to pH 6.0, 6.5 and
// 7.0. [psu-turf-lime]
var pennTurfRows = [][]float64{
	{2.0, 50, 50, 50},
	{2.6, 50, 50, 70},
	{3.3, 50, 50, 70},
	{3.9, 50, 70, 90},
	{4.6, 50, 70, 110},
	{5.2, 50, 90, 110},
	{5.8, 50, 90, 140},
	{6.5, 70, 110, 160},
	{7.1, 90, 110, 160},
	{7.8, 90, 140, 180},
	{8.4, 110, 140, 180},
	{9.0, 110, 160, 210},
	{9.7, 140, 180, 230},
	{10.3, 140, 180, 230},
	{11.0, 160, 210, 250},
	{11.6, 160, 210, 280},
	{12.3, 180, 230, 280},
	{12.9, 180, 250, 300},
	{13.5, 210, 250, 320},
	{14.2, 210, 280, 320},
	{14.8, 230, 280, 340},
	{15.5, 230, 300, 370},
	{16.1, 250, 320, 370},
	{16.8, 250, 320, 390},
	{17.4, 280, 340, 390},
	{18.0, 280, 340, 410},
	{18.7, 300, 370, 440},
	{19.3, 300, 390, 440},
	{20.0, 320, 390, 460},
	{20.6, 320, 410, 480},
	{21.2, 340, 410, 480},
	{21.9, 340, 460, 510},
	{22.5, 370, 460, 530},
	{23.2, 370, 460, 530},
	{23.8, 390, 480, 550},
	{24.5, 390, 480, 570},
	{25.1, 410, 510, 570},
	{25.7, 410, 530, 600},
}
