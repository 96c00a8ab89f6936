package soil

import (
	"strings"

	"swardbook/agronomy"
)

// IronPH is the pH above which a stand may go short of iron, whatever the soil
// holds: 7.0, on centipedegrass 6.0, and never inside the range that suits the
// stand.
func IronPH(s agronomy.Stand) (agronomy.PH, agronomy.Reason) {
	limit, why := agronomy.PH(7.0), agronomy.Reason{Text: "Above pH 7 iron turns to forms that roots hardly take up.", Source: "az-iron"} // [az-iron] [common]
	for i := range s {
		if strings.EqualFold(s[i].Grass.Name, "centipedegrass") && s.Weight(i) >= 0.5 {
			limit, why = 6.0, agronomy.Reason{Text: "Centipedegrass yellows for lack of iron already above pH 6, most of all after too much lime or phosphorus.", Source: "nc-home-report, common"} // [nc-home-report]
		}
	}
	_, _, high := s.TargetPH()
	return max(limit, high), why
}

// IronShort tells whether a report makes want of iron likely on a stand.
func IronShort(r agronomy.Report, s agronomy.Stand) (why []agronomy.Reason, likely bool) {
	limit, reason := IronPH(s)
	if r.PH == 0 || r.PH <= limit {
		return nil, false
	}
	return []agronomy.Reason{{Text: "pH " + r.PH.Words() + " is above " + limit.Words() + ".", Source: reason.Source}, reason}, true
}

// IronRate is the iron that one spray brings, lb Fe per 1000 sq ft: 2 oz of iron
// sulfate, a fifth of it iron.
const IronRate agronomy.PerThousand = 2.0 / 16 * 0.2 // [nc-centipede] [atomic-weights]
