package plan

import (
	"fmt"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/schedule"
)

// threeAreas is a site of n unlike areas with a shed, a crew and a report each.
func threeAreas(b testing.TB, n int) *schedule.Site {
	site := situations[0].site(b, "OH", "6a", "kentucky bluegrass")
	one := site.Areas[0]
	site.Areas = nil
	for i := range n {
		a := one
		a.ID, a.Name = fmt.Sprintf("a%d", i), fmt.Sprintf("Area %d", i)
		g, _ := agronomy.LookupGrass(agronomy.GrassNames()[i%4])
		a.Stand = agronomy.Stand{{Grass: g, Percent: 100}}
		site.Areas = append(site.Areas, a)
	}
	site.Crew = schedule.Crew{Days: []time.Weekday{time.Saturday, time.Wednesday}, JobsPerDay: 2}
	return site
}

func BenchmarkPlan(b *testing.B) {
	for _, n := range []int{1, 3, 10} {
		b.Run(fmt.Sprintf("%d areas", n), func(b *testing.B) {
			site := threeAreas(b, n)
			if n > 3 {
				site.Crew.JobsPerDay = 0
			}
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Program(site, nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
