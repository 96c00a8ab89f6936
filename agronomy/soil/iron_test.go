package soil

import (
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
)

// Iron is likely short above pH 7, on centipedegrass above 6, nowhere inside the
// range that suits the stand; and one report never says both that the pH keeps
// iron from the grass and that it suits.
func TestIronByPH(t *testing.T) {
	for _, grass := range agronomy.GrassNames() {
		stand := agronomy.Stand{{Grass: check.Grass(t, grass), Percent: 100}}
		limit, _ := IronPH(stand)
		switch strings.ToLower(grass) {
		case "centipedegrass":
			if limit != 6 {
				t.Errorf("%s: iron short above %v, want 6", grass, float64(limit))
			}
		case "buffalograss", "seashore paspalum": // do well to 7.5
			if limit != 7.5 {
				t.Errorf("%s: iron short above %v, want 7.5", grass, float64(limit))
			}
		default:
			if limit != 7 {
				t.Errorf("%s: iron short above %v, want 7", grass, float64(limit))
			}
		}
		for ph := agronomy.PH(5); ph <= 9; ph += 0.1 {
			r := sourLawn()
			r.PH = ph
			pale := WhyPale(r, stand, "OH", false)
			kept := false
			for _, f := range pale.Fits {
				kept = kept || strings.Contains(f.Text, "keeps it from the roots")
			}
			_, likely := IronShort(r, stand)
			if kept != (ph > limit) || likely != kept {
				t.Errorf("%s at pH %v: kept from the roots is %t, likely short %t", grass, float64(ph), kept, likely)
			}
			for _, f := range Findings(r, stand, "OH", false) {
				if f.Reading == "ph" && kept && strings.Contains(f.Text, "suits") {
					t.Errorf("%s at pH %v: suits, and keeps iron from the grass", grass, float64(ph))
				}
				if f.Reading == "ph" && f.Level == High && !strings.Contains(f.Text, "accepted") {
					t.Errorf("%s at pH %v is not accepted: %s", grass, float64(ph), f.Text)
				}
			}
		}
	}
}

func TestPaleFromPhosphorus(t *testing.T) {
	r := sourLawn()
	r.PH, r.Phosphorus.PPM = 6.5, 200
	stand := agronomy.Stand{{Grass: check.Grass(t, "kentucky bluegrass"), Percent: 100}}
	for _, f := range WhyPale(r, stand, "OH", false).Fits {
		if strings.Contains(f.Text, "very high phosphorus") {
			return
		}
	}
	t.Error("very high phosphorus is not named among the causes of paleness")
}

// The rate is 2 oz of iron sulfate, 20.1 % iron. [nc-centipede]
func TestIronRate(t *testing.T) {
	if oz := float64(IronRate) / (55.845 / 278.01) * 16; math.Abs(oz-2) > 0.02 { // [atomic-weights] FeSO4·7H2O
		t.Errorf("%.3f oz of iron sulfate, want 2", oz)
	}
}

// 1.7 tons of pure gypsum for each meq in an acre-foot, which is 4 million lb of
// soil at the 2 million in 6 in that such rules count with [sodic-gypsum]; NDSU's
// equation with the sodium as a fraction, F = 1, in Mg/ha [ndsu-gypsum].
func TestGypsumOf(t *testing.T) {
	r := agronomy.Report{Depth: 8, CEC: 20, Sodium: agronomy.Reading{Given: true, PPM: 20 * 0.25 * 229.9}} // 25 %
	n, ok := GypsumOf(r)
	if !ok {
		t.Fatal("25 % sodium is not sodic")
	}
	if math.Abs(float64(n.Excess)-4) > 0.01 {
		t.Errorf("over 5 %%: %.3f meq, want 4", float64(n.Excess))
	}
	tons := float64(n.Total.PerAcre()) / 2000
	if want := 1.7 * 4 * (8 * 300000 / 4e6); math.Abs(tons-want) > 0.03*want {
		t.Errorf("%.2f tons an acre, want %.2f", tons, want)
	}
	if len(n.Why) != 3 || !strings.HasPrefix(n.Why[0].Text, "Sodium holds 25.0 % of a CEC of 20 meq/100 g") || !strings.Contains(n.Why[0].Text, "4.00 meq/100 g too much") ||
		!strings.Contains(n.Why[1].Text, "4.00 meq/100 g × 861 ppm × 8 in of soil") || !strings.Contains(n.Why[2].Text, "nothing without drainage") {
		t.Errorf("the working: %v", n.Why)
	}
	check.Resolve(t, n.Why)
	const rho = 300000 * 453.59237 / (43560 * 929.0304 * 2.54) // Mg/m3 of 300,000 lb in an acre-inch
	mg := 8.6 * 8 * 0.0254 * rho * 20 * (0.25 - 0.05)
	if got := n.Total.GramsPerM2() / 100; math.Abs(got-mg) > 0.01*mg {
		t.Errorf("%.2f Mg/ha, want %.2f by the equation with a fraction", got, mg)
	}
	for _, share := range []float64{0, 3, 5, 14.9} {
		r.Sodium.PPM = agronomy.PPM(20 * share / 100 * 229.9)
		if n, ok := GypsumOf(r); ok {
			t.Errorf("gypsum at %v %% sodium: %+v", share, n)
		}
	}
}
