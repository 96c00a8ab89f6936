package material

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"testing/quick"

	"swardbook/agronomy"
)

func matches(a, b float64) bool {
	return math.Abs(a-b) <= 1e-9*math.Max(1, math.Max(math.Abs(a), math.Abs(b)))
}

func TestDoseFor(t *testing.T) {
	slow := labelled("18-24-12")
	slow.SlowShare = 0.4
	for name, c := range map[string]struct {
		m       Material
		w       Wants
		c       Caps
		rate    agronomy.PerThousand
		boundBy string
		byCap   bool
	}{
		"the only want":                  {labelled("46-0-0"), Wants{N: 0.69}, NoCaps(), 1.5, "N", false},
		"phosphate before nitrogen":      {slow, Wants{N: 0.75, P2O5: 0.5}, NoCaps(), 0.5 / 0.24, "P2O5", false},
		"potash last":                    {slow, Wants{N: 3, P2O5: 4, K2O: 0.6}, NoCaps(), 5, "K2O", false},
		"total cap":                      {slow, Wants{N: 1.8}, Caps{0.9, -1, -1, -1}, 5, "N", true},
		"soluble cap":                    {slow, Wants{N: 1.8}, Caps{0.9, 0.5, -1, -1}, 0.5 / 0.108, "soluble N", true},
		"phosphate cap on nitrogen":      {slow, Wants{N: 1.8}, Caps{-1, -1, 0.12, -1}, 0.5, "P2O5", true},
		"potash cap":                     {slow, Wants{N: 1.8}, Caps{-1, -1, -1, 0.24}, 2, "K2O", true},
		"a want that equals its cap":     {labelled("46-0-0"), Wants{N: 0.7}, Caps{0.7, 0.7, 0, 0}, 0.7 / 0.46, "N", false},
		"sulfur of ammonium sulfate":     {Material{Analysis: agronomy.Analysis{N: 21}, Sulfur: 24}, Wants{N: 1, S: 0.24}, NoCaps(), 1, "S", false},
		"magnesium sulfate":              {Material{Kind: MagnesiumMaterial, Magnesium: 10, Sulfur: 13}, Wants{Mg: 0.15}, NoCaps(), 1.5, "Mg", false},
		"an infinite cap is none":        {labelled("46-0-0"), Wants{N: 0.46}, Caps{agronomy.PerThousand(math.Inf(1)), -1, -1, -1}, 1, "N", false},
		"cap 0 on what it does not hold": {labelled("46-0-0"), Wants{N: 0.46}, Caps{-1, -1, 0, 0}, 1, "N", false},
	} {
		d, err := DoseFor(c.m, c.w, c.c)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if !matches(float64(d.Rate), float64(c.rate)) || d.BoundBy != c.boundBy || d.ByCap != c.byCap {
			t.Errorf("%s: %v lb bound by %q (cap %v), want %v by %q (%v)", name, d.Rate, d.BoundBy, d.ByCap, c.rate, c.boundBy, c.byCap)
		}
		capped := slices.ContainsFunc(d.Why, func(r agronomy.Reason) bool {
			return strings.HasPrefix(r.Text, "the cap on ") && strings.Contains(r.Text, " is met first: ")
		})
		if capped != c.byCap {
			t.Errorf("%s: the working says a cap was met first: %v, want %v: %v", name, capped, c.byCap, d.Why)
		}
	}
}

