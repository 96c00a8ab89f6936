package nutrient

import (
	"fmt"

	"swardbook/agronomy"
)

// SeedlingRules are the feeding rules of a stand's first year. Amounts are in
// lb/1000 sq ft, days from the events named.
type SeedlingRules struct {
	StarterN      [2]agronomy.PerThousand // with the seed; the upper end is a cap
	StarterP2O5   [2]agronomy.PerThousand // with the seed, where the test or the law lets it
	EmergesBy     int                     // days from sowing until most of the stand is up; 0 unknown
	FirstDays     int                     // from EmergesBy to the first nitrogen
	FirstN        agronomy.PerThousand
	EveryDays     [2]int                  // from then on, while growth lasts
	FirstYear     [2]agronomy.PerThousand // nitrogen in all
	SpringN       [2]agronomy.PerThousand // the spring after a fall seeding
	SpringMowings int                     // the stand must have had
	BareSpotShare float64                 // of the usual dose on seedlings in patched spots
	Why           []agronomy.Reason
}

// SeedlingsOf gives the first-year rules of a stand.
func SeedlingsOf(s agronomy.Stand) SeedlingRules {
	r := SeedlingRules{
		StarterN:      [2]agronomy.PerThousand{0.5, 1.0}, // [uc-starter] upper end; lower [common]
		StarterP2O5:   [2]agronomy.PerThousand{1.0, 1.5}, // [purdue-p] [unl-renovate]
		FirstDays:     28,                                // [common] four to six weeks
		FirstN:        0.5,                               // [common]
		EveryDays:     [2]int{28, 42},                    // [common]
		FirstYear:     [2]agronomy.PerThousand{2, 3},     // [common] from memory
		SpringN:       [2]agronomy.PerThousand{0.5, 1.0}, // [common]
		SpringMowings: 2,                                 // [common]
		BareSpotShare: 0.67,                              // [vt-452-717]
	}
	if up, why, ok := s.MostUp(); ok {
		r.EmergesBy = up
		r.Why = append(r.Why, why, agronomy.Reason{Text: fmt.Sprintf("Counting from then, the first %.1f lb N goes on four weeks later. Custom runs from two weeks to six, and from 0.5 lb to 0.75 lb.", float64(r.FirstN)), Source: "common"})
	}
	r.Why = append(r.Why,
		agronomy.Reason{Text: "With the seed no more than 1 lb N and 1 to 1.5 lb P₂O₅.", Source: "uc-starter, purdue-p, unl-renovate"})
	all := "In all 2 to 3 lb N in the first year (from memory)"
	if modest(s) {
		r.FirstYear = [2]agronomy.PerThousand{1, 1.5} // [common] half of the others' at most
		all = "In all 1 to 1.5 lb N in the first year, as the grass lives on little"
	}
	r.Why = append(r.Why, agronomy.Reason{Text: all + ", none in heat, and none on seedlings that have stopped growing.", Source: "common"})
	return r
}

// modest tells the stands of grass that lives on little, such as fine fescue,
// centipedegrass and buffalograss: at most 1.5 lb N a year at medium care.
func modest(s agronomy.Stand) bool {
	var n agronomy.PerThousand
	for i := range s {
		n += s[i].Grass.N[1] * agronomy.PerThousand(s.Weight(i))
	}
	return n <= 1.5 // [common] our own line
}
