package sitefile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/BurntSushi/toml"

	"swardbook/agronomy"
	"swardbook/schedule"
)

// Limits on a site file. [common] far above what anybody writes by hand
const (
	maxBytes     = 1 << 20
	maxAreas     = 500
	maxMaterials = 200
	maxProblems  = 200
	maxText      = 200
)

// complaints collects what is wrong with one file.
type complaints struct {
	file     string
	lines    *lines // nil where keys have no lines of their own
	problems []schedule.Problem
	told     [2]int // errors and warnings among them
	more     int    // errors beyond maxProblems, counted only
	doubts   int    // warnings beyond maxProblems, counted only
}

// report notes a problem at a key, or at the nearest table above it that stands in the
// file. Errors and warnings have a limit each, so warnings crowd out no error.
func (c *complaints) report(p schedule.Problem) {
	told, beyond := &c.told[0], &c.more
	if p.Warning {
		told, beyond = &c.told[1], &c.doubts
	}
	if *told == maxProblems {
		*beyond++
		return
	}
	*told++
	p.File = c.file
	if p.Line == 0 {
		p.Line = c.spot(p.Key).line
	}
	p.Key, p.Message, p.Hint = printable(p.Key), printable(p.Message), printable(p.Hint)
	c.problems = append(c.problems, p)
}

// printable keeps what a file holds from breaking a message's line or steering
// a terminal.
func printable(s string) string {
	return strings.Map(func(c rune) rune {
		if Unsightly(c) {
			return ' '
		}
		return c
	}, s)
}

// Unsightly tells the characters that break a line, steer a terminal, or turn the
// direction of what stands beside them, so that a text seems to say another.
func Unsightly(c rune) bool {
	return unicode.IsControl(c) || unicode.Is(unicode.Bidi_Control, c) || c == '\u2028' || c == '\u2029'
}

func (c *complaints) spot(path string) spot {
	if c.lines == nil {
		return spot{}
	}
	for path != "" {
		if s, ok := c.lines.spots[path]; ok {
			return s
		}
		path = path[:max(0, strings.LastIndexByte(path, '.'))]
	}
	return spot{}
}

// all gives the problems in the order of the file.
func (c *complaints) all() []schedule.Problem {
	ps := schedule.SortProblems(c.problems)
	if c.more > 0 {
		ps = append(ps, schedule.Problem{File: c.file, Message: fmt.Sprintf("and %d more problems", c.more), Hint: "mend these first"})
	}
	if c.doubts > 0 {
		ps = append(ps, schedule.Problem{File: c.file, Warning: true, Message: fmt.Sprintf("and %d more warnings", c.doubts), Hint: "mend these first"})
	}
	return ps
}

// reader reads one site file.
type reader struct {
	complaints
	open func(string) (io.ReadCloser, error)
	site schedule.Site
}

// readable refuses what cannot be the text of a site file. It reports true when the text
// may be read further.
func readable(file string, text []byte) (schedule.Problem, bool) {
	return readableUpTo(file, text, maxBytes)
}

func readableUpTo(file string, text []byte, most int) (schedule.Problem, bool) {
	fail := func(line int, message, hint string) (schedule.Problem, bool) {
		return schedule.Problem{File: file, Line: line, Message: message, Hint: hint}, false
	}
	s := string(text)
	switch {
	case len(text) > most:
		return fail(0, fmt.Sprintf("the file holds %d bytes, more than the %d that are read", len(text), most), "check that this is the right file")
	case strings.HasPrefix(s, "\xff\xfe"), strings.HasPrefix(s, "\xfe\xff"):
		return fail(1, "the file is UTF-16", "save it as UTF-8")
	case !utf8.Valid(text):
		at := 0
		for at < len(s) {
			c, size := utf8.DecodeRuneInString(s[at:])
			if c == utf8.RuneError && size == 1 {
				break
			}
			at += size
		}
		return fail(lineOf(s, at), "the text is not UTF-8", "save the file as UTF-8")
	case strings.IndexByte(s, 0) >= 0:
		return fail(lineOf(s, strings.IndexByte(s, 0)), "the file holds a zero byte, so it is no text", "check that this is the right file")
	}
	return schedule.Problem{}, true
}

func lineOf(s string, at int) int { return 1 + strings.Count(s[:at], "\n") }

// parse turns the text into values, or reports why it cannot.
func (r *reader) parse(text []byte) (map[string]any, bool) {
	if p, ok := readable(r.file, text); !ok {
		r.report(p)
		return nil, false
	}
	s := string(text)
	r.lines = scan(s)
	if r.lines.deep > 0 {
		r.report(schedule.Problem{Line: r.lines.deep, Message: fmt.Sprintf("nested more than %d deep", maxDepth), Hint: "no key of a site file is as deep as that"})
		return nil, false
	}
	var values any // as parsed: decoding into anything else would cost as much again
	_, err := toml.Decode(s, &values)
	if err == nil {
		top, _ := values.(map[string]any)
		return top, true
	}
	p := schedule.Problem{Message: err.Error()}
	if e, ok := errors.AsType[toml.ParseError](err); ok {
		p = schedule.Problem{Line: max(1, e.Position.Line), Key: e.LastKey, Message: plain(e.Message), Hint: syntaxHint(e)}
	}
	r.report(p)
	return nil, false
}

// plain brings a message from elsewhere into the form of the others: a small
// letter first, unless an abbreviation begins it, and no full stop.
func plain(message string) string {
	message = strings.TrimSuffix(strings.TrimSpace(message), ".")
	if message == "" {
		return "not a well-formed line"
	}
	if first, _, _ := strings.Cut(message, " "); strings.ToUpper(first) == first && len(first) > 1 {
		return message
	}
	return strings.ToLower(message[:1]) + message[1:]
}

func syntaxHint(e toml.ParseError) string {
	m := e.Message
	has := func(parts ...string) bool {
		for _, p := range parts {
			if strings.Contains(m, p) {
				return true
			}
		}
		return false
	}
	switch {
	case has("already", "Duplicate", "duplicate"):
		return "each table and each key may stand once; give one of the two another name, or remove it"
	case has("date", "Date", "time"):
		return "write a day that the calendar has, as 2026-09-12, without quotes"
	case has("expected value", "expected a value", "but found"):
		return `text goes in double quotes: state = "OH"; numbers and days stand without`
	case has("newline", "EOF", "unexpected end", "new line"):
		return "a quote or a bracket may not be closed on this line or the one before"
	}
	return `one key and its value on each line, as in state = "OH"; a table begins with its name in brackets, as in [area.east]`
}

// Load reads the text of a site file; name is what to call it in problems.
// When the file names a station file (place.normals), open is called with that
// name, which never leaves the site file's own folder. The site is nil if any
// problem is more than a warning.
func Load(name string, text []byte, open func(string) (io.ReadCloser, error)) (*schedule.Site, []schedule.Problem) {
	r := &reader{complaints: complaints{file: name}, open: open}
	if values, ok := r.parse(withoutMark(text)); ok {
		r.check(values, tree(), "")
		r.read(table{r, "", values})
	}
	ps := r.all()
	if schedule.Fatal(ps) {
		return nil, ps
	}
	return &r.site, ps
}

// withoutMark gives a text without the byte order mark that some editors and
// spreadsheets put before it.
func withoutMark(text []byte) []byte { return bytes.TrimPrefix(text, []byte("\xef\xbb\xbf")) }

// assume notes a default that was used because the file gives no value.
func (r *reader) assume(format string, args ...any) {
	r.site.Assumed = append(r.site.Assumed, agronomy.Reason{Text: fmt.Sprintf(format, args...)})
}
