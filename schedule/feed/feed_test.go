package feed

import (
	"bytes"
	"io"
	"io/fs"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"swardbook/schedule"

	_ "embed"
)

//go:embed testdata/lawn.toml
var lawn string

const base = "https://example.org/lawns"

// world is a folder of sites with a feed over it, and a clock that the test
// sets.
type world struct {
	t           *testing.T
	dir         string
	root, state *os.Root
	feed        *Feed
	record      bool
	plan        schedule.Planner
	turn        time.Duration

	mu  sync.Mutex
	at  time.Time
	log bytes.Buffer
}

func (w *world) now() time.Time {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.at
}

func (w *world) pass(d time.Duration) {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.at = w.at.Add(d)
}

// Write makes the world the place where its log goes.
func (w *world) Write(b []byte) (int, error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.log.Write(b)
}

func (w *world) logged() string {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.log.String()
}

// newWorld makes the folder; start starts the feed.
func newWorld(t *testing.T) *world {
	t.Helper()
	w := &world{t: t, dir: t.TempDir(), at: time.Date(2026, 9, 14, 8, 0, 0, 0, time.UTC)}
	w.root, w.state = openRoot(t, w.dir), openRoot(t, t.TempDir())
	return w
}

func openRoot(t testing.TB, dir string) *os.Root {
	t.Helper()
	r, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	return r
}

func (w *world) put(name, text string) {
	w.t.Helper()
	if err := os.WriteFile(filepath.Join(w.dir, name), []byte(text), 0o666); err != nil {
		w.t.Fatal(err)
	}
}

func (w *world) start() {
	w.t.Helper()
	w.begin()
	w.refresh()
}

// begin makes the feed without looking at the sites.
func (w *world) begin() {
	w.t.Helper()
	log := slog.New(slog.NewTextHandler(w, nil))
	f, err := New(Options{Sites: w.root, State: w.state, Base: base, Plan: w.plan, Turn: w.turn, Record: w.record, Now: w.now, Log: log, Access: log})
	if err != nil {
		w.t.Fatal(err)
	}
	w.feed = f
}

func (w *world) refresh() {
	w.t.Helper()
	if err := w.feed.Refresh(); err != nil {
		w.t.Fatal(err)
	}
}

// ask sends a request; headers come in pairs.
func (w *world) ask(method, path, body string, headers ...string) *http.Response {
	q := httptest.NewRequest(method, "http://example.org/", strings.NewReader(body))
	q.URL.Path, q.URL.RawQuery, _ = strings.Cut(path, "?")
	for i := 0; i+1 < len(headers); i += 2 {
		if headers[i] == "Host" {
			q.Host = headers[i+1]
			continue
		}
		q.Header.Add(headers[i], headers[i+1])
	}
	r := httptest.NewRecorder()
	w.feed.ServeHTTP(r, q)
	return r.Result()
}

func (w *world) get(path string, headers ...string) *http.Response {
	return w.ask(http.MethodGet, path, "", headers...)
}

