package ical

import (
	"bytes"
	"testing"
	"time"
)

// What calendars share changes no byte of any: not of another part, nor of one with
// other addresses, with a last word, or with an event of another SEQUENCE.
func TestSharedChangesNothing(t *testing.T) {
	p := autumn()
	var shared Shared
	later := time.Date(2026, 10, 1, 9, 0, 0, 0, time.UTC)
	for i, o := range []Options{
		{}, {Area: p.Areas[0].ID}, {Person: p.Site.Crew.People[0].ID},
		{Page: "https://example.org/lawn/"}, {Page: "https://example.org/lawn/", Record: "https://example.org/lawn/done"},
		{Closing: "Other answers make another link."}, {},
	} {
		alone := mustWrite(t, p, o)
		o.Shared = &shared
		if with := mustWrite(t, p, o); !bytes.Equal(alone, with) {
			t.Errorf("%d: other bytes than alone:\n%s", i, with)
		}
		old := bytes.Replace(alone, []byte("STATUS:CONFIRMED"), []byte("STATUS:CANCELLED"), 1)
		one, _, err := Update(old, p, o, later)
		if err != nil {
			t.Fatal(err)
		}
		o.Shared = nil
		if two, _, err := Update(old, p, o, later); err != nil || !bytes.Equal(one, two) || bytes.Equal(one, alone) {
			t.Errorf("%d: updated to other bytes than alone: %v", i, err)
		}
	}
}
