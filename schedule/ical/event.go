package ical

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// Event is one job as the calendar holds it.
type Event struct {
	UID      string    // letters, digits, '-', '.', '@'; the same for the life of the job
	Sequence int       // 0 at first, one more at every change of the content
	Stamp    time.Time // of that change: DTSTAMP and LAST-MODIFIED, UTC, whole seconds
	Content
}

// Content is what a reader of the calendar gets to see. SEQUENCE and
// LAST-MODIFIED change with it, and only with it.
type Content struct {
	Date        schedule.Date
	Summary     string // one line
	Description string // plain text, several lines
	Location    string // name of the area; "" for the whole site
	Categories  string // one-word categories joined by commas
	Link        string // absolute http or https address; "" none
	Cancelled   bool
	Remind      []time.Duration // alarms, from the start of the day; at most two
}

// equal tells whether a reader would see the same.
func (c Content) equal(d Content) bool {
	return c.Date == d.Date && c.Summary == d.Summary && c.Description == d.Description &&
		c.Location == d.Location && c.Categories == d.Categories && c.Link == d.Link &&
		c.Cancelled == d.Cancelled && slices.Equal(c.Remind, d.Remind)
}

// words names the event for the report of an update: "Lime east lawn (19 Sep 2026)".
func (e Event) words() string {
	return fmt.Sprintf("%s (%s)", bareTitle(e.Summary), e.Date.Short())
}

// Prefixes of SUMMARY that say how far a job has come.
const (
	doneTitle      = "Done: "
	dueTitle       = "Due: "   // from its day to the end of its window
	takenTitle     = "Taken: " // as done as planned, as nobody wrote it down
	missedTitle    = "Missed: "
	cancelledTitle = "Cancelled: "
)

// summaryLength is what a phone shows of a SUMMARY. // [common]
const summaryLength = 44

// titled puts such a prefix before a title, which loses its packs and then part
// of its place where that would grow too long for a phone.
func titled(prefix, title string) string {
	if utf8.RuneCountInString(prefix+title) <= summaryLength {
		return prefix + title
	}
	title = oneLine(title)
	if i := strings.LastIndex(title, " ("); i > 0 && strings.HasSuffix(title, ")") {
		title = title[:i]
	}
	place, amount := title, ""
	if i := strings.LastIndex(title, ", "); i > 0 && word.IsFigure(title[i+2:]) {
		place, amount = title[:i], title[i:]
	}
	return prefix + word.Cut(place, summaryLength-len(prefix)-utf8.RuneCountInString(amount)) + amount
}

// bareTitle gives a SUMMARY without such a prefix.
func bareTitle(summary string) string {
	for _, p := range []string{doneTitle, dueTitle, takenTitle, missedTitle, cancelledTitle} {
		if s, ok := strings.CutPrefix(summary, p); ok {
			return s
		}
	}
	return summary
}

// usualRemind is when a calendar reminds whose site does not say: at 9 in the
// morning of the day before, to buy and to look at the weather, and at 7 on the
// day itself. // [common]
func usualRemind() []time.Duration { return []time.Duration{-15 * time.Hour, 7 * time.Hour} }

// content turns an entry into what the calendar shows of it.
func (t *teller) content(e *schedule.Entry, remind []time.Duration) Content {
	c := Content{
		Date:        e.Date,
		Summary:     titled("", oneLine(e.Title)),
		Description: t.describe(e),
		Location:    oneLine(e.AreaName),
		Categories:  "Lawn," + cmp.Or(e.Kind.Category(), "Job"),
		Link:        t.link(e.ID),
		Remind:      remind,
	}
	switch standing(e) {
	case schedule.Due:
		c.Summary = titled(dueTitle, oneLine(e.Title))
	case schedule.Taken:
		c.Summary, c.Remind = titled(takenTitle, oneLine(e.Title)), nil
	case schedule.Finished:
		c.Summary, c.Remind = titled(doneTitle, oneLine(e.Title)), nil
	case schedule.Missed:
		c.Summary, c.Remind = titled(missedTitle, oneLine(e.Title)), nil
	}
	return c
}

// standing is the state of an entry as an event shows it. A notice is never done, nor is
// what was left of a job once its window has closed.
func standing(e *schedule.Entry) schedule.State {
	if e.State == schedule.Finished && (e.Kind.Notice() || e.Rest) {
		return schedule.Planned
	}
	return e.State
}

// over tells whether a SUMMARY is that of a job which is done or taken as done. Such an
// event is never cancelled.
func over(summary string) bool {
	return strings.HasPrefix(summary, doneTitle) || strings.HasPrefix(summary, takenTitle)
}