func TestDoseForSaysWhatIsOverAndUnder(t *testing.T) {
	d, err := DoseFor(labelled("10-10-10"), Wants{N: 0.5, K2O: 0.8}, NoCaps())
	if err != nil {
		t.Fatal(err)
	}
	if d.BoundBy != "N" || !matches(float64(d.Over.P2O5), 0.5) || !matches(float64(d.Under.K2O), 0.3) || d.Under.N != 0 || d.Over.N != 0 {
		t.Errorf("over %v, under %v, bound by %s", d.Over, d.Under, d.BoundBy)
	}
	var all strings.Builder
	for _, r := range d.Why {
		all.WriteString(r.Text + "\n")
	}
	for _, part := range []string{
		"0.5 lb N wanted ÷ 10 % = 5 lb of product per 1000 sq ft",
		"N is met first: 5 lb of product per 1000 sq ft brings 0.5 lb N, 0.5 lb P₂O₅, 0.5 lb K₂O",
		"still wanted from another material or day: 0.3 lb K₂O",
		"more than wanted: 0.5 lb P₂O₅",
	} {
		if !strings.Contains(all.String(), part) {
			t.Errorf("working lacks %q:\n%s", part, all.String())
		}
	}
}

// A liquid of 10 lb a gallon: 2.5 lb of it are a quarter gallon, 32 of the 128 fluid
// ounces that a US gallon has.
func TestWorkingOfALiquid(t *testing.T) {
	m := labelled("10-0-0")
	m.Liquid, m.Density = true, 10
	d, err := DoseFor(m, Wants{N: 0.25}, NoCaps())
	const want = "2.5 lb ÷ 10 lb per gal = 0.25 gal (32 fl oz) per 1000 sq ft"
	if err != nil || d.Gallons != 0.25 || d.Why[len(d.Why)-1].Text != want {
		t.Errorf("%v gal, %v (%v), want %q", d.Gallons, d.Why, err, want)
	}
}

func TestDoseForRefuses(t *testing.T) {
	nan := agronomy.PerThousand(math.NaN())
	liquid := labelled("12-0-0")
	liquid.Liquid = true
	for name, c := range map[string]struct {
		m    Material
		w    Wants
		c    Caps
		says string
	}{
		"nothing wanted":           {labelled("46-0-0"), Wants{}, NoCaps(), "nothing is wanted"},
		"nothing of the wanted":    {labelled("46-0-0"), Wants{K2O: 1}, NoCaps(), "none of what is needed (1 lb K₂O)"},
		"a nutrient that may not":  {labelled("18-24-12"), Wants{N: 1}, Caps{-1, -1, 0, -1}, "P₂O₅, of which none may go down"},
		"potash that may not":      {labelled("18-0-12"), Wants{N: 1}, Caps{-1, -1, 0, 0}, "K₂O, of which none"},
		"lime":                     {Material{Name: "lime", Kind: LimeMaterial, Magnesium: 11}, Wants{Mg: 1}, NoCaps(), "by the soil's pH"},
		"sulfur":                   {Material{Name: "sulfur", Kind: SulfurMaterial, Sulfur: 90}, Wants{S: 1}, NoCaps(), "by the soil's pH"},
		"a liquid of no density":   {liquid, Wants{N: 1}, NoCaps(), "density is needed"},
		"an analysis over 100":     {labelled("60-40-10"), Wants{N: 1}, NoCaps(), "more than 100 %"},
		"a percentage over 100":    {labelled("146-0-0"), Wants{N: 1}, NoCaps(), "outside 0 to 100"},
		"a negative percentage":    {with(labelled("46-0-0"), func(m *Material) { m.Sulfur = -1 }), Wants{N: 1}, NoCaps(), "outside 0 to 100"},
		"a slow share over 1":      {with(labelled("46-0-0"), func(m *Material) { m.SlowShare = 40 }), Wants{N: 1}, NoCaps(), "between 0 and 1"},
		"a want that is no number": {labelled("46-0-0"), Wants{N: nan}, NoCaps(), "between 0 and 100"},
		"a negative want":          {labelled("46-0-0"), Wants{N: -1}, NoCaps(), "between 0 and 100"},
		"a want past belief":       {labelled("46-0-0"), Wants{N: 100.5}, NoCaps(), "between 0 and 100"},
		"a cap that is no number":  {labelled("46-0-0"), Wants{N: 1}, Caps{nan, -1, -1, -1}, "not a number"},
	} {
		d, err := DoseFor(c.m, c.w, c.c)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, %v; want an error with %q", name, d.Rate, err, c.says)
		}
	}
	if _, err := DoseFor(labelled("46-0-0"), Wants{N: 100}, NoCaps()); err != nil {
		t.Errorf("a want at the bound: %v", err)
	}
}

