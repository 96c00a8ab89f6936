package lime

import (
	"math"
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

// texts joins what a need says, its assumptions last.
func texts(reasons ...[]agronomy.Reason) string {
	var b strings.Builder
	for _, r := range slices.Concat(reasons...) {
		b.WriteString(r.Text + " [" + r.Source + "]\n")
	}
	return b.String()
}

// TestWorkings holds requirements that were worked by hand to their figure and
// to what their working says, on both sides of each edge at which a method gives
// way to another.
func TestWorkings(t *testing.T) {
	smp := func(ph agronomy.PH) agronomy.Buffer { return agronomy.Buffer{Method: agronomy.SMP, PH: ph} }
	const acts = 0.85 // of ordinary ground limestone, which the texture table is made for [common]
	const weak, little, lower = "Weakly buffered soil", "says little: pH and texture", "Iowa's table ends at 5.8"
	for name, c := range map[string]struct {
		of     Case
		lb     float64 // per 1000 sq ft; -1: not worked
		method string
		says   []string
		not    []string
	}{
		"Iowa, 6.4 to 6.5": {Case{PH: 5.5, Target: 6.5, Buffer: smp(6.4), CEC: 12, Depth: 4}, 3500 / 43.56 * 4 / 6, "Iowa's SMP table",
			[]string{"SMP buffer pH 6.4 to pH 6.5 by Iowa's SMP table: 3500 lb/acre of effective lime over 6 in [laboski-lime]", "for 4 in: 3500 × 4/6 = 2333 lb/acre", "/43.56 = 53.6 lb/1000 sq ft", "differ by half"}, []string{"The Sikora buffer was made", weak, little, "lies between"}},
		"Iowa, read for Sikora":      {Case{PH: 5.5, Target: 6.5, Buffer: agronomy.Buffer{Method: agronomy.Sikora, PH: 6.4}, CEC: 12, Depth: 6}, 3500 / 43.56, "Iowa's SMP table", []string{"The Sikora buffer was made", "Sikora buffer pH 6.4"}, []string{"for 6 in"}},
		"Oregon, read for SMP":       {Case{PH: 5, Target: 5.6, Buffer: smp(6), CEC: 12, State: "OR", Depth: 6}, 1.7 * 2000 / 43.56, "Oregon's Sikora table", []string{"The Sikora buffer was made", "1.7 × 2000/43.56 = 78.1 lb/1000 sq ft"}, []string{lower}},
		"Oregon, by its own":         {Case{PH: 5, Target: 6.2, Buffer: agronomy.Buffer{Method: agronomy.Sikora, PH: 6}, CEC: 12, State: "WA", Depth: 6}, 3 * 2000 / 43.56, "Oregon's Sikora table", []string{"pH 6.2 lies between 6.0 (2.5) and 6.4 (3.5): 3 tons/acre"}, []string{"The Sikora buffer was made"}},
		"Kansas":                     {Case{PH: 5.5, Target: 6.8, Buffer: agronomy.Buffer{Method: agronomy.Sikora, PH: 6}, CEC: 12, State: "KS", Depth: 6}, 11184 / 43.56, "Kansas's Sikora equations", nil, []string{lower}},
		"Kansas, high enough":        {Case{PH: 6.4, LimeBelow: 6.6, Target: 6.8, Buffer: agronomy.Buffer{Method: agronomy.Sikora, PH: 6.6}, CEC: 12, State: "KS", Depth: 6}, 0, "Kansas's Sikora equations", []string{"ask for no lime at pH 6.4: they lime to 6.8 only from under 6.4"}, nil},
		"the last row of Iowa":       {Case{PH: 5, Target: 6.5, Buffer: smp(5.8), CEC: 12, Depth: 6}, 7900 / 43.56, "Iowa's SMP table", nil, []string{lower}},
		"under the last row of Iowa": {Case{PH: 5, Target: 6.4, Buffer: smp(5.79), CEC: 12, Depth: 6}, -1, "Oregon's Sikora table", []string{lower}, nil},
		"CEC of 5":                   {Case{PH: 5.5, Target: 6.5, Buffer: smp(6.4), CEC: 5, Texture: agronomy.Sand, Depth: 4}, 3500 / 43.56 * 4 / 6, "Iowa's SMP table", nil, []string{weak}},
		"CEC under 5": {Case{PH: 5.5, Target: 6.5, Buffer: smp(6.7), CEC: 4.9, Texture: agronomy.Loam, Depth: 4}, 1.7 * acts * 2000 / 43.56 * 4 / 7, "pH and texture, beside Iowa's SMP table",
			[]string{weak, "up to 1 ton/acre", "1 × 1.7 = 1.7 tons/acre"}, []string{little, "Held to"}},
		"sand, no CEC":           {Case{PH: 5.5, Target: 6.5, Buffer: smp(6.4), Texture: agronomy.Sand, Depth: 4}, 3500 / 43.56 * 4 / 6, "Iowa's SMP table", nil, []string{weak, little}},
		"weak, held to a ton":    {Case{PH: 4.6, Target: 6.5, Buffer: smp(6.9), CEC: 3, Texture: agronomy.ClayLoam, Depth: 6}, 2000 / 43.56, "pH and texture, beside Iowa's SMP table", []string{weak, "Held to 45.9 lb/1000 sq ft", "[tristate-2020]"}, nil},
		"weak, under the column": {Case{PH: 4.4, Target: 6.5, Buffer: smp(6.9), CEC: 3, Texture: agronomy.Loam, Depth: 6}, -1, "pH and texture, beside Iowa's SMP table", []string{"The table by texture starts at pH 4.5"}, nil},
		"at the column's start":  {Case{PH: 4.5, Target: 6.5, Buffer: smp(6.9), CEC: 3, Texture: agronomy.Loam, Depth: 6}, -1, "pH and texture, beside Iowa's SMP table", nil, []string{"starts at pH 4.5"}},
		"a reading of 6.79":      {Case{PH: 5.5, Target: 6.5, Buffer: smp(6.79), CEC: 12, Texture: agronomy.Sand, Depth: 6}, (600 + 0.05*1500) / 43.56, "Iowa's SMP table", nil, []string{little}},
		"a reading of 6.8":       {Case{PH: 5.5, Target: 6.5, Buffer: smp(6.8), CEC: 12, Texture: agronomy.Sand, Depth: 6}, 600 / 43.56, "pH and texture, beside Iowa's SMP table", []string{"A reading of 6.8 " + little, "Held to 13.8"}, []string{weak}},
		"over the table":         {Case{PH: 5.5, Target: 6.5, Buffer: smp(7.2), CEC: 12, Texture: agronomy.Sand, Depth: 7}, -1, "pH and texture", []string{"Buffer pH 7.2 is above 7.0, where the readings of Iowa's SMP table end", little}, nil},
		"Adams-Evans": {Case{PH: 5, Target: 6.5, Buffer: agronomy.Buffer{Method: agronomy.AdamsEvans, PH: 7.7}, CEC: 12.9, Depth: 20.0 / 3}, -1, "Adams-Evans",
			[]string{"8 × (8.00 − 7.7) = 2.4 meq/100 g", "share of acid sites 0.707 at pH 5.0, 0.260 at pH 6.5", "2276 lb/acre of ordinary ground lime over 6.7 in", "1662 lb/acre of effective lime"}, []string{"under 13"}},
		"Adams-Evans, CEC of 13": {Case{PH: 5, Target: 6.5, Buffer: agronomy.Buffer{Method: agronomy.AdamsEvans, PH: 7.7}, CEC: 13, Depth: 7}, 2.3 * acts * 2000 / 43.56, "pH and texture", []string{"for a CEC under 13, and this soil has 13"}, nil},
		"North Carolina":         {Case{PH: 5, Target: 6, Acidity: 1.2, State: "NC", Depth: 8}, 0.75 * 2000 / 43.56, "North Carolina's Mehlich equation", []string{"acidity 1.2 meq/100 cm3 as reported", "1.2 × (6.0 − 5.0)/(6.6 − 5.0) = 0.75 tons/acre over 8 in"}, []string{"modified Mehlich"}},
		"modified Mehlich":       {Case{PH: 5, Target: 6, Buffer: agronomy.Buffer{Method: agronomy.ModifiedMehlich, PH: 6.3}, Depth: 4}, 0.75 * 2000 / 43.56 / 2, "North Carolina's Mehlich equation", []string{"4 × (6.6 − 6.3) = 1.2 meq/100 cm3", "read as the Mehlich buffer it replaced"}, nil},
		"Mehlich in NC, acidity": {Case{PH: 5, Target: 6, Acidity: 9, State: "NC", Buffer: agronomy.Buffer{Method: agronomy.MehlichBuffer, PH: 6.3}, Depth: 8}, 0.75 * 2000 / 43.56, "North Carolina's Mehlich equation", nil, []string{"modified Mehlich"}},
		"Penn State":             {Case{PH: 5, Target: 6.5, Acidity: 9, Depth: 3.5}, 80, "Penn State's turf table", []string{"acidity 9 meq/100 g to pH 6.5: 160 lb/1000 sq ft", "160 × 3.5/7 = 80 lb/1000 sq ft"}, nil},
		"organic by texture":     {Case{PH: 4.5, Target: 6.5, Texture: agronomy.Muck, Depth: 7}, 3.8 * 0.8 * acts * 2000 / 43.56, "pH and texture", []string{"limed to 5.3 only, not to 6.5", "muck, cool region"}, []string{"for mineral soil"}},
		"organic with a buffer":  {Case{PH: 4.5, Target: 6.5, OrganicMatter: 20.1, Texture: agronomy.Loam, Buffer: smp(6.4), Depth: 7}, 3.8 * 0.8 * acts * 2000 / 43.56, "pH and texture", []string{"The buffer tables are for mineral soil; organic soil goes by pH and the muck column. [usda-1957]"}, nil},
		"organic with acidity":   {Case{PH: 4.5, Target: 5, OrganicMatter: 20.1, Acidity: 4, Depth: 7}, 3.8 * 0.5 * acts * 2000 / 43.56, "pH and texture", []string{"for mineral soil"}, []string{"limed to 5.3"}},
		"20 % organic matter":    {Case{PH: 5.5, Target: 6.5, OrganicMatter: 20, Texture: agronomy.Loam, Depth: 7}, 1.7 * acts * 2000 / 43.56, "pH and texture", []string{"loam, cool region"}, []string{"Organic"}},
		"warm":                   {Case{PH: 5, Target: 6, Texture: agronomy.SiltLoam, WarmRegion: true, Depth: 7}, 1.3 * acts * 2000 / 43.56, "pH and texture", []string{"silt loam, warm region, pH 5.0 to 6.0: 0.5 × 1.2 + 0.5 × 1.4 = 1.3 tons/acre", "about 85 % acts like pure carbonate", "50.7 lb/1000 sq ft of fully effective lime"}, nil},
		"clay":                   {Case{PH: 5.5, Target: 6.5, Texture: agronomy.Clay, Depth: 7}, 2.3 * acts * 2000 / 43.56, "pH and texture", []string{"no column for clay"}, nil},
		"at the target":          {Case{PH: 6.5, Target: 6.5, Depth: 4}, 0, "none needed", []string{"pH 6.5 is already at the target of 6.5: no lime. []"}, []string{"not under"}},
		"a little under it":      {Case{PH: 6.3, Target: 6.5, Depth: 4}, 0, "none needed", []string{"pH 6.3 is not under 6.3, where liming begins for a target of 6.5: no lime. [tristate-1995]"}, []string{"already"}},
		"no depth":               {Case{PH: 5.5, Target: 6.5, Texture: agronomy.Loam}, 1.7 * acts * 2000 / 43.56 * 4 / 7, "pH and texture", []string{"No depth given: 4 in is taken"}, []string{"No texture"}},
	} {
		n, err := Requirement(c.of)
		if err != nil || n.Method != c.method || c.lb >= 0 && math.Abs(float64(n.Rate)-c.lb) > 1e-6 {
			t.Errorf("%s: %v lb by %q (%v), want %v by %q", name, n.Rate, n.Method, err, c.lb, c.method)
			continue
		}
		all := texts(n.Why, n.Assumed)
		for _, want := range c.says {
			if !strings.Contains(all, want) {
				t.Errorf("%s: no %q in\n%s", name, want, all)
			}
		}
		for _, not := range c.not {
			if strings.Contains(all, not) {
				t.Errorf("%s: %q in\n%s", name, not, all)
			}
		}
		third := n.Rate > 0 && (strings.HasPrefix(n.Method, "North Carolina") || n.Method == "pH and texture" && c.of.Buffer.PH == 0)
		if third && (math.Abs(float64(n.Low-n.Rate*2/3)) > 1e-9 || math.Abs(float64(n.High-n.Rate*4/3)) > 1e-9) {
			t.Errorf("%s: %v, %v to %v; want a third either way", name, n.Rate, n.Low, n.High)
		}
	}
}

// A texture judged from the CEC; common practice.
func TestTextureFromCEC(t *testing.T) {
	for cec, texture := range map[agronomy.Meq]agronomy.Texture{0: agronomy.Loam, 1: agronomy.LoamySand, 4.9: agronomy.LoamySand, 5: agronomy.SandyLoam, 9.9: agronomy.SandyLoam, 10: agronomy.Loam, 14.9: agronomy.Loam, 15: agronomy.SiltLoam, 19.9: agronomy.SiltLoam, 20: agronomy.ClayLoam, 60: agronomy.ClayLoam} {
		if got, why := (Case{CEC: cec}).textureOf(); got != texture || len(why) != 1 || !strings.Contains(why[0].Text, string(texture)) {
			t.Errorf("CEC %v: %s, %v; want %s", cec, got, why, texture)
		}
	}
}

// The states that take the warm column, our own list.
func TestWarmStates(t *testing.T) {
	warm := strings.Fields("AL FL GA LA MS NC SC TX HI PR VI GU AS MP")
	for a := 'A'; a <= 'Z'; a++ {
		for b := 'A'; b <= 'Z'; b++ {
			state := string(a) + string(b)
			if WarmLimeRegion(state) != slices.Contains(warm, state) {
				t.Errorf("%s: warm %v", state, WarmLimeRegion(state))
			}
		}
	}
}

// Effective values as printed: Iowa 100, 90 and 55 % through 4, 8 and 60 mesh,
// CCE 92, moisture 2 %: fineness 70, 1262 lb to the ton [laboski-lime]; Missouri's
// lb ENM are 800 to the ton of pure fine stone [mo-ag-lime].
func TestEffectiveAsPrinted(t *testing.T) {
	label := []material.Sieve{{Mesh: 4, Passing: 100}, {Mesh: 8, Passing: 90}, {Mesh: 60, Passing: 55}}
	iowa, _ := FinenessRuleOf("Iowa")
	value, err := iowa.Effective(92, label, 2)
	near(t, float64(value), 92*0.70*0.98, err, "Iowa")
	for _, bad := range [][2]agronomy.Percent{{-1, 0}, {251, 0}, {90, -1}, {90, 99.5}} {
		_, err := iowa.Effective(bad[0], label, bad[1])
		outside(t, err, "CCE %v, moisture %v", float64(bad[0]), float64(bad[1]))
	}
	fine := []material.Sieve{{Mesh: 8, Passing: 100}, {Mesh: 40, Passing: 80}, {Mesh: 60, Passing: 60}}
	enm, err := ENM(90, fine)
	near(t, float64(enm), 0.9*(0.25*0.2+0.6*0.2+0.6)*800, err, "ENM")
	enp, err := ENP(90, []material.Sieve{{Mesh: 8, Passing: 100}, {Mesh: 20, Passing: 80}, {Mesh: 60, Passing: 60}}, 5)
	near(t, float64(enp), 0.9*(0.2*0.2+0.6*0.2+0.6)*0.95*2000, err, "ENP")
	tons, err := ForENM(1600, 400) // [mo-enm-example]
	near(t, float64(tons), 4, err, "1600 lb ENM")
	for _, perTon := range []agronomy.Pounds{0.9, 801} {
		_, err := ForENM(1600, perTon)
		outside(t, err, "%v lb ENM a ton", float64(perTon))
	}
	rate, err := MaterialRate(50, 80)
	near(t, float64(rate), 62.5, err, "50 lb at 80 %%")
	stone := material.Material{CCE: 90, Fineness: fineStone}
	for _, c := range []struct {
		m         material.Material
		says, not string
	}{
		{stone, "fineness 89.2 % (sieves as Ohio counts them) = 80.3 % over three years [bc-637-200]", "no 100 mesh"},
		{material.Material{CCE: 90, Fineness: fineStone[:3]}, "no 100 mesh sieve, so the first year may show less", "as New York counts"},
		{material.Material{}, "no CCE given: 90 % is assumed", "fineness"},
		{material.Material{Hydrated: true}, "all of it acts", "fineness"},
		{material.Material{Hydrated: true, CCE: 130}, "all of it acts", "no CCE given"},
		{material.Material{ECCE: 70, CCE: 90}, "printed on the bag: 70 %", "CCE 90"},
	} {
		why := ValueOf(c.m, "", false).Why
		if all := texts(why); !strings.Contains(all, c.says) || strings.Contains(all, c.not) {
			t.Errorf("%+v: want %q and no %q in\n%s", c.m, c.says, c.not, all)
		}
	}
}

// Depth, dressings and sulfur at their edges.
func TestEdges(t *testing.T) {
	for _, depth := range []agronomy.Inches{1.9, 8.1} {
		_, err := Requirement(Case{PH: 5, Target: 6.5, Texture: agronomy.Loam, Depth: depth})
		outside(t, err, "lime for %v in", float64(depth))
	}
	for _, c := range []struct {
		total        agronomy.PerThousand
		parts, years int
	}{{0.1, 1, 1}, {5, 1, 1}, {5.1, 2, 1}, {10, 2, 1}, {10.1, 3, 2}, {12, 3, 2}, {20, 4, 2}, {21, 5, 3}, {1000, 200, 100}, {1001, 0, 0}} {
		parts, years := SulfurPlan(c.total)
		if len(parts) != c.parts || years != c.years {
			t.Errorf("%v lb of sulfur: %d applications in %d years, want %d in %d", c.total, len(parts), years, c.parts, c.years)
		}
		for _, p := range parts {
			near(t, float64(p), float64(c.total)/float64(c.parts), nil, "each of %v lb", c.total)
		}
	}
	for _, ph := range []agronomy.PH{6.7, 6.5} {
		n, err := SulfurToLower(ph, ph, agronomy.Loam, 4)
		if err != nil || n.Total != 0 || len(n.Why) != 1 || !strings.Contains(n.Why[0].Text, "no sulfur") {
			t.Errorf("at the target: %+v (%v)", n, err)
		}
	}
	n, err := SulfurToLower(7.5, 6.5, agronomy.Loam, 6.5)
	if all := texts(n.Why); err != nil || !strings.Contains(all, "loam, pH 7.5 to 6.5: 800 lb/acre") || !strings.Contains(all, "4 in 2 years") || !strings.Contains(all, "800 × 6.5/6.5 / 43.56 = 18.4 lb/1000 sq ft") {
		t.Errorf("%v: %s", err, all)
	}
	for _, depth := range []agronomy.Inches{0.9, 8.1} {
		_, err := SulfurToLower(7.5, 6.5, agronomy.Loam, depth)
		outside(t, err, "sulfur for %v in", float64(depth))
	}
	for _, c := range [][2]agronomy.PerThousand{{-0.1, 50}, {5001, 50}, {50, 0.9}, {50, 5001}} {
		_, err := Dressings(c[0], c[1])
		outside(t, err, "%v lb under %v", float64(c[0]), float64(c[1]))
	}
	given := func(ppm agronomy.PPM) agronomy.Reading { return agronomy.Reading{Given: true, PPM: ppm} }
	for mg, want := range map[agronomy.PPM]Stone{243: EitherStone, 243.1: Calcitic} { // 20 % of 10 meq at 121.53 ppm
		for _, texture := range []agronomy.Texture{agronomy.Clay, agronomy.ClayLoam} {
			if got, _ := ChooseStone(agronomy.Report{Texture: texture, CEC: 10, Magnesium: given(mg)}, ""); got != want {
				t.Errorf("%v ppm Mg on %s: %s, want %s", mg, texture, got, want)
			}
		}
	}
	if err := (&RangeError{"buffer pH", 4.5, 4.8, 7, "ask"}).Error(); err != "buffer pH 4.5 is outside 4.8 to 7: ask" {
		t.Error(err)
	}
}

// The pH to expect, turned round by hand: half of what takes a loam of pH 5.5 to
// 6.5 takes it halfway; a third more or less reaches as much further or less.
func TestExpectedByHand(t *testing.T) {
	c := Case{PH: 5.5, Target: 6.5, Texture: agronomy.Loam, Depth: 7}
	whole := agronomy.PerThousand(1.7 * 0.85 * 2000 / 43.56) // 85 % of the ground limestone in the table acts
	for share, ph := range map[agronomy.PerThousand]float64{0: 5.5, 0.25: 5.75, 0.5: 6, 1: 6.5} {
		got, why, err := ExpectedPH(c, whole*share)
		if err != nil || math.Abs(float64(got)-ph) > 1e-5 || len(why) == 0 {
			t.Errorf("%v of the lime: pH %v (%v), want %v", share, got, err, ph)
		}
		low, high, err := ExpectedPHSpread(c, whole*share)
		wantLow, wantHigh := 5.5+0.75*float64(share), min(6.5, 5.5+1.5*float64(share)) // the need is 4/3, or 2/3
		if err != nil || math.Abs(float64(low)-wantLow) > 1e-5 || math.Abs(float64(high)-wantHigh) > 1e-5 {
			t.Errorf("%v of the lime: pH %v to %v (%v), want %v to %v", share, low, high, err, wantLow, wantHigh)
		}
	}
	for _, lb := range []agronomy.PerThousand{-1, 2001, whole * 1.001} {
		_, _, err := ExpectedPH(c, lb)
		outside(t, err, "%v lb", float64(lb))
		_, _, err = ExpectedPHSpread(c, lb)
		outside(t, err, "spread of %v lb", float64(lb))
	}
	for _, texture := range []agronomy.Texture{agronomy.Sand, agronomy.Loam, agronomy.Clay} {
		for lb, ph := range map[float64]float64{0: 8, 0.5: 0, 1: 6.5} {
			need, _ := SulfurToLower(8, 6.5, texture, 4)
			got, why, err := PHAfterSulfur(8, texture, 4, need.Total*agronomy.PerThousand(lb))
			if err != nil || ph > 0 && math.Abs(float64(got)-ph) > 1e-6 || len(why) != 1 {
				t.Errorf("%v of the sulfur on %s: pH %v (%v), want %v", lb, texture, got, err, ph)
			}
		}
	}
	for _, lb := range []agronomy.PerThousand{-0.1, 60} {
		_, _, err := PHAfterSulfur(8, agronomy.Loam, 4, lb)
		outside(t, err, "%v lb of sulfur", float64(lb))
	}
}
