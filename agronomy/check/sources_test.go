package check

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"swardbook/agronomy"
)

var (
	lineKey   = regexp.MustCompile(`\[([a-z]+[a-z0-9]*-?[a-z0-9-]*)\]`)
	keyString = regexp.MustCompile(`"([a-z0-9]+(?:-[a-z0-9]+)*(?:, [a-z0-9]+(?:-[a-z0-9]+)*)*)"`)
	ownKey    = regexp.MustCompile(`(?m)^\t"([a-z0-9-]+)":\s*\{`)
)

// TestSources holds that a key cited at a line of code resolves, that each
// key has one home, and that every source listed is cited somewhere.
func TestSources(t *testing.T) {
	all := agronomy.Sources()
	home := map[string]string{}
	used := map[string]bool{}
	var files []string
	for _, pattern := range []string{"../*.go", "../*/*.go"} {
		more, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, more...)
	}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if strings.HasPrefix(filepath.Base(file), "sources") {
			for _, m := range ownKey.FindAllStringSubmatch(string(data), -1) {
				if other := home[m[1]]; other != "" {
					t.Errorf("%s is listed in %s and in %s", m[1], other, file)
				}
				home[m[1]] = file
			}
			continue
		}
		for i, line := range strings.Split(string(data), "\n") {
			if code, comment, found := strings.Cut(line, "//"); found {
				for _, m := range lineKey.FindAllStringSubmatch(comment, -1) {
					if _, ok := all[m[1]]; !ok && strings.Contains(m[1], "-") {
						t.Errorf("%s:%d: no source %q", file, i+1, m[1])
					}
					used[m[1]] = true
				}
				line = code
			}
			for _, m := range keyString.FindAllStringSubmatch(line, -1) {
				for key := range strings.SplitSeq(m[1], ", ") {
					used[key] = true
				}
			}
		}
	}
	for _, c := range loadChecks(t) {
		for key := range strings.SplitSeq(c.Source, ", ") {
			if _, ok := all[key]; !ok {
				t.Errorf("check %s: no source %q", c.ID, key)
			}
			used[key] = true
		}
	}
	for key, s := range all {
		if !used[key] {
			t.Errorf("source %s is never cited", key)
		}
		if home[key] == "" {
			t.Errorf("source %s has no home", key)
		}
		switch s.How {
		case "seen", "part", "memory", "common":
		default:
			t.Errorf("source %s: how = %q", key, s.How)
		}
		if s.Cite() == "" {
			t.Errorf("source %s has no citation", key)
		}
	}
}
