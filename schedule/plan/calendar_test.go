package plan

import (
	"slices"
	"strings"
	"testing"
	"time"

	"swardbook/climate"
	"swardbook/schedule"
)

// year plans an established lawn with nothing in the shed through a calendar year.
func year(t *testing.T, state, zone, grass string) *schedule.Program {
	t.Helper()
	site := sown(t, state, zone, grass, "2027-01-01", "2027-01-01")
	site.Areas[0].Seeded = schedule.Date{}
	return plan(t, site)
}

// A program keeps to the days of the region's published calendar: each row names the
// months in which nitrogen goes down there, by the sources at the table of calendars.
func TestCalendarOfTheRegion(t *testing.T) {
	for _, c := range []struct {
		state, zone, grass string
		first, last        string // of the season that the calendar bounds
		until              string // the part of the year looked at
		name               string
	}{
		{"NC", "7b", "tall fescue", "2027-02-01", "2027-03-31", "2027-07-15", "North Carolina"}, // [nc-tallfescue] none after March
		{"GA", "7b", "tall fescue", "2027-02-01", "2027-03-31", "2027-07-15", "North Carolina"},
		{"TN", "7a", "tall fescue", "2027-03-01", "2027-03-31", "2027-07-15", "Tennessee"},      // [tn-hozer]
		{"KS", "6a", "tall fescue", "2027-05-01", "2027-05-31", "2027-07-15", "Kansas"},         // [ksu-eckert] not in March or April
		{"KS", "6a", "bermudagrass", "2027-05-01", "2027-08-15", "2027-12-31", "Kansas"},        // [ksu-warm]
		{"KS", "6a", "zoysiagrass", "2027-06-01", "2027-07-20", "2027-12-31", "Kansas"},         // [ksu-warm]
		{"NE", "5b", "buffalograss", "2027-06-01", "2027-07-31", "2027-12-31", "Nebraska"},      // [unl-g2178]
		{"SC", "8a", "centipedegrass", "2027-06-01", "2027-08-31", "2027-12-31", "centipede"},   // [nc-centipede]
		{"LA", "9a", "centipedegrass", "2027-04-01", "2027-07-31", "2027-12-31", "Louisiana"},   // [lsu-strahan]
		{"SC", "8a", "bermudagrass", "2027-04-15", "2027-08-31", "2027-12-31", "Georgia"},       // [uga-coastal]
		{"FL", "9a", "St. Augustinegrass", "2027-03-01", "2027-09-30", "2027-12-31", "Florida"}, // [uf-winter]
		{"FL", "9b", "St. Augustinegrass", "2027-03-01", "2027-10-31", "2027-12-31", "Florida"}, // [uf-winter]
	} {
		what, n := c.state+" "+c.zone+" "+c.grass, 0
		for _, e := range fed(year(t, c.state, c.zone, c.grass)) {
			if e.Date.After(mustDate(t, c.until)) {
				continue
			}
			n++
			if e.Date.Before(mustDate(t, c.first)) || e.Date.After(mustDate(t, c.last)) {
				t.Errorf("%s: %s on %s, the calendar says %s to %s", what, e.ID, e.Date, c.first, c.last)
			}
			if !strings.Contains(e.Because, "by the calendar of") || !strings.Contains(e.Because, c.name) {
				t.Errorf("%s: %s does not say which calendar it follows: %s", what, e.ID, e.Because)
			}
		}
		if n == 0 {
			t.Errorf("%s: not fed at all", what)
		}
	}
}

// Warm-season lawns get their last nitrogen four to six weeks before the first freeze
// at the latest [uga-792], whatever the calendar.
func TestLastWarmSeasonNitrogen(t *testing.T) {
	for _, cell := range [][3]string{{"GA", "8a", "St. Augustinegrass"}, {"TX", "8a", "bermudagrass"}, {"TN", "7a", "zoysiagrass"}, {"FL", "8b", "St. Augustinegrass"}} {
		p := year(t, cell[0], cell[1], cell[2])
		a := p.Cases[0].Almanac
		freeze := a.After(a.FirstFreeze(), mustDate(t, "2027-07-01"))
		for _, e := range fed(p) {
			if e.Date.Before(freeze) && freeze.DaysFrom(e.Date) < 28 || e.Date.Month == time.November {
				t.Errorf("%v: %s on %s, the first freeze about %s", cell, e.ID, e.Date, freeze)
			}
		}
	}
}

// Centipedegrass takes at most 1 lb P₂O₅ a year, however low the report. [common]
func TestCentipedePhosphorus(t *testing.T) {
	site := sown(t, "SC", "8a", "centipedegrass", "2027-01-01", "2027-01-01")
	site.Areas[0].Seeded = schedule.Date{}
	site.Areas[0].Soil.Phosphorus.PPM = 2
	sum := 0.0
	for _, e := range plan(t, site).Entries {
		sum += float64(e.P2O5)
	}
	if sum > 1.02 {
		t.Errorf("%.2f lb P₂O₅ in a year", sum)
	}
}

// The year's amount and the days are those of the same part of Florida, however the site
// file gives the place: those of the north in zone 9a [uf-fyn] [uf-winter].
func TestOnePartOfFlorida(t *testing.T) {
	for name, place := range map[string]climate.Place{
		"north": {State: "FL", Hardiness: "9a"}, "central": {State: "FL", ZIP: "33602"}, // Tampa
	} {
		site := sown(t, "FL", "9a", "bermudagrass", "2027-02-20", "2020-05-01")
		site.Place, site.Areas[0].Seeded = place, schedule.Date{}
		e := entry(t, plan(t, site), "a/nitrogen/1")
		table := slices.ContainsFunc(e.Why, func(r schedule.Reason) bool {
			return strings.Contains(r.Text, "bermudagrass in "+name+" Florida")
		})
		if !table || !strings.Contains(e.Because, "by the calendar of "+name+" Florida") {
			t.Errorf("%s Florida: %s %v", name, e.Because, e.Why)
		}
	}
}
