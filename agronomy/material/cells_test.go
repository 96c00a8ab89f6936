package material

import (
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/climate"
)

// The figures of materials, whole, typed from the sources and not from the code:
// a wrong digit in either shows here.

// Watering in: inches from and to, within so many hours. Common practice; late
// nitrogen [ill-1995].
func TestCellsWaterIn(t *testing.T) {
	printed := map[WaterKind][3]float64{
		WaterSoluble: {0.25, 0.5, 24}, WaterSlow: {0.1, 0.25, 48}, WaterLateNitrogen: {0.125, 0.25, 24}, WaterStarter: {0.1, 0.25, 1},
		WaterLime: {0.25, 0.5, 72}, WaterSulfur: {0.25, 0.5, 1}, WaterFoliar: {0, 0, 0}, WaterPotassium: {0.25, 0.5, 24}, WaterGypsum: {0.5, 1, 72},
	}
	if len(waterIns) != len(printed) {
		t.Errorf("%d kinds of watering in, want %d", len(waterIns), len(printed))
	}
	for kind, want := range printed {
		w, ok := WaterInFor(kind)
		if !ok || w.Kind != kind || float64(w.Low) != want[0] || float64(w.High) != want[1] || w.WithinHours != int(want[2]) || w.Why.Text == "" || w.Why.Source == "" {
			t.Errorf("%s: %+v, want %v", kind, w, want)
		}
	}
}

