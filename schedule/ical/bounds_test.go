package ical

import (
	"bytes"
	"errors"
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode"
	"unicode/utf8"

	"swardbook/schedule"
)

// TestBounds pins every limit on both sides.
func TestBounds(t *testing.T) {
	for d, want := range map[string]bool{"1970-01-01": true, "1969-12-31": false, "2200-12-31": true, "2201-01-01": false} {
		if datable(day(d)) != want {
			t.Errorf("datable(%s) is not %v", d, want)
		}
	}
	for id, want := range map[string]bool{
		"": false, "a": true, "az-AZ.09@x": true, "a/": false, "a:": false, "a[": false, "a`": false, "a{": false, "ü": false, "a_b": false,
		strings.Repeat("a", 255): true, strings.Repeat("a", 256): false,
	} {
		if plainID(id) != want {
			t.Errorf("plainID(%q) is not %v", id, want)
		}
	}
	for s, want := range map[string]bool{"PT8784H": true, "-PT8784H": true, "PT8784H1S": false} {
		if _, err := duration(s); (err == nil) != want {
			t.Errorf("duration(%s): %v", s, err)
		}
	}
	old := string(mustWrite(t, autumn(), Options{}))
	for from, cases := range map[string]map[string]bool{
		"SEQUENCE:3522240":            {"SEQUENCE:999999998": true, "SEQUENCE:999999999": false, "SEQUENCE:-1": false},
		"DTSTART;VALUE=DATE:20260919": {"DTSTART;VALUE=DATE:19700101": true, "DTSTART;VALUE=DATE:19691231": false},
		"CATEGORIES:Lawn,Lime":        {"CATEGORIES:Lawn": true, "CATEGORIES:,Lawn": false, "CATEGORIES:Lawn,,Lime": false, "CATEGORIES:": true},
	} {
		for to, want := range cases {
			if _, err := Events([]byte(strings.Replace(old, from, to, 1))); (err == nil) != want {
				t.Errorf("%.40q: %v", to, err)
			}
		}
	}
	for size, want := range map[int]string{8 << 20: "the file is no calendar", 8<<20 + 1: "the file is larger than 8 MiB, more than a calendar of ours can be"} {
		var r *Refused
		if _, err := Events(make([]byte, size)); !errors.As(err, &r) || r.Why != want {
			t.Errorf("%d octets: %v", size, err)
		}
	}
}

// TestEventsWhole reads every property back.
func TestEventsWhole(t *testing.T) {
	p := autumn()
	without(p, "west/nitrogen/1")
	file, _, err := Update(mustWrite(t, autumn(), Options{}), p, Options{}, at("2026-09-14T08:00:00Z"))
	if err != nil {
		t.Fatal(err)
	}
	all, err := Events(file)
	if err != nil || len(all) != 4 {
		t.Fatal(len(all), err)
	}
	first, gone := all[0], all[1]
	if first.UID != limeUID || first.Sequence != begun || !first.Stamp.Equal(at("2026-09-12T00:00:00Z")) || first.Date != day("2026-09-19") ||
		first.Categories != "Lawn,Lime" || first.Location != "East lawn" || first.Cancelled || len(first.Remind) != 2 {
		t.Errorf("%+v", first)
	}
	if gone.UID != feedUID || gone.Sequence != begun+1 || !gone.Stamp.Equal(at("2026-09-14T08:00:00Z")) || !gone.Cancelled || gone.Remind != nil {
		t.Errorf("%+v", gone)
	}
	// The later of the two stamps counts, whichever stands first.
	for _, swap := range [][2]string{{"DTSTAMP:20260912", "DTSTAMP:20260915"}, {"LAST-MODIFIED:20260912", "LAST-MODIFIED:20260915"}} {
		all, err := Events(bytes.Replace(file, []byte(swap[0]), []byte(swap[1]), 1))
		if err != nil || !all[0].Stamp.Equal(at("2026-09-15T00:00:00Z")) {
			t.Errorf("%s: %v %v", swap[1], all[0].Stamp, err)
		}
	}
}

