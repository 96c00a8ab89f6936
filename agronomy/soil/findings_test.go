package soil

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
)

// sourLawn is a report with an acid, hungry soil.
func sourLawn() agronomy.Report {
	given := func(ppm agronomy.PPM) agronomy.Reading { return agronomy.Reading{Given: true, PPM: ppm} }
	return agronomy.Report{Depth: 4, Method: agronomy.Mehlich3, PH: 5.1, Buffer: agronomy.Buffer{Method: agronomy.SMP, PH: 6.4}, Texture: agronomy.SandyLoam, CEC: 7.4, OrganicMatter: 2.1,
		Phosphorus: given(14), Potassium: given(61), Calcium: given(520), Magnesium: given(48), Sulfur: given(9), Sodium: given(18), Iron: given(72)}
}

func order(fs []Finding) string {
	names := make([]string, len(fs))
	for i, f := range fs {
		names[i] = f.Reading
	}
	return strings.Join(names, " ")
}

func TestFindingsAreRanked(t *testing.T) {
	rye := agronomy.Stand{{Grass: check.Grass(t, "perennial ryegrass"), Percent: 100}}
	for _, tt := range []struct {
		what  string
		tweak func(*agronomy.Report)
		isNew bool
		want  string
	}{
		{"established", func(*agronomy.Report) {}, false, "ph nitrogen phosphorus potassium magnesium sulfur calcium sodium iron organic_matter cec"},
		{"new stand", func(*agronomy.Report) {}, true, "ph phosphorus nitrogen potassium magnesium sulfur calcium sodium iron organic_matter cec"},
		{"mildly sour", func(r *agronomy.Report) { r.PH = 5.8 }, true, "phosphorus ph nitrogen potassium magnesium sulfur calcium sodium iron organic_matter cec"},
		{"salty", func(r *agronomy.Report) { r.Sodium.PPM = 300; r.Sulfur.PPM = 20; r.Magnesium.PPM = 100 }, false, "ph nitrogen phosphorus potassium sodium calcium magnesium sulfur iron organic_matter cec"},
		{"no CEC, no organic matter", func(r *agronomy.Report) { r.CEC, r.OrganicMatter = 0, 0 }, false, "ph nitrogen phosphorus potassium magnesium sulfur calcium sodium iron"},
		{"pH fits", func(r *agronomy.Report) { r.PH = 6.4 }, false, "nitrogen phosphorus potassium magnesium sulfur ph calcium sodium iron organic_matter cec"},
	} {
		r := sourLawn()
		tt.tweak(&r)
		fs := Findings(r, rye, "OH", tt.isNew)
		if got := order(fs); got != tt.want {
			t.Errorf("%s:\n got %s\nwant %s", tt.what, got, tt.want)
		}
		for i, f := range fs {
			if f.Rank != i+1 || f.Text == "" || strings.Count(strings.TrimSuffix(f.Text, "."), ". ") > 1 {
				t.Errorf("%s: %+v", tt.what, f)
			}
			check.Resolve(t, append(f.Why, agronomy.Reason{Text: f.Text}))
		}
	}
	if fs := Findings(agronomy.Report{}, rye, "OH", false); fs != nil {
		t.Errorf("empty report: %v", fs)
	}
}

// Above 200 ppm phosphorus by Mehlich-3 is a risk to streams: of phosphorus only,
// by that extractant only. [psu-m3p]
func TestStreamsAreNamedAbove200(t *testing.T) {
	rye := agronomy.Stand{{Grass: check.Grass(t, "perennial ryegrass"), Percent: 100}}
	for _, c := range []struct {
		method agronomy.Extractant
		ppm    agronomy.PPM
		says   bool
	}{{agronomy.Mehlich3, 14, false}, {agronomy.Mehlich3, 200, false}, {agronomy.Mehlich3, 201, true}, {agronomy.Bray1, 250, false}} {
		r := sourLawn()
		r.Method, r.Phosphorus.PPM, r.Potassium.PPM = c.method, c.ppm, 300
		for _, f := range Findings(r, rye, "OH", false) {
			says := slices.ContainsFunc(f.Why, func(w agronomy.Reason) bool { return strings.Contains(w.Text, "can harm streams") })
			if want := c.says && f.Reading == "phosphorus"; says != want {
				t.Errorf("phosphorus %v ppm by %s, potassium 300: %s speaks of streams: %v", c.ppm, c.method, f.Reading, says)
			}
		}
	}
}

