package ical

import (
	"net/url"
	"strings"
	"unicode"
	"unicode/utf8"
)

// clean makes a text safe for every reader of the file: line ends become \n,
// control characters, byte order marks and broken UTF-8 go, runs of blanks and
// of empty lines shrink to one, and angle brackets turn into quotation marks,
// since some calendars render them as HTML. Cleaning twice changes nothing.
func clean(s string) string {
	s = strings.ReplaceAll(s, "\r\n", "\n")
	var b strings.Builder
	b.Grow(len(s))
	blank, breaks := false, 0 // owed before the next visible character
	for _, r := range s {
		switch {
		case r == '\n' || r == '\r' || r == '\v' || r == '\f' || r == '\u0085' || r == '\u2028' || r == '\u2029':
			blank, breaks = false, breaks+1
			continue
		case r == ' ' || r == '\t':
			blank = true
			continue
		case r == utf8.RuneError || r == '\uFEFF' || unicode.IsControl(r):
			continue
		case r == '<':
			r = '‹'
		case r == '>':
			r = '›'
		}
		if b.Len() > 0 {
			b.WriteString("\n\n"[:min(breaks, 2)])
			if blank && breaks == 0 {
				b.WriteByte(' ')
			}
		}
		blank, breaks = false, 0
		b.WriteRune(r)
	}
	return b.String()
}

// oneLine is [clean] for texts that have no second line.
func oneLine(s string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(clean(s), "\n", " ")), " ")
}

// plainName is [oneLine] without the characters that need an escape, at most
// limit characters long: some calendars show escapes in the name as they are.
func plainName(s string, limit int) string {
	s = oneLine(strings.NewReplacer(",", " ", ";", " ", `\`, " ").Replace(s))
	if utf8.RuneCountInString(s) <= limit {
		return s
	}
	s = string([]rune(s)[:limit])
	if i := strings.LastIndexByte(s, ' '); i > len(s)/2 {
		s = s[:i]
	}
	return strings.TrimSpace(s)
}

// webLink checks an absolute http or https address and gives the form that may
// stand in the file unescaped: printable ASCII without blanks and brackets.
func webLink(s string) (string, bool) {
	u, err := url.Parse(s)
	if err != nil || u.Host == "" || u.Scheme != "http" && u.Scheme != "https" {
		return "", false
	}
	out := u.String()
	for i := range len(out) {
		if c := out[i]; c <= ' ' || c > '~' || strings.IndexByte("<>\"{}|\\^`", c) >= 0 {
			return "", false
		}
	}
	return out, true
}

// plainID tells whether s may name an event or a calendar: 1 to 255 letters,
// digits, hyphens, dots and at signs.
func plainID(s string) bool {
	for i := range len(s) {
		c := s[i]
		if !('a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || '0' <= c && c <= '9' || c == '-' || c == '.' || c == '@') {
			return false
		}
	}
	return 0 < len(s) && len(s) <= 255
}
