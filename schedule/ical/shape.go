package ical

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"
)

// levels are the components of our calendars, each within the one before.
var levels = []string{"VCALENDAR", "VEVENT", "VALARM"}

// nameLetters are what the name of a property is made of (RFC 5545, section 3.1).
const nameLetters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-"

// shape checks what the library's parser does not: that the file is ours, whole,
// of bearable size, in UTF-8, and nested three deep at most; the parser calls
// itself for every BEGIN, takes a file cut short for a whole one, and looks for
// the name anywhere in a line. It gives the content lines, unfolded, and the
// number of the line on which each event begins.
func shape(text []byte) (content []byte, events []int, err error) {
	if len(text) > sizeLimit {
		return nil, nil, &Refused{"the file is larger than 8 MiB, more than a calendar of ours can be", otherName}
	}
	text = bytes.TrimPrefix(text, []byte("\uFEFF"))
	if !bytes.HasPrefix(text, []byte("BEGIN:VCALENDAR")) {
		return nil, nil, &Refused{"the file is no calendar", otherName}
	}
	if !utf8.Valid(text) {
		return nil, nil, &Refused{"the calendar is not in UTF-8", restore}
	}
	content, numbers := unfold(text)
	n, i := nesting{}, 0
	for line := range bytes.SplitSeq(bytes.TrimSuffix(content, lineEnd), lineEnd) {
		if fault := n.take(string(line), numbers[i]); fault != "" {
			return nil, nil, unreadable(numbers[i], fault)
		}
		if n.foreign {
			return nil, nil, &Refused{"another program wrote this calendar", otherName}
		}
		i++
	}
	if !n.ended {
		return nil, nil, &Refused{"the calendar is cut short", restore}
	}
	return content, n.events, nil
}

// unreadable is the refusal of a file with a fault on a line.
func unreadable(number int, fault string) error {
	return &Refused{fmt.Sprintf("line %d of the calendar cannot be read: %s", number, fault), restore}
}

// nesting is how far the check of a file's components has come.
type nesting struct {
	depth         int  // open components
	ours, foreign bool // PRODID is ours; something else is
	ended         bool
	events        []int
}

// take checks one content line and tells what is wrong with it, "" when nothing.
func (n *nesting) take(line string, number int) (fault string) {
	if line == "" {
		return ""
	}
	name := line[:len(line)-len(strings.TrimLeft(line, nameLetters))]
	switch rest := line[len(name):]; {
	case name == "" || rest == "" || rest[0] != ':' && rest[0] != ';':
		return "it has no name and value"
	case n.ended:
		return "it stands after the end"
	case n.depth == 1 && line == "PRODID:"+prodID:
		n.ours = true
	case n.depth == 1 && (name == "BEGIN" || name == "END") && !n.ours:
		n.foreign = true
	case name == "BEGIN":
		if n.depth == len(levels) || line != "BEGIN:"+levels[n.depth] {
			return "nothing of ours begins here"
		}
		n.depth++
		if n.depth == 2 {
			n.events = append(n.events, number)
		}
	case name == "END":
		if n.depth == 0 || line != "END:"+levels[n.depth-1] {
			return "nothing of that name is open"
		}
		n.depth--
		n.ended = n.depth == 0
	}
	return ""
}
