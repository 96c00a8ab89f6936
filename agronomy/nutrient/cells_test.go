package nutrient

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
	"swardbook/agronomy/soil"
)

// The figures of feeding, whole, typed from the sources and not from the code:
// a wrong digit in either shows here.

func near(t *testing.T, got, want float64, what string, args ...any) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*max(1, math.Abs(want))) {
		t.Errorf(what+": %v, want %v", append(args, got, want)...)
	}
}

// Pounds by level on a Mehlich-3 loam, whose bands are those of the sufficiency
// levels. The grid is a working compromise, common practice; its anchors are in
// TestNeedsInsideAnchors.
func TestCellsNeed(t *testing.T) {
	levels := []soil.Level{soil.VeryLow, soil.Low, soil.Medium, soil.High, soil.VeryHigh}
	for _, row := range []struct {
		nutrient agronomy.Nutrient
		isNew    bool
		ppm      [5]agronomy.PPM
		year     [5]float64
		single   [5]float64
	}{
		{agronomy.Phosphorus, true, [5]agronomy.PPM{5, 20, 40, 80, 200}, [5]float64{3, 2, 1, 0.5, 0}, [5]float64{3, 2, 1, 0.5, 0}},
		{agronomy.Phosphorus, false, [5]agronomy.PPM{5, 20, 40, 80, 200}, [5]float64{1.5, 1, 0.5, 0, 0}, [5]float64{1, 1, 1, 1, 1}},
		{agronomy.Potassium, true, [5]agronomy.PPM{20, 60, 100, 300, 400}, [5]float64{3, 2, 1, 0, 0}, [5]float64{1, 1, 1, 1, 1}},
		{agronomy.Potassium, false, [5]agronomy.PPM{20, 60, 100, 300, 400}, [5]float64{3, 2, 1, 0, 0}, [5]float64{1, 1, 1, 1, 1}},
	} {
		for i, ppm := range row.ppm {
			r := agronomy.Report{Method: agronomy.Mehlich3, Texture: agronomy.Loam, Depth: 4}
			reading := agronomy.Reading{Given: true, PPM: ppm}
			r.Phosphorus, r.Potassium = reading, reading
			need := PhosphorusNeed
			if row.nutrient == agronomy.Potassium {
				need = PotassiumNeed
			}
			n, err := need(r, "", row.isNew)
			if err != nil || n.Level != levels[i] || n.Carried != 0 {
				t.Errorf("%s %v ppm: %+v (%v), want %s", row.nutrient, ppm, n, err, levels[i])
			}
			near(t, float64(n.Year), row.year[i], "%s, %s, new %v, a year", row.nutrient, levels[i], row.isNew)
			near(t, float64(n.Single), row.single[i], "%s, %s, new %v, at once", row.nutrient, levels[i], row.isNew)
		}
	}
}

// The most in a year, reached with a laboratory's own far-off optimum: P2O5 2,
// K2O 4, Mg 1, at once 1 of each; common practice. 1 ppm in 4 in is 0.02755 lb
// of the element.
func TestCellsYearlyCaps(t *testing.T) {
	far := agronomy.Reading{Given: true, PPM: 0, Wanted: agronomy.Optimum{Given: true, Low: 400, High: 500}}
	r := agronomy.Report{Depth: 4, Phosphorus: far, Potassium: far, Magnesium: far}
	element := 400 * 300000 * 4 / 1e6 / 43.56
	p, errP := PhosphorusNeed(r, "", false)
	k, errK := PotassiumNeed(r, "", false)
	mg, errMg := MagnesiumNeed(r, "")
	for _, c := range []struct {
		n          Need
		err        error
		name       string
		year, bagN float64
	}{{p, errP, "P2O5", 2, 2.2913}, {k, errK, "K2O", 4, 1.2046}, {mg, errMg, "Mg", 1, 1}} {
		if c.err != nil {
			t.Errorf("%s: %v", c.name, c.err)
		}
		near(t, float64(c.n.Year), c.year, "%s a year", c.name)
		near(t, float64(c.n.Single), 1, "%s at once", c.name)
		if want := element*c.bagN - c.year; math.Abs(float64(c.n.Carried)-want) > 0.01 {
			t.Errorf("%s carried: %v, want %v", c.name, c.n.Carried, want)
		}
	}
}

