package rule_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/plan"
	"swardbook/schedule/rule"
)

var update = flag.Bool("update", false, "write what the rules propose anew")

// TestProposals holds what the rules propose, before anything is placed, to the
// files in testdata: windows, doses, words and reasons. Read a difference as a
// person who has to act on it.
func TestProposals(t *testing.T) {
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := proposals(t, c.site(t), c.book, c.words)
			file := filepath.Join("testdata", c.name+".txt")
			if *update {
				if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			lines, wanted := strings.Split(got, "\n"), strings.Split(string(want), "\n")
			for i := range max(len(lines), len(wanted)) {
				if i >= len(lines) || i >= len(wanted) || lines[i] != wanted[i] {
					t.Fatalf("%s, line %d:\n got %s\nwant %s", file, i+1, strings.Join(lines[min(i, len(lines)):], "\n"), strings.Join(wanted[min(i, len(wanted)):], "\n"))
				}
			}
		})
	}
}

// place is one site: where, what grows there, and what differs from an
// established lawn of 2000 sq ft without a report.
type place struct {
	name         string
	state, zone  string
	grass        string
	start        string
	seeded, days int // from the start; length of the program, 0 a year
	soil         *agronomy.Report
	book         []schedule.Done
	change       func(*schedule.Site, *schedule.Area)
	words        bool // every step, caution and reason too
}

func (p place) site(t *testing.T) *schedule.Site {
	t.Helper()
	start := day(t, p.start)
	days := p.days
	if days == 0 {
		days = 364
	}
	a := schedule.Area{ID: "a", Name: "Test plot", Size: 2000, Stand: stand(t, p.grass), Texture: agronomy.Loam, Care: nutrient.MediumCare, Soil: p.soil}
	if p.seeded != 0 {
		a.Seeded = start.AddDays(p.seeded)
	}
	if p.soil != nil {
		a.Sampled = start.AddDays(-60)
	}
	s := &schedule.Site{ID: "rules", Title: "Rules", Start: start, Through: start.AddDays(days), Place: climate.Place{State: p.state, Hardiness: p.zone}}
	if p.change != nil {
		p.change(s, &a)
	}
	s.Areas = append([]schedule.Area{a}, s.Areas...)
	return s
}

func day(t *testing.T, s string) schedule.Date {
	t.Helper()
	d, err := schedule.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// stand reads "fine fescue" or "perennial ryegrass 60, fine fescue 40".
func stand(t *testing.T, text string) (s agronomy.Stand) {
	t.Helper()
	for part := range strings.SplitSeq(text, ", ") {
		percent := 100.0
		if i := strings.LastIndexByte(part, ' '); strings.ContainsAny(part[i+1:], "0123456789") {
			fmt.Sscan(part[i+1:], &percent)
			part = part[:i]
		}
		g, ok := agronomy.LookupGrass(part)
		if !ok {
			t.Fatalf("no grass %q", part)
		}
		s = append(s, agronomy.Share{Grass: g, Percent: agronomy.Percent(percent)})
	}
	return s
}

// ppm makes a report of P, K and Mg.
func ppm(method agronomy.Extractant, ph agronomy.PH, p, k, mg agronomy.PPM) *agronomy.Report {
	given := func(x agronomy.PPM) agronomy.Reading { return agronomy.Reading{Given: x > 0, PPM: x} }
	return &agronomy.Report{Depth: 4, Method: method, PH: ph, Texture: agronomy.Loam, CEC: 9, Phosphorus: given(p), Potassium: given(k), Magnesium: given(mg)}
}

// sodic is a report of sodium.
func sodic(sodium agronomy.PPM, cec agronomy.Meq) *agronomy.Report {
	r := ppm(agronomy.Olsen, 8.4, 20, 300, 200)
	r.CEC, r.Sodium = cec, agronomy.Reading{Given: true, PPM: sodium}
	return r
}

func lowered(r *agronomy.Report) *agronomy.Report {
	r.LowerPH = true
	return r
}

// bag is a fertilizer in 40 lb packs.
func bag(id string, n, p, k agronomy.Percent, slow, onHand float64) material.Material {
	m := material.Material{ID: id, Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: n, P2O5: p, K2O: k}, SlowShare: slow, Pack: 40, OnHand: onHand}
	if slow > 0 {
		m.Lasts = 8
	}
	return m
}

