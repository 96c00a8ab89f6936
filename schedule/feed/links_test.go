package feed

import (
	"net/url"
	"strings"
	"testing"

	"swardbook/schedule/ical"
)

// Each event of a served site links to its own place on the sheet, as its last
// line and as its address, and the command stands in none.
func TestEventsLinkToTheirPlace(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", lawn)
	w.start()
	sheet := w.page("/mill/program.html")
	events, err := ical.Events([]byte(w.page("/mill/program.ics")))
	if err != nil || len(events) < 5 {
		t.Fatal(len(events), err)
	}
	for _, e := range events {
		at, err := url.Parse(e.Link)
		if err != nil || !strings.HasPrefix(e.Link, base+"/mill/program.html#") || !strings.HasSuffix(e.Description, "\n"+e.Link) {
			t.Errorf("%s links to %q", e.UID, e.Link)
			continue
		}
		if strings.Count(sheet, `id="`+at.Fragment+`"`) != 1 {
			t.Errorf("%s: the sheet has no place %s", e.UID, at.Fragment)
		}
		if strings.Contains(e.Description, "swardbook record") {
			t.Errorf("%s names the command:\n%s", e.UID, e.Description)
		}
	}
}
