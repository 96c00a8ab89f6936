package page

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

func on(t *testing.T, s string) schedule.Date {
	t.Helper()
	if s == "" {
		return schedule.Date{}
	}
	d, err := schedule.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// days counts days with the calendar of package time.
func days(from, to schedule.Date) float64 { return to.Time().Sub(from.Time()).Hours() / 24 }

// A coordinate is written to one decimal, halves away from zero as math.Round has them.
func TestCoordinates(t *testing.T) {
	for v, want := range map[float64]string{0: "0", 0.04: "0", 0.05: "0.1", 0.96: "1", 1.25: "1.3", 10: "10", 10.1: "10.1", -0.04: "0", -0.5: "-0.5", -1.25: "-1.3", -12: "-12", 328.96: "329"} {
		if got := num(v); got != want {
			t.Errorf("%v: %s, want %s", v, got, want)
		}
	}
}

// The axis: a day begins at its share of all days, the last one ends at the end.
func TestTimeline(t *testing.T) {
	for _, span := range [][2]string{{"2026-03-01", "2027-02-28"}, {"2027-09-01", "2028-08-31"}, {"2026-01-01", "2026-01-10"}} {
		tl := timeline{from: on(t, span[0]), to: on(t, span[1]), start: 20, end: 320}
		all := days(tl.from, tl.to) + 1
		for d := tl.from; !d.After(tl.to); d = d.AddDays(1) {
			if got, want := tl.at(d), 20+300*days(tl.from, d)/all; math.Abs(got-want) > 1e-9 || !tl.has(d) {
				t.Fatalf("%s lies at %v, want %v", d, got, want)
			}
		}
		for _, c := range []struct {
			d    schedule.Date
			want float64
		}{{tl.from.AddDays(-1), 20}, {tl.from.AddDays(-400), 20}, {tl.to.AddDays(1), 320}, {tl.to.AddDays(400), 320}} {
			if got := tl.at(c.d); got != c.want || tl.has(c.d) {
				t.Errorf("%s beyond the axis lies at %v, want %v", c.d, got, c.want)
			}
		}
	}
	if (timeline{}).has(schedule.Date{}) {
		t.Error("no day is on the axis")
	}
}

// The ground is closed from the day after the last safe one to the day of opening, in
// every year that the axis touches.
func TestClosedGround(t *testing.T) {
	s := schedule.Season{LastSafe: on(t, "2026-11-16"), Reopens: on(t, "2027-03-21"), GroundFreeze: schedule.Freeze{Median: on(t, "2026-12-10")}}
	for _, c := range []struct{ from, to, want string }{
		{"2026-09-01", "2027-08-31", "2026-11-17 2027-03-21"},
		{"2026-03-22", "2026-11-15", ""},
		{"2026-03-21", "2026-11-16", "2025-11-17 2026-03-21; 2026-11-17 2027-03-21"},
		{"2027-01-01", "2029-01-01", "2026-11-17 2027-03-21; 2027-11-17 2028-03-21; 2028-11-17 2029-03-21"},
		{"2025-06-01", "2026-06-01", "2025-11-17 2026-03-21"},
	} {
		var got []string
		for _, d := range (timeline{from: on(t, c.from), to: on(t, c.to)}).shut(s) {
			got = append(got, d[0].String()+" "+d[1].String())
		}
		if strings.Join(got, "; ") != c.want {
			t.Errorf("%s to %s: %q, want %q", c.from, c.to, got, c.want)
		}
	}
	year := timeline{from: on(t, "2026-09-01"), to: on(t, "2027-08-31")}
	early := schedule.Season{LastSafe: on(t, "2026-11-16"), Reopens: on(t, "2026-03-21"), GroundFreeze: schedule.Freeze{Early: on(t, "2026-12-01")}}
	if got := year.shut(early); len(got) != 1 || got[0][0] != on(t, "2026-11-17") || got[0][1] != on(t, "2027-03-21") {
		t.Errorf("named by the spring before: %v", got)
	}
	for _, none := range []schedule.Season{{LastSafe: s.LastSafe, Reopens: s.Reopens}, {LastSafe: s.LastSafe, GroundFreeze: s.GroundFreeze}, {Reopens: s.Reopens, GroundFreeze: s.GroundFreeze}} {
		if got := year.shut(none); got != nil {
			t.Errorf("ground that does not freeze is closed: %v", got)
		}
	}
}

// drawnPath is a path of a drawing.
type drawnPath struct{ class, d string }

func pathsOf(f *figure) (out []drawnPath) {
	for _, m := range regexp.MustCompile(`<path class="([^"]*)" d="([^"]*)"/>`).FindAllStringSubmatch(string(f.HTML()), -1) {
		out = append(out, drawnPath{m[1], m[2]})
	}
	return out
}

// numbers reads the numbers of a path.
func numbers(t *testing.T, d string) (out []float64) {
	t.Helper()
	for _, s := range regexp.MustCompile(`-?\d+(\.\d+)?`).FindAllString(d, -1) {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, v)
	}
	return out
}

