package ical

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/schedule"
)

var (
	update    = flag.Bool("update", false, "write the golden files anew")
	seasonDir = flag.String("season", "", "folder to write the calendars of the season to, for outside validators")
)

func day(s string) schedule.Date {
	d, err := schedule.ParseDate(s)
	if err != nil {
		panic(err)
	}
	return d
}

func at(s string) time.Time {
	t, err := time.Parse(time.RFC3339, s)
	if err != nil {
		panic(err)
	}
	return t
}

// autumn is an invented site with one job of each sort that a calendar shows
// in its own way: two areas, two persons, a notice, letters beyond ASCII.
func autumn() *schedule.Program {
	p := &schedule.Program{
		Format: 1, Title: "Odderwyn reading lawn, north; “old” wing", SiteID: "odderwyn-7q2m",
		Start: day("2026-09-12"), Through: day("2027-09-11"),
		Areas: []schedule.AreaShown{{
			ID: "east", Name: "East lawn",
			Findings: []schedule.FindingShown{{Reading: "ph", Text: "The soil is far too acid for this grass.", Source: "common"}, {Reading: "iron", Text: "Iron is high."}},
			Needs:    []schedule.Need{{Kind: schedule.Lime, Text: "lime: 50 lb per 1,000 ft² in all brings pH 5.1 to 6.3"}},
		}, {ID: "west", Name: "West lawn, by the café"}},
		Site: &schedule.Site{
			Crew: schedule.Crew{People: []schedule.Person{{ID: "mara", Name: "Mara"}, {ID: "jo", Name: "Jo"}}},
			Calendar: schedule.Calendar{
				Remind: []time.Duration{-15 * time.Hour, 7 * time.Hour},
				Link:   "https://example.org/lawn/a-rather-long-folder-name/another-one/odderwyn.html?part=one,two;three",
			},
		},
	}
	job := func(area, name string, k schedule.Kind, n int, date, first, last, title, summary, who, whoName string) *schedule.Entry {
		id, uid := fmt.Sprintf("%s/%s/%d", area, k, n), fmt.Sprintf("odderwyn-7q2m.%s.%s.%d@swardbook", area, k, n)
		if area == "" {
			id, uid = fmt.Sprintf("site/%s/%d", k, n), fmt.Sprintf("odderwyn-7q2m.site.%s.%d@swardbook", k, n)
		}
		p.Entries = append(p.Entries, schedule.Entry{
			ID: id, UID: uid, Kind: k, Area: area, AreaName: name, Title: title, Summary: summary,
			Date: day(date), Earliest: day(first), Latest: day(last), LastSafe: day(last), Ideal: day(date),
			Who: who, WhoName: whoName, State: schedule.Planned,
		})
		return &p.Entries[len(p.Entries)-1]
	}
	e := job("east", "East lawn", schedule.Lime, 1, "2026-09-19", "2026-09-12", "2026-11-21", "Lime east lawn, 96 lb",
		"Spread 96 lb (2.4 packs) of pelletized limestone over 2,600 ft² of the east lawn.", "mara", "Mara")
	e.Steps = []string{"Set the spreader to half: 18.5 lb per 1,000 ft².", "Walk it twice, the second time across the first.", "Sweep stray grains off the path; keep 3 ft from the pond.", "Water in with 0.25 in within 48 hours."}
	e.IfRain = "If 1 in or more of rain is forecast within a day, wait; a light rain waters it in."
	e.Cautions = []string{"Wear gloves; lime dries the skin.", "Wear gloves; lime dries the skin.", "No nitrogen for 3 weeks – the two lose ammonia together."}
	e.Because = "The soil is far too acid for this grass; dressing 1 of 2."
	e.Why = []schedule.Reason{
		{Text: "The soil is strongly acid: pH 5.1, wanted 6.5.", Source: "common"},
		{Text: "The need of 55 lb per 1,000 ft² is split, as grass takes at most 50 at once.", Source: "common, definitions"},
		{Text: "Frost works lime in.", Source: "common"},
		{Text: "A longer reason that there is no room for on a narrow screen, and that the page tells in full.", Source: "definitions"},
	}
	e.Next = "east/soil-test/1"
	e.Window = "opens: the seedlings stand a mowing; closes: the last safe day"

	e = job("west", "West lawn, by the café", schedule.Nitrogen, 1, "2026-10-10", "2026-09-20", "2026-10-21", "Feed west lawn, 4.2 lb",
		"Spread 4.2 lb (1/2 bag) of 46-0-0 over 1,900 ft² at the west lawn.", "jo", "Jo")
	e.Steps = []string{"Spread on dry grass; C:\\ is not a spreader setting 🌱.", "½ now, ½ across."}
	e.Because = "Half of the year's nitrogen belongs to autumn."
	e.Why = []schedule.Reason{{Text: "Half of the year's nitrogen belongs to autumn", Source: "ORC 905.326 (2014)"}}

	e = job("east", "East lawn", schedule.SoilTest, 1, "2027-04-10", "2027-03-28", "2027-05-01", "Sample east lawn",
		"Take 12 cores, 4 in deep, from the east lawn.", "", "")
	e.Next = "Lime, if the report asks for it"

	e = job("", "", schedule.LastSafe, 1, "2026-11-21", "2026-11-21", "2026-11-21", "Stop: ground closes for winter",
		"Spread nothing after today: the ground may freeze from 5 Dec on.", "", "")
	e.Cautions = []string{"Trust a soil thermometer over this date (±12 days)."}
	return p
}

