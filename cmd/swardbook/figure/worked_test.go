package figure

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"swardbook/agronomy/material"
	"swardbook/climate"
)

// worked is an example whose answer stands in a published text, or was worked
// out by hand from definitions: the answer in whole, every value, and what the
// further lines and the working say.
type worked struct {
	line, text string
	more, why  []string
	values     map[string]any
}

func (w worked) check(t *testing.T) {
	t.Helper()
	a, err := ask(t, w.line)
	if err != nil {
		t.Errorf("%s: %v", w.line, err)
		return
	}
	if a.Text != w.text {
		t.Errorf("%s:\n%s, want\n%s", w.line, a.Text, w.text)
	}
	if len(a.More) != len(w.more) {
		t.Errorf("%s: %d further lines, want %d: %s", w.line, len(a.More), len(w.more), strings.Join(a.More, "\n"))
	}
	for i, says := range w.more {
		if i < len(a.More) && !strings.Contains(a.More[i], says) {
			t.Errorf("%s: line %d says %q, want %q", w.line, i, a.More[i], says)
		}
	}
	var working []string
	for _, r := range a.Why {
		working = append(working, r.Text+" ["+r.Source+"]")
	}
	for _, says := range w.why {
		if !strings.Contains(strings.Join(working, "\n"), says) {
			t.Errorf("%s: the working does not say %q:\n%s", w.line, says, strings.Join(working, "\n"))
		}
	}
	sameValues(t, w.line, a.Values, w.values)
}

// sameValues holds every value to what was worked out, to a part in a hundred thousand.
func sameValues(t *testing.T, line string, got, want map[string]any) {
	t.Helper()
	for key := range got {
		if _, ok := want[key]; !ok {
			t.Errorf("%s: %s is %v, and not worked out", line, key, got[key])
		}
	}
	for key, v := range want {
		g, ok := got[key]
		x, isNumber := v.(float64)
		y, isFloat := g.(float64)
		switch {
		case !ok:
			t.Errorf("%s: no %s", line, key)
		case isNumber && !isFloat || isNumber && math.Abs(x-y) > 1e-5*math.Abs(x)+1e-9 || !isNumber && fmt.Sprint(g) != fmt.Sprint(v):
			t.Errorf("%s: %s is %v, want %v", line, key, g, v)
		}
	}
}

func dose(material string, rate, gal, n, slow, p, k float64, bound string, byCap bool) map[string]any {
	return map[string]any{"material": material, "rate_lb_per_1000_sqft": rate, "gal_per_1000_sqft": gal, "n_lb_per_1000_sqft": n, "slow_n_lb_per_1000_sqft": slow,
		"p2o5_lb_per_1000_sqft": p, "k2o_lb_per_1000_sqft": k, "bound_by": bound, "by_cap": byCap}
}

func on(values map[string]any, lb, gal, packs float64) map[string]any {
	values["amount_lb"], values["amount_gal"], values["packs"] = lb, gal, packs
	return values
}

