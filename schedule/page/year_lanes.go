package page

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"swardbook/schedule"
)

// The lanes of a drawing: one for each kind of job. A bar is a window, a square
// on it a chosen day, and beside it stand the day and the amount. Every label
// is given its room before it is drawn: beside its bar if it fits there, else on
// a line of its own above it; bars and labels then go into as many lines as they
// take. So a drawing grows in height and never in width, and nothing is cut.

const (
	markGap = 10.0 // between marks on one bar
	laneGap = 7.0  // between neighbours on a line
	nearBar = 5.0  // from a bar to its label
)

// marks are the ways in which a chosen day is drawn.
type marks int

const (
	chosen marks = 1 << iota
	due
	done
	taken
	missed
	fenced // a window with its last safe day
	bare   // a window that goes on
)

var markClass = map[marks]string{chosen: "mark", due: "due", done: "done", taken: "taken", missed: "cross"}

// chosenDay is what is to be done on one day within one window.
type chosenDay struct {
	on   schedule.Date
	how  marks
	jobs []*schedule.Entry
}

// bar is one window of a kind with its days.
type bar struct {
	from, to, stop schedule.Date
	days           []*chosenDay
}

// placedBar is a bar, or some days of it, with the room it takes.
type placedBar struct {
	a, z    float64 // the bar
	stop    bool
	days    []*chosenDay
	label   string
	labelAt float64
	bold    bool
	above   bool // the label stands on the line above
}

// lanesOf lists the kinds of job in programs that are spread, sown or sampled,
// in the order in which kinds matter.
func lanesOf(programs ...*schedule.Program) []schedule.Kind {
	var out []schedule.Kind
	for _, p := range programs {
		for _, e := range p.Entries {
			if !e.Kind.Notice() && !slices.Contains(out, e.Kind) {
				out = append(out, e.Kind)
			}
		}
	}
	order := programs[0].Kinds()
	slices.SortFunc(out, func(a, b schedule.Kind) int { return cmp.Compare(slices.Index(order, a), slices.Index(order, b)) })
	return out
}

// bars gathers the windows of a kind, each once, with their days.
func (l *artist) bars(p *schedule.Program, k schedule.Kind) []*bar {
	var out []*bar
	for i := range p.Entries {
		e := &p.Entries[i]
		if e.Kind != k || !l.t.has(e.Date) {
			continue
		}
		b := &bar{from: e.Earliest, to: e.Latest, stop: e.LastSafe}
		if b.from.IsZero() || e.State != schedule.Planned {
			b = &bar{from: e.Date, to: e.Date}
		}
		if b.stop.After(l.t.to) || b.stop.Before(b.to) {
			b.stop = schedule.Date{}
		}
		i := slices.IndexFunc(out, func(o *bar) bool { return o.from == b.from && o.to == b.to && o.stop == b.stop })
		if i < 0 {
			i, out = len(out), append(out, b)
		}
		b = out[i]
		how := l.how(e)
		j := slices.IndexFunc(b.days, func(d *chosenDay) bool { return d.on == e.Date && d.how == how })
		if j < 0 {
			j, b.days = len(b.days), append(b.days, &chosenDay{on: e.Date, how: how})
		}
		b.days[j].jobs = append(b.days[j].jobs, e)
	}
	slices.SortStableFunc(out, func(a, b *bar) int { return cmp.Or(a.from.Compare(b.from), a.to.Compare(b.to)) })
	for _, b := range out {
		slices.SortStableFunc(b.days, func(a, c *chosenDay) int { return a.on.Compare(c.on) })
	}
	return out
}

// amounts joins those of one day: "3.9 + 2.1 lb".
func (l *artist) amounts(d *chosenDay) string {
	var parts []string
	units := map[string]bool{}
	for _, e := range d.jobs {
		a := amountOf(e, l.measure)
		if a == "" {
			continue
		}
		parts = append(parts, a)
		_, unit, _ := strings.Cut(a, " ")
		units[unit] = true
	}
	if len(units) == 1 {
		unit := " " + slices.Collect(maps.Keys(units))[0]
		for i := range parts[:len(parts)-1] {
			parts[i] = strings.TrimSuffix(parts[i], unit)
		}
	}
	return strings.Join(parts, " + ")
}

func (l *artist) say(d *chosenDay) string {
	text := d.on.DayMonth()
	switch a := l.amounts(d); {
	case a != "":
		text += ", " + a
	case len(d.jobs) > 1:
		text += fmt.Sprintf(", %d areas", len(d.jobs))
	}
	return text
}

// sayAll writes the label of several days: what they have in common once.
func (l *artist) sayAll(days []*chosenDay) string {
	same := l.amounts(days[0])
	var whole, dates []string
	for _, d := range days {
		whole = append(whole, l.say(d))
		dates = append(dates, d.on.DayMonth())
		if l.amounts(d) != same {
			same = ""
		}
	}
	if len(days) > 2 && same != "" {
		return strings.Join(dates, ", ") + ": " + same + " each"
	}
	return strings.Join(whole, "; ")
}

// brief is the label when the whole one is wider than the drawing.
func brief(days []*chosenDay) string {
	var out []string
	for _, d := range days {
		text := d.on.DayMonth()
		if len(d.jobs) > 1 {
			text += fmt.Sprintf(", %d areas", len(d.jobs))
		}
		out = append(out, text)
	}
	return strings.Join(out, "; ")
}

func bold(days []*chosenDay) bool {
	return slices.ContainsFunc(days, func(d *chosenDay) bool { return d.how == due })
}

// reach is how far a bar with its marks goes.
func (l *artist) reach(b *bar, days []*chosenDay) (a, z float64) {
	a, z = l.t.at(b.from), l.t.at(b.to)
	first, last := l.t.at(days[0].on), l.t.at(days[len(days)-1].on)
	return min(a, first-5), max(z, a+2, last+5)
}

