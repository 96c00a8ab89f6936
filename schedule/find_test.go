package schedule

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

func ids(p *Program) string {
	var out []string
	for _, e := range p.Entries {
		out = append(out, e.ID)
	}
	for _, l := range p.LeftOut {
		out = append(out, "-"+l.ID)
	}
	return strings.Join(out, " ")
}

// An id of before there were seasons means the first season that has the job.
func TestFindOlderIDs(t *testing.T) {
	p := &Program{Entries: []Entry{{ID: "a/lime/2027-1"}, {ID: "a/lime/2026-1"}, {ID: "a/lime/2026-2"}, {ID: "b/sulfur/2026-1"}, {ID: "b/lime/2028-3"}, {ID: "site/last-safe/2026-1"}},
		LeftOut: []LeftOut{{ID: "a/lime/2025-3"}, {ID: "a/lime/2026-3"}}}
	for name, want := range map[string]string{
		"a/lime/1": "a/lime/2026-1", "a/lime/2": "a/lime/2026-2", "a/lime/3": "-a/lime/2025-3", "b/lime/3": "b/lime/2028-3", "lime/1": "a/lime/2026-1", "sulfur/1": "b/sulfur/2026-1",
		"lime/3": "!", "a/lime": "!several", "lime/2": "a/lime/2026-2", "2027-1": "a/lime/2027-1", "a/lime/4": "!no job", "b/sulfer/2026-1": "!no job \"b/sulfer/2026-1\"; there is b/sulfur/2026-1", "": "!there is a/lime/2027-1, a/lime/2026-1, a/lime/2026-2, b/sulfur/2026-1",
	} {
		e, l, err := p.Find(name)
		got := ""
		switch {
		case err != nil:
			got = "!" + err.Error()
		case e != nil:
			got = e.ID
		default:
			got = "-" + l.ID
		}
		if got != want && !(want[0] == '!' && got[0] == '!' && strings.Contains(got, want[1:])) {
			t.Errorf("%q: %s, want %s", name, got, want)
		}
	}
}

// The job that a line of the record book means: the named one, else the nearest
// within 60 days that is open, else a new one.
func TestMeant(t *testing.T) {
	c := caseIn(t, "OH", "6a", nil)
	p := &Program{Site: c.Site, Start: c.Start, Through: c.Through, Cases: []*Case{c}}
	entry := func(id, day string, state State) {
		area, k, season, _, _ := JobName(id)
		p.Entries = append(p.Entries, Entry{ID: id, Area: area, Kind: k, Season: season, Date: on(t, day), State: state})
	}
	entry("a/lime/2026-1", "2026-09-10", Planned)
	entry("a/lime/2026-2", "2026-11-10", Planned)
	entry("a/lime/2026-3", "2027-04-10", Finished)
	entry("a/nitrogen/2026-1", "2026-10-01", Missed)
	entry("a/sulfur/2027-1", "2026-10-01", Planned)
	entry("b/lime/2026-9", "2026-09-10", Planned)
	c.Down = []Down{{Kind: Potassium, Season: 2026, N: 4}, {Kind: Potassium, Season: 2025, N: 9}, {Kind: Lime, Season: 2026, N: 2}}
	for _, x := range []struct {
		area      string
		k         Kind
		season, n int
		day       string
		of, no    int
		entry     bool
	}{
		{"a", Lime, 0, 0, "2026-09-20", 2026, 1, true}, {"a", Lime, 0, 0, "2026-10-10", 2026, 1, true}, {"a", Lime, 0, 0, "2026-10-12", 2026, 2, true}, // 30 and 31 days off, 32 and 29
		{"a", Lime, 0, 0, "2026-09-01", 2026, 1, true}, {"a", Lime, 0, 0, "2027-01-09", 2026, 2, true}, {"a", Lime, 0, 0, "2027-01-10", 2026, 4, false}, // 60 and 61 days
		{"a", Lime, 2026, 2, "2026-09-10", 2026, 2, true}, {"a", Lime, 2026, 3, "2027-04-10", 2026, 3, false}, {"a", Lime, 2026, 7, "2027-04-10", 2026, 7, false}, {"a", Lime, 2027, 1, "2027-04-10", 2027, 1, false},
		{"a", Nitrogen, 0, 0, "2026-10-01", 2026, 2, false}, {"a", Potassium, 0, 0, "2026-10-01", 2026, 5, false}, {"a", Magnesium, 0, 0, "2026-10-01", 2026, 1, false}, {"a", Sulfur, 0, 0, "2026-10-01", 2026, 1, false}, {"a", Sulfur, 2027, 0, "2026-10-01", 2027, 1, true},
		{"x", Lime, 0, 0, "2026-10-01", 0, 0, false},
	} {
		of, n, e := p.Meant(x.area, x.k, x.season, x.n, on(t, x.day))
		if of != x.of || n != x.no || (e != nil) != x.entry || e != nil && e.ID != JobID(x.area, x.k, of, n) {
			t.Errorf("%s %s %d-%d on %s: %d-%d, %v; want %d-%d, %v", x.area, x.k, x.season, x.n, x.day, of, n, e, x.of, x.no, x.entry)
		}
	}
	// A start within 45 days before the warmest day belongs to the season to
	// come, and so does a line of these days.
	turn := c.Almanac.YearBegins(2026, c.Season)
	c.Site.Start = turn.AddDays(-20)
	for add, want := range map[int]int{-21: 2025, -20: 2026, -1: 2026, 0: 2026} {
		if of, _, _ := p.Meant("a", Magnesium, 0, 0, turn.AddDays(add)); of != want {
			t.Errorf("%d days from the turn: season %d, want %d", add, of, want)
		}
	}
	if got := c.SeasonBegins(2026); got != turn.AddDays(-45) {
		t.Errorf("the first season begins on %s, want %s", got, turn.AddDays(-45))
	}
	if got := c.SeasonBegins(2027); got != c.Almanac.YearBegins(2027, c.Season) {
		t.Errorf("the second season begins on %s", got)
	}
	if p.CaseOf("a") != c || p.CaseOf("b") != nil {
		t.Error("the case of an area")
	}
}

