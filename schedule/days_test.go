package schedule

import (
	"maps"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/climate"
	"swardbook/schedule/law"
)

// caseIn is an established cool-season area in a place, over one year from
// 1 September 2026, whose every day is a workday on open ground.
func caseIn(t *testing.T, state, hardiness string, change func(*Site)) *Case {
	t.Helper()
	grass, ok := agronomy.LookupGrass("kentucky bluegrass")
	if !ok {
		t.Fatal("no bluegrass")
	}
	a := almanacOf(t, state, hardiness)
	site := &Site{ID: "s", Start: a.start, Through: a.through, Place: climate.Place{State: state, Hardiness: hardiness},
		Areas: []Area{{ID: "a", Name: "East", Size: 2000, Stand: agronomy.Stand{{Grass: grass, Percent: 100}}}}}
	if change != nil {
		change(site)
	}
	c := &Case{Site: site, Area: &site.Areas[0], Year: 2026, Begins: a.start, Start: a.start, Through: a.through, Almanac: a,
		Season: climate.Cool, Growth: a.GrowthOf(climate.Cool), Law: NewLaw(site), MostN: nutrient.LimitsOfNitrogen(climate.Cool)}
	c.Seeded = site.Areas[0].Seeded
	for d := a.start; !d.After(a.through); d = d.Next() {
		c.Days = append(c.Days, Workday{})
	}
	c.Asked = c.Question(Date{})
	return c
}

// feed is a job of so much of a blend; slow is the slow share of its nitrogen.
func feed(c *Case, analysis agronomy.Analysis, rate agronomy.PerThousand, slow float64) *Job {
	m := material.Material{ID: "m", Kind: material.FertilizerMaterial, Analysis: analysis, SlowShare: slow}
	return &Job{Kind: Nitrogen, Season: 2026, N: 1, Area: c.Area, Dose: material.DoseOf(m, rate)}
}

// Why a job may not be done on a day, the first reason that holds.
func TestAgainstADay(t *testing.T) {
	c := caseIn(t, "OH", "6a", func(s *Site) {
		s.Crew.People = []Person{{ID: "mara", Name: "Mara", Absent: []Span{{on(t, "2026-10-20"), on(t, "2026-10-28")}}}, {ID: "teo", Name: "Teo"}}
		s.Crew.Who = []Assignment{{"nitrogen", "mara"}, {"lime", "teo"}}
		s.Local = law.Local{NoNitrogen: []law.Span{{From: law.MonthDay{Month: 11, Day: 15}, To: law.MonthDay{Month: 3, Day: 1}}}, MaxN: 0.7, Note: "Borough ordinance"}
	})
	n := feed(c, agronomy.Analysis{N: 10}, 5, 0)
	lime := &Job{Kind: Lime, Area: c.Area, Dose: material.DoseOf(material.Material{Kind: material.LimeMaterial}, 40)}
	sample, sow, notice := &Job{Kind: SoilTest, Area: c.Area}, &Job{Kind: Sow, Area: c.Area}, &Job{Kind: LastSafe}
	shut, frozen := func(w *Workday) { w.Shut = "work days are Saturday" }, func(w *Workday) { w.Frozen = true }
	closed := "closed by law: "
	for _, x := range []struct {
		job  *Job
		day  string
		with func(*Workday)
		want string
	}{
		{n, "2026-10-19", nil, ""}, {n, "2026-10-20", nil, "Mara is away from 20 Oct 2026 to 28 Oct 2026"}, {n, "2026-10-28", nil, "Mara is away from 20 Oct 2026 to 28 Oct 2026"}, {n, "2026-10-29", nil, ""},
		{lime, "2026-10-20", nil, ""}, {sample, "2026-10-20", nil, ""},
		{n, "2026-10-01", shut, "work days are Saturday"}, {sow, "2026-10-01", shut, "work days are Saturday"}, {notice, "2026-10-01", shut, ""},
		{n, "2026-10-01", frozen, "the ground may be frozen"}, {sample, "2026-10-01", frozen, "the ground may be frozen"}, {sow, "2026-10-01", frozen, ""}, {notice, "2026-10-01", frozen, ""},
		{n, "2026-11-14", nil, ""}, {n, "2026-11-15", nil, closed}, {n, "2027-01-01", nil, closed}, {n, "2027-03-01", nil, closed}, {n, "2027-03-02", nil, ""},
		{lime, "2026-11-15", nil, ""}, {sample, "2026-11-15", nil, ""}, {sow, "2026-11-15", nil, ""},
		{feed(c, agronomy.Analysis{N: 10}, 7, 0), "2026-10-01", nil, ""}, {feed(c, agronomy.Analysis{N: 10}, 7.1, 0), "2026-10-01", nil, "more nitrogen than the law lets on that day: local rule given in the site file (Borough ordinance)"},
		{feed(c, agronomy.Analysis{K2O: 50}, 20, 0), "2026-11-15", nil, ""},
	} {
		day := Workday{}
		if x.with != nil {
			x.with(&day)
		}
		got := c.dayRules(x.job).against(on(t, x.day), &day)
		if got != x.want && !(x.want == closed && strings.HasPrefix(got, closed) && strings.HasSuffix(got, "(local rule given in the site file (Borough ordinance))")) {
			t.Errorf("%s on %s: %q, want %q", x.job.Kind, x.day, got, x.want)
		}
	}
}

