package feed

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/netip"
	"net/url"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/ask"
	"swardbook/schedule/plan"
)

// homeLawn is what a homeowner types.
var homeLawn = ask.Answers{
	{Key: "title", Value: "My lawn"}, {Key: "start", Value: "2026-09-14"}, {Key: "place.zip", Value: "44109"},
	{Key: "area.lawn.size", Value: "2200 sq ft"}, {Key: "area.lawn.grass", Value: "tall fescue"}, {Key: "area.lawn.seeded", Value: "2026-08-24"},
	{Key: "area.lawn.soil.sampled", Value: "2026-08-29"}, {Key: "area.lawn.soil.method", Value: "mehlich-3"}, {Key: "area.lawn.soil.ph", Value: "5.2"},
	{Key: "area.lawn.soil.phosphorus", Value: "14 ppm"}, {Key: "area.lawn.soil.potassium", Value: "61 ppm"},
	{Key: "material.bag1.analysis", Value: "22-2-8"}, {Key: "material.bag1.pack", Value: "36 lb"}, {Key: "material.bag1.on_hand", Value: "1"},
}

// open begins a world that asks anybody, without a folder.
func opened(t *testing.T, change ...func(*Options)) *world {
	t.Helper()
	w := newWorld(t)
	o := Options{Ask: true, Base: base, Now: w.now, Log: logTo(w), Access: logTo(w)}
	for _, c := range change {
		c(&o)
	}
	f, err := New(o)
	if err != nil {
		t.Fatal(err)
	}
	w.feed = f
	return w
}

func codeOf(t testing.TB, a ask.Answers) string {
	t.Helper()
	code, err := ask.Encode(a, ask.ID{1, 2, 3, 4, 5, 6, 7, 8})
	if err != nil {
		t.Fatal(err)
	}
	return code
}

func (w *world) send(a ask.Answers, path string, more ...string) *http.Response {
	w.t.Helper()
	var body []string
	for _, one := range asking("", "").Form(a) {
		body = append(body, url.QueryEscape(one.Key)+"="+url.QueryEscape(one.Value))
	}
	return w.ask(http.MethodPost, path, strings.Join(append(append(body, "press=program"), more...), "&"), "Content-Type", formKind)
}

