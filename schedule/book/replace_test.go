package book_test

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path"
	"strconv"
	"strings"
	"testing"
	"time"

	"swardbook/schedule/book"
)

func TestReplaceTouchesOnlyWhatChanged(t *testing.T) {
	_, root := folder(t)
	changed, err := book.Replace(root, "deep/down/file", []byte("one"))
	if err != nil || !changed {
		t.Fatal(changed, err)
	}
	old := time.Date(2026, 1, 2, 3, 4, 5, 0, time.UTC)
	if err := root.Chtimes("deep/down/file", old, old); err != nil {
		t.Fatal(err)
	}
	if err := root.Chmod("deep/down/file", 0o600); err != nil {
		t.Fatal(err)
	}
	if n, err := book.ReplaceAll(root, []book.File{{Name: "deep/down/file", Data: []byte("one")}}, false); err != nil || n != 0 {
		t.Error("the same content was written again", err)
	}
	if info, _ := root.Stat("deep/down/file"); !info.ModTime().Equal(old) {
		t.Error("the time stamp of an unchanged file moved")
	}
	if changed, err = book.Replace(root, "deep/down/file", []byte("two")); err != nil || !changed {
		t.Error("new content was not written", err)
	}
	if info, _ := root.Stat("deep/down/file"); info.Mode().Perm() != 0o600 {
		t.Errorf("mode is now %v", info.Mode())
	}
	if got := read(t, root, "deep/down/file"); got != "two" {
		t.Errorf("holds %q", got)
	}
}

func TestCreateNeverOverwrites(t *testing.T) {
	_, root := folder(t)
	if err := book.Create(root, "new", []byte("mine")); err != nil {
		t.Fatal(err)
	}
	if err := book.Create(root, "new", []byte("other")); !errors.Is(err, fs.ErrExist) {
		t.Errorf("got %v", err)
	}
	if got := read(t, root, "new"); got != "mine" {
		t.Errorf("holds %q", got)
	}
}

// Of several files all are written, or none: a folder stands in the way of one.
func TestReplaceAllOrNone(t *testing.T) {
	_, root := folder(t)
	files := []book.File{{Name: "a/one", Data: []byte("1")}, {Name: "a/two", Data: []byte("2")}, {Name: "a/b/three", Data: []byte("3")}}
	if n, err := book.ReplaceAll(root, files, false); err != nil || n != 3 {
		t.Fatal(n, err)
	}
	if err := root.MkdirAll("a/four", 0o777); err != nil {
		t.Fatal(err)
	}
	files[0].Data = []byte("new")
	n, err := book.ReplaceAll(root, append(files, book.File{Name: "a/four", Data: []byte("4")}), false)
	if p, ok := errors.AsType[*fs.PathError](err); n != 0 || !ok || p.Path != "a/four" {
		t.Errorf("%d written, %v", n, err)
	}
	if got := read(t, root, "a/one"); got != "1" {
		t.Errorf("the first file holds %q", got)
	}
	d, err := fs.ReadDir(root.FS(), "a")
	if err != nil || len(d) != 4 {
		t.Errorf("left behind: %v %v", d, err)
	}
}

// A private file or folder is for its owner alone, also if it was open to others before.
func TestReplacePrivate(t *testing.T) {
	_, root := folder(t)
	if err := root.Mkdir("open", 0o755); err != nil {
		t.Fatal(err)
	}
	if err := root.WriteFile("open/file", []byte("old"), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"open/file", "made/file"} {
		for range 2 { // changed, and as it was
			if _, err := book.ReplacePrivate(root, name, []byte("new")); err != nil {
				t.Fatal(err)
			}
			mode(t, root, name, 0o600)
			mode(t, root, path.Dir(name), 0o700)
		}
	}
	if _, err := book.ReplaceAll(root, []book.File{{Name: "all/deep/file", Data: nil}}, true); err != nil {
		t.Fatal(err)
	}
	mode(t, root, "all/deep/file", 0o600)
	mode(t, root, "all", 0o700)
}

func mode(t *testing.T, root *os.Root, name string, want fs.FileMode) {
	t.Helper()
	if info, err := root.Stat(name); err != nil || info.Mode().Perm() != want {
		t.Errorf("%s: %v %v, want %v", name, info.Mode(), err, want)
	}
}

