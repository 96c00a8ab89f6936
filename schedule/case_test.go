package schedule

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/climate"
	"swardbook/schedule/law"
	"swardbook/schedule/word"
)

// A stand is to be sown until its day, then young for twelve months; it is up when
// most of the grass with the largest part is, the middle of its days [common], and
// stands a first mowing two weeks later.
func TestAgeOfAStand(t *testing.T) {
	c := caseIn(t, "OH", "6a", nil)
	if c.Future() || c.Young(c.Start) || !c.Emerged().IsZero() || len(c.Open()) != len(c.Almanac.Open) {
		t.Error("an established stand is young")
	}
	c = caseIn(t, "OH", "6a", func(s *Site) { s.Areas[0].Seeded = on(t, "2026-09-01") })
	rye, _ := agronomy.LookupGrass("perennial ryegrass")
	c.Area.Stand = append(c.Area.Stand, agronomy.Share{Grass: rye, Percent: 50})
	if c.Area.Stand[0].Grass.EmergeDays != [2]int{14, 28} || c.Area.Stand[0].Percent <= 50 {
		t.Fatal("bluegrass, the larger part, is up 14 to 28 days after sowing")
	}
	const mostUp = 21
	if up := c.Emerged(); up != on(t, "2026-09-01").AddDays(mostUp) {
		t.Errorf("up on %s", up)
	}
	if !c.Future() {
		t.Error("a sowing on the first day is to come")
	}
	for day, young := range map[string]bool{"2026-08-31": false, "2026-09-01": true, "2027-08-31": true, "2027-09-01": false} {
		if c.Young(on(t, day)) != young {
			t.Errorf("on %s young is %v", day, !young)
		}
	}
	first := on(t, "2026-09-01").AddDays(mostUp + 14)
	if open := c.Open(); open[0].From != first || open[0].Opens != "the seedlings stand a first mowing" || !slices.Equal(c.Open(), open) {
		t.Errorf("opens on %+v, want %s", open[0], first)
	}
	c.Start, c.opened = first, nil // it stood its mowing before the program
	if open := c.Open(); !slices.Equal(open, c.Almanac.Open) || c.Future() {
		t.Errorf("opens on %+v", open[0])
	}
}

// What is down keeps its number, and counts from a day on; what was missed is
// tried again the day after.
func TestWhatIsDown(t *testing.T) {
	c := caseIn(t, "OH", "6a", nil)
	line := func(day string, k Kind, season, n int, notDone bool) Down {
		return Down{Done: Done{Date: on(t, day)}, AreaID: "a", Kind: k, Season: season, N: n, NotDone: notDone, Dose: material.DoseOf(material.Material{Kind: material.LimeMaterial, ECCE: 100}, 10)}
	}
	c.Down = []Down{line("2025-10-01", Lime, 2025, 1, false), line("2026-09-05", Lime, 2026, 2, false), line("2026-09-08", Lime, 2026, 1, true), line("2026-09-20", Lime, 2026, 1, true), line("2026-10-01", Nitrogen, 2026, 1, false)}
	next := c.Number(Lime)
	if got := []int{next(), next(), next()}; !slices.Equal(got, []int{1, 3, 4}) {
		t.Errorf("numbers %v, want 1, 3, 4", got)
	}
	if next := c.Number(Nitrogen); next() != 2 {
		t.Error("the second nitrogen is number 2")
	}
	if got := c.ThisYear(); len(got) != 4 {
		t.Errorf("%d lines of the season", len(got))
	}
	for day, want := range map[string]agronomy.PerThousand{"2026-09-05": 20, "2026-09-06": 10, "2025-10-01": 30, "2026-10-02": 0} {
		if got := c.Since(on(t, day), func(d *Down) agronomy.PerThousand { return c.EffectiveLime(c.Area, d.Dose) }); got != want {
			t.Errorf("since %s: %v, want %v", day, got, want)
		}
	}
	if in := c.DownIn(Span{on(t, "2026-09-05"), on(t, "2026-09-20")}); len(in) != 3 || in[0].N != 2 {
		t.Errorf("%d lines in the span", len(in))
	}
	if got := []int{len(c.DownIn(Span{on(t, "2026-09-21"), on(t, "2026-09-01")})), len(c.DownOf(2025)), len(c.DownOf(2026)), len(c.DownOf(2027))}; !slices.Equal(got, []int{0, 1, 4, 0}) {
		t.Errorf("lines in no span, and in the turf years 2025 to 2027: %v", got)
	}
	if d, ok := c.NotBefore(Lime, 1); !ok || d != on(t, "2026-09-21") {
		t.Errorf("lime 1 again from %s, %v", d, ok)
	}
	for _, n := range []int{2, 3} {
		if d, ok := c.NotBefore(Lime, n); ok {
			t.Errorf("lime %d again from %s", n, d)
		}
	}
	if d, ok := c.NotBefore(Nitrogen, 1); ok {
		t.Errorf("nitrogen again from %s", d)
	}
	for days, want := range map[int]string{10: "2026-09-15", -10: "2026-09-01"} {
		if got := c.After(Lime, days); got != on(t, want) {
			t.Errorf("%d days after lime: %s, want %s", days, got, want)
		}
	}
}

