package lime

import (
	"fmt"
	"math"

	"swardbook/agronomy"
	"swardbook/agronomy/soil"
	"swardbook/climate"
)

// Limits on elemental sulfur on turf.
const (
	SulfurCap         agronomy.PerThousand = 5               // one application, turf mowed at 2 in or more [purdue-sulfur]
	SulfurCapYear     agronomy.PerThousand = 10              // [purdue-sulfur]
	SulfurSpacingDays                      = 60              // [common]
	SulfurHottestAir  climate.Fahrenheit   = 75              // [common]
	SulfurColdestSoil climate.Fahrenheit   = 50              // bacteria turn it to acid above this [common]
	SulfurWarmDays                         = 60              // of such soil that must follow [common]
	CaCO3PerSulfur                         = 100.086 / 32.06 // lb CaCO3 that 1 lb S uses up [atomic-weights]
	sulfurLayer       agronomy.Inches      = 6.5             // middle of the printed 6 to 7 in [sulfur-table]
)

// SulfurNeed is what it takes to lower a pH, and how it may go down.
type SulfurNeed struct {
	Total        agronomy.PerThousand // elemental S for the depth
	Applications []agronomy.PerThousand
	Years        int // over which the yearly cap spreads them
	Why          []agronomy.Reason
}

// sulfurColumn gives the S that takes a plow layer down from a pH to 6.5, lb
// per acre. From memory. [sulfur-table]
func sulfurColumn(texture agronomy.Texture) ([]knot, string, error) {
	rows := [][4]float64{{6.5}, {7.0, 100, 150, 300}, {7.5, 500, 800, 1000}, {8.0, 1200, 1500, 2000}, {8.5, 2000, 2500, 3000}} // from memory [sulfur-table]
	var k int
	var name string
	switch texture {
	case agronomy.Sand, agronomy.LoamySand, agronomy.SandyLoam:
		k, name = 1, "sand"
	case agronomy.Loam, agronomy.SiltLoam:
		k, name = 2, "loam"
	case agronomy.ClayLoam, agronomy.Clay:
		k, name = 3, "clay"
	default:
		what := fmt.Sprintf("texture %q has no sulfur figure", texture)
		if texture == "" {
			what = "no texture is given, and how much sulfur it takes depends on it"
		}
		return nil, "", fmt.Errorf("%s: name sand, loamy sand, sandy loam, loam, silt loam, clay loam or clay", what)
	}
	knots := make([]knot, len(rows))
	for i, row := range rows {
		knots[i] = knot{agronomy.PH(row[0]), row[k]}
	}
	return knots, name, nil
}

// sulfurRange checks a way down for SulfurToLower and its inverse.
func sulfurRange(ph agronomy.PH, depth agronomy.Inches) error {
	if ph > soil.SulfurFreeLime {
		return &RangeError{"soil pH for sulfur", float64(ph), 6.5, float64(soil.SulfurFreeLime), "soil with free lime uses up more sulfur than turf can take; feed iron and accept the pH"}
	}
	if err := within("soil pH for sulfur", ph, 6.5, soil.SulfurFreeLime, "no sulfur is needed for grass; the table starts at 6.5"); err != nil {
		return err
	}
	return within("depth, in,", depth, 1, deepest, "take the sampled depth, 4 in on a lawn") // [common]
}

