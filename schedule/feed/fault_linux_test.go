package feed

import (
	"net/http"
	"os/signal"
	"strings"
	"syscall"
	"testing"
	"time"

	"swardbook/schedule/sitefile"
)

// A disk with room for three more bytes: the person is told, nothing is lost,
// and the same form works once there is room.
func TestFullDisk(t *testing.T) {
	w := recording(t)
	// The book is so large that it is the only file which the limit meets: what the test
	// command writes down of the files that a test opens has its turn at any time.
	before := sitefile.ShortHeader + "2026-09-13,east,east/lime/1,,half,,\n" + strings.Repeat("# "+strings.Repeat("-", 97)+"\n", 10_000)
	w.put("mill.record.csv", before)
	w.refresh()
	v := w.open("east/lime/2026-1")
	calendar := w.page("/mill/program.ics")

	signal.Ignore(syscall.SIGXFSZ)
	defer signal.Reset(syscall.SIGXFSZ)
	var usual syscall.Rlimit
	if err := syscall.Getrlimit(syscall.RLIMIT_FSIZE, &usual); err != nil {
		t.Fatal(err)
	}
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: uint64(len(before)) + 3, Max: usual.Max}); err != nil {
		t.Fatal(err)
	}
	r := w.post(v)
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &usual); err != nil {
		t.Fatal(err)
	}

	if r.StatusCode != http.StatusInternalServerError {
		t.Errorf("status %d", r.StatusCode)
	}
	wants(t, "the page", bodyOf(t, r), "Not recorded", "is as it was")
	if w.book() != before {
		t.Errorf("the book is now %q", w.book())
	}
	if w.page("/mill/program.ics") != calendar {
		t.Error("the calendar changed")
	}
	if r := w.post(v); r.StatusCode != 200 {
		t.Errorf("with room again: %d", r.StatusCode)
	}
}

// A state folder in which nothing can be made: served from memory, with a
// warning, said once.
func TestStateThatCannotBeWritten(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", lawn)
	w.state = openRoot(t, "/proc")
	w.start()
	w.page("/mill/program.ics")
	w.page("/mill/area/east.ics")
	if n := strings.Count(w.logged(), "calendars cannot be kept"); n != 1 {
		t.Errorf("said %d times", n)
	}
}

// A disk that takes the small files of a site and not its sheet: every site is
// named with the file that did not fit, and all files are as they were.
func TestPublishOnAFullDisk(t *testing.T) {
	p := newPress(t)
	p.put("a.toml", named("a"))
	p.put("b.toml", named("b"))
	p.publish()
	was := treeOf(t, p.out)
	p.pass(24 * time.Hour)
	p.put("a.toml", strings.Replace(named("a"), "2600 sq ft", "2700 sq ft", 1))

	signal.Ignore(syscall.SIGXFSZ)
	defer signal.Reset(syscall.SIGXFSZ)
	var usual syscall.Rlimit
	if err := syscall.Getrlimit(syscall.RLIMIT_FSIZE, &usual); err != nil {
		t.Fatal(err)
	}
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: 60 << 10, Max: usual.Max}); err != nil {
		t.Fatal(err)
	}
	done := p.publish()
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &usual); err != nil {
		t.Fatal(err)
	}

	if len(done.Failed) != 2 || done.Failed[0].Name != "a" || done.Failed[1].Name != "b" {
		t.Fatalf("failed: %+v", done.Failed)
	}
	wants(t, "the failure", done.Failed[0].Problems[0].Error(), "a.toml", "could not write program.html", "file too large")
	is := treeOf(t, p.out)
	for name, at := range was {
		if name != "index.html" && !is[name].Equal(at) {
			t.Errorf("%s was touched", name)
		}
	}
	if len(is) != len(was) {
		t.Errorf("%d files, before %d", len(is), len(was))
	}
	if done := p.publish(); len(done.Failed) != 0 {
		t.Errorf("with room again: %+v", done.Failed)
	}
}
