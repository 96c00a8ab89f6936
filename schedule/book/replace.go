package book

import (
	"bytes"
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
)

// Replace gives a file new content, all or nothing, and keeps its mode: the
// content is written beside it, flushed to the disk, and put in its place.
// Content that is there already is left alone, time stamp and all, and changed
// is false. Folders on the way that are missing are made.
func Replace(root *os.Root, name string, data []byte) (changed bool, err error) {
	return replace(root, name, data, true)
}

// ReplaceFast is [Replace] without the wait for the disk, for many files that
// can be made again. A killed process leaves the old or the new content; a
// power cut in the seconds after may leave an empty file.
func ReplaceFast(root *os.Root, name string, data []byte) (changed bool, err error) {
	return replace(root, name, data, false)
}

func replace(root *os.Root, name string, data []byte, flush bool) (bool, error) {
	mode := fs.FileMode(0o666) // less what the user's mask takes
	switch info, err := root.Stat(name); {
	case errors.Is(err, fs.ErrNotExist):
		if dir := path.Dir(name); dir != "." {
			if err := root.MkdirAll(dir, 0o777); err != nil {
				return false, err
			}
		}
	case err != nil:
		return false, err
	case !info.Mode().IsRegular():
		return false, fmt.Errorf("%s is no ordinary file", name)
	default:
		mode = info.Mode().Perm()
		if info.Size() == int64(len(data)) {
			if old, err := root.ReadFile(name); err == nil && bytes.Equal(old, data) {
				return false, nil
			}
		}
	}
	temp := path.Join(path.Dir(name), "."+rand.Text()[:12]+".new")
	err := writeNew(root, temp, data, mode, flush)
	if err == nil {
		err = root.Rename(temp, name)
	}
	if err != nil {
		root.Remove(temp)
		return false, err
	}
	if flush {
		flushFolder(root, path.Dir(name))
	}
	return true, nil
}

// Create writes a file that must not be there yet, down to the disk; the error
// is [fs.ErrExist] if it is. What cannot be written whole is taken away again.
func Create(root *os.Root, name string, data []byte) error {
	err := writeNew(root, name, data, 0o666, true)
	if err != nil && !errors.Is(err, fs.ErrExist) {
		root.Remove(name)
	}
	return err
}

func writeNew(root *os.Root, name string, data []byte, mode fs.FileMode, flush bool) error {
	f, err := root.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err == nil && flush {
		err = f.Sync()
	}
	if e := f.Close(); err == nil {
		err = e
	}
	return err
}

// flushFolder makes a new name in a folder last. Not every system can; the
// file itself is safe by then.
func flushFolder(root *os.Root, dir string) {
	if d, err := root.Open(dir); err == nil {
		d.Sync()
		d.Close()
	}
}