// find gives the entry with an id.
func find(p *schedule.Program, id string) *schedule.Entry {
	return &p.Entries[slices.IndexFunc(p.Entries, func(e schedule.Entry) bool { return e.ID == id })]
}

// without takes an entry out of the program.
func without(p *schedule.Program, id string) {
	p.Entries = slices.DeleteFunc(p.Entries, func(e schedule.Entry) bool { return e.ID == id })
}

// season is what becomes of the site in a year: one step an update.
var season = []struct {
	name, now string
	change    func(*schedule.Program)
	want      Changes
}{
	{"1-first", "", nil, Changes{}},
	{"2-moved", "2026-09-14T08:00:00Z", func(p *schedule.Program) {
		find(p, "east/lime/1").Date = day("2026-09-23")
	}, Changes{Changed: []string{"Lime east lawn, 96 lb (23 Sep 2026)"}}},
	{"3-changed", "2026-09-15T08:00:00Z", func(p *schedule.Program) {
		e := find(p, "west/nitrogen/1")
		e.Title, e.Summary = "Feed west lawn, 3.1 lb", "Spread 3.1 lb of 46-0-0 over 1,900 ft² at the west lawn."
	}, Changes{Changed: []string{"Feed west lawn, 3.1 lb (10 Oct 2026)"}}},
	{"4-dropped", "2026-09-16T08:00:00Z", func(p *schedule.Program) {
		without(p, "west/nitrogen/1")
		p.LeftOut = []schedule.LeftOut{{ID: "west/nitrogen/1", Kind: schedule.Nitrogen, Area: "west",
			Reason: "twice the nitrogen went down in August", Source: "common", CarriedTo: day("2027-05-01")}}
	}, Changes{Cancelled: []string{"Feed west lawn, 3.1 lb (10 Oct 2026)"}}},
	{"5-restored", "2026-09-17T08:00:00Z", func(p *schedule.Program) {
		p.LeftOut = nil
		back := *find(autumn(), "west/nitrogen/1")
		p.Entries = append(p.Entries, back)
	}, Changes{Restored: []string{"Feed west lawn, 4.2 lb (10 Oct 2026)"}}},
	{"6-done", "2026-09-24T18:00:00Z", func(p *schedule.Program) {
		e := find(p, "east/lime/1")
		e.State, e.Summary, e.Note = schedule.Finished, "48 lb of pelletized limestone over 2,600 ft².", "only half of it; Mara"
		find(p, "west/nitrogen/1").State = schedule.Missed
	}, Changes{Changed: []string{"Lime east lawn, 96 lb (23 Sep 2026)", "Feed west lawn, 4.2 lb (10 Oct 2026)"}}},
	{"7-new-year", "2027-09-12T08:00:00Z", func(p *schedule.Program) {
		p.Start, p.Through = day("2027-09-12"), day("2028-09-10")
		for i, date := range []string{"2027-09-18", "2027-10-09", "2028-04-08", "2027-11-20"} {
			e := &p.Entries[i]
			e.UID = "y2." + e.UID
			e.Date, e.State = day(date), schedule.Planned
		}
	}, Changes{}},
}

