package agronomy

import (
	"math"
	"testing"
)

var fineStone = []Sieve{{8, 100}, {20, 98}, {60, 75}, {100, 60}}

func TestEffectiveValueOfALime(t *testing.T) {
	for _, c := range []struct {
		name      string
		m         Material
		firstYear bool
		want      Percent
	}{
		{"bag wins", Material{ECCE: 85, CCE: 90, Fineness: fineStone}, true, 85},
		{"New York, one year", Material{CCE: 90, Fineness: fineStone}, true, 73.08},
		{"Ohio, three years", Material{CCE: 90, Fineness: fineStone}, false, 80.28},
		{"no 100 mesh", Material{CCE: 90, Fineness: fineStone[:3]}, true, 80.28},
		{"one fine sieve stands for the coarser", Material{CCE: 100, Fineness: []Sieve{{60, 80}}}, false, 80},
		{"no fine sieve", Material{CCE: 90, Fineness: fineStone[:2]}, false, 90},
		{"CCE alone", Material{CCE: 92}, false, 92},
		{"nothing known", Material{}, false, 90},
		{"hydrated", Material{Hydrated: true}, true, 135.083},
	} {
		got, why := c.m.Effective(c.firstYear)
		if math.Abs(float64(got-c.want)) > 0.001 || len(why) == 0 {
			t.Errorf("%s: %v with %d reasons, want %v", c.name, got, len(why), c.want)
		}
		resolve(t, why)
	}
}

func TestFinenessRules(t *testing.T) {
	dust := []Sieve{{4, 100}, {8, 100}, {10, 100}, {20, 100}, {30, 100}, {40, 100}, {50, 100}, {60, 100}, {100, 100}}
	gravel := []Sieve{{4, 0}, {100, 0}}
	for _, r := range FinenessRules() {
		if len(r.Efficiency) != len(r.Mesh)+1 {
			t.Fatalf("%s: %d bands for %d sieves", r.State, len(r.Efficiency), len(r.Mesh))
		}
		if f, err := r.Fineness(dust); err != nil || f != 100 {
			t.Errorf("%s: dust counts %v %% (%v)", r.State, f, err)
		}
		if f, err := r.Fineness(gravel); err != nil || f != Percent(100*r.Efficiency[0]) {
			t.Errorf("%s: gravel counts %v %% (%v)", r.State, f, err)
		}
		if _, err := r.Fineness([]Sieve{{8, 100}}); err == nil {
			t.Errorf("%s: a label without a fine sieve was read", r.State)
		}
		if _, err := r.Fineness([]Sieve{{4, 10}, {8, 20}, {10, 30}, {20, 40}, {40, 50}, {50, 60}, {60, 70}, {100, 80}}); err == nil {
			t.Errorf("%s: a finer sieve passed more than a coarser one", r.State)
		}
		resolve(t, []Reason{{r.State, r.Source}})
	}
	if _, ok := FinenessRuleOf("Atlantis"); ok {
		t.Error("Atlantis has a fineness rule")
	}
}

func TestMaterialRate(t *testing.T) {
	if got, err := MaterialRate(50, 80); err != nil || got != 62.5 {
		t.Errorf("50 lb at 80 %%: %v (%v)", got, err)
	}
	for _, value := range []Percent{0, -5, 300, Percent(math.NaN())} {
		if got, err := MaterialRate(50, value); err == nil {
			t.Errorf("value %v gave %v", value, got)
		}
	}
	if v, ok := CCEOf("NaCl"); ok {
		t.Errorf("salt has a CCE of %v", v)
	}
}

func TestLimeDressings(t *testing.T) {
	for _, c := range []struct {
		total, most PerThousand
		parts       int
		last        PerThousand // by North Carolina's way
	}{{0, 50, 0, 0}, {40, 50, 1, 40}, {50, 50, 1, 50}, {50.1, 50, 2, 0.1}, {78, 50, 2, 28}, {120, 50, 3, 20}, {150, 50, 3, 50}} {
		even, err := LimeDressings(c.total, c.most)
		if err != nil {
			t.Fatal(err)
		}
		filled, err := LimeFillFirst(c.total, c.most)
		if err != nil {
			t.Fatal(err)
		}
		for _, parts := range [][]PerThousand{even, filled} {
			var sum PerThousand
			for _, p := range parts {
				if sum += p; p > c.most+1e-9 || p <= 0 {
					t.Errorf("%v under %v: a dressing of %v", c.total, c.most, p)
				}
			}
			if len(parts) != c.parts || math.Abs(float64(sum-c.total)) > 1e-9 {
				t.Errorf("%v under %v: %v", c.total, c.most, parts)
			}
		}
		if c.parts > 0 && math.Abs(float64(filled[c.parts-1]-c.last)) > 1e-9 {
			t.Errorf("%v under %v: %v, want %v last", c.total, c.most, filled, c.last)
		}
	}
	for _, bad := range [][2]PerThousand{{-1, 50}, {50, 0}, {PerThousand(math.NaN()), 50}, {50, PerThousand(math.NaN())}} {
		if parts, err := LimeDressings(bad[0], bad[1]); err == nil {
			t.Errorf("%v under %v gave %v", bad[0], bad[1], parts)
		}
	}
}

func TestLimeCap(t *testing.T) {
	for _, c := range []struct {
		m           Material
		established bool
		want        PerThousand
	}{{Material{}, true, 50}, {Material{}, false, 200}, {Material{Hydrated: true}, true, 10}} {
		got, why := LimeCap(c.m, c.established)
		if got != c.want {
			t.Errorf("hydrated %v, established %v: %v, want %v", c.m.Hydrated, c.established, got, c.want)
		}
		resolve(t, []Reason{why})
	}
}

func TestChooseStone(t *testing.T) {
	given := func(ppm PPM) Reading { return Reading{Given: true, PPM: ppm} }
	for _, c := range []struct {
		name string
		r    Report
		mg   Level
		want Stone
	}{
		{"low magnesium", Report{Texture: Loam}, Low, Dolomitic},
		{"sand", Report{Texture: Sand}, Unknown, Dolomitic},
		{"sand with plenty", Report{Texture: Sand}, High, EitherStone},
		{"clay full of magnesium", Report{Texture: Clay, CEC: 10, Magnesium: given(260), Calcium: given(900)}, High, Calcitic},
		{"clay below a fifth", Report{Texture: Clay, CEC: 10, Magnesium: given(240), Calcium: given(900)}, Medium, EitherStone},
		{"more magnesium than calcium", Report{Texture: Loam, Magnesium: given(300), Calcium: given(290)}, Medium, Calcitic},
		{"nothing known", Report{}, Unknown, EitherStone},
	} {
		got, why := ChooseStone(c.r, c.mg)
		if got != c.want || len(why) == 0 {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
		resolve(t, why)
	}
}

func TestLimeCredit(t *testing.T) {
	for _, c := range []struct {
		months  float64
		organic bool
		want    PerThousand
	}{{0, false, 50}, {6, false, 26}, {12.5, false, 0}, {20, false, 0}, {3, true, 26}} {
		if got := LimeCredit(50, c.months, c.organic); math.Abs(float64(got-c.want)) > 1e-9 {
			t.Errorf("50 lb %v months ago, organic %v: %v, want %v", c.months, c.organic, got, c.want)
		}
	}
}
