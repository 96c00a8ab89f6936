package feed

import (
	"context"
	"fmt"
	"math/rand/v2"
	"net/http"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/plan"
)

// Readers, recorders, an editor and midnight at once: every answer is whole and
// of a site as it was at some moment. The race detector looks on in .ci/source.
func TestSitesChangeUnderLoad(t *testing.T) {
	const sites = 12
	w := newWorld(t)
	w.record = true
	size := func(i, feet int) {
		w.put(fmt.Sprint("s", i, ".toml"), strings.Replace(named(fmt.Sprint("s", i)), "2600 sq ft", fmt.Sprint(2600+feet, " sq ft"), 1))
	}
	for i := range sites {
		size(i, 0)
	}
	w.begin()
	ctx, stop := context.WithTimeout(t.Context(), 1500*time.Millisecond)
	defer stop()
	var all sync.WaitGroup
	all.Go(func() { w.feed.Watch(ctx) })
	all.Go(func() { // the editor; some of what is saved is broken
		for n := 1; ctx.Err() == nil; n++ {
			if i := rand.IntN(sites); n%5 == 0 {
				w.put(fmt.Sprint("s", i, ".toml"), "id = 3")
			} else {
				size(i, n%100)
			}
			time.Sleep(5 * time.Millisecond)
		}
	})
	all.Go(func() { // days go by
		for ctx.Err() == nil {
			w.pass(time.Hour)
			time.Sleep(20 * time.Millisecond)
		}
	})
	paths := []string{"", "program.ics", "program.html", "program.json", "person/ines.ics", "area/east.ics", "done?job=east/lime/1"}
	ends := map[string]string{"text/html; charset=utf-8": "</html>\n", calendarType: "END:VCALENDAR\r\n", jsonType: "}\n"}
	for range 4 {
		all.Go(func() {
			for ctx.Err() == nil {
				i := rand.IntN(sites)
				r := w.get(fmt.Sprint("/s", i, "/", paths[rand.IntN(len(paths))]), "Host", "localhost")
				body := bodyOf(t, r)
				switch r.StatusCode {
				case 200:
					if !strings.HasSuffix(body, ends[r.Header.Get("Content-Type")]) {
						t.Errorf("cut short: %q", body[max(0, len(body)-50):])
					}
					if k := r.Header.Get("Content-Type"); k == jsonType && !strings.Contains(body, fmt.Sprintf(`"s%d-0000"`, i)) {
						t.Errorf("s%d: another site's program", i)
					}
				case http.StatusServiceUnavailable, http.StatusNotFound: // broken when it was first read
				default:
					t.Errorf("status %d", r.StatusCode)
				}
			}
		})
	}
	all.Wait()
	for i := range sites {
		size(i, 1)
	}
	w.refresh()
	for i := range sites {
		wants(t, "the sheet", w.page(fmt.Sprint("/s", i, "/program.html")), "2,601 sq ft")
	}
}

// What is kept of files that nobody asks for any more is bounded, and a client
// that holds one is answered without making it again.
func TestBodiesAreDropped(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", lawn)
	w.start()
	was := w.get("/mill/program.html").Header
	s := w.feed.sites["mill"]
	big := make([]byte, mostCached/4)
	for i := range 12 {
		r := newResource(file{"x", plainType, big}, nil, changedAt, false)
		for _, b := range w.feed.cache.add(s, fmt.Sprint(i), r) {
			b.site.drop(b.path, b.r)
		}
		if w.feed.cache.size > mostCached+2*len(big) {
			t.Fatalf("%d bytes are kept", w.feed.cache.size)
		}
	}
	if s.slots[sheetFile].r != nil {
		t.Fatal("the sheet is still there")
	}
	plans := 0
	plan := w.feed.o.Plan
	w.feed.o.Plan = func(s *schedule.Site, book []schedule.Done, last schedule.Date) (*schedule.Program, error) {
		plans++
		return plan(s, book, last)
	}
	if r := w.get("/mill/program.html", "If-None-Match", was.Get("Etag")); r.StatusCode != 304 || plans != 0 {
		t.Errorf("status %d after %d plans", r.StatusCode, plans)
	}
	is := w.get("/mill/program.html").Header
	if is.Get("Etag") != was.Get("Etag") || is.Get("Last-Modified") != was.Get("Last-Modified") || plans != 1 {
		t.Errorf("made again: %v, before %v, %d plans", is, was, plans)
	}
}

// A new day plans nothing by itself: a page is made again for whoever asks for
// it, and a calendar, which does not change with the day, is not.
func TestMidnightPlansNothing(t *testing.T) {
	const sites = 5
	w := newWorld(t)
	var plans atomic.Int64
	w.plan = func(s *schedule.Site, book []schedule.Done, last schedule.Date) (*schedule.Program, error) {
		plans.Add(1)
		return plan.Program(s, book, last)
	}
	w.record = true
	for i := range sites {
		w.put(fmt.Sprint("s", i, ".toml"), named(fmt.Sprint("s", i)))
	}
	w.start()
	was := make([]string, sites)
	for i := range sites {
		was[i] = w.page(fmt.Sprint("/s", i, "/program.html"))
		w.page(fmt.Sprint("/s", i, "/program.ics"))
	}
	plans.Store(0)
	w.pass(16 * time.Hour)
	w.refresh()
	if n := plans.Load(); n != 0 {
		t.Errorf("midnight made %d plans", n)
	}
	if w.page("/s1/program.html") == was[1] || plans.Load() != 1 {
		t.Errorf("the page of the day before, or %d plans for it", plans.Load())
	}
	if w.page("/s2/program.ics"); plans.Load() != 1 {
		t.Error("the calendar was planned again")
	}
	if w.page("/s3/done?job=east/lime/1"); plans.Load() != 2 {
		t.Errorf("%d plans, the form's among them", plans.Load())
	}
}
