package main

import (
	"bytes"
	"os"
	"slices"
	"strings"
	"testing"
	"time"
)

// The sessions in the README are true: each command, run on the first example,
// prints the lines shown, in their order. A line "…" stands for what is left out.
func TestReadmeSessions(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	site, err := os.ReadFile("../../examples/reading-garden/site.toml")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	if err := os.WriteFile("site.toml", site, 0o644); err != nil {
		t.Fatal(err)
	}
	sessions := 0
	for _, block := range strings.Split(string(readme), "```console\n")[1:] {
		block, _, _ = strings.Cut(block, "```")
		lines := strings.Split(strings.TrimSuffix(block, "\n"), "\n")
		line, ok := strings.CutPrefix(lines[0], "$ swardbook ")
		if !ok {
			continue // a session with other tools
		}
		sessions++
		var out, talk bytes.Buffer
		now := func() time.Time { return time.Date(2026, 9, 24, 12, 0, 0, 0, time.UTC) }
		code := run(t.Context(), words(t, line), strings.NewReader(""), &out, &talk, func(string) string { return "" }, now)
		if code != 0 {
			t.Errorf("%s: exit code %d: %s", line, code, talk.String())
		}
		printed := strings.Split(out.String(), "\n")
		for _, want := range lines[1:] {
			if want == "…" {
				continue
			}
			i := slices.Index(printed, want)
			if i < 0 {
				t.Errorf("%s: does not print, or not in this order: %q", line, want)
				break
			}
			printed = printed[i+1:]
		}
	}
	if sessions < 3 {
		t.Errorf("%d sessions found", sessions)
	}
}
