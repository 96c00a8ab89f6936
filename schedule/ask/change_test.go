package ask

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
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

// A line from which a cell was taken is another line; one whose cells stand in another
// order is the same. Whole lines go below a header of theirs, and need no second one.
func TestChangedLines(t *testing.T) {
	const whole = "date,area,kind,season,n,material,analysis,slow,lime_value,amount,of,by,note\n2026-09-05,lawn,lime,2026,1,stone,,,85,40 lb,40 lb,,late\n"
	const short = "date,area,job,material,amount,by,note\n2026-09-19,lawn,lime,,40 lb,,late\n"
	for _, c := range []struct {
		what, book string
		change     func(Answers) Answers
		struck     int
		headers    int
	}{
		{"nothing", whole, func(a Answers) Answers { return a }, 0, 1},
		{"nothing", short, func(a Answers) Answers { return a }, 0, 1},
		{"a note less", whole, func(a Answers) Answers { return a.Set("record.1.note", "") }, 1, 1},
		{"a note less", short, func(a Answers) Answers { return a.Set("record.1.note", "") }, 1, 2},
		{"another note", whole, func(a Answers) Answers { return a.Set("record.1.note", "early") }, 1, 1},
		{"a line less", whole, func(a Answers) Answers {
			return slices.DeleteFunc(slices.Clone(a), func(one Answer) bool { return strings.HasPrefix(one.Key, "record.1.") })
		}, 1, 1},
		{"other order", whole, func(a Answers) Answers { a = slices.Clone(a); slices.Reverse(a); return a }, 0, 1},
		{"the same line twice", whole, func(a Answers) Answers {
			for _, one := range a {
				if cell, ok := strings.CutPrefix(one.Key, "record.1."); ok {
					a = append(a, answer("record.2."+cell, one.Value))
				}
			}
			return a
		}, 0, 1},
	} {
		a, problems := Read([]byte(commented), []byte(c.book))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		after := c.change(a)
		_, book, err := Change([]byte(commented), []byte(c.book), after)
		if err != nil || strings.Count(string(book), "# struck out: ") != c.struck || strings.Count(string(book), "date,area,") != c.headers {
			t.Errorf("%s: %v\n%s", c.what, err, book)
		}
		again, _ := Read([]byte(commented), book)
		var got, want []string
		for _, l := range again.lines() {
			got = append(got, fmt.Sprint(l.cells))
		}
		for _, l := range after.Tidy().lines() {
			want = append(want, fmt.Sprint(l.cells))
		}
		slices.Sort(got)
		slices.Sort(want)
		if len(got) != len(want) {
			t.Errorf("%s: lines\n%q\nwant\n%q\n%s", c.what, got, want, book)
		}
	}
}

// Keys that are cut short, or name no table, are no way to bring anything down.
func TestOddKeys(t *testing.T) {
	for _, key := range []string{"area", "area.", "material", "record", "record.", "record.1", "form.", "form", ".", "", "crew.who", "crew.who.", "area.a", "area.a.grass.", "material..analysis"} {
		f := Form{answer(key, "12"), answer("area.a.size", "3")}
		a := FromForm(f)
		if len(Problems(a)) == 0 {
			t.Errorf("%q makes a site", key)
		}
		ToForm(append(a, answer(key, "12")))
		ToForm(Answers{answer(key, "12")})
	}
	if ps := Problems(plainLawn.Set("place.zip", "").Set("place.state", "OH").Set("place.normals", "station.csv")); len(ps) == 0 || ps[0].Key != "place.normals" {
		t.Errorf("a station file that nobody can open: %v", ps)
	}
}