// TestBareEvent: what is empty is left out, not written without a value.
func TestBareEvent(t *testing.T) {
	e := Event{UID: "a", Stamp: at("2026-09-12T00:00:00Z"), Content: Content{Date: day("2026-09-19"), Summary: "Lime"}}
	file, err := encode(calendar{id: "a", name: "a", events: []Event{e}})
	if err != nil {
		t.Fatal(err)
	}
	want := "BEGIN:VEVENT|UID:a|DTSTAMP:20260912T000000Z|LAST-MODIFIED:20260912T000000Z|SEQUENCE:0|DTSTART;VALUE=DATE:20260919|" +
		"DTEND;VALUE=DATE:20260920|SUMMARY:Lime|STATUS:CONFIRMED|TRANSP:TRANSPARENT|X-MICROSOFT-CDO-BUSYSTATUS:FREE|END:VEVENT|END:VCALENDAR|"
	if got := strings.ReplaceAll(string(file), "\r\n", "|"); !strings.HasSuffix(got, "|COLOR:olivedrab|"+want) {
		t.Error(got)
	}
}

var (
	lineEnds   = regexp.MustCompile("\r\n|[\r\v\f\u0085\u2028\u2029]")
	emptyLines = regexp.MustCompile("\n{3,}")
)

// cleaned is [clean] told in another way: line by line.
func cleaned(s string) string {
	s = lineEnds.ReplaceAllString(strings.ToValidUTF8(s, ""), "\n")
	var lines []string
	for line := range strings.SplitSeq(s, "\n") {
		line = strings.Map(func(r rune) rune {
			switch {
			case r == '<':
				return '‹'
			case r == '>':
				return '›'
			case unicode.IsSpace(r):
				return ' '
			case unicode.IsControl(r) || r == '\uFEFF' || r == utf8.RuneError:
				return -1
			}
			return r
		}, line)
		lines = append(lines, strings.Join(strings.Fields(line), " "))
	}
	s = strings.Trim(strings.Join(lines, "\n"), "\n")
	return emptyLines.ReplaceAllString(s, "\n\n")
}

// TestCleanEveryShortText compares the two on every text of up to five pieces.
func TestCleanEveryShortText(t *testing.T) {
	pieces := []string{"a", "~", " ", "\n", "\t", "<", "é", "\u00a0", "\uFEFF", "\xff"}
	var try func(s string, more int)
	try = func(s string, more int) {
		want := cleaned(s)
		if got := clean(s); got != want {
			t.Fatalf("clean(%q) = %q, want %q", s, got, want)
		}
		if isClean(s) != (s == want) {
			t.Fatalf("isClean(%q) is %v", s, isClean(s))
		}
		if more > 0 {
			for _, p := range pieces {
				try(s+p, more-1)
			}
		}
	}
	try("", 4)
	for _, s := range []string{"!", "~", "\x7f", "a\x1fb", ">", "a>b", "a\n\nb\n\nc", "a\n\n\nb"} {
		if got := clean(s); got != cleaned(s) || isClean(s) != (s == got) {
			t.Errorf("clean(%q) = %q, want %q", s, got, cleaned(s))
		}
	}
}

