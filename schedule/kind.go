package schedule

import "slices"

// Kind is what a job is for.
type Kind string

// The kinds of job, in the order in which they matter when not all fit.
const (
	SoilTest     Kind = "soil-test"
	Sow          Kind = "sow"
	Starter      Kind = "starter"
	Lime         Kind = "lime"
	Sulfur       Kind = "sulfur"
	Phosphorus   Kind = "phosphorus"
	Nitrogen     Kind = "nitrogen"
	LateNitrogen Kind = "late-nitrogen"
	Potassium    Kind = "potassium"
	Magnesium    Kind = "magnesium"
	LastSafe     Kind = "last-safe"
	Reopen       Kind = "reopen"
)

var kinds = []Kind{SoilTest, Sow, Starter, Lime, Sulfur, Phosphorus, Nitrogen,
	LateNitrogen, Potassium, Magnesium, LastSafe, Reopen}

// Kinds lists every kind, the most important first.
func Kinds() []Kind { return slices.Clone(kinds) }

// rank gives a kind's place in that order.
func (k Kind) rank() int { return slices.Index(kinds, k) }

// Notice tells the kinds that mark a day and spread nothing.
func (k Kind) Notice() bool { return k == LastSafe || k == Reopen }
