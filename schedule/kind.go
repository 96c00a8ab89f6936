package schedule

import (
	"fmt"
	"math"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
)

// Kind is what a job is for: one row of the table of kinds. Whatever differs
// from kind to kind without being the code of one rule is a column of it.
type Kind struct{ row *Row }

// Row is what there is to know of a kind. Its place in the table is its rank.
type Row struct {
	Name     string                       // in ids and files
	Noun     string                       // in a sentence
	Verb     string                       // begins a title, the area's name follows
	Category string                       // the one word in a calendar
	Does     Doing                        // what a job of the kind does
	Weight   float64                      // of a day's distance from the ideal day; sets which job gives way, not whether one fits
	Serves   func(material.Material) bool // whether it may put a material down
	Nutrient string                       // the nutrient that it brings because the soil report is short of it; "": none
	Feeds    bool                         // one of the season's feedings
	Things   nutrient.Things              // what it counts as for spacing, however small its dose
	Last     nutrient.LastKind            // the rule of its last useful day; "" none
	Answers  string                       // the reading of the soil report that calls for it; "" none
	Brings   measured                     // what it is for, of a dose; nil: nitrogen
}

// measured gives what a dose brings to an area.
type measured func(*Case, material.Dose) agronomy.PerThousand

// Kind makes a kind of a row.
func (r Row) Kind() Kind { return Kind{&r} }

// Doing is what a job does.
type Doing int

const (
	Spreads Doing = iota // puts a material down
	Sows
	Samples
	Tells // marks a day; there is nothing to do
)

// The kinds of job. The weights are our own order. // [common]
var (
	SoilTest = Row{Name: "soil-test", Noun: "soil sample", Verb: "Sample soil", Category: "Sample", Does: Samples, Weight: 1,
		Things: nutrient.SampleTaken, Last: nutrient.LastSample}.Kind()
	Sow      = Row{Name: "sow", Noun: "sow", Verb: "Sow", Category: "Sow", Does: Sows, Weight: 4, Last: nutrient.LastSeed}.Kind()
	Overseed = Row{Name: "overseed", Noun: "overseeding", Verb: "Overseed", Category: "Overseed", Does: Sows, Weight: 4, Last: nutrient.LastSeed}.Kind()
	Starter  = Row{Name: "starter", Noun: "starter", Verb: "Starter for", Category: "Starter", Weight: 3,
		Serves: bringsP, Feeds: true, Last: nutrient.LastSolubleN}.Kind()
	Lime = Row{Name: "lime", Noun: "lime", Verb: "Lime", Category: "Lime", Weight: 2, Serves: limes, Last: nutrient.LastLime, Answers: "ph",
		Brings: func(c *Case, d material.Dose) agronomy.PerThousand { return c.EffectiveLime(c.Area, d) }}.Kind()
	Gypsum = Row{Name: "gypsum", Noun: "gypsum", Verb: "Gypsum on", Category: "Gypsum", Weight: 1, Serves: is(material.GypsumMaterial), Brings: weight}.Kind()
	Sulfur = Row{Name: "sulfur", Noun: "sulfur", Verb: "Sulfur on", Category: "Sulfur", Weight: 1,
		Serves: is(material.SulfurMaterial), Last: nutrient.LastSulfur, Answers: "ph",
		Brings: func(_ *Case, d material.Dose) agronomy.PerThousand { return sulfurIn(d) }}.Kind()
	Phosphorus = Row{Name: "phosphorus", Noun: "phosphorus", Verb: "Phosphorus on", Category: "Phosphorus", Weight: 2,
		Serves: bringsP, Nutrient: "P₂O₅", Things: nutrient.PhosphorusDown, Last: nutrient.LastPhosphorus, Answers: "phosphorus",
		Brings: func(_ *Case, d material.Dose) agronomy.PerThousand { return d.P2O5 }}.Kind()
	Nitrogen = Row{Name: "nitrogen", Noun: "nitrogen", Verb: "Feed", Category: "Nitrogen", Weight: 2,
		Serves: bringsN, Feeds: true, Last: nutrient.LastSolubleN, Answers: "nitrogen"}.Kind()
	LateNitrogen = Row{Name: "late-nitrogen", Noun: "late nitrogen", Verb: "Late feed", Category: "Nitrogen", Weight: 2,
		Serves: bringsN, Feeds: true, Last: nutrient.LastSolubleN}.Kind()
	Potassium = Row{Name: "potassium", Noun: "potassium", Verb: "Potassium on", Category: "Potassium", Weight: 1.5,
		Serves: bringsK, Nutrient: "K₂O", Things: nutrient.PotassiumDown, Last: nutrient.LastPotassium, Answers: "potassium",
		Brings: func(_ *Case, d material.Dose) agronomy.PerThousand { return d.K2O }}.Kind()
	Magnesium = Row{Name: "magnesium", Noun: "magnesium", Verb: "Magnesium on", Category: "Magnesium", Weight: 1,
		Serves: bringsMg, Nutrient: "Mg", Last: nutrient.LastMagnesium, Answers: "magnesium",
		Brings: func(_ *Case, d material.Dose) agronomy.PerThousand { return d.Mg }}.Kind()
	Iron     = Row{Name: "iron", Noun: "iron", Verb: "Iron on", Category: "Iron", Weight: 1, Serves: is(material.IronMaterial), Brings: weight}.Kind()
	LastSafe = Row{Name: "last-safe", Noun: "last safe day", Category: "Season", Does: Tells, Weight: 1}.Kind()
	Reopen   = Row{Name: "reopen", Noun: "ground open again", Category: "Season", Does: Tells, Weight: 1}.Kind()
)

