package schedule

import (
	"swardbook/agronomy"
)

// Ledger is the nutrients down and planned in each area, over time, against
// their limits.
type Ledger struct {
	Areas []AreaLedger `json:"areas"`
}

// AreaLedger is the ledger of one area.
type AreaLedger struct {
	Area    string        `json:"area"`
	Name    string        `json:"name"`
	Lines   []LedgerLine  `json:"lines"`
	Limits  []LedgerLimit `json:"limits"`
	Verdict string        `json:"verdict"` // "did we over-apply?" in one sentence
}

// LedgerLine is one application, on record or planned.
type LedgerLine struct {
	Date     Date                 `json:"date"`
	Job      string               `json:"job"`
	Text     string               `json:"text"`
	Down     bool                 `json:"down"` // on record; else planned
	N        agronomy.PerThousand `json:"n_lb_per_1000_sqft"`
	SlowN    agronomy.PerThousand `json:"slow_n_lb_per_1000_sqft"`
	P2O5     agronomy.PerThousand `json:"p2o5_lb_per_1000_sqft"`
	K2O      agronomy.PerThousand `json:"k2o_lb_per_1000_sqft"`
	Lime     agronomy.PerThousand `json:"lime_lb_per_1000_sqft"`
	FeedsTo  Date                 `json:"feeds_to,omitzero"` // last day on which its nitrogen feeds
	SumN     agronomy.PerThousand `json:"sum_n_lb_per_1000_sqft"` // of the turf year so far
	Released agronomy.PerThousand `json:"released_n_lb_per_1000_sqft"` // of all nitrogen down, by this day
}

// LedgerLimit is one limit and how near the area comes to it.
type LedgerLimit struct {
	What   string               `json:"what"` // "nitrogen in a year", "quick nitrogen in 30 days", …
	Limit  agronomy.PerThousand `json:"limit_lb_per_1000_sqft"`
	Most   agronomy.PerThousand `json:"most_lb_per_1000_sqft"` // the most that comes together under it
	Down   agronomy.PerThousand `json:"down_lb_per_1000_sqft"` // of that, on record
	Passed bool                 `json:"passed"`
	Source string               `json:"source,omitzero"`
}
