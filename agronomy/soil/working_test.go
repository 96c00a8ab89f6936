package soil

import (
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
)

func ryegrass(t *testing.T) agronomy.Stand {
	return agronomy.Stand{{Grass: check.Grass(t, "perennial ryegrass"), Percent: 100}} // pH 6.0 to 7.0
}

// TestReadingsByHand holds each unit of a soil reading to ppm worked by hand:
// 300,000 lb of soil to the acre-inch, P 43.64 % of P2O5, K 83.02 % of K2O, K 391
// ppm to the meq. [definitions] [atomic-weights] [tx-plantanswers]
func TestReadingsByHand(t *testing.T) {
	p, k, ca, mg, s, na, fe := agronomy.Phosphorus, agronomy.Potassium, agronomy.Calcium, agronomy.Magnesium, agronomy.Sulfur, agronomy.Sodium, agronomy.Iron
	for _, c := range []struct {
		n     agronomy.Nutrient
		text  string
		depth agronomy.Inches
		cec   agronomy.Meq
		ppm   float64
		says  []string
		steps int
	}{
		{p, "14 ppm", 4, 0, 14, nil, 0}, {p, "14 ppm P", 4, 0, 14, nil, 0}, {k, "9 mg/kg", 4, 0, 9, nil, 0}, {fe, "9 ug/g Fe", 4, 0, 9, nil, 0}, {s, "9 ppm SO4-S", 4, 0, 9, nil, 0},
		{p, "32 ppm P2O5", 4, 0, 32 * 0.436429, []string{"P₂O₅ holds 43.6 % of its weight as the element: 32 × 0.4364 = 13.97"}, 1},
		{k, "100 ppm K2O", 4, 0, 83.0150, []string{"K₂O holds 83.0 %"}, 1}, {ca, "100 ppm CaO", 4, 0, 71.47, []string{"CaO holds 71.5 %"}, 1}, {mg, "100 ppm MgO", 4, 0, 60.30, []string{"MgO holds 60.3 %"}, 1},
		{na, "100 ppm Na2O", 4, 0, 74.19, []string{"Na₂O holds 74.2 %"}, 1}, {s, "30 ppm SO4", 4, 0, 10.0125, []string{"Sulfate holds 33.4 %"}, 1},
		{p, "24 lb/acre", 0, 0, 12, []string{"twice the ppm as lb/acre, for a furrow slice of 2,000,000 lb of soil however deep the sample was: 24 lb/acre ÷ 2 = 12 ppm"}, 1},
		{p, "24 lb/acre", 8, 0, 10, []string{"8 in of soil weigh 2.4 million lb an acre: 24 lb/acre ÷ 2.4 = 10 ppm"}, 1},
		{p, "24 lbs/A", 4, 0, 20, []string{"weigh 1.2 million lb an acre: 24 lb/acre ÷ 1.2 = 20 ppm"}, 1},
		{p, "24 lb/ac", 6, 0, 24 / 1.8, []string{"weigh 1.8 million"}, 1}, {p, "24 pp2m", 5.9, 0, 24 / 1.77, []string{"÷ 1.77 = 13.56 ppm"}, 1},
		{p, "24 lb/acre in 6.67 in", 4, 0, 24 / 2.001, []string{"6.67 in of soil"}, 1}, {p, "24 lb/acre in 4 in", 6, 0, 20, []string{"4 in of soil"}, 1},
		{p, "55 lb/acre P2O5", 0, 0, 55 * 0.436429 / 2, []string{"P₂O₅ holds", "twice the ppm"}, 2},
		{k, "112.085 kg/ha", 0, 0, 50, []string{"112.1 kg/ha = 100 lb/acre", "÷ 2 = 50 ppm"}, 2},
		{k, "0.5 meq/100 g", 4, 0, 195.49, []string{"0.5 meq/100 g × 391 ppm = 195.5 ppm"}, 1}, {ca, "2 cmol/kg", 4, 0, 400.78, []string{"× 200 ppm"}, 1}, {mg, "1 me/100g", 4, 0, 121.53, nil, 1}, {na, "1 meq", 4, 0, 229.9, nil, 1}, {k, "1 cmol(+)/kg", 4, 0, 390.98, nil, 1},
		{k, "3 %", 4, 10, 0.3 * 390.98, []string{"3 % of 10 meq/100 g × 391 ppm = 117.3 ppm"}, 1}, {ca, "100 % of CEC", 4, 5, 1001.95, nil, 1}, {mg, "10 percent", 4, 9, 0.9 * 121.53, nil, 1},
		{ca, "20000 ppm", 4, 0, 20000, nil, 0},
	} {
		r, err := ParseReading(c.n, c.text, c.depth, c.cec)
		if err != nil || !r.Given || r.AsGiven != c.text || math.Abs(float64(r.PPM)-c.ppm) > 1e-4*c.ppm || len(r.Steps) != c.steps {
			t.Errorf("%s %s: %+v (%v), want %v ppm in %d steps", c.n, c.text, r, err, c.ppm, c.steps)
		}
		all := texts(r.Steps)
		for _, want := range c.says {
			if !strings.Contains(all, want) {
				t.Errorf("%s %s: no %q in\n%s", c.n, c.text, want, all)
			}
		}
		check.Resolve(t, r.Steps)
	}
	for _, c := range []struct {
		n    agronomy.Nutrient
		text string
		cec  agronomy.Meq
		says string
	}{
		{p, "ppm", 0, "must begin with a plain number"}, {p, "14", 0, "a reading needs a unit"}, {p, "14 bushels", 0, `"bushels" is no unit of a soil reading`}, {p, "12,5 ppm", 0, "write a point: 12.5 ppm"},
		{p, "14 ppm K2O", 0, "K2O does not count phosphorus"}, {p, "14 ppm K", 0, "this counts potassium, not phosphorus"}, {p, "1 meq/100 g", 0, "phosphorus is not counted in meq"}, {p, "3 %", 9, "phosphorus has no share of the CEC"},
		{k, "3 %", 0, "a share of the CEC needs the CEC"}, {k, "100.1 %", 9, "more than 100 % of the CEC"}, {ca, "20001 ppm", 0, "20001 ppm is not a believable reading"}, {p, "24 lb/acre in deep", 0, `"deep" is no depth`},
	} {
		if r, err := ParseReading(c.n, c.text, 4, c.cec); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s %s: %+v (%v), want %q", c.n, c.text, r, err, c.says)
		}
	}
	for _, c := range []struct {
		texts     []string
		low, high agronomy.PPM
		says      string
	}{
		{[]string{"12 ppm", "20 ppm"}, 12, 20, ""}, {[]string{"12 ppm"}, 12, 12, ""}, {[]string{"0.5 ppm", "1 ppm"}, 0.5, 1, ""}, {[]string{"12 ppm", "12 ppm"}, 12, 12, ""}, {[]string{"24 lb/acre in 8 in", "48 lb/acre in 8 in"}, 10, 20, ""},
		{nil, 0, 0, "one value, or a low and a high"}, {[]string{"1 ppm", "2 ppm", "3 ppm"}, 0, 0, "one value, or a low and a high"}, {[]string{"20 ppm", "12 ppm"}, 0, 0, "the low end is above the high end"},
		{[]string{"0 ppm", "12 ppm"}, 0, 0, "must be above 0"}, {[]string{"x"}, 0, 0, "plain number"}, {[]string{"1 ppm", "x"}, 0, 0, "plain number"},
	} {
		o, err := ParseOptimum(p, c.texts, 4, 0)
		switch {
		case c.says == "" && (err != nil || !o.Given || o.Low != c.low || o.High != c.high || o.AsGiven != strings.Join(c.texts, " to ")):
			t.Errorf("%v: %+v (%v)", c.texts, o, err)
		case c.says != "" && (err == nil || !strings.Contains(err.Error(), c.says)):
			t.Errorf("%v: %+v (%v), want %q", c.texts, o, err, c.says)
		}
	}
	if o, _ := ParseOptimum(p, []string{"24 lb/acre in 8 in", "48 lb/acre in 8 in"}, 4, 0); len(o.Steps) != 2 {
		t.Errorf("steps of both ends: %v", o.Steps)
	}
}

