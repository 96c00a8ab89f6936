package plan

import (
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

// Where the budget does not reach, what serves the more important kind of job is
// bought first, by whole packs, and the jobs that must wait are named; the plan stays.
func TestBudgetBuysWhatMattersFirst(t *testing.T) {
	site := lawnWith(t, "kentucky bluegrass", func(r *agronomy.Report) {
		r.PH, r.Buffer, r.Magnesium = 5.2, agronomy.Buffer{}, agronomy.Reading{Given: true, PPM: 200}
		r.Phosphorus.PPM, r.Potassium.PPM = 70, 50
	})
	site.Materials = []material.Material{
		{ID: "potash", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{K2O: 50}, Pack: 5, OnHand: 0.01, Price: 9},
		{ID: "feed", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 24}, SlowShare: 0.3, Lasts: 8, Pack: 12, OnHand: 0.01, Price: 11},
		{ID: "stone", Kind: material.LimeMaterial, ECCE: 85, Pack: 40, Price: 7},
	}
	without := plan(t, site)
	if _, ok := without.Spending(without.Supplies()); ok {
		t.Error("spending without a budget")
	}
	all := map[string]int{}
	spent := 0.0
	for _, s := range without.Supplies() {
		all[s.Material], spent = s.Buy, spent+s.Cost
	}
	if all["stone"] < 2 || all["feed"] == 0 || all["potash"] == 0 {
		t.Fatalf("to buy: %v", all)
	}
	for _, c := range []struct {
		budget              float64
		stone, feed, potash int
		reaches             bool
	}{
		{spent, all["stone"], all["feed"], all["potash"], true},
		{spent - 0.01, all["stone"], all["feed"], all["potash"] - 1, false},
		{7*float64(all["stone"]) + 11, all["stone"], 1, 0, false},
		{7.5, 1, 0, 0, false}, // what is left of the budget pays for no other pack
		{6.99, 0, 0, 0, false},
	} {
		site.Crew.Budget = c.budget
		p := plan(t, site)
		s, ok := p.Spending(p.Supplies())
		if !ok || len(s.Order) != 3 || s.Order[0].Material != "stone" || s.Order[1].Material != "feed" || s.Order[2].Material != "potash" {
			t.Fatalf("budget %v: %+v", c.budget, s)
		}
		paid := []int{s.Order[0].Paid, s.Order[1].Paid, s.Order[2].Paid}
		if paid[0] != c.stone || paid[1] != c.feed || paid[2] != c.potash || s.Reaches() != c.reaches || (s.Words() == "") != c.reaches {
			t.Errorf("budget %v pays for %v, reaches %v: %s", c.budget, paid, s.Reaches(), s.Words())
		}
		for _, o := range s.Order {
			if (o.Paid < o.Packs) != (len(o.Waits) > 0) {
				t.Errorf("budget %v: %d of %d packs of %s, waiting %v", c.budget, o.Paid, o.Packs, o.Material, o.Waits)
			}
		}
		if !c.reaches && !strings.Contains(s.Words(), "potassium on") {
			t.Errorf("budget %v: %s", c.budget, s.Words())
		}
		if len(p.Entries) != len(without.Entries) {
			t.Errorf("budget %v: %d jobs and notices, %d without", c.budget, len(p.Entries), len(without.Entries))
		}
	}
	site.Materials = site.Materials[1:] // potash of the trade, which has no price
	site.Crew.Budget = 1000
	p := plan(t, site)
	if s, ok := p.Spending(p.Supplies()); !ok || len(s.Order) != 3 || s.Order[2].Priced || s.Cost >= spent {
		t.Errorf("without a price: %+v", s)
	}
}
