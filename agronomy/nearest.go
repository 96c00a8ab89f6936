package agronomy

import (
	"slices"
	"strings"
	"unicode"
)

// NearestName gives a hint for a misspelt word: the known names that contain
// it ("fescue" gives "tall fescue, fine fescue"), else the one closest in
// spelling if it is close, else all of a short list, else "".
func NearestName(got string, known []string) string {
	got = strings.ToLower(strings.TrimSpace(got))
	if got == "" {
		return shortList(known)
	}
	var holding []string
	for _, k := range known {
		if bare := lettersOf(got); len(bare) >= 3 && strings.Contains(lettersOf(k), bare) {
			holding = append(holding, k)
		}
	}
	if len(holding) > 0 {
		return strings.Join(holding, ", ")
	}
	if best := closest(got, known); best != "" {
		return best
	}
	return shortList(known)
}

// closest is the first known name with the fewest letters to change, if they
// are no more than a third and one.
func closest(got string, known []string) string {
	best, least := "", 0
	for _, k := range known {
		if d := editDistance(got, k); best == "" || d < least {
			best, least = k, d
		}
	}
	if least > 1+min(len(got), len(best))/3 {
		return ""
	}
	return best
}

// lettersOf leaves out all that people spell differently: spaces, points, strokes.
func lettersOf(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, s)
}

func shortList(known []string) string {
	if len(known) > 15 {
		return ""
	}
	return strings.Join(known, ", ")
}

// editDistance counts the letters to insert, remove or replace, and the
// neighbours to swap, that turn a into b. Long words are cut at 64 letters.
func editDistance(a, b string) int {
	ra, rb := []rune(a), []rune(b)
	ra, rb = ra[:min(len(ra), 64)], rb[:min(len(rb), 64)]
	before := make([]int, len(rb)+1)
	prev := make([]int, len(rb)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := range ra {
		row := make([]int, len(rb)+1)
		row[0] = i + 1
		for j := range rb {
			cost := 1
			if ra[i] == rb[j] {
				cost = 0
			}
			row[j+1] = min(prev[j]+cost, prev[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && ra[i] == rb[j-1] && ra[i-1] == rb[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, prev = prev, slices.Clone(row)
	}
	return prev[len(rb)]
}
