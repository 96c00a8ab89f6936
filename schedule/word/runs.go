package word

import (
	"iter"
	"strings"
	"unicode"
	"unicode/utf8"
)

// widest is how many characters a run of glued words stays under, to fit a narrow screen.
const widest = 28

// Words goes through the words of a text, and tells of each whether it stays with the one
// before, as a unit does with its number, so that no line should end between them.
func Words(text string) iter.Seq2[string, bool] {
	return func(yield func(string, bool) bool) {
		before, run := "", 0 // the last word, and the width of the words to which it is glued
		for w := range strings.FieldsSeq(text) {
			glued := false
			if before != "" && tied(before, w) {
				wide := run + utf8.RuneCountInString(before)
				if glued = wide+utf8.RuneCountInString(w) < widest; glued {
					run = wide + 1
				}
			}
			if !glued {
				run = 0
			}
			if !yield(w, glued) {
				return
			}
			before = w
		}
	}
}

// Runs splits a text into words. Words between which no line should end stay together, with
// a space between them.
func Runs(text string) []string {
	out := make([]string, 0, strings.Count(text, " ")+1)
	for w, glued := range Words(text) {
		if glued {
			out[len(out)-1] += " " + w
		} else {
			out = append(out, w)
		}
	}
	return out
}

// unitWords are the words that belong to the figure beside them: units, spans of time and
// months.
var unitWords = map[string]bool{
	"lb": true, "oz": true, "fl": true, "kg": true, "g": true, "t": true, "gal": true, "L": true, "mL": true,
	"sq": true, "ft": true, "in": true, "mm": true, "cm": true, "m": true, "m²": true, "g/m²": true,
	"°F": true, "°C": true, "%": true, "ppm": true, "meq/100": true, "lb/acre": true, "tons/acre": true,
	"packs": true, "pack": true, "days": true, "day": true, "weeks": true, "months": true, "minutes": true, "h": true,
	"Jan": true, "Feb": true, "Mar": true, "Apr": true, "May": true, "Jun": true,
	"Jul": true, "Aug": true, "Sep": true, "Oct": true, "Nov": true, "Dec": true,
}

var nutrientWords = map[string]bool{"N": true, "P₂O₅": true, "K₂O": true, "Mg": true, "S": true}

var weekdayWords = map[string]bool{"Mon": true, "Tue": true, "Wed": true, "Thu": true, "Fri": true, "Sat": true, "Sun": true}

// tied tells whether a line may not end between two words.
func tied(a, b string) bool {
	if len(a) > 3 && a[0] >= 'A' && a[0] <= 'z' && a[len(a)-1] != '0' {
		return false // the quick way past most words: no figure, unit or day
	}
	if ended(a) { // a line may end after a comma or a full stop
		return false
	}
	switch a {
	case "§":
		return true
	case "pH":
		return IsFigure(b)
	case "sq":
		return bare(b) == "ft"
	case "fl":
		return bare(b) == "oz"
	case "lb", "g": // "lb N/1000", "g N/m²"
		nutrient, _, _ := strings.Cut(bare(b), "/")
		return nutrientWords[nutrient]
	case "meq/100":
		return bare(b) == "g"
	}
	switch {
	case IsFigure(a):
		unit := bare(b)
		return unitWords[unit] || strings.HasSuffix(unit, "/1000") || unit == "sq" && strings.HasSuffix(a, "/1000")
	case len(a) == 3 && unicode.IsUpper(rune(a[0])): // "Sep 2026", "Sat 19"
		return (unitWords[a] || weekdayWords[a]) && IsFigure(b)
	}
	return strings.HasSuffix(a, "/1000") && bare(b) == "sq"
}

// bare is a word without the punctuation that follows it.
func bare(s string) string { return strings.TrimRight(s, ".,;:)?!") }

func ended(s string) bool { return strings.ContainsRune(".,;:", rune(s[len(s)-1])) }

// IsFigure tells whether a word is a figure: "1,000", "(2.4", "±12", "7-day".
func IsFigure(s string) bool {
	s = strings.TrimLeft(s, "(±-+≈")
	return s != "" && s[0] >= '0' && s[0] <= '9'
}