// A program cut to the season of a day, and 60 days of the next.
func TestAround(t *testing.T) {
	c := caseIn(t, "OH", "6a", nil)
	begins, next := c.Almanac.YearBegins(2026, c.Season), c.Almanac.YearBegins(2027, c.Season)
	p := &Program{Site: c.Site, Start: c.Start, Through: c.Start.AddDays(1500), Cases: []*Case{c}}
	for id, d := range map[string]Date{"before": begins.AddDays(-1), "first": begins, "of the next": next.AddDays(60), "later": next.AddDays(61)} {
		p.Entries = append(p.Entries, Entry{ID: id, Area: "a", Date: d}, Entry{ID: "site " + id, Date: d})
	}
	p.Entries = append(p.Entries, Entry{ID: "late", Area: "a", Season: 2026, Date: next.AddDays(100)}, Entry{ID: "none", Area: "", Season: 2026, Date: next.AddDays(100)})
	p.LeftOut = []LeftOut{{ID: "out", Area: "a", Season: 2026}, {ID: "out of the next", Area: "a", Season: 2027}}
	got := strings.Split(ids(p.Around(on(t, "2026-10-01"))), " -")
	names := map[string]bool{}
	for _, e := range p.Around(on(t, "2026-10-01")).Entries {
		names[e.ID] = true
	}
	for id, want := range map[string]bool{"before": false, "first": true, "of the next": true, "later": false, "site before": false, "site first": true, "site of the next": true, "site later": false, "late": true, "none": false} {
		if names[id] != want {
			t.Errorf("%s is shown %v", id, !want)
		}
	}
	if len(got) != 2 || got[1] != "out" {
		t.Errorf("left out: %v", got[1:])
	}
	if q := p.Around(Date{}); q != p {
		t.Error("no day cuts")
	}
	if q := (&Program{Entries: p.Entries}).Around(on(t, "2026-10-01")); len(q.Entries) != len(p.Entries) {
		t.Error("a program without areas is cut")
	}
	// Before the start it is the first season, and after the end the last.
	if q := p.Around(on(t, "2020-01-01")); len(q.Entries) != len(names) {
		t.Errorf("before the start: %s", ids(q))
	}
	p.Through = c.Through
	if q := p.Around(on(t, "2040-01-01")); !slices.ContainsFunc(q.Entries, func(e Entry) bool { return e.ID == "later" }) {
		t.Errorf("after the end: %s", ids(q))
	}
}

