package climate

import "testing"

// The windows follow their rules to the day.
func TestSeedingRules(t *testing.T) {
	y := yearOf(t, Place{State: "OH", Hardiness: "6a"})
	main, spring, dormant := y.SeedWindow(Cool).Main, y.SeedWindow(Cool).Spring, y.SeedWindow(Cool).Dormant
	near(t, "opens 8 weeks before the first freeze", main.Open.D, y.FirstFreeze().D-56, 1e-9)
	near(t, "best 7 weeks before the first freeze", main.Best.D, y.FirstFreeze().D-49, 1e-9)
	near(t, "closes 45 days before cold soil", main.Close.D, y.SoilFalls(2, 50).D-45, 1e-9)
	near(t, "odds", main.FreezeOdds, y.FreezeOdds(main.Close.Day(), 42), 1e-9)
	near(t, "spring opens", spring.Open.D, y.SoilRises(2, 50).D, 1e-9)
	near(t, "spring closes 8 weeks before the warmest day", spring.Close.D, y.mean.warmest-56, 1e-9)
	near(t, "dormant opens", dormant.Open.D, y.SoilFalls(2, 40).D, 1e-9)
	near(t, "dormant closes", dormant.Close.D, y.Ground().Median.D, 1e-9)
	warm := y.SeedWindow(Warm).Main
	near(t, "warm opens", warm.Open.D, y.SoilRises(2, 65).D, 1e-9)
	near(t, "warm best", warm.Best.D, y.SoilRises(2, 70).D, 1e-9)
	near(t, "warm closes 90 days before the first freeze", warm.Close.D, y.FirstFreeze().D-90, 1e-9)

	south := yearOf(t, Place{State: "GA", Hardiness: "8a"})
	near(t, "60 days in the South", south.SeedWindow(Warm).Main.Close.D, south.FirstFreeze().D-60, 1e-9)
	heat, _ := south.high.rises(85)
	near(t, "8 weeks before hot weather", south.SeedWindow(Cool).Spring.Close.D, heat-56, 1e-9)
	if south.SeedWindow(Cool).Dormant.OK {
		t.Error("no dormant seeding where the ground stays open")
	}

	// Where it stays hot until late, the window waits for cooler days.
	texas := yearOf(t, Place{State: "TX", Hardiness: "8a"})
	if w := texas.SeedWindow(Cool).Main; !w.OK || texas.High(w.Open.Day()) >= 85.1 {
		t.Errorf("opens %s at %v", w.Open.Day(), texas.High(w.Open.Day()))
	}
}

// Indiana: 15 August to 15 September in the north, September in the south.
// [purdue-ay3] The windows need not agree to the day, but must overlap well.
func TestSeedingInIndiana(t *testing.T) {
	for _, c := range []struct {
		zone        string
		open, close Day
	}{{"6a", DayOf(8, 15), DayOf(9, 15)}, {"7a", DayOf(9, 1), DayOf(9, 30)}} { // [purdue-ay3]
		w := yearOf(t, Place{State: "IN", Hardiness: c.zone}).SeedWindow(Cool).Main
		near(t, c.zone+" open", w.Open.D, float64(c.open), 8)
		near(t, c.zone+" close", w.Close.D, float64(c.close), 8)
	}
}

// The ground's dates are crossings of the conduction curve, with the spread
// of frozen ground. [model] section 6 and 7
func TestGroundRules(t *testing.T) {
	table := yearOf(t, Place{State: "OH", Hardiness: "6a"})
	s := stationByID(t, "USW00094846")
	own := yearOf(t, s.place())
	for _, c := range []struct {
		y  *Year
		sd float64
	}{{table, 20}, {own, 16}} { // [model] section 7
		g := c.y.Ground()
		near(t, "early", g.Early.D, c.y.SoilFalls(fiveCentimeters, 36).D, 1e-9)
		near(t, "median", g.Median.D, c.y.SoilFalls(fiveCentimeters, 33).D, 1e-9)
		near(t, "last safe", g.LastSafe.D, c.y.SoilFalls(fiveCentimeters, 40).D-7, 1e-9)
		near(t, "reopens", g.Reopens.D, c.y.SoilRises(fiveCentimeters, 40).D, 1e-9)
		near(t, "spread of the median", g.Median.SD, c.sd, 1e-9)
		if g.Kind.String() != "the ground freezes in most winters" {
			t.Error(g.Kind)
		}
	}
}
