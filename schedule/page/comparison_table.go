package page

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// consequence is one thing that follows from a program, in each of those
// compared.
type consequence struct {
	What  string
	Cells []consequenceCell
}

type consequenceCell struct {
	Text  string
	Other bool // it differs from the first program's
}

// consequences lays what follows from the programs side by side: for each kind
// of job how often and how much in all, the nitrogen an area gets, the first and
// the last day with work, the last safe day, what is left out.
func consequences(programs []Variant) []consequence {
	var out []consequence
	add := func(what string, of func(*schedule.Program) string) {
		c := consequence{What: what}
		for i, v := range programs {
			text := cmp.Or(of(v.Program), "none")
			c.Cells = append(c.Cells, consequenceCell{text, i > 0 && text != c.Cells[0].Text})
		}
		out = append(out, c)
	}
	var all []*schedule.Program
	for _, v := range programs {
		all = append(all, v.Program)
	}
	for _, k := range lanesOf(all...) {
		add(kindWords(k), func(p *schedule.Program) string { return inAll(p, k) })
	}
	for _, a := range programs[0].Program.Areas {
		add("Nitrogen, "+a.Name, func(p *schedule.Program) string { return nitrogenOf(p, a.ID) })
	}
	day := func(d schedule.Date) string {
		if d.IsZero() {
			return ""
		}
		return d.Short()
	}
	add("First day with work", func(p *schedule.Program) string { first, _ := workdays(p); return day(first) })
	add("Last day with work", func(p *schedule.Program) string { _, last := workdays(p); return day(last) })
	add("Last safe day", func(p *schedule.Program) string { return day(p.Season.LastSafe) })
	add("Left out", func(p *schedule.Program) string {
		if n := len(p.LeftOut); n > 0 {
			return word.Plural(n, "job")
		}
		return ""
	})
	return out
}

// inAll writes how often a kind comes and how much of it: "2 jobs, 167 lb".
func inAll(p *schedule.Program, k schedule.Kind) string {
	n, sum := 0, schedule.Entry{}
	for _, e := range p.Entries {
		if e.Kind == k {
			n++
			sum.Pounds += e.Pounds
			sum.Gallons += e.Gallons
		}
	}
	if n == 0 {
		return ""
	}
	text := word.Plural(n, "job")
	if a := amountOf(&sum, word.Measure{Metric: p.Metric}); a != "" {
		text += ", " + a
	}
	return text
}

func nitrogenOf(p *schedule.Program, area string) string {
	var sum agronomy.PerThousand
	for _, e := range p.Entries {
		if e.Area == area {
			sum += e.N
		}
	}
	if sum == 0 {
		return ""
	}
	return word.Measure{Metric: p.Metric}.NutrientRate(sum, "N")
}

func workdays(p *schedule.Program) (first, last schedule.Date) {
	for _, e := range p.Entries {
		if e.Kind.Notice() {
			continue
		}
		if first.IsZero() || e.Date.Before(first) {
			first = e.Date
		}
		if last.IsZero() || e.Date.After(last) {
			last = e.Date
		}
	}
	return first, last
}

// comparedJob is one job in each of the programs.
type comparedJob struct {
	Name string
	Rows []comparedRow
}

type comparedRow struct{ Label, Day, What string }

// comparedJobs gathers every job by its id, in the order of its first day.
func comparedJobs(programs []Variant) (jobs, left []comparedJob) {
	type key struct {
		id string
		on schedule.Date
	}
	var keys []key
	for _, v := range programs {
		for _, e := range v.Program.Entries {
			i := slices.IndexFunc(keys, func(k key) bool { return k.id == e.ID })
			if i < 0 {
				keys = append(keys, key{e.ID, e.Date})
			} else {
				keys[i].on = schedule.Earlier(keys[i].on, e.Date)
			}
		}
	}
	slices.SortStableFunc(keys, func(a, b key) int { return cmp.Or(a.on.Compare(b.on), cmp.Compare(a.id, b.id)) })
	for _, k := range keys {
		job := comparedJob{}
		for _, v := range programs {
			row := comparedRow{v.Label, "not in it", ""}
			for i := range v.Program.Entries {
				if e := &v.Program.Entries[i]; e.ID == k.id {
					row.Day, row.What = e.Date.Words(), e.Summary
					job.Name = word.Capital(nameOf(e))
				}
			}
			for _, l := range v.Program.LeftOut {
				if l.ID == k.id {
					row.Day, row.What = "left out", l.Reason
				}
			}
			job.Rows = append(job.Rows, row)
		}
		jobs = append(jobs, job)
	}
	var ids []string // of the jobs in left
	for _, v := range programs {
		for _, l := range v.Program.LeftOut {
			if slices.ContainsFunc(keys, func(k key) bool { return k.id == l.ID }) {
				continue // shown with the jobs, as another program has it
			}
			i := slices.Index(ids, l.ID)
			if i < 0 {
				name := word.Capital(named(v.Program, l.ID))
				if slices.ContainsFunc(left, func(j comparedJob) bool { return j.Name == name }) { // of another season
					name += ", " + l.ID[strings.LastIndex(l.ID, "/")+1:]
				}
				ids, left = append(ids, l.ID), append(left, comparedJob{Name: name})
				i = len(left) - 1
			}
			left[i].Rows = append(left[i].Rows, comparedRow{v.Label, "left out", l.Reason})
		}
	}
	return jobs, left
}

// describeProgram says in words what the drawing of a program shows.
func describeProgram(p *schedule.Program) string {
	var days []string
	for _, e := range p.Entries {
		if !e.Kind.Notice() {
			days = append(days, fmt.Sprintf("%s on %s", e.Kind.Noun(), e.Date.Short()))
		}
	}
	return "Time runs to the right. " + word.Sentence(strings.Join(days, ", ")) + " The table of jobs has the same."
}
