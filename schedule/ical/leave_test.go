package ical

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"swardbook/schedule"
)

// withoutMara is the season after Mara has left: her jobs are Jo's.
func withoutMara() *schedule.Program {
	p := autumn()
	p.Site.Crew.People = p.Site.Crew.People[1:]
	for i := range p.Entries {
		if e := &p.Entries[i]; e.Who == "mara" {
			e.Who, e.WhoName = "jo", "Jo"
		}
	}
	return p
}

// The calendar of a person who left turns into cancellations that say whose the
// jobs are now, stays so for 60 days from the first, byte for byte, then is gone.
func TestSomebodyLeaves(t *testing.T) {
	o := Options{Person: "mara"}
	old := mustWrite(t, autumn(), o)
	left := at("2026-09-14T08:00:00Z")
	file, c, err := Update(old, withoutMara(), o, left)
	if err != nil || len(c.Cancelled) == 0 || len(c.Added)+len(c.Changed)+len(c.Dropped) != 0 {
		t.Fatalf("%+v, %v", c, err)
	}
	before, after := events(t, old), events(t, file)
	if len(before) != len(after) {
		t.Errorf("%d events, %d before", len(after), len(before))
	}
	for uid, e := range after {
		if e.text("STATUS") != "CANCELLED" || e.number(t, "SEQUENCE") != begun+1 || e.text("LAST-MODIFIED") != "20260914T080000Z" || !strings.Contains(e.text("DESCRIPTION"), ends) {
			t.Errorf("%s: %s", uid, e.shown())
		}
	}
	if d := after[limeUID].text("DESCRIPTION"); !strings.Contains(d, "Do not do this job: Lime east lawn, 96 lb.\nIt is now for Jo.\n"+ends+"\n\n") {
		t.Error(d)
	}
	for uid, e := range after {
		if d := e.text("DESCRIPTION"); strings.Contains(uid, "last-safe") && !strings.Contains(d, ": no longer in this calendar.\nIt is in everybody's calendar.\n"+ends) {
			t.Error(d)
		}
	}
	if name := func(file []byte) string { c, _ := read(file); return c.name }; name(file) != name(old) || name(old) == "" {
		t.Errorf("called %q, before %q", name(file), name(old))
	}
	for _, day := range []int{1, 30, 60} {
		again, c, err := Update(file, withoutMara(), o, left.AddDate(0, 0, day))
		if err != nil || total(c) != 0 || !bytes.Equal(again, file) {
			t.Errorf("after %d days: %+v, %v", day, c, err)
		}
	}
	gone, c, err := Update(file, withoutMara(), o, left.AddDate(0, 0, 60).Add(time.Second))
	if err != nil || gone != nil || len(c.Dropped) != len(after) {
		t.Errorf("after 60 days: %d bytes, %+v, %v", len(gone), c, err)
	}
	back, c, err := Update(file, autumn(), o, left.AddDate(0, 0, 3))
	if err != nil || len(c.Restored) != len(after) || events(t, back)[limeUID].number(t, "SEQUENCE") != begun+2 {
		t.Errorf("back again: %+v, %v", c, err)
	}
}

// What is done, or past, stays as it was; a job of an earlier day that may still
// be done is cancelled with the others.
func TestSomebodyLeavesInTheMiddle(t *testing.T) {
	o := Options{Person: "mara"}
	p := autumn()
	find(p, "east/lime/1").State = schedule.Finished
	old := mustWrite(t, p, o)
	q := withoutMara()
	find(q, "east/lime/1").State = schedule.Finished
	file, _, err := Update(old, q, o, at("2026-10-01T08:00:00Z"))
	if err != nil {
		t.Fatal(err)
	}
	if e := events(t, file)[limeUID]; e.text("STATUS") != "CONFIRMED" || e.number(t, "SEQUENCE") != begun {
		t.Errorf("done, and now %s", e.shown())
	}
	file, _, err = Update(mustWrite(t, autumn(), o), withoutMara(), o, at("2026-10-01T08:00:00Z")) // its day was 19 September, its window ends in November
	if err != nil || events(t, file)[limeUID].text("STATUS") != "CANCELLED" {
		t.Errorf("still to be done, but not cancelled: %v", err)
	}
	if out, c, err := Update(old, q, o, at("2030-01-01T08:00:00Z")); err != nil || out != nil || len(c.Cancelled) != 0 {
		t.Errorf("with nothing left to cancel: %d bytes, %+v, %v", len(out), c, err)
	}
}

func TestAnAreaIsGone(t *testing.T) {
	o := Options{Area: "east"}
	p := autumn()
	old := mustWrite(t, p, o)
	p.Areas = p.Areas[1:]
	without(p, "east/lime/1")
	file, c, err := Update(old, p, o, at("2026-09-14T08:00:00Z"))
	if err != nil || len(c.Cancelled) == 0 || !strings.Contains(events(t, file)[limeUID].text("DESCRIPTION"), "The program no longer has it.\n"+ends) {
		t.Errorf("%+v, %v", c, err)
	}
	if _, _, err := Update(old, p, Options{Person: "nobody"}, at("2026-09-14T08:00:00Z")); err == nil || !strings.Contains(err.Error(), "holds the calendar") {
		t.Errorf("the file of another calendar: %v", err)
	}
	if _, err := Write(p, o, p.Start.Time()); err == nil {
		t.Error("a new calendar for an area that is not there")
	}
}
