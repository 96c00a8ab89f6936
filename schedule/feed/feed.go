package feed

import (
	"crypto/rand"
	"fmt"
	"log/slog"
	"net/http"
	"net/url"
	"os"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/plan"
)

// Options say what a feed serves.
type Options struct {
	Sites  *os.Root         // the folder of site files
	State  *os.Root         // where calendars are kept between runs; nil: in memory only
	Base   string           // public address of the feed, "https://example.org/lawns", from [ParseBase]; "" not known
	Plan   schedule.Planner // nil: [plan.Program]
	Record bool             // allow the form, which writes into the record books
	Now    func() time.Time // the clock; its time zone decides when a day begins
	Log    *slog.Logger     // what happens to the sites
	Access *slog.Logger     // one line a request, without secrets, tokens or addresses; nil: none
}

// ParseBase checks a public address and gives it without a slash at the end.
func ParseBase(s string) (string, error) {
	u, err := url.Parse(s)
	switch {
	case err != nil || u.Host == "" || u.Scheme != "http" && u.Scheme != "https":
		return "", fmt.Errorf("%q is no web address; write it as https://example.org/lawns", s)
	case u.RawQuery != "" || u.Fragment != "" || u.User != nil:
		return "", fmt.Errorf("%q holds more than scheme, host and path; write it as https://example.org/lawns", s)
	case len(s) > 150: // one large service takes calendar addresses of 256 characters
		return "", fmt.Errorf("%q is longer than 150 characters, too long for some calendar services", s)
	}
	return strings.TrimRight(u.String(), "/"), nil
}

// Feed serves a folder of sites. It is an [http.Handler] and safe for many
// goroutines.
type Feed struct {
	o   Options
	key [32]byte // signs the forms of this run

	mu    sync.Mutex // held while the list of sites is brought up to date
	sites map[string]*site
	told  map[string]string // what was logged last about each name, so that it is said once

	faultMu sync.Mutex
	faulty  map[string]bool // the sites with which the program panicked

	table atomic.Pointer[map[string]*site] // by the first part of the path
	index atomic.Pointer[resource]
}

// New reads and plans every site of the folder. A site with errors is no
// error of New; a folder that cannot be read is.
func New(o Options) (*Feed, error) {
	f := &Feed{o: o, sites: map[string]*site{}, told: map[string]string{}, faulty: map[string]bool{}}
	rand.Read(f.key[:])
	if f.o.Plan == nil {
		f.o.Plan = plan.Program
	}
	if err := f.Refresh(); err != nil {
		return nil, err
	}
	return f, nil
}

// ServeHTTP answers one request.
func (f *Feed) ServeHTTP(w http.ResponseWriter, q *http.Request) {
	if f.o.Access == nil {
		f.route(w, q)
		return
	}
	start := f.o.Now()
	a := f.route(w, q)
	f.o.Access.Info("request", "method", method(q.Method), "site", a.site, "what", a.what,
		"status", a.status, "bytes", a.sent, "took", f.o.Now().Sub(start))
}

// method is a request's method as the log may hold it.
func method(m string) string {
	switch m {
	case http.MethodGet, http.MethodHead, http.MethodPost, http.MethodPut, http.MethodDelete, http.MethodOptions:
		return m
	}
	return "other"
}

// answered is what the log tells of a request. The path stays out of it: it
// may hold a secret, or nearly one.
type answered struct {
	site, what   string
	status, sent int
}

// route finds what the path asks for. Paths are compared as they are: nothing
// is cleaned, so there is no way around by dots or double slashes.
func (f *Feed) route(w http.ResponseWriter, q *http.Request) answered {
	path := q.URL.Path
	if path == "/" {
		return f.send(answered{what: "index"}, w, q, f.index.Load())
	}
	if path == "" || path[0] != '/' {
		return refuse(answered{what: "unknown"}, w, http.StatusNotFound)
	}
	first, rest, folder := strings.Cut(path[1:], "/")
	s := (*f.table.Load())[first]
	if s == nil {
		return refuse(answered{what: "unknown"}, w, http.StatusNotFound)
	}
	a, shown := answered{site: s.name}, s.shown.Load()
	if shown.prefix != first { // its secret was changed this moment
		return refuse(answered{what: "unknown"}, w, http.StatusNotFound)
	}
	if shown.private {
		a.site = "private"
	}
	switch {
	case !folder:
		if q.Method != http.MethodGet && q.Method != http.MethodHead {
			return notAllowed(a, w, "GET, HEAD")
		}
		w.Header().Set("Location", "./"+url.PathEscape(first)+"/")
		return refuse(a, w, http.StatusMovedPermanently)
	case shown.unready != nil:
		return f.sendUnready(a, w, q, shown.unready)
	case shown.resources == nil: // found a moment ago, and not listed yet
		return refuse(a, w, http.StatusNotFound)
	case rest == formPath && f.o.Record:
		a.what = formPath
		return f.form(a, w, q, s)
	}
	r := shown.resources[rest]
	if r == nil {
		a.what = "unknown"
		return refuse(a, w, http.StatusNotFound)
	}
	if a.what = rest; rest == "" {
		a.what = "landing"
	}
	return f.send(a, w, q, r)
}

func (f *Feed) send(a answered, w http.ResponseWriter, q *http.Request, r *resource) answered {
	if q.Method != http.MethodGet && q.Method != http.MethodHead {
		return notAllowed(a, w, "GET, HEAD")
	}
	a.status, a.sent = r.answer(w, q)
	return a
}

// sendUnready answers for a site that never had a program: subscribers keep
// what they have and come again.
func (f *Feed) sendUnready(a answered, w http.ResponseWriter, q *http.Request, page []byte) answered {
	if q.Method != http.MethodGet && q.Method != http.MethodHead {
		return notAllowed(a, w, "GET, HEAD")
	}
	w.Header().Set("Retry-After", "600")
	return sendPage(a, w, q, http.StatusServiceUnavailable, page)
}

// sendPage sends a page that was made for this request alone.
func sendPage(a answered, w http.ResponseWriter, q *http.Request, status int, page []byte) answered {
	h := w.Header()
	h.Set("Content-Type", htmlType)
	h.Set("Cache-Control", "no-store")
	for _, l := range securityHeaders(file{kind: htmlType, body: page}) {
		h.Set(l[0], l[1])
	}
	w.WriteHeader(status)
	a.status = status
	if q.Method != http.MethodHead {
		a.sent, _ = w.Write(page)
	}
	return a
}

func notAllowed(a answered, w http.ResponseWriter, allow string) answered {
	w.Header().Set("Allow", allow)
	return refuse(a, w, http.StatusMethodNotAllowed)
}

// refuse answers in one plain line.
func refuse(a answered, w http.ResponseWriter, status int) answered {
	h := w.Header()
	h.Set("Content-Type", plainType)
	h.Set("Cache-Control", "no-store")
	h.Set("X-Content-Type-Options", "nosniff")
	w.WriteHeader(status)
	a.status = status
	a.sent, _ = w.Write([]byte(strings.ToLower(http.StatusText(status)) + "\n"))
	return a
}
