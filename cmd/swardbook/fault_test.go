package main

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/plan"
)

// safeTalk gathers what is said at once by a command and by its log.
type safeTalk struct {
	mu   sync.Mutex
	said strings.Builder
}

func (t *safeTalk) Write(p []byte) (int, error) {
	t.mu.Lock()
	defer t.mu.Unlock()
	return t.said.Write(p)
}

// faulty runs a command with a planner that panics at sites titled "Bad".
func faulty(ctx context.Context, args ...string) (talk string, code int) {
	var b safeTalk
	s := &session{ctx: ctx, stdin: strings.NewReader(""), stdout: &b, stderr: &b, now: time.Now,
		env: func(string) string { return "" },
		planner: func(s *schedule.Site, book []schedule.Done, last schedule.Date) (*schedule.Program, error) {
			if s.Title == "Bad" {
				panic("planted")
			}
			return plan.Program(s, book, last)
		}}
	code = s.run(args)
	return b.said.String(), code
}

// Every command that goes over sites names the one with which the program
// panics, goes on with the others, and ends with 3.
func TestPanicNamesItsSite(t *testing.T) {
	dir := t.TempDir()
	sites := filepath.Join(dir, "sites")
	if err := os.Mkdir(sites, 0o777); err != nil {
		t.Fatal(err)
	}
	good, err := os.ReadFile("testdata/site/fern.toml")
	if err != nil {
		t.Fatal(err)
	}
	bad := strings.Replace(strings.Replace(string(good), "id = \"fern", "id = \"bad", 1), "title = ", "title = \"Bad\" #", 1)
	for name, text := range map[string]string{"bad.toml": bad, "fern.toml": string(good)} {
		if err := os.WriteFile(filepath.Join(sites, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	badFile, fern := filepath.Join(sites, "bad.toml"), filepath.Join(sites, "fern.toml")
	out := filepath.Join(dir, "public")
	for _, args := range [][]string{
		{"publish", sites, "-o", out},
		{"compare", fern, badFile},
		{"compare", fern, "--vary", "title=Bad"},
		{"check", badFile},
		{"program", badFile},
	} {
		talk, code := faulty(t.Context(), args...)
		if code != exitSite || !strings.Contains(talk, "planted") || !strings.Contains(talk, "fault_test.go") ||
			!strings.Contains(talk, "bad") && !strings.Contains(talk, "with title = Bad") {
			t.Errorf("%v: code %d, %s", args, code, talk)
		}
	}
	if _, err := os.Stat(filepath.Join(out, "fern", "program.ics")); err != nil {
		t.Error(err)
	}
	ctx, stop := context.WithTimeout(t.Context(), 2*time.Second)
	defer stop()
	talk, code := faulty(ctx, "serve", sites, "--addr", "127.0.0.1:0")
	if code != exitSite || !strings.Contains(talk, "planted") || !strings.Contains(talk, "says where: bad\n") {
		t.Errorf("serve: code %d, %s", code, talk)
	}
}
