package plan

import (
	"strings"
	"testing"

	"swardbook/schedule"
)

// A person's jobs keep off their days away and say so; other people's stay. One
// job given to somebody else by its name goes alone.
func TestAbsencesArePersonal(t *testing.T) {
	site := situations[0].site(t, "OH", "6a", "tall fescue")
	site.Crew.People = []schedule.Person{{ID: "mara", Name: "Mara"}, {ID: "teo", Name: "Teo"}}
	site.Crew.Who = []schedule.Assignment{{Jobs: "a", Person: "teo"}, {Jobs: "lime", Person: "mara"}, {Jobs: "a/lime", Person: "mara"}}
	before := plan(t, site)
	lime := entry(t, before, "a/lime/1")
	if lime.Who != "mara" || entry(t, before, "a/nitrogen/3").Who != "teo" {
		t.Fatalf("lime is %q's, the feeding %q's", lime.Who, entry(t, before, "a/nitrogen/3").Who)
	}
	site.Crew.People[0].Absent = []schedule.Span{{From: lime.Ideal, To: lime.Date.AddDays(3)}}
	after := plan(t, site)
	moved := entry(t, after, "a/lime/1")
	if site.Crew.People[0].Absent[0].Has(moved.Date) || !strings.Contains(strings.Join(moved.BoundBy, " "), "Mara is away from ") {
		t.Errorf("lime on %s, bound by %s; it was on %s, best %s", moved.Date, moved.BoundBy, lime.Date, lime.Ideal)
	}
	site.Crew.Who = append(site.Crew.Who, schedule.Assignment{Jobs: "a/lime/1", Person: "teo"})
	swapped := plan(t, site)
	if e := entry(t, swapped, "a/lime/1"); e.Who != "teo" || e.WhoName != "Teo" || e.Date != lime.Date {
		t.Errorf("swapped: %s's, on %s; before the absence it was %s", e.Who, e.Date, lime.Date)
	}
	for _, e := range swapped.Entries {
		if e.Kind == schedule.Lime && e.ID != "a/lime/2026-1" && e.Who != "mara" {
			t.Errorf("%s went with it", e.ID)
		}
	}
}

// The roster deals out every job but the notices, each once; check warns of what
// nobody has, who has nothing, and names that mean no job.
func TestRoster(t *testing.T) {
	site := situations[0].site(t, "OH", "6a", "tall fescue")
	site.Crew.People = []schedule.Person{{ID: "mara", Name: "Mara"}, {ID: "teo", Name: "Teo"}}
	site.Crew.Who = []schedule.Assignment{{Jobs: "lime", Person: "mara"}, {Jobs: "a/lime/77", Person: "mara"}}
	p := plan(t, site)
	r := p.Roster(schedule.Date{})
	seen := map[string]int{}
	for _, j := range r.Nobody {
		seen[j.ID]++
	}
	for _, who := range r.People {
		for _, j := range who.Jobs {
			seen[j.ID]++
		}
	}
	jobs := 0
	for _, e := range p.Entries {
		if e.Kind.Notice() {
			continue
		}
		if jobs++; seen[e.ID] != 1 {
			t.Errorf("%s stands %d times in the roster", e.ID, seen[e.ID])
		}
	}
	if idle := r.Idle(); len(seen) != jobs || len(r.Nobody) == 0 || len(idle) != 1 || idle[0].ID != "teo" {
		t.Errorf("%d of %d jobs, %d nobody's, idle %v", len(seen), jobs, len(r.Nobody), idle)
	}
	var keys []string
	for _, d := range p.CrewDoubts(schedule.Date{}) {
		keys = append(keys, d.Key)
	}
	if got := strings.Join(keys, " "); got != "crew.who crew.people.teo crew.who.\"a/lime/77\"" {
		t.Errorf("doubts at %s", got)
	}
	site.Crew.Who = []schedule.Assignment{{Jobs: "a", Person: "teo"}, {Jobs: "lime", Person: "mara"}, {Jobs: "a/lime", Person: "mara"}}
	if ds := plan(t, site).CrewDoubts(schedule.Date{}); len(ds) != 0 {
		t.Errorf("everything is dealt out, yet: %v", ds)
	}
	site.Crew = schedule.Crew{}
	if ds := plan(t, site).CrewDoubts(schedule.Date{}); len(ds) != 0 {
		t.Errorf("nobody is named, yet: %v", ds)
	}
}
