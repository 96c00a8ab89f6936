package sitefile

import (
	"strconv"
	"strings"
)

// spot is where a key stands: its line, and its place among all keys.
type spot struct{ line, order int }

// lines finds the spot of every key in the text of a TOML file. It takes the
// text to be well formed; where it is not, the TOML library says so, and what
// this scan finds is of no use but does no harm.
type lines struct {
	text  string
	at    int // the byte to be read next
	line  int
	spots map[string]spot
	deep  int // the line of a value or key that is nested too deep; 0: none

	want     string // a key whose value is looked for; "" none
	from, to int    // the bytes of that value
	table    string // the table it stands in
	head     int    // the byte after that table's header line; 0 not there
	tail     int    // the byte after the line of its last key; 0 it has none
}

// Deepest nesting read; the site file itself needs five. [common]
const maxDepth = 12

func scan(text string) *lines {
	l := &lines{text: text, line: 1, spots: make(map[string]spot, 128)}
	l.scan()
	return l
}

// LineOf gives the line on which a key stands in the text of a site file; 0 if it is not
// there.
func LineOf(text []byte, key string) int { return scan(string(text)).spots[key].line }

func (l *lines) scan() {
	table := ""
	for l.deep == 0 {
		l.skip(" \t\r\n")
		switch {
		case l.at >= len(l.text):
			return
		case l.next() == '[':
			for l.next() == '[' {
				l.at++
			}
			table = l.key("")
			if l.restOfLine(); table == l.table && l.want != "" {
				l.head = l.at
			}
		default:
			start := l.at
			path := l.key(table)
			if l.next() == '=' {
				l.at++
				l.value(path, 1)
			}
			if l.at == start {
				l.at++
			}
			if l.restOfLine(); table == l.table && l.want != "" {
				l.tail = l.at
			}
		}
		l.restOfLine()
	}
}

// next gives the byte at hand; 0 at the end.
func (l *lines) next() byte {
	if l.at < len(l.text) {
		return l.text[l.at]
	}
	return 0
}

// skip passes over the bytes in set and, if line ends are among them, over comments.
func (l *lines) skip(set string) {
	for l.at < len(l.text) {
		c := l.text[l.at]
		switch {
		case c == '#' && strings.Contains(set, "\n"):
			l.restOfLine()
			continue
		case strings.IndexByte(set, c) < 0:
			return
		case c == '\n':
			l.line++
		}
		l.at++
	}
}

func (l *lines) restOfLine() {
	if n := strings.IndexByte(l.text[l.at:], '\n'); n >= 0 {
		l.at += n
	} else {
		l.at = len(l.text)
	}
}

// key reads a dotted key, notes the spot of each of its parts, and gives the
// whole path.
func (l *lines) key(path string) string {
	for parts := 1; ; parts++ {
		if parts > maxDepth {
			l.deep = l.line
			return path
		}
		l.skip(" \t")
		start := l.at
		switch c := l.next(); c {
		case '"', '\'':
			l.quoted(c)
			part := l.text[start:l.at]
			if plain, err := strconv.Unquote(part); err == nil && c == '"' {
				path = join(path, plain)
			} else {
				path = join(path, strings.Trim(part, string(c)))
			}
		default:
			for l.at < len(l.text) && isBare(l.text[l.at]) {
				l.at++
			}
			path = join(path, l.text[start:l.at])
		}
		if _, known := l.spots[path]; !known {
			l.spots[path] = spot{l.line, len(l.spots)}
		}
		l.skip(" \t")
		if l.next() != '.' {
			return path
		}
		l.at++
	}
}

// value passes over one value, notes the keys of tables within it, and where
// the value that is looked for stands.
func (l *lines) value(path string, depth int) {
	l.skip(" \t")
	start := l.at
	l.pass(path, depth)
	if path == l.want && l.want != "" {
		l.from, l.to = start, start+len(strings.TrimRight(l.text[start:l.at], " \t\r"))
	}
}

func (l *lines) pass(path string, depth int) {
	if depth > maxDepth {
		l.deep = l.line
	}
	switch c := l.next(); c {
	case '"', '\'':
		if strings.HasPrefix(l.text[l.at:], strings.Repeat(string(c), 3)) {
			l.quotedOverLines(c)
		} else {
			l.quoted(c)
		}
	case '[', '{':
		l.at++
		for l.deep == 0 {
			l.skip(" \t\r\n,")
			start := l.at
			switch {
			case l.at >= len(l.text):
				return
			case l.next() == ']' || l.next() == '}':
				l.at++
				return
			case c == '[':
				l.value(path, depth+1)
			default:
				sub := l.key(path)
				if l.next() == '=' {
					l.at++
					l.value(sub, depth+1)
				}
			}
			if l.at == start {
				l.at++
			}
		}
	default:
		for l.at < len(l.text) && strings.IndexByte(",]}\n#", l.text[l.at]) < 0 {
			l.at++
		}
	}
}

// quoted passes over a text in quotes on one line.
func (l *lines) quoted(quote byte) {
	for l.at++; l.at < len(l.text) && l.text[l.at] != '\n'; l.at++ {
		switch c := l.text[l.at]; {
		case c == quote:
			l.at++
			return
		case c == '\\' && quote == '"' && l.at+1 < len(l.text) && l.text[l.at+1] != '\n':
			l.at++
		}
	}
}

// quotedOverLines passes over a text in three quotes. The text itself may end in one or
// two quotes, so up to five in a row close it.
func (l *lines) quotedOverLines(quote byte) {
	three := strings.Repeat(string(quote), 3)
	for l.at += 3; l.at < len(l.text); l.at++ {
		switch c := l.text[l.at]; {
		case c == '\n':
			l.line++
		case c == '\\' && quote == '"' && l.at+1 < len(l.text):
			if l.at++; l.next() == '\n' {
				l.line++
			}
		case strings.HasPrefix(l.text[l.at:], three):
			l.at += 3
			for range 2 {
				if l.next() == quote {
					l.at++
				}
			}
			return
		}
	}
}

// isBare tells whether a byte may stand in a key without quotes.
func isBare(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '-' || c == '_'
}

// join adds a name to the path of a table, in quotes if it needs them.
func join(path, name string) string {
	for i := range len(name) {
		if !isBare(name[i]) {
			name = strconv.Quote(name)
			break
		}
	}
	if name == "" {
		name = `""`
	}
	if path == "" {
		return name
	}
	return path + "." + name
}
