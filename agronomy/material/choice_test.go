package material

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
)

func stocked(analysis string, packs, price float64) Material {
	m := labelled(analysis)
	m.Pack, m.OnHand, m.Price = 25, packs, price
	return m
}

func TestChoose(t *testing.T) {
	n := Wants{N: 0.7}
	noP := Caps{N: -1, SolubleN: -1, P2O5: 0, K2O: -1}
	slow := stocked("30-0-0", 0, 20)
	slow.SlowShare = 0.5
	for name, c := range map[string]struct {
		ms   []Material
		w    Wants
		c    Caps
		want string // analysis chosen, "" for none
	}{
		"enough on hand before cheaper":      {[]Material{stocked("46-0-0", 0, 1), stocked("21-0-0", 4, 50)}, n, NoCaps(), "21-0-0"},
		"enough before some":                 {[]Material{stocked("46-0-0", 0.1, 1), stocked("21-0-0", 4, 50)}, n, NoCaps(), "21-0-0"},
		"some before none":                   {[]Material{stocked("46-0-0", 0, 1), stocked("21-0-0", 0.1, 50)}, n, NoCaps(), "21-0-0"},
		"in the file before the trade":       {append(TradeMaterials(), stocked("24-0-11", 0, 0)), n, NoCaps(), "24-0-11"},
		"least over":                         {[]Material{stocked("24-0-11", 1, 1), stocked("24-0-4", 1, 9)}, n, NoCaps(), "24-0-4"},
		"phosphorus ruled out":               {[]Material{stocked("18-24-12", 9, 0), stocked("46-0-0", 0, 0)}, n, noP, "46-0-0"},
		"nothing fits":                       {[]Material{stocked("18-24-12", 9, 0), stocked("0-0-50", 9, 0)}, n, noP, ""},
		"cheaper of two alike":               {[]Material{stocked("46-0-0", 0, 30), stocked("45-0-0", 0, 20)}, n, NoCaps(), "45-0-0"},
		"known price before unknown":         {[]Material{stocked("46-0-0", 0, 0), stocked("45-0-0", 0, 20)}, n, NoCaps(), "45-0-0"},
		"first of two the same":              {[]Material{stocked("44-0-0", 0, 20), stocked("45-0-0", 0, 20)}, n, NoCaps(), "44-0-0"},
		"held back too far to be of use":     {[]Material{stocked("18-24-12", 9, 0), stocked("46-0-0", 0, 0)}, n, Caps{-1, -1, 0.1, -1}, "46-0-0"},
		"slow where the soluble cap is low":  {[]Material{stocked("46-0-0", 0, 1), slow}, n, Caps{0.9, 0.4, -1, -1}, "30-0-0"},
		"a compound for a starter's wants":   {TradeMaterials(), Wants{N: 0.75, P2O5: 1.2}, NoCaps(), "18-46-0"},
		"phosphate alone without nitrogen":   {TradeMaterials(), Wants{P2O5: 1.2}, NoCaps(), "0-46-0"},
		"potash of the trade: the sulfate":   {TradeMaterials(), Wants{K2O: 1}, NoCaps(), "0-0-50"},
		"nitrogen of the trade: urea":        {TradeMaterials(), n, NoCaps(), "46-0-0"},
		"magnesium of the trade: no potash":  {TradeMaterials(), Wants{Mg: 0.2}, NoCaps(), "0-0-0"},
		"potash with magnesium of the trade": {TradeMaterials(), Wants{K2O: 0.5, Mg: 0.25}, NoCaps(), "0-0-22"},
	} {
		d, why, ok := Choose(c.ms, c.w, c.c, 2600)
		if ok != (c.want != "") || ok && d.Material.Analysis != labelled(c.want).Analysis {
			t.Errorf("%s: chose %v (%v), want %q\n%v", name, d.Material.Title(), ok, c.want, why)
		}
		again, _, _ := Choose(c.ms, c.w, c.c, 2600)
		if again.Material.ID != d.Material.ID || again.Rate != d.Rate {
			t.Errorf("%s: a second look chose otherwise", name)
		}
	}
}

// Every material of the site file is accounted for: chosen, or passed over
// with the reason.
func TestChooseSaysWhyOthersWerePassedOver(t *testing.T) {
	ms := append([]Material{stocked("18-24-12", 9, 0), stocked("46-0-0", 1, 0), stocked("0-0-60", 1, 0), stocked("24-0-11", 0, 0)}, TradeMaterials()...)
	_, why, ok := Choose(ms, Wants{N: 0.7}, Caps{-1, -1, 0, -1}, 2600)
	if !ok || len(why) != 4 {
		t.Fatalf("%v %v, want the chosen and three passed over", ok, why)
	}
	for _, name := range []string{"46-0-0 chosen: enough on hand", "not used: 18-24-12 carries P₂O₅", "not used: 0-0-60 brings none", "not used: 24-0-11, none on hand"} {
		if !slices.ContainsFunc(why, func(r agronomy.Reason) bool { return strings.HasPrefix(r.Text, name) }) {
			t.Errorf("no reason begins %q in %v", name, why)
		}
	}
}

