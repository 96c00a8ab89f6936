package page_test

import (
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"swardbook/agronomy"
	"swardbook/schedule"
	"swardbook/schedule/sitefile"
)

var (
	update = flag.Bool("update", false, "write the golden files anew")
	replan = flag.Bool("replan", false, "plan the programs behind the golden files anew")
)

// names are the sites of testdata: a young lawn of two areas in US units, a
// metric warm-season infield with a record book, a lawn without a report.
var names = []string{"garden", "infield", "unread"}

func read(t *testing.T, name string) []byte {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func site(t *testing.T, name string) *schedule.Site {
	t.Helper()
	s, problems := sitefile.Load(name+".toml", read(t, name+".toml"), nil)
	if schedule.Fatal(problems) {
		t.Fatal(problems)
	}
	return s
}

var plans = map[string]*schedule.Program{}

// planned plans a site of testdata with its record book, if it has one. Tests
// share the program: pages only read it.
func planned(t *testing.T, name string) *schedule.Program {
	t.Helper()
	if p, ok := plans[name]; ok {
		return p
	}
	s := site(t, name)
	var book []schedule.Done
	if text, err := os.ReadFile(filepath.Join("testdata", name+".record.csv")); err == nil {
		var problems []schedule.Problem
		if book, problems = sitefile.LoadRecord(name+".record.csv", text, s); schedule.Fatal(problems) {
			t.Fatal(problems)
		}
	}
	p, err := schedule.Plan(s, book)
	if err != nil {
		t.Fatal(err)
	}
	plans[name] = p
	return p
}

// stored is a program that was planned once and stays as it is, so that a
// golden page changes only when this package does.
func stored(t *testing.T, name string) *schedule.Program {
	t.Helper()
	file := name + ".program.json"
	if *replan {
		b, err := schedule.EncodeJSON(planned(t, name))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join("testdata", file), b, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	var p schedule.Program
	if err := json.Unmarshal(read(t, file), &p); err != nil {
		t.Fatal(err)
	}
	p.Site = site(t, name)
	for i := range p.Entries {
		e := &p.Entries[i]
		for _, m := range append(agronomy.TradeMaterials(), p.Site.Materials...) {
			if m.ID == e.Material {
				e.Dose = agronomy.DoseOf(m, e.Rate)
			}
		}
	}
	return &p
}

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile(filepath.Join("testdata", name), got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if string(read(t, name)) != string(got) {
		t.Errorf("testdata/%s differs; look at the page and run go test -update if it is right", name)
	}
}

func date(t *testing.T, s string) schedule.Date {
	t.Helper()
	d, err := schedule.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}
