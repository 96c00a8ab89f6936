package feed

import (
	"fmt"
	"maps"
	"net/http"
	"net/url"
	"os"
	"regexp"
	"strings"
	"sync"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/sitefile"
)

const formKind = "application/x-www-form-urlencoded"

var hidden = regexp.MustCompile(`name="(id|signed|job)" value="([^"]*)"`)

// recording is a world with one site in which jobs can be recorded.
func recording(t *testing.T) *world {
	w := newWorld(t)
	w.record = true
	w.put("mill.toml", lawn)
	w.start()
	return w
}

// open gets a form and gives what it would send unchanged.
func (w *world) open(job string) url.Values {
	w.t.Helper()
	v := url.Values{"what": {"done"}, "date": {"2026-09-14"}}
	for _, m := range hidden.FindAllStringSubmatch(w.page("/mill/done?job="+url.QueryEscape(job)), -1) {
		v.Set(m[1], m[2])
	}
	if v.Get("id") == "" || v.Get("signed") == "" || v.Get("job") != job {
		w.t.Fatalf("form for %s holds %v", job, v)
	}
	return v
}

func (w *world) post(v url.Values, headers ...string) *http.Response {
	return w.ask(http.MethodPost, "/mill/done", v.Encode(), append([]string{"Content-Type", formKind}, headers...)...)
}

func (w *world) book() string {
	b, err := os.ReadFile(w.dir + "/mill.record.csv")
	if err != nil {
		return ""
	}
	return string(b)
}

func with(v url.Values, key, value string) url.Values {
	v = maps.Clone(v)
	v[key] = []string{value}
	return v
}

func TestRecordThroughTheForm(t *testing.T) {
	w := recording(t)
	wants(t, "the landing page", w.page("/mill/"), `href="done?job=east%2Fnitrogen%2F2026-1"`)
	calendar := w.page("/mill/program.ics")
	wants(t, "the calendar", strings.ReplaceAll(calendar, "\r\n ", ""), "https://example.org/lawns/mill/done?job=east%2Flime%2F2026-1")
	wants(t, "the choice of jobs", w.page("/mill/done"), "done?job=east%2Flime%2F2026-1")
	form := w.page("/mill/done?job=east%2Flime%2F2026-1")
	wants(t, "the form", form, `value="2026-09-14"`, `<option value="ines" selected>Ines`)

	v := with(with(w.open("east/lime/2026-1"), "what", "part"), "amount", "half")
	v.Set("by", "ines")
	v.Set("note", "=ran out,\n\"really\"")
	r := w.post(v, "Sec-Fetch-Site", "same-origin")
	page := bodyOf(t, r)
	if r.StatusCode != 200 || r.Header.Get("Cache-Control") != "no-store" {
		t.Fatalf("status %d: %s", r.StatusCode, page)
	}
	wants(t, "the confirmation", page, "2026-09-14,east,lime,2026,1,limestone,0-0-0,,85,62.5 lb,125 lb,ines,", "What changes in the program", "east/lime/2026-1")
	want := sitefile.Header + "2026-09-14,east,lime,2026,1,limestone,0-0-0,,85,62.5 lb,125 lb,ines,\"'=ran out, \"\"really\"\"\"\n"
	if w.book() != want {
		t.Errorf("book %q, want %q", w.book(), want)
	}
	if w.page("/mill/program.ics") == calendar {
		t.Error("the calendar did not move")
	}
	wants(t, "the JSON", w.page("/mill/program.json"), `"rest":true`)

	// The same form again, as a nervous finger sends it.
	if again := bodyOf(t, w.post(v)); again != page {
		t.Errorf("the second answer differs: %s", again)
	}
	if w.book() != want {
		t.Errorf("the same form was recorded twice: %q", w.book())
	}
	lacks(t, "the log", w.logged(), v.Get("signed"), v.Get("id"))

	// Another form for the same job brings the rest, and says so.
	wants(t, "the second record", bodyOf(t, w.post(w.open("east/lime/2026-1"))), "It adds to line 2 about the same job")
	wants(t, "the JSON", w.page("/mill/program.json"), `"state":"done"`)
	wants(t, "a third", bodyOf(t, w.post(w.open("east/lime/2026-1"))), "on record in whole already")
	wants(t, "a slip", bodyOf(t, w.post(with(w.open("east/nitrogen/2026-1"), "amount", "90 lb"))), "times what is planned", "The line would read: ", ",90 lb,", `name="sure"`)
	wants(t, "a slip that is meant", bodyOf(t, w.post(with(with(w.open("east/nitrogen/2026-1"), "amount", "90 lb"), "sure", "yes"))), ",90 lb,")
}

