package page_test

import (
	"os"
	"path/filepath"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/page"
)

// The files beside the example sites are the reference for sheets: for each site this
// package must write the same bytes.
func TestExamplesAsTheyLie(t *testing.T) {
	for name, day := range map[string]string{"reading-garden": "2026-09-18", "shore-lawn": "2026-08-10", "infield": "2027-03-01"} {
		dir := filepath.Join("..", "..", "examples", name)
		today, err := schedule.ParseDate(day)
		if err != nil {
			t.Fatal(err)
		}
		p := plan(t, filepath.Join(dir, "site.toml"))
		got, err := page.Sheet(p.Around(today), page.Options{Today: today, Link: p.Site.Calendar.Link})
		if err != nil {
			t.Fatal(err)
		}
		want, err := os.ReadFile(filepath.Join(dir, "sheet.html"))
		if err != nil {
			t.Fatal(err)
		}
		if string(got) != string(want) {
			t.Errorf("the sheet of %s is not what lies in examples (go test ./cmd/swardbook -update rewrites it)", name)
		}
	}
}
