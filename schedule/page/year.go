package page

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// yearView is the place's year: a drawing, what its marks mean, and the same
// in tables.
type yearView struct {
	Figure  figure
	Seasons []climate.Season // whose growth is drawn
	From    string
	Better  []string
	Words   []string
	Events  []event
	Soil    string // "soil at 2 in, °F"
	Growth  []growthKey
	Months  []monthRow
}

// event is one dated event of the year, with the span of 8 years in 10.
type event struct {
	What, When, Between string
	on                  schedule.Date
	short               string // words beside the drawing; "" leaves it out there
}

// growthKey is the growth of one season: how it is drawn, and in words.
type growthKey struct{ Class, Text string }

type monthRow struct {
	Month, Soil string
	Growth      []string
}

// soilDepth is where the soil is read: where roots and seeds are.
const soilDepth climate.Inches = 2

func (b *sheetBuilder) year(y *climate.Year) yearView {
	p := b.p
	v := yearView{From: p.Place.ClimateFrom, Better: p.Place.Better}
	for _, w := range p.Season.Words {
		v.Words = append(v.Words, word.Capital(strings.TrimSuffix(w, "."))+".")
	}
	for _, a := range p.Site.Areas {
		if b.o.Area != "" && b.o.Area != a.ID {
			continue
		}
		if s := a.Stand.Season(); !slices.Contains(v.Seasons, s) {
			v.Seasons = append(v.Seasons, s)
		}
	}
	slices.Sort(v.Seasons)
	v.Events = b.events()
	v.Soil = "Soil at " + b.measure.Depth(soilDepth)
	for _, s := range v.Seasons {
		v.Growth = append(v.Growth, growthKey{growthClass(len(v.Growth)), "Growth of " + s.String() + " grass"})
	}
	for _, d := range midMonths(p.Start, p.Through) {
		row := monthRow{Month: d.Time().Format("Jan 2006"), Soil: b.measure.Temperature(y.Soil(soilDepth, d.DayOfYear()))}
		for _, s := range v.Seasons {
			row.Growth = append(row.Growth, fmt.Sprintf("%.0f %%", 100*y.Growth(d.DayOfYear(), s)))
		}
		v.Months = append(v.Months, row)
	}
	v.Figure = b.drawYear(y, v)
	return v
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
		{"First autumn freeze", "", odds(s.FirstFreeze), s.FirstFreeze.P50, "first freeze"},
		{word.Capital(soil(50)), "", spreadOf(s.SoilBelow50, s.SpreadDays), s.SoilBelow50, "soil below " + b.measure.Temperature(50)},
		{word.Capital(soil(40)), "", spreadOf(s.SoilBelow40, s.Spread40Days), s.SoilBelow40, "soil below " + b.measure.Temperature(40)},
		{"Growth ends", "", spreadOf(s.GrowthEnds, s.SpreadDays), s.GrowthEnds, "growth ends"},
		{"Last safe day to spread", "", "", s.LastSafe, "last safe day"},
		{"Ground frozen in an early year", "", "", s.GroundFreeze.Early, ""},
		{"Ground frozen in half of the years", "", "", s.GroundFreeze.Median, "ground freezes"},
		{"Ground open again", "", "", s.Reopens, "ground open"},
		{"Growth begins", "", spreadOf(s.GrowthBegins, s.SpringDays), s.GrowthBegins, "growth begins"},
		{"Last spring freeze", "", odds(s.LastFreeze), s.LastFreeze.P50, "last freeze"},
	}
	all = slices.DeleteFunc(all, func(e event) bool { return e.on.IsZero() })
	for i := range all {
		all[i].When = all[i].on.Words()
	}
	slices.SortStableFunc(all, func(a, c event) int { return a.on.Compare(c.on) })
	return all
}
