package plan

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/schedule"
)

// Where the soil has phosphorus enough, seed is fed with nitrogen alone [gcm-p-seeding]: the
// job is not named as if a bag of starter were needed, and the program says why.
func TestStarterWithoutPhosphorus(t *testing.T) {
	for name, site := range map[string]*schedule.Site{
		"overseeding": overseeded(t, "kentucky bluegrass", "2026-08-10", "2026-09-05"),
		"sowing":      sown(t, "PA", "6b", "kentucky bluegrass", "2026-08-20", "2026-09-01"),
	} {
		for _, high := range []bool{true, false} {
			if high {
				site.Areas[0].Soil.Phosphorus = agronomy.Reading{Given: true, PPM: 200}
			} else {
				site.Areas[0].Soil.Phosphorus = agronomy.Reading{Given: true, PPM: 10}
			}
			p := plan(t, site)
			e := entry(t, p, "a/starter/1")
			told := slices.ContainsFunc(p.Assumptions, func(s string) bool {
				return strings.Contains(s, "nitrogen alone") && strings.Contains(s, "phosphorus is very high")
			})
			if bare := e.P2O5 == 0; bare != high || told != high || strings.HasPrefix(e.Title, "Starter") == high || strings.Contains(e.Because, "no phosphorus") != high {
				t.Errorf("%s, phosphorus high %v: %q brings %.2f lb P₂O₅: %s; assumed %q", name, high, e.Title, float64(e.P2O5), e.Because, p.Assumptions)
			}
		}
	}
}

// A young stand that gets no starter after its seed, as nothing asks for phosphorus, is told
// so.
func TestNoStarterIsTold(t *testing.T) {
	site := sown(t, "MI", "6a", "tall fescue", "2026-08-25", "2026-07-21")
	site.Areas[0].Soil = nil
	p := plan(t, site)
	if l := leftOut(p, "a/starter/2026-1"); l == nil || !strings.Contains(l.Reason, "there is no soil report") {
		t.Errorf("left out: %v", p.LeftOut)
	}
	site = sown(t, "OH", "6a", "tall fescue", "2026-09-12", "2026-08-24")
	site.Areas[0].Soil.Phosphorus = agronomy.Reading{Given: true, PPM: 200}
	if l := leftOut(plan(t, site), "a/starter/2026-1"); l == nil || !strings.Contains(l.Reason, "phosphorus is very high in the soil report") {
		t.Errorf("phosphorus high: %v", l)
	}
}
