package plan

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/law"
	scrule "swardbook/schedule/rule"
)

// cells lists every state and half-zone of the climate table.
func cells(t testing.TB) [][2]string {
	t.Helper()
	f, err := os.Open("../../climate/data/hardiness.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out [][2]string
	for _, r := range rows[1:] {
		if r[0] != "*" && r[1] != "*" {
			out = append(out, [2]string{r[0], r[1]})
		}
	}
	return out
}

// situation is one way to start: the day, and when the stand was or will be
// sown, in days from it.
type situation struct {
	name   string
	start  string
	seeded int // 0 established
	soil   func() *agronomy.Report
	book   []schedule.Done
	crew   schedule.Crew
	over   int // when it is sown over, in days from the start; 0 not
}

func sour() *agronomy.Report {
	return &agronomy.Report{Depth: 4, Method: agronomy.Mehlich3, PH: 4.8, Texture: agronomy.Loam, CEC: 9,
		Phosphorus: agronomy.Reading{Given: true, PPM: 10}, Potassium: agronomy.Reading{Given: true, PPM: 30},
		Magnesium: agronomy.Reading{Given: true, PPM: 40}}
}

func chalky() *agronomy.Report {
	return &agronomy.Report{Depth: 4, Method: agronomy.Olsen, PH: 7.8, LowerPH: true, Texture: agronomy.SandyLoam, CEC: 7, Sodium: agronomy.Reading{Given: true, PPM: 320},
		Phosphorus: agronomy.Reading{Given: true, PPM: 8}, Potassium: agronomy.Reading{Given: true, PPM: 90}}
}

func none() *agronomy.Report { return nil }

var situations = []situation{
	{"established, September", "2026-09-12", 0, sour, nil, schedule.Crew{}, 0},
	{"established, no report, March", "2026-03-01", 0, none, nil, schedule.Crew{}, 0},
	{"young, September", "2026-09-12", -19, sour, nil, schedule.Crew{}, 0},
	{"to be sown, July", "2026-07-01", 55, chalky, nil, schedule.Crew{}, 0},
	{"to be sown, too late", "2026-10-25", 10, sour, nil, schedule.Crew{}, 0},
	{"established, midwinter", "2026-12-20", 0, chalky, nil, schedule.Crew{}, 0},
	{"young in spring", "2026-05-20", -30, none, nil, schedule.Crew{}, 0},
	{"half the lime and twice the nitrogen down", "2026-09-01", 0, sour, []schedule.Done{
		{Line: 2, Date: schedule.Date{Year: 2026, Month: 9, Day: 9}, Area: "a", Job: "lime", Share: 0.5},
		{Line: 3, Date: schedule.Date{Year: 2026, Month: 9, Day: 30}, Area: "a", Job: "nitrogen", Share: 2},
		{Line: 4, Date: schedule.Date{Year: 2026, Month: 10, Day: 2}, Area: "a", Job: "potassium", Missed: true},
	}, schedule.Crew{}, 0},
	{name: "leap year", start: "2028-02-29", soil: sour},
	{name: "lime and twice the nitrogen down just before the start", start: "2026-09-03", soil: sour, book: []schedule.Done{
		{Line: 2, Date: schedule.Date{Year: 2026, Month: 8, Day: 20}, Area: "a", Job: "nitrogen", Material: "blend", Weight: 14},
		{Line: 3, Date: schedule.Date{Year: 2026, Month: 9, Day: 1}, Area: "a", Job: "lime", Material: "stone", Weight: 30},
	}},
	{name: "one job a Saturday, with a month away", start: "2026-08-20", soil: sour, crew: schedule.Crew{Days: []time.Weekday{time.Saturday}, JobsPerDay: 1,
		Away: []schedule.Span{{From: schedule.Date{Year: 2026, Month: 9, Day: 20}, To: schedule.Date{Year: 2026, Month: 10, Day: 18}}}}},
	{name: "to be sown over, August", start: "2026-08-10", soil: sour, over: 26},
}

func (s situation) site(t testing.TB, state, zone, grass string) *schedule.Site {
	t.Helper()
	start, err := schedule.ParseDate(s.start)
	if err != nil {
		t.Fatal(err)
	}
	g, ok := agronomy.LookupGrass(grass)
	if !ok {
		t.Fatalf("no grass %q", grass)
	}
	a := schedule.Area{ID: "a", Name: "Test plot", Size: 2000, Stand: agronomy.Stand{{Grass: g, Percent: 100}},
		Texture: agronomy.Loam, Care: nutrient.HighCare, Soil: s.soil()}
	if s.seeded != 0 {
		a.Seeded = start.AddDays(s.seeded)
	}
	if s.over != 0 {
		a.Overseed = start.AddDays(s.over)
	}
	if a.Soil != nil {
		a.Sampled = start.AddDays(-60)
	}
	return &schedule.Site{ID: "laws", Title: "Laws", Start: start, Through: start.AddDays(364),
		Place: climate.Place{State: state, Hardiness: zone}, Areas: []schedule.Area{a}, Crew: s.crew,
		Materials: []material.Material{
			{ID: "stone", Kind: material.LimeMaterial, CCE: 90, Pack: 40, OnHand: 2},
			{ID: "blend", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 24, P2O5: 2, K2O: 8}, SlowShare: 0.35, Lasts: 8, Pack: 40, OnHand: 1},
		}}
}

