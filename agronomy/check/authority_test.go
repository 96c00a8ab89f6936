package check_test

import (
	"regexp"
	"testing"

	"swardbook/agronomy"
)

// A forum post, a report that its owner posted and a seller's page are no
// source: what rests on one is common practice. A mirror is cited as the
// original and called a copy.
func TestSourcesHaveAuthority(t *testing.T) {
	none := regexp.MustCompile(`(?i)forum|lawnsite|gardenweb|as posted|posted by|its owner|seller|supplier|seed house`)
	mirror := regexp.MustCompile(`scribd|docslib|studylib|documentine|yumpu|doczz|pdfio|what-when-how|nanturf`)
	for key, s := range agronomy.Sources() {
		if m := none.FindString(s.Cite + " " + s.Where); m != "" {
			t.Errorf("%s rests on a %s: %s", key, m, s.Cite)
		}
		if mirror.MatchString(s.Where) && !regexp.MustCompile(`\(copy\)$`).MatchString(s.Where) {
			t.Errorf("%s: %s is a mirror, and not called a copy", key, s.Where)
		}
	}
}
