package page

import (
	"fmt"
	"html"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/climate"
	"swardbook/schedule"
)

var textMark = regexp.MustCompile(`<text class="([^"]*)" x="([^"]*)" y="([^"]*)">([^<]*)</text>`)

// overlapsOrCuts lists what is wrong with the words of a drawing: those that run
// out of it, and those that run into each other. Widths are those of the face
// they are reckoned with.
func overlapsOrCuts(t *testing.T, f *figure) (wrong []string) {
	t.Helper()
	type box struct {
		text                     string
		left, right, top, bottom float64
	}
	var all []box
	for _, m := range textMark.FindAllStringSubmatch(string(f.HTML()), -1) {
		x, err1 := strconv.ParseFloat(m[2], 64)
		y, err2 := strconv.ParseFloat(m[3], 64)
		if err1 != nil || err2 != nil {
			t.Fatal(m)
		}
		text := html.UnescapeString(m[4])
		w := f.width(text, strings.Contains(m[1], "b"))
		if strings.Contains(m[1], "m") {
			w *= monthLetter / f.letter
		}
		b := box{text, x, x + w - 1, y - 0.7*f.letter, y}
		if b.left < -0.5 || b.right > f.W+0.5 || b.top < 0 || b.bottom > f.H {
			wrong = append(wrong, fmt.Sprintf("%q is cut at %.0f to %.0f of %.0f", text, b.left, b.right, f.W))
		}
		for _, o := range all {
			if b.left < o.right && o.left < b.right && b.top < o.bottom && o.top < b.bottom {
				wrong = append(wrong, fmt.Sprintf("%q runs into %q", text, o.text))
			}
		}
		all = append(all, b)
	}
	if len(all) < 10 {
		t.Fatalf("only %d words", len(all))
	}
	return wrong
}

// crowded is a program of nine kinds in many areas, with amounts of all lengths
// on days that lie close.
func crowded(areas, seed int) *schedule.Program {
	day := func(n int) schedule.Date {
		return schedule.Date{Year: 2026, Month: time.March, Day: 1}.AddDays(n)
	}
	p := &schedule.Program{Title: "Crowded", Start: day(0), Through: day(364), Site: &schedule.Site{},
		Season: schedule.Season{LastSafe: day(260), Reopens: day(30), SpreadDays: 10,
			GroundFreeze: schedule.Freeze{Median: day(280)},
			FirstFreeze:  schedule.Odds{P10: day(210), P50: day(222), P90: day(240)},
			LastFreeze:   schedule.Odds{P10: day(40), P50: day(58), P90: day(70)}}}
	n := seed
	next := func(most int) int { n = (n*1103515245 + 12345) & 0x7fffffff; return n / 7 % most }
	for i, k := range []schedule.Kind{schedule.SoilTest, schedule.Sow, schedule.Starter, schedule.Lime, schedule.Phosphorus,
		schedule.Nitrogen, schedule.LateNitrogen, schedule.Potassium, schedule.Magnesium} {
		for a := range areas {
			for j := range 1 + next(5) {
				from := next(340)
				e := schedule.Entry{ID: fmt.Sprintf("a%d/%s/%d", a, k, j), Kind: k, AreaName: fmt.Sprintf("Area %d", a), State: schedule.Planned,
					Earliest: day(from), Date: day(from + next(20)), Latest: day(min(364, from+20+next(60)))}
				if next(3) > 0 {
					e.LastSafe = e.Latest
				}
				if i != 0 {
					e.Pounds = agronomy.Pounds(float64(1+next(2000)) / 7)
				}
				p.Entries = append(p.Entries, e)
			}
		}
	}
	return p
}

// No word of a drawing is cut or runs into another, on a phone with nine kinds
// of job in six areas, wherever their days lie.
func TestWordsOfTheYearKeepApart(t *testing.T) {
	place := climate.Place{State: "OH", Hardiness: "6a"}
	year, err := place.Year()
	if err != nil {
		t.Fatal(err)
	}
	for areas := 1; areas <= 6; areas++ {
		for seed := range 40 {
			p := crowded(areas, seed)
			b := &sheetBuilder{p: p, today: p.Start.AddDays(seed * 9), next: p.Start.AddDays(30), from: p.Start, to: p.Through}
			if seed%4 == 3 { // some kinds have no day in what is drawn
				b.from, b.to = p.Start.AddMonths(7), p.Start.AddMonths(9)
			}
			s := scene{program: p, from: b.from, to: b.to, today: b.today, how: b.mark, lanes: lanesOf(p), year: year,
				seasons: []climate.Season{climate.Cool, climate.Warm}}
			drawn, used := s.drawn("year", "The year", "In words.")
			for _, f := range []*figure{drawn.Narrow, drawn.Wide, drawn.Paper} {
				for _, w := range overlapsOrCuts(t, f) {
					t.Errorf("%d areas, seed %d, %s: %s", areas, seed, f.Class, w)
				}
			}
			if drawn.Narrow.W != narrowWidth || used == 0 {
				t.Fatal("nothing is drawn")
			}
		}
	}
}

// Every job of the program is told beside its mark: its day, and its amount
// where the drawing has room.
func TestEveryDayStandsInTheDrawing(t *testing.T) {
	for seed := range 20 {
		p := crowded(3, seed)
		s := scene{program: p, from: p.Start, to: p.Through, how: asPlanned, lanes: lanesOf(p)}
		drawn, _ := s.drawn("year", "The year", "In words.")
		for _, f := range []*figure{drawn.Narrow, drawn.Wide, drawn.Paper} {
			var words []string
			for _, m := range textMark.FindAllStringSubmatch(string(f.HTML()), -1) {
				words = append(words, html.UnescapeString(m[4]))
			}
			all := strings.Join(words, "\n")
			for _, e := range p.Entries {
				if s.from.After(e.Date) || e.Date.After(s.to) {
					continue
				}
				if !strings.Contains(all, e.Date.DayMonth()) {
					t.Errorf("seed %d, %s: %s is not told", seed, f.Class, e.Date)
				}
			}
		}
	}
}

// The key explains the marks that are drawn and no others.
func TestKeyHasTheMarksInUse(t *testing.T) {
	var words []string
	for _, k := range key(due|fenced, false, false) {
		words = append(words, k.Text)
	}
	if got := strings.Join(words, "; "); got != "due or next; window, to its last safe day" {
		t.Error(got)
	}
}

func TestRowsKeepTheirGap(t *testing.T) {
	r := rows{gap: 5}
	for i, want := range []struct {
		from, to float64
		row      int
	}{{0, 10, 0}, {14, 20, 1}, {15, 20, 0}, {-9, -5, 0}, {9, 30, 2}} {
		if got := r.put(want.from, want.to); got != want.row {
			t.Errorf("interval %d is put on row %d, want %d", i, got, want.row)
		}
	}
}
