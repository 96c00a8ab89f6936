package book_test

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"testing"

	"swardbook/schedule/book"
	"swardbook/schedule/sitefile"
)

// Struck lines stay to be read, and count no longer; the others stay as they are.
func TestStruck(t *testing.T) {
	const text = "a\r\nb\n\nc"
	for _, c := range []struct {
		lines []int
		want  string
	}{
		{nil, text}, {[]int{0, 5}, text},
		{[]int{1}, "# struck out: a\r\nb\n\nc"},
		{[]int{2}, "a\r\n# struck out: b\n\nc"},
		{[]int{4, 1}, "# struck out: a\r\nb\n\n# struck out: c"},
	} {
		if got := string(book.Struck([]byte(text), c.lines)); got != c.want {
			t.Errorf("%v: %q, want %q", c.lines, got, c.want)
		}
	}
	s := site(t)
	whole := sitefile.Header + newLine(t, s, "", done(t, "east/lime/2026-1", "2026-09-30"), "half").Text
	if done, ps := sitefile.LoadRecord(name, book.Struck([]byte(whole), []int{2}), s); len(done) != 0 || len(ps) != 0 {
		t.Errorf("a line that is struck out counts as %+v, %v", done, ps)
	}
}

func TestStrike(t *testing.T) {
	_, root := folder(t)
	for i := range 3 {
		if err := book.Append(root, name, line("m", i)); err != nil {
			t.Fatal(err)
		}
	}
	if err := book.Strike(root, name, []int{3}); err != nil {
		t.Fatal(err)
	}
	if got, want := read(t, root, name), sitefile.Header+line("m", 0)+"# struck out: "+line("m", 1)+line("m", 2); got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if err := root.Mkdir("folder", 0o777); err != nil {
		t.Fatal(err)
	}
	if err := book.Strike(root, "folder", []int{3}); err == nil {
		t.Error("struck a line out of a folder")
	}
	if err := book.Strike(root, "no/such", []int{3}); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a book in a folder that is not there: %v", err)
	}
}

// Lines that are added and struck out at once: none is lost.
func TestEditAmongWriters(t *testing.T) {
	_, root := folder(t)
	const n = 20
	failed := make(chan error, 2*n)
	for i := range n {
		go func() { failed <- book.Append(root, name, line("a", i)) }()
		go func() {
			failed <- book.Edit(root, name, func(text []byte) []byte { return fmt.Appendf(text, "# edit %d\n", i) })
		}()
	}
	for range 2 * n {
		if err := <-failed; err != nil {
			t.Error(err)
		}
	}
	got := read(t, root, name)
	for i := range n {
		for _, want := range []string{line("a", i), fmt.Sprintf("# edit %d\n", i)} {
			if strings.Count(got, want) != 1 {
				t.Errorf("%d of %q", strings.Count(got, want), want)
			}
		}
	}
}
