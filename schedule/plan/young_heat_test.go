package plan

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/climate"
	"swardbook/schedule"
)

// Seedlings that came up in spring get no nitrogen from 45 days before the warmest day, when
// the spring feeding of grown stands ends [unl-calc, ill-1995], to 25 days after it, when
// the autumn's begins [umn-2023]; the program says so. That none burns in heat is common
// practice, no source.
func TestSeedlingsAreNotFedInTheHeat(t *testing.T) {
	told := 0
	for _, place := range [][2]string{{"CO", "5b"}, {"IN", "6a"}, {"MN", "4b"}, {"OR", "8b"}, {"GA", "8a"}, {"MD", "7a"}} {
		for _, grass := range []string{"Kentucky bluegrass", "tall fescue", "perennial ryegrass"} {
			for _, days := range [][2]string{{"2027-03-20", "2027-02-13"}, {"2027-04-01", "2027-04-10"}, {"2027-04-20", "2027-04-28"}, {"2027-05-20", "2027-04-28"}, {"2027-05-20", "2027-05-24"}} {
				site := sown(t, place[0], place[1], grass, days[0], days[1])
				site.Materials = []material.Material{{ID: "urea", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 46}, Pack: 50, OnHand: 1}}
				p := plan(t, site)
				year, err := site.Place.Year()
				if err != nil {
					t.Fatal(err)
				}
				hot := schedule.NewAlmanac(year, site.Start, site.Start).YearBegins(2027, climate.Cool)
				shut := schedule.Span{From: hot.AddDays(-44), To: hot.AddDays(24)}
				for _, e := range fed(p) {
					withSeed := e.Kind == schedule.Starter && !slices.ContainsFunc(ofKind(p, schedule.Sow), func(s *schedule.Entry) bool { return s.Date != e.Date })
					if shut.Has(e.Date) && !withSeed {
						t.Errorf("%v %s sown on %s: %s brings %.2f lb N on %s, the warmest day is %s", place, grass, days[1], e.ID, float64(e.N), e.Date, hot)
					}
				}
				if slices.ContainsFunc(p.LeftOut, func(l schedule.LeftOut) bool { return strings.Contains(l.Reason, "seedlings are not fed after") }) {
					told++
				}
			}
		}
	}
	if told < 40 {
		t.Errorf("the heat is told in %d programs", told)
	}
}

// Slow seed of late April is fed two weeks after it is up rather than in August. Custom runs
// from two weeks to six, common practice, no source.
func TestFedBeforeTheHeat(t *testing.T) {
	all := fed(plan(t, sown(t, "PA", "6b", "kentucky bluegrass", "2027-04-20", "2027-04-25")))
	if len(all) < 2 || all[0].Kind != schedule.Starter || all[1].Date.DaysFrom(all[0].Date) > 45 {
		t.Errorf("fed by %+v", all)
	}
}
