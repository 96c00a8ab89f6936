package plan

import (
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
)

// sown is a lawn with nothing in the shed, sown on one day and planned from
// another for a year, at medium care with its clippings left.
func sown(t *testing.T, state, zone, grass, start, seeded string) *schedule.Site {
	t.Helper()
	site := situations[0].site(t, state, zone, grass)
	site.Start = mustDate(t, start)
	site.Through, site.Materials = site.Start.AddDays(364), nil
	a := &site.Areas[0]
	a.Seeded, a.Sampled, a.Care, a.Clippings = mustDate(t, seeded), site.Start.AddDays(-60), nutrient.MediumCare, true
	a.Soil.PH = 6.6 // no lime between the feedings
	return site
}

// fed lists the entries that bring at least a tenth of a pound of nitrogen.
func fed(p *schedule.Program) (out []schedule.Entry) {
	for _, e := range p.Entries {
		if e.N >= 0.1 {
			out = append(out, e)
		}
	}
	return out
}

// With the seed go 1 to 1.5 lb P₂O₅ where phosphorus is low [purdue-p]
// [unl-renovate], and at most 1 lb N [uc-starter].
func TestStarterBringsItsPhosphorus(t *testing.T) {
	for _, grass := range []string{"kentucky bluegrass", "tall fescue", "perennial ryegrass"} {
		site := sown(t, "PA", "6b", grass, "2026-08-20", "2026-09-01")
		for range 2 {
			e := entry(t, plan(t, site), "a/starter/1")
			if e.P2O5 < 1-0.02 || e.P2O5 > 1.5+1e-9 || e.N > 1+1e-9 {
				t.Errorf("%s: %s brings %.2f lb P₂O₅ and %.2f lb N", grass, e.MaterialName, float64(e.P2O5), float64(e.N))
			}
			site.Materials = []material.Material{{ID: "starter", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 18, P2O5: 24, K2O: 12}, SlowShare: 0.4, Pack: 25, OnHand: 2}}
		}
	}
}

// A starter that was not put down comes at the first mowing, two weeks after most
// of the stand is up [common], and its potash no sooner; the feeding after it
// still has its day that autumn.
func TestStarterAtTheFirstMowing(t *testing.T) {
	site := sown(t, "OH", "6a", "tall fescue", "2026-09-12", "2026-08-24")
	p := plan(t, site)
	e := entry(t, p, "a/starter/1")
	if first := p.Cases[0].Emerged().AddDays(14); e.Date.DaysFrom(first) > 7 {
		t.Errorf("the starter comes on %s, and the first mowing on %s", e.Date, first)
	}
	if k := entry(t, p, "a/potassium/1"); k.Date.Before(e.Date) {
		t.Errorf("potash on %s, before the starter on %s", k.Date, e.Date)
	}
	if all := fed(p); all[1].Date.After(mustDate(t, "2026-11-01")) {
		t.Errorf("after the starter nothing until %s", all[1].Date)
	}
}

// The first feeding comes four to six weeks after most of the stand is up
// [common], counted from the grass that makes up most of it, and the
// spring does not wait for May.
func TestYoungStandIsFedInTime(t *testing.T) {
	for grass, weeks := range map[string]int{"kentucky bluegrass": 7, "tall fescue": 6} { // from sowing
		p := plan(t, sown(t, "PA", "6b", grass, "2026-08-20", "2026-09-01"))
		all := fed(p)
		if d := all[1].Date.DaysFrom(mustDate(t, "2026-09-01")); d > 7*weeks+3 || d < 28 {
			t.Errorf("%s: first fed %d days after sowing", grass, d)
		}
		for i, e := range all {
			if e.Date.Year == 2027 {
				if e.Date.After(mustDate(t, "2027-04-30")) {
					t.Errorf("%s: nothing from %s to %s", grass, all[i-1].Date, e.Date)
				}
				break
			}
		}
	}
	// Sown in late April, a stand is fed again before the summer, not after 116 days.
	all := fed(plan(t, sown(t, "PA", "6b", "tall fescue", "2027-04-20", "2027-04-25")))
	if d := all[1].Date.DaysFrom(all[0].Date); d > 60 {
		t.Errorf("sown in April: %d days from %s to %s", d, all[0].ID, all[1].ID)
	}
}

// Fine fescue at low care gets 1 to 1.5 lb N in its first year, not the 2 to 3 lb
// of others. [common]
func TestLowCareGrassStaysLow(t *testing.T) {
	site := sown(t, "PA", "6b", "fine fescue", "2026-08-20", "2026-09-01")
	site.Areas[0].Care = nutrient.LowCare
	site.Through = mustDate(t, "2027-07-15")
	sum := 0.0
	for _, e := range plan(t, site).Entries {
		sum += float64(e.N)
	}
	if sum < 0.8 || sum > 1.5+1e-9 {
		t.Errorf("%.2f lb N in the first year", sum)
	}
}

// After a dormant sowing the starter comes when growth begins, and no dose of that
// spring and summer brings more than half a pound. [common]
func TestDormantSowingIsFedFromGreenUp(t *testing.T) {
	site := sown(t, "PA", "6b", "tall fescue", "2026-09-01", "2026-11-25")
	site.Areas[0].Dormant = true
	p := plan(t, site)
	e, c := entry(t, p, "a/starter/1"), p.Cases[0]
	if d := e.Date.DaysFrom(c.Sprouts()); d < 0 || d > 21 || c.Sprouts().Before(mustDate(t, "2027-03-01")) {
		t.Errorf("the starter comes on %s, growth begins on %s", e.Date, c.Sprouts())
	}
	for _, e := range fed(p)[1:] {
		if e.N > 0.5+1e-9 && e.Date.Before(mustDate(t, "2027-08-01")) {
			t.Errorf("%s on %s brings %.2f lb N", e.ID, e.Date, float64(e.N))
		}
	}
}

// A stand is new for phosphorus until its first season of feeding ends, and needs as
// much as at sowing, on top of the ground no more than 2 lb P₂O₅ in a year. [common]
func TestNewForPhosphorusUntilTheSeasonEnds(t *testing.T) {
	need := func(start string) float64 {
		return float64(plan(t, sown(t, "PA", "6b", "tall fescue", start, "2026-09-01")).Cases[0].NeedP.Year)
	}
	if up, later := need("2026-09-20"), need("2027-03-01"); up <= later || up > 2 {
		t.Errorf("%.1f lb P₂O₅ three weeks after sowing, %.1f the next March", up, later)
	}
}
