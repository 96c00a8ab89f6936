package main

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// The file of a person who left turns into cancellations that say whose the jobs
// are now, and after 60 days it is removed; a misspelt name is told as one.
func TestTheFileOfALeaver(t *testing.T) {
	dir := t.TempDir()
	text, err := os.ReadFile("testdata/site/fern.toml")
	if err != nil {
		t.Fatal(err)
	}
	site, file := filepath.Join(dir, "fern.toml"), filepath.Join(dir, "mara.ics")
	put := func(text string) {
		if err := os.WriteFile(site, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	calendar := func(who string, day int) (out, talk string, code int) {
		var o, s strings.Builder
		at := time.Date(2026, 9, 12, 12, 0, 0, 0, time.UTC).AddDate(0, 0, day)
		code = run(context.Background(), []string{"calendar", site, "--for", who, "-o", file}, strings.NewReader(""), &o, &s, func(string) string { return "" }, func() time.Time { return at })
		return strings.ReplaceAll(o.String(), dir+"/", ""), s.String(), code
	}
	put(string(text))
	if _, talk, code := calendar("mara", 0); code != 0 {
		t.Fatal(talk)
	}
	put(strings.NewReplacer("mara = \"Mara\"\n", "", `= "mara"`, `= "tovi"`).Replace(string(text)))
	out, talk, code := calendar("mara", 1)
	now, _ := os.ReadFile(file)
	if code != 0 || !strings.Contains(out, "cancelled: Lime East lawn") || strings.Contains(out, "changed: ") || strings.Contains(string(now), "CONFIRMED") || !strings.Contains(string(now), "It is now for Tovi.") {
		t.Errorf("code %d, %s%s\n%s", code, out, talk, now)
	}
	if out, _, code := calendar("mara", 61); code != 0 || out != "mara.ics: nothing changed\n" {
		t.Errorf("on the last day: code %d, %s", code, out)
	}
	for _, who := range []string{"maria", "ghost"} {
		if _, talk, code := calendar(who, 2); code != exitUse || !strings.Contains(talk, `unknown person "`+who+`"`) {
			t.Errorf("%s: code %d, %s", who, code, talk)
		}
	}
	if out, _, code := calendar("mara", 62); code != 0 || !strings.HasPrefix(out, "mara.ics: removed: ") {
		t.Errorf("after 60 days: code %d, %s", code, out)
	}
	if _, err := os.Stat(file); !os.IsNotExist(err) {
		t.Errorf("the file is there still: %v", err)
	}
	if _, talk, code := calendar("mara", 63); code != exitUse || !strings.Contains(talk, `unknown person "mara"`) {
		t.Errorf("after it is gone: code %d, %s", code, talk)
	}
}
