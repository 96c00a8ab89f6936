package plan

import (
	"strings"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
)

// feedings gives the planned feedings of a span of days.
func feedings(t *testing.T, p *schedule.Program, from, to string) (out []schedule.Entry) {
	span := schedule.Span{From: mustDate(t, from), To: mustDate(t, to)}
	for _, e := range p.Entries {
		if e.Kind == schedule.Nitrogen && span.Has(e.Date) {
			out = append(out, e)
		}
	}
	return out
}

// A spring share of 0.75 lb is a little over the 0.7 lb of quick nitrogen that one dose may
// bring: it is one dose, as in the calendars that print one feeding in May
// [ill-1995, umn-2023], and not two thin ones.
func TestShareALittleOverOneDose(t *testing.T) {
	p := plan(t, lawn(t, "kentucky bluegrass", 2600, 80, 200))
	spring := feedings(t, p, "2027-03-01", "2027-07-01")
	if len(spring) != 1 || spring[0].N < 0.65 || spring[0].N > 0.7 {
		t.Fatalf("%d feedings in spring, %v", len(spring), spring)
	}
	told := false
	for _, r := range spring[0].Why {
		told = told || strings.Contains(r.Text, "one more walk")
	}
	if !told {
		t.Error("the dose does not say what stays out of the share")
	}
}

// A feeding sized by its phosphorus is followed by what its share still lacks.
func TestFeedingHeldByPhosphorus(t *testing.T) {
	site := sown(t, "OR", "8b", "kentucky bluegrass", "2027-03-20", "2027-03-20")
	a := &site.Areas[0]
	a.Seeded, a.Size, a.Soil.Phosphorus.PPM, a.Soil.Potassium.PPM, a.Care = schedule.Date{}, 2300, 45, 80, nutrient.HighCare
	site.Materials = []material.Material{
		{ID: "urea", Kind: material.FertilizerMaterial, Name: "urea", Analysis: agronomy.Analysis{N: 46}, Pack: 20, OnHand: 1},
		{ID: "starter", Kind: material.FertilizerMaterial, Name: "starter", Analysis: agronomy.Analysis{N: 18, P2O5: 24, K2O: 12}, Pack: 25, OnHand: 1},
	}
	p := plan(t, site)
	var n agronomy.PerThousand
	spring := feedings(t, p, "2027-03-20", "2027-07-01")
	for _, e := range spring {
		n += e.N
	}
	if n < 0.9 {
		t.Errorf("%.2f lb N in spring of a share of 1 lb, in %d feedings", float64(n), len(spring))
	}
	if _, short := leftFor(p, "of the spring share is short"); short {
		t.Error("the spring share is short")
	}
}

// leftFor finds what is left out by a part of its reason.
func leftFor(p *schedule.Program, part string) (schedule.LeftOut, bool) {
	for _, l := range p.LeftOut {
		if strings.Contains(l.Reason, part) {
			return l, true
		}
	}
	return schedule.LeftOut{}, false
}

// Where no starter is on record, the starter is the young stand's first feeding, and the
// next one is planned for the days after it, or not at all.
func TestFeedingBehindTheStarter(t *testing.T) {
	for _, start := range []string{"2026-08-25", "2026-09-05", "2026-09-22"} {
		site := sown(t, "NY", "6a", "perennial ryegrass", start, "2026-07-21")
		site.Areas[0].Soil.Phosphorus.PPM = 45
		p := plan(t, site)
		var starter schedule.Date
		for _, e := range p.Entries {
			switch {
			case e.Kind == schedule.Starter:
				starter = e.Date
			case e.Kind == schedule.Nitrogen && e.Date.Before(mustDate(t, "2027-07-01")) && (starter.IsZero() || e.Date.Before(starter.AddDays(schedule.QuickDays))):
				t.Errorf("from %s: fed on %s, the starter on %s", start, e.Date, starter)
			}
		}
		if l, found := leftFor(p, "one feeding before the next"); found || starter.DaysFrom(site.Start) > 7 {
			t.Errorf("from %s: starter on %s; %s %s", start, starter, l.ID, l.Reason)
		}
	}
}

// With one job a day the starter still goes down with the seed: it is one visit.
func TestOneJobADayKeepsTheStarter(t *testing.T) {
	site := sown(t, "OH", "6a", "tall fescue", "2026-08-10", "2026-09-05")
	site.Crew.JobsPerDay = 1
	p := plan(t, site)
	sow, starter := ofKind(p, schedule.Sow), ofKind(p, schedule.Starter)
	if len(sow) != 1 || len(starter) != 1 || sow[0].Date != starter[0].Date {
		t.Fatalf("sown %v, starter %v", sow, starter)
	}
}

// A report that is too old to plan phosphorus by says nothing of a starter either: it brings
// what one without a report does.
func TestStarterUnderAnOldReport(t *testing.T) {
	site := sown(t, "KY", "6b", "tall fescue", "2026-08-10", "2026-09-05")
	a := &site.Areas[0]
	a.Soil.Phosphorus.PPM, a.Sampled = 8, mustDate(t, "2022-08-01")
	starter := ofKind(plan(t, site), schedule.Starter)
	if len(starter) != 1 || starter[0].P2O5 < 0.9 {
		t.Errorf("%v", starter)
	}
}

