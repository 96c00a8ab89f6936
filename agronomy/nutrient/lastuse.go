package nutrient

import "swardbook/agronomy"

// LastKind is a kind of work that has a last useful day before winter.
type LastKind string

// The kinds of work with a last useful day.
const (
	LastLime       LastKind = "lime"
	LastSolubleN   LastKind = "quick nitrogen"
	LastSlowN      LastKind = "slow nitrogen"
	LastPhosphorus LastKind = "phosphorus"
	LastPotassium  LastKind = "potassium"
	LastMagnesium  LastKind = "magnesium"
	LastSulfur     LastKind = "sulfur"
	LastSeed       LastKind = "seed"
	LastSample     LastKind = "soil sample"
)

// LastUseful says until when a kind of work is still worth doing, as events
// of the place's year. Each field that is not 0 is a limit; the earliest of
// them holds. Where the ground does not freeze, limits before its freezing fall
// away. No kind may be done on frozen, snow-covered or saturated ground.
type LastUseful struct {
	Kind              LastKind
	Season            agronomy.Season
	Growth            float64 // growth potential, going down in autumn, reaches this
	BeforeGrowthEnds  int     // days before top growth ends
	BeforeFreeze      int     // days before the ground freezes, median year
	BeforeEarlyFreeze int     // days before the ground freezes, early year
	BeforeFirstFrost  int     // days before the average first freeze of the air
	InSouth           int     // BeforeFirstFrost in the South
	BeforeSoil50      int     // days before soil at 2 in falls under 50 °F
	Why               agronomy.Reason
}

// LastUsefuls lists the rules for grass of a season.
func LastUsefuls(s agronomy.Season) []LastUseful {
	rules := []LastUseful{
		{Kind: LastLime, BeforeFreeze: 7, Why: agronomy.Reason{Text: "Late lime does no harm, but it reacts little in cold soil and washes off frozen ground.", Source: "common"}},
		{Kind: LastPhosphorus, BeforeFreeze: 30, Why: agronomy.Reason{Text: "Phosphorus must sink in before the ground freezes, or it washes into water.", Source: "common"}},
		{Kind: LastPotassium, BeforeGrowthEnds: 30, Why: agronomy.Reason{Text: "A shortage of potassium is made good while the turf grows; late potassium brought more snow mold and no gain.", Source: "soldat-k-2024"}},
		{Kind: LastMagnesium, BeforeGrowthEnds: 30, Why: agronomy.Reason{Text: "Growing roots take magnesium up; what is left over washes out in winter.", Source: "common"}},
		{Kind: LastSulfur, BeforeSoil50: 60, Why: agronomy.Reason{Text: "Soil life turns sulfur to acid only in warm soil and needs about 60 days of it.", Source: "common"}},
		{Kind: LastSample, Why: agronomy.Reason{Text: "A sample can be taken while the ground is open and not saturated.", Source: "mo-sampling, ar-lime"}},
	}
	if s == agronomy.Warm {
		six := agronomy.Reason{Text: "Nitrogen later than six weeks before the first freeze keeps warm-season grass soft; published limits run from four to eight weeks.", Source: "uga-792"}
		rules = append(rules,
			LastUseful{Kind: LastSolubleN, BeforeFirstFrost: 42, Why: six},
			LastUseful{Kind: LastSlowN, BeforeFirstFrost: 42, Why: six},
			LastUseful{Kind: LastSeed, BeforeFirstFrost: 90, InSouth: 60, Why: agronomy.Reason{Text: "Warm-season seedlings need about 90 days before the first freeze, 60 in the South.", Source: "common"}},
		)
	} else {
		rules = append(rules,
			LastUseful{Kind: LastSolubleN, Growth: 0.2, BeforeEarlyFreeze: 21, Why: agronomy.Reason{Text: "Little nitrogen is taken up once growth falls below a fifth: of a quick dose at Madison, 80 % in mid September, 20 % in mid October, 10 % in mid November.", Source: "soldat-fall, umn-2012"}},
			LastUseful{Kind: LastSlowN, BeforeGrowthEnds: 42, Why: agronomy.Reason{Text: "Slow nitrogen must come free while roots still take it up.", Source: "common"}},
			LastUseful{Kind: LastSeed, BeforeSoil50: 45, Why: agronomy.Reason{Text: "Seedlings need about 45 days before the soil cools below 50 °F.", Source: "common"}},
		)
	}
	for i := range rules {
		rules[i].Season = s
	}
	return rules
}

// LastUsefulFor gives the rule of one kind; false for an unknown kind.
func LastUsefulFor(k LastKind, s agronomy.Season) (LastUseful, bool) {
	for _, r := range LastUsefuls(s) {
		if r.Kind == k {
			return r, true
		}
	}
	return LastUseful{}, false
}
