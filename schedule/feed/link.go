package feed

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"net/http"
	"runtime/debug"
	"strings"
	"sync"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/plan"
)

// Links that carry a site: whatever stands below /p/ is worked out from the code in the
// address. Nothing is kept, so all servers of a release give the same bytes on the same
// day, and no code is ever logged.
//
//	/ask                      the questions
//	/p/CODE                   what to do, and where to subscribe
//	/p/CODE.ics               the calendar
//	/p/CODE/sheet             the sheet
//	/p/CODE/person/ID.ics     as in the tree of a site, and area/ID.ics
//	/p/CODE/site.toml         the answers as a site file, and site.record.csv
//	/p/CODE/ask               the questions with their answers
const (
	askPath  = "ask"
	linkPath = "p"
	tomlFile = "site.toml"
	bookFile = "site.record.csv"
)

// link answers a path below /p/.
func (f *Feed) link(a answered, w http.ResponseWriter, q *http.Request, rest string) answered {
	code, path := linked(rest)
	a.what, _, _ = strings.Cut(path, "/") // the rest may be the name of a person
	switch {
	case path == "" || code == "":
		a.what = "unknown"
		return refuse(a, w, http.StatusNotFound)
	case path == askPath:
		return f.ask(a, w, q, code)
	case q.Method != http.MethodGet && q.Method != http.MethodHead:
		return notAllowed(a, w, "GET, HEAD")
	}
	now := f.o.Now()
	was := ""
	if path == landingFile {
		was = q.URL.Query().Get(wasOne)
	}
	known := f.linkMark(code, path, was, now)
	if r := known.bare(true); !asksAnew(r, q) {
		a.status, a.sent = r.answer(w, q)
		return a
	}
	made, err := inLinkTurn(f, q, func() (file, error) { return f.linkFile(code, path, was, now) })
	if bad, ok := errors.AsType[*badAnswers](err); ok && path == landingFile {
		return f.seeOther(a, w, within(bad.code, askPath)+"#wrong")
	}
	if err != nil {
		return f.noLink(a, w, err)
	}
	r := newResource(made, nil, known.modified, true)
	r.nameAfter(known)
	a.status, a.sent = r.answer(w, q)
	return a
}

// unlisted keeps an address out of search engines, and from being told to others.
func unlisted(w http.ResponseWriter) {
	w.Header().Set("X-Robots-Tag", "noindex")
	w.Header().Set("Referrer-Policy", "no-referrer")
}

func asksAnew(r *resource, q *http.Request) bool {
	status, _ := r.weigh(q)
	return status == http.StatusOK
}

func (f *Feed) seeOther(a answered, w http.ResponseWriter, to string) answered {
	w.Header().Set("Location", to)
	return refuse(a, w, http.StatusSeeOther)
}

// linked parts a path below /p/ into the code and the file of it, called as in the tree
// of a site; "" if there is no such file.
func linked(rest string) (code, path string) {
	code, path, below := strings.Cut(rest, "/")
	if !below {
		if calendar, ok := strings.CutSuffix(code, ".ics"); ok {
			return calendar, calendarFile
		}
		return code, landingFile
	}
	switch path {
	case "sheet":
		return code, sheetFile
	case tomlFile, bookFile, askPath:
		return code, path
	}
	if dir, name, ok := strings.Cut(path, "/"); ok && (dir == "person" || dir == "area") && strings.HasSuffix(name, ".ics") && !strings.Contains(name, "/") {
		return code, path
	}
	return code, ""
}

// within is the way back: the path below /p/ of a file.
func within(code, path string) string {
	switch path {
	case landingFile, "":
		return code
	case calendarFile:
		return code + ".ics"
	case sheetFile:
		return code + "/sheet"
	}
	return code + "/" + path
}

// release names the release that worked out an answer, as another may word it differently.
var release = sync.OnceValue(func() string {
	built := ""
	if info, ok := debug.ReadBuildInfo(); ok {
		built = info.Main.Version
	}
	return fmt.Sprintf("%d %s %s", plan.Release, plan.Released(), built)
})

// linkMark gives the mark of a link's file on a day without making the file: the same
// release, day, address and earlier answers make the same bytes. Its time is the first
// moment at which it is that day anywhere on earth, so that it is the same for everybody and
// never in the future.
func (f *Feed) linkMark(code, path, was string, now time.Time) mark {
	today := day(now)
	sum := sha256.Sum256([]byte(strings.Join([]string{release(), today.String(), f.o.Base, within(code, path), was}, "\n")))
	m := mark{size: leastZipped, modified: today.Time().Add(-14 * time.Hour)}
	copy(m.tag[:], sum[:])
	return m
}

// noLink answers where nothing could be worked out.
func (f *Feed) noLink(a answered, w http.ResponseWriter, err error) answered {
	_, bad := errors.AsType[*badAnswers](err)
	fault, broken := errors.AsType[*schedule.Fault](err)
	switch {
	case bad:
		return refuse(a, w, http.StatusUnprocessableEntity)
	case errors.Is(err, errBusy):
		return busy(a, w)
	case errors.Is(err, errOften):
		w.Header().Set("Retry-After", "20")
		return refuse(a, w, http.StatusTooManyRequests)
	case broken:
		f.o.Log.Error("the program has a fault that a link shows", "fault", fault.What, "trace", fault.Trace)
		return refuse(a, w, http.StatusInternalServerError)
	}
	return refuse(a, w, http.StatusNotFound)
}