// finding gives the one of a reading.
func finding(t *testing.T, r agronomy.Report, isNew bool, reading string) Finding {
	t.Helper()
	for _, f := range Findings(r, ryegrass(t), "OH", isNew) {
		if f.Reading == reading {
			return f
		}
	}
	t.Fatalf("no finding about %s", reading)
	return Finding{}
}

// What each level is called and what its sentence begins with, on both sides of
// each edge.
func TestWordsOfFindings(t *testing.T) {
	mehlich := func(n agronomy.Nutrient, ppm agronomy.PPM) agronomy.Report {
		reading := agronomy.Reading{Given: true, PPM: ppm}
		r := agronomy.Report{PH: 6.5, Method: agronomy.Mehlich3, Texture: agronomy.Loam, CEC: 10, OrganicMatter: 3}
		for of, at := range map[agronomy.Nutrient]*agronomy.Reading{agronomy.Phosphorus: &r.Phosphorus, agronomy.Potassium: &r.Potassium, agronomy.Calcium: &r.Calcium, agronomy.Magnesium: &r.Magnesium, agronomy.Sulfur: &r.Sulfur, agronomy.Sodium: &r.Sodium, agronomy.Iron: &r.Iron} {
			if of == n {
				*at = reading
			}
		}
		return r
	}
	change := func(r agronomy.Report, f func(*agronomy.Report)) agronomy.Report { f(&r); return r }
	bare := mehlich("", 0)
	for _, c := range []struct {
		r       agronomy.Report
		isNew   bool
		reading string
		level   Level
		text    string // begins with
		why     string
	}{
		{change(bare, func(r *agronomy.Report) { r.PH = 5.5 }), false, "ph", VeryLow, "The soil is far too acid for this grass, which does best at about 6.5", ""},
		{change(bare, func(r *agronomy.Report) { r.PH = 5.49 }), false, "ph", VeryLow, "The soil is far too acid", "Below pH 5.5 aluminum dissolves"},
		{change(bare, func(r *agronomy.Report) { r.PH = 5.51 }), false, "ph", Low, "The soil is a little too acid", ""},
		{change(bare, func(r *agronomy.Report) { r.PH = 5.99 }), false, "ph", Low, "The soil is a little too acid", ""},
		{change(bare, func(r *agronomy.Report) { r.PH = 6 }), false, "ph", Medium, "The pH suits this grass (6.0 to 7.0).", ""},
		{change(bare, func(r *agronomy.Report) { r.PH, r.Buffer.PH = 7, 6.8 }), false, "ph", Medium, "The pH suits", "the buffer pH of 6.80 says how much"},
		{change(bare, func(r *agronomy.Report) { r.PH = 7.01 }), false, "ph", High, "The pH is above what this grass likes (6.0 to 7.0)", ""},
		{change(bare, func(r *agronomy.Report) { r.PH = 8.2 }), false, "ph", High, "The pH is above", ""},
		{change(bare, func(r *agronomy.Report) { r.PH = 8.21 }), false, "ph", VeryHigh, "The soil is calcareous", ""},
		{change(bare, func(r *agronomy.Report) { r.PH, r.TargetPH = 5.2, 6.8 }), false, "ph", VeryLow, "The soil is far too acid for this grass, which does best at about 6.8", "the target asked for: pH 6.8"},
		{mehlich(agronomy.Phosphorus, 26), true, "phosphorus", Low, "Phosphorus is low just where seedlings need it", "26 ppm is low"},
		{mehlich(agronomy.Phosphorus, 26), false, "phosphorus", Low, "Phosphorus is low: roots", ""},
		{mehlich(agronomy.Phosphorus, 30), false, "phosphorus", Medium, "Phosphorus is fair", ""},
		{mehlich(agronomy.Phosphorus, 55), false, "phosphorus", High, "There is enough phosphorus", ""},
		{mehlich(agronomy.Phosphorus, 200.5), false, "phosphorus", VeryHigh, "There is enough phosphorus", "Above 200 ppm by Mehlich-3"},
		{mehlich(agronomy.Potassium, 60), false, "potassium", Low, "Potassium is low", "It holds 1.5 % of the CEC."},
		{mehlich(agronomy.Potassium, 100), false, "potassium", Medium, "Potassium is fair", ""},
		{mehlich(agronomy.Potassium, 200), false, "potassium", High, "There is enough potassium", ""},
		{change(mehlich(agronomy.Calcium, 400), func(r *agronomy.Report) { r.PH = 6.49 }), false, "calcium", Low, "Calcium is low, as in most acid soils", ""},
		{mehlich(agronomy.Calcium, 400), false, "calcium", Low, "Calcium is low though the pH is not", ""},
		{change(mehlich(agronomy.Calcium, 400), func(r *agronomy.Report) { r.PH = 0 }), false, "calcium", Low, "Calcium is low though", ""},
		{mehlich(agronomy.Calcium, 600), false, "calcium", Medium, "Calcium is fair", ""}, {mehlich(agronomy.Calcium, 800), false, "calcium", High, "There is enough calcium", ""},
		{mehlich(agronomy.Magnesium, 60), false, "magnesium", Low, "Magnesium is low", ""}, {mehlich(agronomy.Magnesium, 100), false, "magnesium", Medium, "Magnesium is fair", ""}, {mehlich(agronomy.Magnesium, 200), false, "magnesium", High, "There is enough magnesium", ""},
		{mehlich(agronomy.Sulfur, 7), false, "sulfur", VeryLow, "Sulfur is low", ""}, {mehlich(agronomy.Sulfur, 20), false, "sulfur", Medium, "Sulfur is fair", ""}, {mehlich(agronomy.Sulfur, 90), false, "sulfur", VeryHigh, "There is enough sulfur", ""},
		{mehlich(agronomy.Iron, 40), false, "iron", Low, "Iron is low for this test", ""}, {mehlich(agronomy.Iron, 60), false, "iron", Medium, "Iron is in its optimum: nothing to do.", ""}, {mehlich(agronomy.Iron, 150), false, "iron", High, "There is plenty of iron", ""},
		{mehlich(agronomy.Sodium, 60), false, "sodium", Low, "Sodium is no worry.", "60 ppm ÷ 230 ÷ 10 meq/100 g = 2.6 % of the CEC: low"}, {mehlich(agronomy.Sodium, 69), false, "sodium", Medium, "Sodium is worth watching", ""},
		{mehlich(agronomy.Sodium, 120), false, "sodium", High, "Sodium is above the usual ceiling", ""}, {mehlich(agronomy.Sodium, 400), false, "sodium", VeryHigh, "Sodium is high enough to seal the soil", ""},
		{change(mehlich(agronomy.Sodium, 60), func(r *agronomy.Report) { r.CEC = 0 }), false, "sodium", Unknown, "There is no sure way to read this sodium figure: sodium is judged", ""},
		{change(bare, func(r *agronomy.Report) { r.OrganicMatter = 1.99 }), false, "organic_matter", Low, "Organic matter is low", "about half a pound"},
		{change(bare, func(r *agronomy.Report) { r.OrganicMatter = 2 }), false, "organic_matter", Medium, "Organic matter is ordinary", ""},
		{change(bare, func(r *agronomy.Report) { r.OrganicMatter = 5 }), false, "organic_matter", Medium, "Organic matter is ordinary", ""},
		{change(bare, func(r *agronomy.Report) { r.OrganicMatter = 5.01 }), false, "organic_matter", High, "Organic matter is high", ""},
		{change(bare, func(r *agronomy.Report) { r.CEC = 4.99 }), false, "cec", Low, "The soil holds few nutrients", "over 20 a great deal"},
		{change(bare, func(r *agronomy.Report) { r.CEC = 5 }), false, "cec", Medium, "The soil holds nutrients reasonably well", ""},
		{change(bare, func(r *agronomy.Report) { r.CEC = 20 }), false, "cec", Medium, "The soil holds nutrients reasonably well", ""},
		{change(bare, func(r *agronomy.Report) { r.CEC = 20.01 }), false, "cec", High, "The soil holds many nutrients", ""},
		{mehlich(agronomy.Potassium, 391), false, "cec", Medium, "The soil holds", "potassium: 391 ppm ÷ 391 ÷ 10 meq/100 g = 10.0 % of the CEC"},
		{bare, false, "nitrogen", Unknown, "No soil test tells how much nitrogen", ""},
	} {
		f := finding(t, c.r, c.isNew, c.reading)
		if f.Level != c.level || !strings.HasPrefix(f.Text, c.text) || c.why != "" && !strings.Contains(texts(f.Why), c.why) {
			t.Errorf("%s, pH %v: %s, %q, why\n%s\nwant %s, %q, %q", c.reading, c.r.PH, f.Level, f.Text, texts(f.Why), c.level, c.text, c.why)
		}
	}
	for reading, unit := range map[string]string{"sodium": "% of CEC", "phosphorus": "ppm", "cec": "meq/100 g", "organic_matter": "%", "ph": ""} {
		r := sourLawn()
		if f := finding(t, r, false, reading); f.Unit != unit {
			t.Errorf("%s is in %q, want %q", reading, f.Unit, unit)
		}
	}
	if f := finding(t, sourLawn(), false, "sodium"); math.Abs(f.Value-100*18/229.9/7.4) > 1e-9 {
		t.Errorf("sodium: %v %%", f.Value)
	}
	if below := finding(t, mehlich(agronomy.Phosphorus, 200), false, "phosphorus"); strings.Contains(texts(below.Why), "Above 200 ppm") {
		t.Error("200 ppm is above 200 ppm")
	}
}

