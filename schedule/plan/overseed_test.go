package plan

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// overseeded is an established lawn that is sown over on a day, planned from another
// for a year.
func overseeded(t *testing.T, grass, start, day string) *schedule.Site {
	t.Helper()
	site := situations[0].site(t, "OH", "6a", grass)
	site.Start = mustDate(t, start)
	site.Through = site.Start.AddDays(364)
	a := &site.Areas[0]
	a.Overseed, a.Sampled, a.Soil.PH = mustDate(t, day), site.Start.AddDays(-30), 6.6
	return site
}

// An overseeding is on the day asked for, and so is its starter; two thirds of the
// season's nitrogen follow [vt-452-717], at most 0.5 lb at once and not before the
// seedlings have been up for four weeks [common]; no late nitrogen. Standing turf takes
// half the seed of bare soil: tall fescue 3 to 4 lb/1000 sq ft [unl-renovate].
func TestOverseeding(t *testing.T) {
	site := overseeded(t, "tall fescue", "2026-08-10", "2026-09-05")
	p := plan(t, site)
	over, starter := entry(t, p, "a/overseed/1"), entry(t, p, "a/starter/1")
	if over.Date != mustDate(t, "2026-09-05") || starter.Date != over.Date {
		t.Errorf("sown over on %s, its starter on %s", over.Date, starter.Date)
	}
	if !strings.Contains(over.Summary, "6 lb to 8 lb of tall fescue") { // 2000 sq ft at 3 to 4 lb
		t.Errorf("the seed: %s", over.Summary)
	}
	if !slices.Contains(over.Cautions, material.OffSeedlings().Text) {
		t.Errorf("weed killer is not kept off: %s", over.Cautions)
	}
	if starter.N < 0.3 || starter.N > 0.5+1e-9 || starter.P2O5 <= 0 {
		t.Errorf("the starter brings %.2f lb N and %.2f lb P₂O₅", float64(starter.N), float64(starter.P2O5))
	}
	usual := *site
	usual.Areas = slices.Clone(site.Areas)
	usual.Areas[0].Overseed = schedule.Date{}
	autumn := func(p *schedule.Program) (n float64) {
		for _, e := range p.Entries {
			if e.Date.Year == 2026 {
				n += float64(e.N)
			}
		}
		return n
	}
	light, full := autumn(p), autumn(plan(t, &usual))
	if light > full*0.67+0.02 || light < 0.7 {
		t.Errorf("%.2f lb N in the autumn of the overseeding, and %.2f without it", light, full)
	}
	if n := count(p, schedule.LateNitrogen); n != 0 || !slices.ContainsFunc(p.LeftOut, func(l schedule.LeftOut) bool {
		return l.Kind == schedule.LateNitrogen && strings.Contains(l.Reason, "seedlings of the overseeding")
	}) {
		t.Errorf("%d late doses on seedlings; left out: %v", n, p.LeftOut)
	}
	if count(plan(t, &usual), schedule.LateNitrogen) == 0 {
		t.Error("without the overseeding there is no late dose to be left out")
	}
	for _, b := range brokenOverseeding(site, p) {
		t.Error(b)
	}
}

func count(p *schedule.Program, k schedule.Kind) (n int) {
	for _, e := range p.Entries {
		if e.Kind == k {
			n++
		}
	}
	return n
}

// The day asked for stands where seed comes up; else the overseeding moves, and says why;
// its starter comes with the seed, or as growth begins.
func TestOverseedingMoves(t *testing.T) {
	for _, c := range []struct{ name, asked, sown, starter, says string }{
		{"in spring", "2027-04-10", "2027-04-10", "2027-04-10", ""},
		{"too late", "2026-11-10", "2027-03-21", "2027-04-10", "Not on 10 Nov 2026 as asked"},
	} {
		p := plan(t, overseeded(t, "tall fescue", "2026-08-10", c.asked))
		over, starter := entry(t, p, "a/overseed/1"), entry(t, p, "a/starter/1")
		if over.Date != mustDate(t, c.sown) || !strings.Contains(over.Summary, c.says) || starter.Date != mustDate(t, c.starter) {
			t.Errorf("%s: sown over on %s, starter on %s: %s", c.name, over.Date, starter.Date, over.Summary)
		}
	}
}

