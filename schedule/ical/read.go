package ical

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"
)

// Refused is the error of [Update] and [Events] when the file that is there is
// not ours to change, or cannot be read. The file must be left as it is.
type Refused struct{ Why, Hint string }

func (e *Refused) Error() string { return e.Why + "; " + e.Hint }

const (
	sizeLimit     = 8 << 20 // octets; a season has about 60 kB
	sequenceLimit = 999_999_999
	otherName     = "write to another file name, or move this one away"
	restore       = "restore it from a copy; if there is none, publish under another name, as phones would keep the old events"
)

// Events reads a calendar that [Write] or [Update] wrote. Line ends and a byte
// order mark that an editor changed are forgiven; a file of another program, a
// file cut short, two events with one id, or more than 8 MiB are [*Refused].
func Events(text []byte) ([]Event, error) {
	c, err := read(text)
	return c.events, err
}

// read reads a calendar in one pass over its content lines. Components nest
// three deep at most, and anything deeper is refused before it is entered.
func read(text []byte) (calendar, error) {
	if len(text) > sizeLimit {
		return calendar{}, &Refused{"the file is larger than 8 MiB, more than a calendar of ours can be", otherName}
	}
	text = bytes.TrimPrefix(text, []byte("\uFEFF"))
	if !bytes.HasPrefix(text, []byte("BEGIN:VCALENDAR")) {
		return calendar{}, &Refused{"the file is no calendar", otherName}
	}
	if !utf8.Valid(text) {
		return calendar{}, &Refused{"the calendar is not in UTF-8", restore}
	}
	r := reader{seen: map[string]bool{}}
	number, start, pending := 0, 1, ""
	for line := range strings.SplitSeq(string(text), "\n") {
		number++
		line = strings.TrimSuffix(line, "\r")
		if strings.HasPrefix(line, " ") || strings.HasPrefix(line, "\t") {
			r.folded.WriteString(line[1:])
			continue
		}
		if err := r.take(pending, start); err != nil {
			return calendar{}, err
		}
		pending, start = line, number
	}
	if err := r.take(pending, start); err != nil {
		return calendar{}, err
	}
	if !r.ended {
		return calendar{}, &Refused{"the calendar is cut short", restore}
	}
	return r.cal, nil
}

// reader is how far the reading has come.
type reader struct {
	folded strings.Builder // what follows the pending line after folds
	in     []string        // names of the open components
	ours   bool            // PRODID was ours
	ended  bool
	cal    calendar
	event  Event
	has    map[string]bool // single properties of the open event
	seen   map[string]bool // UIDs so far
}

// take reads one content line, joined with what was folded behind it.
func (r *reader) take(line string, number int) error {
	line += r.folded.String()
	r.folded.Reset()
	if line == "" {
		return nil
	}
	fault := func(what string) error {
		return &Refused{fmt.Sprintf("line %d of the calendar cannot be read: %s", number, what), restore}
	}
	name, value, ok := property(line)
	if !ok {
		return fault("it has no name and value")
	}
	if r.ended {
		return fault("it stands after the end")
	}
	where := strings.Join(r.in, " ")
	switch name {
	case "BEGIN":
		return r.begin(where, value, fault)
	case "END":
		return r.end(where, value, fault)
	}
	var err error
	switch where {
	case "VCALENDAR":
		err = r.calendarLine(name, value)
	case "VCALENDAR VEVENT":
		err = r.eventLine(name, value)
	case "VCALENDAR VEVENT VALARM":
		if name == "TRIGGER" {
			var d time.Duration
			d, err = duration(value)
			r.event.Remind = append(r.event.Remind, d)
		}
	}
	if err != nil {
		return fault(err.Error())
	}
	return nil
}

func (r *reader) begin(where, value string, fault func(string) error) error {
	if where == "VCALENDAR" && !r.ours {
		return &Refused{"another program wrote this calendar", otherName}
	}
	switch where + " " + value {
	case " VCALENDAR", "VCALENDAR VEVENT VALARM":
	case "VCALENDAR VEVENT":
		r.event, r.has = Event{}, map[string]bool{}
	default:
		return fault("nothing of ours begins here")
	}
	r.in = append(r.in, value)
	return nil
}

