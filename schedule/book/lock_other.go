//go:build !(linux || darwin || freebsd || netbsd || openbsd)

package book

import (
	"errors"
	"io/fs"
	"os"
	"time"
)

// lock makes a lock file beside the file, and waits while there is one already. After ten
// seconds it gives up.
func lock(root *os.Root, name string, _ *os.File) (release func() error, err error) {
	name += ".lock"
	for range 200 {
		l, err := root.OpenFile(name, os.O_CREATE|os.O_EXCL, 0o666)
		if err == nil {
			l.Close()
			return func() error { return root.Remove(name) }, nil
		}
		if !errors.Is(err, fs.ErrExist) {
			return nil, err
		}
		time.Sleep(50 * time.Millisecond)
	}
	return nil, errors.New(name + " has been there for 10 seconds; if nobody else is writing, remove it")
}
