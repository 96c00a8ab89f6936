package agronomy

import "fmt"

// usdaDepth is the layer of the 1957 table. [usda-1957]
const usdaDepth Inches = 7

// usdaEnds are the pH values between which its three columns step. [usda-1957]
var usdaEnds = []PH{3.5, 4.5, 5.5, 6.5}

// usdaSteps gives tons of ground limestone per acre for one step of pH each:
// 3.5 to 4.5, 4.5 to 5.5, 5.5 to 6.5. Fewer figures start at 4.5. The cool
// column is from memory and agrees with [lime-table-100]; the warm one is from
// memory alone.
func usdaSteps(texture Texture, warm bool) []float64 {
	switch texture {
	case Sand, LoamySand:
		if warm {
			return []float64{0.3, 0.3, 0.4} // from memory [usda-1957]
		}
		return []float64{0.4, 0.5, 0.6} // [usda-1957] [lime-table-100]
	case SandyLoam:
		if warm {
			return []float64{0.5, 0.7} // from memory [usda-1957]
		}
		return []float64{0.8, 1.3} // [usda-1957] [lime-table-100]
	case Loam:
		if warm {
			return []float64{0.8, 1.0} // from memory [usda-1957]
		}
		return []float64{1.2, 1.7} // [usda-1957] [lime-table-100]
	case SiltLoam:
		if warm {
			return []float64{1.2, 1.4} // from memory [usda-1957]
		}
		return []float64{1.5, 2.0} // [usda-1957] [lime-table-100]
	case ClayLoam, Clay: // the table has no clay
		if warm {
			return []float64{1.5, 2.0} // from memory [usda-1957]
		}
		return []float64{1.9, 2.3} // [usda-1957] [lime-table-100]
	case Muck:
		if warm {
			return []float64{2.5, 3.3, 3.8} // from memory [usda-1957]
		}
		return []float64{2.9, 3.8, 4.3} // [usda-1957] [lime-table-100]
	}
	return nil
}

// usdaKnots gives the pH values of a texture's column and the tons that lead
// there from the first of them.
func usdaKnots(texture Texture, warm bool) []knot {
	steps := usdaSteps(texture, warm)
	first := len(usdaEnds) - 1 - len(steps)
	knots := []knot{{usdaEnds[first], 0}}
	for i, tons := range steps {
		knots = append(knots, knot{usdaEnds[first+1+i], knots[i].need + tons})
	}
	return knots
}

// ByTextureUSDA gives ground limestone for a 7 inch layer from soil pH and
// texture alone, good to a third either way: pH 3.5 (sand, loamy sand, muck) or
// 4.5 (the others) to a target of up to 6.5. Clay takes the figures of clay
// loam, the heaviest printed. [usda-1957] [lime-table-100]
func ByTextureUSDA(ph, target PH, texture Texture, warm bool) (TonsPerAcre, error) {
	if usdaSteps(texture, warm) == nil {
		return 0, fmt.Errorf("texture %q has no lime column: name one of sand, loamy sand, sandy loam, loam, silt loam, clay loam, clay, muck", texture)
	}
	knots := usdaKnots(texture, warm)
	if ph >= target {
		return 0, nil
	}
	first, last := knots[0].ph, knots[len(knots)-1].ph
	if err := within("soil pH of "+string(texture), ph, first, last, "ask the laboratory for a buffer pH"); err != nil {
		return 0, err
	}
	if err := within("target pH by texture", target, first, last, "ask the laboratory for a buffer pH, or take 6.5"); err != nil {
		return 0, err
	}
	return usdaTons(knots, ph, target), nil
}

// usdaTons gives the tons from one pH of a column to another.
func usdaTons(column []knot, from, to PH) TonsPerAcre {
	if to <= from {
		return 0
	}
	return TonsPerAcre(along(column, to) - along(column, from))
}

// ByTextureTable100 gives ground limestone, lb per 1000 sq ft, worked in deeply
// (7 inches), to reach pH 6.5 from a pH of 4.0 to 6.5 on sandy loam, loam or
// clay loam. The way from the last row, 6.0, to none at 6.5 is ours. [lime-table-100]
func ByTextureTable100(ph PH, texture Texture) (PerThousand, error) {
	columns := map[Texture]int{SandyLoam: 0, Loam: 1, ClayLoam: 2}
	k, ok := columns[texture]
	if !ok {
		return 0, fmt.Errorf("texture %q is not in this table: it has sandy loam, loam and clay loam", texture)
	}
	if err := within("soil pH", ph, 4.0, 6.5, "ask the laboratory for a buffer pH"); err != nil { // [lime-table-100]
		return 0, err
	}
	rows := [][3]float64{{115, 160, 230}, {95, 135, 195}, {80, 105, 150}, {60, 80, 105}, {30, 40, 55}, {}} // pH 4.0, 4.5 … 6.5 [lime-table-100]
	column := make([]knot, len(rows))
	for i, row := range rows {
		column[i] = knot{PH(4.0 + 0.5*float64(i)), row[k]}
	}
	return PerThousand(along(column, ph)), nil
}

// ByTextureGarden gives ground limestone, lb per 1000 sq ft, for one unit of pH,
// 5.5 to 6.5, on a light, medium or heavy soil. [lime-garden-soil]
func ByTextureGarden(texture Texture) (PerThousand, error) {
	switch texture {
	case Sand, LoamySand, SandyLoam:
		return 35, nil // [lime-garden-soil]
	case Loam, SiltLoam:
		return 50, nil // [lime-garden-soil]
	case ClayLoam, Clay:
		return 70, nil // [lime-garden-soil]
	}
	return 0, fmt.Errorf("texture %q has no garden rate for lime: ask the laboratory for a buffer pH", texture)
}

// WarmLimeRegion reports whether a state or territory takes the warm column of
// the table by texture: the Southeast, the Gulf and the tropics, whose clays
// hold less acidity. [usda-1957]; the list of states is ours [common].
func WarmLimeRegion(state string) bool {
	switch state {
	case "AL", "FL", "GA", "LA", "MS", "NC", "SC", "TX", "HI", "PR", "VI", "GU", "AS", "MP": // [common]
		return true
	}
	return false
}

// textureOf takes the texture of the case, or judges it: from CEC by rough
// custom, else a loam. The reason is empty when the texture was given.
func (c LimeCase) textureOf() (Texture, []Reason) {
	switch {
	case c.organic():
		return Muck, nil
	case c.Texture != "":
		if c.Texture == Clay {
			return Clay, []Reason{{"The table has no column for clay; clay loam's is taken, which may be too little.", "usda-1957"}}
		}
		return c.Texture, nil
	case c.CEC == 0:
		return Loam, []Reason{{"No texture given: a loam is assumed.", "common"}}
	}
	texture := ClayLoam
	for _, band := range []struct {
		under   Meq
		texture Texture
	}{{5, LoamySand}, {10, SandyLoam}, {15, Loam}, {20, SiltLoam}} { // [common]
		if c.CEC < band.under {
			texture = band.texture
			break
		}
	}
	return texture, []Reason{{fmt.Sprintf("No texture given: %s is assumed from a CEC of %s.", texture, short(c.CEC)), "common"}}
}
