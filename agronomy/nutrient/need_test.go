package nutrient

import (
	"errors"
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
	"swardbook/agronomy/soil"
)

func reading(t *testing.T, n agronomy.Nutrient, text string, depth agronomy.Inches, cec agronomy.Meq) agronomy.Reading {
	t.Helper()
	r, err := soil.ParseReading(n, text, depth, cec)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestNeedsByLevel(t *testing.T) {
	tests := []struct {
		ppm      agronomy.PPM
		p, pNew  agronomy.PerThousand
		k, kNew  agronomy.PerThousand
		k2Single agronomy.PerThousand
	}{
		{5, 1.5, 3, 3, 3, 1},
		{20, 1, 2, 3, 3, 1},
		{40, 0.5, 1, 2, 2, 1},
		{100, 0, 0.5, 1, 1, 1},
		{200, 0, 0, 0, 0, 1},
	}
	for _, tt := range tests {
		r := agronomy.Report{Method: agronomy.Mehlich3, Texture: agronomy.Loam, Phosphorus: agronomy.Reading{Given: true, PPM: tt.ppm}, Potassium: agronomy.Reading{Given: true, PPM: tt.ppm}}
		for _, c := range []struct {
			name string
			f    func(agronomy.Report, string, bool) (Need, error)
			new  bool
			want agronomy.PerThousand
		}{
			{"P2O5", PhosphorusNeed, false, tt.p}, {"P2O5 new", PhosphorusNeed, true, tt.pNew},
			{"K2O", PotassiumNeed, false, tt.k}, {"K2O new", PotassiumNeed, true, tt.kNew},
		} {
			got, err := c.f(r, "OH", c.new)
			if err != nil {
				t.Fatal(err)
			}
			if got.Year != c.want {
				t.Errorf("%v ppm %s: %v lb, want %v", float64(tt.ppm), c.name, got.Year, c.want)
			}
			check.Resolve(t, got.Why)
		}
	}
}

// Established turf's amounts by level lie inside the published figures.
func TestNeedsInsideAnchors(t *testing.T) {
	for _, a := range []struct {
		what      string
		got       agronomy.PerThousand
		low, high agronomy.PerThousand
	}{
		{"P very low", p2o5Established.veryLow, 1.35, 2.6},
		{"P low", p2o5Established.low, 0.7, 2.0},
		{"K medium", k2oEstablished.medium, 0.8, 1.4},
		{"K low", k2oEstablished.low, 1.4, 3.0},
		{"K very low", k2oEstablished.veryLow, 1.4, 3.0},
	} {
		if a.got < a.low || a.got > a.high {
			t.Errorf("%s: %v lb outside %v to %v", a.what, a.got, a.low, a.high)
		}
	}
}

func TestNeedFromOptimum(t *testing.T) {
	// 1.9 meq/100 g is 743 ppm; 3 % of CEC 20 is 235 ppm: enough.
	k := reading(t, agronomy.Potassium, "1.9 meq/100 g", 4, 20)
	var err error
	if k.Wanted, err = soil.ParseOptimum(agronomy.Potassium, []string{"3 %"}, 4, 20); err != nil {
		t.Fatal(err)
	}
	got, err := PotassiumNeed(agronomy.Report{Depth: 4, CEC: 20, Potassium: k}, "OH", false)
	if err != nil || got.Year != 0 || got.Level != soil.VeryHigh {
		t.Errorf("743 ppm against 235: %+v, %v", got, err)
	}

	// A great shortage is held to a year's use and the rest carried.
	k = reading(t, agronomy.Potassium, "20 ppm", 6, 20)
	k.Wanted, _ = soil.ParseOptimum(agronomy.Potassium, []string{"240 ppm"}, 6, 20)
	got, err = PotassiumNeed(agronomy.Report{Depth: 6, Potassium: k}, "OH", false)
	if err != nil {
		t.Fatal(err)
	}
	all := 220.0 * 300000 * 6 / 1e6 / 43.56 * agronomy.K2OPerK
	if got.Year != 4 || math.Abs(float64(got.Year+got.Carried)-all) > 1e-9 || got.Single != 1 {
		t.Errorf("220 ppm short over 6 in: %+v, want 4 of %.3g", got, all)
	}
	check.Resolve(t, got.Why)

	p := reading(t, agronomy.Phosphorus, "0.5 ppm", 0, 0)
	p.Wanted, _ = soil.ParseOptimum(agronomy.Phosphorus, []string{"4 ppm"}, 0, 0)
	got, err = PhosphorusNeed(agronomy.Report{Phosphorus: p}, "VT", false)
	if err != nil || math.Abs(float64(got.Year)-0.2209) > 0.001 || len(got.Assumed) != 1 {
		t.Errorf("3.5 ppm short, no depth: %+v, %v; want 0.2209 lb over an assumed 4 in", got, err)
	}
}

func TestNeedErrors(t *testing.T) {
	if _, err := PhosphorusNeed(agronomy.Report{}, "OH", false); !errors.Is(err, ErrNoReading) {
		t.Errorf("empty report: %v", err)
	}
	r := agronomy.Report{Method: agronomy.Morgan, Phosphorus: agronomy.Reading{Given: true, PPM: 3}, Magnesium: agronomy.Reading{Given: true, PPM: 3}, Sulfur: agronomy.Reading{Given: true, PPM: 3}}
	if _, err := PhosphorusNeed(r, "NY", false); !errors.Is(err, ErrNoScale) || !strings.Contains(err.Error(), "ask the lab") {
		t.Errorf("Morgan: %v", err)
	}
	if _, err := MagnesiumNeed(r, "NY"); !errors.Is(err, ErrNoScale) {
		t.Errorf("Morgan magnesium: %v", err)
	}
	if _, err := MagnesiumNeed(agronomy.Report{}, "NY"); !errors.Is(err, ErrNoReading) {
		t.Errorf("no magnesium: %v", err)
	}
}

// What a reading is called and what it asks for go by the same figure.
func TestMagnesiumAsPrinted(t *testing.T) {
	mg, err := soil.ParseReading(agronomy.Magnesium, "50 lb/acre", 4, 0)
	if err != nil {
		t.Fatal(err)
	}
	n, err := MagnesiumNeed(agronomy.Report{Method: agronomy.Mehlich1, Texture: agronomy.Loam, Depth: 4, Magnesium: mg}, "GA")
	if want := agronomy.PPM(30 - 25).In(4); err != nil || n.Level != soil.Low || math.Abs(float64(n.Year-want)) > 1e-9 { // 60 lb/acre [uga-sod-769]
		t.Errorf("50 lb/acre: %s, %v lb, %v; want low and %v", n.Level, n.Year, err, want)
	}
}

func TestMagnesiumAndSulfur(t *testing.T) {
	r := agronomy.Report{Method: agronomy.Mehlich3, Texture: agronomy.SandyLoam, Depth: 4, Magnesium: agronomy.Reading{Given: true, PPM: 48}, Sulfur: agronomy.Reading{Given: true, PPM: 9}}
	mg, err := MagnesiumNeed(r, "OH")
	if want := agronomy.PPM(70 - 48).In(4); err != nil || mg.Year != want || mg.Level != soil.Low {
		t.Errorf("Mg 48 ppm: %+v, %v; want %v lb", mg, err, want)
	}
	check.Resolve(t, mg.Why)
	r.Magnesium.PPM = 90
	if mg, _ := MagnesiumNeed(r, "OH"); mg.Year != 0 {
		t.Errorf("Mg 90 ppm: %v lb", mg.Year)
	}
}

// More in the soil never asks for more in the bag.
func TestNeedsFall(t *testing.T) {
	for _, method := range []agronomy.Extractant{agronomy.Mehlich3, agronomy.Mehlich1, agronomy.Bray1, agronomy.Olsen, agronomy.ModifiedMorgan} {
		for _, isNew := range []bool{false, true} {
			lastP, lastK := agronomy.PerThousand(99), agronomy.PerThousand(99)
			for ppm := agronomy.PPM(0); ppm <= 400; ppm += 2 {
				r := agronomy.Report{Method: method, Texture: agronomy.Loam, Depth: 4, Phosphorus: agronomy.Reading{Given: true, PPM: ppm}, Potassium: agronomy.Reading{Given: true, PPM: ppm}}
				p, err := PhosphorusNeed(r, "GA", isNew)
				if err != nil {
					t.Fatal(err)
				}
				k, err := PotassiumNeed(r, "GA", isNew)
				if err != nil {
					t.Fatal(err)
				}
				if p.Year > lastP || k.Year > lastK {
					t.Fatalf("%s, new %v: more wanted at %v ppm", method, isNew, float64(ppm))
				}
				if !isNew && p.Year > yearP2O5 || k.Year > yearK2O {
					t.Fatalf("%s at %v ppm: over the year's cap", method, float64(ppm))
				}
				lastP, lastK = p.Year, k.Year
			}
		}
	}
}

// One soil on three sheets: Georgia's in lb/acre by Mehlich-1, one in ppm by
// Mehlich-3, and one that prints its own optimum. The yearly needs agree
// within what published tables differ among themselves for one soil: 1 lb.
func TestThreeSheetsOneSoil(t *testing.T) {
	sheets := map[string]agronomy.Report{
		"Mehlich-1, lb/acre": {Method: agronomy.Mehlich1, Depth: 4, Texture: agronomy.SandyLoam,
			Phosphorus: reading(t, agronomy.Phosphorus, "22 lb/acre", 4, 0), Potassium: reading(t, agronomy.Potassium, "58 lb/acre", 4, 0)},
		"Mehlich-3, ppm": {Method: agronomy.Mehlich3, Depth: 4, Texture: agronomy.SandyLoam,
			Phosphorus: reading(t, agronomy.Phosphorus, "19 ppm", 4, 0), Potassium: reading(t, agronomy.Potassium, "44 ppm", 4, 0)},
	}
	own := agronomy.Report{Depth: 4, Texture: agronomy.SandyLoam, CEC: 6,
		Phosphorus: reading(t, agronomy.Phosphorus, "44 ppm P2O5", 4, 6), Potassium: reading(t, agronomy.Potassium, "0.113 meq/100 g", 4, 6)}
	own.Phosphorus.Wanted, _ = soil.ParseOptimum(agronomy.Phosphorus, []string{"35 ppm", "50 ppm"}, 4, 6)
	own.Potassium.Wanted, _ = soil.ParseOptimum(agronomy.Potassium, []string{"90 ppm", "130 ppm"}, 4, 6)
	sheets["own optimum"] = own
	type span struct{ low, high agronomy.PerThousand }
	p, k := span{99, 0}, span{99, 0}
	for name, r := range sheets {
		pn, err := PhosphorusNeed(r, "GA", false)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		kn, err := PotassiumNeed(r, "GA", false)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if pn.Year <= 0 || kn.Year <= 0 {
			t.Errorf("%s: P %v, K %v lb; both are short", name, pn.Year, kn.Year)
		}
		p = span{min(p.low, pn.Year), max(p.high, pn.Year)}
		k = span{min(k.low, kn.Year), max(k.high, kn.Year)}
		t.Logf("%s: P2O5 %.2f, K2O %.2f", name, pn.Year, kn.Year)
	}
	if p.high-p.low > 1 || k.high-k.low > 1 {
		t.Errorf("needs part by more than 1 lb: P2O5 %v, K2O %v", p, k)
	}
}

// Once the seed is up nothing can be worked in beside it: what a seedbed would take
// at once is held to what goes on top, 1 lb at a time and 2 a year, common practice,
// and the rest is carried.
func TestPhosphorusOfANewStandThatIsUp(t *testing.T) {
	for _, c := range []struct{ ppm, year, up, carried float64 }{{5, 3, 2, 1}, {20, 2, 2, 0}, {40, 1, 1, 0}, {80, 0.5, 0.5, 0}} {
		r := agronomy.Report{Method: agronomy.Mehlich3, Texture: agronomy.Loam, Depth: 4, Phosphorus: agronomy.Reading{Given: true, PPM: agronomy.PPM(c.ppm)}}
		bed, err := PhosphorusNeed(r, "", true)
		if err != nil {
			t.Fatal(err)
		}
		up := bed.Up()
		near(t, float64(bed.Year), c.year, "P at %v ppm in the seedbed", c.ppm)
		near(t, float64(up.Year), c.up, "P at %v ppm on top, a year", c.ppm)
		near(t, float64(up.Single), 1, "P at %v ppm on top, at once", c.ppm)
		near(t, float64(up.Carried), c.carried, "P at %v ppm on top, carried", c.ppm)
	}
}
