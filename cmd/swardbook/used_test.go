package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule/word"
)

// used.txt says which parts of the code name a source: it is read from the
// keys in brackets and in quotes. "go test ./cmd/swardbook -run Used -update"
// writes it anew.
func TestUsed(t *testing.T) {
	known := map[string]map[string]bool{}
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
			text, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			part, _, _ := strings.Cut(strings.TrimSuffix(name, ".go"), "_")
			for _, m := range mark.FindAllStringSubmatch(string(text), -1) {
				for key := range strings.SplitSeq(m[1]+m[2], ", ") {
					if parts, ok := known[key]; ok {
						parts[dir+"/"+part] = true
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
			fmt.Fprintf(&want, "%s: %s\n", r.Key, strings.Join(parts, ", "))
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