func (r *reader) end(where, value string, fault func(string) error) error {
	if len(r.in) == 0 || r.in[len(r.in)-1] != value {
		return fault("nothing of that name is open")
	}
	r.in = r.in[:len(r.in)-1]
	switch where {
	case "VCALENDAR":
		if !r.ours {
			return &Refused{"another program wrote this calendar", otherName}
		}
		r.ended = true
	case "VCALENDAR VEVENT":
		e := r.event
		switch {
		case !r.has["UID"] || !r.has["DTSTART"] || !r.has["DTSTAMP"] || !r.has["SEQUENCE"] || e.Summary == "":
			return fault("the event before it lacks its id, day, stamp, sequence or summary")
		case r.seen[e.UID]:
			return fault("a second event has the id " + e.UID)
		case len(e.Remind) > 2:
			return fault("the event before it has more than two alarms")
		}
		r.seen[e.UID] = true
		r.cal.events = append(r.cal.events, e)
	}
	return nil
}

func (r *reader) calendarLine(name, value string) error {
	switch name {
	case "PRODID":
		r.ours = unescape(value) == prodID
	case calendarID:
		r.cal.id = value
	}
	return nil
}

// eventLine takes one property of the open event. What we never write is
// passed over; what we write once must not come twice.
func (r *reader) eventLine(name, value string) error {
	if r.has[name] {
		return fmt.Errorf("%s stands twice", name)
	}
	r.has[name] = true
	e, err := &r.event, error(nil)
	switch name {
	case "UID":
		if e.UID = value; !plainID(value) {
			err = fmt.Errorf("%q is no id of ours", value)
		}
	case "DTSTAMP", "LAST-MODIFIED":
		var t time.Time
		if t, err = time.Parse(stampForm, value); err == nil && !datable(dayOf(t)) {
			err = fmt.Errorf("the year of %s is not between 1970 and 2200", value)
		}
		if t.After(e.Stamp) {
			e.Stamp = t
		}
	case "SEQUENCE":
		if e.Sequence, err = strconv.Atoi(value); err == nil && (e.Sequence < 0 || e.Sequence >= sequenceLimit) {
			err = fmt.Errorf("the sequence %s is out of range", value)
		}
	case "DTSTART":
		var t time.Time
		if t, err = time.Parse(dayForm, value); err == nil && !datable(dayOf(t)) {
			err = fmt.Errorf("the year of %s is not between 1970 and 2200", value)
		}
		e.Date = dayOf(t)
	case "SUMMARY":
		e.Summary = oneLine(unescape(value))
	case "DESCRIPTION":
		e.Description = clean(unescape(value))
	case "LOCATION":
		e.Location = oneLine(unescape(value))
	case "CATEGORIES":
		e.Categories = oneLine(value)
		if strings.ContainsAny(value, `\;`) || strings.Trim(e.Categories, ",") != e.Categories || strings.Contains(e.Categories, ",,") {
			err = fmt.Errorf("the categories are not plain words")
		}
	case "STATUS":
		e.Cancelled = value == "CANCELLED"
	case "URL":
		ok := false
		if e.Link, ok = webLink(value); !ok {
			err = fmt.Errorf("%q is no web address", value)
		}
	}
	return err
}

// property splits a content line into name and value. Parameters say nothing
// that the name does not, in what we write.
func property(line string) (name, value string, ok bool) {
	i := strings.IndexAny(line, ";:")
	if i <= 0 {
		return "", "", false
	}
	name = line[:i]
	quoted := false
	for ; i < len(line); i++ {
		switch {
		case line[i] == '"':
			quoted = !quoted
		case line[i] == ':' && !quoted:
			return name, line[i+1:], true
		}
	}
	return "", "", false
}

// unescape undoes the escapes of a TEXT value (RFC 5545, section 3.3.11).
func unescape(s string) string {
	if !strings.Contains(s, `\`) {
		return s
	}
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		if s[i] == '\\' && i+1 < len(s) {
			i++
			if s[i] == 'n' || s[i] == 'N' {
				b.WriteByte('\n')
				continue
			}
		}
		b.WriteByte(s[i])
	}
	return b.String()
}

// duration reads what [trigger] writes, up to a year either way.
func duration(s string) (time.Duration, error) {
	rest, before := strings.CutPrefix(s, "-")
	rest, ok := strings.CutPrefix(rest, "PT")
	if ok && rest != "" && strings.Trim(rest, "0123456789HMS") == "" {
		d, err := time.ParseDuration(strings.ToLower(rest))
		if err == nil && d <= 366*24*time.Hour {
			if before {
				d = -d
			}
			return d, nil
		}
	}
	return 0, fmt.Errorf("the trigger %q is none of ours", s)
}
