package page

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// yearView is the place's year: a drawing at two widths, what its marks mean,
// and the same in tables.
type yearView struct {
	Drawn  sizes
	Key    []keyMark
	Note   string // how sure the days are
	From   string
	Better []string
	Words  []string
	Events []event
	Soil   string // "Soil at 2 in"
	Growth []string
	Months []monthRow
}

// event is one dated event of the year, with the span of 8 years in 10.
type event struct {
	What, When, Between string
	on                  schedule.Date
}

type monthRow struct {
	Month, Soil string
	Growth      []string
}

// soilDepth is where the soil is read: where roots and seeds are.
const soilDepth climate.Inches = 2

func (b *sheetBuilder) year(y *climate.Year) yearView {
	p := b.p
	v := yearView{From: p.Place.ClimateFrom, Better: p.Place.Better, Soil: "Soil at " + b.measure.Depth(soilDepth)}
	for _, w := range p.Season.Words {
		v.Words = append(v.Words, word.Capital(strings.TrimSuffix(w, "."))+".")
	}
	seasons := b.seasons()
	for _, s := range seasons {
		v.Growth = append(v.Growth, "Growth of "+s.String()+" grass")
	}
	v.Events = b.events()
	for _, d := range midMonths(b.from, b.to) {
		row := monthRow{Month: d.Time().Format("Jan 2006"), Soil: b.measure.Temperature(y.Soil(soilDepth, d.DayOfYear()))}
		for _, s := range seasons {
			row.Growth = append(row.Growth, fmt.Sprintf("%.0f %%", 100*y.Growth(d.DayOfYear(), s)))
		}
		v.Months = append(v.Months, row)
	}
	if n := p.Season.SpreadDays; n > 0 {
		v.Note = fmt.Sprintf("8 years in 10 the autumn days fall within %s of these. A soil thermometer is better than the date: under %s at %s, stop sooner.",
			word.Plural(n, "day"), b.measure.Temperature(40), b.measure.Depth(soilDepth))
	}
	lanes := slices.DeleteFunc(lanesOf(p), func(k schedule.Kind) bool { // with days that the page shows
		return !slices.ContainsFunc(p.Entries, func(e schedule.Entry) bool {
			return e.Kind == k && !e.Date.Before(b.from) && !e.Date.After(b.to)
		})
	})
	s := scene{program: p, from: b.from, to: b.to, today: b.today, how: b.mark, lanes: lanes, year: y, seasons: seasons, measure: b.measure}
	var used marks
	v.Drawn, used = s.drawn("year", "The year of "+p.Title, b.describeYear(v))
	v.Key = key(used, len(seasons) > 1, !p.Season.FirstFreeze.P50.IsZero() || !p.Season.LastFreeze.P50.IsZero())
	return v
}

