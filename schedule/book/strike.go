package book

import (
	"bytes"
	"errors"
	"io"
	"os"
	"slices"
)

// Struck gives a book with some lines struck out: people can still read them, but they no
// longer count.
func Struck(text []byte, lines []int) []byte {
	var out []byte
	n := 0
	for line := range bytes.Lines(text) {
		if n++; slices.Contains(lines, n) {
			out = append(out, "# struck out: "...)
		}
		out = append(out, line...)
	}
	return out
}

// Strike strikes lines out of the record book of that name.
func Strike(root *os.Root, name string, lines []int) error {
	return Edit(root, name, func(text []byte) []byte { return Struck(text, lines) })
}

// Edit puts a changed text in the place of the record book of that name. It holds
// the book's lock meanwhile, so that no line which is being added is lost.
func Edit(root *os.Root, name string, change func([]byte) []byte) error {
	f, release, err := openLocked(root, name)
	if err != nil {
		return err
	}
	text, err := io.ReadAll(io.NewSectionReader(f, 0, 1<<30))
	if err == nil {
		_, err = Replace(root, name, change(text))
	}
	err = errors.Join(err, release())
	if e := f.Close(); err == nil {
		err = e
	}
	return err
}
