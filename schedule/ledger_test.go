package schedule

import (
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

// What a list of changes says, at the least amount that a scale shows: 0.005
// lb/1000 sq ft, 0.05 lb.
func TestCompareByHand(t *testing.T) {
	base := Entry{ID: "a/lime/1", Title: "Lime East", Date: on(t, "2026-09-10"), Rate: 10, Pounds: 20, Material: "stone", MaterialName: "limestone", State: Planned}
	with := func(f func(*Entry)) Entry { e := base; f(&e); return e }
	for name, c := range map[string]struct {
		was, is Entry
		want    string
	}{
		"nothing":           {base, base, ""},
		"a day later":       {base, with(func(e *Entry) { e.Date = e.Date.AddDays(1) }), "moved: from 10 Sep 2026 to 11 Sep 2026, 1 day later"},
		"nine days earlier": {base, with(func(e *Entry) { e.Date = e.Date.AddDays(-9) }), "moved: from 10 Sep 2026 to 1 Sep 2026, 9 days earlier"},
		"too little to see": {base, with(func(e *Entry) { e.Rate, e.Pounds = 10.004, 20.04 }), ""},
		"a little more":     {base, with(func(e *Entry) { e.Rate = 10.006 }), ""},
		"less":              {base, with(func(e *Entry) { e.Rate, e.Pounds = 5, 10 }), "shrank: from 20 lb to 10 lb"},
		"the area grew":     {base, with(func(e *Entry) { e.Pounds = 30 }), "grew: from 20 lb to 30 lb"},
		"the area shrank":   {base, with(func(e *Entry) { e.Pounds = 15 }), "shrank: from 20 lb to 15 lb"},
		"another material":  {base, with(func(e *Entry) { e.Material, e.MaterialName = "ash", "wood ash" }), "changed: wood ash instead of limestone"},
		"done":              {base, with(func(e *Entry) { e.State = Finished }), "changed: done, was planned"},
		"another job":       {base, with(func(e *Entry) { e.ID = "a/lime/2" }), "vanished: Lime East, was planned for 10 Sep 2026\nappeared: Lime East on 10 Sep 2026"},
		"moved and smaller": {base, with(func(e *Entry) { e.Date, e.Rate, e.Pounds = e.Date.AddDays(2), 5, 10 }), "moved: from 10 Sep 2026 to 12 Sep 2026, 2 days later\nshrank: from 20 lb to 10 lb"},
		"history":           {with(func(e *Entry) { e.ID, e.Date = "a/lime/9", on(t, "2026-08-31") }), base, "appeared: Lime East on 10 Sep 2026"},
		"on the first day":  {with(func(e *Entry) { e.ID, e.Date = "a/lime/9", on(t, "2026-09-01") }), base, "vanished: Lime East, was planned for 1 Sep 2026\nappeared: Lime East on 10 Sep 2026"},
	} {
		start := on(t, "2026-09-01")
		var got []string
		for _, ch := range Compare(&Program{Start: start, Entries: []Entry{c.was}}, &Program{Start: start, Entries: []Entry{c.is}}) {
			got = append(got, ch.What+": "+ch.Text)
		}
		if strings.Join(got, "\n") != c.want {
			t.Errorf("%s: %q, want %q", name, strings.Join(got, "\n"), c.want)
		}
	}
	left := func(id, reason string) LeftOut { return LeftOut{ID: id, Area: "a", Kind: Lime, Reason: reason} }
	for name, c := range map[string]struct {
		was, is []LeftOut
		want    string
	}{
		"the same":       {[]LeftOut{left("a/lime/1", "x")}, []LeftOut{left("a/lime/1", "x")}, ""},
		"renumbered":     {[]LeftOut{left("a/lime/1", "x")}, []LeftOut{left("a/lime/2", "x")}, ""},
		"another reason": {[]LeftOut{left("a/lime/1", "x")}, []LeftOut{left("a/lime/1", "y")}, "changed: left out for another reason: y"},
		"new":            {nil, []LeftOut{left("a/lime/1", "y")}, "left out: y"},
		"gone":           {[]LeftOut{left("a/lime/1", "x")}, nil, "no longer left out: before: x"},
	} {
		var got []string
		for _, ch := range Compare(&Program{LeftOut: c.was}, &Program{LeftOut: c.is}) {
			got = append(got, ch.What+": "+ch.Text)
		}
		if strings.Join(got, "\n") != c.want {
			t.Errorf("%s: %q, want %q", name, strings.Join(got, "\n"), c.want)
		}
	}
}

// The most within a run of days, and the verdict in words.
func TestLedgerByHand(t *testing.T) {
	day := func(n int) Date { return on(t, "2026-09-01").AddDays(n) }
	line := func(n int, lb agronomy.PerThousand, state string) applied {
		return applied{LedgerLine{Date: day(n), N: lb, State: state, Down: state != ToCome}, material.Dose{}}
	}
	of := func(a *applied) agronomy.PerThousand { return a.N }
	all := []applied{line(0, 0.5, OnRecord), line(10, 0.5, OnRecord), line(30, 0.75, ToCome), line(39, 0.25, ToCome)}
	for days, want := range map[int]agronomy.PerThousand{1: 0.75, 9: 0.75, 10: 1, 11: 1, 20: 1, 21: 1.25, 30: 1.5, 31: 1.75, 39: 1.75, 40: 2} {
		if got := most(all, false, days, of); got != want {
			t.Errorf("within %d days: %v, want %v", days, got, want)
		}
	}
	c := &Case{Site: &Site{}}
	limit := func(down, most agronomy.PerThousand) []LedgerLimit {
		return []LedgerLimit{{What: "quick nitrogen", Limit: 1, Most: most, Down: down, Passed: most > 1+1e-6}}
	}
	for _, v := range []struct {
		lines  []applied
		limits []LedgerLimit
		want   string
	}{
		{nil, limit(0, 1), "Within limits: no nitrogen is down yet, and what is planned keeps every limit."},
		{all, limit(1, 1), "Within limits: 1 lb N per 1,000 sq ft is down, and what is planned keeps every limit."},
		{all, limit(1.1, 1.2), "Over the limit: quick nitrogen: 1.1 lb per 1,000 sq ft against 1 lb per 1,000 sq ft."},
		{all, limit(1, 1.2), "Within limits so far; with what is planned, over the limit: quick nitrogen."},
		{[]applied{line(0, 0.5, TakenAsDone)}, limit(0.5, 1), "Within limits: 0.5 lb N per 1,000 sq ft is down (none of it on record, all taken as done as planned), and what is planned keeps every limit."},
		{[]applied{line(0, 0.5, TakenAsDone), line(1, 0.25, OnRecord)}, limit(0.5, 1), "Within limits: 0.75 lb N per 1,000 sq ft is down (0.5 lb N per 1,000 sq ft of it not on record, taken as done as planned), and what is planned keeps every limit."},
	} {
		l := AreaLedger{Limits: v.limits}
		for _, a := range v.lines {
			l.Lines = append(l.Lines, a.LedgerLine)
		}
		if got := verdict(c, l); got != v.want {
			t.Errorf("%q, want %q", got, v.want)
		}
	}
}

// How a job stands on a day, what a name finds, and what a filter leaves.
func TestFindAndStanding(t *testing.T) {
	e := Entry{ID: "a/lime/1", Kind: Lime, Area: "a", Who: "mara", Date: on(t, "2026-09-10"), Latest: on(t, "2026-10-01"), State: Planned}
	notice := Entry{ID: "site/last-safe/1", Kind: LastSafe, Date: on(t, "2026-11-16"), Latest: on(t, "2026-11-16"), State: Planned}
	done := Entry{ID: "b/nitrogen/1", Kind: Nitrogen, Area: "b", State: Finished}
	p := &Program{Entries: []Entry{e, notice, done}, LeftOut: []LeftOut{{ID: "b/lime/1", Kind: Lime, Area: "b"}}, Areas: []AreaShown{{ID: "a"}, {ID: "b"}}}
	for _, c := range []struct {
		e         *Entry
		day, want string
	}{{&e, "2026-09-09", "planned"}, {&e, "2026-09-10", "due"}, {&e, "2026-10-01", "due"}, {&e, "2026-10-02", "taken"}, {&notice, "2026-11-16", "due"}, {&notice, "2026-11-17", "past"}, {&done, "2030-01-01", "done"}} {
		if got := p.Standing(c.e, on(t, c.day)); got != c.want {
			t.Errorf("%s on %s: %s, want %s", c.e.ID, c.day, got, c.want)
		}
	}
	for name, want := range map[string]string{"a/lime/1": "a/lime/1", " /a/lime/ ": "a/lime/1", "b/lime": "b/lime/1", "nitrogen": "b/nitrogen/1", "last-safe/1": "site/last-safe/1", "lime": "!fits several jobs: a/lime/1, b/lime/1", "": "!no job", "lime/2": "!no job", "1/lime": "!no job"} {
		found, l, err := p.Find(name)
		got := ""
		switch {
		case err != nil:
			got = "!" + err.Error()
		case found != nil:
			got = found.ID
		default:
			got = l.ID
		}
		if got != want && !(want[0] == '!' && got[0] == '!' && strings.Contains(got, want[1:])) {
			t.Errorf("%q: %s, want %s", name, got, want)
		}
	}
	for _, c := range []struct {
		area, person string
		kinds        []Kind
		entries, out int
		areas        int
	}{{"", "", nil, 3, 1, 2}, {"a", "", nil, 2, 0, 1}, {"b", "", nil, 2, 1, 1}, {"", "mara", nil, 2, 1, 2}, {"", "teo", nil, 1, 1, 2}, {"", "", []Kind{Lime}, 1, 1, 2}, {"", "", []Kind{LastSafe, Nitrogen}, 2, 0, 2}} {
		q := p.Filter(c.area, c.person, c.kinds)
		if len(q.Entries) != c.entries || len(q.LeftOut) != c.out || len(q.Areas) != c.areas {
			t.Errorf("%+v: %d entries, %d left out, %d areas", c, len(q.Entries), len(q.LeftOut), len(q.Areas))
		}
	}
	for days, want := range map[[2]string]int{{"2026-01-31", "2026-02-28"}: 0, {"2026-01-31", "2026-03-31"}: 2, {"2026-01-15", "2027-01-14"}: 11, {"2026-01-15", "2027-01-15"}: 12, {"2026-05-01", "2026-04-01"}: -1} {
		if got := Months(on(t, days[0]), on(t, days[1])); got != want {
			t.Errorf("%v: %d months, want %d", days, got, want)
		}
	}
}
