package book

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"swardbook/schedule/sitefile"
)

// Append adds one line, which must end in a line break, to the record book of
// that name, and begins the book if there is none. Many writers may call it at once, in
// one process or several: each holds the file's lock while it looks at the end
// and writes, and the line is on the disk before the lock is given back. A last
// line that was cut short, by a crash or an editor, is ended first, so that the
// new one stands alone. After an error the book is as it was.
func Append(root *os.Root, name, line string) error {
	f, release, err := openLocked(root, name)
	if err != nil {
		return err
	}
	err = errors.Join(appendTo(f, line), release())
	if e := f.Close(); err == nil {
		err = e
	}
	return err
}

// patience is how often a writer that waits for its turn opens the book again because
// another writer replaced it meanwhile.
const patience = 1000 // [common]

// openLocked opens the book and waits for its lock. If another file was put in the place
// of the book meanwhile, as editors do when they save, it opens that file instead.
func openLocked(root *os.Root, name string) (*os.File, func() error, error) {
	for range patience {
		f, err := root.OpenFile(name, os.O_RDWR|os.O_CREATE|os.O_APPEND, 0o666)
		if err != nil {
			return nil, nil, err
		}
		release, err := lock(root, name, f)
		if err != nil {
			f.Close()
			return nil, nil, err
		}
		ours, err := f.Stat()
		if err == nil && !ours.Mode().IsRegular() {
			err = fmt.Errorf("%s is no ordinary file", name)
		}
		if err != nil {
			release()
			f.Close()
			return nil, nil, err
		}
		switch there, err := root.Stat(name); {
		case err == nil && os.SameFile(ours, there):
			return f, release, nil
		case err != nil && !errors.Is(err, fs.ErrNotExist):
			release()
			f.Close()
			return nil, nil, err
		}
		release()
		f.Close()
	}
	return nil, nil, fmt.Errorf("%s is being replaced again and again; try later", name)
}

func appendTo(f *os.File, line string) error {
	before, err := lineBefore(f)
	if err != nil {
		return err
	}
	start, err := f.Seek(0, io.SeekEnd)
	if err != nil {
		return err
	}
	_, err = f.WriteString(before + line)
	if err == nil {
		err = f.Sync()
	}
	if err != nil {
		f.Truncate(start) // a full disk leaves no half line
	}
	return err
}

// lineBefore is what must be written before a new line: the header in an empty file, or a
// line break after a last line that has none.
func lineBefore(f *os.File) (string, error) {
	info, err := f.Stat()
	if err != nil {
		return "", err
	}
	if info.Size() == 0 {
		return sitefile.Header, nil
	}
	last := make([]byte, 1)
	if _, err := f.ReadAt(last, info.Size()-1); err != nil {
		return "", err
	}
	if last[0] != '\n' {
		return "\n", nil
	}
	return "", nil
}