// SulfurToLower gives elemental sulfur to bring a soil of pH 6.5 to 8.2 down to
// a target of 6.5 or more, 1 to 8 inches deep, and splits it at 5 lb per 1000
// sq ft a time and 10 a year. The table is from memory; soil with free lime is
// refused. [sulfur-table] [purdue-sulfur]
func SulfurToLower(ph, target agronomy.PH, texture agronomy.Texture, depth agronomy.Inches) (SulfurNeed, error) {
	if err := sulfurRange(ph, depth); err != nil {
		return SulfurNeed{}, err
	}
	if err := within("target pH with sulfur", target, 6.5, soil.SulfurFreeLime, "the table brings soil to 6.5 and no lower"); err != nil {
		return SulfurNeed{}, err
	}
	column, name, err := sulfurColumn(texture)
	if err != nil {
		return SulfurNeed{}, err
	}
	lb := along(column, ph) - along(column, target)
	if lb <= 0 {
		return SulfurNeed{Why: []agronomy.Reason{{Text: fmt.Sprintf("pH %s is not over %s: no sulfur.", agronomy.Short(ph), agronomy.Short(target)), Source: ""}}}, nil
	}
	total := agronomy.PerAcre(lb).PerThousand() * agronomy.PerThousand(depth/sulfurLayer)
	parts, years := SulfurPlan(total)
	return SulfurNeed{total, parts, years, []agronomy.Reason{
		{Text: fmt.Sprintf("%s, pH %s to %s: %s lb/acre of sulfur over a plow layer of 6.5 in (from memory)", name, agronomy.Short(ph), agronomy.Short(target), agronomy.Short(lb)), Source: "sulfur-table"},
		{Text: fmt.Sprintf("for %s in: %s × %s/6.5 / 43.56 = %s lb/1000 sq ft", agronomy.Short(depth), agronomy.Short(lb), agronomy.Short(depth), agronomy.Short(total)), Source: "definitions"},
		{Text: fmt.Sprintf("at most 5 lb at a time and 10 a year on turf: %d in %d years; a retest each year decides whether to go on", len(parts), years), Source: "purdue-sulfur"},
		{Text: "On established turf the effect is small and slow; feeding iron is often the better answer.", Source: "purdue-sulfur"},
	}}, nil
}

// SulfurPlan splits sulfur into the fewest equal applications of at most 5 lb
// per 1000 sq ft, and counts the years at 10 lb a year. [purdue-sulfur]
func SulfurPlan(total agronomy.PerThousand) (applications []agronomy.PerThousand, years int) {
	if !(total > 0) || total > 1000 {
		return nil, 0
	}
	n := int(math.Ceil(float64(total/SulfurCap) - 1e-9))
	if n == 0 { // what rounding leaves of nothing
		return nil, 0
	}
	applications = make([]agronomy.PerThousand, n)
	for i := range applications {
		applications[i] = total / agronomy.PerThousand(n)
	}
	aYear := int(math.Floor(float64(SulfurCapYear/applications[0]) + 1e-9))
	return applications, (n + aYear - 1) / aYear
}

// PHAfterSulfur turns SulfurToLower round: the pH to expect, after the soil has
// been warm for some months, from an amount of sulfur. More than it takes to
// reach 6.5 gives a RangeError. From memory. [sulfur-table]
func PHAfterSulfur(ph agronomy.PH, texture agronomy.Texture, depth agronomy.Inches, sulfur agronomy.PerThousand) (agronomy.PH, []agronomy.Reason, error) {
	if err := sulfurRange(ph, depth); err != nil {
		return 0, nil, err
	}
	column, name, err := sulfurColumn(texture)
	if err != nil {
		return 0, nil, err
	}
	perPound := agronomy.PerAcre(1).PerThousand() * agronomy.PerThousand(depth/sulfurLayer)
	start := along(column, ph)
	most := agronomy.PerThousand(start) * perPound * (1 + 1e-9) // rounding aside
	if err := within("sulfur, lb/1000 sq ft,", sulfur, 0, most, "that is more than it takes to reach 6.5, where the table ends"); err != nil {
		return 0, nil, err
	}
	left := start - float64(sulfur/perPound)
	at := column[0].ph
	for i := 1; i < len(column); i++ {
		if a, b := column[i-1], column[i]; left > a.need {
			at = agronomy.PH(between(left, a.need, float64(a.ph), b.need, float64(b.ph)))
			at = min(at, b.ph)
		}
	}
	return at, []agronomy.Reason{{Text: fmt.Sprintf("%s lb/1000 sq ft of sulfur in %s in of %s: pH %s to about %.1f, some warm months later (table from memory)", agronomy.Short(sulfur), agronomy.Short(depth), name, agronomy.Short(ph), float64(at)), Source: "sulfur-table"}}, nil
}