// The published examples name the source key; the others are worked by hand.
func TestWorkedRates(t *testing.T) {
	for _, w := range []worked{
		{ // 1 lb N from 28-3-6 is 3.57 lb, 21.42 lb on 6,000 sq ft [unl-calc]
			line: "rate;--analysis=28-3-6;--n=1;--size=6000 sq ft;--pack=10 lb",
			text: "3.6 lb per 1,000 sq ft (17 g/m²) of 28-3-6; it brings 1 lb N, 0.107 lb P₂O₅, 0.214 lb K₂O per 1,000 sq ft (4.9 g N, 0.52 g P₂O₅, 1 g K₂O/m²).",
			more: []string{"For 6,000 sq ft (557 m²): 21 lb (9.72 kg) of 28-3-6, 2.1 packs."},
			why:  []string{"1 lb N wanted ÷ 28 % = 3.57 lb of product per 1000 sq ft [unl-calc]"}, values: on(dose("28-3-6", 3.571, 0, 1, 0, 0.107, 0.214, "N", false), 21.429, 0, 2.14)},
		{ // 6.25 lb, with 0.25 lb P₂O₅ and 0.5 lb K₂O [uf-enh73]; no size, no amounts
			line: "rate;--analysis=16-4-8;--n=1", text: "6.2 lb per 1,000 sq ft (31 g/m²) of 16-4-8; it brings 1 lb N, 0.25 lb P₂O₅, 0.5 lb K₂O per 1,000 sq ft (4.9 g N, 1.2 g P₂O₅, 2.4 g K₂O/m²).",
			values: dose("16-4-8", 6.25, 0, 1, 0, 0.25, 0.5, "N", false)},
		{ // 3 lb N of 20-5-10 is 15 lb [turf-mag-3n]: more than turf takes at once [common]
			line: "rate;--analysis=20-5-10;--n=3", text: "15 lb per 1,000 sq ft (73 g/m²) of 20-5-10; it brings 3 lb N, 0.75 lb P₂O₅, 1.5 lb K₂O per 1,000 sq ft (15 g N, 3.7 g P₂O₅, 7.3 g K₂O/m²).",
			more: []string{"More than 1 lb N per 1,000 sq ft (4.9 g N/m²) at a time can burn"}, values: dose("20-5-10", 15, 0, 3, 0, 0.75, 1.5, "N", false)},
		{ // the first that is met: 0.5 lb P₂O₅, 0.375 lb N, 0.75 lb K₂O left
			line: "rate;--analysis=18-24-12;--n=0.75;--p2o5=0.5;--k2o=1",
			text: "2.1 lb per 1,000 sq ft (10 g/m²) of 18-24-12; it brings 0.375 lb N, 0.5 lb P₂O₅, 0.25 lb K₂O per 1,000 sq ft (1.8 g N, 2.4 g P₂O₅, 1.2 g K₂O/m²).",
			why:  []string{"P₂O₅ is met first", "0.375 lb N, 0.75 lb K₂O"}, values: dose("18-24-12", 2.083, 0, 0.375, 0, 0.5, 0.25, "P2O5", false)},
		{ // a fifth slow: 0.7 lb quick binds before 0.9 lb in all [md-ag-6-224]
			line: "rate;--analysis=24-0-4;--slow=0.2;--n=1;--n-cap=0.9;--soluble-cap=0.7",
			text: "3.6 lb per 1,000 sq ft (18 g/m²) of 24-0-4; it brings 0.875 lb N, 0.146 lb K₂O per 1,000 sq ft (4.3 g N, 0.71 g K₂O/m²).",
			why:  []string{"the cap on soluble N is met first"}, values: dose("24-0-4", 3.646, 0, 0.875, 0.175, 0, 0.146, "soluble N", true)},
		{ // half slow: now the 0.9 lb bind
			line: "rate;--analysis=24-0-4;--slow=0.5;--n=1;--n-cap=0.9;--soluble-cap=0.7",
			text: "3.8 lb per 1,000 sq ft (18 g/m²) of 24-0-4; it brings 0.9 lb N, 0.15 lb K₂O per 1,000 sq ft (4.4 g N, 0.73 g K₂O/m²).",
			why:  []string{"the cap on N is met first"}, values: dose("24-0-4", 3.75, 0, 0.9, 0.45, 0, 0.15, "N", true)},
		{ // 0.5 lb N of a 21-0-0 at 10.2 lb a gallon: 0.2334 gal, 0.794 gal on 3,400 sq ft
			line: "rate;--analysis=21-0-0;--n=0.5;--density=10.2 lb/gal;--size=3400 sq ft;--pack=2.5 gal",
			text: "30 fl oz per 1,000 sq ft (95 mL per 10 m²), 2.4 lb per 1,000 sq ft (12 g/m²) of 21-0-0; it brings 0.5 lb N per 1,000 sq ft (2.4 g N/m²).",
			more: []string{"For 3,400 sq ft (316 m²): 8.1 lb (3.67 kg) of 21-0-0, 102 fl oz (3 L), 0.3 packs."},
			why:  []string{"2.38 lb ÷ 10.2 lb per gal = 0.233 gal"}, values: on(dose("21-0-0", 2.381, 0.2334, 0.5, 0, 0, 0, "N", false), 8.095, 0.7937, 0.32)},
		{ // 20 gal an acre of 28 % at 10.6 lb a gallon bring 59.4 lb N an acre [purdue-uan]
			line: "rate;--analysis=28-0-0;--n=59.36 lb/acre;--density=10.6 lb/gal;--size=1 acre",
			text: "59 fl oz per 1,000 sq ft (187 mL per 10 m²), 4.9 lb per 1,000 sq ft (24 g/m²) of 28-0-0; it brings 1.36 lb N per 1,000 sq ft (6.7 g N/m²).",
			more: []string{"More than 1 lb N", "For 43,560 sq ft (4,047 m²): 212 lb (96.2 kg) of 28-0-0, 20 gal (76 L)."}, values: on(dose("28-0-0", 4.867, 0.4591, 1.363, 0, 0, 0, "N", false), 212, 20, 0)},
	} {
		w.check(t)
	}
}

