package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// shownOn is the day on which the examples are looked at.
var shownOn = map[string]string{
	"reading-garden": "2026-09-18",
	"shore-lawn":     "2026-08-10",
	"infield":        "2027-03-01",
	"orchard-walk":   "2026-09-15",
}

// outputs are the commands whose results lie beside each example's site file.
var outputs = []struct {
	file string
	args []string
}{
	{"soil.txt", []string{"soil", "site.toml"}},
	{"program.txt", []string{"program", "site.toml", "--today", "TODAY"}},
	{"program.json", []string{"program", "site.toml", "--format", "json", "--today", "TODAY"}},
	{"program.ics", []string{"calendar", "site.toml"}},
	{"materials.txt", []string{"materials", "site.toml", "--today", "TODAY"}},
	{"ledger.txt", []string{"ledger", "site.toml", "--today", "TODAY"}},
	{"sheet.html", []string{"sheet", "site.toml", "--today", "TODAY"}},
	{"lesson.md", []string{"lesson", "site.toml", "--format", "markdown"}},
	{"key.md", []string{"lesson", "site.toml", "--key", "--format", "markdown"}},
}

// Every example runs as its README says and gives what lies beside it.
func TestExamples(t *testing.T) {
	dirs, err := filepath.Glob("../../examples/*/site.toml")
	if err != nil || len(dirs) < 4 {
		t.Fatalf("%d examples (%v)", len(dirs), err)
	}
	for _, site := range dirs {
		dir := filepath.Dir(site)
		name := filepath.Base(dir)
		t.Run(name, func(t *testing.T) {
			day, ok := shownOn[name]
			if !ok {
				t.Fatalf("no day to look at %s", name)
			}
			if _, err := os.Stat(filepath.Join(dir, "README.md")); err != nil {
				t.Error(err)
			}
			wd, err := os.Getwd()
			if err != nil {
				t.Fatal(err)
			}
			t.Chdir(dir)
			for _, o := range outputs {
				if _, err := os.Stat("site.record.csv"); err == nil && o.args[0] == "lesson" {
					continue // a lesson is made only of sites without a record book
				}
				args := strings.Split(strings.ReplaceAll(strings.Join(o.args, "\n"), "TODAY", day), "\n")
				var out, talk bytes.Buffer
				now := func() time.Time { return time.Date(2026, 9, 18, 12, 0, 0, 0, time.UTC) }
				env := func(string) string { return "" }
				if code := run(context.Background(), args, strings.NewReader(""), &out, &talk, env, now); code != 0 {
					t.Fatalf("%s: exit code %d: %s", strings.Join(args, " "), code, talk.String())
				}
				compareGolden(t, filepath.Join(wd, dir, o.file), out.Bytes())
			}
		})
	}
}

func compareGolden(t *testing.T, file string, got []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		if kept := filepath.Join(t.ArtifactDir(), filepath.Base(file)); os.WriteFile(kept, got, 0o644) == nil {
			t.Errorf("%s is not what comes out; see %s (go test ./cmd/swardbook -update rewrites it)", file, kept)
		}
	}
}
