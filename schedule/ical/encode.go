package ical

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
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

	// comma stands for the commas between categories until the library, which
	// would escape them, has done its work. Cleaned texts never hold it.
	comma = "\x1f"

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
	for _, e := range c.events {
		addEvent(cal, e)
	}

	f := folder{out: make([]byte, 0, 2048*len(c.events))}
	if err := cal.SerializeTo(&f, ics.WithNewLineWindows, ics.WithLineLength(math.MaxInt)); err != nil {
		return nil, fmt.Errorf("writing the calendar: %w", err)
	}
	return f.out, nil
}

// folder takes the library's lines, unfolded, and folds them.
type folder struct {
	out  []byte
	rest string // of a line that has not ended
}

func (f *folder) Write(p []byte) (int, error) { return f.WriteString(string(p)) }

func (f *folder) WriteString(s string) (int, error) {
	n := len(s)
	s = f.rest + s
	for {
		line, after, ended := strings.Cut(s, "\r\n")
		if !ended {
			f.rest = s
			return n, nil
		}
		if strings.HasPrefix(line, "CATEGORIES:") {
			line = strings.ReplaceAll(line, comma, ",")
		}
		f.out, s = fold(f.out, line), after
	}
}

// addEvent writes one event; the order of its properties is part of the form.
func addEvent(cal *ics.Calendar, e Event) {
	v := cal.AddEvent(e.UID)
	v.Properties = slices.Grow(v.Properties, 13)
	stamp, status := e.Stamp.UTC().Format(stampForm), ics.ObjectStatusConfirmed
	if e.Cancelled {
		status = ics.ObjectStatusCancelled
	}
	put(&v.ComponentBase, "DTSTAMP", stamp)
	put(&v.ComponentBase, "LAST-MODIFIED", stamp)
	put(&v.ComponentBase, "SEQUENCE", strconv.Itoa(e.Sequence))
	v.SetAllDayStartAt(e.Date.Time())
	v.SetAllDayEndAt(e.Date.AddDays(1).Time()) // the end is exclusive
	put(&v.ComponentBase, "SUMMARY", e.Summary)
	put(&v.ComponentBase, "DESCRIPTION", e.Description)
	put(&v.ComponentBase, "LOCATION", e.Location)
	put(&v.ComponentBase, "CATEGORIES", strings.ReplaceAll(e.Categories, ",", comma))
	put(&v.ComponentBase, "STATUS", string(status))
	put(&v.ComponentBase, "TRANSP", string(ics.TransparencyTransparent))
	put(&v.ComponentBase, "X-MICROSOFT-CDO-BUSYSTATUS", "FREE")
	put(&v.ComponentBase, "URL", e.Link)
	for _, d := range e.Remind {
		a := v.AddAlarm()
		put(&a.ComponentBase, "ACTION", string(ics.ActionDisplay))
		put(&a.ComponentBase, "DESCRIPTION", e.Summary)
		put(&a.ComponentBase, "TRIGGER", trigger(d))
	}
}

// put appends a property without parameters, unless it has no value. The
// library's own setters search the properties and make a map for each.
func put(c *ics.ComponentBase, name, value string) {
	if value != "" {
		c.Properties = append(c.Properties, ics.IANAProperty{BaseProperty: ics.BaseProperty{IANAToken: name, Value: value}})
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
		out += fmt.Sprintf("%dH", h)
	}
	if m > 0 || h > 0 && s > 0 { // the grammar has no hours followed by seconds
		out += fmt.Sprintf("%dM", m)
	}
	if s > 0 || d == 0 {
		out += fmt.Sprintf("%dS", s)
	}
	return out
}
