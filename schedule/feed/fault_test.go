package feed

import (
	"net/http"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/plan"
)

// panicsAt is a planner that panics at the sites of one title, as a fault of
// the program would.
func panicsAt(title string) schedule.Planner {
	return func(s *schedule.Site, book []schedule.Done) (*schedule.Program, error) {
		if s.Title == title {
			var none []int
			_ = none[len(book)] // index out of range
		}
		return plan.Program(s, book)
	}
}

// A panic of the planner ends the turn of its site and of no other.
func TestServeSurvivesAPanic(t *testing.T) {
	w := newWorld(t)
	w.plan = panicsAt("Site bad")
	w.put("bad.toml", named("bad"))
	w.put("mill.toml", lawn)
	w.start()
	if r := w.get("/bad/program.ics"); r.StatusCode != http.StatusServiceUnavailable {
		t.Errorf("the site of the panic: %d", r.StatusCode)
	}
	w.page("/mill/program.ics")
	wants(t, "the log", w.logged(), "site=bad", "index out of range", "fault_test.go")
	if got := w.feed.Faulty(); !slices.Equal(got, []string{"bad"}) {
		t.Errorf("faulty: %v", got)
	}
}

// A file that begins to make the planner panic leaves the last good program.
func TestPanicKeepsTheLastGoodProgram(t *testing.T) {
	w := newWorld(t)
	w.plan = panicsAt("Site bad")
	w.put("mill.toml", lawn)
	w.start()
	calendar := w.page("/mill/program.ics")
	w.put("mill.toml", strings.Replace(lawn, "Mill green", "Site bad", 1))
	w.refresh()
	if w.page("/mill/program.ics") != calendar {
		t.Error("the calendar changed")
	}
	wants(t, "the landing page", w.page("/mill/"), "still the program from before", "has a fault that these files show")
}

// A line that makes the planner panic is not written.
func TestFormSurvivesAPanic(t *testing.T) {
	w := newWorld(t)
	w.record = true
	w.plan = func(s *schedule.Site, book []schedule.Done) (*schedule.Program, error) {
		if len(book) > 0 {
			panic("a line")
		}
		return plan.Program(s, book)
	}
	w.put("mill.toml", lawn)
	w.start()
	r := w.post(w.open("east/lime/1"))
	if r.StatusCode != http.StatusInternalServerError || w.book() != "" {
		t.Errorf("status %d, book %q", r.StatusCode, w.book())
	}
	wants(t, "the page", bodyOf(t, r), "Nothing was written")
	w.page("/mill/program.ics")
	if got := w.feed.Faulty(); !slices.Equal(got, []string{"mill"}) {
		t.Errorf("faulty: %v", got)
	}
}

func TestPublishSurvivesAPanic(t *testing.T) {
	p := newPress(t)
	p.o.Plan = panicsAt("Site bad")
	for _, n := range []string{"a", "bad", "c"} {
		p.put(n+".toml", named(n))
	}
	done := p.publish()
	if len(done.Failed) != 1 || done.Failed[0].Name != "bad" {
		t.Fatalf("failed: %+v", done.Failed)
	}
	f := done.Failed[0]
	wants(t, "the failure", f.Problems[0].Error()+f.Trace, "bad.toml", "index out of range", "fault_test.go")
	p.file("a/program.ics")
	p.file("c/program.ics")
}
