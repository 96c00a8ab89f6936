package agronomy

import (
	"math"
	"testing"
)

// The figures of grasses and units, whole, typed from the sources and not from
// the code: a wrong digit in either shows here.

// Year's nitrogen by care (our own, inside the published ranges), published
// range, Florida north, central, south, days to emerge, seed and mowing height.
// [ill-1995] [ksu-eckert] [uga-hall] [nc-tallfescue] [uf-fyn] [turf-trade-est]
// [common] [unl-renovate]; the rest common practice.
func TestCellsGrass(t *testing.T) {
	type figures struct {
		season    Season
		n         [3]PerThousand
		published [2]PerThousand
		florida   [3][2]PerThousand
		emerge    [2]int
		seed      [2]PerThousand
		mow       [2]Inches
	}
	printed := map[string]figures{
		"Kentucky bluegrass": {Cool, [3]PerThousand{1.5, 3, 4}, [2]PerThousand{1, 4}, [3][2]PerThousand{}, [2]int{14, 28}, [2]PerThousand{2, 3}, [2]Inches{2.5, 3.5}},
		"perennial ryegrass": {Cool, [3]PerThousand{2, 3, 4}, [2]PerThousand{2, 4}, [3][2]PerThousand{}, [2]int{5, 10}, [2]PerThousand{5, 8}, [2]Inches{2, 3}},
		"tall fescue":        {Cool, [3]PerThousand{1.5, 2.5, 4}, [2]PerThousand{1, 4}, [3][2]PerThousand{}, [2]int{7, 14}, [2]PerThousand{6, 8}, [2]Inches{3, 4}},
		"fine fescue":        {Cool, [3]PerThousand{1, 1.5, 2.5}, [2]PerThousand{1, 3}, [3][2]PerThousand{}, [2]int{7, 14}, [2]PerThousand{3, 5}, [2]Inches{2.5, 4}},
		"creeping bentgrass": {Cool, [3]PerThousand{2, 3, 4}, [2]PerThousand{2, 6}, [3][2]PerThousand{}, [2]int{7, 14}, [2]PerThousand{}, [2]Inches{}},
		"bermudagrass":       {Warm, [3]PerThousand{2, 3, 4}, [2]PerThousand{2, 4}, [3][2]PerThousand{{3, 5}, {4, 6}, {5, 7}}, [2]int{10, 21}, [2]PerThousand{1, 2}, [2]Inches{1, 2}},
		"zoysiagrass":        {Warm, [3]PerThousand{1, 2, 3}, [2]PerThousand{2, 4}, [3][2]PerThousand{{3, 5}, {3, 6}, {4, 6}}, [2]int{14, 28}, [2]PerThousand{1, 2}, [2]Inches{1, 2.5}},
		"St. Augustinegrass": {Warm, [3]PerThousand{2, 3, 4}, [2]PerThousand{2, 4}, [3][2]PerThousand{{2, 4}, {2, 5}, {4, 6}}, [2]int{}, [2]PerThousand{}, [2]Inches{2.5, 4}},
		"centipedegrass":     {Warm, [3]PerThousand{0.5, 1, 2}, [2]PerThousand{0.5, 2}, [3][2]PerThousand{{1, 2}, {2, 3}, {2, 3}}, [2]int{14, 28}, [2]PerThousand{0.25, 0.5}, [2]Inches{1.5, 2}},
		"bahiagrass":         {Warm, [3]PerThousand{1, 2, 3}, [2]PerThousand{2, 4}, [3][2]PerThousand{{2, 3}, {2, 4}, {2, 4}}, [2]int{14, 28}, [2]PerThousand{5, 10}, [2]Inches{3, 4}},
		"carpetgrass":        {Warm, [3]PerThousand{0.5, 1, 2}, [2]PerThousand{0.5, 2}, [3][2]PerThousand{}, [2]int{}, [2]PerThousand{1, 3}, [2]Inches{}},
		"buffalograss":       {Warm, [3]PerThousand{0.5, 1, 2}, [2]PerThousand{1, 3}, [3][2]PerThousand{}, [2]int{14, 28}, [2]PerThousand{2, 4}, [2]Inches{2, 3}},
		"seashore paspalum":  {season: Warm},
	}
	for name, want := range printed {
		g, ok := LookupGrass(name)
		got := figures{g.Season, g.N, g.Published, g.Florida, g.EmergeDays, g.SeedRate, g.Mow}
		if !ok || g.Name != name || got != want {
			t.Errorf("%s: %+v, want %+v", name, got, want)
		}
		ceiling := name == "fine fescue" || name == "centipedegrass"
		if g.Ceiling != ceiling || g.HasN() != (want.n[1] > 0) {
			t.Errorf("%s: ceiling %v, has a year's nitrogen %v", name, g.Ceiling, g.HasN())
		}
	}
	if OverseedRate(6) != 3 { // [unl-renovate]
		t.Error("overseeding takes half the seed")
	}
}

