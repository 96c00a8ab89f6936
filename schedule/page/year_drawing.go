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

// The drawing of the year: time runs to the right. From the top stand the
// months; today and the days that close and open the ground; growth and soil,
// each with a scale of its own; freezes; a lane for each kind of job. It is made
// for a narrow page, for a wide one and for paper: on the narrow one the name of a
// row stands above it, on the others at its left.

const (
	narrowWidth = 328.0 // a phone of 360 pixels between its margins
	wideWidth   = 704.0 // 186 mm of paper
	wideNames   = 108.0 // room for names at the left
	lanePad     = 2.0   // above and below what a lane holds
)

// scene is what a drawing shows.
type scene struct {
	program  *schedule.Program
	from, to schedule.Date
	today    schedule.Date // unset: not shown
	how      func(*schedule.Entry) marks
	lanes    []schedule.Kind
	blank    float64       // height of lanes to draw in; 0: lanes hold the jobs
	year     *climate.Year // unset: neither growth nor soil nor freezes
	seasons  []climate.Season
	soils    [366]climate.Fahrenheit // of each day of the year, where roots and seeds are
	measure  word.Measure
}

// artist draws one scene at one width.
type artist struct {
	scene
	f    *figure
	t    timeline
	y    float64 // where the next row begins
	used marks   // the marks drawn so far
}

// sizes are the drawings of one scene: for a narrow page, for a wide one, and
// for paper, where there is no room for curves.
type sizes struct{ Narrow, Wide, Paper *figure }

// usualLayer is about what one layer of a drawing takes, in bytes; more only costs time.
const usualLayer = 6 << 10

// drawn makes the drawing at all sizes, and tells the marks it used.
func (s scene) drawn(id, title, desc string) (out sizes, used marks) {
	if s.year != nil {
		s.soils = s.year.SoilOfYear(soilDepth)
	}
	draw := func(f *figure, t timeline) *figure {
		f.Title, f.Desc = title, desc
		for _, l := range []*layer{&f.back, &f.middle, &f.front} {
			l.Grow(usualLayer)
		}
		a := artist{scene: s, f: f, t: t}
		a.draw()
		used |= a.used
		return f
	}
	wide := timeline{from: s.from, to: s.to, start: wideNames, end: wideWidth - 4}
	out.Narrow = draw(&figure{ID: id, Class: "narrow", W: narrowWidth, letter: 11},
		timeline{from: s.from, to: s.to, start: 28, end: narrowWidth - 4})
	out.Wide = draw(&figure{ID: id + "-wide", Class: "wide", W: wideWidth, letter: 10.5}, wide)
	out.Paper = draw(&figure{ID: id + "-paper", Class: "paper", W: wideWidth, letter: 10.5}, wide)
	return out, used
}

func (a *artist) draw() {
	f := a.f
	a.months()
	top := a.y
	days := a.turns()
	body := a.y
	if a.year != nil {
		if f.Class != "paper" {
			a.growth()
			a.soil()
		}
		a.freezes()
	}
	for _, k := range a.lanes {
		f.back.line("hair", 0, a.y, a.t.end, a.y)
		a.y += lanePad
		a.name(k.Noun(), "", a.y+f.letter)
		if !a.wide() {
			a.y += f.letter + 4
		}
		a.y = a.lane(a.program, k, a.y) + a.blank
	}
	f.back.line("hair", 0, a.y, a.t.end, a.y)
	f.H = a.y + 2
	above, under := f.back.String(), &f.back // written anew in its place: a builder is never copied
	under.Reset()
	for _, s := range a.t.shut(a.program.Season) {
		under.box("closed", a.t.at(s[0]), body, a.t.at(s[1]), a.y)
	}
	for _, d := range days {
		under.line(d.class, a.t.at(d.on), top+float64(d.line)*(f.letter+4)+f.letter+2, a.t.at(d.on), a.y)
	}
	under.put(above)
}

// name writes what a row is, at its left or above it.
func (a *artist) name(text, scale string, y float64) {
	a.words("b", 0, y, text)
	if scale != "" {
		a.words("q", a.f.width(text+" ", true), y, scale)
	}
}

