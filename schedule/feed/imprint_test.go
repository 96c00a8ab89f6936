package feed

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/plan"
)

// counted makes a press whose plans are counted.
func counted(t *testing.T) (*press, *atomic.Int64) {
	p, n := newPress(t), &atomic.Int64{}
	p.o.Plan = func(s *schedule.Site, book []schedule.Done, last schedule.Date) (*schedule.Program, error) {
		n.Add(1)
		return plan.Program(s, book, last)
	}
	return p, n
}

// What is as it was is not planned again; each of these is a change.
func TestUnchangedSitesAreNotPlanned(t *testing.T) {
	const secret = "[calendar]\nsecret = \"heron-under-willow-4711\"\n"
	p, plans := counted(t)
	p.put("mill.toml", strings.Replace(lawn, `hardiness = "6a"`, "hardiness = \"6a\"\nnormals = \"station.csv\"", 1))
	station, err := os.ReadFile("../../cmd/swardbook/testdata/site/station.csv")
	if err != nil {
		t.Fatal(err)
	}
	p.put("station.csv", string(station))
	p.put("quiet.toml", named("quiet")+secret)
	if done := p.publish(); len(done.Failed) != 0 || plans.Load() != 2 {
		t.Fatalf("%+v, %d plans", done.Failed, plans.Load())
	}
	// keep changes a file without a change of its size or time.
	keep := func(name, old, new string) {
		file := filepath.Join(p.dir, name)
		info, err := os.Stat(file)
		if err != nil {
			t.Fatal(err)
		}
		text, err := os.ReadFile(file)
		if err != nil || !strings.Contains(string(text), old) || len(old) != len(new) {
			t.Fatal(err, name, old)
		}
		p.put(name, strings.Replace(string(text), old, new, 1))
		if err := os.Chtimes(file, info.ModTime(), info.ModTime()); err != nil {
			t.Fatal(err)
		}
	}
	page := func(name string) string { return filepath.Join(p.out, name) }
	for _, c := range []struct {
		what   string
		change func()
		want   int64
	}{
		{"nothing", func() {}, 0},
		{"a byte under the old time", func() { keep("mill.toml", "2600 sq ft", "2700 sq ft") }, 1},
		{"a byte of a site with a secret", func() { keep("quiet.toml", "2600 sq ft", "2700 sq ft") }, 1},
		{"a byte of the normals", func() { keep("station.csv", "36.1", "36.2") }, 1},
		{"a record book", func() { p.put("mill.record.csv", record) }, 1},
		{"a line in it", func() { p.put("mill.record.csv", record+"2026-09-14,east,east/lime/1,,half,ines,\n") }, 1},
		{"a page that is gone", func() { os.Remove(page("mill/program.json")) }, 1},
		{"a page that somebody wrote over", func() { os.WriteFile(page("mill/index.html"), []byte("x"), 0o666) }, 1},
		{"an imprint that is cut short", func() { os.WriteFile(page("mill/"+imprintFile), []byte(`{"of":`), 0o666) }, 1},
		{"another version", func() { p.o.Version = "2" }, 2},
		{"another address", func() { p.o.Base = "https://example.org/other" }, 2},
		{"the same day", func() { p.pass(time.Hour) }, 0},
		{"the next day", func() { p.pass(24 * time.Hour) }, 2},
		{"nothing again", func() {}, 0},
	} {
		plans.Store(0)
		c.change()
		done := p.publish()
		if got := plans.Load(); got != c.want || len(done.Failed) != 0 {
			t.Errorf("%s: %d plans, want %d; %+v", c.what, got, c.want, done.Failed)
		}
	}
	wants(t, "the page", p.file("mill/program.html"), "2,700 sq ft")
	wants(t, "the index", p.file("index.html"), "Oxlo green")
	lacks(t, "the index", p.file("index.html"), "quiet")
	// A site of which nothing changes is still told about, and still has its address.
	p.put("twin.toml", named("twin")+secret)
	p.o.Jobs = 1
	if done := p.publish(); len(done.Failed) != 1 || done.Failed[0].Name != "twin" {
		t.Errorf("two with one secret: %+v", done.Failed)
	}
}

// A killed run leaves a draft, and files that are half old and half new.
func TestPublishSweepsWhatAKilledRunLeft(t *testing.T) {
	p, _ := counted(t)
	p.put("mill.toml", lawn)
	p.publish()
	for _, name := range []string{".ABCDEFGHIJKL.new", "mill/.ABCDEFGHIJKL.new", "mill/person/.ABCDEFGHIJKM.new"} {
		if err := os.WriteFile(filepath.Join(p.out, name), nil, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	p.put("mill.toml", strings.Replace(lawn, "2600 sq ft", "2700 sq ft", 1)) // what the killed run was about
	p.publish()
	for name := range treeOf(t, p.out) {
		if strings.HasSuffix(name, ".new") {
			t.Errorf("%s is still there", name)
		}
	}
}

// What is published of a site with a secret is for its owner alone, until he
// opens it, and nobody else can list the folder that names the secret.
func TestSecretsArePublishedForTheOwner(t *testing.T) {
	const secret = "heron-under-willow-4711"
	p := newPress(t)
	if err := os.Chmod(p.out, 0o755); err != nil {
		t.Fatal(err)
	}
	p.put("mill.toml", lawn)
	p.put("quiet.toml", named("quiet")+"[calendar]\nsecret = \""+secret+"\"\n")
	p.publish()
	modes := func(name string, folder, file fs.FileMode) {
		t.Helper()
		filepath.WalkDir(filepath.Join(p.out, name), func(path string, d fs.DirEntry, err error) error {
			if err != nil {
				t.Fatal(err)
			}
			info, _ := d.Info()
			if want := map[bool]fs.FileMode{true: folder, false: file}[d.IsDir()]; info.Mode().Perm() != want {
				t.Errorf("%s: %v, want %v", path, info.Mode(), want)
			}
			return nil
		})
	}
	modes(secret, 0o700, 0o600)
	if info, _ := os.Stat(p.out); info.Mode().Perm() != 0o711 {
		t.Errorf("the folder above: %v", info.Mode())
	}
	err := filepath.WalkDir(p.out, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.Contains(path, secret) {
			return err
		}
		text, err := os.ReadFile(path)
		lacks(t, path, string(text), secret)
		return err
	})
	if err != nil {
		t.Error(err)
	}
	// Opened for a web server, it stays open.
	for _, name := range []string{"", "/person", "/area"} {
		os.Chmod(filepath.Join(p.out, secret+name), 0o755)
	}
	for name := range treeOf(t, filepath.Join(p.out, secret)) {
		os.Chmod(filepath.Join(p.out, secret, name), 0o644)
	}
	os.Chmod(filepath.Join(p.out, secret, imprintFile), 0o644)
	p.pass(24 * time.Hour)
	p.publish()
	modes(secret, 0o755, 0o644)
}