// The pH that suits each grass: from, to, limed to, limed under. [psu-liming-turf]
// [nc-home-report] [ar-lime] [uga-792] [ext-609803]; five from memory.
func TestCellsTargets(t *testing.T) {
	printed := map[string][4]PH{
		"Kentucky bluegrass": {6, 7, 6.5, 6}, "perennial ryegrass": {6, 7, 6.5, 6}, "tall fescue": {5.8, 7, 6.2, 5.8}, "fine fescue": {5.5, 6.5, 6, 5.5},
		"creeping bentgrass": {5.5, 6.5, 6, 5.5}, "bermudagrass": {5.5, 7, 6.2, 5.5}, "zoysiagrass": {5.8, 7, 6.2, 5.8}, "St. Augustinegrass": {5.5, 7, 6.2, 5.5},
		"centipedegrass": {5, 6, 5.5, 5}, "bahiagrass": {5.5, 6.5, 5.8, 5.5}, "carpetgrass": {4.8, 5.8, 5.3, 4.8}, "buffalograss": {6, 7.5, 6.5, 6}, "seashore paspalum": {5.5, 7.5, 6.5, 5.5},
	}
	for name, want := range printed {
		g, ok := GrassPH(name)
		if !ok || [4]PH{g.Low, g.High, g.Default, g.LimeBelow} != want || g.Source == "" {
			t.Errorf("%s: %+v, want %v", name, g, want)
		}
	}
	if len(printed) != len(GrassNames()) {
		t.Errorf("%d grasses, %d are printed", len(GrassNames()), len(printed))
	}
	if _, ok := GrassPH("moss"); ok {
		t.Error("moss has a target")
	}
}

// Units and oxides by definition and atomic weight, to the digits shown.
func TestCellsUnits(t *testing.T) {
	k, _ := MeqWeight(Potassium)
	ca, _ := MeqWeight(Calcium)
	mg, _ := MeqWeight(Magnesium)
	na, _ := MeqWeight(Sodium)
	for name, pair := range map[string][2]float64{
		"P2O5 in P": {P2O5PerP, 141.943 / 61.948}, "P in P2O5": {PPerP2O5, 61.948 / 141.943}, "K2O in K": {K2OPerK, 94.195 / 78.196}, "K in K2O": {KPerK2O, 78.196 / 94.195},
		"Ca in CaO": {CaPerCaO, 40.078 / 56.077}, "Mg in MgO": {MgPerMgO, 24.305 / 40.304}, "Na in Na2O": {NaPerNa2O, 45.980 / 61.979}, "S in sulfate": {SPerSulfate, 32.06 / 96.06},
		"K, ppm a meq": {float64(k), 390.98}, "Ca": {float64(ca), 200.39}, "Mg": {float64(mg), 121.53}, "Na": {float64(na), 229.90},
		"an acre": {SquareFeetPerAcre, 43560}, "a ton": {PoundsPerTon, 2000}, "a kilogram": {PoundsPerKilogram, 1 / 0.45359237}, "a square metre": {SquareFeetPerMeter2, 1 / 0.09290304},
		"1 lb/1000 sq ft in g/m2": {GramsPerM2PerThousand, 453.59237 / 92.90304}, "a gallon": {LitersPerGallon, 231 * 0.016387064}, "an inch": {MillimetersPerInch, 25.4}, "a metre": {FeetPerMeter, 1 / 0.3048},
		"an acre-inch of soil": {SoilPerAcreInch, 2e6 / (20.0 / 3)}, "a plough layer": {PoundsPerPloughLayer, 2e6},
		"per acre": {float64(PerThousand(1).PerAcre()), 43.56}, "per 1000 sq ft": {float64(PerAcre(43.56).PerThousand()), 1}, "tons": {float64(TonsPerAcre(1).PerThousand()), 45.9137},
		"in g/m2": {PerThousand(2).GramsPerM2(), 9.76486}, "in kg": {Pounds(10).Kilograms(), 4.53592}, "in m2": {SquareFeet(1000).Meters2(), 92.9030}, "in L": {Gallons(2).Liters(), 7.57082},
		"over an area":  {float64(PerThousand(5).Over(2600)), 13},
		"1 ppm in 4 in": {float64(PPM(1).In(4)), 0.0275482}, "120 ppm in the plough layer": {float64(PPM(120).InPloughLayer()), 240 / 43.56}, "2 lb/acre in 6⅔ in": {float64(PerAcre(2).PPM(20.0 / 3)), 1},
	} {
		if math.Abs(pair[0]-pair[1]) > 3e-6*math.Abs(pair[1]) {
			t.Errorf("%s: %v, want %v", name, pair[0], pair[1])
		}
	}
	if _, ok := MeqWeight(Phosphorus); ok {
		t.Error("phosphorus is counted in meq")
	}
}

