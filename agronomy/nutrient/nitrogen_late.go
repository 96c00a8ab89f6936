package nutrient

import (
	"fmt"

	"swardbook/agronomy"
	"swardbook/agronomy/soil"
)

// LateNitrogen is the last dose of the year on cool-season grass, when the
// tops have all but stopped and the roots still take it up.
type LateNitrogen struct {
	Wanted    bool
	Low, High agronomy.PerThousand // lb N/1000 sq ft
	Why       []agronomy.Reason
}

// What holds a late dose, as the planner turns it into days.
const (
	LateGrowth         = 0.2 // [soldat-fall] growth potential; at 50 °F it is 0.19, where a fifth was taken up
	LateDaysToFreeze   = 21  // [common] before the early ground freeze
	LateFirstFallMowed = 3   // [common] mowings that a stand sown this year must have had
)

// LateNitrogenFor gives the late dose by hardiness zone; 0 is an unknown zone
// and gets the careful amount.
func LateNitrogenFor(s agronomy.Season, zone int, t agronomy.Texture) LateNitrogen {
	if s == agronomy.Warm {
		return LateNitrogen{Why: []agronomy.Reason{{Text: "No late nitrogen on warm-season grass: it goes dormant and cannot use it.", Source: "common"}}}
	}
	late := LateNitrogen{Wanted: true, Low: 0.5, High: 1.0, // [purdue-latefall]
		Why: []agronomy.Reason{{Text: "In zone 6 and milder, 0.5 to 1.0 lb N while the lawn is green and mowing is about over. Kansas and the Carolinas give 1 lb in November; Ohio still teaches it; Nebraska gives 0.25 to 0.3 lb; Minnesota stops in mid October.", Source: "purdue-latefall, ksu-eckert, nc-tallfescue, osu-late-2015, unl-fech-2018, umn-2012"}}}
	if zone <= 5 {
		late.Low, late.High = 0.3, 0.5 // [unl-fech-2018]
		late.Why = []agronomy.Reason{{Text: "In zone 5 and colder at most 0.3 to 0.5 lb N: Nebraska gives 0.25 to 0.3 lb, and Minnesota stops in mid October.", Source: "unl-fech-2018, umn-2012"}}
		if zone == 0 {
			late.Why = append(late.Why, agronomy.Reason{Text: "No hardiness zone is given: the amount for a cold place is taken.", Source: "common"})
		}
	}
	late.Why = append(late.Why, agronomy.Reason{Text: "At Madison, Wisconsin, grass took up 80 % of quick nitrogen put on in mid September, 20 % in mid October and 10 % in mid November: the temperature decides, not the date.", Source: "soldat-fall, bauer-2012"})
	if soil.Sandy(t) {
		late.High = late.Low
		late.Why = append(late.Why, agronomy.Reason{Text: fmt.Sprintf("On %s quick nitrogen washes through in winter: the low end, and not as a quick source.", t), Source: "common"})
	}
	return late
}

// LateCustom is a state's usual late dose.
func LateCustom(state string) (low, high agronomy.PerThousand, source string, ok bool) {
	switch state {
	case "IN":
		return 0.5, 1.0, "purdue-latefall", true // [purdue-latefall]
	case "KS":
		return 1.0, 1.5, "ksu-eckert", true // [ksu-eckert]
	case "NE":
		return 0.25, 0.3, "unl-fech-2018", true // [unl-fech-2018]
	case "NC":
		return 1.0, 1.0, "nc-tallfescue", true // [nc-tallfescue]
	case "AZ":
		return 0.75, 1.0, "az-1995", true // [az-1995]
	case "MN":
		return 0, 0, "umn-2012", true // [umn-2012] none after mid October
	}
	return 0, 0, "", false
}
