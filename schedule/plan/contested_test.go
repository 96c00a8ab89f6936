package plan

import (
	"slices"
	"strings"
	"testing"
)

// TestContestedDaysAreTold finds the sentence where areas share a crew's days,
// and only there.
func TestContestedDaysAreTold(t *testing.T) {
	for _, c := range []struct {
		areas, perDay int
		want          bool
	}{{1, 1, false}, {3, 0, false}, {3, 1, true}} {
		site := threeAreas(t, c.areas)
		site.Crew.JobsPerDay = c.perDay
		p := plan(t, site)
		told := slices.ContainsFunc(p.Assumptions, func(a string) bool { return strings.Contains(a, "Several jobs want the same days") })
		if told != c.want {
			t.Errorf("%d areas, %d jobs a day: told %v", c.areas, c.perDay, told)
		}
	}
}
