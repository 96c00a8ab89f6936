package ical

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"time"

	ics "github.com/arran4/golang-ical"
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

// read lets the library parse a file whose shape is sound, and checks what an
// event of ours must have.
func read(text []byte) (calendar, error) {
	content, lines, err := shape(text)
	if err != nil {
		return calendar{}, err
	}
	cal, err := ics.ParseCalendarWithOptions(bytes.NewReader(content), ics.WithUnknownPropertyHandler(ics.AcceptUnknownPropertyHandler))
	if err != nil {
		return calendar{}, &Refused{"the calendar cannot be read: " + err.Error(), restore}
	}
	var c calendar
	for _, p := range cal.CalendarProperties {
		switch p.IANAToken {
		case string(ics.PropertyXWRCalID):
			c.id = p.Value
		case string(ics.PropertyName):
			c.name = p.Value
		}
	}
	seen := map[string]bool{}
	for i, v := range cal.Events() {
		e, err := event(v)
		switch {
		case err != nil:
			return calendar{}, unreadable(lines[i], err.Error())
		case seen[e.UID]:
			return calendar{}, unreadable(lines[i], "a second event has the id "+e.UID)
		}
		seen[e.UID] = true
		c.events = append(c.events, e)
	}
	return c, nil
}

// event reads one event of the library's. What we never write is passed over;
// what stands in an event must not stand in it twice.
func event(v *ics.VEvent) (Event, error) {
	var e Event
	has := make(map[string]bool, len(v.Properties))
	for _, p := range v.Properties {
		if has[p.IANAToken] {
			return e, fmt.Errorf("%s stands twice in this event", p.IANAToken)
		}
		has[p.IANAToken] = true
		if err := e.take(ics.ComponentProperty(p.IANAToken), p.Value); err != nil {
			return e, fmt.Errorf("in this event, %w", err)
		}
	}
	if !has["UID"] || !has["DTSTART"] || !has["DTSTAMP"] || !has["SEQUENCE"] || e.Summary == "" {
		return e, fmt.Errorf("this event lacks its id, day, stamp, sequence or summary")
	}
	for _, a := range v.Alarms() {
		t := a.GetProperty(ics.ComponentPropertyTrigger)
		if t == nil {
			continue
		}
		d, err := duration(t.Value)
		if err != nil {
			return e, fmt.Errorf("in this event, %w", err)
		}
		e.Remind = append(e.Remind, d)
	}
	if len(e.Remind) > 2 {
		return e, fmt.Errorf("this event has more than two alarms")
	}
	return e, nil
}

// take reads one property of an event, its value without escapes. Days and
// stamps are read here, as the library takes other forms of them too, and gives
// days in the zone of this machine.
func (e *Event) take(name ics.ComponentProperty, value string) (err error) {
	switch name {
	case ics.ComponentPropertyUniqueId:
		if e.UID = value; !plainID(value) {
			err = fmt.Errorf("%q is no id of ours", value)
		}
	case ics.ComponentPropertyDtstamp, ics.ComponentPropertyLastModified:
		var t time.Time
		if t, err = moment(stampForm, value); t.After(e.Stamp) {
			e.Stamp = t
		}
	case ics.ComponentPropertySequence:
		if e.Sequence, err = strconv.Atoi(value); err == nil && (e.Sequence < 0 || e.Sequence >= sequenceLimit) {
			err = fmt.Errorf("the sequence %s is out of range", value)
		}
	case ics.ComponentPropertyDtStart:
		var t time.Time
		t, err = moment(dayForm, value)
		e.Date = dayOf(t)
	case ics.ComponentPropertySummary:
		e.Summary = oneLine(value)
	case ics.ComponentPropertyDescription:
		e.Description = clean(value)
	case ics.ComponentPropertyLocation:
		e.Location = oneLine(value)
	case ics.ComponentPropertyCategories:
		e.Categories = oneLine(value)
		if strings.ContainsAny(value, `\;`) || strings.Trim(e.Categories, ",") != e.Categories || strings.Contains(e.Categories, ",,") {
			err = fmt.Errorf("the categories are not plain words")
		}
	case ics.ComponentPropertyStatus:
		e.Cancelled = value == string(ics.ObjectStatusCancelled)
	case ics.ComponentPropertyUrl:
		ok := false
		if e.Link, ok = webLink(value); !ok {
			err = fmt.Errorf("%q is no web address", value)
		}
	}
	return err
}

// moment reads a day or a stamp, UTC, of a year that a calendar may hold.
func moment(form, value string) (time.Time, error) {
	t, err := time.Parse(form, value)
	if err == nil && !datable(dayOf(t)) {
		err = fmt.Errorf("the year of %s is not between 1970 and 2200", value)
	}
	return t, err
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
