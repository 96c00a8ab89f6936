package page

import (
	"html/template"
	"math"
	"strconv"
	"unicode/utf8"

	"swardbook/schedule"
)

// figure is a drawing on a plane of small units: one to a pixel on a narrow
// phone. Its layers are painted in order, so that no line runs through a word.
type figure struct {
	ID, Class, Title, Desc string
	W, H                   float64
	letter                 float64 // height of its letters
	back, middle, front    layer
}

// layer is a part of a drawing.
type layer struct{ markup }

// num writes a coordinate.
func num(v float64) string { return string(appendNum(nil, v)) }

// appendNum writes a coordinate to one decimal, none where it is 0.
func appendNum(out []byte, v float64) []byte {
	tenths := int64(math.Round(v * 10))
	if tenths < 0 {
		out, tenths = append(out, '-'), -tenths
	}
	out = strconv.AppendInt(out, tenths/10, 10)
	if tenths%10 != 0 {
		out = append(out, '.', byte('0'+tenths%10))
	}
	return out
}

// path draws along a path: commands and coordinates by turns.
func (l *layer) path(class string, parts ...any) {
	l.put(`<path class="`, class, `" d="`)
	var room [24]byte
	for _, p := range parts {
		switch p := p.(type) {
		case string:
			l.WriteString(p)
		case float64:
			l.Write(appendNum(room[:0], p))
		}
	}
	l.put("\"/>\n")
}

func (l *layer) line(class string, x1, y1, x2, y2 float64) {
	l.path(class, "M", x1, " ", y1, "L", x2, " ", y2)
}

func (l *layer) box(class string, x1, y1, x2, y2 float64) {
	l.path(class, "M", x1, " ", y1, "H", x2, "V", y2, "H", x1, "Z")
}

func (l *layer) word(class string, x, y float64, text string) {
	l.put(`<text class="`, class, `" x="`, num(x), `" y="`, num(y), `">`, text, "</text>\n")
}

// HTML is the drawing as SVG.
func (f *figure) HTML() template.HTML {
	var m markup
	f.write(&m)
	return m.html()
}

func (f *figure) write(m *markup) {
	m.put(`<svg class="drawing `, f.Class, `" viewBox="0 0 `, num(f.W), ` `, num(f.H), `" font-size="`, num(f.letter),
		`" role="img" aria-labelledby="`, f.ID, `-title `, f.ID, `-desc" xmlns="http://www.w3.org/2000/svg">
<title id="`, f.ID, `-title">`, f.Title, `</title>
<desc id="`, f.ID, `-desc">`, f.Desc, "</desc>\n")
	for _, l := range []*layer{&f.back, &f.middle, &f.front} {
		m.Write(l.Bytes())
	}
	m.put("</svg>")
}

// advances is how wide letters are, in ems, in DejaVu Sans. No other typeface that systems
// use by default is wider, so a text that fits by these widths fits in any. The widths are
// rounded up to a few classes of letters.
var advances = func() (all [utf8.RuneSelf]float64) {
	for i := range all {
		all[i] = wideLetter
	}
	for letters, width := range map[string]float64{
		"ijl'|": 0.28, " .,:;!": 0.33, "ftr()-[]/I": 0.41, "mwMW%@": 0.98,
		"abcdeghknopqsuvxyz": 0.62, "0123456789": 0.64,
	} {
		for _, r := range letters {
			all[r] = width
		}
	}
	return all
}()

// wideLetter is the width of letters that are in no class.
const wideLetter = 0.74

func advance(r rune) float64 {
	if r < utf8.RuneSelf {
		return advances[r]
	}
	return wideLetter
}

// bolder is how much wider bold letters are.
const bolder = 1.1

// width is the room that a text takes in the drawing.
func (f *figure) width(text string, bold bool) float64 {
	w := 0.0
	for _, r := range text {
		w += advance(r)
	}
	if w *= f.letter; bold {
		w *= bolder
	}
	return w + 0.5
}

// rows packs intervals into as few rows as first fit finds: on a row nothing
// comes nearer to its neighbour than the gap.
type rows struct {
	gap  float64
	rows [][][2]float64
}

func (r *rows) put(from, to float64) int {
	for i, row := range r.rows {
		free := true
		for _, o := range row {
			free = free && (to+r.gap <= o[0] || from >= o[1]+r.gap)
		}
		if free {
			r.rows[i] = append(row, [2]float64{from, to})
			return i
		}
	}
	r.rows = append(r.rows, [][2]float64{{from, to}})
	return len(r.rows) - 1
}

// timeline lays dates on an axis of days that runs to the right.
type timeline struct {
	from, to   schedule.Date
	start, end float64 // where the first day begins and the last one ends
}

// at is where a day begins; days beyond the axis lie at its ends.
func (t timeline) at(d schedule.Date) float64 { return t.along(d.DaysFrom(t.from), t.days()) }

// days is how many the axis has.
func (t timeline) days() int { return t.to.DaysFrom(t.from) + 1 }

// along is where the day begins that is n days after the first of the axis.
func (t timeline) along(n, days int) float64 {
	return t.start + (t.end-t.start)*min(max(float64(n)/float64(days), 0), 1)
}

func (t timeline) has(d schedule.Date) bool {
	return !d.IsZero() && !d.Before(t.from) && !d.After(t.to)
}

// shut lists the spans on the axis in which the ground is closed.
func (t timeline) shut(s schedule.Season) (out [][2]schedule.Date) {
	if s.LastSafe.IsZero() || s.Reopens.IsZero() || s.GroundFreeze.Median.IsZero() && s.GroundFreeze.Early.IsZero() {
		return nil
	}
	for years := -1; years <= 2; years++ {
		from := s.LastSafe.AddMonths(12 * years)
		to := s.Reopens.AddMonths(12 * years)
		if to.Before(from) {
			to = to.AddMonths(12)
		}
		if to.Before(t.from) || from.After(t.to) {
			continue
		}
		out = append(out, [2]schedule.Date{from.AddDays(1), to})
	}
	return out
}