// Which causes of pale turf a report speaks for or against, at their edges.
func TestPaleAtItsEdges(t *testing.T) {
	given := func(ppm agronomy.PPM) agronomy.Reading { return agronomy.Reading{Given: true, PPM: ppm} }
	rep := func(ph agronomy.PH, change func(*agronomy.Report)) agronomy.Report {
		r := agronomy.Report{PH: ph, Method: agronomy.Mehlich3, Texture: agronomy.Loam, CEC: 10}
		change(&r)
		return r
	}
	none := func(*agronomy.Report) {}
	for _, c := range []struct {
		r             agronomy.Report
		isNew         bool
		fits, against string // one more that fits, or speaks against; "" none is asked
		notFits       string
	}{
		{rep(5.49, none), false, "Acid soil: at pH 5.49", "Lack of iron from a high pH: 5.49 is not high", ""},
		{rep(5.5, none), false, "", "5.5 is not high", "Acid soil"},
		{rep(7, none), false, "", "7.0 is not high", "Lack of iron: pH"},
		{rep(7.01, none), false, "Lack of iron: pH 7.01 keeps it from the roots", "", "Acid soil"},
		{rep(6.5, func(r *agronomy.Report) { r.Iron = given(49) }), false, "Little iron: 49 ppm", "", ""},
		{rep(6.5, func(r *agronomy.Report) { r.Iron = given(50) }), false, "", "Lack of iron in the soil itself: 50 ppm is enough", "Little iron"},
		{rep(7.01, func(r *agronomy.Report) { r.Phosphorus = given(109) }), false, "Very high phosphorus makes iron", "", ""},
		{rep(7, func(r *agronomy.Report) { r.Phosphorus = given(109) }), false, "Lack of iron from very high phosphorus", "7.0 is not high", "Very high phosphorus makes"},
		{rep(7.3, func(r *agronomy.Report) { r.Phosphorus = given(107) }), false, "", "", "ery high phosphorus"},
		{rep(6.5, func(r *agronomy.Report) { r.Phosphorus = given(20) }), true, "Low phosphorus under seedlings", "", ""},
		{rep(6.5, func(r *agronomy.Report) { r.Phosphorus = given(20) }), false, "", "", "Low phosphorus"},
		{rep(6.5, func(r *agronomy.Report) { r.Phosphorus = given(30) }), true, "", "", "Low phosphorus"},
		{rep(6.5, func(r *agronomy.Report) { r.Sulfur = given(14) }), false, "Low sulfur: young and old leaves", "", ""},
		{rep(6.5, func(r *agronomy.Report) { r.Sulfur = given(15) }), false, "", "Lack of sulfur: the reading is medium.", "Low sulfur"},
		{rep(6.5, func(r *agronomy.Report) { r.Magnesium = given(20) }), false, "Low magnesium: older leaves", "", ""},
		{rep(6.5, func(r *agronomy.Report) { r.Magnesium = given(90) }), false, "", "Lack of magnesium: the reading is medium.", ""},
		{rep(6.5, func(r *agronomy.Report) { r.Potassium = given(20) }), false, "Low potassium: thin turf", "", ""},
		{rep(6.5, func(r *agronomy.Report) { r.Potassium = given(300) }), false, "", "Lack of potassium: the reading is high.", ""},
		{rep(6.5, func(r *agronomy.Report) { r.Sodium = given(115) }), false, "Salt: brown tips", "", ""},
		{rep(6.5, func(r *agronomy.Report) { r.Sodium = given(400) }), false, "Salt: brown tips", "", ""},
		{rep(6.5, func(r *agronomy.Report) { r.Sodium = given(114) }), false, "", "", "Salt"},
	} {
		p := WhyPale(c.r, ryegrass(t), "OH", c.isNew)
		fits, against := texts(p.Fits), texts(p.Against)
		if !strings.Contains(fits, c.fits) || !strings.Contains(against, c.against) || c.notFits != "" && strings.Contains(fits, c.notFits) {
			t.Errorf("pH %v: fits\n%sagainst\n%swant %q, %q and not %q", c.r.PH, fits, against, c.fits, c.against, c.notFits)
		}
		if !strings.HasPrefix(fits, "Lack of nitrogen") || len(p.LookNext) != 4 {
			t.Errorf("pH %v: nitrogen is not first, or %d things to look at next", c.r.PH, len(p.LookNext))
		}
	}
}

