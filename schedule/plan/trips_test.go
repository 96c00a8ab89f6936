package plan

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// lawn is an established lawn with nothing in the shed, from before its autumn.
func lawn(t *testing.T, grass string, size agronomy.SquareFeet, p, k agronomy.PPM) *schedule.Site {
	t.Helper()
	site := sown(t, "OH", "6a", grass, "2026-08-01", "2026-09-01")
	a := &site.Areas[0]
	a.Seeded, a.Size, a.Soil.Phosphorus.PPM, a.Soil.Potassium.PPM, a.Soil.Magnesium.PPM = schedule.Date{}, size, p, k, 200
	return site
}

// Nitrogen and potash are one product and one walk where a lawn food brings both, and
// a year of feeding takes few products. Five or six product days are normal. [common]
func TestOneProductForNitrogenAndPotash(t *testing.T) {
	for _, k := range []agronomy.PPM{38, 70, 95} {
		for _, grass := range []string{"tall fescue", "kentucky bluegrass"} {
			p := plan(t, lawn(t, grass, 2600, 80, k))
			days, products := map[schedule.Date]bool{}, map[string]bool{}
			for _, e := range p.Entries {
				if e.Material != "" {
					days[e.Date], products[e.MaterialName] = true, true
				}
			}
			for _, e := range p.Entries { // a lawn food brings most of it: what is left has no day of its own
				alone := !slices.ContainsFunc(p.Entries, func(o schedule.Entry) bool { return o.ID != e.ID && o.Material != "" && o.Date == e.Date })
				if k >= 95 && e.Kind == schedule.Potassium && alone {
					t.Errorf("%s, %v ppm K: a walk for %s alone, where a lawn food brings potash", grass, k, e.Title)
				}
			}
			if len(days) > 5 || len(products) > 3 {
				t.Errorf("%s, %v ppm K: %d product days, %d products", grass, k, len(days), len(products))
			}
		}
	}
}

// Straight potash or phosphate under 0.3 lb/1000 sq ft is no walk of its own, and what
// is not planned is told. [common]
func TestNoWalkForATrace(t *testing.T) {
	for _, s := range situations {
		for _, grass := range []string{"tall fescue", "bermudagrass"} {
			for _, e := range plan(t, s.site(t, "OH", "6a", grass), s.book...).Entries {
				if (e.Kind == schedule.Potassium || e.Kind == schedule.Phosphorus) && e.State == schedule.Planned && e.K2O+e.P2O5 < 0.29 {
					t.Errorf("%s, %s: %s brings %.2f lb", s.name, grass, e.ID, float64(e.K2O+e.P2O5))
				}
			}
		}
	}
}

// Every job is an amount that can be weighed, its rate that of the amount, and no
// text speaks of under a tenth of a pack.
func TestSayableAmounts(t *testing.T) {
	for _, size := range []agronomy.SquareFeet{300, 900, 2600, 14000, 60000} {
		p := plan(t, lawn(t, "tall fescue", size, 10, 60))
		chalk, sodic, stone := lawn(t, "tall fescue", size, 10, 60), lawn(t, "tall fescue", size, 80, 200), lawn(t, "tall fescue", size, 80, 200)
		chalk.Areas[0].Soil.PH, chalk.Areas[0].Soil.LowerPH, chalk.Areas[0].Soil.TargetPH = 7.6, true, 6.5
		sodic.Areas[0].Soil.CEC, sodic.Areas[0].Soil.Sodium, sodic.Areas[0].Soil.PH = 15, agronomy.Reading{PPM: 900, Given: true}, 8.2
		stone.Areas[0].Soil.PH = 5.3
		found := map[schedule.Kind]bool{}
		for _, s := range []*schedule.Site{lawn(t, "tall fescue", size, 10, 60), chalk, sodic, stone} {
			for _, e := range plan(t, s).Entries {
				if e.Pounds == 0 {
					continue
				}
				found[e.Kind] = true
				if why := unsayable(&e, size, false); why != "" {
					t.Errorf("%v sq ft: %s", size, why)
				}
			}
		}
		for _, k := range []schedule.Kind{schedule.Nitrogen, schedule.Lime, schedule.Sulfur, schedule.Gypsum, schedule.Iron} {
			if !found[k] {
				t.Errorf("%v sq ft: no job of %s", size, k)
			}
		}
		if all := fmt.Sprint(p.Entries, p.InTheShed); strings.Contains(all, "under 0.1 pack") {
			t.Errorf("%v sq ft: under 0.1 pack", size)
		}
	}
}

// Lime a little over the most at once is one dressing, not two thin ones, and what the
// rounding of dressings leaves is nothing that is still wanted. [common]
func TestLimeALittleOverOneDressing(t *testing.T) {
	for _, ph := range []agronomy.PH{5.2, 5.3, 5.4, 5.5, 5.6, 5.7} {
		for _, size := range []agronomy.SquareFeet{900, 2600, 9000} {
			site := lawn(t, "tall fescue", size, 80, 200)
			site.Areas[0].Soil.PH = ph
			p := plan(t, site)
			var need agronomy.PerThousand
			for _, n := range p.Areas[0].Needs {
				if n.Kind == schedule.Lime {
					need = n.Total
				}
			}
			dressings := 0
			for _, e := range p.Entries {
				if e.Kind == schedule.Lime {
					dressings++
				}
			}
			if want := max(1, int(math.Ceil(float64(need-5)/50))); dressings > want || need < 55 && dressings != 1 {
				t.Errorf("pH %v, %v sq ft: %d dressings of %.1f lb in all", ph, size, dressings, float64(need))
			}
		}
	}
}

// A home lawn is not sent for a 50 lb pack to spread a few pounds, nor a field for
// dozens of small ones; and no brand stands on the shelf.
func TestPacksFitTheLawn(t *testing.T) {
	for _, e := range plan(t, lawn(t, "tall fescue", 1000, 80, 60)).Entries {
		if e.ToBuy && e.Dose.Material.Kind == material.FertilizerMaterial && e.Packs < 0.1 {
			t.Errorf("1000 sq ft: %.1f lb of a pack of %v lb of %s", float64(e.Pounds), e.Dose.Material.Pack, e.MaterialName)
		}
	}
	for _, e := range plan(t, lawn(t, "tall fescue", 60000, 80, 60)).Entries {
		if e.ToBuy && e.Dose.Material.Pack < 40 && e.Packs > 3 {
			t.Errorf("60,000 sq ft: %.1f packs of %v lb of %s", e.Packs, e.Dose.Material.Pack, e.MaterialName)
		}
	}
}
