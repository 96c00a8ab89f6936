package material

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/climate"
)

// What a person weighs or measures: ounces and grams of little, pounds and kilograms of
// much, and of a liquid fluid ounces and milliliters. The steps are those of the
// contract; each at its edge. [common]
func TestStepsOfWeighing(t *testing.T) {
	const kg, liter = agronomy.PoundsPerKilogram, 1 / agronomy.LitersPerGallon
	pack := agronomy.Pounds(50)
	for _, c := range []struct {
		weight, density float64 // lb, lb/gal of a liquid
		metric          bool
		want            []float64 // lb
	}{
		{0.99, 0, false, []float64{1.0 / 16}}, {1, 0, false, []float64{0.1}}, {9.99, 0, false, []float64{0.1}}, {10, 0, false, []float64{1}},
		{49.9, 0, false, []float64{1}}, {50, 0, false, []float64{5, 25}},
		{0.99 * kg, 0, true, []float64{0.01 * kg}}, {kg, 0, true, []float64{0.1 * kg}}, {4.99 * kg, 0, true, []float64{0.1 * kg}}, {5 * kg, 0, true, []float64{0.5 * kg}},
		{24.9 * kg, 0, true, []float64{0.5 * kg}}, {25 * kg, 0, true, []float64{2 * kg, 25}},
		{9.9, 10, false, []float64{10.0 / 128}}, {10, 10, false, []float64{1}},
		{9.9 * liter, 10, true, []float64{0.1 * liter}}, {10.1 * liter, 10, true, []float64{liter}},
	} {
		m := labelled("46-0-0")
		m.Pack, m.Liquid, m.Density = pack, c.density > 0, agronomy.PoundsPerGallon(c.density)
		got := DoseOf(m, 1).steps(c.weight, c.metric)
		if len(got) != len(c.want) {
			t.Errorf("%g lb, metric %v: %v, want %v", c.weight, c.metric, got, c.want)
			continue
		}
		for i := range got {
			if !matches(got[i], c.want[i]) {
				t.Errorf("%g lb, metric %v: %v, want %v", c.weight, c.metric, got, c.want)
			}
		}
	}
	if got := DoseOf(labelled("46-0-0"), 1).steps(60, false); len(got) != 1 || got[0] != 5 {
		t.Errorf("of a pack of unknown size: %v", got)
	}
}

// Two doses together bring what both bring, and one less than nothing is left of none.
func TestSum(t *testing.T) {
	a, b := labelled("18-24-12"), labelled("12-3-6")
	a.SlowShare, a.Magnesium, a.Sulfur = 0.5, 2, 4
	b.Liquid, b.Density = true, 10
	x, y := DoseOf(a, 5), DoseOf(b, 2)
	s := Sum(x, y)
	for what, pair := range map[string][2]float64{
		"rate": {float64(s.Rate), 7}, "gallons": {float64(s.Gallons), 0.2}, "N": {float64(s.N), 0.9 + 0.24}, "slow": {float64(s.SlowN), 0.45}, "quick": {float64(s.SolubleN), 0.45 + 0.24},
		"P": {float64(s.P2O5), 1.2 + 0.06}, "K": {float64(s.K2O), 0.6 + 0.12}, "Mg": {float64(s.Mg), 0.1}, "S": {float64(s.S), 0.2},
	} {
		if !matches(pair[0], pair[1]) {
			t.Errorf("%s: %v, want %v", what, pair[0], pair[1])
		}
	}
	if s.Material.ID != b.ID {
		t.Errorf("of %s", s.Material.ID)
	}
	if w := (Wants{1, 2, 3, 4, 5}).Plus(Wants{10, 20, 30, 40, 50}); w != (Wants{11, 22, 33, 44, 55}) {
		t.Errorf("wants: %v", w)
	}
	if g := DoseOf(with(b, func(m *Material) { m.Density = 0 }), 2).Gallons; g != 0 {
		t.Errorf("gallons without a density: %v", g)
	}
}

