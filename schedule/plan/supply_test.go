package plan

import (
	"fmt"
	"strings"
	"testing"

	"swardbook/schedule"
)

// The first job that the shed does not reach for begins with the purchase, and
// no other does.
func TestPurchaseComesWithTheFirstJobThatRunsShort(t *testing.T) {
	site := bluegrass(t)
	site.Areas[0].Soil.Magnesium.PPM = 200 // so that any stone will do
	var need []float64
	for _, e := range plan(t, site).Entries {
		if e.Kind == schedule.Lime {
			need = append(need, e.Packs)
		}
	}
	if len(need) < 2 {
		t.Fatalf("%d dressings", len(need))
	}
	for first, onHand := range []float64{need[0] - 0.1, need[0]} {
		site.Materials[0].OnHand = onHand
		p := plan(t, site)
		for n := range need {
			steps := entry(t, p, fmt.Sprintf("a/lime/%d", n+1)).Steps
			if buys := strings.HasPrefix(steps[0], "Buy "); buys != (n == first) || strings.Contains(strings.Join(steps[1:], " "), "Buy ") {
				t.Errorf("%.1f packs of limestone on hand: dressing %d begins %q", onHand, n+1, steps[0])
			}
		}
	}
	site.Materials[0].OnHand = 1000
	if steps := entry(t, plan(t, site), "a/lime/1").Steps; strings.Contains(strings.Join(steps, " "), "Buy ") {
		t.Errorf("a full shed: %q", steps)
	}
}