// Heat keeps over half a pound of quick nitrogen away, and sulfur from normal
// highs of 75 °F. [common]
func TestAgainstHeat(t *testing.T) {
	c := caseIn(t, "GA", "8a", nil)
	from, to, ok := c.Almanac.Heat(climate.Cool)
	if !ok || from < 100 || to > 300 {
		t.Fatalf("heat from day %d to %d", from, to)
	}
	quick, half := feed(c, agronomy.Analysis{N: 10}, 5.1, 0), feed(c, agronomy.Analysis{N: 10}, 5, 0)
	slow := feed(c, agronomy.Analysis{N: 10}, 10, 0.5)
	first, last := on(t, "2027-01-01").OnDay(from), on(t, "2027-01-01").OnDay(to)
	for d, hot := range map[Date]bool{first.AddDays(-1): false, first: true, last: true, last.AddDays(1): false} {
		if got := c.dayRules(quick).against(d, &Workday{}); (got == "normal highs pass 85 °F, too hot for so much quick nitrogen") != hot {
			t.Errorf("0.51 lb of quick nitrogen on %s: %q", d, got)
		}
		for _, j := range []*Job{half, slow} {
			if got := c.dayRules(j).against(d, &Workday{}); got != "" {
				t.Errorf("half a pound of quick nitrogen on %s: %q", d, got)
			}
		}
	}
	r := dayRules{heatFrom: 350, heatTo: 20} // over the year's end
	for day, hot := range map[climate.Day]bool{349: false, 350: true, 365: true, 1: true, 20: true, 21: false, 200: false} {
		if r.hot(on(t, "2027-01-01").OnDay(day)) != hot {
			t.Errorf("day %d is hot %v", day, !hot)
		}
	}
	if (&dayRules{}).hot(on(t, "2027-07-15")) {
		t.Error("no heat is heat")
	}
	sulfur := &Job{Kind: Sulfur, Area: c.Area, Dose: material.DoseOf(material.Material{Kind: material.SulfurMaterial, Sulfur: 90}, 5)}
	for d := on(t, "2027-03-01"); d.Before(on(t, "2027-07-01")); d = d.Next() {
		hot := c.Almanac.High(d.DayOfYear()) >= 75
		if got := c.dayRules(sulfur).against(d, &Workday{}); (got == "normal highs pass 75 °F, too hot for sulfur") != hot || !hot && got != "" {
			t.Errorf("sulfur on %s at %v °F: %q", d, c.Almanac.High(d.DayOfYear()), got)
		}
	}
}