// Lines through lawn reports [common]; what a year's nitrogen
// takes out of the soil by the minimum levels [mlsn-k-2to1], which New York's
// course guide works out as 42 ppm for 2.58 lb [ny-nmp-2019].
func TestCellsOtherSchools(t *testing.T) {
	for _, c := range [][2]float64{{1, 2.6}, {13, 0.704}, {16, 0.23}, {17.5, 0}, {60, 0}} {
		got, ok := MichiganP2O5(agronomy.PPM(c[0]))
		if !ok {
			t.Errorf("Michigan P at %v ppm: none", c[0])
		}
		near(t, float64(got), c[1], "Michigan P at %v ppm", c[0])
	}
	for _, c := range [][2]float64{{87, 1.3}, {179.5, 0.65}, {272, 0}, {300, 0}} {
		got, ok := MichiganK2O(agronomy.PPM(c[0]))
		if !ok {
			t.Errorf("Michigan K at %v ppm: none", c[0])
		}
		near(t, float64(got), c[1], "Michigan K at %v ppm", c[0])
	}
	if _, ok := MichiganP2O5(0.9); ok {
		t.Error("Michigan's P line begins at 1 ppm")
	}
	if _, ok := MichiganK2O(86.9); ok {
		t.Error("Michigan's K line begins at 87 ppm")
	}
	if use := mlsnUse(2.58); math.Round(float64(use)) != 42 {
		t.Errorf("2.58 lb of nitrogen take %v ppm of potassium, want 42", use)
	}
	near(t, float64(FromOptimum(agronomy.Phosphorus, 0.5, 4, 4)), 3.5*300000*4/1e6/43.56*agronomy.P2O5PerP, "0.5 found, 4 wanted")
	near(t, float64(FromOptimum(agronomy.Sulfur, 5, 4, 4)), 0, "more than wanted")
}

// Caps and gaps of nitrogen. [ill-1995] [uf-ep236] [ksu-eckert]
// [az-1995] [md-ag-6-224]; heat, 30 days and gaps are common practice.
func TestCellsNitrogenLimits(t *testing.T) {
	cool, warm := LimitsOfNitrogen(agronomy.Cool), LimitsOfNitrogen(agronomy.Warm)
	for name, pair := range map[string][3]float64{
		"at once":                {float64(cool.Single), float64(warm.Single), 1},
		"at once, half slow":     {float64(cool.SingleSlow), float64(warm.SingleSlow), 1.5},
		"quick, at once":         {float64(cool.Soluble), float64(warm.Soluble), 0.7},
		"in heat":                {float64(cool.Heat), float64(warm.Heat), 0.5},
		"quick, 30 days":         {float64(cool.Soluble30Days), float64(warm.Soluble30Days), 1},
		"days after a quick one": {float64(cool.DaysSoluble), float64(warm.DaysSoluble), 28},
		"days after a slow one":  {float64(cool.DaysSlow), float64(warm.DaysSlow), 42},
	} {
		near(t, pair[0], pair[2], "cool-season, %s", name)
		near(t, pair[1], pair[2], "warm-season, %s", name)
	}
	near(t, float64(cool.Year), 4, "cool-season, a year")
	near(t, float64(warm.Year), 0, "warm-season, a year")
	c, w := SharesOf(agronomy.Cool), SharesOf(agronomy.Warm)
	if c.Spring != 0.33 || c.Summer != 0 || c.Fall != 0.67 || w.Spring != 0.33 || w.Summer != 0.67 || w.Fall != 0 {
		t.Errorf("shares: %+v, %+v", c, w)
	}
}

