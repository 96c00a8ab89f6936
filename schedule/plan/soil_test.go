package plan

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// lawnWith is an established lawn in Ohio 6a with a report of its own.
func lawnWith(t *testing.T, grass string, change func(*agronomy.Report)) *schedule.Site {
	t.Helper()
	site := situations[0].site(t, "OH", "6a", grass)
	r := *site.Areas[0].Soil
	change(&r)
	site.Areas[0].Soil = &r
	return site
}

func ofKind(p *schedule.Program, k schedule.Kind) (out []*schedule.Entry) {
	for i := range p.Entries {
		if p.Entries[i].Kind == k {
			out = append(out, &p.Entries[i])
		}
	}
	return out
}

func caution(e *schedule.Entry, part string) bool {
	return slices.ContainsFunc(e.Cautions, func(c string) bool { return strings.Contains(c, part) })
}

// A high pH is accepted: no sulfur unless it is asked for, and iron on the leaf
// in the growing season.
func TestHighPHIsAccepted(t *testing.T) {
	high := func(r *agronomy.Report) { r.PH = 7.8 }
	p := plan(t, lawnWith(t, "kentucky bluegrass", high))
	if s := ofKind(p, schedule.Sulfur); len(s) > 0 {
		t.Errorf("sulfur, which nobody asked for: %s", s[0].Summary)
	}
	iron := ofKind(p, schedule.Iron)
	if len(iron) != 2 || iron[0].Season == iron[1].Season {
		t.Fatalf("%d sprays of iron, want one in each of the two seasons that the year touches", len(iron))
	}
	for _, e := range iron {
		if high := p.Cases[0].Almanac.High(e.Date.DayOfYear()); high >= 80 {
			t.Errorf("iron on %s, when it is %v °F", e.Date, high)
		}
	}
	e := iron[0]
	if !caution(e, "stains") || !caution(e, "weed killer") {
		t.Errorf("no word of stains or of weed killers: %v", e.Cautions)
	}
	if got := float64(e.Rate); got < 0.124 || got > 0.126 { // 2 oz [nc-centipede]
		t.Errorf("%v lb/1000 sq ft of iron sulfate, want 2 oz", got)
	}
	if !strings.HasPrefix(e.Summary, "Spray ") || e.WaterIn != 0 || !strings.Contains(strings.Join(e.Steps, " "), "Dissolve") {
		t.Errorf("iron is not sprayed: %s %v", e.Summary, e.Steps)
	}
	p = plan(t, lawnWith(t, "kentucky bluegrass", func(r *agronomy.Report) { r.PH = 6.9 }))
	if len(ofKind(p, schedule.Iron)) > 0 {
		t.Error("iron at pH 6.9")
	}
	p = plan(t, lawnWith(t, "centipedegrass", func(r *agronomy.Report) { r.PH = 6.3 }))
	if iron := ofKind(p, schedule.Iron); len(iron) != 2 || iron[0].Season == iron[1].Season {
		t.Errorf("%d sprays of iron on centipedegrass at pH 6.3, want one in each of two seasons", len(iron))
	}
}

// Sulfur is asked for with lower_ph, begins with a test for carbonate, and is
// never a trace.
func TestSulfurWhereAsked(t *testing.T) {
	asked := func(ph agronomy.PH) *schedule.Program {
		return plan(t, lawnWith(t, "kentucky bluegrass", func(r *agronomy.Report) { r.PH, r.LowerPH = ph, true }))
	}
	s := ofKind(asked(7.8), schedule.Sulfur)
	if len(s) == 0 {
		t.Fatal("no sulfur though it is asked for")
	}
	if !strings.Contains(strings.Join(s[0].Steps, " "), "vinegar") || !strings.Contains(s[0].Because, "takes it to about") {
		t.Errorf("no carbonate test, or no pH to expect: %q %v", s[0].Because, s[0].Steps)
	}
	for _, ph := range []agronomy.PH{7.0, 7.02} {
		if s := ofKind(asked(ph), schedule.Sulfur); len(s) > 0 {
			t.Errorf("a trace of sulfur at pH %v: %s", float64(ph), s[0].Summary)
		}
	}
	p := asked(8.4)
	if len(ofKind(p, schedule.Sulfur)) > 0 || leftOut(p, "a/sulfur/1") == nil {
		t.Error("sulfur on soil with free lime, or not a word about it")
	}
}

