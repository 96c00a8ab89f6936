package climate

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
)

// notes joins what is noted of a place's year.
func notes(t *testing.T, p Place) string { return strings.Join(yearOf(t, p).Notes, " ") }

// The user is told when the latitude is on one side of the equator and the seasons are
// those of the other, but not within 15 degrees of the equator, where the coldest month may
// be any, and not where the months hardly differ. [common]
func TestOddHalfOfTheWorld(t *testing.T) {
	months := func(swing float64) Place {
		var p Place
		for m := range 12 {
			mean := 60 - swing/2*math.Cos(2*math.Pi*float64(m)/12)
			p.Highs, p.Lows = append(p.Highs, Fahrenheit(mean+10)), append(p.Lows, Fahrenheit(mean-10))
		}
		return p
	}
	for _, c := range []struct {
		lat, swing float64
		odd        bool
	}{
		{-40, 30, true}, {40, 30, false}, {-16, 30, true}, {-15, 30, false}, {-14, 30, false}, {-40, 11, true}, {-40, 9, false},
	} {
		p := months(c.swing)
		p.Latitude = &c.lat
		if got := strings.Contains(notes(t, p), "is odd at latitude"); got != c.odd {
			t.Errorf("latitude %g, months %g °F apart: odd %v", c.lat, c.swing, got)
		}
		if y := yearOf(t, p); y.Southern != (c.lat < 0) {
			t.Errorf("latitude %g: southern %v", c.lat, y.Southern)
		}
	}
}

// The user is told when monthly means differ from what is usual for the half-zone by more
// than 6 °F, or by more than three times the error of its row. [common]
func TestMonthsFarFromTheZone(t *testing.T) {
	r, ok := findRow("OH", "6a")
	if !ok {
		t.Fatal("no row")
	}
	for off, odd := range map[float64]bool{-7: true, -5.5: false, 0: false, 5.5: false, 7: true} {
		p := Place{State: "OH", Hardiness: "6a"}
		for m := range 12 {
			mean := r.mean.At(float64(15+30*m)) + off
			p.Highs, p.Lows = append(p.Highs, Fahrenheit(mean+10)), append(p.Lows, Fahrenheit(mean-10))
		}
		if 3*float64(r.month) > 6 {
			t.Fatal("the row's own error decides, so nothing is tested")
		}
		if got := strings.Contains(notes(t, p), "away from what is usual for OH 6a"); got != odd {
			t.Errorf("%g °F off: told %v", off, got)
		}
		p.Hardiness = ""
		if strings.Contains(notes(t, p), "away from what is usual") {
			t.Errorf("%g °F off, no zone given: told", off)
		}
	}
}

// The user is told that a latitude or a longitude alone helps little.
func TestHalfAPosition(t *testing.T) {
	for _, c := range []struct {
		lat, lon, up bool
		told         bool
	}{{true, false, false, true}, {false, true, false, true}, {true, true, false, false}, {false, false, false, false}, {true, false, true, false}} {
		p := Place{State: "OH", Hardiness: "6a"}
		if c.lat {
			p.Latitude = new(41.0)
		}
		if c.lon {
			p.Longitude = new(-82.0)
		}
		if c.up {
			p.Elevation = new(Feet(800))
		}
		if got := strings.Contains(notes(t, p), "not one of them alone"); got != c.told {
			t.Errorf("%+v: told %v", c, got)
		}
	}
}

// The user is told how many months have their low above the high, a single one too.
func TestExchangedMonths(t *testing.T) {
	for n, want := range map[int]string{1: "month 1: the low, 70, is not below the high, 60", 2: "month 1: the low, 70, is not below the high, 60, and one month more like it", 3: "month 1: the low, 70, is not below the high, 60, and 2 months more like it"} {
		p := Place{Highs: flat(60), Lows: flat(40)}
		for m := range n {
			p.Lows[m] = 70
		}
		_, err := p.Year()
		var problems PlaceErrors
		if !errors.As(err, &problems) || len(problems) != 1 || problems[0].Problem != want {
			t.Errorf("%d months: %v, want %q", n, err, want)
		}
	}
	for high, refused := range map[Fahrenheit]bool{130: false, 131: true, 50: false, 49.9: true} {
		if _, err := (Place{Highs: flat(high), Lows: flat(40)}).Year(); (err != nil) != refused {
			t.Errorf("highs of %g °F: %v", float64(high), err)
		}
	}
}

