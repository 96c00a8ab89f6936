package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule/text"
	"swardbook/schedule/word"
)

// used.txt says how many lines of the code name a source and in which parts: it
// is read from the keys in brackets and in quotes. "go test ./cmd/swardbook -run Used -update"
// writes it anew.
func TestUsed(t *testing.T) {
	known, lines := map[string]map[string]bool{}, map[string]int{}
	for _, r := range word.References() {
		known[r.Key] = map[string]bool{}
	}
	mark := regexp.MustCompile(`\[([a-z0-9-]+)\]|"([a-z0-9-]+(?:, [a-z0-9-]+)*)"`)
	for _, dir := range pure {
		files, err := filepath.Glob("../../" + dir + "/*.go")
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: no files (%v)", dir, err)
		}
		for _, f := range files {
			name := filepath.Base(f)
			if strings.HasSuffix(name, "_test.go") || strings.HasPrefix(name, "sources") || name == "cite.go" {
				continue
			}
			data, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			part, _, _ := strings.Cut(strings.TrimSuffix(name, ".go"), "_")
			for line := range strings.Lines(string(data)) {
				here := map[string]bool{}
				for _, m := range mark.FindAllStringSubmatch(line, -1) {
					for key := range strings.SplitSeq(m[1]+m[2], ", ") {
						if parts, ok := known[key]; ok && !here[key] {
							parts[dir+"/"+part], here[key] = true, true
							lines[key]++
						}
					}
				}
			}
		}
	}
	var want strings.Builder
	for _, r := range word.References() {
		var parts []string
		for p := range known[r.Key] {
			parts = append(parts, p)
		}
		slices.Sort(parts)
		if len(parts) > 0 {
			fmt.Fprintf(&want, "%s %d: %s\n", r.Key, lines[r.Key], strings.Join(parts, ", "))
		}
	}
	if *update {
		if err := os.WriteFile("used.txt", []byte(want.String()), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	if want.String() != used {
		t.Error("used.txt is not what the code says; write it anew with -update")
	}
}

// The list begins with the forty published sources that the code names most
// often, by its own count, and leaves out none.
func TestSourcesBeginWithTheDeciding(t *testing.T) {
	groups := sources()
	first := groups[0].Sources
	if len(first) != deciding {
		t.Fatalf("%d sources come first", len(first))
	}
	least := first[len(first)-1].Figures
	for i, r := range first {
		if i > 0 && r.Figures > first[i-1].Figures {
			t.Errorf("%s, with %d places, stands below %s, with %d", r.Key, r.Figures, first[i-1].Key, first[i-1].Figures)
		}
	}
	for _, r := range groups[1].Sources {
		if r.Figures > least {
			t.Errorf("%s, with %d places, is not among the first; the last of them has %d", r.Key, r.Figures, least)
		}
	}
	listed := map[string]int{}
	for _, r := range inGroups(groups) {
		listed[r.Key]++
	}
	for _, r := range word.References() {
		if listed[r.Key] != 1 {
			t.Errorf("%s is listed %d times", r.Key, listed[r.Key])
		}
	}
	places := 0
	for _, r := range slices.Concat(first, groups[1].Sources) {
		places += r.Figures
	}
	common, _ := usedFor("common")
	want := fmt.Sprintf("%d published sources are named at %d places in the code, each beside a figure or a rule; at %d it says common practice", len(first)+len(groups[1].Sources), places, common)
	if common == 0 || !strings.HasPrefix(groups[0].Words, want) {
		t.Errorf("%q does not begin %q", groups[0].Words, want)
	}
	if n, parts := usedFor("usda-1957"); n < 10 || !slices.Contains(parts, "agronomy/lime/texture") {
		t.Errorf("usda-1957: %d places, %v", n, parts)
	}
}

// Every short name finds its source.
func TestShortNamesFind(t *testing.T) {
	all := inGroups(sources())
	for _, r := range all {
		for _, asked := range []string{r.Key, r.Tag, strings.ToUpper(r.Tag)} {
			found, err := findSources(all, asked)
			if err != nil || !slices.ContainsFunc(found, func(f text.Source) bool { return f.Key == r.Key || asked != r.Key && strings.EqualFold(f.Key, asked) }) {
				t.Errorf("%q does not find %s (%v)", asked, r.Key, err)
			}
		}
	}
}
