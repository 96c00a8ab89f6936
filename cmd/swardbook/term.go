package main

import (
	"io"
	"os"
	"strconv"

	"swardbook/schedule"
	"swardbook/schedule/text"
)

// style is how text is shown on where the result goes. Colour is for
// terminals alone, and never when NO_COLOR, TERM=dumb or --no-color says no.
func (s *session) style(out string, today schedule.Date) text.Style {
	st := text.Style{Today: today}
	columns, terminal := 0, false
	if out == "" || out == "-" {
		columns, terminal = terminalWidth(s.stdout)
	}
	if n, err := strconv.Atoi(s.env("COLUMNS")); err == nil && n > 0 {
		columns = n
	}
	st.Width = columns
	st.Colour = terminal && !s.noColor && s.env("NO_COLOR") == "" && s.env("TERM") != "dumb"
	return st
}

// terminalWidth gives the columns of a terminal; ok is false for anything
// else.
func terminalWidth(w io.Writer) (columns int, ok bool) {
	f, isFile := w.(*os.File)
	if !isFile {
		return 0, false
	}
	return windowColumns(f.Fd())
}
