package nutrient

import (
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
)

// The grasses and states that keep to a published calendar, and the first and last
// day on which it feeds: warm-season grass through its season, cool-season grass in
// spring. Everybody else has none, but centipedegrass, whose calendar holds
// everywhere. [nc-tallfescue] [nc-macon] [tn-hozer] [ksu-eckert] [unl-calc]
// [unl-fech-2018] [ksu-warm] [unl-g2178] [lsu-strahan] [nc-centipede] [uga-coastal]
// [uf-winter]
func TestCellsCalendarDays(t *testing.T) {
	const anywhere = 0
	type held struct {
		state  string
		region int
		grass  string
	}
	february, march, may := Days{time.February, 1, time.February, 28}, Days{time.March, 1, time.March, 31}, Days{time.May, 1, time.May, 31}
	midsummer := Days{time.June, 1, time.July, 20} // early June and the middle of July
	printed := map[held]Days{
		{"NC", anywhere, "tall fescue"}: february, {"GA", anywhere, "tall fescue"}: february, {"TN", anywhere, "tall fescue"}: march,
		{"KS", anywhere, "tall fescue"}: may, {"KS", anywhere, "Kentucky bluegrass"}: may, {"KS", anywhere, "perennial ryegrass"}: may,
		{"NE", anywhere, "Kentucky bluegrass"}: {time.April, 20, time.May, 10},
		{"KS", anywhere, "bermudagrass"}:       {time.May, 1, time.August, 15}, {"NE", anywhere, "bermudagrass"}: {time.May, 1, time.August, 15},
		{"KS", anywhere, "zoysiagrass"}: midsummer, {"NE", anywhere, "zoysiagrass"}: midsummer, {"KS", anywhere, "buffalograss"}: midsummer,
		{"NE", anywhere, "buffalograss"}:   {time.June, 1, time.July, 31},
		{"LA", anywhere, "centipedegrass"}: {time.April, 1, time.July, 31},
	}
	for _, grass := range []string{"St. Augustinegrass", "bermudagrass", "zoysiagrass"} {
		printed[held{"LA", anywhere, grass}] = Days{time.April, 1, time.August, 15}
	}
	for _, grass := range []string{"bermudagrass", "zoysiagrass"} {
		printed[held{"GA", anywhere, grass}] = Days{time.April, 15, time.August, 31}
		printed[held{"SC", anywhere, grass}] = Days{time.April, 15, time.August, 31}
	}
	for _, grass := range []string{"St. Augustinegrass", "bermudagrass", "zoysiagrass", "bahiagrass", "carpetgrass"} {
		printed[held{"FL", 1, grass}] = Days{time.March, 15, time.September, 30}
		printed[held{"FL", 2, grass}] = Days{time.March, 1, time.October, 31}
	}
	for _, state := range []string{"AL", "AZ", "CA", "FL", "GA", "IN", "KS", "LA", "MN", "MS", "NC", "NE", "NY", "OH", "OR", "PA", "SC", "TN", "TX", "VA"} {
		for region := range 4 {
			for _, name := range agronomy.GrassNames() {
				g := check.Grass(t, name)
				part := region
				if state == "FL" && part == 0 { // where it is not known
					part = int(NorthFlorida)
				}
				want, ok := printed[held{state, part, g.Name}]
				if !ok {
					want, ok = printed[held{state, anywhere, g.Name}]
				}
				if !ok && g.Name == "centipedegrass" {
					want, ok = Days{time.June, 1, time.August, 31}, true
				}
				c, found := CalendarFor(state, Florida(region), agronomy.Stand{{Grass: g, Percent: 100}})
				if found != ok || c.In != want {
					t.Errorf("%s, region %d, %s: %q, %+v; want %+v", state, region, g.Name, c.Name, c.In, want)
				}
				if found && (c.Says == "" || c.Season != g.Season) {
					t.Errorf("%s: says %q, for grass of season %v", c.Name, c.Says, c.Season)
				}
				check.Resolve(t, []agronomy.Reason{{Text: c.Name + ".", Source: c.Source}})
			}
		}
	}
}

// A stand follows the calendar of its larger part; of two equal parts that of the
// one named first.
func TestCalendarOfTheLargerPart(t *testing.T) {
	fescue, blue := check.Grass(t, "tall fescue"), check.Grass(t, "Kentucky bluegrass")
	for _, c := range []struct {
		stand agronomy.Stand
		found bool
	}{
		{agronomy.Stand{{Grass: fescue, Percent: 60}, {Grass: blue, Percent: 40}}, true},
		{agronomy.Stand{{Grass: blue, Percent: 40}, {Grass: fescue, Percent: 60}}, true},
		{agronomy.Stand{{Grass: fescue, Percent: 40}, {Grass: blue, Percent: 60}}, false},
		{agronomy.Stand{{Grass: fescue, Percent: 50}, {Grass: blue, Percent: 50}}, true},
		{agronomy.Stand{{Grass: blue, Percent: 50}, {Grass: fescue, Percent: 50}}, false},
	} {
		if _, found := CalendarFor("NC", 0, c.stand); found != c.found {
			t.Errorf("%d %% %s, %d %% %s in North Carolina: a calendar %v, want %v", int(c.stand[0].Percent), c.stand[0].Grass.Name, int(c.stand[1].Percent), c.stand[1].Grass.Name, found, c.found)
		}
	}
}
