package plan

import (
	"regexp"
	"testing"
	"time"

	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
)

// A reason that names another job with its day names one that the program has on that
// day, also where the late dose found no day and all was then proposed again without it.
func TestReasonsNameJobsOfTheProgram(t *testing.T) {
	named := regexp.MustCompile(`\(([a-z ]+), (\d+ [A-Z][a-z]{2} \d{4})\)`)
	proposedAgain := 0
	for _, grass := range []string{"kentucky bluegrass", "perennial ryegrass", "tall fescue"} {
		for _, seeded := range []string{"2026-09-25", "2026-10-03", "2026-10-10"} {
			site := sown(t, "MA", "6b", grass, "2026-09-10", seeded)
			site.Crew.Days = []time.Weekday{time.Saturday, time.Sunday}
			site.Areas[0].Care = nutrient.HighCare
			site.Areas[0].Soil.PH, site.Areas[0].Soil.Phosphorus.PPM, site.Areas[0].Soil.Potassium.PPM = 6.6, 210, 160
			last := mustDate(t, "2028-07-20")
			site.Through = last
			p := plan(t, site)
			on := map[string]bool{}
			for _, e := range p.Entries {
				on[e.Kind.Noun()+", "+e.Date.Short()] = true
			}
			for _, l := range p.LeftOut {
				if l.Kind == schedule.LateNitrogen && regexp.MustCompile(`^no day from`).MatchString(l.Reason) {
					proposedAgain++
				}
				for _, m := range named.FindAllStringSubmatch(l.Reason, -1) {
					if !on[m[1]+", "+m[2]] {
						t.Errorf("%s, sown %s: %s is left out for a job that is not planned: %s", grass, seeded, l.ID, m[0])
					}
				}
			}
		}
	}
	if proposedAgain == 0 {
		t.Error("no late dose found no day: the cases tell nothing")
	}
}