// The program as a day sees it.
func TestAsOf(t *testing.T) {
	first, second := caseIn(t, "OH", "6a", nil), caseIn(t, "OH", "6a", nil)
	first.Needs, second.Needs = []Need{{Kind: Lime, Total: 10}}, []Need{{Kind: Lime, Total: 20}}
	second.Start = on(t, "2027-03-01")
	day := on(t, "2026-10-01")
	p := &Program{Site: first.Site, Chapters: []*Case{first, second}, Areas: []AreaShown{{ID: "a"}, {ID: "z", Name: "Far"}},
		Entries: []Entry{{Kind: Lime, State: Planned, Date: day, Latest: day.AddDays(9)}, {Kind: LastSafe, State: Planned, Date: day, Latest: day}, {Kind: Lime, State: Planned, Date: day, Latest: day.AddDays(9), Rest: true}}}
	for add, want := range map[int][3]State{-1: {Planned, Planned, Planned}, 0: {Due, Due, Due}, 9: {Due, Finished, Due}, 10: {Taken, Finished, Finished}} {
		q := p.AsOf(day.AddDays(add))
		for i, s := range want {
			if q.Entries[i].State != s {
				t.Errorf("entry %d after %d days is %s, want %s", i, add, q.Entries[i].State, s)
			}
		}
	}
	if p.Entries[0].State != Planned || p.Areas[0].Name != "" {
		t.Error("the program itself is changed")
	}
	for d, total := range map[string]agronomy.PerThousand{"2020-01-01": 10, "2027-02-28": 10, "2027-03-01": 20, "2030-01-01": 20} {
		q := p.AsOf(on(t, d))
		if needs := q.Areas[0].Needs; len(needs) != 1 || needs[0].Total != total || q.Areas[0].Name != "East" || q.Areas[1].Name != "Far" {
			t.Errorf("on %s: %+v", d, q.Areas)
		}
	}
}

