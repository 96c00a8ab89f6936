package feed

import (
	"net/http"
	"os/signal"
	"syscall"
	"testing"

	"swardbook/schedule/sitefile"
)

// A disk with room for three more bytes: the person is told, nothing is lost,
// and the same form works once there is room.
func TestFullDisk(t *testing.T) {
	w := recording(t)
	before := sitefile.Header + "2026-09-13,east,east/lime/1,,half,,\n"
	w.put("mill.record.csv", before)
	w.refresh()
	v := w.open("east/lime/1")
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
	wants(t, "the log", w.logged(), "calendars cannot be kept")
}
