package ical

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	ics "github.com/arran4/golang-ical"

	"swardbook/schedule"
)

// begun is the SEQUENCE of a calendar that is new on the first day of the program, 12
// September 2026: 2,446 days after 1 January 2020, in minutes.
const begun = 2446 * 24 * 60

func mustWrite(t testing.TB, p *schedule.Program, o Options) []byte {
	t.Helper()
	out, err := Write(p, o, p.Start.Time())
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestWriteSameBytes(t *testing.T) {
	want := mustWrite(t, autumn(), Options{})
	for range 50 {
		p := autumn()
		slices.Reverse(p.Entries)
		if got := mustWrite(t, p, Options{}); !bytes.Equal(got, want) {
			t.Fatal("other bytes for the same program")
		}
	}
}

// TestThreeReaders reads a file with the library, with the reader of these
// tests and with our own, which must agree with the program.
func TestThreeReaders(t *testing.T) {
	p := autumn()
	file := mustWrite(t, p, Options{Record: "https://example.org/done"})
	lib, err := ics.ParseCalendar(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	own, err := Events(file)
	if err != nil {
		t.Fatal(err)
	}
	other := parse(t, file)
	if len(lib.Events()) != 4 || len(own) != 4 || len(other.subs) != 4 {
		t.Fatalf("%d, %d, %d events", len(lib.Events()), len(own), len(other.subs))
	}
	for i, e := range own {
		want := p.Entries[slices.IndexFunc(p.Entries, func(w schedule.Entry) bool { return w.UID == e.UID })]
		if e.Summary != want.Title || e.Location != want.AreaName || e.Date != want.Date || !slices.Equal(e.Remind, usualRemind()) || e.Link != p.Site.Calendar.Link+"#"+anchor(want.ID) {
			t.Errorf("our reader: %+v", e)
		}
		if first, _, _ := strings.Cut(e.Description, "\n"); !strings.HasPrefix(first, want.Summary) {
			t.Errorf("first line %q, want %q", first, want.Summary)
		}
		l, o := lib.Events()[i], other.subs[i]
		for name, want := range map[string]string{"UID": e.UID, "SUMMARY": e.Summary, "DESCRIPTION": e.Description, "LOCATION": e.Location, "URL": e.Link, "CATEGORIES": e.Categories} {
			if got := o.text(name); got != want {
				t.Errorf("second reader: %s %q, want %q", name, got, want)
			}
			if prop := l.GetProperty(ics.ComponentProperty(name)); want != "" && prop.Value != want || want == "" && prop != nil {
				t.Errorf("library: %s %v, want %q", name, prop, want)
			}
		}
	}
}

func TestHostileTexts(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 100 {
		p := autumn()
		for i := range p.Entries {
			e := &p.Entries[i]
			e.Title, e.Summary, e.IfRain, e.AreaName = "T"+randomText(r), "S"+randomText(r), randomText(r), randomText(r)
			e.Steps, e.Cautions = []string{randomText(r), randomText(r)}, []string{randomText(r)}
			e.Why = []schedule.Reason{{Text: randomText(r), Source: randomText(r)}}
			e.WhoName, e.Next = randomText(r), randomText(r)
		}
		p.Title = randomText(r)
		file := mustWrite(t, p, Options{})
		if f := faults(file); len(f) > 0 {
			t.Fatal(f)
		}
		out, c, err := Update(file, p, Options{}, at("2026-09-20T00:00:00Z"))
		if err != nil || total(c) != 0 || !bytes.Equal(out, file) {
			t.Fatalf("read back differently: %v %v", c, err)
		}
	}
}

func TestFiltersShareEvents(t *testing.T) {
	p := autumn()
	whole := byUID(parse(t, mustWrite(t, p, Options{})))
	for _, c := range []struct {
		o    Options
		name string
		want []string
	}{
		{Options{Area: "east"}, "Odderwyn reading lawn north - East lawn", []string{"east.lime.1", "east.soil-test.1", "site.last-safe.1"}},
		{Options{Person: "jo"}, "Odderwyn reading lawn north “old” - Jo", []string{"site.last-safe.1", "west.nitrogen.1"}},
		{Options{Kinds: []schedule.Kind{schedule.Lime}}, "Odderwyn reading lawn north “old” - lime", []string{"east.lime.1"}},
		{Options{Kinds: []schedule.Kind{schedule.LastSafe, schedule.Lime}, Person: "jo"}, "Odderwyn reading - Jo lime last-safe", []string{"site.last-safe.1"}},
	} {
		file := mustWrite(t, p, c.o)
		if f := faults(file); len(f) > 0 {
			t.Error(f)
		}
		cal := parse(t, file)
		var got []string
		for uid, e := range byUID(cal) {
			got = append(got, strings.TrimSuffix(strings.TrimPrefix(uid, "odderwyn-7q2m."), "@swardbook"))
			if e.shown() != whole[uid].shown() {
				t.Errorf("%+v: %s differs from the whole", c.o, uid)
			}
		}
		slices.Sort(got)
		if !slices.Equal(got, c.want) {
			t.Errorf("%+v holds %v, want %v", c.o, got, c.want)
		}
		if name := cal.text("NAME"); name != c.name {
			t.Errorf("%+v is called %q", c.o, name)
		}
	}
	a := mustWrite(t, p, Options{Kinds: []schedule.Kind{schedule.Lime, schedule.Nitrogen}})
	b := mustWrite(t, p, Options{Kinds: []schedule.Kind{schedule.Nitrogen, schedule.Lime}})
	if !bytes.Equal(a, b) {
		t.Error("the order of kinds matters")
	}
}

func TestUnwritable(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*schedule.Program)
		o      Options
		want   string
	}{
		"empty":                        {func(p *schedule.Program) { p.Entries = nil }, Options{}, "the calendar would be empty; subscribers take that for a fault; choose other areas, persons or kinds"},
		"nothing left":                 {nil, Options{Kinds: []schedule.Kind{schedule.Sow}}, "the calendar would be empty; subscribers take that for a fault; choose other areas, persons or kinds"},
		"area":                         {nil, Options{Area: "south"}, `the site has no area "south"; its areas are east, west`},
		"person":                       {nil, Options{Person: "zoe"}, `the site has no person "zoe"; name one from [crew.people]`},
		"kind":                         {nil, Options{Kinds: []schedule.Kind{{}}}, `"" is no kind of job; the kinds are ` + fmt.Sprint(schedule.Kinds())},
		"address":                      {nil, Options{Address: "lawn.ics"}, `"lawn.ics" is no web address; write it as https://example.org/lawn.ics`},
		"record":                       {nil, Options{Record: "https://example.org/\nX:1"}, `"https://example.org/\nX:1" is no web address; write it as https://example.org/lawn.ics`},
		"link":                         {func(p *schedule.Program) { p.Site.Calendar.Link = "https://example.org/{x}?{y}" }, Options{}, "calendar.link is no address that a calendar can hold; write it as https://example.org/lawn/"},
		"reminders":                    {func(p *schedule.Program) { p.Site.Calendar.Remind = make([]time.Duration, 3) }, Options{}, "the site asks for 3 reminders; give at most two, as some phones show no more"},
		"double id":                    {func(p *schedule.Program) { p.Entries[1].UID = p.Entries[0].UID }, Options{}, "two jobs have the calendar id " + limeUID + "; one of them would be lost; give each job its own"},
		"double id outside the choice": {func(p *schedule.Program) { p.Entries[1].UID = p.Entries[0].UID }, Options{Area: "east"}, "two jobs have the calendar id " + limeUID + "; one of them would be lost; give each job its own"},
		"bad id":                       {func(p *schedule.Program) { p.Entries[0].UID = "a b" }, Options{}, `job east/lime/1 has the calendar id "a b"; ids hold 1 to 255 letters, digits, hyphens, dots and at signs`},
		"long id":                      {func(p *schedule.Program) { p.Entries[0].UID = strings.Repeat("a", 256) }, Options{}, `job east/lime/1 has the calendar id "` + strings.Repeat("a", 256) + `"; ids hold 1 to 255 letters, digits, hyphens, dots and at signs`},
		"no day":                       {func(p *schedule.Program) { p.Entries[0].Date = schedule.Date{} }, Options{}, `job east/lime/1 falls on ""; a calendar holds the years 1970 to 2200`},
		"no such day":                  {func(p *schedule.Program) { p.Entries[0].Date = schedule.Date{Year: 2026, Month: 2, Day: 30} }, Options{}, `job east/lime/1 falls on "2026-02-30"; a calendar holds the years 1970 to 2200`},
		"no title":                     {func(p *schedule.Program) { p.Entries[0].Title = "\n" }, Options{}, "job east/lime/1 has no title; an event without one shows as an empty line"},
		"no site id":                   {func(p *schedule.Program) { p.SiteID = "" }, Options{}, `the calendar would be called ""; ids hold letters, digits and hyphens, and fewer kinds make it shorter`},
	} {
		p := autumn()
		if c.change != nil {
			c.change(p)
		}
		out, err := Write(p, c.o, autumn().Start.Time())
		var u *Unwritable
		if !errors.As(err, &u) || err.Error() != c.want || out != nil {
			t.Errorf("%s: %v, want %s", name, err, c.want)
		}
	}
}

