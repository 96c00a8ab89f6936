package ical

import (
	"fmt"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"swardbook/schedule"
)

// Lengths of a description in characters. Phones show little, and one common
// service cuts near 8,000. // [common]
const (
	goodLength = 2000 // fewer reasons are given above this
	hardLength = 4000 // whole lines are left to the sheet above this
	mostWhys   = 3
)

const (
	moreLine     = "…more in the sheet"
	recordPrefix = "Record: swardbook record FILE "
)

// describe writes the text of one event: what to do first, then when, how,
// cautions, why, what comes next, who, and how to record it. It is meant for a
// narrow screen and for being read aloud, and does not depend on which areas,
// persons or kinds the calendar was asked for.
func describe(p *schedule.Program, e *schedule.Entry, o Options, link string) string {
	end := ending(e, o, link)
	var body, text string
	for whys := mostWhys; whys >= 0; whys-- {
		body = opening(p, e, whys)
		text = paragraphs(body, end)
		if utf8.RuneCountInString(text) <= goodLength {
			return text
		}
	}
	lines := strings.Split(body, "\n")
	for utf8.RuneCountInString(text) > hardLength && len(lines) > 1 {
		lines = lines[:len(lines)-1]
		text = paragraphs(strings.Join(lines, "\n"), moreLine, end)
	}
	return text
}

// paragraphs joins the blocks that have text with an empty line between them.
func paragraphs(blocks ...string) string {
	return strings.Join(slices.DeleteFunc(blocks, func(s string) bool { return s == "" }), "\n\n")
}

// opening is the part of the description about the job itself.
func opening(p *schedule.Program, e *schedule.Entry, whys int) string {
	switch e.State {
	case schedule.Finished:
		return paragraphs(lines("Done "+e.Date.Short()+": "+oneLine(e.Summary), labelled("Record book: ", e.Note)))
	case schedule.Missed:
		return paragraphs(lines("This was not done: "+oneLine(e.Summary), labelled("Record book: ", e.Note)),
			"Do not make up for it on your own. What still fits is in the program as a job of its own.")
	}
	return paragraphs(
		lines(oneLine(e.Summary), windowLine(e)),
		lines(numbered(e.Steps), waterLine(e, p.Metric), labelled("If rain comes: ", e.IfRain)),
		cautions(e.Cautions),
		reasons(e, whys),
	)
}

// ending is the part about what follows, whose job it is, and the links.
func ending(e *schedule.Entry, o Options, link string) string {
	who := e.WhoName
	if who == "" {
		who = e.Who
	}
	record, form := "", ""
	if !e.Kind.Notice() {
		record = recordPrefix + oneLine(e.ID)
		if o.Record != "" {
			form = "or here: " + formLink(o.Record, e.ID)
		}
	}
	return paragraphs(lines(labelled("Next: ", e.Next), labelled("Who: ", who)), lines(record, form), link)
}

// formLink gives the address of the form on which one job is recorded.
func formLink(base, job string) string {
	mark := "?"
	if strings.Contains(base, "?") {
		mark = "&"
	}
	return base + mark + "job=" + url.QueryEscape(job)
}

// recordedJob reads the job's id back out of a description, "" when it has none.
func recordedJob(description string) string {
	for line := range strings.SplitSeq(description, "\n") {
		if id, ok := strings.CutPrefix(line, recordPrefix); ok {
			return id
		}
	}
	return ""
}

// windowLine says between which days the job may be done.
func windowLine(e *schedule.Entry) string {
	if e.Kind.Notice() || e.Earliest.IsZero() || e.Latest.IsZero() {
		return ""
	}
	form := "2 Jan"
	if e.Earliest.Year != e.Latest.Year {
		form = "2 Jan 2006"
	}
	return fmt.Sprintf("Window: %s to %s; last safe day %s.",
		e.Earliest.Time().Format(form), e.Latest.Time().Format(form), e.Latest.Short())
}

func waterLine(e *schedule.Entry, metric bool) string {
	if e.WaterIn <= 0 {
		return ""
	}
	if metric {
		return fmt.Sprintf("Water in: %.0f mm.", float64(e.WaterIn)*25.4) // [definitions]
	}
	return "Water in: " + strconv.FormatFloat(float64(e.WaterIn), 'g', 2, 64) + " in."
}

func numbered(steps []string) string {
	out := make([]string, 0, len(steps))
	for _, s := range steps {
		if s = oneLine(s); s != "" {
			out = append(out, strconv.Itoa(len(out)+1)+". "+s)
		}
	}
	return lines(out...)
}

// cautions gives each caution once.
func cautions(all []string) string {
	var out []string
	for _, s := range all {
		if s = labelled("Caution: ", s); !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return lines(out...)
}

// reasons gives the shortest n reasons, in the order of the entry. The rest,
// and what bound the day, are left to the commands and the page.
func reasons(e *schedule.Entry, n int) string {
	order := make([]int, len(e.Why))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return len(e.Why[a].Text) - len(e.Why[b].Text) })
	order = order[:min(n, len(order))]
	slices.Sort(order)
	var out []string
	for _, i := range order {
		text := labelled("Why: ", e.Why[i].Text)
		if from := shortSources(e.Why[i].Source); from != "" && text != "" {
			text = strings.TrimSuffix(text, ".") + " (" + from + ")."
		}
		out = append(out, text)
	}
	return lines(out...)
}

// labelled puts a label before a text, and is empty without one.
func labelled(label, text string) string {
	if text = oneLine(text); text == "" {
		return ""
	}
	return label + text
}

// lines joins the lines that have text.
func lines(all ...string) string {
	return strings.Join(slices.DeleteFunc(all, func(s string) bool { return s == "" }), "\n")
}
