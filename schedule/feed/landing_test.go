package feed

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"swardbook/schedule"

	"rsc.io/qr"
)

// The drawing is the code, module by module.
func TestCodeDrawsEveryModule(t *testing.T) {
	const text = "https://example.org/lawns/mill/"
	c, err := newCode(text)
	if err != nil {
		t.Fatal(err)
	}
	q, err := qr.Encode(text, qr.M)
	if err != nil {
		t.Fatal(err)
	}
	dark := map[[2]int]bool{}
	for run := range strings.SplitSeq(strings.TrimPrefix(c.Path, "M"), "M") {
		var x, y, n, back int
		if _, err := fmt.Sscanf(run, "%d %dh%dv1h-%dz", &x, &y, &n, &back); err != nil || n != back || n < 1 {
			t.Fatalf("run %q: %v", run, err)
		}
		for i := range n {
			dark[[2]int{x + i, y}] = true
		}
	}
	if c.Side != q.Size+8 {
		t.Errorf("side %d for %d modules", c.Side, q.Size)
	}
	for y := range c.Side {
		for x := range c.Side {
			if dark[[2]int{x, y}] != q.Black(x-4, y-4) {
				t.Fatalf("module %d, %d is wrong", x, y)
			}
		}
	}
	if _, err := newCode(strings.Repeat("x", 5000)); err == nil {
		t.Error("5000 characters fit a code")
	}
}

// What comes next hangs on the day alone.
func TestNextJobs(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", lawn)
	w.at = time.Date(2026, 9, 1, 8, 0, 0, 0, time.UTC)
	w.start()
	wants(t, "before the program", w.page("/mill/"), "Next: ", "Nothing is spread after ")
	first := programOf(w, "mill").Entries[0].Date
	w.at = first.Time()
	w.refresh()
	wants(t, "on the first day", w.page("/mill/"), "Today: "+first.Words())
	w.at = w.at.AddDate(0, 0, 1)
	w.refresh()
	wants(t, "the day after", w.page("/mill/"), "Still due")
	w.at = time.Date(2026, 12, 24, 8, 0, 0, 0, time.UTC)
	w.refresh()
	lacks(t, "in winter", w.page("/mill/"), "Nothing is spread after ")
	w.at = time.Date(2028, 1, 1, 8, 0, 0, 0, time.UTC)
	w.refresh()
	wants(t, "after the program", w.page("/mill/"), "Nothing more is planned in this program")
}

// programOf plans what is shown of a site.
func programOf(w *world, name string) *schedule.Program {
	w.t.Helper()
	r, err := w.feed.program(w.t.Context(), w.feed.sites[name])
	if err != nil {
		w.t.Fatal(err)
	}
	return r.program
}
