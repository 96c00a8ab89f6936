package main

import (
	"bytes"
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// write puts a finished result where it belongs: standard output for "" and
// "-", else the file, which is never one of the inputs.
func (s *session) write(out string, data []byte, inputs ...string) error {
	if out == "" || out == "-" {
		return s.print(string(data))
	}
	if err := notInput(out, inputs); err != nil {
		return err
	}
	_, err := replaceFile(out, data)
	return err
}

// notInput refuses to write over what was read.
func notInput(out string, inputs []string) error {
	target, _ := os.Stat(out)
	for _, in := range inputs {
		if in == "" || in == "-" {
			continue
		}
		same := samePath(in, out)
		if info, err := os.Stat(in); err == nil && target != nil {
			same = same || os.SameFile(info, target)
		}
		if same {
			return misuse("%s is read here, so it is not written over; choose another name for -o", in)
		}
	}
	return nil
}

func samePath(a, b string) bool {
	x, err1 := filepath.Abs(a)
	y, err2 := filepath.Abs(b)
	return err1 == nil && err2 == nil && x == y
}

// replaceFile gives a file new content, all or nothing: it is written beside
// the old one, flushed to the disk, and put in its place. Content that is
// there already is left alone, and replaceFile reports false.
func replaceFile(path string, data []byte) (bool, error) {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real // the link stays a link
	}
	mode := fs.FileMode(0o666) // less what the user's mask takes
	switch info, err := os.Stat(path); {
	case err == nil && info.IsDir():
		return false, fmt.Errorf("could not write %s: it is a folder", path)
	case err == nil && !info.Mode().IsRegular():
		return true, os.WriteFile(path, data, mode) // a device or a pipe
	case err == nil:
		mode = info.Mode().Perm()
		if old, err := os.ReadFile(path); err == nil && bytes.Equal(old, data) {
			return false, nil
		}
	}
	temp := filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+"."+rand.Text()[:8])
	if err := writeNew(temp, data, mode); err != nil {
		return false, fmt.Errorf("could not write %s: %w", path, bare(err))
	}
	if err := os.Rename(temp, path); err != nil {
		os.Remove(temp)
		return false, fmt.Errorf("could not write %s: %w", path, bare(err))
	}
	flushFolder(filepath.Dir(path))
	return true, nil
}

// writeNew writes a file that must not be there yet, down to the disk. What
// cannot be written whole is taken away again.
func writeNew(path string, data []byte, mode fs.FileMode) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	for _, step := range []func() error{f.Sync, f.Close} {
		if e := step(); err == nil {
			err = e
		}
	}
	if err != nil {
		os.Remove(path)
	}
	return err
}

// flushFolder makes a new name in a folder last. Not every system can; the
// file itself is safe by then.
func flushFolder(dir string) {
	if d, err := os.Open(dir); err == nil {
		d.Sync()
		d.Close()
	}
}

// bare leaves the path out of a file error; the message names it already.
func bare(err error) error {
	if p, ok := errors.AsType[*fs.PathError](err); ok {
		return p.Err
	}
	if l, ok := errors.AsType[*os.LinkError](err); ok {
		return l.Err
	}
	return err
}
