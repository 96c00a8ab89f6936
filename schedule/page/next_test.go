package page_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/page"
	"swardbook/schedule/word"
)

// plain is a text with single spaces, and without what keeps lines together.
func plain(text string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(text, "\u2060", "")), " ")
}

// section cuts one section out of a page, without its tags.
func section(t *testing.T, b []byte, id string) string {
	t.Helper()
	for _, e := range elements(t, id, b) {
		if e.attr["id"] == id || id == "body" && e.name == id {
			return plain(e.text)
		}
	}
	t.Fatalf("no section %q", id)
	return ""
}

// sheet writes the garden's sheet and gives one section of it.
func sheet(t *testing.T, id string, o page.Options) string {
	t.Helper()
	b, err := page.Sheet(planned(t, "garden"), o)
	if err != nil {
		t.Fatal(err)
	}
	return section(t, b, id)
}

func wants(t *testing.T, when, got string, all ...string) {
	t.Helper()
	for _, want := range all {
		if !strings.Contains(got, strings.Join(strings.Fields(want), " ")) {
			t.Errorf("%s: %q is missing:\n%s", when, want, got)
		}
	}
}

// called is what a page calls a job, and how much of it the title says.
func called(e *schedule.Entry) (name, amount string) {
	amount = e.Title[strings.LastIndex(e.Title, ", ")+2:]
	amount, _, _ = strings.Cut(amount, " (")
	return headed(e.Kind) + ", " + e.AreaName, amount
}

func headed(k schedule.Kind) string {
	if k == schedule.Nitrogen {
		return "Feed"
	}
	return word.Capital(k.String())
}

// In the first seconds a reader learns what to do on which day, how much, with
// what, by whom, and what to do if it rains.
func TestNextJobComesFirst(t *testing.T) {
	p := planned(t, "garden")
	first := &p.Entries[0]
	second := first
	for i := range p.Entries {
		if second = &p.Entries[i]; second.Date != first.Date {
			break
		}
	}
	day := first.Date.Time().Format("Mon 2 Jan")
	name, amount := called(first)
	got := sheet(t, "next", page.Options{Today: first.Date.AddDays(-5)})
	wants(t, "before", got, day+" next, in 5 days", name, amount, first.MaterialName, first.WhoName, first.LastSafe.DayMonth(), "If 1 in or more is forecast", "Only half done")
	if !strings.HasPrefix(got, day) {
		t.Errorf("the section begins with %.40q", got)
	}
	wants(t, "the day before", sheet(t, "next", page.Options{Today: first.Date.AddDays(-1)}), "next, tomorrow")
	if got := sheet(t, "next", page.Options{Today: first.Date}); !strings.HasPrefix(got, "Today "+day) {
		t.Errorf("on the day: %.60q", got)
	}
	got = sheet(t, "next", page.Options{Today: first.Date.AddDays(1)})
	if !strings.HasPrefix(got, "Due now since "+day) {
		t.Errorf("a day late: %.60q", got)
	}
	then, _ := called(second)
	wants(t, "a day late", got, name, fmt.Sprintf("%s, next, in %d days", second.Date.Time().Format("Mon 2 Jan"), second.Date.DaysFrom(first.Date)-1), then)
	late := first.Latest.AddDays(1)
	if got := sheet(t, "next", page.Options{Today: late}); strings.Contains(got, name+amount) && strings.HasPrefix(got, "Due") {
		t.Errorf("after its window it is still due: %.100q", got)
	}
	wants(t, "after its window", sheet(t, "rest", page.Options{Today: late}), "What is behind", "taken as done: its window has closed")
	if got := sheet(t, "next", page.Options{Today: p.Through.AddDays(400)}); !strings.HasPrefix(got, "Nothing to do this program ended") {
		t.Errorf("after the program: %.60q", got)
	}
}

// What all jobs of a visit say is printed once; what only one of them says names the job.
func TestVisitSaysThingsOnce(t *testing.T) {
	visit := *planned(t, "garden")
	day := map[schedule.Date]int{}
	for _, e := range visit.Entries {
		if day[e.Date]++; day[e.Date] == 2 {
			visit.Entries = slices.DeleteFunc(slices.Clone(visit.Entries), func(o schedule.Entry) bool { return o.Date != e.Date })
			break
		}
	}
	if len(visit.Entries) < 2 {
		t.Fatalf("no visit of several jobs")
	}
	b, err := page.Sheet(&visit, page.Options{Today: visit.Entries[0].Date.AddDays(-4)})
	if err != nil {
		t.Fatal(err)
	}
	got := section(t, b, "next")
	kinds := map[schedule.Kind]int{}
	for _, e := range visit.Entries {
		kinds[e.Kind]++
		for _, c := range e.Cautions {
			if n := strings.Count(got, strings.Join(strings.Fields(c), " ")); n != 1 {
				t.Errorf("%d times: %s", n, c)
			}
		}
	}
	for _, e := range visit.Entries {
		if name, _ := called(&e); kinds[e.Kind] == 2 {
			wants(t, "how", got, name+". ")
		}
	}
}