// scale is the axis of a drawing, by its own words: 28 to 324 of 328 on a phone, 108 to
// 700 of 704 beside the names.
func scale(f *figure) (start, end float64) {
	if f.Class == "narrow" {
		return 28, 324
	}
	return 108, 700
}

// handMade is a program of single jobs, one of each way to be drawn.
func handMade(t *testing.T) *schedule.Program {
	p := &schedule.Program{Title: "Hand made", Start: on(t, "2026-09-01"), Through: on(t, "2027-08-31"), Site: &schedule.Site{},
		Season: schedule.Season{LastSafe: on(t, "2026-11-16"), Reopens: on(t, "2027-03-21"), GroundFreeze: schedule.Freeze{Median: on(t, "2026-12-10")},
			FirstFreeze: schedule.Odds{P10: on(t, "2026-10-05"), P50: on(t, "2026-10-20"), P90: on(t, "2026-11-04")},
			LastFreeze:  schedule.Odds{P10: on(t, "2027-04-10"), P50: on(t, "2027-05-01"), P90: on(t, "2027-05-18")}}}
	entry := func(k schedule.Kind, from, day, to, safe string, s schedule.State) {
		p.Entries = append(p.Entries, schedule.Entry{ID: fmt.Sprintf("a/%s/2026-%d", k, len(p.Entries)), Kind: k, AreaName: "Lawn", Area: "a", State: s,
			Earliest: on(t, from), Date: on(t, day), Latest: on(t, to), LastSafe: on(t, safe), Pounds: 12})
	}
	entry(schedule.Lime, "2026-09-05", "2026-09-12", "2026-09-30", "2026-11-16", schedule.Finished)
	entry(schedule.Nitrogen, "2026-09-10", "2026-10-01", "2026-10-20", "2026-10-25", schedule.Planned)
	entry(schedule.Potassium, "2026-10-10", "2026-10-24", "2026-11-10", "", schedule.Planned)
	entry(schedule.Magnesium, "2026-09-01", "2026-09-08", "2026-09-12", "", schedule.Missed)
	entry(schedule.SoilTest, "2027-04-01", "2027-04-15", "2027-05-10", "", schedule.Planned)
	entry(schedule.LastSafe, "2026-11-16", "2026-11-16", "2026-11-16", "", schedule.Planned)
	return p
}