func stone(onHand float64) material.Material {
	return material.Material{ID: "stone", Kind: material.LimeMaterial, CCE: 90, Pack: 40, OnHand: onHand}
}

func line(n int, date, job string, share float64) schedule.Done {
	d, err := schedule.ParseDate(date)
	if err != nil {
		panic(err)
	}
	return schedule.Done{Line: n, Date: d, Area: "a", Job: job, Share: share, AsPlanned: share == 1, Missed: share == 0}
}

var cases = []place{
	{name: "sour-ohio", words: true, state: "OH", zone: "6a", grass: "kentucky bluegrass", start: "2026-09-12", soil: ppm(agronomy.Mehlich3, 4.8, 10, 30, 40),
		change: func(s *schedule.Site, a *schedule.Area) {
			a.Care, s.Materials = nutrient.HighCare, []material.Material{stone(2), bag("blend", 24, 2, 8, 0.35, 1)}
			s.Spreader.Width = 4
		}},
	{name: "record-ohio", words: true, state: "OH", zone: "6a", grass: "kentucky bluegrass", start: "2026-08-01", soil: ppm(agronomy.Mehlich3, 5.0, 20, 60, 60),
		book: []schedule.Done{line(2, "2026-08-10", "lime", 0.5), line(3, "2026-08-25", "nitrogen", 2), line(4, "2026-09-20", "potassium", 0), line(5, "2026-10-02", "phosphorus", 1)},
		change: func(s *schedule.Site, a *schedule.Area) {
			a.Care, s.Materials = nutrient.HighCare, []material.Material{stone(9), bag("blend", 24, 2, 8, 0, 3)}
		}},
	{name: "young-minnesota", words: true, state: "MN", zone: "4b", grass: "perennial ryegrass 60, fine fescue 40", start: "2026-09-01", seeded: -14, soil: ppm(agronomy.Olsen, 5.9, 6, 40, 80),
		change: func(s *schedule.Site, a *schedule.Area) {
			a.SolubleOnly, s.Materials = true, []material.Material{bag("starter", 18, 24, 12, 0, 0.5), bag("slow", 30, 0, 4, 0.5, 2)}
		}},
	{name: "sown-new-york", words: true, state: "NY", zone: "6b", grass: "tall fescue", start: "2026-07-01", seeded: 60, soil: ppm(agronomy.ModifiedMorgan, 5.3, 2, 80, 40),
		change: func(s *schedule.Site, a *schedule.Area) {
			s.Materials, s.Metric, s.Water = []material.Material{stone(20), bag("starter", 18, 24, 12, 0.4, 1)}, true, 30
		}},
	{name: "sown-no-report", state: "IN", zone: "6a", grass: "kentucky bluegrass 80, perennial ryegrass 20", start: "2026-08-01", seeded: 20},
	{name: "dormant-dakota", state: "SD", zone: "4b", grass: "kentucky bluegrass", start: "2026-09-01", seeded: 85, soil: ppm(agronomy.Olsen, 7.2, 8, 150, 200),
		change: func(_ *schedule.Site, a *schedule.Area) { a.Dormant = true }},
	{name: "bermuda-georgia", state: "GA", zone: "8a", grass: "bermudagrass", start: "2027-03-01", soil: ppm(agronomy.Mehlich1, 5.4, 8, 30, 12),
		change: func(s *schedule.Site, a *schedule.Area) {
			a.Care, a.Clippings, a.Texture, s.Materials = nutrient.HighCare, true, agronomy.SandyLoam, []material.Material{bag("lawn", 16, 4, 8, 0.3, 1)}
		}},
	{name: "augustine-florida", words: true, state: "FL", zone: "9b", grass: "st. augustinegrass", start: "2027-02-01", soil: ppm(agronomy.Mehlich3, 6.4, 60, 40, 200),
		change: func(s *schedule.Site, a *schedule.Area) {
			a.Texture, a.Soil.Texture, a.Sprinkler = agronomy.Sand, agronomy.Sand, 0.4
			liquid := bag("liquid", 12, 0, 4, 0, 4)
			liquid.Liquid, liquid.Density, liquid.Pack, liquid.PackVolume = true, 9.6, 0, 2.5
			s.Materials, s.Sprayer = []material.Material{liquid}, schedule.Sprayer{Tank: 2, Covers: 500}
		}},
	{name: "bermuda-minnesota", state: "MN", zone: "3b", grass: "bermudagrass", start: "2027-03-01", soil: ppm(agronomy.Bray1, 6.3, 10, 70, 0)},
	{name: "chalky-colorado", words: true, state: "CO", zone: "5b", grass: "kentucky bluegrass", start: "2027-04-01", soil: ppm(agronomy.Olsen, 7.6, 8, 90, 60),
		book: []schedule.Done{{Line: 2, Date: schedule.Date{Year: 2027, Month: 4, Day: 20}, Area: "a", Job: "sulfur", Material: "sulfur", Weight: 8}},
		change: func(s *schedule.Site, a *schedule.Area) {
			s.Materials = []material.Material{{ID: "sulfur", Kind: material.SulfurMaterial, Sulfur: 90, Pack: 5, OnHand: 3}}
		}},
	{name: "free-lime-texas", state: "TX", zone: "8b", grass: "zoysiagrass", start: "2027-01-10", soil: ppm(agronomy.Mehlich3, 8.4, 15, 300, 150)},
	{name: "slow-maryland", words: true, state: "MD", zone: "7a", grass: "tall fescue", start: "2026-08-20", soil: ppm(agronomy.Mehlich3, 5.4, 12, 50, 30),
		change: func(s *schedule.Site, a *schedule.Area) {
			a.Cored, a.Care = true, nutrient.HighCare
			s.Materials = []material.Material{{ID: "burnt", Kind: material.LimeMaterial, Hydrated: true, Pack: 50, OnHand: 1}, stone(0.5), bag("quick", 32, 0, 4, 0, 2), bag("slow", 30, 0, 4, 0.6, 2)}
			s.Crew = schedule.Crew{Days: []time.Weekday{time.Saturday}, JobsPerDay: 2, Away: []schedule.Span{{From: schedule.Date{Year: 2026, Month: 9, Day: 20}, To: schedule.Date{Year: 2026, Month: 10, Day: 18}}}}
		}},
	{name: "low-care-oregon", state: "OR", zone: "8b", grass: "fine fescue", start: "2026-10-10", soil: ppm(agronomy.Bray1, 5.6, 60, 400, 200),
		change: func(_ *schedule.Site, a *schedule.Area) {
			a.Care, a.Clippings, a.Soil.OrganicMatter, a.Soil.Buffer = nutrient.LowCare, true, 6, agronomy.Buffer{Method: agronomy.SMP, PH: 6.4}
		}},
	{name: "short-kansas", state: "KS", zone: "6a", grass: "tall fescue", start: "2026-10-20", days: 60,
		soil: ppm(agronomy.Mehlich3, 6.1, 30, 120, 100), change: func(s *schedule.Site, a *schedule.Area) { a.Care = nutrient.HighCare }},
	{name: "old-report-nebraska", state: "NE", zone: "5b", grass: "kentucky bluegrass", start: "2026-03-20", soil: ppm(agronomy.Mehlich3, 6.6, 20, 90, 90),
		change: func(s *schedule.Site, a *schedule.Area) {
			a.Sampled = s.Start.AddDays(-1300)
			a.Care = nutrient.HighCare
		}},
	{name: "first-spring-michigan", state: "MI", zone: "5b", grass: "kentucky bluegrass", start: "2027-04-10", seeded: -230,
		soil: ppm(agronomy.Mehlich3, 6.3, 22, 80, 100)},
	{name: "paspalum-carolina", state: "SC", zone: "9a", grass: "seashore paspalum", start: "2027-02-01", soil: ppm(agronomy.Mehlich1, 6.0, 20, 60, 40)},
	{name: "own-optimum-ohio", words: true, state: "OH", zone: "6a", grass: "kentucky bluegrass", start: "2026-08-15", soil: &agronomy.Report{Depth: 4, PH: 5.9, Texture: agronomy.Loam,
		Phosphorus: agronomy.Reading{Given: true, PPM: 5, Wanted: agronomy.Optimum{Given: true, Low: 60, High: 80}}, Potassium: agronomy.Reading{Given: true, PPM: 5, Wanted: agronomy.Optimum{Given: true, Low: 250, High: 300}},
		Magnesium: agronomy.Reading{Given: true, PPM: 10, Wanted: agronomy.Optimum{Given: true, Low: 100, High: 120}}},
		book: []schedule.Done{{Line: 2, Date: schedule.Date{Year: 2026, Month: 8, Day: 20}, Area: "a", Job: "magnesium", Material: "trade-magnesium-sulfate", Weight: 4}}},
	{name: "old-stand-maine", words: true, state: "ME", zone: "5a", grass: "kentucky bluegrass", start: "2026-08-01", seeded: -7000, soil: ppm(agronomy.ModifiedMorgan, 6.2, 5, 120, 70),
		change: func(_ *schedule.Site, a *schedule.Area) { a.Clippings = true }},
	{name: "late-recorded-indiana", words: true, state: "IN", zone: "6a", grass: "tall fescue", start: "2026-08-15", soil: ppm(agronomy.Mehlich3, 6.5, 40, 150, 100),
		book:   []schedule.Done{{Line: 2, Date: schedule.Date{Year: 2026, Month: 7, Day: 20}, Area: "a", Job: "nitrogen", Material: "trade-urea", Weight: 3}, {Line: 3, Date: schedule.Date{Year: 2026, Month: 10, Day: 28}, Area: "a", Job: "late-nitrogen", Material: "trade-urea", Weight: 3.5}},
		change: func(_ *schedule.Site, a *schedule.Area) { a.Care = nutrient.HighCare }},
	{name: "full-year-jersey", words: true, state: "NJ", zone: "7a", grass: "tall fescue", start: "2026-08-15", soil: ppm(agronomy.Mehlich3, 6.5, 40, 150, 100),
		book:   []schedule.Done{{Line: 2, Date: schedule.Date{Year: 2026, Month: 4, Day: 20}, Area: "a", Job: "nitrogen", Material: "trade-urea", Weight: 4}, {Line: 3, Date: schedule.Date{Year: 2026, Month: 6, Day: 10}, Area: "a", Job: "nitrogen", Material: "trade-urea", Weight: 4}},
		change: func(_ *schedule.Site, a *schedule.Area) { a.Care = nutrient.HighCare }},
	{name: "leaf-feed-ohio", words: true, state: "OH", zone: "6a", grass: "fine fescue", start: "2027-03-01", soil: ppm(agronomy.Mehlich3, 6.3, 40, 150, 100),
		change: func(s *schedule.Site, a *schedule.Area) {
			liquid := bag("liquid", 8, 0, 0, 0, 4)
			liquid.Liquid, liquid.Density, liquid.Pack, liquid.PackVolume = true, 9.6, 0, 2.5
			a.Size, a.Care, s.Materials, s.Sprayer = 800, nutrient.LowCare, []material.Material{liquid}, schedule.Sprayer{Tank: 4, Covers: 1000}
			s.Local.MaxN, s.Local.Note = 0.2, "town code"
		}},
	{name: "hot-arizona", state: "AZ", zone: "8b", grass: "tall fescue", start: "2026-08-15", soil: ppm(agronomy.Olsen, 7.1, 20, 250, 200),
		change: func(_ *schedule.Site, a *schedule.Area) { a.Care = nutrient.HighCare }},
	{name: "sown-south-florida", words: true, state: "FL", zone: "10b", grass: "bermudagrass", start: "2027-01-05", seeded: 40, soil: ppm(agronomy.Mehlich3, 6.4, 10, 60, 80)},
	{name: "rest-of-lime-iowa", state: "IA", zone: "5a", grass: "kentucky bluegrass", start: "2026-09-01", soil: ppm(agronomy.Mehlich3, 5.9, 40, 200, 150),
		change: func(s *schedule.Site, a *schedule.Area) {
			a.Soil.Depth, a.Soil.TargetPH, s.Materials = 2, 6.2, []material.Material{stone(1)}
		}},
	{name: "little-lime-iowa", state: "IA", zone: "5a", grass: "kentucky bluegrass", start: "2026-09-01", soil: ppm(agronomy.Mehlich3, 5.9, 40, 200, 40),
		change: func(s *schedule.Site, a *schedule.Area) {
			a.Soil.Depth, a.Soil.TargetPH, s.Materials = 2, 6.12, []material.Material{stone(1)} // 5.45 lb of stone
		}},
	{name: "sown-in-spring-ohio", state: "OH", zone: "6a", grass: "perennial ryegrass", start: "2027-05-01", seeded: -14, soil: ppm(agronomy.Mehlich3, 6.6, 10, 200, 200)},
	{name: "magnesium-in-lime-ohio", state: "OH", zone: "6a", grass: "kentucky bluegrass", start: "2026-08-15", soil: ppm(agronomy.Mehlich3, 4.8, 40, 200, 40),
		change: func(s *schedule.Site, a *schedule.Area) {
			m := stone(9)
			m.Magnesium = 1.5 // 1.11 lb Mg, of 0.83 wanted
			s.Materials = []material.Material{m}
		}},
	{name: "magnesium-after-lime-ohio", state: "OH", zone: "6a", grass: "kentucky bluegrass", start: "2026-08-15", soil: ppm(agronomy.Mehlich3, 6.6, 40, 200, 40),
		book: []schedule.Done{{Line: 2, Date: schedule.Date{Year: 2026, Month: 8, Day: 15}, Area: "a", Job: "lime", Material: "trade-dolomitic-limestone", Weight: 4}}},
	{name: "sodic-utah", words: true, state: "UT", zone: "6a", grass: "kentucky bluegrass", start: "2027-04-01", soil: sodic(1035, 15)},
	{name: "sodic-recorded-utah", state: "UT", zone: "6a", grass: "kentucky bluegrass", start: "2027-04-01", soil: sodic(1035, 15),
		book: []schedule.Done{{Line: 2, Date: schedule.Date{Year: 2027, Month: 4, Day: 20}, Area: "a", Job: "gypsum", Material: "trade-gypsum", Weight: 72}, line(3, "2027-05-20", "gypsum", 0)}},
	{name: "overseed-ohio", words: true, state: "OH", zone: "6a", grass: "kentucky bluegrass 60, perennial ryegrass 40", start: "2026-08-01", soil: ppm(agronomy.Mehlich3, 6.4, 10, 60, 100),
		change: func(s *schedule.Site, a *schedule.Area) {
			a.Overseed, s.Materials = s.Start.AddDays(35), []material.Material{bag("starter", 18, 24, 12, 0, 1), bag("blend", 24, 2, 8, 0.35, 1)}
		}},
	{name: "overseed-recorded-new-york", state: "NY", zone: "6a", grass: "tall fescue", start: "2026-08-01", soil: ppm(agronomy.ModifiedMorgan, 6.4, 2, 60, 100), book: []schedule.Done{line(2, "2026-09-05", "overseed", 1)},
		change: func(s *schedule.Site, a *schedule.Area) { a.Overseed = s.Start.AddDays(30) }},
	{name: "overseed-before-georgia", words: true, state: "GA", zone: "8a", grass: "bermudagrass", start: "2027-05-15",
		change: func(s *schedule.Site, a *schedule.Area) { a.Overseed = s.Start.AddDays(-20) }},
	{name: "sown-in-july-ohio", words: true, state: "OH", zone: "6a", grass: "tall fescue", start: "2026-07-01", seeded: 12, soil: ppm(agronomy.Mehlich3, 6.4, 10, 60, 100)},
	{name: "sown-in-december-ohio", state: "OH", zone: "6a", grass: "tall fescue", start: "2026-07-01", seeded: 160},
	{name: "dormant-too-soon-minnesota", state: "MN", zone: "4b", grass: "kentucky bluegrass", start: "2026-08-01", seeded: 20,
		change: func(_ *schedule.Site, a *schedule.Area) { a.Dormant = true }},
	{name: "ash-ohio", words: true, state: "OH", zone: "6a", grass: "kentucky bluegrass", start: "2026-08-15", soil: ppm(agronomy.Mehlich3, 5.4, 40, 60, 150),
		book: []schedule.Done{{Line: 2, Date: schedule.Date{Year: 2026, Month: 7, Day: 1}, Area: "a", Job: "lime", Material: "ash", Weight: 10}},
		change: func(s *schedule.Site, a *schedule.Area) {
			s.Materials = []material.Material{{ID: "ash", Kind: material.WoodAsh, CCE: 45, Analysis: agronomy.Analysis{K2O: 5}, Pack: 20, OnHand: 5}}
			s.Crew.Days = []time.Weekday{0, 1, 2, 3, 4, 5, 6}
		}},
	{name: "some-stone-ohio", words: true, state: "OH", zone: "6a", grass: "kentucky bluegrass", start: "2026-08-15", soil: ppm(agronomy.Mehlich3, 5.4, 40, 200, 150),
		change: func(s *schedule.Site, a *schedule.Area) {
			s.Materials, s.Crew.Days = []material.Material{stone(1)}, []time.Weekday{time.Monday, time.Wednesday, time.Thursday, time.Saturday}
		}},
	{name: "calcitic-left-ohio", words: true, state: "OH", zone: "6a", grass: "kentucky bluegrass", start: "2026-08-15", soil: ppm(agronomy.Mehlich3, 5.2, 40, 200, 30),
		change: func(s *schedule.Site, a *schedule.Area) { s.Materials = []material.Material{stone(1.5)} }},
	{name: "much-sulfur-colorado", state: "CO", zone: "5b", grass: "kentucky bluegrass", start: "2027-04-01", soil: lowered(ppm(agronomy.Olsen, 8.1, 20, 300, 200))},
	{name: "two-areas-virginia", state: "VA", zone: "7a", grass: "tall fescue", start: "2026-09-01", soil: ppm(agronomy.Mehlich3, 5.5, 20, 60, 45),
		change: func(s *schedule.Site, a *schedule.Area) {
			b := *a
			b.ID, b.Name, b.Size, b.Soil, b.Stand = "b", "A second plot with a long name for a title", 5200, ppm(agronomy.Mehlich3, 5.8, 40, 110, 90), agronomy.Stand{a.Stand[0]}
			b.Sampled = s.Start.AddDays(-60)
			s.Areas = []schedule.Area{b}
			s.Materials = []material.Material{stone(4), bag("feed", 32, 0, 6, 0.4, 1.5), bag("potash", 0, 0, 50, 0, 0.2)}
		}},
}