// The three-bag sum of [umn-three-bag]: on 3500 sq ft 3.5 lb N, 1.75 lb P2O5
// and 3.5 lb K2O; 8.0 lb of a 22 % phosphate product bring 1.7 lb N, and 5.6 lb
// at 32 % N bring the rest.
func TestMixThreeBags(t *testing.T) {
	ms := []Material{labelled("32-0-0"), labelled("0-0-50"), labelled("21.5-22-0")}
	doses, left, _ := Mix(ms, Wants{N: 1, P2O5: 0.5, K2O: 1}, NoCaps(), 3500)
	if len(doses) != 3 || left != (Wants{}) {
		t.Fatalf("%d doses, left %v", len(doses), left)
	}
	for i, want := range []struct {
		analysis string
		lb       float64
	}{{"21.5-22-0", 8.0}, {"32-0-0", 5.6}, {"0-0-50", 7.0}} {
		got := float64(doses[i].For(3500).Weight)
		if doses[i].Material.ID != want.analysis || got < want.lb-0.1 || got > want.lb+0.1 {
			t.Errorf("bag %d: %.2f lb of %s, want %v of %s", i+1, got, doses[i].Material.ID, want.lb, want.analysis)
		}
	}
}

func TestMixHoldsTheCapsTogether(t *testing.T) {
	doses, left, why := Mix([]Material{labelled("18-46-0"), labelled("46-0-0")}, Wants{N: 1, P2O5: 1, K2O: 1}, Caps{0.7, 0.7, -1, -1}, 1000)
	var n agronomy.PerThousand
	for _, d := range doses {
		n += d.N
	}
	if !matches(float64(n), 0.7) || !matches(float64(left.N), 0.3) || !matches(float64(left.K2O), 1) || left.P2O5 != 0 {
		t.Errorf("N %v, left %v", n, left)
	}
	if !slices.ContainsFunc(why, func(r agronomy.Reason) bool { return r.Text == "no material left that may bring 1 lb K₂O" }) {
		t.Errorf("silent about the potash: %v", why)
	}
}

func TestTradeMaterials(t *testing.T) {
	ids := map[string]bool{}
	for _, m := range TradeMaterials() {
		if ids[m.ID] || m.Name == "" || !m.ToBuy || m.Pack <= 0 || m.OnHand != 0 {
			t.Errorf("%+v", m)
		}
		ids[m.ID] = true
		if m.Kind == LimeMaterial || m.Kind == SulfurMaterial {
			continue
		}
		if err := m.dosable(); err != nil {
			t.Error(err)
		}
	}
	TradeMaterials()[0].Name = "spoilt"
	if TradeMaterials()[0].Name == "spoilt" {
		t.Error("the list is shared")
	}
}

func TestLikelyIsWhatIsChosen(t *testing.T) {
	for _, w := range []Wants{{N: 1}, {P2O5: 1}, {N: 0.5, K2O: 1}, {Mg: 0.2}, {N: 0.9, P2O5: 0.5}} {
		for _, c := range []Caps{NoCaps(), {0.7, 0.5, 0, 1}} {
			d, _, ok := Choose(TradeMaterials(), w, c, 2600)
			m, likely := Likely(refer(TradeMaterials()), w, Wants{}, c, 2600)
			if ok != likely || m.ID != d.Material.ID {
				t.Errorf("%v under %v: %s is chosen, %s likely", w, c, d.Material.ID, m.ID)
			}
		}
	}
}

// Nobody buys potash for a soil that wants none: the trade's feeding for it brings hardly
// any. [common]
func TestNoPotashIsBoughtThatIsNotWanted(t *testing.T) {
	for _, n := range []agronomy.PerThousand{0.3, 0.4, 0.5, 0.7, 1} {
		for _, area := range []agronomy.SquareFeet{600, 2600, 6900, 20000} {
			d, _, ok := ChooseAlong(refer(TradeMaterials()), Wants{N: n}, Wants{}, Caps{N: 1, SolubleN: 0.7, K2O: 1}, area)
			if !ok || d.K2O > 0.15 {
				t.Errorf("%v lb N on %v sq ft: %s with %.2f lb K2O", n, area, d.Material.ID, float64(d.K2O))
			}
		}
	}
}

// Each nutrient counts for what a material is worth: what brings more of one that is
// wanted is fit, what brings under half of it is not.
func TestChooseForEachNutrient(t *testing.T) {
	for name, c := range map[string]struct {
		much, little Material
		w            Wants
	}{
		"N":    {labelled("20-0-0"), labelled("20-20-0"), Wants{N: 1}},
		"P2O5": {labelled("0-46-0"), labelled("20-10-0"), Wants{P2O5: 1}},
		"K2O":  {labelled("0-0-50"), labelled("20-0-10"), Wants{K2O: 1}},
		"Mg":   {Material{ID: "epsom", Kind: MagnesiumMaterial, Magnesium: 10, Sulfur: 13}, Material{ID: "20-0-0", Analysis: agronomy.Analysis{N: 20}, Magnesium: 1}, Wants{Mg: 0.2}},
		"S":    {Material{ID: "ams", Analysis: agronomy.Analysis{N: 21}, Sulfur: 24}, Material{ID: "20-0-0", Analysis: agronomy.Analysis{N: 20}, Sulfur: 2}, Wants{S: 0.24}},
	} {
		caps := NoCaps()
		caps.N = 0.5
		d, why, ok := Choose([]Material{c.little, c.much}, c.w, caps, 1000)
		if !ok || d.Material.ID != c.much.ID {
			t.Errorf("%s alone: %v, %q, %v", name, ok, d.Material.ID, why)
		}
	}
}
