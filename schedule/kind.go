package schedule

import (
	"fmt"
	"slices"

	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
)

// Kind is what a job is for: one row of the table of kinds. Whatever differs
// from kind to kind without being the code of one rule is a column of it.
type Kind struct{ row *row }

// row is what there is to know of a kind. Its place in the table is its rank.
type row struct {
	name     string                       // in ids and files
	noun     string                       // in a sentence
	verb     string                       // begins a title, the area's name follows
	category string                       // the one word in a calendar
	does     doing                        // what a job of the kind does
	weight   float64                      // of a day's distance from the ideal day; sets which job gives way, not whether one fits
	serves   func(material.Material) bool // what it may put down
	nutrient string                       // its own, brought for a shortage in the soil report
	feeds    bool                         // one of the season's feedings
	things   nutrient.Things              // what it counts as for spacing, however small its dose
}

// doing is what a job does.
type doing int

const (
	spreads doing = iota // puts a material down
	sows
	samples
	tells // marks a day; there is nothing to do
)

// The kinds of job. The weights are our own order. // [common]
var (
	SoilTest = Kind{&row{name: "soil-test", noun: "soil sample", verb: "Sample soil", category: "Sample", does: samples, weight: 1,
		things: nutrient.SampleTaken}}
	Sow     = Kind{&row{name: "sow", noun: "sow", verb: "Sow", category: "Sow", does: sows, weight: 4}}
	Starter = Kind{&row{name: "starter", noun: "starter", verb: "Starter for", category: "Starter", weight: 3,
		serves: bringsP, feeds: true}}
	Lime   = Kind{&row{name: "lime", noun: "lime", verb: "Lime", category: "Lime", weight: 2, serves: is(material.LimeMaterial)}}
	Sulfur = Kind{&row{name: "sulfur", noun: "sulfur", verb: "Sulfur on", category: "Sulfur", weight: 1,
		serves: is(material.SulfurMaterial)}}
	Phosphorus = Kind{&row{name: "phosphorus", noun: "phosphorus", verb: "Phosphorus on", category: "Phosphorus", weight: 2,
		serves: bringsP, nutrient: "P₂O₅", things: nutrient.PhosphorusDown}}
	Nitrogen = Kind{&row{name: "nitrogen", noun: "nitrogen", verb: "Feed", category: "Nitrogen", weight: 2,
		serves: bringsN, feeds: true}}
	LateNitrogen = Kind{&row{name: "late-nitrogen", noun: "late nitrogen", verb: "Late feed", category: "Nitrogen", weight: 2,
		serves: bringsN, feeds: true}}
	Potassium = Kind{&row{name: "potassium", noun: "potassium", verb: "Potassium on", category: "Potassium", weight: 1.5,
		serves: bringsK, nutrient: "K₂O", things: nutrient.PotassiumDown}}
	Magnesium = Kind{&row{name: "magnesium", noun: "magnesium", verb: "Magnesium on", category: "Magnesium", weight: 1,
		serves: bringsMg, nutrient: "Mg"}}
	LastSafe = Kind{&row{name: "last-safe", noun: "last safe day", category: "Season", does: tells, weight: 1}}
	Reopen   = Kind{&row{name: "reopen", noun: "ground open again", category: "Season", does: tells, weight: 1}}
)

// kindTable is a table of kinds, the most important first.
type kindTable []Kind

// kinds are the kinds in the order in which they matter when not all fit.
var kinds = kindTable{SoilTest, Sow, Starter, Lime, Sulfur, Phosphorus, Nitrogen,
	LateNitrogen, Potassium, Magnesium, LastSafe, Reopen}

// Kinds lists every kind, the most important first.
func Kinds() []Kind { return slices.Clone(kinds) }

// Kinds lists the kinds with which the program was planned, the most important
// first.
func (p *Program) Kinds() []Kind {
	if p.kinds == nil {
		return Kinds()
	}
	return slices.Clone(p.kinds)
}

// KindNamed finds a kind by its name, such as "late-nitrogen".
func KindNamed(name string) (Kind, bool) { return kinds.named(name) }

func (t kindTable) named(name string) (Kind, bool) {
	i := slices.IndexFunc(t, func(k Kind) bool { return k.String() == name })
	if i < 0 {
		return Kind{}, false
	}
	return t[i], true
}

// rank gives a kind's place in the table: 0 is the most important.
func (t kindTable) rank(k Kind) int { return slices.Index(t, k) }

// mostKinds is how many kinds a table may have, so that the costs of leaving
// out can be summed over some hundred jobs.
const mostKinds = 20

// leaveOut is the cost of a job that gets no day, by the rank of its kind: at
// least 1000, so that no saving on days is ever worth a job, and 2.2 times as
// much for each kind above. So one job outweighs two of the kind below it, and
// one of each kind below it together (1/2.2 + 1/2.2² + … is less than 1). The
// cost hangs on the rank alone: a kind added below leaves it as it is.
func leaveOut(rank int) int64 { return leavingOut[rank] }

var leavingOut = func() (cost [mostKinds]int64) {
	at := int64(1000 * perUnit)
	for rank := mostKinds - 1; rank >= 0; rank-- {
		cost[rank] = at
		at = at * 11 / 5 // [common] our own
	}
	return cost
}()

var noKind row

// of gives the row of a kind; that of no kind is empty.
func (k Kind) of() *row {
	if k.row == nil {
		return &noKind
	}
	return k.row
}

// String gives the name by which files and ids know the kind.
func (k Kind) String() string { return k.of().name }

// Noun names the kind in a sentence: "late nitrogen".
func (k Kind) Noun() string { return k.of().noun }

// Category is the one word under which a calendar files the kind.
func (k Kind) Category() string { return k.of().category }

// Notice tells the kinds that mark a day and ask for nothing.
func (k Kind) Notice() bool { return k.of().does == tells }

// Spreads tells the kinds that put a material down.
func (k Kind) Spreads() bool { return k.of().does == spreads }

// Sows tells the kinds that put seed down.
func (k Kind) Sows() bool { return k.of().does == sows }

// samples tells the kinds that take some soil away.
func (k Kind) samples() bool { return k.of().does == samples }

// Feeds tells the kinds that are one of the season's feedings.
func (k Kind) Feeds() bool { return k.of().feeds }

// Nutrient names the nutrient that a kind brings because the soil report is
// short of it: "K₂O". Others have none.
func (k Kind) Nutrient() string { return k.of().nutrient }

// servedBy tells whether a material can be what a kind of job puts down.
func (k Kind) servedBy(m material.Material) bool {
	fits := k.of().serves
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

func bringsN(m material.Material) bool { return m.Analysis.N > 0 }
func bringsP(m material.Material) bool { return m.Analysis.P2O5 > 0 }
func bringsK(m material.Material) bool { return m.Analysis.K2O > 0 }

func bringsMg(m material.Material) bool {
	return m.Magnesium > 0 && m.Kind != material.LimeMaterial
}
