package nutrient

import (
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
)

// A year's nitrogen stands beside what the state's calendar adds up to, where it prints
// doses: 1, 1 and 0.5 to 1 lb on tall fescue in North Carolina [nc-tallfescue] [nc-macon],
// 1, 1.5 to 2 and 0.25 to 0.3 lb on bluegrass in Nebraska [unl-calc] [unl-fall]. It
// changes no amount.
func TestYearBesideTheCalendar(t *testing.T) {
	for _, c := range []struct{ state, grass, says string }{
		{"NC", "tall fescue", "adds up to 2.5 to 3 lb N a year; this program gives 1.1 lb."},
		{"NE", "Kentucky bluegrass", "adds up to 2.75 to 3.3 lb N a year; this program gives 1.1 lb."},
		{"LA", "centipedegrass", "adds up to 1 lb N a year; this program gives 0.38 lb."},
		{"OH", "tall fescue", ""},
		{"KS", "tall fescue", ""}, // a calendar of days, without doses
	} {
		stand := agronomy.Stand{{Grass: check.Grass(t, c.grass)}}
		n, err := NitrogenYear(NitrogenCase{Stand: stand, Care: LowCare, State: c.state, ClippingsReturned: true})
		if err != nil {
			t.Fatal(err)
		}
		elsewhere, err := NitrogenYear(NitrogenCase{Stand: stand, Care: LowCare, State: "OH", ClippingsReturned: true})
		near(t, float64(n.Year), float64(elsewhere.Year), "%s, %s", c.state, c.grass)
		if err != nil {
			t.Fatal(err)
		}
		says := ""
		for _, r := range n.Why {
			if _, after, ok := strings.Cut(r.Text, "adds up to"); ok {
				says = "adds up to" + after
			}
		}
		if says != c.says {
			t.Errorf("%s, %s: %q, want %q", c.state, c.grass, says, c.says)
		}
	}
}

// In Michigan a year's potash stands beside the line through that state's reports
// [common]: 1.3 lb at 87 ppm, half of it halfway to 272.
func TestPotashBesideMichigansLine(t *testing.T) {
	for _, c := range []struct {
		state string
		ppm   agronomy.PPM
		isNew bool
		says  bool
	}{{"MI", 179.5, false, true}, {"MI", 86, false, false}, {"MI", 179.5, true, false}, {"OH", 179.5, false, false}} {
		r := agronomy.Report{Method: agronomy.Mehlich3, Potassium: agronomy.Reading{Given: true, PPM: c.ppm}}
		n, err := PotassiumNeed(r, c.state, c.isNew)
		if err != nil {
			t.Fatal(err)
		}
		says := false
		for _, w := range n.Why {
			says = says || strings.Contains(w.Text, "Michigan, by custom only, asks for about 0.7 lb") || strings.Contains(w.Text, "asks for about 0.6 lb K")
		}
		if says != c.says {
			t.Errorf("%+v: %v", c, n.Why)
		}
	}
}
