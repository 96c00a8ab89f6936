package page_test

import (
	"encoding/json"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"swardbook/agronomy/material"
	"swardbook/schedule"
	scplan "swardbook/schedule/plan"
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

func load(t testing.TB, file string) *schedule.Site {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	s, problems := sitefile.Load(file, text, func(name string) (io.ReadCloser, error) {
		return os.Open(filepath.Join(filepath.Dir(file), name))
	})
	if schedule.Fatal(problems) {
		t.Fatal(problems)
	}
	return s
}

var plans = map[string]*schedule.Program{}

func planned(t testing.TB, name string) *schedule.Program {
	t.Helper()
	return plan(t, filepath.Join("testdata", name+".toml"))
}

// plan plans a site file with its record book, if it has one. Tests share the
// program: pages only read it.
func plan(t testing.TB, file string) *schedule.Program {
	t.Helper()
	if p, ok := plans[file]; ok {
		return p
	}
	s := load(t, file)
	var book []schedule.Done
	record := strings.TrimSuffix(file, ".toml") + ".record.csv"
	if text, err := os.ReadFile(record); err == nil {
		var problems []schedule.Problem
		if book, problems = sitefile.LoadRecord(record, text, s); schedule.Fatal(problems) {
			t.Fatal(problems)
		}
	}
	p, err := scplan.Program(s, book, schedule.Date{})
	if err != nil {
		t.Fatal(err)
	}
	plans[file] = p
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
	p.Site = load(t, filepath.Join("testdata", name+".toml"))
	for i := range p.Entries {
		e := &p.Entries[i]
		for _, m := range append(material.TradeMaterials(), p.Site.Materials...) {
			if m.ID == e.Material {
				e.Dose = material.DoseOf(m, e.Rate)
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
