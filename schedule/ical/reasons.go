package ical

import (
	"cmp"
	"slices"
	"strings"

	"swardbook/schedule"
)

// reasons gives up to n reasons for a job, for a reader in the garden: what the
// soil report means, what is needed in all, then the entry's own reasons. The
// whole working is left to the commands and the page.
func (t *teller) reasons(e *schedule.Entry, n int) []string {
	if e.Because != "" {
		out := []string{e.Because}
		if e.Window != "" && !e.Kind.Notice() {
			out = append(out, "The window "+e.Window+".")
		}
		return out
	}
	var out []string
	for _, a := range t.program.Areas {
		if a.ID != e.Area {
			continue
		}
		for _, f := range a.Findings {
			if f.Reading == readingBehind(e.Kind) {
				out = append(out, sourced(f.Text, f.Source))
			}
		}
		for _, need := range a.Needs {
			if need.Kind == needBehind(e.Kind) {
				out = append(out, need.Text)
			}
		}
	}
	if e.Window != "" && !e.Kind.Notice() {
		out = append(out, "the window: "+e.Window)
	}
	own := slices.DeleteFunc(slices.Clone(e.Why), func(r schedule.Reason) bool { return slices.Contains(e.Steps, r.Text) })
	slices.SortStableFunc(own, func(a, b schedule.Reason) int {
		return cmp.Or(cmp.Compare(arithmetic(a.Text), arithmetic(b.Text)), cmp.Compare(len(a.Text), len(b.Text)))
	})
	for _, r := range own {
		out = append(out, sourced(r.Text, r.Source))
	}
	return out[:min(n, len(out))]
}

// arithmetic counts the signs that make a reason a sum; words go first.
func arithmetic(text string) int {
	return strings.Count(text, "÷") + strings.Count(text, "×") + strings.Count(text, "=")
}

// sourced puts the short names of the sources behind a text.
func sourced(text, keys string) string {
	if from := shortSources(keys); from != "" && text != "" {
		return strings.TrimSuffix(text, ".") + " (" + from + ")."
	}
	return text
}

// needBehind names the need that a kind of job serves.
func needBehind(k schedule.Kind) schedule.Kind {
	switch k {
	case schedule.Starter:
		return schedule.Phosphorus
	case schedule.LateNitrogen:
		return schedule.Nitrogen
	}
	return k
}

// readingBehind names the reading of the soil report that a kind of job answers.
func readingBehind(k schedule.Kind) string {
	switch k {
	case schedule.Lime, schedule.Sulfur:
		return "ph"
	}
	return string(needBehind(k))
}