// What a ledger holds, worked by hand, and the law's caps of New Jersey.
func TestLedgerOfAnArea(t *testing.T) {
	c := caseIn(t, "NJ", "7a", nil)
	blend := material.Material{ID: "m", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 20, P2O5: 5, K2O: 10}, SlowShare: 0.5}
	stone := material.Material{ID: "stone", Kind: material.LimeMaterial, Magnesium: 5}
	down := func(day string, k Kind, n int, m material.Material, rate agronomy.PerThousand) Down {
		return Down{Done: Done{Date: on(t, day)}, AreaID: "a", Kind: k, Season: 2026, N: n, Dose: material.DoseOf(m, rate)}
	}
	c.Down = []Down{down("2026-10-01", Nitrogen, 2, blend, 4), down("2026-09-05", Nitrogen, 1, blend, 4), down("2026-09-10", Lime, 1, stone, 40), down("2026-07-01", Nitrogen, 9, blend, 2), down("2026-09-12", Nitrogen, 5, blend, 0)}
	taken, missed, presumed := down("2026-10-20", Potassium, 1, blend, 1), down("2026-10-21", Nitrogen, 3, blend, 4), down("2026-10-22", Nitrogen, 4, blend, 4)
	taken.Taken, missed.NotDone, presumed.Presumed = true, true, &Job{}
	c.Down = append(c.Down, taken, missed, presumed)
	c.Yearly = []YearlyN{{2026, 1.8}, {2027, 3}}
	entry := func(id, day string, rate agronomy.PerThousand, state State) Entry {
		return Entry{ID: id, Area: "a", Kind: Nitrogen, Date: on(t, day), Latest: on(t, day).AddDays(9), Dose: material.DoseOf(blend, rate), State: state}
	}
	p := &Program{Site: c.Site, Start: c.Start, Through: c.Through, Cases: []*Case{c}, BookNotes: []string{"note"}, Entries: []Entry{
		entry("a/nitrogen/2026-6", "2026-11-01", 1, Planned), entry("a/nitrogen/2026-7", "2027-04-20", 4, Planned), entry("a/nitrogen/2026-1", "2026-09-05", 4, Finished), entry("a/nitrogen/2026-8", "2026-12-01", 0, Planned), {ID: "b/nitrogen/2026-1", Area: "b", Date: c.Start, Dose: material.DoseOf(blend, 9), State: Planned}}}
	l := p.Ledger(on(t, "2026-11-20"))
	if len(l.Areas) != 1 || len(l.Notes) != 1 || l.Areas[0].Area != "a" || l.Areas[0].Name != "East" {
		t.Fatalf("%+v", l)
	}
	if v := c.Verdict(p, on(t, "2026-11-20")); v != l.Areas[0].Verdict || v == "" {
		t.Errorf("the verdict alone is %q, in the ledger %q", v, l.Areas[0].Verdict)
	}
	turn := c.Almanac.YearBegins(2026, c.Season)
	if !on(t, "2026-07-01").Before(turn) || turn.After(c.Start) {
		t.Fatalf("the turf year begins on %s", turn)
	}
	for i, want := range []struct {
		day, job, state       string
		n, p2o5, k2o, limeLb  agronomy.PerThousand
		sum                   agronomy.PerThousand
		down, feeds, newYears bool
	}{
		{"2026-07-01", "a/nitrogen/2026-9", OnRecord, 0.4, 0.1, 0.2, 0, 0.4, true, true, false},
		{"2026-09-05", "a/nitrogen/2026-1", OnRecord, 0.8, 0.2, 0.4, 0, 0.8, true, true, true},
		{"2026-09-10", "a/lime/2026-1", OnRecord, 0, 0, 0, 40, 0.8, true, false, true},
		{"2026-10-01", "a/nitrogen/2026-2", OnRecord, 0.8, 0.2, 0.4, 0, 1.6, true, true, true},
		{"2026-10-20", "a/potassium/2026-1", TakenAsDone, 0.2, 0.05, 0.1, 0, 1.8, true, true, true},
		{"2026-11-01", "a/nitrogen/2026-6", TakenAsDone, 0.2, 0.05, 0.1, 0, 2, true, true, true},
		{"2027-04-20", "a/nitrogen/2026-7", ToCome, 0.8, 0.2, 0.4, 0, 2.8, false, true, true},
	} {
		if i >= len(l.Areas[0].Lines) {
			t.Fatalf("%d lines", len(l.Areas[0].Lines))
		}
		got := l.Areas[0].Lines[i]
		if got.Date != on(t, want.day) || got.Job != want.job || got.State != want.state || got.N != want.n || got.SlowN != want.n/2 || got.P2O5 != want.p2o5 || got.K2O != want.k2o || got.Lime != want.limeLb || got.SumN != want.sum || got.Down != want.down || got.Text == "" {
			t.Errorf("line %d: %+v, want %+v", i, got, want)
		}
		if got.FeedsTo.IsZero() == want.feeds && want.feeds || !got.FeedsTo.IsZero() && !got.FeedsTo.After(got.Date) {
			t.Errorf("line %d feeds to %s", i, got.FeedsTo)
		}
	}
	if n := len(l.Areas[0].Lines); n != 7 {
		t.Errorf("%d lines", n)
	}
	limits := map[string]LedgerLimit{}
	for _, x := range l.Areas[0].Limits {
		limits[x.What] = x
	}
	nCap, _ := c.Law.NCap(c.Asked)
	soluble, _ := c.Law.SolubleCap(c.Asked)
	annual, _ := c.Law.AnnualNCap(c.Asked)
	for what, want := range map[string]LedgerLimit{
		"nitrogen wanted, year from " + turn.Short(): {Limit: 1.8, Most: 2.8, Down: 2, Passed: true},
		"nitrogen in any 12 months":                  {Limit: 4, Most: 3.2, Down: 2.4, Source: "ksu-eckert"},
		"quick nitrogen in any 30 days":              {Limit: 1, Most: 0.8, Down: 0.8, Source: "common"}, // 5 Sep and 1 Oct lie 26 days apart
		"quick nitrogen at once":                     {Limit: 0.7, Most: 0.4, Down: 0.4, Source: "md-ag-6-224"},
		"nitrogen at once, by law":                   {Limit: agronomy.PerThousand(nCap.Value), Most: 0.8, Down: 0.8, Source: nCap.Rule.Citation},
		"quick nitrogen at once, by law":             {Limit: agronomy.PerThousand(soluble.Value), Most: 0.4, Down: 0.4, Source: soluble.Rule.Citation},
		"nitrogen in any 12 months, by law":          {Limit: agronomy.PerThousand(annual.Value), Most: 3.2, Down: 2.4, Source: annual.Rule.Citation, Passed: 3.2 > annual.Value},
		"potassium (K₂O) at once":                    {Limit: 1, Most: 0.4, Down: 0.4, Source: "common"},
	} {
		got, ok := limits[what]
		near := func(a, b agronomy.PerThousand) bool { return a-b < 1e-9 && b-a < 1e-9 }
		if !ok || !near(got.Limit, want.Limit) || !near(got.Most, want.Most) || !near(got.Down, want.Down) || got.Passed != want.Passed || got.Source != want.Source {
			t.Errorf("%s: %+v, want %+v", what, got, want)
		}
		delete(limits, what)
	}
	if len(limits) != 0 {
		t.Errorf("more limits: %+v", limits)
	}
	// Cuts of the ledger: a season, and the 12 months around a day.
	if lines := p.LedgerOf(2026, on(t, "2026-11-20")).Areas[0].Lines; len(lines) != 6+1 && len(lines) != 6 {
		t.Errorf("%d lines of the season", len(lines))
	}
	if lines := p.LedgerAround(on(t, "2026-04-20")).Areas[0].Lines; len(lines) != 5 {
		t.Errorf("%d lines around 20 April 2026: %+v", len(lines), lines)
	}
	if got := (LedgerLine{N: 0.12345, Feeding: 0.9996}).rounded(); got.N != 0.123 || got.Feeding != 1 {
		t.Errorf("%+v", got)
	}
}

