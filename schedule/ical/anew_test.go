package ical

import (
	"bytes"
	"strings"
	"testing"

	"swardbook/schedule"
)

// What nobody keeps is the same from everybody, and says since when it is so.
func TestAnew(t *testing.T) {
	p := autumn()
	stamp := func(e *schedule.Entry) schedule.Date {
		if e.Date.Year == 2026 {
			return schedule.Date{Year: 2026, Month: 7, Day: 22}
		}
		return schedule.Date{Year: 2027, Month: 1, Day: 5}
	}
	today := p.Start
	o := Options{Closing: "Other answers make\nanother link."}
	out, err := Anew(p, o, 12, stamp, today)
	if err != nil {
		t.Fatal(err)
	}
	if again, err := Anew(p, o, 12, stamp, today.AddDays(1)); err != nil || !bytes.Equal(out, again) {
		t.Error("another day, other bytes", err)
	}
	c, err := read(out)
	if err != nil || len(c.events) != len(p.Entries) {
		t.Fatalf("%d events, %v", len(c.events), err)
	}
	for i, e := range c.events {
		want := "2026-07-22"
		if e.Date.Year > 2026 {
			want = "2027-01-05"
		}
		if got := e.Stamp.Format("2006-01-02T15:04:05"); e.Sequence != 12 || got != want+"T00:00:00" {
			t.Errorf("%s: sequence %d, stamp %s", e.UID, e.Sequence, got)
		}
		if closes := strings.HasSuffix(e.Description, "\n\nOther answers make\nanother link."); closes != (i == len(c.events)-1) {
			t.Errorf("event %d closes: %v\n%s", i, closes, e.Description)
		}
		if strings.Contains(e.Description, recordPrefix) {
			t.Errorf("%s names a file that its reader has not", e.UID)
		}
	}
	later, err := Anew(p, o, 12, stamp, p.Through.AddMonths(6))
	if err != nil {
		t.Fatal(err)
	}
	if kept, err := read(later); err != nil || len(kept.events) == 0 || len(kept.events) >= len(c.events) {
		t.Errorf("after a year %d events are left of %d, %v", len(kept.events), len(c.events), err)
	}
	if _, err := Anew(p, o, 12, func(*schedule.Entry) schedule.Date { return schedule.Date{} }, today); err == nil {
		t.Error("no day is a stamp")
	}
}
