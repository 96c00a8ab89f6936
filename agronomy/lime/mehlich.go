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

// ncTons is North Carolina's equation.
func ncTons(ph, target agronomy.PH, acidity agronomy.Meq) agronomy.TonsPerAcre {
	return agronomy.TonsPerAcre(float64(acidity) * max(0, float64(target-ph)) / float64(ncEnds-ph)) // [nc-lime-factor]
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