// product runs over the whole product of states, half-zones, grasses and
// situations, or over a shard of it: "3/8" is the third of eight. Places, grasses
// and situations are dealt out in turn, so that a shard holds every pair of them
// as long as there are no more shards than grasses.
func product(t testing.TB, shard string, visit func(cell [2]string, grass string, s situation)) (programs int) {
	t.Helper()
	var k, of int
	if n, err := fmt.Sscanf(shard, "%d/%d", &k, &of); n != 2 || err != nil || k < 1 || k > of {
		t.Fatalf("shard %q: write 3/8 for the third of eight", shard)
	}
	for c, cell := range cells(t) {
		for g, grass := range agronomy.GrassNames() {
			for i, s := range situations {
				if (c+g+i)%of == k%of {
					visit(cell, grass, s)
					programs++
				}
			}
		}
	}
	return programs
}

// fairSample is the shard that go test plans by itself: it has every situation in
// every place and on every grass. LAWS_SHARD asks for another; 1/1 is the whole
// product, which .ci/run plans.
const fairSample = "1/12"

// TestLawsOfTheProgram plans the product and holds the programs to the laws. One
// of them is that the days are proven best within the steps that place counts.
func TestLawsOfTheProgram(t *testing.T) {
	var mu sync.Mutex
	var wait sync.WaitGroup
	free := make(chan bool, runtime.GOMAXPROCS(0))
	programs := product(t, cmp.Or(os.Getenv("LAWS_SHARD"), fairSample), func(cell [2]string, grass string, s situation) {
		free <- true
		wait.Go(func() {
			defer func() { <-free }()
			site := s.site(t, cell[0], cell[1], grass)
			p, err := Program(site, s.book, schedule.Date{})
			bad := []string{}
			if err != nil {
				bad = append(bad, err.Error())
			} else {
				bad = broken(t, site, p)
			}
			mu.Lock()
			defer mu.Unlock()
			for _, b := range bad {
				t.Errorf("%s %s, %s, %s: %s", cell[0], cell[1], grass, s.name, b)
			}
		})
	})
	wait.Wait()
	t.Logf("%d programs", programs)
}

// TestFairSample holds the sample to its word: every place with every situation,
// every grass with every situation.
func TestFairSample(t *testing.T) {
	pairs := map[[2]string]bool{}
	product(t, fairSample, func(cell [2]string, grass string, s situation) {
		pairs[[2]string{cell[0] + " " + cell[1], s.name}] = true
		pairs[[2]string{grass, s.name}] = true
	})
	if want := (len(cells(t)) + len(agronomy.GrassNames())) * len(situations); len(pairs) != want {
		t.Errorf("%d pairs of %d", len(pairs), want)
	}
}

// TestCrowdedAutumn plans a lawn on which three jobs of potassium and the nitrogen
// want the same 60 days of autumn: on the best days one of them is in spring, which a
// search that tries one day after the other finds too late.
func TestCrowdedAutumn(t *testing.T) {
	site := situations[0].site(t, "MO", "7a", "fine fescue")
	pl, err := newPlanner(site, nil, schedule.Date{}, schedule.Kinds(), scrule.All)
	if err != nil {
		t.Fatal(err)
	}
	l := pl.begin(&site.Areas[0])
	l.known = len(l.reports)
	_, p := pl.settle([]*life{l})
	if p.Stopped || p.Contested || p.Steps > 100_000 {
		t.Errorf("stopped %v, contested %v, %d steps", p.Stopped, p.Contested, p.Steps)
	}
	carried := 0
	for i, j := range p.jobs {
		if j.Kind == schedule.Potassium && p.has(i) && !j.Windows[0].Has(p.on(i)) {
			carried++
		}
	}
	if carried != 1 {
		t.Errorf("%d jobs of potassium carried over, not 1", carried)
	}
}

