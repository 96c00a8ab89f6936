package agronomy

import (
	"fmt"
	"slices"
)

// Thing is something that happens to turf and keeps its distance from what
// comes before or after it.
type Thing string

// The things that keep their distance.
const (
	LimeDown         Thing = "lime"
	HydratedLimeDown Thing = "hydrated or burned lime"
	AmmoniumDown     Thing = "urea or ammonium nitrogen"
	SolubleNDown     Thing = "quick nitrogen"
	SlowNDown        Thing = "slow nitrogen"
	PhosphorusDown   Thing = "phosphorus"
	PotassiumDown    Thing = "potassium"
	SulfurDown       Thing = "sulfur"
	SeedUp           Thing = "seedlings up"
	FirstMow         Thing = "first mowing"
	SampleTaken      Thing = "soil sample"
)

// SpacingRule keeps a second thing a number of days after a first.
type SpacingRule struct {
	First, Then  Thing
	Days         int
	Aim          int  // better than Days where there is room; 0 none
	UnlessTilled bool // both may go into one seedbed together
	Why          Reason
}

// SpacingRules lists the distances to keep. The slice is the caller's own.
func SpacingRules() []SpacingRule { return slices.Clone(spacingRules) }

const (
	becauseGas   = "Fresh lime turns ammonium and urea into ammonia gas."
	becauseTie   = "Fresh lime and phosphate at the surface tie each other up."
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
	{First: LimeDown, Then: AmmoniumDown, Days: 14, UnlessTilled: true, Why: Reason{becauseGas, "common"}},
	{First: HydratedLimeDown, Then: AmmoniumDown, Days: 28, Why: Reason{becauseGas, "common"}},
	{First: AmmoniumDown, Then: LimeDown, Days: 7, UnlessTilled: true, Why: Reason{becauseGas, "common"}},
	{First: AmmoniumDown, Then: HydratedLimeDown, Days: 7, Why: Reason{becauseGas, "common"}},
	{First: LimeDown, Then: PhosphorusDown, Days: 14, UnlessTilled: true, Why: Reason{becauseTie, "common"}},
	{First: HydratedLimeDown, Then: PhosphorusDown, Days: 14, UnlessTilled: true, Why: Reason{becauseTie, "common"}},
	{First: LimeDown, Then: LimeDown, Days: LimeSpacingDays, Aim: LimeSpacingWantedDays, Why: Reason{becauseSlow, limeSpacingSources}},
	{First: LimeDown, Then: HydratedLimeDown, Days: LimeSpacingDays, Aim: LimeSpacingWantedDays, Why: Reason{becauseSlow, limeSpacingSources}},
	{First: HydratedLimeDown, Then: LimeDown, Days: LimeSpacingDays, Aim: LimeSpacingWantedDays, Why: Reason{becauseSlow, limeSpacingSources}},
	{First: HydratedLimeDown, Then: HydratedLimeDown, Days: LimeSpacingDays, Aim: LimeSpacingWantedDays, Why: Reason{becauseSlow, limeSpacingSources}},
	{First: SolubleNDown, Then: SolubleNDown, Days: 28, Why: Reason{becauseSalts, "common"}},
	{First: SolubleNDown, Then: SlowNDown, Days: 28, Why: Reason{becauseSalts, "common"}},
	{First: SlowNDown, Then: SolubleNDown, Days: 42, Why: Reason{becauseSalts, "common"}},
	{First: SlowNDown, Then: SlowNDown, Days: 42, Why: Reason{becauseSalts, "common"}},
	{First: PhosphorusDown, Then: PhosphorusDown, Days: 28, Why: Reason{becauseShare, "common"}},
	{First: PotassiumDown, Then: PotassiumDown, Days: 28, Why: Reason{becauseSalts, "common"}},
	{First: SulfurDown, Then: SulfurDown, Days: SulfurSpacingDays, Why: Reason{"Soil life must turn one dressing of sulfur to acid before the next.", "common"}},
	{First: SulfurDown, Then: LimeDown, Days: 180, Why: Reason{becauseUndo, "common"}},
	{First: SulfurDown, Then: HydratedLimeDown, Days: 180, Why: Reason{becauseUndo, "common"}},
	{First: SeedUp, Then: SolubleNDown, Days: 28, Why: Reason{becauseBurn, "turf-trade-est"}},
	{First: SeedUp, Then: SlowNDown, Days: 28, Why: Reason{becauseBurn, "turf-trade-est"}},
	{First: SeedUp, Then: FirstMow, Days: 14, Why: Reason{"Look whether the young grass stands a third above the mowing height.", "common"}},
	{First: LimeDown, Then: SampleTaken, Days: 180, Why: Reason{becauseLate, "common"}},
	{First: HydratedLimeDown, Then: SampleTaken, Days: 180, Why: Reason{becauseLate, "common"}},
	{First: SolubleNDown, Then: SampleTaken, Days: 42, Why: Reason{becauseLab, "common"}},
	{First: SlowNDown, Then: SampleTaken, Days: 42, Why: Reason{becauseLab, "common"}},
	{First: PhosphorusDown, Then: SampleTaken, Days: 42, Why: Reason{becauseLab, "common"}},
	{First: PotassiumDown, Then: SampleTaken, Days: 42, Why: Reason{becauseLab, "common"}},
}

