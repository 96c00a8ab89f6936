package feed

import (
	"crypto/hmac"
	"crypto/rand"
	"crypto/sha256"
	"encoding/base64"
	"errors"
	"mime"
	"net"
	"net/http"
	"net/netip"
	"net/url"
	"slices"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// mostForm is the size of a posted form, of which a full one needs a fraction.
const mostForm = 8 << 10

// What became of a job, as the form names it.
const (
	allDone = "done"
	partly  = "part"
	missed  = "missed"
)

// entry is what a person wrote into the form.
type entry struct {
	ID                     string // of the form, so that posting it twice records once
	Job, What, Amount      string
	Sure                   string // not empty: what looks like a slip is meant
	Date, By, Note, Signed string
}

// formPage is the form for one job; without a job it is the choice of one.
type formPage struct {
	head
	entry
	Site, About string
	People      []schedule.Person
	Today       string
	Doubt       bool      // what looks like a slip may be confirmed
	Wrong       []string  // what must be mended, if it was posted before
	Amounts     bool      // the job puts something down that can be measured
	Ahead       string    // the day of a job that cannot have been done yet; "": it can
	Choice      []jobView // what may have been done
	Later       []jobView
}

// form answers the address of the form: GET shows it, POST records.
func (f *Feed) form(a answered, w http.ResponseWriter, q *http.Request, s *site) answered {
	if !f.mayRecord(q.Host) {
		return f.message(a, w, q, http.StatusForbidden, "This address cannot record",
			"The form works at the public address of the feed, as it was given with --base when it was started, or at a numeric address.")
	}
	switch q.Method {
	case http.MethodGet, http.MethodHead:
		return f.showForm(a, w, q, s, entry{ID: rand.Text(), Job: q.URL.Query().Get("job")}, http.StatusOK, nil, false)
	case http.MethodPost:
		return f.post(a, w, q, s)
	}
	return notAllowed(a, w, "GET, HEAD, POST")
}

// mayRecord tells whether the host that a browser asked for is one that nobody
// else can have pointed here: the base's, localhost, or a numeric address. A
// page from elsewhere could otherwise give its own name our address and then
// read the form.
func (f *Feed) mayRecord(host string) bool {
	if u, err := url.Parse(f.o.Base); err == nil && u.Host != "" && strings.EqualFold(u.Host, host) {
		return true
	}
	name := host
	if h, _, err := net.SplitHostPort(host); err == nil {
		name = h
	}
	if strings.EqualFold(name, "localhost") {
		return true
	}
	_, err := netip.ParseAddr(strings.Trim(name, "[]"))
	return err == nil
}

// showForm shows the form, or the choice of a job when none is named or none
// of that name can be recorded.
func (f *Feed) showForm(a answered, w http.ResponseWriter, q *http.Request, s *site, e entry, status int, wrong []string, doubt bool) answered {
	good, err := f.program(q.Context(), s)
	if errors.Is(err, errBusy) {
		return busy(a, w)
	}
	if err != nil {
		n := s.shown.Load()
		return f.sendUnready(a, w, q, n.title, n.problems)
	}
	today := day(f.o.Now())
	v := formPage{head: newHead("Record a job"), entry: e, Site: good.program.Title, Today: today.String(), Wrong: wrong, Doubt: doubt,
		People: good.site.Crew.People}
	if v.Date == "" {
		v.Date = v.Today
	}
	v.Signed = f.sign(s, e.ID)
	switch job, known := about(good.program, e.Job, today); {
	case known:
		v.About, v.Amounts, v.Ahead = job.words, job.amounts, job.ahead
		if v.By == "" {
			v.By = job.who
		}
		if v.What == "" && v.Ahead == "" && q.Method != http.MethodPost {
			v.What = allDone
		}
	default:
		if e.Job != "" {
			status = http.StatusNotFound
			v.Wrong = append(v.Wrong, "There is no such job in the program now. Choose one:")
		}
		v.Job = ""
		v.Choice, v.Later = choice(good.program, today)
	}
	page, err := render("form.html", v)
	if err != nil {
		return f.broken(a, w, err)
	}
	return sendPage(a, w, q, status, page)
}

// asked is what a form needs to know of its job.
type asked struct {
	words, who string
	amounts    bool   // it puts something down that can be measured
	ahead      string // its day, if it cannot have been done yet
}

// about says what job an id means. Notices and unknown ids cannot be recorded.
func about(p *schedule.Program, id string, today schedule.Date) (a asked, ok bool) {
	for i := range p.Entries {
		if e := &p.Entries[i]; e.ID == id && !e.Kind.Notice() {
			a = asked{words: e.Title + ", planned for " + e.Date.Words() + ": " + e.Summary, who: e.Who, amounts: e.Kind.Spreads() || e.Kind.Sows()}
			if !recordable(p, e, today) {
				a.ahead = e.Date.Words()
			}
			return a, true
		}
	}
	for _, l := range p.LeftOut {
		if l.ID == id {
			return asked{words: l.ID + ", left out of the program: " + l.Reason, amounts: l.Kind.Spreads() || l.Kind.Sows()}, true
		}
	}
	if e, _, err := p.Find(id); err == nil && e != nil && e.ID != id && strings.Count(id, "/") == 2 { // from an older calendar
		return about(p, e.ID, today)
	}
	return asked{}, false
}

// sign proves that this run of the feed gave out a form for this site.
func (f *Feed) sign(s *site, id string) string {
	m := hmac.New(sha256.New, f.key[:])
	m.Write([]byte(s.name + "\x00" + id))
	return base64.RawURLEncoding.EncodeToString(m.Sum(nil))
}

// post checks where a form comes from and what it says, and records it.
func (f *Feed) post(a answered, w http.ResponseWriter, q *http.Request, s *site) answered {
	if err := f.origin().Check(q); err != nil {
		return f.message(a, w, q, http.StatusForbidden, "Not recorded", "The form was sent from another site than this one.")
	}
	if kind, _, err := mime.ParseMediaType(q.Header.Get("Content-Type")); err != nil || kind != "application/x-www-form-urlencoded" {
		return refuse(a, w, http.StatusUnsupportedMediaType)
	}
	q.Body = http.MaxBytesReader(w, q.Body, mostForm)
	if err := q.ParseForm(); err != nil {
		if _, large := errors.AsType[*http.MaxBytesError](err); large {
			return refuse(a, w, http.StatusRequestEntityTooLarge)
		}
		return refuse(a, w, http.StatusBadRequest)
	}
	get := func(key string) string { return strings.TrimSpace(q.PostForm.Get(key)) }
	e := entry{ID: get("id"), Job: get("job"), What: get("what"), Amount: get("amount"), Date: get("date"), By: get("by"), Note: get("note"), Sure: get("sure")}
	if !hmac.Equal([]byte(get("signed")), []byte(f.sign(s, e.ID))) {
		return f.message(a, w, q, http.StatusForbidden, "Not recorded", "The form is from before the feed was started anew. Open it again, and send it then.")
	}
	o, err := f.record(s, e)
	if u, ok := errors.AsType[*unusable](err); ok {
		return f.showForm(a, w, q, s, e, http.StatusUnprocessableEntity, u.wrong, u.doubt)
	}
	switch {
	case errors.Is(err, errNoProgram):
		return f.message(a, w, q, http.StatusConflict, "Not recorded", word.Capital(err.Error())+".")
	case isFault(err):
		f.fault(s.name, err)
		return f.message(a, w, q, http.StatusInternalServerError, "Not recorded",
			"With this line the program could not be planned, by a fault of its own. Nothing was written. Write the job down elsewhere and tell whoever runs this feed.")
	case err != nil:
		f.o.Log.Error("a job could not be recorded", "site", s.logName(), "error", err.Error())
		return f.message(a, w, q, http.StatusInternalServerError, "Not recorded",
			"The record book could not be written, and is as it was. Write the job down elsewhere and tell whoever runs this feed.")
	}
	page, err := render("recorded.html", recordedPage{newHead("Recorded"), o})
	if err != nil {
		return f.broken(a, w, err)
	}
	return sendPage(a, w, q, http.StatusOK, page)
}

// origin refuses forms that a browser sends from other sites.
func (f *Feed) origin() *http.CrossOriginProtection {
	c := http.NewCrossOriginProtection()
	if u, err := url.Parse(f.o.Base); err == nil && u.Host != "" {
		c.AddTrustedOrigin(u.Scheme + "://" + u.Host) // behind a proxy that changes the host
	}
	return c
}

// messagePage is a page with one message.
type messagePage struct {
	head
	Text string
}

func (f *Feed) message(a answered, w http.ResponseWriter, q *http.Request, status int, title, text string) answered {
	page, err := render("message.html", messagePage{newHead(title), text})
	if err != nil {
		return f.broken(a, w, err)
	}
	return sendPage(a, w, q, status, page)
}

func (f *Feed) broken(a answered, w http.ResponseWriter, err error) answered {
	f.o.Log.Error("a page could not be written", "error", err.Error())
	return refuse(a, w, http.StatusInternalServerError)
}

// knows tells whether a person is one of the site's, if it names any.
func knows(s *schedule.Site, person string) bool {
	return len(s.Crew.People) == 0 || person == "" ||
		slices.ContainsFunc(s.Crew.People, func(p schedule.Person) bool { return p.ID == person })
}
