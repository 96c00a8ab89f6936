package lesson

import (
	"slices"
	"strconv"
	"strings"
)

// Results are the answers of all sets in tables, a row for each set, that fit a
// page: those of the report, then those of the amounts and days.
func Results(sets []*Lesson) []Given {
	if len(sets) == 0 {
		return nil
	}
	const across = 9 // columns beside the set's number that a page holds
	var tables []Given
	for i, q := range sets[0].Questions() {
		for j, a := range q.Answers {
			same := func(l *Lesson) bool { return l.Questions()[i].Answers[j].Value == a.Value }
			if len(sets) > 1 && !slices.ContainsFunc(sets, func(l *Lesson) bool { return !same(l) }) {
				continue // the same in all sets: the key's steps have it
			}
			if n := len(tables); n == 0 || len(tables[n-1].Head) > across {
				t := Given{Title: "All sets", Head: []string{"Set"}}
				if n > 0 {
					t.Title = "All sets, more"
				}
				for _, l := range sets {
					t.Rows = append(t.Rows, []string{strconv.Itoa(l.Set)})
				}
				tables = append(tables, t)
			}
			t := &tables[len(tables)-1]
			t.Head = append(t.Head, strconv.Itoa(q.N)+" "+a.Name)
			for k, l := range sets {
				t.Rows[k] = append(t.Rows[k], brief(l.Questions()[i].Answers[j].Value))
			}
		}
	}
	return tables
}

// brief writes an answer for a narrow column: a day without its year.
func brief(v string) string {
	if words := strings.Fields(v); len(words) == 4 && len(words[3]) == 4 {
		return strings.Join(words[:3], " ")
	}
	return v
}