// KindTable is a table of kinds, the most important first.
type KindTable []Kind

// kinds are the kinds in the order in which they matter when not all fit.
var kinds = KindTable{SoilTest, Sow, Overseed, Starter, Lime, Gypsum, Sulfur, Phosphorus, Nitrogen,
	LateNitrogen, Potassium, Magnesium, Iron, LastSafe, Reopen}

// Kinds lists every kind, the most important first.
func Kinds() KindTable { return slices.Clone(kinds) }

// Kinds lists the kinds with which the program was planned, the most important
// first.
func (p *Program) Kinds() KindTable {
	if p.Table == nil {
		return Kinds()
	}
	return slices.Clone(p.Table)
}

// KindNamed finds a kind by its name, such as "late-nitrogen".
func KindNamed(name string) (Kind, bool) { return kinds.named(name) }

func (t KindTable) named(name string) (Kind, bool) {
	i := slices.IndexFunc(t, func(k Kind) bool { return k.String() == name })
	if i < 0 {
		return Kind{}, false
	}
	return t[i], true
}

// Rank gives a kind's place in the table: 0 is the most important.
func (t KindTable) Rank(k Kind) int { return slices.Index(t, k) }

// MostKinds is how many kinds a table may have, so that the costs of leaving
// out can be summed over some hundred jobs.
const MostKinds = 20

// LeaveOut is the cost, in units, of a job that gets no day, by the rank of its kind. For
// the lowest rank it is 1000 × perUnit, so that no saving on days is ever worth a job, and
// for each rank above 2.2 times as much. So one job outweighs two of the kind below it,
// and one each of all kinds below it (1/2.2 + 1/2.2² + … is less than 1). The cost
// depends on the rank alone: a kind added below leaves it as it is.
func LeaveOut(rank int) int64 { return leavingOut[rank] }

var leavingOut = func() (cost [MostKinds]int64) {
	at := int64(1000 * perUnit)
	for rank := MostKinds - 1; rank >= 0; rank-- {
		cost[rank] = at
		at = at * 11 / 5 // [common] our own
	}
	return cost
}()

var noKind Row

// Of gives the row of a kind; that of no kind is empty.
func (k Kind) Of() *Row {
	if k.row == nil {
		return &noKind
	}
	return k.row
}

// String gives the name by which files and ids know the kind.
func (k Kind) String() string { return k.Of().Name }

// Noun names the kind in a sentence: "late nitrogen".
func (k Kind) Noun() string { return k.Of().Noun }

// Category is the one word under which a calendar files the kind.
func (k Kind) Category() string { return k.Of().Category }

// Notice tells the kinds that mark a day and ask for nothing.
func (k Kind) Notice() bool { return k.Of().Does == Tells }

// Spreads tells the kinds that put a material down.
func (k Kind) Spreads() bool { return k.Of().Does == Spreads }

// Sows tells the kinds that put seed down.
func (k Kind) Sows() bool { return k.Of().Does == Sows }

// Samples tells the kinds that take some soil away.
func (k Kind) Samples() bool { return k.Of().Does == Samples }

// Feeds tells the kinds that are one of the season's feedings.
func (k Kind) Feeds() bool { return k.Of().Feeds }

// Nutrient names the nutrient that a kind brings because the soil report is
// short of it: "K₂O". Others have none.
func (k Kind) Nutrient() string { return k.Of().Nutrient }

// Decided tells the kinds whose dose a soil report decides: what it finds short, and
// what changes the soil itself.
func (k Kind) Decided() bool {
	return k.Nutrient() != "" || k == Lime || k == Gypsum || k == Sulfur
}

// ServedBy tells whether a material can be what a kind of job puts down.
func (k Kind) ServedBy(m material.Material) bool {
	fits := k.Of().Serves
	return fits != nil && fits(m)
}

// MarshalText writes the name, for JSON.
func (k Kind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads the name of a kind.
func (k *Kind) UnmarshalText(name []byte) error {
	found, ok := KindNamed(string(name))
	if !ok {
		return fmt.Errorf("unknown kind of job %q", name)
	}
	*k = found
	return nil
}

func is(k material.Kind) func(material.Material) bool {
	return func(m material.Material) bool { return m.Kind == k }
}

func limes(m material.Material) bool {
	return m.Kind == material.LimeMaterial || m.Kind == material.WoodAsh
}

// weight is what a dose weighs.
func weight(_ *Case, d material.Dose) agronomy.PerThousand { return d.Rate }

func bringsN(m material.Material) bool { return m.Analysis.N > 0 }
func bringsP(m material.Material) bool { return m.Analysis.P2O5 > 0 }
func bringsK(m material.Material) bool { return m.Analysis.K2O > 0 }

func bringsMg(m material.Material) bool {
	return m.Magnesium > 0 && m.Kind != material.LimeMaterial
}

// perUnit is how many units a cost of 1 has. Units are whole numbers, so that sums are
// exact in any order and equal costs are equal.
const perUnit = 1_000_000

// Units gives a cost in the whole numbers that are searched.
func Units(cost float64) int64 { return int64(math.Round(cost * perUnit)) }