// Three years make a report stale. [psu-report-notes] [vt-fall-2008]
func TestStale(t *testing.T) {
	for sampled, stale := range map[string]bool{"2023-09-01": true, "2023-09-02": false, "2020-01-01": true} {
		c := caseIn(t, "OH", "6a", func(s *Site) { s.Areas[0].Soil, s.Areas[0].Sampled = &agronomy.Report{}, on(t, sampled) })
		if why, is := c.Stale(); is != stale || is && why != "the report of "+on(t, sampled).Short()+" is more than three years old: a new sample comes first" {
			t.Errorf("sampled %s: %v, %q", sampled, is, why)
		}
		c.Area.Soil = nil
		if _, is := c.Stale(); is {
			t.Error("no report is stale")
		}
	}
	c := caseIn(t, "OH", "6a", func(s *Site) { s.Areas[0].Soil = &agronomy.Report{} })
	if _, is := c.Stale(); is {
		t.Error("a report without a day is stale")
	}
}

// The law is asked as the area stands: new or established, with what report.
func TestQuestion(t *testing.T) {
	c := caseIn(t, "MD", "7a", func(s *Site) { s.County = "Howard" })
	q := c.Question(Date{})
	if q.State != "MD" || q.County != "Howard" || q.Who != law.Homeowner || q.Grass != c.Area.Stand[0].Grass.Name || q.Turf != law.Established || q.Report != 0 ||
		q.SlowShare != law.Unknown || q.WaterFeet != law.Unknown || q.ReportAgeMonths != law.Unknown || q.Date != (law.MonthDay{}) {
		t.Errorf("%+v", q)
	}
	c.Crew.Paid, c.Seeded = true, on(t, "2026-04-01")
	c.Area.Soil, c.Area.Sampled = &agronomy.Report{}, on(t, "2026-01-15")
	q = c.Question(on(t, "2026-11-14"))
	if q.Who != law.Paid || q.Turf != law.New || q.Report != law.Enough || q.ReportAgeMonths != 9 || q.Date != (law.MonthDay{Month: 11, Day: 14}) {
		t.Errorf("%+v", q)
	}
	if q := c.Question(on(t, "2027-04-01")); q.Turf != law.Established {
		t.Errorf("a year old: %+v", q)
	}
	for year, want := range map[agronomy.PerThousand]law.Report{0: law.Enough, 0.5: law.Low} {
		if c.NeedP.Year = year; c.Question(Date{}).Report != want {
			t.Errorf("a need of %v lb: %v", year, c.Question(Date{}).Report)
		}
	}
	c.NoP = nutrient.ErrNoScale
	if q := c.Question(Date{}); q.Report != law.Enough || q.ReportAgeMonths != 7 {
		t.Errorf("no scale: %+v", q)
	}
	c.Area.Sampled = on(t, "2026-10-01") // after the day that is asked about
	if q := c.Question(Date{}); q.ReportAgeMonths != 0 {
		t.Errorf("%+v", q)
	}
}

