package plan

import (
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/schedule"
	"swardbook/schedule/law"
)

// Where cool-season and warm-season grass share a site, each area is told its own last
// safe day and its own awakening if they differ; where they agree, the site is told
// once, as on a site of one season.
func TestNoticesByArea(t *testing.T) {
	mixed := func(state, zone string) *schedule.Program {
		site := situations[0].site(t, state, zone, "tall fescue")
		warm, _ := agronomy.LookupGrass("bermudagrass")
		b := site.Areas[0]
		b.ID, b.Name, b.Stand = "b", "Sunny plot", agronomy.Stand{{Grass: warm, Percent: 100}}
		site.Areas = append(site.Areas, b)
		return plan(t, site)
	}
	p := mixed("WA", "8b") // the ground never freezes: growth closes the season, of bermudagrass first
	cool, warm := entry(t, p, "a/last-safe/1"), entry(t, p, "b/last-safe/1")
	if warm.Date.DayOfYear() >= cool.Date.DayOfYear() {
		t.Errorf("the warm-season area closes on %s, the cool-season one on %s", warm.Date, cool.Date)
	}
	if entry(t, p, "b/reopen/1").Date == entry(t, p, "a/reopen/1").Date {
		t.Error("both areas wake on one day")
	}
	if q := p.Filter("b", "", nil); len(q.Entries) == 0 || leftEntry(q, "a/last-safe/1") {
		t.Error("another area's notice stands in the cut")
	}
	p = mixed("OH", "6a") // frozen ground closes both
	entry(t, p, "site/last-safe/1")
	if a, b := entry(t, p, "a/reopen/1"), entry(t, p, "b/reopen/1"); !a.Date.Before(b.Date) {
		t.Errorf("the bermudagrass wakes on %s, the fescue on %s", b.Date, a.Date)
	}
	entry(t, plan(t, bluegrass(t)), "site/reopen/1")
}

func leftEntry(p *schedule.Program, id string) bool {
	for _, e := range p.Entries {
		if e.ID == id {
			return true
		}
	}
	return false
}

// The program says which state's law was looked up and whom to ask; without a state
// that none was, and that the extension office knows.
func TestLawNotesWithoutAState(t *testing.T) {
	site := lawn(t, "tall fescue", 2600, 80, 95)
	with := plan(t, site)
	site.Place.State, site.Place.Latitude, site.Place.Longitude = "", new(40.0), new(-83.0)
	without := plan(t, site)
	if len(with.Laws) == 0 || !strings.Contains(strings.Join(with.LawNotes, "\n"), "Local rules in Ohio") {
		t.Errorf("in Ohio: %d laws, %q", len(with.Laws), with.LawNotes)
	}
	if len(without.Laws) != 0 || len(without.LawNotes) != 2 || !strings.HasPrefix(without.LawNotes[0], "No state is given") || !strings.Contains(without.LawNotes[0], "county extension office") {
		t.Errorf("in no state: %v, %q", without.Laws, without.LawNotes)
	}
	for name, p := range map[string]*schedule.Program{"Ohio": with, "no state": without} {
		if last := len(p.LawNotes) - 1; last < 0 || p.LawNotes[last] != law.NoAdvice {
			t.Errorf("%s: the notes do not end by saying that this is no legal advice: %q", name, p.LawNotes)
		}
	}
}