// Every unit's name and what it stands for; the smallest and the largest size
// taken, and the first refused on each side.
func TestCellsQuantities(t *testing.T) {
	area := func(s string) (float64, error) { v, err := ParseArea(s); return float64(v), err }
	weight := func(s string) (float64, error) { v, err := ParseWeight(s); return float64(v), err }
	volume := func(s string) (float64, error) { v, err := ParseVolume(s); return float64(v), err }
	depth := func(s string) (float64, error) { v, err := ParseDepth(s); return float64(v), err }
	length := func(s string) (float64, error) { v, err := ParseLength(s); return float64(v), err }
	elevation := func(s string) (float64, error) { v, err := ParseElevation(s); return float64(v), err }
	rate := func(s string) (float64, error) { v, err := ParseRate(s); return float64(v), err }
	density := func(s string) (float64, error) { v, err := ParseDensity(s); return float64(v), err }
	watering := func(s string) (float64, error) { v, err := ParseWatering(s); return float64(v), err }
	percent := func(s string) (float64, error) { v, err := ParsePercent(s); return float64(v), err }
	weeks := func(s string) (float64, error) { v, err := ParseWeeks(s); return float64(v), err }
	coverage := func(s string) (float64, error) { v, err := ParseCoverage(s); return float64(v), err }
	const ft2, gal, kg, m = 10.76391042, 1 / 3.785411784, 2.2046226, 3.2808399
	for _, c := range []struct {
		parse func(string) (float64, error)
		units map[string]float64
		takes []string
		not   []string
	}{
		{area, map[string]float64{"sq ft": 1, "ft2": 1, "sqft": 1, "square feet": 1, "square foot": 1, "sf": 1, "m2": ft2, "sq m": ft2, "square meters": ft2, "square metres": ft2, "acre": 43560, "acres": 43560, "ac": 43560, "ha": 1e4 * ft2, "sq yd": 9, "yd2": 9, "square yards": 9}, []string{"1 sq ft", "1000 acres"}, []string{"0.99 sq ft", "1000.1 acres"}},
		{weight, map[string]float64{"lb": 1, "lbs": 1, "pound": 1, "pounds": 1, "oz": 0.0625, "ounces": 0.0625, "kg": kg, "g": kg / 1000, "ton": 2000, "tons": 2000, "t": 1000 * kg}, []string{"0 lb", "1000000 lb"}, []string{"1000001 lb"}},
		{volume, map[string]float64{"gal": 1, "gallon": 1, "gallons": 1, "qt": 0.25, "pt": 0.125, "fl oz": 1.0 / 128, "l": gal, "liter": gal, "liters": gal, "litre": gal, "litres": gal, "ml": gal / 1000}, []string{"0 gal", "100000 gal"}, []string{"100001 gal"}},
		{depth, map[string]float64{"in": 1, "inch": 1, "inches": 1, `"`: 1, "mm": 1 / 25.4, "cm": 1 / 2.54}, []string{"0.01 in", "60 in"}, []string{"0 in", "60.1 in"}},
		{length, map[string]float64{"ft": 1, "foot": 1, "feet": 1, "'": 1, "yd": 3, "m": m, "meters": m, "metres": m, "in": 1.0 / 12, "cm": m / 100, "mi": 5280, "km": 1000 * m}, []string{"0 ft", "1000000 ft"}, []string{"1000001 ft"}},
		{elevation, map[string]float64{"ft": 1, "m": m}, []string{"0 ft", "-1500 ft", "20000 ft"}, []string{"-1501 ft", "20001 ft"}},
		{rate, map[string]float64{"lb/1000 sq ft": 1, "lb/1000 ft2": 1, "lb/1000 sqft": 1, "lb/m": 1, "lb per 1000 sq ft": 1, "lbs/1000 sq ft": 1, "lb per 1000": 1, "lb/1000": 1, "oz/1000 sq ft": 0.0625, "lb/acre": 1 / 43.56, "lb/a": 1 / 43.56, "lbs/acre": 1 / 43.56, "lbs/a": 1 / 43.56, "lb/ac": 1 / 43.56, "lb per acre": 1 / 43.56, "ton/acre": 45.913682, "tons/acre": 45.913682, "g/m2": 1 / 4.8824276, "kg/100 m2": 10 / 4.8824276, "kg/ha": 0.1 / 4.8824276, "t/ha": 100 / 4.8824276}, []string{"0 lb/1000 sq ft", "2000 lb/1000 sq ft"}, []string{"2001 lb/1000 sq ft"}},
		{density, map[string]float64{"lb/gal": 1, "lbs/gal": 1, "lb per gal": 1, "lb/gallon": 1, "kg/l": kg / gal, "g/ml": kg / gal, "g/cm3": kg / gal}, []string{"5 lb/gal", "25 lb/gal"}, []string{"4.9 lb/gal", "25.1 lb/gal"}},
		{watering, map[string]float64{"in/h": 1, "in/hr": 1, "in/hour": 1, "inches/hour": 1, "in per hour": 1, "mm/h": 1 / 25.4, "mm/hr": 1 / 25.4, "mm/hour": 1 / 25.4, "cm/h": 1 / 2.54}, []string{"0.01 in/h", "10 in/h"}, []string{"0 in/h", "10.1 in/h"}},
		{percent, map[string]float64{"%": 1, "percent": 1}, []string{"0 %", "100 %"}, []string{"100.1 %"}},
		{weeks, map[string]float64{"week": 1, "weeks": 1, "wk": 1, "day": 1.0 / 7, "days": 1.0 / 7, "d": 1.0 / 7, "month": 365.25 / 84, "months": 365.25 / 84}, []string{"0 weeks", "104 weeks"}, []string{"104.1 weeks"}},
		{coverage, map[string]float64{"sq ft per gal": 1, "ft2 per gal": 1, "sq ft/gal": 1, "ft2/gal": 1, "sqft/gal": 1, "sq ft per gallon": 1, "m2 per l": ft2 / gal, "m2/l": ft2 / gal}, []string{"10 sq ft per gal", "20000 sq ft per gal"}, []string{"9.9 sq ft per gal", "20001 sq ft per gal"}},
	} {
		for unit, factor := range c.units {
			x := 7 / factor // about seven of the kind's own unit lie within every kind's bounds, but for the widest
			for got, err := c.parse(figureOf(x) + " " + unit); ; got, err = c.parse(figureOf(x) + " " + unit) {
				if err != nil && x < 1e4 {
					x *= 10
					continue
				}
				if err != nil || math.Abs(got/factor/x-1) > 1e-6 {
					t.Errorf("%s %s: %v (%v), want %v", figureOf(x), unit, got, err, x*factor)
				}
				break
			}
		}
		for _, s := range c.takes {
			if _, err := c.parse(s); err != nil {
				t.Errorf("%s: %v", s, err)
			}
		}
		for _, s := range c.not {
			if got, err := c.parse(s); err == nil {
				t.Errorf("%s: %v", s, got)
			}
		}
	}
}

