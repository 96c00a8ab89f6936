package sitefile

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"swardbook/schedule"
)

func day(y int, m time.Month, d int) schedule.Date { return schedule.Date{Year: y, Month: m, Day: d} }

func fullSite(t testing.TB) *schedule.Site {
	t.Helper()
	s, ps := load(t, string(mustRead(t, "testdata/full.toml")))
	if s == nil {
		t.Fatal(ps)
	}
	return s
}

// What a spreadsheet makes of a record book is read like what a person types.
func TestRecord(t *testing.T) {
	text := "\xef\xbb\xbfdate,area,job,material,amount,by,note,\r\n" +
		"# what went down before\r\n" +
		"2026-08-24,east,starter,starter,1 pack,Mara,\"sown, fed\",\r\n" +
		",,,,,,,\r\n" +
		"\r\n" +
		"2026-09-19,,east/lime/1,limestone,half,,'=odd\r\n" +
		"2026-10-03,west,lime/1,,missed,,\r\n" +
		"2026-10-10,west,nitrogen,liquid,2.5 gal,tovi,\r\n" +
		"2026-10-11,west,nitrogen,trade-urea,18 kg,,\r\n" +
		"2026-10-12,west,potassium,,50 %,,\r\n" +
		"2026-10-13,west,soil-test,,,,\r\n"
	got, ps := LoadRecord("r.csv", []byte(text), fullSite(t))
	for _, p := range ps {
		t.Errorf("%v (%s)", p.Error(), p.Hint)
	}
	want := []schedule.Done{
		{Line: 3, Date: day(2026, 8, 24), Area: "east", Job: "starter", Material: "starter", Packs: 1, By: "Mara", Note: "sown, fed"},
		{Line: 6, Date: day(2026, 9, 19), Area: "east", Job: "east/lime/1", Material: "limestone", Share: 0.5, Note: "=odd"},
		{Line: 7, Date: day(2026, 10, 3), Area: "west", Job: "west/lime/1", Missed: true},
		{Line: 8, Date: day(2026, 10, 10), Area: "west", Job: "nitrogen", Material: "liquid", Volume: 2.5, By: "tovi"},
		{Line: 9, Date: day(2026, 10, 11), Area: "west", Job: "nitrogen", Material: "trade-urea", Weight: 39.6832071933},
		{Line: 10, Date: day(2026, 10, 12), Area: "west", Job: "potassium", Share: 0.5},
		{Line: 11, Date: day(2026, 10, 13), Area: "west", Job: "soil-test", Share: 1, AsPlanned: true},
	}
	if g, w := fmt.Sprintf("%+v", got), fmt.Sprintf("%+v", want); g != w {
		t.Errorf("got\n%s\nwant\n%s", strings.ReplaceAll(g, "} {", "}\n{"), strings.ReplaceAll(w, "} {", "}\n{"))
	}
}

