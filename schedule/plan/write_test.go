package plan

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// The lines of one job are one job: what they brought adds up, each is named, and who did
// it is the last who is named. A job that was missed and done after all was done.
func TestRecordedJobs(t *testing.T) {
	down := func(line int, day string, n int) schedule.Down {
		return schedule.Down{Done: schedule.Done{Line: line, Date: mustDate(t, day)}, AreaID: "a", Kind: schedule.Nitrogen, Season: 2026, N: n, Dose: material.DoseOf(feed20, 1)}
	}
	with := func(d schedule.Down, change func(*schedule.Down)) schedule.Down { change(&d); return d }
	missed := func(d *schedule.Down) { d.NotDone, d.Dose = true, material.Dose{} }
	const first, second = "2026-10-01", "2026-10-05"
	for name, c := range map[string]struct {
		downs       []schedule.Down
		state       schedule.State
		on          string
		rate        float64
		why         []string
		note, title string
		summary     string
	}{
		"one line": {[]schedule.Down{down(2, first, 1)}, schedule.Finished, first, 1, []string{"line 2 of the record book"}, "", "Nitrogen on Test plot, 2 lb", "Nitrogen on Test plot, 2 lb of 20-5-10, 1 lb per 1,000 sq ft."},
		"two lines": {[]schedule.Down{with(down(2, first, 1), func(d *schedule.Down) { d.By, d.Note = "teo", "dry" }), with(down(3, second, 1), func(d *schedule.Down) { d.Note = "wet" })}, schedule.Finished, second, 2,
			[]string{"line 2 of the record book", "line 3 of the record book"}, "wet 2 lb of 20-5-10, 1 lb per 1,000 sq ft on 1 Oct 2026 and 2 lb of 20-5-10, 1 lb per 1,000 sq ft on 5 Oct 2026.", "Nitrogen on Test plot, 4 lb", "Nitrogen on Test plot, 4 lb of 20-5-10, 2 lb per 1,000 sq ft, by teo."},
		"who was named last":     {[]schedule.Down{with(down(2, first, 1), func(d *schedule.Down) { d.By = "teo" }), with(down(3, second, 1), func(d *schedule.Down) { d.By = "mara" })}, schedule.Finished, second, 2, nil, "", "", "by mara."},
		"missed":                 {[]schedule.Down{with(down(2, first, 1), missed)}, schedule.Missed, first, 0, nil, "", "Nitrogen on Test plot", "Nitrogen on Test plot."},
		"missed, then done":      {[]schedule.Down{with(down(2, first, 1), missed), down(3, second, 1)}, schedule.Finished, second, 1, []string{"line 3 of the record book"}, "", "", ""},
		"done, then missed":      {[]schedule.Down{down(2, first, 1), with(down(3, second, 1), missed)}, schedule.Finished, first, 1, []string{"line 2 of the record book"}, "", "", ""},
		"missed twice":           {[]schedule.Down{with(down(2, first, 1), missed), with(down(3, second, 1), missed)}, schedule.Missed, first, 0, nil, "", "", ""},
		"taken as done":          {[]schedule.Down{with(down(2, first, 1), func(d *schedule.Down) { d.Taken = true })}, schedule.Taken, first, 1, nil, "not on record: taken as done as planned", "", ""},
		"what no line speaks of": {[]schedule.Down{down(0, first, 1)}, schedule.Finished, first, 1, []string{"the soil report of 1 Oct 2026"}, "", "", ""},
	} {
		pl, l := planning(t, func(s *schedule.Site) { s.Areas[0].Name = "Test plot" })
		for _, d := range c.downs {
			l.down.put(d)
		}
		got := pl.recorded(l)
		if len(got) != 1 {
			t.Errorf("%s: %d jobs", name, len(got))
			continue
		}
		j := got[0]
		if c.state == schedule.Missed && j.Note != "" {
			t.Errorf("%s: %q is said of what never went down", name, j.Note)
		}
		var why []string
		for _, r := range j.Why {
			why = append(why, r.Text)
		}
		if j.State != c.state || j.On != mustDate(t, c.on) || float64(j.Dose.Rate) != c.rate || c.why != nil && !slices.Equal(why, c.why) || c.note != "" && j.Note != c.note || c.title != "" && j.Title != c.title || !strings.HasSuffix(j.Summary, c.summary) {
			t.Errorf("%s: %v on %s, %v lb, %q\n%s\n%s\n%s", name, j.State, j.On, j.Dose.Rate, why, j.Note, j.Title, j.Summary)
		}
	}
	// A missed job is not among those on record if it is planned again or presumed done.
	pl, l := planning(t)
	l.down.put(with(down(2, first, 1), missed))
	l.down.put(with(down(3, first, 2), missed))
	l.down.put(down(4, first, 3))
	l.down.put(down(5, first, 4))
	again, rest := feeding(t, l, 1, "2026-09-12", second, "2026-10-20", 1), feeding(t, l, 3, "2026-09-12", second, "2026-10-20", 1)
	rest.Rest = true
	l.planned = []schedule.Job{again, rest}
	presumed := feeding(t, l, 2, "2026-09-12", second, "2026-10-20", 1)
	l.down.put(schedule.Down{Done: schedule.Done{Date: presumed.On}, AreaID: "a", Kind: presumed.Kind, Season: 2026, N: 2, Presumed: &presumed})
	var ids []string
	for _, j := range pl.recorded(l) {
		ids = append(ids, j.ID())
	}
	if !slices.Equal(ids, []string{"a/nitrogen/2026-3", "a/nitrogen/2026-4"}) {
		t.Errorf("recorded %q", ids)
	}
	// The rest of a job says how much of the job is down already.
	for _, j := range pl.jobs() {
		if j.Rest && (!strings.HasPrefix(j.Note, "down already: 2 lb of 20-5-10") || !strings.Contains(j.Note, "1 Oct 2026")) {
			t.Errorf("the rest says %q", j.Note)
		}
	}
}

