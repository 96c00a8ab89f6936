package plan

import (
	"strings"
	"testing"

	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
)

// Where the law shuts phosphorus, the seed still gets the nitrogen that goes with seed
// (University of California starter rates, University of Nebraska-Lincoln: no more than
// 1 lb N), and no sentence says that phosphorus comes: Virginia allows it on a new lawn,
// not on turf sown over (Va. Code § 3.2-3607).
func TestStarterWithoutLawfulPhosphorus(t *testing.T) {
	site := overseeded(t, "tall fescue", "2026-08-10", "2026-09-04")
	site.Place.State, site.Place.Hardiness = "VA", "7b"
	a := &site.Areas[0]
	a.Soil, a.Sampled, a.Received = nil, schedule.Date{}, schedule.Date{}
	p := plan(t, site)
	e := entry(t, p, "a/starter/1")
	if e.P2O5 != 0 || e.N < 0.3 || e.N > 0.5 {
		t.Errorf("the starter brings %.2f lb N and %.2f lb P2O5", e.N, e.P2O5)
	}
	if !strings.Contains(e.Because, "the law here shuts phosphorus") {
		t.Errorf("because %s", e.Because)
	}
	for _, a := range p.Assumptions {
		if strings.Contains(a, "usual phosphorus") {
			t.Errorf("assumed: %s", a)
		}
	}
}

// The starter of an overseeding alone never brings more nitrogen than the old grass is to
// have in the year: buffalograss lives on 0.5 to 2 lb/1000 sq ft (University of Illinois,
// Fertilizing, 1995), less what clippings bring. The ledger finds no limit passed.
func TestStarterOfAnOverseedingWithinTheYear(t *testing.T) {
	site := overseeded(t, "buffalograss", "2026-05-10", "2026-06-10")
	site.Place.State, site.Place.Hardiness = "SC", "8b"
	a := &site.Areas[0]
	a.Clippings, a.Care, a.Soil.Phosphorus.PPM, a.Soil.Potassium.PPM = true, nutrient.LowCare, 60, 38
	p := plan(t, site)
	if e := entry(t, p, "a/starter/1"); e.N <= 0.2 || e.N > 0.45 {
		t.Errorf("the starter brings %.2f lb N", e.N)
	}
	for _, l := range p.Ledger(site.Start).Areas[0].Limits {
		if l.Passed {
			t.Errorf("%s: %.2f lb planned, %.2f lb at most", l.What, l.Most, l.Limit)
		}
	}
}
