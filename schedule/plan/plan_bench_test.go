package plan

import (
	"fmt"
	"slices"
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
				if _, err := Program(site, nil, schedule.Date{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkDearest plans the lawns of the whole product whose days take most
// steps to find, without a crew and with a crew's days.
func BenchmarkDearest(b *testing.B) {
	for _, d := range []struct {
		situation, state, zone, grass string
		crew                          schedule.Crew
	}{
		{"established, midwinter", "FL", "11b", "zoysiagrass", schedule.Crew{}},
		{"one job a Saturday, with a month away", "FL", "10a", "bahiagrass", schedule.Crew{}},
		{"leap year", "WV", "6b", "Kentucky bluegrass", schedule.Crew{Days: []time.Weekday{time.Wednesday, time.Saturday}, JobsPerDay: 1}},
	} {
		s := situations[slices.IndexFunc(situations, func(s situation) bool { return s.name == d.situation })]
		site := s.site(b, d.state, d.zone, d.grass)
		name := "no crew"
		if len(d.crew.Days) > 0 {
			site.Crew = d.crew
		}
		if site.Crew.JobsPerDay > 0 {
			name = fmt.Sprintf("%d job a day, %d days a week", site.Crew.JobsPerDay, len(site.Crew.Days))
		}
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := Program(site, s.book, schedule.Date{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
