package lime

import "swardbook/agronomy"

// oregon is EM 9585 (2025), Table 1: tons of 100-score lime per acre, 6 in.
func oregon() bufferRule {
	return bufferRule{
		name: "Oregon's Sikora table", source: "osu-em9585",
		depth: 6, effective: 100, unit: "tons", low: 4.8, high: 6.9, // [osu-em9585]
		targets: []agronomy.PH{5.6, 6.0, 6.4, 6.8, 7.2}, // [osu-em9585]
		needs:   fromRows(oregonRows),
	}
}

// oregonRows bends at 5.7: one line through it would be wrong. [osu-em9585]
var oregonRows = [][]float64{
	{6.9, 0.0, 0.0, 0.5, 0.8, 1.0},
	{6.8, 0.0, 0.4, 0.8, 1.2, 1.6},
	{6.7, 0.2, 0.7, 1.1, 1.6, 2.2},
	{6.6, 0.4, 0.9, 1.5, 2.1, 2.7},
	{6.5, 0.7, 1.2, 1.8, 2.5, 3.3},
	{6.4, 0.9, 1.5, 2.1, 2.9, 3.8},
	{6.3, 1.1, 1.7, 2.5, 3.3, 4.4},
	{6.2, 1.3, 2.0, 2.8, 3.7, 4.9},
	{6.1, 1.5, 2.3, 3.1, 4.2, 5.5},
	{6.0, 1.7, 2.5, 3.5, 4.6, 6.0},
	{5.9, 1.9, 2.8, 3.8, 5.0, 6.6},
	{5.8, 2.2, 3.1, 4.1, 5.4, 7.1},
	{5.7, 2.7, 4.0, 5.5, 7.2, 9.9},
	{5.6, 3.1, 4.5, 6.2, 8.3, 11.4},
	{5.5, 3.5, 5.1, 7.0, 9.3, 12.9},
	{5.4, 3.8, 5.6, 7.7, 10.3, 14.3},
	{5.3, 4.2, 6.2, 8.5, 11.3, 15.8},
	{5.2, 4.6, 6.7, 9.2, 12.3, 17.3},
	{5.1, 5.0, 7.3, 10.0, 13.0, 18.7},
	{5.0, 5.3, 7.8, 10.7, 14.0, 20.2},
	{4.9, 5.7, 8.4, 11.5, 15.0, 21.7},
	{4.8, 6.1, 8.9, 12.2, 16.3, 23.2},
}

// kansas is the Kansas set of equations: lb of effective CaCO3 per acre. They
// are printed per inch of depth; 6 in is the usual depth. [ksu-lime-sikora]
func kansas() bufferRule {
	return bufferRule{
		name: "Kansas's Sikora equations", source: "ksu-lime-sikora",
		depth: 6, effective: 100, unit: "lb", // [ksu-lime-sikora]
		low: 4.8, high: 7.0, // [common] no range is printed; that of the other tables
		targets: []agronomy.PH{5.5, 6.0, 6.8}, // [ksu-lime-sikora]
		below:   []agronomy.PH{5.5, 5.8, 6.4}, // [ksu-lime-sikora]
		needs: func(buffer agronomy.PH) []float64 {
			b := float64(buffer)
			return []float64{
				6 * (7060 - 1770*b + 112*b*b),  // [ksu-lime-sikora]
				6 * (14100 - 3540*b + 224*b*b), // [ksu-lime-sikora]
				6 * (28300 - 7100*b + 449*b*b), // [ksu-lime-sikora]
			}
		},
	}
}
