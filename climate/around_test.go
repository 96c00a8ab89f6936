package climate

import (
	"encoding/binary"
	"fmt"
	"math"
	"testing"
)

// around makes stations a given distance away at sea level, each with its published
// median of the first freeze and how many tenths of a day it lies beyond the rule;
// notGiven where it publishes none.
func around(days ...[3]int) (near []neighbour) {
	for _, d := range days {
		b := make([]byte, stationSize)
		binary.LittleEndian.PutUint16(b[8:], 1000)
		for at, v := range map[int]int{60: d[1], 62: d[1] - 200, 64: d[2], 66: -d[2]} {
			if d[1] == notGiven {
				v = notGiven
			}
			binary.LittleEndian.PutUint16(b[at:], uint16(int16(v)))
		}
		near = append(near, neighbour{station: station(b), distance: float64(d[0])})
	}
	return near
}

// A place freezes in most years if half of the nearest dozen stations publish a median;
// the mean of those counts the nearer more. By hand: weights 1/((d/25)² + 0.05) are 20
// at the place and 1/1.05 at 25 km. [model] section 4
func TestHalfOfTheDozen(t *testing.T) {
	for publish := range 13 {
		var days [][3]int
		for i := range 14 { // two more lie behind the dozen, and do not count
			day := 300
			if i < 12 && i >= publish {
				day = notGiven
			}
			days = append(days, [3]int{25, day, 0})
		}
		day, any, half := observedFreeze(around(days...), 0, false)
		if any != (publish > 0) || half != (publish >= 6) || publish > 0 && math.Abs(day-300) > 1e-9 {
			t.Errorf("%d of 12 publish: %v, any %v, half %v", publish, day, any, half)
		}
	}
	const far = 1 / 1.05
	day, _, _ := observedFreeze(around([3]int{0, 300, 0}, [3]int{25, 310, 0}), 0, false)
	near(t, "mean", day, (20*300+far*310)/(20+far), 1e-9)
	day, _, half := observedFreeze(around([3]int{0, 300, 0}, [3]int{25, notGiven, 0}), 0, true)
	near(t, "in spring", day, 100, 1e-9)
	if !half {
		t.Error("one of two is half")
	}
}

// The mean difference between the published medians and the rule is drawn toward 0 by half
// the largest weight. By hand: weights 1/((d/25)² + 0.02) are 50 at the place, 1/1.02 at
// 25 km. [model] section 3b
func TestBeyondTheRule(t *testing.T) {
	const far = 1 / 1.02
	for i, c := range []struct {
		near []neighbour
		want float64
	}{
		{around([3]int{0, 300, 40}), 4 * 50 / (50 + 25.0)},
		{around([3]int{0, 300, 40}, [3]int{25, 300, -20}), (4*50 - 2*far) / (50 + far + 25)},
		{around([3]int{0, notGiven, 0}, [3]int{25, 300, -20}), -2 * far / (far + 25)},
		{around([3]int{0, notGiven, 0}), 0},
	} {
		near(t, fmt.Sprint("case ", i+1), beyondRule(c.near, 0, false), c.want, 1e-9)
		near(t, fmt.Sprint("case ", i+1, " in spring"), beyondRule(c.near, 0, true), -c.want, 1e-9)
	}
	// 150 m of height count as 25 km. [model] section 3b
	near(t, "height", around([3]int{0, 300, 0})[0].weight(0.15, 0.02), far, 1e-9)
}

// Where freezes come in single nights, the published medians are used if half of the
// stations publish one; if fewer do, only where the rule finds no freeze and the half-zone
// has one in nearly every year, as its lowest night averages under 30 °F. Elsewhere the date
// of the rule is moved. [model] sections 3b and 4
func TestFreezesOfTheNeighbours(t *testing.T) {
	all, few, none := around([3]int{0, 340, 30}, [3]int{0, 340, 30}), around([3]int{0, 340, 30}, [3]int{0, notGiven, 0}, [3]int{0, notGiven, 0}), around([3]int{0, notGiven, 0})
	cold, mild := Zone(0), Zone(0)
	for z := range Zone(26) {
		if low, _ := z.Bounds(); low == 25 {
			cold = z
		} else if low == 30 {
			mild = z
		}
	}
	year := func(lowest Fahrenheit) *Year { // the daily low at its least
		return newYear("", false, Cycle{Mean: float64(lowest) + 30, C1: -20}, Cycle{Mean: 20}, errorsOfPosition(false, true))
	}
	for _, c := range []struct {
		what   string
		lowest Fahrenheit
		near   []neighbour
		zone   Zone
		want   string // published, moved, none or rule
	}{
		{"cold winters", 20, all, cold, "moved"}, {"cold winters, few", 20, few, cold, "moved"},
		{"single nights", 45, all, mild, "published"}, {"single nights, few, in a cold zone", 45, few, cold, "published"},
		{"single nights, few, in a mild zone", 45, few, mild, "none"}, {"single nights, none", 45, none, cold, "none"},
	} {
		y := year(c.lowest)
		rule := y.FirstFreeze()
		if rule.Never == (c.want == "moved") {
			t.Fatalf("%s: the rule says %+v", c.what, rule)
		}
		y.useNeighbours(c.near, 0, c.zone)
		got := y.FirstFreeze()
		switch c.want {
		case "published":
			if got.Never || math.Abs(got.D-340) > 1 {
				t.Errorf("%s: %+v, want day 340", c.what, got)
			}
		case "moved":
			near(t, c.what, got.D-rule.D, beyondRule(c.near, 0, false), 1e-6)
		case "none":
			if !got.Never {
				t.Errorf("%s: %+v, want none", c.what, got)
			}
		}
	}
}
