package text

import (
	"fmt"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// limits writes what limits each area most and what it needs, a line each.
func (s *sheet) limits(p *schedule.Program) {
	if len(p.Areas) == 0 {
		return
	}
	of, per := "per 1,000 sq ft", " per 1,000 sq ft"
	if p.Metric {
		of, per = "per m²", "/m²"
	}
	s.head("What limits the grass, and what it needs " + of)
	for i := range p.Areas {
		a := &p.Areas[i]
		s.para(2, fmt.Sprintf("%s, %s, %s", a.Name, measure(p).Area(a.Size), a.Stand))
		const most = 4 // [common] swardbook soil has them all
		said := map[schedule.Kind]bool{}
		n := 0
		for _, f := range a.Findings {
			if n == most {
				break
			}
			n++
			s.hang(4, fmt.Sprint(n), word.Capital(readingWords(f))+": "+word.Sentence(strings.ReplaceAll(needed(a, f, said), per, "")))
		}
		for _, need := range a.Needs {
			if !said[need.Kind] && need.Total > 0 {
				n++
				s.hang(4, fmt.Sprint(n), word.Capital(word.Sentence(strings.ReplaceAll(need.Text, per, ""))))
			}
		}
		if n == 0 {
			s.para(4, "There is no soil report for this area: what wants one is left out.")
		}
	}
}

// needed is the need that answers a finding, or what the finding means.
func needed(a *schedule.AreaShown, f schedule.FindingShown, said map[schedule.Kind]bool) string {
	for _, n := range a.Needs {
		if n.Kind.Of().Answers != f.Reading || said[n.Kind] {
			continue
		}
		said[n.Kind] = true
		text := strings.TrimPrefix(n.Text, n.Kind.Noun()+": ")
		return strings.Replace(strings.TrimSuffix(text, " for "+a.Stand), fmt.Sprintf(", the reading is %s", f.Level), "", 1)
	}
	first, _, _ := strings.Cut(f.Text, ". ")
	return word.Inside(first)
}
