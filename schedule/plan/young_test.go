package plan

import (
	"slices"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// dormant is a site in Ohio 6a whose area is sown into cold soil in late
// November, when the ground may be frozen.
func dormant(t *testing.T) *schedule.Site {
	t.Helper()
	site := bluegrass(t)
	site.Start, site.Through = mustDate(t, "2026-09-01"), mustDate(t, "2027-07-15")
	site.Areas[0].Seeded, site.Areas[0].Dormant = mustDate(t, "2026-11-25"), true
	site.Materials = nil
	return site
}

// A starter that finds no day does not count as having brought anything, as where it was
// missed, or the crew is away as long as it would help.
func TestStarterLeftOutBringsNothing(t *testing.T) {
	missed := situations[3].site(t, "OH", "6a", "kentucky bluegrass")
	first := sown(t, "OH", "6a", "tall fescue", "2026-09-12", "2026-08-24") // the starter is the first job of all
	first.Areas[0].Soil.Phosphorus.PPM = 10
	first.Crew.Away = []schedule.Span{{From: first.Start, To: mustDate(t, "2026-11-10")}}
	sown := entry(t, plan(t, missed), "a/sow/1").Date
	for name, site := range map[string]*schedule.Site{"missed": missed, "first": first} {
		var book []schedule.Done
		if name == "missed" {
			book = []schedule.Done{{Line: 2, Date: sown, Area: "a", Job: "a/starter/1", Missed: true}}
		}
		p := plan(t, site, book...)
		if !slices.ContainsFunc(p.LeftOut, func(l schedule.LeftOut) bool { return l.Kind == schedule.Starter }) {
			t.Fatalf("%s: the starter is not left out", name)
		}
		var p2o5, n agronomy.PerThousand
		for _, e := range p.Entries {
			p2o5, n = p2o5+e.P2O5, n+e.N
		}
		c := p.Cases[0]
		if want := c.NeedP.Year; p2o5 < min(want, c.NeedP.Single)-schedule.LeastDose || c.StarterCounts {
			t.Errorf("%s: %.2f lb P₂O₅ is planned of %.2f, the starter left out", name, float64(p2o5), float64(want))
		}
		for _, w := range p.Areas[0].Needs {
			if w.Kind == schedule.Phosphorus && w.Total != c.NeedP.Year {
				t.Errorf("%s: %+v", name, w)
			}
		}
	}
	site := dormant(t)
	site.Materials = []material.Material{{ID: "starter", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 18, P2O5: 24, K2O: 12}, Pack: 25, OnHand: 0.5}}
	if !slices.ContainsFunc(plan(t, site).Entries, func(e schedule.Entry) bool { return e.Material == "starter" }) {
		t.Error("the bag of the starter that is left out is not used for anything else")
	}
}

// starterOut also finds a starter that its own rule left out, wherever it stands among
// what is left out.
func TestStarterOutByItsRule(t *testing.T) {
	pl, l := planning(t)
	c := &schedule.Case{Site: pl.site, Area: l.area, StarterCounts: true}
	out := schedule.LeftOut{Kind: schedule.Starter, Area: l.area.ID, Reason: "the law"}
	other, elsewhere := out, out
	other.Kind, elsewhere.Area = schedule.Lime, "b"
	for name, left := range map[string][]schedule.LeftOut{"first": {out}, "last": {other, elsewhere, out}, "": {other, elsewhere}} {
		got, is := pl.starterOut(c, schedule.Proposal{Left: left}, nil)
		if is != (name != "") || is && got != out {
			t.Errorf("%s: %v, %+v", name, is, got)
		}
	}
}

// A starter on record from long before the seed does not count as the starter of that
// seed: the program has both.
func TestEarlyStarterOnRecord(t *testing.T) {
	site := situations[3].site(t, "OH", "6a", "kentucky bluegrass")
	for _, job := range []string{"a/starter/1", "starter"} {
		p := plan(t, site, schedule.Done{Line: 2, Date: mustDate(t, "2026-07-05"), Area: "a", Job: job, Material: "trade-urea", Weight: 1})
		if !slices.ContainsFunc(p.Entries, func(e schedule.Entry) bool { return e.Kind == schedule.Starter && e.State == schedule.Finished }) {
			t.Errorf("%s: the starter on record is lost", job)
		}
	}
}