func TestPHFindingEdges(t *testing.T) {
	rye := agronomy.Stand{{Grass: check.Grass(t, "perennial ryegrass"), Percent: 100}} // 6.0 to 7.0
	for ph, want := range map[agronomy.PH]Level{5.5: VeryLow, 5.6: Low, 5.9: Low, 6.0: Medium, 7.0: Medium, 7.1: High, 8.0: High, 8.3: VeryHigh} {
		if fs := Findings(agronomy.Report{PH: ph}, rye, "", false); fs[0].Level != want && fs[1].Level != want {
			t.Errorf("pH %v: %v, want %s", float64(ph), fs, want)
		}
	}
}

// Every nutrient has words at every level, and none repeats another's.
func TestNutrientWords(t *testing.T) {
	said := map[string]string{}
	for _, n := range Nutrients() {
		for _, l := range []Level{Low, Medium, High} {
			text := nutrientWords(n, l, agronomy.Report{PH: 6}, false)
			if other := said[text]; other != "" || text == "" {
				t.Errorf("%s %s: %q, as %s", n, l, text, other)
			}
			said[text] = string(n)
		}
	}
}

func TestUnknownReadingIsSaid(t *testing.T) {
	r := agronomy.Report{PH: 6.5, Method: agronomy.Morgan, Phosphorus: agronomy.Reading{Given: true, PPM: 3}}
	fs := Findings(r, agronomy.Stand{{Grass: check.Grass(t, "tall fescue"), Percent: 100}}, "NY", false)
	for _, f := range fs {
		if f.Reading == "phosphorus" && (f.Level != Unknown || !strings.Contains(f.Text, "ask the lab")) {
			t.Errorf("%+v", f)
		}
	}
}

func texts(why []agronomy.Reason) string {
	var b strings.Builder
	for _, r := range why {
		b.WriteString(r.Text + "\n")
	}
	return b.String()
}

func TestWhyPale(t *testing.T) {
	rye := agronomy.Stand{{Grass: check.Grass(t, "perennial ryegrass"), Percent: 100}}
	sour := WhyPale(sourLawn(), rye, "OH", false)
	for _, want := range []string{"nitrogen", "Acid soil", "Low sulfur", "Low magnesium"} {
		if !strings.Contains(texts(sour.Fits), want) {
			t.Errorf("sour lawn: no %q in what fits:\n%s", want, texts(sour.Fits))
		}
	}
	if !strings.Contains(texts(sour.Against), "5.1 is not high") {
		t.Errorf("sour lawn, against:\n%s", texts(sour.Against))
	}
	chalky := sourLawn()
	chalky.PH, chalky.Sulfur.PPM, chalky.Phosphorus.PPM = 7.9, 20, 150
	p := WhyPale(chalky, rye, "OH", false)
	for _, want := range []string{"Lack of iron: pH 7.9", "Very high phosphorus"} {
		if !strings.Contains(texts(p.Fits), want) {
			t.Errorf("chalky lawn: no %q in\n%s", want, texts(p.Fits))
		}
	}
	if !strings.Contains(texts(p.Against), "Lack of sulfur") {
		t.Errorf("chalky lawn, against:\n%s", texts(p.Against))
	}
	bare := WhyPale(agronomy.Report{}, rye, "OH", false)
	if len(bare.Fits) != 1 || len(bare.Against) != 0 || !strings.Contains(bare.LookNext[0].Text, "soil tested") {
		t.Errorf("no report: %+v", bare)
	}
	for _, p := range []Pale{sour, p, bare} {
		check.Resolve(t, append(append(p.Fits, p.Against...), p.LookNext...))
	}
}

