package word

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/climate"
)

// Amounts are written as expected in both systems of units, on both sides of each change of
// unit or of decimals.
func TestCellsMeasure(t *testing.T) {
	us, si := Measure{}, Measure{Metric: true}
	of := func(name string, write func(Measure, float64) string, rows map[float64][2]string) {
		for x, want := range rows {
			if got := write(us, x); got != want[0] {
				t.Errorf("%s %v: %q, want %q", name, x, got, want[0])
			}
			if got := write(si, x); got != want[1] {
				t.Errorf("%s %v metric: %q, want %q", name, x, got, want[1])
			}
		}
	}
	of("weight", func(m Measure, x float64) string { return m.Weight(agronomy.Pounds(x)) }, map[float64][2]string{
		0: {"0 lb", "0 kg"}, 0.25: {"4 oz", "113 g"}, 0.99: {"16 oz", "449 g"}, 1: {"1 lb", "454 g"}, 2.2: {"2.2 lb", "998 g"}, 2.21: {"2.2 lb", "1 kg"}, 9.94: {"9.9 lb", "4.51 kg"}, 10: {"10 lb", "4.54 kg"}, 10.4: {"10 lb", "4.72 kg"}, 96.2: {"96 lb", "43.6 kg"}, 1234.4: {"1,234 lb", "560 kg"},
	})
	of("volume", func(m Measure, x float64) string { return m.Volume(agronomy.Gallons(x)) }, map[float64][2]string{
		0: {"0 gal", "0 L"}, 0.1: {"13 fl oz", "379 mL"}, 0.2642: {"34 fl oz", "1 L"}, 0.99: {"127 fl oz", "3.7 L"}, 1: {"1 gal", "3.8 L"}, 2.44: {"2.4 gal", "9.2 L"}, 312: {"312 gal", "1,181 L"},
	})
	of("rate", func(m Measure, x float64) string { return m.Rate(agronomy.PerThousand(x)) }, map[float64][2]string{
		37: {"37 lb per 1,000 sq ft", "181 g/m²"}, 0.5: {"0.5 lb per 1,000 sq ft", "2.4 g/m²"}, 0: {"0 lb per 1,000 sq ft", "0 g/m²"},
	})
	of("nutrient", func(m Measure, x float64) string { return m.NutrientRate(agronomy.PerThousand(x), "N") }, map[float64][2]string{0.5: {"0.5 lb N per 1,000 sq ft", "2.4 g N/m²"}})
	of("liquid", func(m Measure, x float64) string { return m.VolumeRate(agronomy.Gallons(x)) }, map[float64][2]string{0.2344: {"30 fl oz per 1,000 sq ft", "96 mL per 10 m²"}})
	of("area", func(m Measure, x float64) string { return m.Area(agronomy.SquareFeet(x)) }, map[float64][2]string{2600: {"2,600 sq ft", "242 m²"}, 999.6: {"1,000 sq ft", "92.9 m²"}})
	of("depth", func(m Measure, x float64) string { return m.Depth(agronomy.Inches(x)) }, map[float64][2]string{0.25: {"0.25 in", "6 mm"}, 1.96: {"1.96 in", "50 mm"}, 1.97: {"1.97 in", "5 cm"}, 4: {"4 in", "10 cm"}, 1: {"1 in", "25 mm"}})
	of("length", func(m Measure, x float64) string { return m.Length(climate.Feet(x)) }, map[float64][2]string{30: {"30 ft", "9.1 m"}, 1234.56: {"1,234.6 ft", "376 m"}})
	of("temperature", func(m Measure, x float64) string { return m.Temperature(climate.Fahrenheit(x)) }, map[float64][2]string{50: {"50 °F", "10 °C"}, 31.9: {"32 °F", "0 °C"}, 14: {"14 °F", "-10 °C"}})
	for n, want := range map[float64]string{0: "none", 0.04: "a little", 0.05: "0.1 pack", 0.3: "0.3 pack", 0.46: "1/2 pack", 0.54: "1/2 pack", 0.56: "0.6 pack", 1: "1 pack", 1.04: "1 pack", 1.05: "1.1 packs", 2.4: "2.4 packs", 1200: "1,200 packs"} {
		if got := Packs(n); got != want {
			t.Errorf("%v packs: %q, want %q", n, got, want)
		}
	}
	for n, want := range map[float64]string{0: "0", 1.234: "1.23", 9.996: "10", 9.99: "9.99", 10: "10", 12.34: "12.3", 99.96: "100", 100.4: "100", 1234.5: "1,234"} {
		if got := Reading(n); got != want {
			t.Errorf("reading %v: %q, want %q", n, got, want)
		}
	}
	for _, c := range []struct {
		x        float64
		decimals int
		want     string
	}{{1234567.891, 2, "1,234,567.89"}, {1234.5, 0, "1,234"}, {999, 0, "999"}, {1000, 0, "1,000"}, {-1000, 0, "-1,000"}, {-999, 0, "-999"}, {-123456, 0, "-123,456"}, {-0.001, 2, "0"}, {0.5, 2, "0.5"}, {100, 2, "100"}, {10, 0, "10"}, {1000.10, 2, "1,000.1"}} {
		if got := Number(c.x, c.decimals); got != c.want {
			t.Errorf("%v with %d decimals: %q, want %q", c.x, c.decimals, got, c.want)
		}
	}
	for _, c := range []struct {
		x    float64
		n    int
		want string
	}{{0, 3, "0"}, {0.01234, 3, "0.0123"}, {0.1, 2, "0.1"}, {1, 2, "1"}, {9.96, 2, "10"}, {12.34, 3, "12.3"}, {123.4, 2, "123"}, {1234.5, 2, "1,234"}, {-12.34, 3, "-12.3"}} {
		if got := Figures(c.x, c.n); got != c.want {
			t.Errorf("%v with %d figures: %q, want %q", c.x, c.n, got, c.want)
		}
	}
	if got := Hundredths(1.005) + Hundredths(agronomy.PerThousand(2)); got != "1.002.00" {
		t.Error(got)
	}
}

