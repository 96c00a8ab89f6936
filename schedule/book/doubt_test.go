package book_test

import (
	"fmt"
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/book"
)

// thousand makes the east lawn 1,000 sq ft, so that pounds are pounds per 1,000 sq ft.
var thousand = []string{`size = "2600 sq ft"`, `size = "1000 sq ft"`}

// doubted gives what a new line in an empty book is doubted for: each doubt as its key
// and message.
func doubted(t *testing.T, s *schedule.Site, d schedule.Done, amount string, today schedule.Date) []string {
	t.Helper()
	l := book.NewLine(name, nil, plan(t, s, ""), d, amount, today)
	if len(l.Wrong) > 0 {
		t.Fatalf("%s %s: %v", d.Job, amount, l.Wrong)
	}
	var out []string
	hints := map[string]string{"date": "is the year right", "material": "is it the bag that is meant, and the job?", "amount": "are the unit and the decimal point right?"}
	for _, p := range l.Doubts {
		if !strings.HasPrefix(p.Hint, hints[p.Key]) || p.Hint == "" || p.Warning || p.Line != 0 {
			t.Errorf("a doubt without a remedy, or with a line: %+v", p)
		}
		out = append(out, p.Key+": "+p.Message)
	}
	return out
}

// same wants as many doubts as there are words for them, each with its words.
func same(t *testing.T, what string, got []string, want ...string) {
	t.Helper()
	ok := len(got) == len(want)
	for i := range want {
		ok = ok && strings.Contains(got[i], want[i])
	}
	if !ok {
		t.Errorf("%s: doubts %q, want %q", what, got, want)
	}
}

