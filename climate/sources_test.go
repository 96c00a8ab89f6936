package climate

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// Every key beside a figure resolves, and every source is used.
func TestSourcesResolve(t *testing.T) {
	known, used := Sources(), map[string]bool{}
	files, err := filepath.Glob("*.go")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	key := regexp.MustCompile(`\[([a-z][a-z0-9-]+)\]`)
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(string(text)) {
			_, comment, _ := strings.Cut(line, "//")
			for _, m := range key.FindAllStringSubmatch(comment, -1) {
				used[m[1]] = true
				if _, ok := known[m[1]]; !ok {
					t.Errorf("%s: unknown source [%s]", name, m[1])
				}
			}
		}
	}
	for k, s := range known {
		if !used[k] {
			t.Errorf("source %s is not used", k)
		}
		switch s.How {
		case "seen", "part", "memory", "ours":
		default:
			t.Errorf("source %s: how %q", k, s.How)
		}
		if s.Cite() == "" {
			t.Errorf("source %s: no citation", k)
		}
	}
}