// Sweep takes the drafts of a killed run and nothing that only looks like one.
func TestSweep(t *testing.T) {
	_, root := folder(t)
	kept := []string{".new", "a.new", ".abc.new", ".abcdefghijkl.new", ".ABCDEFGHIJK1.new", "program.ics"}
	for _, n := range append(kept, ".ABCDEFGHIJKL.new") {
		if err := root.WriteFile(n, nil, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if err := book.Sweep(root, "."); err != nil {
		t.Fatal(err)
	}
	d, err := fs.ReadDir(root.FS(), ".")
	if err != nil || len(d) != len(kept) {
		t.Errorf("left: %v %v", d, err)
	}
	if err := book.Sweep(root, "nowhere"); err != nil {
		t.Error(err)
	}
}

// A writer and somebody who sweeps a thousand times a second: every write arrives.
func TestSweepDuringWrites(t *testing.T) {
	_, root := folder(t)
	ctx, stop := context.WithCancel(t.Context())
	swept := make(chan struct{})
	go func() {
		defer close(swept)
		for ctx.Err() == nil {
			book.Sweep(root, ".")
			time.Sleep(time.Millisecond)
		}
	}()
	for i := range 300 {
		if _, err := book.ReplaceAll(root, []book.File{{Name: "file", Data: content(i)}}, false); err != nil {
			t.Fatal(i, err)
		}
		if got := read(t, root, "file"); got != string(content(i)) {
			t.Fatalf("write %d did not arrive", i)
		}
	}
	stop()
	<-swept
}

// If a folder takes the place of a file while the file is written, the error names the
// file; the files before it are in their places, and no draft stays behind.
func TestRenameThatFails(t *testing.T) {
	_, root := folder(t)
	files := []book.File{{Name: "first", Data: []byte("1")}, {Name: "a", Data: []byte("2")}, {Name: "a/b", Data: []byte("3")}}
	n, err := book.ReplaceAll(root, files, false)
	if p, ok := errors.AsType[*fs.PathError](err); n != 1 || !ok || p.Path != "a" || p.Op != "write" {
		t.Errorf("%d written, %v", n, err)
	}
	if got := read(t, root, "first"); got != "1" {
		t.Errorf("the first holds %q", got)
	}
	for dir, want := range map[string]int{".": 2, "a": 0} {
		if d, err := fs.ReadDir(root.FS(), dir); err != nil || len(d) != want {
			t.Errorf("in %s: %v %v", dir, d, err)
		}
	}
}

// Whatever a writer leaves in a folder while it works has a name that [book.Sweep]
// knows.
func TestDraftsAreSwept(t *testing.T) {
	_, root := folder(t)
	if err := root.Mkdir("seen", 0o777); err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	stop, stopped := make(chan bool), make(chan bool)
	go func() {
		defer close(stopped)
		for {
			select {
			case <-stop:
				return
			default:
				d, _ := fs.ReadDir(root.FS(), ".")
				for _, e := range d {
					seen[e.Name()] = true
				}
			}
		}
	}()
	var files []book.File
	for i := range 100 {
		files = append(files, book.File{Name: "file" + strconv.Itoa(i), Data: content(i)})
	}
	if n, err := book.ReplaceAll(root, files, false); err != nil || n != len(files) {
		t.Fatal(n, err)
	}
	close(stop)
	<-stopped
	drafts := 0
	for n := range seen {
		if n == "seen" || strings.HasPrefix(n, "file") {
			continue
		}
		drafts++
		if err := root.WriteFile("seen/"+n, nil, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if err := book.Sweep(root, "seen"); err != nil {
		t.Fatal(err)
	}
	if left, err := fs.ReadDir(root.FS(), "seen"); err != nil || len(left) != 0 || drafts == 0 {
		t.Errorf("of %d drafts, Sweep left %v, %v", drafts, left, err)
	}
}

// Sweep reports what it cannot remove, and goes on.
func TestSweepTells(t *testing.T) {
	_, root := folder(t)
	if err := root.MkdirAll(".AAAAAAAAAAAA.new/full", 0o777); err != nil {
		t.Fatal(err)
	}
	for _, n := range []string{".BBBBBBBBBBBB.new", ".222222222222.new", "file"} {
		if err := root.WriteFile(n, nil, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if err := book.Sweep(root, "."); err == nil {
		t.Error("did not tell of a folder that stays")
	}
	if d, err := fs.ReadDir(root.FS(), "."); err != nil || len(d) != 2 {
		t.Errorf("left: %v %v", d, err)
	}
	if err := book.Sweep(root, "file"); err == nil {
		t.Error("swept a file")
	}
}

// A private file at the top of the root leaves the mode of the root folder alone.
func TestReplacePrivateAtTheTop(t *testing.T) {
	_, root := folder(t)
	if err := root.Chmod(".", 0o755); err != nil {
		t.Fatal(err)
	}
	if changed, err := book.ReplacePrivate(root, "file", []byte("x")); err != nil || !changed {
		t.Fatal(changed, err)
	}
	mode(t, root, ".", 0o755)
	mode(t, root, "file", 0o600)
	if err := root.Chmod("file", 0o400); err != nil {
		t.Fatal(err)
	}
	if changed, err := book.ReplacePrivate(root, "file", []byte("x")); err != nil || changed {
		t.Fatal(changed, err)
	}
	mode(t, root, "file", 0o400) // a mode with fewer permissions is kept
	if changed, err := book.ReplacePrivate(root, "../file", []byte("x")); err == nil || changed {
		t.Error("wrote above the folder")
	}
}

// A file that cannot be made is no reason to remove what is there.
func TestCreateThatFails(t *testing.T) {
	_, root := folder(t)
	if err := root.MkdirAll("there", 0o777); err != nil {
		t.Fatal(err)
	}
	if err := book.Create(root, "there", []byte("x")); !errors.Is(err, fs.ErrExist) {
		t.Errorf("a folder: %v", err)
	}
	if err := book.Create(root, "no/such", []byte("x")); err == nil || errors.Is(err, fs.ErrExist) {
		t.Errorf("no folder: %v", err)
	}
	if _, err := root.Stat("there"); err != nil {
		t.Error(err)
	}
}