// The roster, and what is doubtful about it.
func TestRosterAndItsDoubts(t *testing.T) {
	day := on(t, "2026-10-01")
	entry := func(id, who string, state State) Entry {
		area, k, _, _, _ := JobName(id)
		return Entry{ID: id, Area: area, AreaName: strings.ToUpper(area), Kind: k, Who: who, Title: "do " + id, Date: day, Latest: day, State: state}
	}
	site := &Site{Crew: Crew{People: []Person{{ID: "mara", Name: "Mara", Absent: []Span{{day, day}}}, {ID: "teo", Name: "Teo"}, {ID: "finn", Name: "Finn"}},
		Who: []Assignment{{"lime", "mara"}, {"a/sulfur", "teo"}, {"b/lime/2026-1", "mara"}, {"b/lime/2025-1", "mara"}, {"magnesium", "teo"}, {"c", "teo"}}}}
	p := &Program{Site: site, Entries: []Entry{entry("a/lime/2026-1", "mara", Planned), entry("b/lime/2026-1", "mara", Planned), entry("a/nitrogen/2026-1", "", Planned), entry("a/nitrogen/2026-2", "", Planned), entry("b/nitrogen/2026-1", "", Finished), entry("b/nitrogen/2026-2", "", Missed), entry("b/potassium/2026-1", "gone", Planned), entry("site/last-safe/2026-1", "", Planned)},
		LeftOut: []LeftOut{{ID: "c/magnesium/2026-1"}}}
	r := p.Roster(day.AddDays(1))
	if len(r.People) != 3 || len(r.People[0].Jobs) != 2 || len(r.People[1].Jobs) != 0 || len(r.Nobody) != 5 || len(r.People[0].Absent) != 1 {
		t.Fatalf("%+v", r)
	}
	if j := r.People[0].Jobs[0]; j != (RosterJob{ID: "a/lime/2026-1", Date: day, Title: "do a/lime/2026-1", AreaName: "A", State: "taken"}) {
		t.Errorf("%+v", j)
	}
	if idle := r.Idle(); len(idle) != 2 || idle[0].ID != "teo" || idle[1].Name != "Finn" {
		t.Errorf("%+v", idle)
	}
	var got []string
	for _, d := range p.CrewDoubts(day) {
		got = append(got, d.Key+": "+d.Message)
		if !d.Warning || d.Hint == "" {
			t.Errorf("%+v", d)
		}
	}
	want := []string{
		"crew.who: nobody has 3 jobs: a/nitrogen and b/potassium", "crew.people.teo: Teo has no job", "crew.people.finn: Finn has no job",
		`crew.who."a/sulfur": the program has no such job`, `crew.who."b/lime/2025-1": the program has no such job`,
	}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	// Where nobody has a job, none is doubtful for having none.
	p.Entries = p.Entries[2:4]
	for _, d := range p.CrewDoubts(day) {
		if strings.Contains(d.Message, "nobody") {
			t.Errorf("%+v", d)
		}
	}
}

