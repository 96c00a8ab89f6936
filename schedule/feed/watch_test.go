package feed

import (
	"context"
	"os"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"swardbook/schedule/ical"
)

const record = "date,area,job,material,amount,by,note\n"

func TestFollowsTheFiles(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", lawn)
	w.start()
	first, firstPage := w.get("/mill/program.ics").Header, w.get("/mill/program.html").Header
	land := w.get("/mill/").Header

	w.pass(time.Hour)
	w.refresh()
	if h := w.get("/mill/program.ics").Header; h.Get("Etag") != first.Get("Etag") || h.Get("Last-Modified") != first.Get("Last-Modified") {
		t.Error("nothing changed, but the calendar did")
	}

	// The record book appears: lime went down in part.
	w.put("mill.record.csv", record+"2026-09-14,east,east/lime/1,,half,ines,\n")
	w.refresh()
	h := w.get("/mill/program.ics").Header
	if h.Get("Etag") == first.Get("Etag") || h.Get("Last-Modified") == first.Get("Last-Modified") {
		t.Error("the record book changed nothing")
	}
	wants(t, "the sheet", w.page("/mill/program.html"), "Lime")

	// A new title, in the same second: the time must move all the same.
	before := w.get("/mill/").Header.Get("Last-Modified")
	w.put("mill.toml", strings.Replace(lawn, "Oxlo green", "Weir green", 1))
	w.refresh()
	wants(t, "the landing page", w.page("/mill/"), "Weir green")
	if after := w.get("/mill/").Header.Get("Last-Modified"); after <= before {
		t.Errorf("Last-Modified %s after %s", after, before)
	}
	wants(t, "the index", w.page("/"), "Weir green")

	// A new day: pages say what is next, calendars do not change.
	calendar, sheet := w.get("/mill/program.ics").Header, w.get("/mill/program.html").Header
	w.pass(24 * time.Hour)
	w.refresh()
	if w.get("/mill/program.ics").Header.Get("Last-Modified") != calendar.Get("Last-Modified") {
		t.Error("the calendar changed with the day")
	}
	if w.get("/mill/program.html").Header.Get("Etag") == sheet.Get("Etag") || land.Get("Etag") == w.get("/mill/").Header.Get("Etag") {
		t.Error("the pages did not change with the day")
	}
	if firstPage.Get("Last-Modified") == "" {
		t.Error("no Last-Modified on the sheet")
	}

	// The file goes: not at once, as it may only be being saved.
	if err := os.Remove(w.dir + "/mill.toml"); err != nil {
		t.Fatal(err)
	}
	w.refresh()
	w.page("/mill/")
	w.refresh()
	if r := w.get("/mill/"); r.StatusCode != 404 {
		t.Errorf("a site without a file: %d", r.StatusCode)
	}
}

func TestNormalsAreFollowed(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", strings.Replace(lawn, `hardiness = "6a"`, "hardiness = \"6a\"\nnormals = \"station.csv\"", 1))
	w.put("station.csv", "nonsense")
	w.start()
	if r := w.get("/mill/"); r.StatusCode != 503 {
		t.Fatalf("with bad normals: %d", r.StatusCode)
	}
	was := w.feed.sites["mill"].sum
	w.put("station.csv", "other nonsense")
	w.refresh()
	if w.feed.sites["mill"].sum == was {
		t.Error("the new normals were not read")
	}
}

func TestBrokenFileKeepsTheLastGoodProgram(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", lawn)
	w.start()
	calendar := w.page("/mill/program.ics")
	w.put("mill.toml", strings.Replace(lawn, `"loam"`, `"loam<script>"`, 1))
	w.refresh()
	if w.page("/mill/program.ics") != calendar {
		t.Error("the calendar changed")
	}
	wants(t, "the landing page", w.page("/mill/"), "still the program from before", "mill.toml:", "loam&lt;script&gt;")
	lacks(t, "the landing page", w.page("/mill/"), "loam<script>")
	wants(t, "the sheet", w.page("/mill/program.html"), "still the program from before")
	wants(t, "the index", w.page("/"), "its files have errors")
	wants(t, "the log", w.logged(), "last good program is served on", "mill.toml:")

	w.put("mill.toml", lawn)
	w.refresh()
	lacks(t, "the landing page", w.page("/mill/"), "still the program from before")
	w.put("mill.record.csv", record+"nonsense,,,,,,\n")
	w.refresh()
	wants(t, "the landing page", w.page("/mill/"), "still the program from before", "mill.record.csv:2:")
}

