package plan

import (
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
	scrule "swardbook/schedule/rule"
)

// planning gives a planner and the life of its one area on the first day, 2026-09-12,
// of 2,000 sq ft of bluegrass; nothing is planned yet.
func planning(t *testing.T, change ...func(*schedule.Site)) (*planner, *life) {
	t.Helper()
	site := bluegrass(t)
	for _, c := range change {
		c(site)
	}
	pl, err := newPlanner(site, nil, schedule.Date{}, schedule.Kinds(), scrule.All)
	if err != nil {
		t.Fatal(err)
	}
	l := pl.begin(&site.Areas[0])
	pl.lives = []*life{l}
	return pl, l
}

var feed20 = material.Material{ID: "feed20", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 20, P2O5: 5, K2O: 10}, Pack: 40}

// feeding is a job that is planned for an ideal day within a window.
func feeding(t *testing.T, l *life, n int, from, ideal, to string, rate agronomy.PerThousand) schedule.Job {
	t.Helper()
	return schedule.Job{Kind: schedule.Nitrogen, Season: l.year, N: n, Area: l.area, On: mustDate(t, ideal), Dose: material.DoseOf(feed20, rate),
		Windows: []schedule.Window{{Span: schedule.Span{From: mustDate(t, from), To: mustDate(t, to)}, Ideal: mustDate(t, ideal)}}}
}

// Two amounts are alike if they differ by at most 6 %, which is how people round.
func TestAlikeAtItsEdge(t *testing.T) {
	for _, c := range []struct {
		a, b agronomy.PerThousand
		want bool
	}{{1, 1, true}, {0, 0, true}, {1, 0.94, true}, {0.94, 1, true}, {1, 0.939, false}, {0.939, 1, false}, {10, 9.4, true}, {10, 9.39, false}, {0.1, 0.094, true}, {0.1, 0.093, false}, {0, 0.01, false}} {
		if alike(c.a, c.b) != c.want {
			t.Errorf("%v and %v: alike is %t", c.a, c.b, !c.want)
		}
	}
}

// Every way to say how much went down on 2,000 sq ft comes to pounds per 1,000.
func TestRateOfALine(t *testing.T) {
	_, l := planning(t)
	liquid := material.Material{Liquid: true, Density: 10, PackVolume: 2.5}
	planned := feeding(t, l, 1, "2026-09-12", "2026-09-20", "2026-10-20", 5)
	for name, c := range map[string]struct {
		d       schedule.Done
		m       material.Material
		planned *schedule.Job
		want    agronomy.PerThousand
		known   bool
	}{
		"a weight":                     {schedule.Done{Weight: 12}, feed20, nil, 6, true},
		"a weight and a share":         {schedule.Done{Weight: 12, Share: 0.5}, feed20, &planned, 6, true},
		"a volume at 10 lb a gallon":   {schedule.Done{Volume: 1}, liquid, nil, 5, true},
		"a volume of a granular bag":   {schedule.Done{Volume: 1}, feed20, nil, 0, false},
		"packs of 40 lb":               {schedule.Done{Packs: 0.5}, feed20, nil, 10, true},
		"packs of 2.5 gal":             {schedule.Done{Packs: 2}, liquid, nil, 25, true},
		"packs of no size":             {schedule.Done{Packs: 1}, material.Material{}, nil, 0, false},
		"half of what was planned":     {schedule.Done{Share: 0.5}, feed20, &planned, 2.5, true},
		"what was planned":             {schedule.Done{AsPlanned: true}, feed20, &planned, 5, true},
		"half, and nothing is planned": {schedule.Done{Share: 0.5}, feed20, nil, 0, false},
	} {
		got, known := rateOf(c.d, c.m, l.area, c.planned)
		if known != c.known || known && math.Abs(float64(got-c.want)) > 1e-9 {
			t.Errorf("%s: %v, %t; want %v, %t", name, got, known, c.want, c.known)
		}
	}
}