// Three bags on 3,500 sq ft that want 3.5 lb N, 1.75 lb P₂O₅ and 3.5 lb K₂O:
// 8 lb of one with 22 % P₂O₅, which bring 1.7 lb N, then 5.6 lb of 32 % N for
// the 1.8 lb still short, each rounded on the way [umn-three-bag]; then potash.
func TestWorkedMix(t *testing.T) {
	const line = "mix;--n=1;--p2o5=0.5;--k2o=1;--material=32-0-0;--material=21-22-0;--material=0-0-60"
	lines := []string{
		"2.3 lb per 1,000 sq ft (11 g/m²) of 21-22-0; it brings 0.477 lb N, 0.5 lb P₂O₅", "For 3,500 sq ft (325 m²): 8 lb (3.61 kg) of 21-22-0.",
		"1.6 lb per 1,000 sq ft (8 g/m²) of 32-0-0; it brings 0.523 lb N", "For 3,500 sq ft (325 m²): 5.7 lb (2.59 kg) of 32-0-0.",
		"1.7 lb per 1,000 sq ft (8.1 g/m²) of 0-0-60; it brings 1 lb K₂O", "For 3,500 sq ft (325 m²): 5.8 lb (2.65 kg) of 0-0-60."}
	first := func() map[string]any { return dose("21-22-0", 2.273, 0, 0.477, 0, 0.5, 0, "P2O5", false) }
	second := func() map[string]any { return dose("32-0-0", 1.634, 0, 0.523, 0, 0, 0, "N", false) }
	third := func() map[string]any { return dose("0-0-60", 1.667, 0, 0, 0, 0, 1, "K2O", false) }
	for _, c := range []struct {
		size string
		more []string
		want []map[string]any
	}{
		{"", []string{lines[0], lines[2], lines[4]}, []map[string]any{first(), second(), third()}},
		{";--size=3500 sq ft", lines, []map[string]any{on(first(), 7.955, 0, 0), on(second(), 5.717, 0, 0), on(third(), 5.833, 0, 0)}},
	} {
		a, err := ask(t, line+c.size)
		if err != nil {
			t.Fatal(err)
		}
		if want := "2.3 lb per 1,000 sq ft (11 g/m²) of 21-22-0; 1.6 lb per 1,000 sq ft (8 g/m²) of 32-0-0; 1.7 lb per 1,000 sq ft (8.1 g/m²) of 0-0-60."; a.Text != want {
			t.Errorf("%s, want %s", a.Text, want)
		}
		for i, says := range c.more {
			if len(a.More) != len(c.more) || !strings.Contains(a.More[i], says) {
				t.Fatalf("%q, want %q", a.More, c.more)
			}
		}
		doses := a.Values["doses"].([]map[string]any)
		for i, d := range c.want {
			if len(doses) != len(c.want) {
				t.Fatal(doses)
			}
			sameValues(t, line, doses[i], d)
		}
		delete(a.Values, "doses")
		sameValues(t, line, a.Values, map[string]any{"short_n_lb_per_1000_sqft": 0.0, "short_p2o5_lb_per_1000_sqft": 0.0, "short_k2o_lb_per_1000_sqft": 0.0})
	}

	short, err := ask(t, "mix;--n=1;--p2o5=0.5;--k2o=0.75;--n-cap=0.8;--material=46-0-0")
	if err != nil {
		t.Fatal(err)
	}
	delete(short.Values, "doses")
	sameValues(t, "a bag without potash", short.Values, map[string]any{"short_n_lb_per_1000_sqft": 0.2, "short_p2o5_lb_per_1000_sqft": 0.5, "short_k2o_lb_per_1000_sqft": 0.75})
	if want := "Still short: 0.2 lb N, 0.5 lb P₂O₅, 0.75 lb K₂O per 1,000 sq ft (0.98 g N, 2.4 g P₂O₅, 3.7 g K₂O/m²)."; short.More[len(short.More)-1] != want {
		t.Errorf("%q, want %q", short.More, want)
	}
	// Among the materials of the trade the size of the packs decides: a small lawn gets
	// another material than one of 20,000 sq ft.
	for line, want := range map[string]string{"mix;--n=1": "ammonium sulfate 21-0-0", "mix;--n=1;--size=1000 sq ft": "ammonium sulfate 21-0-0", "mix;--n=1;--size=20000 sq ft": "half coated urea 40-0-0"} {
		trade, err := ask(t, line)
		said := strings.Contains(fmt.Sprint(trade.Why), "No --size was given: the bags are chosen as for 1,000 sq ft.")
		if err != nil || !strings.HasSuffix(trade.Text, " of "+want+".") || said == strings.Contains(line, "size") {
			t.Errorf("%s: %s, %v, said %t; want %s", line, trade.Text, err, said, want)
		}
	}
	if _, err := ask(t, "mix;--n=1;--material=0-0-60"); err == nil || !strings.Contains(err.Error(), "none of these materials brings what is wanted: 1 lb N") {
		t.Error(err)
	}
}

// Water, spreaders and sprayers: by the definitions of the units, but for the
// examples that name a source.
func TestWorkedWater(t *testing.T) {
	for _, w := range []worked{
		{ // 1 in on 1,000 sq ft is 623.4 gal: 529.9 gal; 0.25 ÷ 0.4 × 60 = 37.5 minutes
			line: "water;--depth=0.25 in;--size=3400 sq ft;--sprinkler=0.4 in/h", text: "0.25 in (6 mm) on 3,400 sq ft (316 m²): 530 gal (2,006 L) of water.",
			more: []string{"That takes 38 minutes at 0.40 in (10 mm) an hour."},
			why:  []string{"0.25 × 3400/1000 × 623.4 = 530 gal. [definitions]", "0.25 in ÷ 0.4 in an hour × 60 = 37.5 minutes."}, values: map[string]any{"depth_in": 0.25, "gallons": 529.9, "minutes": 37.5}},
		{ // cups: four times what 15 minutes brought; minutes that come out even stay
			line: "water;--depth=0.5 in;--caught=0.1 in", text: "0.5 in (13 mm) of water.", more: []string{"That takes 75 minutes at 0.40 in (10 mm) an hour."},
			why: []string{"0.10 in caught in 15 minutes is 0.40 in an hour."}, values: map[string]any{"depth_in": 0.5, "minutes": 75.0}},
		{ // gpm × 96.25 ÷ area
			line: "water;--depth=0.5 in;--flow=5 gal;--size=2600 sq ft", text: "0.5 in (13 mm) on 2,600 sq ft (242 m²): 810 gal (3,068 L) of water.", more: []string{"That takes 163 minutes at 0.19 in (5 mm) an hour."},
			why: []string{"5 gal a minute × 96.25 ÷ 2600 sq ft = 0.19 in an hour. [definitions]", "÷ 0.185 in an hour × 60 = 162 minutes"}, values: map[string]any{"depth_in": 0.5, "gallons": 810.4, "minutes": 162.1}},
		{ // 1 mm is a liter on a square meter
			line: "water;--depth=10 mm;--size=1 m2", text: "0.39 in (10 mm) on 11 sq ft (1 m²): 2.6 gal (10 L) of water.", values: map[string]any{"depth_in": 0.394, "gallons": 2.6}},
		{line: "water;--depth=0.375 in;--sprinkler=0.333 in/h", text: "0.38 in (10 mm) of water.", more: []string{"That takes 68 minutes at 0.33 in (8 mm) an hour."}, why: []string{"0.375 in ÷ 0.333 in an hour × 60 = 67.6 minutes."}, values: map[string]any{"depth_in": 0.375, "minutes": 67.6}},
		{line: "water;--depth=1 in", text: "1 in (25 mm) of water.", values: map[string]any{"depth_in": 1.0}},
		{ // half the rate, twice; 1,000 sq ft at 8 ft are 125 ft [reeves-spreader], 3,400 are 425
			line: "spreader;--rate=10;--size=3400 sq ft;--width=8 ft", text: "Half the rate, 5 lb per 1,000 sq ft (24 g/m²), in each of two directions: 17 lb (7.71 kg) each time.",
			why: []string{"a walk of about 425 ft"}, values: map[string]any{"half_rate_lb_per_1000_sqft": 5.0, "half_lb": 17.0, "walk_ft": 425.0}},
		{ // without a width there is no walk
			line: "spreader;--rate=0.9;--size=1000 sq ft", text: "Half the rate, 0.45 lb per 1,000 sq ft (2.2 g/m²), in each of two directions: 7.2 oz (204 g) each time.", // [rutgers-spreader]
			values: map[string]any{"half_rate_lb_per_1000_sqft": 0.45, "half_lb": 0.45, "walk_ft": 0.0}},
		{ // half a pound on 50 sq ft [drop-spreader-cr]
			line: "spreader;--caught=0.5 lb;--on=50 sq ft", text: "The spreader is set to 10 lb per 1,000 sq ft (49 g/m²).", why: []string{"0.5 lb × 1000 ÷ 50 sq ft = 10 lb per 1,000 sq ft. [definitions]"},
			values: map[string]any{"rate_lb_per_1000_sqft": 10.0}},
		{line: "spreader;--tank=4 gal;--covers=1000 sq ft per gal;--size=10400 sq ft", text: "3 fills; the last holds 2.4 gal (9.1 L).",
			why: []string{"4 gal × 1,000 sq ft = 4,000 sq ft to a tank."}, values: map[string]any{"fills": 3, "last_gal": 2.4, "covers_sqft": 4000.0}},
		{line: "spreader;--tank=4 gal;--covers=1000 sq ft per gal;--size=4000 sq ft", text: "1 fill of 4 gal (15 L).", values: map[string]any{"fills": 1, "last_gal": 4.0, "covers_sqft": 4000.0}},
		{line: "spreader;--tank=4 gal;--covers=1000 sq ft per gal;--size=4001 sq ft", text: "2 fills; the last holds 0.13 fl oz (3.8 mL).", values: map[string]any{"fills": 2, "last_gal": 0.001, "covers_sqft": 4000.0}},
	} {
		w.check(t)
	}
}

