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
	s.changes(0, changes)
	return s.String()
}

func (s *sheet) changes(indent int, changes []schedule.Change) {
	for _, c := range changes {
		t := c.ID + " " + c.What + ": " + word.Sentence(c.Text)
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
			s.changes(2, v.Changes)
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
		row := []string{id}
		for _, v := range all {
			row = append(row, cell(v.Program, id))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
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
