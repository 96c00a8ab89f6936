package ical

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"swardbook/schedule"
)

// events reads a file with the reader of the tests.
func events(t *testing.T, file []byte) map[string]*node {
	t.Helper()
	if f := faults(file); len(f) > 0 {
		t.Error(f)
	}
	return byUID(parse(t, file))
}

const (
	limeUID = "odderwyn-7q2m.east.lime.1@swardbook"
	feedUID = "odderwyn-7q2m.west.nitrogen.1@swardbook"
)

func TestUpdateNothing(t *testing.T) {
	old := mustWrite(t, autumn(), Options{})
	out, c, err := Update(old, autumn(), Options{}, at("2027-01-01T00:00:00Z"))
	if err != nil || total(c) != 0 || !bytes.Equal(out, old) {
		t.Errorf("%v %v", c, err)
	}
}

// TestEveryVisibleChangeCounts: each part of the content alone raises SEQUENCE.
func TestEveryVisibleChangeCounts(t *testing.T) {
	for name, change := range map[string]func(*schedule.Program, *schedule.Entry){
		"day":     func(_ *schedule.Program, e *schedule.Entry) { e.Date = e.Date.AddDays(1) },
		"title":   func(_ *schedule.Program, e *schedule.Entry) { e.Title += "!" },
		"summary": func(_ *schedule.Program, e *schedule.Entry) { e.Summary += "!" },
		"window":  func(_ *schedule.Program, e *schedule.Entry) { e.LastSafe = e.LastSafe.AddDays(1) },
		"area":    func(_ *schedule.Program, e *schedule.Entry) { e.AreaName += "!" },
		"kind":    func(_ *schedule.Program, e *schedule.Entry) { e.Kind = schedule.Sulfur },
		"who":     func(_ *schedule.Program, e *schedule.Entry) { e.WhoName = "Jo" },
		"state":   func(_ *schedule.Program, e *schedule.Entry) { e.State = schedule.Finished },
		"alarms":  func(p *schedule.Program, _ *schedule.Entry) { p.Site.Calendar.Remind = []time.Duration{-time.Hour} },
		"link":    func(p *schedule.Program, _ *schedule.Entry) { p.Site.Calendar.Link = "https://example.org/" },
	} {
		old := mustWrite(t, autumn(), Options{})
		p := autumn()
		change(p, find(p, "east/lime/1"))
		out, c, err := Update(old, p, Options{}, at("2026-09-14T08:00:00.9+02:00"))
		if err != nil {
			t.Fatal(name, err)
		}
		e := events(t, out)[limeUID]
		if e.number(t, "SEQUENCE") != begun+1 || e.text("LAST-MODIFIED") != "20260914T060000Z" || len(c.Changed) == 0 {
			t.Errorf("%s: sequence %s, %s, %v", name, e.text("SEQUENCE"), e.text("LAST-MODIFIED"), c)
		}
	}
}

// TestStampsGrow: also when the clock stands still or runs back.
func TestStampsGrow(t *testing.T) {
	p := autumn()
	file := mustWrite(t, p, Options{})
	for i, want := range []string{"20260914T080000Z", "20260914T080001Z", "20260914T080002Z"} {
		find(p, "east/lime/1").Date = find(p, "east/lime/1").Date.AddDays(1)
		out, _, err := Update(file, p, Options{}, at("2026-09-14T08:00:00Z").Add(-time.Duration(i)*time.Hour))
		if err != nil {
			t.Fatal(err)
		}
		if got := events(t, out)[limeUID].text("LAST-MODIFIED"); got != want {
			t.Errorf("change %d is stamped %s, want %s", i+1, got, want)
		}
		file = out
	}
}

