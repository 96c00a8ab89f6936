package rule_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// leftOf lists why jobs of a kind are left out.
func leftOf(p *schedule.Program, k schedule.Kind) (all []string) {
	for _, l := range p.LeftOut {
		if l.Kind == k {
			all = append(all, l.Reason)
		}
	}
	return all
}

// Gypsum by hand: 1 meq Na is 230 ppm in 100 g, 1 meq of gypsum (CaSO4·2H2O, 172.17
// g/mol, two charges) is 861 ppm; 6⅔ in of soil weigh 2 million lb an acre, so 1 ppm in
// 4 in is 1.2 lb/acre; the excess is what sodium holds over 5 % of the CEC (Richards,
// Agriculture Handbook 60, 1954). The trade's gypsum has 17 of the 18.62 % sulfur of pure.
// It goes down 40 lb at a time, 60 days apart, twice before the next sample. // common practice
func TestGypsumByHand(t *testing.T) {
	for _, c := range []struct {
		sodium agronomy.PPM
		cec    float64
		down   agronomy.Pounds // on record, on 2000 sq ft
		before bool            // it went down before the sample, whose readings show its effect
		missed bool
		jobs   int
		left   string // how many more dressings would be wanted; "" none
	}{
		{345, 15, 0, false, false, 0, ""}, // 10 %: not sodic
		{517, 15, 0, false, false, 0, ""}, // 14.99 %
		{518, 15, 0, false, false, 1, ""}, // 15.01 %: 1.502 meq, 39.0 lb of gypsum
		{530, 15, 0, false, false, 2, ""}, // 40.4 lb
		{345, 7.5, 0, false, false, 1, ""},
		{1035, 15, 0, false, false, 2, "1 dressing"},
		{1035, 15, 72, false, false, 1, "1 dressing"},
		{1035, 15, 72, true, false, 2, "1 dressing"},
		{1035, 15, 0, false, true, 2, "1 dressing"},
		{2070, 30, 0, false, false, 2, "3 dressings"}, // 195 lb in five
		{1035, 15, 186, false, false, 0, ""},          // 4.5 lb are left
		{1035, 15, 184, false, false, 1, ""},          // 5.5 lb
	} {
		site := place{state: "UT", zone: "6a", grass: "kentucky bluegrass", start: "2027-04-01", days: 110, soil: sodic(c.sodium, agronomy.Meq(c.cec))}
		on := "2027-04-10"
		if c.before {
			on = "2027-01-10"
		}
		switch {
		case c.missed:
			site.book = []schedule.Done{line(2, on, "gypsum", 0)}
		case c.down > 0:
			site.book = []schedule.Done{{Line: 2, Date: day(t, on), Area: "a", Job: "gypsum", Material: "trade-gypsum", Weight: c.down}}
		}
		p := program(t, site)
		pure := (float64(c.sodium)/230 - 0.05*c.cec) * 861 * 1.2 / 43.56
		want := pure * 18.62 / 17
		if !c.before {
			want -= float64(c.down) / 2
		}
		parts := math.Ceil(want/40 - 1e-9)
		var ahead []schedule.Entry
		for _, e := range of(p, schedule.Gypsum) {
			if e.State == schedule.Planned {
				ahead = append(ahead, e)
			}
		}
		if len(ahead) != c.jobs {
			t.Errorf("%+v: %d dressings, want %d (%q)", c, len(ahead), c.jobs, leftOf(p, schedule.Gypsum))
			continue
		}
		for i, e := range ahead {
			if math.Abs(float64(e.Rate)-want/parts) > 2.5 { // 5 lb, in steps of which it is weighed, on 2000 sq ft
				t.Errorf("%+v: %v lb/1000 sq ft, want %.2f", c, e.Rate, want/parts)
			}
			if i > 0 && e.Date.DaysFrom(ahead[i-1].Date) < 60 {
				t.Errorf("%+v: on %s and %s", c, ahead[i-1].Date, e.Date)
			}
			if c.down > 0 && !c.before && e.Date.DaysFrom(day(t, on)) < 60 {
				t.Errorf("%+v: again on %s", c, e.Date)
			}
		}
		said := strings.Join(leftOf(p, schedule.Gypsum), "; ")
		if (said != "") != (c.left != "") || !strings.HasPrefix(said, c.left) {
			t.Errorf("%+v: left %q, want %q", c, said, c.left)
		}
	}
}

