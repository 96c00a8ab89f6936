package feed

import (
	"compress/gzip"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"testing"
	"time"
)

var changedAt = time.Date(2026, 9, 14, 8, 0, 0, 0, time.UTC)

// form is a tag and the body that belongs to it.
type form struct {
	etag string
	body []byte
}

func large() *resource {
	return newResource(file{"program.ics", calendarType, []byte(strings.Repeat("SUMMARY:Lime the east lawn\r\n", 200))}, nil, changedAt, false)
}

func TestConditions(t *testing.T) {
	const tag = `"abc"`
	http1, http0 := changedAt.Format(http.TimeFormat), changedAt.Add(-time.Second).Format(http.TimeFormat)
	later := changedAt.Add(time.Hour).Format(http.TimeFormat)
	for _, c := range []struct {
		headers []string
		want    int
	}{
		{nil, 200},
		{[]string{"If-None-Match", tag}, 304},
		{[]string{"If-None-Match", `W/"abc"`}, 304},
		{[]string{"If-None-Match", "*"}, 304},
		{[]string{"If-None-Match", ` "x" , "abc"`}, 304},
		{[]string{"If-None-Match", `"x,\"abc"`}, 200},
		{[]string{"If-None-Match", `"x, ", "abc"`}, 304},
		{[]string{"If-None-Match", `"x"`, "If-None-Match", tag}, 304},
		{[]string{"If-None-Match", `"ab"`}, 200},
		{[]string{"If-None-Match", `abc`}, 200},
		{[]string{"If-None-Match", `"abc`}, 200},
		{[]string{"If-None-Match", ""}, 200},
		{[]string{"If-None-Match", `"x"`, "If-Modified-Since", later}, 200}, // the tag wins
		{[]string{"If-None-Match", tag, "If-Modified-Since", http0}, 304},
		{[]string{"If-Modified-Since", http1}, 304},
		{[]string{"If-Modified-Since", later}, 304},
		{[]string{"If-Modified-Since", http0}, 200},
		{[]string{"If-Modified-Since", "yesterday"}, 200},
		{[]string{"If-Modified-Since", "2026-09-14T08:00:00Z"}, 200},
		{[]string{"If-Modified-Since", ""}, 200},
		{[]string{"If-Modified-Since", later, "If-Modified-Since", later}, 200},
		{[]string{"If-Match", tag}, 200},
		{[]string{"If-Match", "*"}, 200},
		{[]string{"If-Match", `W/"abc"`}, 412},
		{[]string{"If-Match", `"x"`}, 412},
		{[]string{"If-Match", tag, "If-None-Match", tag}, 304},
		{[]string{"If-Match", `"x"`, "If-None-Match", tag}, 412},
		{[]string{"If-Match", tag, "If-Unmodified-Since", http0}, 200},
		{[]string{"If-Unmodified-Since", http0}, 412},
		{[]string{"If-Unmodified-Since", http1}, 200},
		{[]string{"If-Unmodified-Since", "soon"}, 200},
	} {
		h := http.Header{}
		for i := 0; i < len(c.headers); i += 2 {
			h.Add(c.headers[i], c.headers[i+1])
		}
		if got := condition(h, tag, changedAt); got != c.want {
			t.Errorf("%q: %d, want %d", c.headers, got, c.want)
		}
	}
}

func TestAcceptsGzip(t *testing.T) {
	for value, want := range map[string]bool{
		"": false, "gzip": true, "GZIP": true, "gzip, deflate, br": true, "br;q=1.0, gzip;q=0.8": true, "x-gzip": true,
		"gzip;q=0": false, "gzip;q=0.000": false, "gzip; q=0.001": true, "gzip ; Q=0": false, "*": true, "*;q=0": false,
		"identity": false, "gzip;q=0, *": false, "*, gzip;q=0": false, "deflate": false, "gzipped": false, "gzip;q=x": true, "gzip;q=.0": true,
	} {
		if got := acceptsGzip([]string{value}); got != want {
			t.Errorf("%q: %v", value, got)
		}
	}
	if acceptsGzip(nil) {
		t.Error("gzip without being asked")
	}
}