// Spring dates spread by 9 days from year to year in the North, by 11 south of 41
// degrees; autumn dates by 8, by 11 at 40 °F and below. [model] section 7
func TestSpreadFromYearToYear(t *testing.T) {
	for lat, want := range map[float64]float64{40.9: 11, 41: 9, 41.1: 9} {
		y := yearOf(t, Place{State: "OH", Hardiness: "6a", Latitude: &lat})
		for _, f := range []Fahrenheit{40, 50, 65} {
			w := y.SoilRises(2, f)
			near(t, fmt.Sprintf("spring at %v, latitude %g", f, lat), w.YearSD, want, 1e-9)
			near(t, "with the place's own", w.SD, math.Hypot(y.errors.spring, want), 1e-9)
		}
	}
	y := yearOf(t, Place{State: "OH", Hardiness: "6a"})
	for f, want := range map[Fahrenheit]float64{39: 11, 40: 11, 40.1: 8, 50: 8} {
		near(t, fmt.Sprintf("autumn at %v", f), y.SoilFalls(2, f).YearSD, want, 1e-9)
	}
}

// The dates of a year have these names in tables and JSON, in this order.
func TestNamesOfDates(t *testing.T) {
	want := "ground_reopens growth_begins_cool soil_above_40f soil_above_50f soil_above_55f last_freeze growth_begins_warm soil_above_65f " +
		"soil_below_65f growth_slows_warm growth_ends_warm first_freeze growth_slows_cool soil_below_50f growth_ends_cool soil_below_40f last_safe ground_freeze_early ground_freeze_median"
	y := yearOf(t, Place{State: "OH", Hardiness: "6a"})
	var names []string
	at := map[string]When{}
	for _, e := range y.Events() {
		names = append(names, e.Name)
		at[e.Name] = e.When
	}
	if got := strings.Join(names, " "); got != want {
		t.Errorf("got %s", got)
	}
	for name, words := range map[string]string{
		"ground_reopens": "ground open again", "last_safe": "last safe day before the ground freezes", "ground_freeze_early": "ground frozen in an early year",
		"ground_freeze_median": "ground frozen in half of the years; uncertain by some weeks",
	} {
		if w := at[name]; w.Words != words || w.Never {
			t.Errorf("%s: %q, want %q", name, w.Words, words)
		}
	}
	if early, median := at["ground_freeze_early"], at["ground_freeze_median"]; !early.Quantile || !median.Quantile || at["last_safe"].Quantile {
		t.Error("the early and the middle of the years have no early and late of their own")
	}
	// Last safe a week before the top of the soil falls through 40 °F. [model] section 6
	fall := y.soil(fiveCentimeters)
	if d, _ := fall.falls(40); math.Abs(at["last_safe"].D-(d-7)) > 1e-9 {
		t.Errorf("last safe on %v, the soil falls through 40 °F on %v", at["last_safe"].D, d)
	}
	if never := yearOf(t, Place{State: "FL", Hardiness: "10b"}).Ground(); !never.Median.Never || never.Median.Words != "the ground does not freeze" {
		t.Errorf("in Florida: %+v", never.Median)
	}
}

// The nearest ZIP is the one at the shortest distance along a great circle, also far north,
// where a degree of longitude is short.
func TestNearestZIPOfAll(t *testing.T) {
	n, _, _, _, _, _ := zipParts()
	for _, at := range [][2]float64{{48.9, -119.6}, {25.1, -80.9}, {39.7, -105.6}, {64.5, -150.3}, {44.3, -69.1}, {46.9, -110.2}, {31.1, -104.4}, {21.2, -157.2}} {
		best := math.Inf(1)
		for i := range n {
			if z := zipAt(i, ""); z.State != "" {
				best = min(best, distanceBetween(at[0], at[1], z.Latitude, z.Longitude))
			}
		}
		z, far := NearestZIP(at[0], at[1])
		if far > best*1.01 || far < best-1e-9 || far != distanceBetween(at[0], at[1], z.Latitude, z.Longitude) {
			t.Errorf("%v: %s at %.2f km, the nearest is %.2f km away", at, z, far, best)
		}
		if again, err := FindZIP(z.Code); err != nil || again != z {
			t.Errorf("%v: %+v, by its code %+v, %v", at, z, again, err)
		}
	}
}

