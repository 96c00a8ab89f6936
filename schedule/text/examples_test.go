package text_test

import (
	"cmp"
	"os"
	"path/filepath"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
	"swardbook/schedule/text"
)

// The files beside the example sites are the reference for programs, soil reports,
// ledgers and materials: for each site this package must write the same bytes.
func TestExamplesAsTheyLie(t *testing.T) {
	for name, day := range map[string]string{"reading-garden": "2026-09-18", "shore-lawn": "2026-08-10", "infield": "2027-03-01"} {
		dir := filepath.Join("..", "..", "examples", name)
		file, err := os.ReadFile(filepath.Join(dir, "site.toml"))
		if err != nil {
			t.Fatal(err)
		}
		site, problems := sitefile.Load("site.toml", file, nil)
		if schedule.Fatal(problems) {
			t.Fatal(problems)
		}
		today, err := schedule.ParseDate(day)
		if err != nil {
			t.Fatal(err)
		}
		last, errLast := plan.Through(site, today)
		p, err := plan.Program(site, nil, last)
		if err := cmp.Or(err, errLast); err != nil {
			t.Fatal(err)
		}
		st := text.Style{Today: today}
		for out, got := range map[string]string{
			"program.txt":   text.Program(p.AsOf(today).Around(today), st),
			"ledger.txt":    text.Ledger(p.Title, p.LedgerAround(today), site.Measure(), text.Style{}),
			"materials.txt": text.Materials(p.Title, p.AsOf(today).Around(today).Supplies(), nil, site.Measure(), text.Style{}),
			"soil.txt":      text.Soil(p, false, text.Style{}),
		} {
			want, err := os.ReadFile(filepath.Join(dir, out))
			if err != nil {
				t.Fatal(err)
			}
			if got != string(want) {
				t.Errorf("%s of %s is not what lies in examples (go test ./cmd/swardbook -update rewrites it)", out, name)
			}
		}
	}
}