// What the law says of ground, rain and paving is one sentence a citation.
func TestOfTheDay(t *testing.T) {
	c := caseIn(t, "NJ", "7a", nil)
	said := c.Law.OfTheDay(law.Nitrogen)
	if len(said) == 0 {
		t.Fatal("New Jersey says nothing of the day")
	}
	all := strings.Join(said, "\n")
	for _, part := range []string{"not on frozen", "not in heavy rain or before it", "nothing left on paving"} {
		if !strings.Contains(all, part) {
			t.Errorf("%q is missing in %s", part, all)
		}
	}
	cited := map[string]bool{}
	for _, s := range said {
		i := strings.LastIndex(s, " (")
		if !strings.HasPrefix(s, "By law ") || !strings.HasSuffix(s, ").") || cited[s[i:]] {
			t.Errorf("%q", s)
		}
		cited[s[i:]] = true
	}
	if again := c.Law.OfTheDay(law.Nitrogen); !slices.Equal(again, said) {
		t.Errorf("asked again: %v", again)
	}
	if len(NewLaw(&Site{Place: climate.Place{State: "XX"}}).Rules) != 0 {
		t.Error("a state that is none has rules")
	}
}

// What the law counts of a dose.
func TestNutrientsOfADose(t *testing.T) {
	blend := func(a agronomy.Analysis, kind material.Kind) material.Dose {
		return material.DoseOf(material.Material{Kind: kind, Analysis: a}, 5)
	}
	for _, c := range []struct {
		d    material.Dose
		want law.Nutrient
	}{
		{blend(agronomy.Analysis{N: 1}, material.FertilizerMaterial), law.Nitrogen}, {blend(agronomy.Analysis{P2O5: 1}, material.FertilizerMaterial), law.Phosphorus}, {blend(agronomy.Analysis{K2O: 1}, material.FertilizerMaterial), law.Potassium},
		{blend(agronomy.Analysis{N: 1, P2O5: 1, K2O: 1}, material.FertilizerMaterial), law.Nitrogen | law.Phosphorus | law.Potassium}, {blend(agronomy.Analysis{}, material.FertilizerMaterial), 0}, {blend(agronomy.Analysis{K2O: 5}, material.LimeMaterial), 0},
	} {
		if got := Nutrients(c.d); got != c.want {
			t.Errorf("%+v: %v, want %v", c.d.Material, got, c.want)
		}
	}
	c := caseIn(t, "NJ", "7a", nil)
	if got := c.closuresFor(blend(agronomy.Analysis{}, material.FertilizerMaterial)); got != nil {
		t.Errorf("nothing is closed by %+v", got)
	}
}

// Most nitrogen in 12 months: 4 lb by custom [ksu-eckert], or the law's where it
// is less.
func TestTwelveMonths(t *testing.T) {
	c := caseIn(t, "OH", "6a", nil)
	if most, why := c.TwelveMonths(); most != 4 || why.Source != "ksu-eckert" || why.Text == "" {
		t.Errorf("%v, %+v", most, why)
	}
	c.MostN = nutrient.LimitsOfNitrogen(climate.Warm)
	if most, _ := c.TwelveMonths(); most != Unlimited {
		t.Errorf("warm-season grass in Ohio: %v", most)
	}
	nj := caseIn(t, "NJ", "7a", nil)
	l, ok := nj.Law.AnnualNCap(nj.Asked)
	if !ok || l.Value >= 4 {
		t.Fatalf("New Jersey's cap is %+v", l)
	}
	for _, season := range []climate.Season{climate.Cool, climate.Warm} {
		nj.MostN = nutrient.LimitsOfNitrogen(season)
		if most, why := nj.TwelveMonths(); float64(most) != l.Value || why.Source != l.Rule.Citation {
			t.Errorf("%v, %+v", most, why)
		}
	}
}

