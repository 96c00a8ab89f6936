package text

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// Variant is one program beside others, and how it differs from the first.
type Variant struct {
	Label   string
	Program *schedule.Program
	Changes []schedule.Change // against the first
	Note    string            // what is to be said of it, such as that another key decides; "" none
}

// whats are the kinds of change, in the order in which they are counted.
var whats = []string{"moved", "grew", "shrank", "appeared", "vanished", "left out", "no longer left out", "changed"}

// Tally counts changes in words: "2 moved, 1 grew", or "no change".
func Tally(changes []schedule.Change) string {
	count := map[string]int{}
	for _, c := range changes {
		count[c.What]++
	}
	t := ""
	for _, w := range whats {
		if n := count[w]; n > 0 {
			if t != "" {
				t += ", "
			}
			t += fmt.Sprintf("%d %s", n, w)
		}
	}
	if t == "" {
		return "no change"
	}
	return t
}

// Changes writes what changed, one line a job.
func Changes(changes []schedule.Change, style Style) string {
	s := newSheet(style)
	s.changes(0, changes, func(id string) string { return id })
	return s.String()
}

func (s *sheet) changes(indent int, changes []schedule.Change, name func(id string) string) {
	for _, c := range changes {
		t := name(c.ID) + " " + c.What
		if c.What == "appeared" || c.What == "vanished" { // the text names the job
			t = word.Capital(c.What)
		}
		t += ": " + word.Sentence(c.Text)
		if c.Why != "" {
			t += " " + word.Capital(word.Sentence(c.Why))
		}
		s.hang(indent, "-", t)
	}
}

// Compare writes programs beside the first: a table of their jobs, then what
// changed in each.
func Compare(title string, all []Variant, style Style) string {
	s := newSheet(style)
	s.head(title)
	for _, v := range all[1:] {
		s.para(0, strings.TrimSpace(v.Label+": "+Tally(v.Changes)+". "+v.Note))
	}
	if t := sideBySide(all); len(t.Rows) > 0 {
		s.gap()
		s.table(0, t)
	}
	for _, v := range all[1:] {
		if len(v.Changes) > 0 {
			s.head(v.Label + " against " + all[0].Label)
			s.changes(2, v.Changes, func(id string) string { return nameIn(all, id, true) })
		}
	}
	return s.String()
}

// sideBySide gives the jobs that differ: a row a job, a column a program.
func sideBySide(all []Variant) Table {
	t := Table{Columns: columns("Job")}
	differs := map[string]bool{}
	var ids []string
	for _, v := range all {
		t.Columns = append(t.Columns, Column{Name: v.Label})
		for _, c := range v.Changes {
			differs[c.ID] = true
		}
	}
	for _, v := range all {
		for _, e := range v.Program.Entries {
			if differs[e.ID] && !slices.Contains(ids, e.ID) {
				ids = append(ids, e.ID)
			}
		}
	}
	for _, id := range ids {
		row := []string{nameIn(all, id, false)}
		for _, v := range all {
			row = append(row, cell(v.Program, id))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// nameIn gives the words for a job of any of the programs: its title without the
// amount, and if dated with its day where the program has more jobs of that title.
func nameIn(all []Variant, id string, dated bool) string {
	for _, v := range all {
		p := v.Program
		i := slices.IndexFunc(p.Entries, func(e schedule.Entry) bool { return e.ID == id })
		if i < 0 {
			continue
		}
		e := &p.Entries[i]
		if dated && slices.ContainsFunc(p.Entries, func(o schedule.Entry) bool { return o.ID != id && task(&o) == task(e) }) {
			return task(e) + " of " + e.Date.Short()
		}
		return task(e)
	}
	for _, v := range all {
		for _, l := range v.Program.LeftOut {
			if l.ID == id {
				return strings.TrimSuffix(word.Capital(l.Kind.Noun())+", "+areaName(v.Program, l.Area), ", ")
			}
		}
	}
	return id
}

// cell writes a job's day and amount in one program, in few characters.
func cell(p *schedule.Program, id string) string {
	for i := range p.Entries {
		e := &p.Entries[i]
		if e.ID != id {
			continue
		}
		t := e.Date.Short()
		switch m := measure(p); {
		case e.Gallons > 0:
			t += ", " + m.Volume(e.Gallons)
		case e.Pounds > 0:
			t += ", " + m.Weight(e.Pounds)
		}
		return t
	}
	for _, l := range p.LeftOut {
		if l.ID == id {
			return "left out"
		}
	}
	return "none"
}

// ChangeTable gives the changes of all programs against the first.
func ChangeTable(all []Variant) Table {
	t := Table{Columns: columns("program", "id", "what", "was", "is", "text")}
	for _, v := range all[1:] {
		for _, c := range v.Changes {
			t.add(v.Label, c.ID, c.What, c.Was.String(), c.Is.String(), c.Text)
		}
	}
	return t
}
