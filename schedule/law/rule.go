package law

import (
	"fmt"
	"strings"
)

// Kind says what a rule limits.
type Kind uint8

const (
	NitrogenClosed   Kind = iota // days on which products with nitrogen may not go down
	PhosphorusClosed             // the same for phosphorus
	PotassiumClosed              // the same for potassium
	PhosphorusReport             // phosphorus is shut unless an exception opens it
	NitrogenDose                 // lb N per 1000 sq ft in one application, at most
	SolubleDose                  // lb soluble N per 1000 sq ft in one application, at most
	NitrogenYear                 // lb N per 1000 sq ft in a year, at most
	PhosphorusDose               // lb P2O5 per 1000 sq ft in one application, at most
	PhosphorusYear               // lb P2O5 per 1000 sq ft in a year, at most
	SlowNitrogen                 // share of the nitrogen that must be slow, 0 to 1, at least
	WaterDistance                // ft to keep from open water
	GroundState                  // states of the ground on which nothing may be spread
	HeavyRain                    // rain, falling or forecast
	PavedSurface                 // fertilizer on paving
	LabelOrSign                  // binds the bag or the shop
)

var kindWords = [...]string{"nitrogen dates", "phosphorus dates", "potassium dates", "phosphorus and the soil report",
	"nitrogen in one application", "soluble nitrogen in one application", "nitrogen in a year",
	"phosphorus in one application", "phosphorus in a year", "slow nitrogen", "distance from water",
	"state of the ground", "rain", "paving", "label or sign"}

// String names the kind in plain words.
func (k Kind) String() string { return kindWords[k] }

// Binding says whom a rule holds to what.
type Binding uint8

const (
	BindsUse   Binding = iota // forbids it to whoever spreads
	BindsLabel                // the product's directions must keep to it; whoever mixes materials keeps to the same figure
	BindsSale                 // binds the shop
	Advises                   // says "should" and binds nobody
)

// Nutrient is one nutrient or a set of them.
type Nutrient uint8

const (
	Nitrogen Nutrient = 1 << iota
	Phosphorus
	Potassium
)

// String names the nutrients, "nitrogen and phosphorus".
func (n Nutrient) String() string {
	return list(pick(uint16(n), "nitrogen", "phosphorus", "potassium"), "and")
}

// GroundIs is the state of the ground on the day, one or several together.
type GroundIs uint8

const (
	Open   GroundIs = 0
	Frozen GroundIs = 1 << (iota - 1)
	Snow
	Saturated
	Dormant
)

// String names the states, "frozen or snow-covered".
func (g GroundIs) String() string {
	if g == Open {
		return "open"
	}
	return list(pick(uint16(g), "frozen", "snow-covered", "saturated", "dormant"), "or")
}

// Exception is a set of reasons for which a rule does not hold.
type Exception uint16

const (
	SoilTest       Exception = 1 << iota // a soil report, young enough, that calls for it
	NewLawn                              // first establishment
	RepairWork                           // overseeding, patching, renovation
	LowPhosphate                         // products at or under LowP2O5Percent
	OrganicSource                        // organic or natural sources
	EnhancedSource                       // enhanced-efficiency nitrogen, under its own limits
	LiquidForm                           // liquids
	AllSoluble                           // fully soluble products under the cap for soluble nitrogen
	NaturalStrip                         // a continuous natural strip 10 ft wide along the water
	StreamBuffer                         // making or keeping a stream buffer
	GrowingCrop                          // a growing crop
	WorkedIn                             // worked into the soil
	GolfCourse                           // golf courses
	FarmLand                             // farm land
	Certificate                          // a certificate held by whoever spreads
)

// Has reports whether every exception of f is in e.
func (e Exception) Has(f Exception) bool { return e&f == f }

// String names the exceptions, "a soil report that calls for it, a new lawn or repair".
func (e Exception) String() string {
	return list(pick(uint16(e), "a soil report that calls for it", "a new lawn", "repair", "a low-phosphate product",
		"an organic source", "an enhanced-efficiency source", "a liquid", "a fully soluble product", "a natural strip 10 ft (3 m) wide",
		"a stream buffer", "a growing crop", "working it into the soil", "a golf course", "farm land", "a certificate held by the person who spreads"), "or")
}

// How says how the text behind a row of the table was read.
type How uint8

const (
	Seen       How = iota // the provision itself
	InPart                // part of it, or a summary
	FromMemory            // not read
)

// String is "read", "read in part" or "from memory".
func (h How) String() string { return [...]string{"read", "read in part", "from memory"}[h] }

// Confidence says how sure a row of the table is.
type Confidence uint8

const (
	LowConfidence Confidence = iota
	MediumConfidence
	HighConfidence
)

// String is "low", "medium" or "high".
func (c Confidence) String() string { return [...]string{"low", "medium", "high"}[c] }

// Bound says whom a rule is for.
type Bound uint8

