package text

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// The drawing of the year says what the year holds: above each column its one star lies
// at the step nearest to the soil's temperature in the middle of its days; growth is
// marked by its share, the freezes and the ground from one date to the other.
func TestDrawing(t *testing.T) {
	for _, c := range []struct {
		place  climate.Place
		metric bool
		width  int
		month  int // columns of a month
	}{
		{climate.Place{State: "OH", Hardiness: "6a"}, false, 60, 4}, {climate.Place{State: "OH", Hardiness: "6a"}, true, 80, 5},
		{climate.Place{State: "OH", Hardiness: "6a"}, false, 120, 8}, {climate.Place{State: "FL", Hardiness: "10b"}, false, 80, 5}, {climate.Place{State: "MN", Hardiness: "3b"}, true, 100, 7},
	} {
		y, err := c.place.Year()
		if err != nil {
			t.Fatal(err)
		}
		columns := 12 * c.month
		at := func(x int) climate.Day { return climate.Day(1 + int((float64(x)+0.5)*365/float64(columns))) }
		column := func(w climate.When) int { return min((int(w.Day())-1)*columns/365, columns-1) }
		rows := map[string]string{} // by what stands before the drawing
		step, depth := 10.0, "Soil at 2 in through the year:"
		if c.metric {
			step, depth = 5, "Soil at 5 cm through the year:"
		}
		_, drawing, found := strings.Cut(Climate("A place", y, c.metric, Style{Width: c.width}), depth+"\n")
		if !found {
			t.Fatalf("no drawing of %q", depth)
		}
		for l := range strings.SplitSeq(drawing, "\n") {
			row := []rune(l + strings.Repeat(" ", gutter+columns)) // the degree sign is one column
			if l == "" {
				break // the drawing ends
			}
			rows[strings.TrimSpace(string(row[:gutter]))] = string(row[gutter : gutter+columns])
		}
		names := ""
		for m := 1; m <= 12; m++ {
			names += fmt.Sprintf("%-*.3s", c.month, time.Month(m).String())
		}
		if rows[""] != names {
			t.Errorf("months %q, want %q", rows[""], names)
		}
		for name, row := range rows {
			if strings.Contains(name, "°") && !strings.Contains(row, "*") {
				t.Errorf("%+v: nothing in the row of %s", c.place, name)
			}
		}
		first, last, ground := y.FirstFreeze(), y.LastFreeze(), y.Ground()
		between := func(x int, from, to climate.When) bool {
			a, b := column(from), column(to)
			return !from.Never && !to.Never && (a <= b && a <= x && x <= b || a > b && (x >= a || x <= b))
		}
		for x := range columns {
			soil := float64(y.Soil(2, at(x)))
			unit := "°F"
			if c.metric {
				soil, unit = float64(climate.Fahrenheit(soil).Celsius()), "°C"
			}
			star := word.Number(math.Round(soil/step)*step, 0) + " " + unit
			for name, row := range rows {
				if strings.HasSuffix(name, unit) && (row[x] == '*') != (name == star) {
					t.Errorf("%+v, column %d: %q in the row of %s, the soil is at %.1f", c.place, x, row[x], name, soil)
				}
			}
			if rows[star] == "" {
				t.Errorf("%+v, column %d: no row for %s", c.place, x, star)
			}
			for name, season := range map[string]climate.Season{"cool grass": climate.Cool, "warm grass": climate.Warm} {
				mark := byte('.')
				for _, m := range []struct {
					from float64
					mark byte
				}{{0.1, '-'}, {0.2, '+'}, {0.5, '#'}} {
					if y.Growth(at(x), season) >= m.from {
						mark = m.mark
					}
				}
				if rows[name][x] != mark {
					t.Errorf("%+v, column %d: %s %q, want %q", c.place, x, name, rows[name][x], mark)
				}
			}
			if (rows["freezes"][x] == 'x') != between(x, first, last) || (rows["ground shut"][x] == '=') != between(x, ground.LastSafe, ground.Reopens) ||
				(rows["last safe"][x] == '^') != (!ground.LastSafe.Never && x == column(ground.LastSafe)) {
				t.Errorf("%+v, column %d: freezes %q, ground %q, last safe %q", c.place, x, rows["freezes"][x], rows["ground shut"][x], rows["last safe"][x])
			}
		}
	}
}