func bodyOf(t *testing.T, r *http.Response) string {
	t.Helper()
	b, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// page gets a page that must be there.
func (w *world) page(path string) string {
	w.t.Helper()
	r := w.get(path)
	if r.StatusCode != http.StatusOK {
		w.t.Fatalf("%s: status %d", path, r.StatusCode)
	}
	return bodyOf(w.t, r)
}

func wants(t *testing.T, what, text string, parts ...string) {
	t.Helper()
	for _, p := range parts {
		if !strings.Contains(text, p) {
			t.Errorf("%s lacks %q:\n%.1500s", what, p, text)
		}
	}
}

func lacks(t *testing.T, what, text string, parts ...string) {
	t.Helper()
	for _, p := range parts {
		if strings.Contains(text, p) {
			t.Errorf("%s holds %q", what, p)
		}
	}
}

func TestTree(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", lawn)
	w.start()
	for path, kind := range map[string]string{
		"/":                      "text/html; charset=utf-8",
		"/mill/":                 "text/html; charset=utf-8",
		"/mill/program.html":     "text/html; charset=utf-8",
		"/mill/program.ics":      "text/calendar; charset=utf-8",
		"/mill/program.json":     "application/json",
		"/mill/person/ines.ics":  "text/calendar; charset=utf-8",
		"/mill/person/oskar.ics": "text/calendar; charset=utf-8",
		"/mill/area/east.ics":    "text/calendar; charset=utf-8",
		"/mill/area/west.ics":    "text/calendar; charset=utf-8",
	} {
		r := w.get(path)
		body := bodyOf(t, r)
		h := r.Header
		if r.StatusCode != 200 || h.Get("Content-Type") != kind || len(body) < 100 {
			t.Errorf("%s: %d %q, %d bytes", path, r.StatusCode, h.Get("Content-Type"), len(body))
		}
		if h.Get("X-Content-Type-Options") != "nosniff" || h.Get("Referrer-Policy") != "no-referrer" || h.Get("Etag") == "" || h.Get("Last-Modified") == "" {
			t.Errorf("%s: headers %v", path, h)
		}
		if csp := h.Get("Content-Security-Policy"); kind == htmlType && !strings.Contains(csp, "default-src 'none'; style-src 'sha256-") {
			t.Errorf("%s: policy %q", path, csp)
		}
		head := w.ask(http.MethodHead, path, "")
		if got := bodyOf(t, head); got != "" || head.StatusCode != 200 || head.Header.Get("Content-Length") != h.Get("Content-Length") ||
			head.Header.Get("Etag") != h.Get("Etag") {
			t.Errorf("HEAD %s: %d, %d bytes, %v", path, head.StatusCode, len(got), head.Header)
		}
		for _, m := range []string{"POST", "PUT", "DELETE", "OPTIONS", "BREW"} {
			if r := w.ask(m, path, ""); r.StatusCode != http.StatusMethodNotAllowed || r.Header.Get("Allow") != "GET, HEAD" {
				t.Errorf("%s %s: %d, Allow %q", m, path, r.StatusCode, r.Header.Get("Allow"))
			}
		}
	}
	land := w.page("/mill/")
	wants(t, "the landing page", land, "<h1>Oxlo green</h1>", "next, ", "webcal://example.org/lawns/mill/program.ics",
		"https://example.org/lawns/mill/program.ics", "person/ines.ics", "East &lt;lawn&gt;", `aria-label="QR code`, "program.json", "Remove Alerts")
	lacks(t, "the landing page", land, "East <lawn>", "ZgotmplZ", "done?job", "<script")
	wants(t, "the index", w.page("/"), `<a href="mill/">Oxlo green</a>`)
	if r := w.get("/mill"); r.StatusCode != 301 || r.Header.Get("Location") != "./mill/" {
		t.Errorf("/mill: %d to %q", r.StatusCode, r.Header.Get("Location"))
	}
}

func TestNoOtherPaths(t *testing.T) {
	w := newWorld(t)
	w.put("mill.toml", lawn)
	w.put("mill.record.csv", "date,area,job,material,amount,by,note\n")
	w.put("notes.txt", "mine")
	w.put(".hidden.toml", lawn)
	secretFile := filepath.Join(t.TempDir(), "elsewhere.toml")
	if err := os.WriteFile(secretFile, []byte(lawn), 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(secretFile, filepath.Join(w.dir, "link.toml")); err != nil {
		t.Fatal(err)
	}
	w.start()
	for _, path := range []string{"", "*", "//", "//mill/", "/mill//", "/mill/../mill/", "/./mill/", "/mill/.", "/mill/..", "/mill/index.html",
		"/mill.toml", "/mill/mill.toml", "/mill.record.csv", "/notes.txt", "/.hidden/", "/.hidden.toml", "/link/", "/link/program.ics",
		"/mill/person/", "/mill/person/nobody.ics", "/mill/person/../program.ics", "/mill/area/east", "/MILL/", "/mill/program.ics/",
		"/mill\x00/", "/mill/program.ics\x00", "/..%2fmill", `/mill\program.ics`, "/mill/done", "/calendars/mill/program.ics"} {
		if r := w.get(path); r.StatusCode != http.StatusNotFound {
			t.Errorf("%q: %d", path, r.StatusCode)
		}
	}
	lacks(t, "the index", w.page("/"), `href="hidden`, `href=".hidden`, `href="link`)
	wants(t, "the log", w.logged(), "site=link")
}

func TestSecret(t *testing.T) {
	const secret = "heron-under-willow-4711"
	w := newWorld(t)
	w.record = true
	w.put("mill.toml", lawn)
	w.put("quiet.toml", strings.Replace(lawn, `title = "Oxlo green"`, `title = "Quiet corner"`, 1)+"[calendar]\nsecret = \""+secret+"\"\n")
	w.start()
	lacks(t, "the index", w.page("/"), "Quiet", "quiet", secret)
	for _, path := range []string{"/quiet/", "/quiet/program.ics", "/quiet", "/quiet/done", "/" + secret[:22] + "/"} {
		if r := w.get(path); r.StatusCode != http.StatusNotFound {
			t.Errorf("%s: %d", path, r.StatusCode)
		}
	}
	r := w.get("/" + secret + "/program.ics")
	if r.StatusCode != 200 || r.Header.Get("Cache-Control") != "private, no-cache" || r.Header.Get("X-Robots-Tag") != "noindex" {
		t.Errorf("at the secret: %d %v", r.StatusCode, r.Header)
	}
	wants(t, "the page", w.page("/"+secret+"/"), "Quiet corner", "webcal://example.org/lawns/"+secret+"/program.ics", "whoever has this address")
	w.get("/" + secret + "/done?job=east/lime/1&signed=token")
	w.get("/" + secret)
	lacks(t, "the log", w.logged(), secret, "heron", "token")

	// The file breaks: nothing of it comes to light, the last good one stays.
	w.put("quiet.toml", strings.Replace(lawn, "2600 sq ft", "0 sq ft", 1)+"[calendar]\nsecret = \""+secret+"\"\n")
	w.refresh()
	wants(t, "the page", w.page("/"+secret+"/"), "Quiet corner", "still the program from before", "quiet.toml:")
	lacks(t, "the index", w.page("/"), "quiet", secret)
	// And a feed that starts now has no program, and may know no secret.
	w.start()
	if r := w.get("/quiet/"); r.StatusCode != http.StatusNotFound {
		t.Errorf("broken and private: %d", r.StatusCode)
	}
	lacks(t, "the index", w.page("/"), "quiet", secret)
	// A new secret is a new address; the old one is gone.
	w.put("quiet.toml", lawn+"[calendar]\nsecret = \"otter-by-the-weir-0815\"\n")
	w.refresh()
	w.page("/otter-by-the-weir-0815/")
	if r := w.get("/" + secret + "/"); r.StatusCode != http.StatusNotFound {
		t.Errorf("the old secret: %d", r.StatusCode)
	}
}

func TestTwoSitesWithOneAddress(t *testing.T) {
	w := newWorld(t)
	w.put("a-site-with-long-name.toml", lawn)
	w.put("b.toml", strings.Replace(lawn, "Oxlo green", "Other", 1)+"[calendar]\nsecret = \"a-site-with-long-name\"\n")
	w.start()
	wants(t, "the page", w.page("/a-site-with-long-name/"), "Oxlo green")
	wants(t, "the log", w.logged(), "another has the same address")
}

// The state of a site with a secret is for its owner alone, also when it lay
// open before, and says nothing to others.
func TestStateOfASecretIsPrivate(t *testing.T) {
	const secret = "heron-under-willow-4711"
	w := newWorld(t)
	state := t.TempDir()
	w.state = openRoot(t, state)
	for _, dir := range []string{state + "/quiet", state + "/quiet/person"} {
		if err := os.Mkdir(dir, 0o755); err != nil {
			t.Fatal(err)
		}
	}
	w.put("mill.toml", lawn)
	w.put("quiet.toml", named("quiet")+"[calendar]\nsecret = \""+secret+"\"\n")
	w.start()
	calendar := w.page("/" + secret + "/program.ics")
	wants(t, "the log", w.logged(), "site=quiet", "chmod 600")
	if err := os.Chmod(state+"/quiet/program.ics", 0o644); err != nil { // as an older version left it
		t.Fatal(err)
	}
	w.start()
	if w.page("/"+secret+"/program.ics") != calendar {
		t.Error("the calendar changed")
	}
	for _, path := range []string{"/person/ines.ics", "/area/east.ics", "/", "/program.html", "/program.json"} {
		w.page("/" + secret + path)
	}
	w.page("/mill/program.ics")
	err := filepath.WalkDir(state, func(path string, d fs.DirEntry, err error) error {
		if err != nil || path == state {
			return err
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		text, _ := os.ReadFile(path)
		switch private := strings.Contains(path, "/quiet"); {
		case private && info.Mode().Perm()&0o077 != 0:
			t.Errorf("%s: %v", path, info.Mode())
		case !private && strings.Contains(path+string(text), secret):
			t.Errorf("%s: %v, and holds the secret", path, info.Mode())
		}
		return nil
	})
	if err != nil {
		t.Error(err)
	}
}
