package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"swardbook/schedule/book"
)

// appendRecord adds one line to a record book, which it begins if there is
// none; see [book.Append].
func appendRecord(path, line string) error {
	err := inFolder(path, func(root *os.Root, name string) error { return book.Append(root, name, line) })
	if err != nil {
		return fmt.Errorf("could not write %s: %w", path, bare(err))
	}
	return nil
}

// inFolder opens the folder of a file, behind a link if it is one, so that the
// link stays a link.
func inFolder(path string, do func(root *os.Root, name string) error) error {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	root, err := os.OpenRoot(filepath.Dir(path))
	if err != nil {
		return err
	}
	defer root.Close()
	return do(root, filepath.Base(path))
}

// strikeRecord strikes lines out of a record book; see [book.Struck].
func strikeRecord(path string, lines []int) error {
	err := inFolder(path, func(root *os.Root, name string) error { return book.Strike(root, name, lines) })
	if err != nil {
		return fmt.Errorf("could not write %s: %w", path, bare(err))
	}
	return nil
}

// rewriteRecord puts a new text in the place of a record book, unless somebody has
// written to it meanwhile.
func rewriteRecord(path string, was, text []byte) error {
	changed := false
	err := inFolder(path, func(root *os.Root, name string) error {
		return book.Edit(root, name, func(now []byte) []byte {
			if changed = !bytes.Equal(now, was); changed {
				return now
			}
			return text
		})
	})
	if err == nil && changed {
		err = errors.New("somebody has written to it meanwhile; try again")
	}
	if err != nil {
		return fmt.Errorf("could not write %s: %w", path, bare(err))
	}
	return nil
}