// A half-zone without a state has the same dates in the South as in the North, half a year
// later, also where freezes come in single nights.
func TestMirroredSingleNights(t *testing.T) {
	for _, zone := range []string{"9b", "10a", "8a"} {
		north := yearOf(t, Place{Hardiness: zone, Latitude: new(33.0)})
		south := yearOf(t, Place{Hardiness: zone, Latitude: new(-33.0)})
		for what, pair := range map[string][2]When{"first": {north.FirstFreeze(), south.FirstFreeze()}, "last": {north.LastFreeze(), south.LastFreeze()}} {
			if pair[0].Never != pair[1].Never {
				t.Errorf("zone %s, %s freeze: %+v in the North, %+v in the South", zone, what, pair[0], pair[1])
				continue
			}
			if apart := apartInYear(pair[0].D, pair[1].D); !pair[0].Never && math.Abs(apart-daysPerYear/2.0) > 2 {
				t.Errorf("zone %s, %s freeze: %.1f days apart", zone, what, apart)
			}
		}
		if f, l := south.FirstFreeze(), south.LastFreeze(); !f.Never && f.D-l.D > daysPerYear {
			t.Errorf("zone %s: the last freeze, %v, is not in the spring before the first, %v", zone, l.D, f.D)
		}
	}
	if !yearOf(t, Place{Hardiness: "9b", Latitude: new(-33.0)}).inSingleNights() {
		t.Error("freezes do not come in single nights, so nothing was tested")
	}
}

// Own records of one freeze leave the other to the model, and each is compared with
// the model's own.
func TestOneFreezeOnRecord(t *testing.T) {
	base := Place{State: "OH", Hardiness: "6a"}
	model := yearOf(t, base)
	for name, c := range map[string]struct {
		first, last Day
		told        []string
	}{
		"first": {DayOf(10, 20), 0, []string{"first freeze on 20 Oct"}},
		"last":  {0, DayOf(5, 5), []string{"last freeze on 5 May"}},
		"both":  {DayOf(10, 20), DayOf(5, 5), []string{"first freeze on 20 Oct", "last freeze on 5 May"}},
	} {
		p := base
		p.FirstFreeze, p.LastFreeze = c.first, c.last
		y := yearOf(t, p)
		var records []string
		for _, n := range y.Notes {
			if strings.HasPrefix(n, "Your records") {
				records = append(records, n)
			}
		}
		if len(records) != len(c.told) {
			t.Errorf("%s: %q", name, records)
		}
		for _, want := range c.told {
			if !slices.ContainsFunc(records, func(n string) bool { return strings.Contains(n, want) }) {
				t.Errorf("%s: %q lacks %q", name, records, want)
			}
		}
		if (c.first == 0) != (y.FirstFreeze().Day() == model.FirstFreeze().Day()) || (c.last == 0) != (y.LastFreeze().Day() == model.LastFreeze().Day()) {
			t.Errorf("%s: %s and %s, the model %s and %s", name, y.FirstFreeze().Day(), y.LastFreeze().Day(), model.FirstFreeze().Day(), model.LastFreeze().Day())
		}
	}
}

// A source is cited with one stop after each part, and has a short name with its
// year, if it has one.
func TestCitations(t *testing.T) {
	for key, want := range map[string][2]string{
		"purdue-ay3":  {"Reicher 1998", "Reicher, Z. & Throssell, C. 1998. Establishing turfgrass areas from seed. Purdue University AY-3."},
		"gp-pace":     {"PACE Turf", "PACE Turf. Undated, read 2026. Modified warm season growth potential model. With Turf growth potentials: a tool with many uses."},
		"az-1995":     {"Kopec 1995", "Kopec, D.M. (University of Arizona). 1995. Fall turf fertilization for cool season grasses. Turf Tips, August 1995."},
		"common":      {"", "Common practice, no source."},
		"soldat-fall": {"Soldat", "Soldat, D. (University of Wisconsin-Madison). Undated, read 2026. Rethinking fall soluble nitrogen fertilization of cool-season grasses. Interview, Golfdom."},
	} {
		s := Sources()[key]
		if s.Tag() != want[0] || s.Cite() != want[1] {
			t.Errorf("%s: %q, %q; want %q", key, s.Tag(), s.Cite(), want)
		}
	}
	if got := (Source{By: "A.", Title: "Why?", How: "memory"}).Cite(); got != "A. Undated. Why?" {
		t.Errorf("got %q", got)
	}
}
