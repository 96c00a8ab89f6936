package ical

import (
	"cmp"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// hardLength is the most characters of a description. Of a longer one, whole lines are
// left out for the page to tell; one common service cuts near 8,000. // [common]
const hardLength = 4000

const (
	moreLine     = "…more on the page"
	recordPrefix = "Record: swardbook record FILE "
)

// teller knows what the descriptions of one calendar have in common.
type teller struct {
	jobs   map[string]*schedule.Entry
	days   map[schedule.Date][]*schedule.Entry
	record string // address of the done form; "" none
	page   string // address of the page with the jobs; "" none
	closes bool   // the calendar has a closing sentence
	room   []byte // memory of the description before, used again
}

func newTeller(p *schedule.Program, o Options, page string) *teller {
	t := &teller{make(map[string]*schedule.Entry, len(p.Entries)), make(map[schedule.Date][]*schedule.Entry, len(p.Entries)), o.Record, page, o.Closing != "", nil}
	for i := range p.Entries {
		e := &p.Entries[i]
		t.jobs[e.ID] = e
		t.days[e.Date] = append(t.days[e.Date], e)
	}
	return t
}

// describe writes the text of one event: what to do first, then how, what if it
// rains or only half gets done, cautions, why, what else there is, and how to
// record it. It is meant for a narrow screen and for being read aloud, and does
// not depend on which areas, persons or kinds the calendar was asked for.
func (t *teller) describe(e *schedule.Entry) string {
	b := blocks{text: t.room[:0]}
	b.opening(e)
	head := b
	t.ending(&b, e)
	text := string(b.text)
	t.room = b.text
	if len(text) <= hardLength || utf8.RuneCountInString(text) <= hardLength {
		return text
	}
	var end blocks
	t.ending(&end, e)
	rest := strings.Split(string(head.text), "\n")
	for utf8.RuneCountInString(text) > hardLength && len(rest) > 1 {
		rest = rest[:len(rest)-1]
		kept := strings.TrimSpace(strings.Join(rest, "\n"))
		text = strings.TrimSpace(kept + "\n\n" + moreLine + "\n\n" + string(end.text))
	}
	return text
}

// opening writes the part of the description about the job itself.
func (b *blocks) opening(e *schedule.Entry) {
	switch standing(e) {
	case schedule.Finished:
		b.line("", "Done "+e.Date.Short()+": "+e.Summary)
		b.line("Record book: ", e.Note)
	case schedule.Missed:
		b.line("", "This was not done: "+e.Summary)
		b.line("Record book: ", e.Note)
		b.gap()
		b.line("", "Do not make up for it: what still fits is planned as another job.")
	case schedule.Taken:
		b.line("", "Taken as done as planned: "+e.Summary)
		b.line("", "It is not recorded, so it counts as done. If it was done otherwise or not at all, record that: the rest is planned again.")
	default:
		b.line("", word.Sentence(strings.TrimSpace(e.Summary+" "+cmp.Or(e.WhoName, e.Who))))
		if e.State == schedule.Due {
			b.line("", "Due until "+e.Latest.Words()+": not recorded yet.")
		} else {
			b.line("", windowLine(e))
		}
		b.gap()
		b.numbered(e.Steps)
		b.gap()
		b.line("Rain: ", word.Inside(e.IfRain))
		if e.Material != "" {
			b.line("", OnlyHalf)
		}
		b.gap()
		b.line("Mind: ", sentences(e.Cautions))
		b.gap()
		b.line("Why: ", sentences(reasons(e)))
	}
	b.gap()
}

// OnlyHalf says what becomes of the rest of a job of which a part was done.
const OnlyHalf = "Done in part? Record how much; the rest is planned anew."

// ending writes what else there is to do, and the links.
func (t *teller) ending(b *blocks, e *schedule.Entry) {
	if s := standing(e); s != schedule.Finished && s != schedule.Missed { // what is over stays as it is
		b.line("", strings.TrimSpace(t.sameDay(e)+" "+t.then(e)))
		b.gap()
		switch {
		case e.Kind.Notice():
		case t.record != "":
			b.line("Record: ", formLink(t.record, e.ID))
		case t.page == "" && !t.closes: // a calendar with a closing sentence has no site file behind it
			b.line(recordPrefix, e.ID)
		}
		b.gap()
	}
	b.line("", t.link(e.ID))
}

// sameDay names the other jobs that the same person has on the day.
func (t *teller) sameDay(e *schedule.Entry) string {
	var also []string
	for _, o := range t.days[e.Date] {
		if o != e && o.Who == e.Who && (o.State == schedule.Planned || o.State == schedule.Due) && !o.Kind.Notice() {
			also = append(also, word.Inside(oneLine(o.Title)))
		}
	}
	const most = 3 // [common] as many as are taken in at a glance
	if n := len(also); n > most {
		also = append(also[:most-1], word.Plural(n-most+1, "more job"))
	}
	if e.Kind.Notice() || also == nil {
		return ""
	}
	return "Same day: " + word.Sentence(strings.Join(also, "; "))
}

// then names the next job in the area on a later day.
func (t *teller) then(e *schedule.Entry) string {
	n := t.jobs[e.Next]
	for n != nil && n.Date == e.Date {
		n = t.jobs[n.Next]
	}
	if n == nil {
		return ""
	}
	day := n.Date.DayMonth()
	if n.Date.Year != e.Date.Year {
		day = n.Date.Short()
	}
	return "Then " + day + ": " + n.Kind.Noun() + "."
}

// link gives the address of a job's own place on the page, "" without a page.
func (t *teller) link(job string) string {
	if t.page == "" || strings.Contains(t.page, "#") {
		return t.page
	}
	return t.page + "#" + anchor(job)
}

// anchor is the name that a job has inside the page.
func anchor(job string) string { return "job-" + strings.ReplaceAll(job, "/", "-") }

// formLink gives the address of the form on which one job is recorded.
func formLink(base, job string) string {
	mark := "?"
	if strings.Contains(base, "?") {
		mark = "&"
	}
	return base + mark + "job=" + url.QueryEscape(job)
}

// tells tells whether a description is that of the job of an id: its line for the record or
// its link names it.
func tells(description, job string) bool {
	for line := range strings.SplitSeq(description, "\n") {
		if line == recordPrefix+job || strings.HasSuffix(line, "#"+anchor(job)) || strings.HasSuffix(line, "job="+url.QueryEscape(job)) {
			return true
		}
	}
	return false
}

// windowLine says between which days the job may be done.
func windowLine(e *schedule.Entry) string {
	if e.Kind.Notice() || e.Earliest.IsZero() || e.Latest.IsZero() {
		return ""
	}
	last := cmp.Or(e.LastSafe, e.Latest)
	form := schedule.Date.DayMonth
	if e.Earliest.Year != last.Year {
		form = schedule.Date.Short
	}
	if e.LastSafe.IsZero() {
		return "Any day from " + form(e.Earliest) + " to " + last.Words() + "."
	}
	return "Any day from " + form(e.Earliest) + ". Last safe day " + last.Words() + "."
}

// sentences puts texts one behind the other, each once.
func sentences(all []string) string {
	var out []string
	for _, s := range all {
		if s = word.Sentence(word.Capital(oneLine(s))); s != "" && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return strings.Join(out, " ")
}

// blocks is a text that is being written: lines, with an empty line between blocks.
type blocks struct {
	text    []byte
	between string // what comes before the next line
}

// line adds a line of some words and a text, unless the text is empty, and tells
// whether it did.
func (b *blocks) line(words, text string) bool {
	if text = oneLine(text); text == "" {
		return false
	}
	b.add(words, text)
	return true
}

// add is [blocks.line] for a text that is known to be one clean line.
func (b *blocks) add(words, text string) {
	b.text = append(append(append(b.text, b.between...), words...), text...)
	b.between = "\n"
}

// gap ends a block.
func (b *blocks) gap() {
	if len(b.text) > 0 {
		b.between = "\n\n"
	}
}

func (b *blocks) numbered(steps []string) {
	n := 1
	for _, s := range steps {
		if b.line(strconv.Itoa(n)+". ", s) {
			n++
		}
	}
}
