package text

import (
	"fmt"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// Soil writes what each area's report means, ranked by what limits the grass
// most, and what follows from it. Several areas that fit the width stand side
// by side. With working, each finding and need comes with its steps.
func Soil(p *schedule.Program, working bool, style Style) string {
	s := newSheet(style)
	s.head(p.Title)
	if len(p.Areas) > 1 {
		s.levels(p)
	}
	var all [][]schedule.Reason
	for i := range p.Areas {
		a := &p.Areas[i]
		s.area(p, a)
		if len(a.Findings) == 0 {
			s.para(2, "There is no soil report for this area: what wants one is left out.")
		}
		for _, f := range a.Findings {
			t := word.Capital(readingWords(f)) + ". " + f.Text
			if from := word.ShortSources(f.Source); from != "" && !working {
				t += " [" + from + "]"
			}
			s.hang(2, fmt.Sprintf("%d.", f.Rank), t)
			if working {
				s.working(6, f.Why)
				all = append(all, f.Why)
			}
		}
		if len(a.Moved) > 0 {
			s.para(2, "How the readings moved:")
			for _, t := range a.Moved {
				s.hang(2, "-", t)
			}
		}
		s.needs(a, working)
		if working {
			for _, n := range a.Needs {
				all = append(all, n.Why)
			}
		}
		if len(a.Pale) > 0 {
			s.para(2, "Why is it pale here?")
			for _, t := range a.Pale {
				s.hang(4, "-", t)
			}
		}
	}
	s.citations(all...)
	return s.String()
}

// levels writes the readings of all areas in one table, if it fits the width.
func (s *sheet) levels(p *schedule.Program) {
	t := levels(p)
	if len(t.Rows) == 0 || !s.fits(s.narrow(t, 0)) {
		return
	}
	s.gap()
	s.table(0, t)
}

// levels gives each reading of each area with its level: a row a reading, a
// column an area.
func levels(p *schedule.Program) Table {
	t := Table{Columns: columns("Reading")}
	at := map[string]int{}
	for i := range p.Areas {
		t.Columns = append(t.Columns, Column{Name: p.Areas[i].Name})
		for _, f := range p.Areas[i].Findings {
			if levelWords(f) == "" {
				continue
			}
			if _, ok := at[f.Reading]; !ok {
				at[f.Reading] = len(t.Rows)
				t.Rows = append(t.Rows, append([]string{word.Capital(readingName(f.Reading))}, make([]string, len(p.Areas))...))
			}
			t.Rows[at[f.Reading]][i+1] = levelWords(f)
		}
	}
	return t
}

// readingName writes a reading as people do.
func readingName(key string) string {
	switch key {
	case "ph":
		return "pH"
	case "cec":
		return "CEC"
	}
	return strings.ReplaceAll(key, "_", " ")
}

// readingWords writes a reading with its value and level: "pH 5.1, very low".
func readingWords(f schedule.FindingShown) string {
	return strings.TrimSpace(readingName(f.Reading) + " " + levelWords(f))
}

func levelWords(f schedule.FindingShown) string {
	value := ""
	if f.Value != 0 {
		value = f.Amount()
	}
	switch {
	case f.Level == "" || f.Level == "unknown":
		return value
	case value == "":
		return string(f.Level)
	}
	return value + ", " + string(f.Level)
}

// Findings gives the findings of all areas as a table.
func Findings(p *schedule.Program) Table {
	t := Table{Columns: columns("area", "#rank", "reading", "#value", "unit", "level", "text", "source")}
	for _, a := range p.Areas {
		for _, f := range a.Findings {
			t.add(a.ID, fmt.Sprint(f.Rank), f.Reading, figure(f.Value), f.Unit, string(f.Level), f.Text, f.Source)
		}
	}
	return t
}
