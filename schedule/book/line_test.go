package book_test

import (
	"os"
	"reflect"
	"strings"
	"testing"

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
	l, err := book.NewLine(name, []byte(text), s, d, amount)
	if err != nil || len(l.Wrong) > 0 {
		t.Fatal(err, l.Wrong)
	}
	return l
}

func plan(t *testing.T, s *schedule.Site, text string) *schedule.Program {
	t.Helper()
	lines, ps := sitefile.LoadRecord(name, []byte(text), s)
	if schedule.Fatal(ps) {
		t.Fatal(ps)
	}
	p, err := scplan.Program(s, lines)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// A line that leaves material and amount to the plan is written whole: the
// program is what the short line would make it, and the line means the same when
// the soil report changes, where the short one would mean something else.
func TestLineStandsByItself(t *testing.T) {
	for _, units := range []string{"us", "metric"} {
		for _, amount := range []string{"", "half", "30 %"} {
			change := []string{`units = "us"`, `units = "` + units + `"`}
			now, later := site(t, change...), site(t, append(change, "ph = 5.1", "ph = 5.6")...)
			d := done(t, "east/lime/1", "2026-09-23")
			l := newLine(t, now, "", d, amount)
			whole, short := sitefile.Header+l.Text, sitefile.Header+sitefile.AppendLine(d, amount)
			if !strings.Contains(l.Text, ",limestone,") || amount != "" && strings.Contains(l.Text, amount) {
				t.Fatalf("%q is written as %q", amount, l.Text)
			}
			if a, b := plan(t, now, whole), plan(t, now, short); len(schedule.Compare(a, b)) > 0 {
				t.Errorf("%s, %q: the whole line changes the program: %+v", units, amount, schedule.Compare(a, b))
			}
			dose := func(s *schedule.Site, text string) schedule.Entry {
				e, _, err := plan(t, s, text).Find("east/lime/1")
				if err != nil || e == nil {
					t.Fatal(err)
				}
				return *e
			}
			if a, b := dose(now, whole), dose(later, whole); a.Summary != b.Summary {
				t.Errorf("%s, %q: was %q, is after another report %q", units, amount, a.Summary, b.Summary)
			}
			if a, b := dose(now, short), dose(later, short); a.Summary == b.Summary {
				t.Errorf("%s, %q: the short line means %q with both reports, so nothing was tested", units, amount, a.Summary)
			}
		}
	}
}

// What was given stays as it was given.
func TestLineKeepsWhatWasGiven(t *testing.T) {
	s := site(t)
	for _, c := range []struct{ job, amount, want string }{
		{"east/lime/1", "48 lb", "2026-09-23,east,east/lime/1,limestone,48 lb,,\n"},
		{"east/soil-test/1", "", "2026-09-23,east,east/soil-test/1,,,,\n"},
		{"east/lime/9", "half", "2026-09-23,east,east/lime/9,,half,,\n"}, // none such is planned
	} {
		if l := newLine(t, s, "", done(t, c.job, "2026-09-23"), c.amount); l.Text != c.want {
			t.Errorf("got %q, want %q", l.Text, c.want)
		}
	}
	missed := done(t, "east/lime/1", "2026-09-23")
	missed.Missed = true
	if l := newLine(t, s, "", missed, ""); l.Text != "2026-09-23,east,east/lime/1,,missed,,\n" {
		t.Errorf("missed: %q", l.Text)
	}
	if l, _ := book.NewLine(name, nil, s, done(t, "east/lime/1", "2026-09-23"), "lots"); len(l.Wrong) != 1 || l.Text != "" {
		t.Errorf("an amount that is none: %+v", l)
	}
}

// A second line for a job says which it replaces, and no line else does.
func TestLineReplaces(t *testing.T) {
	s := site(t)
	text := sitefile.Header + "2026-09-19,,west/potassium/1,,missed,,\n2026-09-23,,east/lime/1,limestone,30 lb,,\n"
	for job, want := range map[string][]int{"east/lime/1": {3}, "west/potassium/1": nil, "east/potassium/1": nil} {
		l := newLine(t, s, text, done(t, job, "2026-09-24"), "half")
		if !reflect.DeepEqual(l.Replaces, want) || (l.Replaced() == "") != (want == nil) {
			t.Errorf("%s replaces %v (%q), want %v", job, l.Replaces, l.Replaced(), want)
		}
	}
}

// A book that has no room for the line says so, and there is no line.
func TestLineTooMany(t *testing.T) {
	full := sitefile.Header + strings.Repeat("2026-09-23,,east/lime/1,limestone,30 lb,,\n", 1999)
	l, err := book.NewLine(name, []byte(full), site(t), done(t, "east/lime/1", "2026-09-24"), "half")
	if err != nil || len(l.Wrong) == 0 || !strings.Contains(l.Wrong[0].Message, "more than 2000 lines") || l.Text != "" {
		t.Errorf("got %v, %+v, %q", err, l.Wrong, l.Text)
	}
}