// The growth potential as published: in °C by the scripts of Woods [gp-code],
// held at 1 above the best temperature of warm-season grass [gp-pace]; in °F by
// Menchyk [ny-nmp-2019]. The words stand at a half and a tenth: cool-season
// grass is at a half 11.774 °F from its 68, at a tenth 21.460.
func TestWorkedGrowth(t *testing.T) {
	for _, w := range []worked{
		{line: "growth;--season=cool;--mean=10 C", text: "Growth potential 0.19: cool-season grass at a mean of 50 °F (10 °C) grows slowly.", why: []string{"((10.0 − 20) ÷ 5.5)²) = 0.191, in °C [gp-code]"}, values: map[string]any{"growth_potential": 0.1915, "mean_f": 50.0}},
		{line: "growth;--season=cool;--mean=5 C", text: "Growth potential 0.02: cool-season grass at a mean of 41 °F (5 °C) hardly grows.", values: map[string]any{"growth_potential": 0.0243, "mean_f": 41.0}},
		{line: "growth;--season=cool;--mean=25 C", text: "Growth potential 0.66: cool-season grass at a mean of 77 °F (25 °C) grows well.", why: []string{"exp("}, values: map[string]any{"growth_potential": 0.6615, "mean_f": 77.0}},
		{line: "growth;--season=warm;--mean=20 C", text: "Growth potential 0.29: warm-season grass at a mean of 68 °F (20 °C) grows slowly.", why: []string{"((20.0 − 31) ÷ 7)²) = 0.291, in °C [gp-code]"}, values: map[string]any{"growth_potential": 0.2909, "mean_f": 68.0}},
		{line: "growth;--season=warm;--mean=31 C", text: "Growth potential 1.00: warm-season grass at a mean of 87.8 °F (31 °C) grows well.", why: []string{"((31.0 − 31) ÷ 7)²) = 1.000"}, values: map[string]any{"growth_potential": 1.0, "mean_f": 87.8}},
		{line: "growth;--season=warm;--mean=35 C", text: "Growth potential 1.00: warm-season grass at a mean of 95 °F (35 °C) grows well.", why: []string{"Above 31 °C", "[gp-pace]"}, values: map[string]any{"growth_potential": 1.0, "mean_f": 95.0}},
		{line: "growth;--grass=Tall Fescue;--mean=50 F", text: "Growth potential 0.20: cool-season grass at a mean of 50 °F (10 °C) grows slowly.", why: []string{"((50.0 − 68) ÷ 10)²) = 0.198, in °F [ny-nmp-2019]"}, values: map[string]any{"growth_potential": 0.1979, "mean_f": 50.0}},
		{line: "growth;--grass=zoysiagrass;--mean=76 F", text: "Growth potential 0.61: warm-season grass at a mean of 76 °F (24.4 °C) grows well.", why: []string{"((76.0 − 88) ÷ 12)²) = 0.607, in °F"}, values: map[string]any{"growth_potential": 0.6065, "mean_f": 76.0}},
		{line: "growth;--season=warm;--mean=89 °F", text: "Growth potential 1.00: warm-season grass at a mean of 89 °F (31.7 °C) grows well.", why: []string{"Above 88 °F"}, values: map[string]any{"growth_potential": 1.0, "mean_f": 89.0}},
	} {
		w.check(t)
	}
	for mean, says := range map[string]string{"56.23 F": "grows well", "56.22 F": "grows slowly", "46.55 F": "grows slowly", "46.53 F": "hardly grows", "-80 F": "hardly", "140 F": "hardly", "60 C": "hardly", "-62 C": "hardly"} {
		if a, err := ask(t, "growth;--season=cool;--mean="+mean); err != nil || !strings.Contains(a.Text, says) {
			t.Errorf("%s: %q, %v; want %q", mean, a.Text, err, says)
		}
	}
	for _, mean := range []string{"-80.1 F", "140.1 F", "60.1 C", "-63 C", "F", "5 5 F"} {
		if a, err := ask(t, "growth;--season=cool;--mean="+mean); err == nil || !strings.Contains(err.Error(), "-62 to 60 °C") {
			t.Errorf("%s: %q, %v", mean, a.Text, err)
		}
	}
}

