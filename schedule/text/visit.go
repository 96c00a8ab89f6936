package text

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"swardbook/agronomy/material"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// ahead writes the jobs that are due, whose day has passed and whose window is
// still open, and the next day with work: how to do them, what if it rains, what
// to take care of and what to buy, each said once.
func (s *sheet) ahead(p *schedule.Program) {
	var due, next []*schedule.Entry
	for i := range p.Entries {
		e := &p.Entries[i]
		st := p.Standing(e, s.Today)
		switch {
		case e.Kind.Notice() || st != "due" && st != string(schedule.Planned):
		case e.Date.Before(s.Today):
			due = append(due, e)
		case len(next) == 0 || next[0].Date == e.Date:
			next = append(next, e)
		}
	}
	if len(due) > 0 {
		s.head("Due, and not in the record book")
		s.jobLines(p, due, true)
		s.para(2, s.goodDays(p, due))
		s.howTo(p, due, nil)
	}
	if len(next) > 0 {
		s.head("Next: " + s.dayAhead(next[0].Date))
		s.jobLines(p, next, false)
		s.howTo(p, next, due)
	}
	if len(due)+len(next) == 0 {
		s.gap()
		if p.Later.IsZero() {
			s.para(0, "Nothing is left to do in this program, which ends on "+p.Through.Short()+".")
		} else {
			s.para(0, "Nothing is left to do this season; the next job comes on "+p.Later.Short()+".")
		}
	}
}

// howTo writes how to do some jobs, and what else goes with them that was not
// said of those before.
func (s *sheet) howTo(p *schedule.Program, jobs, before []*schedule.Entry) {
	s.para(2, how(p, jobs))
	s.para(2, once(jobs, before, func(e *schedule.Entry) []string { return strings.Split(e.IfRain, ". ") }))
	if mind := once(jobs, before, func(e *schedule.Entry) []string { return e.Cautions }); mind != "" {
		s.para(2, "Mind: "+mind)
	}
	if buy := toBuy(p, jobs, before); buy != "" {
		s.para(2, "Buy first: "+buy+".")
	}
}

// dayAhead writes a day and how far off it is.
func (s *sheet) dayAhead(d schedule.Date) string {
	n := d.DaysFrom(s.Today)
	switch {
	case s.Today.IsZero():
		return d.Words()
	case n == 0:
		return weekday(d, s.Today) + ", today"
	case n == 1:
		return weekday(d, s.Today) + ", tomorrow"
	}
	return fmt.Sprintf("%s, in %d days", weekday(d, s.Today), n)
}

// jobLines writes one line a job: what, how much, by whom and until when. If dated, each
// line begins with the day of the job.
func (s *sheet) jobLines(p *schedule.Program, jobs []*schedule.Entry, dated bool) {
	const most = 30 // [common] of a title, so that the line stays one
	t := Table{Columns: columns("", "", "", "", "")}
	for _, e := range jobs {
		last := ""
		if l := latest(e); !l.IsZero() {
			last = "last safe day " + weekday(l, e.Date)
		}
		if dated {
			last = until(e)
		}
		t.add(weekday(e.Date, s.Today), word.Cut(task(e), most), strings.TrimPrefix(amount(p, e)+word.InPacks(e.Packs), "-"), whoName(e), last)
	}
	for _, i := range []int{3, 2} { // columns left out if no job has a person, or an amount
		if !slices.ContainsFunc(t.Rows, func(r []string) bool { return r[i] != "" }) {
			t = t.without(i)
		}
	}
	if !dated {
		t = t.without(0)
	}
	s.bare(2, t)
}

// until says until when a job is due: its last safe day, or the end of its window.
func until(e *schedule.Entry) string {
	if e.LastSafe == e.Latest {
		return "last safe day " + weekday(e.Latest, e.Date)
	}
	return "until " + weekday(e.Latest, e.Date)
}

// goodDays says on which day each of some due jobs can next be done.
func (s *sheet) goodDays(p *schedule.Program, due []*schedule.Entry) string {
	var all []string
	days := map[schedule.Date][]string{}
	var none []string
	for _, e := range due {
		name := word.Inside(task(e))
		if slices.ContainsFunc(due, func(o *schedule.Entry) bool { return o != e && task(o) == task(e) }) {
			name += " of " + e.Date.DayMonth()
		}
		if e.GoodDay.IsZero() {
			none = append(none, name)
			continue
		}
		days[e.GoodDay] = append(days[e.GoodDay], name)
	}
	for _, d := range slices.SortedFunc(maps.Keys(days), schedule.Date.Compare) {
		day := weekday(d, s.Today)
		if d == s.Today {
			day += ", today"
		}
		if len(days[d]) < len(due) {
			day += " for " + word.List(days[d])
		}
		all = append(all, day)
	}
	out := ""
	if len(all) > 0 {
		out = "Next good day: " + strings.Join(all, "; ") + "."
	}
	if len(none) > 0 && len(p.Chapters) > 0 {
		out += " No good day is left for " + word.List(none) + "."
	}
	return strings.TrimSpace(out)
}

// task is a title without its amount: "Lime East lawn".
func task(e *schedule.Entry) string {
	if i := strings.LastIndex(e.Title, ", "); i > 0 {
		amount, rest := strings.CutPrefix(e.Title[i+2:], "the other ")
		switch {
		case word.IsFigure(amount) && rest:
			return e.Title[:i] + ", the rest"
		case word.IsFigure(amount):
			return e.Title[:i]
		}
	}
	return e.Title
}