// monthLetter is the height of the letters in the names of months.
const monthLetter = 10.0

func (a *artist) months() {
	f := a.f
	a.y = f.letter + 2
	year, free := 0, 0.0 // the year that was written last, and where there is room again
	for d := (schedule.Date{Year: a.t.from.Year, Month: a.t.from.Month, Day: 1}); !d.After(a.t.to); d = d.AddMonths(1) {
		x, next := a.t.at(d), a.t.at(d.AddMonths(1))
		f.back.path("tick", "M", x, " ", f.letter+6, "v", f.letter)
		name := d.Time().Format("Jan")
		for _, short := range []string{name, name[:1]} {
			if next-x >= f.width(short, false)*monthLetter/f.letter+2.2 {
				f.front.word("q m", x+2, a.y+f.letter+3, short)
				break
			}
		}
		if w := f.width("2026", true); d.Year != year && next-x > 5 && x+2 >= free && x+2+w <= f.W {
			f.front.word("b", x+2, a.y, fmt.Sprint(d.Year))
			year, free = d.Year, x+2+w+3
		}
	}
	a.y += f.letter + 8
}

// wide tells whether names stand at the left of their rows.
func (a *artist) wide() bool { return a.f.W == wideWidth }

// turn is a day that stands out on the whole axis.
type turn struct {
	on          schedule.Date
	text, class string
	line        int
}

// turns writes today and the days on which the ground closes and opens.
func (a *artist) turns() []turn {
	f, s := a.f, a.program.Season
	all := []turn{{on: a.today, text: "today", class: "today"}}
	for years := -1; years <= 2; years++ {
		if !s.LastSafe.IsZero() {
			all = append(all, turn{on: s.LastSafe.AddMonths(12 * years), text: "last safe day", class: "safe"})
		}
		if !s.Reopens.IsZero() {
			all = append(all, turn{on: s.Reopens.AddMonths(12 * years), text: "open again", class: "open"})
		}
	}
	all = slices.DeleteFunc(all, func(d turn) bool { return !a.t.has(d.on) })
	slices.SortStableFunc(all, func(x, y turn) int { return cmp.Or(x.on.Compare(y.on), cmp.Compare(x.class, y.class)) })
	lines := rows{gap: 6}
	for i := range all {
		d := &all[i]
		d.text += " " + d.on.DayMonth()
		class := map[string]string{"today": "b", "safe": "b c", "open": "l"}[d.class]
		w := f.width(d.text, class != "l")
		x := min(max(a.t.at(d.on)-1, 0), f.W-w)
		d.line = lines.put(x, x+w)
		y := a.y + float64(d.line)*(f.letter+4) + f.letter
		f.front.box("ground", x-1, y-f.letter+1, x+w+1, y+3)
		f.front.word(class, x, y, d.text)
	}
	a.y += float64(len(lines.rows))*(f.letter+4) + 2
	return all
}

// curve is the path of a value of the year, laid by y: every third day and the last.
func (a *artist) curve(y func(schedule.Date) float64) string {
	days := a.t.days()
	out := make([]byte, 0, max(0, 5*days))
	lay := func(n int, d schedule.Date) { out = appendNum(append(appendNum(out, a.t.along(n, days)), ' '), y(d)) }
	for n := 0; n < days-1; n += 3 {
		lay(n, a.t.from.AddDays(n))
		out = append(out, 'L')
	}
	lay(days-1, a.t.to)
	return string(out)
}

// growth draws how well grass grows, from none to its best.
func (a *artist) growth() {
	f := a.f
	high := 30.0
	if a.wide() {
		high = 15
		a.name("growth", "0 to best", a.y+high-3)
	} else {
		a.name("growth,", "none to best", a.y+f.letter)
		a.y += f.letter + 4
	}
	foot := a.y + high
	for i, s := range a.seasons {
		line := a.curve(func(d schedule.Date) float64 { return foot - high*a.year.Growth(d.DayOfYear(), s) })
		if i > 0 {
			f.middle.path("growth2", "M", line)
			continue
		}
		f.middle.path("growth", "M", a.t.at(a.t.from), " ", foot, "L", line, "L", a.t.at(a.t.to), " ", foot, "Z")
	}
	for _, s := range a.t.shut(a.program.Season) {
		x, z, w := a.t.at(s[0]), a.t.at(s[1]), f.width("ground closed", false)
		if w+6 <= z-x {
			f.middle.word("q", (x+z-w)/2, foot-5, "ground closed")
		}
	}
	a.y = foot + 5
}