// figureOf writes a figure so that it is read again unchanged.
func figureOf(x float64) string { return Figures(x, 12) }

// Numbers as people write them.
func TestCellsNumbers(t *testing.T) {
	for text, want := range map[string]struct {
		x    float64
		rest string
	}{
		"40 lb": {40, "lb"}, "2,600 ft2": {2600, "ft2"}, "1,234,567": {1234567, ""}, "1/4 in": {0.25, "in"}, "6 2/3 in": {6 + 2.0/3, "in"}, "6.5": {6.5, ""}, ".5 in": {0.5, "in"},
		"12 3 in": {12, "3 in"}, "6 3/3 in": {6, "3/3 in"}, "6 /3": {6, "/3"}, "100/999": {100.0 / 999, ""}, "1/1000 in": {1, "/1000 in"}, "1/0 in": {1, "/0 in"}, "2,600.5 m": {2600.5, "m"},
	} {
		x, rest, ok := Number(text)
		if !ok || math.Abs(x-want.x) > 1e-12 || rest != want.rest {
			t.Errorf("%q: %v and %q (%v), want %v and %q", text, x, rest, ok, want.x, want.rest)
		}
	}
	for _, text := range []string{"", "lb", "-1", "1,23", "12,3456", "1234,567", "0,250", ",250", "1.2.3", "1,234,56", "1000000000000000", "+1"} {
		if x, _, ok := Number(text); ok {
			t.Errorf("%q is read as %v", text, x)
		}
	}
	for text, want := range map[string]string{"0,250 acre": "0.250 acre", "12,5 kg": "12.5 kg", "1,2": "1.2", "12,3456 m": "12.3456 m", "2,600 ft2": "", "12,": "", ",5 kg": "", "1,2,3": "", "1,25.5": "", "a1,2": ""} {
		if got, ok := DecimalComma(text); got != want || ok != (want != "") {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	for text, want := range map[string]string{"Sq. Ft.": "sq ft", "ft²": "ft2", "lb / 1,000  sq ft": "lb/1000 sq ft", "G/M^2": "g/m2", "lb.": "lb", "cm³": "cm3", "lb /acre": "lb/acre", "lb/ acre": "lb/acre", "ppm P₂O₅": "ppm p2o5"} {
		if got := PlainUnit(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	for _, c := range []struct {
		x                                 float64
		three, short, fine, whole, tenths string
	}{
		{0, "0", "0", "0", "0", "0.0"}, {0.25, "0.25", "0.25", "0.25", "0", "0.2"}, {0.012345, "0.0123", "0.01", "0.012", "0", "0.0"}, {1.2345, "1.23", "1.23", "1.235", "1", "1.2"}, {9.999, "10", "10", "9.999", "10", "10.0"},
		{10.04, "10", "10", "10", "10", "10.0"}, {12.345, "12.3", "12.3", "12.3", "12", "12.3"}, {99.94, "99.9", "99.9", "99.9", "100", "99.9"}, {100.4, "100", "100", "100", "100", "100.4"}, {1234.5, "1234", "1235", "1235", "1234", "1234.5"}, {-1.5, "-1.5", "-1.5", "-1.5", "-2", "-1.5"},
	} {
		if a, b, d, e, f := Figure(c.x), Short(c.x), Fine(c.x), Whole(c.x), Tenths(c.x); a != c.three || b != c.short || d != c.fine || e != c.whole || f != c.tenths {
			t.Errorf("%v is written %s, %s, %s, %s, %s; want %s, %s, %s, %s, %s", c.x, a, b, d, e, f, c.three, c.short, c.fine, c.whole, c.tenths)
		}
	}
	if PH(6).Words() != "6.0" || PH(6.25).Words() != "6.25" || Short(PH(5.5)) != "5.5" {
		t.Error("a pH has a decimal, or two")
	}
	if Figure(math.Inf(1)) != "+Inf" || Figures(123.456, 5) != "123.46" || Figures(0.00012345, 2) != "0.00012" {
		t.Errorf("%s, %s, %s", Figure(math.Inf(1)), Figures(123.456, 5), Figures(0.00012345, 2))
	}
}

// Names that are close, and names that are not.
func TestCellsNearest(t *testing.T) {
	short := []string{"lime", "sulfur"}
	var long []string
	for c := 'a'; c <= 'p'; c++ {
		long = append(long, string(c)+"qqqqqqq")
	}
	for _, c := range []struct {
		got   string
		known []string
		want  string
	}{
		{"", short, "lime, sulfur"}, {"zzzzzzzzzz", short, "lime, sulfur"}, {"lmie", short, "lime"}, {"sulfer", short, "sulfur"}, {" LIME ", short, "lime"},
		{"", long, ""}, {"zzzz", long, ""}, {"", long[:15], "aqqqqqqq, bqqqqqqq, cqqqqqqq, dqqqqqqq, eqqqqqqq, fqqqqqqq, gqqqqqqq, hqqqqqqq, iqqqqqqq, jqqqqqqq, kqqqqqqq, lqqqqqqq, mqqqqqqq, nqqqqqqq, oqqqqqqq"},
		{"ul", short, "lime, sulfur"}, {"ulf", short, "sulfur"},
	} {
		if got := NearestName(c.got, c.known); got != c.want {
			t.Errorf("%q: %q, want %q", c.got, got, c.want)
		}
	}
	for _, c := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"", "abc", 3}, {"abc", "", 3}, {"abc", "abc", 0}, {"abc", "acb", 1}, {"abc", "abd", 1}, {"kitten", "sitting", 3}, {"ab", "ba", 1}, {"abcd", "badc", 2}, {"é", "e", 1}} {
		if got := editDistance(c.a, c.b); got != c.want {
			t.Errorf("%q to %q: %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

// Grasses together: weights, season, range and days to emerge.
func TestCellsStand(t *testing.T) {
	grass := func(name string, part Percent) Share { g, _ := LookupGrass(name); return Share{g, part} }
	even := Stand{grass("perennial ryegrass", 50), grass("bermudagrass", 50)}
	if even.Season() != Cool {
		t.Error("an even stand is cool-season")
	}
	if (Stand{grass("perennial ryegrass", 49), grass("bermudagrass", 51)}).Season() != Warm {
		t.Error("51 % warm is warm-season")
	}
	none := Stand{grass("perennial ryegrass", 0), grass("bermudagrass", 0)}
	if none.Weight(0) != 0.5 || (Stand{grass("tall fescue", 30), grass("fine fescue", 90)}).Weight(1) != 0.75 {
		t.Error("shares are taken in proportion, or alike where none is given")
	}
	for warm, mixes := range map[Percent]bool{0.4: false, 0.6: true, 99.6: false, 99.4: true} {
		if why, ok := (Stand{grass("tall fescue", 100-warm), grass("bermudagrass", warm)}).Mixed(); ok != mixes || ok != (why.Text != "") {
			t.Errorf("%v %% warm-season grass mixes %v", warm, ok)
		}
	}
	apart := Stand{grass("centipedegrass", 40), grass("buffalograss", 60)} // 5 to 6, and 6 to 7.5: they meet at 6
	if target, low, high := apart.TargetPH(); math.Abs(float64(target)-6.1) > 1e-9 || low != 6 || high != 6 {
		t.Errorf("%v, %v to %v", target, low, high)
	}
	far := Stand{grass("carpetgrass", 40), grass("buffalograss", 60)} // 4.8 to 5.8, and 6 to 7.5
	if _, low, high := far.TargetPH(); low != 6 || high != 7.5 {
		t.Errorf("the larger part's range is %v to %v", low, high)
	}
	far[0].Percent = 80
	if _, low, high := far.TargetPH(); low != 4.8 || high != 5.8 {
		t.Errorf("the larger part's range is %v to %v", low, high)
	}
	if n := len(far.WhyPH()); n != 4 {
		t.Errorf("%d reasons for grasses that share no range, want 4", n)
	}
	if n := len(apart.WhyPH()); n != 3 {
		t.Errorf("%d reasons for two grasses, want 3", n)
	}
	if n := len(apart[:1].WhyPH()); n != 1 {
		t.Errorf("%d reasons for one grass, want 1", n)
	}
	if first, last, why, ok := apart.Emergence(); !ok || first != 14 || last != 28 || len(why) != 2 {
		t.Errorf("up in %d to %d days, %v", first, last, why)
	}
	if first, last, _, ok := (Stand{grass("Kentucky bluegrass", 50), grass("perennial ryegrass", 50)}).Emergence(); !ok || first != 5 || last != 28 {
		t.Errorf("up in %d to %d days", first, last)
	}
	if s := (Stand{grass("tall fescue", 100)}).String(); s != "tall fescue" {
		t.Error(s)
	}
	if s := (Stand{grass("tall fescue", 66.667), grass("fine fescue", 33.333)}).String(); s != "tall fescue 66.67 %, fine fescue 33.33 %" {
		t.Error(s)
	}
}
