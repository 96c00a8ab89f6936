package feed

import (
	"context"
	"crypto/rand"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"log/slog"
	"net"
	"net/http"
	"net/url"
	"os"
	"strconv"
	"strings"
	"sync"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/ask"
	"swardbook/schedule/book"
	"swardbook/schedule/door"
	"swardbook/schedule/ical"
	"swardbook/schedule/page"
)

// Local is the ask page for one person, on the machine where the site file lies: it
// writes the file, or changes it.
//
//	/WORD/                the questions, with the answers of the file
//	/WORD/?turn=N         what was typed N turns ago or so, which reloading brings again
//	/WORD/program         the program of the file
//	/WORD/program.html    its sheet, and program.ics
//
// The word is drawn by lot: another user of the machine, or a page from elsewhere that
// found the port, does not know it.
type Local struct {
	o     LocalOptions
	word  string
	cross *http.CrossOriginProtection

	mu    sync.Mutex
	turns map[int]localTurn
	last  int
	was   ask.Answers // those of the file before it was written last; nil there were none
}

// LocalOptions say where the file is, and who asks for it.
type LocalOptions struct {
	Root *os.Root // the folder
	Site string   // NAME of NAME.toml in it
	File string   // the site file as its owner named it
	Host string   // at which the browser asks, "127.0.0.1:8080"
	Plan schedule.Planner
	Now  func() time.Time
	Log  *slog.Logger
}

// localTurn is a turn, and the file at which it was typed.
type localTurn struct {
	door.Turn
	mark string
}

const mostTurns = 500 // how many are kept for going back // [common]

// NewLocal makes the page for a file, which need not be there yet. One that is no site file
// is refused with its problems.
func NewLocal(o LocalOptions) (*Local, []schedule.Problem, error) {
	l := &Local{o: o, word: strings.ToLower(rand.Text()), cross: http.NewCrossOriginProtection(), turns: map[int]localTurn{}}
	_, _, problems, err := l.read()
	return l, problems, err
}

// Path is where the page stands at the host.
func (l *Local) Path() string { return "/" + l.word + "/" }

// ServeLocal is [Serve] for a page of one person, who waits for nobody when it stops.
func ServeLocal(ctx context.Context, listener net.Listener, h *Local) error {
	return serve(ctx, listener, h, h.o.Log, stopSoon)
}

// read reads the file into answers, which are nil if it is not there.
func (l *Local) read() (a ask.Answers, text *reading, problems []schedule.Problem, err error) {
	if _, err := l.o.Root.Stat(siteFile(l.o.Site)); errors.Is(err, fs.ErrNotExist) {
		return nil, &reading{}, nil, nil
	}
	text = load(l.o.Root, l.o.Site, l.o.Now())
	if text.text == nil {
		return nil, nil, nil, fmt.Errorf("%s: %w", l.o.File, text.problems[0])
	}
	a, problems = ask.Read(text.text, text.book)
	for i := range problems {
		if problems[i].File == bookFile {
			problems[i].File = strings.TrimSuffix(l.o.File, ".toml") + ".record.csv"
		} else {
			problems[i].File = l.o.File
		}
	}
	return a, text, problems, nil
}

func (t *reading) mark() string { return hex.EncodeToString(t.sum[:8]) }

func (l *Local) door(mark, at string) door.Door {
	return door.Door{File: l.o.File, Mark: mark, Action: "./?at=" + url.QueryEscape(at), Open: func(name string) (io.ReadCloser, error) { return l.o.Root.Open(name) }}
}

// ServeHTTP answers the owner's browser, and nobody else.
func (l *Local) ServeHTTP(w http.ResponseWriter, q *http.Request) {
	path, mine := strings.CutPrefix(q.URL.Path, l.Path())
	_, port, _ := net.SplitHostPort(l.o.Host)
	switch {
	case q.Host != l.o.Host && q.Host != "localhost:"+port: // another name, which somebody pointed here
		refuse(answered{}, w, http.StatusForbidden)
	case !mine:
		refuse(answered{}, w, http.StatusNotFound)
	case l.cross.Check(q) != nil:
		refuse(answered{}, w, http.StatusForbidden)
	case path == "" && q.Method == http.MethodPost:
		l.post(w, q)
	case q.Method != http.MethodGet && q.Method != http.MethodHead:
		notAllowed(answered{}, w, "GET, HEAD")
	default:
		body, kind, err := l.get(path, q.URL.Query().Get("turn"), q.URL.Query().Get("at"))
		switch {
		case errors.Is(err, errNoFile):
			refuse(answered{}, w, http.StatusNotFound)
		case err != nil:
			l.o.Log.Error("a page could not be written", "error", err.Error())
			refuse(answered{}, w, http.StatusInternalServerError)
		case kind == htmlType:
			sendPage(answered{}, w, q, http.StatusOK, body)
		default:
			newResource(file{path, kind, body}, nil, l.o.Now(), true).answer(w, q)
		}
	}
}

