package page

import (
	"cmp"
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
	Due             bool   // the jobs are due, and not those of a day to come
	Jobs            []rowView
	Who, With       bool // some job has a person, a material
	How, Rain, Mind spokenList
	Buy             []string
	Spreads         bool
	Lost            string    // jobs that are due, and for which no good day is left
	Then            string    // heading of the jobs to do after those that are due
	After           []rowView // the jobs under that heading
}

// spoken is a sentence about some jobs of a visit. Of names these jobs; "": all of them.
type spoken struct{ Of, Text string }

func (b *sheetBuilder) visit(supplies []supplyView) visitView {
	var v visitView
	var jobs, after, lost []*schedule.Entry
	good := map[string]schedule.Date{} // the next good day of what is due
	for _, e := range b.now.Entries {
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
		if jobs[len(jobs)-1].Date != first {
			v.Small = "the first since " + dayMonth(first)
		}
	}
	v.Small += ": " + word.Plural(len(jobs), "job")
	if v.Due {
		v.Small += b.goodDays(jobs, good)
	}
	apart := slices.ContainsFunc(jobs, func(e *schedule.Entry) bool { return good[e.ID] != good[jobs[0].ID] })
	for _, e := range jobs {
		r := b.row(e)
		if i := slices.IndexFunc(supplies, func(s supplyView) bool { return s.Name == e.MaterialName }); i >= 0 && r.Packs != "" && supplies[i].Size != "" {
			r.Packs += " of " + supplies[i].Size
		}
		if d := good[e.ID]; d.After(b.today) && apart {
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
	v.Buy = b.shopping(supplies)
	toBuy := strings.Join(v.Buy, " ")
	steps := func(e *schedule.Entry) []string {
		return slices.DeleteFunc(slices.Clone(e.Steps), func(s string) bool { // what to buy stands in the shopping
			return strings.HasPrefix(s, "Buy ") && e.MaterialName != "" && strings.Contains(toBuy, e.MaterialName)
		})
	}
	v.How = inTurn(b.common(jobs, steps), jobs, steps)
	v.Rain = together(b.common(jobs, func(e *schedule.Entry) []string {
		if e.IfRain == "" {
			return nil
		}
		return []string{e.IfRain}
	}))
	for _, list := range [][]spoken{v.How, v.Rain} {
		for i := range list {
			if list[i].Of == ofEach {
				list[i].Of = ""
			}
		}
	}
	v.Mind = together(b.common(jobs, func(e *schedule.Entry) []string { return e.Cautions }))
	return v
}

// goodDays tells on which day each of the due jobs can next be done, the
// earliest first: "; next good day Sat 12 Sep, for lime Sat 26 Sep".
func (b *sheetBuilder) goodDays(due []*schedule.Entry, good map[string]schedule.Date) string {
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

// ofEach names all jobs of a visit, one by one.
const ofEach = "Each"

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
				of = ofEach
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
			if one := (spoken{of, s}); !slices.Contains(out[whole:], one) {
				out = append(out, one)
			}
		}
	}
	return out
}

// together puts the sentences of the same jobs into one item.
func together(all []spoken) (out []spoken) {
	for _, o := range all {
		i := slices.IndexFunc(out, func(was spoken) bool { return was.Of == o.Of })
		if i < 0 || o.Of == "" {
			out = append(out, o)
			continue
		}
		out[i].Text += " " + o.Text
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

// inTurn puts the steps of a visit into the order in which one takes them, kind by
// kind: the spreader is set, each area walked, then the water comes. What jobs of
// several kinds share stands behind them where it is their last step, else before them.
func inTurn(how []spoken, jobs []*schedule.Entry, steps func(*schedule.Entry) []string) []spoken {
	type turn struct {
		kind, step int
		jobs       []bool // that take the step
	}
	turns := map[spoken]turn{}
	for _, o := range how {
		t := turn{-1, math.MaxInt, make([]bool, len(jobs))}
		said, several, last := sentences([]string{o.Text}), false, true
		for at, e := range jobs {
			all := sentences(steps(e))
			step := slices.Index(all, said[0])
			if step < 0 {
				continue
			}
			kind := slices.IndexFunc(jobs, func(other *schedule.Entry) bool { return other.Kind == e.Kind })
			several = several || t.kind >= 0 && t.kind != kind
			last = last && step+len(said) == len(all)
			if t.jobs[at] = true; t.kind < 0 {
				t.kind, t.step = kind, step
			}
		}
		switch {
		case several && last:
			t.kind = len(jobs)
		case several:
			t.kind = -1
		}
		turns[o] = t
	}
	slices.SortStableFunc(how, func(a, b spoken) int {
		return cmp.Or(turns[a].kind-turns[b].kind, turns[a].step-turns[b].step)
	})
	var out []spoken
	var takes [][]bool // the jobs of each item
	for _, o := range how {
		t := turns[o]
		i := len(out) - 1 // the last item of one of its jobs
		for i >= 0 && !meet(takes[i], t.jobs) {
			i--
		}
		if i >= 0 && o.Of != "" && out[i].Of == o.Of {
			out[i].Text += " " + o.Text
			continue
		}
		out, takes = append(out, o), append(takes, t.jobs)
	}
	return out
}

// meet tells whether two sets have a member in common.
func meet(a, b []bool) bool {
	for i := range a {
		if a[i] && b[i] {
			return true
		}
	}
	return false
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

// shopping writes what to buy by when, a line a day; what should be there by now
// first. A last line names what the shed has enough of.
func (b *sheetBuilder) shopping(supplies []supplyView) (lines []string) {
	var days []schedule.Date
	var enough []string
	buys := map[schedule.Date][]string{}
	for _, s := range supplies {
		if s.Buy == "" {
			if s.Enough {
				enough = append(enough, s.Name)
			}
			continue
		}
		text := s.Buy
		if s.Size != "" {
			text += " (" + s.Size + ")"
		}
		text += " of " + s.Name
		if s.OnHand != "" {
			text += " (" + s.OnHand + " in the shed)"
		}
		day := s.ByDate
		if !day.After(b.today) {
			day = b.today
		}
		if buys[day] = append(buys[day], text); len(buys[day]) == 1 {
			days = append(days, day)
		}
	}
	slices.SortFunc(days, schedule.Date.Compare)
	for _, day := range days {
		when := "By " + day.Short()
		if day == b.today {
			when = "Now"
		}
		lines = append(lines, word.Sentence(when+": "+strings.Join(buys[day], "; ")))
	}
	if len(lines) > 0 && len(enough) > 0 {
		lines = append(lines, word.Sentence("Enough in the shed: "+strings.Join(enough, ", ")))
	}
	return lines
}
