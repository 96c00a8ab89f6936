package feed

import (
	"fmt"
	"net/http"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/plan"
)

// panicsAt is a planner that panics at the sites of one title, as a fault of
// the program would.
func panicsAt(title string) schedule.Planner {
	return func(s *schedule.Site, book []schedule.Done, last schedule.Date) (*schedule.Program, error) {
		if s.Title == title {
			var none []int
			_ = none[len(book)] // index out of range
		}
		return plan.Program(s, book, last)
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
	w.put("mill.toml", strings.Replace(lawn, "Oxlo green", "Site bad", 1))
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
	w.plan = func(s *schedule.Site, book []schedule.Done, last schedule.Date) (*schedule.Program, error) {
		if len(book) > 0 {
			panic("a line")
		}
		return plan.Program(s, book, last)
	}
	w.put("mill.toml", lawn)
	w.start()
	r := w.post(w.open("east/lime/2026-1"))
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

// endless is a planner that never comes back from the sites of one title until
// the test is over.
func endless(t *testing.T, title string) (_ schedule.Planner, tries *atomic.Int64) {
	over, tries := make(chan struct{}), &atomic.Int64{}
	t.Cleanup(func() { close(over) })
	return func(s *schedule.Site, book []schedule.Done, last schedule.Date) (*schedule.Program, error) {
		if s.Title == title {
			tries.Add(1)
			<-over
		}
		return plan.Program(s, book, last)
	}, tries
}

// A planner that never returns ends the turn of its site and of no other, and
// that site is not tried again until its files change.
func TestServeSurvivesAnEndlessPlan(t *testing.T) {
	w := newWorld(t)
	w.turn = 2 * time.Second // a busy machine plans a site in less
	var tries *atomic.Int64
	w.plan, tries = endless(t, "Site bad")
	w.put("bad.toml", named("bad"))
	w.put("mill.toml", lawn)
	w.start()
	for range 20 {
		if r := w.get("/bad/program.ics"); r.StatusCode != http.StatusServiceUnavailable {
			t.Errorf("the site without an end: %d", r.StatusCode)
		}
		w.page("/mill/program.ics")
	}
	if n := tries.Load(); n != 1 {
		t.Errorf("planned %d times", n)
	}
	wants(t, "the log", w.logged(), "no end after 2s")
	if got := w.feed.Faulty(); !slices.Equal(got, []string{"bad"}) {
		t.Errorf("faulty: %v", got)
	}
	w.put("bad.toml", strings.Replace(named("bad"), "Site bad", "Site good", 1))
	w.refresh()
	wants(t, "the page", w.page("/bad/"), "Site good")
}

// Many sites without an end, more than there are turns, keep no other waiting.
func TestEndlessPlansMakeRoom(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		w := newWorld(t)
		over := make(chan struct{})
		defer close(over)
		w.plan = func(s *schedule.Site, book []schedule.Done, last schedule.Date) (*schedule.Program, error) {
			if s.Title != "Oxlo green" {
				<-over
			}
			return plan.Program(s, book, last)
		}
		w.put("mill.toml", lawn)
		const many = 40
		for i := range many {
			w.put(fmt.Sprint("bad", i, ".toml"), named(fmt.Sprint("bad", i)))
		}
		w.begin()
		var asked sync.WaitGroup
		for i := range many {
			asked.Go(func() { w.get(fmt.Sprint("/bad", i, "/program.ics")) })
		}
		synctest.Wait()
		began := time.Now()
		w.page("/mill/program.ics")
		if took := time.Since(began); took > waitTime {
			t.Errorf("a reader of another site waited %v", took)
		}
		asked.Wait()
	})
}

func TestPublishSurvivesAnEndlessPlan(t *testing.T) {
	p := newPress(t)
	p.o.Plan, _ = endless(t, "Site bad")
	p.o.Turn, p.o.Jobs = 2*time.Second, 1 // one worker: what it gave up must not hold up the next
	for _, n := range []string{"a", "bad", "c"} {
		p.put(n+".toml", named(n))
	}
	done := p.publish()
	if len(done.Failed) != 1 || done.Failed[0].Name != "bad" {
		t.Fatalf("failed: %+v", done.Failed)
	}
	wants(t, "the failure", done.Failed[0].Problems[0].Error(), "bad.toml", "no end after 2s")
	p.file("a/program.ics")
	p.file("c/program.ics")
}