// Which report stands: its texture, its answer, its target.
func TestReports(t *testing.T) {
	a := Area{Texture: agronomy.Loam, Sampled: on(t, "2026-01-02")}
	if r, ok := a.Report(); ok || r.Texture != agronomy.Loam || a.AllReports() != nil {
		t.Errorf("%+v, %v", r, ok)
	}
	a.Soil = &agronomy.Report{PH: 5.5}
	if r, ok := a.Report(); !ok || r.Texture != agronomy.Loam || r.PH != 5.5 || a.Soil.Texture != "" {
		t.Errorf("%+v, %v", r, ok)
	}
	if all := a.AllReports(); len(all) != 1 || all[0].Soil != a.Soil || all[0].Sampled != a.Sampled {
		t.Errorf("%+v", all)
	}
	a.Soil.Texture = agronomy.Sand
	if r, _ := a.Report(); r.Texture != agronomy.Sand {
		t.Errorf("%+v", r)
	}
	a.Reports = []SoilReport{{Soil: a.Soil}, {Soil: a.Soil}}
	if len(a.AllReports()) != 2 {
		t.Error("two reports are two")
	}
	for _, c := range []struct {
		r    SoilReport
		want string
	}{{SoilReport{}, ""}, {SoilReport{Sampled: on(t, "2026-01-02")}, "2026-01-16"}, {SoilReport{Sampled: on(t, "2026-01-02"), Received: on(t, "2026-01-05")}, "2026-01-05"}} {
		if got := c.r.Answer(); got.String() != c.want && !(c.want == "" && got.IsZero()) {
			t.Errorf("answer on %s, want %s", got, c.want)
		}
	}
	c := caseIn(t, "GA", "8a", nil)
	c.Area.Soil = &agronomy.Report{PH: 5.5, Texture: agronomy.Loam, CEC: 9, OrganicMatter: 3, Acidity: 2, Depth: 6, Buffer: agronomy.Buffer{Method: agronomy.AdamsEvans, PH: 7.8}}
	lc := c.Site.LimeCase(c.Area)
	if lc.PH != 5.5 || lc.Target != 6.5 || lc.LimeBelow != 6 || lc.Texture != agronomy.Loam || lc.CEC != 9 || lc.OrganicMatter != 3 || lc.Acidity != 2 || lc.Depth != 6 || lc.Buffer.PH != 7.8 || lc.State != "GA" || !lc.WarmRegion {
		t.Errorf("%+v", lc)
	}
	c.Area.Soil.TargetPH = 6.2
	if lc := c.Site.LimeCase(c.Area); lc.Target != 6.2 || lc.LimeBelow != 0 {
		t.Errorf("%+v", lc)
	}
}

// How the readings moved, with the pH that the lime between them was to bring.
func TestMovedReadings(t *testing.T) {
	c := caseIn(t, "OH", "6a", func(s *Site) {
		given := func(ppm agronomy.PPM) agronomy.Reading { return agronomy.Reading{Given: true, PPM: ppm} }
		first := &agronomy.Report{PH: 5.5, Texture: agronomy.Loam, Depth: 4, Phosphorus: given(12), Potassium: given(80)}
		second := &agronomy.Report{PH: 6.1, Texture: agronomy.Loam, Depth: 4, Phosphorus: given(15.5), Magnesium: given(60)}
		third := &agronomy.Report{PH: 6.4}
		s.Areas[0].Reports = []SoilReport{{Sampled: on(t, "2024-04-01"), Soil: first}, {Sampled: on(t, "2026-04-01"), Soil: second}, {Sampled: on(t, "2028-04-01"), Soil: third}}
	})
	c.Area = &Area{ID: "a", Sampled: on(t, "2026-04-01")}
	lime := func(day string) Down {
		return Down{Done: Done{Date: on(t, day)}, Kind: Lime, Dose: material.DoseOf(material.Material{Kind: material.LimeMaterial, ECCE: 100}, 20)}
	}
	moved := strings.Join(c.moved(), "\n")
	if moved != "pH 5.5 in 2024, 6.1 found in 2026\nphosphorus 12 ppm in 2024, 15.5 ppm found in 2026" {
		t.Errorf("without lime: %s", moved)
	}
	for _, d := range []string{"2024-03-31", "2026-04-01"} { // before the first sample, on the day of the second
		if c.Down = []Down{lime(d)}; strings.Contains(c.moved()[0], "expected") {
			t.Errorf("lime on %s: %s", d, c.moved()[0])
		}
	}
	for _, d := range []string{"2024-04-01", "2026-03-31"} {
		// 20 of the 37.9 lb that a unit takes on a loam: 0.85 of 1.7 tons/acre in 7 in [usda-1957]
		if c.Down = []Down{lime(d)}; c.moved()[0] != "pH 5.5 in 2024, 6.0 expected, 6.1 found in 2026" {
			t.Errorf("lime on %s: %s", d, c.moved()[0])
		}
	}
	c.Site.Areas[0].Reports[0].Sampled = on(t, "2026-01-04") // two reports in a year: the days are said
	if got := c.moved()[0]; got != "pH 5.5 on 4 Jan 2026, 6.0 expected, 6.1 found on 1 Apr 2026" {
		t.Error(got)
	}
	c.Area.ID = "b"
	if got := c.moved(); got != nil {
		t.Errorf("an area that is none: %v", got)
	}
}

