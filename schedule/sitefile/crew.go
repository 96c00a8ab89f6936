package sitefile

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"swardbook/agronomy"
	"swardbook/schedule"
	"swardbook/schedule/law"
)

func (r *reader) readCrew(top table) {
	t := top.under("crew")
	c := &r.site.Crew
	c.Paid = t.flag("paid")
	r.readWeekdays(t)
	for _, s := range t.texts("away") {
		if span, ok := readSpan(t, s); ok {
			c.Away = append(c.Away, span)
		}
	}
	c.JobsPerDay = int(t.number("jobs_per_day", 1, 100))

	people := t.under("people")
	var ids []string
	for _, id := range people.names() {
		if message, hint := isID(id); message != "" {
			people.wrong(id, message, hint)
		}
		c.People = append(c.People, schedule.Person{ID: id, Name: people.text(id)})
		ids = append(ids, id)
	}
	who := t.under("who")
	subjects := areaIDs(&r.site)
	for _, k := range schedule.Kinds() {
		subjects = append(subjects, k.String())
	}
	for _, subject := range who.names() {
		person := who.text(subject)
		if !slices.Contains(subjects, subject) {
			who.wrong(subject, "is neither an area nor a kind of job", suggest(subject, subjects))
		} else if person != "" && !slices.Contains(ids, person) {
			hint := suggest(person, ids)
			if len(ids) == 0 {
				hint = fmt.Sprintf("add the person: [crew.people] and below it %s = \"Name\"", person)
			}
			who.wrong(subject, fmt.Sprintf("unknown person %q", person), hint)
		}
		c.Who = append(c.Who, schedule.Assignment{KindOrArea: subject, Person: person})
	}
}

func (r *reader) readWeekdays(t table) {
	days := t.texts("days")
	if !t.given("days") {
		r.assume("working days not given: jobs may fall on any day of the week")
		return
	}
	if list, ok := t.values["days"].([]any); ok && len(list) == 0 {
		t.wrong("days", "no day is left to work on", `like days = ["sat", "wed"], or remove the key for every day`)
	}
	for _, s := range days {
		day, ok := weekday(s)
		switch {
		case !ok:
			t.wrong("days", fmt.Sprintf("unknown day %q", s), "known: mon, tue, wed, thu, fri, sat, sun")
		case slices.Contains(r.site.Crew.Days, day):
			t.doubt("days", fmt.Sprintf("%s is listed twice", day), "is another day meant?")
		default:
			r.site.Crew.Days = append(r.site.Crew.Days, day)
		}
	}
}

func weekday(s string) (time.Weekday, bool) {
	s = strings.ToLower(s)
	for d := range time.Saturday + 1 {
		if name := strings.ToLower(d.String()); s == name || s == name[:3] {
			return d, true
		}
	}
	return 0, false
}

// readSpan reads an absence, "2026-10-03/2026-10-11" or one day.
func readSpan(t table, s string) (schedule.Span, bool) {
	from, to, two := strings.Cut(s, "/")
	if !two {
		to = from
	}
	a, errA := schedule.ParseDate(from)
	b, errB := schedule.ParseDate(to)
	switch {
	case errA != nil || errB != nil:
		t.wrong("away", fmt.Sprintf("%q is not a run of days", s), `first and last day away, like "2026-10-03/2026-10-11"`)
	case b.Before(a):
		t.wrong("away", fmt.Sprintf("%q ends before it begins", s), "have the two days changed places?")
	default:
		return schedule.Span{From: a, To: b}, true
	}
	return schedule.Span{}, false
}

// readLocal fills the site's own stricter rules.
func (r *reader) readLocal(top table) {
	t := top.under("local")
	l := &r.site.Local
	l.NoNitrogen = closedDays(t, "no_nitrogen")
	l.NoPhosphorus = closedDays(t, "no_phosphorus")
	l.MaxN = float64(quantity(t, "max_n_per_application", above(agronomy.ParseRate)))
	l.Note = t.text("note")
	if len(l.NoNitrogen)+len(l.NoPhosphorus) > 0 || l.MaxN > 0 {
		if !t.given("note") {
			t.doubt("note", "is missing", "say where the rule comes from, so that others can look it up")
		}
	}
}

func closedDays(t table, name string) []law.Span {
	var out []law.Span
	for _, s := range t.texts(name) {
		from, to, _ := strings.Cut(s, "/")
		m1, d1, ok1 := monthDay(from)
		m2, d2, ok2 := monthDay(to)
		if !ok1 || !ok2 {
			t.wrong(name, fmt.Sprintf("%q is not a run of days of the year", s), `first and last closed day, like "11-15/03-01"`)
			continue
		}
		out = append(out, law.Span{From: law.MonthDay{Month: m1, Day: d1}, To: law.MonthDay{Month: m2, Day: d2}})
	}
	return out
}
