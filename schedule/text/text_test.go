package text

import (
	"encoding/csv"
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"swardbook/agronomy/soil"
	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

func date(t testing.TB, s string) schedule.Date {
	t.Helper()
	d, err := schedule.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// lawn is a small program by hand: one area with a long name, one job of each
// state, one left out.
func lawn(t testing.TB, metric bool) *schedule.Program {
	d := func(s string) schedule.Date { return date(t, s) }
	why := []schedule.Reason{{Text: "pH 5.1 to 6.5 takes 45.9 lb/1000 sq ft of effective lime", Source: "laboski-lime, common"}, {Text: "the law allows 0.7 lb N per 1,000 sq ft", Source: "Md. Code, Agric. § 6-224"}}
	return &schedule.Program{
		Title: "A lawn with a rather long name, behind the old reading room by the river", Start: d("2026-09-12"), Through: d("2027-09-11"), Metric: metric,
		Place:  schedule.PlaceShown{State: "OH", Hardiness: "6a", ClimateFrom: "state and hardiness zone", Better: []string{"elevation"}},
		Season: schedule.Season{FirstFreeze: schedule.Odds{P10: d("2026-09-27"), P50: d("2026-10-13"), P90: d("2026-10-29")}, LastSafe: d("2026-11-16"), Words: []string{"ground: it freezes in most winters"}},
		Areas: []schedule.AreaShown{{ID: "east", Name: "The long eastern strip between the path and the hedge", Size: 2600, Stand: "perennial ryegrass 60 %, fine fescue 40 %",
			Findings: []schedule.FindingShown{{Rank: 1, Reading: "ph", Value: 5.1, Level: soil.VeryLow, Text: "Sour.", Source: "common", Why: why}, {Rank: 2, Reading: "organic_matter", Value: 2.1, Unit: "%", Text: "Ordinary."}},
			Needs:    []schedule.Need{{Kind: schedule.Lime, Total: 57, Text: "lime: 57 lb per 1,000 sq ft", Why: why}}, Pale: []string{"Fits: sour soil."}}},
		Entries: []schedule.Entry{
			{ID: "east/lime/1", Kind: schedule.Lime, Area: "east", Title: "Lime the long eastern strip, 96 lb", Summary: "Spread 96 lb (2.4 packs) at 37 lb per 1,000 sq ft.", Date: d("2026-09-19"), Earliest: d("2026-09-12"), Latest: d("2026-11-16"), LastSafe: d("2026-11-16"),
				Ideal: d("2026-09-12"), Window: "the start to the last safe day", Who: "mara", WhoName: "Mara", Material: "limestone", MaterialName: "pelletized limestone", Rate: 37, Pounds: 96.2, Packs: 2.4, WaterIn: 0.25,
				Steps: []string{"Set the spreader to half."}, IfRain: "wait.", Cautions: []string{"Dust."}, Why: why, BoundBy: []string{"work days are Saturday and Wednesday"}, State: schedule.Planned},
			{ID: "east/nitrogen/1", Kind: schedule.Nitrogen, Area: "east", Title: "Feed", Summary: "=1+1|<b>*x*", Date: d("2026-09-26"), Earliest: d("2026-09-20"), Latest: d("2026-10-03"), N: 0.5, SlowN: 0.2, Rate: 2.8, Pounds: 7.2, Gallons: 0.8, State: schedule.Finished, Note: "half\x1b[2J of it"},
			{ID: "site/last-safe/1", Kind: schedule.LastSafe, Title: "Last safe day to spread", Date: d("2026-11-16"), Earliest: d("2026-11-16"), Latest: d("2026-11-16"), State: schedule.Planned},
		},
		LeftOut:     []schedule.LeftOut{{ID: "east/late-nitrogen/1", Kind: schedule.LateNitrogen, Area: "east", Reason: "the stand is too young", Source: "common", CarriedTo: d("2027-10-30")}},
		InTheShed:   []string{"The limestone runs out at east/lime/1."},
		Assumptions: []string{"care not given, taken as medium"},
		Laws:        []schedule.LawLine{{Text: "No fertilizer on frozen ground.", Citation: "Ohio Rev. Code § 905.326", AsOf: "2024-01", Sure: "low, read"}},
		LawNotes:    []string{"This is no legal advice."},
	}
}

func ledger(t testing.TB) schedule.Ledger {
	d := date(t, "2026-09-19")
	return schedule.Ledger{Areas: []schedule.AreaLedger{{Area: "east", Name: "East lawn", Verdict: "No.",
		Lines: []schedule.LedgerLine{
			{Date: d, Job: "east/late-nitrogen/1", State: schedule.TakenAsDone, Down: true, N: 0.5, SlowN: 0.2, P2O5: 0.7, K2O: 0.3, Lime: 37, SumN: 0.5, Feeding: 0.2, FeedsTo: d},
			{Date: d, Text: "7 lb of starter, before the program", State: schedule.OnRecord, Down: true, N: 0.5, SumN: 1}},
		Limits: []schedule.LedgerLimit{{What: "quick nitrogen in any 30 days", Limit: 1, Most: 1.2, Down: 0.3, Passed: true, Source: "common"}}}}}
}

func supplies(t testing.TB) []schedule.Supply {
	d := date(t, "2026-09-19")
	return []schedule.Supply{{Material: "limestone", Name: "pelletized limestone", Pounds: 149, Packs: 3.7, PackSize: "40 lb", OnHand: 1.5, Buy: 3, By: d, Cost: 21.75, Priced: true, Left: 0.8, Uses: []schedule.Use{{Job: "east/lime/1", Date: d, Pounds: 149, Packs: 3.7}}},
		{Material: "x", Name: "a material of some length to buy", Pounds: 10, Buy: 1, By: d, Note: "no price is given"}}
}

// texts writes everything this package can write, in one style.
func texts(t testing.TB, metric bool, style Style) map[string]string {
	p := lawn(t, metric)
	y, err := climate.Place{State: "OH", Hardiness: "6a"}.Year()
	if err != nil {
		t.Fatal(err)
	}
	m := word.Measure{Metric: metric}
	other := lawn(t, metric)
	other.Entries = other.Entries[1:]
	variants := []Variant{{Label: "as it stands", Program: p}, {Label: "6.5", Program: other, Changes: schedule.Compare(p, other)}}
	return map[string]string{
		"program": Program(p, style), "full": Full(p, style), "next": Next(p, 2, style), "nothing": Nothing(p, "Mara", style), "why": Why(p, &p.Entries[0], style), "left out": LeftOut(&p.LeftOut[0], style),
		"soil": Soil(p, false, style), "soil why": Soil(p, true, style), "climate": Climate("A place", y, metric, style),
		"ledger": Ledger("A lawn", ledger(t), m, style), "materials": Materials("A lawn", supplies(t), nil, m, style), "budget": Materials("A lawn", supplies(t), &schedule.Spending{Budget: 20, Cost: 52.5, Order: []schedule.Buying{{Name: "pelletized limestone", Packs: 3, Paid: 2, Cost: 21.75, Priced: true, Waits: []string{"lime on a lawn with a long name, 31 Mar 2027"}}}}, m, style),
		"compare": Compare("A lawn", variants, style), "check": Check("fine", p, style),
		"sources": Sources([]SourceGroup{{Head: "First", Words: strings.Repeat("word ", 40), Sources: []Source{{Key: "a", Tag: strings.Repeat("name ", 30), Cite: strings.Repeat("word ", 40), Used: []string{"agronomy/lime"}, Checked: "in part", Figures: 3, Where: "example.org"}}}}, style),
	}
}

// No line is longer than the width, unless one piece that must not be broken
// is; numbers stay with their units; nothing obeys a terminal.
func TestWidths(t *testing.T) {
	for _, metric := range []bool{false, true} {
		for width := Narrowest; width <= Widest; width += 5 {
			for name, text := range texts(t, metric, Style{Width: width, Today: date(t, "2026-09-12")}) {
				for line := range strings.SplitSeq(strings.TrimSuffix(text, "\n"), "\n") {
					bare := strings.TrimSpace(line)
					if n := utf8.RuneCountInString(line); n > width && strings.Contains(bare, " ") {
						t.Errorf("%s, width %d: %d characters: %s", name, width, n, line)
					}
					if strings.HasSuffix(line, " ") {
						t.Errorf("%s, width %d: a space at the end: %q", name, width, line)
					}
				}
				for _, apart := range []string{"1,000\n", "96\n", " sq\n", " 2026-\n"} {
					if strings.Contains(text, apart) {
						t.Errorf("%s, width %d: parted after %q", name, width, apart)
					}
				}
				if strings.ContainsAny(text, "\x1b\x00\t") {
					t.Errorf("%s: a control character", name)
				}
				if strings.Contains(text, "\n\n\n") || strings.HasPrefix(text, "\n") {
					t.Errorf("%s, width %d: more than one empty line", name, width)
				}
			}
		}
	}
}

// Colour adds nothing but colour.
func TestColourSaysNothing(t *testing.T) {
	plain := texts(t, false, Style{})
	for name, text := range texts(t, false, Style{Colour: true}) {
		if !strings.Contains(text, "\x1b[1m") && name != "check" && name != "left out" && name != "nothing" {
			t.Errorf("%s: no colour", name)
		}
		bare := strings.NewReplacer("\x1b[1m", "", "\x1b[2m", "", "\x1b[0m", "").Replace(text)
		if bare != plain[name] {
			t.Errorf("%s: says something else in colour", name)
		}
	}
}

// A program says, in this order, what a reader needs.
func TestProgramOrder(t *testing.T) {
	short := []string{"A lawn with", "Tue 1 Dec 2026", "OH, zone 6a, 12 Sep 2026 to 11 Sep 2027.", "1 job planned, 1 done, 1 notice, 1 left out. 1 job past, with no line in the record book",
		"Nothing is left to do", "All jobs", "last safe", "Sat 19 Sep  Lime the long", "96 lb", "Mara", "taken", "east/lime/1", "done", "Last safe day to spread",
		"What limits the grass, and what it needs per 1,000 sq ft", "2,600 sq ft", "1 pH 5.1, very low: 57 lb.", "2 Organic matter 2.1 %: ordinary.",
		"Left out", "Late nitrogen: the stand is too young. Next time 30 Oct 2027.", "Assumed", "Care not given", "Law: Ohio Rev. Code § 905.326;"}
	full := []string{"The place", "First freeze", "8 years in 10: 27 Sep to 29 Oct 2026", "Each job with its window", "Sat 19 Sep 2026: Lime", "(taken as done)",
		"Window 12 Sep to 16 Nov 2026, its last safe day; best about 12 Sep 2026.", "For Mara. Job: east/lime/1", "Record book: half[2J of it",
		"If nothing more is bought", "Law\n", "905.326", "no legal advice"}
	style := Style{Today: date(t, "2026-12-01")}
	inOrder(t, Program(lawn(t, false), style), append(short, "More: "))
	inOrder(t, Full(lawn(t, false), style), append(short, full...))
}

func inOrder(t *testing.T, text string, wanted []string) {
	t.Helper()
	flat, at := strings.Join(strings.Fields(text), " "), 0
	for _, want := range wanted {
		i := strings.Index(flat[at:], strings.Join(strings.Fields(want), " "))
		if i < 0 {
			t.Fatalf("%q is missing after %q in\n%s", want, flat[:at], text)
		}
		at += i
	}
}

// The next visit says once how, what if it rains, what to mind; a job whose day
// has passed stands before it; the first job stands within ten lines.
func TestVisit(t *testing.T) {
	p := lawn(t, false)
	second := p.Entries[0]
	second.ID, second.Title, second.Cautions = "west/lime/1", "Lime West lawn, 40 lb", []string{"Dust.", "Dust. And wind."}
	second.IfRain = "wait. Drizzle does no harm."
	p.Entries = append([]schedule.Entry{second}, p.Entries...)
	for today, want := range map[string][]string{
		"2026-09-12": {"Next: Sat 19 Sep, in 7 days", "Lime West lawn", "Lime the long eastern strip", "last safe day Mon 16 Nov", "Spread half one way", "Wait. Drizzle does no harm.", "Mind: Dust. And wind."},
		"2026-09-18": {"Next: Sat 19 Sep, tomorrow"},
		"2026-09-19": {"Next: Sat 19 Sep, today"},
		"2026-09-30": {"Due, and not in the record book", "Sat 19 Sep Lime West lawn", "last safe day Mon 16 Nov", "Spread half one way", "Mind: Dust."},
	} {
		text := Program(p, Style{Today: date(t, today)})
		inOrder(t, text, want)
		if strings.Count(text, "Wait.") > 1 || strings.Contains(text, "Dust. Dust.") {
			t.Errorf("said twice:\n%s", text)
		}
		if lines := strings.Split(text, "\n"); !strings.Contains(strings.Join(lines[:10], "\n"), "Lime West lawn") {
			t.Errorf("no job in the first ten lines:\n%s", text)
		}
	}
}

// All jobs stand a line each, whatever the width.
func TestALineEach(t *testing.T) {
	for width := Narrowest; width <= Widest; width += 5 {
		p := lawn(t, false)
		p.Entries[0].Title = "Lime The long eastern strip between the path and the hedge, 96 lb"
		_, jobs, _ := strings.Cut(Program(p, Style{Width: width}), "All jobs")
		jobs, _, _ = strings.Cut(jobs, "\n\n")
		lines := strings.Split(jobs, "\n")
		if len(lines) != 1+1+len(p.Entries) || !strings.Contains(lines[2], "96 lb") || !strings.Contains(lines[2], "Mara") || !strings.Contains(lines[2], "16 Nov") {
			t.Errorf("width %d: %d lines:%s", width, len(lines), jobs)
		}
	}
}

// The working names every source in short, and in full below.
func TestWhySources(t *testing.T) {
	p := lawn(t, false)
	text := Why(p, &p.Entries[0], Style{Width: 120})
	for _, want := range []string{"[Laboski; common practice]", "[Md. Code, Agric. § 6-224]", "Laboski, C. (University of Wisconsin-Madison). Undated", "Checked in part.\n    soils.wisc.edu", "- Md. Code, Agric. § 6-224.\n", "For the area  96 lb, 2.4 packs", "- Work days are Saturday and Wednesday.", "- Rain: wait."} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
}

// A table read back from CSV is the table, and no cell of words is a formula.
func TestCSV(t *testing.T) {
	table := Entries(lawn(t, false), date(t, "2026-09-12"))
	rows, err := csv.NewReader(strings.NewReader(table.CSV())).ReadAll()
	if err != nil || len(rows) != len(table.Rows)+1 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	if got := rows[2][len(rows[2])-1]; got != "'=1+1|<b>*x*" {
		t.Errorf("the formula came out as %q", got)
	}
	for cell, want := range map[string]string{"-5": "-5", "-5 lb": "'-5 lb", "@x": "'@x", "'=x": "''=x", " +1+1": "' +1+1", "a-b": "a-b", "": ""} {
		if got := safeCell(cell); got != want {
			t.Errorf("%q came out as %q, want %q", cell, got, want)
		}
	}
}

func TestMarkdown(t *testing.T) {
	got := Table{Columns: columns("a", "#b"), Rows: [][]string{{"x|<b>*y*", "1"}}}.Markdown()
	if want := "| a | b |\n| --- | ---: |\n| x\\|&lt;b&gt;\\*y\\* | 1 |\n"; got != want {
		t.Errorf("got %q", got)
	}
}

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		text  string
		width int
		want  string
	}{
		{"spread 96 lb per 1,000 sq ft now", 12, "spread 96 lb/per/1,000 sq ft/now"},
		{"until Sat 19 Sep 2026, then stop", 12, "until/Sat 19 Sep 2026,/then stop"},
		{"at pH 5.1 or 50 °F", 8, "at/pH 5.1/or 50 °F"},
		{"leaves 1.50 lb N/1000 sq ft of it, or 2 lb K₂O", 22, "leaves/1.50 lb N/1000 sq ft/of it, or 2 lb K₂O"},
		{"leaves 2.4 g N/m² of it", 12, "leaves/2.4 g N/m²/of it"},
		{"", 10, ""},
		{"verylongwordindeed x", 5, "verylongwordindeed/x"},
	} {
		if got := strings.Join(wrap(c.text, c.width), "/"); got != c.want {
			t.Errorf("%q at %d: %q, want %q", c.text, c.width, got, c.want)
		}
	}
}

