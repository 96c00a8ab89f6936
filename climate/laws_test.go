package climate

import (
	"math"
	"reflect"
	"strings"
	"testing"
)

// everyRow visits every place of the table.
func everyRow(t testing.TB, visit func(p Place, y *Year)) {
	t.Helper()
	n := 0
	for line := range strings.Lines(hardinessTable) {
		f := strings.SplitN(line, ",", 3)
		if f[0] == "state" {
			continue
		}
		p := Place{State: strings.Trim(f[0], "*"), Hardiness: strings.Trim(f[1], "*")}
		if p.State == "" {
			p.Latitude = new(40.0)
		}
		n++
		visit(p, yearOf(t, p))
	}
	if n != 338 {
		t.Fatalf("%d rows", n)
	}
}

// Laws that hold for the year of every place.
func TestLawsOfTheYear(t *testing.T) {
	everyRow(t, func(p Place, y *Year) {
		name := p.State + " " + p.Hardiness
		for d := Day(1); d <= 365; d++ {
			if !(y.Low(d) < y.Mean(d) && y.Mean(d) < y.High(d)) {
				t.Fatalf("%s %s: low %v, mean %v, high %v", name, d, y.Low(d), y.Mean(d), y.High(d))
			}
			for _, s := range []Season{Cool, Warm} {
				if g := y.Growth(d, s); !(g >= 0 && g <= 1) {
					t.Fatalf("%s %s: growth %v", name, d, g)
				}
			}
		}
		for _, e := range y.Events() {
			w := e.When
			switch {
			case w.Words == "":
				t.Errorf("%s %s: no words", name, e.Name)
			case w.Never && (w.D != 0 || w.SD != 0 || w.Day() != 0):
				t.Errorf("%s %s: never, yet %+v", name, e.Name, w)
			case !w.Never && !(w.SD >= w.YearSD && w.YearSD > 5 && w.SD < 80 && w.Day() >= 1 && w.Day() <= 365):
				t.Errorf("%s %s: %+v", name, e.Name, w)
			}
		}
		order := func(what string, a, b When) {
			if !a.Never && !b.Never && a.D > b.D {
				t.Errorf("%s %s: %s %.1f before %s %.1f", name, what, b.Words, b.D, a.Words, a.D)
			}
		}
		order("warm soil cools first", y.SoilFalls(2, 60), y.SoilFalls(2, 50))
		order("cool soil warms later", y.SoilRises(2, 50), y.SoilRises(2, 60))
		order("nitrogen before growth", y.GrowthSlows(Cool), y.GrowthEnds(Cool))
		order("warm grass stops first", y.GrowthEnds(Warm), y.GrowthEnds(Cool))
		order("freezes", y.LastFreeze(), y.FirstFreeze())
		g := y.Ground()
		order("last safe first", g.LastSafe, g.Early)
		order("early before median", g.Early, g.Median)
		order("open before closed", g.Reopens, g.LastSafe)
		if (g.Kind == GroundNever) != g.LastSafe.Never || (g.Kind == GroundNever) != g.Reopens.Never {
			t.Errorf("%s: %s, %+v", name, g.Kind, g)
		}
		for _, s := range []Season{Cool, Warm} {
			seeding := y.SeedWindow(s)
			for _, w := range []SowWindow{seeding.Main, seeding.Spring, seeding.Dormant} {
				if w.Words == "" {
					t.Errorf("%s %s: a window without words", name, s)
				}
				if w.OK && !w.AllYear {
					order("window opens", w.Open, w.Best)
					order("window closes", w.Best, w.Close)
				}
				if w.OK == w.Open.Never && !w.AllYear || !(w.FreezeOdds >= 0 && w.FreezeOdds <= 1) {
					t.Errorf("%s %s: %+v", name, s, w)
				}
			}
		}
	})
}

// On the day a level is passed the curve is at the level.
func TestCrossingsAreOnTheCurve(t *testing.T) {
	everyRow(t, func(p Place, y *Year) {
		for f := Fahrenheit(35); f <= 80; f += 5 {
			for _, w := range []When{y.AirFalls(f), y.AirRises(f)} {
				if !w.Never {
					near(t, p.State+p.Hardiness+" "+w.Words, y.mean.At(w.D), float64(f), 0.01)
				} else if w.Below != (y.mean.max() <= float64(f)) {
					t.Errorf("%s %s: %+v", p.State, p.Hardiness, w)
				}
			}
			if w := y.AirFalls(f); !w.Never {
				if w.D < y.mean.warmest || w.D > y.mean.coldest || y.AirRises(f).D > y.mean.warmest {
					t.Errorf("%s %s: %v out of its half of the year", p.State, p.Hardiness, w)
				}
			}
		}
	})
}

