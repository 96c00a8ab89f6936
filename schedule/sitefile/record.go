package sitefile

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// Header is the first line of a record book whose lines stand by themselves.
const Header = "date,area,kind,season,n,material,analysis,slow,lime_value,amount,of,by,note\n"

// ShortHeader names the columns of an older book, or of one kept in a spreadsheet: what a
// line leaves open is worked out from the site file and the plan.
const ShortHeader = "date,area,job,material,amount,by,note\n"

var columns, shortColumns = strings.Split(strings.TrimSpace(Header), ","), strings.Split(strings.TrimSpace(ShortHeader), ",")

// How long a record book may be, so that a site can be planned in about a second. A season
// of an area has some six lines. // [common]
const (
	maxLines  = 20_000
	maxDays   = 2_500   // days with a line, each area counted: all that follows such a day is planned anew
	maxNumber = 366     // jobs of a kind in a season of an area: one a day
	maxBook   = 4 << 20 // bytes
)

// bags lists what a line may name as its material.
func bags(site *schedule.Site) map[string]*material.Material {
	out := map[string]*material.Material{}
	if site != nil {
		for _, m := range append(material.TradeMaterials(), site.Materials...) {
			out[m.ID] = &m
		}
	}
	return out
}

// book reads one record book.
type book struct {
	complaints
	site  *schedule.Site // nil: areas and materials are not known
	order []string       // the columns in the order of the file
	done  []schedule.Done
	seen  map[schedule.Done]int         // the line of each job, keyed without its line, person, note and contents
	bags  map[string]*material.Material // the materials, by the names that a line may use
	take  func(line int, cells []string)
}

// LoadRecord reads a record book: one line for each job done or missed, columns as in
// [Header], in another order if the first line says so. Blank lines and lines
// that begin with # are passed over. The site tells which areas and materials
// there are; it may be nil. A line with an error is not among the jobs given
// back.
//
// A book may have a second line of column names, after which its lines are of the other
// form: so an older book is continued with lines that stand by themselves. Lines of that
// newer form about one job add up.
//
// In the older form a job column may hold a kind ("lime"), a kind with its number ("lime/1") or
// a whole id ("east/lime/1"). Lines that name a kind alone each count. Lines
// that name the same numbered job are corrections: the last one counts, and a
// warning says which it replaced.
func LoadRecord(name string, text []byte, site *schedule.Site) ([]schedule.Done, []schedule.Problem) {
	b := &book{complaints: complaints{file: name}, site: site, order: shortColumns, bags: bags(site), seen: map[schedule.Done]int{}}
	b.take = b.row
	if b.open(text) {
		b.correct()
		b.bound()
	}
	return b.done, b.all()
}

// Cells gives the lines of a record book one by one, a Pair for each column that is not
// empty, whether or not they make sense. [ComposeBook] goes the other way.
func Cells(name string, text []byte) ([][]Pair, []schedule.Problem) {
	b := &book{complaints: complaints{file: name}, order: shortColumns}
	var out [][]Pair
	b.take = func(line int, cells []string) {
		var pairs []Pair
		for i, s := range cells {
			switch {
			case s == "":
			case i >= len(b.order) || b.order[i] == "":
				b.report(schedule.Problem{Line: line, Message: fmt.Sprintf("a cell %q after the last column", s), Hint: "put text with a comma in it in double quotes"})
			default:
				pairs = append(pairs, Pair{b.order[i], fromCell(s)})
			}
		}
		out = append(out, pairs)
	}
	b.open(text)
	return out, b.all()
}

// open reads the lines of a text, unless it is no text of such a file.
func (b *book) open(text []byte) bool {
	text = withoutMark(text)
	if p, ok := readableUpTo(b.file, text, maxBook); !ok {
		b.report(p)
		return false
	}
	b.read(commas(text))
	return true
}

// bound refuses a book with jobs on more days than can be planned in a short time.
func (b *book) bound() {
	type day struct {
		on   schedule.Date
		area string
	}
	seen := map[day]bool{}
	for _, d := range b.done {
		if b.site == nil || !d.Date.After(b.site.Start) {
			continue
		}
		if seen[day{d.Date, d.Area}] = true; len(seen) > maxDays {
			b.report(schedule.Problem{Line: d.Line, Message: fmt.Sprintf("jobs on more than %d days of an area: planning anew after each would take too long", maxDays),
				Hint: "write what went down on days in a row as one line, or begin a new record book and a later start"})
			return
		}
	}
}