// broken lists the laws a program breaks.
func broken(t testing.TB, site *schedule.Site, p *schedule.Program) []string {
	var bad []string
	say := func(format string, args ...any) { bad = append(bad, fmt.Sprintf(format, args...)) }
	year, err := site.Place.Year()
	if err != nil {
		t.Fatal(err)
	}
	ids := map[string]bool{}
	bad = append(bad, brokenLedger(p)...)
	bad = append(bad, brokenBefore(p)...)
	bad = append(bad, brokenCrew(site, p)...)
	bad = append(bad, brokenOverseeding(site, p)...)
	if slices.ContainsFunc(p.Assumptions, func(a string) bool { return strings.Contains(a, "the search stopped") }) {
		say("the days are not proven best")
	}
	for i := range p.Entries {
		e := &p.Entries[i]
		if ids[e.ID] || ids[e.UID] {
			say("%s: the id is not its own", e.ID)
		}
		ids[e.ID], ids[e.UID] = true, true
		if e.Date.Before(site.Start) || e.Date.After(site.Through) {
			say("%s on %s: outside the program", e.ID, e.Date)
		}
		if e.State == schedule.Planned && (e.Date.Before(e.Earliest) || e.Date.After(e.Latest)) {
			say("%s on %s: outside its window %s to %s", e.ID, e.Date, e.Earliest, e.Latest)
		}
		if e.Title == "" || e.Summary == "" || len(e.Why) == 0 || len(e.BoundBy) == 0 && e.State == schedule.Planned {
			say("%s: a word is missing", e.ID)
		}
		if len([]rune(e.Title)) > schedule.TitleLength {
			say("%s: title %q is too long", e.ID, e.Title)
		}
		if e.Dose.Rate == 0 || e.State != schedule.Planned {
			continue
		}
		bad = append(bad, brokenDose(site, year, e)...)
		for k := range p.Entries[:i] {
			bad = append(bad, brokenPair(&p.Entries[k], e)...)
		}
	}
	for _, l := range p.LeftOut {
		if ids[l.ID] {
			say("%s: left out, and not", l.ID)
		}
		ids[l.ID] = true
		if l.Reason == "" {
			say("%s: left out without a reason", l.ID)
		}
		// A dose is not left out because other feedings leave it no day: fewer doses are
		// planned then. But where a cap on 12 months holds, fewer and larger ones can
		// bring even less, so a dose may be left out.
		if l.Kind == schedule.Nitrogen && strings.HasPrefix(l.Reason, "no day from ") && strings.Contains(l.Reason, "one feeding before the next") && !strings.Contains(l.Reason, "in any 12 months") {
			say("%s: planned, though other feedings leave it no day: %s", l.ID, l.Reason)
		}
		if !l.CarriedTo.IsZero() && l.CarriedTo.Before(site.Start) {
			say("%s: carried back to %s", l.ID, l.CarriedTo)
		}
	}
	return append(bad, brokenSums(p)...)
}

