package plan

import (
	"strings"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// seedbed is bare ground in Ohio, sour and short of magnesium, with some ordinary limestone
// in the shed, planned from one day and sown a week later.
func seedbed(t *testing.T, state, zone, grass, start string) *schedule.Site {
	t.Helper()
	site := sown(t, state, zone, grass, start, mustDate(t, start).AddDays(7).String())
	site.Through = schedule.Date{}
	site.Materials = []material.Material{{ID: "stone", Kind: material.LimeMaterial, CCE: 92, Pack: 40, OnHand: 1}}
	a := &site.Areas[0]
	a.Sampled = site.Start.AddDays(-30)
	a.Soil = &agronomy.Report{Depth: 4, Method: agronomy.Mehlich3, PH: 5.4, Texture: agronomy.Loam,
		Magnesium: agronomy.Reading{Given: true, PPM: 18}}
	return site
}

// Lime for a seedbed is worked in before the seed, all of it in one tilling, over 200
// lb/1000 sq ft in two halves [psu-establish, psu-report-notes]; so are two stones of
// which one brings the magnesium, common practice, no source.
func TestSeedbedTakesItsLimeBeforeTheSeed(t *testing.T) {
	for _, c := range []struct {
		state, zone, grass, start string
		ph                        agronomy.PH
	}{
		{"OH", "6a", "perennial ryegrass", "2026-08-25", 5.4},
		{"NY", "5b", "tall fescue", "2026-08-25", 5.4},
		{"GA", "8a", "bermudagrass", "2027-05-15", 5.0},
		{"PA", "6b", "kentucky bluegrass", "2027-04-05", 5.2},
	} {
		site := seedbed(t, c.state, c.zone, c.grass, c.start)
		site.Areas[0].Soil.PH = c.ph
		p := plan(t, site)
		seed, limes := ofKind(p, schedule.Sow), ofKind(p, schedule.Lime)
		if len(seed) != 1 || len(limes) != 2 || limes[0].Material != "stone" || limes[1].Dose.Mg == 0 {
			t.Fatalf("%v: %d sowings and %d dressings, left out %v", c, len(seed), len(limes), p.LeftOut)
		}
		for _, e := range limes {
			if e.Date.After(seed[0].Date) || e.Date != limes[0].Date {
				t.Errorf("%v: sown on %s, %s on %s and %s", c, seed[0].Date, e.ID, e.Date, limes[0].Date)
			}
		}
		if l := leftOut(p, "a/lime/2026-2"); l != nil {
			t.Errorf("%v: left out: %s", c, l.Reason)
		}
	}
}

// The stone that is down makes neither the other stone wait for a new sample nor the
// starter wait for the lime to react, as all are worked into one seedbed.
func TestSeedbedWithOneStoneDown(t *testing.T) {
	site := seedbed(t, "OH", "6a", "perennial ryegrass", "2026-08-20")
	p := plan(t, site, schedule.Done{Line: 2, Date: mustDate(t, "2026-08-21"), Area: "a", Job: "lime", Material: "stone", Weight: 40})
	for _, e := range ofKind(p, schedule.Lime) {
		if e.State != schedule.Finished && e.Date.After(mustDate(t, "2026-08-27")) {
			t.Errorf("%s on %s, after the seed of 27 Aug", e.ID, e.Date)
		}
		if done := e.State == schedule.Finished; done != (e.Material == "stone") {
			t.Errorf("%s of %s is %s", e.ID, e.Material, e.State)
		}
	}
	if e := entry(t, p, "a/starter/1"); e.Date != mustDate(t, "2026-08-27") {
		t.Errorf("the starter is on %s", e.Date)
	}
	if n := len(ofKind(p, schedule.Lime)); n != 2 {
		t.Errorf("%d dressings; left out %v", n, p.LeftOut)
	}
}

// What finds no day before the seed goes on the turf in the same season: from a first mowing
// on where nothing was worked in, else once that has reacted, and three months apart
// [nc-lee-lime] [vt-452-717].
func TestLimeThatFindsNoDayBeforeTheSeed(t *testing.T) {
	for _, c := range []struct {
		name, start string
		crew        schedule.Crew
		before      int // dressings before the seed
	}{
		{"one job a Saturday", "2026-08-25", schedule.Crew{Days: []time.Weekday{time.Saturday}, JobsPerDay: 1}, 0},
		{"one job a day, and one day before the seed", "2026-08-31", schedule.Crew{Away: []schedule.Span{{From: mustDate(t, "2026-09-01"), To: mustDate(t, "2026-09-06")}}, JobsPerDay: 1}, 1},
	} {
		site := seedbed(t, "OH", "6a", "perennial ryegrass", c.start)
		site.Crew = c.crew
		p := plan(t, site)
		seed, limes := ofKind(p, schedule.Sow)[0].Date, ofKind(p, schedule.Lime)
		before := 0
		for i, e := range limes {
			days := e.Date.DaysFrom(seed)
			switch {
			case days <= 0:
				before++
			case days < 7+14 || e.Season != 2026: // up in 7 days, mowed two weeks later
				t.Errorf("%s: %s %d days after the seed", c.name, e.ID, days)
			case strings.Contains(strings.Join(e.Steps, " "), "Till it in"):
				t.Errorf("%s: %s is tilled into the turf: %s", c.name, e.ID, e.Steps)
			}
			if i > 0 && days > 0 && e.Date.DaysFrom(limes[i-1].Date) < 90 {
				t.Errorf("%s: %s and %s, %s", c.name, limes[i-1].Date, e.Date, e.ID)
			}
		}
		if len(limes) != 2 || before != c.before {
			t.Errorf("%s: %d dressings, %d of them before the seed; left out %v", c.name, len(limes), before, p.LeftOut)
		}
	}
}