// Twenty-four pounds of sulfur go down in fifths of at most 5 lb, two in a year and 60
// days apart; the third to fifth wait for a sample. [purdue-sulfur]
func TestSulfurByHand(t *testing.T) {
	for _, down := range []agronomy.Pounds{0, 9} { // trade sulfur of 90 %, on 2000 sq ft
		site := place{state: "CO", zone: "5b", grass: "kentucky bluegrass", start: "2027-04-01", soil: lowered(ppm(agronomy.Olsen, 8.1, 20, 300, 200))}
		if down > 0 {
			site.book = []schedule.Done{{Line: 2, Date: day(t, "2027-04-02"), Area: "a", Job: "sulfur", Material: "trade-elemental-sulfur", Weight: down}}
		}
		p := program(t, site)
		var total agronomy.PerThousand
		for _, n := range p.Areas[0].Needs {
			if n.Kind == schedule.Sulfur {
				total = n.Total
			}
		}
		left := float64(total) - float64(down)/2*0.9
		parts := math.Ceil(left/5 - 1e-9)
		year, planned := float64(down)/2*0.9, 0
		last := day(t, "2027-04-02")
		for _, e := range of(p, schedule.Sulfur) {
			if e.State != schedule.Planned {
				continue
			}
			planned++
			if got := float64(e.Rate) * 0.9; math.Abs(got-left/parts) > 0.05 {
				t.Errorf("%v lb down: %.2f lb of sulfur, want %.2f", down, got, left/parts)
			} else if year += got; year > 10.01 {
				t.Errorf("%v lb down: %.2f lb in a year", down, year)
			}
			if (planned > 1 || down > 0) && e.Date.DaysFrom(last) < 60 {
				t.Errorf("%v lb down: on %s and %s", down, last, e.Date)
			}
			last = e.Date
		}
		most := int((10 - float64(down)/2*0.9) / (left / parts))
		if planned != most {
			t.Errorf("%v lb down: %d dressings, want %d", down, planned, most)
		}
		want := map[int]string{1: "1 dressing of", 2: "2 dressings of", 3: "3 dressings of", 4: "4 dressings of"}[int(parts)-most]
		if all := leftOf(p, schedule.Sulfur); len(all) == 0 || !strings.HasPrefix(all[0], want) {
			t.Errorf("%v lb down: %q, want %q", down, all, want)
		}
	}
}

// Stone on hand goes down first where that takes no further trip, or where it is at least
// half of a dressing: 60 lb/1000 sq ft are two dressings of 30. // common practice, no
// source
func TestStoneAtHand(t *testing.T) {
	sour := func(onHand float64) place {
		return place{state: "OH", zone: "6a", grass: "kentucky bluegrass", start: "2026-08-15", days: 900, soil: ppm(agronomy.Mehlich3, 5.0, 40, 200, 150),
			change: func(s *schedule.Site, _ *schedule.Area) { s.Materials = []material.Material{stone(onHand)} }}
	}
	whole := of(program(t, sour(0)), schedule.Lime)
	total := 0.0 // lb/1000 sq ft
	for _, n := range program(t, sour(0)).Areas[0].Needs {
		if n.Kind == schedule.Lime {
			total = float64(n.Total)
		}
	}
	if len(whole) == 0 || total < 55 || total > 100 {
		t.Fatalf("%d dressings, %v lb in all: the case shows nothing", len(whole), total)
	}
	for _, onHand := range []float64{0, 0.2, 0.5, 0.7, 1, 1.5, 2, 2.5, 3, 4, 9} { // packs of 40 lb on 2000 sq ft
		have := onHand * 40 / 2
		now := math.Min(have, 50)
		want := total / 2
		if rest := total - now; now >= 5 && total-have >= 5 && (math.Ceil(rest/50-1e-9) < 2 || now >= total/4) {
			want = now
		}
		lime := of(program(t, sour(onHand)), schedule.Lime)
		if got := float64(lime[0].Rate); math.Abs(got-want) > 0.6 {
			t.Errorf("%v packs on hand: %.1f lb/1000 sq ft first, want %.1f of %.1f", onHand, got, want, total)
		}
	}
}

// A sample is looked for during five months from the day on which it falls due, where the
// ground lets it: in the south of Florida on any day. [psu-report-notes]
func TestSampleForFiveMonths(t *testing.T) {
	for name, c := range map[string]struct {
		report *agronomy.Report
		due    string
	}{
		"short of potassium": {ppm(agronomy.Mehlich3, 6.4, 60, 20, 200), "2027-05-01"},
		"sodic":              {sodic(1035, 15), "2027-05-01"},
	} {
		p := program(t, place{state: "FL", zone: "10b", grass: "bermudagrass", start: "2027-02-01", days: 800, soil: c.report,
			change: func(s *schedule.Site, a *schedule.Area) {
				a.Sampled = day(t, c.due).AddMonths(-12)
			}})
		tests := of(p, schedule.SoilTest)
		if len(tests) == 0 {
			t.Errorf("%s: no sample (%q)", name, leftOf(p, schedule.SoilTest))
			continue
		}
		if e := tests[0]; e.Earliest != day(t, c.due) || e.Latest.DaysFrom(e.Earliest) != 150 || e.Ideal != e.Earliest {
			t.Errorf("%s: from %s to %s, best %s", name, e.Earliest, e.Latest, e.Ideal)
		}
	}
}

