package climate

import "math"

// SowWindow is a time of the year to sow. Open, Best and Close have day numbers that can
// be compared (see [When]); sow from Open to Close, best from Best on.
type SowWindow struct {
	OK                bool // there is such a window here
	AllYear           bool // with OK: any day will do, and the three events are Never
	Open, Best, Close When
	FreezeOdds        float64 // chance of a freeze within six weeks of sowing on the closing day; 0 for dormant seed
	Words             string  // the window and its rule, or why there is none
}

// Seeding is when to sow a grass of one season.
type Seeding struct {
	Main    SowWindow // autumn for cool-season grass; spring and summer for warm-season grass
	Spring  SowWindow // second best for cool-season grass; none for warm-season grass
	Dormant SowWindow // into cold soil, to come up in spring; cool-season grass only
}

// Days of the seeding rules.
const (
	idealBeforeFreeze   = 49 // [common] ideal 6 to 8 weeks before the average first freeze: the middle
	firstBeforeFreeze   = 56 // [common] 8 weeks: the beginning of the ideal
	beforeGrowth        = 30 // [windows] spring sowing begins a month before growth at the earliest
	coolBeforeHeat      = 56 // [common] spring seeding done 8 weeks before hot weather
	warmBeforeFreeze    = 90 // [purdue-ay3] [az-1995] [common] warm-season: to 90 days before first frost
	warmBeforeFreezeSth = 60 // [purdue-ay3] [az-1995] [common] 60 in the South
	youngStand          = 42 // [common] days until seedlings stand a freeze
)

// Growing degree days above a mean of 40 °F that cool-season grass needs
// before its growth ends in autumn.
const (
	growthBase = Fahrenheit(40)
	toStand    = 475.0 // [windows] °F days to a stand: fitted on the last days of 34 published autumn windows
	toComeUp   = 150.0 // [common] °F days to come up: a fortnight at a mean of 51 °F
)

// Soil temperatures at 2 in for sowing.
const (
	coolSoil    Fahrenheit = 50 // [common] cool-season 50 to 65 °F
	workSoil    Fahrenheit = 40 // [windows] spring sowing begins as soon as the soil can be worked
	warmSoil    Fahrenheit = 65 // [common] warm-season 65 to 70 °F
	warmSoilRun Fahrenheit = 70 // [common]
	dormantSoil Fahrenheit = 40 // [common] seed does not sprout in colder soil
	seedDepth   Inches     = 2  // [common]
)

// SeedWindow works out when to sow grass of the season.
func (y *Year) SeedWindow(s Season) Seeding {
	if s == Warm {
		none := noWindow("warm-season grass is sown only once, from spring to summer")
		return Seeding{Main: y.warmWindow(), Spring: none, Dormant: none}
	}
	return Seeding{Main: y.autumnWindow(), Spring: y.springWindow(), Dormant: y.dormantWindow()}
}

// autumnWindow opens 8 weeks before the average first freeze, or when highs
// fall under 85 °F if that is later, and closes on the last day from which the
// warmth that a stand needs is still to come before growth ends.
func (y *Year) autumnWindow() SowWindow {
	freeze := y.FirstFreeze()
	cold := y.SoilFalls(seedDepth, coolSoil)
	cool := y.cools()
	if freeze.Never {
		if freeze.Below || cold.Never {
			return noWindow("no autumn window for cool-season grass: " + freeze.Words + ", " + cold.Words)
		}
		freeze = cold // without freezes, the day the soil falls through 50 °F stands for the first
	}
	w := SowWindow{
		Open:  freeze.moved(-firstBeforeFreeze, "8 weeks before the average first freeze"),
		Best:  freeze.moved(-idealBeforeFreeze, "7 weeks before the average first freeze, the middle of the ideal 6 to 8"),
		Close: y.lastWarmth(toStand, "the last day with enough warmth ahead for a stand before growth ends"),
	}
	if w.Close.Never {
		w.Close = freeze.moved(-youngStand, "6 weeks before the average first freeze, as grass grows all year")
	}
	if !cool.Never && cool.D > w.Open.D {
		w.Open = cool
	}
	return y.checked(w, "autumn, the best time for cool-season grass")
}

// lastWarmth is the last day from which `need` growing degree days are still to come
// before growth of cool-season grass ends; Never where growth does not end.
func (y *Year) lastWarmth(need float64, words string) When {
	end := y.GrowthEnds(Cool)
	if end.Never {
		return end
	}
	days, sum := 0.0, 0.0
	for ; sum < need && days < daysPerYear/2; days++ {
		sum += max(0, y.mean.At(end.D-days)-float64(growthBase))
	}
	return end.moved(-days, words)
}