// Every word that gives a pesticide away is found, alone, in a name, and in capitals;
// none is found inside another word. [common] from memory
func TestEveryPesticideWord(t *testing.T) {
	for word := range strings.FieldsSeq("weed crabgrass goosegrass nutsedge dandelion broadleaf moss herbicide insect pesticide fungicide fungus disease grub chinch armyworm " +
		"sodworm webworm nematicide prevent killer preemergent pre-emergent postemergent post-emergent prodiamine dithiopyr pendimethalin benefin trifluralin oxadiazon " +
		"siduron isoxaben mesotrione quinclorac dicamba mecoprop triclopyr sulfentrazone carfentrazone atrazine glyphosate imidacloprid chlorantraniliprole clothianidin " +
		"bifenthrin cyhalothrin carbaryl trichlorfon azoxystrobin propiconazole gluten ant ants tick ticks flea fleas 2,4-d mcpp mcpa") {
		for _, name := range []string{word, "food 20-0-5 with " + word, "20-0-5/" + strings.ToUpper(word) + " food"} {
			if _, ok := PesticideWord(name); !ok {
				t.Errorf("%q holds a pesticide", name)
			}
		}
		if found, ok := PesticideWord("x" + word + "x food"); ok && !strings.Contains(word, "-") {
			t.Errorf("x%sx is taken for a pesticide by %q", word, found)
		}
	}
	for name, want := range map[string]string{"lawn food,weed-free": "weed", "moss-out": "moss", "(2,4-D)": "2,4-d"} {
		if got, ok := PesticideWord(name); !ok || got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}

// Of what fits, what is in the shed goes first; over the wants by potash counts half.
// What is passed over is told with its reason, but not what would have been bought.
func TestChoiceInWords(t *testing.T) {
	shed := func(analysis string, onHand float64) Material {
		m := labelled(analysis)
		m.Pack, m.OnHand = 50, onHand
		return m
	}
	for name, c := range map[string]struct {
		ms   []Material
		want string // of the chosen
		says []string
	}{
		"enough":       {[]Material{shed("20-0-0", 1), labelled("30-0-0")}, "20-0-0", []string{"20-0-0 chosen: enough on hand; brings 1 lb N", "not used: 30-0-0, brings 1 lb N"}},
		"some":         {[]Material{shed("20-0-0", 0.01), shed("30-0-0", 0)}, "20-0-0", []string{"20-0-0 chosen: some on hand, more to buy; brings 1 lb N", "not used: 30-0-0, none on hand; brings 1 lb N"}},
		"potash over":  {[]Material{labelled("20-8-0"), labelled("20-0-12")}, "20-0-12", []string{"20-0-12 chosen: brings 1 lb N, 0.6 lb K₂O; over by 0.6 lb K₂O", "not used: 20-8-0, brings 1 lb N, 0.4 lb P₂O₅; over by 0.4 lb P₂O₅"}},
		"more potash":  {[]Material{labelled("20-8-0"), labelled("20-0-18")}, "20-8-0", []string{"20-8-0 chosen"}},
		"of the trade": {[]Material{labelled("20-0-0"), with(labelled("30-0-0"), func(m *Material) { m.ToBuy, m.Pack = true, 50 })}, "20-0-0", []string{"20-0-0 chosen: brings 1 lb N"}},
		"to be bought": {[]Material{with(labelled("30-0-0"), func(m *Material) { m.ToBuy, m.Pack = true, 50 })}, "30-0-0", []string{"30-0-0 chosen: to buy; brings 1 lb N"}},
		"not fit":      {[]Material{labelled("20-0-0"), labelled("0-0-50")}, "20-0-0", []string{"20-0-0 chosen: brings 1 lb N", "not used: 0-0-50 brings none of what is needed (1 lb N)"}},
	} {
		d, why, ok := Choose(c.ms, Wants{N: 1}, NoCaps(), 1000)
		if !ok || d.Material.ID != c.want || len(why) != len(c.says) && name != "more potash" {
			t.Errorf("%s: %s, %v", name, d.Material.ID, why)
			continue
		}
		for i, want := range c.says {
			if !strings.HasPrefix(why[i].Text, want) {
				t.Errorf("%s: %q, want %q", name, why[i].Text, want)
			}
		}
	}
}

// What brings half of what the best brings is fit, what brings less is not, and the
// cap or want that holds it back is named. [common] half is our own line
func TestHalfOfTheBest(t *testing.T) {
	full := with(labelled("20-0-0"), func(m *Material) { m.Pack = 50 })
	for p2o5, want := range map[agronomy.Percent]bool{3.99: true, 4: true, 4.01: false} {
		held := with(labelled("20-0-0"), func(m *Material) { m.ID, m.Name, m.Analysis.P2O5, m.Pack, m.OnHand = "held", "held", p2o5, 50, 9 })
		d, why, ok := Choose([]Material{full, held}, Wants{N: 1}, Caps{-1, -1, 0.1, -1}, 1000)
		if !ok || (d.Material.ID == "held") != want {
			t.Errorf("%v %% P₂O₅: %s, %v", p2o5, d.Material.ID, why)
		}
		if !want && !strings.HasSuffix(why[len(why)-1].Text, "before the cap on P₂O₅ is reached") {
			t.Errorf("%v %% P₂O₅: %v", p2o5, why)
		}
	}
}

// Amounts of nothing and less are refused where nothing can be worked out from them,
// and taken where nothing is a fair amount.
func TestAmountsOfNothing(t *testing.T) {
	const tiny = 0.001
	for what, c := range map[string]struct {
		of  func(float64) (float64, error)
		nil bool // nothing is taken
	}{
		"water, deep": {func(x float64) (float64, error) {
			g, err := WaterVolume(agronomy.Inches(x), 1000)
			return float64(g), err
		}, true},
		"water, on": {func(x float64) (float64, error) {
			g, err := WaterVolume(1, agronomy.SquareFeet(x))
			return float64(g), err
		}, true},
		"minutes, deep":  {func(x float64) (float64, error) { return WaterMinutes(agronomy.Inches(x), 1) }, true},
		"minutes, at":    {func(x float64) (float64, error) { return WaterMinutes(1, agronomy.InchesPerHour(x)) }, false},
		"caught in cups": {func(x float64) (float64, error) { r, err := CatchRate(agronomy.Inches(x)); return float64(r), err }, false},
		"flow": {func(x float64) (float64, error) {
			r, err := FlowRate(agronomy.Gallons(x), 1000)
			return float64(r), err
		}, false},
		"flow, on": {func(x float64) (float64, error) {
			r, err := FlowRate(1, agronomy.SquareFeet(x))
			return float64(r), err
		}, false},
		"rate, on": {func(x float64) (float64, error) { r, err := RateOf(1, agronomy.SquareFeet(x)); return float64(r), err }, false},
		"dropped": {func(x float64) (float64, error) {
			r, err := DropCalibration(agronomy.Pounds(x), 50)
			return float64(r), err
		}, true},
		"spread, at": {func(x float64) (float64, error) {
			s, err := SpreadOver(agronomy.PerThousand(x), 1000, 4)
			return float64(s.HalfRate), err
		}, false},
		"spread, on": {func(x float64) (float64, error) {
			s, err := SpreadOver(10, agronomy.SquareFeet(x), 4)
			return float64(s.Walk), err
		}, false},
		"spread, as wide": {func(x float64) (float64, error) {
			s, err := SpreadOver(10, 1000, climate.Feet(x))
			return float64(s.Width), err
		}, true},
	} {
		for _, x := range []float64{-1, 0, tiny, math.NaN()} {
			v, err := c.of(x)
			if good := x > 0 || x == 0 && c.nil; (err == nil) != good || good != (v > 0) && x != 0 || err != nil && v != 0 {
				t.Errorf("%s, %g: %v, %v", what, x, v, err)
			}
		}
	}
}

// The steps of spraying say of the product as much as the fills hold: 0.5 gal on 1,000
// sq ft, a gallon of spray on 500, from a tank of 4 gal, on 5,000 sq ft. By hand: each
// gallon of spray holds 0.25 gal, a full tank 1 gal or 128 fl oz or 3.79 L, and the
// last, of 2 gal, 0.5 gal, 64 fl oz or 1.89 L. [definitions]
func TestSprayInWords(t *testing.T) {
	m := labelled("10-0-0")
	m.Liquid, m.Density = true, 10
	f, err := DoseOf(m, 5).Spray(5000, 4, 500)
	if err != nil || f.Count != 3 || f.Covers != 2000 {
		t.Fatalf("%+v, %v", f, err)
	}
	for i, want := range []string{
		"0.5 gal (64 fl oz, 1.89 L) of product per 1000 sq ft, at 500 sq ft to a gallon of spray.",
		"2 full tanks: 128 fl oz (3.79 L) of product in 4 gal of spray each.",
		"Last tank: 64 fl oz (1.89 L) of product, filled up to 2 gal (7.57 L).",
		"Half the water first",
	} {
		if !strings.HasPrefix(f.Steps[i].Text, want) {
			t.Errorf("step %d: %q, want %q", i+1, f.Steps[i].Text, want)
		}
	}
	one, err := DoseOf(m, 5).Spray(1000, 4, 500)
	if err != nil || one.Count != 1 || len(one.Steps) != 3 || one.Full != one.Last {
		t.Errorf("one tank: %+v, %v", one, err)
	}
	for per, refused := range map[agronomy.SquareFeet]bool{2000: false, 2001: true} { // all product, and more than that
		if _, err := DoseOf(m, 5).Spray(5000, 4, per); (err != nil) != refused {
			t.Errorf("%v sq ft a gallon: %v", per, err)
		}
	}
	s, err := SpreadOver(10, 2600, 4)
	if err != nil || !strings.HasPrefix(s.Steps()[1].Text, "At a working width of 4 ft that is a walk of about 650 ft (198 m) in each direction.") {
		t.Errorf("%v, %v", s.Steps(), err)
	}
}

// What a mixture takes: the phosphate from one bag, the nitrogen that it leaves from
// the next, then potash; each bag once, and what is down counts against the caps.
// University of Minnesota, three-bag sum. [umn-three-bag]
func TestMixByHand(t *testing.T) {
	bags := []Material{labelled("18-46-0"), labelled("46-0-0"), labelled("0-0-50")}
	doses, left, why := Mix(bags, Wants{N: 1, P2O5: 0.92, K2O: 1}, NoCaps(), 1000)
	if len(doses) != 3 || left != (Wants{}) {
		t.Fatalf("%d doses, left %v: %v", len(doses), left, why)
	}
	// 0.92 ÷ 46 % = 2 lb, with 0.36 lb N; (1 − 0.36) ÷ 46 % = 1.391 lb; 1 ÷ 50 % = 2 lb
	for i, want := range []float64{2, 0.64 / 0.46, 2} {
		if doses[i].Material.ID != bags[i].ID || !matches(float64(doses[i].Rate), want) {
			t.Errorf("%d: %v lb of %s, want %v", i, doses[i].Rate, doses[i].Material.ID, want)
		}
		if !strings.Contains(fmt.Sprint(why), "wanted ÷ "+map[int]string{0: "46", 1: "46", 2: "50"}[i]) {
			t.Errorf("the working of %s is missing in %v", bags[i].ID, why)
		}
	}
	doses, left, _ = Mix(bags, Wants{N: 1, P2O5: 0.92}, Caps{0.5, -1, -1, -1}, 1000)
	if len(doses) != 2 || !matches(float64(doses[1].N), 0.14) || !matches(float64(left.N), 0.5) {
		t.Errorf("under a cap of 0.5 lb N: %v, left %v", doses, left)
	}
	doses, left, why = Mix(bags[:1], Wants{K2O: 1}, NoCaps(), 1000)
	if len(doses) != 0 || left != (Wants{K2O: 1}) || len(why) != 1 || why[0].Text != "no material left that may bring 1 lb K₂O" {
		t.Errorf("without potash: %v, %v, %v", doses, left, why)
	}
}

// Rounding makes no difference, a difference does.
func TestOver(t *testing.T) {
	for _, c := range []struct{ a, b, want agronomy.PerThousand }{{1, 1, 0}, {1, 1 - 1e-12, 0}, {1, 1 - 1e-6, 1e-6}, {1, 2, 0}, {0, 0, 0}, {1, 0, 1}} {
		if got := over(Wants{K2O: c.a}, Wants{K2O: c.b}).K2O; math.Abs(float64(got-c.want)) > 1e-10 {
			t.Errorf("%v over %v: %v", c.a, c.b, got)
		}
	}
}

// A label of just 100 %, all of it slow or none, is taken; so is a dose that can be
// weighed as it is.
func TestLabelsAtTheirEdges(t *testing.T) {
	for name, c := range map[string]struct {
		analysis string
		slow     float64
		refused  bool
	}{
		"100 %": {"50-30-20", 0, false}, "over 100 %": {"50-30-20.1", 0, true}, "all nitrogen": {"100-0-0", 0, false},
		"all slow": {"40-0-0", 1, false}, "more than all": {"40-0-0", 1.01, true}, "less than none": {"40-0-0", -0.01, true},
	} {
		m := labelled(c.analysis)
		m.SlowShare = c.slow
		if _, err := DoseFor(m, Wants{N: 1}, NoCaps()); (err != nil) != c.refused {
			t.Errorf("%s: %v", name, err)
		}
	}
	if got := (Material{ID: "urea"}).Title() + (Material{ID: "urea", Name: "urea 46-0-0"}).Title(); got != "ureaurea 46-0-0" {
		t.Errorf("titles %q", got)
	}
	for rate, rounded := range map[agronomy.PerThousand]bool{20: false, 20.3: true} {
		d := DoseOf(labelled("46-0-0"), rate)
		s := d.Sayable(1000, NoCaps(), false)
		if s.Rate != 20 || len(s.Why) != map[bool]int{false: 0, true: 1}[rounded] {
			t.Errorf("%v lb: %v lb, %v", rate, s.Rate, s.Why)
		}
	}
	loose := with(labelled("10-0-0"), func(m *Material) { m.Liquid = true })
	if got := DoseOf(loose, 1).steps(5, false); len(got) != 1 || got[0] != 0.1 {
		t.Errorf("a liquid of no density is weighed: %v", got)
	}
	stone := with(labelled("10-0-0"), func(m *Material) { m.Density = 10 })
	for _, metric := range []bool{false, true} {
		want := map[bool]float64{false: 0.1, true: 0.1 * agronomy.PoundsPerKilogram}[metric]
		if got := DoseOf(stone, 1).steps(5, metric); len(got) != 1 || !matches(got[0], want) {
			t.Errorf("a granule is weighed whatever its density: %v", got)
		}
	}
	liquid := with(labelled("10-0-0"), func(m *Material) { m.Liquid, m.Density = true, 10 })
	if g := Sum(DoseOf(liquid, 5), DoseOf(liquid, 3)).Gallons; !matches(float64(g), 0.8) {
		t.Errorf("0.5 and 0.3 gal are %v", g)
	}
	// The names of uses are those of the kinds of job.
	for use, want := range map[Use]string{ForStarter: "starter", ForLime: "lime", ForSulfur: "sulfur", ForPhosphorus: "phosphorus", ForPotassium: "potassium", ForMagnesium: "magnesium",
		ForNitrogen: "nitrogen", ForLateNitrogen: "late-nitrogen", ForGypsum: "gypsum", ForIron: "iron"} {
		if string(use) != want {
			t.Errorf("%q, want %q", use, want)
		}
	}
}
