package material

// soilTrade lists what the trade sells for a soil rather than as a feed.
func soilTrade() []Material {
	return []Material{
		{ID: "trade-gypsum", Name: "gypsum", Kind: GypsumMaterial, Sulfur: 17, Pack: 40, ToBuy: true},        // [common] pure gypsum holds 18.6 % S
		{ID: "trade-iron-sulfate", Name: "iron sulfate", Kind: IronMaterial, Iron: 20, Pack: 5, ToBuy: true}, // [atomic-weights] FeSO4·7H2O; pack [common]
	}
}