func TestNeverLoaded(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", strings.Replace(lawn, `"loam"`, `"<b>"`, 1))
	w.start()
	for _, path := range []string{"/mill/", "/mill/program.ics", "/mill/anything"} {
		r := w.get(path)
		if body := bodyOf(t, r); r.StatusCode != 503 || r.Header.Get("Retry-After") == "" || !strings.Contains(body, "&lt;b&gt;") || strings.Contains(body, "<b>") {
			t.Errorf("%s: %d %.200s", path, r.StatusCode, body)
		}
	}
	w.put("mill.toml", lawn)
	w.refresh()
	w.page("/mill/program.ics")
}

// firstSequence is the SEQUENCE of a calendar that is new on 14 September 2026 at 8:00, in minutes
// since 2020.
const firstSequence = 2448*24*60 + 8*60

func sequenceOf(t *testing.T, calendar, uidPart string) (int, bool) {
	t.Helper()
	events, err := ical.Events([]byte(calendar))
	if err != nil {
		t.Fatal(err)
	}
	job, number, _ := strings.Cut(uidPart, "-") // "east/lime/2026-1" is "east.lime.1.2026" in an id
	i := strings.LastIndexByte(job, '/')
	part := "." + strings.ReplaceAll(job[:i], "/", ".") + "." + number + "." + job[i+1:] + "@"
	for _, e := range events {
		if strings.Contains(e.UID, part) {
			return e.Sequence, e.Cancelled
		}
	}
	t.Fatalf("no event of %s", uidPart)
	return 0, false
}

func TestSequenceSurvivesARestart(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", lawn)
	w.start()
	paths := []string{"/mill/program.ics", "/mill/person/ines.ics", "/mill/area/east.ics"}
	for _, path := range paths {
		w.page(path)
	}
	w.put("mill.toml", strings.Replace(lawn, "2600 sq ft", "2700 sq ft", 1))
	w.pass(time.Hour)
	w.refresh()
	for _, path := range paths {
		if n, _ := sequenceOf(t, w.page(path), "east/lime/2026-1"); n != firstSequence+1 {
			t.Errorf("%s: sequence %d after a change", path, n)
		}
	}
	was := w.get("/mill/program.ics").Header
	w.start() // again, with nothing but the state folder
	is := w.get("/mill/program.ics").Header
	if is.Get("Etag") != was.Get("Etag") || is.Get("Last-Modified") != was.Get("Last-Modified") {
		t.Errorf("after a restart %v, before %v", is, was)
	}
	w.put("mill.toml", strings.Replace(lawn, "2600 sq ft", "2800 sq ft", 1))
	w.start()
	if n, _ := sequenceOf(t, w.page("/mill/program.ics"), "east/lime/2026-1"); n != firstSequence+2 {
		t.Errorf("sequence %d after a restart with a change", n)
	}
}

func TestStateThatCannotBeRead(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", lawn)
	if err := w.state.WriteFile("mill", []byte("a file where the folder should be"), 0o666); err != nil {
		t.Fatal(err)
	}
	w.start()
	if r := w.get("/mill/program.ics"); r.StatusCode != 503 { // rather than begin at SEQUENCE 0 again
		t.Errorf("with a history that cannot be read: %d", r.StatusCode)
	}
}

func TestWithoutState(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", lawn)
	w.state = nil
	w.start()
	w.page("/mill/program.ics")
	w.put("mill.toml", strings.Replace(lawn, "2600 sq ft", "2700 sq ft", 1))
	w.refresh()
	if n, _ := sequenceOf(t, w.page("/mill/program.ics"), "east/lime/2026-1"); n != firstSequence+1 {
		t.Errorf("sequence %d, kept in memory", n)
	}
}

func TestForeignStateIsRefused(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", lawn)
	if err := w.state.MkdirAll("mill", 0o777); err != nil {
		t.Fatal(err)
	}
	if err := w.state.WriteFile("mill/program.ics", []byte("BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	w.start()
	if r := w.get("/mill/program.ics"); r.StatusCode != 503 {
		t.Errorf("status %d", r.StatusCode)
	}
	if b, _ := w.state.ReadFile("mill/program.ics"); len(b) != 32 {
		t.Errorf("the foreign file holds %d bytes now", len(b))
	}
}

// Watch looks once a second, in the time of a bubble.
func TestWatch(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		w := newWorld(t)
		w.put("mill.toml", lawn)
		w.start()
		ctx, stop := context.WithCancel(t.Context())
		done := make(chan struct{})
		go func() { w.feed.Watch(ctx); close(done) }()
		synctest.Wait() // the first round is over
		w.put("new.toml", strings.Replace(lawn, "Oxlo green", "New green", 1))
		time.Sleep(interval - time.Millisecond)
		synctest.Wait()
		if r := w.get("/new/"); r.StatusCode != 404 {
			t.Errorf("before the interval: %d", r.StatusCode)
		}
		time.Sleep(2 * time.Millisecond)
		synctest.Wait()
		wants(t, "the new page", w.page("/new/"), "New green")
		stop()
		<-done
	})
}
