package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/sitefile"
)

func TestReplaceFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "out.txt")
	for i, want := range []struct {
		data    string
		changed bool
	}{{"one", true}, {"one", false}, {"two", true}} {
		changed, err := replaceFile(path, []byte(want.data))
		got, _ := os.ReadFile(path)
		if err != nil || changed != want.changed || string(got) != want.data {
			t.Errorf("%d: changed %v, err %v, content %q", i, changed, err, got)
		}
	}
	if err := os.Chmod(path, 0o640); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(dir, "link")
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	if _, err := replaceFile(link, []byte("three")); err != nil {
		t.Fatal(err)
	}
	info, err := os.Lstat(link)
	if err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is no link any more: %v", err)
	}
	if info, _ := os.Stat(path); info.Mode().Perm() != 0o640 {
		t.Errorf("the mode became %v", info.Mode())
	}
	left, _ := os.ReadDir(dir)
	if len(left) != 2 {
		t.Errorf("left behind: %v", left)
	}
	if _, err := replaceFile(dir, nil); err == nil {
		t.Error("a folder was written over")
	}
	if _, err := replaceFile(filepath.Join(dir, "no", "such"), nil); err == nil || !strings.Contains(err.Error(), "could not write") {
		t.Errorf("no folder: %v", err)
	}
}

func TestNotOverInput(t *testing.T) {
	dir := t.TempDir()
	site, hard := filepath.Join(dir, "a.toml"), filepath.Join(dir, "b.toml")
	if err := os.WriteFile(site, []byte("x"), 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Link(site, hard); err != nil {
		t.Fatal(err)
	}
	record := filepath.Join(dir, "a.record.csv") // not there yet
	for _, out := range []string{site, dir + "/./a.toml", hard, record} {
		if err := notInput(out, []string{site, record}); err == nil {
			t.Errorf("%s may be written over", out)
		}
	}
	if err := notInput(filepath.Join(dir, "c.toml"), []string{site, record}); err != nil {
		t.Error(err)
	}
}

// Fifty recorders at once lose no line and double none.
func TestAppendTogether(t *testing.T) {
	path := filepath.Join(t.TempDir(), "site.record.csv")
	var wg sync.WaitGroup
	for i := range 50 {
		wg.Go(func() {
			d := schedule.Done{Date: schedule.Date{Year: 2026, Month: 9, Day: 19}, Area: "east", Job: "nitrogen", Note: fmt.Sprintf("n%02d", i)}
			if err := appendRecord(path, sitefile.ShortLine(d, "1 lb")); err != nil {
				t.Error(err)
			}
		})
	}
	wg.Wait()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSuffix(string(data), "\n"), "\n")
	if len(lines) != 51 || lines[0]+"\n" != sitefile.Header {
		t.Fatalf("%d lines, the first %q", len(lines), lines[0])
	}
	for i := range 50 {
		if n := strings.Count(string(data), fmt.Sprintf("n%02d", i)); n != 1 {
			t.Errorf("n%02d is there %d times", i, n)
		}
	}
}

// Where the last line of a record book lacks its line end, one is added before the new
// line.
func TestAppendAfterTornLine(t *testing.T) {
	path := filepath.Join(t.TempDir(), "site.record.csv")
	if err := os.WriteFile(path, []byte(sitefile.Header+"# torn"), 0o666); err != nil {
		t.Fatal(err)
	}
	if err := appendRecord(path, "a\n"); err != nil {
		t.Fatal(err)
	}
	if got, _ := os.ReadFile(path); string(got) != sitefile.Header+"# torn\na\n" {
		t.Errorf("%q", got)
	}
	if err := appendRecord(filepath.Join(path, "x"), "a\n"); err == nil {
		t.Error("a file was taken for a folder")
	}
}

// Output that does not go to a terminal gets no colour; COLUMNS sets its width.
func TestStyle(t *testing.T) {
	file, err := os.Create(filepath.Join(t.TempDir(), "out"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	columns := map[string]string{"COLUMNS": "100"}
	for _, s := range []*session{{stdout: &bytes.Buffer{}}, {stdout: file}} {
		s.env = func(name string) string { return columns[name] }
		st := s.style("", schedule.Date{})
		if st.Colour || st.Width != 100 {
			t.Errorf("%T: %+v", s.stdout, st)
		}
	}
}

func BenchmarkProgram(b *testing.B) {
	for b.Loop() {
		if _, talk, code := sward("program", "testdata/site/fern.toml"); code != 0 {
			b.Fatal(talk)
		}
	}
}

// Of a calendar file larger than 8 MiB no more is read than shows that it is too large,
// and the file is left as it is.
func TestCalendarTooLarge(t *testing.T) {
	file := filepath.Join(t.TempDir(), "lawn.ics")
	large := bytes.Repeat([]byte(" "), 8<<20+100)
	if err := os.WriteFile(file, large, 0o600); err != nil {
		t.Fatal(err)
	}
	var out, talk bytes.Buffer
	code := run(context.Background(), []string{"calendar", "testdata/site/fern.toml", "-o", file, "--today", "2026-09-12"}, strings.NewReader(""), &out, &talk, func(string) string { return "" }, time.Now)
	if code == 0 || !strings.Contains(talk.String(), "the file is larger than 8 MiB") || !bytes.Equal(must(os.ReadFile(file)), large) {
		t.Errorf("ends with %d: %s", code, talk.String())
	}
}

// A form of output that a command does not have is refused before anything is worked out,
// and the forms it has are named.
func TestUnknownFormIsRefused(t *testing.T) {
	const site = "testdata/site/fern.toml"
	for _, args := range [][]string{{"check", site}, {"climate", "OH", "6a"}, {"ledger", site}, {"materials", site}, {"program", site}, {"roster", site}, {"soil", site}, {"sources"}, {"why", site, "east/lime/2026-1"}} {
		out, talk, code := sward(append(args, "--format", "xml")...)
		if code != exitUse || out != "" || !strings.Contains(talk, `--format: "xml" is not one of text, json`) {
			t.Errorf("%s: %d, %q, %q", args[0], code, out, talk)
		}
	}
}