// Figures that do not go together, at their edges; common practice.
func TestSuspiciousTogether(t *testing.T) {
	given := func(ppm agronomy.PPM) agronomy.Reading { return agronomy.Reading{Given: true, PPM: ppm} }
	fields := func(r agronomy.Report) string {
		var out []string
		for _, s := range Suspicious(r) {
			out = append(out, s.Field)
		}
		return strings.Join(out, " ")
	}
	for _, c := range []struct {
		r    agronomy.Report
		want string
	}{
		{agronomy.Report{CEC: 10, PH: 6.5, Calcium: given(2605)}, ""}, {agronomy.Report{CEC: 10, PH: 6.5, Calcium: given(2606)}, "cec"}, {agronomy.Report{CEC: 10, PH: 7.3, Calcium: given(2606)}, ""}, {agronomy.Report{CEC: 10, PH: 7.29, Calcium: given(2606)}, "cec"},
		{agronomy.Report{CEC: 10, Calcium: given(4000)}, ""}, {agronomy.Report{CEC: 10, PH: 6.5, Calcium: given(2004), Magnesium: given(300), Potassium: given(250)}, "cec"},
		{agronomy.Report{CEC: 15, Texture: agronomy.Sand}, ""}, {agronomy.Report{CEC: 15.1, Texture: agronomy.Sand}, "texture"}, {agronomy.Report{CEC: 15.1, Texture: agronomy.LoamySand}, "texture"}, {agronomy.Report{CEC: 15.1, Texture: agronomy.SandyLoam}, ""},
	} {
		if got := fields(c.r); got != c.want {
			t.Errorf("%+v: asks about %q, want %q", c.r, got, c.want)
		}
	}
}