// What only some of the jobs say is said once too, with the names of those.
func TestWhatSomeJobsSayIsSaidOnce(t *testing.T) {
	visit := *planned(t, "garden")
	visit.Entries = slices.DeleteFunc(slices.Clone(visit.Entries), func(e schedule.Entry) bool { return e.Material == "" })
	var some []schedule.Entry
	for _, e := range visit.Entries {
		if !slices.ContainsFunc(some, func(o schedule.Entry) bool { return o.Kind == e.Kind }) && len(some) < 3 {
			e.Date, e.State = visit.Entries[0].Date, schedule.Planned
			e.Cautions, e.Steps = []string{"Mind the frogs. Mind the bees."}, []string{"Open it. Shut it.", "Rest."}
			if len(some) == 2 {
				e.Cautions, e.Steps = []string{"Mind the bees."}, []string{"Whistle."}
			}
			some = append(some, e)
		}
	}
	if len(some) < 3 {
		t.Fatalf("only %d kinds", len(some))
	}
	visit.Entries = some
	b, err := page.Sheet(&visit, page.Options{Today: some[0].Date.AddDays(-1)})
	if err != nil {
		t.Fatal(err)
	}
	got := section(t, b, "next")
	for _, once := range []string{"Mind the frogs.", "Mind the bees.", "Open it. Shut it. Rest.", "Whistle."} {
		if n := strings.Count(got, once); n != 1 {
			t.Errorf("%d times %s: %s", n, once, got)
		}
	}
}

// The dates are those still to come, a box for each job.
func TestDatesFromTodayOn(t *testing.T) {
	p := planned(t, "garden")
	today := schedule.Date{Year: 2026, Month: 12, Day: 1}
	got := sheet(t, "dates", page.Options{Today: today})
	for _, e := range p.Entries {
		name := e.Date.Time().Format("Mon 2 Jan")
		if open := e.Date.After(today); open != strings.Contains(got, name) {
			t.Errorf("%s of %s: %v", name, e.ID, open)
		}
	}
}

func TestOnePersonsSheet(t *testing.T) {
	b, err := page.Sheet(planned(t, "garden"), page.Options{Person: "teo"})
	if err != nil {
		t.Fatal(err)
	}
	if s := string(b); !strings.Contains(s, "for Teo") || strings.Contains(section(t, b, "dates"), "Lime, East") {
		t.Error("Teo's sheet holds another's job, or does not name him")
	}
	if m := section(t, b, "materials"); strings.Contains(m, "limestone") || !strings.Contains(m, "starter") {
		t.Errorf("Teo's materials: %s", m)
	}
}

// Jobs are named in words, never by their ids.
func TestShedSpeaksOfJobsByName(t *testing.T) {
	p := planned(t, "garden")
	b, err := page.Sheet(p, page.Options{})
	if err != nil {
		t.Fatal(err)
	}
	m := section(t, b, "materials")
	if len(p.InTheShed) == 0 || !strings.Contains(m, "lime on East lawn") {
		t.Errorf("the shed: %s", m)
	}
	for _, e := range p.Entries {
		if strings.Contains(m, e.ID) {
			t.Errorf("the id %s stands in: %s", e.ID, m)
		}
	}
}

// What a person typed stands on the page as text.
func TestNamesAreText(t *testing.T) {
	b, err := page.Sheet(planned(t, "infield"), page.Options{Person: "odd"})
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(b), "Odd-Even &lt;&amp; “crew”&gt;") {
		t.Error("the name is not escaped as it should be")
	}
}

func TestProgramWithoutSiteIsRefused(t *testing.T) {
	p := *planned(t, "garden")
	p.Site = nil
	if _, err := page.Sheet(&p, page.Options{}); err == nil {
		t.Error("a program without a site has no year to draw")
	}
}

// However the steps of a visit's jobs are shared, nothing is watered in before it is
// spread.
func TestNothingIsWateredInBeforeItIsSpread(t *testing.T) {
	several := 0
	for _, name := range []string{"reading-garden", "shore-lawn"} {
		p := plan(t, "../../examples/"+name+"/site.toml")
		for i := 1; i < len(p.Entries); i++ {
			e := &p.Entries[i]
			if e.Dose.Rate <= 0 || e.Date != p.Entries[i-1].Date {
				continue
			}
			b, err := page.Sheet(p, page.Options{Today: e.Date})
			if err != nil {
				t.Fatal(err)
			}
			text := section(t, b, "next")
			spread, water := strings.Index(text, "Set the spreader"), strings.Index(text, "Water in")
			if spread < 0 || water < 0 {
				continue
			}
			several++
			if water < spread {
				t.Errorf("%s, %s: %s", name, e.Date, text)
			}
		}
	}
	if several < 4 {
		t.Errorf("only %d visits of several jobs", several)
	}
}

