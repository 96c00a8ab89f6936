package agronomy

// MaterialKind says what a material is for.
type MaterialKind string

// The kinds of material in a site file.
const (
	LimeMaterial       MaterialKind = "lime"
	FertilizerMaterial MaterialKind = "fertilizer"
	SulfurMaterial     MaterialKind = "sulfur"
	GypsumMaterial     MaterialKind = "gypsum"
	MagnesiumMaterial  MaterialKind = "magnesium"
)

// Material is something that can be spread or sprayed. Zero values are not
// given; the packs are in the shed or to be bought.
type Material struct {
	ID         string
	Name       string
	Kind       MaterialKind
	Analysis   Analysis // fertilizers: percent N, P2O5, K2O
	SlowShare  float64  // of the N, 0 to 1
	Lasts      Weeks    // how long the slow part feeds
	Liquid     bool
	Density    PoundsPerGallon
	CCE        Percent // limes
	ECCE       Percent // limes: effective value printed on the bag, 0 if none
	Fineness   []Sieve // limes: percent passing, coarse to fine
	Hydrated   bool    // hydrated or burned lime
	Magnesium  Percent // % Mg
	Sulfur     Percent // % S
	Pack       Pounds  // weight of one pack; liquids: PackVolume
	PackVolume Gallons
	OnHand     float64 // packs
	Price      float64 // per pack, in the site's own money; 0 not given
	Pesticide  bool    // kills or prevents weeds, moss, insects or disease: never planned
	ToBuy      bool    // a plain material of the trade, not in the site file
}

// Analysis is the guaranteed analysis of a fertilizer: N-P2O5-K2O in percent.
type Analysis struct{ N, P2O5, K2O Percent }

// Sieve is the share of a lime that passes one mesh.
type Sieve struct {
	Mesh    int
	Passing Percent
}
