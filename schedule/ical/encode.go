package ical

import (
	"bytes"
	"cmp"
	"fmt"
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

	stampForm = "20060102T150405Z"
	dayForm   = "20060102"
)

// unfolded has the library leave the folding to [foldAll].
var unfolded = &ics.SerializationConfiguration{MaxLength: math.MaxInt, NewLine: string(ics.WithNewLineWindows)}

// encode writes the calendar, its events sorted by day and then UID. The library
// writes it and each event unfolded, and [foldAll] folds them. X-WR-RELCALID says which calendar
// the file holds: the UID that RFC 7986 has for that is taken by a widely used
// sync tool for the UID of every event, so that it keeps one event of them all.
func encode(c calendar) ([]byte, error) {
	if len(c.events) == 0 {
		return nil, &Unwritable{"the calendar would be empty", "subscribers take that for a fault; choose other areas, persons or kinds"}
	}
	slices.SortFunc(c.events, byDay)
	// The library's setters put each property where it is first set, so the
	// order of these calls is the order in the file.
	cal := &ics.Calendar{}
	cal.SetVersion("2.0")
	cal.SetProductId(prodID)
	cal.SetCalscale("GREGORIAN")
	cal.SetXWRCalID(c.id)
	cal.SetName(c.name)
	cal.SetXWRCalDesc(description)
	cal.SetRefreshInterval(refresh)
	cal.SetXPublishedTTL(refresh)
	cal.SetColor(color)
	if c.source != "" {
		cal.CalendarProperties = append(cal.CalendarProperties, ics.CalendarProperty{BaseProperty: ics.BaseProperty{
			IANAToken: "SOURCE", Value: c.source, ICalParameters: map[string][]string{"VALUE": {"URI"}}}})
	}
	var head bytes.Buffer
	if err := cal.SerializeTo(&head, unfolded); err != nil {
		return nil, fmt.Errorf("writing the calendar: %w", err)
	}
	begin, ok := bytes.CutSuffix(head.Bytes(), calendarEnd)
	if !ok {
		return nil, fmt.Errorf("writing the calendar: it ends with %q", head.Bytes()[max(0, head.Len()-20):])
	}
	parts := make([][]byte, 0, len(c.events)+2)
	parts = append(parts, foldAll(begin))
	for i := range c.events {
		lines, err := c.shared.lines(&c.events[i])
		if err != nil {
			return nil, err
		}
		parts = append(parts, lines)
	}
	return bytes.Join(append(parts, calendarEnd), nil), nil
}

// calendarEnd is the last line, before which the events stand.
var calendarEnd = []byte("END:VCALENDAR\r\n")

// byDay is the order of events in a file.
func byDay(a, b Event) int { return cmp.Or(a.Date.Compare(b.Date), cmp.Compare(a.UID, b.UID)) }

// usualEvent is about what one event takes, in bytes; more only costs time.
const usualEvent = 2500

// busyStatus is what one widely used client reads in place of TRANSP.
const busyStatus ics.ComponentProperty = "X-MICROSOFT-CDO-BUSYSTATUS"

// component makes an event one of the library's. A text that is empty is left
// out: the library would write the property without a value.
func (e *Event) component() *ics.VEvent {
	v := ics.NewEvent(e.UID)
	v.SetDtStampTime(e.Stamp)
	v.SetModifiedAt(e.Stamp)
	v.SetSequence(e.Sequence)
	v.SetAllDayStartAt(e.Date.Time())
	v.SetAllDayEndAt(e.Date.AddDays(1).Time()) // the end is exclusive
	v.SetSummary(e.Summary)
	if e.Description != "" {
		v.SetDescription(e.Description)
	}
	if e.Location != "" {
		v.SetLocation(e.Location)
	}
	if e.Categories != "" {
		v.AddCategory(e.Categories)
	}
	if e.Cancelled {
		v.SetStatus(ics.ObjectStatusCancelled)
	} else {
		v.SetStatus(ics.ObjectStatusConfirmed)
	}
	v.SetTimeTransparency(ics.TransparencyTransparent)
	v.SetProperty(busyStatus, "FREE")
	if e.Link != "" {
		v.SetURL(e.Link)
	}
	for _, d := range e.Remind {
		a := v.AddAlarm()
		a.SetAction(ics.ActionDisplay)
		a.SetDescription(e.Summary)
		a.SetTrigger(trigger(d))
	}
	return v
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