// Calendars as printed, lb N of each dose, low and high. [ksu-eckert]
// [nc-tallfescue] [nc-macon] [unl-calc] [unl-fall] [unl-fech-2018] [az-1995]
// [uf-enh73] [lsu-strahan]
func TestCellsCalendars(t *testing.T) {
	printed := map[string][][2]float64{
		"Kansas, medium care":               {{1, 1}, {1, 1}},
		"North Carolina, tall fescue":       {{1, 1}, {1, 1}, {0.5, 1}},
		"Nebraska, bluegrass":               {{1, 1}, {1.5, 2}, {0.25, 0.3}},
		"Arizona, Flagstaff":                {{1.5, 1.5}, {0.75, 0.75}},
		"Florida, St. Augustine, high care": {{1, 1}, {1, 1}, {1, 1}, {1, 1}},
		"Louisiana, centipede":              {{0.5, 0.5}, {0.5, 0.5}},
	}
	n := 0
	for _, c := range PublishedCalendars() {
		if len(c.Dressings) > 0 {
			n++
		}
		doses := printed[c.Name]
		low := 0.0
		if len(doses) != len(c.Dressings) || c.Source == "" {
			t.Fatalf("%s: %+v", c.Name, c)
		}
		for i, d := range c.Dressings {
			if d.When == "" {
				t.Errorf("%s: dose %d has no time", c.Name, i+1)
			}
			near(t, float64(d.Low), doses[i][0], "%s, %s, low", c.Name, d.When)
			near(t, float64(d.High), doses[i][1], "%s, %s, high", c.Name, d.When)
			low += doses[i][0]
		}
		near(t, float64(c.Low()), low, "%s, the year", c.Name)
		high := 0.0
		for _, d := range doses {
			high += d[1]
		}
		near(t, float64(c.High()), high, "%s, the year at most", c.Name)
		for _, name := range c.Grasses {
			if check.Grass(t, name).Season != c.Season {
				t.Errorf("%s: season %v of %s", c.Name, c.Season, name)
			}
		}
		if warm := c.Name[:1] == "F"; len(c.Grasses) == 0 && warm != (c.Season == agronomy.Warm) {
			t.Errorf("%s: season %v", c.Name, c.Season)
		}
	}
	if n != len(printed) {
		t.Errorf("%d calendars with doses, want %d", n, len(printed))
	}
}

// The year's nitrogen by grass and care where no state's table stands in, and by
// grass and part of Florida: low, middle and high end. [uf-fyn]
func TestCellsNitrogenYear(t *testing.T) {
	cares := []Care{LowCare, MediumCare, HighCare}
	for name, year := range map[string][3]float64{
		"Kentucky bluegrass": {1.5, 3, 4}, "perennial ryegrass": {2, 3, 4}, "tall fescue": {1.5, 2.5, 4},
		"fine fescue": {1, 1.5, 2.5}, "creeping bentgrass": {2, 3, 4}, "bermudagrass": {2, 3, 4}, "zoysiagrass": {1, 2, 3},
		"St. Augustinegrass": {2, 3, 4}, "centipedegrass": {0.5, 1, 2}, "bahiagrass": {1, 2, 3}, "carpetgrass": {0.5, 1, 2}, "buffalograss": {0.5, 1, 2},
	} {
		for i, care := range cares {
			n, err := NitrogenYear(NitrogenCase{Stand: agronomy.Stand{{Grass: check.Grass(t, name), Percent: 100}}, Care: care, State: "OH"})
			if err != nil {
				t.Error(err)
			}
			near(t, float64(n.Year), year[i], "%s, %s care", name, care)
		}
	}
	for name, parts := range map[string][3][2]float64{
		"bermudagrass": {{3, 5}, {4, 6}, {5, 7}}, "zoysiagrass": {{3, 5}, {3, 6}, {4, 6}}, "St. Augustinegrass": {{2, 4}, {2, 5}, {4, 6}},
		"centipedegrass": {{1, 2}, {2, 3}, {2, 3}}, "bahiagrass": {{2, 3}, {2, 4}, {2, 4}},
	} {
		for part, ends := range map[Florida][2]float64{0: parts[0], NorthFlorida: parts[0], CentralFlorida: parts[1], SouthFlorida: parts[2]} {
			for i, care := range cares {
				n, err := NitrogenYear(NitrogenCase{Stand: agronomy.Stand{{Grass: check.Grass(t, name), Percent: 100}}, Care: care, State: "FL", Florida: part, ClippingsReturned: true})
				if err != nil || len(n.Assumed) != len(map[bool][]int{true: {1}}[part == 0]) {
					t.Errorf("%s in %s Florida: assumed %v (%v)", name, part, n.Assumed, err)
				}
				check.Resolve(t, n.Assumed)
				near(t, float64(n.Year), ends[0]+(ends[1]-ends[0])*float64(i)/2, "%s, %s Florida, %s care", name, part, care)
			}
		}
	}
}