// What a place's own mean gives is worked in °C, by which programs are made.
func TestGrowthAtAPlace(t *testing.T) {
	y, err := climate.Place{State: "OH", Hardiness: "6a"}.Year()
	if err != nil {
		t.Fatal(err)
	}
	for date, day := range map[string]climate.Day{"2026-10-14": 287, "2026-07-01": 182} {
		a, err := ask(t, "growth;--state=oh;--hardiness=6A;--season=cool;--date="+date)
		if err != nil {
			t.Fatal(err)
		}
		mean := y.Mean(day)
		sameValues(t, date, a.Values, map[string]any{"mean_f": math.Round(100*float64(mean)) / 100, "growth_potential": math.Round(1e4*climate.GrowthPotential(mean, climate.Cool)) / 1e4})
		if len(a.Why) != 2 || !strings.Contains(a.Why[0].Text, "The usual mean of ") || !strings.Contains(a.Why[0].Text, mean.String()) || a.Why[0].Source != "model" {
			t.Errorf("%s: %v", date, a.Why)
		}
	}
}

// The amounts are converted by the definitions of the units: a foot is 0.3048 m,
// a pound 453.59237 g, a gallon 3.785411784 L (NIST Handbook 44, appendix C, from
// memory), an acre 43,560 sq ft. Four figures are shown.
func TestWorkedConversions(t *testing.T) {
	rate := func(lb, acre, g, ha float64) map[string]any {
		return map[string]any{"lb_per_1000_sqft": lb, "lb_per_acre": acre, "g_per_m2": g, "kg_per_ha": ha}
	}
	by := []string{"by their definitions. [definitions]"}
	for _, w := range []worked{
		{line: "convert;43.9 kg/ha", text: "43.9 kg/ha = 0.8991 lb/1000 sq ft = 39.17 lb/acre = 4.39 g/m² = 43.9 kg/ha.", why: by, values: rate(0.899143, 39.16666, 4.39, 43.9)}, // 0.9 lb [schlossberg-2022]
		{line: "convert;175 lb/acre", text: "175 lb/acre = 4.017 lb/1000 sq ft = 175 lb/acre = 19.61 g/m² = 196.1 kg/ha.", why: by, values: rate(4.017447, 175, 19.61490, 196.1490)},
		{line: "convert;244 g/m2", text: "244 g/m2 = 49.98 lb/1000 sq ft = 2,177 lb/acre = 244 g/m² = 2,440 kg/ha.", why: by, values: rate(49.97514, 2176.917, 244, 2440)},
		{line: "convert;1 ton/acre", text: "1 ton/acre = 45.91 lb/1000 sq ft = 2,000 lb/acre = 224.2 g/m² = 2,242 kg/ha.", why: by, values: rate(45.91368, 2000, 224.1702, 2241.702)}, // 46 in round numbers [nc-lee-lime]
		{line: "convert;50 lb", text: "50 lb = 50 lb = 22.68 kg.", why: by, values: map[string]any{"lb": 50.0, "kg": 22.6796185}},
		{line: "convert;2.5 gal", text: "2.5 gal = 2.5 gal = 9.464 L.", why: by, values: map[string]any{"gal": 2.5, "l": 9.46352946}},
		{line: "convert;1 acre", text: "1 acre = 43,560 sq ft = 4,047 m² = 1 acre.", why: by, values: map[string]any{"sqft": 43560.0, "m2": 4046.8564, "acre": 1.0}},
		{line: "convert;2600 sq ft", text: "2600 sq ft = 2,600 sq ft = 241.5 m² = 0.05969 acre.", why: by, values: map[string]any{"sqft": 2600.0, "m2": 241.547904, "acre": 0.05968779}},
		{line: "convert;6.35 mm", text: "6.35 mm = 0.25 in = 6.35 mm = 0.02083 ft = 0.00635 m.", why: by, values: map[string]any{"in": 0.25, "ft": 0.02083333, "m": 0.00635}},
		{line: "convert;3 ft", text: "3 ft = 36 in = 914.4 mm = 3 ft = 0.9144 m.", why: by, values: map[string]any{"in": 36.0, "ft": 3.0, "m": 0.9144}},
		{line: "convert;12345.6 m2", text: "12345.6 m2 = 132,887 sq ft = 12,346 m² = 3.051 acre.", why: by, values: map[string]any{"sqft": 132886.93, "m2": 12345.6, "acre": 3.050664}},
		// Readings of a soil report; twice the ppm where no depth is given.
		{line: "convert;240 lb/acre;--nutrient=magnesium", text: "240 lb/acre of magnesium = 120 ppm (mg/kg).", why: []string{"÷ 2 = 120 ppm"}, values: map[string]any{"ppm": 120.0}},
		{line: "convert;156 lb/acre;--nutrient=Potassium;--depth=4 in", text: "156 lb/acre of potassium = 130 ppm (mg/kg).", values: map[string]any{"ppm": 130.0}},                         // 300,000 lb of soil in an acre-inch [ucdavis-lr]
		{line: "convert;1 meq/100 g;--nutrient=calcium", text: "1 meq/100 g of calcium = 200.4 ppm (mg/kg).", values: map[string]any{"ppm": 200.39}},                                       // [spectrum-cec] rounds to 200
		{line: "convert;10 %;--nutrient=magnesium;--cec=10", text: "10 % of magnesium = 121.5 ppm (mg/kg).", why: []string{"10 % of 10 meq/100 g"}, values: map[string]any{"ppm": 121.53}}, // 1 meq [spectrum-cec]
	} {
		w.check(t)
	}
}

