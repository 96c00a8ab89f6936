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

// Lengths of a description in characters. Phones show little, and one common
// service cuts near 8,000. // [common]
const (
	goodLength = 2000 // fewer reasons are given above this
	hardLength = 4000 // whole lines are left to the sheet above this
	mostWhys   = 4
)

const (
	moreLine     = "…more in the sheet"
	recordPrefix = "Record: swardbook record FILE "
)

// teller knows what the descriptions of one calendar have in common.
type teller struct {
	program *schedule.Program
	jobs    map[string]string // kind and day of each
	record  string            // address of the done form; "" none
	link    string            // last line; "" none
	room    []byte            // of the description before, used again
}

func newTeller(p *schedule.Program, o Options, link string) *teller {
	t := &teller{p, make(map[string]string, len(p.Entries)), o.Record, link, nil}
	for _, e := range p.Entries {
		t.jobs[e.ID] = strings.ReplaceAll(e.Kind.String(), "-", " ") + ", " + e.Date.Short()
	}
	return t
}

// describe writes the text of one event: what to do first, then when, how,
// cautions, why, what comes next, who, and how to record it. It is meant for a
// narrow screen and for being read aloud, and does not depend on which areas,
// persons or kinds the calendar was asked for.
func (t *teller) describe(e *schedule.Entry) string {
	b := blocks{text: t.room[:0]}
	b.opening(e)
	head := b
	whys := reasons(e)
	whys = whys[:min(mostWhys, len(whys))]
	for {
		b.bullets("Why:", whys)
		t.ending(&b, e)
		if !longer(b.text, goodLength) || len(whys) <= 1 {
			break
		}
		b, whys = head, whys[:len(whys)-1]
	}
	text := string(b.text)
	t.room = b.text
	if !longer(b.text, hardLength) {
		return text
	}
	head.bullets("Why:", whys)
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

// longer tells whether a text has more characters than a limit.
func longer(text []byte, limit int) bool {
	return len(text) > limit && utf8.RuneCount(text) > limit
}

// opening writes the part of the description about the job itself.
func (b *blocks) opening(e *schedule.Entry) {
	switch e.State {
	case schedule.Finished:
		b.line("", "Done "+e.Date.Short()+": "+e.Summary)
		b.line("Record book: ", e.Note)
	case schedule.Missed:
		b.line("", "This was not done: "+e.Summary)
		b.line("Record book: ", e.Note)
		b.gap()
		b.line("", "Do not make up for it on your own. What still fits is in the program as a job of its own.")
	default:
		b.line("", e.Summary)
		b.line("", windowLine(e))
		b.gap()
		b.numbered(e.Steps)
		b.line("", e.IfRain)
		b.bullets("Cautions:", e.Cautions)
	}
	b.gap()
}

// ending writes the part about what follows, whose job it is, and the links.
func (t *teller) ending(b *blocks, e *schedule.Entry) {
	next, who := cmp.Or(t.jobs[e.Next], e.Next), cmp.Or(e.WhoName, e.Who)
	if e.State == schedule.Finished || e.State == schedule.Missed {
		next = "" // so that what is over stays as it is
	}
	b.line("Next: ", next)
	b.line("Who: ", who)
	b.gap()
	if !e.Kind.Notice() {
		b.line(recordPrefix, e.ID)
		if t.record != "" {
			b.line("or here: ", formLink(t.record, e.ID))
		}
	}
	b.gap()
	b.line("", t.link)
}

// formLink gives the address of the form on which one job is recorded.
func formLink(base, job string) string {
	mark := "?"
	if strings.Contains(base, "?") {
		mark = "&"
	}
	return base + mark + "job=" + url.QueryEscape(job)
}

// recordedJob reads the job's id back out of a description, "" when it has none.
func recordedJob(description string) string {
	for line := range strings.SplitSeq(description, "\n") {
		if id, ok := strings.CutPrefix(line, recordPrefix); ok {
			return id
		}
	}
	return ""
}

// windowLine says between which days the job may be done.
func windowLine(e *schedule.Entry) string {
	if e.Kind.Notice() || e.Earliest.IsZero() || e.Latest.IsZero() {
		return ""
	}
	form := schedule.Date.DayMonth
	if e.Earliest.Year != e.Latest.Year {
		form = schedule.Date.Short
	}
	t := "Window: " + form(e.Earliest) + " to " + form(e.Latest)
	if !e.LastSafe.IsZero() {
		t += "; last safe day " + e.LastSafe.Short()
	}
	return t + "."
}

// blocks is a text in the making: lines, and an empty line between blocks.
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

// bullets adds a block of texts under a heading, each once, with a capital letter.
func (b *blocks) bullets(heading string, all []string) {
	b.gap()
	var seen []string
	for _, s := range all {
		s = word.Capital(oneLine(s))
		if s == "" || slices.Contains(seen, s) {
			continue
		}
		if seen == nil {
			b.add("", heading)
			seen = make([]string, 0, len(all))
		}
		seen = append(seen, s)
		b.add("- ", s)
	}
	b.gap()
}
