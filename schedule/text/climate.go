package text

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"swardbook/climate"
	"swardbook/schedule/word"
)

// Climate writes a place's year: a table of its dates with their spread, and a
// small drawing.
func Climate(title string, y *climate.Year, metric bool, style Style) string {
	s := newSheet(style)
	s.head(title)
	s.para(0, word.Measure{Metric: metric}.Say("Climate from "+word.Sentence(y.From), false))
	s.gap()
	s.table(0, Dates(y, metric))
	if y.Ground().Kind != climate.GroundNever {
		s.para(0, groundMeaning(metric))
	}
	s.gap()
	sowing, without := Sowing(y, metric)
	if len(sowing.Rows) > 0 {
		s.table(0, sowing)
		s.para(0, sowingMeaning)
	}
	for _, w := range without {
		s.para(0, word.Sentence(word.Capital(w)))
	}
	s.gap()
	total := y.DegreeDays(50)
	degrees := fmt.Sprintf("%s above 50 °F", word.Number(math.Round(total), 0))
	if metric {
		degrees = fmt.Sprintf("%s above 10 °C", word.Number(math.Round(total*5/9), 0))
	}
	s.para(0, "Growing degree days in a year: "+degrees+".")
	s.gap()
	s.drawing(y, word.Measure{Metric: metric})
	s.gap()
	s.para(0, "Usual is the middle of the years. 8 years in 10 fall between early and late. A soil thermometer is a better guide than this table.")
	m := word.Measure{Metric: metric}
	for _, n := range y.Notes {
		s.para(0, m.Say(n, false))
	}
	if len(y.Better) > 0 {
		s.para(0, "More exact with: "+m.Say(word.Sentence(strings.Join(y.Better, "; ")), false))
	}
	return s.String()
}

// Dates gives the events of a place's year with their spread, from spring to
// the freezing of the ground, and after them those that never come; each stands once.
func Dates(y *climate.Year, metric bool) Table {
	t := Table{Columns: columns("Event", "#Usual", "#Early", "#Late", "#± days")}
	events := y.Events()
	slices.SortStableFunc(events, func(a, b climate.Event) int {
		switch {
		case a.When.Never == b.When.Never:
			return cmp.Compare(a.When.D, b.When.D)
		case a.When.Never:
			return 1
		}
		return -1
	})
	said := map[string]bool{}
	ground := y.Ground()
	for _, e := range events {
		w := e.When
		if said[w.Words] || w.Quantile {
			continue
		}
		said[w.Words] = true
		if e.Name == "last_safe" && !w.Never {
			t.add(frozen(ground), "", "", "", "")
			continue
		}
		if w.Never {
			t.add(word.Capital(oneUnit(w.Words, metric)), "", "", "", "")
			continue
		}
		t.add(word.Capital(oneUnit(w.Words, metric)), w.Day().String(), w.EarlyDay().String(), w.LateDay().String(), fmt.Sprint(w.Within()))
	}
	return t
}

// Sowing gives the times to sow grass of either season: the first, the best
// and the last day, the spread of the last, and in how many of 100 years a
// sowing on it meets a freeze before the stand is six weeks old. The times
// that are not dates are told in words.
func Sowing(y *climate.Year, metric bool) (t Table, words []string) {
	t = Table{Columns: columns("Sowing", "#First", "#Best from", "#Last", "#± days", "#Freeze in 100")}
	cool, warm := y.SeedWindow(climate.Cool), y.SeedWindow(climate.Warm)
	for _, sow := range []struct {
		name string
		climate.SowWindow
	}{
		{"Cool-season grass, autumn", cool.Main}, {"Cool-season grass, spring", cool.Spring},
		{"Cool-season grass, dormant", cool.Dormant}, {"Warm-season grass", warm.Main},
	} {
		if !sow.OK || sow.AllYear {
			words = append(words, oneUnit(sow.Words, metric))
			continue
		}
		t.add(sow.name, sow.Open.Day().String(), sow.Best.Day().String(), sow.Close.Day().String(),
			fmt.Sprint(sow.Close.Within()), fmt.Sprint(int(math.Round(100*sow.FreezeOdds))))
	}
	return t, words
}

// oneUnit takes from words such as "2 in (5 cm)" the unit that is not wanted.
func oneUnit(t string, metric bool) string {
	var out []string
	words := strings.Fields(t)
	for i := 0; i < len(words); i++ {
		w := words[i]
		if len(out) < 2 || w[0] != '(' || !word.IsFigure(w) || i+1 == len(words) || !strings.HasSuffix(words[i+1], ")") {
			out = append(out, w)
			continue
		}
		i++
		if metric {
			out = append(out[:len(out)-2], w[1:], strings.TrimSuffix(words[i], ")"))
		}
	}
	return strings.Join(out, " ")
}

// frozen writes the three days of the ground's freezing on one row. They have no early
// and late days of their own, as they are those of an early and of a middle year.
func frozen(g climate.Ground) string {
	parts := []string{"last safe day " + g.LastSafe.Day().String()}
	if !g.Early.Never {
		parts = append(parts, "frozen in an early year by "+g.Early.Day().String())
	}
	if !g.Median.Never {
		parts = append(parts, "in half of the years by "+g.Median.Day().String())
	}
	return "Ground: " + strings.Join(parts, ", ")
}