// Whatever a client sends: a 304 comes only with a reason to believe that it
// has these bytes; a 200 is whole; the tag names the bytes sent.
func TestAnswersHoldTogether(t *testing.T) {
	r := large()
	random := rand.New(rand.NewPCG(1, 2))
	tags := []string{r.tag[0], r.tag[1], "W/" + r.tag[0], `"other"`, "*", `"broken`, "", r.tag[0] + ", " + r.tag[1]}
	dates := []string{changedAt.Format(http.TimeFormat), changedAt.Add(-time.Hour).Format(http.TimeFormat), changedAt.Add(time.Hour).Format(http.TimeFormat), "never", ""}
	codings := []string{"", "gzip", "gzip;q=0", "*", "br"}
	pick := func(all []string) string { return all[random.IntN(len(all))] }
	seen := map[int]int{}
	for range 20000 {
		q := httptest.NewRequest(pick([]string{"GET", "HEAD"}), "/", nil)
		for _, name := range []string{"If-None-Match", "If-Match"} {
			if random.IntN(3) == 0 {
				q.Header.Set(name, pick(tags))
			}
		}
		for _, name := range []string{"If-Modified-Since", "If-Unmodified-Since"} {
			if random.IntN(3) == 0 {
				q.Header.Set(name, pick(dates))
			}
		}
		if c := pick(codings); c != "" {
			q.Header.Set("Accept-Encoding", c)
		}
		w := httptest.NewRecorder()
		status, sent := r.answer(w, q)
		seen[status]++
		h, what := w.Header(), fmt.Sprint(q.Method, q.Header, status)
		v := form{r.tag[0], r.body}
		if acceptsGzip(q.Header["Accept-Encoding"]) {
			v = form{r.tag[1], compress(r.body)}
		}
		tag, none := h.Get("Etag"), q.Header.Get("If-None-Match")
		held := strings.Contains(none, tag) && (tag == r.tag[0] || tag == r.tag[1]) // whichever form the client has
		if status != w.Code || tag != v.etag && status == 200 || tag != v.etag && status == 304 && !held ||
			h.Get("Vary") != "Accept-Encoding" || sent != w.Body.Len() {
			t.Fatal(what, h)
		}
		switch status {
		case 200:
			want := string(v.body)
			if q.Method == "HEAD" {
				want = ""
			}
			if w.Body.String() != want || h.Get("Content-Length") != fmt.Sprint(len(v.body)) || (h.Get("Content-Encoding") == "gzip") != (v.etag == r.tag[1]) {
				t.Fatal(what, "not whole")
			}
			if none, ok := q.Header["If-None-Match"]; ok && slices.Contains([]string{v.etag, "*"}, none[0]) {
				t.Fatal(what, "sent although the client has it")
			}
		case 304:
			_, byTag := q.Header["If-None-Match"]
			if byTag && !held && none != "*" {
				t.Fatal(what, "304 for other bytes")
			}
			if since, err := http.ParseTime(q.Header.Get("If-Modified-Since")); !byTag && (err != nil || since.Before(changedAt)) {
				t.Fatal(what, "304 without a reason")
			}
			if w.Body.Len() != 0 || h.Get("Content-Type") != "" || h.Get("Content-Length") != "" {
				t.Fatal(what, "304 with a body", h)
			}
		}
	}
	if seen[200] < 100 || seen[304] < 100 || seen[412] < 100 {
		t.Errorf("answers seen: %v", seen)
	}
}

func TestZippedIsTheSame(t *testing.T) {
	r := large()
	w := httptest.NewRecorder()
	q := httptest.NewRequest("GET", "/", nil)
	q.Header.Set("Accept-Encoding", "gzip")
	r.answer(w, q)
	z, err := gzip.NewReader(w.Body)
	if err != nil {
		t.Fatal(err)
	}
	got, err := io.ReadAll(z)
	if err != nil || string(got) != string(r.body) {
		t.Errorf("unzipped %d bytes of %d: %v", len(got), len(r.body), err)
	}
	small := newResource(file{"x", plainType, []byte("short")}, nil, changedAt, false)
	if small.zips() {
		t.Error("five bytes were compressed")
	}
}

// silent is a writer that costs nothing, for benchmarks.
type silent struct{ h http.Header }

func (s *silent) Header() http.Header         { return s.h }
func (s *silent) WriteHeader(int)             {}
func (s *silent) Write(b []byte) (int, error) { return len(b), nil }

func TestAnswerAllocatesNothing(t *testing.T) {
	r := large()
	q := httptest.NewRequest("GET", "/", nil)
	q.Header.Set("Accept-Encoding", "gzip")
	w := &silent{http.Header{}}
	if n := testing.AllocsPerRun(100, func() { r.answer(w, q) }); n > 0 {
		t.Errorf("%v allocations for an answer", n)
	}
}

func BenchmarkAnswer(b *testing.B) {
	r := large()
	for name, headers := range map[string]map[string]string{
		"200":  {},
		"gzip": {"Accept-Encoding": "gzip, deflate, br"},
		"304":  {"If-None-Match": r.tag[0]},
	} {
		b.Run(name, func(b *testing.B) {
			q := httptest.NewRequest("GET", "/", nil)
			for k, v := range headers {
				q.Header.Set(k, v)
			}
			w := &silent{http.Header{}}
			b.ReportAllocs()
			for b.Loop() {
				r.answer(w, q)
			}
		})
	}
}

// Who holds either form and asks for the other is told to keep it.
func TestEitherFormIsHeld(t *testing.T) {
	r := large()
	for _, c := range []struct{ tag, coding, want string }{
		{r.tag[1], "", r.tag[1]},
		{r.tag[0], "gzip", r.tag[0]},
		{`"x", W/` + r.tag[0], "gzip", r.tag[0]},
		{r.tag[0] + ", " + r.tag[1], "gzip", r.tag[1]},
	} {
		q := httptest.NewRequest("GET", "/", nil)
		q.Header.Set("If-None-Match", c.tag)
		q.Header.Set("Accept-Encoding", c.coding)
		w := httptest.NewRecorder()
		if status, _ := r.answer(w, q); status != 304 || w.Header().Get("Etag") != c.want {
			t.Errorf("%v: %d %s", c, status, w.Header().Get("Etag"))
		}
		q.Header.Set("If-Match", r.tag[0]+", "+r.tag[1])
		if status, _ := r.answer(httptest.NewRecorder(), q); status == 412 {
			t.Errorf("%v: 412", c)
		}
	}
}
