package book_test

import (
	"os"
	"os/signal"
	"strings"
	"syscall"
	"testing"

	"swardbook/schedule/book"
	"swardbook/schedule/sitefile"
)

// full writes with room for ten more bytes only, which is how a full disk
// looks to a process. It gives 0 when both writes failed as they must.
func full(root *os.Root) int {
	signal.Ignore(syscall.SIGXFSZ)
	info, err := root.Stat(name)
	if err != nil {
		return 2
	}
	room := uint64(info.Size()) + 10
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: room, Max: room}); err != nil {
		return 2
	}
	if book.Append(root, name, line("m", 1)) == nil {
		return 1
	}
	if _, err := book.Replace(root, "whole", []byte(strings.Repeat("x", 20000))); err == nil {
		return 1
	}
	return 0
}

func TestFullDiskLosesNothing(t *testing.T) {
	dir, root := folder(t)
	before := sitefile.Header + line("m", 0)
	for file, text := range map[string]string{name: before, "whole": "old"} {
		if err := root.WriteFile(file, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if err := process(t, dir, "full", "", 0).Wait(); err != nil {
		t.Fatalf("the writes did not fail as they must: %v", err)
	}
	if got := read(t, root, name); got != before {
		t.Errorf("the record book is now %q", got)
	}
	if got := read(t, root, "whole"); got != "old" {
		t.Errorf("the other file is now %d bytes", len(got))
	}
	left, err := os.ReadDir(dir)
	if err != nil || len(left) != 2 {
		t.Errorf("left behind: %v %v", left, err)
	}
}