func TestOneUnit(t *testing.T) {
	const both = "soil at 2 in (5 cm) falls through 50 °F (10 °C)"
	if got := oneUnit(both, false); got != "soil at 2 in falls through 50 °F" {
		t.Error(got)
	}
	if got := oneUnit(both, true); got != "soil at 5 cm falls through 10 °C" {
		t.Error(got)
	}
	if got := oneUnit("frozen (one year in five)", true); got != "frozen (one year in five)" {
		t.Error(got)
	}
}

// The drawing of the year marks the freezes on the right side of the year in
// both halves of the world.
func TestDrawingSouth(t *testing.T) {
	highs, lows := make([]climate.Fahrenheit, 12), make([]climate.Fahrenheit, 12)
	for i, c := range []float64{24, 24, 22, 18, 14, 11, 10, 12, 15, 17, 20, 22} {
		highs[i], lows[i] = climate.Celsius(c).Fahrenheit(), climate.Celsius(c-13).Fahrenheit()
	}
	lat := -45.0
	y, err := climate.Place{Latitude: &lat, Highs: highs, Lows: lows}.Year()
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(Climate("South", y, true, Style{})) {
		if strip, ok := strings.CutPrefix(line, fmt.Sprintf("%-*s", gutter, "freezes")); ok {
			if strip[0] == 'x' || !strings.Contains(strip, "xxx") {
				t.Errorf("freezes: %q", strip)
			}
			return
		}
	}
	t.Error("there is no strip of freezes")
}

func BenchmarkProgram(b *testing.B) {
	p := lawn(b, false)
	for b.Loop() {
		Program(p, Style{})
	}
}