// TestVanished follows a job that left the program, by its day and today.
func TestVanished(t *testing.T) {
	for _, c := range []struct{ name, start, now, want string }{
		{"ahead", "2026-09-12", "2026-09-14T00:00:00Z", "CANCELLED"},
		{"today", "2026-09-12", "2026-09-19T10:00:00Z", "CANCELLED"},
		{"30 days past", "2026-09-12", "2026-10-19T23:59:59Z", "CANCELLED"},
		{"31 days past", "2026-09-12", "2026-10-20T00:00:00Z", ""},
		{"history", "2026-09-20", "2026-09-20T00:00:00Z", "CONFIRMED"},
		{"the program starts later, the day is still ahead", "2026-10-01", "2026-09-14T00:00:00Z", "CANCELLED"},
		{"a year of history", "2027-09-12", "2027-09-19T00:00:00Z", "CONFIRMED"},
		{"older history", "2027-09-12", "2027-09-20T00:00:00Z", ""},
	} {
		old := mustWrite(t, autumn(), Options{})
		p := autumn()
		p.Start = day(c.start)
		without(p, "east/lime/1")
		out, changes, err := Update(old, p, Options{}, at(c.now))
		if err != nil {
			t.Fatal(err)
		}
		e := events(t, out)[limeUID]
		switch {
		case c.want == "" && (e != nil || len(changes.Dropped) == 0):
			t.Errorf("%s: still there, %v", c.name, changes)
		case c.want != "" && (e == nil || e.text("STATUS") != c.want):
			t.Errorf("%s: %v, want %s", c.name, e, c.want)
		case c.want == "CONFIRMED" && e.shown() != events(t, old)[limeUID].shown():
			t.Errorf("%s: history was rewritten", c.name)
		}
	}
}

func TestCancelledThenDropped(t *testing.T) {
	p := autumn()
	file := mustWrite(t, p, Options{})
	without(p, "west/nitrogen/1")
	p.LeftOut = []schedule.LeftOut{{ID: "west/nitrogen/1", Reason: "the ground is frozen by then", Source: "common", CarriedTo: day("2027-05-01")}}
	file, _, err := Update(file, p, Options{}, at("2026-09-14T08:00:00Z"))
	if err != nil {
		t.Fatal(err)
	}
	e := events(t, file)[feedUID]
	want := "Do not do this job: Feed west lawn, 4.2 lb.\nWhy: the ground is frozen by then (common practice).\nIt is put off to 1 May 2027.\n\n" + p.Site.Calendar.Link + "#job-west-nitrogen-1"
	if e.text("DESCRIPTION") != want || e.text("SUMMARY") != "Cancelled: Feed west lawn, 4.2 lb" || e.number(t, "SEQUENCE") != begun+1 || len(e.subs) != 0 {
		t.Errorf("%s\n%s", e.text("SUMMARY"), e.text("DESCRIPTION"))
	}
	for now, there := range map[string]bool{"2026-10-10T00:00:00Z": true, "2026-11-09T00:00:00Z": true, "2026-11-10T00:00:00Z": false} {
		out, c, err := Update(file, p, Options{}, at(now))
		if err != nil {
			t.Fatal(err)
		}
		if got := events(t, out)[feedUID]; (got != nil) != there || there != bytes.Equal(out, file) || there != (len(c.Dropped) == 0) {
			t.Errorf("%s: there %v, %v", now, got != nil, c)
		}
	}
}

// TestHandedOver: a job that goes to another person is cancelled in the first
// one's calendar, with the reason, and appears in the second one's.
func TestHandedOver(t *testing.T) {
	p := autumn()
	maras, jos := mustWrite(t, p, Options{Person: "mara"}), mustWrite(t, p, Options{Person: "jo"})
	e := find(p, "east/lime/1")
	e.Who, e.WhoName = "jo", "Jo"
	maras, c, err := Update(maras, p, Options{Person: "mara"}, at("2026-09-14T08:00:00Z"))
	if err != nil || len(c.Cancelled) != 1 {
		t.Fatal(c, err)
	}
	if got := events(t, maras)[limeUID].text("DESCRIPTION"); !strings.Contains(got, "\nIt is now for Jo.\n") {
		t.Error(got)
	}
	jos, c, err = Update(jos, p, Options{Person: "jo"}, at("2026-09-14T08:00:00Z"))
	if err != nil || len(c.Added) != 1 || events(t, jos)[limeUID].number(t, "SEQUENCE") != begun+2*24*60+8*60 {
		t.Error(c, err)
	}
}

