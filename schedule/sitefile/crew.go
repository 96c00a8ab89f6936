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
	c.Budget = t.number("budget", 0.01, 1e6)
	r.readWeekdays(t)
	c.Away = readSpans(t, "away")
	for _, span := range c.Away {
		// An absence shortly before the start may be left from last season. [common] half a year
		if s, p := r.site.Start, r.site.Through; !s.IsZero() && (span.To.Before(s.AddDays(-180)) || !p.IsZero() && span.From.After(p)) {
			t.doubt("away", fmt.Sprintf("%s to %s lies outside the program", span.From, span.To), "is the year right?")
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
	absent := t.under("absent")
	for _, id := range absent.names() {
		spans := readSpans(absent, id)
		if i := slices.Index(ids, id); i >= 0 {
			c.People[i].Absent = spans
		} else {
			absent.wrong(id, fmt.Sprintf("unknown person %q", id), knownPerson(id, ids))
		}
	}
	who := t.under("who")
	for _, jobs := range who.names() {
		person := who.text(jobs)
		if message, hint := r.namesJobs(jobs); message != "" {
			who.wrong(jobs, message, hint)
		} else if person != "" && !slices.Contains(ids, person) {
			who.wrong(jobs, fmt.Sprintf("unknown person %q", person), knownPerson(person, ids))
		}
		c.Who = append(c.Who, schedule.Assignment{Jobs: jobs, Person: person})
	}
}

func knownPerson(id string, ids []string) string {
	if len(ids) == 0 {
		return fmt.Sprintf("add the person: [crew.people] and below it %s = \"Name\"", id)
	}
	return suggest(id, ids)
}

// namesJobs says what is wrong with a name of jobs: an area, a kind, both
// ("west/lime"), or the id of one job ("west/lime/2026-1").
func (r *reader) namesJobs(name string) (message, hint string) {
	areas := areaIDs(&r.site)
	var kinds []string
	for _, k := range schedule.Kinds() {
		kinds = append(kinds, k.String())
	}
	area, kind, both := strings.Cut(name, "/")
	if !both {
		if all := append(areas, kinds...); !slices.Contains(all, name) {
			return "is neither an area nor a kind of job", suggest(name, all)
		}
		return "", ""
	}
	kind, number, one := strings.Cut(kind, "/")
	switch {
	case !slices.Contains(areas, area):
		return fmt.Sprintf("%q is no area", area), suggest(area, areas)
	case !slices.Contains(kinds, kind):
		return fmt.Sprintf("%q is no kind of job", kind), suggest(kind, kinds)
	case one && strings.Trim(number, "0123456789-") != "":
		return fmt.Sprintf("%q is no number of a job", number), "take the job's name from swardbook program or roster"
	}
	return "", ""
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

// readSpans reads absences.
func readSpans(t table, name string) []schedule.Span {
	var out []schedule.Span
	for _, s := range t.texts(name) {
		if span, ok := readSpan(t, name, s); ok {
			out = append(out, span)
		}
	}
	return out
}

// readSpan reads an absence, "2026-10-03/2026-10-11" or one day.
func readSpan(t table, name, s string) (schedule.Span, bool) {
	from, to, two := strings.Cut(s, "/")
	if !two {
		to = from
	}
	a, errA := schedule.ParseDate(from)
	b, errB := schedule.ParseDate(to)
	switch {
	case errA != nil || errB != nil:
		t.wrong(name, fmt.Sprintf("%q is not a run of days", s), `first and last day away, like "2026-10-03/2026-10-11"`)
	case b.Before(a):
		t.wrong(name, fmt.Sprintf("%q ends before it begins", s), "have the two days changed places?")
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
	if l.MaxN > 0 && l.MaxN < 0.1 { // [common] a tenth of what codes allow at once
		t.doubt("max_n_per_application", fmt.Sprintf("%q is %s lb/1000 sq ft, less than any feeding", t.text("max_n_per_application"), written(l.MaxN)), "is it lb/1000 sq ft, not lb/acre?")
	}
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
