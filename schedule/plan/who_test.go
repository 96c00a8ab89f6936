package plan

import (
	"os"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/sitefile"
)

// The entry of a job that is done names who did it, not who was to do it; where the
// record book does not say who did, it names who was to.
func TestWhoDidIt(t *testing.T) {
	text, err := os.ReadFile("../../examples/reading-garden/site.toml")
	if err != nil {
		t.Fatal(err)
	}
	site, problems := sitefile.Load("site.toml", text, nil)
	if schedule.Fatal(problems) {
		t.Fatal(problems)
	}
	day := mustDate(t, "2026-09-23")
	for by, want := range map[string]string{"teo": "Teo", "": "Mara", "a neighbour": "a neighbour"} {
		p := plan(t, site, schedule.Done{Line: 2, Date: day, Area: "east", Job: "east/lime/1", AsPlanned: true, Share: 1, By: by})
		if e := entry(t, p, "east/lime/1"); e.State != schedule.Finished || e.WhoName != want {
			t.Errorf("by %q: %s, %q did it", by, e.State, e.WhoName)
		}
	}
}
