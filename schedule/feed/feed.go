package feed

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"log/slog"
	"net/http"
	"net/netip"
	"net/url"
	"os"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/plan"
)

// Options say what a feed serves.
type Options struct {
	Sites  *os.Root         // the folder of site files; nil: there are none
	State  *os.Root         // where calendars are kept between runs; nil: in memory only
	Base   string           // public address of the feed, "https://example.org/lawns", from [ParseBase]; "" not known
	Plan   schedule.Planner // nil: [plan.Program]
	Record bool             // allow the form, which writes into the record books
	Ask    bool             // offer the questions, and links that carry their answers
	Trust  []netip.Prefix   // proxies whose word counts on where a request came from
	Now    func() time.Time // the clock; its time zone decides when a day begins
	Turn   time.Duration    // the most that planning and writing one file of a site may take; 0: half a minute
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

	mu    sync.Mutex // held while the list of sites is brought up to date, never while one is planned
	sites map[string]*site
	next  int               // the site to go on with in the next round
	told  map[string]string // what was logged last about each name, so that it is said once

	faultMu sync.Mutex
	faulty  map[string]bool // the sites with which the program panicked

	round     atomic.Int64  // of looking at the folder
	dirty     atomic.Bool   // table and index are to be made anew
	looked    chan struct{} // a round is over
	whole     chan struct{} // closed when every secret is known
	wholeOnce sync.Once
	turns     chan struct{} // as many programs are made at once
	linkTurns chan struct{} // as many more for links
	clients   clients       // of links
	cache     cache

	table atomic.Pointer[map[string]*site] // by the first part of the path
	index atomic.Pointer[resource]
}

// turnsAtOnce is how many programs are made at once for each processor.
const turnsAtOnce = 2 // [common]

// New lists the folder, whose sites are read by [Feed.Watch] or when they are
// asked for. A site with errors is no error of New; a folder that cannot be
// read is.
func New(o Options) (*Feed, error) {
	f := &Feed{o: o, sites: map[string]*site{}, told: map[string]string{}, faulty: map[string]bool{},
		looked: make(chan struct{}, 1), whole: make(chan struct{}), turns: make(chan struct{}, turnsAtOnce*runtime.GOMAXPROCS(0)), linkTurns: make(chan struct{}, runtime.GOMAXPROCS(0))}
	rand.Read(f.key[:])
	if f.o.Plan == nil {
		f.o.Plan = plan.Program
	}
	names, err := siteNames(o.Sites)
	if err != nil {
		return nil, fmt.Errorf("could not read the folder of sites: %w", bare(err))
	}
	f.comeAndGo(names)
	return f, f.list()
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
	if f.o.Ask && (first == linkPath || first == askPath) {
		unlisted(w)
		switch a := (answered{site: "link", what: askPath}); {
		case first == linkPath:
			return f.link(a, w, q, rest)
		case !folder:
			return f.ask(a, w, q, "")
		}
		return refuse(answered{what: "unknown"}, w, http.StatusNotFound)
	}
	s, err := f.find(q.Context(), first)
	if err != nil {
		return busy(answered{what: "unknown"}, w)
	}
	if s == nil {
		return refuse(answered{what: "unknown"}, w, http.StatusNotFound)
	}
	n, err := f.fresh(q.Context(), s)
	if err != nil {
		return busy(answered{site: s.name}, w)
	}
	if n.prefix != first || n.hidden(s) { // it has another secret, or one that is not known
		return refuse(answered{what: "unknown"}, w, http.StatusNotFound)
	}
	a := answered{site: s.name}
	if n.private {
		a.site = "private"
	}
	switch {
	case !folder:
		if q.Method != http.MethodGet && q.Method != http.MethodHead {
			return notAllowed(a, w, "GET, HEAD")
		}
		w.Header().Set("Location", "./"+url.PathEscape(first)+"/")
		return refuse(a, w, http.StatusMovedPermanently)
	case n.from == nil:
		return f.sendUnready(a, w, q, n.title, n.problems)
	case rest == formPath && f.o.Record:
		a.what = formPath
		return f.form(a, w, q, s)
	}
	if a.what = rest; rest == "" {
		a.what, rest = "landing", landingFile
	} else if rest == landingFile || !n.has(rest) {
		a.what = "unknown"
		return refuse(a, w, http.StatusNotFound)
	}
	if q.Method != http.MethodGet && q.Method != http.MethodHead {
		return notAllowed(a, w, "GET, HEAD")
	}
	r, err := f.ready(q.Context(), s, rest, func(r *resource) bool {
		status, _ := r.weigh(q)
		return status != http.StatusOK
	})
	switch {
	case err == nil:
		a.status, a.sent = r.answer(w, q)
		return a
	case errors.Is(err, errBusy):
		return busy(a, w)
	case errors.Is(err, errNoFile):
		return refuse(a, w, http.StatusNotFound)
	case errors.Is(err, errNoProgram):
		n = s.shown.Load()
		return f.sendUnready(a, w, q, n.title, n.problems)
	}
	return f.sendUnready(a, w, q, n.title, []schedule.Problem{{File: siteFile(s.name), Message: err.Error()}})
}

// find finds the site of the first part of a path, which in the beginning may be
// a secret that is not known yet; then it waits.
func (f *Feed) find(ctx context.Context, first string) (*site, error) {
	if s := (*f.table.Load())[first]; s != nil {
		return s, nil
	}
	select {
	case <-f.whole:
		return (*f.table.Load())[first], nil
	default:
	}
	ctx, cancel := context.WithTimeout(ctx, waitTime)
	defer cancel()
	select {
	case <-f.whole:
	case <-ctx.Done():
		return nil, errBusy
	}
	return (*f.table.Load())[first], nil
}

// has tells whether the site has a file at a path.
func (n *shown) has(path string) bool {
	switch path {
	case landingFile, calendarFile, sheetFile, jsonFile:
		return true
	}
	return slices.Contains(n.parts, path) || slices.Contains(n.left, path)
}

// busy answers when there is no turn for a request: come again soon.
func busy(a answered, w http.ResponseWriter) answered {
	w.Header().Set("Retry-After", "10")
	return refuse(a, w, http.StatusServiceUnavailable)
}

func (f *Feed) send(a answered, w http.ResponseWriter, q *http.Request, r *resource) answered {
	if q.Method != http.MethodGet && q.Method != http.MethodHead {
		return notAllowed(a, w, "GET, HEAD")
	}
	a.status, a.sent = r.answer(w, q)
	return a
}

// sendUnready answers for a site that has no program: subscribers keep what
// they have and come again.
func (f *Feed) sendUnready(a answered, w http.ResponseWriter, q *http.Request, title string, problems []schedule.Problem) answered {
	if q.Method != http.MethodGet && q.Method != http.MethodHead {
		return notAllowed(a, w, "GET, HEAD")
	}
	page, err := unready(title, problems)
	if err != nil {
		return f.broken(a, w, err)
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
