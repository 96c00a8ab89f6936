package ask

import (
	"cmp"
	"io"
	"io/fs"
	"slices"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/sitefile"
)

// Load makes the answers into a site and what was done there, as if they stood in
// files, and says what is wrong or doubtful with the key of each answer. The site is
// nil if any of it is more than a warning. Problems without an answer have the key of the
// nearest table. The station file that place.normals names is opened with open; nil: there
// is none.
func Load(a Answers, open func(string) (io.ReadCloser, error)) (*schedule.Site, []schedule.Done, []schedule.Problem) {
	if open == nil {
		open = func(string) (io.ReadCloser, error) { return nil, fs.ErrNotExist }
	}
	text, problems := sitefile.Compose(a.site())
	site, more := sitefile.Load(siteName, text, open)
	problems = append(problems, more...)

	lines := a.lines()
	book, at, wrong := sitefile.ComposeBook(pairs(lines))
	var done []schedule.Done
	if len(lines) > 0 {
		done, more = sitefile.LoadRecord(recordName, book, site)
		for _, p := range append(wrong, more...) {
			if i, ok := slices.BinarySearch(at, p.Line); ok || i > 0 && p.Line > 0 {
				if !ok {
					i--
				}
				p.Key = lines[i].key(p.Key)
			}
			problems = append(problems, p)
		}
	}
	for i := range problems {
		problems[i].File = cmp.Or(problems[i].File, siteName)
	}
	problems = schedule.SortProblems(problems)
	if schedule.Fatal(problems) {
		return nil, nil, problems
	}
	return site, done, problems
}

// Problems says what is wrong or doubtful in the answers, in the words of "swardbook
// check", each with the key of its answer.
func Problems(a Answers) []schedule.Problem {
	_, _, problems := Load(a, nil)
	return problems
}

// key gives the name of the answer in a column of the line. What is said of its job is
// said of its kind, where that is what was asked for.
func (l line) key(column string) string {
	named := func(p sitefile.Pair) bool { return p.Key == "job" && strings.TrimSpace(p.Value) != "" }
	if column == "job" && !slices.ContainsFunc(l.cells, named) {
		column = "kind"
	}
	return record + l.name + "." + cmp.Or(column, "date")
}