// A sowing day outside the usual weeks is kept as asked, give or take a week, where grass
// comes up in at least half of the years; it has no last safe day, and the program names
// the usual time. Where grass cannot come up the sowing moves, and the program says why.
func TestAskedDays(t *testing.T) {
	for _, c := range []struct {
		seeded int // from 1 July
		moved  bool
		says   string
	}{
		{8, false, "the usual time here"},
		{65, false, ""},
		{170, true, "Not on 18 Dec 2026 as asked"},
	} {
		p := program(t, place{state: "OH", zone: "6a", grass: "tall fescue", start: "2026-07-01", seeded: c.seeded, days: 500})
		sow := of(p, schedule.Sow)
		if len(sow) != 1 {
			t.Fatalf("%d days on: %d sowings", c.seeded, len(sow))
		}
		wish, e := day(t, "2026-07-01").AddDays(c.seeded), sow[0]
		if (e.Date != wish) != c.moved {
			t.Errorf("asked for %s, sown %s", wish, e.Date)
		}
		text := e.Summary + " " + strings.Join(p.Assumptions, " ")
		if c.says != "" && !strings.Contains(text, c.says) && !strings.Contains(text, "usual time here") {
			t.Errorf("%s: %q is not said: %s", wish, c.says, text)
		}
		if outside := c.seeded == 8; outside && (e.Earliest != schedule.Later(wish.AddDays(-7), p.Start) || e.Latest != wish.AddDays(7)) {
			t.Errorf("%s: from %s to %s", wish, e.Earliest, e.Latest)
		} else if e.LastSafe.IsZero() != outside {
			t.Errorf("%s: last safe day %s", wish, e.LastSafe)
		}
	}
}

// The seedlings of an overseeding on record are spared for a year and no longer; one that
// was missed has none to spare. The autumn in which they are young has two thirds of its
// nitrogen, 3 lb × 0.67 × 0.67. [vt-452-717]
func TestSeedlingsOfAnOverseeding(t *testing.T) {
	autumn := func(book ...schedule.Done) (sum float64, text string) {
		p := program(t, place{state: "OH", zone: "6a", grass: "kentucky bluegrass", start: "2026-08-01", soil: ppm(agronomy.Mehlich3, 6.5, 60, 200, 200), book: book})
		for _, n := range p.Areas[0].Needs {
			if n.Kind == schedule.Nitrogen {
				text = n.Text
			}
		}
		for _, e := range p.Entries {
			if e.Date.Year == 2026 && e.State != schedule.Missed {
				sum += float64(e.N)
			}
		}
		return sum, text
	}
	usual, _ := autumn()
	if usual < 1.8 || usual > 2.05 {
		t.Fatalf("%v lb in autumn", usual)
	}
	for _, c := range []struct {
		what   string
		line   schedule.Done
		spares bool
	}{
		{"done", line(2, "2026-08-25", "overseed", 1), true},
		{"missed", line(2, "2026-08-25", "overseed", 0), false},
		{"the year before", line(2, "2025-06-20", "overseed", 1), false},
	} {
		got, text := autumn(c.line)
		if want := usual * 0.667; c.spares && got > want+0.05 || !c.spares && math.Abs(got-usual) > 0.02 {
			t.Errorf("%s: %.2f lb in autumn, of %.2f usually: %s", c.what, got, usual, text)
		}
	}
}

// When it rains, a crew that works on some days waits for the next of them; one that
// works on all days, or gave none, waits for a drier day.
func TestRainyDays(t *testing.T) {
	week := []time.Weekday{time.Sunday, time.Monday, time.Tuesday, time.Wednesday, time.Thursday, time.Friday, time.Saturday}
	for n, want := range map[int]string{0: "a drier day", 1: "the next Sunday", 3: "the next Sunday or Monday or Tuesday", 4: "the next work day", 6: "the next work day", 7: "a drier day"} {
		p := program(t, place{state: "OH", zone: "6a", grass: "kentucky bluegrass", start: "2026-08-15", soil: ppm(agronomy.Mehlich3, 5.2, 40, 200, 150),
			change: func(s *schedule.Site, _ *schedule.Area) { s.Crew.Days = week[:n] }})
		for _, e := range of(p, schedule.Lime) {
			if !strings.Contains(e.IfRain, "wait for "+want+".") {
				t.Errorf("%d days: %s", n, e.IfRain)
			}
		}
	}
}
