package page

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// visitView answers "what do I do now?": the jobs that are due, else those of
// the next day with work, with all that one needs to do them.
type visitView struct {
	Day, ISO, Small string // "Wed 23 Sep", "2026-09-23", "next, in 5 days: 3 jobs"
	Due             bool   // nothing is ahead of it
	Jobs            []rowView
	Who, With       bool // some job has a person, a material
	How, Rain, Mind []spoken
	Buy             []string
	Spreads         bool
	Lost            string    // jobs that are due, and for which no good day is left
	Then            string    // heading of what comes after jobs that are due
	After           []rowView // and the jobs
}

// spoken is a sentence of some jobs of a visit; Of names them unless it holds for
// all.
type spoken struct{ Of, Text string }

func (b *sheetBuilder) visit(supplies []supplyView) visitView {
	var v visitView
	var jobs, after, lost []*schedule.Entry
	good := map[string]schedule.Date{}
	for _, e := range b.p.AsOf(b.today).Entries {
		good[e.ID] = e.GoodDay
	}
	for i := range b.p.Entries {
		e := &b.p.Entries[i]
		s, _ := b.standing(e)
		switch {
		case e.Kind.Notice():
		case s == "due" && good[e.ID].IsZero() && len(b.p.Chapters) > 0:
			lost = append(lost, e)
		case s == "due":
			jobs = append(jobs, e)
		case s == string(schedule.Planned) && e.Date == b.next:
			after = append(after, e)
		}
	}
	var without []string
	for _, e := range lost {
		without = append(without, jobWords(b.p, e)+" of "+e.Date.DayMonth())
	}
	v.Lost = word.List(without)
	switch {
	case len(jobs) > 0:
		v.Due = true
		v.Then = b.ahead(b.next)
	case len(after) > 0:
		jobs, after = after, nil
	default:
		v.Day, v.Small = "Nothing to do", fmt.Sprintf("until this program ends on %s", b.p.Through.Words())
		if b.today.After(b.p.Through) {
			v.Small = fmt.Sprintf("this program ended on %s", b.p.Through.Words())
		}
		return v
	}
	first := jobs[0].Date
	v.ISO, v.Day = first.String(), dayMonth(first)
	switch {
	case !v.Due:
		v.Small = b.ahead(first)
	case first == b.today:
		v.Day, v.Small = "Today", dayMonth(first)
	default:
		v.Day, v.Small = "Due now", "since "+dayMonth(first)
	}
	v.Small += ": " + word.Plural(len(jobs), "job")
	if v.Due {
		v.Small += b.goodDays(jobs)
	}
	for _, e := range jobs {
		r := b.row(e)
		if d := good[e.ID]; d.After(b.today) {
			r.From = dayMonth(d)
		}
		v.Jobs = append(v.Jobs, r)
		v.Who = v.Who || r.Who != ""
		v.With = v.With || r.With != ""
		v.Spreads = v.Spreads || e.Kind.Spreads()
	}
	for _, e := range after {
		v.After = append(v.After, b.row(e))
	}
	v.Buy = shopping(supplies)
	toBuy := strings.Join(v.Buy, " ")
	steps := func(e *schedule.Entry) []string {
		return slices.DeleteFunc(slices.Clone(e.Steps), func(s string) bool { // the shopping says it
			return strings.HasPrefix(s, "Buy ") && e.MaterialName != "" && strings.Contains(toBuy, e.MaterialName)
		})
	}
	v.How = inTurn(b.common(jobs, steps), jobs, steps)
	v.Rain = b.common(jobs, func(e *schedule.Entry) []string {
		if e.IfRain == "" {
			return nil
		}
		return []string{e.IfRain}
	})
	v.Mind = b.common(jobs, func(e *schedule.Entry) []string { return e.Cautions })
	return v
}

// goodDays tells on which day each of the due jobs can next be done, the
// earliest first: "; next good day Sat 12 Sep, for lime Sat 26 Sep".
func (b *sheetBuilder) goodDays(due []*schedule.Entry) string {
	good := map[string]schedule.Date{}
	for _, e := range b.whole.AsOf(b.today).Entries {
		good[e.ID] = e.GoodDay
	}
	dated := slices.DeleteFunc(slices.Clone(due), func(e *schedule.Entry) bool { return good[e.ID].IsZero() })
	if len(dated) == 0 {
		return ""
	}
	slices.SortStableFunc(dated, func(x, y *schedule.Entry) int { return good[x.ID].Compare(good[y.ID]) })
	text := "; next good day " + dayMonth(good[dated[0].ID])
	for len(dated) > 0 {
		on := good[dated[0].ID]
		n := slices.IndexFunc(dated, func(e *schedule.Entry) bool { return good[e.ID] != on })
		if n < 0 {
			n = len(dated)
		}
		if !strings.HasSuffix(text, dayMonth(on)) {
			text += ", for " + word.Inside(b.namesOf(dated[:n], due)) + " " + dayMonth(on)
		}
		dated = dated[n:]
	}
	return text
}

// ahead tells how far off a day is: "next, in 5 days".
func (b *sheetBuilder) ahead(d schedule.Date) string {
	if d.IsZero() {
		return ""
	}
	when := "tomorrow"
	if n := d.DaysFrom(b.today); n > 1 {
		when = "in " + word.Plural(n, "day")
	}
	if d.Year != b.today.Year {
		when = fmt.Sprintf("%d, %s", d.Year, when)
	}
	return "next, " + when
}