func TestSuspicious(t *testing.T) {
	if s := Suspicious(sourLawn()); len(s) != 0 {
		t.Errorf("an ordinary report is suspicious: %v", s)
	}
	for _, tt := range []struct {
		what  string
		tweak func(*agronomy.Report)
		field string
		says  string
	}{
		{"pH 3.4", func(r *agronomy.Report) { r.PH = 3.4 }, "ph", "salt solution"},
		{"pH 9.1", func(r *agronomy.Report) { r.PH = 9.1 }, "ph", "sodium"},
		{"900 ppm P", func(r *agronomy.Report) { r.Phosphorus.PPM = 900 }, "phosphorus", "lb/acre"},
		{"900 ppm P", func(r *agronomy.Report) { r.Phosphorus.PPM = 900 }, "phosphorus", "P₂O₅"},
		{"800 ppm K", func(r *agronomy.Report) { r.Potassium.PPM = 800; r.CEC = 20 }, "potassium", "K₂O"},
		{"SMP 7.6", func(r *agronomy.Report) { r.Buffer.PH = 7.6 }, "buffer", "7.5"},
		{"Mehlich 6.7", func(r *agronomy.Report) { r.Buffer = agronomy.Buffer{Method: agronomy.MehlichBuffer, PH: 6.7} }, "buffer", "6.6"},
		{"Adams-Evans 8.1", func(r *agronomy.Report) { r.Buffer = agronomy.Buffer{Method: agronomy.AdamsEvans, PH: 8.1} }, "buffer", "8.0"},
		{"swapped", func(r *agronomy.Report) { r.PH, r.Buffer.PH = 6.4, 5.1 }, "buffer", "swapped"},
		{"bases over the CEC", func(r *agronomy.Report) { r.Calcium.PPM = 2000 }, "cec", "lb/acre read as ppm"},
		{"organic", func(r *agronomy.Report) { r.OrganicMatter = 21 }, "organic_matter", "muck"},
		{"heavy sand", func(r *agronomy.Report) { r.Texture, r.CEC = agronomy.Sand, 16 }, "texture", "heavier"},
	} {
		r := sourLawn()
		tt.tweak(&r)
		found := false
		for _, s := range Suspicious(r) {
			found = found || s.Field == tt.field && strings.Contains(s.Text, tt.says)
		}
		if !found {
			t.Errorf("%s: no %q about %s in %v", tt.what, tt.says, tt.field, Suspicious(r))
		}
	}
}

// A finding cites its scale, never the turning of a unit on the way to it; an
// optimum of the laboratory's own has no published source.
func TestFindingsCiteTheirScale(t *testing.T) {
	rye := agronomy.Stand{{Grass: check.Grass(t, "perennial ryegrass"), Percent: 100}}
	p, err := ParseReading(agronomy.Phosphorus, "18 lb/acre P2O5", 4, 0)
	if err != nil {
		t.Fatal(err)
	}
	sources := func(r agronomy.Report) map[string]string {
		out := map[string]string{}
		for _, f := range Findings(r, rye, "GA", false) {
			out[f.Reading] = f.Source
		}
		return out
	}
	if got := sources(agronomy.Report{Depth: 4, Method: agronomy.Mehlich1, PH: 5.5, Phosphorus: p})["phosphorus"]; !strings.Contains(got, "uga") {
		t.Errorf("Georgia's scale is cited as %q", got)
	}
	for _, text := range []string{"18 lb/acre", "18 lb/acre in 6.67 in", "18 ppm P2O5"} { // turned by [definitions], [atomic-weights]
		p, err := ParseReading(agronomy.Phosphorus, text, 4, 0)
		if err != nil || len(p.Steps) == 0 {
			t.Fatal(err, p.Steps)
		}
		if got := sources(agronomy.Report{Depth: 4, Method: agronomy.Mehlich3, PH: 5.5, Phosphorus: p})["phosphorus"]; !strings.Contains(got, "slan") {
			t.Errorf("%s, by the sufficiency levels: cited as %q", text, got)
		}
	}
	own := p
	if own.Wanted, err = ParseOptimum(agronomy.Phosphorus, []string{"30 ppm", "50 ppm"}, 4, 0); err != nil {
		t.Fatal(err)
	}
	if got := sources(agronomy.Report{Depth: 4, PH: 5.5, Phosphorus: own})["phosphorus"]; got != "" {
		t.Errorf("the laboratory's own optimum is cited as %q", got)
	}
	if got := sources(sourLawn())["cec"]; !strings.Contains(got, "tristate-2020") {
		t.Errorf("CEC is cited as %q", got)
	}
}