// beside tries to put the days on one bar with their label after it, else
// before it.
func (l *artist) beside(b *bar, days []*chosenDay) (placedBar, bool) {
	p := placedBar{a: l.t.at(b.from), z: max(l.t.at(b.to), l.t.at(b.from)+2), stop: !b.stop.IsZero(), days: days, label: l.sayAll(days), bold: bold(days)}
	low, high := l.reach(b, days)
	w := l.f.width(p.label, p.bold)
	switch {
	case high+nearBar+w <= l.f.W:
		p.labelAt = high + nearBar
	case low-nearBar-w >= l.t.start:
		p.labelAt = low - nearBar - w
	default:
		return p, false
	}
	return p, true
}

// place parts the days of a bar among as few bars as their labels allow.
func (l *artist) place(b *bar) []placedBar {
	var parts [][]*chosenDay
	for _, d := range b.days {
		fits := false
		for i, part := range parts {
			last := part[len(part)-1]
			longer := append(slices.Clone(part), d)
			if l.t.at(d.on)-l.t.at(last.on) < markGap {
				continue
			}
			if _, fits = l.beside(b, longer); fits {
				parts[i] = longer
				break
			}
		}
		if !fits {
			parts = append(parts, []*chosenDay{d})
		}
	}
	if len(parts) > 2 {
		parts = l.together(b, parts)
	}
	var out []placedBar
	for _, days := range parts {
		p, ok := l.beside(b, days)
		if !ok { // above, as near to its first day as the drawing allows
			p.above = true
			w := l.f.width(p.label, p.bold)
			if w > l.f.W-l.t.start {
				p.label = brief(days)
				w = l.f.width(p.label, p.bold)
			}
			p.labelAt = max(l.t.start, min(l.t.at(days[0].on)-4, l.f.W-w))
		}
		out = append(out, p)
	}
	return out
}

// together puts many days of one window on one bar or two, with the label
// above, where the marks lie far enough apart and the label is no wider than
// the drawing.
func (l *artist) together(b *bar, parts [][]*chosenDay) [][]*chosenDay {
	for i, d := range b.days[1:] {
		if l.t.at(d.on)-l.t.at(b.days[i].on) < markGap {
			return parts
		}
	}
	fits := func(days []*chosenDay) bool {
		return l.f.width(l.sayAll(days), bold(days)) <= l.f.W-l.t.start
	}
	half := (len(b.days) + 1) / 2
	switch {
	case fits(b.days):
		return [][]*chosenDay{b.days}
	case fits(b.days[:half]) && fits(b.days[half:]):
		return [][]*chosenDay{b.days[:half], b.days[half:]}
	}
	return parts
}

// lane draws one kind from y down and gives where it ends.
func (l *artist) lane(p *schedule.Program, k schedule.Kind, y float64) float64 {
	f := l.f
	row := f.letter + 3
	lines := rows{gap: laneGap}
	type at struct {
		placedBar
		line int
	}
	var all []at
	for _, b := range l.bars(p, k) {
		for _, one := range l.place(b) {
			w := f.width(one.label, one.bold)
			low, high := l.reach(b, one.days)
			i := lines.put(min(low, one.labelAt), max(high, one.labelAt+w))
			if one.above { // its words take the line above
				lines.rows = slices.Insert(lines.rows, i, [][2]float64{{0, f.W}})
				for j := range all {
					if all[j].line >= i {
						all[j].line++
					}
				}
				i++
			}
			all = append(all, at{one, i})
		}
	}
	for _, one := range all {
		l.drawBar(one.placedBar, y+float64(one.line)*row+f.letter*0.62)
	}
	return y + float64(max(1, len(lines.rows)))*row + lanePad // a lane without days still has its name
}

// drawBar draws a bar, its marks and its label, at the height of its middle.
func (l *artist) drawBar(p placedBar, y float64) {
	ink := &l.f.front
	if p.z > p.a+2 || p.stop {
		ink.path("win", "M", p.a, " ", y-3, "v6M", p.a, " ", y, "H", p.z)
		if p.stop {
			ink.path("stop", "M", p.z, " ", y-5, "v10")
			l.used |= fenced
		} else {
			l.used |= bare
		}
	}
	for _, d := range p.days {
		x := l.t.at(d.on)
		l.used |= d.how
		switch class := markClass[d.how]; d.how {
		case done:
			ink.path(class, "M", x-4, " ", y, "a4 4 0 1 0 8 0a4 4 0 1 0-8 0Z")
		case missed:
			ink.path(class, "M", x-3.5, " ", y-3.5, "l7 7m0-7l-7 7")
		case due:
			ink.box(class, x-5, y-5, x+5, y+5)
		default:
			ink.box(class, x-3.5, y-3.5, x+3.5, y+3.5)
		}
	}
	line := y + l.f.letter*0.36
	if p.above {
		line -= l.f.letter + 3
	}
	class := "l"
	if p.bold {
		class = "b"
	}
	l.words(class, p.labelAt, line, p.label)
}

// words writes on a patch of the ground it stands on, so that no line runs
// through it.
func (l *artist) words(class string, x, y float64, text string) {
	ink := &l.f.front
	a, z := x-1.5, x+l.f.width(text, class != "l" && class != "q")+1.5
	top, bottom := y-l.f.letter+0.5, y+3
	ink.box("ground", a, top, z, bottom)
	for _, s := range l.t.shut(l.program.Season) {
		if from, to := max(a, l.t.at(s[0])), min(z, l.t.at(s[1])); from < to {
			ink.box("closed", from, top, to, bottom)
		}
	}
	ink.word(class, x, y, text)
}
