package feed

import (
	"errors"
	"fmt"
	"net/http"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/ask"
	"swardbook/schedule/plan"
)

// Media types of the two files to save.
const (
	tomlType = "application/toml; charset=utf-8"
	csvType  = "text/csv; charset=utf-8"
)

// mostYears is how long a site in a link may have been going on, as each season before
// today's is planned anew every time. // [common]
const mostYears = 10

// badAnswers is the error of a code whose answers make no program.
type badAnswers struct {
	code     string
	problems []schedule.Problem
}

func (e *badAnswers) Error() string { return "the answers have errors" }

// loaded makes a site of the answers in a code, or says what is wrong with them.
func loaded(a ask.Answers, today schedule.Date) *reading {
	r := &reading{}
	r.site, r.done, r.problems = ask.Load(a, nil)
	if r.site != nil && today.After(r.site.Start.AddMonths(12*mostYears)) {
		r.site = nil
		r.problems = append(r.problems, schedule.Problem{Key: "start", Message: fmt.Sprintf("lies more than %d years back", mostYears),
			Hint: "a link works out every season each time it is asked; save the site file and keep it on a server, or begin later"})
	}
	return r
}

// linkFile works out one file of a link.
func (f *Feed) linkFile(code, path string, now time.Time) (file, error) {
	a, err := ask.Decode(code)
	if err != nil {
		return file{}, err
	}
	if path == tomlFile || path == bookFile {
		site, book := ask.File(a)
		switch {
		case path == tomlFile:
			return file{path, tomlType, site}, nil
		case book == nil:
			return file{}, errNoFile
		}
		return file{path, csvType, book}, nil
	}
	r := loaded(a, day(now))
	if r.plan("", day(now), f.o.Plan); r.fault != nil {
		return file{}, r.fault
	}
	if r.program == nil {
		return file{}, &badAnswers{code, r.problems}
	}
	t := &tree{base: f.o.Base, code: code, now: now}
	if t.stamp, err = plan.Stamps(r.site, day(now)); err != nil {
		return file{}, err
	}
	return t.file(r.program, path)
}

// Limits of what is worked out for links. Those of the folder have turns of their own,
// so that no link keeps them waiting.
const (
	linkWait = 2 * time.Second  // for a turn // [common]
	linkTime = 10 * time.Second // then whoever asked is sent away // [common]
)

// errOften is the error of a client that has had its share.
var errOften = errors.New("too many requests from one address")

// inLinkTurn works something out when there is a turn for it. A turn lasts until the work
// is really over, also when nobody waits for it any more.
func inLinkTurn[T any](f *Feed, q *http.Request, work func() (T, error)) (T, error) {
	var none T
	who := f.client(q)
	if !f.clients.take(who, f.o.Now()) {
		return none, errOften
	}
	wait := time.NewTimer(linkWait)
	defer wait.Stop()
	select {
	case f.linkTurns <- struct{}{}:
	case <-wait.C:
		return none, errBusy
	case <-q.Context().Done():
		return none, errBusy
	}
	end := begin(func() (T, error) {
		from := f.o.Now()
		defer func() {
			<-f.linkTurns
			f.clients.took(who, f.o.Now().Sub(from))
		}()
		return work()
	})
	over := time.NewTimer(linkTime)
	defer over.Stop()
	select {
	case t := <-end:
		return t.value, t.err
	case <-over.C:
		return none, errBusy
	}
}