// The published tables are tested cell by cell in agronomy; here a cell of each
// goes through the flags to the pounds of a bag, its dressings and the pH that an
// amount reaches.
func TestWorkedLime(t *testing.T) {
	need := func(effective, low, high, rate float64, dressings int, method string, ph float64) map[string]any {
		return map[string]any{"effective_lb_per_1000_sqft": effective, "low_lb_per_1000_sqft": low, "high_lb_per_1000_sqft": high,
			"rate_lb_per_1000_sqft": rate, "dressings": dressings, "method": method, "ph": ph}
	}
	none := func(ph float64) map[string]any {
		v := need(0, 0, 0, 0, 0, "none needed", ph)
		v["rate_lb_per_1000_sqft"] = 0
		return v
	}
	sized := func(v map[string]any, lb float64) map[string]any { v["amount_lb"] = lb; return v }
	const penn, iowa = "Penn State's turf table", "Iowa's SMP table"
	differ := func(low, high string) string {
		return "Methods differ: fully effective lime of " + low + " to " + high + " is as far as they lie apart."
	}
	apart := differ("107 lb per 1,000 sq ft (521 g/m²)", "160 lb per 1,000 sq ft (781 g/m²)")
	for _, w := range []worked{
		{ // 1,600 lb ENM of a lime of 400 a ton: 4 tons an acre [mo-enm-example]; ÷ 43.56 = 183.65 lb/1000, at most 50 at once [vt-452-717]
			line: "lime;--enm=400;--enm-wanted=1600;--size=2000 sq ft", text: "184 lb per 1,000 sq ft (897 g/m²) of lime, in 4 dressings of 46 lb per 1,000 sq ft (224 g/m²).",
			more: []string{"For 2,000 sq ft (186 m²): 367 lb (167 kg) in all."}, why: []string{"1600 lb ENM an acre ÷ 400 lb ENM a ton = 4.00 tons an acre", "mo-enm-example", "vt-452-717"},
			values: map[string]any{"tons_per_acre": 4.0, "rate_lb_per_1000_sqft": 183.65, "dressings": 4, "amount_lb": 367.31}},
		{ // 160 lb × 4 ÷ 7; 9 meq in 1.2 million lb of soil: 9 × 50.043 × 10 × 1.2 = 5,405 lb an acre, ÷ 43.56 = 124 [atomic-weights]
			line: "lime;--ph=5;--acidity=9;--target=6.5;--depth=4 in", text: "91 lb per 1,000 sq ft (446 g/m²) of lime, in 2 dressings of 46 lb per 1,000 sq ft (223 g/m²).",
			more: []string{differ("61 lb per 1,000 sq ft (298 g/m²)", "160 lb per 1,000 sq ft (781 g/m²)")}, why: []string{"All of the acidity in 4 in of soil would take 124 lb per 1,000 sq ft"}, values: need(91.43, 60.95, 160, 91.43, 2, penn, 6.5)},
		{ // acidity 9.0 to pH 6.5: 160 lb [psu-turf-lime]; ÷ 0.80 [psu-report-notes]; at most 50 lb at once [vt-452-717]
			line: "lime;--ph=5;--acidity=9;--target=6.5;--depth=7 in;--size=2600 sq ft;--ecce=80",
			text: "200 lb per 1,000 sq ft (976 g/m²) of lime, in 4 dressings of 50 lb per 1,000 sq ft (244 g/m²).",
			more: []string{"For 2,600 sq ft (242 m²): 520 lb (236 kg) in all.", apart}, why: []string{"160 lb per 1,000 sq ft ÷ 80 % = 200 lb per 1,000 sq ft (976 g/m²) of this lime", "vt-452-717"},
			values: sized(need(160, 106.67, 160, 200, 4, penn, 6.5), 520)},
		{ // half the depth, half the lime; the laboratory itself gives the whole
			line: "lime;--ph=5;--acidity=9;--target=6.5;--depth=3.5 in;--cce=100;--sieves=8=100,20=100,60=100",
			text: "80 lb per 1,000 sq ft (391 g/m²) of lime, in 2 dressings of 40 lb per 1,000 sq ft (195 g/m²).",
			more: []string{differ("53 lb per 1,000 sq ft (260 g/m²)", "160 lb per 1,000 sq ft (781 g/m²)")}, values: need(80, 53.33, 160, 80, 2, penn, 6.5)},
		{ // in a seedbed up to 200 lb go in at once [psu-establish]
			line: "lime;--ph=5;--acidity=9;--target=6.5;--depth=7 in;--seedbed", text: "160 lb per 1,000 sq ft (781 g/m²) of lime.",
			more: []string{apart}, why: []string{"Nothing is said of the lime", "÷ 100 % ="}, values: need(160, 106.67, 160, 160, 1, penn, 6.5)},
		{ // hydrated lime: CCE 135.1 [atomic-weights], 10 lb at once [common]
			line: "lime;--ph=5;--acidity=9;--target=6.5;--depth=7 in;--hydrated", text: "118 lb per 1,000 sq ft (578 g/m²) of lime, in 12 dressings of 9.9 lb per 1,000 sq ft (48 g/m²).",
			more: []string{apart}, why: []string{"÷ 135 % ="}, values: need(160, 106.67, 160, 118.45, 12, penn, 6.5)},
		{ // 3,500 lb an acre over 6 in [laboski-lime]: 53.57 over 4
			line: "lime;--ph=5.1;--buffer=SMP;--buffer-ph=6.4", text: "54 lb per 1,000 sq ft (262 g/m²) of lime, in 2 dressings of 27 lb per 1,000 sq ft (131 g/m²).",
			more: []string{differ("54 lb per 1,000 sq ft (262 g/m²)", "98 lb per 1,000 sq ft (476 g/m²)")}, why: []string{"No target was given: 6.5 is taken. [common]", "3500 lb/acre", "No depth given: 4 in is taken"},
			values: need(53.57, 53.57, 97.52, 53.57, 2, iowa, 6.5)},
		{ // Oregon's own table: 2.5 tons over 6 in [osu-em9585]
			line: "lime;--ph=5.4;--buffer=sikora;--buffer-ph=6.3;--state=or;--target=6.4;--depth=4 in", text: "77 lb per 1,000 sq ft (374 g/m²) of lime, in 2 dressings of 38 lb per 1,000 sq ft (187 g/m²).",
			more: []string{differ("59 lb per 1,000 sq ft (289 g/m²)", "111 lb per 1,000 sq ft (543 g/m²)")}, values: need(76.52, 59.13, 111.28, 76.52, 2, "Oregon's Sikora table", 6.4)},
		{ // 1.2 × (6.0 − 5.0) ÷ (6.6 − 5.0) = 0.75 tons an acre [nc-lime-factor]
			line: "lime;--ph=5;--acidity=1.2;--target=6;--depth=8 in;--state=NC", text: "34 lb per 1,000 sq ft (168 g/m²) of lime.",
			more: []string{differ("23 lb per 1,000 sq ft (112 g/m²)", "46 lb per 1,000 sq ft (224 g/m²)")}, why: []string{"0.75 tons/acre over 8 in"}, values: need(34.44, 22.96, 45.91, 34.44, 1, "North Carolina's Mehlich equation", 6)},
		{ // by texture: 1.7 tons where it is cool, 1 ton where it is warm [usda-1957], of which 85 % acts [common]
			line: "lime;--ph=5.5;--texture=Loam;--state=OH;--depth=7 in", text: "66 lb per 1,000 sq ft (324 g/m²) of lime, in 2 dressings of 33 lb per 1,000 sq ft (162 g/m²).",
			more: []string{differ("44 lb per 1,000 sq ft (216 g/m²)", "88 lb per 1,000 sq ft (432 g/m²)")}, why: []string{"1.7 tons/acre"}, values: need(66.35, 44.23, 88.46, 66.35, 2, "pH and texture", 6.5)},
		{
			line: "lime;--ph=5.5;--texture=loam;--state=GA;--depth=7 in", text: "39 lb per 1,000 sq ft (191 g/m²) of lime.",
			more: []string{differ("26 lb per 1,000 sq ft (127 g/m²)", "52 lb per 1,000 sq ft (254 g/m²)")}, values: need(39.03, 26.02, 52.04, 39.03, 1, "pH and texture", 6.5)},
		{ // the grass tells the target, and from where on it is limed [nc-home-report] [ar-lime]
			line: "lime;--ph=5.5;--texture=loam;--state=OH;--depth=7 in;--grass=Tall Fescue", text: "46 lb per 1,000 sq ft (227 g/m²) of lime.",
			more: []string{"31 lb per 1,000 sq ft (151 g/m²)"}, why: []string{"Tall Fescue is limed to pH 6.2, below pH 5.8. [nc-home-report, ar-lime]"}, values: need(46.44, 30.96, 61.92, 46.44, 1, "pH and texture", 6.2)},
		{line: "lime;--ph=5.8;--texture=loam;--grass=tall fescue", text: "No lime is needed.", values: none(5.8)},
		{line: "lime;--ph=5.7;--texture=loam;--depth=7 in;--grass=tall fescue", text: "33 lb per 1,000 sq ft (162 g/m²) of lime.", more: []string{"apart"}, values: need(33.17, 22.12, 44.23, 33.17, 1, "pH and texture", 6.2)}, // half of 66.35
		{line: "lime;--ph=6.6;--texture=loam", text: "No lime is needed.", values: none(6.6)},
		{ // organic soil goes by the muck column: 3.8 × 0.8 tons over 7 in [usda-1957]
			line: "lime;--ph=4.5;--texture=loam;--organic-matter=20.1;--depth=7 in", text: "119 lb per 1,000 sq ft (579 g/m²) of lime, in 3 dressings of 40 lb per 1,000 sq ft (193 g/m²).",
			more: []string{"apart"}, why: []string{"muck"}, values: need(118.64, 79.09, 158.19, 118.64, 3, "pH and texture", 5.3)},
		{ // under the table one dressing, and nothing to lie apart
			line: "lime;--ph=4.2;--texture=loam;--cce=90", text: "A first dressing of 50 lb per 1,000 sq ft (244 g/m²) of lime, as the soil is too acid for the tables; ask the laboratory for a buffer pH before more.",
			values: need(42.5, 42.5, 42.5, 50, 1, "a first dressing", 4.2)},
		{ // sieves alone count too, at the usual CCE of 90 [tristate-1995]: 90 × 0.892 [mn-mda-enp]
			line: "lime;--ph=5;--acidity=9;--target=6.5;--depth=7 in;--sieves=8=100,20=98,60=75", text: "199 lb per 1,000 sq ft (973 g/m²) of lime, in 4 dressings of 50 lb per 1,000 sq ft (243 g/m²).",
			more: []string{apart}, why: []string{"no CCE given: 90 %", "160 lb per 1,000 sq ft ÷ 80 % ="}, values: need(160, 106.67, 160, 199.3, 4, penn, 6.5)},
		{ // New York counts a year: 73.1 % of 30 lb act in it [cornell-env]; without sieves all of a printed value
			line: "lime;--ph=5.5;--texture=loam;--state=NY;--depth=7 in;--cce=90;--sieves=20=98,60=75,100=60;--amount=30",
			text: "pH about 5.8, between 5.7 and 6.0, about a year on.", why: []string{"Of 30 lb per 1,000 sq ft, 73 % acts: 22 lb per 1,000 sq ft (107 g/m²)"},
			values: map[string]any{"effective_lb_per_1000_sqft": 21.92, "ph": 5.83, "ph_low": 5.75, "ph_high": 6.0}},
		{ // 1.7 tons over 6 in reach pH 6.0 [osu-em9585]
			line: "lime;--ph=5.4;--buffer=sikora;--buffer-ph=6.3;--state=OR;--target=6;--depth=6 in;--ecce=85;--amount=2 ton/acre",
			text: "pH about 6.0, between 5.6 and 6.4, about a year on.", why: []string{"85 % acts: 78 lb"}, values: map[string]any{"effective_lb_per_1000_sqft": 78.05, "ph": 6.0, "ph_low": 5.57, "ph_high": 6.4}},
	} {
		w.check(t)
	}
}

