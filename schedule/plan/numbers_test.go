package plan

import (
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// The number of a feeding is its place in the year's scheme: whatever is on record or in
// the shed, no name is that of an autumn feeding in one program and of a spring feeding
// in another. (If doses were numbered as they are planned, the third one in Ohio would be
// both.)
func TestAFeedingKeepsTheNumberOfItsPlace(t *testing.T) {
	slow := material.Material{ID: "slow", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 32}, SlowShare: 0.7, Lasts: 10, Pack: 40, OnHand: 9}
	names := 0
	for _, in := range yearsIn {
		if openSite(t, in).Areas[0].Stand.Season() != agronomy.Cool {
			continue
		}
		spring := map[string]bool{}
		first := map[string]schedule.Date{}
		for _, shed := range [][]material.Material{openSite(t, in).Materials, nil, {slow}} {
			site := openSite(t, in)
			site.Start, site.Materials = mustDate(t, "2026-07-25"), shed
			last := mustDate(t, "2028-07-01")
			bare := programTo(t, site, nil, last)
			var fed []schedule.Entry
			for _, e := range bare.Entries {
				if e.Kind == schedule.Nitrogen {
					fed = append(fed, e)
				}
			}
			if len(fed) < 2 {
				t.Fatalf("%v: %d feedings", in, len(fed))
			}
			at := func(e schedule.Entry, d schedule.Done) []schedule.Done {
				d.Line, d.Date, d.Area, d.Job = 2, e.Date, "a", e.ID
				return []schedule.Done{d}
			}
			for _, book := range [][]schedule.Done{nil, at(fed[0], schedule.Done{Missed: true}), at(fed[0], schedule.Done{Share: 2}), at(fed[0], schedule.Done{Share: 0.3}),
				at(fed[1], schedule.Done{Missed: true}), at(fed[1], schedule.Done{Share: 1.8}),
				{{Line: 2, Date: fed[0].Date.AddDays(5), Area: "a", Job: "nitrogen", Material: "trade-urea-small", Weight: 2}}} {
				for _, e := range programTo(t, site, book, last).Entries {
					if e.Kind != schedule.Nitrogen || e.State == schedule.Finished {
						continue
					}
					inSpring := e.Date.Year > e.Season
					if was, known := spring[e.ID]; known && was != inSpring {
						t.Errorf("%v: %s falls on %s, and on %s with another book or shed", in, e.ID, first[e.ID], e.Date)
					}
					spring[e.ID], first[e.ID] = inSpring, e.Date
				}
			}
		}
		names += len(spring)
	}
	if names < 12 {
		t.Errorf("only %d names were seen", names)
	}
}
