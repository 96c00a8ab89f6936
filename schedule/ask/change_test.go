package ask

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A file that goes through the form and back without another answer stays as it is, byte
// for byte: every example, and the file with every key there is.
func TestNothingChanged(t *testing.T) {
	files, err := filepath.Glob("../../examples/*/site.toml")
	if err != nil || len(files) < 3 {
		t.Fatal(err, files)
	}
	for _, file := range append(files, "../sitefile/testdata/full.toml") {
		site, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		book, _ := os.ReadFile(strings.TrimSuffix(file, ".toml") + ".record.csv") // some have none
		a, problems := Read(site, book)
		if len(problems) > 0 {
			t.Errorf("%s: %v", file, problems)
			continue
		}
		newSite, newBook, err := Change(site, book, FromForm(ToForm(a)))
		if err != nil {
			t.Errorf("%s: %v", file, err)
			continue
		}
		if !bytes.Equal(site, newSite) {
			t.Errorf("%s is another:\n%s", file, firstOther(site, newSite))
		}
		if !bytes.Equal(book, newBook) {
			t.Errorf("its record book is another:\n%s", firstOther(book, newBook))
		}
	}
}

func firstOther(a, b []byte) string {
	x, y := strings.Split(string(a), "\n"), strings.Split(string(b), "\n")
	for i := range min(len(x), len(y)) {
		if x[i] != y[i] {
			return x[i] + "\n" + y[i]
		}
	}
	return "the end"
}

const commented = `# Ours since 2019.
title = "Back lawn"  # short
start = 2026-09-01

[place]
zip = "44109" # the house

[area.lawn]
size = "1,800 sq ft"
grass = "tall fescue"

# The report of the autumn.
[area.lawn.soil]
sampled = 2026-08-20
ph = 5.6
buffer = { method = "smp", ph = 6.5 } # in small print
`

// Each change touches its own line, and comments stay.
func TestChange(t *testing.T) {
	a, problems := Read([]byte(commented), nil)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for name, c := range map[string]struct {
		change       func(Answers) Answers
		before, then string // the part of the file, and what it becomes
	}{
		"a value":       {func(a Answers) Answers { return a.Set("area.lawn.soil.ph", "5.8") }, "ph = 5.6", "ph = 5.8"},
		"in braces":     {func(a Answers) Answers { return a.Set("area.lawn.soil.buffer.ph", "6.6") }, "ph = 6.5 }", "ph = 6.6 }"},
		"out of braces": {func(a Answers) Answers { return a.Set("area.lawn.soil.buffer.method", "") }, `{ method = "smp", ph`, "{ ph"},
		"the last of braces": {func(a Answers) Answers {
			return a.Set("area.lawn.soil.buffer.method", "").Set("area.lawn.soil.buffer.ph", "")
		}, "buffer = { method = \"smp\", ph = 6.5 } # in small print\n", ""},
		"taken away": {func(a Answers) Answers { return a.Set("title", "") }, "title = \"Back lawn\"  # short\n", ""},
		"added":      {func(a Answers) Answers { return a.Set("area.lawn.care", "low") }, "\"tall fescue\"\n", "\"tall fescue\"\ncare = \"low\"\n"},
		"at the top": {func(a Answers) Answers { return a.Set("units", "metric") }, "start = 2026-09-01\n", "start = 2026-09-01\nunits = \"metric\"\n"},
		"a list":     {func(a Answers) Answers { return a.Set("crew.days", "sat, sun") }, "small print\n", "small print\n\n[crew]\ndays = [\"sat\", \"sun\"]\n"},
		"a mixture": {func(a Answers) Answers {
			return a.Set("area.lawn.grass", "").Set(`area.lawn.grass."fine fescue"`, "60").Set(`area.lawn.grass."tall fescue"`, "40")
		}, "grass = \"tall fescue\"\n", "grass.\"fine fescue\" = 60\ngrass.\"tall fescue\" = 40\n"},
		"a new table": {func(a Answers) Answers { return a.Set("material.bag1.kind", "lime").Set("material.bag1.cce", "90") }, "small print\n", "small print\n\n[material.bag1]\nkind = \"lime\"\ncce = 90\n"},
		"no report": {func(a Answers) Answers {
			for _, k := range []string{"sampled", "ph", "buffer.method", "buffer.ph"} {
				a = a.Set("area.lawn.soil."+k, "")
			}
			return a
		}, commented[strings.Index(commented, "[area.lawn.soil]"):], ""},
	} {
		got, book, err := Change([]byte(commented), nil, c.change(a))
		want := strings.Replace(commented, c.before, c.then, 1)
		if err != nil || book != nil || string(got) != want {
			t.Errorf("%s: %v\n%s", name, err, got)
		}
	}
}

// Lines of the record book are added, and changed ones struck out.
func TestChangeBook(t *testing.T) {
	const old = "# ours\ndate,area,job,material,amount,by,note\n2026-09-05,lawn,nitrogen,urea,3 lb,,\"a, b\"\n\n2026-09-19,lawn,lime,,40 lb,,\n"
	a, problems := Read([]byte(commented), []byte(old))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	_, book, err := Change([]byte(commented), []byte(old), a)
	if err != nil || string(book) != old {
		t.Errorf("%v\n%s", err, book)
	}
	a = a.Set("record.2.amount", "50 lb").Set("record.3.date", "2026-09-20").Set("record.3.kind", "nitrogen").Set("record.3.amount", "2 lb")
	_, book, err = Change([]byte(commented), []byte(old), a)
	again, problems := Read([]byte(commented), book)
	if err != nil || len(problems) > 0 || !strings.HasPrefix(string(book), strings.Replace(old, "2026-09-19", "# struck out: 2026-09-19", 1)) {
		t.Fatalf("%v %v\n%s", err, problems, book)
	}
	if n := again.Names("record"); len(n) != 3 || again.Get("record.2.amount") != "50 lb" || again.Get("record.3.kind") != "nitrogen" {
		t.Errorf("%v", again.lines())
	}
	_, book, err = Change([]byte(commented), nil, a)
	if err != nil || !strings.HasPrefix(string(book), "date,") {
		t.Errorf("%v\n%s", err, book)
	}
}
