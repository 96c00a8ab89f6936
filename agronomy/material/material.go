package material

import "swardbook/agronomy"

// Kind says what a material is for.
type Kind string

// The kinds of material in a site file.
const (
	LimeMaterial       Kind = "lime"
	FertilizerMaterial Kind = "fertilizer"
	SulfurMaterial     Kind = "sulfur"
	GypsumMaterial     Kind = "gypsum"
	MagnesiumMaterial  Kind = "magnesium"
	WoodAsh            Kind = "wood ash"
	IronMaterial       Kind = "iron" // dissolved and sprayed on the leaf
)

// Material is something that can be spread or sprayed. Zero values are not
// given; the packs are in the shed or to be bought.
type Material struct {
	ID         string
	Name       string
	Kind       Kind
	Analysis   agronomy.Analysis // fertilizers: percent N, P2O5, K2O
	SlowShare  float64           // of the N, 0 to 1
	Lasts      agronomy.Weeks    // how long the slow part feeds
	Liquid     bool
	Density    agronomy.PoundsPerGallon
	CCE        agronomy.Percent // limes
	ECCE       agronomy.Percent // limes: effective value printed on the bag, 0 if none
	Fineness   []Sieve          // limes: percent passing, coarse to fine
	Hydrated   bool             // hydrated or burned lime
	Magnesium  agronomy.Percent // % Mg
	Sulfur     agronomy.Percent // % S
	Iron       agronomy.Percent // % Fe
	Pack       agronomy.Pounds  // weight of one pack; liquids: PackVolume
	PackVolume agronomy.Gallons
	OnHand     float64 // packs
	Price      float64 // per pack, in the site's own money; 0 not given
	NoRebuy    bool    // what is on hand may be used, none of it is ever bought
	Pesticide  bool    // kills or prevents weeds, moss, insects or disease: never planned
	ToBuy      bool    // a plain material of the trade, not in the site file
}

// Sprayed tells what goes down as a spray: liquids, and iron salts dissolved in
// water.
func (m Material) Sprayed() bool { return m.Liquid || m.Kind == IronMaterial }

// Sieve is the share of a lime that passes one mesh.
type Sieve struct {
	Mesh    int
	Passing agronomy.Percent
}
