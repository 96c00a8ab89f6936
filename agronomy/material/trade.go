package material

import (
	"slices"

	"swardbook/agronomy"
)

// TradeMaterials gives a copy of the shelf that is the caller's own.
func TradeMaterials() []Material { return slices.Clone(shelf) }

// Shelf is [TradeMaterials] without the copy. It must not be written to.
func Shelf() []Material { return shelf }

// shelf is what garden and farm stores sell by analysis, that stands in where a site
// file has nothing that fits, all marked to buy. Analyses and shares are the usual
// guarantees, packs the usual sizes, and the label of what is bought counts. What is sold
// in a small pack too is there twice, with "-small" to the id of the small one. It never
// changes.
var shelf = fillShelf()

func fillShelf() []Material {
	out := make([]Material, 0, 40)
	sell := func(m Material, small, large agronomy.Pounds) {
		m.ID, m.ToBuy = "trade-"+m.ID, true
		if m.Kind == "" {
			m.Kind = FertilizerMaterial
		}
		if large > 0 {
			m.Pack = large
			out = append(out, m)
		}
		if small > 0 {
			m.ID, m.Pack = m.ID+"-small", small
			out = append(out, m)
		}
	}
	of := func(n, p, k agronomy.Percent) agronomy.Analysis { return agronomy.Analysis{N: n, P2O5: p, K2O: k} }

	// Straights. [common] 50 lb farm packs, 5 lb garden packs
	sell(Material{ID: "urea", Name: "urea 46-0-0", Analysis: of(46, 0, 0)}, 5, 50)
	sell(Material{ID: "ammonium-sulfate", Name: "ammonium sulfate 21-0-0", Analysis: of(21, 0, 0), Sulfur: 24}, 5, 50) // [common]
	sell(Material{ID: "triple-superphosphate", Name: "triple superphosphate 0-46-0", Analysis: of(0, 46, 0)}, 5, 50)
	sell(Material{ID: "diammonium-phosphate", Name: "diammonium phosphate 18-46-0", Analysis: of(18, 46, 0)}, 0, 50)
	sell(Material{ID: "potassium-sulfate", Name: "potassium sulfate 0-0-50", Analysis: of(0, 0, 50), Sulfur: 17}, 5, 50) // [common] 17-18
	sell(Material{ID: "potassium-chloride", Name: "potassium chloride 0-0-60", Analysis: of(0, 0, 60)}, 0, 50)
	sell(Material{ID: "potassium-magnesium-sulfate", Name: "potassium magnesium sulfate 0-0-22", Analysis: of(0, 0, 22), Magnesium: 11, Sulfur: 22}, 5, 50) // [common] from memory
	sell(Material{ID: "magnesium-sulfate", Name: "magnesium sulfate", Kind: MagnesiumMaterial, Magnesium: 9.86, Sulfur: 13}, 5, 50)                         // [atomic-weights] MgSO4·7H2O

	// Starters and lawn foods, part of their nitrogen slow. [common] from memory: usual shares and packs
	sell(Material{ID: "starter", Name: "starter 18-24-12", Analysis: of(18, 24, 12), SlowShare: 0.4, Lasts: 8}, 5, 25)
	sell(Material{ID: "lawn-24-0-10", Name: "lawn food 24-0-10", Analysis: of(24, 0, 10), SlowShare: 0.3, Lasts: 8}, 15, 40)
	sell(Material{ID: "lawn-15-0-15", Name: "lawn food 15-0-15", Analysis: of(15, 0, 15), SlowShare: 0.3, Lasts: 8}, 20, 50)
	sell(Material{ID: "lawn-16-4-8", Name: "lawn food 16-4-8", Analysis: of(16, 4, 8), SlowShare: 0.3, Lasts: 8}, 20, 40)
	sell(Material{ID: "lawn-28-0-3", Name: "lawn food 28-0-3", Analysis: of(28, 0, 3), SlowShare: 0.3, Lasts: 8}, 15, 40)
	sell(Material{ID: "balanced", Name: "garden fertilizer 10-10-10", Analysis: of(10, 10, 10)}, 5, 40)

	// Slow and organic feeds.
	sell(Material{ID: "coated-urea", Name: "half coated urea 40-0-0", Analysis: of(40, 0, 0), SlowShare: 0.5, Lasts: 8}, 0, 50) // [common] from memory: coated ureas 32-44 % N, 8 weeks the short end
	sell(Material{ID: "organic", Name: "organic feed 9-0-0", Analysis: of(9, 0, 0), SlowShare: 0.85, Lasts: 8}, 0, 25)          // [common] from memory: natural organics 8-16 weeks

	sell(Material{ID: "ground-limestone", Name: "ground limestone", Kind: LimeMaterial, CCE: 95, ECCE: 85}, 0, 50)                       // [common] from memory
	sell(Material{ID: "dolomitic-limestone", Name: "dolomitic limestone", Kind: LimeMaterial, CCE: 100, ECCE: 85, Magnesium: 11}, 0, 50) // [common] from memory; pure dolomite holds 13 % Mg
	sell(Material{ID: "elemental-sulfur", Name: "elemental sulfur", Kind: SulfurMaterial, Sulfur: 90}, 5, 50)                            // [common]
	return append(out, soilTrade()...)
}

// aFewPacks is how many small packs a person would carry home before taking a large one.
const aFewPacks = 3 // [common]