// What a line leaves of a job is still due while its window is open, unless no more
// than a tenth of the dose first planned is missing.
func TestRestAtItsEdges(t *testing.T) {
	pl, l := planning(t)
	planned := feeding(t, l, 1, "2026-09-12", "2026-09-20", "2026-10-20", 10)
	rest := planned
	rest.Rest, rest.Dose = true, material.DoseOf(feed20, 1.5)
	other, empty, before := planned, planned, planned
	other.Dose, empty.Dose, before.Season = material.DoseOf(material.Material{ID: "other"}, 10), material.Dose{}, l.year-1
	for name, c := range map[string]struct {
		planned *schedule.Job
		down    agronomy.PerThousand
		of      agronomy.Pounds
		day     string
		missed  bool
		left    agronomy.PerThousand // 0 nothing is due
		on      string
	}{
		"half":                                       {&planned, 5, 0, "2026-09-20", false, 5, "2026-09-20"},
		"half, before the day":                       {&planned, 5, 0, "2026-09-14", false, 5, "2026-09-20"},
		"half, on the last day":                      {&planned, 5, 0, "2026-10-20", false, 5, "2026-10-20"},
		"half, when the window is closed":            {&planned, 5, 0, "2026-10-21", false, 0, ""},
		"a tenth is missing":                         {&planned, 8.99, 0, "2026-09-20", false, 1.01, "2026-09-20"},
		"less than a tenth":                          {&planned, 9.01, 0, "2026-09-20", false, 0, ""},
		"more than planned":                          {&planned, 12, 0, "2026-09-20", false, 0, ""},
		"missed":                                     {&planned, 5, 0, "2026-09-20", true, 0, ""},
		"nothing was planned":                        {nil, 5, 0, "2026-09-20", false, 0, ""},
		"nothing went down":                          {&planned, 0, 0, "2026-09-20", false, 0, ""},
		"another bag":                                {&other, 5, 0, "2026-09-20", false, 0, ""},
		"a job that spreads nothing":                 {&empty, 5, 0, "2026-09-20", false, 0, ""},
		"of the season before":                       {&before, 5, 0, "2026-09-20", false, 0, ""},
		"of a rest, most of it":                      {&rest, 0.6, 0, "2026-09-20", false, 0.9, "2026-09-20"},
		"of a rest, and little of the first dose":    {&rest, 0.6, 20, "2026-09-20", false, 0, ""}, // 20 lb are 10 per 1,000
		"of a rest, and a tenth of the first dose":   {&rest, 0.6, 18, "2026-09-20", false, 0.9, "2026-09-20"},
		"of a dose that has grown since":             {&planned, 9.01, 2, "2026-09-20", false, 0, ""},
		"of a dose that was larger, a tenth is left": {&planned, 8.9, 24, "2026-09-20", false, 0, ""},
	} {
		d := schedule.Down{Done: schedule.Done{Date: mustDate(t, c.day), Of: c.of}, Dose: material.DoseOf(feed20, c.down), NotDone: c.missed}
		j, due := pl.rest(l, d, c.planned)
		if due != (c.left > 0) {
			t.Errorf("%s: due is %t, %v", name, due, j.Dose.Rate)
			continue
		}
		if due && (math.Abs(float64(j.Dose.Rate-c.left)) > 1e-9 || !j.Rest || j.On != mustDate(t, c.on) || math.Abs(float64(j.Dose.N-c.left*0.2)) > 1e-9 || j.Bound != nil) {
			t.Errorf("%s: %v of it on %s, want %v on %s", name, j.Dose.Rate, j.On, c.left, c.on)
		}
	}
}