func TestDescriptions(t *testing.T) {
	p := autumn()
	e := find(p, "east/lime/1")
	want := `Spread 96 lb (2.4 packs) of pelletized limestone over 2,600 ft² of the east lawn. Mara.
Any day from 12 Sep. Last safe day Sat 21 Nov 2026.

1. Set the spreader to half: 18.5 lb per 1,000 ft².
2. Walk it twice, the second time across the first.
3. Sweep stray grains off the path; keep 3 ft from the pond.
4. Water in with 0.25 in within 48 hours.

Rain: if 1 in or more of rain is forecast within a day, wait; a light rain waters it in.
Done in part? Record how much; the rest is planned anew.

Mind: Wear gloves; lime dries the skin. No nitrogen for 3 weeks – the two lose ammonia together.

Why: The soil is far too acid for this grass; dressing 1 of 2.

Then 10 Apr 2027: soil sample.

Record: https://example.org/k3/done?job=east%2Flime%2F1

https://example.org/lawn/#job-east-lime-1`
	e.Material = "limestone"
	got := newTeller(p, Options{Record: "https://example.org/k3/done"}, "https://example.org/lawn/").describe(e)
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if formLink("https://example.org/done?site=a", "east/lime/1") != "https://example.org/done?site=a&job=east%2Flime%2F1" {
		t.Error("form link")
	}
	e.Earliest = day("2026-11-12")
	e.Latest, e.LastSafe = day("2027-03-20"), day("2027-04-03")
	got = newTeller(p, Options{}, "").describe(e)
	if line := "Any day from 12 Nov 2026. Last safe day Sat 3 Apr 2027."; !strings.Contains(got, "\n"+line+"\n") {
		t.Errorf("%q is not in\n%s", line, got)
	}
}