// proposals plans a site and writes what each rule last proposed.
func proposals(t *testing.T, site *schedule.Site, book []schedule.Done, words bool) string {
	t.Helper()
	asked := map[string]schedule.Proposal{}
	var order []string
	rules := make([]rule.Rule, len(rule.All))
	for i, r := range rule.All {
		rules[i] = rule.Rule{Kind: r.Kind, Propose: func(c *rule.Treatment) schedule.Proposal {
			p := r.Propose(c)
			key := fmt.Sprintf("%s/%d/%s", c.Area.ID, c.Year, r.Kind)
			if _, known := asked[key]; !known {
				order = append(order, key)
			}
			asked[key] = p
			return p
		}}
	}
	p, err := plan.With(site, book, schedule.Date{}, schedule.Kinds(), rules)
	if err != nil {
		t.Fatal(err)
	}
	w := &writer{said: map[string]bool{}, brief: !words}
	for _, key := range order {
		w.proposal(key, asked[key])
	}
	for _, e := range p.Entries {
		if e.Kind.Sows() {
			fmt.Fprintf(w, "sown %s: %s\n  %s\n", e.Date, e.Title, e.Summary)
			w.once("  - ", e.Steps...)
			w.once("  ~ ", e.IfRain)
			w.once("  ! ", e.Cautions...)
			w.reasons(e.Why)
		}
	}
	for _, s := range p.InTheShed {
		fmt.Fprintf(w, "shed: %s\n", s)
	}
	return w.String()
}