// A line that names a kind alone is the job whose day is nearest: within 60 days of one
// that is planned, within 21 of one that is presumed done, or within its window.
func TestNumberOfALine(t *testing.T) {
	for name, c := range map[string]struct {
		planned, presumed [][3]string // from, ideal, to; numbers 1, 2 … and 11, 12 …
		day               string
		want              int
	}{
		"the first of all":                       {nil, nil, "2026-10-01", 1},
		"60 days after":                          {[][3]string{{"2026-09-12", "2026-09-20", "2026-09-25"}}, nil, "2026-11-19", 1},
		"61 days after":                          {[][3]string{{"2026-09-12", "2026-09-20", "2026-09-25"}}, nil, "2026-11-20", 2},
		"60 days before":                         {[][3]string{{"2026-11-01", "2026-11-30", "2026-11-30"}}, nil, "2026-10-01", 1},
		"61 days before":                         {[][3]string{{"2026-11-01", "2026-12-01", "2026-12-01"}}, nil, "2026-10-01", 2},
		"the nearer of two":                      {[][3]string{{"2026-09-12", "2026-09-20", "2026-09-25"}, {"2026-10-12", "2026-10-20", "2026-10-25"}}, nil, "2026-10-06", 2},
		"the first of two as near":               {[][3]string{{"2026-09-12", "2026-09-20", "2026-09-25"}, {"2026-09-12", "2026-10-20", "2026-10-25"}}, nil, "2026-10-05", 1},
		"21 days after a presumed one":           {nil, [][3]string{{"2026-09-12", "2026-09-20", "2026-09-25"}}, "2026-10-11", 11},
		"22 days after":                          {nil, [][3]string{{"2026-09-12", "2026-09-20", "2026-09-25"}}, "2026-10-12", 12},
		"21 days before":                         {nil, [][3]string{{"2026-10-01", "2026-10-22", "2026-10-25"}}, "2026-10-01", 11},
		"22 days before":                         {nil, [][3]string{{"2026-10-01", "2026-10-23", "2026-10-25"}}, "2026-10-01", 12},
		"on the last day of its window":          {nil, [][3]string{{"2026-09-12", "2026-09-20", "2026-12-25"}}, "2026-12-25", 11},
		"the day after":                          {nil, [][3]string{{"2026-09-12", "2026-09-20", "2026-12-25"}}, "2026-12-26", 12},
		"a presumed one as near as a planned":    {[][3]string{{"2026-10-12", "2026-10-20", "2026-10-25"}}, [][3]string{{"2026-10-01", "2026-10-10", "2026-10-10"}}, "2026-10-15", 11},
		"a planned one nearer than a presumed":   {[][3]string{{"2026-10-12", "2026-10-19", "2026-10-25"}}, [][3]string{{"2026-10-01", "2026-10-10", "2026-10-10"}}, "2026-10-15", 1},
		"two presumed as near: the later counts": {nil, [][3]string{{"2026-10-01", "2026-10-10", "2026-10-10"}, {"2026-10-01", "2026-10-20", "2026-10-20"}}, "2026-10-15", 12},
		"… also if it was presumed first":        {nil, [][3]string{{"2026-10-01", "2026-10-20", "2026-10-20"}, {"2026-10-01", "2026-10-10", "2026-10-10"}}, "2026-10-15", 11},
	} {
		pl, l := planning(t)
		for i, w := range c.planned {
			l.planned = append(l.planned, feeding(t, l, i+1, w[0], w[1], w[2], 5))
		}
		for i, w := range c.presumed {
			j := feeding(t, l, i+11, w[0], w[1], w[2], 5)
			pl.put(l, schedule.Down{Done: schedule.Done{Date: j.On}, AreaID: "a", Kind: j.Kind, Season: j.Season, N: j.N, Dose: j.Dose, Presumed: &j})
		}
		d := schedule.Down{Done: schedule.Done{Date: mustDate(t, c.day)}, Kind: schedule.Nitrogen, Season: l.year}
		if got := pl.number(l, d); got != c.want {
			t.Errorf("%s: number %d, want %d", name, got, c.want)
		}
		d.Season--
		if got := pl.number(l, d); got != 1 {
			t.Errorf("%s: of the season before: number %d", name, got)
		}
	}
	pl, l := planning(t) // lines of one day are one job, those of the next day another
	d := schedule.Down{Done: schedule.Done{Date: mustDate(t, "2026-10-01")}, Kind: schedule.Nitrogen, Season: l.year}
	for _, want := range []struct {
		day string
		n   int
	}{{"2026-10-01", 1}, {"2026-10-01", 1}, {"2026-10-02", 2}, {"2026-10-01", 1}} {
		d.Date = mustDate(t, want.day)
		if d.N = pl.number(l, d); d.N != want.n {
			t.Errorf("%s: number %d, want %d", want.day, d.N, want.n)
		}
		pl.put(l, d)
	}
}

