package lime

import (
	"math"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
	"swardbook/agronomy/material"
	"swardbook/agronomy/soil"
)

var fineStone = []material.Sieve{{Mesh: 8, Passing: 100}, {Mesh: 20, Passing: 98}, {Mesh: 60, Passing: 75}, {Mesh: 100, Passing: 60}}

func TestEffectiveValueOfALime(t *testing.T) {
	for _, c := range []struct {
		name      string
		m         material.Material
		firstYear bool
		want      agronomy.Percent
	}{
		{"bag wins", material.Material{ECCE: 85, CCE: 90, Fineness: fineStone}, true, 85},
		{"New York, one year", material.Material{CCE: 90, Fineness: fineStone}, true, 73.08},
		{"Ohio, three years", material.Material{CCE: 90, Fineness: fineStone}, false, 80.28},
		{"no 100 mesh", material.Material{CCE: 90, Fineness: fineStone[:3]}, true, 80.28},
		{"one fine sieve stands for the coarser", material.Material{CCE: 100, Fineness: []material.Sieve{{Mesh: 60, Passing: 80}}}, false, 80},
		{"no fine sieve", material.Material{CCE: 90, Fineness: fineStone[:2]}, false, 90},
		{"CCE alone", material.Material{CCE: 92}, false, 92},
		{"nothing known", material.Material{}, false, 90},
		{"hydrated", material.Material{Hydrated: true}, true, 135.083},
		{"wood ash, half of limestone's value, common practice, no source", material.Material{Kind: material.WoodAsh}, false, 50},
	} {
		v := ValueOf(c.m, "", false)
		got, why := v.Full, v.Why
		if c.firstYear {
			got = v.FirstYear
		}
		if math.Abs(float64(got-c.want)) > 0.001 || len(why) == 0 {
			t.Errorf("%s: %v with %d reasons, want %v", c.name, got, len(why), c.want)
		}
		check.Resolve(t, why)
	}
}

func TestFinenessRules(t *testing.T) {
	dust := []material.Sieve{{Mesh: 4, Passing: 100}, {Mesh: 8, Passing: 100}, {Mesh: 10, Passing: 100}, {Mesh: 20, Passing: 100}, {Mesh: 30, Passing: 100}, {Mesh: 40, Passing: 100}, {Mesh: 50, Passing: 100}, {Mesh: 60, Passing: 100}, {Mesh: 100, Passing: 100}}
	gravel := []material.Sieve{{Mesh: 4, Passing: 0}, {Mesh: 100, Passing: 0}}
	for _, r := range FinenessRules() {
		if len(r.Efficiency) != len(r.Mesh)+1 {
			t.Fatalf("%s: %d bands for %d sieves", r.State, len(r.Efficiency), len(r.Mesh))
		}
		if f, err := r.Fineness(dust); err != nil || f != 100 {
			t.Errorf("%s: dust counts %v %% (%v)", r.State, f, err)
		}
		if f, err := r.Fineness(gravel); err != nil || f != agronomy.Percent(100*r.Efficiency[0]) {
			t.Errorf("%s: gravel counts %v %% (%v)", r.State, f, err)
		}
		if _, err := r.Fineness([]material.Sieve{{Mesh: 8, Passing: 100}}); err == nil {
			t.Errorf("%s: a label without a fine sieve was read", r.State)
		}
		if _, err := r.Fineness([]material.Sieve{{Mesh: 4, Passing: 10}, {Mesh: 8, Passing: 20}, {Mesh: 10, Passing: 30}, {Mesh: 20, Passing: 40}, {Mesh: 40, Passing: 50}, {Mesh: 50, Passing: 60}, {Mesh: 60, Passing: 70}, {Mesh: 100, Passing: 80}}); err == nil {
			t.Errorf("%s: a finer sieve passed more than a coarser one", r.State)
		}
		check.Resolve(t, []agronomy.Reason{{Text: r.State, Source: r.Source}})
	}
	if _, ok := FinenessRuleOf("Atlantis"); ok {
		t.Error("Atlantis has a fineness rule")
	}
}

func TestMaterialRate(t *testing.T) {
	if got, err := MaterialRate(50, 80); err != nil || got != 62.5 {
		t.Errorf("50 lb at 80 %%: %v (%v)", got, err)
	}
	for _, value := range []agronomy.Percent{0, -5, 300, agronomy.Percent(math.NaN())} {
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
		total, most agronomy.PerThousand
		parts       int
	}{{0, 50, 0}, {40, 50, 1}, {50, 50, 1}, {50.1, 50, 2}, {78, 50, 2}, {120, 50, 3}, {150, 50, 3}} {
		parts, err := Dressings(c.total, c.most)
		if err != nil || len(parts) != c.parts {
			t.Errorf("%v under %v: %v (%v), want %d", c.total, c.most, parts, err, c.parts)
		}
		for _, p := range parts {
			if math.Abs(float64(p)-float64(c.total)/float64(c.parts)) > 1e-9 {
				t.Errorf("%v under %v: a dressing of %v", c.total, c.most, p)
			}
		}
	}
	for _, bad := range [][2]agronomy.PerThousand{{-1, 50}, {50, 0}, {agronomy.PerThousand(math.NaN()), 50}, {50, agronomy.PerThousand(math.NaN())}} {
		if parts, err := Dressings(bad[0], bad[1]); err == nil {
			t.Errorf("%v under %v gave %v", bad[0], bad[1], parts)
		}
	}
}