func with(m Material, change func(*Material)) Material { change(&m); return m }

// Laws over random materials, wants and caps: no cap is passed, the nutrient
// that bound the dose is met exactly, and what is brought, over and under add
// up.
func TestDoseLaws(t *testing.T) {
	part := func(x uint16, most float64) agronomy.PerThousand {
		return agronomy.PerThousand(float64(x) / math.MaxUint16 * most)
	}
	law := func(n, p, k, slow, wn, wp, wk, cn, cs, cp, ck uint16) bool {
		m := Material{Analysis: agronomy.Analysis{N: agronomy.Percent(part(n, 46)), P2O5: agronomy.Percent(part(p, 30)), K2O: agronomy.Percent(part(k, 24))}, SlowShare: float64(part(slow, 1))}
		w := Wants{N: part(wn, 1.5), P2O5: part(wp, 2), K2O: part(wk, 2)}
		c := Caps{part(cn, 2) - 0.5, part(cs, 2) - 0.5, part(cp, 2) - 0.5, part(ck, 2) - 0.5}
		d, err := DoseFor(m, w, c)
		if err != nil {
			return true
		}
		under := func(x, limit agronomy.PerThousand) bool { return limit < 0 || x <= limit*(1+1e-9) }
		if !under(d.N, c.N) || !under(d.SolubleN, c.SolubleN) || !under(d.P2O5, c.P2O5) || !under(d.K2O, c.K2O) {
			return false
		}
		wants := map[string][2]agronomy.PerThousand{"N": {d.N, w.N}, "P2O5": {d.P2O5, w.P2O5}, "K2O": {d.K2O, w.K2O}}
		if d.ByCap {
			wants = map[string][2]agronomy.PerThousand{"N": {d.N, c.N}, "soluble N": {d.SolubleN, c.SolubleN}, "P2O5": {d.P2O5, c.P2O5}, "K2O": {d.K2O, c.K2O}}
		}
		met := wants[d.BoundBy]
		sum := d.brings().Plus(d.Under)
		same := sum.N - d.Over.N - w.N + sum.P2O5 - d.Over.P2O5 - w.P2O5 + sum.K2O - d.Over.K2O - w.K2O
		return matches(float64(met[0]), float64(met[1])) && math.Abs(float64(same)) < 1e-6 && matches(float64(d.N), float64(d.SolubleN+d.SlowN))
	}
	if err := quick.Check(law, &quick.Config{MaxCount: 20000}); err != nil {
		t.Error(err)
	}
}

