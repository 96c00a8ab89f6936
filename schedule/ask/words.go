package ask

// words are values that stand on many lab sheets and bags.
const words = `, truefalse"metricpm P2O5 K2O mg/kg lb/acre meq/100 g % lb/1000 sq ft in/h inches gal ft acres m2 kg weeks 8 weeks` +
	`no_nitrogen11-15/03-01 mon, tue, wed, thu, fri, sat, sunsat, sunlow high removed` +
	`ammonium-acetate modified-morgan mehlich-1 bray-1 olsen adams-evans modified-mehlich sikora` +
	`sand loamy sand sandy loam silt loam clay loam clay muck loam` +
	`seashore paspalum buffalograss carpetgrass bahiagrass centipedegrass St. Augustinegrass zoysiagrass bermudagrass` +
	`creeping bentgrass fine fescue perennial ryegrass Kentucky bluegrass tall fescue` +
	`front back side east west north south Front lawn Back lawn East lawn West lawn` +
	`gypsum magnesium sulfur elemental sulfur urea organic winter summer spring autumn starter fertilizer` +
	`calcitic dolomitic ground limestone pelletized limestone` +
	`missed half soil-test overseed phosphorus potassium late-nitrogen nitrogen` +
	`46-0-0 21-0-0 0-46-0 0-0-50 0-0-60 10-10-10 12-0-0 16-4-8 15-0-15 32-0-10 29-0-5 26-0-3 24-0-10 22-2-8 18-24-12 24-25-4` +
	`50 lb 36 lb 15 lb 20 lb 2030-2029-2028-2027-2026-`

// likely are answers that come together, as they stand in a code.
var likely = [][]Answer{
	{{Key: "record.1.date", Value: "2026-10-0"}, {Key: "record.1.kind", Value: "nitrogen"}, {Key: "record.1.material", Value: "bag2"}, {Key: "record.1.amount", Value: " lb"}},
	{{Key: "record.2.date", Value: "2026-0"}, {Key: "record.2.kind", Value: "lime"}, {Key: "record.2.material", Value: "bag1"}, {Key: "record.2.amount", Value: "0 lb"}},
	{{Key: "area.lawn.grass.\"perennial ryegrass\"", Value: "50"}, {Key: "area.lawn.grass.\"Kentucky bluegrass\"", Value: "50"}},
	{{Key: "area.lawn.soil.received", Value: "2026-0"}, {Key: "area.lawn.soil.depth", Value: "4 in"}, {Key: "area.lawn.soil.method", Value: "mehlich-3"},
		{Key: "area.lawn.soil.cec", Value: ""}, {Key: "area.lawn.soil.organic_matter", Value: " %"}},
	{{Key: "title", Value: "Lawn"}, {Key: "start", Value: "2026-1"}, {Key: "crew.days", Value: "sat, sun"}},
	{{Key: "material.bag1.kind", Value: "lime"}, {Key: "material.bag1.cce", Value: "90"}, {Key: "material.bag1.pack", Value: "40 lb"}, {Key: "material.bag1.on_hand", Value: "1"},
		{Key: "material.bag2.kind", Value: "fertilizer"}, {Key: "material.bag2.analysis", Value: "24-0-6"}, {Key: "material.bag2.pack", Value: "25 lb"}, {Key: "material.bag2.on_hand", Value: "1"}},
	{{Key: "title", Value: "My lawn"}, {Key: "start", Value: "2026-09-0"}, {Key: "place.zip", Value: "4"},
		{Key: "area.lawn.size", Value: "00 sq ft"}, {Key: "area.lawn.grass", Value: "tall fescue"}, {Key: "area.lawn.seeded", Value: "2026-09-0"},
		{Key: "area.lawn.care", Value: "medium"}, {Key: "area.lawn.clippings", Value: "returned"},
		{Key: "area.lawn.soil.sampled", Value: "2026-09-1"}, {Key: "area.lawn.soil.method", Value: "mehlich-3"}, {Key: "area.lawn.soil.ph", Value: "5."},
		{Key: "area.lawn.soil.buffer.method", Value: "smp"}, {Key: "area.lawn.soil.buffer.ph", Value: "6."},
		{Key: "area.lawn.soil.phosphorus", Value: " ppm"}, {Key: "area.lawn.soil.potassium", Value: " ppm"}, {Key: "area.lawn.soil.magnesium", Value: " ppm"},
		{Key: "material.bag1.name", Value: "pelletized limestone"}, {Key: "material.bag1.kind", Value: "lime"}, {Key: "material.bag1.cce", Value: "9"}, {Key: "material.bag1.pack", Value: "40 lb"}, {Key: "material.bag1.on_hand", Value: "1"},
		{Key: "material.bag2.analysis", Value: "18-24-12"}, {Key: "material.bag2.pack", Value: "25 lb"}, {Key: "material.bag2.on_hand", Value: "1"}},
}
