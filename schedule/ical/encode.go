package ical

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"time"

	ics "github.com/arran4/golang-ical"
)

const (
	prodID      = "-//swardbook//lawn program//EN" // no version: a new one must not change the bytes
	description = "Dated lawn jobs with their last safe days. A change can take a day to arrive."
	refresh     = "PT12H" // a wish; clients poll as they like
	color       = "olivedrab"

	// calendarID is the property that says which calendar a file holds. The
	// UID that RFC 7986 has for it will not do: a widely used sync tool takes it
	// for the UID of every event, and keeps one event of them all.
	calendarID = "X-WR-RELCALID"

	stampForm = "20060102T150405Z"
	dayForm   = "20060102"
)

// encode writes the calendar, its events sorted by day and then UID.
func encode(c calendar) ([]byte, error) {
	if len(c.events) == 0 {
		return nil, &Unwritable{"the calendar would be empty", "subscribers take that for a fault; choose other areas, persons or kinds"}
	}
	slices.SortFunc(c.events, func(a, b Event) int {
		return cmp.Or(a.Date.Compare(b.Date), cmp.Compare(a.UID, b.UID))
	})
	// The library's setters put each property where it is first set, so the
	// order of these calls is the order in the file.
	cal := &ics.Calendar{}
	cal.SetVersion("2.0")
	cal.SetProductId(prodID)
	cal.SetCalscale("GREGORIAN")
	cal.CalendarProperties = append(cal.CalendarProperties,
		ics.CalendarProperty{BaseProperty: ics.BaseProperty{IANAToken: calendarID, Value: c.id}})
	cal.SetName(c.name)
	cal.SetXWRCalDesc(description)
	cal.SetRefreshInterval(refresh)
	cal.SetXPublishedTTL(refresh)
	cal.SetColor(color)
	if c.source != "" {
		cal.CalendarProperties = append(cal.CalendarProperties, ics.CalendarProperty{BaseProperty: ics.BaseProperty{
			IANAToken: "SOURCE", Value: c.source, ICalParameters: map[string][]string{"VALUE": {"URI"}}}})
	}
	f := folder{out: make([]byte, 0, usualEvent*(len(c.events)+1))}
	for i := range c.events {
		cal.Components = append(cal.Components, &component{&c.events[i], &f})
	}
	if err := cal.SerializeTo(&f, ics.WithNewLineWindows, ics.WithLineLength(math.MaxInt)); err != nil {
		return nil, fmt.Errorf("writing the calendar: %w", err)
	}
	return f.out, nil
}

// usualEvent is about what one event takes, in bytes; more only costs time.
const usualEvent = 2500

// component makes an event a component of the library's calendar that writes its
// own lines: the library would copy each text four times, and escape the commas
// between categories.
type component struct {
	*Event
	*folder
}

func (c *component) UnknownPropertiesIANAProperties() []ics.IANAProperty { return nil }
func (c *component) SubComponents() []ics.Component                      { return nil }

// SerializeTo writes the event; the order of its properties is part of the form.
func (c *component) SerializeTo(io.Writer, *ics.SerializationConfiguration) error {
	e, f := c.Event, c.folder
	stamp, status := e.Stamp.UTC().Format(stampForm), ics.ObjectStatusConfirmed
	if e.Cancelled {
		status = ics.ObjectStatusCancelled
	}
	title := ics.ToText(e.Summary)
	f.line("BEGIN:", "VEVENT")
	f.line("UID:", e.UID)
	f.line("DTSTAMP:", stamp)
	f.line("LAST-MODIFIED:", stamp)
	f.line("SEQUENCE:", strconv.Itoa(e.Sequence))
	f.line("DTSTART;VALUE=DATE:", e.Date.Time().Format(dayForm))
	f.line("DTEND;VALUE=DATE:", e.Date.AddDays(1).Time().Format(dayForm)) // the end is exclusive
	f.line("SUMMARY:", title)
	f.line("DESCRIPTION:", ics.ToText(e.Description))
	f.line("LOCATION:", ics.ToText(e.Location))
	f.line("CATEGORIES:", e.Categories)
	f.line("STATUS:", string(status))
	f.line("TRANSP:", string(ics.TransparencyTransparent))
	f.line("X-MICROSOFT-CDO-BUSYSTATUS:", "FREE")
	f.line("URL:", e.Link)
	for _, d := range e.Remind {
		f.line("BEGIN:", "VALARM")
		f.line("ACTION:", string(ics.ActionDisplay))
		f.line("DESCRIPTION:", title)
		f.line("TRIGGER:", trigger(d))
		f.line("END:", "VALARM")
	}
	f.line("END:", "VEVENT")
	return nil
}

// folder collects lines and folds them.
type folder struct {
	out  []byte
	text []byte // of a line that has not ended
}

// line writes a line, unless it has no value.
func (f *folder) line(name, value string) {
	if value != "" {
		f.text = append(append(f.text, name...), value...)
		f.out, f.text = fold(f.out, f.text), f.text[:0]
	}
}

// Write takes the library's lines, unfolded.
func (f *folder) Write(p []byte) (int, error) {
	f.text = append(f.text, p...)
	for {
		line, after, ended := bytes.Cut(f.text, []byte("\r\n"))
		if !ended {
			return len(p), nil
		}
		f.out = fold(f.out, line)
		f.text = append(f.text[:0], after...)
	}
}

// trigger writes a span of whole seconds as an RFC 5545 duration: "-PT15H".
func trigger(d time.Duration) string {
	d = d.Truncate(time.Second)
	sign := ""
	if d < 0 {
		sign, d = "-", -d
	}
	out := sign + "PT"
	h, m, s := int(d/time.Hour), int(d/time.Minute)%60, int(d/time.Second)%60
	if h > 0 {
		out += strconv.Itoa(h) + "H"
	}
	if m > 0 || h > 0 && s > 0 { // the grammar has no hours followed by seconds
		out += strconv.Itoa(m) + "M"
	}
	if s > 0 || d == 0 {
		out += strconv.Itoa(s) + "S"
	}
	return out
}
