package feed

import (
	"cmp"
	"net/url"
	"slices"
	"strings"

	"swardbook/schedule"
)

// indexPage lists the sites that are not private.
type indexPage struct {
	head
	Sites []indexLine
}

type indexLine struct{ Path, Title, Note string }

const brokenNote = "its files have errors"

func newIndexLine(prefix, title, note string) indexLine {
	return indexLine{url.PathEscape(prefix) + "/", title, note}
}

func indexOf(lines []indexLine) ([]byte, error) {
	slices.SortFunc(lines, func(a, b indexLine) int {
		return cmp.Or(strings.Compare(strings.ToLower(a.Title), strings.ToLower(b.Title)), strings.Compare(a.Path, b.Path))
	})
	return render("index.html", indexPage{newHead("Lawn programs"), lines})
}

// unreadyPage stands in for a site that never had a program.
type unreadyPage struct {
	head
	Problems []schedule.Problem
}

func unready(name string, problems []schedule.Problem) ([]byte, error) {
	return render("unready.html", unreadyPage{newHead(name), problems})
}