// brokenDose holds one application to the caps, the law of the day and the
// ground.
func brokenDose(site *schedule.Site, year *climate.Year, e *schedule.Entry) []string {
	var bad []string
	say := func(format string, args ...any) { bad = append(bad, e.ID+": "+fmt.Sprintf(format, args...)) }
	if e.N > 1+1e-9 || e.N-e.SlowN > 0.7+1e-9 {
		say("%.3f lb N, %.3f of it quick", e.N, e.N-e.SlowN)
	}
	if e.K2O > 1+1e-9 {
		say("%.3f lb K2O at once", e.K2O)
	}
	if e.Kind == schedule.Lime && !slices.ContainsFunc(e.Why, func(r schedule.Reason) bool { return r.Source == "psu-establish, psu-report-notes" }) && e.Rate > 50+1e-9 {
		say("%.1f lb of lime at once", e.Rate)
	}
	if g := year.Ground(); g.Kind != climate.GroundNever {
		// From the day the soil falls through 40 °F, less a week, until it rises through it.
		for _, ahead := range []int{0, 6} {
			if x := year.SoilX(1.968, e.Date.AddDays(ahead).DayOfYear()); x < 39.5 {
				say("%s: soil at %.1f °F within %d days", e.Date, float64(x), ahead)
			}
		}
	}
	a := &site.Areas[0]
	q := law.Question{State: site.Place.State, Date: law.MonthDay{Month: e.Date.Month, Day: e.Date.Day},
		N: float64(e.N), SolubleN: float64(e.N - e.SlowN), P2O5: float64(e.P2O5), K2O: float64(e.K2O),
		SlowShare: e.Dose.Material.SlowShare, P2O5Percent: float64(e.Dose.Material.Analysis.P2O5),
		WaterFeet: law.Unknown, ReportAgeMonths: law.Unknown, Grass: a.Stand[0].Grass.Name, Liquid: e.Dose.Material.Liquid}
	if !a.Seeded.IsZero() {
		q.Turf = law.New
	}
	if a.Soil != nil {
		q.ReportAgeMonths = schedule.Months(a.Sampled, e.Date)
		q.Report = law.Enough
		if n, err := nutrient.PhosphorusNeed(*a.Soil, site.Place.State, false); err == nil && n.Year > 0 {
			q.Report = law.Low
		}
	}
	if e.Kind == schedule.Lime || e.Kind == schedule.Sulfur {
		q.N, q.SolubleN, q.P2O5, q.K2O = 0, 0, 0, 0
	}
	answer, err := law.Ask(q)
	if err != nil {
		say("%v", err)
	} else if answer.Verdict == law.No {
		say("%s: unlawful: %s", e.Date, answer.Deciding[0])
	}
	return bad
}

// brokenPair holds two applications to their distance and to 30 days of quick
// nitrogen.
func brokenPair(a, b *schedule.Entry) []string {
	if a.Area != b.Area || a.Dose.Rate == 0 {
		return nil
	}
	var bad []string
	days := b.Date.DaysFrom(a.Date)
	x := (&schedule.Job{Kind: a.Kind, Dose: a.Dose}).Things()
	y := (&schedule.Job{Kind: b.Kind, Dose: b.Dose}).Things()
	tilled := slices.ContainsFunc(b.Why, func(r schedule.Reason) bool { return r.Source == "psu-establish, psu-report-notes" }) || a.Kind == schedule.Lime && b.Kind == schedule.Starter
	if r, ok := nutrient.Between(x, y, tilled); ok && days < r.Days {
		bad = append(bad, fmt.Sprintf("%s on %s and %s on %s: %d days, not %d", a.ID, a.Date, b.ID, b.Date, days, r.Days))
	}
	if quick := a.N - a.SlowN + b.N - b.SlowN; days < 30 && a.N > 0 && b.N > 0 && quick > 1+1e-9 {
		bad = append(bad, fmt.Sprintf("%s and %s: %.2f lb quick N in %d days", a.ID, b.ID, quick, days))
	}
	return bad
}

// brokenLedger holds the program to every limit of the ledger, over any run of
// days: what is planned may not pass one that what is down has not passed.
func brokenLedger(p *schedule.Program) []string {
	var bad []string
	if slices.ContainsFunc(p.Entries, func(e schedule.Entry) bool { return e.State == schedule.Finished }) {
		return nil // the limits hold what is planned, not what was done
	}
	for _, c := range p.Cases {
		for _, l := range c.Limits(c.Applications(p, schedule.Date{})) {
			if l.Passed && l.Down <= l.Limit {
				bad = append(bad, fmt.Sprintf("%s: %.3f against %.3f", l.What, float64(l.Most), float64(l.Limit)))
			}
		}
	}
	return bad
}

// brokenBefore holds the program to its distance from what went down before
// its start.
func brokenBefore(p *schedule.Program) []string {
	var bad []string
	for _, c := range p.Cases {
		for _, d := range c.Down {
			for i := range p.Entries {
				if e := &p.Entries[i]; d.Date.Before(p.Start) && d.Dose.Rate > 0 && e.Area == d.AreaID && e.State == schedule.Planned && e.Dose.Rate > 0 {
					was := schedule.Entry{ID: "before the start, " + d.Kind.String(), Kind: d.Kind, Area: d.AreaID, Date: d.Date, Dose: d.Dose, N: d.Dose.N, SlowN: d.Dose.SlowN}
					bad = append(bad, brokenPair(&was, e)...)
				}
			}
		}
	}
	return bad
}