// What is left of lime and sulfur because their doses were rounded is no job of the next
// season.
func TestNoJobForWhatRoundingLeft(t *testing.T) {
	for _, size := range []agronomy.SquareFeet{2000, 2650, 3500} {
		for _, ph := range []agronomy.PH{5.0, 5.3, 7.3, 7.5} {
			site := lawn(t, "kentucky bluegrass", size, 90, 240)
			site.Through = site.Start.AddDays(1000)
			a := &site.Areas[0]
			if a.Soil.PH = ph; ph > 7 {
				a.Soil.LowerPH, a.Soil.TargetPH = true, 7
			}
			for _, e := range plan(t, site).Entries {
				if e.Kind == schedule.Lime && e.Rate < 10 || e.Kind == schedule.Sulfur && e.Rate < 0.9 {
					t.Errorf("pH %v on %v sq ft: %s on %s", ph, size, e.Title, e.Date)
				}
			}
		}
	}
}

// A requirement of nearly nothing is too little for a dressing, and not down already.
func TestLittleLimeIsNotDown(t *testing.T) {
	site := lawn(t, "kentucky bluegrass", 2650, 90, 240)
	want := agronomy.PerThousand(0.8)
	site.Areas[0].Soil.PH, site.Areas[0].Soil.Printed.Lime = 5.0, &want
	p := plan(t, site)
	for _, n := range p.Areas[0].Needs {
		if n.Kind == schedule.Lime && strings.Contains(n.Text, "is down") {
			t.Error(n.Text)
		}
	}
	if _, told := leftFor(p, "too little for a dressing"); !told {
		t.Error("it is not told that it is too little")
	}
}

// Late nitrogen gives way to a main dose that is still to come, and to no other: here the
// second main dose was due before the report's answer, and the crew has weekends only.
func TestLateDoseWhereNoMainDoseIsToCome(t *testing.T) {
	site := lawn(t, "kentucky bluegrass", 3200, 18, 60)
	site.Crew.Days = []time.Weekday{time.Saturday, time.Sunday}
	site.Materials = []material.Material{{ID: "feed", Kind: material.FertilizerMaterial, Name: "feed", Analysis: agronomy.Analysis{N: 24, K2O: 8}, SlowShare: 0.3, Pack: 20, OnHand: 1}}
	a := &site.Areas[0]
	a.Soil.PH, a.Sampled, a.Received = 6.6, mustDate(t, "2026-09-14"), mustDate(t, "2026-10-05")
	p := plan(t, site, schedule.Done{Line: 2, Date: mustDate(t, "2026-09-26"), Area: "a", Job: "nitrogen", Material: "feed", Weight: 9})
	for _, e := range p.Entries {
		if e.Kind == schedule.Nitrogen && e.State == schedule.Planned && e.Date.After(mustDate(t, "2026-09-26")) && e.Date.Before(mustDate(t, "2026-12-01")) {
			t.Fatalf("a main dose is to come after all, on %s", e.Date)
		}
	}
	late := ofKind(p, schedule.LateNitrogen)
	if len(late) == 0 || late[0].Date.Year != 2026 {
		_, why := leftFor(p, "the main autumn doses need its days")
		t.Errorf("no late dose in 2026; given up for a main dose: %v", why)
	}
}

// What a dose due before the program's start would have brought is told, also where another
// dose of the season is on record.
func TestPastDoseBesideOneOnRecordIsTold(t *testing.T) {
	site := lawn(t, "kentucky bluegrass", 3000, 60, 200)
	site.Start = mustDate(t, "2026-10-12")
	a := &site.Areas[0]
	a.Care, a.SolubleOnly = nutrient.HighCare, true
	p := plan(t, site, schedule.Done{Line: 2, Date: mustDate(t, "2026-08-25"), Area: "a", Job: "nitrogen", Material: "trade-urea", Weight: 2})
	if !strings.Contains(strings.Join(p.Assumptions, "\n"), "of the autumn was due before the program starts and is not on record: it is not planned") {
		t.Errorf("nothing is told of the past dose: %q", p.Assumptions)
	}
}

// Where the laboratory asks for lime on a pH that suits the grass, no sentence promises
// the pH that the soil has already: centipedegrass does well at 5.0 to 6.0 (NCDA&CS).
func TestLimeOnAPHThatSuits(t *testing.T) {
	site := lawn(t, "centipedegrass", 2400, 90, 240)
	site.Place.State, site.Place.Hardiness = "GA", "8a"
	want := agronomy.PerThousand(75)
	site.Areas[0].Soil.PH, site.Areas[0].Soil.Printed.Lime = 5.7, &want
	for _, onHand := range []float64{0, 1} {
		site.Materials = []material.Material{{ID: "stone", Kind: material.LimeMaterial, Name: "stone", CCE: 90, ECCE: 80, Pack: 40, OnHand: onHand, Magnesium: 1}}
		told := ""
		for _, n := range plan(t, site).Areas[0].Needs {
			if n.Kind == schedule.Lime {
				told += n.Text
			}
		}
		if !strings.HasSuffix(told, ", as the laboratory itself asks for") {
			t.Errorf("%g packs on hand: %s", onHand, told)
		}
	}
}
