package sitefile

import (
	"encoding/csv"
	"slices"
	"strings"

	"swardbook/schedule"
)

// AppendLine writes one line of an older record book. The amount is given as a person
// writes it ("96 lb", "half", ""); a missed job writes "missed". Line breaks
// in a cell become spaces. A cell that a spreadsheet would run as a formula
// gets an apostrophe before it, which [LoadRecord] takes away again.
func AppendLine(d schedule.Done, amount string) string {
	if d.Missed {
		amount = "missed"
	}
	cells := []string{d.Date.String(), d.Area, d.Job, d.Material, amount, d.By, d.Note}
	return csvLine(cells)
}

// runs tells text that a spreadsheet takes for a formula, or would once its
// leading apostrophes are gone.
func runs(s string) bool {
	s = strings.TrimLeft(s, "'")
	return s != "" && strings.IndexByte("=+-@", s[0]) >= 0
}

func toCell(s string) string {
	if runs(s) {
		return "'" + s
	}
	return s
}

func fromCell(s string) string {
	if strings.HasPrefix(s, "'") && runs(s) {
		return s[1:]
	}
	return s
}

// ComposeBook writes a record book of lines, each a Pair for a column, and gives the
// line of the file on which each begins. A line that names its job as older books do
// brings a column for it; what is in no column comes back as a problem.
func ComposeBook(lines [][]Pair) (text []byte, at []int, wrong []schedule.Problem) {
	order := columns
	for _, l := range lines {
		if slices.ContainsFunc(l, func(p Pair) bool { return p.Key == "job" && strings.TrimSpace(p.Value) != "" }) {
			order = append(slices.Clone(columns), "job")
		}
	}
	var b strings.Builder
	b.WriteString(strings.Join(order, ",") + "\n")
	row := 2
	for _, l := range lines {
		cells := make([]string, len(order))
		for _, p := range l {
			switch i := slices.Index(order, p.Key); {
			case i < 0 && p.Key != "job":
				wrong = append(wrong, schedule.Problem{Line: row, Key: p.Key, Message: "unknown column", Hint: suggest(p.Key, columns)})
			case i >= 0 && cells[i] != "":
				wrong = append(wrong, schedule.Problem{Line: row, Key: p.Key, Message: "is given twice", Hint: "keep one of the two"})
			case i >= 0:
				cells[i] = toCell(strings.ToValidUTF8(strings.TrimSpace(p.Value), "\ufffd"))
			}
		}
		at = append(at, row)
		if i := slices.Index(cells, "date"); i >= 0 && (slices.Contains(cells, "kind") || slices.Contains(cells, "job")) {
			wrong = append(wrong, schedule.Problem{Line: row, Key: order[i], Message: "reads like the names of the columns", Hint: "say it in other words"})
			cells[i] = ""
		}
		if strings.HasPrefix(cells[0], "#") {
			cells[0] = "'" + cells[0] // or the line would be a comment
		}
		var one strings.Builder
		w := csv.NewWriter(&one)
		w.Write(cells) // a strings.Builder takes everything
		w.Flush()
		b.WriteString(one.String())
		row += strings.Count(one.String(), "\n")
	}
	return []byte(b.String()), at, wrong
}