// Which bag was meant: what the line says itself, else the one it names, else that of
// the plan, else the only one in the shed that serves.
func TestMaterialOfALine(t *testing.T) {
	stone := material.Material{ID: "stone", Kind: material.LimeMaterial, CCE: 90}
	planned := schedule.Job{Dose: material.DoseOf(material.Material{ID: "planned"}, 1)}
	for name, c := range map[string]struct {
		shed    []material.Material
		d       schedule.Down
		planned *schedule.Job
		want    string
	}{
		"the line's own":           {[]material.Material{stone}, schedule.Down{Done: schedule.Done{Content: &material.Material{ID: "own"}, Material: "stone"}, Kind: schedule.Lime}, &planned, "own"},
		"named":                    {[]material.Material{stone, feed20}, schedule.Down{Done: schedule.Done{Material: "feed20"}, Kind: schedule.Lime}, &planned, "feed20"},
		"named, of the trade":      {nil, schedule.Down{Done: schedule.Done{Material: "trade-urea"}, Kind: schedule.Nitrogen}, nil, "trade-urea"},
		"named and not known":      {[]material.Material{stone}, schedule.Down{Done: schedule.Done{Material: "sand"}, Kind: schedule.Lime}, &planned, ""},
		"planned":                  {[]material.Material{stone}, schedule.Down{Kind: schedule.Lime}, &planned, "planned"},
		"the only one that serves": {[]material.Material{feed20, stone}, schedule.Down{Kind: schedule.Lime}, nil, "stone"},
		"one of two":               {[]material.Material{stone, {ID: "dust", Kind: material.LimeMaterial, CCE: 95}}, schedule.Down{Kind: schedule.Lime}, nil, ""},
		"none serves":              {[]material.Material{feed20}, schedule.Down{Kind: schedule.Lime}, nil, ""},
	} {
		pl, _ := planning(t, func(s *schedule.Site) { s.Materials = c.shed })
		m, ok := pl.material(c.d, c.planned)
		if m.ID != c.want || ok != (c.want != "") {
			t.Errorf("%s: %q, %t; want %q", name, m.ID, ok, c.want)
		}
	}
}

// What cannot be counted is told with its line, and the rest of the book counts.
func TestLinesThatAreNotCounted(t *testing.T) {
	site := bluegrass(t)
	p := plan(t, site,
		schedule.Done{Line: 2, Date: site.Start.AddDays(1), Area: "a", Job: "liem", Weight: 2},
		schedule.Done{Line: 3, Date: site.Start.AddDays(1), Area: "b", Job: "lime", Weight: 2},
		schedule.Done{Line: 4, Date: site.Start.AddDays(1), Area: "a", Job: "nitrogen", Material: "sand", Weight: 2},
		schedule.Done{Line: 5, Date: site.Start.AddDays(200), Area: "a", Job: "nitrogen/7", Material: "blend"},
		schedule.Done{Line: 6, Date: site.Start.AddDays(1), Area: "a", Job: "lime", Material: "stone", Weight: 20})
	for i, says := range []string{"record book line 2: ", `record book line 3: no area "b"; the line is not counted`, "record book line 4: the material is not known, so the line is not counted; name it in the material column", "record book line 5: there is no planned job to take the amount from, so the line is not counted; give the amount"} {
		if len(p.BookNotes) != 4 || !strings.Contains(strings.Join(p.BookNotes, "\n"), says) {
			t.Errorf("%d: %q, want %q", i, p.BookNotes, says)
		}
	}
	for _, e := range p.Entries {
		if e.State == schedule.Finished && e.Kind == schedule.Lime && e.Rate != 10 {
			t.Errorf("%v lb of the 20 on 2,000 sq ft", e.Rate)
		}
	}
}

