package ical

import (
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// reasons answers in a sentence or two why a job is there. Of a job it gives no working,
// which the commands and the page have; of a notice it gives the reasons, which are as
// short. What is over needs none.
func reasons(e *schedule.Entry) (out []string) {
	if e.State == schedule.Finished || e.State == schedule.Missed {
		return nil
	}
	if e.Kind.Notice() {
		for _, r := range e.Why {
			out = append(out, sourced(r.Text, r.Source))
		}
		return out
	}
	if e.Because != "" {
		out = append(out, e.Because)
	}
	return out
}

// sourced puts the short names of the sources behind a text. Units need none on
// a phone.
func sourced(text, keys string) string {
	var from []string
	for _, r := range word.Cited(keys) {
		switch {
		case r.Key == "definitions", r.Key == "atomic-weights":
		case r.How == "ours":
			from = append(from, "swardbook")
		default:
			from = append(from, r.Short())
		}
	}
	if len(from) == 0 || text == "" {
		return text
	}
	return strings.TrimSuffix(text, ".") + " (" + strings.Join(from, "; ") + ")."
}
