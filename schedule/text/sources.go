package text

import (
	"strings"

	"swardbook/schedule/word"
)

// Source is one reference as it is listed.
type Source struct {
	Key     string   `json:"key"`
	State   string   `json:"state,omitzero"` // of a law
	Cite    string   `json:"cite"`
	Where   string   `json:"where,omitzero"`
	Used    []string `json:"used_in"`
	Checked string   `json:"checked"`
}

// Sources writes references, one paragraph each.
func Sources(all []Source, style Style) string {
	s := newSheet(style)
	for _, r := range all {
		s.head(r.Key)
		s.para(4, strings.TrimSpace(word.Sentence(r.Cite)+" "+r.Where))
		if len(r.Used) > 0 {
			s.para(4, "Used in "+strings.Join(r.Used, ", ")+".")
		}
		s.para(4, word.Capital(word.Sentence(r.Checked)))
	}
	return s.String()
}

// SourceTable gives references as a table.
func SourceTable(all []Source) Table {
	t := Table{Columns: columns("key", "state", "cite", "where", "used_in", "checked")}
	for _, r := range all {
		t.add(r.Key, r.State, r.Cite, r.Where, strings.Join(r.Used, "; "), r.Checked)
	}
	return t
}
