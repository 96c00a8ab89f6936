package plan

import (
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// begun is an established bluegrass lawn in Wisconsin, first planned in the middle of
// its autumn with nothing on record and a half-slow bag in the shed.
func begun(t *testing.T, start string) *schedule.Site {
	t.Helper()
	site := sown(t, "WI", "5a", "kentucky bluegrass", start, "2026-09-01")
	a := &site.Areas[0]
	a.Seeded, a.Soil.Phosphorus.PPM, a.Soil.Potassium.PPM = schedule.Date{}, 80, 200
	site.Materials = []material.Material{{ID: "half", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 30}, SlowShare: 0.5, Lasts: 8, Pack: 25, OnHand: 3}}
	return site
}

// The main autumn feeding is given by a program that begins after its best day, as
// Labor Day to mid September is its custom in the north [umn-2023] [ill-1995] and a
// late September day still takes up most of a quick dose [soldat-fall]. A half-slow
// bag does not close the season to a quick one.
func TestMainFeedingIsNotLostToTheStart(t *testing.T) {
	for start, least := range map[string]agronomy.PerThousand{"2026-09-10": 0.7, "2026-09-22": 0.7, "2026-09-28": 0.7} {
		p := plan(t, begun(t, start))
		var sum agronomy.PerThousand
		for _, e := range fed(p) {
			if e.Kind == schedule.Nitrogen && e.Date.Before(mustDate(t, "2026-10-20")) {
				sum += e.N
			}
		}
		if sum < least-0.02 {
			t.Errorf("begun on %s: %.2f lb N this autumn", start, float64(sum))
		}
		for _, l := range p.LeftOut {
			if strings.Contains(l.Reason, "no day from") {
				t.Errorf("begun on %s: %s is planned and dropped: %s", start, l.ID, l.Reason)
			}
		}
		if !strings.Contains(strings.Join(p.Assumptions, "\n"), "what still fits is planned") {
			t.Errorf("begun on %s: not a word on what fell due before", start)
		}
	}
}

// What went down this autumn is not given again.
func TestMainFeedingOnRecordIsNotGivenAgain(t *testing.T) {
	site := begun(t, "2026-09-22")
	p := plan(t, site, schedule.Done{Line: 2, Date: mustDate(t, "2026-09-05"), Area: "a", Job: "nitrogen", Material: "half", Weight: 6.6})
	for _, e := range fed(p) {
		if e.Kind == schedule.Nitrogen && e.Date.Year == 2026 && e.State == schedule.Planned && e.N > 0.55 {
			t.Errorf("%s on %s brings %.2f lb N on top of 1 lb on 5 September", e.ID, e.Date, float64(e.N))
		}
	}
}
