package text

import (
	"unicode/utf8"

	"swardbook/schedule/word"
)

// wrap breaks a text into lines of at most width characters. It never breaks
// between a number and its unit, inside a date, or inside a word.
func wrap(text string, width int) []string {
	var lines []string
	line, used := "", 0
	for _, w := range word.Runs(text) {
		n := utf8.RuneCountInString(w)
		switch {
		case line == "":
			line, used = w, n
		case used+1+n <= width:
			line, used = line+" "+w, used+1+n
		default:
			lines = append(lines, line)
			line, used = w, n
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