func TestRecordProblems(t *testing.T) {
	for _, c := range []struct {
		line, column, message, hint string
	}{
		{"9/19/2026,east,lime,limestone,half,,", "date", "not a date", "2026-09-19?"},
		{"19.9.2026,east,lime,limestone,half,,", "date", "not a date", "2026-09-19?"},
		{"4/5/2026,east,lime,limestone,half,,", "date", "not a date", "2026-04-05 or 2026-05-04"},
		{"2026-02-30,east,lime,limestone,half,,", "date", "not a date", "2026-09-19"},
		{",east,lime,limestone,half,,", "date", "is missing", ""},
		{"1926-09-19,east,lime,limestone,half,,", "date", "1926", ""},
		{"2026-09-19,eats,lime,limestone,half,,", "area", "unknown area", "east"},
		{"2026-09-19,,lime,limestone,half,,", "area", "is missing", "east, west"},
		{"2026-09-19,west,east/lime/1,limestone,half,,", "area", "not the area", "empty"},
		{"2026-09-19,,north/lime/1,limestone,half,,", "area", "unknown area", "east, west"},
		{"2026-09-19,east,liem,limestone,half,,", "job", "unknown kind", "lime"},
		{"2026-09-19,east,lime/x,limestone,half,,", "job", "no season and number", ""},
		{"2026-09-19,east,a/b/c/d,limestone,half,,", "job", "no job", ""},
		{"2026-09-19,east,,limestone,half,,", "job", "is missing", ""},
		{"2026-09-19,east,last-safe,,,,", "job", "nothing to record", ""},
		{"2026-09-19,east,lime,limestnoe,half,,", "material", "unknown material", "limestone"},
		{"2026-09-19,east,lime,limestone,96,,", "amount", "not an amount", "96 lb"},
		{"2026-09-19,east,lime,limestone,some,,", "amount", "not an amount", "96 lb"},
		{"2026-09-19,east,lime,limestone,0 lb,,", "amount", "nothing went down", "missed"},
		{"2026-09-19,east,lime,limestone,-5 lb,,", "amount", "not an amount", ""},
		{"2026-09-19,east,lime,limestone,NaN lb,,", "amount", "not an amount", ""},
		{"2026-09-19,east,lime,limestone,nan packs,,", "amount", "not a number of packs", ""},
		{"2026-09-19,east,lime,limestone,150 %,,", "amount", "part of the plan", "weight"},
		{"2026-09-19,east,lime,limestone,3 gal,,", "amount", "granular", ""},
		{"2026-08-01,east,starter,starter,,,", "material", "nothing is planned", "amount"},
		{"2026-08-01,east,starter,,20 lb,,", "material", "nothing is planned", "amount"},
		{"2026-09-19,east,lime,limestone,half,,,extra", "", "after the last column", "quotes"},
		{"2026-09-19,east,lime,limestone,half,,a \"b\" c", "", "quotes", "double quotes"},
		{"2026-09-19;east;lime;limestone;half;;", "", "not parted by commas", "comma"},
		{"2026-09-19,east,lime,limestone,half,," + strings.Repeat("x", 201), "note", "201 characters", ""},
		{"2026-09-19,east,lime,limestone,half,,\"a\nb\"", "note", "line break", ""},
	} {
		got, ps := LoadRecord("r.csv", []byte(ShortHeader+"\n"+c.line+"\n"), fullSite(t))
		if len(ps) == 0 || len(got) != 0 {
			t.Errorf("%s: %d problems, %d lines kept; want a problem and no line", c.line, len(ps), len(got))
			continue
		}
		p := ps[0]
		if p.Line != 3 || p.Key != c.column || !strings.Contains(p.Message, c.message) || !strings.Contains(p.Hint, c.hint) || p.Warning {
			t.Errorf("%s:\ngot  %v (%s)\nwant line 3, %s: %s (%s)", c.line, p.Error(), p.Hint, c.column, c.message, c.hint)
		}
	}
}

func TestRecordHeaderProblems(t *testing.T) {
	for header, want := range map[string]string{
		"date,jbo,area":      "unknown column",
		"date,job,date":      "twice",
		"date,area,material": "job: the column is missing",
	} {
		_, ps := LoadRecord("r.csv", []byte(header+"\n"), nil)
		if len(ps) == 0 || !strings.Contains(ps[0].Error()+ps[len(ps)-1].Error(), want) {
			t.Errorf("%s: got %v, want %q", header, ps, want)
		}
	}
	got, ps := LoadRecord("r.csv", []byte("job,date\neast/lime/1,2026-09-19\n"), fullSite(t))
	if len(got) != 1 || len(ps) != 0 || got[0].Date != day(2026, 9, 19) {
		t.Errorf("columns by name: got %v, %v", got, ps)
	}
}

