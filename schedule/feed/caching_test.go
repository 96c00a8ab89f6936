package feed

import (
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"net/http"
	"os"
	"strings"
	"testing"
	"time"
)

// Last-Modified is when the bytes changed, in whole seconds, and never the same for two
// that differ (RFC 9110, section 8.8.2): so says a client that knows only the date.
func TestWhenItChanged(t *testing.T) {
	at := func(hour, minute, second int) string {
		return time.Date(2026, 9, 14, hour, minute, second, 0, time.UTC).Format(http.TimeFormat)
	}
	for _, how := range []string{"with a state", "in memory"} {
		w := newWorld(t)
		w.at = w.at.Add(900 * time.Millisecond)
		if how == "in memory" {
			w.state = nil
		}
		w.put("mill.toml", lawn)
		w.start()
		changed := func(path, want string) {
			t.Helper()
			if got := w.get(path).Header.Get("Last-Modified"); got != want {
				t.Errorf("%s: %s changed %s, want %s", how, path, got, want)
			}
		}
		size := func(feet string) {
			w.put("mill.toml", strings.Replace(lawn, "2600 sq ft", feet, 1))
			w.refresh()
		}
		all := []string{"/mill/program.ics", "/mill/area/east.ics", "/mill/program.html", "/mill/program.json"}
		for _, path := range all {
			changed(path, at(8, 0, 0))
		}
		w.pass(time.Hour)
		w.refresh()
		for _, path := range all {
			changed(path, at(8, 0, 0))
		}
		size("2700 sq ft")
		for _, path := range all {
			changed(path, at(9, 0, 0))
		}
		w.pass(50 * time.Millisecond)
		size("2800 sq ft")
		for _, path := range all {
			changed(path, at(9, 0, 1))
		}
		size("2900 sq ft")
		for _, path := range all {
			changed(path, at(9, 0, 2))
		}
		w.pass(2 * time.Hour)
		size("3000 sq ft")
		for _, path := range all {
			changed(path, at(11, 0, 0))
		}
		if how == "with a state" { // the clock goes back, and the feed begins anew
			w.pass(-90 * time.Minute)
			size("3100 sq ft")
			changed("/mill/program.ics", at(11, 0, 1))
			w.start()
			changed("/mill/program.ics", at(11, 0, 1))
		}
	}
}

func TestMarks(t *testing.T) {
	one, two := file{"x", plainType, []byte("one")}, file{"x", plainType, []byte("two")}
	was := newResource(one, nil, changedAt.Add(999*time.Millisecond), false)
	for _, c := range []struct {
		what string
		f    file
		at   time.Duration
		want time.Duration
	}{
		{"the same later", one, time.Hour, 0},
		{"the same earlier", one, -time.Hour, 0},
		{"another later", two, time.Hour, time.Hour},
		{"another in the same second", two, 500 * time.Millisecond, time.Second},
		{"another a second later", two, time.Second, time.Second},
		{"another earlier", two, -time.Hour, time.Second},
	} {
		is := newResource(c.f, &was.mark, changedAt.Add(c.at), false)
		if !is.modified.Equal(changedAt.Add(c.want)) || (is.tag == was.tag) != (string(c.f.body) == "one") {
			t.Errorf("%s: %v, tags %v and %v", c.what, is.modified, is.tag, was.tag)
		}
	}
	sum := sha256.Sum256([]byte("one"))
	if want := fmt.Sprintf(`"%x"`, sum[:12]); was.tag[0] != want || was.tag[1] != want[:25]+`-gz"` {
		t.Errorf("tags %q, want %s", was.tag, want)
	}
	// The date in whole seconds, in GMT (RFC 9110, section 5.6.7), whatever the clock's zone.
	east := newResource(one, nil, time.Date(2026, 9, 14, 10, 0, 0, 999, time.FixedZone("", 2*60*60)), false)
	for _, l := range east.cached {
		if l.key == "Last-Modified" && l.values[0] != "Mon, 14 Sep 2026 08:00:00 GMT" {
			t.Error(l.values)
		}
	}
}

