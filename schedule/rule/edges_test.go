package rule_test

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
	"swardbook/schedule/plan"
)

func program(t *testing.T, p place) *schedule.Program {
	t.Helper()
	out, err := plan.Program(p.site(t), p.book, schedule.Date{})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// of lists a program's entries of a kind.
func of(p *schedule.Program, k schedule.Kind) (all []schedule.Entry) {
	for _, e := range p.Entries {
		if e.Kind == k {
			all = append(all, e)
		}
	}
	return all
}

// left gives why the first job of a kind is left out, "" where none is.
func left(p *schedule.Program, k schedule.Kind) string {
	for _, l := range p.LeftOut {
		if l.Kind == k {
			return l.Reason
		}
	}
	return ""
}

// A starter that was not put down serves a young stand up to its 84th day, and
// no longer. Common practice.
func TestStarterServesTwelveWeeks(t *testing.T) {
	for days, serves := range map[int]bool{14: true, 83: true, 84: true, 85: false, 120: false} {
		p := program(t, place{state: "OH", zone: "6a", grass: "perennial ryegrass", start: "2026-09-20", seeded: -days, soil: ppm(agronomy.Mehlich3, 6.5, 10, 200, 200)})
		asked := slices.ContainsFunc(p.Assumptions, func(a string) bool { return strings.Contains(a, "no starter is on record") })
		if asked != serves {
			t.Errorf("%d days after sowing: a starter is missed %v, want %v", days, asked, serves)
		}
		if planned := len(of(p, schedule.Starter)) > 0; planned && !serves {
			t.Errorf("%d days after sowing a starter is planned", days)
		}
	}
}

// A season's nitrogen is two thirds in autumn and a third in spring, in the
// fewest doses of 0.7 lb quick nitrogen that it takes. [umn-2023] [md-ag-6-224]
func TestSeasonsShareTheYear(t *testing.T) {
	for care, year := range map[nutrient.Care]float64{nutrient.LowCare: 1.5, nutrient.MediumCare: 3, nutrient.HighCare: 4} { // Kentucky bluegrass
		p := program(t, place{state: "OH", zone: "6a", grass: "kentucky bluegrass", start: "2026-08-01", soil: ppm(agronomy.Mehlich3, 6.5, 60, 200, 200), change: func(_ *schedule.Site, a *schedule.Area) { a.Care = care }})
		autumn, spring := 0.0, 0.0
		for _, e := range p.Entries {
			if e.Dose.SolubleN > 0.7+1e-9 {
				t.Errorf("%s care: %v lb quick N at once on %s", care, e.Dose.SolubleN, e.Date)
			}
			if e.Date.Year == 2026 {
				autumn += float64(e.N)
			} else {
				spring += float64(e.N)
			}
		}
		const weighed = 0.02                                        // the doses are rounded to what a person can weigh
		if autumn > year*0.67+weighed || autumn < year*0.67-0.701 { // one dose may find no day
			t.Errorf("%s care: %.3f lb N in autumn, want %.3f", care, autumn, year*0.67)
		}
		for _, n := range p.Areas[0].Needs {
			if d := float64(n.Total) - year; n.Kind == schedule.Nitrogen && (d > weighed || d < -weighed) {
				t.Errorf("%s care: %.3f lb N wanted, want %.3f", care, float64(n.Total), year)
			}
		}
		if d := spring - year*0.33; d > weighed || d < -weighed {
			t.Errorf("%s care: %.3f lb N in spring, want %.3f", care, spring, year*0.33)
		}
	}
}

// Lime on a lawn goes down at most 50 lb at a time, 100 on cored turf, all of it
// before a sowing, 10 of hydrated lime; less than 5 lb is left to the retest.
// [vt-452-717] [purdue-ay18] [psu-establish]; hydrated lime from memory.
func TestLimeIsSplit(t *testing.T) {
	sour := place{state: "OH", zone: "6a", grass: "kentucky bluegrass", start: "2026-08-20", days: 900, soil: ppm(agronomy.Mehlich3, 5.0, 60, 200, 200)}
	for name, c := range map[string]struct {
		change func(*schedule.Site, *schedule.Area)
		seeded int
		most   agronomy.PerThousand
		fewest int
	}{
		"a lawn":        {func(*schedule.Site, *schedule.Area) {}, 0, 50, 2},
		"cored":         {func(_ *schedule.Site, a *schedule.Area) { a.Cored = true }, 0, 100, 1},
		"before sowing": {func(*schedule.Site, *schedule.Area) {}, 30, 200, 1},
		"hydrated": {func(s *schedule.Site, _ *schedule.Area) {
			s.Materials = []material.Material{{ID: "burnt", Kind: material.LimeMaterial, Hydrated: true, Pack: 50, OnHand: 9}}
		}, 0, 10, 5},
	} {
		site := sour
		site.change, site.seeded = c.change, c.seeded
		p := program(t, site)
		var sum agronomy.PerThousand
		lime := of(p, schedule.Lime)
		for i, e := range lime {
			if sum += e.Rate; e.Rate > c.most+1e-9 || e.Rate < 5 {
				t.Errorf("%s: %v lb of lime on %s", name, e.Rate, e.Date)
			}
			if i > 0 && e.Date.DaysFrom(lime[i-1].Date) < 90 {
				t.Errorf("%s: lime on %s and %s", name, lime[i-1].Date, e.Date)
			}
		}
		planned := len(lime)
		for _, l := range p.LeftOut {
			planned += map[bool]int{true: 1}[l.Kind == schedule.Lime]
		}
		if planned < c.fewest {
			t.Errorf("%s: %d dressings, %v lb, want %d or more", name, planned, sum, c.fewest)
		}
	}
	nearly := sour
	for share, says := range map[float64]bool{0.9: false, 0.97: true} {
		whole := of(program(t, sour), schedule.Lime)
		total := whole[0].Rate * agronomy.PerThousand(len(whole))
		nearly.book = []schedule.Done{{Line: 2, Date: day(t, "2026-08-20"), Area: "a", Job: "lime", Material: "trade-ground-limestone", Weight: (total * agronomy.PerThousand(share)).Over(2000)}}
		if got := strings.Contains(left(program(t, nearly), schedule.Lime), "too little for a dressing"); got != says {
			t.Errorf("%v of the lime is down: the rest is too little %v, want %v (%s)", share, got, says, left(program(t, nearly), schedule.Lime))
		}
	}
}

// A report serves three years; a new lawn is sampled after its first; a place
// without one is sampled at once. [psu-report-notes] [vt-fall-2008]
func TestSampleFallsDue(t *testing.T) {
	fine := func() *agronomy.Report { return ppm(agronomy.Mehlich3, 6.5, 60, 200, 200) }
	for name, c := range map[string]struct {
		soil   *agronomy.Report
		age    int // of the report at the start, in days
		seeded int
		best   string // "" none
	}{
		"none":             {nil, 0, 0, "2026-09-01"},
		"half a year old":  {fine(), 180, 0, ""},
		"due next summer":  {fine(), 800, 0, "2027-06-23"},
		"four years old":   {fine(), 1500, 0, "2026-09-01"},
		"sown last autumn": {fine(), 400, -340, "2026-09-26"},
	} {
		p := program(t, place{state: "OH", zone: "6a", grass: "kentucky bluegrass", start: "2026-09-01", seeded: c.seeded, soil: c.soil,
			change: func(s *schedule.Site, a *schedule.Area) {
				if c.soil != nil {
					a.Sampled = s.Start.AddDays(-c.age)
				}
			}})
		tests := of(p, schedule.SoilTest)
		switch {
		case c.best == "" && len(tests) > 0:
			t.Errorf("%s: a sample on %s", name, tests[0].Date)
		case c.best == "":
		case len(tests) != 1 || tests[0].Ideal != day(t, c.best):
			t.Errorf("%s: %d samples, left out %q; want one, best on %s", name, len(tests), left(p, schedule.SoilTest), c.best)
		}
	}
}

// Sulfur goes down only where the site file asks for it, and not for a trace: the
// table (from memory) takes a loam from 7.5 to 7.0, the top of bluegrass's range,
// with 650 lb/acre in 6.5 in, so 1 lb/1000 sq ft in 4 in serves from 71 lb/acre
// 7.0, from pH 7.055 on. It goes down 5 lb at a time, no more than 10 in a year,
// and never over free lime. [purdue-sulfur]
func TestSulfurStartsAndStops(t *testing.T) {
	for ph, wanted := range map[agronomy.PH]bool{7.0: false, 7.05: false, 7.06: true, 8.2: true, 8.21: false} {
		report := ppm(agronomy.Olsen, ph, 20, 300, 200)
		where := place{state: "CO", zone: "5b", grass: "kentucky bluegrass", start: "2027-04-01", soil: report}
		if unasked := of(program(t, where), schedule.Sulfur); len(unasked) > 0 {
			t.Errorf("pH %v: %d dressings of sulfur that nobody asked for", ph, len(unasked))
		}
		report.LowerPH = true
		p := program(t, where)
		var year agronomy.PerThousand
		sulfur := of(p, schedule.Sulfur)
		for _, e := range sulfur {
			if year += e.Rate * 0.9; e.Rate*0.9 > 5+1e-9 { // trade sulfur of 90 %
				t.Errorf("pH %v: %v lb at once", ph, e.Rate)
			}
		}
		if len(sulfur) > 0 != wanted || year > 10+1e-9 {
			t.Errorf("pH %v: %v lb of sulfur in a year, wanted %v (%s)", ph, year, wanted, left(p, schedule.Sulfur))
		}
	}
}