// TestFoldPlaces pins where lines break: at the last place that is sound.
func TestFoldPlaces(t *testing.T) {
	x := func(n int) string { return strings.Repeat("x", n) }
	for name, c := range map[string]struct{ line, want string }{
		"75 octets fit":                  {x(75), x(75)},
		"76 do not":                      {x(76), x(75) + "\r\n x"},
		"later lines hold 74":            {x(75 + 74 + 1), x(75) + "\r\n " + x(74) + "\r\n x"},
		"not before a blank":             {x(75) + " y", x(74) + "\r\n x y"},
		"not behind a blank":             {x(74) + " yy", x(73) + "\r\n x yy"},
		"not in a character":             {x(74) + "éé", x(74) + "\r\n éé"},
		"not in an escape":               {x(74) + `\ny`, x(74) + "\r\n " + `\ny`},
		"behind an escaped backslash":    {x(73) + `\\ny`, x(73) + `\\` + "\r\n ny"},
		"beside a blank if there is one": {strings.Repeat(" ", 77), strings.Repeat(" ", 75) + "\r\n   "},
		"anywhere if it is no text":      {strings.Repeat("\xbd", 77), strings.Repeat("\xbd", 75) + "\r\n \xbd\xbd"},
	} {
		if got := string(fold(nil, []byte(c.line))); got != c.want+"\r\n" {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
	content, numbers := unfold([]byte("a\r\nb\r\n c\n\td\n\ne\r\n"))
	if string(content) != "a\r\nbcd\r\n\r\ne\r\n\r\n" || len(numbers) != 5 || numbers[1] != 2 || numbers[3] != 6 {
		t.Errorf("unfolds to %q, %v", content, numbers)
	}
}

func TestCategories(t *testing.T) {
	for k, want := range map[schedule.Kind]string{
		schedule.SoilTest: "Sample", schedule.Sow: "Sow", schedule.Starter: "Starter", schedule.Lime: "Lime", schedule.Sulfur: "Sulfur",
		schedule.Phosphorus: "Phosphorus", schedule.Nitrogen: "Nitrogen", schedule.LateNitrogen: "Nitrogen", schedule.Potassium: "Potassium",
		schedule.Magnesium: "Magnesium", schedule.LastSafe: "Season", schedule.Reopen: "Season", {}: "",
	} {
		if got := k.Category(); got != want {
			t.Errorf("%q is in category %q, want %q", k, got, want)
		}
	}
}

func TestBareTitle(t *testing.T) {
	for _, s := range []string{"Lime", "Done: Lime", "Missed: Lime", "Cancelled: Lime"} {
		if got := bareTitle(s); got != "Lime" {
			t.Errorf("bareTitle(%q) = %q", s, got)
		}
	}
	e := Event{Content: Content{Summary: "Done: Lime", Date: day("2026-09-19")}}
	if e.words() != "Lime (19 Sep 2026)" {
		t.Error(e.words())
	}
}

// TestWhyGone pins the sentence that tells a reader why a job is off.
func TestWhyGone(t *testing.T) {
	for want, change := range map[string]func(*schedule.Program){
		"It is now for Jo.":                           func(p *schedule.Program) { e := find(p, "east/lime/1"); e.Who, e.WhoName = "jo", "Jo" },
		"It is no longer this person's.":              func(p *schedule.Program) { e := find(p, "east/lime/1"); e.Who, e.WhoName = "", "" },
		"It is done already.":                         func(p *schedule.Program) { e := find(p, "east/lime/1"); e.Who, e.State = "", schedule.Finished },
		"The program no longer has it.":               func(p *schedule.Program) { without(p, "east/lime/1") },
		"Why: too wet (common practice).":             func(p *schedule.Program) { leave(p, "too wet", "common", "") },
		"Why: too wet.\nIt is put off to 1 May 2027.": func(p *schedule.Program) { leave(p, "too wet.", "", "2027-05-01") },
	} {
		p := autumn()
		old := mustWrite(t, p, Options{Person: "mara"})
		change(p)
		out, c, err := Update(old, p, Options{Person: "mara"}, at("2026-09-14T08:00:00Z"))
		if err != nil || len(c.Cancelled) != 1 {
			t.Errorf("%s: %v %v", want, c, err)
			continue
		}
		e := events(t, out)[limeUID]
		if got := e.text("DESCRIPTION"); got != "Do not do this job: Lime east lawn, 96 lb.\n"+want+"\n\n"+p.Site.Calendar.Link+"#job-east-lime-1" {
			t.Errorf("%q, want %q", got, want)
		}
		if e.text("SUMMARY") != "Cancelled: Lime east lawn, 96 lb" || e.text("CATEGORIES") != "Lawn,Lime" || e.text("LOCATION") != "East lawn" {
			t.Error(e.shown())
		}
	}
}

// leave takes the first lime out of the program with a reason.
func leave(p *schedule.Program, reason, source, carried string) {
	without(p, "east/lime/1")
	out := schedule.LeftOut{ID: "east/lime/1", Reason: reason, Source: source}
	if carried != "" {
		out.CarriedTo = day(carried)
	}
	p.LeftOut = []schedule.LeftOut{{ID: "east/lime/2", Reason: "another job"}, out}
}

func TestWindowLine(t *testing.T) {
	full := schedule.Entry{Kind: schedule.Lime, Earliest: day("2026-09-12"), Latest: day("2026-11-21"), LastSafe: day("2026-12-01")}
	for want, change := range map[string]func(*schedule.Entry){
		"Any day from 12 Sep. Last safe day Tue 1 Dec 2026.":      func(*schedule.Entry) {},
		"Any day from 12 Sep to Sat 21 Nov 2026.":                 func(e *schedule.Entry) { e.LastSafe = schedule.Date{} },
		"Any day from 12 Sep 2026. Last safe day Tue 2 Mar 2027.": func(e *schedule.Entry) { e.LastSafe = day("2027-03-02") },
	} {
		e := full
		change(&e)
		if got := windowLine(&e); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	for name, change := range map[string]func(*schedule.Entry){
		"notice":      func(e *schedule.Entry) { e.Kind = schedule.Reopen },
		"no earliest": func(e *schedule.Entry) { e.Earliest = schedule.Date{} },
		"no latest":   func(e *schedule.Entry) { e.Latest = schedule.Date{} },
	} {
		e := full
		change(&e)
		if got := windowLine(&e); got != "" {
			t.Errorf("%s: %q", name, got)
		}
	}
}

func TestSource(t *testing.T) {
	const address = "https://example.org/odderwyn.ics"
	if file := mustWrite(t, autumn(), Options{Address: address}); !bytes.Contains(file, []byte("\r\nSOURCE;VALUE=URI:"+address+"\r\n")) {
		t.Error("no SOURCE")
	}
	_, err := Write(autumn(), Options{Area: "east", Person: "jo", Kinds: []schedule.Kind{schedule.LastSafe}}, autumn().Start.Time())
	if err != nil {
		t.Error(err)
	}
	var u *Unwritable
	p := autumn()
	p.Site = nil
	if _, err := Write(p, Options{Person: "zoe"}, p.Start.Time()); !errors.As(err, &u) {
		t.Error(err)
	}
	if _, err := Write(p, Options{Person: "jo"}, p.Start.Time()); err != nil { // known from the jobs
		t.Error(err)
	}
	if _, _, err := Update(mustWrite(t, p, Options{}), p, Options{}, time.Date(2201, 1, 1, 0, 0, 0, 0, time.UTC)); !errors.As(err, &u) ||
		u.Error() != "the clock says 2201-01-01; set it right" {
		t.Error(err)
	}
}

// TestCalendarIDs pins which calendar a file is taken for, and its name.
func TestCalendarIDs(t *testing.T) {
	for _, c := range []struct {
		o        Options
		id, name string
	}{
		{Options{}, "odderwyn-7q2m", "Odderwyn reading lawn north “old” wing"},
		{Options{Area: "east"}, "odderwyn-7q2m.area-east", "Odderwyn reading lawn north - East lawn"},
		{Options{Area: "west", Person: "jo"}, "odderwyn-7q2m.area-west.for-jo", "Odderwyn reading lawn - West lawn by the"},
		{Options{Person: "jo"}, "odderwyn-7q2m.for-jo", "Odderwyn reading lawn north “old” - Jo"},
		{Options{Person: "mara", Kinds: []schedule.Kind{schedule.SoilTest, schedule.Lime}}, "odderwyn-7q2m.for-mara.soil-test.lime", "Odderwyn reading - Mara soil-test lime"},
	} {
		cal, err := head(autumn(), &c.o)
		if err != nil || cal.id != c.id || cal.name != c.name {
			t.Errorf("%+v is %q, called %q: %v", c.o, cal.id, cal.name, err)
		}
	}
	p := autumn()
	p.Title = " ; "
	if cal, err := head(p, &Options{}); err != nil || cal.name != "odderwyn-7q2m" {
		t.Errorf("a site without a title is called %q: %v", cal.name, err)
	}
}