// A line as it was planned changes nothing; one that differs in its bag, its amount or
// its distance from what is still to come does.
func TestAsPlannedAtItsEdges(t *testing.T) {
	pl, l := planning(t)
	planned := feeding(t, l, 1, "2026-09-12", "2026-09-20", "2026-10-20", 2)
	next := feeding(t, l, 2, "2026-10-12", "2026-10-20", "2026-11-20", 2) // quick nitrogen of 0.4 lb each: 28 days apart
	l.planned = []schedule.Job{next}
	rest := planned
	rest.Rest = true
	was, changed := planned, planned
	was.Season--
	changed.Dose.K2O *= 0.9
	sow := schedule.Job{Kind: schedule.Sow, Season: l.year, N: 1, Area: l.area, On: mustDate(t, "2026-09-20")}
	down := func(m material.Material, rate agronomy.PerThousand, day string) schedule.Down {
		return schedule.Down{Done: schedule.Done{Date: mustDate(t, day)}, AreaID: "a", Kind: schedule.Nitrogen, Season: l.year, N: 1, Dose: material.DoseOf(m, rate)}
	}
	other := feed20
	other.ID = "other"
	for name, c := range map[string]struct {
		d       schedule.Down
		planned *schedule.Job
		want    bool
	}{
		"as planned":                  {down(feed20, 2, "2026-09-20"), &planned, true},
		"six parts in a hundred less": {down(feed20, 1.88, "2026-09-20"), &planned, true},
		"seven parts less":            {down(feed20, 1.86, "2026-09-20"), &planned, false},
		"another bag":                 {down(other, 2, "2026-09-20"), &planned, false},
		"another potash":              {down(feed20, 2, "2026-09-20"), &changed, false},
		"28 days before the next":     {down(feed20, 2, "2026-09-22"), &planned, true},
		"27 days before the next":     {down(feed20, 2, "2026-09-23"), &planned, false},
		"27 days after the next":      {down(feed20, 2, "2026-11-16"), &planned, false},
		"28 days after the next":      {down(feed20, 2, "2026-11-17"), &planned, true},
		"on the day of the next":      {down(feed20, 2, "2026-10-20"), &planned, false},
		"nothing planned":             {down(feed20, 2, "2026-09-20"), nil, false},
		"a rest":                      {down(feed20, 2, "2026-09-20"), &rest, false},
		"of another season":           {func() schedule.Down { d := down(feed20, 2, "2026-09-20"); d.Season--; return d }(), &was, false},
		"sown on the day":             {schedule.Down{Done: schedule.Done{Date: sow.On}, AreaID: "a", Kind: schedule.Sow, Season: l.year, N: 1}, &sow, true},
		"sown on another day":         {schedule.Down{Done: schedule.Done{Date: sow.On.AddDays(1)}, AreaID: "a", Kind: schedule.Sow, Season: l.year, N: 1}, &sow, false},
	} {
		if got := pl.asPlanned(l, c.d, c.planned); got != c.want {
			t.Errorf("%s: %t", name, got)
		}
	}
}

