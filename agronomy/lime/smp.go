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
