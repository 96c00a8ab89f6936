package feed

import (
	"net/url"
	"strings"
	"testing"
	"time"

	"swardbook/schedule"
)

// What there is to do hangs on the day alone: what is due first, then what comes
// next, then what lies behind with nothing written down.
func TestNextJobs(t *testing.T) {
	w := newWorld(t)
	w.record = true
	w.put("mill.toml", lawn)
	w.at = time.Date(2026, 9, 1, 8, 0, 0, 0, time.UTC)
	w.start()
	const form = `href="done?job=`
	before := w.page("/mill/")
	wants(t, "before the program", before, "next, in ", "Nothing is spread after ")
	lacks(t, "before the program", before, form)
	first := programOf(w, "mill").Entries[0]
	w.at = first.Date.Time()
	w.refresh()
	wants(t, "on the first day", w.page("/mill/"), ">Today</time> <small>"+first.Date.Time().Format("Mon 2 Jan"), form)
	w.at = w.at.AddDate(0, 0, 1)
	w.refresh()
	wants(t, "the day after", w.page("/mill/"), ">Due now</time> <small>since "+first.Date.Time().Format("Mon 2 Jan"), `class="then"`)
	w.at = time.Date(2026, 12, 24, 8, 0, 0, 0, time.UTC)
	w.refresh()
	winter := w.page("/mill/")
	lacks(t, "in winter", winter, "Nothing is spread after ")
	wants(t, "in winter", winter, "2027, in ", "Past its last day, and not recorded")
	w.at = time.Date(2028, 1, 1, 8, 0, 0, 0, time.UTC)
	w.refresh()
	wants(t, "after the program", w.page("/mill/"), "Nothing to do", "nothing more is planned until ")
}

// The form fits its job: one that lies ahead has nothing chosen and says so, a
// sample has no amount, and the choice begins with what can have been done.
func TestFormFitsItsJob(t *testing.T) {
	w := newWorld(t)
	w.record = true
	w.put("mill.toml", lawn)
	w.at = time.Date(2026, 11, 2, 8, 0, 0, 0, time.UTC)
	w.start()
	choice := w.page("/mill/done")
	apart := strings.Index(choice, "Done before its day?")
	if apart < 0 {
		t.Fatal("no job lies ahead")
	}
	for _, e := range programOf(w, "mill").Entries {
		if e.Kind.Notice() {
			continue
		}
		at := strings.Index(choice, "done?job="+url.QueryEscape(e.ID)+`"`)
		ahead := e.Earliest.After(day(w.at))
		if at < 0 || ahead != (at > apart) {
			t.Errorf("%s, from %s on, stands at %d; what lies ahead begins at %d", e.ID, e.Earliest, at, apart)
		}
		form := w.page("/mill/done?job=" + url.QueryEscape(e.ID))
		if chosen := strings.Contains(form, " checked>"); chosen == ahead {
			t.Errorf("%s: chosen beforehand: %v", e.ID, chosen)
		}
		if said := strings.Contains(form, "lies ahead"); said != ahead {
			t.Errorf("%s: says that it lies ahead: %v", e.ID, said)
		}
		if asks := strings.Contains(form, `name="amount"`) && strings.Contains(form, `value="part"`); asks != e.Kind.Spreads() {
			t.Errorf("%s: asks for an amount: %v", e.ID, asks)
		}
	}
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