// TestAllGone: even when no job is left the file is not emptied.
func TestAllGone(t *testing.T) {
	old := mustWrite(t, autumn(), Options{})
	p := autumn()
	p.Entries = nil
	out, c, err := Update(old, p, Options{}, at("2026-09-14T08:00:00Z"))
	if err != nil || len(c.Cancelled) != 4 || len(events(t, out)) != 4 {
		t.Error(c, err)
	}
	var u *Unwritable
	if out, _, err = Update(old, p, Options{}, at("2029-09-14T08:00:00Z")); !errors.As(err, &u) || out != nil {
		t.Errorf("an empty calendar: %v", err)
	}
}

func TestEditorsAreForgiven(t *testing.T) {
	old := mustWrite(t, autumn(), Options{})
	for name, text := range map[string]string{
		"byte order mark": "\uFEFF" + string(old),
		"LF":              strings.ReplaceAll(string(old), "\r\n", "\n"),
		"no last line":    strings.TrimSuffix(string(old), "\r\n"),
		"unfolded":        strings.ReplaceAll(string(old), "\r\n ", ""),
		"escaped comma":   strings.ReplaceAll(string(old), "CATEGORIES:Lawn,", "CATEGORIES:Lawn\\,"),
		"behind events":   strings.Replace(string(old), "END:VCALENDAR", "X-NOTE:a\r\nEND:VCALENDAR", 1),
		"more":            strings.Replace(string(old), "TRANSP:", "X-NOTE;A=\"b:c\":d\r\nTRANSP:", 1),
	} {
		out, c, err := Update([]byte(text), autumn(), Options{}, at("2026-09-14T08:00:00Z"))
		if err != nil || total(c) != 0 || !bytes.Equal(out, old) {
			t.Errorf("%s: %v %v", name, c, err)
		}
	}
}

