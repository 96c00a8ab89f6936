package plan

import (
	"slices"
	"strings"
	"testing"
	"time"

	"swardbook/schedule"
)

// Half of a sowing on record is half: the rest stays due until the last day on which seed
// still makes a stand, and nothing goes down on its seedlings before a first mowing.
func TestHalfASowing(t *testing.T) {
	site := sown(t, "OH", "6a", "tall fescue", "2026-08-10", "2026-08-24")
	half := schedule.Done{Line: 2, Date: mustDate(t, "2026-08-24"), Area: "a", Job: "sow", Share: 0.5}
	p := plan(t, site, half)
	rest := entry(t, p, "a/sow/1")
	if !rest.Rest || rest.State != schedule.Planned || rest.Latest != mustDate(t, "2026-09-25") || !strings.Contains(rest.Title, "the other 50 %") || !strings.Contains(rest.Summary, "6 lb to 8 lb") { // 2000 sq ft at 6 to 8 lb, half [unl-renovate]
		t.Errorf("the rest: %s, %s, to %s: %s", rest.Title, rest.State, rest.Latest, rest.Summary)
	}
	if day := mustDate(t, "2026-09-05"); p.Standing(rest, day) != string(schedule.Due) {
		t.Errorf("on %s it is %s", day, p.Standing(rest, day))
	}
	for name, second := range map[string]schedule.Done{
		"the other half":       {Share: 0.5},
		"as planned, the rest": {Share: 1, AsPlanned: true},
		"by weight":            {Weight: 6}, // of 12 lb, the least for 2000 sq ft
	} {
		second.Line, second.Date, second.Area, second.Job = 3, mustDate(t, "2026-09-07"), "a", "sow"
		p := plan(t, site, half, second)
		if e := entry(t, p, "a/sow/1"); e.Rest || e.State != schedule.Finished || len(ofKind(p, schedule.Sow)) != 1 {
			t.Errorf("%s: %s, %d sowings", name, e.State, len(ofKind(p, schedule.Sow)))
		}
		if c := p.Cases[0]; c.Seeded != half.Date {
			t.Errorf("%s: the stand counts from %s", name, c.Seeded)
		}
		for _, e := range p.Entries {
			if days := e.Date.DaysFrom(second.Date); e.Dose.Rate > 0 && days >= 0 && days < 11+14 { // up in 11 days
				t.Errorf("%s: %s %d days after the second half", name, e.ID, days)
			}
		}
	}
	third := plan(t, site, half, schedule.Done{Line: 3, Date: mustDate(t, "2026-09-01"), Area: "a", Job: "sow", Weight: 3})
	if e := entry(t, third, "a/sow/1"); !e.Rest || !strings.Contains(e.Title, "25 %") {
		t.Errorf("after a half and 3 of 12 lb: %s", e.Title)
	}
	late := plan(t, site, schedule.Done{Line: 2, Date: mustDate(t, "2026-10-20"), Area: "a", Job: "sow", Share: 0.5})
	if l := leftOut(late, "a/sow/2026-2"); l == nil || l.Reason != "50 % of the seed is not down, and its days were over by 20 Oct 2026" {
		t.Errorf("half of a sowing too late: %v", late.LeftOut)
	}
}

// So is half of an overseeding.
func TestHalfAnOverseeding(t *testing.T) {
	site := overseeded(t, "tall fescue", "2026-08-10", "2026-09-04")
	day := mustDate(t, "2026-09-05")
	p := plan(t, site, schedule.Done{Line: 2, Date: day, Area: "a", Job: "overseed", Share: 0.5})
	rest := entry(t, p, "a/overseed/1")
	if n := len(ofKind(p, schedule.Overseed)); n != 1 {
		t.Errorf("%d overseedings", n)
	}
	if !rest.Rest || rest.Date.Before(day) || rest.Latest != mustDate(t, "2026-09-25") || !strings.Contains(rest.Summary, "3 lb to 4 lb") {
		t.Errorf("the rest on %s, to %s: %s", rest.Date, rest.Latest, rest.Summary)
	}
	if n := len(ofKind(p, schedule.Starter)); n != 1 {
		t.Errorf("%d starters", n)
	}
	whole := plan(t, site, schedule.Done{Line: 2, Date: day, Area: "a", Job: "overseed", Share: 0.5}, schedule.Done{Line: 3, Date: mustDate(t, "2026-09-19"), Area: "a", Job: "overseed", Share: 0.5})
	if e := entry(t, whole, "a/overseed/1"); e.Rest || e.State != schedule.Finished || len(ofKind(whole, schedule.Overseed)) != 1 {
		t.Errorf("after both halves: %s, rest %v", e.State, e.Rest)
	}
	for _, e := range whole.Entries {
		if days := e.Date.DaysFrom(mustDate(t, "2026-09-19")); e.Dose.Rate > 0 && days >= 0 && days < 11+14 {
			t.Errorf("%s %d days after the second half", e.ID, days)
		}
	}
}