// What waters a dose in: each kind at its edge.
func TestWaterInAtItsEdges(t *testing.T) {
	feed := func(slow float64, n, p, k agronomy.Percent) Material {
		return Material{Kind: FertilizerMaterial, SlowShare: slow, Analysis: agronomy.Analysis{N: n, P2O5: p, K2O: k}}
	}
	liquid := func(n, p, k agronomy.Percent) Material {
		m := feed(0, n, p, k)
		m.Liquid, m.Density = true, 10
		return m
	}
	for name, c := range map[string]struct {
		m    Material
		rate agronomy.PerThousand
		use  Use
		want WaterKind
	}{
		"lime as a starter":     {Material{Kind: LimeMaterial}, 40, ForStarter, WaterLime},
		"half slow":             {feed(0.5, 20, 0, 0), 5, ForNitrogen, WaterSlow},
		"just under half slow":  {feed(0.49, 20, 0, 0), 5, ForNitrogen, WaterSoluble},
		"slow, late":            {feed(0.5, 20, 0, 0), 5, ForLateNitrogen, WaterLateNitrogen},
		"slow, with the seed":   {feed(0.5, 20, 0, 0), 5, ForStarter, WaterStarter},
		"potash":                {feed(0, 0, 0, 50), 2, ForPotassium, WaterPotassium},
		"slow, no nitrogen":     {feed(0.5, 0, 0, 50), 2, ForPotassium, WaterPotassium},
		"potash and nitrogen":   {feed(0, 10, 0, 10), 5, ForPotassium, WaterSoluble},
		"a quarter pound":       {liquid(10, 0, 0), 2.5, ForNitrogen, WaterFoliar},
		"over a quarter pound":  {liquid(10, 0, 0), 2.6, ForNitrogen, WaterSoluble},
		"with phosphate":        {liquid(10, 1, 0), 2, ForNitrogen, WaterSoluble},
		"with potash":           {liquid(10, 0, 1), 2, ForNitrogen, WaterSoluble},
		"liquid potash":         {liquid(0, 0, 20), 2, ForPotassium, WaterPotassium},
		"a granule, as little":  {feed(0, 10, 0, 0), 2, ForNitrogen, WaterSoluble},
		"gypsum, for magnesium": {Material{Kind: GypsumMaterial}, 40, ForMagnesium, WaterGypsum},
	} {
		if got := DoseOf(c.m, c.rate).WaterIn(c.use).Kind; got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
	if FoliarN != 0.25 {
		t.Error("a quarter pound may stay on the leaf")
	}
}

// Salt index against sodium nitrate at 100, from memory; heat and the most of a
// product at a time, common practice.
func TestCellsSaltAndCaps(t *testing.T) {
	for analysis, index := range map[string]float64{"34-0-0": 105, "21-0-0": 69, "46-0-0": 75, "0-0-60": 116, "0-0-62": 116, "0-0-50": 46, "18-46-0": 34, "11-52-0": 30} {
		got, why, ok := labelled(analysis).SaltIndex()
		if !ok || got != index || why.Text == "" || why.Source == "" {
			t.Errorf("%s: salt index %v, want %v", analysis, got, index)
		}
	}
	urea := labelled("46-0-0")
	for name, m := range map[string]Material{
		"coated": with(urea, func(m *Material) { m.SlowShare = 0.1 }), "liquid": with(urea, func(m *Material) { m.Liquid = true }), "unknown": labelled("10-10-10"),
	} {
		if index, _, ok := m.SaltIndex(); ok || index != 0 {
			t.Errorf("%s has the salt index %v", name, index)
		}
	}
	for kind, want := range map[Kind]agronomy.PerThousand{MagnesiumMaterial: 2, GypsumMaterial: 40, FertilizerMaterial: 0, LimeMaterial: 0} {
		if got, why, ok := (Material{Kind: kind}).ProductCap(); got != want || ok != (want > 0) || ok != (why.Text != "") {
			t.Errorf("%s: at most %v lb, want %v", kind, got, want)
		}
	}
	if SolubleNHeat != climate.Fahrenheit(85) || SulfurHeat != climate.Fahrenheit(75) {
		t.Error("85 °F for quick nitrogen, 75 °F for sulfur")
	}
	slow := with(urea, func(m *Material) { m.SlowShare = 1 })
	for name, c := range map[string]struct {
		m    Material
		heat float64
	}{
		"sulfur": {Material{Kind: SulfurMaterial}, 75}, "urea": {urea, 85}, "half slow": {with(urea, func(m *Material) { m.SlowShare = 0.9 }), 85}, "all slow": {slow, 0},
		"liquid potash": {Material{Kind: FertilizerMaterial, Liquid: true}, 85}, "liquid gypsum": {Material{Kind: GypsumMaterial, Liquid: true}, 0}, "potash": {labelled("0-0-50"), 0},
	} {
		heat, why, ok := c.m.HeatLimit()
		if float64(heat) != c.heat || ok != (c.heat > 0) || ok && !strings.Contains(why.Text, heat.String()) {
			t.Errorf("%s: %v, %q; want %v", name, heat, why.Text, c.heat)
		}
	}
}

// The form of nitrogen by analysis: [definitions], nitrates from memory.
func TestCellsNitrogenForm(t *testing.T) {
	for analysis, want := range map[string]nitrogenForm{
		"46-0-0": ammonium, "21-0-0": ammonium, "18-46-0": ammonium, "11-52-0": ammonium, "46-0-5": ammonium,
		"15.5-0-0": Nitrate, "16-0-0": Nitrate, "13-0-44": Nitrate, "13-0-46": Nitrate,
		"13-0-43": unknownForm, "15.5-0-1": unknownForm, "16-0-1": unknownForm, "46-1-0": unknownForm, "21-1-0": unknownForm, "18-24-12": unknownForm,
		"11-48-0": unknownForm, "16-4-8": unknownForm, "13-1-46": unknownForm, "0-0-50": noNitrogen,
	} {
		m := labelled(analysis)
		if got := m.NitrogenForm(); got != want {
			t.Errorf("%s: %v, want %v", analysis, got, want)
		}
		gas, why := m.Ammonium()
		if gas != (want == ammonium || want == unknownForm) || !strings.HasPrefix(why.Text, analysis) {
			t.Errorf("%s: driven off %v, %q", analysis, gas, why.Text)
		}
		says := map[nitrogenForm]string{ammonium: "that of urea or an ammonium salt", Nitrate: "that of a nitrate", unknownForm: "not given", noNitrogen: "no nitrogen"}[want]
		if !strings.Contains(why.Text, says) {
			t.Errorf("%s: %q does not say %q", analysis, why.Text, says)
		}
	}
}

// The materials of the trade: analysis, slow share, weeks, percent Mg and S, CCE,
// ECCE, small and large pack. Guarantees and packs are usual ones, common practice;
// MgSO4·7H2O by [atomic-weights].
func TestCellsTrade(t *testing.T) {
	farm, large := [2]agronomy.Pounds{5, 50}, [2]agronomy.Pounds{0, 50}
	printed := map[string]struct {
		analysis    string
		kind        Kind
		slow, weeks float64
		mg, s       agronomy.Percent
		cce, ecce   agronomy.Percent
		packs       [2]agronomy.Pounds
	}{
		"urea": {"46-0-0", FertilizerMaterial, 0, 0, 0, 0, 0, 0, farm}, "ammonium-sulfate": {"21-0-0", FertilizerMaterial, 0, 0, 0, 24, 0, 0, farm},
		"coated-urea": {"40-0-0", FertilizerMaterial, 0.5, 8, 0, 0, 0, 0, large}, "triple-superphosphate": {"0-46-0", FertilizerMaterial, 0, 0, 0, 0, 0, 0, farm},
		"diammonium-phosphate": {"18-46-0", FertilizerMaterial, 0, 0, 0, 0, 0, 0, large}, "potassium-sulfate": {"0-0-50", FertilizerMaterial, 0, 0, 0, 17, 0, 0, farm},
		"potassium-chloride": {"0-0-60", FertilizerMaterial, 0, 0, 0, 0, 0, 0, large}, "potassium-magnesium-sulfate": {"0-0-22", FertilizerMaterial, 0, 0, 11, 22, 0, 0, farm},
		"magnesium-sulfate": {"0-0-0", MagnesiumMaterial, 0, 0, 9.86, 13, 0, 0, farm}, "elemental-sulfur": {"0-0-0", SulfurMaterial, 0, 0, 0, 90, 0, 0, farm},
		"ground-limestone": {"0-0-0", LimeMaterial, 0, 0, 0, 0, 95, 85, large}, "dolomitic-limestone": {"0-0-0", LimeMaterial, 0, 0, 11, 0, 100, 85, large},
		"starter": {"18-24-12", FertilizerMaterial, 0.4, 8, 0, 0, 0, 0, [2]agronomy.Pounds{5, 25}}, "balanced": {"10-10-10", FertilizerMaterial, 0, 0, 0, 0, 0, 0, [2]agronomy.Pounds{5, 40}},
		"lawn-24-0-10": {"24-0-10", FertilizerMaterial, 0.3, 8, 0, 0, 0, 0, [2]agronomy.Pounds{15, 40}}, "lawn-15-0-15": {"15-0-15", FertilizerMaterial, 0.3, 8, 0, 0, 0, 0, [2]agronomy.Pounds{20, 50}},
		"lawn-16-4-8": {"16-4-8", FertilizerMaterial, 0.3, 8, 0, 0, 0, 0, [2]agronomy.Pounds{20, 40}}, "lawn-28-0-3": {"28-0-3", FertilizerMaterial, 0.3, 8, 0, 0, 0, 0, [2]agronomy.Pounds{15, 40}},
		"organic": {"9-0-0", FertilizerMaterial, 0.85, 8, 0, 0, 0, 0, [2]agronomy.Pounds{0, 25}},
		"gypsum":  {"0-0-0", GypsumMaterial, 0, 0, 0, 17, 0, 0, [2]agronomy.Pounds{0, 40}}, "iron-sulfate": {"0-0-0", IronMaterial, 0, 0, 0, 0, 0, 0, [2]agronomy.Pounds{0, 5}},
	}
	packs := 0
	for _, want := range printed {
		for _, p := range want.packs {
			if p > 0 {
				packs++
			}
		}
	}
	if len(TradeMaterials()) != packs {
		t.Errorf("%d materials, want %d", len(TradeMaterials()), packs)
	}
	for _, m := range TradeMaterials() {
		id, small := strings.CutSuffix(strings.TrimPrefix(m.ID, "trade-"), "-small")
		want, ok := printed[id]
		pack := want.packs[1]
		if small {
			pack = want.packs[0]
		}
		if !ok {
			t.Errorf("%s is not printed", m.ID)
			continue
		}
		if m.Analysis != labelled(want.analysis).Analysis || m.Kind != want.kind || m.SlowShare != want.slow || float64(m.Lasts) != want.weeks || m.Magnesium != want.mg || m.Sulfur != want.s ||
			m.CCE != want.cce || m.ECCE != want.ecce || m.Pack != pack || m.Liquid || m.Hydrated || m.Price != 0 {
			t.Errorf("%+v, want %+v in packs of %v lb", m, want, pack)
		}
		// FeSO4·7H2O is 55.845/278.01 iron, 20 in 100. [atomic-weights]
		if iron := map[string]agronomy.Percent{"iron-sulfate": 20}[id]; m.Iron != iron {
			t.Errorf("%s holds %v %% iron, want %v", m.ID, m.Iron, iron)
		}
		if grade := want.analysis; grade != "0-0-0" && !strings.HasSuffix(m.Name, " "+grade) {
			t.Errorf("%s is not called by its analysis", m.Name)
		}
	}
}

// Amounts: 28 % liquid of 10.6 lb/gal holds 2.97 lb N [purdue-uan]; 50 lb of
// 10-10-10 hold 5 lb of each [vt-fall-2008]; the rest by [definitions].
func TestCellsAmounts(t *testing.T) {
	ten := labelled("10-10-10")
	ten.Magnesium, ten.Sulfur = 2, 4
	if got := ten.InPack(50); !matches(float64(got.N), 5) || !matches(float64(got.P2O5), 5) || !matches(float64(got.K2O), 5) || !matches(float64(got.Mg), 1) || !matches(float64(got.S), 2) {
		t.Errorf("50 lb of 10-10-10 hold %v", got)
	}
	if FluidOuncesPerGallon != 128 || math.Abs(gallonsPerInch-623.3766) > 0.001 {
		t.Error("128 fl oz a gallon, 623.4 gal an inch on 1000 sq ft")
	}
	uan := Material{Kind: FertilizerMaterial, Analysis: agronomy.Analysis{N: 28}, Liquid: true, Density: 10.6, PackVolume: 2.5}
	granule := Material{Kind: FertilizerMaterial, Analysis: agronomy.Analysis{N: 28}, Density: 10.6, PackVolume: 2.5}
	if v, ok := uan.VolumeOf(21.2); !ok || !matches(float64(v), 2) {
		t.Errorf("21.2 lb fill %v gal", v)
	}
	if w, ok := uan.WeightOf(2); !ok || !matches(float64(w), 21.2) {
		t.Errorf("2 gal weigh %v lb", w)
	}
	if w, ok := uan.PackWeight(); !ok || !matches(float64(w), 26.5) {
		t.Errorf("a jug weighs %v lb", w)
	}
	if packs, ok := uan.PacksFor(53); !ok || !matches(packs, 2) {
		t.Errorf("53 lb are %v jugs", packs)
	}
	_, volume := granule.VolumeOf(1)
	_, weight := granule.WeightOf(1)
	_, pack := granule.PackWeight()
	_, packs := granule.PacksFor(1)
	if volume || weight || pack || packs {
		t.Error("a granule is counted in gallons")
	}
	a := DoseOf(uan, 5.3).For(2000)
	if !matches(float64(a.Weight), 10.6) || !matches(float64(a.Volume), 1) || !matches(a.Packs, 0.4) {
		t.Errorf("%+v", a)
	}
	if r, err := RateOf(5, 2500); err != nil || !matches(float64(r), 2) {
		t.Errorf("5 lb on 2500 sq ft: %v (%v)", r, err)
	}
	if _, err := RateOf(5, 0); err == nil {
		t.Error("a rate on no area")
	}
	for _, c := range []struct {
		onHand, wants float64
		buy           int
		cost, left    float64
	}{{2, 1.5, 0, 0, 0.5}, {2, 2, 0, 0, 0}, {2, 2.1, 1, 7, 0.9}, {0, 3, 3, 21, 0}, {0.5, 3.6, 4, 28, 0.9}} {
		got := Material{OnHand: c.onHand, Price: 7}.Purchase(c.wants)
		if got.Packs != c.buy || !matches(got.Cost, c.cost) || !matches(got.Left, c.left) {
			t.Errorf("%v packs, %v on hand: %+v", c.wants, c.onHand, got)
		}
	}
}

// A starter brings at most 1 lb N and 1.5 lb P2O5. [uc-starter] [purdue-p]
func TestCellsStarter(t *testing.T) {
	caps := NoCaps()
	caps.N = 1
	for analysis, rate := range map[string]float64{"18-24-12": 1 / 0.18, "10-20-10": 7.5, "16-20-0": 6.25, "20-10-5": 5, "0-46-0": 1.5 / 0.46} {
		d, err := DoseFor(labelled(analysis), Wants{P2O5: 1.5}, caps)
		if err != nil || !matches(float64(d.Rate), rate) {
			t.Errorf("%s: %v lb (%v), want %v", analysis, d.Rate, err, rate)
		}
	}
	if _, err := DoseFor(labelled("46-0-0"), Wants{P2O5: 1.5}, caps); err == nil {
		t.Error("urea is a starter")
	}
}
