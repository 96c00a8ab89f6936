package book

import (
	"bytes"
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"strings"
)

// Replace gives a file new content, all or nothing, and keeps its mode: the
// content is written beside it, flushed to the disk, and put in its place.
// If the file has that content already, it is left alone with its time stamp, and
// changed is false. Missing folders on the way are made.
func Replace(root *os.Root, name string, data []byte) (changed bool, err error) {
	n, err := replaceAll(root, []File{{name, data}}, false, true)
	return n > 0, err
}

// ReplacePrivate is [Replace] for a file that nobody else may read, in a folder
// that nobody else may open, whatever they were before.
func ReplacePrivate(root *os.Root, name string, data []byte) (changed bool, err error) {
	n, err := replaceAll(root, []File{{name, data}}, true, true)
	for _, p := range []struct {
		name string
		mode fs.FileMode
	}{{path.Dir(name), 0o700}, {name, 0o600}} {
		if err == nil && p.name != "." {
			err = narrow(root, p.name, p.mode)
		}
	}
	return n > 0, err
}

// File is a file by its name below a folder, and its content.
type File struct {
	Name string
	Data []byte
}

// ReplaceAll is [Replace] for several files that can be made again: none is put in its
// place before all are written, and it does not wait until they are on the disk. A
// killed process leaves the old or the new content of each file; a power cut in the
// seconds after may leave empty files. With private, new folders and files are made for
// their owner alone; those that are there keep their modes.
func ReplaceAll(root *os.Root, files []File, private bool) (changed int, err error) {
	return replaceAll(root, files, private, false)
}

// draft is new content beside the file that it is for.
type draft struct {
	temp, name string
	file       File
	mode       fs.FileMode
}

// attempts is how often a draft is put in its place before that fails for good: each time,
// [Sweep] in another process may have removed the draft just before.
const attempts = 10 // [common]

func replaceAll(root *os.Root, files []File, private, flush bool) (changed int, err error) {
	var drafts []draft
	defer func() {
		for _, d := range drafts {
			root.Remove(d.temp)
		}
	}()
	for _, f := range files {
		mode, same, err := before(root, f, private)
		if err != nil {
			return 0, about(f.Name, err)
		}
		if same {
			continue
		}
		d := draft{temp: path.Join(path.Dir(f.Name), "."+rand.Text()[:12]+draftEnd), name: f.Name, file: f, mode: mode}
		drafts = append(drafts, d)
		if err := writeNew(root, d.temp, f.Data, mode, flush); err != nil {
			return 0, about(f.Name, err)
		}
	}
	for len(drafts) > 0 {
		d := drafts[0]
		err := root.Rename(d.temp, d.name)
		for i := 1; i < attempts && errors.Is(err, fs.ErrNotExist); i++ {
			if err = writeNew(root, d.temp, d.file.Data, d.mode, flush); err == nil {
				err = root.Rename(d.temp, d.name)
			}
		}
		if err != nil {
			return changed, about(d.name, err)
		}
		drafts = drafts[1:]
		changed++
		if flush {
			flushFolder(root, path.Dir(d.name))
		}
	}
	return changed, nil
}

// about says which file an error is of.
func about(name string, err error) error {
	if p, ok := errors.AsType[*fs.PathError](err); ok {
		err = p.Err
	}
	return &fs.PathError{Op: "write", Path: name, Err: err}
}

// before makes a file's folder, and tells the mode that the file is to have and
// whether it holds the content already.
func before(root *os.Root, f File, private bool) (mode fs.FileMode, same bool, err error) {
	folder := fs.FileMode(0o777) // less the permissions that the user's mask takes away
	if mode = 0o666; private {
		folder, mode = 0o700, 0o600
	}
	switch info, err := root.Stat(f.Name); {
	case errors.Is(err, fs.ErrNotExist):
		if dir := path.Dir(f.Name); dir != "." {
			err = root.MkdirAll(dir, folder)
		} else {
			err = nil
		}
		return mode, false, err
	case err != nil:
		return mode, false, err
	case !info.Mode().IsRegular():
		return mode, false, fmt.Errorf("it is no ordinary file")
	case info.Size() == int64(len(f.Data)):
		old, err := root.ReadFile(f.Name)
		return info.Mode().Perm(), err == nil && bytes.Equal(old, f.Data), nil
	default:
		return info.Mode().Perm(), false, nil
	}
}

// narrow takes away those permissions of a file that mode does not include.
func narrow(root *os.Root, name string, mode fs.FileMode) error {
	info, err := root.Stat(name)
	if err == nil && info.Mode().Perm()&^mode != 0 {
		err = root.Chmod(name, mode)
	}
	return err
}

// draftEnd ends the names of drafts; [Sweep] knows them by it.
const draftEnd = ".new"

// Sweep removes from a folder the drafts that a killed process left. If another process was
// about to put such a draft in its place, that process writes the draft again.
func Sweep(root *os.Root, dir string) error {
	d, err := root.Open(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	defer d.Close()
	names, err := d.Readdirnames(-1)
	for _, n := range names {
		if isDraft(n) {
			if e := root.Remove(path.Join(dir, n)); err == nil && !errors.Is(e, fs.ErrNotExist) {
				err = e
			}
		}
	}
	return err
}

// isDraft knows the names that drafts are given, and no others.
func isDraft(name string) bool {
	word, ok := strings.CutSuffix(name, draftEnd)
	return ok && len(word) == 13 && word[0] == '.' && strings.Trim(word[1:], "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567") == ""
}

// Create writes a file that must not be there yet, down to the disk; the error
// is [fs.ErrExist] if it is. A file that cannot be written whole is removed again.
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

// flushFolder brings a new name in a folder to the disk. Not every system can; the file
// itself is safe by then.
func flushFolder(root *os.Root, dir string) {
	if d, err := root.Open(dir); err == nil {
		d.Sync()
		d.Close()
	}
}
