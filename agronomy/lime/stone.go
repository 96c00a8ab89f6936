package lime

import (
	"fmt"

	"swardbook/agronomy"
	"swardbook/agronomy/soil"
)

// Stone says which limestone suits a soil.
type Stone string

// The stones.
const (
	Dolomitic   Stone = "dolomitic"
	Calcitic    Stone = "calcitic"
	EitherStone Stone = "either"
)

// ChooseStone picks dolomitic limestone when magnesium is low or the soil is
// sand, calcitic when magnesium already fills a fifth of a clay's CEC or equals
// the calcium, else either. The level of magnesium is the caller's, by the
// report's extractant; Unknown leaves it out.
func ChooseStone(r agronomy.Report, magnesium soil.Level) (Stone, []agronomy.Reason) {
	const mgPerMeq, most = 121.53, 20.0 // ppm of Mg [atomic-weights]; % of CEC [nc-lee-lime]
	mg, ca := float64(r.Magnesium.PPM), float64(r.Calcium.PPM)
	if r.Magnesium.Given && r.CEC > 0 && (r.Texture == agronomy.Clay || r.Texture == agronomy.ClayLoam) {
		if share := 100 * mg / mgPerMeq / float64(r.CEC); share > most {
			return Calcitic, []agronomy.Reason{{Text: fmt.Sprintf("Magnesium fills %s %% of the CEC of this clay, over 20 %%: calcitic limestone, which adds none.", agronomy.Short(share)), Source: "nc-lee-lime"}}
		}
	}
	if r.Magnesium.Given && r.Calcium.Given && ca <= mg {
		return Calcitic, []agronomy.Reason{{Text: fmt.Sprintf("Calcium (%s ppm) is no more than magnesium (%s ppm): calcitic limestone.", agronomy.Short(ca), agronomy.Short(mg)), Source: "common"}}
	}
	if magnesium == soil.VeryLow || magnesium == soil.Low {
		return Dolomitic, []agronomy.Reason{{Text: fmt.Sprintf("Magnesium is %s: dolomitic limestone brings some along.", magnesium), Source: "uga-sod-769"}}
	}
	if (r.Texture == agronomy.Sand || r.Texture == agronomy.LoamySand) && magnesium != soil.High && magnesium != soil.VeryHigh {
		return Dolomitic, []agronomy.Reason{{Text: "Sand runs short of magnesium: dolomitic limestone is the better choice.", Source: "nc-lee-lime"}}
	}
	return EitherStone, []agronomy.Reason{{Text: "Nothing in the report calls for one stone: buy on effective value and price.", Source: "nc-lee-lime"}}
}