// TestLinks: each event has its own place on the page; the command stands only
// where there is no page, and nothing asks to record what is done or missed.
func TestLinks(t *testing.T) {
	for _, c := range []struct {
		state        schedule.State
		page, record string
		want, never  []string
	}{
		{schedule.Planned, "", "", []string{"Record: swardbook record FILE east/lime/1"}, []string{"http"}},
		{schedule.Planned, "https://example.org/a", "", []string{"https://example.org/a#job-east-lime-1"}, []string{"Record"}},
		{schedule.Planned, "https://example.org/a#top", "", []string{"https://example.org/a#top"}, []string{"Record"}},
		{schedule.Planned, "", "https://example.org/r", []string{"Record: https://example.org/r?job=east%2Flime%2F1"}, []string{"swardbook record"}},
		{schedule.Finished, "https://example.org/a", "https://example.org/r", []string{"https://example.org/a#job-east-lime-1"}, []string{"Record", "Mara"}},
		{schedule.Missed, "", "", nil, []string{"Record", "Then"}},
	} {
		p := autumn()
		e := find(p, "east/lime/1")
		e.State = c.state
		teller := newTeller(p, Options{Record: c.record}, c.page)
		got := teller.content(e, nil)
		for _, w := range c.want {
			if !strings.Contains("\n"+got.Description+"\n", "\n"+w+"\n") {
				t.Errorf("%v: no line %q in\n%s", c, w, got.Description)
			}
		}
		for _, n := range c.never {
			if strings.Contains(got.Description, n) {
				t.Errorf("%v: %q in\n%s", c, n, got.Description)
			}
		}
		if c.page != "" && !strings.HasSuffix(got.Description, "\n"+got.Link) {
			t.Errorf("%v: the last line is not %q", c, got.Link)
		}
		if len(c.want) > 0 && !strings.Contains(c.page, "#") && (!tells(got.Description, e.ID) || tells(got.Description, "east/lime/2") || tells(got.Description, "lime/1")) {
			t.Errorf("%v: the job cannot be told from\n%s", c, got.Description)
		}
	}
}