// Every mark, bar, whisker and shaded span lies at the share of the year that its day is,
// by the calendar; marks have their own shape, and the bars their ends.
func TestMarksLieAtTheirDays(t *testing.T) {
	p := handMade(t)
	year, err := (climate.Place{State: "OH", Hardiness: "6a"}).Year()
	if err != nil {
		t.Fatal(err)
	}
	how := map[schedule.Kind]marks{schedule.Lime: done, schedule.Nitrogen: due, schedule.Potassium: chosen, schedule.Magnesium: missed, schedule.SoilTest: taken}
	s := scene{program: p, from: p.Start, to: p.Through, today: on(t, "2026-09-28"), lanes: lanesOf(p), year: year, seasons: []climate.Season{climate.Cool, climate.Warm},
		how: func(e *schedule.Entry) marks { return how[e.Kind] }}
	drawn, used := s.drawn("year", "The year", "In words.")
	if used != done|due|chosen|missed|taken|fenced|bare {
		t.Errorf("marks used: %b", used)
	}
	for _, f := range []*figure{drawn.Narrow, drawn.Wide, drawn.Paper} {
		start, end := scale(f)
		at := func(day string) float64 { return start + (end-start)*days(p.Start, on(t, day))/365 }
		near := func(what string, got, want float64) {
			t.Helper()
			if math.Abs(got-want) > 0.06 {
				t.Errorf("%s, %s: at %v, want %v", f.Class, what, got, want)
			}
		}
		all := map[string][]string{}
		for _, one := range pathsOf(f) {
			all[one.class] = append(all[one.class], one.d)
		}
		one := func(class string, n int) []float64 {
			t.Helper()
			if len(all[class]) <= n {
				t.Fatalf("%s: %d of %s", f.Class, len(all[class]), class)
			}
			return numbers(t, all[class][n])
		}
		near("done, left", one("done", 0)[0], at("2026-09-12")-4)
		if !strings.HasSuffix(all["done"][0], "a4 4 0 1 0 8 0a4 4 0 1 0-8 0Z") {
			t.Errorf("done is %s", all["done"][0])
		}
		near("missed, left", one("cross", 0)[0], at("2026-09-08")-3.5)
		if !strings.HasSuffix(all["cross"][0], "l7 7m0-7l-7 7") {
			t.Errorf("missed is %s", all["cross"][0])
		}
		for class, c := range map[string]struct {
			day  string
			half float64
		}{"due": {"2026-10-01", 5}, "mark": {"2026-10-24", 3.5}, "taken": {"2027-04-15", 3.5}} {
			b := one(class, 0) // M x y H x V y H x Z
			near(class+", left", b[0], at(c.day)-c.half)
			near(class+", right", b[2], at(c.day)+c.half)
			near(class+", height", b[3]-b[1], 2*c.half)
		}
		// Windows of what is still to do; those of what is done or missed are gone.
		if len(all["win"]) != 3 || len(all["stop"]) != 1 {
			t.Errorf("%s: %d windows, %d ends: %v", f.Class, len(all["win"]), len(all["stop"]), all["win"])
		}
		for _, w := range [][2]string{{"2026-09-10", "2026-10-20"}, {"2026-10-10", "2026-11-10"}, {"2027-04-01", "2027-05-10"}} {
			found := false
			for _, d := range all["win"] { // M a y v6 M a y H z
				v := numbers(t, d)
				found = found || math.Abs(v[0]-at(w[0])) < 0.06 && math.Abs(v[3]-at(w[0])) < 0.06 && math.Abs(v[5]-at(w[1])) < 0.06 && v[2] == 6 && math.Abs(v[4]-v[1]-3) < 0.11
			}
			if !found {
				t.Errorf("%s: no window from %s to %s in %v", f.Class, w[0], w[1], all["win"])
			}
		}
		near("end of the window with a last safe day", one("stop", 0)[0], at("2026-10-20"))
		near("its height", one("stop", 0)[2], 10)
		// Freezes: a whisker from 1 year in 10 to 9, the middle thick.
		for i, o := range []schedule.Odds{p.Season.FirstFreeze, p.Season.LastFreeze} {
			v := one("ink", i) // M x y H z M x y v6 M z y v6
			near("freeze, early", v[0], at(o.P10.String()))
			near("freeze, late", v[2], at(o.P90.String()))
			near("freeze, early end", v[3], at(o.P10.String()))
			near("freeze, late end", v[6], at(o.P90.String()))
			near("freeze, above its line", v[1]-v[4], 3)
			near("freeze, above its line", v[1]-v[7], 3)
			near("freeze, middle", one("thick", i)[0], at(o.P50.String()))
			near("freeze, middle, above", v[1]-one("thick", i)[1], 4)
		}
		// The ground closed, once over the whole.
		closed := one("closed", 0)
		near("closed from", closed[0], at("2026-11-17"))
		near("closed to", closed[2], at("2027-03-21"))
		near("closed to the foot", closed[3], f.H-2)
		for class, day := range map[string]string{"today": "2026-09-28", "safe": "2026-11-16", "open": "2027-03-21"} {
			v := one(class, 0)
			near(class, v[0], at(day))
			near(class+", straight", v[2], v[0])
			near(class+", to the foot", v[3], f.H-2)
			if len(all[class]) != 1 {
				t.Errorf("%s: %d of %s", f.Class, len(all[class]), class)
			}
		}
		// A tick begins each month.
		if len(all["tick"]) != 12 {
			t.Errorf("%s: %d months", f.Class, len(all["tick"]))
		}
		for i := range all["tick"] {
			near("month", one("tick", i)[0], at(time.Date(2026, time.September+time.Month(i), 1, 0, 0, 0, 0, time.UTC).Format(time.DateOnly)))
		}
		if f.Class == "paper" {
			if all["soil"] != nil || all["growth"] != nil {
				t.Error("curves on paper")
			}
			continue
		}
		// Soil: the lines of 32, 50 and 70 °F give the scale by which the curve is read.
		var ticks []float64
		for _, d := range all["hair"] {
			if v := numbers(t, d); math.Abs(v[0]-start) < 0.06 {
				ticks = append(ticks, v[1])
			}
		}
		if len(ticks) != 3 {
			t.Fatalf("%s: lines at %v", f.Class, ticks)
		}
		degree := (ticks[0] - ticks[2]) / (70 - 32)
		near("the line of 50 °F", ticks[1], ticks[0]-degree*(50-32))
		tall := map[string]float64{"narrow": 46, "wide": 40}[f.Class]
		if degree < tall/60-0.01 || degree > tall/50+0.01 { // 30 to 80 °F, or up to ten more
			t.Errorf("%s: %v a degree", f.Class, degree)
		}
		v := one("soil", 0)
		if n := len(v) / 2; n != 122+1 { // every third of 364 days, and the last
			t.Errorf("%s: %d points of the soil", f.Class, n)
		}
		for i := 0; i+1 < len(v); i += 2 {
			d := p.Start.AddDays(min(3*i/2, 364))
			near("soil, day", v[i], at(d.String()))
			if got, want := 32+(ticks[0]-v[i+1])/degree, float64(year.Soil(2, climate.Day(d.Time().YearDay()))); math.Abs(got-want) > 0.2 {
				t.Errorf("%s: on %s the soil is drawn at %.1f °F, want %.1f", f.Class, d, got, want)
			}
		}
		// Growth: none at the foot, the best at its height.
		high := map[string]float64{"narrow": 30, "wide": 15}[f.Class]
		g := one("growth", 0)
		foot := g[1]
		near("growth begins", g[0], start)
		near("growth ends at the foot", g[len(g)-1], foot)
		near("growth ends", g[len(g)-2], at("2027-08-31"))
		for i := 2; i+3 < len(g); i += 2 {
			d := p.Start.AddDays(min(3*(i-2)/2, 364))
			near("growth, day", g[i], at(d.String()))
			near("growth on "+d.String(), foot-g[i+1], high*year.Growth(climate.Day(d.Time().YearDay()), climate.Cool))
		}
		w := one("growth2", 0)
		for i := 0; i+1 < len(w); i += 2 {
			d := p.Start.AddDays(min(3*i/2, 364))
			near("warm growth on "+d.String(), foot-w[i+1], high*year.Growth(climate.Day(d.Time().YearDay()), climate.Warm))
		}
		if len(all["growth2"]) != 1 {
			t.Errorf("%s: %d further curves of growth", f.Class, len(all["growth2"]))
		}
	}
}

