// Package terminal tells whether output goes to a terminal, and how wide that
// is.
//
// It takes a writer and gives columns. It leaves out colours and the
// environment: what is done with a width is the caller's.
package terminal

import (
	"io"
	"os"
)

// Width gives the columns of a terminal; ok is false for anything else, and on
// systems where a terminal is not known.
func Width(w io.Writer) (columns int, ok bool) {
	f, isFile := w.(*os.File)
	if !isFile {
		return 0, false
	}
	return windowColumns(f.Fd())
}