// writer writes each step, caution and reason once: a site says many of them
// again and again.
type writer struct {
	strings.Builder
	said  map[string]bool
	brief bool // none of them
}

func (w *writer) once(mark string, texts ...string) {
	for _, s := range texts {
		if !w.brief && !w.said[s] {
			w.said[s] = true
			fmt.Fprintf(w, "%s%s\n", mark, s)
		}
	}
}

func (w *writer) reasons(why []schedule.Reason) {
	for _, r := range why {
		w.once("  = ", strings.TrimSuffix(r.Text+" ["+r.Source+"]", " []"))
	}
}

func (w *writer) proposal(key string, p schedule.Proposal) {
	fmt.Fprintf(w, "%s\n", key)
	for _, n := range p.Needs {
		fmt.Fprintf(w, " need %s %.3f: %s\n", n.Kind, float64(n.Total), n.Text)
		w.reasons(n.Why)
	}
	for _, y := range p.Yearly {
		fmt.Fprintf(w, " year %d: %.3f\n", y.Year, float64(y.Total))
	}
	for _, j := range p.Jobs {
		d := &j.Dose
		fmt.Fprintf(w, " job %s: %s\n  %s\n  because: %s\n", j.ID(), j.Title, j.Summary, j.Because)
		fmt.Fprintf(w, "  dose %.3f of %s: N %.3f (%.3f quick), P2O5 %.3f, K2O %.3f, Mg %.3f; %s; tilled %v, again %v; %s\n", float64(d.Rate), d.Material.ID, float64(d.N), float64(d.SolubleN), float64(d.P2O5), float64(d.K2O), float64(d.Mg), j.WaterIn.Kind, j.Tilled, j.Again, j.Note)
		for _, v := range j.Windows {
			fmt.Fprintf(w, "  %s to %s, best %s, last %s: %s; %s\n", v.From, v.To, v.Ideal, v.Last, schedule.WindowWords(v), v.Carried)
		}
		w.once("  - ", j.Steps...)
		w.once("  ~ ", j.IfRain)
		w.once("  ! ", j.Cautions...)
		w.reasons(j.Why)
	}
	for _, l := range p.Left {
		fmt.Fprintf(w, " left %s: %s [%s] carried to %s\n", l.ID, l.Reason, l.Source, l.CarriedTo)
	}
	for _, a := range p.Assumed {
		fmt.Fprintf(w, " assumed: %s\n", a)
	}
	for _, s := range p.Shed {
		fmt.Fprintf(w, " shed: %s\n", s)
	}
}