// amount is how much goes down, or "-".
func amount(p *schedule.Program, e *schedule.Entry) string {
	m := measure(p)
	switch {
	case e.Gallons > 0:
		return m.Volume(e.Gallons)
	case e.Pounds > 0:
		return m.Weight(e.Pounds)
	}
	return "-"
}

// latest is the last day on which a job still to be done is safe.
func latest(e *schedule.Entry) schedule.Date {
	if !e.LastSafe.IsZero() {
		return e.LastSafe
	}
	return e.Latest
}

// weekday writes "Mon 16 Nov", with the year where it is not that of another day.
func weekday(d, near schedule.Date) string {
	t := d.Weekday().String()[:3] + " "
	if d.Year == near.Year {
		return t + d.DayMonth()
	}
	return t + d.Short()
}

// how says in one line how the jobs of a visit are done.
func how(p *schedule.Program, jobs []*schedule.Entry) string {
	m, out := measure(p), ""
	spreads := func(e *schedule.Entry) bool { return e.Material != "" && !e.Dose.Material.Liquid }
	if slices.ContainsFunc(jobs, spreads) {
		out = "Spread half one way, half across."
	}
	var depths []string
	kinds := map[string][]string{}
	for _, e := range jobs {
		if e.Material == "" || e.WaterIn == 0 {
			continue
		}
		d := m.Depth(e.WaterIn)
		k := e.Kind.Noun() + " within " + word.Plural(e.Dose.WaterIn(material.Use(e.Kind.String())).WithinHours, "hour")
		if !slices.Contains(depths, d) {
			depths = append(depths, d)
		}
		if !slices.Contains(kinds[d], k) {
			kinds[d] = append(kinds[d], k)
		}
	}
	for _, d := range depths {
		out += " Water in " + d + ": " + word.List(kinds[d]) + "."
	}
	return strings.TrimSpace(out)
}

// once joins the sentences of several jobs, each said once. A sentence with which another
// one begins is left out, and so is one that was said of the jobs before. The sentences
// that all kinds share come first, then those of some kinds, which are named.
func once(jobs, before []*schedule.Entry, of func(*schedule.Entry) []string) string {
	gather := func(jobs []*schedule.Entry) (all []string, kinds map[string][]string) {
		kinds = map[string][]string{}
		for _, e := range jobs {
			for _, t := range of(e) {
				if t = word.Capital(word.Sentence(t)); t == "" {
					continue
				}
				if kinds[t] == nil {
					all = append(all, t)
				}
				if k := e.Kind.Noun(); !slices.Contains(kinds[t], k) {
					kinds[t] = append(kinds[t], k)
				}
			}
		}
		return all, kinds
	}
	earlier, _ := gather(before)
	all, kinds := gather(jobs)
	all = slices.DeleteFunc(all, func(t string) bool { return slices.Contains(earlier, t) })
	said := func(t string) bool {
		return slices.ContainsFunc(all, func(o string) bool {
			other := func(k string) bool { return !slices.Contains(kinds[o], k) }
			return o != t && strings.HasPrefix(o, strings.TrimSuffix(t, ".")) && !slices.ContainsFunc(kinds[t], other)
		})
	}
	nouns := map[string]bool{}
	for _, e := range jobs {
		nouns[e.Kind.Noun()] = true
	}
	var order []string
	texts := map[string][]string{}
	for _, t := range slices.DeleteFunc(slices.Clone(all), said) {
		whose := ""
		if len(kinds[t]) < len(nouns) {
			whose = word.Capital(word.List(kinds[t])) + ": "
			t = word.Inside(t)
		}
		if texts[whose] == nil {
			order = append(order, whose)
		} else if whose != "" {
			t = word.Capital(t)
		}
		texts[whose] = append(texts[whose], t)
	}
	slices.SortStableFunc(order, func(a, b string) int { return min(len(a), 1) - min(len(b), 1) }) // those of all first
	var out []string
	for _, whose := range order {
		out = append(out, whose+strings.Join(texts[whose], " "))
	}
	return strings.Join(out, " ")
}

// toBuy lists what a visit needs that the shed does not hold, and that was not
// listed for the jobs before.
func toBuy(p *schedule.Program, jobs, before []*schedule.Entry) string {
	if p.Site == nil {
		return ""
	}
	var all []string
	var last schedule.Date
	for _, e := range jobs {
		last = schedule.Later(last, schedule.Later(e.Date, e.GoodDay))
	}
	for _, b := range p.Supplies() {
		uses := func(e *schedule.Entry) bool { return e.Material == b.Material }
		if b.By.IsZero() || b.By.After(last) || !slices.ContainsFunc(jobs, uses) || slices.ContainsFunc(before, uses) {
			continue
		}
		switch {
		case b.Buy > 0:
			all = append(all, fmt.Sprintf("%s, %s of %s", b.Name, word.Packs(float64(b.Buy)), b.PackSize))
		case b.PackSize == "" && b.Pounds > 0:
			all = append(all, b.Name+", "+measure(p).Weight(b.Pounds))
		}
	}
	return strings.Join(all, "; ")
}
