package plan_test

import (
	"os"
	"testing"

	"swardbook/agronomy"
	"swardbook/schedule"
	"swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

// A stamp is the later of the release and of the season's first day, and never in the
// future.
func TestStamps(t *testing.T) {
	text, err := os.ReadFile("../../examples/reading-garden/site.toml")
	if err != nil {
		t.Fatal(err)
	}
	site, problems := sitefile.Load("site.toml", text, nil)
	if schedule.Fatal(problems) {
		t.Fatal(problems)
	}
	bermuda, ok := agronomy.LookupGrass("bermudagrass")
	if !ok || site.Areas[0].ID != "east" || len(site.Areas) < 2 {
		t.Fatal("the garden has changed")
	}
	site.Areas[1].Stand = agronomy.Stand{{Grass: bermuda, Percent: 100}} // an entry for the whole site goes by the first area
	for _, c := range []struct {
		today  string
		season int
		want   func(schedule.Date) bool
		says   string
	}{
		{"2026-12-24", 2026, func(d schedule.Date) bool { return d == plan.Released() }, "the release, as the season began before it"},
		{"2026-12-24", 2027, func(d schedule.Date) bool { return d == plan.Released() }, "the release, as this season is not yet there"},
		{"2028-03-01", 2026, func(d schedule.Date) bool { return d == plan.Released() }, "the release"},
		{"2028-03-01", 2027, warmest(2027), "the warmest day of 2027"},
		{"2028-03-01", 2028, warmest(2027), "that day too"},
		{"2028-09-01", 2028, warmest(2028), "the warmest day of 2028"},
	} {
		today, err := schedule.ParseDate(c.today)
		if err != nil {
			t.Fatal(err)
		}
		stamp, err := plan.Stamps(site, today)
		if err != nil {
			t.Fatal(err)
		}
		for _, area := range []string{"east", ""} {
			if got := stamp(&schedule.Entry{Area: area, Season: c.season}); !c.want(got) || got.After(schedule.Later(today, plan.Released())) {
				t.Errorf("on %s an entry of season %d has %s, not %s", c.today, c.season, got, c.says)
			}
		}
	}
}

// warmest tells the middle of July to the first days of August, when Ohio is warmest
// (NOAA, U.S. Climate Normals 1991–2020: the daily normals of Columbus and Cleveland peak
// there; from memory).
func warmest(year int) func(schedule.Date) bool {
	return func(d schedule.Date) bool {
		return d.Year == year && !d.Before(schedule.Date{Year: year, Month: 7, Day: 10}) && !d.After(schedule.Date{Year: year, Month: 8, Day: 5})
	}
}