// brokenCrew holds the program to the crew's days, absences and jobs per day.
func brokenCrew(site *schedule.Site, p *schedule.Program) []string {
	var bad []string
	jobs := map[schedule.Date]int{}
	for _, e := range p.Entries {
		if e.Kind.Notice() || e.State != schedule.Planned || e.Note != "" {
			continue
		}
		jobs[e.Date]++
		if _, away := site.Crew.AwayOn(e.Date); away || !site.Crew.Works(e.Date) || site.Crew.JobsPerDay > 0 && jobs[e.Date] > site.Crew.JobsPerDay {
			bad = append(bad, fmt.Sprintf("%s on %s: not the crew's day, or one job too many", e.ID, e.Date))
		}
	}
	return bad
}

// TestDoingAsPlannedChangesNothing records each job as planned on its day, one
// after the other: what is still to come must keep its material and amount,
// and no job may appear, vanish or be left out. A day may move, as what is down can no
// longer make room for other jobs, and as a sample that was taken waits for its results.
func TestDoingAsPlannedChangesNothing(t *testing.T) {
	for _, i := range []int{0, 2, 3, 6} {
		s := situations[i]
		for _, cell := range [][3]string{{"OH", "6a", "tall fescue"}, {"MN", "4b", "kentucky bluegrass"}, {"OH", "6a", "bermudagrass"}, {"GA", "8a", "bermudagrass"}, {"FL", "10a", "bahiagrass"}, {"FL", "10b", "bermudagrass"}} {
			site := s.site(t, cell[0], cell[1], cell[2])
			p := plan(t, site)
			var book []schedule.Done
			for k, e := range p.Entries {
				if e.Area == "" {
					continue
				}
				book = append(book, schedule.Done{Line: k + 2, Date: e.Date, Area: e.Area, Job: e.ID, AsPlanned: true})
			}
			for n := 1; n <= len(book); n += 3 {
				for _, c := range schedule.Compare(p, plan(t, site, book[:n]...)) {
					if c.What != "changed" && c.What != "moved" && c.What != "no longer left out" && !strings.Contains(c.Text, "enter its results") {
						t.Errorf("%s, %s: after %s, %s %s: %s", cell, s.name, book[n-1].Job, c.ID, c.What, c.Text)
					}
				}
			}
		}
	}
}

// brokenSums holds what is planned and down to what is wanted: no more, and no less
// without saying so.
func brokenSums(p *schedule.Program) []string {
	var bad []string
	left := map[schedule.Kind]bool{}
	for _, l := range p.LeftOut {
		left[l.Kind] = true
	}
	left[schedule.Nitrogen] = left[schedule.Nitrogen] || left[schedule.LateNitrogen]
	for i, a := range p.Areas {
		sum := map[schedule.Kind]agronomy.PerThousand{}
		var doneP agronomy.PerThousand
		over := map[schedule.Kind]bool{}
		var told schedule.Date // the day of the last line
		for _, d := range p.Cases[i].Down {
			if d.Line > 0 {
				told = schedule.Later(told, d.Date)
			}
		}
		for _, e := range p.Entries {
			if e.Area != a.ID {
				continue
			}
			sum[schedule.Nitrogen] += e.N
			sum[schedule.Phosphorus] += e.P2O5
			sum[schedule.Potassium] += e.K2O
			if e.Kind == schedule.Lime {
				sum[schedule.Lime] += e.Rate
			}
			over[e.Kind] = over[e.Kind] || e.State == schedule.Finished
			if e.State == schedule.Finished || e.Date.Before(told) { // on record, or counted as done
				doneP += e.P2O5
			}
		}
		for _, d := range p.Cases[i].Down {
			if d.Date.Before(p.Start) { // the user's own choice: only what follows it is held to the ledger's limits
				over[d.Kind] = true
				sum[schedule.Nitrogen] += d.Dose.N
				sum[schedule.Potassium] += d.Dose.K2O
				sum[schedule.Phosphorus] += d.Dose.P2O5
				if d.Kind == schedule.Lime {
					sum[schedule.Lime] += d.Dose.Rate
				}
			}
		}
		for _, kind := range []schedule.Kind{schedule.Lime, schedule.Phosphorus, schedule.Potassium, schedule.Nitrogen} {
			var want agronomy.PerThousand
			known := false
			for _, n := range wanted(p, a, kind) {
				want += n.Total
				known = true
			}
			if !known {
				continue
			}
			tolerance := max(2*schedule.LeastDose, want/100)
			if kind == schedule.Lime {
				tolerance = 5.1
			}
			if kind == schedule.Phosphorus && doneP > want { // a feeding that went down double can have brought it all, and no more follows
				want = doneP
			}
			if sum[kind] > want+tolerance && !over[kind] && kind != schedule.Potassium {
				bad = append(bad, fmt.Sprintf("%s: %.2f planned, %.2f wanted", kind, sum[kind], want))
			}
			if sum[kind] < want-tolerance && !left[kind] && !(kind == schedule.Phosphorus && (left[schedule.Starter] || left[schedule.Nitrogen])) && !(kind == schedule.Potassium && (left[schedule.Starter] || left[schedule.Nitrogen])) {
				bad = append(bad, fmt.Sprintf("%s: %.2f of %.2f planned and not a word about the rest", kind, sum[kind], want))
			}
		}
	}
	return bad
}

