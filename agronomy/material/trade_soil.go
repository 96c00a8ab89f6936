package material

import "swardbook/agronomy"

// Ash is the usual analysis of wood ash: 5 % potassium and 1 % phosphorus, counted
// as on a bag. [common]
var Ash = agronomy.Analysis{P2O5: 2.3, K2O: 6}

// soilTrade lists what the trade sells for a soil rather than as a feed.
func soilTrade() []Material {
	return []Material{
		{ID: "trade-gypsum", Name: "gypsum", Kind: GypsumMaterial, Sulfur: 17, Pack: 40, ToBuy: true},        // [common] pure gypsum holds 18.6 % S
		{ID: "trade-iron-sulfate", Name: "iron sulfate", Kind: IronMaterial, Iron: 20, Pack: 5, ToBuy: true}, // [atomic-weights] FeSO4·7H2O; pack [common]
	}
}
