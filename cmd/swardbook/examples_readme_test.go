package main

import (
	"bytes"
	"context"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
)

var (
	spans    = regexp.MustCompile("`[^`]+`")
	links    = regexp.MustCompile(`\]\([^)]*\)`)
	dates    = regexp.MustCompile(`\b\d{1,2} (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)\b( \d{4})?`)
	readings = regexp.MustCompile(`\bpH \d+\.\d\b`)
	analyses = regexp.MustCompile(`\b\d+-\d+-\d+\b`)
	figures  = regexp.MustCompile(`\b\d[\d,]*(\.\d+)?( (lb|kg|g|L|m²|ft|sq ft|ppm|packs?)\b)?`)
	inWords  = regexp.MustCompile(`(?i)\b(three|four|five|six|seven|eight|nine|ten|eleven|twelve|dozen)\b`)
)

// What the README of an example says is what the program says: each figure with its
// unit, each date and each sentence in quotes stands in the files beside it.
func TestExampleReadmes(t *testing.T) {
	files, err := filepath.Glob("../../examples/*/README.md")
	if err != nil || len(files) != len(shownOn) {
		t.Fatalf("%d READMEs (%v)", len(files), err)
	}
	for _, file := range files {
		dir := filepath.Dir(file)
		var said strings.Builder
		for _, name := range []string{"site.toml", "site.record.csv", "program.txt", "soil.txt", "materials.txt", "ledger.txt"} {
			data, err := os.ReadFile(filepath.Join(dir, name))
			if err != nil && name != "site.record.csv" {
				t.Fatal(err)
			}
			if filepath.Ext(name) == ".csv" {
				data = []byte(bookInWords(t, string(data)))
			}
			said.Write(data)
			said.WriteByte('\n')
		}
		wrong, checked := notSaid(string(readFile(t, file)), said.String())
		for _, w := range wrong {
			t.Errorf("%s: %s", file, w)
		}
		if checked < 8 {
			t.Errorf("%s: only %d things checked", file, checked)
		}
	}
}

// notSaid lists what a README claims and the files do not say, and counts the claims.
func notSaid(readme, said string) (wrong []string, checked int) {
	said = flat(said)
	var prose []string
	for line := range strings.Lines(readme) {
		if !strings.HasPrefix(line, "    ") {
			prose = append(prose, regexp.MustCompile(`^\d+\. `).ReplaceAllString(line, ""))
		}
	}
	text := flat(strings.Join(prose, ""))
	claim := func(what string) {
		checked++
		if !within(said, what) {
			wrong = append(wrong, "the program does not say "+what)
		}
	}
	for _, span := range spans.FindAllString(text, -1) {
		if span = strings.Trim(span, "`"); !strings.HasPrefix(span, "swardbook ") && filepath.Ext(span) == "" {
			claim(span)
		}
	}
	text = links.ReplaceAllString(spans.ReplaceAllString(text, ""), "")
	for _, kind := range []*regexp.Regexp{dates, readings, analyses, figures} {
		for _, what := range kind.FindAllString(text, -1) {
			claim(what)
		}
		text = kind.ReplaceAllString(text, "")
	}
	if w := inWords.FindString(text); w != "" {
		wrong = append(wrong, "a number in words cannot be checked: "+w)
	}
	return wrong, checked
}

// bookInWords is a record book with its days as they are written for people.
func bookInWords(t *testing.T, book string) string {
	lines := strings.Split(strings.TrimSpace(book), "\n")
	for i, line := range lines[min(1, len(lines)):] {
		cells := strings.Split(line, ",")
		day, err := time.Parse(time.DateOnly, cells[0])
		if err != nil {
			t.Fatal(err)
		}
		cells[0] = day.Format("2 Jan 2006")
		lines[i+1] = strings.Join(cells, " | ")
	}
	return strings.Join(lines, "\n")
}

// within finds what is said as words of their own: "9 lb" is not said by "9.9 lb".
func within(said, what string) bool {
	for rest := said; ; {
		before, after, ok := strings.Cut(rest, what)
		if !ok {
			return false
		}
		if !regexp.MustCompile(`[\d.,]$`).MatchString(before) && !regexp.MustCompile(`^([.,]?\d|[a-z])`).MatchString(after) {
			return true
		}
		rest = what[1:] + after
	}
}

func flat(s string) string { return strings.Join(strings.Fields(s), " ") }

// The check sees a wrong figure, date, analysis or sentence.
func TestExampleReadmesSeen(t *testing.T) {
	const said = "Lime 60 lb on 30 Sep 2026, pH 5.0, 18-24-12, by itself it takes a year"
	for readme, wrong := range map[string]int{
		"60 lb of lime on 30 Sep, pH 5.0, 18-24-12: `by itself it takes\na year`": 0,
		"60 lb on 30 Sep 2026":    0,
		"6 lb":                    1,
		"60 kg":                   1,
		"3 Sep":                   1,
		"30 Sep 2025":             1,
		"pH 5.1":                  1,
		"8-24-12":                 1,
		"`by itself it takes an`": 1,
		"five feedings":           1,
	} {
		if got, _ := notSaid(readme, said); len(got) != wrong {
			t.Errorf("%q: %q", readme, got)
		}
	}
}

// The record book of the walk is what its README's lines write.
func TestExampleRecordBook(t *testing.T) {
	const walk = "../../examples/orchard-walk"
	want := readFile(t, filepath.Join(walk, "site.record.csv"))
	site, blocks := readFile(t, filepath.Join(walk, "site.toml")), readmeBlocks(t, string(readFile(t, filepath.Join(walk, "README.md"))))
	t.Chdir(t.TempDir())
	if err := os.WriteFile("site.toml", site, 0o644); err != nil {
		t.Fatal(err)
	}
	written := 0
	for _, line := range blocks[0].lines {
		args := words(t, line)
		var talk bytes.Buffer
		now := func() time.Time { return time.Time{} }
		if code := run(context.Background(), args[1:], strings.NewReader(""), &talk, &talk, func(string) string { return "" }, now); code != 0 {
			t.Fatalf("%s: exit code %d: %s", line, code, talk.String())
		}
		written++
	}
	if got := readFile(t, "site.record.csv"); written < 10 || !bytes.Equal(got, want) {
		t.Errorf("%d lines write\n%s\nand the example holds\n%s", written, got, want)
	}
	seasons := map[string]bool{}
	for _, line := range strings.Split(strings.TrimSpace(string(want)), "\n")[1:] {
		seasons[strings.Split(line, ",")[3]] = true
	}
	if !slices.Equal(slices.Sorted(maps.Keys(seasons)), []string{"2024", "2025"}) {
		t.Errorf("seasons %v", seasons)
	}
}