// SowingOdds are the chances, 0 to 1, that grass sown on a day comes up in the
// same growing season, and that it makes a stand before the season ends. In
// the half of the year in which it warms both are 1: seed waits for warmth.
func (y *Year) SowingOdds(d Day, s Season) (comesUp, stands float64) {
	day := float64(d)
	for day < y.mean.warmest {
		day += daysPerYear
	}
	if day > y.mean.coldest {
		return 1, 1
	}
	up, stand := y.lastWarmth(toComeUp, ""), y.lastWarmth(toStand, "")
	if s == Warm {
		up, stand = y.SoilFalls(seedDepth, warmSoil), y.warmWindow().Close
	}
	return 1 - up.chance(day), 1 - stand.chance(day)
}

// springWindow runs from soil rising through 40 °F, when it can be worked, but
// no earlier than a month before growth, to 8 weeks before hot weather: highs
// of 85 °F, or the warmest day where it does not get so hot.
func (y *Year) springWindow() SowWindow {
	open, growth := y.SoilRises(seedDepth, workSoil), y.GrowthBegins(Cool)
	switch {
	case growth.Never && growth.Below, open.Never && open.Below:
		return noWindow("no spring window for cool-season grass: " + growth.Words)
	case growth.Never: // grass grows all year: only the warming of the soil marks the spring
		if open = y.SoilRises(seedDepth, coolSoil); open.Never {
			return noWindow("no spring window for cool-season grass: " + open.Words)
		}
	case open.Never || growth.D-beforeGrowth > open.D:
		open = growth.moved(-beforeGrowth, "a month before growth begins")
	}
	heat, how := y.high.rises(float64(hot))
	words := "8 weeks before highs reach 85 °F (29.4 °C)"
	if how == staysBelow {
		heat, how = y.mean.warmest, crosses
		words = "8 weeks before the warmest day"
	}
	if how == staysAbove {
		return noWindow("no spring window for cool-season grass: it is hot all year")
	}
	end := y.spring(heat, crosses, "", hot).moved(-coolBeforeHeat, words)
	return y.checked(SowWindow{Open: open, Best: open, Close: end}, "spring, second best for cool-season grass")
}

// dormantWindow runs from soil falling through 40 °F to the freezing of the
// ground, where the ground freezes in most winters.
func (y *Year) dormantWindow() SowWindow {
	g := y.Ground()
	open := y.SoilFalls(seedDepth, dormantSoil)
	if g.Kind != GroundMostWinters || open.Never || g.Median.Never {
		return noWindow("no dormant window: the soil does not stay cold enough for seed to wait until spring")
	}
	w := y.checked(SowWindow{Open: open, Best: open, Close: g.Median}, "dormant, before snow: the seed waits for spring")
	w.FreezeOdds = 0 // the seed has not come up
	return w
}

// warmWindow runs from soil rising through 65 °F to 90 days before the
// average first freeze; 60 days in the South, taken as where the ground does
// not freeze.
func (y *Year) warmWindow() SowWindow {
	open, best := y.SoilRises(seedDepth, warmSoil), y.SoilRises(seedDepth, warmSoilRun)
	before, words := warmBeforeFreeze, "90 days before the average first freeze"
	if y.Ground().Kind == GroundNever {
		before, words = warmBeforeFreezeSth, "60 days before the average first freeze"
	}
	end := y.FirstFreeze()
	if end.Never && !end.Below { // no freeze to fear: warm soil is what counts
		end = y.SoilFalls(seedDepth, warmSoil)
		words = "60 days before soil at 2 in (5 cm) falls through 65 °F (18.3 °C)"
	}
	switch {
	case open.Never && open.Below, end.Never && end.Below:
		return noWindow("no window for warm-season grass: the soil does not warm to 65 °F (18.3 °C) for long enough")
	case open.Never: // the soil stays warm, whatever a single night brings
		return SowWindow{OK: true, AllYear: true, Open: open, Best: open, Close: When{Never: true, Words: open.Words}, Words: "warm-season grass may be sown all year: the soil stays above 65 °F (18.3 °C)"}
	}
	w := SowWindow{Open: open, Best: best, Close: end.moved(float64(-before), words)}
	if best.Never {
		w.Best = open
	}
	return y.checked(w, "spring to summer, for warm-season grass")
}

func noWindow(why string) SowWindow {
	never := When{Never: true}
	return SowWindow{Open: never, Best: never, Close: never, Words: why}
}

// checked refuses a window that would end before it opens, and works out the odds
// of a freeze for its last sowing.
func (y *Year) checked(w SowWindow, name string) SowWindow {
	if w.Close.D < w.Open.D {
		return noWindow("no window: " + name + " would close (" + w.Close.Words + ") before it opens (" + w.Open.Words + ")")
	}
	w.OK = true
	w.Best.D = min(max(w.Best.D, w.Open.D), w.Close.D)
	w.FreezeOdds = y.FreezeOdds(w.Close.Day(), youngStand)
	w.Words = name + ": from " + w.Open.Words + " to " + w.Close.Words
	return w
}

// cools is the day after which normal highs are under 85 °F.
func (y *Year) cools() When {
	d, how := y.high.falls(float64(hot))
	w := y.autumn(d, how, "normal high", hot)
	if !w.Never {
		w.D = math.Ceil(w.D)
	}
	return w
}