func TestAmountsScaleAndConvert(t *testing.T) {
	m := labelled("12-0-0")
	m.Liquid, m.Density, m.PackVolume = true, 9.6, 2.5
	d, err := DoseFor(m, Wants{N: 0.6}, NoCaps())
	if err != nil {
		t.Fatal(err)
	}
	one, three := d.For(1000), d.For(3000)
	if !matches(float64(three.Weight), 3*float64(one.Weight)) || !matches(float64(three.Volume), 3*float64(one.Volume)) || !matches(three.Packs, 3*one.Packs) {
		t.Errorf("not linear: %v, %v", one, three)
	}
	if !matches(float64(one.Weight), 5) || !matches(float64(one.Volume), 5/9.6) || !matches(one.Packs, 5/24.0) {
		t.Errorf("one thousand: %+v", one)
	}
	back, err := RateOf(three.Weight, 3000)
	if err != nil || !matches(float64(back), float64(d.Rate)) {
		t.Errorf("rate back: %v, %v", back, err)
	}
	w, ok := m.WeightOf(three.Volume)
	if !ok || !matches(float64(w), float64(three.Weight)) {
		t.Errorf("weight of volume: %v", w)
	}
	// Metric there and back: grams on square metres are the same weight.
	grams := d.Rate.GramsPerM2() * agronomy.SquareFeet(3000).Meters2()
	if math.Abs(grams/1000-three.Weight.Kilograms()) > 1e-6 {
		t.Errorf("metric: %v kg against %v kg", grams/1000, three.Weight.Kilograms())
	}
	if _, err := RateOf(1, 0); err == nil {
		t.Error("a rate on no area")
	}
	if _, ok := labelled("46-0-0").PacksFor(10); ok {
		t.Error("packs of unknown size")
	}
	if _, ok := labelled("46-0-0").WeightOf(1); ok {
		t.Error("gallons of a granule")
	}
	if a := DoseOf(labelled("46-0-0"), 2).For(500); a.Packs != 0 || a.Weight != 1 {
		t.Errorf("without a pack: %+v", a)
	}
}

func TestPurchase(t *testing.T) {
	m := Material{OnHand: 1.5, Price: 7.25}
	for packs, want := range map[float64]Purchase{
		1:    {0, 0, 0.5},
		1.5:  {0, 0, 0},
		1.51: {1, 7.25, 0.99},
		3.5:  {2, 14.5, 0},
		4:    {3, 21.75, 0.5},
	} {
		got := m.Purchase(packs)
		if got.Packs != want.Packs || !matches(got.Cost, want.Cost) || !matches(got.Left, want.Left) {
			t.Errorf("%v packs: %+v, want %+v", packs, got, want)
		}
	}
}

func TestFigure(t *testing.T) {
	for x, want := range map[float64]string{0: "0", 0.2334: "0.233", 2.174: "2.17", 93.84: "93.8", 2333.3: "2333", 100: "100", 5: "5", 0.0166667: "0.0167", 0.99999: "1", 1e-9: "0"} {
		if got := agronomy.Figure(x); got != want {
			t.Errorf("figure(%v) = %q, want %q", x, got, want)
		}
	}
}

// The printed example of [unl-calc]: 1 lb N from 28-3-6 on 6000 sq ft is
// 3.57 lb per 1000 sq ft and 21.42 lb in all.
func ExampleDoseFor() {
	m := Material{Name: "lawn food 28-3-6", Kind: FertilizerMaterial, Analysis: agronomy.Analysis{N: 28, P2O5: 3, K2O: 6}}
	d, err := DoseFor(m, Wants{N: 1}, NoCaps())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range d.Why {
		fmt.Println(r.Text)
	}
	fmt.Printf("%.1f lb for 6000 sq ft\n", d.For(6000).Weight)
	// Output:
	// 1 lb N wanted ÷ 28 % = 3.57 lb of product per 1000 sq ft
	// N is met first: 3.57 lb of product per 1000 sq ft brings 1 lb N, 0.107 lb P₂O₅, 0.214 lb K₂O
	// more than wanted: 0.107 lb P₂O₅, 0.214 lb K₂O
	// 21.4 lb for 6000 sq ft
}

func BenchmarkChoose(b *testing.B) {
	ms := append([]Material{labelled("18-24-12"), labelled("30-0-0")}, TradeMaterials()...)
	for b.Loop() {
		Choose(ms, Wants{N: 0.7}, Caps{0.9, 0.7, 0, -1}, 2600)
	}
}

// labelled makes a material of an analysis, such as "18-24-12".
func labelled(analysis string) Material {
	var a agronomy.Analysis
	if _, err := fmt.Sscanf(analysis, "%g-%g-%g", &a.N, &a.P2O5, &a.K2O); err != nil {
		panic(err)
	}
	return Material{ID: analysis, Name: analysis, Kind: FertilizerMaterial, Analysis: a}
}
