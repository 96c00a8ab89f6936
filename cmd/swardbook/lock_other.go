//go:build !(linux || darwin || freebsd || netbsd || openbsd)

package main

import (
	"errors"
	"os"
	"time"
)

// lock makes a file beside the one that is to be ours, and waits while there
// is one already.
func lock(f *os.File) (release func(), err error) {
	name := f.Name() + ".lock"
	for range 200 {
		l, err := os.OpenFile(name, os.O_CREATE|os.O_EXCL, 0o666)
		if err == nil {
			l.Close()
			return func() { os.Remove(name) }, nil
		}
		if !errors.Is(err, os.ErrExist) {
			return nil, err
		}
		time.Sleep(50 * time.Millisecond)
	}
	return nil, errors.New(name + " has been there for 10 seconds; if nobody else is writing, remove it")
}