func TestMissedJob(t *testing.T) {
	w := recording(t)
	if r := w.post(with(w.open("east/lime/2026-1"), "what", "missed")); r.StatusCode != 200 {
		t.Fatal(r.StatusCode)
	}
	wants(t, "the book", w.book(), "2026-09-14,east,lime,2026,1,,,,,missed,,,\n")
}

func TestFormsThatCannotBe(t *testing.T) {
	w := recording(t)
	good := w.open("east/lime/2026-1")
	for _, c := range []struct {
		form url.Values
		want string
	}{
		{with(good, "what", ""), "done in part, or missed"},
		{with(good, "what", "part"), "Say how much"},
		{with(with(good, "what", "missed"), "amount", "40 lb"), "A missed job has no amount"},
		{with(good, "amount", "a lot"), "mount"},
		{with(good, "amount", "-40 lb"), "mount"},
		{with(good, "amount", strings.Repeat("9", 200)), "mount"},
		{with(good, "date", "14.9."), "cannot be read"},
		{with(good, "date", "2026-09-15"), "still to come"},
		{with(good, "by", "<b>"), "knows nobody"},
		{with(good, "note", strings.Repeat("x", 400)), "ote"},
		{with(good, "note", "a\x00b"), "The note holds a NUL character"},
	} {
		r := w.post(c.form)
		page := bodyOf(t, r)
		if r.StatusCode != http.StatusUnprocessableEntity || !strings.Contains(page, c.want) {
			t.Errorf("%v: %d, want %q in %.1200s", c.form, r.StatusCode, c.want, page[strings.Index(page, "<body>"):])
		}
		lacks(t, "the page", page, "<b>x", `"<b>"`)
	}
	if r := w.post(with(good, "job", "east/lime/99")); r.StatusCode != http.StatusNotFound {
		t.Errorf("unknown job: %d", r.StatusCode)
	}
	if r := w.get("/mill/done?job=site/last-safe/1"); r.StatusCode != http.StatusNotFound {
		t.Errorf("a notice: %d", r.StatusCode)
	}
	if w.book() != "" {
		t.Errorf("recorded %q", w.book())
	}
	if r := w.post(good); r.StatusCode != 200 {
		t.Errorf("the form mended: %d", r.StatusCode)
	}
}

func TestFormsFromElsewhere(t *testing.T) {
	w := recording(t)
	w.put("other.toml", strings.Replace(lawn, "oxlo-green-4h2k", "other-9999", 1))
	w.refresh()
	good := w.open("east/lime/2026-1")
	for _, c := range []struct {
		form    url.Values
		headers []string
		want    int
	}{
		{good, []string{"Sec-Fetch-Site", "cross-site"}, 403},
		{good, []string{"Sec-Fetch-Site", "same-site"}, 403},
		{good, []string{"Origin", "https://evil.example"}, 403},
		{good, []string{"Origin", "null"}, 403},
		{good, []string{"Host", "rebound.example"}, 403},
		{with(good, "signed", ""), nil, 403},
		{with(good, "signed", strings.Repeat("A", 43)), nil, 403},
		{with(good, "id", "another"), nil, 403},
		{with(good, "note", strings.Repeat("x", mostForm)), nil, 413},
	} {
		if r := w.post(c.form, c.headers...); r.StatusCode != c.want {
			t.Errorf("%v: %d, want %d", c.headers, r.StatusCode, c.want)
		}
	}
	if r := w.ask("POST", "/mill/done", good.Encode(), "Content-Type", "text/plain"); r.StatusCode != 415 {
		t.Errorf("text/plain: %d", r.StatusCode)
	}
	if r := w.ask("POST", "/mill/done?"+good.Encode(), "", "Content-Type", formKind); r.StatusCode != 403 {
		t.Errorf("all in the address: %d", r.StatusCode)
	}
	if r := w.ask("POST", "/mill/done", "a=%zz", "Content-Type", formKind); r.StatusCode != 400 {
		t.Errorf("no form: %d", r.StatusCode)
	}
	if r := w.ask("POST", "/other/done", good.Encode(), "Content-Type", formKind); r.StatusCode != 403 {
		t.Errorf("the form of another site: %d", r.StatusCode)
	}
	if r := w.ask("DELETE", "/mill/done", ""); r.StatusCode != 405 || r.Header.Get("Allow") != "GET, HEAD, POST" {
		t.Errorf("DELETE: %d %q", r.StatusCode, r.Header.Get("Allow"))
	}
	w.start() // again: forms of the run before are void
	if r := w.post(good); r.StatusCode != 403 {
		t.Errorf("a form of the run before: %d", r.StatusCode)
	}
	if w.book() != "" {
		t.Errorf("recorded %q", w.book())
	}
	for _, host := range []string{"example.org", "127.0.0.1:8080", "[::1]:8080", "[::1]", "localhost:1", "192.0.2.7"} {
		if r := w.get("/mill/done", "Host", host); r.StatusCode != 200 {
			t.Errorf("host %s: %d", host, r.StatusCode)
		}
	}
	if r := w.post(w.open("east/lime/2026-1"), "Origin", "https://example.org"); r.StatusCode != 200 {
		t.Errorf("from the public address: %d", r.StatusCode)
	}
}

