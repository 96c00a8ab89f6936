package soil

import (
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
)

func TestParseReading(t *testing.T) {
	for _, tt := range []struct {
		n     agronomy.Nutrient
		text  string
		depth agronomy.Inches
		cec   agronomy.Meq
		want  agronomy.PPM
	}{
		{agronomy.Phosphorus, "14 ppm", 4, 0, 14},
		{agronomy.Phosphorus, "9 mg/kg", 4, 0, 9},
		{agronomy.Phosphorus, "14 ppm P", 4, 0, 14},
		{agronomy.Phosphorus, "32 ppm P2O5", 4, 0, 13.9657},
		{agronomy.Phosphorus, "32 ppm P₂O₅", 4, 0, 13.9657},
		{agronomy.Potassium, "100 ppm K2O", 4, 0, 83.015},
		{agronomy.Phosphorus, "28 lb/acre", 4, 0, 23.3333},
		{agronomy.Phosphorus, "28 lbs/A", 6.66667, 0, 14},
		{agronomy.Potassium, "122 pp2m", 0, 0, 61},
		{agronomy.Phosphorus, "28 lb/acre", 0, 0, 14},
		{agronomy.Phosphorus, "28 lb/acre in 6.66667 in", 4, 0, 14},
		{agronomy.Phosphorus, "64 lb/acre P2O5", 0, 0, 13.9657},
		{agronomy.Potassium, "100 kg/ha", 0, 0, 44.6090},
		{agronomy.Potassium, "1.9 meq/100 g", 4, 0, 742.862},
		{agronomy.Calcium, "1 cmol/kg", 4, 0, 200.39},
		{agronomy.Potassium, "3 %", 4, 10, 117.294},
		{agronomy.Sodium, "0 ppm", 4, 0, 0},
	} {
		r, err := ParseReading(tt.n, tt.text, tt.depth, tt.cec)
		if err != nil || math.Abs(float64(r.PPM-tt.want)) > 1e-3*max(1, float64(tt.want)/10) || !r.Given || r.AsGiven != tt.text {
			t.Errorf("%s %q over %v in: %v ppm, %v; want %v", tt.n, tt.text, float64(tt.depth), float64(r.PPM), err, float64(tt.want))
		}
		check.Resolve(t, r.Steps)
	}
}

func TestParseReadingRefused(t *testing.T) {
	for _, tt := range []struct {
		n          agronomy.Nutrient
		text, says string
	}{
		{agronomy.Phosphorus, "14", "needs a unit"},
		{agronomy.Phosphorus, "low", "plain number"},
		{agronomy.Phosphorus, "14 furlongs", "no unit"},
		{agronomy.Phosphorus, "1.9 meq/100 g", "not counted in meq"},
		{agronomy.Phosphorus, "3 %", "no share of the CEC"},
		{agronomy.Potassium, "3 %", "needs the CEC"},
		{agronomy.Potassium, "14 ppm P2O5", "does not count potassium"},
		{agronomy.Potassium, "14 ppm Mg", "counts magnesium"},
		{agronomy.Potassium, "14 lb/acre P", "counts phosphorus"},
		{agronomy.Phosphorus, "1.9 mg/kg g", "no unit"},
		{agronomy.Calcium, "90000 ppm", "believable"},
		{agronomy.Phosphorus, "28 lb/acre in 6 weeks", "no depth"},
	} {
		if _, err := ParseReading(tt.n, tt.text, 4, 0); err == nil || !strings.Contains(err.Error(), tt.says) {
			t.Errorf("%s %q: %v, want %q", tt.n, tt.text, err, tt.says)
		}
	}
	for _, texts := range [][]string{nil, {"20 ppm", "12 ppm"}, {"0 ppm"}, {"1 ppm", "2 ppm", "3 ppm"}, {"12"}} {
		if _, err := ParseOptimum(agronomy.Phosphorus, texts, 4, 0); err == nil {
			t.Errorf("optimum %q: no error", texts)
		}
	}
}

