package plan

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// What holds a pesticide is planned on no stand, though it is at hand and would
// fit best, and the program says so once; the seedlings' jobs keep it off.
func TestPesticideIsNeverPlanned(t *testing.T) {
	for _, s := range situations {
		for _, pesticide := range []bool{false, true} {
			site := s.site(t, "OH", "6a", "kentucky bluegrass")
			site.Materials = []material.Material{
				{ID: "feed", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 24}, Pack: 40, OnHand: 90, Pesticide: pesticide},
				{ID: "stone", Kind: material.LimeMaterial, CCE: 90, Pack: 40, OnHand: 90, Pesticide: pesticide},
				{ID: "acid", Kind: material.SulfurMaterial, Sulfur: 90, Pack: 40, OnHand: 90, Pesticide: pesticide},
			}
			p := plan(t, site)
			used := slices.ContainsFunc(p.Entries, func(e schedule.Entry) bool { return e.Material != "" && !e.ToBuy })
			if used == pesticide {
				t.Errorf("%s: pesticide %t, planned %t", s.name, pesticide, used)
			}
			said := 0
			for _, a := range p.Assumptions {
				if strings.HasPrefix(a, "24-0-0: never planned") {
					said++
				}
			}
			if pesticide && said != 1 || !pesticide && said != 0 {
				t.Errorf("%s: said %d times: %q", s.name, said, p.Assumptions)
			}
			if i := slices.IndexFunc(p.Supplies(), func(s schedule.Supply) bool { return s.Material == "feed" }); pesticide && !strings.Contains(p.Supplies()[i].Note, "never planned") {
				t.Errorf("%s: the list of materials does not say why it is not used", s.name)
			}
			for _, e := range p.Entries {
				tells := (e.Kind.Sows() || e.Rate > 0) && e.State == schedule.Planned
				young := tells && (s.seeded != 0 && e.Earliest.Before(site.Areas[0].Seeded.AddMonths(12)) ||
					s.over != 0 && e.Earliest.Before(oversown(p).AddDays(84))) // twelve weeks of seedlings [common]
				old := s.over == 0 || e.Earliest.After(oversown(p).AddMonths(12)) // between the two it depends on the job's other days
				if off := slices.Contains(e.Cautions, material.OffSeedlings().Text); off != young && (young || old) {
					t.Errorf("%s: %s keeps weed killer off: %t", s.name, e.ID, off)
				}
			}
		}
	}
}

// A pesticide with nutrients that did go down counts like any other material.
func TestPesticideOnRecordCounts(t *testing.T) {
	site := bluegrass(t)
	site.Materials = append(site.Materials, material.Material{ID: "weedfeed", Kind: material.FertilizerMaterial,
		Analysis: agronomy.Analysis{N: 28, K2O: 3}, Pack: 15, OnHand: 1, Pesticide: true})
	p := plan(t, site, schedule.Done{Line: 2, Date: mustDate(t, "2026-09-20"), Area: "a", Job: "nitrogen", Material: "weedfeed", Weight: 6})
	e := p.Entries[slices.IndexFunc(p.Entries, func(e schedule.Entry) bool { return e.State == schedule.Finished })]
	if e.Material != "weedfeed" || e.N < 0.839 || e.N > 0.841 { // 6 lb × 28 % on 2000 sq ft
		t.Errorf("%s brings %.2f lb N of %s", e.ID, float64(e.N), e.Material)
	}
}
