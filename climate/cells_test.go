package climate

import (
	"testing"
)

// The figures of the model, compared with its description once more by eye, so
// that two that have changed places show. [model] sections 3 and 3b: how the mean
// air temperature and its daily range move by height and half-zone, year's mean and
// the two waves, °F; and how the monthly means fall with height, °F per km.
func TestCellsOfTheModel(t *testing.T) {
	for name, c := range map[string]struct {
		got  move
		want [2][5]float64
	}{
		"elevation":        {perKm, [2][5]float64{{-5.40, 2.14, -0.10, 0.62, 0.18}, {-0.38, 0, 0.28, 0.85, -0.01}}},
		"half-zone":        {perZone, [2][5]float64{{4.373, 1.488, 0.363, 0.080, 0.071}, {-1.785, 0.425, 0.129, -0.045, -0.220}}},
		"half-zone square": {perZoneSquare, [2][5]float64{{0.109, 0.178, 0.014, -0.063, -0.112}, {-0.278, 0.213, 0.078, 0.095, 0.040}}},
	} {
		for i, cycle := range [2]Cycle{c.got.mean, c.got.spread} {
			if got := [5]float64{cycle.Mean, cycle.C1, cycle.S1, cycle.C2, cycle.S2}; got != c.want[i] {
				t.Errorf("%s: %v, want %v", name, got, c.want[i])
			}
		}
	}
	if highLapse != [12]float64{-8.4, -10.4, -12.0, -12.5, -12.0, -11.5, -11.3, -11.2, -11.1, -10.7, -9.9, -8.4} {
		t.Errorf("highs by height: %v", highLapse)
	}
	if lowLapse != [12]float64{-7.2, -8.8, -9.4, -9.5, -9.7, -9.8, -9.5, -9.3, -8.8, -7.9, -7.3, -7.3} {
		t.Errorf("lows by height: %v", lowLapse)
	}
	for name, pair := range map[string][2]float64{
		"swing from day to day [model] section 2": {dayToDay, 8}, "last freeze by latitude [model] section 4": {lastFreezePerDegree, -0.11}, "the latitude without a change [model] section 4": {neutralLatitude, 39},
		"growth that is almost none [gp-pace]": {almostNone, 0.10}, "growth at which little is taken up [soldat-fall]": {littleTaken, 0.20}, "heat [common]": {float64(hot), 85},
		"south of the North [model] section 7": {southOfNorth, 41}, "freezes in single nights [model] section 4": {singleNights, 8}, "stations that count [model] section 3b": {neighbours, 20},
		"least shrinking [ncei-normals]": {leastShrink, 0.65}, "km to the nearest station [model] section 3b": {farthestNearest, 100}, "km of height [common]": {farthestHeight, 1}, "8 years in 10 [model] section 4": {eightInTen, 1.2816},
		"ideal before the freeze [common]": {idealBeforeFreeze, 49}, "first before the freeze [common]": {firstBeforeFreeze, 56}, "before growth [windows]": {beforeGrowth, 30}, "before heat [common]": {coolBeforeHeat, 56},
		"warm-season before the freeze [purdue-ay3]": {warmBeforeFreeze, 90}, "in the South [purdue-ay3]": {warmBeforeFreezeSth, 60}, "seedlings that stand a freeze [common]": {youngStand, 42}, "°F days to a stand [windows]": {toStand, 475}, "°F days to come up [common]": {toComeUp, 150},
	} {
		if pair[0] != pair[1] {
			t.Errorf("%s: %v, want %v", name, pair[0], pair[1])
		}
	}
	// Codes of missing values in the weather service's files. [ncei-normals]
	for _, text := range []string{"-9999", "-8888", "-7777", "-6666", "-5555", "-999.9", "-888.8", "-777.7", "-666.6", "-555.5"} {
		if v, err := normal(text); err == nil {
			t.Errorf("%s is read as %v", text, v)
		}
	}
	if v, err := normal("-55.5"); err != nil || v != -55.5 {
		t.Errorf("-55.5: %v, %v", v, err)
	}
}
