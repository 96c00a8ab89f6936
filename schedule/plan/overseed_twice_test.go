package plan

import (
	"testing"

	"swardbook/schedule"
)

// An overseeding on record and another within the year both hold: the seedlings of each
// have a mowing before anything but their starter goes down, no more than 0.5 lb N at once
// in their first twelve weeks and no late nitrogen, common practice, no source.
func TestTwoOverseedings(t *testing.T) {
	for _, c := range []struct{ name, start, wish, first, second string }{
		{"September and the next April", "2026-08-10", "2027-04-20", "2026-09-02", ""},
		{"September, and again as it did not take", "2026-08-10", "2026-09-02", "2026-09-02", "2026-09-24"},
		{"April and September, of one year", "2027-03-20", "2027-09-02", "2027-04-20", ""},
		{"before the start and in April", "2026-09-12", "2027-04-20", "2026-08-25", ""},
		{"named before the start, on record in April", "2026-09-12", "2026-08-25", "2027-04-20", ""},
	} {
		site := overseeded(t, "tall fescue", c.start, c.wish)
		site.Through = schedule.Date{}
		book := []schedule.Done{{Line: 2, Date: mustDate(t, c.first), Area: "a", Job: "overseed"}}
		overs := []string{c.first, c.wish}
		if c.second != "" {
			book = append(book, schedule.Done{Line: 3, Date: mustDate(t, c.second), Area: "a", Job: "overseed"})
			overs = []string{c.first, c.second}
		}
		p, err := Program(site, book, mustDate(t, "2028-01-01"))
		if err != nil {
			t.Fatal(err)
		}
		starters := 0
		for i, day := range overs {
			over := mustDate(t, day)
			for _, e := range p.Entries {
				days := e.Date.DaysFrom(over)
				switch {
				case days < 0 || e.Dose.Rate == 0:
				case e.Kind == schedule.Starter && days <= schedule.WithSeedDays:
					starters++
				case days < 11+14 && e.Kind != schedule.Starter: // tall fescue is up in 11 days
					t.Errorf("%s: %s %d days after overseeding %d", c.name, e.ID, days, i+1)
				}
				if days >= 0 && days < 84 && e.N > 0.5+1e-9 {
					t.Errorf("%s: %s brings %.2f lb N %d days after overseeding %d", c.name, e.ID, float64(e.N), days, i+1)
				}
				if days >= 0 && days < 100 && e.Kind == schedule.LateNitrogen {
					t.Errorf("%s: %s on seedlings of overseeding %d", c.name, e.ID, i+1)
				}
			}
		}
		for _, l := range p.LeftOut {
			if l.Kind == schedule.Starter {
				starters++
			}
		}
		if c.second == "" && mustDate(t, c.first).After(site.Start) && mustDate(t, c.wish).After(site.Start) && starters < 2 {
			t.Errorf("%s: %d starters for two overseedings, left out or not", c.name, starters)
		}
	}
}