// Fifty people at once, every form sent twice: fifty lines, none lost, none
// double.
func TestFiftyRecordersAtOnce(t *testing.T) {
	w := newWorld(t)
	w.record, w.state = true, nil
	w.put("mill.toml", lawn)
	w.start()
	var all sync.WaitGroup
	for i := range 50 {
		v := with(with(w.open("east/lime/2026-1"), "note", fmt.Sprint("from ", i)), "amount", "2 lb")
		for range 2 {
			all.Go(func() {
				if r := w.post(v); r.StatusCode != 200 {
					t.Errorf("%d: status %d", i, r.StatusCode)
				}
			})
		}
	}
	all.Wait()
	lines := strings.Split(strings.TrimSpace(w.book()), "\n")
	if len(lines) != 51 || lines[0]+"\n" != sitefile.Header {
		t.Errorf("%d lines", len(lines))
	}
	for i := range 50 {
		if n := strings.Count(w.book(), fmt.Sprintf(",from %d\n", i)); n != 1 {
			t.Errorf("recorder %d: %d lines", i, n)
		}
	}
}

func TestNothingIsRecordedOnTopOfErrors(t *testing.T) {
	w := recording(t)
	v := w.open("east/lime/2026-1")
	w.put("mill.record.csv", sitefile.ShortHeader+"nonsense,,,,,,\n")
	r := w.post(v)
	if r.StatusCode != http.StatusConflict {
		t.Errorf("status %d", r.StatusCode)
	}
	if w.book() != sitefile.ShortHeader+"nonsense,,,,,,\n" {
		t.Errorf("the book is now %q", w.book())
	}
	w.put("mill.record.csv", sitefile.ShortHeader+"2026-09-13,east,east/lime/1,,half,,torn") // no line end
	if r := w.post(v); r.StatusCode != 200 {
		t.Errorf("after mending: %d", r.StatusCode)
	}
	wants(t, "the book", w.book(), ",torn\n"+sitefile.Header+"2026-09-14,east,lime,2026,1,limestone,0-0-0,,85,62.5 lb,125 lb,,\n")
}

func TestChangesAreNamed(t *testing.T) {
	p := func(d int) *schedule.Program {
		return &schedule.Program{Entries: []schedule.Entry{{ID: "east/lime/1", Title: "Lime east", Date: schedule.Date{Year: 2026, Month: 9, Day: d}}}}
	}
	o := outcomeOf("line\n", p(1), p(3))
	if o.Line != "line" || o.Tally != "1 moved" || len(o.Changes) != 1 || o.Changes[0].Job != "Lime east" || o.Changes[0].What != "moved" {
		t.Errorf("%+v", o)
	}
	if o := outcomeOf("line\n", p(1), p(1)); o.Tally != "" || o.Changes != nil {
		t.Errorf("%+v", o)
	}
}