// The sieves as the states count them, with the worked examples of their
// sources: the effective share of the lime, and the pounds a ton that are printed.
func TestWorkedFineness(t *testing.T) {
	for _, c := range []struct {
		cce, sieves, rule string
		percent           float64
		why, more         string
	}{
		{"85", "8=95,40=60,60=40", "Missouri", 51.6375, "(ENM): 51.6 %. [mo-ag-lime]", "As Missouri counts it that is 413 lb ENM a ton."},
		{"90", "20=98,60=75,100=60", "new york", 73.08, "(ENV, one year): 73.1 %. [cornell-env]", ""},
		{"90", "8=100,20=98,60=75", "minnesota", 80.28, "(ENP, three years): 80.3 %. [mn-mda-enp]", "As Minnesota counts it that is 1606 lb ENP a ton."},
		{"100", "8=91.2,20=88.8,60=78.8", "ohio", 85.28, "(ENP): 85.3 %. [bc-637-200]", "As Ohio counts it that is 1706 lb ENP a ton."},
		{"92", "4=100, 8=95 ,60 = 50", "iowa", 63.02, "(ECCE): 63.0 %. [laboski-lime]", ""}, // Iowa's slide
		{"90", "10=90,50=40", "kentucky", 58.5, "(RNV): 58.5 %. [uky-lime-quality]", ""},
		{"88", "10=92,50=46", "mississippi", 60.72, "(RNV): 60.7 %. [msstate-p3762]", ""},
	} {
		const soil = "lime;--ph=5;--acidity=9;--target=6.5;--depth=7 in" // 160 lb [psu-turf-lime]
		line := fmt.Sprintf("%s;--cce=%s;--sieves=%s;--rule=%s", soil, c.cce, c.sieves, c.rule)
		a, err := ask(t, line)
		if err != nil {
			t.Errorf("%s: %v", c.rule, err)
			continue
		}
		if got := a.Values["rate_lb_per_1000_sqft"].(float64); math.Abs(got-160*100/c.percent) > 0.006 {
			t.Errorf("%s: %v lb, want 160 ÷ %v %%", c.rule, got, c.percent)
		}
		if want := map[bool]int{false: 1, true: 2}[c.more != ""]; len(a.More) != want || want == 2 && a.More[0] != c.more {
			t.Errorf("%s: %q, want %q", c.rule, a.More, c.more)
		}
		if w := fmt.Sprint(a.Why); !strings.Contains(w, strings.TrimSuffix(c.why[:strings.Index(c.why, " [")], "")) || !strings.Contains(w, "CCE "+c.cce+" %") {
			t.Errorf("%s: the working does not say %q: %s", c.rule, c.why, w)
		}
		a, err = ask(t, line+";--amount=100")
		if err != nil || math.Abs(a.Values["effective_lb_per_1000_sqft"].(float64)-c.percent) > 0.006 {
			t.Errorf("%s: of 100 lb %v act, %v; want %v", c.rule, a.Values["effective_lb_per_1000_sqft"], err, c.percent)
		}
	}
}

