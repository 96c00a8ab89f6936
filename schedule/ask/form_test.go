package ask

import (
	"slices"
	"testing"
)

// What a person types becomes the keys of a site file; the page is then filled again as
// it was.
func TestForm(t *testing.T) {
	form := Form{
		answer("place.zip", " 44109 "), answer("area.lawn.size", "40 x 65 - 24 x 30"), answer("form.area.lawn.size.unit", "sq ft"),
		answer("area.lawn.grass", "mixture"),
		answer("form.area.lawn.mix.1.grass", "perennial ryegrass"), answer("form.area.lawn.mix.1.share", "60"),
		answer("form.area.lawn.mix.2.grass", "fine fescue"), answer("form.area.lawn.mix.2.share", "40"), answer("form.area.lawn.mix.3.grass", ""),
		answer("area.lawn.seeded", "2026-09-03"), answer("area.lawn.care", "medium"),
		answer("form.area.lawn.soil.unit", "lb/acre"), answer("area.lawn.soil.phosphorus", "28"), answer("area.lawn.soil.potassium", "61 ppm K2O"),
		answer("area.lawn.soil.lime", "1.5"), answer("form.area.lawn.soil.lime.unit", "tons/acre"), answer("form.area.lawn.soil.nitrogen.unit", "lb/acre"),
		answer("material.bag1.kind", "fertilizer"), answer("form.material.bag1.n", "18"), answer("form.material.bag1.p", "24"), answer("form.material.bag1.k", "12"),
		answer("material.bag1.pack", "25"), answer("material.bag1.on_hand", "0.5"),
		answer("record.1.material", "bag1"), answer("record.1.date", "2026-09-05"), answer("record.1.amount", "9"),
		answer("crew.days", "sat"), answer("crew.days", "sun"), answer("form.people", "Mara, Teo Q"),
	}
	want := Answers{
		answer("place.zip", "44109"), answer("area.lawn.size", "40 x 65 - 24 x 30 ft"),
		answer(`area.lawn.grass."perennial ryegrass"`, "60"), answer(`area.lawn.grass."fine fescue"`, "40"),
		answer("area.lawn.seeded", "2026-09-03"), answer("area.lawn.care", "medium"),
		answer("area.lawn.soil.phosphorus", "28 lb/acre"), answer("area.lawn.soil.potassium", "61 ppm K2O"), answer("area.lawn.soil.lime", "1.5 tons/acre"),
		answer("material.bag1.kind", "fertilizer"), answer("material.bag1.pack", "25 lb"), answer("material.bag1.on_hand", "0.5"),
		answer("record.1.material", "bag1"), answer("record.1.date", "2026-09-05"), answer("record.1.amount", "9 lb"),
		answer("crew.days", "sat"), answer("crew.days", "sun"),
		answer("material.bag1.analysis", "18-24-12"), answer("material.bag1.name", "fertilizer 18-24-12"),
		answer("record.1.kind", "starter"), // two days after the sowing, with phosphorus
		answer("crew.people.mara", "Mara"), answer("crew.people.teo-q", "Teo Q"),
	}
	got := FromForm(form)
	if !slices.Equal(got, want) {
		t.Errorf("the answers are\n%v\nwant\n%v", got, want)
	}
	again := FromForm(ToForm(got.Tidy()))
	if a, b := again.Tidy(), got.Tidy(); !slices.Equal(a, b) {
		t.Errorf("the page filled again gives\n%v\nwant\n%v", a, b)
	}
	filled := ToForm(got.Tidy())
	for _, one := range form {
		if one.Key == "area.lawn.size" || one.Key == "form.area.lawn.size.unit" || one.Key == "form.area.lawn.soil.nitrogen.unit" || one.Key == "place.zip" || one.Value == "" {
			continue // the sides bring their unit along, and a unit of nothing is nothing
		}
		if !slices.Contains(filled, one) {
			t.Errorf("the page filled again has no %v; it has\n%v", one, filled)
		}
	}
}

// Another material on a line of the record book leaves behind what the old one held.
func TestLineOfAnotherMaterial(t *testing.T) {
	line := Form{answer("material.bag1.kind", "lime"), answer("material.bag2.kind", "sulfur"),
		answer("record.1.date", "2026-09-05"), answer("record.1.amount", "9 lb"), answer("record.1.kind", "lime"), answer("record.1.lime_value", "80"),
		answer("form.record.1.was", "bag1")}
	for material, want := range map[string][2]string{"bag1": {"lime", "80"}, "bag2": {"sulfur", ""}} {
		got := FromForm(append(line, answer("record.1.material", material)))
		if k, v := got.Get("record.1.kind"), got.Get("record.1.lime_value"); k != want[0] || v != want[1] {
			t.Errorf("%s: kind %q, lime value %q; want %q", material, k, v, want)
		}
	}
}

// A feed with phosphorus near the sowing, or near the day on which seed was sown over
// thin grass, was its starter; another feed was a feeding.
func TestFeedNearSeedIsItsStarter(t *testing.T) {
	for _, c := range []struct{ key, day, phosphate, want string }{
		{"seeded", "2026-09-03", "24", "starter"}, {"overseed", "2026-09-03", "24", "starter"},
		{"seeded", "2026-08-08", "24", "starter"}, {"overseed", "2026-10-03", "24", "starter"}, // four weeks, either way
		{"seeded", "2026-08-07", "24", "nitrogen"}, {"overseed", "2026-10-04", "24", "nitrogen"},
		{"overseed", "2026-09-03", "0", "nitrogen"},
	} {
		got := FromForm(Form{answer("area.lawn."+c.key, c.day), answer("material.bag1.kind", "fertilizer"),
			answer("form.material.bag1.n", "18"), answer("form.material.bag1.p", c.phosphate), answer("form.material.bag1.k", "12"),
			answer("record.1.date", "2026-09-05"), answer("record.1.material", "bag1"), answer("record.1.amount", "9 lb")})
		if k := got.Get("record.1.kind"); k != c.want {
			t.Errorf("%+v: %q", c, k)
		}
	}
}

func TestGrassNotKnown(t *testing.T) {
	for colour, want := range map[string]int{NotKnown: 3, NotKnownW: 1} {
		if got := FromForm(Form{answer("area.lawn.grass", colour)}); len(got) != want {
			t.Errorf("%s: %v", colour, got)
		}
	}
}