// Late doses: Purdue 0.5 to 1, Nebraska 0.3 to 0.5 in zone 5 and colder; custom
// by state; growth at which a fifth is taken up. [purdue-latefall] [unl-fech-2018] [ksu-eckert]
// [nc-tallfescue] [az-1995] [umn-2012] [soldat-fall]
func TestCellsLate(t *testing.T) {
	for zone, dose := range map[int][2]float64{0: {0.3, 0.5}, 3: {0.3, 0.5}, 5: {0.3, 0.5}, 6: {0.5, 1}, 9: {0.5, 1}} {
		for texture, high := range map[agronomy.Texture]float64{agronomy.Loam: dose[1], agronomy.Sand: dose[0], agronomy.LoamySand: dose[0], agronomy.SandyLoam: dose[1]} {
			late := LateNitrogenFor(agronomy.Cool, zone, texture)
			near(t, float64(late.Low), dose[0], "zone %d, %s, low", zone, texture)
			near(t, float64(late.High), high, "zone %d, %s, high", zone, texture)
			if assumed := slices.ContainsFunc(late.Why, func(r agronomy.Reason) bool { return strings.Contains(r.Text, "No hardiness zone is given") }); assumed != (zone == 0) {
				t.Errorf("zone %d: says that no zone is given: %v", zone, assumed)
			}
		}
	}
	for state, dose := range map[string][2]float64{"IN": {0.5, 1}, "KS": {1, 1.5}, "NE": {0.25, 0.3}, "NC": {1, 1}, "AZ": {0.75, 1}, "MN": {0, 0}} {
		low, high, source, ok := LateCustom(state)
		if !ok || source == "" {
			t.Errorf("%s has no late custom", state)
		}
		near(t, float64(low), dose[0], "%s, low", state)
		near(t, float64(high), dose[1], "%s, high", state)
	}
	if _, _, _, ok := LateCustom("OH"); ok {
		t.Error("Ohio has a late custom")
	}
	if LateGrowth != 0.2 || LateDaysToFreeze != 21 || LateFirstFallMowed != 3 || GrowthFloor != 0.1 || QuickFeeds != 4 {
		t.Error("a fifth of growth, 21 days, three mowings, a tenth of growth, 4 weeks")
	}
}

