package page

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// The plane of the drawing: time runs down. From the left stand the months,
// the curves, one lane for each kind of job, and the dates in words.
const (
	yearWidth  = 360.0
	yearTop    = 88.0
	yearMargin = 16.0
	curveLeft  = 30.0
	curveRight = 114.0
	lanesLeft  = 124.0
	laneWidth  = 16.0
	lanesRoom  = 82.0 // leaves the longest date in words its room, in the widest of common letters
	wordsGap   = 13.5
	perDay     = 1.55
	shortest   = 260.0
	longest    = 1250.0
)

// label is a date in words at the right of the drawing.
type label struct {
	at    float64
	from  float64 // x where its hairline starts
	class string
	text  string
}

func (b *sheetBuilder) drawYear(y *climate.Year, v yearView) figure {
	p := b.p
	days := float64(p.Through.DaysFrom(p.Start) + 1)
	t := timeline{from: p.Start, to: p.Through, start: yearTop,
		perDay: min(max(perDay, shortest/days), longest/days)}
	lanes := lanesOf(p)
	wide := min(laneWidth, lanesRoom/float64(max(1, len(lanes))))
	lanesRight := lanesLeft + wide*float64(len(lanes))
	f := figure{ID: "year", Title: "The year of " + p.Title, Desc: b.describeYear(v), W: yearWidth, H: t.end() + yearMargin}

	b.drawGround(&f, t, lanesRight)
	for _, d := range t.months() {
		f.line("hair", 0, t.at(d), lanesRight, t.at(d))
		f.word("small", "start", 0, t.at(d)+11, d.Time().Format("Jan"))
		if d.Month == 1 {
			f.word("small", "start", 0, t.at(d)+22, fmt.Sprint(d.Year))
		}
	}
	b.drawCurves(&f, t, y, v.Seasons)
	labels := b.drawEvents(&f, t, v.Events, lanesRight)
	for i, k := range lanes {
		x := lanesLeft + wide*(float64(i)+0.5)
		f.upright("small", x+4, yearTop-8, k.Noun())
		labels = append(labels, drawLane(&f, t, p, k, x)...)
	}
	drawLabels(&f, t, labels, lanesRight)
	return f
}

// drawGround hatches the days on which the ground is closed.
func (b *sheetBuilder) drawGround(f *figure, t timeline, right float64) {
	s := b.p.Season
	if s.LastSafe.IsZero() || s.Reopens.IsZero() || s.GroundFreeze.Median.IsZero() && s.GroundFreeze.Early.IsZero() {
		return
	}
	closed := [][2]schedule.Date{{s.LastSafe, s.Reopens}}
	if s.Reopens.Before(s.LastSafe) { // the program begins on closed ground
		closed = [][2]schedule.Date{{t.from, s.Reopens}, {s.LastSafe, t.to}}
	}
	for _, c := range closed {
		if a, z, ok := t.within(c[0], c[1]); ok {
			f.box("closed", curveLeft, a, right, z)
		}
	}
}

// drawCurves draws the soil's temperature as a line and growth as a shade.
func (b *sheetBuilder) drawCurves(f *figure, t timeline, y *climate.Year, seasons []climate.Season) {
	low, high := 30.0, 80.0 // °F, widened to what the place needs
	for d := climate.Day(1); d <= 365; d++ {
		s := float64(y.Soil(soilDepth, d))
		low, high = min(low, 10*math.Floor(s/10)), max(high, 10*math.Ceil(s/10))
	}
	x := func(temp float64) float64 { return curveLeft + (temp-low)/(high-low)*(curveRight-curveLeft) }
	ticks := []float64{32, 50, 65, 80, 95} // °F
	if b.p.Metric {
		ticks = []float64{32, 50, 68, 86} // 0, 10, 20, 30 °C
	}
	for _, c := range ticks {
		if c > high || c < low {
			continue
		}
		f.line("hair", x(c), yearTop-4, x(c), t.end())
		f.word("small", "middle", x(c), yearTop-8, strings.Fields(b.measure.Temperature(climate.Fahrenheit(c)))[0])
	}
	f.word("small", "start", curveLeft, yearTop-22, "soil "+unitOf(b.measure)+", growth")
	step := max(1, int(3/t.perDay))
	var soil []any
	for i, s := range seasons {
		var edge []any
		edge = append(edge, "M", curveLeft, t.start)
		for d := t.from; !d.After(t.to); d = d.AddDays(step) {
			edge = append(edge, "L", curveLeft+y.Growth(d.DayOfYear(), s)*(curveRight-curveLeft), t.at(d))
		}
		f.path(growthClass(i), append(edge, "L", curveLeft, t.end(), "Z")...)
	}
	verb := "M"
	for d := t.from; !d.After(t.to); d = d.AddDays(step) {
		soil = append(soil, verb, x(float64(y.Soil(soilDepth, d.DayOfYear()))), t.at(d))
		verb = "L"
	}
	f.path("soil", soil...)
}

