package main

import (
	"fmt"
	"io"
	"os"

	"swardbook/schedule/sitefile"
)

// appendRecord adds one line to a record book, which it begins if there is
// none. Many may do so at once: each holds the file's lock while it looks at
// the end and writes, and the line is on the disk before the lock is given
// back.
func appendRecord(path, line string) (err error) {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_APPEND, 0o666)
	if err != nil {
		return fmt.Errorf("could not write %s: %w", path, bare(err))
	}
	defer func() {
		if e := f.Close(); err == nil && e != nil {
			err = fmt.Errorf("could not write %s: %w", path, bare(e))
		}
	}()
	release, err := lock(f)
	if err != nil {
		return fmt.Errorf("could not lock %s: %w", path, err)
	}
	defer release()
	before, err := lineBefore(f)
	if err != nil {
		return fmt.Errorf("could not read %s: %w", path, bare(err))
	}
	start, err := f.Seek(0, io.SeekEnd)
	if err != nil {
		return fmt.Errorf("could not write %s: %w", path, bare(err))
	}
	_, err = f.WriteString(before + line)
	if err == nil {
		err = f.Sync()
	}
	if err != nil {
		f.Truncate(start) // a full disk leaves no half line
		return fmt.Errorf("could not write %s: %w", path, bare(err))
	}
	return nil
}

// lineBefore is what a new line needs before it: the header in an empty file,
// and the end of a last line that has none.
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
