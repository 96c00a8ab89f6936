package sitefile

import (
	"encoding/csv"
	"math"
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// WholeLine writes a line under [Header], which stands by itself: a job with its season
// and number, what was in the bag, how much of it went down, and the dose first planned.
// The area is given as the plan saw it, with the soil report of that time, as the value
// of a lime depends on it. Weights are rounded as for a person.
func WholeLine(d schedule.Down, s *schedule.Site, a *schedule.Area) string {
	cells := []string{d.Date.String(), d.AreaID, d.Kind.String(), strconv.Itoa(d.Season), strconv.Itoa(d.N), "", "", "", "", "", "", d.By, d.Note}
	if d.Taken {
		cells[12] = takenNote
	}
	weight := func(p agronomy.Pounds) string {
		return strings.ReplaceAll(s.Measure().Fine(p), ",", "")
	}
	switch m := d.Dose.Material; {
	case d.Missed:
		cells[9] = "missed"
	case d.Kind.Sows() && d.Weight > 0:
		cells[9] = weight(d.Weight)
		if whole, _ := a.Seed(d.Kind); max(d.Of, whole) > 0 {
			cells[10] = weight(max(d.Of, whole))
		}
	case d.Kind.Sows() && d.Part > 0 && d.Part < 1:
		cells[9] = figure(math.Round(d.Part*1000)/10) + " %"
	case d.Kind.Spreads() && d.Dose.Rate > 0:
		cells[5], cells[6] = m.ID, contents(m)
		if m.SlowShare > 0 {
			cells[7] = figure(m.SlowShare)
		}
		if m.Kind == material.LimeMaterial || m.Kind == material.WoodAsh {
			cells[8] = figure(float64(s.LimeValue(a, m).Full))
		}
		cells[9] = weight(d.Dose.Rate.Over(a.Size))
		if d.Of > 0 {
			cells[10] = weight(d.Of)
		}
	}
	return csvLine(cells)
}

// contents writes what a bag holds, as [row.analysis] reads it.
func contents(m material.Material) string {
	a := m.Analysis
	text := figure(float64(a.N)) + "-" + figure(float64(a.P2O5)) + "-" + figure(float64(a.K2O))
	if m.Magnesium > 0 {
		text += " " + figure(float64(m.Magnesium)) + "Mg"
	}
	if m.Sulfur > 0 {
		text += " " + figure(float64(m.Sulfur)) + "S"
	}
	if m.Iron > 0 {
		text += " " + figure(float64(m.Iron)) + "Fe"
	}
	return text
}

// figure writes a number with up to four decimals and no trailing zeros.
func figure(v float64) string {
	return strconv.FormatFloat(math.Round(v*1e4)/1e4, 'f', -1, 64)
}

// csvLine writes one line of a CSV file. Line breaks in a cell become spaces, and no cell
// begins like a formula.
func csvLine(cells []string) string {
	for i, s := range cells {
		cells[i] = toCell(strings.Join(strings.Fields(s), " "))
	}
	var b strings.Builder
	w := csv.NewWriter(&b)
	w.Write(cells) // writing to a strings.Builder cannot fail
	w.Flush()
	return b.String()
}

// ShortLine writes a line under [ShortHeader], as older record books have them. The
// amount is given as a person writes it ("96 lb", "half", ""); a missed job has
// "missed" there. Line breaks in a cell become spaces. A cell that a spreadsheet would
// run as a formula gets an apostrophe before it, which [LoadRecord] takes away again.
func ShortLine(d schedule.Done, amount string) string {
	if d.Missed {
		amount = "missed"
	}
	cells := []string{d.Date.String(), d.Area, d.Job, d.Material, amount, d.By, d.Note}
	return csvLine(cells)
}

// runs tells whether a spreadsheet would run a text as a formula, now or once the
// apostrophes before it are gone.
func runs(s string) bool {
	s = strings.TrimLeft(s, "'")
	return s != "" && strings.IndexByte("=+-@", s[0]) >= 0
}

// toCell puts an apostrophe before what a spreadsheet would run.
func toCell(s string) string {
	if runs(s) {
		return "'" + s
	}
	return s
}

// fromCell takes away the apostrophe that [toCell] put there, and no other.
func fromCell(s string) string {
	if strings.HasPrefix(s, "'") && runs(s) {
		return s[1:]
	}
	return s
}

// ComposeBook writes a record book. Each of its lines is given as pairs of column and
// value, and comes back with the line of the file on which it begins. If one of them
// names its job in the column "job", as older books do, the book gets that column too. A
// pair that belongs to no column comes back as a problem.
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
		w.Write(cells) // writing to a strings.Builder cannot fail
		w.Flush()
		b.WriteString(one.String())
		row += strings.Count(one.String(), "\n")
	}
	return []byte(b.String()), at, wrong
}
