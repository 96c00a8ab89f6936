package text

import (
	"encoding/csv"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"swardbook/schedule/word"
)

// Column is one column of a [Table].
type Column struct {
	Name  string
	Right bool // figures stand to the right
}

// Table is rows under named columns, to be written as text, CSV or Markdown.
type Table struct {
	Columns []Column
	Rows    [][]string
}

// columns reads names; one with a "#" before it is a column of figures.
func columns(names ...string) []Column {
	out := make([]Column, len(names))
	for i, n := range names {
		out[i] = Column{strings.TrimPrefix(n, "#"), strings.HasPrefix(n, "#")}
	}
	return out
}

func (t *Table) add(cells ...string) { t.Rows = append(t.Rows, cells) }

// CSV writes the table as comma-separated values. A cell that a spreadsheet
// would run as a formula gets an apostrophe before it.
func (t Table) CSV() string {
	var b strings.Builder
	w := csv.NewWriter(&b)
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = c.Name
	}
	w.Write(head) // a strings.Builder takes everything
	for _, r := range t.Rows {
		cells := make([]string, len(r))
		for i, c := range r {
			cells[i] = safeCell(clean(c))
		}
		w.Write(cells)
	}
	w.Flush()
	return b.String()
}

func safeCell(s string) string {
	t := strings.TrimLeft(s, " '")
	if t == "" || !strings.ContainsRune("=+-@", rune(t[0])) {
		return s
	}
	if _, err := strconv.ParseFloat(s, 64); err == nil {
		return s
	}
	return "'" + s
}

// Markdown writes the table with bars.
func (t Table) Markdown() string {
	var b strings.Builder
	line := func(cells []string) {
		b.WriteString("|")
		for _, c := range cells {
			b.WriteString(" " + c + " |")
		}
		b.WriteString("\n")
	}
	head, rule := make([]string, len(t.Columns)), make([]string, len(t.Columns))
	for i, c := range t.Columns {
		head[i], rule[i] = c.Name, "---"
		if c.Right {
			rule[i] = "---:"
		}
	}
	line(head)
	line(rule)
	for _, r := range t.Rows {
		cells := make([]string, len(r))
		for i, c := range r {
			cells[i] = Escape(c)
		}
		line(cells)
	}
	return b.String()
}

// Escape writes a text so that Markdown shows it as it is.
func Escape(t string) string { return escape.Replace(clean(t)) }

var escape = strings.NewReplacer(`\`, `\\`, "|", `\|`, "<", "&lt;", ">", "&gt;", "&", "&amp;", "`", "\\`", "*", `\*`, "_", `\_`, "[", `\[`)

const columnGap = 2

// table writes a table in columns. Where the width is too small the widest
// columns of words are wrapped; figures never are.
func (s *sheet) table(indent int, t Table) {
	widths := s.narrow(t, indent)
	head := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = c.Name
	}
	s.row(indent, widths, t.Columns, head, true)
	for _, r := range t.Rows {
		s.row(indent, widths, t.Columns, r, false)
	}
}

// narrow gives each column its width, and takes from the widest column of
// words until the table fits. It stops where only pieces that must not be
// broken are left.
func (s *sheet) narrow(t Table, indent int) (widths []int) {
	widths = make([]int, len(t.Columns))
	least := make([]int, len(widths)) // the longest piece that must not be broken
	for i, c := range t.Columns {
		widths[i], least[i] = utf8.RuneCountInString(c.Name), longest(c.Name)
		for _, r := range t.Rows {
			n := utf8.RuneCountInString(clean(r[i]))
			widths[i] = max(widths[i], n)
			if c.Right {
				least[i] = max(least[i], n)
			} else {
				least[i] = max(least[i], longest(clean(r[i])))
			}
		}
	}
	for {
		total, widest := indent-columnGap, -1
		for i, w := range widths {
			total += w + columnGap
			if w > least[i] && (widest < 0 || w > widths[widest]) {
				widest = i
			}
		}
		if total <= s.Width || widest < 0 {
			return widths
		}
		widths[widest]--
	}
}

// tableWithout writes a table. Where the screen is too narrow for it, columns are left
// out in the order of spare until it fits, and a line below the table names them.
func (s *sheet) tableWithout(t Table, spare ...string) {
	var gone []string
	for _, name := range spare {
		if s.fits(s.narrow(t, 0)) {
			break
		}
		if i := slices.IndexFunc(t.Columns, func(c Column) bool { return c.Name == name }); i >= 0 {
			t = t.without(i)
			gone = append(gone, name)
		}
	}
	s.table(0, t)
	if len(gone) > 0 {
		s.para(0, "The screen is too narrow for: "+strings.Join(gone, ", ")+"; --format csv shows them.")
	}
}

func (s *sheet) fits(widths []int) bool {
	total := -columnGap
	for _, w := range widths {
		total += w + columnGap
	}
	return total <= s.Width
}

func (t Table) without(i int) Table {
	out := Table{Columns: slices.Delete(slices.Clone(t.Columns), i, i+1)}
	for _, r := range t.Rows {
		out.Rows = append(out.Rows, slices.Delete(slices.Clone(r), i, i+1))
	}
	return out
}

func longest(t string) int {
	n := 0
	for _, c := range word.Runs(t) {
		n = max(n, utf8.RuneCountInString(c))
	}
	return n
}

func (s *sheet) row(indent int, widths []int, columns []Column, cells []string, head bool) {
	parts := make([][]string, len(cells))
	height := 1
	for i, c := range cells {
		parts[i] = wrap(clean(c), widths[i])
		height = max(height, len(parts[i]))
	}
	for y := range height {
		line := strings.Repeat(" ", indent)
		for i := range cells {
			text := ""
			if y < len(parts[i]) {
				text = parts[i][y]
			}
			pad := strings.Repeat(" ", max(0, widths[i]-utf8.RuneCountInString(text)))
			if columns[i].Right {
				line += pad + text
			} else {
				line += text + pad
			}
			if i < len(cells)-1 {
				line += strings.Repeat(" ", columnGap)
			}
		}
		line = strings.TrimRight(line, " ")
		if head {
			line = s.bold(line)
		}
		s.b.WriteString(line + "\n")
	}
}
