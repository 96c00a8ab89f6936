package feed

import (
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// withoutOskar is the site after Oskar has left and Ines has taken his jobs.
func withoutOskar(text string) string {
	return strings.NewReplacer("oskar = \"Oskar\"\n", "", `"oskar"`, `"ines"`).Replace(text)
}

// The published calendar of somebody gone is cancelled event by event, stays so
// for 60 days whether or not anything else changes, and is then removed.
func TestPublishedLeaver(t *testing.T) {
	p := newPress(t)
	p.put("a.toml", named("a"))
	p.publish()
	p.put("a.toml", withoutOskar(named("a")))
	p.pass(time.Hour)
	p.publish()
	told := p.file("a/person/oskar.ics")
	if strings.Contains(told, "STATUS:CONFIRMED") || !strings.Contains(unfolded(told), "It is now for Ines.") || !strings.Contains(p.file("a/person/ines.ics"), "SUMMARY:Feed") {
		t.Errorf("%s", told)
	}
	if strings.Contains(p.file("a/index.html"), "oskar") {
		t.Error("the landing page offers the calendar still")
	}
	for range 2 {
		p.pass(30 * 24 * time.Hour)
		if done := p.publish(); len(done.Old) != 0 || p.file("a/person/oskar.ics") != told {
			t.Errorf("old %v\n%s", done.Old, p.file("a/person/oskar.ics"))
		}
	}
	p.pass(24 * time.Hour)
	done := p.publish()
	if _, err := os.Stat(filepath.Join(p.out, "a/person/oskar.ics")); !os.IsNotExist(err) || len(done.Old)+len(done.Failed) != 0 {
		t.Errorf("after 60 days: %v, %+v", err, done)
	}
	if done := p.publish(); done.Wrote != 0 {
		t.Errorf("wrote %d once more", done.Wrote)
	}
}

// The feed serves it too, also after a restart, and forgets it after 60 days.
func TestServedLeaver(t *testing.T) {
	for _, how := range []string{"with a state", "in memory"} {
		w := newWorld(t)
		if how == "in memory" {
			w.state = nil
		}
		w.put("a.toml", named("a"))
		w.start()
		get := func() (int, string) {
			q := w.ask(http.MethodGet, "/a/person/oskar.ics", "")
			return q.StatusCode, bodyOf(t, q)
		}
		if code, _ := get(); code != http.StatusOK {
			t.Fatalf("%s: %d", how, code)
		}
		w.put("a.toml", withoutOskar(named("a")))
		w.pass(time.Hour)
		w.refresh()
		if how == "with a state" {
			w.start() // anew
		}
		code, told := get()
		if code != http.StatusOK || strings.Contains(told, "STATUS:CONFIRMED") || !strings.Contains(unfolded(told), "It is now for Ines.") {
			t.Errorf("%s: %d\n%s", how, code, told)
		}
		if q := w.ask(http.MethodGet, "/a/person/ghost.ics", ""); q.StatusCode != http.StatusNotFound {
			t.Errorf("%s: a person who never was: %d", how, q.StatusCode)
		}
		w.pass(60 * 24 * time.Hour)
		w.refresh()
		if code, again := get(); code != http.StatusOK || again != told {
			t.Errorf("%s: on the last day: %d\n%s", how, code, again)
		}
		w.pass(24 * time.Hour)
		w.refresh()
		for range 2 {
			if code, _ := get(); code != http.StatusNotFound {
				t.Errorf("%s: after 60 days: %d", how, code)
			}
		}
		if w.state != nil {
			if _, err := fs.Stat(w.state.FS(), "a/person/oskar.ics"); err == nil {
				t.Errorf("%s: its file is there still", how)
			}
		}
	}
}

// unfolded puts the lines of a calendar together again.
func unfolded(text string) string { return strings.ReplaceAll(text, "\r\n ", "") }
