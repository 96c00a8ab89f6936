package word

import "testing"

// Sentences as the rules write them and in metric units, calculated by hand with 1 lb per
// 1000 sq ft = 4.8824 g/m², 1 ton/acre = 2.2417 t/ha, 1 in = 2.54 cm.
func TestSayInMetric(t *testing.T) {
	for _, c := range []struct {
		quoted   bool
		us, want string
	}{
		{false, "pH 5.0 in 2026, 5.7 expected, 80 to 100 in 100", "pH 5.0 in 2026, 5.7 expected, 80 to 100 in 100"},
		{false, "12 cores to 4 in, mixed", "12 cores to 10 cm, mixed"},
		{false, "from 2 to 6 in; deeper", "from 5 to 15 cm; deeper"},
		{false, "0.25 in of water", "6 mm of water"},
		{false, "soil at 2 in (5 cm) falls through 50 °F (10 °C)", "soil at 5 cm (2 in) falls through 10 °C (50 °F)"},
		{false, "Not in wind above 10 mph (16 km/h).", "Not in wind above 16 km/h (10 mph)."},
		{false, "averages 25 to 30 °F", "averages -4 to -1 °C"},
		{false, "5 °F away from what is usual", "2.8 °C away from what is usual"},
		{false, "0.5 lb N wanted ÷ 18 % = 2.78 lb of product per 1000 sq ft", "2.44 g N/m² wanted ÷ 18 % = 13.6 g of product per m²"},
		{false, "brings 0.5 lb N, 0.667 lb P₂O₅, 0.333 lb K₂O", "brings 2.44 g N/m², 3.26 g P₂O₅/m², 1.63 g K₂O/m²"},
		{false, "2.40 × 0.75 = 1.80 lb N", "11.7 × 0.75 = 8.79 g N/m²"},
		{false, "2.00 − 0.50 = 1.50 lb N/1000 sq ft left", "9.76 − 2.44 = 7.32 g N/m² left"},
		{false, "stone: 51.4 × 100 ÷ 80.3 = 64.1 lb/1000 sq ft", "stone: 251 × 100 ÷ 80.3 = 313 g/m²"},
		{false, "64.05 lb ÷ 50.00 lb at once: 2 doses of 32.03 lb/1000 sq ft", "313 g/m² ÷ 244 g/m² at once: 2 doses of 156 g/m²"},
		{false, "0.5 × 1.2 + 0.8 × 1.7 = 1.96 tons/acre over 7 in, an estimate", "4.39 t/ha (0.5 × 1.2 + 0.8 × 1.7 = 1.96 tons/acre) over 18 cm, an estimate"},
		{false, "for 4 in: 1.96 × 4/7 = 1.12 tons/acre", "for 10 cm: 2.51 t/ha (1.96 × 4/7 = 1.12 tons/acre)"},
		{false, "1.12 × 2000/43.56 = 51.4 lb/1000 sq ft", "251 g/m² (1.12 × 2000/43.56 = 51.4 lb/1000 sq ft)"},
		{false, "32 lb/1000 sq ft × 2,600 sq ft ÷ 1000 = 83.27 lb of limestone; ÷ 40 lb a pack = 2.08 packs", "156 g/m² × 242 m² ÷ 1000 = 37.8 kg of limestone; ÷ 18.1 kg a pack = 2.08 packs"},
		{true, "3 lb N/1000 sq ft a year (published: 2 to 4 lb)", "14.6 g N/m² (3 lb N/1000 sq ft) a year (published: 2 to 4 lb)"},
		{true, "at most 50 lb/1000 sq ft at a time", "at most 244 g/m² (50 lb/1000 sq ft) at a time"},
		{true, "1.80 lb N × 0.67 = 1.21 lb N/1000 sq ft", "8.79 g N/m² × 0.67 = 5.91 g N/m²"},
		{false, "the bag of 10-10-10 is 0-46-0", "the bag of 10-10-10 is 0-46-0"},
	} {
		if got := (Measure{Metric: true}).Say(c.us, c.quoted); got != c.want {
			t.Errorf("%s\n got %s\nwant %s", c.us, got, c.want)
		}
		if got := (Measure{}).Say(c.us, c.quoted); got != c.us {
			t.Errorf("in US units %q became %q", c.us, got)
		}
	}
	const label = "50 lb bag from 2 in the shed"
	if got := (Measure{Metric: true}).Say("3 lb N from the "+label+": 4 in deep", false, label); got != "14.6 g N/m² from the "+label+": 10 cm deep" {
		t.Errorf("a name was changed: %s", got)
	}
}
