package page

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"swardbook/schedule"
)

// figure is a drawing: lines, fills and words on a plane of small units, about
// one of them to a pixel on a narrow phone.
type figure struct {
	ID, Title, Desc string
	W, H            float64
	Shapes          []shape
}

// shape is a path, or a word when Text is set.
type shape struct {
	Class  string
	D      string // of a path
	X, Y   string // of a word
	Anchor string // "start", "middle" or "end"
	Turn   string // of a word that stands upright
	Text   string
}

// num writes a coordinate.
func num(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func round(v float64) float64 { return float64(int(v*10+0.5)) / 10 }

func (f *figure) path(class string, parts ...any) {
	var b strings.Builder
	for i, p := range parts {
		if i > 0 {
			b.WriteByte(' ')
		}
		switch p := p.(type) {
		case string:
			b.WriteString(p)
		case float64:
			b.WriteString(num(round(p)))
		}
	}
	f.Shapes = append(f.Shapes, shape{Class: class, D: b.String()})
}

func (f *figure) line(class string, x1, y1, x2, y2 float64) {
	f.path(class, "M", x1, y1, "L", x2, y2)
}

func (f *figure) box(class string, x1, y1, x2, y2 float64) {
	f.path(class, "M", x1, y1, "H", x2, "V", y2, "H", x1, "Z")
}

func (f *figure) word(class, anchor string, x, y float64, text string) {
	f.Shapes = append(f.Shapes, shape{Class: class, X: num(round(x)), Y: num(round(y)), Anchor: anchor, Text: text})
}

// upright writes a word that reads from the bottom up.
func (f *figure) upright(class string, x, y float64, text string) {
	f.word(class, "start", x, y, text)
	s := &f.Shapes[len(f.Shapes)-1]
	s.Turn = fmt.Sprintf("rotate(-90 %s %s)", s.X, s.Y)
}

// The marks of a job, each around its point.

func (f *figure) chosen(x, y float64, s schedule.State) {
	switch s {
	case schedule.Finished:
		f.path("mark", "M", x-4, y, "a 4 4 0 1 0 8 0 a 4 4 0 1 0 -8 0 Z")
	case schedule.Missed:
		f.path("cross", "M", x-3.5, y-3.5, "l 7 7 m 0 -7 l -7 7")
	default:
		f.box("mark", x-3.5, y-3.5, x+3.5, y+3.5)
	}
}

func (f *figure) ideal(x, y float64) {
	f.path("diamond", "M", x, y-5, "l 5 5 l -5 5 l -5 -5 Z")
}

// timeline lays dates on an axis of days.
type timeline struct {
	from, to schedule.Date
	start    float64 // where the first day lies
	perDay   float64
}

func (t timeline) at(d schedule.Date) float64 {
	return t.start + (float64(d.DaysFrom(t.from))+0.5)*t.perDay
}

func (t timeline) end() float64 { return t.start + float64(t.to.DaysFrom(t.from)+1)*t.perDay }

func (t timeline) has(d schedule.Date) bool {
	return !d.IsZero() && !d.Before(t.from) && !d.After(t.to)
}

// within cuts a span to the axis.
func (t timeline) within(from, to schedule.Date) (a, b float64, ok bool) {
	if from.IsZero() || to.IsZero() || to.Before(t.from) || from.After(t.to) {
		return 0, 0, false
	}
	return t.at(schedule.Later(from, t.from)), t.at(schedule.Earlier(to, t.to)), true
}

// months lists the first days of months on the axis.
func (t timeline) months() []schedule.Date {
	var out []schedule.Date
	for d := (schedule.Date{Year: t.from.Year, Month: t.from.Month, Day: 1}); !d.After(t.to); d = d.AddMonths(1) {
		if t.has(d) {
			out = append(out, d)
		}
	}
	return out
}

// spread moves wished places apart until neighbours keep the gap, each as
// little as can be, and keeps them between two ends where there is room. The
// wishes are in order.
func spread(wish []float64, gap, low, high float64) []float64 {
	type pool struct {
		sum float64
		n   int
	}
	var pools []pool
	for i, w := range wish {
		pools = append(pools, pool{w - float64(i)*gap, 1})
		for len(pools) > 1 {
			a, b := pools[len(pools)-2], pools[len(pools)-1]
			if a.sum/float64(a.n) <= b.sum/float64(b.n) {
				break
			}
			pools = append(pools[:len(pools)-2], pool{a.sum + b.sum, a.n + b.n})
		}
	}
	high = max(low, high-float64(len(wish)-1)*gap)
	var out []float64
	for _, p := range pools {
		for range p.n {
			out = append(out, min(max(p.sum/float64(p.n), low), high)+float64(len(out))*gap)
		}
	}
	return out
}

// lanesOf lists the kinds of job in a program that are spread, sown or
// sampled, in the order in which kinds matter.
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

// bracket is one window to draw, and how many earlier ones it lies beside.
type bracket struct {
	from, to schedule.Date
	beside   int
}

// brackets gathers the windows of a kind, each once.
func brackets(p *schedule.Program, k schedule.Kind) []bracket {
	var out []bracket
	for _, e := range p.Entries {
		if e.Kind != k || e.State != schedule.Planned || e.Earliest.IsZero() {
			continue
		}
		b := bracket{from: e.Earliest, to: e.Latest}
		same := func(o bracket) bool { return o.from == b.from && o.to == b.to }
		if slices.ContainsFunc(out, same) {
			continue
		}
		for _, o := range out {
			if !o.to.Before(b.from) && !b.to.Before(o.from) {
				b.beside = max(b.beside, o.beside+1)
			}
		}
		out = append(out, b)
	}
	return out
}
