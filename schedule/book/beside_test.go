package book_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/book"
	"swardbook/schedule/sitefile"
)

// cell gives one cell of a line that stands by itself, by the name of its column.
func cell(t *testing.T, l book.Line, column string) string {
	t.Helper()
	cells := strings.Split(strings.TrimSuffix(l.Last(), "\n"), ",")
	i := slices.Index(strings.Split(strings.TrimSpace(sitefile.Header), ","), column)
	if len(cells) != 13 || i < 0 {
		t.Fatalf("no whole line: %q", l.Text)
	}
	return cells[i]
}

// An amount given in packs or as a volume is written as a weight, with the material that
// was meant: the planned one, the one named, or the only one there is.
func TestLineWeighs(t *testing.T) {
	bags := "[material.liquid]\nanalysis = \"10-0-0\"\nform = \"liquid\"\ndensity = \"10 lb/gal\"\npack = \"2.5 gal\"\n\n" +
		"[material.loose]\nanalysis = \"0-0-50\"\n\n[material.starter]"
	s := site(t, append(thousand, "[material.starter]", bags)...)
	for _, c := range []struct{ job, material, amount, wantMaterial, wantAmount string }{
		{"lime/2026-1", "", "0.5 packs", "limestone", "20 lb"},
		{"lime/2026-9", "limestone", "0.5 packs", "limestone", "20 lb"},
		{"lime/2026-9", "", "20 lb", "limestone", "20 lb"}, // the only lime there is
		{"nitrogen/2026-9", "liquid", "0.5 gal", "liquid", "5 lb"},
		{"nitrogen/2026-9", "liquid", "0.2 packs", "liquid", "5 lb"},
		{"nitrogen/2026-9", "trade-urea", "1 lb", "trade-urea", "1 lb"},
		{"nitrogen/2026-9", "", "2 lb", "", ""}, // two could have been meant
		{"starter/2026-9", "", "2 lb", "starter", "2 lb"},
		{"potassium/2026-9", "loose", "1 lb", "loose", "1 lb"},
		{"gypsum/2026-9", "", "2 lb", "", ""},     // none in the shed
		{"potassium/2026-9", "loose", "", "", ""}, // nothing planned to take a share of
	} {
		d := done(t, "east/"+c.job, "2026-10-20")
		d.Material = c.material
		l := newLine(t, s, "", d, c.amount)
		what := fmt.Sprintf("%s of %q as %s", c.amount, c.material, c.job)
		if c.wantMaterial == "" {
			if want := sitefile.ShortHeader + sitefile.ShortLine(d, c.amount); l.Text != want || sitefile.ShortHeader+l.Last()+"\n" != want {
				t.Errorf("%s: %q, want it as it was given, %q", what, l.Text, want)
			}
			continue
		}
		if m, lb := cell(t, l, "material"), cell(t, l, "amount"); m != c.wantMaterial || lb != c.wantAmount {
			t.Errorf("%s: %q of %q, want %q of %q", what, lb, m, c.wantAmount, c.wantMaterial)
		}
		if of := cell(t, l, "of"); (of != "") != (c.job == "lime/2026-1") {
			t.Errorf("%s: of %q planned", what, of)
		}
	}
}

// Half of a dose and then half of it again are the whole dose, and each of the two lines
// names the dose first planned.
func TestLineOfTheRest(t *testing.T) {
	s := site(t)
	e := entry(t, plan(t, s, ""), "east/lime/2026-1")
	first := newLine(t, s, "", done(t, e.ID, "2026-09-30"), "half")
	text := sitefile.Header + first.Text
	if rest := entry(t, plan(t, s, text), e.ID); !rest.Rest {
		t.Fatalf("after half, the job is %+v", rest)
	}
	other := sitefile.WholeLine(schedule.Down{Done: done(t, "east/lime/2025-1", "2026-08-25"), AreaID: "east", Kind: schedule.Lime, Season: 2025, N: 1, Dose: e.Dose}, s, s.Area("east"))
	for _, book := range []string{text, text + other} {
		second := newLine(t, s, book, done(t, e.ID, "2026-10-01"), "")
		for _, column := range []string{"amount", "of", "material", "lime_value"} {
			if a, b := cell(t, first, column), cell(t, second, column); a != b || a == "" {
				t.Errorf("%s of the halves: %q and %q", column, a, b)
			}
		}
		if cell(t, first, "amount") != "30 lb" || cell(t, first, "of") != "60 lb" {
			t.Errorf("half of 60 lb: %q", first.Text)
		}
		if want := "It adds to line 2 about the same job"; second.Beside() != want || first.Beside() != "" {
			t.Errorf("%q, want %q; the first %q", second.Beside(), want, first.Beside())
		}
	}
}