// seasons lists those of the grasses on the sheet.
func (b *sheetBuilder) seasons() []climate.Season {
	var out []climate.Season
	for _, a := range b.p.Site.Areas {
		if b.o.Area != "" && b.o.Area != a.ID {
			continue
		}
		if s := a.Stand.Season(); !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	slices.Sort(out)
	return out
}

// mark tells how the drawing shows a job.
func (b *sheetBuilder) mark(e *schedule.Entry) marks {
	switch b.p.Standing(e, b.today) {
	case string(schedule.Finished):
		return done
	case string(schedule.Missed):
		return missed
	case "due":
		return due
	case string(schedule.Planned):
		if e.Date == b.next {
			return due
		}
		return chosen
	}
	return taken
}

// midMonths gives the middle of each month that the program touches, at most
// of twelve.
func midMonths(from, to schedule.Date) []schedule.Date {
	var out []schedule.Date
	for d := (schedule.Date{Year: from.Year, Month: from.Month, Day: 15}); !d.After(to.AddDays(14)) && len(out) < 12; d = d.AddMonths(1) {
		out = append(out, d)
	}
	return out
}

// events lists what the year brings, in the order of the days.
func (b *sheetBuilder) events() []event {
	s := b.p.Season
	spreadOf := func(d schedule.Date, days int) string {
		if days == 0 {
			return ""
		}
		return span(d.AddDays(-days), d.AddDays(days))
	}
	odds := func(o schedule.Odds) string { return span(o.P10, o.P90) }
	soil := func(f climate.Fahrenheit) string {
		return fmt.Sprintf("soil at %s falls below %s", b.measure.Depth(soilDepth), b.measure.Temperature(f))
	}
	all := []event{
		{"First autumn freeze", "", odds(s.FirstFreeze), s.FirstFreeze.P50},
		{word.Capital(soil(50)), "", spreadOf(s.SoilBelow50, s.SpreadDays), s.SoilBelow50},
		{word.Capital(soil(40)), "", spreadOf(s.SoilBelow40, s.Spread40Days), s.SoilBelow40},
		{"Growth ends", "", spreadOf(s.GrowthEnds, s.SpreadDays), s.GrowthEnds},
		{"Last safe day to spread", "", "", s.LastSafe},
		{"Ground frozen in an early year", "", "", s.GroundFreeze.Early},
		{"Ground frozen in half of the years", "", "", s.GroundFreeze.Median},
		{"Ground open again", "", "", s.Reopens},
		{"Growth begins", "", spreadOf(s.GrowthBegins, s.SpringDays), s.GrowthBegins},
		{"Last spring freeze", "", odds(s.LastFreeze), s.LastFreeze.P50},
	}
	all = slices.DeleteFunc(all, func(e event) bool { return e.on.IsZero() })
	for i := range all {
		all[i].When = all[i].on.Words()
	}
	slices.SortStableFunc(all, func(a, c event) int { return a.on.Compare(c.on) })
	return all
}

// describeYear says in words what the drawing shows.
func (b *sheetBuilder) describeYear(v yearView) string {
	out := []string{fmt.Sprintf("Time runs to the right, %s.", span(b.from, b.to))}
	for _, e := range v.Events {
		out = append(out, fmt.Sprintf("%s: %s.", e.What, e.on.Short()))
	}
	for i := range b.p.Entries {
		e := &b.p.Entries[i]
		if e.Kind.Notice() {
			continue
		}
		text := jobWords(b.p, e)
		if a := amountOf(e, b.measure); a != "" {
			text += ", " + a
		}
		out = append(out, fmt.Sprintf("%s: %s.", e.Date.Short(), text))
	}
	return strings.Join(out, " ")
}

// keyMark explains one mark of a drawing.
type keyMark struct {
	SVG  template.HTML
	Text string
}

const (
	fromHere = `<svg viewBox="0 0 16 16" aria-hidden="true">`
	fromWide = `<svg class="two" viewBox="0 0 28 16" aria-hidden="true">`
)

var keyMarks = []struct {
	of   marks
	text string
	svg  string
}{
	{due, "due or next", fromHere + `<path class="due" d="M3 3H13V13H3Z"/></svg>`},
	{chosen, "chosen day", fromHere + `<path class="mark" d="M4.5 4.5H11.5V11.5H4.5Z"/></svg>`},
	{taken, "past, taken as done", fromHere + `<path class="taken" d="M4.5 4.5H11.5V11.5H4.5Z"/></svg>`},
	{done, "done", fromHere + `<path class="done" d="M4 8a4 4 0 1 0 8 0a4 4 0 1 0-8 0Z"/></svg>`},
	{missed, "missed", fromHere + `<path class="cross" d="M4.5 4.5l7 7m0-7l-7 7"/></svg>`},
	{fenced, "window, to its last safe day", fromWide + `<path class="win" d="M1 5v6M1 8H26"/><path class="stop" d="M26 3v10"/></svg>`},
	{bare, "window", fromWide + `<path class="win" d="M1 5v6M1 8H27"/></svg>`},
}

// key explains the marks that a drawing uses, and no others.
func key(used marks, secondGrowth, freezes bool) []keyMark {
	var out []keyMark
	for _, k := range keyMarks {
		if used&k.of != 0 {
			out = append(out, keyMark{template.HTML(k.svg), k.text})
		}
	}
	if freezes {
		out = append(out, keyMark{fromWide + `<path class="ink" d="M2 5v6M26 5v6M2 8H26"/><path class="thick" d="M13 4v8"/></svg>`, "freezes: middle, 8 years in 10"})
	}
	if secondGrowth {
		out = append(out, keyMark{fromWide + `<path class="growth2" d="M1 13C8 13 9 3 14 3S20 13 27 13"/></svg>`, "growth of the warm-season grass"})
	}
	return out
}