func TestRefused(t *testing.T) {
	old := string(mustWrite(t, autumn(), Options{}))
	swap := func(a, b string) string {
		if !strings.Contains(old, a) {
			t.Fatalf("%q does not occur", a)
		}
		return strings.Replace(old, a, b, 1)
	}
	const line = "line %d of the calendar cannot be read: "
	at13, at52, in := fmt.Sprintf(line, 13), fmt.Sprintf(line, 50), fmt.Sprintf(line, 13)+"in this event, "
	for name, c := range map[string]struct{ text, want string }{
		"empty":            {"", "the file is no calendar"},
		"a web page":       {"<!doctype html>", "the file is no calendar"},
		"another program":  {swap(prodID, "-//example//other//EN"), "another program wrote this calendar"},
		"no program":       {swap("PRODID:"+prodID+"\r\n", ""), "another program wrote this calendar"},
		"foreign and bare": {"BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n", "another program wrote this calendar"},
		"another site":     {swap("X-WR-RELCALID:odderwyn-7q2m\r\n", "X-WR-RELCALID:mossgate\r\n"), `the file holds the calendar "mossgate", not "odderwyn-7q2m"`},
		"a part of it":     {swap("X-WR-RELCALID:odderwyn-7q2m\r\n", "X-WR-RELCALID:odderwyn-7q2m.area-east\r\n"), `the file holds the calendar "odderwyn-7q2m.area-east", not "odderwyn-7q2m"`},
		"cut at a line":    {old[:strings.LastIndex(old, "END:VCALENDAR")], "the calendar is cut short"},
		"cut in a line":    {old[:len(old)/2], "the calendar is cut short"},
		"cut in a name":    {old[:strings.Index(old, "MARY:Lime")], fmt.Sprintf(line, 20) + "it has no name and value"},
		"cut in the end":   {strings.TrimSuffix(old, "DAR\r\n"), fmt.Sprintf(line, 141) + "nothing of that name is open"},
		"no value":         {swap("STATUS:", "STATUS"), fmt.Sprintf(line, 34) + "it has no name and value"},
		"no name":          {swap("STATUS:", ":"), fmt.Sprintf(line, 34) + "it has no name and value"},
		"no plain name":    {swap("STATUS:", "=STATUS:"), fmt.Sprintf(line, 34) + "it has no name and value"},
		"half a parameter": {swap("DTSTART;VALUE=DATE:", "DTSTART;VALUE:"), "the calendar cannot be read: failed to parse event: parsing component property 4: parsing property DTSTART: missing property value for VALUE in DTSTART"},
		"text behind":      {old + "BEGIN:VCALENDAR\r\n", fmt.Sprintf(line, 142) + "it stands after the end"},
		"two events":       {swap("UID:"+feedUID, "UID:"+limeUID), at52 + "a second event has the id " + limeUID},
		"no id":            {swap("UID:"+feedUID+"\r\n", ""), at52 + "this event lacks its id, day, stamp, sequence or summary"},
		"no day":           {swap("DTSTART;VALUE=DATE:20260919\r\n", ""), at13 + "this event lacks its id, day, stamp, sequence or summary"},
		"no stamp":         {swap("DTSTAMP:20260912T000000Z\r\n", ""), at13 + "this event lacks its id, day, stamp, sequence or summary"},
		"no sequence":      {swap("SEQUENCE:3522240\r\n", ""), at13 + "this event lacks its id, day, stamp, sequence or summary"},
		"no summary":       {swap("SUMMARY:Sample east lawn\r\n", ""), fmt.Sprintf(line, 111) + "this event lacks its id, day, stamp, sequence or summary"},
		"no id of ours":    {swap("UID:"+limeUID, "UID:a b"), in + `"a b" is no id of ours`},
		"two days":         {swap("SEQUENCE:3522240\r\n", "SEQUENCE:0\r\nSEQUENCE:1\r\n"), at13 + "SEQUENCE stands twice in this event"},
		"sequence":         {swap("SEQUENCE:3522240", "SEQUENCE:9999999999"), in + "the sequence 9999999999 is out of range"},
		"sequence word":    {swap("SEQUENCE:3522240", "SEQUENCE:x"), in + `strconv.Atoi: parsing "x": invalid syntax`},
		"day":              {swap("DTSTART;VALUE=DATE:20260919", "DTSTART;VALUE=DATE:20260931"), in + `parsing time "20260931": day out of range`},
		"year":             {swap("DTSTART;VALUE=DATE:20260919", "DTSTART;VALUE=DATE:99990101"), in + "the year of 99990101 is not between 1970 and 2200"},
		"stamp":            {swap("DTSTAMP:2026", "DTSTAMP:0026"), in + "the year of 00260912T000000Z is not between 1970 and 2200"},
		"link":             {swap("URL:https://example.org/lawn/a-rather-long-folder-name/another-one/odderwyn", "URL:ftp://example.org/odderwyn"), in + `"ftp://example.org/odderwyn.html?part=one,two;three#job-east-lime-1" is no web address`},
		"trigger":          {swap("TRIGGER:PT7H", "TRIGGER:P1D"), in + `the trigger "P1D" is none of ours`},
		"nesting":          {swap("BEGIN:VALARM", "BEGIN:VALARM\r\nBEGIN:VALARM"), fmt.Sprintf(line, 40) + "nothing of ours begins here"},
		"deep":             {swap("BEGIN:VEVENT", strings.Repeat("BEGIN:VEVENT\r\n", 100000)), fmt.Sprintf(line, 14) + "nothing of ours begins here"},
		"time zone":        {swap("BEGIN:VEVENT", "BEGIN:VTIMEZONE\r\nEND:VTIMEZONE\r\nBEGIN:VEVENT"), at13 + "nothing of ours begins here"},
		"categories":       {swap("CATEGORIES:Lawn,", "CATEGORIES:Lawn\\;"), in + "the categories are not plain words"},
		"three alarms":     {swap("BEGIN:VALARM", "BEGIN:VALARM\r\nTRIGGER:PT1H\r\nEND:VALARM\r\nBEGIN:VALARM"), at13 + "this event has more than two alarms"},
		"UTF-8":            {swap("Lime", "L\xffme"), "the calendar is not in UTF-8"},
		"too large":        {old + strings.Repeat(" ", sizeLimit), "the file is larger than 8 MiB, more than a calendar of ours can be"},
	} {
		out, _, err := Update([]byte(c.text), autumn(), Options{}, at("2026-09-14T08:00:00Z"))
		var r *Refused
		if !errors.As(err, &r) || r.Why != c.want || out != nil {
			t.Errorf("%s: %v, want %s", name, err, c.want)
			continue
		}
		hint := "restore it from a copy; if there is none, publish under another name, as phones would keep the old events"
		if strings.Contains(c.want, "program") || strings.Contains(c.want, "the file") {
			hint = "write to another file name, or move this one away"
		}
		if r.Hint != hint || err.Error() != c.want+"; "+hint {
			t.Errorf("%s: the hint is %q", name, r.Hint)
		}
	}
	if _, _, err := Update([]byte(old), autumn(), Options{}, time.Time{}); err == nil {
		t.Error("a clock at the year 1 is believed")
	}
}

