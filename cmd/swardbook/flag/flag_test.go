package flag

import (
	"errors"
	"strings"
	"testing"
	"time"

	"swardbook/schedule"
)

func TestParse(t *testing.T) {
	set := func() (*Set, *Output) {
		fs := New("figure lime")
		return fs, NewOutput(fs, "text", "json")
	}
	fs, out := set()
	if err := Parse(fs, []string{"-o", "x", "--format", "json", "rest"}); err != nil || out.File != "x" || out.Format != "json" || fs.Arg(0) != "rest" {
		t.Errorf("%+v, %v, %v", out, fs.Args(), err)
	}
	fs, _ = set()
	if err := Parse(fs, []string{"--help"}); !errors.Is(err, ErrHelp) {
		t.Errorf("help: %v", err)
	}
	fs, _ = set()
	err := Parse(fs, []string{"--fromat", "json"})
	if err == nil || err.Error() != "unknown flag: --fromat; see swardbook figure lime --help" || !errors.As(err, new(Misuse)) {
		t.Errorf("%v", err)
	}
}

func TestOutput(t *testing.T) {
	fs := New("x")
	out := NewOutput(fs, "text", "json")
	if err := out.Check(); err != nil || out.Format != "text" {
		t.Errorf("%+v: %v", out, err)
	}
	if out.Format = "xml"; out.Check() == nil || out.Check().Error() != `--format: "xml" is not one of text, json` {
		t.Errorf("%v", out.Check())
	}
	fs = New("y")
	if out = NewOutput(fs, "html"); out.Format != "html" || fs.Lookup("format") != nil {
		t.Error("one form needs no --format")
	}
}

// A day that is given is taken; else the clock is asked, and only then.
func TestDay(t *testing.T) {
	asked := 0
	noon := func() time.Time { asked++; return time.Date(2026, 9, 12, 12, 0, 0, 0, time.UTC) }
	for _, c := range []struct {
		words []string
		want  string
		asked int
	}{{nil, "2026-09-12", 1}, {[]string{"--today", "2027-02-03"}, "2027-02-03", 0}} {
		fs := New("x")
		today := Today(fs)
		if err := Parse(fs, c.words); err != nil {
			t.Fatal(err)
		}
		asked = 0
		if d, err := today(noon); err != nil || d.String() != c.want || asked != c.asked {
			t.Errorf("%v: %v, %v, asked %d times", c.words, d, err, asked)
		}
	}
	fs := New("x")
	date := Day(fs, "date")
	if err := Parse(fs, []string{"--date", "soon"}); err != nil {
		t.Fatal(err)
	}
	if _, err := date(noon); err == nil || !strings.HasPrefix(err.Error(), `--date: "soon" is not a date`) {
		t.Error(err)
	}
}

func TestChoice(t *testing.T) {
	site := &schedule.Site{Areas: []schedule.Area{{ID: "east"}, {ID: "west"}}}
	p := &schedule.Program{Site: site, Entries: []schedule.Entry{
		{ID: "east/lime/1", Area: "east", Kind: schedule.Lime}, {ID: "west/lime/1", Area: "west", Kind: schedule.Lime}, {ID: "west/potassium/1", Area: "west", Kind: schedule.Potassium}}}
	for _, c := range []struct {
		words, want string // the entries that are left, or what is wrong
	}{
		{"", "east/lime/1 west/lime/1 west/potassium/1"},
		{"--area west", "west/lime/1 west/potassium/1"},
		{"--kind lime", "east/lime/1 west/lime/1"},
		{"--kind lime,potassium --area west", "west/lime/1 west/potassium/1"},
		{"--area wst", `--area: unknown area "wst"; known: west`},
		{"--for mara", "--for: the site file names no person"},
		{"--kind lyme", `--kind: unknown kind "lyme"; known: soil-test, `},
	} {
		fs := New("x")
		choice := NewChoice(fs)
		if err := Parse(fs, strings.Fields(c.words)); err != nil {
			t.Fatal(err)
		}
		cut, err := choice.Apply(p)
		var got []string
		if err != nil {
			got = append(got, err.Error())
		} else {
			for i := range cut.Entries {
				got = append(got, cut.Entries[i].ID)
			}
		}
		if g := strings.Join(got, " "); g != c.want && !(err != nil && strings.HasPrefix(g, c.want)) {
			t.Errorf("%q: %q, want %q", c.words, g, c.want)
		}
	}
}