// Growth potential by temperature, to four places; the Fahrenheit form is New
// York's. [gp-code] [ny-nmp-2019]
func TestCellsGrowth(t *testing.T) {
	for _, c := range [][2]float64{{0, 0.0013}, {5, 0.0243}, {10, 0.1915}, {15, 0.6615}, {18, 0.9360}, {20, 1}, {22, 0.9360}, {25, 0.6615}, {30, 0.1915}, {35, 0.0243}} {
		if got := GrowthPotentialC(c[0], agronomy.Cool); math.Abs(got-c[1]) > 0.00006 {
			t.Errorf("cool-season at %v °C: %.4f, printed %v", c[0], got, c[1])
		}
	}
	for _, c := range [][2]float64{{5, 0.0010}, {10, 0.0111}, {15, 0.0734}, {20, 0.2909}, {25, 0.6926}, {28, 0.9122}, {31, 1}, {35, 1}} {
		if got := GrowthPotentialC(c[0], agronomy.Warm); math.Abs(got-c[1]) > 0.00006 {
			t.Errorf("warm-season at %v °C: %.4f, printed %v", c[0], got, c[1])
		}
	}
	for _, c := range [][3]float64{{68, 1, math.Exp(-20 * 20.0 / 288)}, {58, math.Exp(-0.5), math.Exp(-30 * 30.0 / 288)}, {88, math.Exp(-2), 1}, {95, math.Exp(-0.5 * 2.7 * 2.7), 1}} {
		near(t, GrowthPotentialF(c[0], agronomy.Cool), c[1], "cool-season at %v °F", c[0])
		near(t, GrowthPotentialF(c[0], agronomy.Warm), c[2], "warm-season at %v °F", c[0])
	}
}

// Days between what is put down; common practice but for lime [vt-452-717].
func TestCellsSpacing(t *testing.T) {
	type pair struct{ first, then Things }
	lime, hydrated := LimeDown, HydratedLimeDown
	printed := map[pair]int{
		{lime, AmmoniumDown}: 14, {hydrated, AmmoniumDown}: 28, {AmmoniumDown, lime}: 7, {AmmoniumDown, hydrated}: 7,
		{lime, PhosphorusDown}: 14, {hydrated, PhosphorusDown}: 14, {PhosphorusDown, lime}: 14, {PhosphorusDown, hydrated}: 14,
		{lime, lime}: 90, {lime, hydrated}: 90, {hydrated, lime}: 90, {hydrated, hydrated}: 90,
		{SolubleNDown, SolubleNDown}: 28, {SolubleNDown, SlowNDown}: 28, {SlowNDown, SolubleNDown}: 42, {SlowNDown, SlowNDown}: 42,
		{PhosphorusDown, PhosphorusDown}: 28, {PotassiumDown, PotassiumDown}: 28, {SulfurDown, SulfurDown}: 60, {GypsumDown, GypsumDown}: 60,
		{SulfurDown, lime}: 180, {SulfurDown, hydrated}: 180, {SeedUp, SolubleNDown}: 28, {SeedUp, SlowNDown}: 28, {SeedUp, FirstMow}: 14,
		{lime, SampleTaken}: 180, {hydrated, SampleTaken}: 180,
		{SolubleNDown, SampleTaken}: 42, {SlowNDown, SampleTaken}: 42, {PhosphorusDown, SampleTaken}: 42, {PotassiumDown, SampleTaken}: 42,
	}
	together := map[pair]bool{{lime, lime}: true, {lime, hydrated}: true, {hydrated, lime}: true, {hydrated, hydrated}: true, {lime, AmmoniumDown}: true, {AmmoniumDown, lime}: true, {lime, PhosphorusDown}: true, {hydrated, PhosphorusDown}: true, {PhosphorusDown, lime}: true, {PhosphorusDown, hydrated}: true}
	for a := LimeDown; a <= SampleTaken; a <<= 1 {
		for b := LimeDown; b <= SampleTaken; b <<= 1 {
			p := pair{a, b}
			r, ok := Spacing(a, b)
			if r.Days != printed[p] || ok != (printed[p] > 0) || ok && (r.UnlessTilled != together[p] || r.Why.Text == "") {
				t.Errorf("%s then %s: %d days, tilled together %v; want %d, %v", a, b, r.Days, r.UnlessTilled, printed[p], together[p])
			}
			if aim := map[bool]int{true: 180}[a <= hydrated && b <= hydrated]; r.Aim != aim {
				t.Errorf("%s then %s: aims at %d days, want %d", a, b, r.Aim, aim)
			}
		}
	}
	if LongestSpacing() != 180 {
		t.Errorf("the longest is %d days", LongestSpacing())
	}
	if got := (SolubleNDown | SlowNDown | PhosphorusDown).String(); got != "quick nitrogen, slow nitrogen or phosphorus" {
		t.Error(got)
	}
}

