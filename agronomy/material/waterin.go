package material

import (
	"swardbook/agronomy"
)

// Use is what a material is put down for. The words are those of the
// kinds of job.
type Use string

// The uses of a material.
const (
	ForStarter      Use = "starter"
	ForLime         Use = "lime"
	ForSulfur       Use = "sulfur"
	ForPhosphorus   Use = "phosphorus"
	ForPotassium    Use = "potassium"
	ForMagnesium    Use = "magnesium"
	ForNitrogen     Use = "nitrogen"
	ForLateNitrogen Use = "late-nitrogen"
	ForGypsum       Use = "gypsum"
	ForIron         Use = "iron"
)

// WaterKind tells the ways of watering in apart.
type WaterKind string

// The kinds of watering in.
const (
	WaterSoluble      WaterKind = "soluble granule"
	WaterSlow         WaterKind = "slow-release granule"
	WaterLateNitrogen WaterKind = "late-season nitrogen"
	WaterStarter      WaterKind = "starter on seed"
	WaterLime         WaterKind = "lime"
	WaterSulfur       WaterKind = "sulfur"
	WaterFoliar       WaterKind = "liquid left on the leaf"
	WaterPotassium    WaterKind = "potassium"
	WaterGypsum       WaterKind = "gypsum"
)

// WaterIn is how much water must follow an application, and how soon. Low and
// High are 0 where none should.
type WaterIn struct {
	Kind        WaterKind
	Low, High   agronomy.Inches
	WithinHours int
	Why         agronomy.Reason
}

var waterIns = []WaterIn{
	{WaterSoluble, 0.25, 0.5, 24, agronomy.Reason{Text: "Water moves soluble fertilizer off the leaf and into the soil; left dry, urea loses nitrogen to the air.", Source: "common, psu-urea-2018, titko-1987"}},
	{WaterSlow, 0.1, 0.25, 48, agronomy.Reason{Text: "A little water settles slow-release granules to the soil.", Source: "common"}},
	{WaterLateNitrogen, 0.125, 0.25, 24, agronomy.Reason{Text: "Late in the season only a light watering, so that the nitrogen stays at the roots.", Source: "ill-1995"}},
	{WaterStarter, 0.1, 0.25, 1, agronomy.Reason{Text: "Seed must not dry out, and light water keeps it where it fell.", Source: "common"}},
	{WaterLime, 0.25, 0.5, 72, agronomy.Reason{Text: "Water washes lime off the leaves and down to the soil; rain within three days does as well.", Source: "common, psu-report-notes, nc-lee-lime"}},
	{WaterSulfur, 0.25, 0.5, 1, agronomy.Reason{Text: "Sulfur burns leaves it lies on: wash it off at once.", Source: "common"}},
	{WaterFoliar, 0, 0, 0, agronomy.Reason{Text: "What is sprayed to work through the leaf stays on it: no water for some hours.", Source: "common"}},
	{WaterPotassium, 0.25, 0.5, 24, agronomy.Reason{Text: "Potassium fertilizers are salts: water them off the leaves.", Source: "common, cornell-k"}},
	{WaterGypsum, 0.5, 1, 72, agronomy.Reason{Text: "Gypsum works only as water carries it down.", Source: "common"}},
}

// WaterInFor gives one kind of watering in; false for an unknown kind.
func WaterInFor(k WaterKind) (WaterIn, bool) {
	for _, w := range waterIns {
		if w.Kind == k {
			return w, true
		}
	}
	return WaterIn{}, false
}

// FoliarN is the most nitrogen a liquid may bring if it is left on the leaf,
// in lb per 1000 sq ft. [common]
const FoliarN agronomy.PerThousand = 0.25

// WaterIn gives the watering that follows a dose put down for a use.
func (d Dose) WaterIn(use Use) WaterIn {
	m := d.Material
	kind := WaterSoluble
	switch {
	case m.Kind == LimeMaterial || m.Kind == WoodAsh:
		kind = WaterLime
	case m.Kind == SulfurMaterial:
		kind = WaterSulfur
	case m.Kind == GypsumMaterial:
		kind = WaterGypsum
	case m.Kind == IronMaterial:
		kind = WaterFoliar
	case use == ForStarter:
		kind = WaterStarter
	case use == ForLateNitrogen:
		kind = WaterLateNitrogen
	case m.Liquid && d.N > 0 && d.N <= FoliarN && d.P2O5 == 0 && d.K2O == 0:
		kind = WaterFoliar
	case d.N > 0 && m.SlowShare >= 0.5:
		kind = WaterSlow
	case d.N == 0 && d.K2O > 0:
		kind = WaterPotassium
	}
	w, _ := WaterInFor(kind)
	return w
}
