package plan

import (
	"fmt"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/schedule"
)

// What rounding leaves of a need whose jobs went down as planned counts as nothing: it
// makes no job, no line in what is left out, and no panic.
func TestWhatIsDownAsPlannedLeavesNothing(t *testing.T) {
	for _, grass := range []string{"kentucky bluegrass", "tall fescue", "bermudagrass"} {
		for _, depth := range []agronomy.Inches{2, 3, 4, 6} {
			for _, ph := range []agronomy.PH{4.8, 5.2, 6.9, 7.0, 7.2, 7.4, 7.5, 7.8, 8.0, 8.1} {
				for _, texture := range []agronomy.Texture{agronomy.Sand, agronomy.Loam, agronomy.Clay} {
					site := situations[0].site(t, "OH", "6a", grass)
					site.Start = mustDate(t, "2026-04-01")
					site.Through = site.Start.AddDays(364)
					a := &site.Areas[0]
					a.Sampled = mustDate(t, "2026-03-01")
					a.Soil.PH, a.Soil.Depth, a.Soil.Texture, a.Texture = ph, depth, texture, texture
					what := fmt.Sprintf("%s, %v in, pH %v, %s", grass, depth, ph, texture)
					checkNothingLeft(t, what, site)
				}
			}
		}
	}
}

func checkNothingLeft(t *testing.T, what string, site *schedule.Site) {
	defer func() {
		if r := recover(); r != nil {
			t.Errorf("%s: panic: %v", what, r)
		}
	}()
	before := plan(t, site)
	var book []schedule.Done
	planned := map[schedule.Kind]int{}
	for i, e := range before.Entries {
		switch e.Kind {
		case schedule.Lime, schedule.Sulfur, schedule.Phosphorus, schedule.Potassium, schedule.Magnesium:
			book = append(book, schedule.Done{Line: i + 2, Date: e.Date, Area: "a", Job: e.ID, Share: 1, AsPlanned: true})
			planned[e.Kind]++
		}
	}
	for _, l := range before.LeftOut {
		planned[l.Kind] = 0 // some of it was left for later
	}
	after := plan(t, site, book...)
	for _, e := range after.Entries {
		if planned[e.Kind] > 0 && e.State == schedule.Planned {
			t.Errorf("%s: %s of %.3g lb/1000 sq ft is planned on top of what is down", what, e.ID, float64(e.Rate))
		}
	}
	for _, l := range after.LeftOut {
		if strings.Contains(l.Reason, " 0 lb") {
			t.Errorf("%s: %s: %s", what, l.ID, l.Reason)
		}
	}
}

// A year later, with everything down, a need of the report says that it is met; before
// that it does not.
func TestNeedsSayThatTheyAreMet(t *testing.T) {
	site := situations[0].site(t, "OH", "6a", "kentucky bluegrass")
	site.Start = mustDate(t, "2026-04-01")
	site.Through = site.Start.AddMonths(24)
	a := &site.Areas[0]
	a.Sampled = mustDate(t, "2026-03-01")
	a.Soil.PH = 5.2
	p := plan(t, site)
	asked := 0
	for months, met := range map[int]bool{0: false, 16: true} {
		for _, n := range p.AsOf(site.Start.AddMonths(months)).Areas[0].Needs {
			switch n.Kind {
			case schedule.Lime, schedule.Phosphorus, schedule.Potassium:
				if n.Total > 0 {
					asked++
					if strings.HasSuffix(n.Text, "; all of it is down") != met {
						t.Errorf("after %d months: %s", months, n.Text)
					}
				}
			}
		}
	}
	if asked < 4 {
		t.Errorf("only %d needs were asked for", asked)
	}
}
