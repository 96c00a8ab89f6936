package book_test

import (
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
	"time"

	"swardbook/schedule/book"
	"swardbook/schedule/sitefile"
)

const name = "lawn.record.csv"

// TestMain lets the test run itself as another process that writes.
func TestMain(m *testing.M) {
	if role := os.Getenv("BOOK_ROLE"); role != "" {
		os.Exit(other(role))
	}
	os.Exit(m.Run())
}

// other is what the other process does in the folder BOOK_DIR.
func other(role string) int {
	root, err := os.OpenRoot(os.Getenv("BOOK_DIR"))
	if err != nil {
		return 2
	}
	switch n, _ := strconv.Atoi(os.Getenv("BOOK_COUNT")); role {
	case "append":
		for i := range n {
			if err := book.Append(root, name, line(os.Getenv("BOOK_WHO"), i)); err != nil {
				return 1
			}
		}
	case "forever":
		for i := 0; ; i++ {
			if err := book.Append(root, name, line(os.Getenv("BOOK_WHO"), i)); err != nil {
				return 1
			}
			if _, err := book.Replace(root, "whole", content(i)); err != nil {
				return 1
			}
		}
	case "full":
		return full(root)
	}
	return 0
}

func line(who string, i int) string {
	return fmt.Sprintf("2026-09-19,east,east/lime/1,,half,%s,%d\n", who, i)
}

func content(i int) []byte { return []byte(strings.Repeat(strconv.Itoa(i%10), 20000)) }

func process(t *testing.T, dir, role, who string, count int) *exec.Cmd {
	t.Helper()
	c := exec.Command(os.Args[0])
	c.Env = append(os.Environ(), "BOOK_ROLE="+role, "BOOK_DIR="+dir, "BOOK_WHO="+who, "BOOK_COUNT="+strconv.Itoa(count))
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	return c
}

func folder(t *testing.T) (string, *os.Root) {
	t.Helper()
	dir := t.TempDir()
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	return dir, root
}

func read(t *testing.T, root *os.Root, name string) string {
	t.Helper()
	b, err := root.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// Five processes with ten lines each, and fifty goroutines beside them: every
// line is there once, whole, under one header.
func TestManyWritersAtOnce(t *testing.T) {
	dir, root := folder(t)
	var others []*exec.Cmd
	for p := range 5 {
		others = append(others, process(t, dir, "append", fmt.Sprint("p", p), 10))
	}
	failed := make(chan error, 50)
	for g := range 50 {
		go func() { failed <- book.Append(root, name, line(fmt.Sprint("g", g), 0)) }()
	}
	for range 50 {
		if err := <-failed; err != nil {
			t.Error(err)
		}
	}
	for _, c := range others {
		if err := c.Wait(); err != nil {
			t.Error(err)
		}
	}
	count := map[string]int{}
	for l := range strings.Lines(read(t, root, name)) {
		count[l]++
	}
	want := map[string]int{sitefile.Header: 1}
	for g := range 50 {
		want[line(fmt.Sprint("g", g), 0)] = 1
	}
	for p := range 5 {
		for i := range 10 {
			want[line(fmt.Sprint("p", p), i)] = 1
		}
	}
	for l, n := range want {
		if count[l] != n {
			t.Errorf("%d of %q, want %d", count[l], l, n)
		}
	}
	if len(count) != len(want) {
		t.Errorf("%d different lines, want %d", len(count), len(want))
	}
}

// A writer that is killed leaves whole lines, and either the old or the new
// content of a file it was replacing.
func TestKilledWriter(t *testing.T) {
	dir, root := folder(t)
	for round := range 8 {
		c := process(t, dir, "forever", fmt.Sprint("r", round), 0)
		for wait, size := 0, sizeOf(root); wait < 2000 && sizeOf(root) < size+100; wait++ { // until the writer is at work
			time.Sleep(5 * time.Millisecond)
		}
		time.Sleep(time.Duration(7*round) * time.Millisecond)
		c.Process.Kill()
		c.Wait()
		if whole, err := root.ReadFile("whole"); err == nil &&
			(len(whole) != 20000 || strings.Trim(string(whole), string(whole[:1])) != "") {
			t.Fatalf("round %d: a mixed or short file of %d bytes", round, len(whole))
		}
	}
	if err := book.Append(root, name, line("last", 0)); err != nil {
		t.Fatal(err)
	}
	lines := strings.SplitAfter(read(t, root, name), "\n")
	if len(lines) < 10 {
		t.Fatalf("only %d lines written, so nothing was tested", len(lines))
	}
	for _, l := range lines[1 : len(lines)-1] {
		if strings.Count(l, ",") != 6 || !strings.HasPrefix(l, "2026-09-19,") {
			t.Errorf("broken line %q", l)
		}
	}
}

func sizeOf(root *os.Root) int64 {
	info, err := root.Stat(name)
	if err != nil {
		return 0
	}
	return info.Size()
}

func TestTornLastLineIsEndedFirst(t *testing.T) {
	for torn, want := range map[string]string{
		"":                               sitefile.Header + line("m", 1),
		sitefile.Header:                  sitefile.Header + line("m", 1),
		sitefile.Header + "2026-09-1":    sitefile.Header + "2026-09-1\n" + line("m", 1),
		sitefile.Header + "# a remark\n": sitefile.Header + "# a remark\n" + line("m", 1),
	} {
		_, root := folder(t)
		if err := root.WriteFile(name, []byte(torn), 0o666); err != nil {
			t.Fatal(err)
		}
		if err := book.Append(root, name, line("m", 1)); err != nil {
			t.Fatal(err)
		}
		if got := read(t, root, name); got != want {
			t.Errorf("after %q: %q, want %q", torn, got, want)
		}
	}
}

func TestNoWayOutOfTheFolder(t *testing.T) {
	dir, root := folder(t)
	outside := t.TempDir() + "/outside.csv"
	if err := os.Symlink(outside, dir+"/"+name); err != nil {
		t.Fatal(err)
	}
	if err := book.Append(root, name, line("m", 1)); err == nil {
		t.Error("followed a link out of the folder")
	}
	if _, err := book.Replace(root, "../up", []byte("x")); err == nil || strings.Count(err.Error(), "up") != 1 {
		t.Errorf("above the folder: %v", err) // the error names the file once
	}
	if _, err := os.Stat(outside); err == nil {
		t.Error("made a file outside")
	}
}

func TestAFolderIsNoBook(t *testing.T) {
	_, root := folder(t)
	if err := root.Mkdir(name, 0o777); err != nil {
		t.Fatal(err)
	}
	if err := book.Append(root, name, line("m", 1)); err == nil {
		t.Error("appended to a folder")
	}
	if _, err := book.Replace(root, name, []byte("x")); err == nil {
		t.Error("replaced a folder")
	}
}