// TestSameDay: what else the same person does that day is named, not what
// another does, and the next job is one of a later day.
func TestSameDay(t *testing.T) {
	p := autumn()
	e := find(p, "east/lime/1")
	add := func(id, title, who string) {
		p.Entries = append(p.Entries, schedule.Entry{ID: id, UID: id, Kind: schedule.Nitrogen, Title: title, Date: e.Date, Who: who, State: schedule.Planned})
	}
	add("west/x/1", "Feed West lawn, 2 lb", e.Who)
	add("west/x/2", "Feed another's, 2 lb", "somebody")
	if got := newTeller(p, Options{}, "").describe(find(p, "east/lime/1")); !strings.Contains(got, "\nSame day: feed West lawn, 2 lb. Then 10 Apr 2027: soil sample.\n") {
		t.Error(got)
	}
	add("west/x/3", "Feed a", e.Who)
	add("west/x/4", "Feed b", e.Who)
	add("west/x/5", "Feed c", e.Who)
	if got := newTeller(p, Options{}, "").describe(find(p, "east/lime/1")); !strings.Contains(got, "\nSame day: feed West lawn, 2 lb; feed a; 2 more jobs. Then") {
		t.Error(got)
	}
}

// TestLongDescription: whole lines give way before the ending, and the first
// line never.
func TestLongDescription(t *testing.T) {
	p := autumn()
	e := find(p, "east/lime/1")
	e.Cautions = []string{strings.Repeat("care ", 270) + "."}
	e.Steps = slices.Repeat([]string{strings.Repeat("½ step ", 20)}, 60)
	got := newTeller(p, Options{}, "https://example.org/").describe(e)
	if n := utf8.RuneCountInString(got); n > hardLength || n < hardLength-300 {
		t.Errorf("%d characters", n)
	}
	if !strings.HasPrefix(got, e.Summary+" Mara.\n") || !strings.Contains(got, "\n\n"+moreLine+"\n\nThen ") || !strings.HasSuffix(got, "\n\nhttps://example.org/#job-east-lime-1") {
		t.Errorf("cut in the wrong place:\n%s", got)
	}
	e = &schedule.Entry{Kind: schedule.LastSafe, Summary: "The ground freezes", Cautions: []string{strings.Repeat("care ", 900)}}
	if got = newTeller(p, Options{}, "").describe(e); got != "The ground freezes.\n\n"+moreLine {
		t.Errorf("%q, with nothing to come after the cut", got)
	}
}

// TestTitled: no prefix makes a title too long, and the amount stays.
func TestTitled(t *testing.T) {
	for _, c := range [][2]string{
		{"Lime East lawn, 83 lb (2.1 packs)", "Cancelled: Lime East lawn, 83 lb (2.1 packs)"},
		{"Lime The back lawn, 83 lb (2.1 packs)", "Cancelled: Lime The back lawn, 83 lb"},
		{"Phosphorus on The slope behind the…, 9 lb", "Cancelled: Phosphorus on The slope…, 9 lb"},
		{"Sample soil at the end of the lawn, north", "Cancelled: Sample soil at the end of the…"},
	} {
		if got := titled(cancelledTitle, c[0]); got != c[1] || utf8.RuneCountInString(got) > summaryLength {
			t.Errorf("%q, want %q", got, c[1])
		}
	}
}

