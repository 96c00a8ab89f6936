package book_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"swardbook/agronomy/material"
	"swardbook/schedule"
	"swardbook/schedule/book"
	scplan "swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

func site(t *testing.T, change ...string) *schedule.Site {
	t.Helper()
	text, err := os.ReadFile("../../cmd/swardbook/testdata/site/fern.toml")
	if err != nil {
		t.Fatal(err)
	}
	s, ps := sitefile.Load("fern.toml", []byte(strings.NewReplacer(change...).Replace(string(text))), nil)
	if s == nil || schedule.Fatal(ps) {
		t.Fatal(ps)
	}
	return s
}

func done(t *testing.T, job, date string) schedule.Done {
	t.Helper()
	d, err := schedule.ParseDate(date)
	if err != nil {
		t.Fatal(err)
	}
	area, _, _ := strings.Cut(job, "/")
	return schedule.Done{Date: d, Area: area, Job: job}
}

func newLine(t *testing.T, s *schedule.Site, text string, d schedule.Done, amount string) book.Line {
	t.Helper()
	l := book.NewLine(name, []byte(text), plan(t, s, text), d, amount, schedule.Date{})
	if len(l.Wrong) > 0 {
		t.Fatal(l.Wrong)
	}
	return l
}

func plan(t *testing.T, s *schedule.Site, text string) *schedule.Program {
	t.Helper()
	lines, ps := sitefile.LoadRecord(name, []byte(text), s)
	if schedule.Fatal(ps) {
		t.Fatal(ps)
	}
	p, err := scplan.Program(s, lines, schedule.Date{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// A line that stands by itself keeps its meaning when the soil report or the bag in the
// site file changes, and when the bag is removed; a short line would then mean something
// else.
func TestLineStandsByItself(t *testing.T) {
	for _, units := range []string{"us", "metric"} {
		for _, amount := range []string{"", "half", "30 %"} {
			change := []string{`units = "us"`, `units = "` + units + `"`, "on_hand = 1.5", "on_hand = 9"} // more than one dressing takes
			now, later := site(t, change...), site(t, append(change, "ph = 5.1", "ph = 5.6")...)
			struck := site(t, append(change, "[material.limestone]", "[material.chalk]", "pelletized limestone", "chalk")...)
			d := done(t, "east/lime/2026-1", "2026-09-23")
			l := newLine(t, now, "", d, amount)
			whole, short := sitefile.Header+l.Text, sitefile.ShortHeader+sitefile.ShortLine(d, amount)
			if !strings.Contains(l.Text, ",limestone,0-0-0") || amount != "" && strings.Contains(l.Text, amount) {
				t.Fatalf("%q is written as %q", amount, l.Text)
			}
			down := func(s *schedule.Site, text string) float64 {
				c := plan(t, s, text).Cases[0]
				for _, x := range c.Down {
					if x.Line > 0 {
						return float64(c.EffectiveLime(c.Area, x.Dose))
					}
				}
				t.Fatalf("%q is not down", text)
				return 0
			}
			if a, b := down(now, whole), down(now, short); a < 0.99*b || a > 1.01*b {
				t.Errorf("%s, %q: the whole line brings %g, the short one %g", units, amount, a, b)
			}
			if a, b, c := down(now, whole), down(later, whole), down(struck, whole); a != b || a != c {
				t.Errorf("%s, %q: was %g, is %g after another report and %g without the bag", units, amount, a, b, c)
			}
			if a, b := down(now, short), down(later, short); a == b {
				t.Errorf("%s, %q: the short line means %g with both reports, so nothing was tested", units, amount, a)
			}
		}
	}
}

// What was given stays as it was given, and what nobody knows is left open.
func TestLineKeepsWhatWasGiven(t *testing.T) {
	s := site(t)
	for _, c := range []struct{ job, amount, want string }{
		{"east/lime/2026-1", "48 lb", ",48 lb,"},
		{"east/soil-test/2026-1", "", "2026-09-23,east,soil-test,2026,1,,,,,,,,\n"},
		{"east/lime/2026-9", "half", sitefile.ShortHeader + "2026-09-23,east,east/lime/2026-9,,half,,\n"}, // none such is planned
	} {
		if l := newLine(t, s, "", done(t, c.job, "2026-09-23"), c.amount); !strings.Contains(l.Text, c.want) {
			t.Errorf("got %q, want %q", l.Text, c.want)
		}
	}
	missed := done(t, "east/lime/2026-1", "2026-09-23")
	missed.Missed = true
	if l := newLine(t, s, "", missed, ""); l.Text != "2026-09-23,east,lime,2026,1,,,,,missed,,,\n" {
		t.Errorf("missed: %q", l.Text)
	}
	if l := book.NewLine(name, nil, plan(t, s, ""), done(t, "east/lime/2026-1", "2026-09-23"), "lots", schedule.Date{}); len(l.Wrong) != 1 || l.Text != "" {
		t.Errorf("an amount that is none: %+v", l)
	}
}

// An older book goes on in the newer form, and is read as a whole.
func TestLineGoesOnInAnOlderBook(t *testing.T) {
	s := site(t)
	text := sitefile.ShortHeader + "2026-09-23,,east/lime/1,limestone,30 lb,,\n"
	l := newLine(t, s, text, done(t, "east/lime/2026-1", "2026-09-24"), "20 lb")
	if !strings.HasPrefix(l.Text, sitefile.Header) || len(l.Before) != 1 || l.Before[0] != 2 || len(l.Done) != 2 {
		t.Errorf("%q beside %v: %+v", l.Text, l.Before, l.Done)
	}
	if again := newLine(t, s, text+l.Text, done(t, "east/lime/2026-1", "2026-09-25"), "10 lb"); strings.Contains(again.Text, "date") || len(again.Before) != 2 {
		t.Errorf("%q beside %v", again.Text, again.Before)
	}
}

// A book that has no room for the line says so, and there is no line.
func TestLineTooMany(t *testing.T) {
	full := sitefile.Header + strings.Repeat("2026-09-23,east,soil-test,2026,1,,,,,,,,\n", 20000)
	l := book.NewLine(name, []byte(full), plan(t, site(t), ""), done(t, "east/lime/2026-1", "2026-09-24"), "half", schedule.Date{})
	if len(l.Wrong) == 0 || !strings.Contains(l.Wrong[0].Message, "more") || l.Text != "" {
		t.Errorf("got %+v, %q", l.Wrong, l.Text)
	}
}

// A line names the material that went down. The value it gives for a lime is the one that
// the planner counts with, by the rule of the state.
func TestLineKeepsTheMaterial(t *testing.T) {
	s := site(t, `state = "OH"`, `state = "IA"`)
	p := plan(t, s, "")
	c := p.Cases[0]
	for _, m := range []material.Material{
		{ID: "stone", Kind: material.LimeMaterial, CCE: 92, Fineness: []material.Sieve{{Mesh: 4, Passing: 100}, {Mesh: 8, Passing: 90}, {Mesh: 60, Passing: 55}}},
		{ID: "bare", Kind: material.LimeMaterial, CCE: 90},
		{ID: "ash", Kind: material.WoodAsh, Analysis: material.Ash},
		{ID: "gypsum", Kind: material.GypsumMaterial, Sulfur: 17},
		{ID: "green", Kind: material.IronMaterial, Iron: 20},
		{ID: "yellow", Kind: material.SulfurMaterial, Sulfur: 90},
	} {
		kind := map[material.Kind]schedule.Kind{material.GypsumMaterial: schedule.Gypsum, material.IronMaterial: schedule.Iron, material.SulfurMaterial: schedule.Sulfur}[m.Kind]
		if kind == (schedule.Kind{}) {
			kind = schedule.Lime
		}
		d := schedule.Down{Done: done(t, "east/"+kind.String(), "2026-09-23"), AreaID: "east", Kind: kind, Season: 2026, N: 1, Dose: material.DoseOf(m, 10)}
		text := sitefile.WholeLine(d, s, c.Area)
		lines, ps := sitefile.LoadRecord(name, []byte(sitefile.Header+text), s)
		if len(lines) != 1 || lines[0].Content == nil || schedule.Fatal(ps) {
			t.Fatalf("%s: %v", text, ps)
		}
		got := *lines[0].Content
		if got.Kind != m.Kind || got.Iron != m.Iron || got.Sulfur != m.Sulfur || got.Analysis != m.Analysis {
			t.Errorf("%s is read as %+v", text, got)
		}
		if a, b := c.LimeValue(c.Area, m).Full, c.LimeValue(c.Area, got).Full; kind == schedule.Lime && math.Abs(float64(a-b)) > 1e-3 {
			t.Errorf("%s: planned with %v %%, on record with %v %%", m.ID, a, b)
		}
	}
	if iowa := c.LimeValue(c.Area, material.Material{CCE: 92, Kind: material.LimeMaterial, Fineness: []material.Sieve{{Mesh: 4, Passing: 100}, {Mesh: 8, Passing: 90}, {Mesh: 60, Passing: 55}}}).Full; math.Abs(float64(iowa)-64.4) > 0.01 { // [laboski-lime] before moisture
		t.Errorf("Iowa's stone in Iowa: %v %%, want 64.4", iowa)
	}
}