// FuzzUpdate feeds any file to Update: an error, or a sound calendar that a
// second update with nothing new leaves as it is.
func FuzzUpdate(f *testing.F) {
	old := mustWrite(f, autumn(), Options{})
	f.Add(old)
	f.Add(bytes.Replace(old, []byte("STATUS:CONFIRMED"), []byte("STATUS:CANCELLED"), 1))
	f.Add(bytes.Replace(old, []byte("east.lime.1"), []byte("east.lime.9"), 1))
	f.Add(old[:len(old)/2])
	f.Add([]byte("BEGIN:VCALENDAR\r\nPRODID:" + prodID + "\r\nX-WR-RELCALID:odderwyn-7q2m\r\nEND:VCALENDAR\r\n"))
	p := autumn()
	now := at("2026-09-14T08:00:00Z")
	f.Fuzz(func(t *testing.T, text []byte) {
		if len(text) > 1<<16 {
			text = text[:1<<16]
		}
		out, _, err := Update(text, p, Options{}, now)
		if err != nil {
			return
		}
		for _, fault := range faults(out) {
			// What another hand wrote into a cancelled or past event is kept.
			if !strings.Contains(fault, "is cancelled without saying so") && !strings.Contains(fault, "the link is not the last line") &&
				!strings.Contains(fault, "description too long") {
				t.Fatalf("%s in\n%s", fault, out)
			}
		}
		again, c, err := Update(out, p, Options{}, now)
		if err != nil || total(c) != 0 || !bytes.Equal(again, out) {
			t.Fatalf("not settled: %v %v\n%s\n%s", c, err, out, again)
		}
	})
}

// FuzzEvents: whatever is read has what an event needs, and is written back.
func FuzzEvents(f *testing.F) {
	f.Add(string(mustWrite(f, autumn(), Options{})))
	f.Add("BEGIN:VCALENDAR\nPRODID:" + prodID + "\nBEGIN:VEVENT\nUID:a\nDTSTAMP:20260101T000000Z\nSEQUENCE:3\nDTSTART;VALUE=DATE:20260101\nSUMMARY:a\\,b\nEND:VEVENT\nEND:VCALENDAR")
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 1<<16 {
			text = text[:1<<16]
		}
		all, err := Events([]byte(text))
		if err != nil || len(all) == 0 {
			return
		}
		file, err := encode(calendar{id: "a", name: "a", events: all})
		if err != nil {
			t.Fatal(err)
		}
		again, err := Events(file)
		if err != nil || len(again) != len(all) {
			t.Fatalf("%v, %d and %d events", err, len(all), len(again))
		}
		for i := range all {
			if !all[i].equal(again[i].Content) || all[i].UID != again[i].UID || all[i].Sequence != again[i].Sequence || !all[i].Stamp.Equal(again[i].Stamp) {
				t.Fatalf("%+v\n%+v", all[i], again[i])
			}
		}
	})
}