// The rest of a sowing whose days are over is missed: no state says that it is down, and
// its day spares no seedlings once a later line shows that it passed.
func TestTheRestOfASowingIsMissed(t *testing.T) {
	site := sown(t, "OH", "6a", "tall fescue", "2026-08-10", "2026-08-29")
	site.Crew.Days = []time.Weekday{time.Thursday} // the rest is on another day than the first part
	half := schedule.Done{Line: 2, Date: mustDate(t, "2026-08-29"), Area: "a", Job: "sow/2026-1", Share: 0.5}
	fed := schedule.Done{Line: 3, Date: mustDate(t, "2026-10-08"), Area: "a", Job: "nitrogen", Material: "urea", Weight: 1}
	for name, book := range map[string][]schedule.Done{"no other line": {half}, "a later line": {half, fed}} {
		p := plan(t, site, book...)
		rest := entry(t, p, "a/sow/1")
		if !rest.Rest || rest.Date == half.Date {
			t.Fatalf("%s: the rest on %s: the case tells nothing", name, rest.Date)
		}
		if s := p.Standing(rest, rest.Latest.AddDays(25)); s != string(schedule.Missed) || !strings.Contains(rest.Note, "down already: 50 %") {
			t.Errorf("%s: %s, %s", name, s, rest.Note)
		}
		if got := slices.Contains(p.Cases[0].Oversown, rest.Date); got != (len(book) == 1) {
			t.Errorf("%s: seedlings of %s are spared: %t", name, rest.Date, got)
		}
	}
	other := schedule.Done{Line: 4, Date: mustDate(t, "2026-09-20"), Area: "a", Job: "sow/2026-1", Share: 0.5}
	if e := entry(t, plan(t, site, half, fed, other), "a/sow/1"); e.Rest || e.State != schedule.Finished {
		t.Errorf("written down after all: %s, rest %v", e.State, e.Rest)
	}
	if _, n, e := plan(t, site, half, fed).Meant("a", schedule.Sow, 0, 0, other.Date); n != 1 || e == nil {
		t.Errorf("a line about the rest means the sowing %d", n)
	}
}

// Half of an overseeding written down after its window has closed leaves the other half
// missed, and a second half takes its place.
func TestHalfAnOverseedingTooLate(t *testing.T) {
	site := overseeded(t, "tall fescue", "2026-08-10", "2026-09-04")
	half := schedule.Done{Line: 2, Date: mustDate(t, "2026-10-25"), Area: "a", Job: "overseed/2026-1", Share: 0.5}
	other := schedule.Done{Line: 3, Date: mustDate(t, "2026-10-27"), Area: "a", Job: "overseed/2026-1", Share: 0.5}
	p := plan(t, site, half)
	rest := entry(t, p, "a/overseed/1")
	if s := p.Standing(rest, half.Date.Next()); !rest.Rest || s != string(schedule.Missed) || !rest.Latest.Before(half.Date) || !strings.Contains(rest.Title, "the other 50 %") || !strings.Contains(rest.Note, "down already: 50 %") {
		t.Errorf("%s to %s, %s: %s", s, rest.Latest, rest.Title, rest.Note)
	}
	if e := entry(t, plan(t, site, half, other), "a/overseed/1"); e.Rest || e.State != schedule.Finished {
		t.Errorf("after both halves: %s, rest %v", e.State, e.Rest)
	}
	open := half
	open.Date = mustDate(t, "2026-09-05")
	fed := schedule.Done{Line: 3, Date: mustDate(t, "2026-11-05"), Area: "a", Job: "nitrogen", Material: "urea", Weight: 1}
	for _, book := range [][]schedule.Done{{open}, {open, fed}} {
		p := plan(t, site, book...)
		if e := entry(t, p, "a/overseed/1"); !e.Rest || p.Standing(e, fed.Date) != string(schedule.Missed) {
			t.Errorf("%d lines: %s, rest %v", len(book), p.Standing(e, fed.Date), e.Rest)
		}
	}
}

// The rest belongs to the window of the last part: a program that begins after that window
// plans none, one that begins inside it does.
func TestTheRestOfAnOldSowing(t *testing.T) {
	half := schedule.Done{Line: 2, Date: mustDate(t, "2025-09-01"), Area: "a", Job: "sow", Share: 0.5}
	for start, open := range map[string]bool{"2025-09-10": true, "2026-03-25": false, "2026-09-01": false, "2027-03-25": false, "2030-09-01": false} {
		p := plan(t, sown(t, "OH", "6a", "tall fescue", start, "2025-09-01"), half)
		rests := ofKind(p, schedule.Sow)
		l := leftOut(p, "a/sow/2025-2")
		if (len(rests) == 1) != open || (l == nil) != open {
			t.Fatalf("from %s: %d sowings, left out %v", start, len(rests), l)
		}
		if open && (!rests[0].Rest || rests[0].Latest != mustDate(t, "2025-09-25")) {
			t.Errorf("from %s: %s to %s", start, rests[0].Title, rests[0].Latest)
		}
	}
}

