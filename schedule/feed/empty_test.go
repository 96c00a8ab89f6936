package feed

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Where the ground never freezes no day is told to everybody, so that the calendar of a
// person without a job would be empty: it is left out, the page says why, and nothing
// else of the site suffers.
func TestCalendarOfNobodysJobs(t *testing.T) {
	p := newPress(t)
	south := strings.NewReplacer(`state = "OH"`, `state = "FL"`, `hardiness = "6a"`, `hardiness = "10a"`, `oskar = "Oskar"`, "oskar = \"Oskar\"\nida = \"Ida\"",
		`grass = "perennial ryegrass"`, `grass = "bermudagrass"`, `grass = "tall fescue"`, `grass = "zoysiagrass"`).Replace(lawn)
	p.put("mill.toml", south)
	done := p.publish()
	if len(done.Failed) != 0 || done.Sites != 1 {
		t.Fatalf("%+v", done)
	}
	p.start()
	for where, page := range map[string]string{"published": p.file("mill/index.html"), "served": p.page("/mill/")} {
		wants(t, where, page, "Ida: no calendar, as the calendar would be empty", `href="person/ines.ics"`, `href="area/east.ics"`)
		lacks(t, where, page, "person/ida.ics")
	}
	if _, err := os.Stat(filepath.Join(p.out, "mill/person/ida.ics")); err == nil {
		t.Error("an empty calendar was published")
	}
	if r := p.get("/mill/person/ida.ics"); r.StatusCode != 404 {
		t.Errorf("the calendar of nobody's jobs: %d", r.StatusCode)
	}
	for _, path := range []string{"program.ics", "person/ines.ics", "program.html", "program.json"} {
		p.page("/mill/" + path)
	}
}