// get makes a page or a file.
func (l *Local) get(path, turn, at string) (body []byte, kind string, err error) {
	a, text, problems, err := l.read()
	today := day(l.o.Now())
	switch {
	case err != nil:
		return nil, "", err
	case len(problems) > 0:
		body, err = unready(l.o.File, problems)
		return body, htmlType, err
	case path == "":
		body, err = l.questions(a, text.mark(), turn, at, today)
		return body, htmlType, err
	case a == nil:
		return nil, "", errNoFile
	}
	if text.plan(l.o.Site, today, l.o.Plan); text.program == nil {
		body, err = unready(l.o.File, text.problems)
		return body, htmlType, err
	}
	switch p := text.program; path {
	case "program":
		to := page.Answered{Today: today, Change: "./", File: l.o.File, Calendar: calendarFile, Sheet: sheetFile, Was: l.before(today)}
		body, err = page.Answer(p.AsOf(today), to)
		return body, htmlType, err
	case sheetFile:
		body, err = page.Sheet(p.Around(today), page.Options{Today: today})
		return body, htmlType, err
	case calendarFile:
		body, err = ical.Write(p, ical.Options{}, l.o.Now())
		return body, calendarType, err
	}
	return nil, "", errNoFile
}

func (l *Local) questions(a ask.Answers, mark, turn, at string, today schedule.Date) ([]byte, error) {
	n, _ := strconv.Atoi(turn)
	l.mu.Lock()
	t, known := l.turns[n]
	l.mu.Unlock()
	switch {
	case known:
		next, err := l.door(t.mark, at).Press(t.Turn)
		if err != nil || next.Page != nil {
			return next.Page, err
		}
	case a == nil:
		return l.door(mark, at).Begin(today)
	}
	return l.door(mark, at).Fill(a, today)
}

// before plans the answers that the file had before it was written last.
func (l *Local) before(today schedule.Date) *schedule.Program {
	l.mu.Lock()
	was := l.was
	l.mu.Unlock()
	if was == nil {
		return nil
	}
	r := &reading{}
	r.site, r.done, r.problems = ask.Load(was, l.door("", "").Open)
	r.plan(l.o.Site, today, l.o.Plan)
	return r.program // nil if the file made none: there is nothing to compare with
}

// post takes a turn: the file is written, or the questions are asked again.
func (l *Local) post(w http.ResponseWriter, q *http.Request) {
	form, press, status := posted(w, q)
	if status != http.StatusOK {
		refuse(answered{}, w, status)
		return
	}
	a, text, problems, err := l.read()
	if err != nil || len(problems) > 0 {
		l.o.Log.Error("the file cannot be read; nothing was written", "file", l.o.File)
		refuse(answered{}, w, http.StatusConflict)
		return
	}
	at := q.URL.Query().Get("at")
	t := localTurn{door.Turn{Form: form, Press: press, At: at, Was: a, Today: day(l.o.Now())}, form.Get(door.MarkField)}
	rand.Read(t.ID[:])
	next, err := l.door(t.mark, at).Press(t.Turn)
	if err == nil && next.Answers != nil && t.mark != text.mark() {
		t.mark, t.Press = text.mark(), "program" // by Enter as by the button: it is said before anything is written
		t.Wrong = append(t.Wrong, schedule.Problem{Message: "the file was changed by somebody else while you answered", Hint: "open this page anew to see it, or press again and your answers are written over it"})
		next, err = l.door(t.mark, at).Press(t.Turn)
	}
	if err == nil && next.Answers != nil {
		if err = l.write(next.Answers, text); err == nil {
			l.mu.Lock()
			l.was = a
			l.mu.Unlock()
			seeOther(w, "program")
			return
		}
		t.Press, t.Wrong = "program", append(t.Wrong, schedule.Problem{Message: err.Error()})
		next, err = l.door(t.mark, at).Press(t.Turn)
	}
	if err != nil {
		l.o.Log.Error("a page could not be written", "error", err.Error())
		refuse(answered{}, w, http.StatusInternalServerError)
		return
	}
	l.mu.Lock()
	l.last++
	l.turns[l.last] = t
	delete(l.turns, l.last-mostTurns)
	n := l.last
	l.mu.Unlock()
	seeOther(w, fmt.Sprintf("./?turn=%d&at=%s#%s", n, next.Screen, next.Screen))
}

// write puts the answers into the site file and its record book.
func (l *Local) write(a ask.Answers, was *reading) error {
	site, lines := ask.File(a)
	if was.text != nil {
		var err error
		if site, lines, err = ask.Change(was.text, was.book, a); err != nil {
			return err
		}
	}
	if _, err := book.Replace(l.o.Root, siteFile(l.o.Site), site); err != nil {
		return fmt.Errorf("%s could not be written, and is as it was: %w", l.o.File, bare(err))
	}
	if lines == nil || string(lines) == string(was.book) {
		return nil
	}
	meanwhile := false
	err := book.Edit(l.o.Root, recordBook(l.o.Site), func(now []byte) []byte {
		if meanwhile = string(now) != string(was.book); meanwhile {
			return now
		}
		return lines
	})
	switch {
	case err != nil:
		return fmt.Errorf("the record book could not be written, and is as it was: %w", bare(err))
	case meanwhile:
		return errors.New("somebody wrote into the record book just now; press again")
	}
	return nil
}

func seeOther(w http.ResponseWriter, to string) {
	w.Header().Set("Location", to)
	w.Header().Set("Referrer-Policy", "no-referrer")
	refuse(answered{}, w, http.StatusSeeOther)
}
