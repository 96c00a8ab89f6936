package nutrient

import (
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/agronomy/material"
)

// Things is a set of what happens to turf and keeps its distance from what
// comes before or after it.
type Things uint16

// The things that keep their distance.
const (
	LimeDown         Things = 1 << iota
	HydratedLimeDown        // hydrated or burned lime
	AmmoniumDown            // urea or ammonium nitrogen
	SolubleNDown            // quick nitrogen
	SlowNDown
	PhosphorusDown
	PotassiumDown
	SulfurDown
	GypsumDown
	SeedUp // seedlings up
	FirstMow
	SampleTaken
)

const (
	anyLime  = LimeDown | HydratedLimeDown
	nitrogen = SolubleNDown | SlowNDown
)

var thingNames = [...]string{"lime", "hydrated or burned lime", "urea or ammonium nitrogen", "quick nitrogen", "slow nitrogen",
	"phosphorus", "potassium", "sulfur", "gypsum", "seedlings up", "first mowing", "soil sample"}

// String names the things: "quick nitrogen, slow nitrogen or phosphorus".
func (t Things) String() string {
	var names []string
	for i, name := range thingNames {
		if t>>i&1 == 1 {
			names = append(names, name)
		}
	}
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " or " + names[n-1]
	}
	return strings.Join(names, "")
}

// SpacingRule keeps each of the things Then a number of days after each of First.
type SpacingRule struct {
	First, Then  Things
	Days         int
	Aim          int  // better than Days where there is room; 0 none
	UnlessTilled bool // both may go into one seedbed together
	Why          agronomy.Reason
}

const (
	becauseGas   = "Fresh lime turns ammonium and urea into ammonia gas."
	becauseTie   = "Fresh lime and phosphate at the surface tie each other up, whichever lies there first."
	becauseSalts = "Turf should use one feeding before the next; salts add up."
	becauseShare = "A yearly amount is split so that less lies on the surface at once."
	becauseLab   = "Fertilizer still lying in the soil would be read as fertility."
	becauseUndo  = "Lime and sulfur undo each other."
	becauseBurn  = "Seedlings burn easily and live on the starter at first."
	becauseSlow  = "Lime at the surface needs months to react; published intervals run from one to six months."
	becauseLate  = "The pH has not settled before about half a year."

	limeSpacingSources = "common, vt-452-717, uga-792, psu-report-notes, nc-lee-lime"
)

var spacingRules = []SpacingRule{
	{First: LimeDown, Then: AmmoniumDown, Days: 14, UnlessTilled: true, Why: agronomy.Reason{Text: becauseGas, Source: "common"}},
	{First: HydratedLimeDown, Then: AmmoniumDown, Days: 28, Why: agronomy.Reason{Text: becauseGas, Source: "common"}},
	{First: AmmoniumDown, Then: LimeDown, Days: 7, UnlessTilled: true, Why: agronomy.Reason{Text: becauseGas, Source: "common"}},
	{First: AmmoniumDown, Then: HydratedLimeDown, Days: 7, Why: agronomy.Reason{Text: becauseGas, Source: "common"}},
	{First: anyLime, Then: PhosphorusDown, Days: 14, UnlessTilled: true, Why: agronomy.Reason{Text: becauseTie, Source: "common"}},
	{First: PhosphorusDown, Then: anyLime, Days: 14, UnlessTilled: true, Why: agronomy.Reason{Text: becauseTie, Source: "common"}},
	{First: anyLime, Then: anyLime, Days: lime.SpacingDays, Aim: lime.SpacingWantedDays, UnlessTilled: true, Why: agronomy.Reason{Text: becauseSlow, Source: limeSpacingSources}},
	{First: SolubleNDown, Then: nitrogen, Days: 28, Why: agronomy.Reason{Text: becauseSalts, Source: "common"}},
	{First: SlowNDown, Then: nitrogen, Days: 42, Why: agronomy.Reason{Text: becauseSalts, Source: "common"}},
	{First: PhosphorusDown, Then: PhosphorusDown, Days: 28, Why: agronomy.Reason{Text: becauseShare, Source: "common"}},
	{First: PotassiumDown, Then: PotassiumDown, Days: 28, Why: agronomy.Reason{Text: becauseSalts, Source: "common"}},
	{First: SulfurDown, Then: SulfurDown, Days: lime.SulfurSpacingDays, Why: agronomy.Reason{Text: "Soil life must turn one dressing of sulfur to acid before the next.", Source: "common"}},
	{First: GypsumDown, Then: GypsumDown, Days: 60, Why: agronomy.Reason{Text: "Water must carry one dressing of gypsum down before the next.", Source: "common"}},
	{First: SulfurDown, Then: anyLime, Days: 180, Why: agronomy.Reason{Text: becauseUndo, Source: "common"}},
	{First: SeedUp, Then: nitrogen, Days: 28, Why: agronomy.Reason{Text: becauseBurn, Source: "common"}},
	{First: SeedUp, Then: FirstMow, Days: 14, Why: agronomy.Reason{Text: "Look whether the young grass stands a third above the mowing height.", Source: "common"}},
	{First: anyLime, Then: SampleTaken, Days: 180, Why: agronomy.Reason{Text: becauseLate, Source: "common"}},
	{First: nitrogen | PhosphorusDown | PotassiumDown, Then: SampleTaken, Days: 42, Why: agronomy.Reason{Text: becauseLab, Source: "common"}},
}

// Spacing gives the widest days to keep between two things, or two lots of them;
// false when any distance will do.
func Spacing(first, then Things) (SpacingRule, bool) { return Between(first, then, false) }

// Between gives the widest spacing between two lots of things, as two
// applications bring them; false when any distance will do. tilled says that
// both are worked into a seedbed.
func Between(first, then Things, tilled bool) (SpacingRule, bool) {
	widest := &SpacingRule{}
	for i := range spacingRules {
		r := &spacingRules[i]
		if r.Days > widest.Days && !(tilled && r.UnlessTilled) && r.First&first != 0 && r.Then&then != 0 {
			widest = r
		}
	}
	return *widest, widest.Days > 0
}

// LongestSpacing gives the most days that any rule keeps two things apart.
func LongestSpacing() int {
	longest := 0
	for _, r := range spacingRules {
		longest = max(longest, r.Days)
	}
	return longest
}

// ThingsOf gives what a material counts as for spacing. Nitrogen at least half
// slow counts as slow. [common]
func ThingsOf(m material.Material) (all Things) {
	switch {
	case m.Kind == material.LimeMaterial && m.Hydrated:
		return HydratedLimeDown
	case m.Kind == material.LimeMaterial, m.Kind == material.WoodAsh:
		return LimeDown
	case m.Kind == material.SulfurMaterial:
		return SulfurDown
	case m.Kind == material.GypsumMaterial:
		return GypsumDown
	}
	if m.Analysis.N > 0 {
		all = SolubleNDown
		if m.SlowShare >= 0.5 { // [common] our own line
			all = SlowNDown
		}
		if m.NitrogenForm() != material.Nitrate {
			all |= AmmoniumDown
		}
	}
	if m.Analysis.P2O5 > 0 {
		all |= PhosphorusDown
	}
	if m.Analysis.K2O > 0 {
		all |= PotassiumDown
	}
	return all
}
