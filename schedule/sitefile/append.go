package sitefile

import (
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