// Spacing gives the days to keep between two things; false when any distance
// will do.
func Spacing(first, then Thing) (SpacingRule, bool) {
	for _, r := range spacingRules {
		if r.First == first && r.Then == then {
			return r, true
		}
	}
	return SpacingRule{}, false
}

// Between gives the widest spacing between two lots of things, as two
// applications bring them; false when any distance will do. tilled says that
// both are worked into a seedbed.
func Between(first, then []Thing, tilled bool) (SpacingRule, bool) {
	var widest SpacingRule
	for _, r := range spacingRules {
		if r.Days <= widest.Days || tilled && r.UnlessTilled {
			continue
		}
		for _, f := range first {
			for _, t := range then {
				if r.First == f && r.Then == t {
					widest = r
				}
			}
		}
	}
	return widest, widest.Days > 0
}

// LongestSpacing gives the most days that any rule keeps two things apart.
func LongestSpacing() int {
	longest := 0
	for _, r := range spacingRules {
		longest = max(longest, r.Days)
	}
	return longest
}

// Things gives what a material counts as for spacing. Nitrogen at least half
// slow counts as slow. [common]
func (m Material) Things() []Thing {
	var ts []Thing
	switch {
	case m.Kind == LimeMaterial && m.Hydrated:
		return []Thing{HydratedLimeDown}
	case m.Kind == LimeMaterial:
		return []Thing{LimeDown}
	case m.Kind == SulfurMaterial:
		return []Thing{SulfurDown}
	}
	if m.Analysis.N > 0 {
		if m.SlowShare >= 0.5 { // [common] our own line
			ts = append(ts, SlowNDown)
		} else {
			ts = append(ts, SolubleNDown)
		}
		if ammonium, _ := m.Ammonium(); ammonium {
			ts = append(ts, AmmoniumDown)
		}
	}
	if m.Analysis.P2O5 > 0 {
		ts = append(ts, PhosphorusDown)
	}
	if m.Analysis.K2O > 0 {
		ts = append(ts, PotassiumDown)
	}
	return ts
}

// Ammonium tells whether a material's nitrogen is urea or ammonium, which
// fresh lime drives off as gas. Nitrogen of an unknown form is taken as such.
func (m Material) Ammonium() (bool, Reason) {
	a := m.Analysis
	switch {
	case a.N <= 0:
		return false, Reason{Text: m.title() + " carries no nitrogen"}
	case a.N == 46 && a.P2O5 == 0, a.N == 21 && a.P2O5 == 0, a.N == 18 && a.P2O5 == 46, a.N == 11 && a.P2O5 == 52:
		return true, Reason{m.title() + ": its analysis is that of urea or an ammonium salt", "definitions"}
	case a.P2O5 == 0 && (a.N == 15.5 && a.K2O == 0 || a.N == 16 && a.K2O == 0 || a.N == 13 && a.K2O >= 44):
		return false, Reason{m.title() + ": its analysis is that of a nitrate, which lime does not drive off", "common"} // [common] from memory: calcium, sodium, potassium nitrate
	}
	return true, Reason{fmt.Sprintf("%s: the form of its nitrogen is not given; taken as urea or ammonium, as in most products", m.title()), "common"}
}