// Seed sown over a warm-season lawn in September comes up but seldom makes a stand: the
// overseeding waits for summer, the program gives the reason, and the season with that
// summer plans it.
func TestOverseedingWaitsForAStand(t *testing.T) {
	site := overseeded(t, "bermudagrass", "2026-09-20", "2026-09-25")
	site.Place = situations[0].site(t, "GA", "8a", "bermudagrass").Place
	site.Through = schedule.Date{}
	p := plan(t, site)
	if !slices.ContainsFunc(p.LeftOut, func(l schedule.LeftOut) bool {
		return l.Kind == schedule.Overseed && strings.HasPrefix(l.Reason, "not on 25 Sep 2026 as asked: seed sown over then makes a stand") && l.CarriedTo.Year == 2027
	}) {
		t.Errorf("%v", p.LeftOut)
	}
	if over := entry(t, p, "a/overseed/2027-1"); over.Date.Year != 2027 || over.Date.Month < 5 || over.Date.Month > 8 {
		t.Errorf("sown over on %s", over.Date)
	}
}

// What is on record counts: the day on which the overseeding was done moves the feeding
// after it, and an overseeding from before the start is taken as done.
func TestOverseedingOnRecord(t *testing.T) {
	site := overseeded(t, "tall fescue", "2026-08-10", "2026-08-29")
	first := func(book ...schedule.Done) schedule.Date {
		p, err := Program(site, book, schedule.Date{})
		if err != nil {
			t.Fatal(err)
		}
		return entry(t, p, "a/nitrogen/1").Date
	}
	planned := first()
	late := first(schedule.Done{Line: 2, Date: mustDate(t, "2026-09-08"), Area: "a", Job: "overseed"})
	if !late.After(planned) || late.DaysFrom(mustDate(t, "2026-09-08")) < 11+28 { // seedlings are up in 11 days, and fed four weeks later
		t.Errorf("fed on %s after an overseeding on 8 Sep; planned for %s", late, planned)
	}
	site.Areas[0].Overseed = mustDate(t, "2026-08-05")
	p := plan(t, site)
	if n := count(p, schedule.Overseed); n != 0 {
		t.Errorf("%d overseedings planned after the one of the site file", n)
	}
	if count(p, schedule.LateNitrogen) != 0 {
		t.Error("late nitrogen on its seedlings")
	}
}

// brokenOverseeding tells what seedlings of an overseeding would have to bear: anything
// but their starter before a first mowing, more than 0.5 lb N at once in their first
// twelve weeks, or late nitrogen in that season.
func brokenOverseeding(site *schedule.Site, p *schedule.Program) (bad []string) {
	for i := range p.Entries {
		over := &p.Entries[i]
		if over.Kind != schedule.Overseed {
			continue
		}
		a := site.Area(over.Area)
		up, _, _ := a.Stand.MostUp()
		if !slices.ContainsFunc(p.Entries, func(e schedule.Entry) bool { return e.Kind == schedule.Starter && e.Area == over.Area }) &&
			!slices.ContainsFunc(p.LeftOut, func(l schedule.LeftOut) bool { return l.Kind == schedule.Starter && l.Area == over.Area }) {
			bad = append(bad, over.ID+": no starter, and no word of it")
		}
		for k := range p.Entries {
			e := &p.Entries[k]
			days := e.Date.DaysFrom(over.Date)
			switch {
			case e.Area != over.Area || days < 0:
			case e.Dose.Rate > 0 && e.Kind != schedule.Starter && days < up+14:
				bad = append(bad, fmt.Sprintf("%s: %d days after the overseeding", e.ID, days))
			case e.N > 0 && days < 84 && float64(e.N) > 0.5+1e-9:
				bad = append(bad, fmt.Sprintf("%s: %.2f lb N %d days after the overseeding", e.ID, float64(e.N), days))
			case e.Kind == schedule.LateNitrogen && days < 120:
				bad = append(bad, fmt.Sprintf("%s: late nitrogen on seedlings", e.ID))
			}
		}
	}
	return bad
}