// Gypsum is for exchangeable sodium: two dressings under the cap, then a sample;
// none for clay that is only heavy.
func TestGypsumForSodium(t *testing.T) {
	salty := func(r *agronomy.Report) {
		r.PH, r.CEC, r.Texture, r.Sodium = 7.6, 20, agronomy.Clay, agronomy.Reading{Given: true, PPM: 1150}
	}
	p := plan(t, lawnWith(t, "kentucky bluegrass", salty))
	g := ofKind(p, schedule.Gypsum)
	if len(g) != 2 || leftOut(p, "a/gypsum/3") == nil {
		t.Fatalf("%d dressings of gypsum, and the rest: %v", len(g), leftOut(p, "a/gypsum/3"))
	}
	for _, e := range g {
		if e.Rate > 40 || !strings.Contains(e.Because, "Sodium") {
			t.Errorf("%s: %s", e.Summary, e.Because)
		}
	}
	if days := g[1].Date.DaysFrom(g[0].Date); days < 60 {
		t.Errorf("%d days between two dressings", days)
	}
	site := lawnWith(t, "kentucky bluegrass", salty)
	site.Materials = append(site.Materials, material.Material{ID: "g", Kind: material.GypsumMaterial, Sulfur: 15, Pack: 40, OnHand: 20})
	if g := ofKind(plan(t, site), schedule.Gypsum); len(g) == 0 || g[0].Material != "g" {
		t.Error("the gypsum in the shed is not used")
	}
	p = plan(t, lawnWith(t, "kentucky bluegrass", func(r *agronomy.Report) {
		r.CEC, r.Texture, r.Sodium = 20, agronomy.Clay, agronomy.Reading{Given: true, PPM: 200}
	}))
	if len(ofKind(p, schedule.Gypsum)) > 0 {
		t.Error("gypsum without sodium")
	}
}

// A shortage that the program makes up is measured again after a year, a soil
// that is well after three; and a report over three years old is said first.
func TestRetests(t *testing.T) {
	well := func(r *agronomy.Report) {
		r.PH, r.Buffer = 6.5, agronomy.Buffer{}
		r.Phosphorus.PPM, r.Potassium.PPM = 70, 200
	}
	short := func(r *agronomy.Report) {
		well(r)
		r.Potassium.PPM = 50
	}
	site := lawnWith(t, "kentucky bluegrass", short)
	tests := ofKind(plan(t, site), schedule.SoilTest)
	if due := site.Areas[0].Sampled.AddMonths(12); len(tests) != 1 || tests[0].Date.Before(due) {
		t.Errorf("short of potassium: samples %v, want one from %s on", tests, due)
	}
	site = lawnWith(t, "kentucky bluegrass", well)
	p := plan(t, site)
	if l := leftOut(p, "a/soil-test/1"); l == nil || l.CarriedTo != site.Areas[0].Sampled.AddMonths(36) {
		t.Errorf("a soil that is well is sampled again: %+v", l)
	}
	if f := p.Areas[0].Findings[0]; f.Reading == "report" {
		t.Errorf("a fresh report is called old: %s", f.Text)
	}
	site.Areas[0].Sampled = site.Start.AddDays(-3*366 - 1)
	p = plan(t, site)
	if f := p.Areas[0].Findings[0]; f.Reading != "report" || f.Rank != 1 || p.Areas[0].Findings[1].Rank != 2 {
		t.Errorf("an old report is not said first: %+v", f)
	}
}

