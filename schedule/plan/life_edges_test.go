package plan

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
	"swardbook/schedule/place"
	scrule "swardbook/schedule/rule"
)

// Packs are counted as they go down, and come back when a line takes the place of what
// was presumed; what was missed draws none.
func TestPacksAreDrawnAndComeBack(t *testing.T) {
	pl, l := planning(t, func(s *schedule.Site) { s.Materials = []material.Material{feed20} })
	j := feeding(t, l, 1, "2026-09-12", "2026-09-20", "2026-10-20", 5) // 10 lb on 2,000 sq ft: a quarter of 40 lb
	presumed := schedule.Down{Done: schedule.Done{Date: j.On}, AreaID: "a", Kind: j.Kind, Season: j.Season, N: 1, Dose: j.Dose, Presumed: &j}
	near := func(want float64, what string) {
		t.Helper()
		if got := pl.used["feed20"]; math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %v packs, want %v", what, got, want)
		}
	}
	pl.put(l, presumed)
	near(0.25, "presumed")
	missed := presumed
	missed.Presumed, missed.NotDone, missed.N = nil, true, 3
	pl.put(l, missed)
	near(0.25, "and one missed")
	l.planned = []schedule.Job{feeding(t, l, 2, "2026-10-12", "2026-10-20", "2026-11-20", 2.5), {Kind: schedule.SoilTest, Area: l.area}}
	if got := pl.packs(nil)["feed20"]; math.Abs(got-0.375) > 1e-9 {
		t.Errorf("%v packs used or promised, want 0.375", got)
	}
	if got := pl.takeBack(l, presumed); got == nil || got.N != 1 || len(l.down.presumed) != 0 || len(l.down.all) != 1 {
		t.Errorf("took back %+v", got)
	}
	near(0, "taken back")
	if got := pl.takeBack(l, schedule.Down{Kind: schedule.Nitrogen, Season: l.year, N: 2}); got == nil || len(l.planned) != 1 || pl.used["feed20"] != 0 {
		t.Errorf("a planned one draws nothing: %+v", got)
	}
	if got := pl.takeBack(l, schedule.Down{Kind: schedule.Nitrogen, Season: l.year - 1, N: 1}); got != nil {
		t.Errorf("of another season: %+v", got)
	}
}

// What is down stands in order of time, lines of one day in order of the book; what one
// job brought on one day out of one bag is summed, and anything else is not.
func TestDownsAreInOrder(t *testing.T) {
	d := newDowns()
	put := func(day string, line, n int, change ...func(*schedule.Down)) {
		down := schedule.Down{Done: schedule.Done{Date: mustDate(t, day), Line: line}, Kind: schedule.Nitrogen, Season: 2026, N: n, Dose: material.DoseOf(feed20, 1)}
		for _, c := range change {
			c(&down)
		}
		d.put(down)
	}
	put("2026-10-03", 1, 1)
	put("2026-10-01", 2, 1)
	put("2026-10-02", 3, 1)
	put("2026-10-01", 4, 1)
	put("2026-10-03", 5, 4)
	var lines []int
	for _, one := range d.all {
		lines = append(lines, one.Line)
	}
	if got := [5]int(lines); got != [5]int{2, 4, 3, 1, 5} {
		t.Errorf("lines in the order %v", got)
	}
	if len(d.sums) != 4 || d.sums[0].Dose.Rate != 2 || d.sums[1].Dose.Rate != 1 || d.sums[3].N != 4 || d.last[season{schedule.Nitrogen, 2026}] != 4 {
		t.Errorf("%d sums, the first of %v lb; the highest number is %d", len(d.sums), d.sums[0].Dose.Rate, d.last[season{schedule.Nitrogen, 2026}])
	}
	base := schedule.Down{Done: schedule.Done{Date: mustDate(t, "2026-10-01")}, Kind: schedule.Nitrogen, Season: 2026, N: 1, Dose: material.DoseOf(feed20, 1)}
	for name, change := range map[string]func(*schedule.Down){
		"kind": func(d *schedule.Down) { d.Kind = schedule.LateNitrogen }, "season": func(d *schedule.Down) { d.Season++ }, "number": func(d *schedule.Down) { d.N++ }, "missed": func(d *schedule.Down) { d.NotDone = true },
		"taken": func(d *schedule.Down) { d.Taken = true }, "as planned": func(d *schedule.Down) { d.AsPlanned = true }, "presumed": func(d *schedule.Down) { d.Presumed = &schedule.Job{} },
		"bag": func(d *schedule.Down) { d.Dose.Material.ID = "x" }, "kind of bag": func(d *schedule.Down) { d.Dose.Material.Kind = material.WoodAsh }, "analysis": func(d *schedule.Down) { d.Dose.Material.Analysis.K2O++ }, "slow share": func(d *schedule.Down) { d.Dose.Material.SlowShare = 0.5 },
		"lasts": func(d *schedule.Down) { d.Dose.Material.Lasts = 8 }, "liquid": func(d *schedule.Down) { d.Dose.Material.Liquid = true }, "CCE": func(d *schedule.Down) { d.Dose.Material.CCE = 9 }, "ECCE": func(d *schedule.Down) { d.Dose.Material.ECCE = 9 },
		"sieves": func(d *schedule.Down) { d.Dose.Material.Fineness = []material.Sieve{{Mesh: 60, Passing: 75}} }, "hydrated": func(d *schedule.Down) { d.Dose.Material.Hydrated = true }, "magnesium": func(d *schedule.Down) { d.Dose.Material.Magnesium = 1 }, "sulfur": func(d *schedule.Down) { d.Dose.Material.Sulfur = 1 },
	} {
		a, b := base, base
		if !oneBag(&a, &b) {
			t.Fatal("a thing and itself")
		}
		change(&b)
		if oneBag(&a, &b) || oneBag(&b, &a) {
			t.Errorf("two that differ in %s are one", name)
		}
	}
}