// oversown gives the day of the program's overseeding.
func oversown(p *schedule.Program) schedule.Date {
	for i := range p.Entries {
		if p.Entries[i].Kind == schedule.Overseed {
			return p.Entries[i].Date
		}
	}
	return schedule.Date{}
}

// A crew that has no time on the best day moves the overseeding, and its starter and
// feedings with it: three areas, one job a Saturday.
func TestOverseedingMovesWithItsStarter(t *testing.T) {
	site := overseeded(t, "tall fescue", "2026-08-20", "2026-08-29")
	site.Crew = schedule.Crew{Days: []time.Weekday{time.Saturday}, JobsPerDay: 1}
	for _, id := range []string{"b", "c"} {
		a := site.Areas[0]
		a.ID, a.Name = id, "Area "+id
		site.Areas = append(site.Areas, a)
	}
	p, seeds := plan(t, site), 0
	for _, over := range p.Entries {
		if over.Kind != schedule.Overseed {
			continue
		}
		seeds++
		for _, e := range p.Entries {
			if days := e.Date.DaysFrom(over.Date); e.Area == over.Area && e.Kind == schedule.Starter && (days < 0 || days > schedule.WithSeedDays) {
				t.Errorf("%s on %s, and its seed on %s", e.ID, e.Date, over.Date)
			}
		}
	}
	if seeds != 3 {
		t.Errorf("%d areas are sown over", seeds)
	}
	for _, b := range brokenOverseeding(site, p) {
		t.Error(b)
	}
}

// An overseeding renames no feeding, and the spring keeps its own.
func TestOverseedingRenamesNothing(t *testing.T) {
	site := overseeded(t, "tall fescue", "2026-08-10", "2026-09-28")
	usual := *site
	usual.Areas = slices.Clone(site.Areas)
	usual.Areas[0].Overseed = schedule.Date{}
	spring := func(p *schedule.Program) (ids []string) {
		for _, e := range p.Entries {
			if e.Kind == schedule.Nitrogen && e.Date.Year == 2027 && e.Date.Month < 7 {
				ids = append(ids, e.ID)
			}
		}
		return ids
	}
	got, want := spring(plan(t, site)), spring(plan(t, &usual))
	if len(got) == 0 || slices.ContainsFunc(got, func(id string) bool { return !slices.Contains(want, id) }) {
		t.Errorf("fed in spring by %v, and without the overseeding by %v", got, want)
	}
}

// An overseeding is never planned long before the wished day, and that of a young stand
// needs no starter.
func TestOverseedingIsTheOneThatWasMeant(t *testing.T) {
	p := plan(t, overseeded(t, "bahiagrass", "2026-04-01", "2026-09-18"))
	for _, e := range p.Entries {
		if wish := mustDate(t, "2026-09-18"); e.Kind == schedule.Overseed && e.Date.Before(wish.AddDays(-60)) {
			t.Errorf("asked for on %s, sown over on %s", wish, e.Date)
		}
	}
	site := overseeded(t, "tall fescue", "2026-08-20", "2026-09-05")
	site.Areas[0].Seeded = mustDate(t, "2025-10-01")
	if p := plan(t, site); count(p, schedule.Overseed) != 1 || count(p, schedule.Starter) != 0 {
		t.Errorf("%d overseedings and %d starters of a young stand", count(p, schedule.Overseed), count(p, schedule.Starter))
	}
}