func TestCellsDose(t *testing.T) {
	stone := material.Material{ID: "stone", Name: "pelletized limestone", Kind: material.LimeMaterial, Pack: 40}
	d := material.DoseOf(stone, 37)
	if got := (Measure{}).Amount(d, 2600); got != "96 lb" {
		t.Error(got)
	}
	if got := (Measure{}).DoseWords(d, 2600); got != "96 lb of pelletized limestone, 37 lb per 1,000 sq ft" {
		t.Error(got)
	}
	liquid := material.Material{ID: "liquid", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 12.5, K2O: 4}, Liquid: true, Density: 10}
	d = material.DoseOf(liquid, 5)
	if got := (Measure{}).Amount(d, 2000); got != "1 gal" {
		t.Error(got)
	}
	if got := (Measure{}).DoseWords(d, 2000); got != "1 gal of 12.5-0-4, 64 fl oz per 1,000 sq ft" {
		t.Error(got)
	}
	if got := MaterialName(material.Material{ID: "bare"}); got != "bare" {
		t.Error(got)
	}
}

func TestCellsSentences(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{List(nil), ""}, {List([]string{"a"}), "a"}, {List([]string{"a", "b"}), "a and b"}, {List([]string{"a", "b", "c"}), "a, b and c"},
		{Capital("lime"), "Lime"}, {Capital("pH 5"), "pH 5"}, {Capital("Lime"), "Lime"}, {Capital(""), ""}, {Capital("über"), "Über"}, {Capital("a"), "A"}, {Capital("5 lb"), "5 lb"},
		{Inside("Lime goes"), "lime goes"}, {Inside("lime"), "lime"}, {Inside("5 lb"), "5 lb"}, {Inside(""), ""},
		{Sentence("Lime"), "Lime."}, {Sentence("Lime."), "Lime."}, {Sentence("Lime!"), "Lime!"}, {Sentence("Lime?"), "Lime?"}, {Sentence(""), ""}, {Sentence("a,"), "a,."},
		{Plural(1, "job"), "1 job"}, {Plural(0, "job"), "0 jobs"}, {Plural(2, "job"), "2 jobs"}, {Plural(-1, "job"), "-1 jobs"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

// Words that no line may part stay together; a | in the wanted text marks where a line may
// end.
func TestCellsRuns(t *testing.T) {
	for text, want := range map[string]string{
		"put 96 lb of lime":                     "put|96 lb|of|lime",
		"37 lb per 1,000 sq ft":                 "37 lb|per|1,000 sq ft",
		"0.5 lb N per area":                     "0.5 lb N|per|area",
		"0.5 lb N/1000 sq ft, then":             "0.5 lb N/1000 sq ft,|then",
		"2.4 g N/m² a year":                     "2.4 g N/m²|a|year",
		"1.5 lb P₂O₅ now":                       "1.5 lb P₂O₅|now",
		"on Sat 12 Sep 2026, or":                "on|Sat 12 Sep 2026,|or",
		"(2.4 packs of 40 lb)":                  "(2.4 packs|of|40 lb)",
		"pH 5.5 is low":                         "pH 5.5|is|low",
		"30 fl oz, 9 meq/100 g":                 "30 fl oz,|9 meq/100 g",
		"from 3, lb by lb":                      "from|3,|lb|by|lb",
		"50 °F or 10 °C":                        "50 °F|or|10 °C",
		"±12 days, 7-day weeks":                 "±12 days,|7-day weeks",
		"the Sat market; a May day":             "the|Sat|market;|a|May|day",
		"lb Mg and lb S":                        "lb Mg|and|lb S",
		"oz N":                                  "oz|N",
		"may 2026":                              "may|2026",
		"1111111111 lb N/1000 sq ft 2 sq ft":    "1111111111 lb N/1000 sq ft|2 sq ft",
		"11111111111111 lb N/1000 sq ft":        "11111111111111 lb N/1000 sq|ft",
		"sq ft and fl oz but sq meters fl pack": "sq ft|and|fl oz|but|sq|meters|fl|pack",
		"3 lime":                                "3|lime",
	} {
		if got := strings.Join(Runs(text), "|"); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
	for unit := range strings.SplitSeq("lb oz fl kg g t gal L mL sq ft in mm cm m m² g/m² °F °C % ppm meq/100 lb/acre tons/acre packs pack days day weeks months minutes h Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec", " ") {
		if got := Runs("5 " + unit + " x"); got[0] != "5 "+unit {
			t.Errorf("5 %s may be parted", unit)
		}
	}
	for d := range strings.SplitSeq("Mon Tue Wed Thu Fri Sat Sun", " ") {
		if len(Runs(d+" 5")) != 1 {
			t.Errorf("%s 5 may be parted", d)
		}
	}
	for s, want := range map[string]bool{"1,000": true, "(2.4": true, "±12": true, "7-day": true, "≈3": true, "+1": true, "-2": true, "": false, "(": false, "a1": false, ".5": false} {
		if IsFigure(s) != want {
			t.Errorf("%q is a figure %v", s, !want)
		}
	}
}

func TestCellsCited(t *testing.T) {
	keys := func(source string) string {
		var out []string
		for _, r := range Cited(source) {
			out = append(out, r.Key+"="+r.Checked())
		}
		return strings.Join(out, " | ")
	}
	for source, want := range map[string]string{
		"":                                 "",
		"common":                           "common=common practice, no published source",
		"definitions":                      "definitions=exact, by definition",
		"tristate-1995, common":            "tristate-1995=" + (Reference{Source: agronomy.Sources()["tristate-1995"]}).Checked() + " | common=common practice, no published source",
		"Ohio Rev. Code § 905.326":         "Ohio Rev. Code § 905.326=a law or rule",
		"Md. Code, Agric., § 8-803":        "Md. Code, Agric., § 8-803=a law or rule",
		"Md. Code, Agric., common, a text": "Md. Code, Agric.=a law or rule | common=common practice, no published source | a text=a law or rule",
	} {
		if got := keys(source); got != want {
			t.Errorf("%q: %s, want %s", source, got, want)
		}
	}
	for _, r := range Cited("Md. Code, Agric., § 8-803") {
		if r.Cite() != r.Key || r.Short() != r.Key {
			t.Errorf("%+v", r)
		}
	}
	for how, want := range map[string]string{"seen": "checked against the text", "part": "checked in part", "memory": "from memory, not checked", "common": "common practice, no published source", "ours": "this project's own work", "": "a law or rule"} {
		r := Reference{Key: "k"}
		r.How = agronomy.Source{How: r.How}.How
		for _, s := range References() {
			if string(s.How) == how {
				r = s
			}
		}
		if r.Key == "definitions" || how != "" && string(r.How) != how {
			continue
		}
		if got := r.Checked(); got != want {
			t.Errorf("%q: %s, want %s", how, got, want)
		}
	}
	if got := ShortSources("common, definitions, atomic-weights, a text"); got != "common practice; unit definitions; atomic weights; a text" {
		t.Error(got)
	}
	refs := References()
	if !slices.IsSortedFunc(refs, func(a, b Reference) int { return strings.Compare(a.Key, b.Key) }) || len(refs) < len(agronomy.Sources()) || len(refs) < len(climate.Sources()) {
		t.Errorf("%d references", len(refs))
	}
	for key := range climate.Sources() {
		if !slices.ContainsFunc(refs, func(r Reference) bool { return r.Key == key }) {
			t.Errorf("%s is not listed", key)
		}
	}
	refs[0].Key = "spoilt"
	if References()[0].Key == "spoilt" {
		t.Error("the list is shared")
	}
}
