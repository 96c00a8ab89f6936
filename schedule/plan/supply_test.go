package plan

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule"
)

// The first job for which there is too little in the shed begins with the purchase, and
// no other job does.
func TestPurchaseComesWithTheFirstJobThatRunsShort(t *testing.T) {
	site := bluegrass(t)
	site.Areas[0].Soil.Magnesium.PPM = 200 // so that any stone will do
	var need []float64
	for _, e := range plan(t, site).Entries {
		if e.Kind == schedule.Lime {
			need = append(need, e.Packs)
		}
	}
	if len(need) < 2 {
		t.Fatalf("%d dressings", len(need))
	}
	for _, c := range []struct {
		onHand float64
		first  int // that begins with a purchase
	}{{need[0] * 0.4, 1}, {need[0] - 0.1, 2}, {need[0], 2}} {
		site.Materials[0].OnHand = c.onHand
		p := plan(t, site)
		for n := range need {
			steps := entry(t, p, fmt.Sprintf("a/lime/%d", n+1)).Steps
			if buys := strings.HasPrefix(steps[0], "Buy "); buys != (n+1 == c.first) || strings.Contains(strings.Join(steps[1:], " "), "Buy ") {
				t.Errorf("%.1f packs of limestone on hand: dressing %d begins %q", c.onHand, n+1, steps[0])
			}
		}
	}
	site.Materials[0].OnHand = 1000
	if steps := entry(t, plan(t, site), "a/lime/1").Steps; strings.Contains(strings.Join(steps, " "), "Buy ") {
		t.Errorf("a full shed: %q", steps)
	}
}

// What is at hand goes down first where it is part of what is wanted. By hand: the need
// is 3.33 packs, 66.6 lb/1000 sq ft on 2,000 sq ft, of which 50 lb, 2.5 packs, may go
// down at once; equal dressings would be 1.67 packs, and are weighed in steps of 5 lb.
func TestLimeAtHandGoesFirst(t *testing.T) {
	for _, c := range []struct {
		onHand, first, second float64
		why                   string
	}{
		{0, 1.63, 1.75, "nothing at hand"},
		{0.6, 1.63, 1.75, "under half a dressing, and the rest does not go down at once"},
		{0.9, 0.9, 2.38, "more than half a dressing, the rest in one"},
		{2, 2, 1.38, "the bags at hand"},
		{3, 2.5, 0.83, "no more than may go down at once"},
		{3.2, 1.63, 1.75, "what lacks is no dressing of its own"},
		{8, 1.63, 1.75, "enough for all"},
	} {
		site := bluegrass(t)
		site.Areas[0].Soil.Magnesium.PPM = 200 // so that any stone will do
		site.Materials[0].OnHand = c.onHand
		var got []float64
		for _, e := range plan(t, site).Entries {
			if e.Kind == schedule.Lime {
				got = append(got, math.Round(e.Packs*100)/100)
			}
		}
		if want := []float64{c.first, c.second}; !slices.Equal(got, want) {
			t.Errorf("%s: %.1f packs on hand go down as %v, want %v", c.why, c.onHand, got, want)
		}
	}
}

// A second dressing whose half year ends in the next season waits for it, and for the
// sample: it is not put on the last hot days of this one.
func TestLimeWaitsForTheNextSeason(t *testing.T) {
	site := bluegrass(t)
	site.Start, site.Through = mustDate(t, "2027-03-22"), schedule.Date{}
	site.Areas[0].Sampled = mustDate(t, "2027-03-01")
	p := programTo(t, site, nil, mustDate(t, "2028-07-01"))
	first, second := entry(t, p, "a/lime/2026-1"), entry(t, p, "a/lime/2027-1")
	if l := leftOut(p, "a/lime/2026-2"); l == nil || !strings.Contains(l.Reason, "in the next season") {
		t.Errorf("limed on %s; the second dressing: %+v", first.Date, l)
	}
	sampled := 0
	for _, e := range p.Entries {
		if e.Kind == schedule.SoilTest && e.Date.After(first.Date) && e.Date.AddDays(13).Before(second.Date) {
			sampled++
		}
	}
	if second.Date.Month < 9 || sampled != 1 {
		t.Errorf("limed on %s and %s, with %d samples between", first.Date, second.Date, sampled)
	}
}