// seasonFiles plays the season and gives the file after each step.
func seasonFiles(t testing.TB) (files [][]byte, changes []Changes, last *schedule.Program) {
	t.Helper()
	p := autumn()
	file, err := Write(p, Options{}, p.Start.Time())
	if err != nil {
		t.Fatal(err)
	}
	files, changes = append(files, file), append(changes, Changes{})
	for _, step := range season[1:] {
		step.change(p)
		out, c, err := Update(file, p, Options{}, at(step.now))
		if err != nil {
			t.Fatalf("%s: %v", step.name, err)
		}
		again, none, err := Update(out, p, Options{}, at(step.now).Add(48*time.Hour))
		if err != nil || !bytes.Equal(again, out) || total(none) != 0 {
			t.Errorf("%s: a second update with nothing new gives other bytes: %v %v", step.name, none, err)
		}
		file = out
		files, changes = append(files, out), append(changes, c)
	}
	return files, changes, p
}

func total(c Changes) int {
	return len(c.Added) + len(c.Changed) + len(c.Cancelled) + len(c.Restored) + len(c.Dropped)
}

func TestSeason(t *testing.T) {
	files, changes, _ := seasonFiles(t)
	for i, step := range season {
		for _, fault := range faults(files[i]) {
			t.Errorf("%s: %s", step.name, fault)
		}
		golden(t, step.name+".ics", files[i])
		if *seasonDir != "" {
			if err := os.WriteFile(filepath.Join(*seasonDir, step.name+".ics"), files[i], 0o644); err != nil {
				t.Error(err)
			}
		}
		if step.name == "7-new-year" {
			if len(changes[i].Added) != 4 || total(changes[i]) != 4 {
				t.Errorf("new year: %+v", changes[i])
			}
			continue
		}
		if got, want := fmt.Sprintf("%+v", changes[i]), fmt.Sprintf("%+v", step.want); got != want {
			t.Errorf("%s:\ngot  %s\nwant %s", step.name, got, want)
		}
	}
}

// TestRevisions compares neighbouring files with the reader of this test:
// stamps and sequence grow exactly where the content changed.
func TestRevisions(t *testing.T) {
	files, _, _ := seasonFiles(t)
	for i := 1; i < len(files); i++ {
		before, after := byUID(parse(t, files[i-1])), byUID(parse(t, files[i]))
		for uid, was := range before {
			is, here := after[uid]
			if !here {
				t.Errorf("%s: %s is gone", season[i].name, uid)
				continue
			}
			same := was.shown() == is.shown()
			grew := is.text("LAST-MODIFIED") > was.text("LAST-MODIFIED") && is.number(t, "SEQUENCE") == was.number(t, "SEQUENCE")+1
			still := is.text("LAST-MODIFIED") == was.text("LAST-MODIFIED") && is.number(t, "SEQUENCE") == was.number(t, "SEQUENCE")
			if same && !still || !same && !grew {
				t.Errorf("%s: %s: same content %v, grew %v, still %v", season[i].name, uid, same, grew, still)
			}
		}
	}
}

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs from what is written now (run with -update and look at the diff):\n%s", path, got)
	}
}

// thirty is a program of 30 jobs with texts of the usual length.
func thirty() *schedule.Program {
	p := autumn()
	model := *find(p, "east/lime/1")
	p.Entries = nil
	for i := range 30 {
		e := model
		e.ID, e.UID = fmt.Sprintf("east/lime/%d", i+1), fmt.Sprintf("odderwyn-7q2m.east.lime.%d@swardbook", i+1)
		e.Date = e.Date.AddDays(7 * i)
		e.Pounds = agronomy.Pounds(96)
		p.Entries = append(p.Entries, e)
	}
	return p
}

func BenchmarkWrite(b *testing.B) {
	p := thirty()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Write(p, Options{}, p.Start.Time()); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkUpdate(b *testing.B) {
	p := thirty()
	old, err := Write(p, Options{}, p.Start.Time())
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(old)))
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := Update(old, p, Options{}, at("2026-09-14T08:00:00Z")); err != nil {
			b.Fatal(err)
		}
	}
}