func (b *book) read(text []byte) {
	c := csv.NewReader(strings.NewReader(string(text)))
	c.Comment, c.FieldsPerRecord, c.TrimLeadingSpace = '#', -1, true
	first := true
	for n := 0; ; {
		cells, err := c.Read()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			p := schedule.Problem{Line: 1, Message: plain(err.Error()), Hint: "mend the line"}
			if e, ok := errors.AsType[*csv.ParseError](err); ok {
				p.Line, p.Message = e.StartLine, "the quotes of this line do not match"
				p.Hint = `put text with a comma or a quote in double quotes, and write a quote in it twice: "the ""far"" end"`
			}
			b.report(p)
			continue
		}
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
		line, _ := c.FieldPos(0)
		switch {
		case slices.IndexFunc(cells, func(s string) bool { return s != "" }) < 0, strings.HasPrefix(cells[0], "#"):
		case first && isHeader(cells), slices.Contains(cells, "date") && (slices.Contains(cells, "kind") || slices.Contains(cells, "job")):
			first = false
			if !b.header(line, cells) {
				return
			}
		case len(cells) == 1 && strings.ContainsAny(cells[0], ";\t"):
			b.report(schedule.Problem{Line: line, Message: "the columns are not parted by commas", Hint: "save the sheet as comma-separated values"})
			return
		default:
			if first = false; n == maxLines {
				b.report(schedule.Problem{Line: line, Message: fmt.Sprintf("more than %d lines", maxLines), Hint: "begin a new record book and a later start; keep this one beside it"})
				return
			}
			n++
			b.take(line, cells)
		}
	}
}

// isHeader tells a line of column names from a line of the book.
func isHeader(cells []string) bool {
	return slices.ContainsFunc(cells, func(s string) bool { return strings.EqualFold(s, "date") || strings.EqualFold(s, "job") })
}

func (b *book) header(line int, cells []string) bool {
	b.order = nil
	before := len(b.problems)
	for _, s := range cells {
		s = strings.ToLower(s)
		switch {
		case s != "" && !slices.Contains(columns, s) && s != "job":
			b.report(schedule.Problem{Line: line, Key: s, Message: "unknown column", Hint: suggest(s, append(slices.Clone(columns), "job"))})
		case s != "" && slices.Contains(b.order, s):
			b.report(schedule.Problem{Line: line, Key: s, Message: "the column is there twice", Hint: "remove one of the two"})
		}
		b.order = append(b.order, s)
	}
	for _, s := range []string{"date", "job"} {
		if !slices.Contains(b.order, s) && !(s == "job" && slices.Contains(b.order, "kind")) {
			b.report(schedule.Problem{Line: line, Key: s, Message: "the column is missing", Hint: "columns: " + strings.Join(columns, ", ")})
		}
	}
	return len(b.problems) == before
}

func (b *book) row(line int, cells []string) {
	w := row{b, line, map[string]string{}}
	before := len(b.problems)
	for i, s := range cells {
		if i >= len(b.order) || b.order[i] == "" {
			if s != "" {
				w.wrong("", fmt.Sprintf("a cell %q after the last column", s), "put text with a comma in it in double quotes")
			}
			continue
		}
		s = fromCell(s)
		w.cells[b.order[i]] = s
		if s != "" {
			if message, hint := oneLine(s); message != "" {
				w.wrong(b.order[i], message, hint)
				return
			}
		}
	}
	d := schedule.Done{Line: line, Date: w.date(), By: w.cells["by"], Note: w.cells["note"]}
	d.Area, d.Job = w.job()
	m := w.material(&d)
	w.amount(&d, m)
	w.whole(&d)
	if b.site != nil && !d.Date.IsZero() {
		w.plausible(d)
	}
	for _, p := range b.problems[before:] {
		if !p.Warning {
			return
		}
	}
	if b.more == 0 {
		b.done = append(b.done, d)
	}
}

// numbered tells whether a job is named as in older lines, by a number without a season.
func numbered(job string) bool {
	_, _, season, n, err := schedule.JobName(job)
	return err == nil && n > 0 && season == 0
}

// correct keeps only the last of several older lines about the same numbered job, and warns
// of the others. A line that says the job was missed on an earlier day is dropped without a
// warning.
func (b *book) correct() {
	last := map[string]schedule.Done{}
	for _, d := range b.done {
		if numbered(d.Job) {
			last[d.Job] = d
		}
	}
	b.done = slices.DeleteFunc(b.done, func(d schedule.Done) bool {
		by, numbered := last[d.Job]
		switch {
		case !numbered || by.Line == d.Line:
			return false
		case d.Missed && d.Date.Before(by.Date):
			return true
		}
		b.report(schedule.Problem{Line: d.Line, Key: "job", Warning: true,
			Message: fmt.Sprintf("%s is recorded again on line %d, which counts instead", d.Job, by.Line),
			Hint:    fmt.Sprintf("if both went down, write the kind alone in one of them, or the sum in line %d", by.Line)})
		return true
	})
}