// Last useful days: common practice but for what is named in each Why.
func TestCellsLastUse(t *testing.T) {
	both := map[LastKind]LastUseful{
		LastLime: {BeforeFreeze: 7}, LastPhosphorus: {BeforeFreeze: 30}, LastPotassium: {BeforeGrowthEnds: 30},
		LastMagnesium: {BeforeGrowthEnds: 30}, LastSulfur: {BeforeSoil50: 60}, LastSample: {},
	}
	own := map[agronomy.Season]map[LastKind]LastUseful{
		agronomy.Cool: {LastSolubleN: {Growth: 0.2, BeforeEarlyFreeze: 21}, LastSlowN: {BeforeGrowthEnds: 42}, LastSeed: {BeforeSoil50: 45}},
		agronomy.Warm: {LastSolubleN: {BeforeFirstFrost: 42}, LastSlowN: {BeforeFirstFrost: 42}, LastSeed: {BeforeFirstFrost: 90, InSouth: 60}},
	}
	for season, more := range own {
		for _, r := range LastUsefuls(season) {
			want, ok := both[r.Kind]
			if !ok {
				want = more[r.Kind]
			}
			want.Kind, want.Season, want.Why = r.Kind, season, r.Why
			if r != want {
				t.Errorf("%v: %+v, want %+v", season, r, want)
			}
		}
	}
}

// Seedlings. [uc-starter] [purdue-p] [unl-renovate] [turf-trade-est]
// [common] [vt-452-717]; the rest common practice.
func TestCellsSeedlings(t *testing.T) {
	r := SeedlingsOf(agronomy.Stand{{Grass: check.Grass(t, "tall fescue"), Percent: 100}})
	pairs := map[string][4]float64{
		"starter N":    {float64(r.StarterN[0]), float64(r.StarterN[1]), 0.5, 1},
		"starter P2O5": {float64(r.StarterP2O5[0]), float64(r.StarterP2O5[1]), 1, 1.5},
		"every days":   {float64(r.EveryDays[0]), float64(r.EveryDays[1]), 28, 42},
		"first year":   {float64(r.FirstYear[0]), float64(r.FirstYear[1]), 2, 3},
		"spring":       {float64(r.SpringN[0]), float64(r.SpringN[1]), 0.5, 1},
		"first":        {float64(r.FirstDays), float64(r.FirstN), 28, 0.5},
		"up by":        {float64(r.EmergesBy), float64(r.SpringMowings), 11, 2},
	}
	for name, p := range pairs {
		near(t, p[0], p[2], "%s", name)
		near(t, p[1], p[3], "%s", name)
	}
	near(t, r.BareSpotShare, 0.67, "share on bare spots")
	for name, year := range map[string][2]float64{ // grass with at most 1.5 lb a year at medium care gets half
		"fine fescue": {1, 1.5}, "centipedegrass": {1, 1.5}, "buffalograss": {1, 1.5}, "carpetgrass": {1, 1.5},
		"Kentucky bluegrass": {2, 3}, "perennial ryegrass": {2, 3}, "zoysiagrass": {2, 3}, "bahiagrass": {2, 3},
	} {
		r := SeedlingsOf(agronomy.Stand{{Grass: check.Grass(t, name), Percent: 60}, {Grass: check.Grass(t, name), Percent: 40}})
		near(t, float64(r.FirstYear[0]), year[0], "%s, first year, least", name)
		near(t, float64(r.FirstYear[1]), year[1], "%s, first year, most", name)
		if want, last := fmt.Sprintf("%v to %v lb N in the first year", year[0], year[1]), r.Why[len(r.Why)-1].Text; !strings.Contains(last, want) {
			t.Errorf("%s: %q does not say %q", name, last, want)
		}
	}
}
