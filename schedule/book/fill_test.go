package book_test

import (
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/book"
	scplan "swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

// filled is the book after [book.Fill], with the program as of the day today.
func filled(t *testing.T, s *schedule.Site, text, today string, taken bool) (out string, full, added int) {
	t.Helper()
	lines, _ := sitefile.LoadRecord(name, []byte(text), s)
	p, err := scplan.Program(s, lines, schedule.Date{})
	if err != nil {
		t.Fatal(err)
	}
	b, full, added := book.Fill([]byte(text), p.AsOf(day(t, today)), lines, taken)
	return string(b), full, added
}

// Every line of an older book is written whole, and stays on its line; remarks and
// empty lines stay as they are, and what counts for nothing becomes a remark.
func TestFill(t *testing.T) {
	s := site(t, thousand...)
	text := "\xef\xbb\xbfdate,area,job,material,amount,by,note\r\n" +
		"# what went down\n" +
		"2026-09-23,,east/lime/1,limestone,48 lb,mara,\r\n" + // replaced by the next
		"2026-09-23,,east/lime/1,limestone,30 lb,mara,\r\n" +
		"\n" +
		"  # another remark\n" +
		"2026-10-03,west,nitrogen/1,,missed,,rain\n" +
		"2026-10-04,east,soil-test,,,,\n" + // the first is the one of the report
		"2026-10-05,east,liem,,half,,\n" +
		"2026-10-06,east,gypsum,,half,,\n" + // none is planned: nobody knows how much it was
		"2026-10-07,east,starter,starter,4 lb,,"
	got, full, added := filled(t, s, text, "2026-10-10", false)
	want := []string{
		strings.TrimSpace(sitefile.Header),
		"# what went down",
		"# counts for nothing: 2026-09-23,,east/lime/1,limestone,48 lb,mara,",
		"2026-09-23,east,lime,2026,1,limestone,0-0-0,,80.28,30 lb,",
		"",
		"  # another remark",
		"2026-10-03,west,nitrogen,2026,1,,,,,missed,,,rain",
		"2026-10-04,east,soil-test,2026,2,,,,,,,,",
		"# counts for nothing: 2026-10-05,east,liem,,half,,",
		"# counts for nothing: 2026-10-06,east,gypsum,,half,,",
		"2026-10-07,east,starter,2026,1,starter,18-24-12,0.4,,4 lb,",
		"",
	}
	lines := strings.Split(got, "\n")
	for i, w := range want {
		if i >= len(lines) || !strings.HasPrefix(lines[i], w) || w == "" && lines[i] != "" {
			t.Errorf("line %d: %q, want %q", i+1, lines[min(i, len(lines)-1)], w)
		}
	}
	if len(lines) != len(want) || full != 4 || added != 0 {
		t.Errorf("%d lines, %d filled, %d added:\n%s", len(lines), full, added, got)
	}
	again, full, added := filled(t, s, got, "2026-10-10", false)
	if again != got || full != 0 || added != 0 {
		t.Errorf("once more, %d filled, %d added:\n%s", full, added, again)
	}
}

// What is filled means the same as before, and no later edit of the site file
// changes it.
func TestFillFreezes(t *testing.T) {
	text := sitefile.ShortHeader + "2026-09-30,east,lime,,half,,\n2026-10-02,east,lime/2026-1,,half,,\n2026-10-19,east,nitrogen/1,,,,\n"
	got, full, _ := filled(t, site(t), text, "2026-10-20", false)
	if n := strings.SplitN(got, "nitrogen", 2)[1]; full != 3 || strings.Count(got, ",30 lb,60 lb,") != 1 || !strings.Contains(got, ",15 lb,60 lb,") || !strings.Contains(n, ",0.4,,7.2 lb,7.2 lb,") {
		t.Fatalf("half of 60 lb, half of the other 30, and 7.2 lb as planned: %q", got)
	}
	later := site(t, "ph = 5.1", "ph = 6.0")
	again, full, _ := filled(t, later, got, "2026-10-10", false)
	if again != got || full != 0 {
		t.Errorf("with another report %q, was %q", again, got)
	}
	if other, _, _ := filled(t, later, text, "2026-10-10", false); other == got {
		t.Error("the short line means the same with both reports, so nothing is tested")
	}
}

// A job that the program takes as done is written if asked: marked as taken, with
// the dose as planned, once. A job on record, one that is missed and one whose window
// is open are not.
func TestFillTaken(t *testing.T) {
	s := site(t)
	book := sitefile.Header + "2026-09-20,west,starter,2026,1,starter,18-24-12,0.4,,1 lb,4.65 lb,,\n" +
		"2026-10-17,west,nitrogen,2026,1,,,,,missed,,,\n"
	if got, _, added := filled(t, s, book, "2027-02-01", false); added != 0 || strings.Contains(got, "taken") {
		t.Errorf("added without being asked: %q", got)
	}
	got, full, added := filled(t, s, book, "2027-02-01", true)
	p := plan(t, s, book)
	want := map[string]bool{}
	for _, e := range p.AsOf(day(t, "2027-02-01")).Entries {
		if e.State == schedule.Taken && e.ID != "west/starter/2026-1" && e.ID != "west/nitrogen/2026-1" {
			want[e.ID] = true
			lb := strings.ReplaceAll(s.Measure().Fine(e.Pounds), ",", "")
			line := strings.Join([]string{e.Date.String(), e.Area, e.Kind.String(), "2026"}, ",")
			if i := strings.Index(got, line); i < 0 || !strings.HasSuffix(strings.SplitN(got[i:], "\n", 2)[0], ","+lb+","+lb+",,taken") {
				t.Errorf("no line %s… of %s, taken, in\n%s", line, lb, got)
			}
		}
	}
	if added != len(want) || !want["east/lime/2026-1"] || !want["east/starter/2026-1"] || full != 0 || strings.Count(got, "taken") != added || !strings.HasPrefix(got, book) {
		t.Errorf("%d filled, %d added, want %v:\n%s", full, added, want, got)
	}
	if again, _, added := filled(t, s, got, "2027-02-01", true); added != 0 || again != got {
		t.Errorf("once more, %d added:\n%s", added, again)
	}
	if _, _, added := filled(t, s, book, "2026-09-12", true); added != 0 {
		t.Errorf("%d added before anything is past", added)
	}
}
