package schedule

import (
	"testing"

	"swardbook/agronomy/nutrient"
	"swardbook/climate"
)

// almanacOf lays the year of a place around a program of one year.
func almanacOf(t *testing.T, state, hardiness string) *Almanac {
	t.Helper()
	year, err := climate.Place{State: state, Hardiness: hardiness}.Year()
	if err != nil {
		t.Fatal(err)
	}
	return NewAlmanac(year, on(t, "2026-09-01"), on(t, "2027-08-31"))
}

// Events laid on dates, over the year's ends too.
func TestAlmanacDates(t *testing.T) {
	a := almanacOf(t, "OH", "6a")
	for day, want := range map[float64]string{
		1: "2026-01-01", 0: "2025-12-31", -364: "2025-01-01", -365: "2024-12-31", 365: "2026-12-31", 366: "2027-01-01", 730: "2027-12-31", 731: "2028-01-01", 0.4: "2025-12-31", 0.5: "2026-01-01", 59.4: "2026-02-28",
	} {
		if got := a.On(climate.When{D: day}, 2026).String(); got != want {
			t.Errorf("day %v of 2026: %s, want %s", day, got, want)
		}
	}
	for _, c := range []struct {
		day        float64
		from, want string
	}{
		{100, "2026-04-10", "2026-04-10"}, {100, "2026-04-11", "2027-04-10"}, {380, "2026-01-15", "2026-01-15"}, {380, "2026-01-16", "2027-01-15"}, {-10, "2026-12-21", "2026-12-21"}, {-10, "2026-12-22", "2027-12-21"},
	} {
		if got := a.After(climate.When{D: c.day}, on(t, c.from)).String(); got != c.want {
			t.Errorf("day %v from %s: %s, want %s", c.day, c.from, got, c.want)
		}
	}
	if got := a.After(climate.When{Never: true}, on(t, "2026-01-01")); !got.IsZero() {
		t.Errorf("what never comes, comes on %s", got)
	}
	if ys := a.Years(); ys[0] != 2025 || ys[len(ys)-1] != 2029 || len(ys) != 5 {
		t.Errorf("years %v, want one before the start to two after the end", ys)
	}
}

// A turf year runs from the warmest day for cool-season grass, from the coldest
// for warm-season grass, and what comes 45 days before it counts to it.
func TestTurfYears(t *testing.T) {
	south := climate.Place{Latitude: new(-35.3)} // Canberra's means in °F, from memory
	for m := range 12 {
		south.Highs = append(south.Highs, []climate.Fahrenheit{82, 81, 76, 68, 60, 54, 53, 55, 61, 67, 73, 79}[m])
		south.Lows = append(south.Lows, []climate.Fahrenheit{56, 56, 51, 44, 38, 34, 32, 34, 38, 43, 48, 53}[m])
	}
	for name, place := range map[string]climate.Place{"Ohio": {State: "OH", Hardiness: "6a"}, "Georgia": {State: "GA", Hardiness: "8a"}, "the south": south} {
		year, err := place.Year()
		if err != nil {
			t.Fatal(err)
		}
		a := NewAlmanac(year, on(t, "2025-09-01"), on(t, "2026-08-31"))
		if gap := a.Warmest.D - a.Coldest.D; gap < 120 || gap > 245 {
			t.Errorf("%s: coldest on day %v, warmest on day %v: not of one winter and summer", name, a.Coldest.D, a.Warmest.D)
		}
		if a.Warmest.D != float64(a.Year.Warmest()) {
			t.Errorf("%s: warmest on day %v", name, a.Warmest.D)
		}
		for s, event := range map[climate.Season]climate.When{climate.Cool: a.Warmest, climate.Warm: a.Coldest} {
			begins := a.YearBegins(2026, s)
			if begins != a.On(event, 2026) {
				t.Errorf("%s, season %v begins on %s", name, s, begins)
			}
			for add, want := range map[int]int{-366: 2024, -1: 2025, 0: 2026, 364: 2026, 365: 2027} {
				if got := a.TurfYear(begins.AddDays(add), s); got != want {
					t.Errorf("%s, season %v, %d days from the start of 2026: %d", name, s, add, got)
				}
			}
			for add, want := range map[int]int{-46: 2025, -45: 2026, 0: 2026, 319: 2026, 320: 2027} {
				if got := a.SeasonOf(begins.AddDays(add), s); got != want {
					t.Errorf("%s, season %v, %d days from the start of 2026: joins %d", name, s, add, got)
				}
			}
		}
	}
}

func TestGrowthByDay(t *testing.T) {
	a := almanacOf(t, "GA", "8a")
	g := a.GrowthOf(climate.Cool)
	if g != a.GrowthOf(climate.Cool) || g == a.GrowthOf(climate.Warm) {
		t.Error("the course of a grass is worked out once for each season's grass")
	}
	for day := climate.Day(1); day <= 365; day++ {
		if got := g.on(on(t, "2026-01-01").OnDay(day)); got != a.Growth(day, climate.Cool) || got <= 0 {
			t.Errorf("day %d: growth %v, want %v", day, got, a.Growth(day, climate.Cool))
		}
	}
	if g.Begins != a.GrowthBegins(climate.Cool) || g.Slows != a.GrowthSlows(climate.Cool) || g.Ends != a.GrowthEnds(climate.Cool) {
		t.Errorf("%+v", g)
	}
}