// soil draws its temperature where roots and seeds are.
func (a *artist) soil() {
	f := a.f
	low, high := 30.0, 80.0 // °F, widened to what the place needs
	for _, s := range a.soils[1:] {
		low, high = min(low, 10*math.Floor(float64(s)/10)), max(high, 10*math.Ceil(float64(s)/10))
	}
	tall := 46.0
	unit := strings.Fields(a.measure.Temperature(50))[1]
	if a.wide() {
		tall = 40
		a.name("soil "+a.measure.Depth(soilDepth), unit, a.y+tall/2+4)
	} else {
		a.name("soil at "+a.measure.Depth(soilDepth)+",", unit, a.y+f.letter)
		a.y += f.letter + 4
	}
	y := func(temp float64) float64 { return a.y + tall - tall*(temp-low)/(high-low) }
	ticks := []float64{32, 50, 70} // °F
	if a.measure.Metric {
		ticks = []float64{32, 50, 68} // 0, 10, 20 °C
	}
	for _, t := range ticks {
		f.back.line("hair", a.t.start, y(t), a.t.end, y(t))
		text := strings.Fields(a.measure.Temperature(climate.Fahrenheit(t)))[0]
		f.front.word("q", a.t.start-4-f.width(text, false), y(t)+f.letter*0.35, text)
	}
	line := a.curve(func(d schedule.Date) float64 { return y(float64(a.soils[d.DayOfYear()])) })
	f.middle.path("soil", "M", line)
	a.y += tall + 5
}

// freezes draws the first and the last one with the spread of 8 years in 10.
func (a *artist) freezes() {
	f := a.f
	type span struct {
		x, mid, z float64
		text      string
		at        float64
		line      int
	}
	lines := rows{gap: 6}
	var all []span
	for _, o := range []struct {
		odds schedule.Odds
		name string
	}{{a.program.Season.FirstFreeze, "first"}, {a.program.Season.LastFreeze, "last"}} {
		for years := -1; years <= 1; years++ {
			mid := o.odds.P50.AddMonths(12 * years)
			if o.odds.P50.IsZero() || !a.t.has(mid) {
				continue
			}
			s := span{x: a.t.at(o.odds.P10.AddMonths(12 * years)), mid: a.t.at(mid), z: a.t.at(o.odds.P90.AddMonths(12 * years)),
				text: o.name + " " + mid.DayMonth()}
			w := f.width(s.text, false)
			switch {
			case s.z+nearBar+w <= f.W:
				s.at = s.z + nearBar
			case s.x-nearBar-w >= a.t.start:
				s.at = s.x - nearBar - w
			default:
				s.at = max(a.t.start, f.W-w)
			}
			s.line = lines.put(min(s.x, s.at), max(s.z, s.at+w))
			all = append(all, s)
		}
	}
	if len(all) == 0 {
		return
	}
	if a.wide() {
		a.name("freezes", "", a.y+f.letter)
	} else {
		a.name("freezes,", "8 years in 10", a.y+f.letter)
		a.y += f.letter + 4
	}
	for _, s := range all {
		y := a.y + float64(s.line)*(f.letter+5) + f.letter*0.65
		f.front.path("ink", "M", s.x, " ", y, "H", s.z, "M", s.x, " ", y-3, "v6M", s.z, " ", y-3, "v6")
		f.front.path("thick", "M", s.mid, " ", y-4, "v8")
		a.words("l", s.at, y+f.letter*0.36, s.text)
	}
	a.y += float64(len(lines.rows))*(f.letter+5) + 3
}