// By default lb/acre is twice the ppm, however deep the sample; the finding
// says so where the sampled depth would make another level of it. The acre
// furrow slice of 2,000,000 lb is Texas A&M's. [tx-plantanswers]
func TestAcreIsTwiceThePPM(t *testing.T) {
	r, err := ParseReading(agronomy.Phosphorus, "46 lb/acre", 0, 0)
	if err != nil || r.PPM != 23 || !r.Doubled || !strings.Contains(r.Steps[0].Text, "46 lb/acre ÷ 2 = 23 ppm") {
		t.Errorf("46 lb/acre: %v ppm, %v, %v", float64(r.PPM), r.Steps, err)
	}
	lawn := sourLawn()
	lawn.Phosphorus = r
	says := func() string {
		for _, f := range Findings(lawn, agronomy.Stand{{Grass: check.Grass(t, "perennial ryegrass"), Percent: 100}}, "OH", false) {
			if f.Reading == "phosphorus" {
				return f.Text
			}
		}
		return ""
	}
	if got := says(); !strings.Contains(got, "twice the ppm, 23 ppm") || !strings.Contains(got, "38.3 ppm, medium: then set lb_per_acre_depth = true") {
		t.Errorf("the finding does not say how it was read: %q", got)
	}
	lawn.Phosphorus, err = ParseReading(agronomy.Phosphorus, "46 lb/acre", 4, 0)
	if got := says(); err != nil || lawn.Phosphorus.Doubled || strings.Contains(got, "twice") {
		t.Errorf("pounds in the sampled depth: %q, %v", got, err)
	}
}

func TestExtractantNamed(t *testing.T) {
	for name, want := range map[string]agronomy.Extractant{
		"Mehlich I": agronomy.Mehlich1, "M3": agronomy.Mehlich3, "Mehlich III": agronomy.Mehlich3, "MEHLICH 3": agronomy.Mehlich3, "mehlich-1": agronomy.Mehlich1,
		"Bray P1": agronomy.Bray1, "Olsen": agronomy.Olsen, "modified Morgan": agronomy.ModifiedMorgan, "Morgan": agronomy.Morgan, "": "", "Mehlich II": "", "m2": "",
	} {
		if got, ok := agronomy.ExtractantNamed(name); got != want || ok != (want != "") {
			t.Errorf("%q is %q, want %q", name, got, want)
		}
	}
}

// Units there and back.
func TestConversionsThereAndBack(t *testing.T) {
	near := func(what string, got, want float64) {
		if math.Abs(got-want) > 1e-5*want {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
	near("P", 3*agronomy.P2O5PerP*agronomy.PPerP2O5, 3)
	near("K", 3*agronomy.K2OPerK*agronomy.KPerK2O, 3)
	for _, depth := range []agronomy.Inches{2, 4, 6, 8} {
		near("ppm in soil", float64(agronomy.PPM(17).In(depth).PerAcre().PPM(depth)), 17)
	}
	near("plough layer", float64(agronomy.PPM(17).InPloughLayer()), float64(agronomy.PPM(17).In(20.0/3)))
	for _, n := range []agronomy.Nutrient{agronomy.Potassium, agronomy.Calcium, agronomy.Magnesium, agronomy.Sodium} {
		w, ok := agronomy.MeqWeight(n)
		share, ok2 := Saturation(n, w, 10)
		if !ok || !ok2 {
			t.Fatal(n)
		}
		near("1 meq of 10", float64(share), 10)
	}
}

func TestSaturationRefused(t *testing.T) {
	if _, ok := Saturation(agronomy.Phosphorus, 10, 10); ok {
		t.Error("phosphorus has a saturation")
	}
	if _, ok := Saturation(agronomy.Calcium, 10, 0); ok {
		t.Error("a saturation without CEC")
	}
}

func FuzzReading(f *testing.F) {
	for _, s := range []string{"14 ppm", "28 lb/acre in 6.67 in", "32 ppm P2O5", "1.9 meq/100 g", "1e308", "\xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, n := range Nutrients() {
			r, err := ParseReading(n, text, 4, 8)
			if x := float64(r.PPM); err != nil && x != 0 || !(x >= 0 && x <= maxPPM) {
				t.Errorf("%s %q: %v, %v", n, text, r.PPM, err)
			}
		}
	})
}