func TestStates(t *testing.T) {
	p := autumn()
	e := find(p, "east/lime/1")
	e.State, e.Note = schedule.Finished, "only half of it"
	c := newTeller(p, Options{}, "").content(e, usualRemind())
	if c.Summary != "Done: Lime east lawn, 96 lb" || len(c.Remind) != 0 || strings.Contains(c.Description, "1. ") ||
		!strings.HasPrefix(c.Description, "Done 19 Sep 2026: Spread 96 lb") || !strings.Contains(c.Description, "\nRecord book: only half of it") {
		t.Errorf("%+v", c)
	}
	e.State = schedule.Missed
	c = newTeller(p, Options{}, "").content(e, usualRemind())
	if c.Summary != "Missed: Lime east lawn, 96 lb" || len(c.Remind) != 0 || !strings.HasPrefix(c.Description, "This was not done: ") ||
		!strings.Contains(c.Description, "\nRecord book: only half of it") {
		t.Errorf("%+v", c)
	}
}

func TestTriggers(t *testing.T) {
	for d, want := range map[time.Duration]string{
		-15 * time.Hour: "-PT15H", 7 * time.Hour: "PT7H", 0: "PT0S", -90 * time.Minute: "-PT1H30M", 30 * time.Minute: "PT30M",
		time.Hour + time.Second: "PT1H0M1S", -48 * time.Hour: "-PT48H", 5 * time.Second: "PT5S",
	} {
		if got := trigger(d); got != want {
			t.Errorf("trigger(%v) = %s, want %s", d, got, want)
		}
		if back, err := duration(want); back != d || err != nil {
			t.Errorf("duration(%s) = %v, %v", want, back, err)
		}
	}
	for _, s := range []string{"", "PT", "P1D", "-P15H", "PT1.5H", "PT1X", "PT999999999999H", "PT9000H", "pt1h"} {
		if d, err := duration(s); err == nil {
			t.Errorf("duration(%q) = %v", s, d)
		}
	}
}

func TestRemindersOfTheSite(t *testing.T) {
	p := autumn()
	p.Site.Calendar.Remind = []time.Duration{}
	if strings.Contains(string(mustWrite(t, p, Options{})), "VALARM") {
		t.Error("a site that wants no reminders got some")
	}
	p.Site = nil
	if n := strings.Count(string(mustWrite(t, p, Options{})), "BEGIN:VALARM"); n != 8 {
		t.Errorf("%d alarms on 4 events", n)
	}
}

// A new file has no place for a clock that is wrong, begins above the numbers of any
// earlier one, and forgets what lies over a year behind.
func TestANewFile(t *testing.T) {
	p := autumn()
	if _, err := Write(p, Options{}, time.Time{}); err == nil || !strings.Contains(err.Error(), "the clock says") {
		t.Error(err)
	}
	a, err := Write(p, Options{}, at("2026-09-12T00:00:00Z"))
	if err != nil {
		t.Fatal(err)
	}
	b, err := Write(p, Options{}, at("2026-09-12T00:01:30Z"))
	if err != nil {
		t.Fatal(err)
	}
	if x, y := events(t, a)[limeUID].number(t, "SEQUENCE"), events(t, b)[limeUID].number(t, "SEQUENCE"); x != begun || y != begun+1 {
		t.Errorf("SEQUENCE %d, then %d", x, y)
	}
	for day, there := range map[string]bool{"2027-09-19T00:00:00Z": true, "2027-09-20T00:00:00Z": false} {
		out, err := Write(p, Options{}, at(day))
		if err != nil {
			t.Fatal(err)
		}
		if _, found := events(t, out)[limeUID]; found != there {
			t.Errorf("the lime of 19 September 2026 on %s: %v", day, found)
		}
	}
	// A program that lies behind in whole is still one to look at, and to update.
	long, err := Write(p, Options{}, at("2035-01-01T00:00:00Z"))
	if err != nil || len(events(t, long)) != len(events(t, a)) {
		t.Errorf("years later: %d events, %v", len(events(t, long)), err)
	}
	if again, c, err := Update(long, p, Options{}, at("2036-01-01T00:00:00Z")); err != nil || !bytes.Equal(again, long) || total(c) != 0 {
		t.Errorf("updated years later: %+v, %v", c, err)
	}
}
