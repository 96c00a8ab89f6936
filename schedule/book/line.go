package book

import (
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/schedule"
	"swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

// Line is a line that is about to be added to a record book.
type Line struct {
	Text     string          // as [Append] takes it
	Done     []schedule.Done // the book with it
	Replaces []int           // lines about the same numbered job, which count no longer
	Wrong    []schedule.Problem
}

// NewLine writes what was done as a line for a record book, whose text is given
// with its name. The line stands by itself: a material and an amount that were
// left to the plan ("half", "as planned") are written out as the program now has
// them, so that no later edit of the site changes what is down. What the program
// does not know either stays as it was given.
//
// What cannot be is in Wrong, and nothing else is then set.
func NewLine(name string, text []byte, site *schedule.Site, d schedule.Done, amount string) (Line, error) {
	book := string(text)
	switch {
	case book == "":
		book = sitefile.Header
	case !strings.HasSuffix(book, "\n"):
		book += "\n"
	}
	at := strings.Count(book, "\n") + 1
	l := Line{Text: sitefile.AppendLine(d, amount)}
	read, ok := l.read(name, book, at, site)
	if !ok {
		return Line{Wrong: l.Wrong}, nil
	}
	if !read.Missed && (read.Material == "" || read.Share > 0) {
		material, down, err := plan.WorkedOut(site, l.Done, at)
		if err != nil {
			return Line{}, err
		}
		if down > 0 {
			d.Material = material
			if read.Share > 0 {
				amount = weight(down, site.Metric)
			}
			l = Line{Text: sitefile.AppendLine(d, amount)}
			if read, ok = l.read(name, book, at, site); !ok {
				return Line{Wrong: l.Wrong}, nil
			}
		}
	}
	l.Replaces = replaced(name, book, site, read)
	return l, nil
}

// read reads the book with the line at its end, and gives the line back.
func (l *Line) read(name, book string, at int, site *schedule.Site) (schedule.Done, bool) {
	done, problems := sitefile.LoadRecord(name, []byte(book+l.Text), site)
	for _, p := range problems {
		if p.Line >= at && !p.Warning {
			l.Wrong = append(l.Wrong, p)
		}
	}
	l.Done = done
	for _, d := range done {
		if d.Line == at {
			return d, len(l.Wrong) == 0
		}
	}
	if l.Wrong == nil { // the book as a whole does not do, as when it grew too long
		l.Wrong = slices.DeleteFunc(problems, func(p schedule.Problem) bool { return p.Warning })
	}
	return schedule.Done{}, false
}

// Replaced says in a sentence which lines count no longer; "" for none.
func (l *Line) Replaced() string {
	var old []string
	for _, n := range l.Replaces {
		old = append(old, strconv.Itoa(n))
	}
	if old == nil {
		return ""
	}
	return "It replaces line " + strings.Join(old, " and line ") + " about the same job; the two are not added."
}

// replaced gives the lines of the book that a new one takes the place of. A job
// that was missed and is done on a later day is none.
func replaced(name, book string, site *schedule.Site, by schedule.Done) (lines []int) {
	before, _ := sitefile.LoadRecord(name, []byte(book), site)
	for _, d := range before {
		if strings.Contains(d.Job, "/") && d.Job == by.Job && !(d.Missed && d.Date.Before(by.Date)) {
			lines = append(lines, d.Line)
		}
	}
	return lines
}

// weight writes a weight to the last digit: a rounded one would leave a trace of
// the job undone.
func weight(p agronomy.Pounds, metric bool) string {
	amount, unit := float64(p), " lb"
	if metric {
		amount, unit = p.Kilograms(), " kg"
	}
	return strconv.FormatFloat(amount, 'f', -1, 64) + unit
}
