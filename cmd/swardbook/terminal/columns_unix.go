//go:build linux || darwin || freebsd || netbsd || openbsd

package terminal

import (
	"syscall"
	"unsafe"
)

// windowColumns asks the terminal behind a file for its width; ok is false
// when there is none.
func windowColumns(fd uintptr) (columns int, ok bool) {
	var size struct{ rows, columns, x, y uint16 }
	_, _, errno := syscall.Syscall(syscall.SYS_IOCTL, fd, syscall.TIOCGWINSZ, uintptr(unsafe.Pointer(&size)))
	return int(size.columns), errno == 0
}
