package plan

import "testing"

// The first feeding season of a stand holds no dose of more than half a pound of
// quick nitrogen: Minnesota's 0.5 lb, by a garden page on germination
// [common]. So also in the spring after a dormant or a late sowing, when
// only its last weeks are left to feed in.
func TestFirstSeasonIsFedInSmallDoses(t *testing.T) {
	starts := []string{"2026-09-01", "2027-04-20", "2027-05-05", "2027-05-15", "2027-05-20", "2027-05-25"}
	for _, cell := range [][2]string{{"OH", "6a"}, {"MN", "4b"}, {"PA", "6b"}, {"VA", "7a"}} {
		for _, seeded := range []string{"2026-08-24", "2026-10-10", "2026-11-25"} {
			fed := 0
			for _, start := range starts {
				site := dormant(t)
				site.Place.State, site.Place.Hardiness = cell[0], cell[1]
				a := &site.Areas[0]
				a.Soil, a.Seeded, a.Dormant = nil, mustDate(t, seeded), seeded > "2026-11"
				site.Start = mustDate(t, start)
				until := site.Through
				if seeded < "2026-09" {
					until = mustDate(t, "2026-12-31")
				}
				for _, e := range plan(t, site).Entries {
					if e.Date.After(until) {
						continue
					}
					if e.N > 0 {
						fed++
					}
					if quick := e.N - e.SlowN; quick > 0.5+1e-9 {
						t.Errorf("%s %s, sown %s, from %s: %s on %s brings %.2f lb of quick nitrogen", cell[0], cell[1], seeded, start, e.ID, e.Date, float64(quick))
					}
				}
			}
			if fed == 0 && (cell[0] != "MN" || seeded != "2026-08-24") { // up too late for that autumn
				t.Errorf("%s %s, sown %s: never fed", cell[0], cell[1], seeded)
			}
		}
	}
}
