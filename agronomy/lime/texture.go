package lime

import (
	"fmt"

	"swardbook/agronomy"
)

// usdaDepth is the layer of the 1957 table. [usda-1957]
const usdaDepth agronomy.Inches = 7

// usdaEnds are the pH values between which its three columns step. [usda-1957]
var usdaEnds = []agronomy.PH{3.5, 4.5, 5.5, 6.5}

// usdaSteps gives tons of ground limestone per acre for one step of pH each:
// 3.5 to 4.5, 4.5 to 5.5, 5.5 to 6.5. Fewer figures start at 4.5. The cool
// column is from memory and agrees with [usda-1957]; the warm one is from
// memory alone.
func usdaSteps(texture agronomy.Texture, warm bool) []float64 {
	switch texture {
	case agronomy.Sand, agronomy.LoamySand:
		if warm {
			return []float64{0.3, 0.3, 0.4} // from memory [usda-1957]
		}
		return []float64{0.4, 0.5, 0.6} // [usda-1957]
	case agronomy.SandyLoam:
		if warm {
			return []float64{0.5, 0.7} // from memory [usda-1957]
		}
		return []float64{0.8, 1.3} // [usda-1957]
	case agronomy.Loam:
		if warm {
			return []float64{0.8, 1.0} // from memory [usda-1957]
		}
		return []float64{1.2, 1.7} // [usda-1957]
	case agronomy.SiltLoam:
		if warm {
			return []float64{1.2, 1.4} // from memory [usda-1957]
		}
		return []float64{1.5, 2.0} // [usda-1957]
	case agronomy.ClayLoam, agronomy.Clay: // the table has no clay
		if warm {
			return []float64{1.5, 2.0} // from memory [usda-1957]
		}
		return []float64{1.9, 2.3} // [usda-1957]
	case agronomy.Muck:
		if warm {
			return []float64{2.5, 3.3, 3.8} // from memory [usda-1957]
		}
		return []float64{2.9, 3.8, 4.3} // [usda-1957]
	}
	return nil
}

// usdaKnots gives the pH values of a texture's column and the tons that lead
// there from the first of them.
func usdaKnots(texture agronomy.Texture, warm bool) []knot {
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
// loam, the heaviest printed. [usda-1957]
func ByTextureUSDA(ph, target agronomy.PH, texture agronomy.Texture, warm bool) (agronomy.TonsPerAcre, error) {
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
func usdaTons(column []knot, from, to agronomy.PH) agronomy.TonsPerAcre {
	if to <= from {
		return 0
	}
	return agronomy.TonsPerAcre(along(column, to) - along(column, from))
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

// textureOf gives the texture of the case; if it has none, the one that a CEC like its own
// usually goes with, else loam. The reason is empty if the texture was given.
func (c Case) textureOf() (agronomy.Texture, []agronomy.Reason) {
	switch {
	case c.organic():
		return agronomy.Muck, nil
	case c.Texture != "":
		if c.Texture == agronomy.Clay {
			return agronomy.Clay, []agronomy.Reason{{Text: "The table has no column for clay; clay loam's is taken, which may be too little.", Source: "usda-1957"}}
		}
		return c.Texture, nil
	case c.CEC == 0:
		return agronomy.Loam, []agronomy.Reason{{Text: "No texture given: a loam is assumed.", Source: "common"}}
	}
	texture := agronomy.ClayLoam
	for _, band := range []struct {
		under   agronomy.Meq
		texture agronomy.Texture
	}{{5, agronomy.LoamySand}, {10, agronomy.SandyLoam}, {15, agronomy.Loam}, {20, agronomy.SiltLoam}} { // [common]
		if c.CEC < band.under {
			texture = band.texture
			break
		}
	}
	return texture, []agronomy.Reason{{Text: fmt.Sprintf("No texture given: %s is assumed from a CEC of %s.", texture, agronomy.Short(c.CEC)), Source: "common"}}
}