// What the drawing says in words: the days that turn the year, the months and years, the
// scales, what stands in the lanes.
func TestWordsOfTheYear(t *testing.T) {
	p := handMade(t)
	year, err := (climate.Place{State: "OH", Hardiness: "6a"}).Year()
	if err != nil {
		t.Fatal(err)
	}
	for _, metric := range []bool{false, true} {
		s := scene{program: p, from: p.Start, to: p.Through, today: on(t, "2026-09-28"), lanes: lanesOf(p), year: year, seasons: []climate.Season{climate.Cool},
			how: asPlanned, measure: word.Measure{Metric: metric}}
		drawn, _ := s.drawn("year", "The year", "In words.")
		for f, want := range map[*figure][]string{
			drawn.Narrow: {"today 28 Sep", "last safe day 16 Nov", "open again 21 Mar", "2026", "2027", "first 20 Oct", "last 1 May", "growth,", "none to best", "freezes,", "8 years in 10", "ground closed", "lime", "nitrogen"},
			drawn.Wide:   {"today 28 Sep", "last safe day 16 Nov", "open again 21 Mar", "2026", "2027", "Sep", "Dec", "first 20 Oct", "last 1 May", "growth", "0 to best", "freezes", "ground closed"},
			drawn.Paper:  {"today 28 Sep", "freezes", "first 20 Oct"},
		} {
			var words []string
			for _, m := range textMark.FindAllStringSubmatch(string(f.HTML()), -1) {
				words = append(words, m[4])
			}
			if f != drawn.Paper {
				if metric {
					want = append(want, "0", "10", "20", "°C")
				} else {
					want = append(want, "32", "50", "70", "°F")
				}
			}
			for _, w := range want {
				if !slices.Contains(words, w) {
					t.Errorf("%s, metric %v: no %q in %q", f.Class, metric, w, words)
				}
			}
			if n := len(slices.DeleteFunc(slices.Clone(words), func(w string) bool { return w != "2026" && w != "2027" })); n != 2 {
				t.Errorf("%s: a year is written %d times", f.Class, n)
			}
		}
	}
}

