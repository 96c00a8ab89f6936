package main

import (
	"bytes"
	"encoding/csv"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
)

// The sessions in the README are true: each command, run on the first example,
// prints the lines shown, in their order. A line "…" stands for what is left out.
func TestReadmeSessions(t *testing.T) {
	readme, site := readFile(t, "../../README.md"), readFile(t, "../../examples/reading-garden/site.toml")
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

// A command is shown in a block of code, where a reader can copy it.
func TestReadmeCommandsStandInBlocks(t *testing.T) {
	for i, part := range strings.Split(string(readFile(t, "../../README.md")), "```") {
		for line := range strings.Lines(part) {
			if i%2 == 0 && strings.HasPrefix(line, "$ ") {
				t.Errorf("outside a block: %s", line)
			}
		}
	}
}

// What the README says a subscriber sees is in the program, before and after
// the change that it shows: the days and titles listed are the first ones.
func TestReadmeSubscriber(t *testing.T) {
	readme, site := readFile(t, "../../README.md"), readFile(t, "../../examples/reading-garden/site.toml")
	_, block, _ := strings.Cut(string(readme), "```console\n$ vdirsyncer")
	block, _, _ = strings.Cut(block, "```")
	parts := regexp.MustCompile(`(?s)^[^\n]*\n(.*)…\n\$ sed -i 's\|\^away = \.\*\|(.*?)\|'[^\n]*\n\$ vdirsyncer[^\n]*\n(.*)…\n$`).FindStringSubmatch(block)
	if parts == nil {
		t.Fatal("no session of a subscriber")
	}
	away := regexp.MustCompile(`(?m)^away = .*`)
	if !away.Match(site) {
		t.Fatal("the example has no line that the session changes")
	}
	t.Chdir(t.TempDir())
	for i, text := range [][]byte{site, away.ReplaceAll(site, []byte(parts[2]))} {
		if err := os.WriteFile("garden.toml", text, 0o644); err != nil {
			t.Fatal(err)
		}
		out, talk, code := sward("program", "garden.toml", "--format", "csv")
		if code != 0 {
			t.Fatal(talk)
		}
		rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		shown := strings.Split(strings.TrimSpace(parts[1+2*i]), "\n")
		if len(shown) < 2 || len(rows) <= len(shown) {
			t.Fatalf("%d events shown, %d in the program", len(shown), len(rows)-1)
		}
		for j, want := range shown {
			if got := rows[1+j][0] + " " + rows[1+j][3]; got != want {
				t.Errorf("listing %d: the README shows %q, the program holds %q", i+1, want, got)
			}
		}
	}
}

func readFile(t *testing.T, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return data
}
