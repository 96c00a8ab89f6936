package plan

import (
	"strings"
	"testing"

	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
)

// Warm-season grass is fed in summer (University of Georgia: centipedegrass the second
// time in July or August; normal highs there pass 85 °F), so no caution may shut every day
// of its feedings: it says to keep off the noon heat. Cool-season grass is not
// fed in heat, and its caution shuts hot days altogether.
func TestCautionOfHeatLeavesADay(t *testing.T) {
	for _, c := range []struct{ grass, state, zone, says, not string }{
		{"zoysiagrass", "GA", "8a", "nor in noon heat", "nor over 85"},
		{"tall fescue", "OH", "6a", "nor over 85 °F", "noon heat"},
	} {
		site := lawn(t, c.grass, 3000, 60, 200)
		site.Start, site.Place.State, site.Place.Hardiness = mustDate(t, "2026-03-01"), c.state, c.zone
		site.Areas[0].Care = nutrient.HighCare
		fed, hot := 0, 0
		for _, e := range ofKind(plan(t, site), schedule.Nitrogen) {
			fed++
			if e.Date.Month == 7 || e.Date.Month == 8 && e.Date.Day < 20 {
				hot++
			}
			if !caution(e, c.says) || strings.Contains(strings.Join(e.Cautions, " "), c.not) {
				t.Errorf("%s, %s: %q", c.grass, e.Date, e.Cautions)
			}
		}
		if fed == 0 || hot == 0 && c.grass == "zoysiagrass" {
			t.Errorf("%s: %d feedings, %d in the heat: the case tells nothing", c.grass, fed, hot)
		}
	}
}
