package feed

import (
	"crypto/rand"
	"errors"
	"io"
	"mime"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/ask"
)

// mostAnswers is the size of posted answers: what fits an address has a tenth of it.
const mostAnswers = 64 << 10

// Fields of the form that are no answers.
const (
	askNames = "ask.names" // ticked: the names of people may go into the address
	askMore  = "ask.more"  // the button for one more of a kind, not for the program
)

// ask answers the address of the questions: GET shows them, with the answers of a code;
// POST turns what was typed into an address, and sends the reader there. So reloading
// and going back ask nothing again, and nothing is kept here.
func (f *Feed) ask(a answered, w http.ResponseWriter, q *http.Request, code string) answered {
	switch q.Method {
	case http.MethodGet, http.MethodHead:
		if code == "" {
			return f.showAsk(a, w, q, http.StatusOK, asking{Answers: ask.Answers{{Key: "title", Value: "My lawn"}}})
		}
		v, err := inLinkTurn(f, q, func() (asking, error) {
			answers, err := ask.Decode(code)
			if err != nil {
				return asking{}, err
			}
			return asking{Answers: answers, Problems: loaded(answers, day(f.o.Now())).problems,
				Names: holdsNames(answers), More: q.URL.Query().Get("more")}, nil
		})
		if err != nil {
			return f.noLink(a, w, err)
		}
		return f.showAsk(a, w, q, http.StatusOK, v)
	case http.MethodPost:
		return f.answer(a, w, q, code)
	}
	return notAllowed(a, w, "GET, HEAD, POST")
}

// answer turns what was posted into an address.
func (f *Feed) answer(a answered, w http.ResponseWriter, q *http.Request, code string) answered {
	if kind, _, err := mime.ParseMediaType(q.Header.Get("Content-Type")); err != nil || kind != "application/x-www-form-urlencoded" {
		return refuse(a, w, http.StatusUnsupportedMediaType)
	}
	body, err := io.ReadAll(http.MaxBytesReader(w, q.Body, mostAnswers))
	if _, large := errors.AsType[*http.MaxBytesError](err); large {
		return refuse(a, w, http.StatusRequestEntityTooLarge)
	}
	if err != nil {
		return refuse(a, w, http.StatusBadRequest)
	}
	typed, said := posted(string(body))
	today := day(f.o.Now())
	v := asking{Answers: begun(typed, today), Names: said.Get(askNames) != ""}
	to, err := inLinkTurn(f, q, func() (string, error) {
		shared, left := ask.Share(v.Answers, true)
		if v.Wrong = left; holdsNames(shared) && !v.Names {
			v.Wrong = append(v.Wrong, "Names of people go into the address only if you tick that they may. Tick it, or take the names out.")
		}
		if len(v.Wrong) > 0 {
			return "", nil
		}
		next, err := recode(shared, code)
		if err != nil {
			v.Wrong = append(v.Wrong, err.Error())
			return "", nil
		}
		path := landingFile
		if said.Get(askMore) != "" || loaded(shared, today).site == nil {
			path = askPath
		}
		to := within(next, path)
		if more := said.Get(askMore); more != "" {
			to += "?more=" + url.QueryEscape(more)
		}
		return to, nil
	})
	if err != nil {
		return f.noLink(a, w, err)
	}
	if to == "" {
		v.Problems = ask.Problems(v.Answers)
		return f.showAsk(a, w, q, http.StatusUnprocessableEntity, v)
	}
	if code == "" {
		return f.seeOther(a, w, linkPath+"/"+to)
	}
	return f.seeOther(a, w, "../"+to)
}

// posted takes a form apart, in its order: answers are the fields named as keys are.
func posted(body string) (answers ask.Answers, said url.Values) {
	said = url.Values{}
	for pair := range strings.SplitSeq(body, "&") {
		name, value, _ := strings.Cut(pair, "=")
		key, err1 := url.QueryUnescape(name)
		value, err2 := url.QueryUnescape(value)
		switch {
		case err1 != nil || err2 != nil || strings.TrimSpace(value) == "":
		case strings.HasPrefix(key, "ask."):
			said.Add(key, value)
		case key != "id": // it belongs to an address
			answers = append(answers, ask.Answer{Key: key, Value: value})
		}
	}
	return answers, said
}

// begun fills in what is so on the day the answers are given: the program begins, and
// a report that is typed now has come by now.
func begun(a ask.Answers, today schedule.Date) ask.Answers {
	if a.Get("start") == "" {
		a = a.Set("start", today.String())
	}
	for _, area := range a.Names("area") {
		soil := "area." + area + ".soil."
		sampled, err := schedule.ParseDate(a.Get(soil + "sampled"))
		if err == nil && !sampled.After(today) && a.Get(soil+"received") == "" {
			a = a.Set(soil+"received", today.String())
		}
	}
	return a
}

func holdsNames(a ask.Answers) bool {
	_, left := ask.Share(a, false)
	_, others := ask.Share(a, true)
	return len(left) > len(others)
}

// recode gives the code of answers: the one they came from if they are the same, else
// one with an id of its own, as its calendar is another.
func recode(a ask.Answers, from string) (string, error) {
	var id ask.ID
	rand.Read(id[:])
	if was, err := ask.Decode(from); err == nil && slices.Equal(was.Set("id", ""), a.Tidy()) {
		return from, nil
	}
	return ask.Encode(a, id)
}
