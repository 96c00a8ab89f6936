package text

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"swardbook/schedule"
)

// Style is how a text is shown; what it says does not depend on it, but for
// the state of jobs, which is as of Today.
type Style struct {
	Width  int // of a line in characters; kept between 60 and 120, 0 is 80
	Colour bool
	Today  schedule.Date // unset: jobs are planned, done or missed, and none is due
}

// Width limits. Under the narrowest a table of amounts can no longer be read,
// over the widest a line of text.
const (
	Narrowest = 60
	Widest    = 120
	usual     = 80
)

// sheet collects the lines of one text.
type sheet struct {
	Style
	b strings.Builder
}

func newSheet(s Style) *sheet {
	if s.Width == 0 {
		s.Width = usual
	}
	s.Width = min(max(s.Width, Narrowest), Widest)
	return &sheet{Style: s}
}

func (s *sheet) String() string { return s.b.String() }

func (s *sheet) bold(t string) string  { return s.ink("1", t) }
func (s *sheet) faint(t string) string { return s.ink("2", t) }

func (s *sheet) ink(code, t string) string {
	if !s.Colour || t == "" {
		return t
	}
	return "\x1b[" + code + "m" + t + "\x1b[0m"
}

// gap leaves one empty line, but none at the head of the text.
func (s *sheet) gap() {
	if s.b.Len() > 0 && !strings.HasSuffix(s.b.String(), "\n\n") {
		s.b.WriteByte('\n')
	}
}

// head writes a heading with an empty line before it.
func (s *sheet) head(t string) {
	s.gap()
	for _, l := range wrap(clean(t), s.Width) {
		s.b.WriteString(s.bold(l) + "\n")
	}
}

// para writes a paragraph, indented.
func (s *sheet) para(indent int, t string) { s.hang(indent, "", t) }

// hang writes a paragraph behind a mark; its further lines stand under the
// first word.
func (s *sheet) hang(indent int, mark, t string) {
	t = clean(t)
	if t == "" {
		return
	}
	if mark != "" {
		mark += " "
	}
	at := indent + utf8.RuneCountInString(mark)
	for i, l := range wrap(t, s.Width-at) {
		if i == 0 {
			s.b.WriteString(strings.Repeat(" ", indent) + mark + l + "\n")
		} else {
			s.b.WriteString(strings.Repeat(" ", at) + l + "\n")
		}
	}
}

// list writes lines behind dashes under a heading; nothing without lines.
func (s *sheet) list(title string, lines []string) {
	if len(lines) == 0 {
		return
	}
	s.head(title)
	for _, l := range lines {
		s.hang(2, "-", l)
	}
}

// numbered writes steps behind their numbers.
func (s *sheet) numbered(indent int, steps []string) {
	width := len(fmt.Sprint(len(steps)))
	for i, t := range steps {
		s.hang(indent, fmt.Sprintf("%*d.", width, i+1), t)
	}
}

// clean takes what a terminal might obey out of a text that a person wrote:
// control characters, those that turn the direction of a text, and line breaks,
// which the wrapping sets anew.
func clean(t string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Bidi_Control, r):
			return -1
		}
		return r
	}, t)
}

// day writes a date, or a word for the unset one.
func day(d schedule.Date) string {
	if d.IsZero() {
		return "none"
	}
	return d.Short()
}

// between writes a span without saying the same year twice.
func between(from, to schedule.Date) string {
	if from.Year == to.Year {
		return fmt.Sprintf("%d %s to %s", from.Day, from.Month.String()[:3], to.Short())
	}
	return from.Short() + " to " + to.Short()
}