// What was used since the count leaves less on hand, and what may not be bought
// again is said to be short.
func TestSuppliesUsedUp(t *testing.T) {
	feed := material.Material{ID: "feed", Name: "lawn food", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 20}, Pack: 10, OnHand: 5, Price: 3.333}
	rare := material.Material{ID: "rare", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 20}, Pack: 10, OnHand: 1, NoRebuy: true}
	liquid := material.Material{ID: "liquid", Kind: material.FertilizerMaterial, Liquid: true, Density: 10, PackVolume: 2.5, Analysis: agronomy.Analysis{N: 20}}
	c := caseIn(t, "OH", "6a", func(s *Site) {
		s.Materials = []material.Material{feed, rare, liquid}
		s.Counted = map[string]Date{"feed": on(t, "2026-09-10")}
	})
	down := func(day string, of material.Material) Down {
		return Down{Done: Done{Date: on(t, day)}, Kind: Nitrogen, Dose: material.DoseOf(of, 5)} // 10 lb, a pack, on 2000 sq ft
	}
	missed, presumed := down("2026-09-20", feed), down("2026-09-20", feed)
	missed.NotDone, presumed.Presumed = true, &Job{}
	c.Down = []Down{down("2026-09-09", feed), down("2026-09-10", feed), missed, presumed, down("2026-09-20", material.Material{ID: "other"})}
	entry := func(id string, of material.Material, state State, lb agronomy.Pounds, packs float64) Entry {
		return Entry{ID: id, Area: "a", AreaName: "East", Kind: Nitrogen, Material: of.ID, Dose: material.DoseOf(of, 5), Date: on(t, "2026-10-01"), State: state, Pounds: lb, Packs: packs}
	}
	p := &Program{Site: c.Site, Cases: []*Case{c}, Entries: []Entry{entry("a/nitrogen/2026-1", feed, Taken, 10, 1), entry("a/nitrogen/2026-2", feed, Due, 40, 4), entry("a/nitrogen/2026-3", feed, Finished, 10, 1), entry("a/nitrogen/2026-4", rare, Planned, 30, 3), entry("a/nitrogen/2026-5", rare, Planned, 0, 0)}}
	p.Entries = append(p.Entries, Entry{ID: "x", Area: "nowhere", Material: "feed", State: Taken, Dose: material.DoseOf(feed, 5)})
	got := p.Supplies()
	if s := got[0]; s.OnHand != 3 || s.Packs != 4 || s.Pounds != 40 || s.Buy != 1 || s.Cost != 3.33 || s.Left != 0 || s.By != on(t, "2026-10-01") || len(s.Uses) != 1 || s.Uses[0] != (Use{"a/nitrogen/2026-2", on(t, "2026-10-01"), 40, 4}) {
		t.Errorf("%+v", s)
	}
	if s := got[1]; s.Buy != 0 || s.Cost != 0 || s.Left != 0 || s.Note != "2 packs short, and none of it is to be bought" {
		t.Errorf("%+v", s)
	}
	if s := got[2]; s.PackSize != "2.5 gal" || s.Note != "" || s.Left != 0 {
		t.Errorf("%+v", s)
	}
	p.TellSupplies()
	if len(p.InTheShed) != 1 || p.InTheShed[0] != "If no more lawn food is bought, it runs out at: nitrogen on East, 1 Oct 2026." {
		t.Errorf("%q", p.InTheShed)
	}
	p.Entries[1].ToBuy, p.Entries[1].Steps = true, nil
	if p.TellSupplies(); p.Entries[1].Steps != nil {
		t.Errorf("what is bought anyway begins with %q", p.Entries[1].Steps)
	}
	// A hundredth of a pack that may not be bought again is dust.
	for onHand, offered := range map[float64]bool{0.009: false, 0.01: true, 1: true} {
		rare.OnHand = onHand
		sh := NewShed(&Site{Materials: []material.Material{rare}}, nil)
		if (len(sh.Stock()) == 1) != offered {
			t.Errorf("%v packs: %+v", onHand, sh.Stock())
		}
	}
}