// A report serves three years: from that day on nothing goes down that it asked for, also
// where the day falls into a season that was planned by it before, and a new sample is
// drawn. [psu-report-notes] [vt-fall-2008]
func TestAReportServesThreeYears(t *testing.T) {
	for _, start := range []string{"2026-08-01", "2026-11-20", "2027-02-01"} {
		site := lawn(t, "tall fescue", 2600, 10, 30)
		site.Start = mustDate(t, start)
		site.Through = site.Start.AddDays(400)
		site.Areas[0].Soil.PH, site.Areas[0].Sampled = 5.0, mustDate(t, "2024-03-10")
		last := mustDate(t, "2027-03-09")
		p := plan(t, site)
		for _, e := range p.Entries {
			if asked := e.Kind == schedule.Lime || e.Kind == schedule.Phosphorus || e.Kind == schedule.Potassium; asked && e.Date.After(last) {
				t.Errorf("from %s: %s on %s, by a report of %s", start, e.Title, e.Date, site.Areas[0].Sampled)
			}
		}
		tests := ofKind(p, schedule.SoilTest)
		if len(tests) != 1 || !tests[0].Date.After(last) || tests[0].Date.After(last.AddDays(60)) {
			t.Errorf("from %s: samples %v, want one soon after %s", start, tests, last)
		}
		for _, kind := range []string{"lime", "phosphorus", "potassium"} {
			told := slices.ContainsFunc(p.LeftOut, func(l schedule.LeftOut) bool {
				return l.Kind.String() == kind && strings.Contains(l.Reason, "more than three years old: a new sample comes first")
			})
			if !told {
				t.Errorf("from %s: nothing says why %s waits", start, kind)
			}
		}
	}
}

// Where magnesium is low the lime is dolomitic. Ordinary stone on hand goes down first,
// as at most half of the lime, counted by effective weight and not by packs.
func TestTheRightStone(t *testing.T) {
	low := func(r *agronomy.Report) { r.Magnesium = agronomy.Reading{Given: true, PPM: 20} }
	high := func(r *agronomy.Report) { r.Magnesium = agronomy.Reading{Given: true, PPM: 200} }
	stone := func(id string, mg agronomy.Percent, pack agronomy.Pounds, packs float64) material.Material {
		return material.Material{ID: id, Name: id, Kind: material.LimeMaterial, ECCE: 85, Magnesium: mg, Pack: pack, OnHand: packs}
	}
	used := func(change func(*agronomy.Report), ms ...material.Material) (ids []string, mg agronomy.PerThousand) {
		site := lawnWith(t, "kentucky bluegrass", change)
		site.Materials = ms
		for _, e := range ofKind(plan(t, site), schedule.Lime) {
			ids = append(ids, e.Material)
			mg += e.Dose.Mg
		}
		return ids, mg
	}
	if ids, mg := used(low, stone("plain", 1, 40, 1)); len(ids) < 2 || ids[0] != "plain" || ids[len(ids)-1] != "trade-dolomitic-limestone" || mg < 1 {
		t.Errorf("a pack of ordinary stone on soil low in magnesium: %v, %v lb Mg", ids, mg)
	}
	if ids, _ := used(low, stone("plain", 1, 40, 9), stone("dolomite", 11, 40, 9)); slices.Index(ids, "dolomite") < 0 || slices.Index(ids, "trade-dolomitic-limestone") >= 0 {
		t.Errorf("dolomite on hand, and magnesium low: %v", ids)
	}
	if ids, _ := used(high, stone("small", 1, 5, 9), stone("large", 1, 50, 3)); len(ids) == 0 || ids[0] != "large" {
		t.Errorf("nine packs of 5 lb went before three of 50: %v", ids)
	}
	if ids, _ := used(high, stone("plain", 1, 40, 1)); slices.Index(ids, "trade-dolomitic-limestone") >= 0 {
		t.Errorf("dolomite with magnesium high: %v", ids)
	}
}