// Of two lines about a numbered job the last counts, and a warning names the other.
func TestCorrection(t *testing.T) {
	text := ShortHeader +
		"2026-09-19,,east/lime/1,limestone,96 lb,,\n" +
		"2026-09-20,east,nitrogen,starter,10 lb,,\n" +
		"2026-09-21,east,lime/1,limestone,48 lb,,only half of it\n" +
		"2026-09-20,east,nitrogen,starter,10 lb,,\n"
	got, ps := LoadRecord("r.csv", []byte(text), fullSite(t))
	if len(got) != 3 || got[1].Line != 4 || got[1].Weight != 48 {
		t.Errorf("got %+v", got)
	}
	want := []string{
		"r.csv:2: warning: job: east/lime/1 is recorded again on line 4, which counts instead",
		"r.csv:5: warning: job: the same as line 3",
	}
	if len(ps) != 2 || ps[0].Error() != want[0] || ps[1].Error() != want[1] {
		t.Errorf("got %v, want %v", ps, want)
	}
}

// A missed job is proposed again under its own id: recording it then is no
// correction, unless the days say otherwise.
func TestMissedThenDone(t *testing.T) {
	for dates, warnings := range map[[2]string]int{{"2026-09-19", "2026-09-23"}: 0, {"2026-09-23", "2026-09-19"}: 1} {
		for _, amount := range []string{"48 lb", "missed"} {
			text := ShortHeader + dates[0] + ",,east/lime/1,,missed,,\n" + dates[1] + ",,east/lime/1,," + amount + ",,\n"
			got, ps := LoadRecord("r.csv", []byte(text), fullSite(t))
			if len(got) != 1 || got[0].Line != 3 || len(ps) != warnings {
				t.Errorf("missed on %s, %s on %s: got %+v, %v", dates[0], amount, dates[1], got, ps)
			}
		}
	}
}

