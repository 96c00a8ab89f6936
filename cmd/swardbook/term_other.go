//go:build !(linux || darwin || freebsd || netbsd || openbsd)

package main

// windowColumns knows no terminal here, so there is no colour, and COLUMNS
// says how wide.
func windowColumns(uintptr) (columns int, ok bool) { return 0, false }
