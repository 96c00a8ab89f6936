package page

import (
	"strings"
	"testing"

	"swardbook/schedule"
)

func TestTied(t *testing.T) {
	got := tied("1.5 lb per 1,000 sq ft; brings 0.75 lb K₂O by Mon 16 Nov 2026")
	if want := "1.5~lb per 1,000~sq~ft; brings 0.75~lb~K₂O by Mon~16~Nov~2026"; strings.ReplaceAll(got, "\u00a0", "~") != want {
		t.Errorf("%q", got)
	}
	if got := tied("urea 46-0-0, 18-24-12"); got != "urea 46-\u20600-\u20600, 18-\u206024-\u206012" {
		t.Errorf("an analysis may break: %q", got)
	}
}

// Jobs left out in several seasons under one name are told apart, and each once for
// each program.
func TestLeftOutJobsOfOneName(t *testing.T) {
	p := &schedule.Program{Areas: []schedule.AreaShown{{ID: "a", Name: "Green"}}}
	for _, id := range []string{"a/soil-test/2026-1", "a/soil-test/2027-1", "a/lime/2026-1"} {
		k := schedule.SoilTest
		if strings.Contains(id, "lime") {
			k = schedule.Lime
		}
		p.LeftOut = append(p.LeftOut, schedule.LeftOut{ID: id, Kind: k, Area: "a", Reason: "of " + id})
	}
	_, left := comparedJobs([]Variant{{Label: "one", Program: p}, {Label: "two", Program: p}})
	names := map[string]bool{}
	for i, j := range left {
		names[j.Name] = true
		if len(j.Rows) != 2 || j.Rows[0].Label != "one" || j.Rows[1].Label != "two" || j.Rows[0].What != "of "+p.LeftOut[i].ID {
			t.Errorf("%s: %+v", j.Name, j.Rows)
		}
	}
	if len(left) != 3 || len(names) != 3 {
		t.Errorf("%d jobs under %d names: %v", len(left), len(names), names)
	}
}