// groundMeaning explains the row of the ground's freezing, and says what other published
// advice there is on late feeding.
func groundMeaning(metric bool) string {
	depth, cold := "2 in", "40 °F"
	if metric {
		depth, cold = "5 cm", "4.4 °C"
	}
	return "Frozen: the top " + depth + " of soil has frozen. Last safe: a week before the soil cools to " + cold + ", when roots have all but stopped; what is put down later may wash off frozen ground. " +
		"Published advice on the last feeding differs: about Thanksgiving in Ohio and Kansas, late October in Nebraska; the earlier is the safer." // [windows]
}

const sowingMeaning = "Freeze in 100: sown on the last day, in how many of 100 years a freeze comes before the seedlings are six weeks old."

// Days gives all 365 days of a place's year as a table.
func Days(y *climate.Year, metric bool) Table {
	unit, shown := "f", func(f climate.Fahrenheit) string { return places(float64(f), 1) }
	if metric {
		unit, shown = "c", func(f climate.Fahrenheit) string { return places(float64(f.Celsius()), 1) }
	}
	t := Table{Columns: columns("#day", "date", "#mean_"+unit, "#high_"+unit, "#low_"+unit, "#soil_2in_"+unit, "#soil_4in_"+unit,
		"#growth_cool", "#growth_warm", "#degree_days_50f")}
	for _, r := range y.Table() {
		t.add(strconv.Itoa(int(r.Day)), fmt.Sprintf("%02d-%02d", int(r.Day.Month()), r.Day.Date()), shown(r.Mean), shown(r.High), shown(r.Low),
			shown(r.Soil2), shown(r.Soil4), places(r.GrowthCool, 3), places(r.GrowthWarm, 3), places(r.DegreeDays50, 0))
	}
	return t
}

const gutter = 12 // columns for the names at the left of the drawing

// drawing draws the year from January to December: soil temperature as a
// curve, growth, freezes and the ground as strips below it.
func (s *sheet) drawing(y *climate.Year, m word.Measure) {
	month := min(max((s.Width-gutter)/12, 4), 8)
	columns := 12 * month
	middle := func(x int) climate.Day { return climate.Day(1 + int((float64(x)+0.5)*365/float64(columns))) }
	column := func(w climate.When) int {
		if w.Never {
			return -1
		}
		return min((int(w.Day())-1)*columns/365, columns-1)
	}
	line := func(name, body string) {
		s.b.WriteString(strings.TrimRight(fmt.Sprintf("%-*s", gutter, name)+body, " ") + "\n")
	}
	strip := func(name string, mark func(x int) byte) {
		body := make([]byte, columns)
		for x := range body {
			body[x] = mark(x)
		}
		line(name, string(body))
	}

	s.para(0, fmt.Sprintf("Soil at %s through the year:", m.Depth(2)))
	low, high, step, unit := 1000.0, -1000.0, 10.0, " °F"
	if m.Metric {
		step, unit = 5, " °C"
	}
	soil := make([]float64, columns)
	for x := range soil {
		soil[x] = float64(y.Soil(2, middle(x)))
		if m.Metric {
			soil[x] = float64(climate.Fahrenheit(soil[x]).Celsius())
		}
		low, high = min(low, soil[x]), max(high, soil[x])
	}
	for t := math.Round(high/step) * step; t >= math.Round(low/step)*step; t -= step {
		body := []byte(strings.Repeat(" ", columns))
		for x := range body {
			if math.Round(soil[x]/step)*step == t {
				body[x] = '*'
			}
		}
		line(fmt.Sprintf("%*s", gutter-2, word.Number(t, 0)+unit), string(body))
	}
	names := ""
	for _, n := range [...]string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"} {
		names += fmt.Sprintf("%-*s", month, n)
	}
	line("", names)
	growth := func(season climate.Season) func(int) byte {
		return func(x int) byte {
			switch g := y.Growth(middle(x), season); {
			case g >= 0.5:
				return '#'
			case g >= 0.2:
				return '+'
			case g >= 0.1:
				return '-'
			}
			return '.'
		}
	}
	strip("cool grass", growth(climate.Cool))
	strip("warm grass", growth(climate.Warm))
	first, last := y.FirstFreeze(), y.LastFreeze()
	strip("freezes", inside(column(first), column(last), first.Never && first.Below, 'x'))
	g := y.Ground()
	strip("ground shut", inside(column(g.LastSafe), column(g.Reopens), false, '='))
	strip("last safe", func(x int) byte {
		if x == column(g.LastSafe) {
			return '^'
		}
		return ' '
	})
	s.para(0, "Growth: # half its best or more, + a fifth or more, - a tenth or more, . less. Freezes: x where they are to be expected. Ground: = from its last safe day until it is open again.")
}

// inside marks the columns from one event to the next, around the year's end
// if need be.
func inside(from, to int, always bool, mark byte) func(int) byte {
	return func(x int) byte {
		in := always
		if from >= 0 && to >= 0 {
			in = x >= from && x <= to
			if from > to {
				in = x >= from || x <= to
			}
		}
		if in {
			return mark
		}
		return ' '
	}
}
