package plan

import (
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
)

// A lawn that gets about a pound of nitrogen in a year gets it in September: University of
// Illinois, Fertilizing, 1995 (one pound: early September; two: early May and early
// September); Eckert, K-State (low care: September). No published calendar has a spring
// dose of a quarter of a pound.
func TestASmallYearIsOneFeeding(t *testing.T) {
	for _, c := range []struct {
		care  nutrient.Care
		start string
		many  int // feedings in the turf year that begins in 2026: a program that starts in spring still gives the spring its part
	}{
		{nutrient.LowCare, "2026-04-01", 1},
		{nutrient.LowCare, "2026-08-10", 1},
		{nutrient.MediumCare, "2026-08-10", 3},
	} {
		site := lawn(t, "fine fescue", 2000, 60, 200)
		if c.care == nutrient.MediumCare {
			site = lawn(t, "kentucky bluegrass", 2000, 60, 200)
		}
		site.Start, site.Areas[0].Sampled = mustDate(t, c.start), mustDate(t, "2026-02-01")
		site.Areas[0].Care, site.Areas[0].Clippings, site.Areas[0].Soil.PH = c.care, true, 6.5
		p, n := plan(t, site), 0
		var sum agronomy.PerThousand
		for _, e := range p.Entries {
			if e.N > 0 && e.Season == 2026 {
				n++
				sum += e.N
			}
			if c.care == nutrient.LowCare && e.Kind == schedule.Nitrogen && e.Season >= 2026 && (e.Date.Month < 8 || e.Date.Month > 10 || e.N < 0.6) {
				t.Errorf("low care from %s: %.2f lb N on %s", c.start, e.N, e.Date)
			}
		}
		if n != c.many || sum < 0.6 {
			t.Errorf("%s care from %s: %d feedings, %.2f lb N", c.care, c.start, n, sum)
		}
	}
}