// The season as it is shown: each event from the start on, with its odds.
func TestSeasonShown(t *testing.T) {
	a := almanacOf(t, "OH", "6a")
	s := a.Season(word.Measure{}, climate.Cool, a.start)
	freeze := a.FirstFreeze()
	for name, pair := range map[string][2]Date{
		"first freeze": {s.FirstFreeze.P50, a.After(freeze, a.start)}, "early": {s.FirstFreeze.P10, a.After(freeze, a.start).AddDays(-freeze.Before())}, "late": {s.FirstFreeze.P90, a.After(freeze, a.start).AddDays(freeze.After())},
		"last freeze": {s.LastFreeze.P50, a.After(a.LastFreeze(), a.start)}, "soil at 50": {s.SoilBelow50, a.After(a.SoilFalls(2, 50), a.start)}, "soil at 40": {s.SoilBelow40, a.After(a.SoilFalls(2, 40), a.start)},
		"growth begins": {s.GrowthBegins, a.After(a.GrowthBegins(climate.Cool), a.start)}, "growth ends": {s.GrowthEnds, a.After(a.GrowthEnds(climate.Cool), a.start)},
		"ground, early": {s.GroundFreeze.Early, a.After(a.Ground.Early, a.start)}, "ground": {s.GroundFreeze.Median, a.After(a.Ground.Median, a.start)}, "last safe": {s.LastSafe, a.After(a.Ground.LastSafe, a.start)}, "reopens": {s.Reopens, a.After(a.Ground.Reopens, a.start)},
	} {
		if pair[0] != pair[1] || pair[0].Before(a.start) || pair[0].After(a.start.AddDays(365)) {
			t.Errorf("%s: %s, want %s", name, pair[0], pair[1])
		}
	}
	if !s.FirstFreeze.P10.Before(s.FirstFreeze.P50) || !s.FirstFreeze.P50.Before(s.FirstFreeze.P90) {
		t.Errorf("%+v", s.FirstFreeze)
	}
	if s.SpreadDays != a.SoilFalls(2, 50).Within() || s.Spread40Days != a.SoilFalls(2, 40).Within() || s.SpringDays != a.GrowthBegins(climate.Cool).Within() || s.SpreadDays <= 0 {
		t.Errorf("%+v", s)
	}
	if len(s.Words) < 2 || s.Words[0] != "ground: "+a.Ground.Kind.String() || !strings.HasPrefix(s.Words[1], "8 years in 10 the autumn soil dates lie within "+word.Plural(s.SpreadDays, "day")+" of these") {
		t.Errorf("%q", s.Words)
	}
	if south := almanacOf(t, "FL", "11a"); south.Season(word.Measure{}, climate.Warm, south.start).FirstFreeze != (Odds{}) {
		t.Error("it freezes in Key West")
	}
}