func day(t *testing.T, text string) schedule.Date {
	t.Helper()
	d, err := schedule.ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// A day that is still to come is doubted.
func TestDoubtOfADayToCome(t *testing.T) {
	s := site(t)
	d := done(t, "east/lime/2026-1", "2026-10-02")
	same(t, "the day before", doubted(t, s, d, "half", day(t, "2026-10-01")), "date: 2 Oct 2026 is still to come")
	same(t, "the day itself", doubted(t, s, d, "half", day(t, "2026-10-02")))
	same(t, "the day after", doubted(t, s, d, "half", day(t, "2026-10-03")))
	same(t, "no day known", doubted(t, s, d, "half", schedule.Date{}))
	d.Missed = true
	same(t, "missed, and still to come", doubted(t, s, d, "", day(t, "2026-10-01")), "date: ")
}

// A day before the sowing is doubted, except for jobs that come before the seed or with it.
func TestDoubtOfADayBeforeSowing(t *testing.T) {
	s := site(t, thousand...) // sown on 24 August 2026
	for _, c := range []struct {
		job, amount string
		early       bool
	}{
		{"nitrogen/2026-1", "2 lb", false}, {"potassium/2026-9", "1 lb", false},
		{"starter/2026-1", "4 lb", true}, {"lime/2026-1", "20 lb", true}, {"soil-test/2026-1", "", true}, {"sow/2026-1", "", true},
	} {
		var want []string
		if !c.early {
			want = []string{"date: 23 Aug 2026 is before East lawn was sown, 24 Aug 2026"}
		}
		same(t, c.job+" the day before", doubted(t, s, done(t, "east/"+c.job, "2026-08-23"), c.amount, schedule.Date{}), want...)
		same(t, c.job+" on the day", doubted(t, s, done(t, "east/"+c.job, "2026-08-24"), c.amount, schedule.Date{}))
	}
	old := site(t, append(thousand, "seeded = 2026-08-24\n", "")...)
	same(t, "no sowing known", doubted(t, old, done(t, "east/nitrogen/2026-9", "2026-08-23"), "2 lb", schedule.Date{}))
}

// A day before its season is doubted: cool-season grass has its season from the
// warmest day of the year, and what was done up to 45 days before the first counts
// to it.
func TestDoubtOfADayBeforeItsSeason(t *testing.T) {
	s := site(t)
	c := plan(t, s, "").CaseOf("east")
	warmest := c.Almanac.YearBegins(2026, c.Season)
	for season, begins := range map[int]schedule.Date{2026: warmest.AddDays(-45), 2027: c.Almanac.YearBegins(2027, c.Season)} {
		job := fmt.Sprintf("east/lime/%d-1", season)
		same(t, job+" on the day", doubted(t, s, done(t, job, begins.String()), "20 lb", schedule.Date{}))
		same(t, job+" the day before", doubted(t, s, done(t, job, begins.AddDays(-1).String()), "20 lb", schedule.Date{}),
			"date: "+begins.AddDays(-1).Short()+" is before the season of the job begins, "+begins.Short())
	}
}

// A material that does not serve the job is doubted: lime is no feeding.
func TestDoubtOfTheMaterial(t *testing.T) {
	s := site(t, thousand...)
	for _, c := range []struct{ job, material, want string }{
		{"lime/2026-1", "starter", " does not serve for lime"},
		{"nitrogen/2026-1", "limestone", "material: pelletized limestone does not serve for nitrogen"},
		{"starter/2026-1", "trade-urea", "does not serve for starter"},
		{"potassium/2026-1", "trade-urea", "does not serve for potassium"},
		{"lime/2026-1", "limestone", ""}, {"nitrogen/2026-1", "trade-urea", ""},
		{"starter/2026-1", "starter", ""}, {"potassium/2026-1", "trade-potassium-sulfate", ""},
	} {
		d := done(t, "east/"+c.job, "2026-10-20")
		d.Material = c.material
		var want []string
		if c.want != "" {
			want = []string{c.want}
		}
		same(t, c.job+" with "+c.material, doubted(t, s, d, "1 lb", schedule.Date{}), want...)
		d.Missed = true
		same(t, c.job+" missed", doubted(t, s, d, "", schedule.Date{}))
	}
}

// More than twice the planned dose is doubted. What counts is what the job is for, such as
// the lime that acts, and not the weight: less of a stronger lime may be as much.
func TestDoubtOfTwiceThePlan(t *testing.T) {
	s := site(t, append(thousand, `[material.starter]`, "[material.strong]\nkind = \"lime\"\necce = 100\n\n[material.starter]")...)
	p := plan(t, s, "")
	for _, job := range []string{"lime/2026-1", "nitrogen/2026-1", "potassium/2026-1"} {
		e := entry(t, p, "east/"+job)
		for _, c := range []struct {
			times float64
			over  bool
		}{{0.5, false}, {1, false}, {1.99, false}, {2, false}, {2.01, true}, {3, true}, {30, true}} {
			if !c.over && float64(e.N)*c.times > 1.05 || job == "lime/2026-1" && !c.over && float64(e.Rate)*c.times > 52.5 {
				continue // doubted in any case, as it is over the most that goes down at once
			}
			var want []string
			if c.over {
				want = []string{fmt.Sprintf("is %.2g times what is planned", c.times)}
			}
			amount := fmt.Sprintf("%.8f lb", float64(e.Rate)*c.times)
			same(t, amount+" for "+job, doubted(t, s, done(t, "east/"+job, e.Date.String()), amount, schedule.Date{}), want...)
		}
	}
	lime := entry(t, p, "east/lime/2026-1")
	d := done(t, lime.ID, lime.Date.String())
	d.Material = "strong" // all of it acts; of the planned limestone 80 % does
	same(t, "a stronger lime", doubted(t, s, d, fmt.Sprintf("%.8f lb", float64(lime.Rate)*2*0.79), schedule.Date{}))
	same(t, "a stronger lime", doubted(t, s, d, fmt.Sprintf("%.8f lb", float64(lime.Rate)*2*0.81), schedule.Date{}), "is 2 times what is planned")
}

func entry(t *testing.T, p *schedule.Program, id string) schedule.Entry {
	t.Helper()
	for _, e := range p.Entries {
		if e.ID == id {
			return e
		}
	}
	t.Fatalf("the program has no %s", id)
	return schedule.Entry{}
}

// More lime than turf takes at once is doubted, planned or not: 50 lb per 1,000 sq ft
// (Virginia Cooperative Extension, Soil Test Note 452-717), 100 cored (Purdue
// University, AY-18), 200 before sowing (Penn State Extension, Turfgrass
// establishment), 10 of hydrated lime in any case [common]. A scale and a spreader
// leave one part in twenty open.
func TestDoubtOfMuchLime(t *testing.T) {
	const sown, burned = "seeded = 2026-08-24\ntexture = \"sandy loam\"", "cce = 130\nhydrated = true"
	for _, c := range []struct {
		what, on string
		most     float64
		change   []string
	}{
		{"turf", "2026-10-20", 50, nil},
		{"turf of unknown age", "2026-10-20", 50, []string{"seeded = 2026-08-24\n", ""}},
		{"cored turf", "2026-10-20", 100, []string{sown, sown + "\ncored = true"}},
		{"the day of sowing", "2026-08-24", 200, nil},
		{"the day after", "2026-08-25", 50, nil},
		{"a seedbed that is to be cored", "2026-08-24", 200, []string{sown, sown + "\ncored = true"}},
		{"hydrated", "2026-10-20", 10, []string{"cce = 90", burned}},
		{"hydrated, cored", "2026-10-20", 10, []string{"cce = 90", burned, sown, sown + "\ncored = true"}},
	} {
		s := site(t, append(thousand, c.change...)...)
		for _, a := range []struct {
			lb   float64
			over bool
		}{{c.most, false}, {1.05*c.most - 0.01, false}, {1.05*c.most + 0.01, true}, {1.11 * c.most, true}} {
			var want []string
			if a.over {
				want = []string{fmt.Sprintf("is more than goes down at once, %.0f lb per 1,000 sq ft", c.most)}
			}
			same(t, fmt.Sprintf("%s, %g lb", c.what, a.lb), doubted(t, s, done(t, "east/lime/2026-9", c.on), fmt.Sprintf("%.4f lb", a.lb), schedule.Date{}), want...)
		}
	}
	s := site(t, append(thousand, "ph = 5.1", "ph = 5.0", "ph = 6.4", "ph = 6.0")...)
	lime := entry(t, plan(t, s, ""), "east/lime/2026-1")
	if lime.Rate < 40 || lime.Rate > 50 {
		t.Fatalf("%g lb planned, so nothing is tested", float64(lime.Rate))
	}
	same(t, "planned, and past the cap", doubted(t, s, done(t, lime.ID, lime.Date.String()), "60 lb", schedule.Date{}), "amount: 60 lb per 1,000 sq ft is more than goes down at once, 50 lb per 1,000 sq ft")
	same(t, "as planned", doubted(t, s, done(t, lime.ID, lime.Date.String()), "", schedule.Date{}))
}

// More nitrogen at once than 1 lb per 1,000 sq ft (University of Illinois, Home lawn
// fertilization, 1995) is doubted, whatever the job is called.
func TestDoubtOfMuchNitrogen(t *testing.T) {
	s := site(t, thousand...)
	for _, c := range []struct {
		job, material string
		percent       float64
	}{
		{"nitrogen/2026-9", "starter", 18}, {"late-nitrogen/2026-9", "trade-urea", 46}, {"starter/2026-9", "starter", 18},
		{"potassium/2026-9", "trade-lawn-15-0-15", 15}, {"phosphorus/2026-9", "trade-diammonium-phosphate", 18},
	} {
		for n, over := range map[float64]bool{0.9: false, 1: false, 1.049: false, 1.051: true, 1.5: true} {
			d := done(t, "east/"+c.job, "2026-10-20")
			d.Material = c.material
			var want []string
			if over {
				want = []string{fmt.Sprintf("amount: %.1f lb N per 1,000 sq ft is more than goes down at once, 1 lb N per 1,000 sq ft", n)}
			}
			same(t, fmt.Sprintf("%g lb N as %s", n, c.job), doubted(t, s, d, fmt.Sprintf("%.4f lb", n*100/c.percent), schedule.Date{}), want...)
		}
	}
}

// What the program itself planned is not doubted: a starter of nitrogen alone, where the
// soil has phosphorus enough.
func TestNoDoubtOfWhatIsPlanned(t *testing.T) {
	s := site(t, `seeded = 2026-08-24`, `seeded = 2026-09-20`, `phosphorus = "14 ppm"`, `phosphorus = "200 ppm"`)
	p := plan(t, s, "")
	for _, e := range p.Entries {
		if e.Kind == schedule.Starter && e.P2O5 == 0 {
			same(t, e.ID, doubted(t, s, done(t, e.ID, e.Date.String()), "", e.Date))
			return
		}
	}
	t.Fatal("no starter of nitrogen alone")
}
