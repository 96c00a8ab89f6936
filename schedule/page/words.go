package page

import (
	"regexp"
	"slices"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// readingWords names a reading as a report prints it.
func readingWords(reading string) string {
	switch reading {
	case "ph":
		return "pH"
	case "cec":
		return "CEC"
	}
	return word.Capital(strings.ReplaceAll(reading, "_", " "))
}

// dayMonth writes "Sat 19 Sep", for where the year stands nearby.
func dayMonth(d schedule.Date) string { return d.Time().Format("Mon 2 Jan") }

// span writes two days with no more years than needed: "12 Sep to 21 Nov 2026".
func span(from, to schedule.Date) string {
	switch {
	case from.IsZero() || to.IsZero():
		return ""
	case from == to:
		return from.Short()
	case from.Year == to.Year:
		return from.DayMonth() + " to " + to.Short()
	}
	return from.Short() + " to " + to.Short()
}

// tied puts no-break spaces where no line should end, between a number and its
// unit and inside a date, and keeps an analysis such as 18-24-12 on one line.
func tied(text string) string {
	var b strings.Builder
	b.Grow(len(text) + 16)
	tie(text, func(piece string) { b.WriteString(piece) })
	return b.String()
}

// tie writes a text as [tied] gives it, piece by piece.
func tie(text string, write func(piece string)) {
	first := true
	for w, glued := range word.Words(text) {
		switch {
		case glued:
			write("\u00a0")
		case !first:
			write(" ")
		}
		first = false
		if strings.Count(w, "-") > 1 {
			w = analyses.ReplaceAllStringFunc(w, func(a string) string { return strings.ReplaceAll(a, "-", "-\u2060") })
		}
		write(w)
	}
}

// analyses are the three numbers of a fertilizer.
var analyses = regexp.MustCompile(`\b\d+(\.\d+)?-\d+(\.\d+)?-\d+`)

// named puts the names of jobs in place of their ids, which say little to a
// reader.
func named(p *schedule.Program, text string) string {
	if !strings.Contains(text, "/") {
		return text
	}
	var pairs [][2]string
	for i := range p.Entries {
		pairs = append(pairs, [2]string{p.Entries[i].ID, nameOf(&p.Entries[i])})
	}
	for _, l := range p.LeftOut {
		area := ""
		for _, a := range p.Areas {
			if a.ID == l.Area {
				area = a.Name
			}
		}
		pairs = append(pairs, [2]string{l.ID, jobName(l.ID, l.Kind, area)})
	}
	slices.SortStableFunc(pairs, func(a, b [2]string) int { return len(b[0]) - len(a[0]) }) // …/10 before …/1
	for _, pair := range pairs {
		text = strings.ReplaceAll(text, pair[0], pair[1])
	}
	return text
}

// nameOf names a job by kind, number and area: "lime 1 on East lawn".
func nameOf(e *schedule.Entry) string { return jobName(e.ID, e.Kind, e.AreaName) }

func jobName(id string, k schedule.Kind, area string) string {
	name := k.Noun()
	if !k.Notice() {
		name += " " + id[strings.LastIndex(id, "/")+1:]
	}
	if area != "" {
		name += " on " + area
	}
	return name
}

// jobWords names a job as a page does: "Lime, East lawn".
func jobWords(p *schedule.Program, e *schedule.Entry) string {
	name := kindWords(e.Kind)
	if e.AreaName == "" || len(p.Site.Areas) == 1 && e.AreaName == p.Title {
		return name
	}
	return name + ", " + e.AreaName
}

// kindWords names what is done in the fewest words: "Feed", "Soil sample".
func kindWords(k schedule.Kind) string {
	name := k.Of().Verb
	for _, end := range []string{" on", " for"} {
		name = strings.TrimSuffix(name, end)
	}
	if name == "" || k.Samples() || k.Notice() {
		return word.Capital(k.Noun())
	}
	return name
}

// amountOf writes what is spread or sprayed in all; "" nothing is.
func amountOf(e *schedule.Entry, m word.Measure) string {
	switch {
	case e.Gallons > 0:
		return m.Volume(e.Gallons)
	case e.Pounds > 0:
		return m.Weight(e.Pounds)
	}
	return ""
}
