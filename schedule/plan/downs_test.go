package plan

import (
	"slices"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// What went down on one day is the same in one line as in forty, whether the lines
// name their job or its kind alone.
func TestManyLinesOfADayAreOne(t *testing.T) {
	for _, job := range []string{"nitrogen", "nitrogen/2026-1"} {
		site := bluegrass(t)
		feed := material.Material{ID: "feed", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 24, P2O5: 2, K2O: 8}, SlowShare: 0.3, Pack: 40}
		line := schedule.Done{Line: 2, Date: site.Start.AddDays(9), Area: site.Areas[0].ID, Job: job, Content: &feed, Material: feed.ID, Weight: 4}
		var lines []schedule.Done
		for i := range 40 {
			one := line
			one.Line, one.Weight = i+2, line.Weight/40
			lines = append(lines, one)
		}
		whole, many := plan(t, site, line), plan(t, site, lines...)
		same := slices.EqualFunc(whole.Entries, many.Entries, func(a, b schedule.Entry) bool {
			return a.ID == b.ID && a.Date == b.Date && alike(a.Rate, b.Rate) && alike(a.N, b.N)
		})
		if !same {
			t.Errorf("%s: %d jobs after one line, %d after its forty parts", job, len(whole.Entries), len(many.Entries))
			for _, p := range []*schedule.Program{whole, many} {
				for _, e := range p.Entries {
					t.Logf("%s %s %.3f", e.ID, e.Date, float64(e.Rate))
				}
			}
		}
	}
}

// However long a record book is, package place is given only the jobs that keep others at
// a distance: of a line a day for half a year, all of one amount, it gets one.
func TestLikeThingsStandOnce(t *testing.T) {
	c := &schedule.Case{Area: &schedule.Area{ID: "a"}, Start: mustDate(t, "2027-06-01")}
	feed := material.Material{ID: "feed", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 24}}
	for i := 179; i > 0; i-- {
		d := schedule.Down{Done: schedule.Done{Date: c.Start.AddDays(-i)}, AreaID: "a", Kind: schedule.Nitrogen, Season: 2026, N: i, Dose: material.DoseOf(feed, 1)}
		c.Down = append(c.Down, d)
	}
	if got := lately(c, nil); len(got) != 1 || got[0].On != c.Start.AddDays(-1) {
		t.Errorf("%d things stand, want the last alone", len(got))
	}
	c.Down[0].Dose = material.DoseOf(feed, 3) // a larger dose, which may keep others away for longer
	if got := lately(c, nil); len(got) != 2 {
		t.Errorf("%d things stand beside a larger one, want 2", len(got))
	}
	rest := schedule.Job{Kind: schedule.Nitrogen, Season: 2026, N: 1, Area: c.Area, Rest: true}
	if got := lately(c, []schedule.Job{rest}); len(got) != 3 {
		t.Errorf("%d things stand beside the rest of the last, want 3: it does not wait for its own", len(got))
	}
}
