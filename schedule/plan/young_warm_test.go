package plan

import (
	"slices"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// The 0.5 lb of a first season hold for warm-season grass sown before a winter until about
// June; from then on it has been mown and takes full doses, common practice, no source. A
// stand of this spring stays on small ones all summer.
func TestFullDosesFromJune(t *testing.T) {
	for _, c := range []struct{ state, zone, grass, start, seeded string }{
		{"FL", "9a", "bermudagrass", "2026-08-25", "2026-09-01"},
		{"TX", "8a", "bermudagrass", "2026-09-22", "2026-09-29"},
		{"LA", "9a", "zoysiagrass", "2026-09-22", "2026-08-18"},
		{"KS", "6a", "zoysiagrass", "2026-09-01", "2026-08-10"},
		{"TX", "8a", "bermudagrass", "2027-04-15", "2027-05-10"},
		{"TX", "8a", "St. Augustinegrass", "2027-03-20", "2027-02-13"},
	} {
		site := sown(t, c.state, c.zone, c.grass, c.start, c.seeded)
		site.Through = schedule.Date{}
		site.Materials = []material.Material{{ID: "urea", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 46}, Pack: 50, OnHand: 1}}
		site.Areas[0].Soil.Phosphorus = agronomy.Reading{Given: true, PPM: 200}
		site.Areas[0].Soil.Potassium = agronomy.Reading{Given: true, PPM: 300}
		p := plan(t, site)
		spring := mustDate(t, c.seeded).Year == 2027
		full, doses := 0, 0
		for _, e := range ofKind(p, schedule.Nitrogen) {
			if e.Date.Year != 2027 {
				continue
			}
			doses++
			if e.N <= 0.5+1e-9 {
				continue
			}
			full++
			if spring || e.Date.Month < 6 {
				t.Errorf("%v: %s brings %.2f lb N on %s", c, e.ID, float64(e.N), e.Date)
			}
		}
		if doses == 0 || !spring && full == 0 {
			t.Errorf("%v: %d doses, %d of them full", c, doses, full)
		}
		established := *site
		established.Areas = slices.Clone(site.Areas)
		established.Areas[0].Seeded = schedule.Date{}
		usual := 0
		for _, e := range ofKind(plan(t, &established), schedule.Nitrogen) {
			if e.Date.Year == 2027 {
				usual++
			}
		}
		if !spring && doses > usual+1 {
			t.Errorf("%v: %d doses, a grown stand has %d", c, doses, usual)
		}
	}
}