func body(t testing.TB, r *http.Response) string {
	t.Helper()
	b, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// From the questions to a calendar and back, and nothing is kept or logged.
func TestAskToCalendar(t *testing.T) {
	w := opened(t)
	if r := w.ask("GET", "/ask", ""); r.StatusCode != 200 || !strings.Contains(body(t, r), `name="place.zip"`) {
		t.Fatal(r.Status)
	}
	r := w.send(homeLawn, "/ask")
	to := r.Header.Get("Location")
	if r.StatusCode != http.StatusSeeOther || !strings.HasPrefix(to, "p/") || r.Header.Get("Referrer-Policy") != "no-referrer" {
		t.Fatalf("%s to %q", r.Status, to)
	}
	code := strings.TrimPrefix(to, "p/")
	page := w.ask("GET", "/"+to, "")
	text := body(t, page)
	for _, want := range []string{"webcal://example.org/lawns/p/" + code + ".ics", "https://example.org/lawns/p/" + code + ".ics", `class="code"`,
		"carries all your answers", code + "/ask", code + "/site.toml", code + "/sheet"} {
		if !strings.Contains(text, want) {
			t.Errorf("the page does not have %s", want)
		}
	}
	for _, path := range []string{"", ".ics", "/sheet", "/site.toml", "/ask"} {
		r := w.ask("GET", "/p/"+code+path, "")
		if r.StatusCode != 200 || r.Header.Get("X-Robots-Tag") != "noindex" || r.Header.Get("Referrer-Policy") != "no-referrer" {
			t.Errorf("%s: %s %v", path, r.Status, r.Header)
		}
	}
	ics := body(t, w.ask("GET", "/p/"+code+".ics", ""))
	events := strings.Count(ics, "BEGIN:VEVENT")
	unfolded := strings.ReplaceAll(ics, "\r\n ", "")
	if events < 5 || strings.Count(unfolded, fmt.Sprintf("SEQUENCE:%d\r\n", plan.Release)) != events ||
		strings.Count(unfolded, "remove this one.") != 1 || strings.Contains(unfolded, "swardbook record") {
		t.Errorf("%d events\n%s", events, unfolded)
	}
	site := body(t, w.ask("GET", "/p/"+code+"/site.toml", ""))
	if a, ps := ask.Read([]byte(site), nil); len(ps) > 0 || a.Get("area.lawn.soil.received") != "2026-09-14" || a.Get("place.zip") != "44109" {
		t.Errorf("%v %v", a, ps)
	}
	if r := w.ask("GET", "/p/"+code+"/site.record.csv", ""); r.StatusCode != 404 {
		t.Error("a record book of nothing:", r.Status)
	}

	// The same answers stay at their address; others get another, with another id.
	answers, err := ask.Decode(code)
	if err != nil {
		t.Fatal(err)
	}
	if to := w.send(answers, "/p/"+code+"/ask").Header.Get("Location"); to != "../"+code {
		t.Errorf("the same answers go to %q", to)
	}
	other := w.send(answers.Set("area.lawn.size", "2300 sq ft"), "/p/"+code+"/ask").Header.Get("Location")
	new, was, _ := strings.Cut(strings.TrimPrefix(other, "../"), "?was=")
	b, err := ask.Decode(new)
	if err != nil || was != code || b.Get("id") == answers.Get("id") || b.Get("area.lawn.size") != "2300 sq ft" {
		t.Errorf("other answers go to %q: %v %v", other, b, err)
	}
	changed := w.ask("GET", "/p/"+new+"?was="+code, "")
	if text := body(t, changed); !strings.Contains(text, "What moved") || !strings.Contains(text, "remove the old") || changed.Header.Get("Etag") == w.ask("GET", "/p/"+new, "").Header.Get("Etag") {
		t.Error("what moved is not said")
	}
	for _, secret := range []string{code, code[10:30], answers.Get("id"), "44109", "My lawn", "/p/"} {
		if strings.Contains(w.logged(), secret) {
			t.Errorf("the log holds %q:\n%s", secret, w.logged())
		}
	}
}

// Two servers that have never heard of each other say the same, on one day and the next.
func TestTwoServers(t *testing.T) {
	code := codeOf(t, homeLawn.Set("crew.people.mo", "Mo").Set("crew.who.lawn", "mo"))
	one, two := opened(t), opened(t)
	two.pass(9 * time.Hour)
	changed := 0
	for range 3 {
		for _, path := range []string{"", ".ics", "/sheet", "/site.toml", "/person/mo.ics", "/area/lawn.ics"} {
			a, b := one.ask("GET", "/p/"+code+path, ""), two.ask("GET", "/p/"+code+path, "")
			if a.StatusCode != 200 || b.StatusCode != 200 || body(t, a) != body(t, b) || fmt.Sprint(a.Header) != fmt.Sprint(b.Header) {
				t.Errorf("%s: %s and %s, %v and %v", path, a.Status, b.Status, a.Header, b.Header)
			}
		}
		etag := one.ask("GET", "/p/"+code+".ics", "").Header.Get("Etag")
		if r := two.ask("GET", "/p/"+code+".ics", "", "If-None-Match", etag); r.StatusCode != 304 {
			t.Error("the other server does not know its tag:", r.Status)
		}
		one.pass(200 * 24 * time.Hour)
		two.pass(200 * 24 * time.Hour)
		if r := two.ask("GET", "/p/"+code+".ics", "", "If-None-Match", etag); r.StatusCode == 200 {
			changed++
		}
	}
	if changed != 3 {
		t.Errorf("a new day was asked for %d times of 3", changed)
	}
}

// No stamp lies ahead of the day on which the calendar is made, once the release is out.
func TestLinkStamps(t *testing.T) {
	w := opened(t)
	code := codeOf(t, homeLawn)
	for _, day := range []string{"2026-12-01", "2027-05-01", "2028-09-01"} {
		w.at, _ = time.Parse(time.DateOnly, day)
		r := w.ask("GET", "/p/"+code+".ics", "")
		stamps := 0
		for line := range strings.Lines(body(t, r)) {
			if s, ok := strings.CutPrefix(line, "DTSTAMP:"); ok {
				stamps++
				if s[:8] > strings.ReplaceAll(day, "-", "") || s[:8] < strings.ReplaceAll(plan.Released().String(), "-", "") {
					t.Errorf("on %s an event has %s", day, s)
				}
			}
		}
		if stamps == 0 {
			t.Errorf("on %s: %s", day, r.Status)
		}
		if m, err := http.ParseTime(r.Header.Get("Last-Modified")); err != nil || m.After(w.at) {
			t.Errorf("on %s it was changed %s", day, r.Header.Get("Last-Modified"))
		}
	}
}

// A 304 plans nothing, whoever asks and however often.
func TestLinkUnchanged(t *testing.T) {
	var plans atomic.Int32
	w := opened(t, func(o *Options) {
		o.Plan = func(s *schedule.Site, d []schedule.Done, last schedule.Date) (*schedule.Program, error) {
			plans.Add(1)
			return plan.Program(s, d, last)
		}
	})
	code := codeOf(t, homeLawn)
	r := w.ask("GET", "/p/"+code+".ics", "", "Accept-Encoding", "gzip")
	z, err := gzip.NewReader(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	if plain, err := io.ReadAll(z); err != nil || !bytes.HasPrefix(plain, []byte("BEGIN:VCALENDAR")) {
		t.Error(err)
	}
	for i := range 3 * clientBurst {
		if r := w.ask("GET", "/p/"+code+".ics", "", "If-None-Match", r.Header.Get("Etag")); r.StatusCode != 304 || body(t, r) != "" {
			t.Fatalf("request %d: %s", i, r.Status)
		}
	}
	if plans.Load() != 1 {
		t.Errorf("planned %d times", plans.Load())
	}
}

// Whoever asks too often waits, by the address that counts.
func TestLinkOften(t *testing.T) {
	code := codeOf(t, homeLawn)
	for name, c := range map[string]struct {
		trust   string
		headers func(i int) []string
		refused bool
	}{
		"one address":                      {"", func(int) []string { return nil }, true},
		"a header that nobody vouches for": {"", func(i int) []string { return []string{"X-Forwarded-For", fmt.Sprintf("198.51.100.%d", i%200)} }, true},
		"many behind a trusted proxy": {"192.0.2.0/24", func(i int) []string {
			return []string{"X-Forwarded-For", fmt.Sprintf("203.0.113.9, 198.51.100.%d", i%200)}
		}, false},
		"one who says to be many behind it": {"192.0.2.0/24", func(i int) []string {
			return []string{"X-Forwarded-For", fmt.Sprintf("198.51.100.%d, 203.0.113.9", i%200)}
		}, true},
		"one network of IPv6": {"192.0.2.0/24", func(i int) []string { return []string{"X-Forwarded-For", fmt.Sprintf("2001:db8:1:2::%x", i)} }, true},
	} {
		w := opened(t, func(o *Options) {
			if c.trust != "" {
				o.Trust = []netip.Prefix{netip.MustParsePrefix(c.trust)}
			}
		})
		refused := 0
		for i := range 2 * clientBurst {
			r := w.ask("GET", "/p/"+code+"/site.toml", "", c.headers(i)...)
			if r.StatusCode == http.StatusTooManyRequests && r.Header.Get("Retry-After") != "" {
				refused++
			} else if r.StatusCode != 200 {
				t.Fatal(name, r.Status)
			}
		}
		if want := map[bool]int{true: clientBurst, false: 0}[c.refused]; refused != want {
			t.Errorf("%s: %d of %d refused, not %d", name, refused, 2*clientBurst, want)
		}
		w.pass(time.Minute)
		if r := w.ask("GET", "/p/"+code+"/site.toml", "", c.headers(1)...); r.StatusCode != 200 {
			t.Errorf("%s: a minute later: %s", name, r.Status)
		}
	}
}

// What takes long is counted as more, and so many addresses are remembered.
func TestClients(t *testing.T) {
	var c clients
	now := time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC)
	who := netip.MustParsePrefix("192.0.2.1/32")
	n := 0
	for c.take(who, now) {
		c.took(who, time.Second)
		n++
	}
	if n < 3 || n > 10 {
		t.Errorf("%d of a second each at once", n)
	}
	for i := range 3 * mostClients {
		c.take(netip.PrefixFrom(netip.AddrFrom4([4]byte{10, byte(i >> 16), byte(i >> 8), byte(i)}), 32), now)
	}
	if len(c.whole) > mostClients {
		t.Errorf("%d addresses are remembered", len(c.whole))
	}
}

// As many programs as there are processors are worked out at once; who waits too long is
// sent away, and those of the folder and what is unchanged are answered all the same.
func TestLinksBusy(t *testing.T) {
	hold := make(chan struct{})
	var once sync.Once
	free := func() { once.Do(func() { close(hold) }) }
	var running, most atomic.Int32
	w := opened(t, func(o *Options) {
		o.Plan = func(s *schedule.Site, d []schedule.Done, last schedule.Date) (*schedule.Program, error) {
			n := running.Add(1)
			for m := most.Load(); n > m && !most.CompareAndSwap(m, n); m = most.Load() {
			}
			defer running.Add(-1)
			<-hold
			return plan.Program(s, d, last)
		}
	})
	defer free()
	code := codeOf(t, homeLawn)
	places := cap(w.feed.linkTurns)
	var wait sync.WaitGroup
	for range places {
		wait.Go(func() {
			if r := w.ask("GET", "/p/"+code, ""); r.StatusCode != 200 {
				t.Error("of the first:", r.Status)
			}
		})
	}
	for running.Load() < int32(places) {
		time.Sleep(time.Millisecond)
	}
	if r := w.ask("GET", "/p/"+code, ""); r.StatusCode != 503 || r.Header.Get("Retry-After") == "" {
		t.Error("without a place:", r.Status)
	}
	tag := w.feed.linkMark(code, calendarFile, "", w.now()).bare(true).tags[plainForm][0]
	if r := w.ask("GET", "/p/"+code+".ics", "", "If-None-Match", tag); r.StatusCode != 304 {
		t.Error("unchanged:", r.Status)
	}
	if r := w.ask("GET", "/ask", ""); r.StatusCode != 200 {
		t.Error("the questions:", r.Status)
	}
	free()
	wait.Wait()
	if int(most.Load()) != places {
		t.Errorf("%d were worked out at once, with %d places", most.Load(), places)
	}
}

// A panic on what a link says is that request's alone.
func TestLinkFault(t *testing.T) {
	w := opened(t, func(o *Options) {
		o.Plan = func(*schedule.Site, []schedule.Done, schedule.Date) (*schedule.Program, error) { panic("planted") }
	})
	code := codeOf(t, homeLawn)
	for range 2 * cap(w.feed.linkTurns) {
		if r := w.ask("GET", "/p/"+code, ""); r.StatusCode != 500 {
			t.Error(r.Status)
		}
	}
	if !strings.Contains(w.logged(), "planted") || strings.Contains(w.logged(), code) {
		t.Error(w.logged())
	}
}

func TestLinkPaths(t *testing.T) {
	w := opened(t)
	code := codeOf(t, homeLawn)
	for path, want := range map[string]int{
		"/p": 404, "/p/": 404, "/p/.ics": 404, "/p/x": 404, "/p/x.ics": 404, "/p/" + code[:20] + ".ics": 404, "/p/" + code + "x": 404,
		"/p/" + code + "/": 404, "/p/" + code + "/program.json": 404, "/p/" + code + "/person/mo.ics": 404, "/p/" + code + "/area/../lawn.ics": 404,
		"/p/" + code + "/area/lawn.ics": 200, "/p/" + code + "//sheet": 404, "/p/../ask": 404, "/ask/": 404, "/p/" + strings.Repeat("A", 1600): 404,
	} {
		if r := w.ask("GET", path, ""); r.StatusCode != want {
			t.Errorf("%s: %s, not %d", path, r.Status, want)
		}
	}
	for _, path := range []string{"/p/" + code, "/p/" + code + ".ics", "/p/" + code + "/sheet"} {
		if r := w.ask("POST", path, ""); r.StatusCode != 405 || r.Header.Get("Allow") != "GET, HEAD" {
			t.Errorf("POST %s: %s", path, r.Status)
		}
		if r := w.ask("HEAD", path, ""); r.StatusCode != 200 || body(t, r) != "" || r.Header.Get("Content-Length") == "" {
			t.Errorf("HEAD %s: %s", path, r.Status)
		}
	}
	if r := w.ask("DELETE", "/ask", ""); r.StatusCode != 405 {
		t.Error(r.Status)
	}
	closed := newWorld(t)
	closed.start()
	for _, path := range []string{"/ask", "/p/" + code, "/p/" + code + ".ics"} {
		if r := closed.ask("GET", path, ""); r.StatusCode != 404 {
			t.Errorf("without --ask %s: %s", path, r.Status)
		}
	}
}

// BenchmarkLink is a link's calendar, and the same once it is known.
func BenchmarkLink(b *testing.B) {
	f, err := New(Options{Ask: true, Base: base, Now: time.Now})
	if err != nil {
		b.Fatal(err)
	}
	code := codeOf(b, homeLawn)
	for _, c := range []struct{ name, path string }{{"calendar", ".ics"}, {"page", ""}, {"sheet", "/sheet"}} {
		q := httptest.NewRequest("GET", "/p/"+code+c.path, nil)
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				f.clients.whole = nil
				w := httptest.NewRecorder()
				if f.ServeHTTP(w, q); w.Code != 200 {
					b.Fatal(w.Code)
				}
			}
		})
		w := httptest.NewRecorder()
		f.ServeHTTP(w, q)
		again := q.Clone(b.Context())
		again.Header.Set("If-None-Match", w.Header().Get("Etag"))
		b.Run(c.name+" unchanged", func(b *testing.B) {
			for b.Loop() {
				w := httptest.NewRecorder()
				if f.ServeHTTP(w, again); w.Code != 304 {
					b.Fatal(w.Code)
				}
			}
		})
	}
}

func logTo(w *world) *slog.Logger { return slog.New(slog.NewTextHandler(w, nil)) }
