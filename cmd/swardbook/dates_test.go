package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// otherDates are spellings of a day that no text for people uses: a day is 9 Oct 2026, or
// 9 Oct where its year is plain.
var otherDates = regexp.MustCompile(`\b\d{4}-\d\d-\d\d\b|\b\d{1,2}/\d{1,2}/\d{2,4}\b|` +
	`\b\d{1,2}(st|nd|rd|th)\b|\b0\d (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)\b|` +
	`\b\d{1,2} (January|February|March|April|June|July|August|September|October|November|December)\b|` +
	`\b(Jan(uary)?|Feb(ruary)?|Mar(ch)?|Apr(il)?|May|June?|July?|Aug(ust)?|Sep(tember)?|Oct(ober)?|Nov(ember)?|Dec(ember)?) \d{1,2}\b|\b\d{1,2}\. (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)`)

// rightDates are removed from a text before otherDates are looked for, as a number in the
// next column of a table could make a right date look like another spelling.
var rightDates = regexp.MustCompile(`\b[1-9]\d? (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)\b( \d{4})?`)

// typedDates are days in what is to be typed: a key of the site file, a flag.
var typedDates = regexp.MustCompile(`(= |--[a-z]+ )\d{4}-\d\d-\d\d`)

// Days have one spelling in all that people read, of the examples and of thirty
// other sites; JSON, the calendar's own fields, record lines and site files have another.
func TestDatesHaveOneSpelling(t *testing.T) {
	check := func(file, today string, everyJob bool) {
		for name, text := range metricOutputs(t, file, today, everyJob) {
			if strings.HasSuffix(name, "json") {
				continue
			}
			text = typedDates.ReplaceAllString(text, "")
			text = rightDates.ReplaceAllString(text, "a day")
			for _, at := range otherDates.FindAllStringIndex(text, 3) {
				t.Errorf("%s: …%s…", name, text[max(0, at[0]-60):min(len(text), at[1]+20)])
			}
		}
	}
	for name, today := range shownOn {
		check(filepath.Join("../../examples", name, "site.toml"), today, false)
	}
	r := rand.New(rand.NewPCG(5, 22))
	for i := range 30 {
		file := filepath.Join(t.TempDir(), fmt.Sprintf("site%d.toml", i))
		if err := os.WriteFile(file, []byte(metricSite(r, i)), 0o600); err != nil {
			t.Fatal(err)
		}
		check(file, "2027-03-20", i%10 == 0)
	}
}

// The search finds each other spelling, and nothing in the right ones.
func TestOtherDatesAreSeen(t *testing.T) {
	for _, wrong := range []string{"2026-10-09", "10/9/2026", "9th", "09 Oct", "9 October 2026", "October 9", "Oct 9", "9. Oct"} {
		if !otherDates.MatchString("on " + wrong + ", then") {
			t.Errorf("%q is not seen", wrong)
		}
	}
	for _, right := range []string{"Fri 9 Oct 2026", "9 Oct", "18-24-12", "May 2027", "October 2012", "1/2 pack", "1981-2010"} {
		if s := otherDates.FindString("on " + right + ", then"); s != "" {
			t.Errorf("%q is seen in %q", s, right)
		}
	}
}
