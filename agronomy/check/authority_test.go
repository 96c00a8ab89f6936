package check_test

import (
	"regexp"
	"slices"
	"testing"

	"swardbook/agronomy"
	"swardbook/climate"
)

// A forum post, a report that its owner posted and a seller's page are no
// source: what rests on one is common practice. A mirror is cited as the
// original and called a copy.
func TestSourcesHaveAuthority(t *testing.T) {
	none := regexp.MustCompile(`(?i)forum|lawnsite|gardenweb|as posted|posted by|its owner|seller|supplier|seed house`)
	mirror := regexp.MustCompile(`scribd|docslib|studylib|documentine|yumpu|doczz|pdfio|what-when-how|nanturf`)
	for key, s := range agronomy.Sources() {
		if m := none.FindString(s.Cite() + " " + s.Where); m != "" {
			t.Errorf("%s rests on a %s: %s", key, m, s.Cite())
		}
		if mirror.MatchString(s.Where) && !regexp.MustCompile(`\(copy\)$`).MatchString(s.Where) {
			t.Errorf("%s: %s is a mirror, and not called a copy", key, s.Where)
		}
	}
}

// Every source is named so that a librarian finds it: author or institution,
// title, year or that it is undated; the address where it was read comes last,
// and only what was never read has none. Nobody goes by a nickname.
func TestSourcesAreNamed(t *testing.T) {
	year := regexp.MustCompile(`^(19|20)\d\d$`)
	address := regexp.MustCompile(`^[a-z0-9-]+(\.[a-z0-9-]+)+(/\S*)?( \([^()]+\))?( ; [a-z0-9-]+(\.[a-z0-9-]+)+(/\S*)?( \([^()]+\))?)*$`)
	unnamed := regexp.MustCompile(`(?i)^(a|an|the|two|some) |no author|not named|anonymous`)
	nickname := regexp.MustCompile(`(?i)@|blogspot|fusariummy|danno|rishab`)
	for _, all := range []map[string]agronomy.Source{agronomy.Sources(), climate.Sources()} {
		for key, s := range all {
			switch {
			case slices.Contains([]string{"common", "definitions", "model", "windows"}, key):
				continue // this project's own, or nobody's
			case s.By == "" || s.Title == "":
				t.Errorf("%s: no author, institution or title: %s", key, s.Cite())
			case unnamed.MatchString(s.By) || nickname.MatchString(s.By+s.Title+s.In+s.Note):
				t.Errorf("%s: by %q is no name", key, s.By)
			case s.Year != "" && !year.MatchString(s.Year):
				t.Errorf("%s: year %q", key, s.Year)
			case s.Where != "" && !address.MatchString(s.Where):
				t.Errorf("%s: %q is no address", key, s.Where)
			}
			if s.Where == "" && s.How != "memory" && s.Note == "" {
				t.Errorf("%s: read, but neither the address is given nor how", key)
			}
			if s.Year == "" && s.How != "memory" && !regexp.MustCompile(`\. Undated, read 2026\. `).MatchString(s.Cite()) {
				t.Errorf("%s: no year: %s", key, s.Cite())
			}
			if regexp.MustCompile(`https?:|www\.|\.(com|org|edu|gov|html?)\b`).MatchString(s.Cite()) {
				t.Errorf("%s: an address before the end: %s", key, s.Cite())
			}
		}
	}
}
