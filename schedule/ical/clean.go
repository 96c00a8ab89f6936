package ical

import (
	"net/url"
	"strings"
	"unicode"
	"unicode/utf8"
)

// clean makes a text safe for every reader of the file: line ends become \n,
// control characters, byte order marks and broken UTF-8 go, runs of blanks
// shrink to one and runs of line ends to two, and angle brackets turn into
// quotation marks, since some calendars render them as HTML. Cleaning twice
// changes nothing.
func clean(s string) string {
	if isClean(s) {
		return s
	}
	s = strings.ReplaceAll(s, "\r\n", "\n")
	var b strings.Builder
	b.Grow(len(s))
	blank, breaks := false, 0 // owed before the next visible character
	for _, r := range s {
		switch {
		case strings.ContainsRune("\n\r\v\f\u0085\u2028\u2029", r) && r != utf8.RuneError:
			blank, breaks = false, breaks+1
			continue
		case unicode.IsSpace(r):
			blank = true
			continue
		case unfit(r):
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

// unfit tells the characters that go: controls, what turns the direction of a
// text, byte order marks, and what stands for broken UTF-8.
func unfit(r rune) bool {
	return r == utf8.RuneError || r == '\uFEFF' || unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)
}

// plainByte tells the bytes that are clean wherever they stand: printable ASCII
// but for blanks and angle brackets.
var plainByte = func() (plain [256]bool) {
	for c := '!'; c <= '~'; c++ {
		plain[c] = c != '<' && c != '>'
	}
	return plain
}()

// isClean tells whether [clean] would change nothing; most texts are so.
func isClean(s string) bool {
	for i := 0; i < len(s); i++ {
		c := s[i]
		if plainByte[c] {
			continue
		}
		switch {
		case c > '~':
			r, size := utf8.DecodeRuneInString(s[i:])
			if unfit(r) || unicode.IsSpace(r) {
				return false
			}
			i += size - 1
		case c != ' ' && c != '\n' || i == 0 || s[i-1] == ' ':
			return false
		case s[i-1] == '\n' && (c == ' ' || i > 1 && s[i-2] == '\n'):
			return false
		}
	}
	return s == "" || s[len(s)-1] > ' '
}

// oneLine is [clean] for texts that have no second line.
func oneLine(s string) string {
	s = clean(s)
	if strings.Contains(s, "\n") {
		s = strings.Join(strings.Fields(s), " ")
	}
	return s
}

// plainName is [oneLine] without the characters that need an escape, at most
// limit characters long: some calendars show escapes in the name as they are.
func plainName(s string, limit int) string {
	s = oneLine(strings.NewReplacer(",", " ", ";", " ", `\`, " ").Replace(s))
	runes := []rune(s)
	if len(runes) <= limit {
		return s
	}
	s = string(runes[:limit])
	if i := strings.LastIndexByte(s, ' '); i > len(s)/2 && runes[limit] != ' ' {
		s = s[:i] // no broken word
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