// New Jersey lets phosphorus go down on an established lawn only where a report
// not over three years old asks for it. [N.J.S.A. 58:10A-61 ff.]
func TestAgainstOldReports(t *testing.T) {
	c := caseIn(t, "NJ", "7a", func(s *Site) {
		s.Areas[0].Soil, s.Areas[0].Sampled = &agronomy.Report{}, on(t, "2023-12-10")
	})
	c.NeedP.Year = 1
	c.Asked = c.Question(Date{})
	p := feed(c, agronomy.Analysis{P2O5: 46}, 1, 0)
	r := c.dayRules(p)
	for d, open := range map[string]bool{"2026-11-01": true, "2026-11-09": true, "2027-03-20": false, "2027-04-20": false} {
		got := r.against(on(t, d), &Workday{})
		if (got == "") != open {
			t.Errorf("phosphorus on %s: %q", d, got)
		}
		if again := r.against(on(t, d), &Workday{}); again != got {
			t.Errorf("asked again: %q", again)
		}
	}
	if got := r.phosphorusOn(on(t, "2027-04-20")); !strings.HasPrefix(got, "the law here ") || len(r.aged) == 0 {
		t.Errorf("%q, remembered %v", got, r.aged)
	}
	c.Law.Rules = nil
	if got := c.dayRules(p).against(on(t, "2027-04-20"), &Workday{}); got != "" {
		t.Errorf("without a law: %q", got)
	}
}

// The cost of a day is the weight times the square of its share of the window,
// and 10 for each window passed over; at most 900 and so much.
func TestCandidatesByHand(t *testing.T) {
	c := caseIn(t, "OH", "6a", nil)
	day := func(n int) Date { return c.Start.AddDays(n) }
	j := &Job{Kind: Lime, Area: c.Area, Dose: material.DoseOf(material.Material{Kind: material.LimeMaterial}, 40),
		Windows: []Window{{Span: Span{day(0), day(9)}, Ideal: day(3)}, {Span: Span{day(9), day(13)}, Ideal: day(11)}, {Span: Span{day(20), day(20)}, Ideal: day(20)}}}
	c.Days[2].Shut, c.Days[3].Shut, c.Days[5].Frozen, c.Days[6].Shut = "x", "x", true, "x"
	days, cost, blocked := c.Candidates(j)
	off := map[int]float64{0: 9. / 100, 1: 4. / 100, 4: 1. / 100, 7: 16. / 100, 8: 25. / 100, 9: 36. / 100}
	want := map[int]float64{}
	for n, share := range off {
		want[n] = 2 * share // the weight of lime
	}
	for n, d := range map[int]float64{10: 1, 11: 0, 12: 1, 13: 4} {
		want[n] = 10 + 2*d/25
	}
	want[20] = 20
	if len(days) != len(want) {
		t.Errorf("%d days, want %d", len(days), len(want))
	}
	for i, n := range days {
		share, ok := want[n-c.Start.Number()]
		if !ok || cost[i] != Units(share) {
			t.Errorf("day %d costs %d, want %d", n-c.Start.Number(), cost[i], Units(share))
		}
	}
	if !maps.Equal(blocked, map[string]int{"x": 3, "the ground may be frozen": 1}) {
		t.Errorf("shut by %v", blocked)
	}
	// A day far from the ideal one of a short window costs no more than 900.
	j.Kind, j.Windows = Sow, []Window{{Span: Span{day(30), day(30)}, Ideal: day(60)}}
	if _, cost, _ := c.Candidates(j); cost[0] != Units(900) {
		t.Errorf("a far day costs %d", cost[0])
	}
	j.Windows[0].Ideal = day(29)
	if _, cost, _ := c.Candidates(j); cost[0] != Units(4) {
		t.Errorf("the day after a window's ideal costs %d", cost[0])
	}
	// Blocked days at the end are counted too.
	c.Days[30].Shut = "y"
	if days, _, blocked := c.Candidates(j); len(days) != 0 || blocked["y"] != 1 {
		t.Errorf("%v, %v", days, blocked)
	}
}

func TestNearBlocks(t *testing.T) {
	c := caseIn(t, "OH", "6a", nil)
	j := &Job{Kind: SoilTest, Area: c.Area}
	for n, why := range map[int]string{8: "before", 10: "ideal", 11: "after", 12: "after", 13: "late"} {
		c.Days[n].Shut = why
	}
	w := Window{Span: Span{c.Start, c.Start.AddDays(20)}, Ideal: c.Start.AddDays(10)}
	for n, want := range map[int]string{7: "ideal before", 9: "ideal", 14: "ideal after late", 12: "ideal after", 10: ""} {
		if got := strings.Join(c.NearBlocks(j, w, c.Start.AddDays(n)), " "); got != want {
			t.Errorf("day %d: %q, want %q", n, got, want)
		}
	}
}