// Wood ash: at most 20 lb a year, its potash counted, never on a young stand or
// where the pH is fine.
func TestWoodAsh(t *testing.T) {
	ash := material.Material{ID: "ash", Name: "wood ash", Kind: material.WoodAsh, Analysis: material.Ash, Pack: 5, OnHand: 40}
	withAsh := func(s *schedule.Site) *schedule.Program {
		s.Materials = []material.Material{ash}
		return plan(t, s)
	}
	of := func(p *schedule.Program) (out []*schedule.Entry) {
		for _, e := range ofKind(p, schedule.Lime) {
			if e.Material == "ash" {
				out = append(out, e)
			}
		}
		return out
	}
	keep := func(*agronomy.Report) {}
	p := withAsh(lawnWith(t, "kentucky bluegrass", keep))
	got := of(p)
	if len(got) != 1 || got[0].Rate > 20 || got[0].Rate < 19.9 || got[0].K2O < 1.19 { // [common] 6 % K2O
		t.Fatalf("ash: %+v", got)
	}
	sumK := func(p *schedule.Program) (k agronomy.PerThousand) {
		for i := range p.Entries {
			k += p.Entries[i].K2O
		}
		return k
	}
	bare := lawnWith(t, "kentucky bluegrass", keep)
	bare.Materials = nil
	if with, without := sumK(p), sumK(plan(t, bare)); with > without+0.5 {
		t.Errorf("the potash of the ash is not counted: %.2f lb with, %.2f without", float64(with), float64(without))
	}
	if got := of(withAsh(lawnWith(t, "kentucky bluegrass", func(r *agronomy.Report) { r.PH, r.Buffer = 6.8, agronomy.Buffer{} }))); len(got) > 0 {
		t.Errorf("ash at pH 6.8: %s", got[0].Summary)
	}
	if got := of(withAsh(situations[2].site(t, "OH", "6a", "kentucky bluegrass"))); len(got) > 0 {
		t.Errorf("ash on a young stand: %s", got[0].Summary)
	}
}

// Lime and phosphorus stay two weeks apart, whichever goes first, and a sample has
// its answer before the lime or the straight nutrient that it decides.
func TestLimeWaitsForPhosphorusAndForTheAnswer(t *testing.T) {
	pairs, answers := 0, 0
	for _, s := range situations {
		site := s.site(t, "OH", "6a", "perennial ryegrass")
		p, err := Program(site, s.book, schedule.Date{})
		if err != nil {
			t.Fatal(err)
		}
		var sown schedule.Date // up to it lime and starter are worked into the seedbed
		for _, e := range ofKind(p, schedule.Sow) {
			sown = e.Date
		}
		for i := range p.Entries {
			for k := range p.Entries {
				a, b := &p.Entries[i], &p.Entries[k]
				days := b.Date.DaysFrom(a.Date)
				if a.Area != b.Area || days < 0 || a.State != schedule.Planned || b.State != schedule.Planned {
					continue
				}
				limed := a.Kind == schedule.Lime && b.P2O5 >= 0.25 || b.Kind == schedule.Lime && a.P2O5 >= 0.25 // [common] a trace keeps no distance
				if limed && b.Date.After(sown) {
					if pairs++; days < 14 {
						t.Errorf("%s: %s on %s, %s on %s", s.name, a.ID, a.Date, b.ID, b.Date)
					}
				}
				decided := b.Kind == schedule.Lime || b.Kind == schedule.Potassium || b.Kind == schedule.Phosphorus
				if a.Kind == schedule.SoilTest && decided {
					if answers++; days < schedule.AnswerDays {
						t.Errorf("%s: sampled on %s, %s on %s", s.name, a.Date, b.ID, b.Date)
					}
				}
			}
		}
	}
	if pairs == 0 || answers == 0 {
		t.Errorf("%d pairs of lime and phosphorus, %d jobs after a sample: nothing was tested", pairs, answers)
	}
}