// A line that a sowing or an overseeding was missed, after a part of it, calls the rest off.
func TestTheRestIsCalledOff(t *testing.T) {
	for kind, site := range map[schedule.Kind]*schedule.Site{
		schedule.Sow:      sown(t, "OH", "6a", "tall fescue", "2026-08-10", "2026-08-29"),
		schedule.Overseed: overseeded(t, "tall fescue", "2026-08-10", "2026-08-29"),
	} {
		id := "a/" + kind.String() + "/2026-1"
		half := schedule.Done{Line: 2, Date: mustDate(t, "2026-08-29"), Area: "a", Job: id, Share: 0.5}
		off := schedule.Done{Line: 3, Date: mustDate(t, "2026-09-12"), Area: "a", Job: id, Missed: true}
		p := plan(t, site, half, off)
		if e := entry(t, p, id); e.Rest || e.State != schedule.Finished || !strings.Contains(e.Title, "50 %") || len(ofKind(p, kind)) != 1 {
			t.Errorf("%s: %s, %s", kind, e.State, e.Title)
		}
		if l := leftOut(p, "a/"+kind.String()+"/2026-2"); l == nil || l.Reason != "50 % of the seed is not down, and it was called off on 12 Sep 2026" {
			t.Errorf("%s: nobody is told", kind)
		}
	}
	site := sown(t, "OH", "6a", "tall fescue", "2026-08-10", "2026-08-29")
	half := schedule.Done{Line: 2, Date: mustDate(t, "2026-08-29"), Area: "a", Job: "sow/2026-1", Share: 0.5}
	again := half
	again.Date = mustDate(t, "2026-09-15")
	p := plan(t, site, half, schedule.Done{Line: 3, Date: mustDate(t, "2026-09-12"), Area: "a", Job: "sow/2026-1", Missed: true}, again)
	if l := leftOut(p, "a/sow/2026-2"); l != nil || entry(t, p, "a/sow/1").Rest {
		t.Errorf("sown after all: %v", l)
	}
}

// In another season a whole sowing, or any after a whole one, is a stand of its own; the
// other half of a sowing is not.
func TestASowingOfAnotherSeason(t *testing.T) {
	for name, c := range map[string]struct {
		old, new float64
		day      string
		seeded   string
		rest     bool
	}{
		"whole after half":                 {0.5, 1, "2026-09-05", "2026-09-05", false},
		"half after whole":                 {1, 0.5, "2026-09-05", "2026-09-05", true},
		"half after half":                  {0.5, 0.5, "2026-09-05", "2024-09-01", false},
		"whole after half, of that season": {0.5, 1, "2024-09-20", "2024-09-01", false},
	} {
		site := sown(t, "OH", "6a", "tall fescue", "2026-08-10", c.day)
		p := plan(t, site, schedule.Done{Line: 2, Date: mustDate(t, "2024-09-01"), Area: "a", Job: "sow", Share: c.old}, schedule.Done{Line: 3, Date: mustDate(t, c.day), Area: "a", Job: "sow", Share: c.new})
		rest := slices.ContainsFunc(p.Entries, func(e schedule.Entry) bool { return e.Kind == schedule.Sow && e.Rest })
		if got := p.Cases[0].Seeded; got != mustDate(t, c.seeded) || rest != c.rest {
			t.Errorf("%s: a stand of %s, rest %t", name, got, rest)
		}
	}
}

// An old sowing on record does not stand for the one that the site file asks for years
// later; one of about that day does.
func TestAnotherSowingYearsLater(t *testing.T) {
	for _, c := range []struct {
		down    string
		planned int
	}{{"2024-09-01", 1}, {"2026-04-20", 1}, {"2026-08-15", 0}, {"2026-09-08", 0}} {
		site := sown(t, "OH", "6a", "tall fescue", "2026-08-10", "2026-09-05")
		p := plan(t, site, schedule.Done{Line: 2, Date: mustDate(t, c.down), Area: "a", Job: "sow", AsPlanned: true})
		n := 0
		for _, e := range ofKind(p, schedule.Sow) {
			if e.State == schedule.Planned {
				n++
			}
		}
		told := strings.Contains(strings.Join(p.Assumptions, "\n"), "asks for another sowing on 5 Sep 2026")
		if n != c.planned || told != (n == 1) {
			t.Errorf("sown on %s: %d sowings planned, told %v", c.down, n, told)
		}
	}
}
