package word

import (
	"testing"
	"unicode/utf8"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

// A pint is a pound and two cups: common practice, no source.
func TestMeasured(t *testing.T) {
	for p, want := range map[agronomy.Pounds]string{
		0: "0 lb", 1: "1 lb", 0.5: "8 oz (about 1 cup)", 0.75: "12 oz (about 1.5 cups)", 0.99: "16 oz (about 2 cups)",
		0.13: "2.1 oz (about 0.25 cup)", 0.05: "0.8 oz (about 2 tablespoons)", 0.01: "0.16 oz (about 1 tablespoon)",
	} {
		if got := (Measure{}).Measured(p); got != want {
			t.Errorf("%v lb: %q, want %q", p, got, want)
		}
	}
	if got := (Measure{Metric: true}).Measured(0.5); got != "227 g (about 240 mL)" {
		t.Error(got)
	}
}

func TestTitle(t *testing.T) {
	for _, c := range []struct{ place, amount, packs, want string }{
		{"East lawn", "83 lb", " (2.1 packs)", "Lime East lawn, 83 lb (2.1 packs)"},
		{"The lawn by the river", "83 lb", " (2.1 packs)", "Lime The lawn by the river, 83 lb"},
		{"The lawn along the old reading room", "83 lb", "", "Lime The lawn along the old…, 83 lb"},
		{"Hillside-without-any-blank-to-cut-it-at", "120 fl oz", "", "Lime Hillside-without-any-bl…, 120 fl oz"},
		{"The lawn along the old reading room", "", "", "Lime The lawn along the old reading room"},
		{"Ödgarten am äußersten Ende des Parks", "8.3 oz", "", "Lime Ödgarten am äußersten Ende…, 8.3 oz"},
	} {
		got := Title("Lime", c.place, c.amount, c.packs, 40)
		if got != c.want || utf8.RuneCountInString(got) > 40 {
			t.Errorf("%q, %d characters, want %q", got, utf8.RuneCountInString(got), c.want)
		}
	}
}

func TestCut(t *testing.T) {
	for _, c := range []struct {
		text string
		room int
		want string
	}{{"East lawn", 9, "East lawn"}, {"East lawn", 8, "East…"}, {"East, lawn", 6, "East…"}, {"Eastlawn", 5, "East…"}, {"a", 0, "…"}, {"", 3, ""}} {
		if got := Cut(c.text, c.room); got != c.want {
			t.Errorf("%q in %d: %q, want %q", c.text, c.room, got, c.want)
		}
	}
}

func TestBrings(t *testing.T) {
	d := material.Dose{N: 0.5, P2O5: 0.04, K2O: 0.33}
	if got := (Measure{}).Brings(d); got != "0.5 lb N and 0.33 lb K₂O per 1,000 sq ft" {
		t.Error(got)
	}
	if got := (Measure{Metric: true}).Brings(d); got != "2.4 g N and 1.6 g K₂O per m²" {
		t.Error(got)
	}
	d.Material.Kind = material.LimeMaterial
	if got := (Measure{}).Brings(d); got != "" {
		t.Error(got)
	}
	if (Measure{Metric: true}).Wind(10) != "16 km/h" || (Measure{}).Wind(10) != "10 mph" || InPacks(0.4) != "" || InPacks(2.08) != " (2.1 packs)" {
		t.Error("wind or packs")
	}
}