const (
	Everyone Bound = iota
	HomeownersOnly
	PaidOnly
)

func (b Bound) holds(w Who) bool {
	return b == Everyone || b == HomeownersOnly && w == Homeowner || b == PaidOnly && w == Paid
}

// doubt says which exceptions of a phosphorus rule are not known for certain.
type doubt uint8

const (
	noDoubt       doubt = iota
	askIfShut           // sources disagree on the exceptions: where none of them holds, ask
	askWithReport       // no text read says whether a soil report is one
	askIfOrganic        // only some organic sources are exempt
)

// Rule is one provision. Amounts are lb per 1000 sq ft as the law prints them,
// phosphorus read as P2O5; distances ft; shares 0 to 1.
type Rule struct {
	ID, State string
	Kind      Kind
	Binds     Bound
	Binding   Binding

	When       Span    // closed days; for a cap, the days on which it holds; zero: all year
	Value      float64 // the cap, least share or distance; 0 where the law only points elsewhere (RefersTo)
	Lesser     float64 // ft, the lesser distance, 0 if none
	LesserWith string  // the tool that earns it

	Raised     float64 // lb, a higher dose a condition can earn, 0 if none; of phosphorus: what a new lawn may have
	RaisedSlow float64 // the slow share of the nitrogen that the higher dose asks for
	RaisedWhen Span    // the days on which the higher dose is possible

	LowP2O5Percent float64 // products with no more than this are no phosphorus fertilizer; 0: any amount counts
	MaxP2O5Percent float64 // with a soil report, products with no more than this are allowed; 0: all
	OrganicMaxP2O5 float64 // lb, what an organic source may bring without a report; 0: no figure here
	ReportMonths   int     // how old a soil report may be; 0: no limit in the text
	NewSeasons     int     // growing seasons for which a lawn counts as new; 0: not said
	doubt          doubt

	Nutrients Nutrient  // only products with these; 0: any fertilizer
	Ground    GroundIs  // states of the ground on which nothing may be spread
	Unless    Exception // what lifts the rule, and nothing else does
	Only      Exception // the rule holds only for these; the question then decides what Scope leaves open
	Waters    WaterKind // the rule holds only along these; decides what Scope leaves open, if the water is given
	Strip     float64   // ft, how far from that water it reaches; 0: not said
	Scope     string    // where it holds; empty: all of its extent
	Extent    Extent
	Place     string   // whose rule it is; empty: the state's
	Counties  []string // the counties that Extent speaks of; empty: not known
	here      bool     // the county asked about has a part in the rule's basin
	ByHolders Span     // days on which only holders of a certificate may spread; others have to ask
	RefersTo  string   // the university table the law points at
	Keep      bool     // enforced although its confidence is low
	byGrass   []grassCap

	Citation, Agency, InForce string
	AsOf                      string // date of the text or notice that was read
	How                       How
	Confidence                Confidence
	Note                      string
}

// Extent says in what part of a state a rule holds.
type Extent uint8

const (
	Statewide Extent = iota
	InCounty         // in the whole of its counties
	InTown           // in a town of its counties
	InBasin          // in a watershed or along a shore that its counties have a part of
)

// WaterKind is a kind of open water, or a set of them.
type WaterKind uint8

const (
	DrinkingSupply WaterKind = 1 << iota // used for public drinking supply
	GreatPond                            // a great pond of Maine
	LargeWater                           // a larger water with protected shoreland in New Hampshire
	OtherWater
	anyWater = DrinkingSupply | GreatPond | LargeWater | OtherWater
)

type grassCap struct {
	grass string
	lb    float64
}

// Enforced reports whether a program has to keep to the rule. Other rules are only shown.
func (r Rule) Enforced() bool {
	return (r.Binding == BindsUse || r.Binding == BindsLabel) &&
		(r.Confidence > LowConfidence || r.Keep) && (r.Scope == "" || r.Only != 0)
}

// Brief is the citation without what stands in brackets, such as the session laws that made
// a section: enough to find the text, where room is short.
func (r Rule) Brief() string {
	brief, _, _ := strings.Cut(r.Citation, " (")
	return brief
}

// Dated is the date of the text that was read, "Nov 2021".
func (r Rule) Dated() string { return printed(r.AsOf) }

// Source is what to print beside a decision: citation, agency, dates, how read, how sure.
func (r Rule) Source() string {
	return fmt.Sprintf("%s (%s; in force %s; as of %s; %s; %s confidence)",
		r.Citation, r.Agency, printed(r.InForce), r.Dated(), r.How, r.Confidence)
}

// pick returns the words whose bits are set.
func pick(bits uint16, words ...string) []string {
	var out []string
	for i, w := range words {
		if bits&(1<<i) != 0 {
			out = append(out, w)
		}
	}
	return out
}

// list joins words as "a, b and c".
func list(words []string, joint string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " " + joint + " " + words[last]
}