// Higher is colder, within a row.
func TestElevationCools(t *testing.T) {
	for _, p := range []Place{{State: "CO", Hardiness: "5b"}, {State: "NC", Hardiness: "7a"}} {
		last := math.Inf(1)
		for feet := Feet(0); feet <= 9000; feet += 1500 {
			p.Elevation = &feet
			mean := yearOf(t, p).mean.Mean
			if mean >= last {
				t.Errorf("%s at %.0f ft: %.2f °F after %.2f", p.State, float64(feet), mean, last)
			}
			last = mean
		}
	}
}

// The odds of a freeze: 1 in winter, near 0 in summer, growing with the days.
func TestFreezeOdds(t *testing.T) {
	y := yearOf(t, Place{State: "OH", Hardiness: "6a"})
	near(t, "midsummer", y.FreezeOdds(DayOf(7, 1), 30), 0, 0.01)
	near(t, "midwinter", y.FreezeOdds(DayOf(1, 15), 1), 1, 0.01)
	near(t, "December", y.FreezeOdds(DayOf(12, 20), 1), 1, 0.01)
	near(t, "until the median", y.FreezeOdds(DayOf(8, 1), int(y.FirstFreeze().Day()-DayOf(8, 1))), 0.5, 0.02)
	near(t, "from the spring median", y.FreezeOdds(y.LastFreeze().Day(), 10), 0.5, 0.02)
	last := 0.0
	for n := 0; n <= 120; n += 5 {
		odds := y.FreezeOdds(DayOf(8, 1), n)
		if odds < last {
			t.Errorf("%d days: odds %v after %v", n, odds, last)
		}
		last = odds
	}
	near(t, "Key West", yearOf(t, Place{State: "FL", Hardiness: "11b"}).FreezeOdds(DayOf(1, 15), 30), 0, 1e-9)
}

// Places at the edges of what a year can be.
func TestEdgesOfClimate(t *testing.T) {
	level := yearOf(t, Place{Highs: flat(80), Lows: flat(60)}) // no seasons at all
	for _, w := range []When{level.FirstFreeze(), level.LastFreeze(), level.SoilFalls(2, 50), level.GrowthEnds(Cool), level.AirRises(90)} {
		if !w.Never {
			t.Errorf("a level year has %+v", w)
		}
	}
	if level.Ground().Kind != GroundNever || level.SeedWindow(Cool).Main.OK || !level.SeedWindow(Warm).Main.AllYear {
		t.Errorf("%+v, %+v", level.Ground(), level.SeedWindow(Warm).Main)
	}
	bog := yearOf(t, Place{Highs: flat(55), Lows: flat(25)}) // freezes in any month
	if w := bog.FirstFreeze(); !w.Never || !w.Below || bog.FreezeOdds(200, 1) != 1 {
		t.Errorf("%+v", w)
	}
	if w := bog.SeedWindow(Cool).Main; w.OK {
		t.Errorf("%+v", w)
	}
	if kind := yearOf(t, Place{State: "PA", Hardiness: "7b"}).Ground().Kind; kind != GroundSomeWinters {
		t.Errorf("Pennsylvania 7b: %s", kind)
	}
	coast := yearOf(t, Place{State: "CA", Hardiness: "10b"}) // flat and mild
	if w := coast.SoilFalls(2, 50); !w.Never || w.Below {
		t.Errorf("%+v", w)
	}
	if w := coast.AirRises(60); w.Never || w.SD < 10 {
		t.Errorf("a flat curve needs a wide spread: %+v", w)
	}
}

func TestSameYearTwice(t *testing.T) {
	a, b := yearOf(t, Place{State: "MN", Hardiness: "4b"}), yearOf(t, Place{State: "MN", Hardiness: "4b"})
	if !reflect.DeepEqual(a, b) || !reflect.DeepEqual(a.Table(), b.Table()) {
		t.Error("the same place gives two years")
	}
	rows := a.Table()
	if len(rows) != 365 || rows[0].Day != 1 || rows[364].Day != 365 {
		t.Fatal(len(rows))
	}
	near(t, "summed degree days", rows[364].DegreeDays50, a.DegreeDays(50), 1e-6)
	for _, r := range rows {
		if r.Soil2 != a.Soil(2, r.Day) || r.Soil4 != a.Soil(4, r.Day) || r.Mean != a.Mean(r.Day) {
			t.Fatalf("%s: row and year differ", r.Day)
		}
	}
}

func BenchmarkPlaceYear(b *testing.B) {
	p := Place{State: "OH", Hardiness: "6a"}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Year(); err != nil {
			b.Fatal(err)
		}
	}
}

// A place's year with all its dates: the aim is under 100 µs.
func BenchmarkYearWithAllDates(b *testing.B) {
	p := Place{State: "OH", Hardiness: "6a"}
	b.ReportAllocs()
	for b.Loop() {
		y, err := p.Year()
		if err != nil {
			b.Fatal(err)
		}
		y.Events()
		y.SeedWindow(Cool)
		y.SeedWindow(Warm)
		y.Heat(Cool)
	}
}

func BenchmarkTable(b *testing.B) {
	y := yearOf(b, Place{State: "OH", Hardiness: "6a"})
	for b.Loop() {
		y.Table()
	}
}
