//go:build linux || darwin || freebsd || netbsd || openbsd

package book

import (
	"os"
	"syscall"
)

// lock waits for the file's lock. It keeps out only those who ask for the lock as well.
func lock(_ *os.Root, _ string, f *os.File) (release func() error, err error) {
	for {
		err = syscall.Flock(int(f.Fd()), syscall.LOCK_EX)
		if err != syscall.EINTR {
			break
		}
	}
	if err != nil {
		return nil, os.NewSyscallError("lock", err)
	}
	return func() error { return syscall.Flock(int(f.Fd()), syscall.LOCK_UN) }, nil
}