// The last day of a program: that of the site, else the end of the season after the one
// that holds the day asked for, but never before a season after the start.
func TestThrough(t *testing.T) {
	pl, l := planning(t, func(s *schedule.Site) { s.Through = schedule.Date{} })
	begins := func(year int) schedule.Date { return pl.almanac.YearBegins(year, l.area.Stand.Season()) }
	if first := begins(2027); first.Month != time.July && first.Month != time.August { // the warmest day of Ohio
		t.Fatalf("the season begins on %s", first)
	}
	for today, year := range map[string]int{"2026-09-12": 2028, "2025-01-01": 2028, "2027-05-01": 2028, begins(2027).AddDays(-1).String(): 2028, begins(2027).String(): 2029, "2028-01-01": 2029} {
		got, err := Through(pl.site, mustDate(t, today))
		if want := begins(year).AddDays(-1); err != nil || got != want {
			t.Errorf("on %s: %s, %v; want %s", today, got, err, want)
		}
	}
	for _, c := range []struct{ asked, want schedule.Date }{{schedule.Date{}, begins(2028).AddDays(-1)}, {pl.site.Start.AddDays(-1), begins(2028).AddDays(-1)}, {pl.site.Start, pl.site.Start}, {mustDate(t, "2030-01-01"), mustDate(t, "2030-01-01")}} {
		p, err := newPlanner(pl.site, nil, c.asked, schedule.Kinds(), scrule.All)
		if err != nil || p.last != c.want {
			t.Errorf("asked to %s: %s, want %s", c.asked, p.last, c.want)
		}
	}
	pl.site.Through = mustDate(t, "2027-03-01")
	if p, err := newPlanner(pl.site, nil, mustDate(t, "2030-01-01"), schedule.Kinds(), scrule.All); err != nil || p.last != pl.site.Through {
		t.Errorf("the site's own last day: %s", p.last)
	}
	if got, err := Through(pl.site, mustDate(t, "2030-01-01")); err != nil || got != pl.site.Through {
		t.Errorf("the site's own last day: %s", got)
	}
	pl.site.Place.Hardiness = "99"
	pl.site.Through = schedule.Date{}
	if _, err := Through(pl.site, mustDate(t, "2030-01-01")); err == nil {
		t.Error("a place that is none has a last day")
	}
}

