package plan

import (
	"slices"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// A material that is not to be bought again is used up to what is on hand and no further;
// the rest of the lime comes from another stone.
func TestNothingIsPlannedBeyondWhatIsNotBoughtAgain(t *testing.T) {
	own := []string{"feed", "starter", "potash", "stone", "acid", "gypsum", "iron"}
	used, shared := map[string]int{}, 0
	for _, s := range situations {
		if s.soil() == nil || len(s.book) > 0 {
			continue
		}
		for _, packs := range []float64{0.05, 0.4, 1, 2, 6} {
			for _, salt := range []bool{false, true} {
				site := s.site(t, "OH", "6a", "Kentucky bluegrass")
				if salt { // sodic, alkaline and to be acidified: gypsum, sulfur, iron
					r := *site.Areas[0].Soil
					r.PH, r.Sodium, r.CEC, r.LowerPH, r.Texture, r.Buffer = 7.4, agronomy.Reading{Given: true, PPM: 600}, 9, true, agronomy.Loam, agronomy.Buffer{}
					site.Areas[0].Soil = &r
				}
				site.Materials = []material.Material{
					{ID: "feed", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 24, K2O: 10}, Pack: 10, OnHand: packs, NoRebuy: true},
					{ID: "starter", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 18, P2O5: 24, K2O: 12}, Pack: 5, OnHand: packs, NoRebuy: true},
					{ID: "potash", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{K2O: 50}, Pack: 5, OnHand: packs, NoRebuy: true},
					{ID: "stone", Kind: material.LimeMaterial, CCE: 90, Pack: 30, OnHand: packs, NoRebuy: true},
					{ID: "acid", Kind: material.SulfurMaterial, Sulfur: 90, Pack: 5, OnHand: packs, NoRebuy: true},
					{ID: "gypsum", Kind: material.GypsumMaterial, Sulfur: 17, Pack: 40, OnHand: packs, NoRebuy: true},
					{ID: "iron", Kind: material.IronMaterial, Iron: 20, Pack: 0.3, OnHand: packs, NoRebuy: true},
				}
				p := plan(t, site)
				stones := map[string]bool{}
				for _, e := range p.Entries {
					used[e.Material]++
					if e.Kind == schedule.Lime {
						stones[e.Material] = true
					}
				}
				if stones["stone"] && len(stones) > 1 {
					shared++
				}
				for _, supply := range p.Supplies() {
					if slices.Contains(own, supply.Material) && supply.Packs > supply.OnHand*1.02+1e-9 {
						t.Errorf("%s, %.2f packs: %.2f of %s taken: %s", s.name, packs, supply.Packs, supply.Material, supply.Note)
					}
				}
			}
		}
	}
	for _, m := range own {
		if used[m] == 0 {
			t.Errorf("%s is never used", m)
		}
	}
	if shared == 0 {
		t.Error("no lime begins with the stone on hand and goes on with another")
	}
}

// Areas that draw on one bag take no more than is in it, and a stone that lacks the
// magnesium that the soil wants is at most half of the lime, also if none is bought.
func TestAreasShareWhatIsNotBoughtAgain(t *testing.T) {
	site := situations[0].site(t, "OH", "6a", "Kentucky bluegrass")
	r := *site.Areas[0].Soil
	r.PH, r.Sodium, r.CEC, r.LowerPH, r.Texture, r.Buffer = 7.4, agronomy.Reading{Given: true, PPM: 600}, 9, true, agronomy.Loam, agronomy.Buffer{}
	site.Areas[0].Soil = &r
	for _, id := range []string{"b", "c"} {
		a := site.Areas[0]
		a.ID, a.Name = id, "Area "+id
		site.Areas = append(site.Areas, a)
	}
	site.Materials = []material.Material{
		{ID: "acid", Kind: material.SulfurMaterial, Sulfur: 90, Pack: 5, OnHand: 8, NoRebuy: true},
		{ID: "gypsum", Kind: material.GypsumMaterial, Sulfur: 17, Pack: 40, OnHand: 6, NoRebuy: true},
		{ID: "iron", Kind: material.IronMaterial, Iron: 20, Pack: 0.3, OnHand: 1, NoRebuy: true},
	}
	for _, s := range plan(t, site).Supplies() {
		if s.Packs > s.OnHand*1.02+1e-9 && slices.ContainsFunc(site.Materials, func(m material.Material) bool { return m.ID == s.Material }) {
			t.Errorf("%.2f packs of %s, %.2f on hand", s.Packs, s.Material, s.OnHand)
		}
	}
	site = situations[0].site(t, "OH", "6a", "Kentucky bluegrass")
	r = *site.Areas[0].Soil
	r.PH, r.Buffer, r.Magnesium = 5.2, agronomy.Buffer{}, agronomy.Reading{Given: true, PPM: 20}
	site.Areas[0].Soil = &r
	site.Materials = []material.Material{{ID: "stone", Kind: material.LimeMaterial, ECCE: 85, Pack: 40, OnHand: 9, NoRebuy: true}}
	var stone, all float64
	for _, e := range plan(t, site).Entries {
		if e.Kind == schedule.Lime {
			all += float64(e.Pounds)
			if e.Material == "stone" {
				stone += float64(e.Pounds)
			}
		}
	}
	if stone == 0 || stone > 0.52*all {
		t.Errorf("%.0f lb of ordinary stone in %.0f lb", stone, all)
	}
}