// A sheet says on which day what is due can be done, and what waits longer.
func TestSheetSaysTheNextGoodDay(t *testing.T) {
	p, found := planned(t, "garden"), 0
	for d := p.Start; !d.After(p.Through); d = d.AddDays(21) {
		first := schedule.Date{}
		for _, e := range p.AsOf(d).Entries {
			if e.State == schedule.Due && !e.GoodDay.IsZero() && !e.Kind.Notice() && (first.IsZero() || e.GoodDay.Before(first)) {
				first = e.GoodDay
			}
		}
		b, err := page.Sheet(p, page.Options{Today: d})
		if err != nil {
			t.Fatal(err)
		}
		got, want := section(t, b, "next"), "next good day "+first.Weekday().String()[:3]+" "+first.DayMonth()
		if first.IsZero() {
			if strings.Contains(got, "next good day") {
				t.Errorf("%s: nothing is due: %s", d, got)
			}
			continue
		}
		if found++; !strings.Contains(got, want) {
			t.Errorf("%s: no %q: %s", d, want, got)
		}
	}
	if found < 2 {
		t.Errorf("something was due on %d days only", found)
	}
}

// Two starters on two areas and a potassium wait together: each kind's steps stand in
// the order in which one takes them, what is to be bought is to be bought now, and each
// material is known by the numbers on its bag.
func TestSeveralDueJobsInTheirTurn(t *testing.T) {
	p := plan(t, "../../examples/reading-garden/site.toml")
	b, err := page.Sheet(p, page.Options{Today: schedule.Date{Year: 2026, Month: 9, Day: 21}})
	if err != nil {
		t.Fatal(err)
	}
	next := section(t, b, "next")
	wants(t, "due", next, "Due now the first since Wed 16 Sep: 3 jobs", "11 lb (0.4 pack of 25 lb)", "starter 18-24-12", "Rain. If 1 in or more", "Rain (Starter).")
	rest := next
	for _, step := range []string{"Unmarked dial?", "Starter. Set the spreader", "Starter, East lawn. Edges", "100 sq ft.", "Starter, West lawn. Edges", "Starter. Water in", "Potassium. Set the spreader", "Water in"} {
		before, after, ok := strings.Cut(rest, step)
		if !ok {
			t.Fatalf("%q does not follow: %s", step, before)
		}
		rest = after
	}
	ask := section(t, b, "ask")
	wants(t, "to buy", ask, "Now: 1 pack (25 lb) of starter 18-24-12 (0.6 pack in the shed); 1 pack (5 lb) of potassium sulfate 0-0-50.", "By 17 Oct 2026: 3 packs (5 lb) of", "Enough in the shed: pelletized limestone.")
	if strings.Contains(ask, "By 16 Sep") {
		t.Errorf("to be bought on a day that is past: %s", ask)
	}
	wants(t, "dates", section(t, b, "dates"), "Feed, East lawn 18-24-127.2 lb", "Feed, West lawn 21-0-03.3 lb", "Lime, East lawn pelletized60 lb", "Lime, East lawn dolomitic75 lb")
}

// Where due jobs have different good days, each later day is printed with the jobs that
// it is for.
func TestSheetSaysEachGoodDay(t *testing.T) {
	found := 0
	for _, name := range []string{"reading-garden", "shore-lawn", "infield"} {
		p := plan(t, "../../examples/"+name+"/site.toml")
		for d := p.Start; !d.After(p.Through) && found < 3; d = d.AddDays(3) {
			var good []schedule.Date
			for _, e := range p.AsOf(d).Entries {
				if e.State == schedule.Due && !e.GoodDay.IsZero() && !e.Kind.Notice() && !slices.Contains(good, e.GoodDay) {
					good = append(good, e.GoodDay)
				}
			}
			if len(good) < 2 {
				continue
			}
			found++
			slices.SortFunc(good, schedule.Date.Compare)
			b, err := page.Sheet(p, page.Options{Today: d})
			if err != nil {
				t.Fatal(err)
			}
			got := section(t, b, "next")
			_, rest, ok := strings.Cut(got, "; next good day "+good[0].Time().Format("Mon 2 Jan"))
			if !ok {
				t.Fatalf("%s, %s: no first good day: %.200s", name, d, got)
			}
			for _, day := range good[1:] {
				before, after, ok := strings.Cut(rest, " "+day.Time().Format("Mon 2 Jan"))
				if rest = after; !ok || !strings.HasPrefix(before, ", for ") || len(before) > 80 {
					t.Errorf("%s, %s: the good day %s is not told: %.200s", name, d, day, got)
				}
			}
		}
	}
	if found == 0 {
		t.Error("no due jobs with different good days")
	}
}

// What is taken as done is not bought any more.
func TestNothingIsBoughtForThePast(t *testing.T) {
	p := plan(t, "../../examples/reading-garden/site.toml")
	b, err := page.Sheet(p, page.Options{Today: schedule.Date{Year: 2026, Month: 12, Day: 1}})
	if err != nil {
		t.Fatal(err)
	}
	if ask := section(t, b, "ask"); strings.Contains(ask, "Now:") || !strings.Contains(ask, "By 14 Apr 2027:") {
		t.Error(ask)
	}
}
