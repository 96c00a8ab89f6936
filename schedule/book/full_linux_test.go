package book_test

import (
	"os"
	"os/signal"
	"strings"
	"syscall"
	"testing"
	"time"

	"swardbook/schedule/book"
	"swardbook/schedule/sitefile"
)

// full writes with room for ten more bytes only, which is how a full disk
// looks to a process. It gives 0 when all writes failed as they must.
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
	much := []byte(strings.Repeat("x", 20000))
	if _, err := book.Replace(root, "whole", much); err == nil {
		return 1
	}
	if book.Create(root, "new", much) == nil {
		return 1
	}
	if book.Edit(root, name, func([]byte) []byte { return much }) == nil {
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

// What is no ordinary file is refused as a book, and a failure leaves no file open. A
// writer waits while another holds the lock, and gives the lock back even if it fails.
func TestNoBook(t *testing.T) {
	dir, root := folder(t)
	if err := syscall.Mkfifo(dir+"/pipe", 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(dir+"/away", dir+"/link"); err != nil {
		t.Fatal(err)
	}
	if err := root.Mkdir("folder", 0o777); err != nil {
		t.Fatal(err)
	}
	before := open(t)
	for range 5 {
		for _, n := range []string{"pipe", "link", "folder", "no/such"} {
			if book.Append(root, n, line("m", 1)) == nil || book.Strike(root, n, []int{1}) == nil {
				t.Errorf("%s was taken for a book", n)
			}
		}
		if err := book.Append(root, name, line("m", 1)); err != nil {
			t.Fatal(err)
		}
		if err := book.Strike(root, name, []int{1}); err != nil {
			t.Fatal(err)
		}
		if _, err := book.Replace(root, "pipe", []byte("x")); err == nil {
			t.Error("replaced a pipe")
		}
	}
	if err := book.Append(root, "pipe", line("m", 1)); err == nil || !strings.Contains(err.Error(), "no ordinary file") {
		t.Errorf("a pipe: %v", err)
	}
	if after := open(t); after != before {
		t.Errorf("%d files are open, were %d", after, before)
	}
}

func open(t *testing.T) int {
	t.Helper()
	d, err := os.ReadDir("/proc/self/fd")
	if err != nil {
		t.Fatal(err)
	}
	return len(d)
}

// A line waits for the lock, and goes into the book that is there when it gets it: an
// editor may have put another in the place of the first, or taken it away.
func TestBookReplacedMeanwhile(t *testing.T) {
	dir, root := folder(t)
	for what, meanwhile := range map[string]func(){
		sitefile.Header + "# another\n": func() {
			if err := root.WriteFile("new", []byte(sitefile.Header+"# another\n"), 0o666); err != nil {
				t.Fatal(err)
			}
			if err := root.Rename("new", name); err != nil {
				t.Fatal(err)
			}
		},
		sitefile.Header: func() {
			if err := root.Remove(name); err != nil {
				t.Fatal(err)
			}
		},
	} {
		if err := root.WriteFile(name, []byte("old"), 0o666); err != nil {
			t.Fatal(err)
		}
		f, err := os.Open(dir + "/" + name)
		if err != nil {
			t.Fatal(err)
		}
		if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX); err != nil {
			t.Fatal(err)
		}
		wrote := make(chan error, 1)
		go func() { wrote <- book.Append(root, name, line("m", 1)) }()
		select {
		case err := <-wrote:
			t.Fatalf("did not wait for the lock: %v", err)
		case <-time.After(50 * time.Millisecond):
		}
		meanwhile()
		f.Close()
		if err := <-wrote; err != nil {
			t.Fatal(err)
		}
		if got := read(t, root, name); got != what+line("m", 1) {
			t.Errorf("got %q, want %q and the line", got, what)
		}
	}
}

// A new book has the mode that the person's mask leaves of any new file.
func TestModeOfANewBook(t *testing.T) {
	dir, root := folder(t)
	f, err := os.Create(dir + "/any")
	if err != nil {
		t.Fatal(err)
	}
	f.Close()
	any, err := root.Stat("any")
	if err != nil {
		t.Fatal(err)
	}
	if err := book.Append(root, name, line("m", 1)); err != nil {
		t.Fatal(err)
	}
	if err := book.Create(root, "created", nil); err != nil {
		t.Fatal(err)
	}
	if _, err := book.Replace(root, "replaced", nil); err != nil {
		t.Fatal(err)
	}
	for _, n := range []string{name, "created", "replaced"} {
		mode(t, root, n, any.Mode().Perm())
	}
}
