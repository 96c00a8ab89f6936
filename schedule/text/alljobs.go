package text

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// everyJob writes all jobs, a line each under their years.
func (s *sheet) everyJob(p *schedule.Program) {
	const when, most = len("Wed 23 Sep"), 34 // [common] a name longer than that is cut
	what, much, who, last, id := 0, 0, 0, len("last safe"), 0
	type line struct {
		e                      *schedule.Entry
		what, much, who, until string
	}
	var all []line
	for i := range p.Entries {
		e := &p.Entries[i]
		n := line{e: e, what: clean(task(e)), until: s.until(p, e)}
		if !e.Kind.Notice() {
			n.much, n.who = amount(p, e), clean(whoName(e))
			id = max(id, utf8.RuneCountInString(e.ID))
		}
		what, much, who = max(what, min(most, utf8.RuneCountInString(n.what))), max(much, utf8.RuneCountInString(n.much)), max(who, min(12, utf8.RuneCountInString(n.who)))
		last = max(last, utf8.RuneCountInString(n.until))
		all = append(all, n)
	}
	if len(all) == 0 {
		return
	}
	// Where a line is too long for the width, the name of the job is cut first; if that
	// is not enough, the ids are left out.
	if who == 0 {
		who = -2 // no column, and no gap before it
	}
	rest := func() int { return s.Width - 2 - when - 2 - 2 - much - 2 - who - 2 - last - 2 - id }
	const least = 18 // [common] "Potassium on East…"
	if rest() < min(what, least) {
		id = -2
	}
	what = min(what, max(rest(), least))
	pad := func(t string, n int) string {
		t = word.Cut(t, n)
		return t + strings.Repeat(" ", max(0, n-utf8.RuneCountInString(t)))
	}
	s.gap()
	s.b.WriteString(s.bold(pad("All jobs", 2+when+2+what+2+much+2+who+2)+"last safe") + "\n")
	year, day := 0, schedule.Date{}
	for _, n := range all {
		date := ""
		if n.e.Date.Year != year {
			year = n.e.Date.Year
			s.b.WriteString(strconv.Itoa(year) + "\n")
		}
		if n.e.Date != day {
			day = n.e.Date
			date = fmt.Sprintf("%.3s %2d %.3s", day.Weekday(), day.Day, day.Month)
		}
		text := "  " + pad(date, when) + "  "
		if n.e.Kind.Notice() {
			s.b.WriteString(strings.TrimRight(text+word.Cut(n.what, s.Width-when-4), " ") + "\n")
			continue
		}
		text += pad(n.what, what) + "  " + pad(n.much, much) + "  "
		if who > 0 {
			text += pad(n.who, who) + "  "
		}
		text += pad(n.until, last)
		if id > 0 {
			text += "  " + n.e.ID
		}
		s.b.WriteString(strings.TrimRight(text, " ") + "\n")
	}
}

// until writes the last safe day of a job still to be done, else its state.
func (s *sheet) until(p *schedule.Program, e *schedule.Entry) string {
	st := p.Standing(e, s.Today)
	if e.Kind.Notice() {
		return ""
	}
	if st != "due" && st != string(schedule.Planned) {
		return st
	}
	l := latest(e)
	if l.IsZero() || l.Year == e.Date.Year {
		return l.DayMonth()
	}
	return l.Short()
}