// A day belongs to the season of its turf year, also a day before the program: one in the
// program's first turf year belongs to its first season.
func TestSeasonOfADay(t *testing.T) {
	pl, l := planning(t)
	begins := pl.almanac.YearBegins(2026, l.area.Stand.Season())
	for _, c := range []struct {
		day  schedule.Date
		want int
	}{{pl.site.Start, 2026}, {pl.site.Start.AddDays(-1), 2026}, {begins, 2026}, {begins.AddDays(-1), 2025}, {begins.AddDays(-400), 2024}, {begins.AddDays(300), 2026}} {
		if got := pl.seasonOn(l, c.day); l.year != 2026 || got != c.want {
			t.Errorf("%s is of season %d, want %d", c.day, got, c.want)
		}
	}
	l.year, l.begins = 2027, pl.almanac.YearBegins(2027, l.area.Stand.Season())
	for _, c := range []struct {
		day  schedule.Date
		want int
	}{{l.begins, 2027}, {l.begins.AddDays(-1), 2026}, {pl.site.Start, 2026}} {
		if got := pl.seasonOn(l, c.day); got != c.want {
			t.Errorf("in season 2027 %s is of season %d, want %d", c.day, got, c.want)
		}
	}
}

// A sample that a report speaks of was taken, unless the book has one within 21 days, or
// its answer came by the start.
func TestSamplesOfReports(t *testing.T) {
	for name, c := range map[string]struct {
		sampled, received string
		line              string // of a sample on record; "" none
		change            func(*schedule.Done)
		want              bool
	}{
		"no line": {"2026-10-01", "", "", nil, true}, "answered on the first day": {"2026-08-29", "", "", nil, false}, "answered a day later": {"2026-08-30", "", "", nil, true}, "received by the start": {"2026-09-01", "2026-09-12", "", nil, false}, "received after it": {"2026-08-01", "2026-09-13", "", nil, true},
		"on record that day": {"2026-10-01", "", "2026-10-01", nil, false}, "21 days later": {"2026-10-01", "", "2026-10-22", nil, false}, "22 days later": {"2026-10-01", "", "2026-10-23", nil, true}, "21 days before": {"2026-10-22", "", "2026-10-01", nil, false}, "22 days before": {"2026-10-23", "", "2026-10-01", nil, true},
		"on record as missed":   {"2026-10-01", "", "2026-10-01", func(d *schedule.Done) { d.Missed = true }, true},
		"of another area":       {"2026-10-01", "", "2026-10-01", func(d *schedule.Done) { d.Area, d.Job = "b", "b/soil-test" }, true},
		"another job":           {"2026-10-01", "", "2026-10-01", func(d *schedule.Done) { d.Job = "lime" }, true},
		"named by its id":       {"2026-10-01", "", "2026-10-01", func(d *schedule.Done) { d.Area, d.Job = "", "a/soil-test/2026-1" }, false},
		"named by no known job": {"2026-10-01", "", "2026-10-01", func(d *schedule.Done) { d.Job = "soil-tset" }, true},
	} {
		pl, l := planning(t)
		r := schedule.SoilReport{Sampled: mustDate(t, c.sampled)}
		if c.received != "" {
			r.Received = mustDate(t, c.received)
		}
		l.reports = []schedule.SoilReport{r, {}}
		var book []schedule.Done
		if c.line != "" {
			d := schedule.Done{Date: mustDate(t, c.line), Area: "a", Job: "soil-test"}
			if c.change != nil {
				c.change(&d)
			}
			book = append(book, d)
		}
		got := pl.samples(book)
		if len(got) > 0 != c.want || c.want && (len(got) != 1 || got[0] != schedule.Done{Date: r.Sampled, Area: "a", Job: "soil-test", AsPlanned: true}) {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

// A report is too old to plan by three years after its day.
func TestStaleReport(t *testing.T) {
	_, l := planning(t)
	l.reports = []schedule.SoilReport{{Sampled: mustDate(t, "2024-05-01")}}
	for _, c := range []struct {
		known int
		from  string
		want  bool
	}{{0, "2026-09-12", false}, {1, "2026-09-12", true}, {1, "2027-04-30", true}, {1, "2027-05-01", false}, {1, "2027-06-01", false}} {
		l.known, l.from = c.known, mustDate(t, c.from)
		if day, ok := l.stale(); ok != c.want || ok && day != mustDate(t, "2027-05-01") {
			t.Errorf("%d known on %s: %s, %t", c.known, c.from, day, ok)
		}
	}
	l.reports[0].Sampled = schedule.Date{}
	if l.known = 1; true {
		if _, ok := l.stale(); ok {
			t.Error("a report without a day grows old")
		}
	}
}

// What was planned for days before an event counts as down; the rest of a job done in
// part waits while its window is open, and goes with the season.
func TestFreezeAtItsEdges(t *testing.T) {
	for name, c := range map[string]struct {
		on, to string
		rest   bool
		day    string
		ended  bool
		down   bool
		ahead  bool
	}{
		"the day before": {"2026-09-20", "2026-10-20", false, "2026-09-21", false, true, false}, "the day itself": {"2026-09-20", "2026-10-20", false, "2026-09-20", false, false, true},
		"a rest in its window": {"2026-09-20", "2026-10-20", true, "2026-10-20", false, false, true}, "a rest after it": {"2026-09-20", "2026-10-20", true, "2026-10-21", false, false, false},
		"a rest at the season's end": {"2026-09-20", "2026-10-20", true, "2026-10-01", true, true, false}, "one ahead at the season's end": {"2026-10-05", "2026-10-20", false, "2026-10-01", true, false, true},
	} {
		pl, l := planning(t)
		j := feeding(t, l, 1, "2026-09-12", c.on, c.to, 5)
		j.Rest = c.rest
		l.planned = []schedule.Job{j}
		pl.freeze(l, mustDate(t, c.day), c.ended)
		if len(l.down.all) > 0 != c.down || len(l.planned) > 0 != c.ahead {
			t.Errorf("%s: %d down, %d ahead", name, len(l.down.all), len(l.planned))
		}
		if c.down {
			if d := l.down.all[0]; d.Date != j.On || d.Presumed == nil || d.Presumed.N != 1 || d.NotDone != c.rest || d.Season != l.year || d.AreaID != "a" || d.Dose.Rate != 5 {
				t.Errorf("%s: %+v", name, d)
			}
		}
	}
}

// A job that is presumed done is due until a line or an answer of its area; a rest until
// its window closes too.
func TestOverAtItsEdges(t *testing.T) {
	_, l := planning(t)
	for _, c := range []struct {
		told string
		rest bool
		want bool
	}{{"2026-09-20", false, false}, {"2026-09-21", false, true}, {"2026-09-21", true, false}, {"2026-10-20", true, false}, {"2026-10-21", true, true}} {
		j := feeding(t, l, 1, "2026-09-12", "2026-09-20", "2026-10-20", 5)
		l.told, j.Rest = []schedule.Date{mustDate(t, c.told)}, c.rest
		if l.over(&j) != c.want {
			t.Errorf("told on %s, rest %t: over is %t", c.told, c.rest, !c.want)
		}
	}
}

// A workday says why nobody works on it, and whether the ground is frozen.
func TestWorkdays(t *testing.T) {
	pl, _ := planning(t, func(s *schedule.Site) {
		s.Crew = schedule.Crew{Days: []time.Weekday{time.Saturday}, Away: []schedule.Span{{From: mustDate(t, "2026-09-26"), To: mustDate(t, "2026-10-03")}}}
	})
	if len(pl.days) < 400 {
		t.Fatalf("%d days", len(pl.days))
	}
	for day, shut := range map[string]string{"2026-09-12": "", "2026-09-13": "days", "2026-09-26": "the crew is away from 26 Sep 2026 to 3 Oct 2026", "2026-10-03": "the crew is away from", "2026-10-10": "", "2026-10-04": "days"} {
		got := pl.days[mustDate(t, day).DaysFrom(pl.site.Start)].Shut
		if (got == "") != (shut == "") || shut != "days" && !strings.Contains(got, shut) || shut == "days" && strings.Contains(got, "away") {
			t.Errorf("%s: %q, want %q", day, got, shut)
		}
	}
	n := slices.IndexFunc(pl.almanac.Open, func(o schedule.Opening) bool { return !o.To.Before(pl.site.Start) })
	last, open := pl.almanac.Open[n].To, pl.almanac.Open[n+1].From
	for day, frozen := range map[schedule.Date]bool{pl.site.Start: false, last: false, last.Next(): true, open.AddDays(-1): true, open: false} {
		if got := pl.days[day.DaysFrom(pl.site.Start)].Frozen; got != frozen {
			t.Errorf("%s: frozen is %t", day, got)
		}
	}
	days := pl.workdays(pl.site.Start.AddDays(9))
	if len(days) != 10 {
		t.Errorf("%d days", len(days))
	}
}

// The words for what keeps a job from a day.
func TestBlockedBy(t *testing.T) {
	_, l := planning(t)
	other := feeding(t, l, 1, "2026-09-12", "2026-09-20", "2026-10-20", 5)
	p := &placement{jobs: []*schedule.Job{&other, &other}, limits: []limit{{why: "Turf should use one feeding before the next; salts add up."}},
		problem: place.Problem{PerDay: 1, Tasks: []place.Task{{Days: []int{mustDate(t, "2026-09-19").Number(), mustDate(t, "2026-09-20").Number()}}, {}}}, Answer: place.Answer{Day: []int{1, place.Left}}}
	if !p.has(0) || p.has(1) || p.on(0) != mustDate(t, "2026-09-20") {
		t.Errorf("the first is on %s", p.on(0))
	}
	for _, c := range []struct {
		cause place.Cause
		want  string
	}{
		{place.Cause{By: place.ByRoom}, "no more than 1 job a day"}, {place.Cause{By: place.ByGroup}, "done on the day of the same job in other areas"}, {place.Cause{By: place.ByStop}, "not every arrangement of the days was tried"},
		{place.Cause{By: place.ByLimit, Other: 0}, "turf should use one feeding before the next; salts add up (nitrogen, 20 Sep 2026)"}, {place.Cause{By: place.ByLimit, Other: 1}, "turf should use one feeding before the next; salts add up (nitrogen)"},
	} {
		if got := p.blockedBy(c.cause); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	if p.problem.PerDay = 2; p.blockedBy(place.Cause{By: place.ByRoom}) != "no more than 2 jobs a day" {
		t.Error(p.blockedBy(place.Cause{By: place.ByRoom}))
	}
}

// Why a job found no day: each cause once; of what the job's own rules closed, the most
// frequent first; and a reason also where no cause is known.
func TestNoDay(t *testing.T) {
	pl, l := planning(t)
	j := feeding(t, l, 1, "2026-09-12", "2026-09-20", "2026-10-20", 5)
	j.On = schedule.Date{}
	for _, c := range []struct {
		causes  []place.Cause
		blocked map[string]int
		want    string
	}{
		{nil, nil, "another job matters more"}, {[]place.Cause{{By: place.ByRoom}, {By: place.ByRoom}}, nil, "no more than 3 jobs a day"}, {nil, map[string]int{"frozen": 2, "heat": 9}, "heat; frozen"},
		{[]place.Cause{{By: place.ByRoom}, {By: place.ByGroup}}, map[string]int{"heat": 1}, "no more than 3 jobs a day, done on the day of the same job in other areas and heat"},
	} {
		p := &placement{problem: place.Problem{PerDay: 3}, Answer: place.Answer{Causes: [][]place.Cause{c.causes}}, blocked: []map[string]int{c.blocked}}
		got := pl.noDay(&j, p, 0)
		if want := "no day from 12 Sep 2026 to 20 Oct 2026 is possible: " + c.want; got.Reason != want || got.ID != "a/nitrogen/2026-1" || got.Area != "a" || got.Season != 2026 || got.N != 1 || got.Date != mustDate(t, "2026-09-12") {
			t.Errorf("%+v, want %s", got, want)
		}
	}
}

// The nitrogen of 12 months: a dose that takes it over the most waits until what lies
// before it is a year old; one that comes to the most does not.
func TestTwelveMonthsAtTheirEdges(t *testing.T) {
	for _, c := range []struct {
		down agronomy.PerThousand
		day  string // of what is down, before a dose of 1 lb on 2026-10-01
		over bool
	}{{3, "2026-09-13", false}, {3.000002, "2026-09-13", true}, {3.0000005, "2026-09-13", false}, {5, "2025-10-02", true}, {5, "2025-10-01", false}} {
		pl, l := planning(t)
		l.down.put(schedule.Down{Done: schedule.Done{Date: mustDate(t, c.day)}, AreaID: "a", Kind: schedule.Nitrogen, Season: 2026, N: 1, Dose: material.DoseOf(feed20, c.down*5)})
		l.down.put(schedule.Down{Done: schedule.Done{Date: mustDate(t, "2026-09-14")}, AreaID: "a", Kind: schedule.Nitrogen, Season: 2026, N: 2, NotDone: true, Dose: material.DoseOf(feed20, 50)})
		cs := pl.newCase(l, schedule.NewShed(pl.site, nil))
		pl.cases = []*schedule.Case{cs}
		if most, _ := cs.TwelveMonths(); most != 4 { // cool-season turf [ksu-eckert]
			t.Fatalf("at most %v lb", most)
		}
		j := feeding(t, l, 3, "2026-09-12", "2026-10-01", "2026-11-20", 5)
		j.Area, j.On = cs.Area, schedule.Date{}
		p := &placement{jobs: []*schedule.Job{&j}, problem: place.Problem{Tasks: []place.Task{{Days: []int{mustDate(t, "2026-10-01").Number()}, Cost: []int64{0}}}}, Answer: place.Answer{Day: []int{0}}, blocked: make([]map[string]int, 1), waits: map[int]string{}}
		i, until, why, over := pl.overTwelve(p)
		if over != c.over || over && (i != 0 || until != mustDate(t, c.day).AddDays(365) || !strings.Contains(why, "no more than 4 lb N per 1,000 sq ft in any 12 months: cool-season lawns need no more")) {
			t.Errorf("%v lb on %s: over is %t, job %d until %s: %s", c.down, c.day, over, i, until, why)
		}
		p.problem.Tasks[0].Fixed = true
		if _, _, _, over = pl.overTwelve(p); over {
			t.Errorf("%v lb on %s: what stands cannot wait", c.down, c.day)
		}
	}
	p := &placement{problem: place.Problem{Tasks: []place.Task{{Days: []int{10, 11, 12, 13}, Cost: []int64{1, 2, 3, 4}}}}, blocked: make([]map[string]int, 1), waits: map[int]string{}}
	p.wait(0, schedule.FromNumber(12), "law")
	if task := p.problem.Tasks[0]; len(task.Days) != 2 || task.Days[0] != 12 || task.Cost[0] != 3 || p.blocked[0]["law"] != 2 || p.waits[0] != "law" {
		t.Errorf("%+v, %v", task, p.blocked)
	}
	if p.wait(0, schedule.FromNumber(13), "law"); p.blocked[0]["law"] != 3 {
		t.Errorf("%v days closed, want 3", p.blocked[0]["law"])
	}
}

// An area's life begins in the season of the site's first day; where its sowing is still
// to come, in the season of the day that the sowing gets.
func TestBeginOfALife(t *testing.T) {
	for name, c := range map[string]struct {
		seeded, sown string
		year         int
	}{"established": {"", "", 2026}, "sown before": {"2025-09-01", "", 2026}, "to be sown": {"2027-09-01", "", 2027}, "put off by a year": {"2026-10-20", "2027-09-01", 2027}, "no day was found": {"2026-10-20", "0", 2026}} {
		pl, _ := planning(t, func(s *schedule.Site) { s.Through = schedule.Date{} })
		a := &pl.site.Areas[0]
		if c.seeded != "" {
			a.Seeded = mustDate(t, c.seeded)
		}
		if c.sown == "0" {
			pl.sown["a"] = schedule.Date{}
		} else if c.sown != "" {
			pl.sown["a"] = mustDate(t, c.sown)
		}
		pl.almanac = schedule.NewAlmanac(must(pl.site.Place.Year()), pl.site.Start, mustDate(t, "2029-01-01"))
		l := pl.begin(a)
		if l.year != c.year || l.begins != pl.site.Start || l.from != pl.site.Start || l.ends != pl.almanac.YearBegins(c.year+1, a.Stand.Season()).AddDays(-1) || l.known != 0 || len(l.reports) != 1 || l.area != a {
			t.Errorf("%s: season %d, from %s to %s", name, l.year, l.begins, l.ends)
		}
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// The planner's days reach far enough to date a sowing: to 400 days after the season that
// holds the last day, or a later line, sample or sowing.
func TestHowFarThePlannerLooks(t *testing.T) {
	season := agronomy.Cool
	for name, c := range map[string]struct {
		book   []schedule.Done
		change func(*schedule.Site)
		year   int // the turf year whose first day the 400 days are counted from
	}{
		"the last day":         {nil, func(s *schedule.Site) { s.Through = s.Start }, 2027},
		"a line after it":      {[]schedule.Done{{Date: mustDate(t, "2028-03-01")}}, func(s *schedule.Site) { s.Through = s.Start }, 2028},
		"a sample after it":    {nil, func(s *schedule.Site) { s.Through, s.Areas[0].Sampled = s.Start, mustDate(t, "2029-03-01") }, 2029},
		"a sowing after it":    {nil, func(s *schedule.Site) { s.Through, s.Areas[0].Seeded = s.Start, mustDate(t, "2029-09-01") }, 2030},
		"a sowing long before": {nil, func(s *schedule.Site) { s.Through, s.Areas[0].Seeded = s.Start, mustDate(t, "2020-09-01") }, 2027},
	} {
		site := bluegrass(t)
		c.change(site)
		pl, err := newPlanner(site, c.book, schedule.Date{}, schedule.Kinds(), scrule.All)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := pl.site.Start.AddDays(len(pl.days)-1), pl.almanac.YearBegins(c.year, season).AddDays(400); got != want {
			t.Errorf("%s: to %s, want %s", name, got, want)
		}
	}
}

// What is left of a job done in part is placed anew in what is still open of its windows,
// and described by what is left; with no window open it is placed no more.
func TestRestsAtTheirEdges(t *testing.T) {
	for name, c := range map[string]struct {
		from        string
		rest        bool
		first, best string // of the first window; "" none
		windows     int
	}{
		"before the window": {"2026-09-12", true, "2026-09-15", "2026-09-20", 2}, "within it": {"2026-09-18", true, "2026-09-18", "2026-09-20", 2}, "past the best day": {"2026-09-25", true, "2026-09-25", "2026-09-25", 2},
		"on its last day": {"2026-10-20", true, "2026-10-20", "2026-10-20", 2}, "in the next window": {"2026-10-21", true, "2027-04-01", "2027-04-10", 1}, "past all": {"2027-05-02", true, "", "", 0}, "no rest": {"2026-09-12", false, "", "", 0},
	} {
		pl, l := planning(t)
		j := feeding(t, l, 1, "2026-09-15", "2026-09-20", "2026-10-20", 5) // 10 lb on 2,000 sq ft
		j.Windows = append(j.Windows, schedule.Window{Span: schedule.Span{From: mustDate(t, "2027-04-01"), To: mustDate(t, "2027-05-01")}, Ideal: mustDate(t, "2027-04-10")})
		j.Rest, j.Title, j.Steps = c.rest, "the whole", []string{"the whole"}
		l.planned, l.from = []schedule.Job{j}, mustDate(t, c.from)
		cs := pl.newCase(l, schedule.NewShed(pl.site, nil))
		got := l.rests(cs)
		if len(got) > 0 != (c.first != "") {
			t.Errorf("%s: %d jobs", name, len(got))
			continue
		}
		if c.first != "" && (len(got[0].Windows) != c.windows || got[0].Windows[0].From != mustDate(t, c.first) || got[0].Windows[0].Ideal != mustDate(t, c.best) || !got[0].On.IsZero() || !strings.Contains(got[0].Title, "10 lb") || len(got[0].Steps) == 0 || got[0].Steps[0] == "the whole") {
			t.Errorf("%s: %+v", name, got[0])
		}
		if l.planned[0].Windows[0].From != mustDate(t, "2026-09-15") || l.planned[0].On.IsZero() {
			t.Errorf("%s: the job that stands was changed", name)
		}
	}
}
