package feed

import (
	"crypto/rand"
	"errors"
	"io"
	"mime"
	"net/http"
	"net/url"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/ask"
	"swardbook/schedule/door"
)

// mostAnswers is the size of posted answers: what fits an address has a tenth of it.
const mostAnswers = 64 << 10

// What the address of the questions says besides the answers.
const (
	goOn   = "go"  // the button that was pressed last
	wasOne = "was" // the code of the answers that are being changed
)

// asking is the ask page at this door. Its form is sent to the address where it stands,
// less the fragment, which a browser would hand on to whatever comes next.
func asking(press, was string) door.Door {
	about := url.Values{}
	if press != "" {
		about.Set(goOn, press)
	}
	if was != "" {
		about.Set(wasOne, was)
	}
	return door.Door{Action: askPath + query(about)}
}

// ask answers the address of the questions: GET shows them, with the answers of a code;
// POST turns what was typed into an address, and sends the reader there. So reloading
// and going back ask nothing again, and nothing is kept here.
func (f *Feed) ask(a answered, w http.ResponseWriter, q *http.Request, code string) answered {
	switch q.Method {
	case http.MethodGet, http.MethodHead:
	case http.MethodPost:
		return f.answer(a, w, q, code)
	default:
		return notAllowed(a, w, "GET, HEAD, POST")
	}
	today := day(f.o.Now())
	press, was := q.URL.Query().Get(goOn), q.URL.Query().Get(wasOne)
	here := asking(press, was)
	if code == "" {
		body, err := here.Begin(today)
		if err != nil {
			return f.broken(a, w, err)
		}
		return sendPage(a, w, q, http.StatusOK, body)
	}
	body, err := inLinkTurn(f, q, func() ([]byte, error) {
		answers, err := ask.Decode(code)
		if err != nil {
			return nil, err
		}
		if press == "" {
			return here.Fill(answers, today)
		}
		next, err := here.Press(door.Turn{Form: here.Form(answers), Press: press, Was: changed(was), Today: today})
		if err == nil && next.Page == nil { // nothing is wrong any more
			return here.Fill(answers, today)
		}
		return next.Page, err
	})
	if err != nil {
		return f.noLink(a, w, err)
	}
	return sendPage(a, w, q, http.StatusOK, body)
}

// changed gives the answers of a code that are being changed; nil if they make no program.
func changed(code string) ask.Answers {
	a, err := ask.Decode(code)
	if err != nil || schedule.Fatal(ask.Problems(a)) {
		return nil
	}
	return a
}

// answer turns what was posted into an address.
func (f *Feed) answer(a answered, w http.ResponseWriter, q *http.Request, code string) answered {
	form, press, status := posted(w, q)
	if status != http.StatusOK {
		return refuse(a, w, status)
	}
	t := door.Turn{Form: form, Press: press, At: q.URL.Query().Get(goOn), Today: day(f.o.Now())}
	rand.Read(t.ID[:])
	from := q.URL.Query().Get(wasOne)
	next, err := inLinkTurn(f, q, func() (door.Next, error) {
		if from == "" {
			from = code
		}
		if t.Was = changed(from); t.Was == nil {
			from = ""
		}
		return asking(press, from).Press(t)
	})
	if err != nil {
		return f.noLink(a, w, err)
	}
	up := "../"
	if code == "" {
		up = linkPath + "/"
	}
	about := url.Values{}
	if from != "" && from != next.Code {
		about.Set(wasOne, from)
	}
	switch {
	case next.Code != "":
		return f.seeOther(a, w, up+within(next.Code, landingFile)+query(about))
	case next.Draft != "":
		if about.Set(goOn, t.Press); t.Press == "enter" && next.Screen != "wrong" {
			about.Set(goOn, next.Screen)
		}
		return f.seeOther(a, w, up+within(next.Draft, askPath)+query(about)+"#"+url.PathEscape(next.Screen))
	case next.Screen == "wrong":
		return sendPage(a, w, q, http.StatusUnprocessableEntity, next.Page)
	}
	return sendPage(a, w, q, http.StatusOK, next.Page)
}

func query(v url.Values) string {
	if len(v) == 0 {
		return ""
	}
	return "?" + v.Encode()
}

// posted reads a form, in its order, and the button that sent it, or gives the status to
// refuse it with.
func posted(w http.ResponseWriter, q *http.Request) (form ask.Form, press string, status int) {
	if kind, _, err := mime.ParseMediaType(q.Header.Get("Content-Type")); err != nil || kind != "application/x-www-form-urlencoded" {
		return nil, "", http.StatusUnsupportedMediaType
	}
	body, err := io.ReadAll(http.MaxBytesReader(w, q.Body, mostAnswers))
	if _, large := errors.AsType[*http.MaxBytesError](err); large {
		return nil, "", http.StatusRequestEntityTooLarge
	}
	if err != nil {
		return nil, "", http.StatusBadRequest
	}
	for pair := range strings.SplitSeq(string(body), "&") {
		name, value, _ := strings.Cut(pair, "=")
		key, err1 := url.QueryUnescape(name)
		value, err2 := url.QueryUnescape(value)
		switch {
		case err1 != nil || err2 != nil || key == "":
		case key == "press":
			press = value
		default:
			form = append(form, ask.Answer{Key: key, Value: value})
		}
	}
	return form, press, http.StatusOK
}