// Before the answer to a sample nothing is planned of what it decides: it comes
// two weeks after the sample, or on the day that the site file gives.
func TestNothingBeforeTheAnswer(t *testing.T) {
	for received, from := range map[string]string{"": "2026-09-24", "2026-10-01": "2026-10-01", "2026-09-12": "2026-09-12"} {
		site := lawnWith(t, "kentucky bluegrass", func(r *agronomy.Report) { r.PH, r.Buffer = 5.2, agronomy.Buffer{} })
		a := &site.Areas[0]
		a.Sampled = mustDate(t, "2026-09-10")
		if received != "" {
			a.Received = mustDate(t, received)
		}
		jobs := 0
		for _, e := range plan(t, site).Entries {
			if e.Kind == schedule.Lime || e.Kind == schedule.Phosphorus || e.Kind == schedule.Potassium {
				if jobs++; e.Date.Before(mustDate(t, from)) {
					t.Errorf("received %q: %s on %s, before %s", received, e.ID, e.Date, from)
				}
			}
		}
		if jobs == 0 {
			t.Errorf("received %q: nothing is planned at all", received)
		}
	}
}

// The pH promised in a year goes by the stone's first year, that in three by the
// whole: New York's one-year rule gives this stone 73 %, Ohio's three-year bands 80.
// [cornell-env] [bc-637-200]
func TestPromiseOfTheFirstYear(t *testing.T) {
	sour := func(r *agronomy.Report) {
		r.PH, r.Buffer, r.Magnesium = 5.6, agronomy.Buffer{}, agronomy.Reading{Given: true, PPM: 200}
	}
	because := func(m material.Material) string {
		site := lawnWith(t, "kentucky bluegrass", sour)
		site.Place.State = "NY"
		m.ID, m.Name, m.Kind, m.Pack, m.OnHand = "stone", "stone", material.LimeMaterial, 40, 20
		site.Materials = []material.Material{m}
		e := ofKind(plan(t, site), schedule.Lime)
		if len(e) == 0 {
			t.Fatal("no lime")
		}
		return e[len(e)-1].Because
	}
	coarse := because(material.Material{CCE: 90, Fineness: []material.Sieve{{Mesh: 8, Passing: 100}, {Mesh: 20, Passing: 80}, {Mesh: 60, Passing: 40}, {Mesh: 100, Passing: 30}}})
	if !strings.Contains(coarse, " in a year, ") || !strings.Contains(coarse, " in three") {
		t.Errorf("a coarse stone: %s", coarse)
	}
	if fine := because(material.Material{ECCE: 90}); strings.Contains(fine, " in three") {
		t.Errorf("a stone of one printed value: %s", fine)
	}
}

// A rest of magnesium under a tenth of a pound is no job left out, and stands in the
// working; a larger one is told among what is left out.
func TestRestOfMagnesium(t *testing.T) {
	for ppm, told := range map[agronomy.PPM]bool{60: false, 30: true} {
		site := bluegrass(t)
		r := site.Areas[0].Soil
		r.PH, r.Buffer, r.Magnesium = 6.7, agronomy.Buffer{}, agronomy.Reading{Given: true, PPM: ppm}
		p := plan(t, site)
		left := slices.ContainsFunc(p.LeftOut, func(l schedule.LeftOut) bool { return l.Kind == schedule.Magnesium })
		i := slices.IndexFunc(p.Entries, func(e schedule.Entry) bool { return e.Kind == schedule.Magnesium })
		if i < 0 || left != told {
			t.Errorf("%.0f ppm: planned %t, a rest left out %t", float64(ppm), i >= 0, left)
			continue
		}
		said := slices.ContainsFunc(p.Entries[i].Why, func(r schedule.Reason) bool { return strings.Contains(r.Text, "too little for a job") })
		if said == told {
			t.Errorf("%.0f ppm: in the working %t", float64(ppm), said)
		}
	}
}
