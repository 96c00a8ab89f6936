package lime

import (
	"math"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

// Spacing and proof of lime on turf.
const (
	SpacingDays            = 90  // between two dressings, at least [common], inside [vt-452-717] [psu-report-notes]
	SpacingWantedDays      = 180 // aimed at: fall and spring [nc-lee-lime]
	LimeRetestMonths       = 6   // after the last dressing a sample begins to tell [psu-report-notes]
	LimeRetestLatestMonths = 12  // and by then it should be drawn [psu-report-notes]
	HalfRetestMonths       = 4   // Georgia's retest before the second half [uga-792]
)

// Caps on one dressing.
const (
	CapTurf         agronomy.PerThousand = 50  // [vt-452-717] [nc-lee-lime] [osu-tallfescue-lime] [common] [uga-792]
	CapCored        agronomy.PerThousand = 100 // cored turf [purdue-ay18] [psu-report-notes]
	LimeCapGreen    agronomy.PerThousand = 25  // greens and tees [psu-report-notes]
	LimeCapHydrated agronomy.PerThousand = 10  // from memory [common]
	LimeCapTilled   agronomy.PerThousand = 200 // one tillage pass [psu-establish]
)

// Cap gives the most of a lime to put down at once: 50 lb per 1000 sq ft on
// a lawn, 200 a tillage pass before sowing, 10 of hydrated lime.
func Cap(m material.Material, established bool) (agronomy.PerThousand, agronomy.Reason) {
	switch {
	case m.Hydrated:
		return LimeCapHydrated, agronomy.Reason{Text: "Hydrated lime is caustic: at most 10 lb/1000 sq ft at a time, watered in at once (from memory); limestone is better on living turf.", Source: "common"}
	case established:
		return CapTurf, agronomy.Reason{Text: "On a lawn at most 50 lb/1000 sq ft at a time: more lies on the leaves and only changes the top inch. Two published sheets allow 100 lb.", Source: "vt-452-717, nc-lee-lime, purdue-ay18"}
	}
	return LimeCapTilled, agronomy.Reason{Text: "Before sowing the whole amount goes in at once, mixed 4 to 6 in deep; over 200 lb/1000 sq ft half, till, the other half, till again.", Source: "psu-establish, psu-report-notes"}
}

// Dressings splits a weight of lime into the fewest equal dressings that
// respect the cap. Equal parts need one spreader setting, none is too small to be worth
// a walk, and a retest between two can still stop the next. A total of 0 gives
// none; both figures must be 0 or more, and the cap above 0.
func Dressings(total, most agronomy.PerThousand) ([]agronomy.PerThousand, error) {
	if err := within("amount, lb/1000 sq ft,", total, 0, 5000, "give the whole amount for the area's soil"); err != nil { // [common]
		return nil, err
	}
	if err := within("most at a time, lb/1000 sq ft,", most, 1, 5000, "give what may go down at once"); err != nil { // [common]
		return nil, err
	}
	parts := make([]agronomy.PerThousand, int(math.Ceil(float64(total/most)-1e-9)))
	for i := range parts {
		parts[i] = total / agronomy.PerThousand(len(parts))
	}
	return parts, nil
}
