package nutrient

import (
	"swardbook/agronomy"
)

// NitrogenLimits are the caps and gaps that hold between doses of nitrogen, in
// lb N/1000 sq ft and days. State law, where it is stricter, comes first.
type NitrogenLimits struct {
	Single        agronomy.PerThousand // in all, at once
	SingleSlow    agronomy.PerThousand // at once, where half or more is slow
	Soluble       agronomy.PerThousand // quick nitrogen, at once
	Heat          agronomy.PerThousand // at once in heat, slow only; cool-season
	Soluble30Days agronomy.PerThousand // quick nitrogen in any 30 days
	Year          agronomy.PerThousand // cool-season; 0 no general figure
	DaysSoluble   int                  // from a quick dose to the next
	DaysSlow      int                  // from a slow dose to the next
	Why           []agronomy.Reason
}

// LimitsOfNitrogen gives the caps for a season's grass.
func LimitsOfNitrogen(s agronomy.Season) NitrogenLimits {
	l := NitrogenLimits{
		Single:        1.0, // [ill-1995] [uf-ep236]
		SingleSlow:    1.5, // [ksu-eckert] [az-1995]
		Soluble:       0.7, // [md-ag-6-224]
		Heat:          0.5, // [common]
		Soluble30Days: 1.0, // [common]
		DaysSoluble:   28,  // [common]
		DaysSlow:      42,  // [common]
		Why: []agronomy.Reason{
			{Text: "No more than 1 lb N at once, the usual cap; 1.5 lb only where half or more is slow and no law forbids. New Jersey's cap is 0.9 lb.", Source: "ill-1995, uf-ep236, ksu-eckert, az-1995, rutgers-spreader"},
			{Text: "No more than 0.7 lb of quick nitrogen at once, Maryland's limit, which serves everywhere; an older guide put burning at 1 lb and more.", Source: "md-ag-6-224, osu-fg47"},
			{Text: "Four weeks between quick doses, six after a slow one, and no more than 1 lb of quick nitrogen in 30 days.", Source: "common"},
		},
	}
	if s == agronomy.Cool {
		l.Year = coolYear
		l.Why = append(l.Why,
			agronomy.Reason{Text: "On cool-season grass no more than 0.5 lb, slow, while highs pass 85 °F, and none on dormant turf.", Source: "common"},
			agronomy.Reason{Text: "Cool-season lawns need no more than 4 lb N a year.", Source: "ksu-eckert"})
	}
	return l
}

// SeasonShares are the parts of a year's nitrogen that custom gives to each
// season, together 1.
type SeasonShares struct {
	Spring, Summer, Fall float64
	Why                  agronomy.Reason
}

// SharesOf gives a season's grass its shares: cool-season two thirds in fall,
// warm-season over its growing months.
func SharesOf(s agronomy.Season) SeasonShares {
	if s == agronomy.Warm {
		return SeasonShares{0.33, 0.67, 0, agronomy.Reason{Text: "Warm-season grass is fed while it grows: a third in spring, the rest in summer.", Source: "common"}} // [common]
	}
	return SeasonShares{0.33, 0, 0.67, agronomy.Reason{Text: "Cool-season grass gets two thirds of its nitrogen in fall, a third in spring, none in summer.", Source: "umn-2023, az-1995"}} // [umn-2023] [az-1995]
}
