package plan

import (
	"fmt"
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

// Every feeding is an amount that can be weighed, its rate that of the amount, and no
// text speaks of under a tenth of a pack.
func TestSayableAmounts(t *testing.T) {
	for _, size := range []agronomy.SquareFeet{300, 900, 2600, 14000, 60000} {
		p := plan(t, lawn(t, "tall fescue", size, 10, 60))
		for _, e := range p.Entries {
			if e.Kind == schedule.Lime || e.Kind == schedule.Sulfur || e.Pounds == 0 {
				continue
			}
			if why := unsayable(&e, size, false); why != "" {
				t.Errorf("%v sq ft: %s", size, why)
			}
		}
		if all := fmt.Sprint(p.Entries, p.InTheShed); strings.Contains(all, "under 0.1 pack") {
			t.Errorf("%v sq ft: under 0.1 pack", size)
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
