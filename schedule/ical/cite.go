package ical

import (
	"strings"
	"sync"

	"swardbook/agronomy"
	"swardbook/climate"
)

// shortNames gives each source key the few words that name it in a calendar:
// the first author or the publisher, and the year if the reference has one.
var shortNames = sync.OnceValue(func() map[string]string {
	names := map[string]string{}
	for _, part := range []map[string]climate.Source{climate.Sources(), agronomy.Sources()} {
		for key, s := range part {
			names[key] = shortCite(s.Cite)
			if s.How == "ours" {
				names[key] = "swardbook"
			}
		}
	}
	names["common"] = "common practice"
	delete(names, "definitions")    // units need no
	delete(names, "atomic-weights") // reference on a phone
	return names
})

// shortSources names the sources behind a reason. Keys that the references do
// not know, such as the citation of a law, stand as they are.
func shortSources(keys string) string {
	var out []string
	for key := range strings.SplitSeq(keys, ", ") {
		switch name, ok := shortNames()[key]; {
		case ok:
			out = append(out, name)
		case key != "definitions" && key != "atomic-weights":
			out = append(out, key)
		}
	}
	return lines(strings.Join(out, "; "))
}

// shortCite cuts a reference such as "Moore, A. Updated lime … 2025." down to
// "Moore 2025".
func shortCite(cite string) string {
	name := cite
	for _, mark := range []string{". ", ", ", " (", ": ", "; "} {
		name, _, _ = strings.Cut(name, mark)
	}
	name = strings.TrimSuffix(name, ".")
	if year := yearIn(cite[len(name):]); year != "" {
		name += " " + year
	}
	return name
}

// yearIn finds the first year from 1900 to 2099 that stands by itself, not in
// a span such as 1981-2010.
func yearIn(s string) string {
	digit := func(i int) bool { return i >= 0 && i < len(s) && '0' <= s[i] && s[i] <= '9' }
	span := func(i int) bool { return i > 0 && s[i-1] == '-' || i+4 < len(s) && s[i+4] == '-' }
	for i := range len(s) {
		if digit(i) && !digit(i-1) && digit(i+1) && digit(i+2) && digit(i+3) && !digit(i+4) && !span(i) &&
			(s[i:i+2] == "19" || s[i:i+2] == "20") {
			return s[i : i+4]
		}
	}
	return ""
}