// What a dose brings is said in both units, for each nutrient that it brings.
func TestNutrientsAreSaid(t *testing.T) {
	for _, c := range []struct {
		w    material.Wants
		want string
	}{
		{material.Wants{N: 1, P2O5: 0.5, K2O: 0.25, Mg: 0.2, S: 0.1}, "1 lb N, 0.5 lb P₂O₅, 0.25 lb K₂O, 0.2 lb Mg, 0.1 lb S per 1,000 sq ft (4.9 g N, 2.4 g P₂O₅, 1.2 g K₂O, 0.98 g Mg, 0.49 g S/m²)"},
		{material.Wants{S: 1}, "1 lb S per 1,000 sq ft (4.9 g S/m²)"},
		{material.Wants{}, "nothing"},
	} {
		if got := bothNutrients(c.w); got != c.want {
			t.Errorf("%s, want %s", got, c.want)
		}
	}
}

// Four figures, and no more than nine decimals.
func TestSignificant(t *testing.T) {
	for x, want := range map[float64]string{0: "0", 1: "1", 9.9999: "10", 1.23456: "1.235", 12.3456: "12.35", 123.456: "123.5", 1234.56: "1,235", 123456: "123,456", 0.123456: "0.1235", 0.0123456: "0.01235", 1.23456e-6: "0.000001235", 1.23456e-7: "0.000000123"} {
		if got := significant(x); got != want {
			t.Errorf("%v: %s, want %s", x, got, want)
		}
	}
}