// How a figure by the acre was read is told where the sampled depth would make
// another level of it: 46 lb/acre are 23 ppm, low, or 38 in 4 in, medium; 60 are
// 30 or 50, both medium. Mehlich-1's bands are in lb/acre themselves.
func TestAcreIsTold(t *testing.T) {
	for _, c := range []struct {
		text   string
		depth  agronomy.Inches
		method agronomy.Extractant
		told   bool
	}{
		{"46 lb/acre", 4, agronomy.Mehlich3, true}, {"60 lb/acre", 4, agronomy.Mehlich3, false}, {"46 lb/acre", 4, agronomy.Mehlich1, false}, {"46 lb/acre", 0, agronomy.Mehlich3, false}, {"38 ppm", 4, agronomy.Mehlich3, false},
	} {
		p, err := ParseReading(agronomy.Phosphorus, c.text, 0, 0)
		if err != nil {
			t.Fatal(err)
		}
		f := finding(t, agronomy.Report{Method: c.method, Depth: c.depth, Texture: agronomy.Loam, Phosphorus: p}, false, "phosphorus")
		if strings.Contains(f.Text, "46 lb/acre is read as twice the ppm, 23 ppm. If it counts the pounds in the 4 in sampled, it is 38.3 ppm, medium") != c.told {
			t.Errorf("%s over %v in by %s: %q, told %v", c.text, c.depth, c.method, f.Text, c.told)
		}
	}
}
