package ical

import "unicode/utf8"

// lineLimit is the longest physical line in octets, without its CRLF
// (RFC 5545, section 3.1).
const lineLimit = 75

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
