package lime

import "swardbook/agronomy"

// bufferRule is one published way from a buffer pH to lime: the need for each
// printed target, at the rule's own depth and of its own lime.
type bufferRule struct {
	name      string
	source    string
	depth     agronomy.Inches
	effective agronomy.Percent // of the lime that the printed figures are for
	unit      string           // of the figures: "lb" or "tons", per acre
	low, high agronomy.PH      // buffer readings covered
	targets   []agronomy.PH    // rising
	below     []agronomy.PH    // the target is limed for only when the soil pH is under this; nil: always
	needs     func(buffer agronomy.PH) []float64
}

// at reads the rule for a buffer pH and a target between its printed ones.
func (r bufferRule) at(buffer, target agronomy.PH) (float64, error) {
	if err := within("buffer pH", buffer, r.low, r.high, "ask the laboratory for its own lime figure, or go by pH and texture"); err != nil {
		return 0, err
	}
	last := len(r.targets) - 1
	if err := within("target pH", target, r.targets[0], r.targets[last], "choose a target that the table prints"); err != nil {
		return 0, err
	}
	return along(knots(r.targets, r.needs(buffer)), target), nil
}

// fromRows reads a table by straight lines between its rows. Each row is a
// buffer pH, highest first, and the need for each target.
func fromRows(rows [][]float64) func(agronomy.PH) []float64 {
	return func(buffer agronomy.PH) []float64 {
		b := float64(buffer)
		i := 1
		for i < len(rows)-1 && b < rows[i][0] {
			i++
		}
		needs := make([]float64, len(rows[i])-1)
		for k := range needs {
			needs[k] = between(b, rows[i-1][0], rows[i-1][k+1], rows[i][0], rows[i][k+1])
		}
		return needs
	}
}

// iowa is PM 1688 (2002): lb of CaCO3 per acre, 6 in. [laboski-lime]
func iowa() bufferRule {
	return bufferRule{
		name: "Iowa's SMP table", source: "laboski-lime",
		depth: 6, effective: 100, unit: "lb", low: 5.8, high: 7.0, // [laboski-lime]
		targets: []agronomy.PH{6.5, 6.9}, // [laboski-lime]
		needs: fromRows([][]float64{ // [laboski-lime]
			{7.0, 0, 1100},
			{6.8, 600, 2700},
			{6.6, 2100, 4400},
			{6.4, 3500, 6000},
			{6.2, 5000, 7700},
			{6.0, 6400, 9300},
			{5.8, 7900, 10600},
		}),
	}
}

// triState is the linear form of Bulletin E-2567 (1995): tons of 90 % lime per
// acre, 8 in. Depth, stone and targets were read; the lines are from memory.
func triState() bufferRule {
	return bufferRule{
		name: "the Tri-state lines of 1995", source: "tristate-1995",
		depth: 8, effective: 90, unit: "tons", low: 4.8, high: 7.5, // no lime over 7.0 [msu-lime-index]; the buffer starts at 7.5, from memory [smp-1961]
		targets: []agronomy.PH{6.0, 6.5, 6.8}, // [tristate-1995]
		needs: func(buffer agronomy.PH) []float64 {
			index := 10 * float64(buffer) // lime test index
			return []float64{
				max(0, 49.3-0.71*index), // from memory [tristate-1995]
				max(0, 60.4-0.87*index), // from memory [tristate-1995]
				max(0, 71.4-1.03*index), // from memory [tristate-1995]
			}
		},
	}
}

// ncr221 is the table of NCR Publication 221: tons of 90 % lime per acre,
// 8 in. The cells are from memory. [ncr221-smp] [smp-1961]
func ncr221() bufferRule {
	return bufferRule{
		name: "the North Central SMP table", source: "ncr221-smp",
		depth: 8, effective: 90, unit: "tons", low: 4.8, high: 6.8, // [ncr221-smp] [ucdavis-lr]
		targets: []agronomy.PH{6.0, 6.5, 7.0}, // [ncr221-smp]
		needs: func(buffer agronomy.PH) []float64 {
			return fromRows(ncr221Rows)(buffer)[:3]
		},
	}
}

// ncr221Rows holds buffer pH and tons to pH 6.0, 6.5, 7.0 on mineral soil and
// to 5.2 on organic soil. From memory. [ncr221-smp] [smp-1961]
var ncr221Rows = [][]float64{
	{6.8, 1.0, 1.2, 1.4, 0.7},
	{6.7, 1.7, 2.1, 2.4, 1.3},
	{6.6, 2.4, 2.9, 3.4, 1.8},
	{6.5, 3.1, 3.8, 4.5, 2.4},
	{6.4, 3.8, 4.7, 5.5, 2.9},
	{6.3, 4.5, 5.5, 6.5, 3.5},
	{6.2, 5.2, 6.4, 7.5, 4.0},
	{6.1, 5.9, 7.2, 8.6, 4.6},
	{6.0, 6.6, 8.1, 9.6, 5.1},
	{5.9, 7.3, 9.0, 10.6, 5.7},
	{5.8, 8.0, 9.8, 11.7, 6.2},
	{5.7, 8.7, 10.7, 12.7, 6.7},
	{5.6, 9.4, 11.6, 13.7, 7.3},
	{5.5, 10.2, 12.5, 14.8, 7.9},
	{5.4, 10.9, 13.4, 15.8, 8.4},
	{5.3, 11.6, 14.2, 16.9, 8.9},
	{5.2, 12.3, 15.1, 17.9, 9.4},
	{5.1, 13.0, 16.0, 19.0, 10.0},
	{5.0, 13.7, 16.9, 20.0, 10.5},
	{4.9, 14.4, 17.8, 21.1, 11.0},
	{4.8, 15.1, 18.6, 22.1, 11.6},
}

// SMPIowa gives pure CaCO3 for a 6 inch layer from an SMP buffer pH of 5.8 to
// 7.0, to a target of 6.5 to 6.9. Straight lines between rows and targets are
// ours. [laboski-lime]
func SMPIowa(buffer, target agronomy.PH) (agronomy.PerAcre, error) {
	lb, err := iowa().at(buffer, target)
	return agronomy.PerAcre(lb), err
}

// SMPNCR221 gives lime of 90 % value for an 8 inch layer from an SMP buffer pH
// of 4.8 to 6.8, to a target of 6.0 to 7.0. From memory. [ncr221-smp] [smp-1961]
func SMPNCR221(buffer, target agronomy.PH) (agronomy.TonsPerAcre, error) {
	t, err := ncr221().at(buffer, target)
	return agronomy.TonsPerAcre(t), err
}

// SMPOrganic gives lime of 90 % value for an 8 inch layer of organic soil, to
// pH 5.2, from an SMP buffer pH of 4.8 to 6.8. From memory. [ncr221-smp]
func SMPOrganic(buffer agronomy.PH) (agronomy.TonsPerAcre, error) {
	if err := within("buffer pH", buffer, 4.8, 6.8, "go by pH and texture"); err != nil { // [ncr221-smp]
		return 0, err
	}
	return agronomy.TonsPerAcre(fromRows(ncr221Rows)(buffer)[3]), nil
}

// SMPTriState gives lime of 90 % value for an 8 inch layer from an SMP buffer
// pH (a tenth of the lime test index) of 4.8 to 7.5, to a target of 6.0 to 6.8;
// none over 7.0. The lines are from memory. [tristate-1995] [msu-lime-index]
func SMPTriState(buffer, target agronomy.PH) (agronomy.TonsPerAcre, error) {
	t, err := triState().at(buffer, target)
	return agronomy.TonsPerAcre(t), err
}