// A line stands beside the older ones about the same job, and no others.
func TestLineBeside(t *testing.T) {
	s := site(t)
	const base = ",limestone,0-0-0,,80,10 lb,,,\n"
	for older, want := range map[string]string{
		"2026-09-23,east,lime,2026,1" + base:                                            "line 2",
		"# a remark\n2026-09-23,east,lime,2026,1" + base:                                "line 3",
		"2026-09-23,west,lime,2026,1" + base:                                            "",
		"2026-09-23,east,lime,2025,1" + base:                                            "",
		"2026-09-23,east,lime,2026,2" + base:                                            "",
		"2026-09-23,east,gypsum,2026,1,gyp,0-0-0 17S,,,10 lb,,,\n":                      "",
		"2026-09-23,east,lime,2026,1,,,,,missed,,,\n":                                   "",
		"2026-09-23,east,lime,2026,1" + base + "2026-09-24,east,lime,2026,1" + base:     "line 2 and line 3",
		"2026-09-23,east,lime,2026,1" + strings.TrimSuffix(base, "\n"):                  "line 2", // a line that was cut short
		"2026-09-23,east,soil-test,2026,1,,,,,,,,\n2026-09-24,east,lime,2026,1" + base:  "line 3",
		"2026-09-23,east,lime,2026,1" + base + "\n\n2026-09-24,east,lime,2026,1" + base: "line 2 and line 5",
	} {
		l := newLine(t, s, sitefile.Header+older, done(t, "east/lime/2026-1", "2026-09-25"), "5 lb")
		if got := book.Numbered(l.Before); got != want || (l.Beside() == "") != (want == "") {
			t.Errorf("after %q: beside %q (%q), want %q", older, got, l.Beside(), want)
		}
		at := l.Done[len(l.Done)-1].Line // of the new line
		if want := 2 + strings.Count(strings.TrimSuffix(older, "\n"), "\n") + 1; at != want {
			t.Errorf("after %q: on line %d, want %d", older, at, want)
		}
	}
}

// Where the whole of a job is on record, a share of the plan is refused, as none is left.
// An amount that went down besides can be recorded, and so can that the job was missed.
func TestLineOfAFinishedJob(t *testing.T) {
	s := site(t)
	text := sitefile.Header + newLine(t, s, "", done(t, "east/lime/2026-1", "2026-09-30"), "").Text
	p := plan(t, s, text)
	for _, amount := range []string{"", "half"} {
		l := book.NewLine(name, []byte(text), p, done(t, "east/lime/2026-1", "2026-10-01"), amount, schedule.Date{})
		if len(l.Wrong) != 1 || l.Wrong[0].Key != "amount" || l.Wrong[0].Message != "the job is on record in whole already" || !strings.Contains(l.Wrong[0].Hint, "beside it") || l.Text != "" || !slices.Equal(l.Before, []int{2}) {
			t.Errorf("%q: %+v", amount, l)
		}
	}
	if l := newLine(t, s, text, done(t, "east/lime/2026-1", "2026-10-01"), "5 lb"); cell(t, l, "amount") != "5 lb" {
		t.Errorf("beside it: %q", l.Text)
	}
	d := done(t, "east/lime/2026-1", "2026-10-01")
	d.Missed = true
	if l := newLine(t, s, text, d, ""); cell(t, l, "amount") != "missed" {
		t.Errorf("missed: %q", l.Text)
	}
}

// An id names its area; a kind alone needs one; what names none is told once, and
// there is no line.
func TestLineNamesItsArea(t *testing.T) {
	s := site(t)
	whole := newLine(t, s, "", done(t, "east/lime/2026-1", "2026-09-30"), "")
	d := done(t, "east/lime/2026-1", "2026-09-30")
	d.Area = ""
	if l := newLine(t, s, "", d, ""); l.Text != whole.Text {
		t.Errorf("without an area: %q, want %q", l.Text, whole.Text)
	}
	alone := done(t, "lime", "2026-09-30")
	alone.Area = "east"
	if l := newLine(t, s, "", alone, ""); l.Text != whole.Text {
		t.Errorf("the nearest lime: %q, want %q", l.Text, whole.Text)
	}
	for job, area := range map[string]string{"lime": "", "north/lime/2026-1": "", "east/liem": "east", "lime/2026-1": "north"} {
		d := done(t, job, "2026-09-30")
		d.Area = area
		l := book.NewLine(name, nil, plan(t, s, ""), d, "half", schedule.Date{})
		if len(l.Wrong) != 1 || l.Wrong[0].Message == "" || l.Text != "" || l.Done != nil || l.Wrong[0].File != "" {
			t.Errorf("%s in %q: %+v", job, area, l)
		}
	}
}

// Only what is wrong with the new line stops it: not an older line, and no warning.
func TestLineAmongOthers(t *testing.T) {
	s := site(t)
	p := plan(t, s, "")
	d := done(t, "east/soil-test/2026-1", "2027-03-31")
	line := "2027-03-31,east,soil-test,2026,1,,,,,,,,\n"
	for what, text := range map[string]string{
		"a bad line before": sitefile.Header + "2026-09-31,east,lime,2026,1,limestone,,,,half,,,\n",
		"a bad last line":   sitefile.Header + "2026-09-31,east,lime,2026,1,limestone,,,,half,,,",
		"the same line":     sitefile.Header + line,
	} {
		l := book.NewLine(name, []byte(text), p, d, "", schedule.Date{})
		if len(l.Wrong) != 0 || l.Text != line || len(l.Done) == 0 {
			t.Errorf("after %s: %+v", what, l)
		}
	}
	var many strings.Builder // as many days as a book may have
	many.WriteString(sitefile.Header)
	for i := range 2500 {
		day := s.Start.AddDays(1 + i)
		fmt.Fprintf(&many, "%s,east,iron,%d,1,,,,,missed,,,\n", day, day.Year)
	}
	d = done(t, "east/soil-test/2026-1", "2036-03-31")
	l := book.NewLine(name, []byte(many.String()), p, d, "", schedule.Date{})
	if len(l.Wrong) != 1 || l.Wrong[0].Line != 2502 || l.Wrong[0].File != name || l.Text != "" {
		t.Errorf("one day too many: %+v", l.Wrong)
	}
}