// growthClass shades the growth of the first season and dashes a second one.
func growthClass(i int) string {
	if i > 0 {
		return "growth2"
	}
	return "growth"
}

func unitOf(m word.Measure) string {
	return strings.Fields(m.Temperature(50))[1]
}

// drawEvents draws the freezes with their spread and the events of the year.
func (b *sheetBuilder) drawEvents(f *figure, t timeline, events []event, right float64) []label {
	for _, o := range []schedule.Odds{b.p.Season.FirstFreeze, b.p.Season.LastFreeze} {
		for shift := -1; shift <= 1; shift++ { // the same event of the years about
			if a, z, ok := t.within(o.P10.AddMonths(12*shift), o.P90.AddMonths(12*shift)); ok && !o.P50.IsZero() {
				f.path("spread", "M", curveLeft-3, a, "h 6 m -3 0 V", z, "m -3 0 h 6")
			}
		}
	}
	var out []label
	for _, e := range events {
		if e.short == "" || !t.has(e.on) {
			continue
		}
		class := "event"
		if e.short == "last safe day" || e.short == "ground open" {
			class = "close"
		}
		f.line(class, curveLeft, t.at(e.on), right, t.at(e.on))
		out = append(out, label{t.at(e.on), right, "soft", e.on.DayMonth() + " " + e.short})
	}
	return out
}

// drawLane draws the windows and chosen days of one kind of job.
func drawLane(f *figure, t timeline, p *schedule.Program, k schedule.Kind, x float64) []label {
	for _, w := range brackets(p, k) {
		if a, z, ok := t.within(w.from, w.to); ok {
			off := x - 5 + 2.5*float64(w.beside%3)
			f.path("window", "M", off+3, a, "h -3 V", z, "h 3")
		}
	}
	type day struct {
		on    schedule.Date
		state schedule.State
		jobs  int
	}
	var days []day
	var ideals []schedule.Date
	for _, e := range p.Entries {
		if e.Kind != k || !t.has(e.Date) {
			continue
		}
		if t.has(e.Ideal) && e.Ideal != e.Date && e.State == schedule.Planned && !slices.Contains(ideals, e.Ideal) {
			ideals = append(ideals, e.Ideal)
			f.ideal(x+1, t.at(e.Ideal))
		}
		i := slices.IndexFunc(days, func(d day) bool { return d.on == e.Date && d.state == e.State })
		if i < 0 {
			days = append(days, day{e.Date, e.State, 0})
			i = len(days) - 1
		}
		days[i].jobs++
	}
	var out []label
	for _, d := range days {
		f.chosen(x+1, t.at(d.on), d.state)
		text := d.on.DayMonth() + " " + k.Noun()
		if d.jobs > 1 {
			text += fmt.Sprintf(" ×%d", d.jobs)
		}
		out = append(out, label{t.at(d.on), x + 7, "strong", text})
	}
	return out
}

// drawLabels writes the dates apart from each other, each with a hairline to
// its day.
func drawLabels(f *figure, t timeline, labels []label, right float64) {
	slices.SortStableFunc(labels, func(a, b label) int { return cmp.Compare(a.at, b.at) })
	wish := make([]float64, len(labels))
	for i, l := range labels {
		wish[i] = l.at
	}
	for i, y := range spread(wish, wordsGap, t.start+4, t.end()+8) {
		l := labels[i]
		f.path("leader", "M", l.from, l.at, "H", right, "L", right+8, y)
		f.word(l.class, "start", right+11, y+4, l.text)
	}
}

// describeYear says in words what the drawing shows.
func (b *sheetBuilder) describeYear(v yearView) string {
	out := []string{fmt.Sprintf("Time runs down, %s.", span(b.p.Start, b.p.Through))}
	for _, e := range v.Events {
		out = append(out, fmt.Sprintf("%s: %s.", e.What, e.on.Short()))
	}
	return strings.Join(append(out, "The jobs and their days are in the table of dates; the figures of the curves in the table of months."), " ")
}