// The label beside a mark gives the day and the amounts of the day, with their unit once;
// what several days have in common is said once.
func TestLabels(t *testing.T) {
	l := &artist{}
	job := func(day string, pounds float64) *schedule.Entry {
		return &schedule.Entry{Date: on(t, day), Pounds: agronomy.Pounds(pounds)}
	}
	of := func(day string, pounds ...float64) *chosenDay {
		d := &chosenDay{on: on(t, day)}
		for _, p := range pounds {
			d.jobs = append(d.jobs, job(day, p))
		}
		return d
	}
	wet := of("2026-10-01", 3.5)
	wet.jobs = append(wet.jobs, &schedule.Entry{Gallons: 2})
	for _, c := range []struct {
		days []*chosenDay
		want string
	}{
		{[]*chosenDay{of("2026-10-01", 12)}, "1 Oct, 12 lb"},
		{[]*chosenDay{of("2026-10-01", 3.9, 2.1)}, "1 Oct, 3.9 + 2.1 lb"},
		{[]*chosenDay{of("2026-10-01", 0)}, "1 Oct"},
		{[]*chosenDay{of("2026-10-01", 0, 0)}, "1 Oct, 2 areas"},
		{[]*chosenDay{of("2026-10-01", 12, 0)}, "1 Oct, 12 lb"},
		{[]*chosenDay{wet}, "1 Oct, 3.5 lb + 2 gal"},
		{[]*chosenDay{of("2026-10-01", 12), of("2026-11-01", 12)}, "1 Oct, 12 lb; 1 Nov, 12 lb"},
		{[]*chosenDay{of("2026-10-01", 12), of("2026-11-01", 12), of("2026-12-01", 12)}, "1 Oct, 1 Nov, 1 Dec: 12 lb each"},
		{[]*chosenDay{of("2026-10-01", 12), of("2026-11-01", 12), of("2026-12-01", 13)}, "1 Oct, 12 lb; 1 Nov, 12 lb; 1 Dec, 13 lb"},
		{[]*chosenDay{of("2026-10-01", 0), of("2026-11-01", 0), of("2026-12-01", 0)}, "1 Oct; 1 Nov; 1 Dec"},
	} {
		if got := l.sayAll(c.days); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	if got := brief([]*chosenDay{of("2026-10-01", 3, 4), of("2026-11-01", 5)}); got != "1 Oct, 2 areas; 1 Nov" {
		t.Errorf("in brief: %q", got)
	}
	if bold([]*chosenDay{{how: chosen}, {how: taken}}) || !bold([]*chosenDay{{how: chosen}, {how: due}}) {
		t.Error("what is due is bold")
	}
}

// Jobs of one window share one bar. A day stands on it twice only if its jobs are drawn
// in two ways; jobs that are done have no window; a last safe day is drawn only if it
// lies on the axis, and not before the window's end.
func TestBars(t *testing.T) {
	p := &schedule.Program{Start: on(t, "2026-09-01"), Through: on(t, "2026-12-31")}
	l := &artist{scene: scene{program: p, how: asPlanned}, t: timeline{from: p.Start, to: p.Through, end: 100}, f: &figure{W: 100}}
	add := func(from, day, to, safe string, s schedule.State) {
		p.Entries = append(p.Entries, schedule.Entry{Kind: schedule.Lime, Earliest: on(t, from), Date: on(t, day), Latest: on(t, to), LastSafe: on(t, safe), State: s})
	}
	add("2026-10-05", "2026-10-20", "2026-11-10", "2026-11-16", schedule.Planned)
	add("2026-10-05", "2026-10-12", "2026-11-10", "2026-11-16", schedule.Planned)
	add("2026-10-05", "2026-10-12", "2026-11-10", "2026-11-16", schedule.Planned)
	add("2026-10-05", "2026-10-12", "2026-11-10", "2026-11-09", schedule.Planned) // closed before its end: nothing to draw
	add("2026-10-05", "2026-10-12", "2026-11-10", "2026-11-10", schedule.Planned)
	add("2026-09-05", "2026-09-12", "2026-11-10", "2027-03-01", schedule.Planned) // beyond the axis
	add("2026-09-05", "2026-09-12", "2026-11-10", "2026-12-31", schedule.Finished)
	add("2026-11-20", "2026-12-12", "2026-12-20", "2026-12-31", schedule.Planned) // on its last day
	add("", "2026-09-12", "", "", schedule.Planned)
	add("2026-09-01", "2027-01-05", "2027-01-09", "", schedule.Planned) // not in what is drawn
	p.Entries = append(p.Entries, schedule.Entry{Kind: schedule.Iron, Date: on(t, "2026-10-01")})
	var got []string
	for _, b := range l.bars(p, schedule.Lime) {
		s := b.from.DayMonth() + " to " + b.to.DayMonth()
		if !b.stop.IsZero() {
			s += ", safe to " + b.stop.DayMonth()
		}
		for _, d := range b.days {
			s += fmt.Sprintf("; %s %d x%d", d.on.DayMonth(), d.how, len(d.jobs))
		}
		got = append(got, s)
	}
	want := []string{
		"5 Sep to 10 Nov; 12 Sep 1 x1",
		"12 Sep to 12 Sep; 12 Sep 4 x1; 12 Sep 1 x1",
		"5 Oct to 10 Nov, safe to 16 Nov; 12 Oct 1 x2; 20 Oct 1 x1",
		"5 Oct to 10 Nov; 12 Oct 1 x1",
		"5 Oct to 10 Nov, safe to 10 Nov; 12 Oct 1 x1",
		"20 Nov to 20 Dec, safe to 31 Dec; 12 Dec 1 x1",
	}
	if !slices.Equal(got, want) {
		t.Errorf("%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// The key has each mark once, in one order, and tells of freezes and of a second growth
// only where they are drawn.
func TestWholeKey(t *testing.T) {
	texts := func(all []keyMark) (out []string) {
		for _, k := range all {
			if !strings.HasPrefix(string(k.SVG), "<svg ") || !strings.HasSuffix(string(k.SVG), "</svg>") {
				t.Errorf("%s: %s", k.Text, k.SVG)
			}
			out = append(out, k.Text)
		}
		return out
	}
	want := []string{"due or next", "chosen day", "past, taken as done", "done", "missed", "window, to its last safe day", "window", "freezes: middle, 8 years in 10", "growth of the warm-season grass"}
	if got := texts(key(chosen|due|done|taken|missed|fenced|bare, true, true)); !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	for i, of := range []marks{due, chosen, taken, done, missed, fenced, bare} {
		if got := texts(key(of, false, false)); !slices.Equal(got, want[i:i+1]) {
			t.Errorf("%q, want %q", got, want[i])
		}
	}
	if got := texts(key(0, true, false)); !slices.Equal(got, want[8:]) {
		t.Errorf("%q", got)
	}
}

// The page shows the whole of a program of one season; of a longer one, a year and sixty
// days, which begin sixty days before today.
func TestFront(t *testing.T) {
	for _, c := range []struct{ start, through, today, from, to string }{
		{"2026-09-01", "2027-08-31", "2026-10-01", "2026-09-01", "2027-08-31"},
		{"2026-09-01", "2027-10-06", "2027-09-01", "2026-09-01", "2027-10-06"}, // 400 days on
		{"2026-09-01", "2027-10-07", "2027-09-01", "2027-07-03", "2027-10-07"}, // 401
		{"2026-09-01", "2029-08-31", "2026-10-01", "2026-09-01", "2027-10-31"},
		{"2026-09-01", "2029-08-31", "2027-09-01", "2027-07-03", "2028-09-01"},
		{"2026-09-01", "2029-08-31", "2029-08-31", "2029-07-02", "2029-08-31"},
		{"2026-09-01", "2029-08-31", "2029-09-01", "2026-09-01", "2029-08-31"}, // it is over
	} {
		from, to := front(&schedule.Program{Start: on(t, c.start), Through: on(t, c.through)}, on(t, c.today))
		if from != on(t, c.from) || to != on(t, c.to) {
			t.Errorf("%v: %s to %s", c, from, to)
		}
	}
}

// The middle of each month that the days touch, at most of twelve.
func TestMiddlesOfMonths(t *testing.T) {
	for _, c := range []struct {
		from, to, first, last string
		n                     int
	}{
		{"2026-09-12", "2027-09-11", "2026-09-15", "2027-08-15", 12},
		{"2026-09-30", "2026-11-01", "2026-09-15", "2026-11-15", 3},
		{"2026-09-01", "2026-09-01", "2026-09-15", "2026-09-15", 1},
		{"2026-12-16", "2027-01-31", "2026-12-15", "2027-01-15", 2},
	} {
		got := midMonths(on(t, c.from), on(t, c.to))
		if len(got) != c.n || got[0] != on(t, c.first) || got[len(got)-1] != on(t, c.last) {
			t.Errorf("%v: %v", c, got)
		}
	}
}

// What the year brings stands in the order of its days, with the span of 8 years in 10.
func TestEvents(t *testing.T) {
	p := handMade(t)
	p.Season.SpreadDays, p.Season.Spread40Days, p.Season.SpringDays = 10, 12, 8
	p.Season.SoilBelow50, p.Season.SoilBelow40 = on(t, "2026-11-02"), on(t, "2026-11-25")
	p.Season.GrowthEnds, p.Season.GrowthBegins = on(t, "2026-11-10"), on(t, "2027-04-02")
	b := &sheetBuilder{p: p}
	var got []string
	for _, e := range b.events() {
		got = append(got, e.What+" | "+e.When+" | "+e.Between)
	}
	want := []string{
		"First autumn freeze | Tue 20 Oct 2026 | 5 Oct to 4 Nov 2026",
		"Soil at 2 in falls below 50 °F | Mon 2 Nov 2026 | 23 Oct to 12 Nov 2026",
		"Growth ends | Tue 10 Nov 2026 | 31 Oct to 20 Nov 2026",
		"Last safe day to spread | Mon 16 Nov 2026 | ",
		"Soil at 2 in falls below 40 °F | Wed 25 Nov 2026 | 13 Nov to 7 Dec 2026",
		"Ground frozen in half of the years | Thu 10 Dec 2026 | ",
		"Ground open again | Sun 21 Mar 2027 | ",
		"Growth begins | Fri 2 Apr 2027 | 25 Mar to 10 Apr 2027",
		"Last spring freeze | Sat 1 May 2027 | 10 Apr to 18 May 2027",
	}
	if !slices.Equal(got, want) {
		t.Errorf("%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	for _, e := range b.events() {
		if on := e.on.Time(); on.Format("Mon 2 Jan 2006") != e.When {
			t.Errorf("%s: %s", e.When, on)
		}
	}
}

// Kinds stand in the order of the program's own list, each once, without notices.
func TestLanes(t *testing.T) {
	p := &schedule.Program{Entries: []schedule.Entry{{Kind: schedule.Potassium}, {Kind: schedule.LastSafe}, {Kind: schedule.Lime}, {Kind: schedule.Potassium}}}
	q := &schedule.Program{Entries: []schedule.Entry{{Kind: schedule.SoilTest}, {Kind: schedule.Lime}}}
	if got := fmt.Sprint(lanesOf(p, q)); got != "[soil-test lime potassium]" {
		t.Error(got)
	}
}
