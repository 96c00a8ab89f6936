package ask

import (
	"bytes"
	"slices"
	"strings"

	"swardbook/schedule/sitefile"
)

// Change gives a site file and its record book with the answers changed to after. Every
// comment, and whatever no answer fills or changes, is left as it is. A line of the book
// that changed is struck out and written anew at the end. The new book is nil if nothing is
// recorded.
func Change(site, book []byte, after Answers) (newSite, newBook []byte, err error) {
	before, problems := Read(site, book)
	if len(problems) > 0 {
		return nil, nil, problems[0]
	}
	after = after.Tidy()
	for _, bag := range before.Names("material") { // a name that nobody gave
		name, usual := "material."+bag+".name", usualName(after.Get("material."+bag+".kind"), after.Get("material."+bag+".analysis"))
		if before.Get(name) == "" && after.Get(name) == usual {
			after = after.Set(name, "")
		}
	}
	if newSite, err = sitefile.Change(site, before.site(), after.site()); err != nil {
		return nil, nil, err
	}
	return newSite, changedBook(book, before, after), nil
}

func changedBook(book []byte, before, after Answers) []byte {
	at := sitefile.CellLines(book)
	left := after.lines()
	var strike []int
	for i, old := range before.lines() {
		j := slices.IndexFunc(left, func(l line) bool { return sameCells(l.cells, old.cells) })
		switch {
		case j >= 0:
			left = slices.Delete(left, j, j+1)
		case i < len(at):
			strike = append(strike, at[i])
		}
	}
	var out []byte
	n := 0
	for one := range bytes.Lines(book) {
		if n++; slices.Contains(strike, n) {
			out = append(out, "# struck out: "...)
		}
		out = append(out, one...)
	}
	if len(left) == 0 {
		return out
	}
	if len(out) > 0 && out[len(out)-1] != '\n' {
		out = append(out, '\n')
	}
	added, _, _ := sitefile.ComposeBook(pairs(left))
	head, lines, _ := strings.Cut(string(added), "\n")
	if len(book) == 0 || !sitefile.IsWhole(book) || head+"\n" != sitefile.Header {
		lines = head + "\n" + lines
	}
	return append(out, lines...)
}

// sameCells tells whether two lines say the same, whatever the order of their columns.
func sameCells(a, b []sitefile.Pair) bool {
	if len(a) != len(b) {
		return false
	}
	for _, p := range a {
		if !slices.Contains(b, p) {
			return false
		}
	}
	return true
}
