package agronomy

import (
	"fmt"
	"math"

	"swardbook/climate"
)

// Limits on elemental sulfur on turf.
const (
	SulfurCap         PerThousand        = 5               // one application, turf mowed at 2 in or more [purdue-sulfur]
	SulfurCapYear     PerThousand        = 10              // [purdue-sulfur]
	SulfurSpacingDays                    = 60              // [common]
	SulfurHottestAir  climate.Fahrenheit = 75              // [common]
	SulfurColdestSoil climate.Fahrenheit = 50              // bacteria turn it to acid above this [common]
	SulfurWarmDays                       = 60              // of such soil that must follow [common]
	CaCO3PerSulfur                       = 100.086 / 32.06 // lb CaCO3 that 1 lb S uses up [atomic-weights]
	sulfurLayer       Inches             = 6.5             // middle of the printed 6 to 7 in [sulfur-table]
)

// SulfurNeed is what it takes to lower a pH, and how it may go down.
type SulfurNeed struct {
	Total        PerThousand // elemental S for the depth
	Applications []PerThousand
	Years        int // over which the yearly cap spreads them
	Why          []Reason
}

// sulfurColumn gives the S that takes a plow layer down from a pH to 6.5, lb
// per acre. From memory. [sulfur-table]
func sulfurColumn(texture Texture) ([]knot, string, error) {
	rows := [][4]float64{{6.5}, {7.0, 100, 150, 300}, {7.5, 500, 800, 1000}, {8.0, 1200, 1500, 2000}, {8.5, 2000, 2500, 3000}} // from memory [sulfur-table]
	var k int
	var name string
	switch texture {
	case Sand, LoamySand, SandyLoam:
		k, name = 1, "sand"
	case Loam, SiltLoam:
		k, name = 2, "loam"
	case ClayLoam, Clay:
		k, name = 3, "clay"
	default:
		return nil, "", fmt.Errorf("texture %q has no sulfur figure: name sand, loamy sand, sandy loam, loam, silt loam, clay loam or clay", texture)
	}
	knots := make([]knot, len(rows))
	for i, row := range rows {
		knots[i] = knot{PH(row[0]), row[k]}
	}
	return knots, name, nil
}

// sulfurRange checks a way down for SulfurToLower and its inverse.
func sulfurRange(ph PH, depth Inches) error {
	if ph > SulfurFreeLime {
		return &RangeError{"soil pH for sulfur", float64(ph), 6.5, float64(SulfurFreeLime), "soil with free lime uses up more sulfur than turf can take; feed iron and accept the pH"}
	}
	if err := within("soil pH for sulfur", ph, 6.5, SulfurFreeLime, "no sulfur is needed for grass; the table starts at 6.5"); err != nil {
		return err
	}
	return within("depth, in,", depth, 1, deepest, "take the sampled depth, 4 in on a lawn") // [common]
}

// SulfurToLower gives elemental sulfur to bring a soil of pH 6.5 to 8.2 down to
// a target of 6.5 or more, 1 to 8 inches deep, and splits it at 5 lb per 1000
// sq ft a time and 10 a year. The table is from memory; soil with free lime is
// refused. [sulfur-table] [purdue-sulfur]
func SulfurToLower(ph, target PH, texture Texture, depth Inches) (SulfurNeed, error) {
	if err := sulfurRange(ph, depth); err != nil {
		return SulfurNeed{}, err
	}
	if err := within("target pH with sulfur", target, 6.5, SulfurFreeLime, "the table brings soil to 6.5 and no lower"); err != nil {
		return SulfurNeed{}, err
	}
	column, name, err := sulfurColumn(texture)
	if err != nil {
		return SulfurNeed{}, err
	}
	lb := along(column, ph) - along(column, target)
	if lb <= 0 {
		return SulfurNeed{Why: []Reason{{fmt.Sprintf("pH %s is not over %s: no sulfur.", short(ph), short(target)), ""}}}, nil
	}
	total := PerAcre(lb).PerThousand() * PerThousand(depth/sulfurLayer)
	parts, years := SulfurPlan(total)
	return SulfurNeed{total, parts, years, []Reason{
		{fmt.Sprintf("%s, pH %s to %s: %s lb/acre of sulfur over a plow layer of 6.5 in (from memory)", name, short(ph), short(target), short(lb)), "sulfur-table"},
		{fmt.Sprintf("for %s in: %s × %s/6.5 / 43.56 = %s lb/1000 sq ft", short(depth), short(lb), short(depth), short(total)), "definitions"},
		{fmt.Sprintf("at most 5 lb at a time and 10 a year on turf: %d in %d years; a retest each year decides whether to go on", len(parts), years), "purdue-sulfur"},
		{"On established turf the effect is small and slow; feeding iron is often the better answer.", "purdue-sulfur"},
	}}, nil
}

// SulfurPlan splits sulfur into the fewest equal applications of at most 5 lb
// per 1000 sq ft, and counts the years at 10 lb a year. [purdue-sulfur]
func SulfurPlan(total PerThousand) (applications []PerThousand, years int) {
	if !(total > 0) || total > 1000 {
		return nil, 0
	}
	n := int(math.Ceil(float64(total/SulfurCap) - 1e-9))
	if n == 0 { // what rounding leaves of nothing
		return nil, 0
	}
	applications = make([]PerThousand, n)
	for i := range applications {
		applications[i] = total / PerThousand(n)
	}
	aYear := int(math.Floor(float64(SulfurCapYear/applications[0]) + 1e-9))
	return applications, (n + aYear - 1) / aYear
}

// PHAfterSulfur turns SulfurToLower round: the pH to expect, after the soil has
// been warm for some months, from an amount of sulfur. More than it takes to
// reach 6.5 gives a RangeError. From memory. [sulfur-table]
func PHAfterSulfur(ph PH, texture Texture, depth Inches, sulfur PerThousand) (PH, []Reason, error) {
	if err := sulfurRange(ph, depth); err != nil {
		return 0, nil, err
	}
	column, name, err := sulfurColumn(texture)
	if err != nil {
		return 0, nil, err
	}
	perPound := PerAcre(1).PerThousand() * PerThousand(depth/sulfurLayer)
	start := along(column, ph)
	if err := within("sulfur, lb/1000 sq ft,", sulfur, 0, PerThousand(start)*perPound, "that is more than it takes to reach 6.5, where the table ends"); err != nil {
		return 0, nil, err
	}
	left := start - float64(sulfur/perPound)
	at := column[0].ph
	for i := 1; i < len(column); i++ {
		if a, b := column[i-1], column[i]; left > a.need {
			at = PH(between(left, a.need, float64(a.ph), b.need, float64(b.ph)))
			at = min(at, b.ph)
		}
	}
	return at, []Reason{{fmt.Sprintf("%s lb/1000 sq ft of sulfur in %s in of %s: pH %s to about %.1f, some warm months later (table from memory)", short(sulfur), short(depth), name, short(ph), float64(at)), "sulfur-table"}}, nil
}

// SulfurGarden gives elemental sulfur, lb per 1000 sq ft, for one unit of pH
// from 6.0 to 5.0 on unplanted ground. [lime-garden-soil]
func SulfurGarden(texture Texture) (PerThousand, error) {
	switch texture {
	case Sand, LoamySand, SandyLoam:
		return 10, nil // [lime-garden-soil]
	case Loam, SiltLoam:
		return 15, nil // [lime-garden-soil]
	case ClayLoam, Clay:
		return 20, nil // [lime-garden-soil]
	}
	return 0, fmt.Errorf("texture %q has no garden rate for sulfur", texture)
}
