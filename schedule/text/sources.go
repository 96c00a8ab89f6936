package text

import (
	"fmt"
	"strconv"
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

	Tag     string `json:"tag"` // the short name beside a figure
	By      string `json:"by,omitzero"`
	Title   string `json:"title,omitzero"`
	Year    string `json:"year,omitzero"`
	In      string `json:"in,omitzero"`
	Note    string `json:"note,omitzero"`
	Figures int    `json:"figures"` // places in the code that name it beside a figure or a rule
}

// SourceGroup is a part of the list.
type SourceGroup struct {
	Head, Words string
	Sources     []Source
}

// Sources writes references, one paragraph each, the address last.
func Sources(groups []SourceGroup, style Style) string {
	s := newSheet(style)
	for _, g := range groups {
		if g.Head != "" {
			s.head(g.Head)
			s.para(0, g.Words)
		}
		for _, r := range g.Sources {
			s.head(r.Tag)
			s.para(4, word.Sentence(r.Cite))
			if r.Figures > 0 {
				s.para(4, fmt.Sprintf("%s: %s.", word.Plural(r.Figures, "place"), strings.Join(r.Used, ", ")))
			}
			s.para(4, fmt.Sprintf("%s. Key: %s.", word.Capital(strings.TrimSuffix(r.Checked, ".")), r.Key))
			if r.Where != "" {
				s.para(4, r.Where)
			}
		}
	}
	return s.String()
}

// SourceTable gives references as a table.
func SourceTable(all []Source) Table {
	t := Table{Columns: columns("key", "state", "cite", "where", "used_in", "checked", "tag", "by", "title", "year", "in", "note", "figures")}
	for _, r := range all {
		t.add(r.Key, r.State, r.Cite, r.Where, strings.Join(r.Used, "; "), r.Checked, r.Tag, r.By, r.Title, r.Year, r.In, r.Note, strconv.Itoa(r.Figures))
	}
	return t
}