// common gathers what the jobs of a visit say, each thing once: first what all
// of them say, item by item; then, sentence by sentence, what all share, those
// that spread something, those of one kind, some of them, and what only one says.
func (b *sheetBuilder) common(jobs []*schedule.Entry, list func(*schedule.Entry) []string) []spoken {
	says := map[*schedule.Entry][]string{}
	for _, e := range jobs {
		says[e] = list(e)
	}
	shared := func(s string, among []*schedule.Entry) bool {
		return !slices.ContainsFunc(among, func(e *schedule.Entry) bool { return !slices.Contains(says[e], s) })
	}
	var out []spoken
	for _, item := range says[jobs[0]] {
		if shared(item, jobs) {
			out = append(out, spoken{"", item})
		}
	}
	if len(jobs) == 1 {
		return out
	}
	whole := len(out)
	for _, e := range jobs {
		says[e] = sentences(slices.DeleteFunc(slices.Clone(says[e]), func(s string) bool {
			return slices.Contains(out[:whole], spoken{"", s})
		}))
	}
	those := func(are func(*schedule.Entry) bool) []*schedule.Entry {
		return slices.DeleteFunc(slices.Clone(jobs), func(e *schedule.Entry) bool { return !are(e) })
	}
	spreading := those(func(e *schedule.Entry) bool { return e.Material != "" })
	for _, e := range jobs {
		kin := those(func(o *schedule.Entry) bool { return o.Kind == e.Kind })
		for _, s := range says[e] {
			of := jobWords(b.p, e)
			some := those(func(o *schedule.Entry) bool { return slices.Contains(says[o], s) })
			switch {
			case shared(s, jobs):
				of = "Each"
			case e.Material != "" && len(spreading) > 1 && shared(s, spreading):
				of = "What is spread"
			case shared(s, kin):
				of = kindWords(e.Kind)
				if len(some) > len(kin) {
					of = b.namesOf(some, jobs)
				}
			case len(some) > 1:
				of = b.namesOf(some, jobs)
			}
			i := slices.IndexFunc(out[whole:], func(o spoken) bool { return o.Of == of })
			switch {
			case i < 0:
				out = append(out, spoken{of, s})
			case !slices.Contains(sentences([]string{out[whole+i].Text}), s):
				out[whole+i].Text += " " + s
			}
		}
	}
	return out
}

// namesOf names some of the jobs of a visit: by their kinds, or one by one where
// a kind has other jobs too; those of one area together.
func (b *sheetBuilder) namesOf(some, jobs []*schedule.Entry) string {
	var names []string
	elsewhere := func(e *schedule.Entry) bool { return e.Area != some[0].Area }
	if one := strings.TrimPrefix(jobWords(b.p, some[0]), kindWords(some[0].Kind)); one != "" && !slices.ContainsFunc(some, elsewhere) && slices.ContainsFunc(jobs, elsewhere) {
		for i, e := range some {
			name := kindWords(e.Kind)
			if i > 0 {
				name = word.Inside(name)
			}
			names = append(names, name)
		}
		return word.List(names) + one
	}
	for _, e := range some {
		name := kindWords(e.Kind)
		if slices.ContainsFunc(jobs, func(o *schedule.Entry) bool { return o.Kind == e.Kind && !slices.Contains(some, o) }) {
			name = jobWords(b.p, e)
		}
		if len(names) > 0 {
			name = word.Inside(name)
		}
		if !slices.Contains(names, name) && !slices.Contains(names, word.Capital(name)) {
			names = append(names, name)
		}
	}
	return word.List(names)
}

// inTurn puts what the steps of several jobs became back into the order in which the
// jobs take them: nothing is watered in before it is spread.
func inTurn(how []spoken, jobs []*schedule.Entry, steps func(*schedule.Entry) []string) []spoken {
	turn := func(o spoken) int {
		first := math.MaxInt
		for _, e := range jobs {
			i := slices.IndexFunc(sentences(steps(e)), func(s string) bool { return strings.HasPrefix(o.Text, s) })
			if i >= 0 {
				first = min(first, i)
			}
		}
		return first
	}
	slices.SortStableFunc(how, func(a, b spoken) int { return turn(a) - turn(b) })
	return how
}

// sentences parts texts where one sentence ends and the next begins; what
// stands in parentheses, such as a citation, stays whole.
func sentences(texts []string) []string {
	var out []string
	for _, text := range texts {
		from, depth := 0, 0
		for i := 0; i+2 < len(text); i++ {
			switch text[i] {
			case '(':
				depth++
			case ')':
				depth--
			case '.':
				if next := text[i+2]; depth == 0 && text[i+1] == ' ' && 'A' <= next && next <= 'Z' {
					out, from = append(out, text[from:i+1]), i+2
				}
			}
		}
		out = append(out, text[from:])
	}
	return out
}

// shopping writes what to buy by when, a line a day.
func shopping(supplies []supplyView) []string {
	var days, lines []string
	for _, s := range supplies {
		if s.Buy == "" {
			continue
		}
		text := s.Buy + " of " + s.Name
		if s.OnHand != "" {
			text += " (" + s.OnHand + " in the shed)"
		}
		i := slices.Index(days, s.By)
		if i < 0 {
			days = append(days, s.By)
			lines = append(lines, "By "+s.By+": "+text)
			continue
		}
		lines[i] += "; " + text
	}
	for i := range lines {
		lines[i] = word.Sentence(lines[i])
	}
	return lines
}