// What says how an answer may be kept (RFC 9111, section 5.2.2) and what it hangs on
// (RFC 9110, section 12.5.5): always ask again, nobody between keeps what is private,
// nobody at all keeps errors.
func TestKeptHow(t *testing.T) {
	const secret = "heron-under-willow-4711"
	w := newWorld(t)
	w.record = true
	w.put("mill.toml", lawn)
	w.put("quiet.toml", named("quiet")+"[calendar]\nsecret = \""+secret+"\"\n")
	w.put("bad.toml", "id = 3")
	w.start()
	for path, c := range map[string]struct {
		status             int
		cache, vary, robot string
	}{
		"/":                           {200, "no-cache", "Accept-Encoding", ""},
		"/mill/program.ics":           {200, "no-cache", "Accept-Encoding", ""},
		"/mill/":                      {200, "no-cache", "Accept-Encoding", ""},
		"/" + secret + "/program.ics": {200, "private, no-cache", "Accept-Encoding", "noindex"},
		"/" + secret + "/":            {200, "private, no-cache", "Accept-Encoding", "noindex"},
		"/mill/done":                  {200, "no-store", "", ""},
		"/mill":                       {301, "no-store", "", ""},
		"/nobody/":                    {404, "no-store", "", ""},
		"/bad/":                       {503, "no-store", "", ""},
	} {
		r := w.get(path)
		h := r.Header
		if r.StatusCode != c.status || h.Get("Cache-Control") != c.cache || h.Get("Vary") != c.vary || h.Get("X-Robots-Tag") != c.robot || h.Get("X-Content-Type-Options") != "nosniff" {
			t.Errorf("%s: %d %v", path, r.StatusCode, h)
		}
		if c.status != 200 {
			continue
		}
		// A 304 has the headers that a 200 would have had of these (RFC 9110, section 15.4.5).
		if again := w.get(path, "If-None-Match", h.Get("Etag")); c.cache != "no-store" && (again.StatusCode != 304 || again.Header.Get("Cache-Control") != c.cache ||
			again.Header.Get("Vary") != c.vary || again.Header.Get("Etag") != h.Get("Etag") || again.Header.Get("Last-Modified") != h.Get("Last-Modified")) {
			t.Errorf("%s again: %d %v", path, again.StatusCode, again.Header)
		}
	}
	for size, want := range map[int]string{1399: "", 1400: "gzip"} {
		r := newResource(file{"x", plainType, make([]byte, size)}, nil, changedAt, false)
		w := &silent{http.Header{}}
		if r.answer(w, &http.Request{Method: "GET", Header: http.Header{"Accept-Encoding": {"gzip"}}}); w.h.Get("Content-Encoding") != want || (w.h.Get("Vary") != "") != (want != "") {
			t.Errorf("%d bytes: %v", size, w.h)
		}
	}
}

// Tags in several lines and lists, whole or not (RFC 9110, sections 8.8.3 and 13.1.2),
// and codings in several lines (section 12.5.3).
func TestListsOfTags(t *testing.T) {
	const tag = `"abc"`
	for _, c := range []struct {
		lists  []string
		weak   bool
		strong bool
	}{
		{nil, false, false},
		{[]string{`"abc"`}, true, true},
		{[]string{`W/"abc"`}, true, false},
		{[]string{`w/"abc"`}, false, false},
		{[]string{`W/ "abc"`}, false, false},
		{[]string{`"x" "abc"`}, false, false},
		{[]string{`"x"	,	"abc"`}, true, true},
		{[]string{`,,"abc"`}, true, true},
		{[]string{`"x",,W/"abc",`}, true, false},
		{[]string{`"x",,"abc",`}, true, true},
		{[]string{`"x`, `"abc"`}, true, true},
		{[]string{`"x", nonsense, "abc"`}, false, false},
		{[]string{` * `}, true, true},
		{[]string{`"abc`}, false, false},
		{[]string{`"abcd"`, `"ab"`, `""`}, false, false},
		{[]string{`"`}, false, false},
		{[]string{`W/`}, false, false},
	} {
		if weak, strong := listed(c.lists, tag, true), listed(c.lists, tag, false); weak != c.weak || strong != c.strong {
			t.Errorf("%q: %v and %v", c.lists, weak, strong)
		}
	}
	for _, c := range []struct {
		values []string
		want   bool
	}{
		{[]string{"br", "gzip"}, true},
		{[]string{"br", "gzip;q=0"}, false},
		{[]string{"gzip;q=0", "gzip"}, true},
		{[]string{"*;q=0", "gzip"}, true},
		{[]string{"*", "identity"}, true},
		{[]string{"gzip;q=0.010"}, true},
		{[]string{"gzip;q=1.000"}, true},
		{[]string{"gzip;q="}, true},
		{[]string{"gzip;level=0"}, true},
		{[]string{"gzip;q=00"}, false},
		{[]string{"*;q=0.1"}, true},
	} {
		if got := acceptsGzip(c.values); got != c.want {
			t.Errorf("%q: %v", c.values, got)
		}
	}
}

