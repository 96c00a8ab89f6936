package feed

import (
	"errors"
	"fmt"
	"net/http"
	"time"

	"swardbook/schedule"
	"swardbook/schedule/ask"
	"swardbook/schedule/door"
	"swardbook/schedule/page"
	"swardbook/schedule/plan"
)

// Media types of the two files to save.
const (
	tomlType = "application/toml; charset=utf-8"
	csvType  = "text/csv; charset=utf-8"
)

// badAnswers is the error of a code whose answers make no program.
type badAnswers struct {
	code     string
	problems []schedule.Problem
}

func (e *badAnswers) Error() string { return "the answers have errors" }

// planned plans the answers of a link.
func (f *Feed) planned(code string, a ask.Answers, today schedule.Date) (*schedule.Program, error) {
	r := &reading{}
	r.site, r.done, r.problems = door.Load(a, today)
	if r.plan("", today, f.o.Plan); r.fault != nil {
		return nil, r.fault
	}
	if r.program == nil {
		return nil, &badAnswers{code, r.problems}
	}
	return r.program, nil
}

// linkFile works out one file of a link. The page tells what moved since other answers.
func (f *Feed) linkFile(code, path, was string, now time.Time) (file, error) {
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
	p, err := f.planned(code, a, day(now))
	if err != nil {
		return file{}, err
	}
	t := &tree{base: f.o.Base, code: code, now: now}
	if path == landingFile {
		body, err := f.linkPage(t, a, p, was)
		return file{path, htmlType, body}, err
	}
	if t.stamp, err = plan.Stamps(p.Site, day(now)); err != nil {
		return file{}, err
	}
	return t.file(p, path)
}

// linkPage writes the page behind a link.
func (f *Feed) linkPage(t *tree, a ask.Answers, p *schedule.Program, was string) ([]byte, error) {
	today := day(t.now)
	to := page.Answered{Today: today, Change: within(t.code, askPath), Link: t.address(landingFile), Subscribe: t.address(calendarFile),
		Calendar: within(t.code, calendarFile), Site: within(t.code, tomlFile), Sheet: within(t.code, sheetFile), Again: "../" + askPath}
	if len(a.Names("record")) > 0 {
		to.Record = within(t.code, bookFile)
	}
	for _, part := range door.Parts(p)[1:] {
		path := part.Path() + ".ics"
		to.Each = append(to.Each, page.Own{Name: part.Name, Subscribe: t.address(path), Calendar: within(t.code, path)})
	}
	if before, err := ask.Decode(was); err == nil {
		to.Was, _ = f.planned(was, before, today) // without a program there is nothing to compare with
	}
	body, err := page.Answer(p.AsOf(today), to)
	if err != nil {
		return nil, fmt.Errorf("the page: %w", err)
	}
	return body, nil
}

// Limits of what is worked out for links. Those of the folder have turns of their own,
// so that no link keeps them waiting.
const (
	linkWait = 2 * time.Second  // so long a request waits for a turn // [common]
	linkTime = 10 * time.Second // after it, the request is answered with a refusal // [common]
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
	end := begin(aside, func() (T, error) {
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
