package plan

import (
	"strings"
	"testing"

	"swardbook/climate"
	"swardbook/schedule"
)

// The starter of an overseeding goes down while the grass grows (a growth potential above
// a tenth [gp-pace]): with the seed, or at green-up if that is put down in late winter. A
// starter in the cold is a winter feeding, common practice, no source.
func TestStarterOfAnOverseedingWaitsForTheGreen(t *testing.T) {
	waited := 0
	for _, place := range [][2]string{{"MN", "4b"}, {"IA", "5a"}, {"CO", "5b"}, {"OH", "6a"}, {"NC", "7b"}, {"GA", "8a"}, {"OR", "8b"}} {
		for _, grass := range []string{"Kentucky bluegrass", "tall fescue", "fine fescue", "perennial ryegrass"} {
			for _, asked := range []string{"2026-09-29", "2026-11-10", "2027-02-17", "2027-04-20"} {
				site := overseeded(t, grass, "2026-09-22", asked)
				site.Place.State, site.Place.Hardiness = place[0], place[1]
				p := plan(t, site)
				year, err := site.Place.Year()
				if err != nil {
					t.Fatal(err)
				}
				over, starter := oversown(p), schedule.Date{}
				for _, e := range ofKind(p, schedule.Starter) {
					starter = e.Date
				}
				grows := func(d schedule.Date) bool { return year.Growth(d.Next().DayOfYear(), climate.Cool) > 0.1 }
				from := over
				for !over.IsZero() && !grows(from) {
					from = from.Next()
				}
				switch {
				case over.IsZero() || starter.IsZero():
					t.Errorf("%v %s asked for on %s: sown over on %s, its starter on %s", place, grass, asked, over, starter)
				case !grows(starter) || starter.DaysFrom(from) < -1 || starter.DaysFrom(from) > schedule.WithSeedDays:
					t.Errorf("%v %s asked for on %s: sown over on %s, the grass grows from %s, its starter on %s", place, grass, asked, over, from, starter)
				}
				if starter.DaysFrom(over) > schedule.WithSeedDays {
					waited++
				}
				for _, b := range brokenOverseeding(site, p) {
					t.Errorf("%v %s asked for on %s: %s", place, grass, asked, b)
				}
			}
		}
	}
	if waited < 20 {
		t.Errorf("only %d starters had a winter to wait for", waited)
	}
}

// Seed that the record book has in December lies until spring as well, and its starter
// says why it waits.
func TestStarterOfADormantOverseeding(t *testing.T) {
	site := overseeded(t, "tall fescue", "2026-08-25", "2026-12-05")
	p := plan(t, site, schedule.Done{Line: 2, Date: mustDate(t, "2026-12-05"), Area: "a", Job: "overseed"})
	e := entry(t, p, "a/starter/1")
	if e.Date != mustDate(t, "2027-04-10") { // growth begins in Ohio 6a
		t.Errorf("the starter is on %s", e.Date)
	}
	told := false
	for _, r := range e.Why {
		told = told || strings.Contains(r.Text, "waits for the green")
	}
	if !told {
		t.Errorf("no word of why it waits: %v", e.Why)
	}
}
