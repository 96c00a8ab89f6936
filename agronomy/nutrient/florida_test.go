package nutrient

import (
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
)

// The year's nitrogen and the calendar are those of one part of Florida: [uf-fyn] has
// bermudagrass at 3 to 5 lb in the north, 4 to 6 in central Florida, 5 to 7 in the south;
// [uf-winter] the last in September in the north, in October in central Florida.
func TestOnePartOfFlorida(t *testing.T) {
	at := func(v float64) *float64 { return &v }
	for _, c := range []struct {
		place     string
		hardiness string
		latitude  *float64
		part      Florida
		low, high float64
		last      string
	}{
		{"Tallahassee", "9a", at(30.44), NorthFlorida, 3, 5, "the last in September"},
		{"Gainesville", "9a", at(29.65), NorthFlorida, 3, 5, "the last in September"},
		{"a place of zone 8b", "8b", nil, NorthFlorida, 3, 5, "the last in September"},
		{"a place of zone 9a", "9a", nil, NorthFlorida, 3, 5, "the last in September"},
		{"a place of zone 9b", "9b", nil, CentralFlorida, 4, 6, "the last in October"},
		{"Orlando", "10a", at(28.54), CentralFlorida, 4, 6, "the last in October"},
		{"Tampa", "10a", at(27.95), CentralFlorida, 4, 6, "the last in October"},
		{"Miami", "10b", at(25.77), SouthFlorida, 5, 7, ""},
		{"a place of zone 10b", "10b", nil, SouthFlorida, 5, 7, ""},
		{"nothing known", "", nil, 0, 3, 5, "the last in September"},
	} {
		part := FloridaPart(c.hardiness, c.latitude)
		if part != c.part {
			t.Errorf("%s is in %s Florida", c.place, part)
		}
		stand := agronomy.Stand{{Grass: check.Grass(t, "bermudagrass"), Percent: 100}}
		for care, want := range map[Care]float64{LowCare: c.low, HighCare: c.high} {
			n, err := NitrogenYear(NitrogenCase{Stand: stand, Care: care, State: "FL", Florida: part, ClippingsReturned: true})
			if err != nil || float64(n.Year) != want {
				t.Errorf("%s, %s care: %.1f lb, want %.1f (%v)", c.place, care, float64(n.Year), want, err)
			}
		}
		if cal, ok := CalendarFor("FL", part, stand); ok != (c.last != "") || !strings.Contains(cal.Says, c.last) {
			t.Errorf("%s follows %q: %s", c.place, cal.Name, cal.Says)
		}
	}
}