// What ShortLine writes, LoadRecord reads back unchanged, and no cell of it
// begins like a formula.
func TestShortLine(t *testing.T) {
	site := fullSite(t)
	for _, note := range []string{"", "half, only", `said "done"`, "=1+1", "+1", "-1", "@x", "'=x", "''=x", "'tis done", "#1", "Größe ½", "a\nb"} {
		d := schedule.Done{Date: day(2026, 9, 19), Area: "east", Job: "east/lime/1", Material: "limestone", By: note, Note: note}
		line := ShortLine(d, "96 lb")
		for cell := range strings.SplitSeq(line, ",") {
			if cell = strings.Trim(cell, "\"\n"); cell != "" && strings.Contains("=+-@", cell[:1]) {
				t.Errorf("%q begins like a formula", cell)
			}
		}
		got, ps := LoadRecord("r.csv", []byte(ShortHeader+line), site)
		want := strings.ReplaceAll(note, "\n", " ")
		if len(ps) != 0 || len(got) != 1 || got[0].Note != want || got[0].By != want || got[0].Weight != 96 {
			t.Errorf("%q: line %q came back as %+v, %v", note, line, got, ps)
		}
	}
	d := schedule.Done{Date: day(2026, 9, 19), Job: "east/lime/1", Missed: true}
	if got, want := ShortLine(d, ""), "2026-09-19,,east/lime/1,,missed,,\n"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func FuzzRecord(f *testing.F) {
	f.Add(ShortHeader + "2026-09-19,east,lime,limestone,half,,\n")
	f.Add("2026-09-19,,east/lime/1,,missed,,'=x\n\"a\n")
	f.Add("job;date\n")
	site := fullSite(f)
	f.Fuzz(func(t *testing.T, text string) {
		done, ps := LoadRecord("r.csv", []byte(text), site)
		count := 1 + strings.Count(text, "\n")
		for _, p := range ps {
			if p.Line < 0 || p.Line > count || p.Message == "" || strings.ContainsAny(p.Key+p.Message+p.Hint, "\n\r\x1b") {
				t.Errorf("%q: problem %+v", text, p)
			}
		}
		for _, d := range done {
			if d.Date.IsZero() || d.Area == "" || d.Job == "" || !d.Missed && !(float64(d.Weight)+float64(d.Volume)+d.Packs+d.Share > 0) {
				t.Errorf("%q: line %+v", text, d)
			}
			amount := "half"
			if d.Missed {
				amount = ""
			}
			again, ps := LoadRecord("r.csv", []byte(ShortLine(d, amount)), site)
			if len(again) != 1 && !schedule.Fatal(ps) || len(again) == 1 && (again[0].Note != strings.Join(strings.Fields(d.Note), " ") || again[0].Job != d.Job) {
				t.Errorf("%+v came back as %+v, %v", d, again, ps)
			}
		}
	})
}

// A book may have maxLines lines, and not one more.
func TestRecordLines(t *testing.T) {
	for n, want := range map[int]bool{maxLines: false, maxLines + 1: true} {
		_, ps := LoadRecord("x.record.csv", []byte(ShortHeader+strings.Repeat("#\n", 3)+strings.Repeat("2026-09-23,east,lime,1 lb\n", n)), nil)
		got := slices.ContainsFunc(ps, func(p schedule.Problem) bool { return strings.Contains(p.Message, "more than") })
		if got != want {
			t.Errorf("%d lines: refused %v", n, got)
		}
	}
}

// A problem that ends the reading is reported however many warnings come before it, and so
// is a job number that is higher than any season can have.
func TestRecordErrorsAmongWarnings(t *testing.T) {
	text := Header + strings.Repeat("2026-10-20,east,potassium,2026,1,blend,0-0-50,,,2 lb,,,\n", 2*maxProblems) +
		"2026-10-21,east,potassium,2026,367,blend,0-0-50,,,2 lb,,,\n"
	_, ps := LoadRecord("r.csv", []byte(text), fullSite(t))
	if !slices.ContainsFunc(ps, func(p schedule.Problem) bool { return !p.Warning && strings.Contains(p.Message, "number 367") }) {
		t.Errorf("the error is not among the %d problems told", len(ps))
	}
}

// A comma that cannot set off thousands is no decimal point either.
func TestRecordWithADecimalComma(t *testing.T) {
	for _, amount := range []string{"0,500 kg", "12,5 lb", "0,5 gal"} {
		got, ps := LoadRecord("r.csv", []byte(ShortHeader+`2026-10-10,west,nitrogen,liquid,"`+amount+`",,`+"\n"), fullSite(t))
		if len(got) != 0 || len(ps) != 1 || ps[0].Warning || !strings.Contains(ps[0].Hint, "write a point: "+strings.Replace(amount, ",", ".", 1)) {
			t.Errorf("%s: %v, %v", amount, got, ps)
		}
	}
}

// A book that would keep the planner busy for long is refused where it grew too
// long; many lines of one day are no trouble.
func TestRecordDays(t *testing.T) {
	site := fullSite(t)
	book := func(days, lines int) string {
		text := Header
		for i := range lines {
			day := site.Start.AddDays(1 + i%days)
			text += fmt.Sprintf("%s,east,potassium,%d,1,blend,0-0-50,,,%d lb,,,\n", day, day.Year, 1+i)
		}
		return text
	}
	for _, c := range []struct {
		days, lines int
		refused     bool
	}{{maxDays, maxDays, false}, {maxDays + 1, maxDays + 1, true}, {3, 3 * maxDays, false}} {
		_, ps := LoadRecord("r.csv", []byte(book(c.days, c.lines)), site)
		refused := slices.ContainsFunc(ps, func(p schedule.Problem) bool {
			return !p.Warning && strings.Contains(p.Message, fmt.Sprintf("more than %d days", maxDays))
		})
		if refused != c.refused {
			t.Errorf("%d lines on %d days: refused %v: %v", c.lines, c.days, refused, ps[:min(3, len(ps))])
		}
	}
}
