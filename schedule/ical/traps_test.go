package ical

import (
	"bytes"
	"math"
	"strings"
	"testing"
	"time"

	ics "github.com/arran4/golang-ical"
)

// libraryWrites gives the content lines of an event as the library alone writes
// them: its own folds are undone unless a line length is given.
func libraryWrites(t *testing.T, set func(*ics.VEvent), options ...any) string {
	t.Helper()
	cal := &ics.Calendar{}
	e := ics.NewEvent("a")
	set(e)
	cal.AddVEvent(e)
	var out bytes.Buffer
	if len(options) == 0 {
		options = []any{ics.WithNewLineWindows, ics.WithLineLength(math.MaxInt)}
	}
	if err := cal.SerializeTo(&out, options...); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// libraryReads parses lines inside one event.
func libraryReads(lines string) (*ics.VEvent, error) {
	cal, err := ics.ParseCalendar(strings.NewReader("BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\n" + lines + "END:VEVENT\r\nEND:VCALENDAR\r\n"))
	if err != nil {
		return nil, err
	}
	return cal.Events()[0], nil
}

// TestTraps shows what the library still gets wrong, and which of our own code
// exists for that alone. When one of these fails, the library has mended the
// fault: take our workaround out with it.
func TestTraps(t *testing.T) {
	describe := func(text string) func(*ics.VEvent) { return func(e *ics.VEvent) { e.SetDescription(text) } }
	folded := []any{ics.WithNewLineWindows}
	for _, trap := range []struct {
		fault, ours string
		there       func(t *testing.T) bool
	}{
		{"the comma between two categories is escaped", "foldAll need not take it back", func(t *testing.T) bool {
			return strings.Contains(libraryWrites(t, func(e *ics.VEvent) { e.AddCategory("Lawn,Lime") }), "\r\nCATEGORIES:Lawn\\,Lime\r\n")
		}},
		{"two categories stand on two lines", "component may add them one by one", func(t *testing.T) bool {
			return strings.Count(libraryWrites(t, func(e *ics.VEvent) { e.AddCategory("Lawn"); e.AddCategory("Lime") }), "CATEGORIES:") == 2
		}},
		{"a fold splits an escape", "fold.go need not fold", func(t *testing.T) bool {
			text := strings.Repeat("x", lineLimit-len(`DESCRIPTION:\`)) + "\ny"
			return strings.Contains(libraryWrites(t, describe(text), folded...), "x\\\r\n ny\r\n")
		}},
		{"a folded line ends in a blank", "fold.go need not fold", func(t *testing.T) bool {
			return strings.Contains(libraryWrites(t, describe(strings.Repeat("abcdefg  ", 30)), folded...), " \r\n")
		}},
		{"lines end in LF unless told otherwise", "encode need not ask for CRLF", func(t *testing.T) bool {
			return !strings.Contains(libraryWrites(t, describe("x"), ics.WithLineLength(math.MaxInt)), "\r")
		}},
		{"CR, control characters and broken UTF-8 pass into the file", "clean may let them through", func(t *testing.T) bool {
			return strings.Contains(libraryWrites(t, describe("a\rb\x00c\u2028d\xff")), "DESCRIPTION:a\rb\x00c\u2028d\xff\r\n")
		}},
		{"a link with a line break injects a property", "webLink may let it through", func(t *testing.T) bool {
			return strings.Contains(libraryWrites(t, func(e *ics.VEvent) { e.SetURL("https://example.org/\r\nX-A:1") }), "\r\nX-A:1\r\n")
		}},
		{"a link of a property that it does not know is escaped", "encode need not give SOURCE its type", func(t *testing.T) bool {
			return strings.Contains(libraryWrites(t, func(e *ics.VEvent) { e.SetProperty("SOURCE", "https://example.org/a,b") }), "a\\,b")
		}},
		{"an empty text is written", "component need not leave it out", func(t *testing.T) bool {
			return strings.Contains(libraryWrites(t, func(e *ics.VEvent) { e.SetLocation("") }), "\r\nLOCATION:\r\n")
		}},
		{"the name of an X property is lost", "busyStatus may be made with ComponentPropertyExtended", func(*testing.T) bool {
			return ics.ComponentPropertyExtended("X-MICROSOFT-CDO-BUSYSTATUS") != busyStatus
		}},
		{"a day of any year is written", "datable is not needed to write", func(t *testing.T) bool {
			return strings.Contains(libraryWrites(t, func(e *ics.VEvent) { e.SetAllDayStartAt(time.Time{}) }), "DTSTART;VALUE=DATE:00010101")
		}},
		{"two events with one id are written", "choose need not look for them", func(t *testing.T) bool {
			cal := &ics.Calendar{}
			cal.AddEvent("a")
			cal.AddEvent("a")
			return strings.Count(cal.Serialize(), "UID:a") == 2
		}},
		{"a file cut short is read", "shape need not look for the end", func(*testing.T) bool {
			_, err := ics.ParseCalendar(strings.NewReader("BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:a\r\nEND:VEVENT\r\n"))
			return err == nil
		}},
		{"an empty file is read", "shape need not look for the beginning", func(*testing.T) bool {
			_, err := ics.ParseCalendar(strings.NewReader(""))
			return err == nil
		}},
		{"nesting has no bound", "shape need not count levels", func(*testing.T) bool {
			const deep = 20_000
			_, err := libraryReads(strings.Repeat("BEGIN:VEVENT\r\n", deep) + strings.Repeat("END:VEVENT\r\n", deep))
			return err == nil
		}},
		{"a name is found in the middle of a line", "shape need not look at names", func(*testing.T) bool {
			e, err := libraryReads("=== UID:a\r\n")
			return err == nil && e.GetProperty(ics.ComponentPropertyUniqueId) != nil
		}},
		{"broken UTF-8 is read", "shape need not look for it", func(*testing.T) bool {
			_, err := libraryReads("UID:\xff\r\n")
			return err == nil
		}},
		{"a property that may stand once is read twice", "event need not look for it", func(*testing.T) bool {
			e, err := libraryReads("UID:a\r\nUID:b\r\n")
			return err == nil && len(e.Properties) == 2
		}},
		{"an event without id and stamp is read", "event need not look for them", func(*testing.T) bool {
			_, err := libraryReads("SUMMARY:a\r\n")
			return err == nil
		}},
		{"Id undoes escapes twice", "take may ask the library for the id", func(*testing.T) bool {
			e, err := libraryReads("UID:a\\\\nb\r\n")
			return err == nil && e.Id() != `a\nb`
		}},
		{"a day is read as the midnight of this machine's zone", "take may ask the library for the day", func(t *testing.T) bool {
			e, err := libraryReads("DTSTART;VALUE=DATE:20260919\r\n")
			if err != nil {
				t.Fatal(err)
			}
			day, err := e.GetAllDayStartAt()
			return err == nil && day.Location() == time.Local
		}},
	} {
		t.Run(strings.ReplaceAll(trap.fault, " ", "-"), func(t *testing.T) {
			if !trap.there(t) {
				t.Errorf("no longer true: %s; now %s", trap.fault, trap.ours)
			}
		})
	}
}
