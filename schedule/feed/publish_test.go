package feed

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// treeOf gives every published file of a folder with its time stamp.
func treeOf(t *testing.T, dir string) map[string]time.Time {
	t.Helper()
	out := map[string]time.Time{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || d.Name() == imprintFile {
			return err
		}
		info, err := d.Info()
		rel, _ := filepath.Rel(dir, path)
		out[rel] = info.ModTime()
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// named gives the test site under another id and title.
func named(name string) string {
	return strings.NewReplacer("oxlo-green-4h2k", name+"-0000", "Oxlo green", "Site "+name).Replace(lawn)
}

type press struct {
	*world
	out string
	o   Publishing
}

func newPress(t *testing.T) *press {
	w := newWorld(t)
	p := &press{world: w, out: t.TempDir()}
	p.o = Publishing{Sites: w.root, Out: openRoot(t, p.out), Base: base, Version: "1"}
	return p
}

func (p *press) publish() *Published {
	p.t.Helper()
	p.o.Now = p.now()
	done, err := Publish(p.t.Context(), p.o)
	if err != nil {
		p.t.Fatal(err)
	}
	return done
}

func (p *press) file(name string) string {
	p.t.Helper()
	b, err := os.ReadFile(filepath.Join(p.out, name))
	if err != nil {
		p.t.Fatal(err)
	}
	return string(b)
}

// What is published is what is served, byte for byte.
func TestPublishedIsServed(t *testing.T) {
	p := newPress(t)
	p.put("mill.toml", lawn)
	p.put("quiet.toml", named("quiet")+"[calendar]\nsecret = \"heron-under-willow-4711\"\n")
	done := p.publish()
	if done.Sites != 2 || len(done.Failed) != 0 || len(done.Old) != 0 {
		t.Fatalf("%+v", done)
	}
	p.start()
	files := treeOf(t, p.out)
	if len(files) != 1+2*8 || done.Wrote != len(files) {
		t.Errorf("%d files, %d written: %v", len(files), done.Wrote, files)
	}
	for name := range files {
		url := "/" + strings.TrimSuffix(filepath.ToSlash(name), "index.html")
		if p.page(url) != p.file(name) {
			t.Errorf("%s differs", name)
		}
	}
	lacks(t, "the index", p.file("index.html"), "quiet", "heron")
}

func TestPublishTouchesOnlyWhatChanged(t *testing.T) {
	p := newPress(t)
	p.put("a.toml", named("a"))
	p.put("b.toml", named("b"))
	p.publish()
	was := treeOf(t, p.out)
	if done := p.publish(); done.Wrote != 0 || done.Same != len(was) {
		t.Errorf("again: %+v", done)
	}
	for name, at := range treeOf(t, p.out) {
		if !at.Equal(was[name]) {
			t.Errorf("%s was touched", name)
		}
	}
	p.pass(time.Hour)
	p.put("b.toml", strings.Replace(named("b"), "2600 sq ft", "2700 sq ft", 1))
	p.publish()
	for name, at := range treeOf(t, p.out) {
		if strings.HasPrefix(name, "a/") && !at.Equal(was[name]) {
			t.Errorf("%s was touched", name)
		}
	}
	if n, _ := sequenceOf(t, p.file("b/program.ics"), "east/lime/2026-1"); n != firstSequence+1 {
		t.Errorf("sequence %d", n)
	}
}

func TestOneBadSiteStopsNoOther(t *testing.T) {
	p := newPress(t)
	for _, n := range []string{"a", "bad", "c", "fine"} {
		p.put(n+".toml", named(n))
	}
	p.publish()
	good := p.file("bad/program.ics")
	p.put("bad.toml", strings.Replace(named("bad"), `"loam"`, `"mud"`, 1))
	p.put("bad:name.toml", named("x"))
	p.put("fine.toml", strings.Replace(named("fine"), "Site fine", "Finer", 1))
	if err := os.Mkdir(filepath.Join(p.dir, "folder.toml"), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(filepath.Join(p.out, "c/program.json")); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(p.out, "c/program.json"), 0o777); err != nil {
		t.Fatal(err)
	}
	done := p.publish()
	var names []string
	for _, f := range done.Failed {
		names = append(names, f.Name)
		if len(f.Problems) == 0 || f.Problems[0].Message == "" {
			t.Errorf("%s failed without a reason", f.Name)
		}
	}
	if fmt.Sprint(names) != "[bad bad:name c]" {
		t.Errorf("failed: %v", names)
	}
	if p.file("bad/program.ics") != good {
		t.Error("the calendar of the bad site changed")
	}
	wants(t, "the index", p.file("index.html"), "Finer", "its files have errors", "Site a")
}

func TestOldFilesAreReportedNotRemoved(t *testing.T) {
	p := newPress(t)
	p.put("a.toml", named("a"))
	p.put("b.toml", named("b"))
	p.publish()
	os.Remove(filepath.Join(p.dir, "b.toml"))
	p.put("a.toml", strings.Replace(named("a"), "Site a", "Site A", 1))
	if err := os.WriteFile(filepath.Join(p.out, "a/person/stray.ics"), []byte("not ours"), 0o666); err != nil {
		t.Fatal(err)
	}
	done := p.publish()
	if fmt.Sprint(done.Old) != "[a/person/stray.ics b/]" {
		t.Errorf("old: %v", done.Old)
	}
	p.file("b/program.ics")
	p.file("a/person/stray.ics")
	// A broken site that may have a secret: its folder must not be called old.
	p.put("b.toml", "title = 3\nsecret = 4\n")
	if done := p.publish(); done.OldUnchecked == "" || fmt.Sprint(done.Old) != "[a/person/stray.ics]" {
		t.Errorf("%+v", done)
	}
}

func TestShardsShareTheFolder(t *testing.T) {
	p := newPress(t)
	for i := range 12 {
		p.put(fmt.Sprintf("s%d.toml", i), named(fmt.Sprint("s", i)))
	}
	sites := 0
	for k := 1; k <= 3; k++ {
		p.o.Shard = Shard{k, 3}
		done := p.publish()
		sites += done.Sites
		if done.Sites == 12 || done.OldUnchecked == "" {
			t.Errorf("part %d: %+v", k, done)
		}
	}
	if sites != 12 {
		t.Errorf("%d sites in all", sites)
	}
	if _, err := os.Stat(filepath.Join(p.out, "index.html")); err == nil {
		t.Error("a part wrote the list of all sites")
	}
	p.o.Shard = Shard{}
	if done := p.publish(); done.Wrote != 1 {
		t.Errorf("the whole after its parts: %+v", done)
	}
}

func TestTwoSecretsAlike(t *testing.T) {
	p := newPress(t)
	p.o.Jobs = 1
	secret := "[calendar]\nsecret = \"heron-under-willow-4711\"\n"
	p.put("a.toml", named("a")+secret)
	p.put("b.toml", named("b")+secret)
	done := p.publish()
	if len(done.Failed) != 1 || done.Failed[0].Name != "b" {
		t.Errorf("%+v", done)
	}
	wants(t, "the page", p.file("heron-under-willow-4711/index.html"), "Site a")
}

func TestNoLinksOut(t *testing.T) {
	p := newPress(t)
	elsewhere := t.TempDir()
	if err := os.Symlink(elsewhere, filepath.Join(p.out, "mill")); err != nil {
		t.Fatal(err)
	}
	p.put("mill.toml", lawn)
	if done := p.publish(); len(done.Failed) != 1 {
		t.Errorf("%+v", done)
	}
	if files := treeOf(t, elsewhere); len(files) != 0 {
		t.Errorf("written outside: %v", files)
	}
}

func TestPublishWithoutBase(t *testing.T) {
	p := newPress(t)
	p.o.Base = ""
	p.put("mill.toml", lawn)
	p.publish()
	page := p.file("mill/index.html")
	wants(t, "the page", page, "Copy the address of this link", `href="program.ics"`)
	lacks(t, "the page", page, "webcal", "<svg")
}

func TestPublishStops(t *testing.T) {
	p := newPress(t)
	for i := range 5 {
		p.put(fmt.Sprintf("s%d.toml", i), named(fmt.Sprint("s", i)))
	}
	ctx, stop := context.WithCancel(t.Context())
	stop()
	p.o.Now = p.now()
	if _, err := Publish(ctx, p.o); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
}

func TestParseBase(t *testing.T) {
	for given, want := range map[string]string{
		"https://example.org": "https://example.org", "https://example.org/": "https://example.org", "http://127.0.0.1:8080/a/b/": "http://127.0.0.1:8080/a/b",
		"": "", "example.org": "", "ftp://example.org": "", "https://u:p@example.org": "", "https://example.org/?x": "", "https://example.org/#x": "",
		"javascript:alert(1)": "", "https://": "", "https://example.org/" + strings.Repeat("x", 200): "",
	} {
		got, err := ParseBase(given)
		if got != want || (err == nil) != (want != "") {
			t.Errorf("%q: %q %v", given, got, err)
		}
	}
}

// Folders of 100 sites; the time and memory of one must not grow with their
// number.
func BenchmarkPublish(b *testing.B) {
	const sites = 100
	dir, out := b.TempDir(), b.TempDir()
	for i := range sites {
		n := fmt.Sprint("s", i)
		if err := os.WriteFile(filepath.Join(dir, n+".toml"), []byte(named(n)), 0o666); err != nil {
			b.Fatal(err)
		}
	}
	o := Publishing{Sites: openRoot(b, dir), Out: openRoot(b, out), Base: base, Now: changedAt}
	b.ReportAllocs()
	for b.Loop() {
		o.Now = o.Now.Add(24 * time.Hour) // so that the pages change
		if p, err := Publish(b.Context(), o); err != nil || len(p.Failed) > 0 {
			b.Fatal(p, err)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N*sites), "µs/site")
}
