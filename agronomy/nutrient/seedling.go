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
	EmergesBy     int                     // days from sowing to the last seedlings; 0 unknown
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
		FirstN:        0.5,                               // [garden-germ]
		EveryDays:     [2]int{28, 42},                    // [common]
		FirstYear:     [2]agronomy.PerThousand{2, 3},     // [common] from memory
		SpringN:       [2]agronomy.PerThousand{0.5, 1.0}, // [common]
		SpringMowings: 2,                                 // [common]
		BareSpotShare: 0.67,                              // [vt-452-717]
	}
	_, last, why, ok := s.Emergence()
	r.Why = append(r.Why, why...)
	if ok {
		r.EmergesBy = last
		r.Why = append(r.Why, agronomy.Reason{Text: fmt.Sprintf("Counting from the slowest grass, %d days after sowing, the first %.1f lb N goes on four weeks later. A turf supplier says four to six weeks and 0.75 lb; a garden page has Minnesota's 0.5 lb at two weeks.", last, float64(r.FirstN)), Source: "common, garden-germ"})
	}
	r.Why = append(r.Why,
		agronomy.Reason{Text: "With the seed no more than 1 lb N and 1 to 1.5 lb P₂O₅.", Source: "uc-starter, purdue-p, unl-renovate"},
		agronomy.Reason{Text: "In all 2 to 3 lb N in the first year (from memory), none in heat, and none on seedlings that have stopped growing.", Source: "common"})
	return r
}
