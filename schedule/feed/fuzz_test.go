package feed

import (
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"strings"
	"testing"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/sitefile"
)

func fuzzFeed(f *testing.F) (*Feed, string) {
	dir := f.TempDir()
	if err := os.WriteFile(dir+"/mill.toml", []byte(lawn), 0o666); err != nil {
		f.Fatal(err)
	}
	log := slog.New(slog.DiscardHandler)
	feed, err := New(Options{Sites: openRoot(f, dir), Base: base, Record: true, Log: log, Access: log,
		Now: func() time.Time { return changedAt }})
	if err != nil {
		f.Fatal(err)
	}
	if err := feed.Refresh(); err != nil {
		f.Fatal(err)
	}
	return feed, dir
}

// Whatever is asked, the answer is one of those that there are, with headers
// that hold no line break, and only our own files are sent.
func FuzzRoutes(f *testing.F) {
	feed, _ := fuzzFeed(f)
	for _, path := range []string{"/", "/mill", "/mill/", "/mill/program.ics", "/mill/../x", "//", "/mill/done?job=east/lime/1", "/mill/person/ines.ics", "\x00", "*"} {
		f.Add("GET", path, "gzip", `"abc"`, "Mon, 14 Sep 2026 08:00:00 GMT")
		f.Add("POST", path, "", "", "")
	}
	f.Fuzz(func(t *testing.T, method, path, coding, tag, date string) {
		q := &http.Request{Method: method, URL: &url.URL{}, Header: http.Header{}, Host: "localhost", Body: io.NopCloser(strings.NewReader(""))}
		q.URL.Path, q.URL.RawQuery, _ = strings.Cut(path, "?")
		q.Header.Set("Accept-Encoding", coding)
		q.Header.Set("If-None-Match", tag)
		q.Header.Set("If-Modified-Since", date)
		w := httptest.NewRecorder()
		feed.ServeHTTP(w, q)
		switch w.Code {
		case 200:
			if !strings.HasPrefix(path, "/mill/") && path != "/" && !strings.HasPrefix(path, "/?") {
				t.Errorf("%q: 200", path)
			}
		case 301, 304, 400, 403, 404, 405, 412, 413, 415, 422:
		default:
			t.Errorf("%q %q: %d", method, path, w.Code)
		}
		for k, values := range w.Header() {
			if strings.ContainsAny(k+strings.Join(values, ""), "\r\n\x00") {
				t.Errorf("%q: header %s %q", path, k, values)
			}
		}
	})
}

// Whatever a form says, the record book stays one that can be read, and grows
// by one line exactly when the answer is 200.
func FuzzForm(f *testing.F) {
	feed, dir := fuzzFeed(f)
	f.Add("east/lime/1", "part", "half", "2026-09-14", "ines", "note")
	f.Add("east/lime/1", "done", "", "2026-09-14", "", "=1+1")
	f.Add("west/nitrogen/1", "missed", "", "2026-09-13", "oskar", "a\nb,\"c")
	f.Add("east/lime", "done", "1e309 lb", "9999-99-99", "'", "\x00\u2028")
	site := feed.sites["mill"].proven.reading("mill").site
	bookName := dir + "/mill.record.csv"
	f.Fuzz(func(t *testing.T, job, what, amount, date, by, note string) {
		os.Remove(bookName) // each form on its own, so that the book stays small
		s := feed.sites["mill"]
		id := "fuzz"
		delete(s.recorded, id)
		form := url.Values{"id": {id}, "signed": {feed.sign(s, id)}, "job": {job}, "what": {what}, "amount": {amount}, "date": {date}, "by": {by}, "note": {note}}
		q := httptest.NewRequest("POST", "http://localhost/mill/done", strings.NewReader(form.Encode()))
		q.Header.Set("Content-Type", formKind)
		w := httptest.NewRecorder()
		feed.ServeHTTP(w, q)
		text, err := os.ReadFile(bookName)
		switch w.Code {
		case 200:
			if err != nil {
				t.Fatal(err)
			}
			rest, ok := strings.CutPrefix(string(text), sitefile.Header)
			if !ok || strings.Count(rest, "\n") != 1 || !strings.HasSuffix(rest, "\n") {
				t.Fatalf("the book is %q", text)
			}
			done, ps := sitefile.LoadRecord("book", text, site)
			if schedule.Fatal(ps) || len(done) != 1 || !sameJob(done[0].Job, job) {
				t.Fatalf("%q reads as %+v %v", text, done, ps)
			}
		case 404, 413, 422:
			if err == nil {
				t.Fatalf("%d, but recorded %q", w.Code, text)
			}
		default:
			t.Fatalf("status %d", w.Code)
		}
	})
}

// sameJob tells whether an older id and one with its season name the same job.
func sameJob(a, b string) bool {
	x, k, _, n, err := schedule.JobName(a)
	y, l, _, m, err2 := schedule.JobName(b)
	return err == nil && err2 == nil && x == y && k == l && n == m
}