// An entry carries what its job has: amounts of the whole area, nutrients unless it is a
// lime, the window, who does it, and never a list that is nil.
func TestEntryOfAJob(t *testing.T) {
	pl, l := planning(t, func(s *schedule.Site) {
		s.Crew.People = []schedule.Person{{ID: "mara", Name: "Mara"}}
		s.Crew.Who = []schedule.Assignment{{Jobs: "a", Person: "mara"}}
	})
	slow := feed20
	slow.SlowShare, slow.Name = 0.5, "lawn food"
	j := feeding(t, l, 1, "2026-09-12", "2026-09-20", "2026-10-20", 5)
	j.Dose, j.Title, j.Summary, j.Because, j.Steps = material.DoseOf(slow, 5), "T", "S", "B", []string{"one"}
	e := pl.entry(&j)
	if e.ID != "a/nitrogen/2026-1" || e.Season != 2026 || e.Title != "T" || e.Summary != "S" || e.Because != "B" || e.Date != j.On || e.Earliest != mustDate(t, "2026-09-12") || e.Latest != mustDate(t, "2026-10-20") || e.Ideal != j.On || e.State != schedule.Planned ||
		e.Who != "mara" || e.WhoName != "Mara" || e.Area != "a" || e.AreaName != l.area.Name || e.Material != "feed20" || e.Rate != 5 || e.Pounds != 10 || e.Packs != 0.25 || e.N != 1 || e.SlowN != 0.5 || e.P2O5 != 0.25 || e.K2O != 0.5 || len(e.Steps) != 1 || e.Cautions == nil || e.Why == nil || e.BoundBy == nil || e.UID != schedule.UID(pl.site.ID, "a", schedule.Nitrogen, 2026, 1) {
		t.Errorf("%+v", e)
	}
	stone := j
	stone.Kind, stone.By, stone.State = schedule.Lime, "teo", schedule.Finished
	stone.Dose = material.DoseOf(material.Material{ID: "stone", Kind: material.LimeMaterial, Analysis: slow.Analysis}, 40)
	if e = pl.entry(&stone); e.N != 0 || e.P2O5 != 0 || e.K2O != 0 || e.Rate != 40 || e.Pounds != 80 || e.Who != "teo" || e.WhoName != "teo" || e.State != schedule.Finished {
		t.Errorf("a lime: %+v", e)
	}
	notice := schedule.Job{Kind: schedule.LastSafe, Season: 2026, N: 1, On: j.On, By: "mara"}
	if e = pl.entry(&notice); e.Who != "" || e.WhoName != "" || e.Area != "" || e.Material != "" || e.Rate != 0 || e.Steps == nil {
		t.Errorf("a notice: %+v", e)
	}
}

// The nitrogen of a year is told once a season: by the last plan of it.
func TestYearlyNitrogen(t *testing.T) {
	of := func(year int) *schedule.Case {
		return &schedule.Case{Year: year, Yearly: []schedule.YearlyN{{}}}
	}
	for _, c := range []struct {
		years []int
		want  int
	}{{nil, 0}, {[]int{2026}, 1}, {[]int{2026, 2026}, 1}, {[]int{2026, 2027}, 2}, {[]int{2026, 2026, 2027, 2027, 2028}, 3}} {
		l := &life{}
		for _, y := range c.years {
			l.all = append(l.all, of(y))
		}
		if got := l.yearly(); len(got) != c.want {
			t.Errorf("%v: %d", c.years, len(got))
		}
	}
}
