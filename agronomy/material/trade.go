package material

import "swardbook/agronomy"

// TradeMaterials lists the plain straight materials of the trade that stand in
// where a site file has none that fits, all marked to buy. Analyses are the
// usual guarantees, packs the usual sizes; the label of what is bought counts.
//
// The slice is the caller's own.
func TradeMaterials() []Material {
	fertilizer := func(id, name string, n, p, k agronomy.Percent) Material {
		return Material{ID: "trade-" + id, Name: name, Kind: FertilizerMaterial, Analysis: agronomy.Analysis{N: n, P2O5: p, K2O: k}, Pack: 50, ToBuy: true} // [common] 50 lb packs
	}
	urea := fertilizer("urea", "urea 46-0-0", 46, 0, 0)

	sulfate := fertilizer("ammonium-sulfate", "ammonium sulfate 21-0-0", 21, 0, 0)
	sulfate.Sulfur = 24 // [common]

	coated := fertilizer("coated-urea", "half coated urea 40-0-0", 40, 0, 0) // [common] from memory: coated ureas 32-44 % N
	coated.SlowShare, coated.Lasts = 0.5, 8                                  // [common] from memory: 8 weeks is the short end

	triple := fertilizer("triple-superphosphate", "triple superphosphate 0-46-0", 0, 46, 0)
	dap := fertilizer("diammonium-phosphate", "diammonium phosphate 18-46-0", 18, 46, 0)

	sop := fertilizer("potassium-sulfate", "potassium sulfate 0-0-50", 0, 0, 50)
	sop.Sulfur = 17 // [common] 17-18

	mop := fertilizer("potassium-chloride", "potassium chloride 0-0-60", 0, 0, 60)

	kmag := fertilizer("potassium-magnesium-sulfate", "potassium magnesium sulfate 0-0-22", 0, 0, 22)
	kmag.Magnesium, kmag.Sulfur = 11, 22 // [common] from memory

	epsom := Material{ID: "trade-magnesium-sulfate", Name: "magnesium sulfate", Kind: MagnesiumMaterial,
		Magnesium: 9.86, Sulfur: 13, Pack: 50, ToBuy: true} // [atomic-weights] MgSO4·7H2O; pack [common]

	calcitic := Material{ID: "trade-ground-limestone", Name: "ground limestone", Kind: LimeMaterial,
		CCE: 95, ECCE: 85, Pack: 50, ToBuy: true} // [common] from memory
	dolomitic := Material{ID: "trade-dolomitic-limestone", Name: "dolomitic limestone", Kind: LimeMaterial,
		CCE: 100, ECCE: 85, Magnesium: 11, Pack: 50, ToBuy: true} // [common] from memory; pure dolomite holds 13 % Mg

	sulfur := Material{ID: "trade-elemental-sulfur", Name: "elemental sulfur", Kind: SulfurMaterial,
		Sulfur: 90, Pack: 50, ToBuy: true} // [common]

	return append([]Material{urea, sulfate, coated, triple, dap, sop, mop, kmag, epsom, calcitic, dolomitic, sulfur}, soilTrade()...)
}
