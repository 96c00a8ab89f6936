package book_test

import (
	"errors"
	"io/fs"
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
	if changed, err = book.ReplaceFast(root, "deep/down/file", []byte("one")); err != nil || changed {
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