// wanted gives the needs of a kind: what a report asks for is wanted once, nitrogen
// in each season.
func wanted(p *schedule.Program, a schedule.AreaShown, kind schedule.Kind) (out []schedule.Need) {
	needs := a.Needs
	if kind == schedule.Nitrogen {
		needs = nil
		last := map[int]*schedule.Case{}
		for _, c := range p.Chapters {
			if c.Area.ID == a.ID {
				last[c.Year] = c
			}
		}
		for _, c := range last {
			needs = append(needs, c.Needs...)
		}
	}
	for _, n := range needs {
		if n.Kind == kind {
			out = append(out, n)
		}
	}
	return out
}

// TestSameBytesTwice plans twice and compares what is written.
func TestSameBytesTwice(t *testing.T) {
	for i, s := range situations {
		site := s.site(t, "OH", "6a", agronomy.GrassNames()[i%len(agronomy.GrassNames())])
		var out [2][]byte
		for k := range out {
			p, err := Program(site, s.book, schedule.Date{})
			if err != nil {
				t.Fatal(err)
			}
			if out[k], err = schedule.EncodeJSON(p); err != nil {
				t.Fatal(err)
			}
		}
		if !bytes.Equal(out[0], out[1]) {
			t.Errorf("%s: not the same bytes", s.name)
		}
	}
}

// TestEveryJobIsAccountedFor compares what the rules proposed with what the
// program says.
func TestEveryJobIsAccountedFor(t *testing.T) {
	for _, s := range situations {
		for _, cell := range [][2]string{{"OH", "6a"}, {"MN", "4b"}, {"GA", "8a"}, {"FL", "10a"}, {"MD", "7a"}} {
			site := s.site(t, cell[0], cell[1], "tall fescue")
			site.Crew = schedule.Crew{Days: []time.Weekday{time.Saturday}, JobsPerDay: 1}
			p, err := Program(site, s.book, schedule.Date{})
			if err != nil {
				t.Fatal(err)
			}
			told := map[string]bool{}
			for _, e := range p.Entries {
				told[e.ID] = true
			}
			for _, l := range p.LeftOut {
				told[l.ID] = true
			}
			last := map[int]*schedule.Case{}
			for _, c := range p.Chapters {
				last[c.Year] = c
			}
			for _, c := range last {
				for _, j := range scrule.Propose(c, scrule.All).Jobs {
					if j.Season = c.Year; !told[j.ID()] {
						t.Errorf("%s %s: %s is neither planned nor left out", cell[0], s.name, j.ID())
					}
				}
			}
		}
	}
}

// TestCostOfADayIsBounded guards the search's bound on the cost of a day.
func TestCostOfADayIsBounded(t *testing.T) {
	for _, k := range schedule.Kinds() {
		if most := k.Of().Weight + schedule.CarryCost*10; most >= 1000 || math.IsNaN(most) {
			t.Errorf("%s: a day may cost %f", k, most)
		}
	}
}