func TestLimeCap(t *testing.T) {
	for _, c := range []struct {
		m           material.Material
		established bool
		want        agronomy.PerThousand
	}{{material.Material{}, true, 50}, {material.Material{}, false, 200}, {material.Material{Hydrated: true}, true, 10}} {
		got, why := Cap(c.m, c.established)
		if got != c.want {
			t.Errorf("hydrated %v, established %v: %v, want %v", c.m.Hydrated, c.established, got, c.want)
		}
		check.Resolve(t, []agronomy.Reason{why})
	}
}

func TestChooseStone(t *testing.T) {
	given := func(ppm agronomy.PPM) agronomy.Reading { return agronomy.Reading{Given: true, PPM: ppm} }
	for _, c := range []struct {
		name string
		r    agronomy.Report
		mg   soil.Level
		want Stone
	}{
		{"low magnesium", agronomy.Report{Texture: agronomy.Loam}, soil.Low, Dolomitic},
		{"sand", agronomy.Report{Texture: agronomy.Sand}, soil.Unknown, Dolomitic},
		{"sand with plenty", agronomy.Report{Texture: agronomy.Sand}, soil.High, EitherStone},
		{"clay full of magnesium", agronomy.Report{Texture: agronomy.Clay, CEC: 10, Magnesium: given(260), Calcium: given(900)}, soil.High, Calcitic},
		{"clay below a fifth", agronomy.Report{Texture: agronomy.Clay, CEC: 10, Magnesium: given(240), Calcium: given(900)}, soil.Medium, EitherStone},
		{"more magnesium than calcium", agronomy.Report{Texture: agronomy.Loam, Magnesium: given(300), Calcium: given(290)}, soil.Medium, Calcitic},
		{"nothing known", agronomy.Report{}, soil.Unknown, EitherStone},
	} {
		got, why := ChooseStone(c.r, c.mg)
		if got != c.want || len(why) == 0 {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
		check.Resolve(t, why)
	}
}

// A table of ordinary ground limestone is of stone at 90 % CCE [tristate-1995]:
// such a stone goes down at the table's own rate, and a fine one at no more.
func TestGroundLimestoneIsNotDividedTwice(t *testing.T) {
	c := Case{PH: 5.5, Target: 6.5, Texture: agronomy.Loam, Depth: 7}
	n, err := Requirement(c)
	if err != nil || !n.Ground {
		t.Fatal(n, err)
	}
	const table agronomy.TonsPerAcre = 1.7 // loam from 5.5 to 6.5 [usda-1957]
	for name, m := range map[string]material.Material{"ordinary": {CCE: 90}, "nothing known": {}} {
		rate, err := MaterialRate(n.Rate, ValueOf(m, "", n.Ground).Full)
		if err != nil || math.Abs(float64(rate-table.PerThousand())) > 1e-9 {
			t.Errorf("%s: %v lb (%v), the table says %v", name, rate, err, table.PerThousand())
		}
	}
	fine := ValueOf(material.Material{CCE: 90, Fineness: []material.Sieve{{Mesh: 60, Passing: 98}, {Mesh: 100, Passing: 95}}}, "", true)
	if rate, _ := MaterialRate(n.Rate, fine.Full); rate > table.PerThousand() {
		t.Errorf("a fine stone: %v lb, more than the %v of ordinary ground limestone", rate, table.PerThousand())
	}
	bought := Case{PH: 5.1, Target: 6.5, Buffer: agronomy.Buffer{Method: agronomy.SMP, PH: 6.4}, CEC: 12, Depth: 4}
	if n, err := Requirement(bought); err != nil || n.Ground {
		t.Errorf("Iowa's table is of pure carbonate: %+v, %v", n, err)
	}
}

// Where a state's own rule was read its stones are counted by it: Iowa's slide
// has 100, 90, 55 % through 4, 8, 60 mesh and CCE 92 make 64.4 before moisture,
// and Missouri's bands [mo-ag-lime] on the same.
func TestStatesCountTheirOwnSieves(t *testing.T) {
	stone := material.Material{CCE: 92, Fineness: []material.Sieve{{Mesh: 4, Passing: 100}, {Mesh: 8, Passing: 90}, {Mesh: 60, Passing: 55}}}
	if v := ValueOf(stone, "IA", false); math.Abs(float64(v.Full)-92*0.70) > 0.01 { // [laboski-lime]
		t.Errorf("Iowa: %v %%, want 64.4", v.Full)
	}
	ohio := ValueOf(stone, "OH", false).Full
	if v := ValueOf(stone, "PA", false).Full; v != ohio {
		t.Errorf("a state without a rule of its own: %v, want Ohio's %v", v, ohio)
	}
	ny := material.Material{CCE: 90, Fineness: fineStone}
	if v := ValueOf(ny, "NY", false); math.Abs(float64(v.FirstYear)-73.08) > 0.01 || math.Abs(float64(v.Full)-80.28) > 0.01 { // [cornell-env] [bc-637-200]
		t.Errorf("New York: %v in the first year, %v in all", v.FirstYear, v.Full)
	}
	mo := material.Material{CCE: 90, Fineness: []material.Sieve{{Mesh: 8, Passing: 100}, {Mesh: 40, Passing: 80}, {Mesh: 60, Passing: 60}}}
	if v := ValueOf(mo, "MO", false).Full; math.Abs(float64(v)-90*(0.2*0.25+0.2*0.6+0.6)) > 0.01 { // [mo-ag-lime]
		t.Errorf("Missouri: %v", v)
	}
	for _, code := range []string{"KS", "OK", "IL", "OR"} { // from memory alone
		if r := RuleFor(code); r.State != "Ohio" {
			t.Errorf("%s goes by %s, a rule that was not read", code, r.State)
		}
	}
}
