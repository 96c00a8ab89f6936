package feed

import (
	"fmt"
	"net/url"
	"slices"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// jobView is one job on the landing page and in the choice of one to record.
type jobView struct {
	Name, Amount, Day, LastSafe, Who string
	Due                              string // until when, and the next good day; "" of a job that is not due
	Standing                         string // of a past job; "" else
	Record                           string // address of its form; "" not to be recorded now
}

// mostPast is how many past jobs that nobody wrote down are listed.
const mostPast = 12

// tell lists the jobs by what there is to do about them today: those that are
// due, those of the next day with work, those whose window has closed with
// nothing written down.
func (l *landing) tell(p *schedule.Program, today schedule.Date, record bool) {
	if !p.Season.LastSafe.IsZero() && !today.After(p.Season.LastSafe) {
		l.LastSafe = p.Season.LastSafe.Words()
	}
	var since, next schedule.Date
	for i := range p.Entries {
		e := &p.Entries[i]
		if e.Kind.Notice() {
			continue
		}
		v := jobOf(p, e, today, record)
		switch standing := p.Standing(e, today); standing {
		case string(schedule.Finished), string(schedule.Missed):
		case "due":
			if since.IsZero() {
				since = e.Date
			}
			l.Due = append(l.Due, v)
		case string(schedule.Planned):
			if next.IsZero() || e.Date == next {
				next = e.Date
				l.Next = append(l.Next, v)
			}
		default:
			l.Past = append(l.Past, v)
		}
	}
	if n := len(l.Past) - mostPast; n > 0 {
		l.Past, l.Earlier = l.Past[n:], n
	}
	l.When, l.Then = heading(today, since, next, p.Through)
}

// heading tells how far off the work is: large what is first, and of jobs that
// are due besides, what comes after them.
func heading(today, since, next, through schedule.Date) (when, then spoken) {
	ahead := func() spoken {
		far := "tomorrow"
		if n := next.DaysFrom(today); n > 1 {
			far = "in " + word.Plural(n, "day")
		}
		if next.Year != today.Year {
			far = fmt.Sprintf("%d, %s", next.Year, far)
		}
		return spoken{next.String(), weekday(next), "next, " + far}
	}
	switch {
	case since.IsZero() && next.IsZero():
		return spoken{"", "Nothing to do", "nothing more is planned until " + through.Words()}, spoken{}
	case since.IsZero():
		return ahead(), spoken{}
	case since == today:
		when = spoken{since.String(), "Today", weekday(since)}
	default:
		when = spoken{since.String(), "Due now", "since " + weekday(since)}
	}
	if !next.IsZero() {
		then = ahead()
	}
	return when, then
}

// spoken is a day as a heading: large and small.
type spoken struct{ ISO, Large, Small string }

// weekday writes "Wed 23 Sep".
func weekday(d schedule.Date) string { return d.Time().Format("Mon 2 Jan") }

// jobOf shows a job. It can be recorded from the day on which it may be done.
func jobOf(p *schedule.Program, e *schedule.Entry, today schedule.Date, record bool) jobView {
	name := e.Kind.Of().Verb
	if e.Kind.Samples() || name == "" {
		name = word.Capital(e.Kind.Noun())
	}
	name = strings.TrimSuffix(strings.TrimSuffix(name, " on"), " for")
	v := jobView{Name: name + ", " + e.AreaName, Day: e.Date.Words(), Who: e.WhoName}
	m := word.Measure{Metric: p.Metric}
	switch {
	case e.Gallons > 0:
		v.Amount = m.Volume(e.Gallons)
	case e.Pounds > 0:
		v.Amount = m.Weight(e.Pounds)
	}
	if !e.LastSafe.IsZero() {
		v.LastSafe = e.LastSafe.Words()
	}
	switch standing := p.Standing(e, today); standing {
	case string(schedule.Planned):
	case string(schedule.Due):
		v.Due = "due until " + e.Latest.Words()
		switch {
		case e.GoodDay == today:
			v.Due += "; today is a good day"
		case !e.GoodDay.IsZero():
			v.Due += "; next good day " + weekday(e.GoodDay)
		}
	case string(schedule.Finished), string(schedule.Missed):
		v.Standing = standing
	default:
		v.Standing = "taken as done"
	}
	if record && recordable(p, e, today) {
		v.Record = formPath + "?job=" + url.QueryEscape(e.ID)
	}
	return v
}

// recordable tells whether a job can have been done by today: nobody is asked in
// November what became of a job for March.
func recordable(p *schedule.Program, e *schedule.Entry, today schedule.Date) bool {
	return p.Standing(e, today) != string(schedule.Planned) || !today.Before(e.Earliest)
}

// choice lists the jobs that can be recorded: first what is due, then what lies
// behind, the newest first; and apart those still ahead.
func choice(p *schedule.Program, today schedule.Date) (now, later []jobView) {
	var past []jobView
	for i := range p.Entries {
		e := &p.Entries[i]
		if e.Kind.Notice() {
			continue
		}
		v := jobOf(p, e, today, true)
		switch {
		case v.Record == "":
			v.Record = formPath + "?job=" + url.QueryEscape(e.ID)
			later = append(later, v)
		case v.Standing == "":
			now = append(now, v)
		default:
			past = append(past, v)
		}
	}
	slices.Reverse(past)
	return append(now, past...), later
}
