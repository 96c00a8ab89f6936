package ask

import (
	"slices"
	"strconv"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/sitefile"
)

// Answer is one answer: the key that it fills and what was typed, without quotes, a list
// with ", " between.
type Answer = sitefile.Pair

// Answers are in the order of the questions.
type Answers []Answer

// What the two files are called in problems.
const (
	siteName   = "site.toml"
	recordName = "site.record.csv"
)

// record begins the names of the cells of the record book.
const record = "record."

// Get gives the answer of a key; "" if there is none.
func (a Answers) Get(key string) string {
	for _, one := range a {
		if one.Key == key && one.Value != "" {
			return one.Value
		}
	}
	return ""
}

// Set gives the answers with one of them changed, or added at the end; without a value it
// is taken out.
func (a Answers) Set(key, value string) Answers {
	out := slices.DeleteFunc(slices.Clone(a), func(one Answer) bool { return one.Key == key && value == "" })
	for i := range out {
		if out[i].Key == key {
			out[i].Value = value
			return out
		}
	}
	if value != "" {
		out = append(out, Answer{Key: key, Value: value})
	}
	return out
}

// Names gives the names that stand below a table in the answers, each once: of "area" the
// ids of the areas, of "record" the numbers of the lines.
func (a Answers) Names(table string) []string {
	var out []string
	for _, one := range a {
		if rest, ok := strings.CutPrefix(one.Key, table+"."); ok && strings.TrimSpace(one.Value) != "" {
			if name, _, below := strings.Cut(rest, "."); below && !slices.Contains(out, name) {
				out = append(out, name)
			}
		}
	}
	return out
}

// File writes the answers as a site file, in the usual order and types, and as the text
// of its record book, which is nil if nothing was recorded.
func File(a Answers) (site, book []byte) {
	site, _ = sitefile.Compose(a.site())
	if lines := a.lines(); len(lines) > 0 {
		book, _, _ = sitefile.ComposeBook(pairs(lines))
	}
	return site, book
}

// Read takes a site file and its record book apart into answers. What cannot be an answer
// comes back as a problem: a text that is no such file, a list inside a list. Comments
// are not kept.
func Read(site, book []byte) (Answers, []schedule.Problem) {
	all, problems := sitefile.Pairs(siteName, site)
	lines, more := sitefile.Cells(recordName, book)
	for i, l := range lines {
		for _, cell := range l {
			all = append(all, Answer{Key: record + strconv.Itoa(i+1) + "." + cell.Key, Value: cell.Value})
		}
	}
	return all, append(problems, more...)
}

// Tidy gives the answers as they are read back from the files they make, so that equal
// answers have the same order and form.
func (a Answers) Tidy() Answers {
	out, _ := Read(File(a))
	return out
}

// site gives the answers that belong in the site file.
func (a Answers) site() []Answer {
	return slices.DeleteFunc(slices.Clone(a), func(one Answer) bool { return strings.HasPrefix(one.Key, record) })
}

// line is a line of the record book in the answers.
type line struct {
	name  string
	cells []sitefile.Pair
}

// lines gives the lines of the record book in the order of their first answer.
func (a Answers) lines() []line {
	var out []line
	for _, name := range a.Names("record") {
		l := line{name: name}
		for _, one := range a {
			if column, ok := strings.CutPrefix(one.Key, record+name+"."); ok {
				l.cells = append(l.cells, sitefile.Pair{Key: column, Value: one.Value})
			}
		}
		out = append(out, l)
	}
	return out
}

func pairs(lines []line) [][]sitefile.Pair {
	out := make([][]sitefile.Pair, len(lines))
	for i, l := range lines {
		out[i] = l.cells
	}
	return out
}