// The ground is open from its reopening to the last safe day, or all year where
// it never freezes.
func TestOpenGround(t *testing.T) {
	a := almanacOf(t, "OH", "6a")
	if len(a.Open) != 5 {
		t.Fatalf("%d openings in five years", len(a.Open))
	}
	for i, o := range a.Open {
		y := 2025 + i
		if o.From != a.On(a.Ground.Reopens, y) || o.To != a.On(a.Ground.LastSafe, y) || o.Opens != "the ground is open again" || o.Closes != "last safe day before the ground freezes" {
			t.Errorf("%d: %+v", y, o)
		}
	}
	south := almanacOf(t, "FL", "10a").Open
	if len(south) != 1 || south[0].From != on(t, "2026-09-01").AddDays(-800) || south[0].To != on(t, "2027-08-31").AddDays(1200) || south[0].Opens != "the ground is open all year" {
		t.Errorf("Florida: %+v", south)
	}
	if s := a.Between(climate.When{D: 100}, climate.When{D: 99}, "a", "b"); len(s) != 0 {
		t.Errorf("an opening that ends before it begins: %+v", s)
	}
	if s := a.Between(climate.When{D: 100}, climate.When{D: 100}, "a", "b"); len(s) != 5 || s[0].Days() != 1 || s[0].Opens != "a" || s[0].Closes != "b" {
		t.Errorf("an opening of one day: %+v", s)
	}
}

// The last useful days of the table in agronomy laid on the place's year: the
// earliest event binds, and says so.
func TestLastDaysOnDates(t *testing.T) {
	ohio, georgia := almanacOf(t, "OH", "6a"), almanacOf(t, "GA", "8a")
	for name, c := range map[string]struct {
		a      *Almanac
		kind   nutrient.LastKind
		season climate.Season
		last   Date
		words  string
	}{
		"lime":                  {ohio, nutrient.LastLime, climate.Cool, ohio.On(ohio.Ground.Median, 2026).AddDays(-7), "7 days before the ground freezes"},
		"phosphorus":            {ohio, nutrient.LastPhosphorus, climate.Cool, ohio.On(ohio.Ground.Median, 2026).AddDays(-30), "30 days before the ground freezes"},
		"potassium":             {ohio, nutrient.LastPotassium, climate.Cool, ohio.On(ohio.GrowthEnds(climate.Cool), 2026).AddDays(-30), "30 days before growth ends"},
		"sulfur":                {ohio, nutrient.LastSulfur, climate.Cool, ohio.On(ohio.SoilFalls(2, 50), 2026).AddDays(-60), "60 days before soil at 2 in falls through 50 °F"},
		"quick nitrogen":        {ohio, nutrient.LastSolubleN, climate.Cool, ohio.On(ohio.GrowthSlows(climate.Cool), 2026), "growth falls to a fifth of its best"},
		"nitrogen, warm season": {georgia, nutrient.LastSolubleN, climate.Warm, georgia.On(georgia.FirstFreeze(), 2026).AddDays(-42), "42 days before the average first freeze"},
	} {
		r := c.a.lastDays(c.kind, c.season)
		// The cuts run from the time the limiting season is over, of 2025 on.
		if len(r.cuts) != 5 {
			t.Errorf("%s: %d cuts", name, len(r.cuts))
			continue
		}
		if cut := r.cuts[1]; cut.To != c.last || cut.Closes != c.words || cut.From != c.a.On(c.a.Coldest, 2026) || cut.Opens != "the year turns" {
			t.Errorf("%s: %+v, want to %s, %s", name, cut, c.last, c.words)
		}
		if r.why.Source == "" || r.why.Text == "" {
			t.Errorf("%s: %+v", name, r.why)
		}
	}
	if r := ohio.lastDays(nutrient.LastSample, climate.Cool); len(r.cuts) != 0 {
		t.Errorf("sampling ends on %+v", r.cuts)
	}
	// A seeding in the South needs 60 days before the freeze, elsewhere 90.
	if georgia.southUS() || !almanacOf(t, "FL", "9b").southUS() || !almanacOf(t, "FL", "11a").southUS() || ohio.southUS() {
		t.Error("the South is where the average first freeze comes after 10 November, or never")
	}
	for a, days := range map[*Almanac]int{georgia: 90, almanacOf(t, "FL", "9b"): 60} {
		if cut := a.lastDays(nutrient.LastSeed, climate.Warm).cuts[1]; cut.To != a.On(a.freeze, 2026).AddDays(-days) {
			t.Errorf("seed %d days before the freeze: %+v", days, cut)
		}
	}
	c := &Case{Almanac: ohio, Season: climate.Cool}
	cut, why := c.LastUseful(ohio.Open, nutrient.LastLime)
	if len(cut) != 5 || len(why) != 1 || why[0] != ohio.lastDays(nutrient.LastLime, climate.Cool).why || cut[1].To != ohio.On(ohio.Ground.Median, 2026).AddDays(-7) && cut[1].To != ohio.Open[1].To {
		t.Errorf("lime: %+v, %v", cut, why)
	}
	if all, why := c.LastUseful(ohio.Open, nutrient.LastSample); len(all) != 5 || why != nil {
		t.Errorf("sampling: %+v, %v", all, why)
	}
}