// The distance that two planned jobs keep from each other does not matter to a line about
// a third: potassium goes down as planned on the day of a dressing of lime, which keeps
// 90 days from the next dressing and none from potassium.
func TestAsPlannedBesideTwoThatKeepApart(t *testing.T) {
	pl, l := planning(t)
	job := func(kind schedule.Kind, n int, on string, m material.Material, rate agronomy.PerThousand) schedule.Job {
		return schedule.Job{Kind: kind, Season: l.year, N: n, Area: l.area, On: mustDate(t, on), Dose: material.DoseOf(m, rate)}
	}
	stone := material.Material{ID: "stone", Kind: material.LimeMaterial}
	l.planned = []schedule.Job{job(schedule.Lime, 1, "2026-09-20", stone, 40), job(schedule.Lime, 2, "2027-03-20", stone, 40)}
	planned := job(schedule.Potassium, 1, "2026-09-25", material.Material{ID: "potash", Analysis: agronomy.Analysis{K2O: 50}}, 1)
	for _, day := range []string{"2026-09-20", "2026-09-25", "2027-01-10"} {
		d := schedule.Down{Done: schedule.Done{Date: mustDate(t, day)}, AreaID: "a", Kind: schedule.Potassium, Season: l.year, N: 1, Dose: planned.Dose}
		if !pl.asPlanned(l, d, &planned) {
			t.Errorf("potassium on %s was not as planned", day)
		}
	}
}

// A sample on record wants its results, unless a report is of about that day or later.
func TestResultsAreAwaited(t *testing.T) {
	for day, waits := range map[string]bool{"2026-10-01": false, "2026-10-22": false, "2026-10-23": true, "2026-12-01": true, "2026-08-01": false} {
		pl, l := planning(t)
		l.reports = []schedule.SoilReport{{Sampled: mustDate(t, "2026-10-01")}} // 21 days
		pl.awaitResults(l, schedule.Down{Done: schedule.Done{Date: mustDate(t, day)}, Kind: schedule.SoilTest, Season: 2026, N: 1})
		if len(l.left) > 0 != waits || waits && (l.left[0].ID != "a/soil-test/2026-2" || l.left[0].N != 2 || l.left[0].Season != 2026 || l.left[0].Date != mustDate(t, day) || l.left[0].Area != "a") {
			t.Errorf("%s: %+v", day, l.left)
		}
	}
}

// Only a sample that was drawn has results to wait for: not one that was missed, and no
// other job.
func TestOnlyADrawnSampleHasResults(t *testing.T) {
	for _, c := range []struct {
		job    string
		missed bool
		waits  bool
	}{{"soil-test", false, true}, {"soil-test", true, false}, {"sow", false, false}, {"overseed", false, false}, {"overseed", true, false}} {
		pl, l := planning(t, func(s *schedule.Site) { s.Areas[0].Sampled = mustDate(t, "2026-02-01") })
		pl.line(schedule.Done{Line: 2, Date: mustDate(t, "2026-10-01"), Area: "a", Job: c.job, Missed: c.missed})
		if waits := len(l.left) > 0; waits != c.waits || len(l.down.all) != 1 {
			t.Errorf("%s, missed %v: waits for results %v, %d lines down", c.job, c.missed, waits, len(l.down.all))
		}
	}
}

// What is still due of a job done in part counts with the job once, beside the last of
// its lines, however many there are.
func TestARestCountsOnce(t *testing.T) {
	pl, l := planning(t)
	rest := feeding(t, l, 1, "2026-09-12", "2026-09-20", "2026-10-20", 2)
	rest.Rest = true
	l.planned = []schedule.Job{rest}
	for day, rate := range map[string]agronomy.PerThousand{"2026-09-14": 1, "2026-09-18": 3} {
		pl.put(l, schedule.Down{Done: schedule.Done{Date: mustDate(t, day)}, AreaID: "a", Kind: schedule.Nitrogen, Season: l.year, N: 1, Dose: material.DoseOf(feed20, rate)})
	}
	pl.put(l, schedule.Down{Done: schedule.Done{Date: mustDate(t, "2026-09-19")}, AreaID: "a", Kind: schedule.Nitrogen, Season: l.year, N: 2, Dose: material.DoseOf(feed20, 4)})
	down := pl.newCase(l, schedule.NewShed(pl.site, nil)).Down
	if len(down) != 3 || down[0].Dose.Rate != 1 || down[1].Dose.Rate != 5 || down[2].Dose.Rate != 4 {
		t.Errorf("1, then 3 with the 2 still due, and 4 of another job: %+v", down)
	}
}
