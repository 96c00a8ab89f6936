package ical

import (
	"bytes"
	"unicode/utf8"
)

// lineLimit is the longest physical line in octets, without its CRLF
// (RFC 5545, section 3.1).
const lineLimit = 75

var (
	lineEnd    = []byte("\r\n")
	categories = []byte("CATEGORIES:")
)

// foldAll folds what the library wrote unfolded, and takes back its escapes of
// the commas between categories, which would make one category of them all.
func foldAll(text []byte) []byte {
	out := make([]byte, 0, len(text)+len(text)/16)
	for line := range bytes.SplitSeq(bytes.TrimSuffix(text, lineEnd), lineEnd) {
		if bytes.HasPrefix(line, categories) {
			line = bytes.ReplaceAll(line, []byte(`\,`), []byte(","))
		}
		out = fold(out, line)
	}
	return out
}

// unfold joins what was folded, and forgives line ends without CR. It gives one
// content line a line, and the number of the line on which each began.
func unfold(text []byte) (content []byte, numbers []int) {
	content = make([]byte, 0, len(text)+len(lineEnd))
	number := 0
	for line := range bytes.SplitSeq(text, []byte("\n")) {
		number++
		line = bytes.TrimSuffix(line, []byte("\r"))
		if number > 1 && len(line) > 0 && (line[0] == ' ' || line[0] == '\t') {
			content, line = bytes.TrimSuffix(content, lineEnd), line[1:]
		} else {
			numbers = append(numbers, number)
		}
		content = append(append(content, line...), lineEnd...)
	}
	return content, numbers
}

// fold appends one content line to dst, broken into physical lines that each
// end in CRLF. Removing every CRLF with the blank behind it gives the content
// line back. A break never falls inside a character or an escape, nor beside a
// blank, which editors and mail would strip.
func fold(dst, line []byte) []byte {
	for limit := lineLimit; len(line) > limit; limit = lineLimit - 1 {
		at := breakAt(line, limit)
		dst = append(append(dst, line[:at]...), "\r\n "...)
		line = line[at:]
	}
	return append(append(dst, line...), "\r\n"...)
}

// breakAt finds the last good place to break a line that is longer than limit.
// If every place lies beside a blank, the last of those must do.
func breakAt(line []byte, limit int) int {
	last := 0
	for i := limit; i > 0; i-- {
		if !utf8.RuneStart(line[i]) || insideEscape(line[:i]) {
			continue
		}
		if line[i] != ' ' && line[i-1] != ' ' {
			return i
		}
		last = max(last, i)
	}
	if last == 0 { // not UTF-8 text at all
		return limit
	}
	return last
}

// insideEscape tells whether an odd number of backslashes ends the piece, so
// that the next character belongs to the last of them.
func insideEscape(piece []byte) bool {
	n := 0
	for n < len(piece) && piece[len(piece)-1-n] == '\\' {
		n++
	}
	return n%2 == 1
}