// Each kind of file says what it is and may do; the style sheets of a page are named by
// their hashes (Content Security Policy Level 3, section 8.3).
func TestWhatAPageMayDo(t *testing.T) {
	hash := func(s string) string {
		sum := sha256.Sum256([]byte(s))
		return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	}
	const rest = "; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
	for html, want := range map[string]string{
		"":                   "'none'",
		"<style>a{}</style>": hash("a{}"),
		"<p><style>a{}</style><style>b{}</style></p>": hash("a{}") + " " + hash("b{}"),
		"<style>a{}":                   "'none'",
		"<style>a{}</style><style>b{}": hash("a{}"),
		"<style></style>":              hash(""),
	} {
		if got := policy([]byte(html)); got != "default-src 'none'; style-src "+want+rest {
			t.Errorf("%q: %s", html, got)
		}
	}
	for kind, want := range map[string]string{
		htmlType:     "Content-Security-Policy",
		calendarType: "",
		jsonType:     "",
		tomlType:     `Content-Disposition: attachment; filename="name"`,
		csvType:      `Content-Disposition: attachment; filename="name"`,
	} {
		all := fmt.Sprint(securityHeaders(file{"name", kind, nil}))
		if !strings.HasPrefix(all, "[[X-Content-Type-Options nosniff] [Referrer-Policy no-referrer] [Cross-Origin-Resource-Policy same-origin]") {
			t.Error(kind, all)
		}
		if name, value, _ := strings.Cut(want, ": "); !strings.Contains(all, name+" "+value) || want == "" && strings.Contains(all, "Content-") && strings.Count(all, "[") != 4 {
			t.Errorf("%s: %s, want %s", kind, all, want)
		}
	}
}

// Kept in memory are 48 MiB of bodies, each with a third for its compressed form; what
// was used of late stays longer. // common practice, no source
func TestBodiesKept(t *testing.T) {
	s, body := newSite("x"), make([]byte, 3<<20)
	var c cache
	var rs []*resource
	for i := range 30 {
		r := newResource(file{"x", plainType, body}, nil, changedAt, false)
		rs = append(rs, r)
		gone := c.add(s, fmt.Sprint(i), r)
		if want := i >= 12; len(gone) > 0 != want || len(gone) > 1 { // 12 of 4 MiB
			t.Fatalf("%d go for the one after %d", len(gone), i)
		}
		for _, b := range gone {
			if want := fmt.Sprint(i - 12); i < 20 && b.path != want {
				t.Errorf("%s goes, not %s", b.path, want)
			}
			if i > 15 && b.r == rs[15] {
				t.Errorf("the one in use goes for %d", i)
			}
		}
		if i == 19 {
			rs[15].used.Store(true)
		}
	}
	if c.ring.Len() != 12 || c.size != 48<<20 {
		t.Errorf("%d of %d bytes", c.ring.Len(), c.size)
	}
}

// In a round the files of a site are looked at once, and in the next again.
func TestLookedAtOncePerRound(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", lawn)
	w.start()
	w.page("/mill/")
	w.put("mill.toml", strings.Replace(lawn, "Oxlo green", "Weir green", 1))
	wants(t, "within the round", w.page("/mill/"), "Oxlo green")
	w.feed.comeAndGo([]string{"mill"})
	if !w.feed.sites["mill"].tryTake() {
		t.Fatal("somebody has the site")
	}
	wants(t, "while somebody has it", w.page("/mill/"), "Oxlo green")
	w.feed.sites["mill"].release()
	wants(t, "in the next", w.page("/mill/"), "Weir green")
	if w.feed.sites["mill"].unproven.Load() {
		t.Error("it was planned, and is not proven")
	}
	// A file that is gone may be being saved.
	os.Remove(w.dir + "/mill.toml")
	w.feed.comeAndGo([]string{"mill"})
	wants(t, "without a file", w.page("/mill/"), "Weir green")
}

// A thousand sites are looked at in a round beside the new ones, and all in turn.
func TestRounds(t *testing.T) {
	w := newWorld(t)
	w.begin()
	var names []string
	for i := range 2500 {
		names = append(names, fmt.Sprintf("s%04d", i))
	}
	if n := len(w.feed.comeAndGo(names)); n != 2500 {
		t.Errorf("%d new ones of 2,500", n)
	}
	for _, s := range w.feed.sites {
		s.shown.Store(&shown{prefix: s.name})
	}
	seen := map[string]int{}
	for range 5 {
		todo := w.feed.comeAndGo(names)
		if len(todo) != 1000 {
			t.Errorf("%d in a round", len(todo))
		}
		for _, s := range todo {
			seen[s.name]++
		}
	}
	for _, name := range names {
		if seen[name] != 2 {
			t.Fatalf("%s was looked at %d times in 5 rounds", name, seen[name])
		}
	}
	if n := len(w.feed.comeAndGo(append(names[:10:10], "new"))); n != 11 {
		t.Errorf("%d of eleven", n)
	}
	if n := len(w.feed.sites); n != 2501 { // missing once
		t.Errorf("%d sites", n)
	}
	w.feed.comeAndGo(names[:10])
	if n := len(w.feed.sites); n != 11 {
		t.Errorf("%d sites, after 2,490 were missing twice", n)
	}
}
