package schedule

import (
	"slices"
	"strings"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/climate"
)

func on(t *testing.T, text string) Date {
	t.Helper()
	d, err := ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// TestCellsKinds pins the table of kinds, row by row, the most important first:
// our own order and weights, common practice.
func TestCellsKinds(t *testing.T) {
	rows := []struct {
		name, noun, verb, category string
		does                       Doing
		weight                     float64
		nutrient                   string
		feeds                      bool
		things                     nutrient.Things
		last                       nutrient.LastKind
		answers                    string
	}{
		{"soil-test", "soil sample", "Sample soil", "Sample", Samples, 1, "", false, nutrient.SampleTaken, nutrient.LastSample, ""},
		{"sow", "sow", "Sow", "Sow", Sows, 4, "", false, 0, nutrient.LastSeed, ""},
		{"overseed", "overseeding", "Overseed", "Overseed", Sows, 4, "", false, 0, nutrient.LastSeed, ""},
		{"starter", "starter", "Starter for", "Starter", Spreads, 3, "", true, 0, nutrient.LastSolubleN, ""},
		{"lime", "lime", "Lime", "Lime", Spreads, 2, "", false, 0, nutrient.LastLime, "ph"},
		{"gypsum", "gypsum", "Gypsum on", "Gypsum", Spreads, 1, "", false, 0, "", ""},
		{"sulfur", "sulfur", "Sulfur on", "Sulfur", Spreads, 1, "", false, 0, nutrient.LastSulfur, "ph"},
		{"phosphorus", "phosphorus", "Phosphorus on", "Phosphorus", Spreads, 2, "P₂O₅", false, nutrient.PhosphorusDown, nutrient.LastPhosphorus, "phosphorus"},
		{"nitrogen", "nitrogen", "Feed", "Nitrogen", Spreads, 2, "", true, 0, nutrient.LastSolubleN, "nitrogen"},
		{"late-nitrogen", "late nitrogen", "Late feed", "Nitrogen", Spreads, 2, "", true, 0, nutrient.LastSolubleN, ""},
		{"potassium", "potassium", "Potassium on", "Potassium", Spreads, 1.5, "K₂O", false, nutrient.PotassiumDown, nutrient.LastPotassium, "potassium"},
		{"magnesium", "magnesium", "Magnesium on", "Magnesium", Spreads, 1, "Mg", false, 0, nutrient.LastMagnesium, "magnesium"},
		{"iron", "iron", "Iron on", "Iron", Spreads, 1, "", false, 0, "", ""},
		{"last-safe", "last safe day", "", "Season", Tells, 1, "", false, 0, "", ""},
		{"reopen", "ground open again", "", "Season", Tells, 1, "", false, 0, "", ""},
	}
	if len(Kinds()) != len(rows) {
		t.Fatalf("%d kinds, want %d", len(Kinds()), len(rows))
	}
	for rank, k := range Kinds() {
		want := rows[rank]
		r := k.Of()
		if k.String() != want.name || k.Noun() != want.noun || r.Verb != want.verb || k.Category() != want.category || r.Does != want.does || r.Weight != want.weight ||
			k.Nutrient() != want.nutrient || k.Feeds() != want.feeds || r.Things != want.things || r.Last != want.last || r.Answers != want.answers || Kinds().Rank(k) != rank ||
			k.Spreads() != (want.does == Spreads) || k.Sows() != (want.does == Sows) || k.Samples() != (want.does == Samples) || k.Notice() != (want.does == Tells) {
			t.Errorf("%d: %+v, want %+v", rank, *r, want)
		}
	}
	if k, ok := KindNamed("mow"); ok || k.String() != "" || k.Spreads() != (noKind.Does == Spreads) {
		t.Error("mowing is a kind")
	}
	if Units(0.5) != 500_000 || Units(1.0000004) != 1_000_000 || LeaveOut(19) != 1_000_000_000 || LeaveOut(18) != 2_200_000_000 || LeaveOut(17) != 4_840_000_000 {
		t.Error("a cost of 1 is a million steps; leaving out costs 1000, and 2.2 times as much a rank")
	}
	table := (&Program{}).Kinds()
	own := (&Program{Table: KindTable{Lime}}).Kinds()
	if len(table) != len(rows) || len(own) != 1 || own[0] != Lime {
		t.Errorf("%v, %v", table, own)
	}
}

// Days as the calendar has them; text forms; spans.
func TestCellsDates(t *testing.T) {
	d := on(t, "2026-09-12")
	for got, want := range map[string]string{
		d.Words(): "Sat 12 Sep 2026", d.Short(): "12 Sep 2026", d.DayMonth(): "12 Sep", d.Next().String(): "2026-09-13", on(t, "2026-02-28").Next().String(): "2026-03-01", on(t, "2028-02-28").Next().String(): "2028-02-29",
		on(t, "2026-02-27").Next().String(): "2026-02-28", on(t, "2026-12-31").Next().String(): "2027-01-01", (Date{}).String() + "unset": "unset", d.AddDays(-12).String(): "2026-08-31", on(t, "2024-03-01").AddDays(-1).String(): "2024-02-29",
		(Date{999, 5, 3}).Short(): "3 May 0999", (Date{1000, 5, 3}).Short(): "3 May 1000", d.OnDay(255).String(): "2026-09-12", d.OnDay(254).String(): "2027-09-11", d.AddMonths(18).String(): "2028-03-12",
		Later(d, d.Next()).String(): "2026-09-13", Later(d.Next(), d).String() + " ": "2026-09-13 ", Earlier(d, d.Next()).String() + "  ": "2026-09-12  ", Earlier(d.Next(), d).String() + "   ": "2026-09-12   ",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if d.Weekday() != time.Saturday || d.Time() != time.Date(2026, 9, 12, 0, 0, 0, 0, time.UTC) || d.DaysFrom(on(t, "2025-09-12")) != 365 || on(t, "2024-12-31").DaysFrom(on(t, "2023-12-31")) != 366 {
		t.Error("weekday, midnight, days of a year")
	}
	if d.Compare(d) != 0 || d.Compare(d.Next()) >= 0 || d.Next().Compare(d) <= 0 || d.Before(d) || d.After(d) || !d.Before(d.Next()) || !d.Next().After(d) || !on(t, "2026-12-31").Before(on(t, "2027-01-01")) || !on(t, "2026-01-31").Before(on(t, "2026-02-01")) {
		t.Error("days in order")
	}
	for n := -3; n < 800_000; n += 137 {
		if FromNumber(n).Number() != n {
			t.Fatalf("day %d comes back as %d", n, FromNumber(n).Number())
		}
	}
	s := Span{d, d.AddDays(2)}
	if s.Days() != 3 || !s.Has(d) || !s.Has(d.AddDays(2)) || s.Has(d.AddDays(-1)) || s.Has(d.AddDays(3)) || (Span{d, d.AddDays(-1)}).Days() != 0 {
		t.Errorf("%+v", s)
	}
	var u Date
	if err := u.UnmarshalText([]byte("2026-09-12")); err != nil || u != d {
		t.Errorf("%v, %v", u, err)
	}
	if err := u.UnmarshalText(nil); err != nil || !u.IsZero() {
		t.Errorf("%v, %v", u, err)
	}
	u = d
	if err := u.UnmarshalText([]byte("x")); err == nil || u != d {
		t.Errorf("%v, %v", u, err)
	}
}

// Openings met, cut and made into the windows of a job.
func TestCellsWindows(t *testing.T) {
	day := func(n int) Date { return on(t, "2026-09-01").AddDays(n) }
	open := func(from, to int, name string) Opening {
		return Opening{Span{day(from), day(to)}, name + " opens", name + " closes"}
	}
	got := Meet([]Opening{open(0, 10, "a"), open(20, 30, "b")}, []Opening{open(5, 25, "x"), open(30, 30, "y"), open(31, 40, "z")})
	want := []Opening{{Span{day(5), day(10)}, "x opens", "a closes"}, {Span{day(20), day(25)}, "b opens", "x closes"}, {Span{day(30), day(30)}, "y opens", "b closes"}}
	if !slices.Equal(got, want) {
		t.Errorf("met: %+v", got)
	}
	if got := From([]Opening{open(0, 10, "a"), open(20, 30, "b")}, day(5), "because"); !slices.Equal(got, []Opening{{Span{day(5), day(10)}, "because", "a closes"}, open(20, 30, "b")}) {
		t.Errorf("from day 5: %+v", got)
	}
	sorted := []Opening{open(3, 9, "c"), open(3, 4, "b"), open(1, 30, "a")}
	SortOpenings(sorted)
	if sorted[0].Opens != "a opens" || sorted[1].Opens != "b opens" || sorted[2].Opens != "c opens" {
		t.Errorf("sorted: %+v", sorted)
	}
	year, err := climate.Place{State: "OH", Hardiness: "6a"}.Year()
	if err != nil {
		t.Fatal(err)
	}
	c := &Case{Site: &Site{Start: day(0)}, Begins: day(0), Start: day(0), Opens: "start of the program", Through: day(100), Year: 2026, Almanac: NewAlmanac(year, day(0), day(100))}
	windows := func(os ...Opening) ([]Window, Date) { return c.Windows(os, Soonest) }
	ws, next := windows(open(-20, 5, "a"), open(10, 200, "b"), open(90, 99, "c"), open(101, 120, "d"))
	if len(ws) != 3 || next != day(101) {
		t.Fatalf("%+v, next %s", ws, next)
	}
	for i, want := range []Window{
		{Span{day(0), day(5)}, day(0), "start of the program", "a closes", "", day(5)},
		{Span{day(10), day(100)}, day(10), "b opens", "the season ends", "no room in the window of 1 Sep 2026 to 6 Sep 2026", day(200)},
		{Span{day(90), day(99)}, day(90), "c opens", "c closes", "no room in the window of 11 Sep 2026 to 10 Dec 2026", day(99)},
	} {
		if ws[i] != want {
			t.Errorf("window %d: %+v, want %+v", i, ws[i], want)
		}
	}
	// A window that closed before the season is not told to have been missed.
	for closed, told := range map[int]bool{-1: true, -20: true, -74: false, -300: false} {
		ws, _ := windows(open(-400, closed, "a"), open(50, 60, "b"))
		if len(ws) != 1 || (ws[0].Carried != "") != told || told && !strings.HasPrefix(ws[0].Carried, "too late for the window that closed on ") {
			t.Errorf("closed on day %d: %+v", closed, ws)
		}
	}
	for to, last := range map[int]bool{100 + 999: true, 100 + 1000: false} {
		ws, _ := windows(open(0, to, "a"))
		if (!ws[0].Last.IsZero()) != last {
			t.Errorf("an opening to day %d has a last day %v", to, ws[0].Last)
		}
	}
	for wish, best := range map[int]int{-5: 0, 3: 3, 50: 5} {
		ws, _ := c.Windows([]Opening{open(-20, 5, "a")}, At(day(wish)))
		if ws[0].Ideal != day(best) {
			t.Errorf("a wish for day %d: %s, want day %d", wish, ws[0].Ideal, best)
		}
	}
	if ws, next := windows(open(200, 210, "a")); len(ws) != 0 || next != day(200) {
		t.Errorf("%+v, next %s", ws, next)
	}
	j := Job{Windows: []Window{{Span: Span{day(0), day(5)}}, {Span: Span{day(10), day(20)}}}, On: day(12)}
	if j.Window() != j.Windows[1] || j.FirstDay() != day(0) && j.FirstDay() != day(12) {
		t.Errorf("%+v, first day %s", j.Window(), j.FirstDay())
	}
	j.On = day(7)
	if j.Window() != j.Windows[0] {
		t.Errorf("%+v", j.Window())
	}
	j.Windows = nil
	if w := j.Window(); w.From != day(7) || w.To != day(7) || w.Ideal != day(7) {
		t.Errorf("%+v", w)
	}
	for w, want := range map[Window]string{{Opens: "a", Closes: "b"}: "opens: a; closes: b", {Opens: "a", Closes: "a"}: "a", {Closes: "b"}: ""} {
		if got := WindowWords(w); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// What is worth a job, and what a dose counts as for spacing.
func TestCellsDoses(t *testing.T) {
	for left, worth := range map[agronomy.PerThousand]bool{0: false, 0.1: false, 0.1 + 5e-7: false, 0.1 + 2e-6: true, 1: true} {
		if WorthJob(left) != worth {
			t.Errorf("%v lb is worth a job %v", left, !worth)
		}
	}
	for _, c := range [][3]agronomy.PerThousand{{1, 0.25, 0.75}, {1, 1, 0}, {1, 1.5, 0}, {1, 1 - 5e-7, 0}} {
		if got := Remains(c[0], c[1]); got != c[2] {
			t.Errorf("%v less %v: %v", c[0], c[1], got)
		}
	}
	if LeastDose != 0.1 || Dust != 1e-6 || MostKAtOnce != 1 || QuickDays != 30 || LastOf12 != 364 || Unlimited < 100 || CarryCost != 10 || TitleLength != 40 {
		t.Error("a figure of the rules has changed")
	}
	blend := material.Material{Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 20, P2O5: 5, K2O: 10}}
	n := nutrient.SolubleNDown | nutrient.AmmoniumDown
	for _, c := range []struct {
		k    Kind
		rate agronomy.PerThousand
		want nutrient.Things
	}{
		{Nitrogen, 5, n | nutrient.PhosphorusDown | nutrient.PotassiumDown}, {Nitrogen, 4.99, n}, // 0.25 lb P2O5, 0.5 lb K2O
		{Phosphorus, 1, n | nutrient.PhosphorusDown}, {Potassium, 1, n | nutrient.PotassiumDown}, {Nitrogen, 0, 0}, {SoilTest, 0, nutrient.SampleTaken}, {LastSafe, 0, 0},
	} {
		j := Job{Kind: c.k, Dose: material.DoseOf(blend, c.rate)}
		if got := j.Things(); got != c.want {
			t.Errorf("%s of %v lb counts as %s, want %s", c.k, c.rate, got, c.want)
		}
	}
	ahead := Job{Kind: Lime, Dose: material.DoseOf(material.Material{Kind: material.LimeMaterial}, 40)}
	if !ahead.Ahead() || !ahead.Spreads() {
		t.Error("a dressing to come is ahead")
	}
	if ahead.On = on(t, "2026-09-01"); ahead.Ahead() {
		t.Error("a dressing that is down is ahead")
	}
	bare := &Site{}
	if got := bare.EffectiveLime(&Area{}, material.DoseOf(material.Material{Kind: material.LimeMaterial, ECCE: 80}, 50)); got != 40 {
		t.Errorf("50 lb at 80 %%: %v", got)
	}
	if got := bare.EffectiveLime(&Area{}, material.DoseOf(blend, 5)); got != 0 {
		t.Errorf("a blend limes: %v", got)
	}
	sulfur := material.DoseOf(material.Material{Kind: material.SulfurMaterial, Sulfur: 90}, 5)
	if a, b := SulfurOf(&Down{Kind: Sulfur, Dose: sulfur}), SulfurOf(&Down{Kind: Potassium, Dose: sulfur}); a != 4.5 || b != 0 {
		t.Errorf("sulfur: %v, %v", a, b)
	}
}

// Names in the record book, and ids that no two have.
func TestCellsNames(t *testing.T) {
	for text, want := range map[string]struct {
		area string
		k    Kind
		n    int
	}{"lime": {"", Lime, 0}, "lime/1": {"", Lime, 1}, "east/lime/12": {"east", Lime, 12}, "east/late-nitrogen/1": {"east", LateNitrogen, 1}} {
		if area, k, _, n, err := JobName(text); err != nil || area != want.area || k != want.k || n != want.n {
			t.Errorf("%s: %s %s %d (%v)", text, area, k, n, err)
		}
	}
	for text, says := range map[string]string{"": "unknown kind", "mow": `unknown kind of job "mow"`, "lime/0": "has no season and number", "lime/x": "write it as lime/2026-1", "a/b/lime/1": "is no job", "east/lime/": "has no season and number", "east/mow/1": "unknown kind"} {
		if _, _, _, _, err := JobName(text); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v, want %q", text, err, says)
		}
	}
	p := &Program{Entries: []Entry{{ID: "a/lime/2026-1", Area: "a", State: Planned}, {ID: "a/lime/2026-2", Area: "a", State: Finished}, {ID: "b/lime/2026-1", Area: "b", State: Planned}, {ID: "site/last-safe/2026-1"}, {ID: "a/nitrogen/2026-1", Area: "a", State: Planned}},
		LeftOut: []LeftOut{{ID: "a/lime/2026-2", Area: "a", Kind: Lime}, {ID: "a/lime/2026-5", Area: "a", Kind: Lime}, {ID: "a/lime/2026-5", Area: "a", Kind: Lime}, {ID: "site/last-safe/2026-1", Kind: LastSafe}}}
	p.OwnIDs()
	var ids []string
	for _, l := range p.LeftOut {
		ids = append(ids, l.ID)
	}
	if got := strings.Join(ids, " "); got != "a/lime/2026-3 a/lime/2026-5 a/lime/2026-6 site/last-safe/2026-2" {
		t.Error(got)
	}
	p.NextJobs()
	var next []string
	for _, e := range p.Entries {
		next = append(next, e.Next)
	}
	if got := strings.Join(next, ","); got != "a/nitrogen/2026-1,a/nitrogen/2026-1,,," {
		t.Error(got)
	}
	s := &Site{Crew: Crew{Who: []Assignment{{"lime", "mara"}, {"east", "teo"}, {"lime", "finn"}}, People: []Person{{ID: "mara", Name: "Mara"}}}}
	for id, want := range map[string]string{"west/lime/2026-1": "mara", "east/lime/2026-1": "teo", "east/nitrogen/2026-1": "teo", "west/nitrogen/2026-1": "", "site/lime/2026-1": "mara", "site/last-safe/2026-1": ""} {
		if got := s.Who(id); got != want {
			t.Errorf("%s is %q's, want %q", id, got, want)
		}
	}
	if s.PersonName("mara") != "Mara" || s.PersonName("teo") != "teo" {
		t.Error("a person without a name has the id")
	}
	if got := strings.Join(Unique([]string{"a", "b", "a"}), ""); got != "ab" {
		t.Error(got)
	}
	if FirstText(nil) != "none fits" || FirstText([]Reason{{Text: "x"}, {Text: "y"}}) != "x" {
		t.Error("the first reason")
	}
	if got := MostBlocks(map[string]int{"b": 2, "a": 2, "c": 9}); got != "c; a; b" {
		t.Error(got)
	}
}

// The shed draws down, and the list of what to buy is worked by hand: 3 packs on
// hand, jobs of 2, 2 and 1.5 packs, 7.25 a pack: the second job runs short, three
// packs are bought for 21.75, half a pack is left.
func TestCellsSupplies(t *testing.T) {
	stone := material.Material{ID: "stone", Name: "limestone", Kind: material.LimeMaterial, Pack: 40, OnHand: 3, Price: 7.25}
	idle := material.Material{ID: "idle", Kind: material.FertilizerMaterial, Pack: 25, OnHand: 1}
	weed := material.Material{ID: "weed", Kind: material.FertilizerMaterial, Pack: 25, OnHand: 1, Pesticide: true}
	loose := material.Material{ID: "loose", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 20}}
	site := &Site{Start: on(t, "2026-09-01"), Areas: []Area{{ID: "a", Size: 2000}}, Materials: []material.Material{stone, idle, weed, loose}}
	entry := func(id, date string, m material.Material, lb agronomy.Pounds) Entry {
		packs, _ := m.PacksFor(lb)
		return Entry{ID: id, Date: on(t, date), Kind: Lime, AreaName: "East", Material: m.ID, Dose: material.DoseOf(m, 10), Pounds: lb, Packs: packs, State: Planned}
	}
	urea := material.TradeMaterials()[0]
	p := &Program{Site: site, Entries: []Entry{entry("a/lime/1", "2026-09-10", stone, 80), entry("a/lime/2", "2027-03-10", stone, 80), entry("a/lime/3", "2027-09-10", stone, 60), entry("a/nitrogen/1", "2026-10-01", urea, 25), entry("a/nitrogen/2", "2026-10-01", loose, 5), {ID: "a/soil-test/1"}}}
	got := p.Supplies()
	if len(got) != 5 {
		t.Fatalf("%d supplies", len(got))
	}
	s := got[0]
	if s.Material != "stone" || s.Name != "limestone" || s.Pounds != 220 || s.Packs != 5.5 || s.PackSize != "40 lb" || s.OnHand != 3 || s.Buy != 3 || s.By != on(t, "2027-03-10") || s.Cost != 21.75 || !s.Priced || s.Left != 0.5 || len(s.Uses) != 3 || s.Note != "" {
		t.Errorf("%+v", s)
	}
	if s := got[1]; s.Buy != 0 || s.Left != 1 || s.Note != "in the shed, not used by this program" {
		t.Errorf("%+v", s)
	}
	if s := got[2]; !strings.HasPrefix(s.Note, "never planned, for it kills") {
		t.Errorf("%+v", s)
	}
	if s := got[3]; s.Note != "the size of a pack is not given, so packs cannot be counted" || s.Buy != 0 {
		t.Errorf("%+v", s)
	}
	if s := got[4]; s.Material != "trade-urea" || s.Buy != 1 || s.Left != 0.5 || s.Note != "no price is given for urea 46-0-0" || s.Priced {
		t.Errorf("%+v", s)
	}
	p.TellSupplies()
	if got := strings.Join(p.InTheShed, "\n"); got != "If no more limestone is bought, it runs out at: lime on East, 10 Mar 2027; lime on East, 10 Sep 2027.\nIf no urea 46-0-0 is bought, this cannot be done: lime on East, 1 Oct 2026." {
		t.Error(got)
	}
	if steps := p.Entries[1].Steps; len(steps) != 1 || steps[0] != "Buy 3 packs of limestone first: the shed runs out." {
		t.Error(steps)
	}
	sh := NewShed(site, map[string]float64{"stone": 1})
	if len(sh.Stock()) != 3 || sh.Stock()[0].OnHand != 2 || len(sh.Trade()) != len(material.TradeMaterials()) || site.Materials[0].OnHand != 3 {
		t.Errorf("%+v", sh.Stock())
	}
	sh.Take(material.DoseOf(stone, 100), 2000)
	if sh.Stock()[0].OnHand != 0 {
		t.Errorf("%v packs left", sh.Stock()[0].OnHand)
	}
	if no := site.NotPlanned(); len(no) != 1 || !strings.HasPrefix(no[0], "weed: never planned, for it kills") {
		t.Error(no)
	}
}