// headings gives the lines that stand after an empty line, or first, at the margin.
func headings(text string) (out []string) {
	for part := range strings.SplitSeq(text, "\n\n") {
		if l, _, _ := strings.Cut(part, "\n"); l != "" && l[0] != ' ' && l[0] != '-' {
			out = append(out, l)
		}
	}
	return out
}

// Each text has these parts, in this order, and no other.
func TestParts(t *testing.T) {
	const title = "A lawn with a rather long name, behind the old reading room by the river"
	all := texts(t, false, Style{Width: Widest})
	for name, want := range map[string][]string{
		"next":      {title},
		"why":       {"Lime the long eastern strip, 96 lb", "Dose", "How it is worked out", "The day", "How to do it", "Take care", "What goes with pelletized limestone, in full", "Sources"},
		"left out":  {"east/late-nitrogen/1 was left out", "Sources"},
		"soil":      {title, "The long eastern strip between the path and the hedge: 2,600 sq ft, perennial ryegrass 60 %, fine fescue 40 %"},
		"soil why":  {title, "The long eastern strip between the path and the hedge: 2,600 sq ft, perennial ryegrass 60 %, fine fescue 40 %", "Sources"},
		"materials": {"A lawn", "Material                           Takes  Pack   Packs  On hand  Buy  By            Cost  Left", "Cost: 21.75, and what has no price in the site file.", "What goes where", "What is left over"},
		"compare":   {"A lawn", "Job                          as it stands        6.5", "6.5 against as it stands"},
		"check":     {"fine", "Assumed, as the file does not say", "Left out"},
		"nothing":   {"Mara has no jobs in " + title + ", 12 Sep 2026 to"},
	} {
		if got := headings(all[name]); !slices.Equal(got, want) {
			t.Errorf("%s:\n%s\nwant\n%s", name, strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
	}
	full := headings(Full(lawn(t, false), Style{Width: Widest}))
	if want := []string{title, "Next: Sat 19 Sep 2026", "All jobs", "What limits the grass", "Left out", "Assumed", "Law: Ohio", "The place", "Each job with its window", "If nothing more is bought", "Law"}; len(full) != len(want) || slices.ContainsFunc(want, func(w string) bool {
		return !slices.ContainsFunc(full, func(l string) bool { return strings.HasPrefix(l, w) })
	}) {
		t.Errorf("full:\n%s", strings.Join(full, "\n"))
	}
}

// A roster lists the people who have jobs, those who have none, the jobs that nobody has
// and those that were left out; a part with nothing in it is not written.
func TestRosterText(t *testing.T) {
	d := date(t, "2026-09-19")
	job := schedule.RosterJob{ID: "east/lime/2026-1", Date: d, Title: "Lime East lawn, 96 lb", AreaName: "East lawn", State: "planned"}
	row := "  Date             Job                    State    Id\n  Sat 19 Sep 2026  Lime East lawn, 96 lb  planned  east/lime/2026-1\n"
	away := []schedule.Span{{From: d, To: d.AddDays(3)}, {From: d.AddDays(10), To: d.AddDays(11)}}
	for _, c := range []struct {
		r    schedule.Roster
		want string
	}{
		{schedule.Roster{}, "A lawn\nThe site file names no people; [crew.people] does, and [crew.who] assigns the jobs.\n"},
		{schedule.Roster{People: []schedule.PersonRoster{{ID: "mara", Name: "Mara", Jobs: []schedule.RosterJob{job}}}}, "A lawn\n\nMara\n" + row},
		{schedule.Roster{People: []schedule.PersonRoster{{ID: "mara", Name: "Mara", Absent: away, Jobs: []schedule.RosterJob{job}}, {ID: "tovi", Name: "Tovi", Absent: away[:1]}}},
			"A lawn\n\nMara\n  Away 19 Sep to 22 Sep 2026 and 29 Sep to 30 Sep 2026.\n" + row + "\nWithout a job\n  - Tovi\n  Away 19 Sep to 22 Sep 2026.\n"},
		{schedule.Roster{People: []schedule.PersonRoster{{ID: "tovi", Name: "Tovi"}}, Nobody: []schedule.RosterJob{job}}, "A lawn\n\nWithout a job\n  - Tovi\n\nNobody's\n" + row},
		{schedule.Roster{People: []schedule.PersonRoster{{ID: "tovi", Name: "Tovi"}}, Left: []schedule.RosterLeft{{Job: "Lime, East lawn", Reason: "no day"}, {Job: "Feed", WhoName: "Mara", Reason: "no day", CarriedTo: d}}},
			"A lawn\n\nWithout a job\n  - Tovi\n\nLeft out\n  - Lime, East lawn: no day.\n  - Feed, Mara: no day. Next time 19 Sep 2026.\n"},
	} {
		if got := Roster("A lawn", c.r, Style{Width: Widest}); got != c.want {
			t.Errorf("got\n%s\nwant\n%s", got, c.want)
		}
	}
	lines := RosterLines(schedule.Roster{People: []schedule.PersonRoster{{ID: "mara", Name: "Mara", Jobs: []schedule.RosterJob{job}}, {ID: "tovi", Name: "Tovi"}}, Nobody: []schedule.RosterJob{job}})
	want := "who,name,date,title,area,state,id\nmara,Mara,2026-09-19,\"Lime East lawn, 96 lb\",East lawn,planned,east/lime/2026-1\ntovi,Tovi,,,,,\n,nobody,2026-09-19,\"Lime East lawn, 96 lb\",East lawn,planned,east/lime/2026-1\n"
	if got := lines.CSV(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// Changes are counted in one order, named by their job, and told with their reason.
func TestChangesText(t *testing.T) {
	if got := Tally(nil); got != "no change" {
		t.Errorf("of none: %q", got)
	}
	var all []schedule.Change
	for _, what := range []string{"left out", "grew", "moved", "vanished", "moved", "changed", "no longer left out", "appeared", "shrank"} {
		all = append(all, schedule.Change{ID: "east/lime/2026-1", What: what, Text: "from 1 to 2"})
	}
	if got := Tally(all); got != "2 moved, 1 grew, 1 shrank, 1 appeared, 1 vanished, 1 left out, 1 no longer left out, 1 changed" {
		t.Errorf("got %q", got)
	}
	all[1].Why = "more is wanted"
	want := "- east/lime/2026-1 left out: from 1 to 2.\n- east/lime/2026-1 grew: from 1 to 2. More is wanted.\n- east/lime/2026-1 moved: from 1 to 2.\n- Vanished: from 1 to 2.\n"
	if got := Changes(all[:4], Style{}); got != want {
		t.Errorf("got %q", got)
	}
	p, q := lawn(t, false), lawn(t, false)
	twice := p.Entries[0]
	twice.ID, twice.Date = "east/lime/2", date(t, "2027-04-03")
	p.Entries, q.Entries = append(p.Entries, twice), append(q.Entries, twice)
	q.Entries[0].Date, q.Entries[0].Pounds = date(t, "2026-09-23"), 40
	q.Entries[1].Gallons = 1
	q.LeftOut = append(q.LeftOut, schedule.LeftOut{ID: "east/iron/1", Kind: schedule.Iron, Area: "east"})
	change := func(ids ...string) (out []schedule.Change) {
		for _, id := range ids {
			out = append(out, schedule.Change{ID: id, What: "moved", Text: "x"})
		}
		return out
	}
	ids := change("east/lime/1", "east/nitrogen/1", "site/last-safe/1", "east/iron/1", "east/odd/1")
	ids[1].Was, ids[1].Is = date(t, "2026-09-26"), date(t, "2026-09-27")
	r := []Variant{{Label: "now", Program: p}, {Label: "then", Program: q, Changes: ids, Note: "A word."}, {Label: "same", Program: p}}
	want = "A lawn\nthen: 5 moved. A word.\nsame: no change.\n\n" +
		"Job                          now                     then                same\n" +
		"Lime the long eastern strip  19 Sep 2026, 96 lb      23 Sep 2026, 40 lb  19 Sep 2026, 96 lb\n" +
		"Feed                         26 Sep 2026, 102 fl oz  26 Sep 2026, 1 gal  26 Sep 2026, 102 fl oz\n" +
		"Last safe day to spread      16 Nov 2026             16 Nov 2026         16 Nov 2026\n\n" +
		"then against now\n  - Lime the long eastern strip of 19 Sep 2026 moved: x.\n  - Feed moved: x.\n  - Last safe day to spread moved: x.\n" +
		"  - Iron, The long eastern strip between the path and the hedge moved: x.\n  - east/odd/1 moved: x.\n"
	if got := Compare("A lawn", r, Style{Width: Widest}); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	want = "program,id,what,was,is,text\nthen,east/lime/1,moved,,,x\nthen,east/nitrogen/1,moved,2026-09-26,2026-09-27,x\n"
	if got := ChangeTable([]Variant{r[0], {Label: "then", Program: q, Changes: ids[:2]}}).CSV(); got != want {
		t.Errorf("got\n%s", got)
	}
	for id, want := range map[string]string{"east/iron/1": "left out", "east/odd/1": "none"} {
		if got := cell(q, id); got != want {
			t.Errorf("%s: %q, want %q", id, got, want)
		}
	}
}

// A source is told with its citation, where it is used, how far it was read, and last
// its address; the words of a group stand under its head.
func TestSourcesText(t *testing.T) {
	s := Source{Key: "a", Tag: "Smith 1999", Cite: "Smith, A. 1999. On lime", Used: []string{"agronomy/lime", "schedule/rule"}, Checked: "seen.", Figures: 2, Where: "example.org"}
	bare := Source{Key: "b", Tag: "Nobody", Cite: "Nobody.", Used: []string{"x"}, Checked: "from memory"}
	got := Sources([]SourceGroup{{Sources: []Source{s}}, {Head: "Others", Words: "Less sure.", Sources: []Source{bare}}}, Style{})
	want := "Smith 1999\n    Smith, A. 1999. On lime.\n    2 places: agronomy/lime, schedule/rule.\n    Seen. Key: a.\n    example.org\n\nOthers\nLess sure.\n\nNobody\n    Nobody.\n    From memory. Key: b.\n"
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	table := SourceTable([]Source{{Key: "a", State: "OH", Cite: "c", Where: "w", Used: []string{"x", "y"}, Checked: "seen", Tag: "t", By: "b", Title: "i", Year: "1999", In: "n", Note: "o", Figures: 2}}).CSV()
	if table != "key,state,cite,where,used_in,checked,tag,by,title,year,in,note,figures\na,OH,c,w,x; y,seen,t,b,i,1999,n,o,2\n" {
		t.Errorf("got\n%s", table)
	}
}

// What else there is to say of an answer stands behind dashes if it is more than one
// line.
func TestWorkingText(t *testing.T) {
	why := []schedule.Reason{{Text: "one and one is two"}}
	for _, c := range []struct {
		more []string
		why  []schedule.Reason
		want string
	}{
		{nil, nil, "2 lb\n"}, {[]string{"So it is."}, nil, "2 lb\nSo it is.\n"},
		{[]string{"So.", "And so."}, why, "2 lb\n- So.\n- And so.\n\nHow it is worked out\n  1. One and one is two.\n"},
	} {
		if got := Working("2 lb", c.more, c.why, Style{}); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
	why[0].Source = "common"
	if got := Working("2 lb", nil, why, Style{}); !strings.Contains(got, "two. [common practice]\n\nSources\n  - Common practice") {
		t.Errorf("got %q", got)
	}
}

// Tables for other programs: their columns, and a job's cells under them.
func TestTablesOfJobs(t *testing.T) {
	p := lawn(t, false)
	p.Entries[0].P2O5, p.Entries[0].K2O = 0.25, 0.125
	today := date(t, "2026-09-12")
	got := strings.SplitN(Entries(p, today).CSV(), "\n", 3)
	if got[0] != "date,kind,area,title,material,rate_lb_per_1000_sqft,amount_lb,amount_gal,packs,n_lb_per_1000_sqft,p2o5_lb_per_1000_sqft,k2o_lb_per_1000_sqft,water_in_inches,earliest,latest,ideal,who,state,id,summary" ||
		got[1] != `2026-09-19,lime,east,"Lime the long eastern strip, 96 lb",limestone,37,96.2,0,2.4,0,0.25,0.125,0.25,2026-09-12,2026-11-16,2026-09-12,Mara,planned,east/lime/1,"Spread 96 lb (2.4 packs) at 37 lb per 1,000 sq ft."` {
		t.Errorf("got\n%s\n%s", got[0], got[1])
	}
	short := Short(p, today).CSV()
	if want := "Date,Job,Window,Who,State,Id\nSat 19 Sep 2026,\"Lime the long eastern strip, 96 lb\",12 Sep to 16 Nov 2026,Mara,planned,east/lime/1\nSat 26 Sep 2026,Feed,20 Sep to 3 Oct 2026,,done,east/nitrogen/1\nMon 16 Nov 2026,Last safe day to spread,,,planned,site/last-safe/1\n"; short != want {
		t.Errorf("got\n%s", short)
	}
	if got := Findings(p).CSV(); got != "area,rank,reading,value,unit,level,text,source\neast,1,ph,5.1,,very low,Sour.,common\neast,2,organic_matter,2.1,%,,Ordinary.,\n" {
		t.Errorf("got\n%s", got)
	}
	ledger := LedgerLines(ledger(t)).CSV()
	if want := "area,date,job,text,state,n_lb_per_1000_sqft,slow_n_lb_per_1000_sqft,p2o5_lb_per_1000_sqft,k2o_lb_per_1000_sqft,lime_lb_per_1000_sqft,sum_n_lb_per_1000_sqft,feeding_n_lb_per_1000_sqft,feeds_to\neast,2026-09-19,east/late-nitrogen/1,,taken as done,0.5,0.2,0.7,0.3,37,0.5,0.2,2026-09-19\n"; !strings.HasPrefix(ledger, want) {
		t.Errorf("got\n%s", ledger)
	}
	supplies := Supplies(supplies(t)).CSV()
	if want := "material,name,amount_lb,amount_gal,packs,pack_size,on_hand_packs,buy_packs,by,cost,left_packs,note\nlimestone,pelletized limestone,149,0,3.7,40 lb,1.5,3,2026-09-19,21.75,0.8,\nx,a material of some length to buy,10,0,0,,0,1,2026-09-19,,0,no price is given\n"; supplies != want {
		t.Errorf("got\n%s", supplies)
	}
	for v, want := range map[float64]string{0: "0", 0.12345: "0.123", 99.9996: "100", 99.9994: "99.999", 100.126: "100.13", 1234.5: "1234.5", -100.126: "-100.13"} {
		if got := figure(v); got != want {
			t.Errorf("%v is written %s, want %s", v, got, want)
		}
	}
	for v, want := range map[float64]string{0: "", 0.04: "0.04", 0.05: "0.1", 3.74: "3.7"} {
		if got := some(v); got != want {
			t.Errorf("%v packs are written %q, want %q", v, got, want)
		}
	}
}

// The days of a year as a table: a row a day, each figure in its place.
func TestDaysTable(t *testing.T) {
	y, err := climate.Place{State: "OH", Hardiness: "6a"}.Year()
	if err != nil {
		t.Fatal(err)
	}
	for _, metric := range []bool{false, true} {
		unit := map[bool]string{false: "f", true: "c"}[metric]
		lines := strings.Split(Days(y, metric).CSV(), "\n")
		if want := strings.ReplaceAll("day,date,mean_u,high_u,low_u,soil_2in_u,soil_4in_u,growth_cool,growth_warm,degree_days_50f", "_u", "_"+unit); len(lines) != 367 || lines[0] != want {
			t.Fatalf("%d lines, %s", len(lines), lines[0])
		}
		for _, d := range []climate.Day{1, 105, 196, 365} {
			shown := func(f climate.Fahrenheit) string {
				if metric {
					return fmt.Sprintf("%.1f", float64(f.Celsius()))
				}
				return fmt.Sprintf("%.1f", float64(f))
			}
			sum := 0.0
			for e := climate.Day(1); e <= d; e++ {
				sum += y.DegreeDay(e, 50)
			}
			want := fmt.Sprintf("%d,%02d-%02d,%s,%s,%s,%s,%s,%.3f,%.3f,%.0f", d, d.Month(), d.Date(), shown(y.Mean(d)), shown(y.High(d)), shown(y.Low(d)), shown(y.Soil(2, d)), shown(y.Soil(4, d)),
				y.Growth(d, climate.Cool), y.Growth(d, climate.Warm), sum)
			if lines[d] != want {
				t.Errorf("day %d: %s, want %s", d, lines[d], want)
			}
		}
		total := fmt.Sprintf("Growing degree days in a year: %s above 50 °F.", word.Number(math.Round(y.DegreeDays(50)), 0))
		if metric {
			total = fmt.Sprintf("Growing degree days in a year: %s above 10 °C.", word.Number(math.Round(y.DegreeDays(50)*5/9), 0))
		}
		if text := Climate("A place", y, metric, Style{}); !strings.Contains(text, total) {
			t.Errorf("%q is missing in\n%s", total, text)
		}
	}
}

// What the row of the ground means is told where the ground freezes, in the units asked.
func TestGroundMeaning(t *testing.T) {
	for _, c := range []struct {
		state, zone string
		metric      bool
		want        string
	}{
		{"OH", "6a", false, "Frozen: the top 2 in of soil has frozen. Last safe: a week before the soil cools to 40 °F,"},
		{"OH", "6a", true, "Frozen: the top 5 cm of soil has frozen. Last safe: a week before the soil cools to 4.4 °C,"},
		{"FL", "10b", false, ""},
	} {
		y, err := climate.Place{State: c.state, Hardiness: c.zone}.Year()
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(Climate("A place", y, c.metric, Style{})), " ")
		if strings.Contains(text, "Frozen: the top") != (c.want != "") || !strings.Contains(text, strings.Join(strings.Fields(c.want), " ")) {
			t.Errorf("%s: %q is not in\n%s", c.state, c.want, text)
		}
	}
}

// What all materials cost is told if anything has a price, and whether it is all.
func TestCostOfMaterials(t *testing.T) {
	priced := supplies(t)[:1]
	unpriced := supplies(t)[1:]
	for _, c := range []struct {
		all  []schedule.Supply
		want string
	}{{priced, "Cost: 21.75.\n"}, {slices.Concat(priced, priced), "Cost: 43.50.\n"}, {slices.Concat(priced, unpriced), "Cost: 21.75, and what has no price in the site file.\n"}, {unpriced, ""}} {
		text := Materials("A lawn", c.all, nil, word.Measure{}, Style{})
		if got := strings.Contains(text, "Cost:"); got != (c.want != "") || !strings.Contains(text, c.want) {
			t.Errorf("%q is not in\n%s", c.want, text)
		}
	}
	if got := Materials("A lawn", nil, nil, word.Measure{}, Style{}); got != "A lawn\nThe program takes no material.\n" {
		t.Errorf("of none: %q", got)
	}
}

// The heads of tables are bold, and their rows are not.
func TestBoldHeads(t *testing.T) {
	text := Materials("A lawn", supplies(t), nil, word.Measure{}, Style{Colour: true})
	for l := range strings.SplitSeq(text, "\n") {
		if bare := strings.TrimPrefix(l, "\x1b[1m"); strings.HasPrefix(bare, "Material ") != strings.HasPrefix(l, "\x1b[1mMaterial ") || strings.HasPrefix(bare, "pelletized") && bare != l {
			t.Errorf("%q", l)
		}
	}
}

// The dates of a year stand in their order, each with its early and late day; the
// ground has one row for its three days, and what never comes stands last, once.
func TestDatesTable(t *testing.T) {
	for _, c := range []struct{ state, zone string }{{"OH", "6a"}, {"FL", "10b"}, {"AZ", "9b"}, {"MN", "3b"}} {
		y, err := climate.Place{State: c.state, Hardiness: c.zone}.Year()
		if err != nil {
			t.Fatal(err)
		}
		table := Dates(y, false)
		row := func(first string) []string {
			i := slices.IndexFunc(table.Rows, func(r []string) bool { return r[0] == first })
			if i < 0 {
				t.Errorf("%s: no row %q", c.state, first)
				return make([]string, 5)
			}
			return table.Rows[i]
		}
		last, never := -1000.0, false
		for _, r := range table.Rows {
			if slices.IndexFunc(table.Rows, func(o []string) bool { return o[0] == r[0] }) != slices.IndexFunc(table.Rows, func(o []string) bool { return &o[0] == &r[0] }) {
				t.Errorf("%s: %q twice", c.state, r[0])
			}
		}
		for _, e := range y.Events() {
			w := e.When
			name := word.Capital(oneUnit(w.Words, false))
			switch {
			case w.Quantile:
			case w.Never:
				never = true
				if r := row(name); strings.Join(r[1:], "") != "" {
					t.Errorf("%s: %q", c.state, r)
				}
			case e.Name == "last_safe":
				g := y.Ground()
				want := "Ground: last safe day " + g.LastSafe.Day().String()
				if !g.Early.Never {
					want += ", frozen in an early year by " + g.Early.Day().String()
				}
				if !g.Median.Never {
					want += ", in half of the years by " + g.Median.Day().String()
				}
				row(want)
			default:
				if r := row(name); r[1] != w.Day().String() || r[2] != w.EarlyDay().String() || r[3] != w.LateDay().String() || r[4] != fmt.Sprint(w.Within()) {
					t.Errorf("%s: %q, want %s", c.state, r, w.Day())
				}
			}
		}
		ended := false
		for _, r := range table.Rows {
			at := slices.IndexFunc(y.Events(), func(e climate.Event) bool { return word.Capital(oneUnit(e.When.Words, false)) == r[0] })
			if at < 0 {
				continue // the ground
			}
			w := y.Events()[at].When
			if ended && !w.Never || !w.Never && w.D < last {
				t.Errorf("%s: %q is out of order", c.state, r)
			}
			if last, ended = w.D, ended || w.Never; w.Never {
				last = -1000
			}
		}
		if c.state == "FL" && !never {
			t.Error("everything comes in Florida, so nothing is tested")
		}
	}
}

// The text says which jobs wait because the budget does not reach, or that it reaches for
// all.
func TestBudgetText(t *testing.T) {
	order := []schedule.Buying{{Name: "lime", Packs: 3, Paid: 2, Cost: 21.75, Priced: true, Waits: []string{"a", "b"}}, {Name: "seed", Packs: 1}}
	for _, c := range []struct {
		x    schedule.Spending
		want string
	}{
		{schedule.Spending{Budget: 20, Cost: 52.5, Order: order}, "What to buy first The budget of 20.00 does not cover 52.50: buy in this order. Material Packs Within Cost 1 lime 3 2 21.75 2 seed 1 no price - lime waits, and with it: a; b. What goes where"},
		{schedule.Spending{Budget: 60, Cost: 52.5, Order: order[1:]}, "What to buy first The budget of 60.00 covers 52.50. Material Packs Within Cost 1 seed 1 no price What goes where"},
	} {
		text := strings.Join(strings.Fields(Materials("A lawn", supplies(t)[1:], &c.x, word.Measure{}, Style{})), " ")
		if !strings.Contains(text, c.want) {
			t.Errorf("%q is not in\n%s", c.want, text)
		}
	}
	p := lawn(t, false)
	if text := Program(p, Style{}); !strings.Contains(text, "\n\nNext: Sat 19 Sep 2026\n") {
		t.Errorf("without a day the next is told by its date:\n%s", text)
	}
}
