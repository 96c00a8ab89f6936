package page_test

import (
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/page"
)

// variants are a program and one that begins two weeks later with one job less.
func variants(t *testing.T) []page.Variant {
	early := planned(t, "garden")
	late := *early
	late.Entries = nil
	limed := false
	for _, e := range early.Entries {
		if e.Kind == schedule.Lime && !limed {
			limed = true
			continue
		}
		e.Date, e.Ideal = e.Date.AddDays(14), e.Ideal.AddDays(14)
		e.Earliest, e.Latest = e.Earliest.AddDays(14), e.Latest.AddDays(14)
		late.Entries = append(late.Entries, e)
	}
	return []page.Variant{{Label: "seeded 2026-08-24", Program: early}, {Label: "seeded 2026-09-07", Program: &late, Note: "Said of it."}}
}

// A comparison says first what follows from each program.
func TestComparisonTellsWhatFollows(t *testing.T) {
	v := variants(t)
	got, err := page.Comparison(v, page.Options{})
	if err != nil {
		t.Fatal(err)
	}
	jobs := func(p *schedule.Program) (n int, last schedule.Date) {
		for _, e := range p.Entries {
			if !e.Kind.Notice() {
				n, last = n+1, e.Date
			}
		}
		return n, last
	}
	before, lastBefore := jobs(v[0].Program)
	after, lastAfter := jobs(v[1].Program)
	if after != before-1 {
		t.Fatalf("%d jobs, then %d", before, after)
	}
	text := section(t, got, "body")
	table, changes := strings.Index(text, "What follows from each"), strings.Index(text, "What changes")
	if table < 0 || changes < table || strings.Index(text, "On one axis of time") < changes {
		t.Error("the table of what follows does not come first")
	}
	first, rest := text[table:changes], text[changes:]
	for _, want := range []string{"seeded 2026-09-07", "Last day with work" + lastBefore.Short() + lastAfter.Short(), "Lime2 jobs, 135 lb1 job, 75 lb", "Nitrogen, East lawn"} {
		if !strings.Contains(first, want) {
			t.Errorf("the table lacks %q: %s", want, first)
		}
	}
	for _, want := range []string{"Said of it.", "vanished", "14 days later"} {
		if !strings.Contains(rest, want) {
			t.Errorf("the changes lack %q", want)
		}
	}
	if n := strings.Count(string(got), `class="other"`); n < 3 {
		t.Errorf("%d cells stand out", n)
	}
	if _, err := page.Comparison(v[:1], page.Options{}); err == nil {
		t.Error("one program is compared with nothing")
	}
}
