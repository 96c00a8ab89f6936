package main

import (
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/nutrient"
	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/ical"
	"swardbook/schedule/plan"
)

// In a program of any length up to three years no two jobs share an id, so that
// a calendar can hold each.
func TestEachJobHasAnIDOfItsOwn(t *testing.T) {
	places := []climate.Place{{State: "OH", Hardiness: "6a"}, {State: "MN", Hardiness: "4a"}, {State: "PA", Hardiness: "6b"}, {State: "VA", Hardiness: "7b"},
		{State: "WA", Hardiness: "8b"}, {State: "CO", Hardiness: "5b"}, {State: "GA", Hardiness: "8a"}, {State: "FL", Hardiness: "9b"}, {State: "TX", Hardiness: "8b"},
		{State: "ME", Hardiness: "4a"}, {State: "NM", Hardiness: "7a"}, {State: "NY", Hardiness: "5b"}}
	starts := []schedule.Date{{Year: 2026, Month: 3, Day: 1}, {Year: 2026, Month: 6, Day: 20}, {Year: 2026, Month: 9, Day: 12}, {Year: 2026, Month: 12, Day: 20}}
	n := 0
	for _, place := range places {
		for _, grass := range agronomy.GrassNames() {
			for _, start := range starts {
				days, seeded := []int{364, 730, 1095}[n%3], []int{0, -100, 40, -20}[n/3%4]
				var soil *agronomy.Report
				if n%2 == 0 {
					soil = &agronomy.Report{Depth: 4, Method: agronomy.Mehlich3, PH: 5.2, Texture: agronomy.Loam, Potassium: agronomy.Reading{Given: true, PPM: 30}}
				}
				n++
				p, err := plan.Program(multiYear(place, grass, start, days, seeded, soil), nil, schedule.Date{})
				if err != nil {
					t.Fatal(err)
				}
				ids := map[string]bool{}
				for _, e := range p.Entries {
					if ids[e.ID] || ids[e.UID] {
						t.Errorf("%s %s, %s from %s for %d days: %s is there twice", place.State, place.Hardiness, grass, start, days, e.ID)
					}
					ids[e.ID], ids[e.UID] = true, true
				}
				if _, err := ical.Write(p, ical.Options{}, p.Start.Time()); err != nil && len(p.Entries) > 0 {
					t.Errorf("%s %s, %s from %s for %d days: %v", place.State, place.Hardiness, grass, start, days, err)
				}
			}
		}
	}
}

func multiYear(place climate.Place, grass string, start schedule.Date, days, seeded int, soil *agronomy.Report) *schedule.Site {
	g, _ := agronomy.LookupGrass(grass)
	a := schedule.Area{ID: "a", Name: "Test plot", Size: 2000, Stand: agronomy.Stand{{Grass: g, Percent: 100}}, Care: nutrient.HighCare,
		Texture: agronomy.Loam, Soil: soil, Sampled: start.AddDays(-60)}
	if seeded != 0 {
		a.Seeded = start.AddDays(seeded)
	}
	return &schedule.Site{ID: "ids", Title: "Ids", Start: start, Through: start.AddDays(days), Place: place, Areas: []schedule.Area{a}}
}
