package text

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy/soil"
	"swardbook/schedule"
)

// differ gives the lines of a that b lacks, and those of b that a lacks.
func differ(a, b string) (lost, gained string) {
	only := func(a, b string) string {
		rest := strings.Split(b, "\n")
		var out []string
		for l := range strings.SplitSeq(a, "\n") {
			if i := slices.Index(rest, l); i >= 0 {
				rest = slices.Delete(rest, i, i+1)
			} else if l != "" {
				out = append(out, strings.TrimSpace(l))
			}
		}
		return strings.Join(out, "\n")
	}
	return only(a, b), only(b, a)
}

// field is what one change of a program does to a text: the lines that go, and those
// that come. Nothing else may change.
type field struct {
	what         string
	write        func(*schedule.Program) string
	change       func(*schedule.Program)
	lost, gained string
}

// Each thing that a program holds has its line in the texts, and where it holds none
// there is no line, no heading and no number for it.
func TestEachFieldHasItsLine(t *testing.T) {
	wide := Style{Width: Widest, Today: date(t, "2026-09-12")}
	on := func(today string) Style { return Style{Width: Widest, Today: date(t, today)} }
	program := func(s Style) func(*schedule.Program) string {
		return func(p *schedule.Program) string { return Program(p, s) }
	}
	full := func(p *schedule.Program) string { return Full(p, wide) }
	next := func(p *schedule.Program) string { return Next(p, 2, wide) }
	why := func(p *schedule.Program) string { return Why(p, &p.Entries[0], wide) }
	sources := func(p *schedule.Program) string { return LeftOut(&p.LeftOut[0], wide) }
	report := func(p *schedule.Program) string { return Soil(p, false, wide) }
	working := func(p *schedule.Program) string { return Soil(p, true, wide) }
	first := func(change func(*schedule.Entry)) func(*schedule.Program) {
		return func(p *schedule.Program) { change(&p.Entries[0]) }
	}
	d := func(s string) schedule.Date { return date(t, s) }
	const title = "A lawn with a rather long name, behind the old reading room by the river"
	for _, f := range []field{
		// The head.
		{"title", next, func(p *schedule.Program) { p.Title = "Another" }, title, "Another"},
		{"awaited", program(wide), func(p *schedule.Program) { p.Awaited = []string{"A report is due."} }, "", "A report is due."},
		{"county", program(wide), func(p *schedule.Program) { p.Place.County = "Lorain" }, "OH, zone 6a, 12 Sep 2026 to 11 Sep 2027. 1 job planned, 1 done, 1 notice, 1 left out.",
			"OH, county Lorain, zone 6a, 12 Sep 2026 to 11 Sep 2027. 1 job planned, 1 done, 1 notice, 1 left out."},
		{"place as found", program(wide), func(p *schedule.Program) { p.Place.Where = "44109, Cleveland OH" }, "OH, zone 6a, 12 Sep 2026 to 11 Sep 2027. 1 job planned, 1 done, 1 notice, 1 left out.",
			"44109, Cleveland OH, zone 6a, 12 Sep 2026 to 11 Sep 2027. 1 job planned, 1 done, 1 notice, 1 left out."},
		{"no place", program(wide), func(p *schedule.Program) { p.Place.State, p.Place.Hardiness = "", "" }, "OH, zone 6a, 12 Sep 2026 to 11 Sep 2027. 1 job planned, 1 done, 1 notice, 1 left out.",
			"Climate from state and hardiness zone, 12 Sep 2026 to 11 Sep 2027. 1 job planned, 1 done, 1 notice, 1 left out."},
		{"missed", program(wide), func(p *schedule.Program) { p.Entries[1].State = schedule.Missed }, "OH, zone 6a, 12 Sep 2026 to 11 Sep 2027. 1 job planned, 1 done, 1 notice, 1 left out.\nSat 26 Sep  Feed                         102 fl oz        done       east/nitrogen/1",
			"OH, zone 6a, 12 Sep 2026 to 11 Sep 2027. 1 job planned, 1 missed, 1 notice, 1 left out.\nSat 26 Sep  Feed                         102 fl oz        missed     east/nitrogen/1"},
		{"two notices", func(p *schedule.Program) string { return Count(p, wide.Today) }, func(p *schedule.Program) { p.Entries = append(p.Entries, p.Entries[2]) },
			"1 job planned, 1 done, 1 notice, 1 left out.", "1 job planned, 1 done, 2 notices, 1 left out."},
		// What is taken as done: the start to begin anew is offered where nothing is on record.
		{"on record", program(on("2026-12-01")), func(p *schedule.Program) {
			p.Cases = []*schedule.Case{{Down: []schedule.Down{{Done: schedule.Done{Line: 2}}}}}
		},
			"record book: taken as done as planned until swardbook record says otherwise. To begin today instead, write start =\n2026-12-01.", "record book: taken as done as planned until swardbook record says otherwise."},
		{"a presumed job", program(on("2026-12-01")), func(p *schedule.Program) { p.Cases = []*schedule.Case{{Down: []schedule.Down{{}}}} }, "", ""},
		{"begun today", program(on("2026-12-01")), func(p *schedule.Program) { p.Start = d("2026-12-01") },
			"OH, zone 6a, 12 Sep 2026 to 11 Sep 2027. 1 job planned, 1 done, 1 notice, 1 left out. 1 job past, with no line in the\nrecord book: taken as done as planned until swardbook record says otherwise. To begin today instead, write start =\n2026-12-01.",
			"OH, zone 6a, 1 Dec 2026 to 11 Sep 2027. 1 job planned, 1 done, 1 notice, 1 left out. 1 job past, with no line in the\nrecord book: taken as done as planned until swardbook record says otherwise."},
		// The next visit.
		{"no weather", program(wide), first(func(e *schedule.Entry) { e.IfRain = "" }), "Wait.", ""},
		{"no cautions", program(wide), first(func(e *schedule.Entry) { e.Cautions = nil }), "Mind: Dust.", ""},
		{"no water", program(wide), first(func(e *schedule.Entry) { e.WaterIn = 0 }), "Spread half one way, half across. Water in 0.25 in: lime within 24 hours.", "Spread half one way, half across."},
		{"sprayed", program(wide), first(func(e *schedule.Entry) { e.Dose.Material.Liquid = true }), "Spread half one way, half across. Water in 0.25 in: lime within 24 hours.", "Water in 0.25 in: lime within 24 hours."},
		{"nobody", program(wide), first(func(e *schedule.Entry) { e.Who, e.WhoName = "", "" }),
			"Lime the long eastern strip  96 lb (2.4 packs)  Mara  last safe day Mon 16 Nov\nAll jobs                                                    last safe\nSat 19 Sep  Lime the long eastern strip  96 lb      Mara  16 Nov     east/lime/1\nSat 26 Sep  Feed                         102 fl oz        done       east/nitrogen/1",
			"Lime the long eastern strip  96 lb (2.4 packs)  last safe day Mon 16 Nov\nAll jobs                                              last safe\nSat 19 Sep  Lime the long eastern strip  96 lb      16 Nov     east/lime/1\nSat 26 Sep  Feed                         102 fl oz  done       east/nitrogen/1"},
		{"a person without a name", next, first(func(e *schedule.Entry) { e.WhoName = "" }), "For Mara. Job: east/lime/1", "For mara. Job: east/lime/1"},
		{"next: nobody", next, first(func(e *schedule.Entry) { e.Who, e.WhoName = "", "" }), "For Mara. Job: east/lime/1", "Job: east/lime/1"},
		{"next: no weather", next, first(func(e *schedule.Entry) { e.IfRain = "" }), "- Rain: wait.", ""},
		{"next: no cautions", next, first(func(e *schedule.Entry) { e.Cautions = nil }), "Take care:\n- Dust.", ""},
		{"next: no steps", next, first(func(e *schedule.Entry) { e.Steps = nil }), "- Set the spreader to half.", ""},
		{"next: a note", next, first(func(e *schedule.Entry) { e.Note = "later" }), "", "Record book: later"},
		{"next: nothing", next, func(p *schedule.Program) { p.Entries = nil },
			"Sat 19 Sep 2026: Lime the long eastern strip, 96 lb\nSpread 96 lb (2.4 packs) at 37 lb per 1,000 sq ft.\nWindow 12 Sep to 16 Nov 2026, its last safe day; best about 12 Sep 2026.\nFor Mara. Job: east/lime/1\n- Set the spreader to half.\n- Rain: wait.\nTake care:\n- Dust.\nMon 16 Nov 2026: Last safe day to spread\nJob: site/last-safe/1",
			"nothing more in this program, which ends on 11 Sep 2027."},
		// A job's window.
		{"ideal day", next, first(func(e *schedule.Entry) { e.Ideal = e.Date }), "Window 12 Sep to 16 Nov 2026, its last safe day; best about 12 Sep 2026.", "Window 12 Sep to 16 Nov 2026, its last safe day."},
		{"no ideal day", next, first(func(e *schedule.Entry) { e.Ideal = schedule.Date{} }), "Window 12 Sep to 16 Nov 2026, its last safe day; best about 12 Sep 2026.", "Window 12 Sep to 16 Nov 2026, its last safe day."},
		{"safe longer", next, first(func(e *schedule.Entry) { e.LastSafe = d("2026-11-20") }), "Window 12 Sep to 16 Nov 2026, its last safe day; best about 12 Sep 2026.", "Window 12 Sep to 16 Nov 2026; last safe day 20 Nov 2026; best about 12 Sep 2026."},
		{"no last safe day", next, first(func(e *schedule.Entry) { e.LastSafe = schedule.Date{} }), "Window 12 Sep to 16 Nov 2026, its last safe day; best about 12 Sep 2026.", "Window 12 Sep to 16 Nov 2026; best about 12 Sep 2026."},
		{"no window", next, first(func(e *schedule.Entry) { e.Earliest = schedule.Date{} }), "Window 12 Sep to 16 Nov 2026, its last safe day; best about 12 Sep 2026.", ""},
		// What limits the grass; what is left out, assumed, the law.
		{"no areas", program(wide), func(p *schedule.Program) { p.Areas = nil },
			"What limits the grass, and what it needs per 1,000 sq ft\nThe long eastern strip between the path and the hedge, 2,600 sq ft, perennial ryegrass 60 %, fine fescue 40 %\n1 pH 5.1, very low: 57 lb.\n2 Organic matter 2.1 %: ordinary.", ""},
		{"no report", program(wide), func(p *schedule.Program) { p.Areas[0].Findings, p.Areas[0].Needs = nil, nil }, "1 pH 5.1, very low: 57 lb.\n2 Organic matter 2.1 %: ordinary.", "There is no soil report for this area: what wants one is left out."},
		{"a need beside the findings", program(wide), func(p *schedule.Program) {
			p.Areas[0].Needs = append(p.Areas[0].Needs, schedule.Need{Kind: schedule.Nitrogen, Total: 3, Text: "nitrogen: 3 lb per 1,000 sq ft"}, schedule.Need{Kind: schedule.Iron, Text: "iron: none"})
		}, "", "3 Nitrogen: 3 lb."},
		{"five findings", program(wide), func(p *schedule.Program) {
			for i, r := range []string{"potassium", "phosphorus", "cec"} {
				p.Areas[0].Findings = append(p.Areas[0].Findings, schedule.FindingShown{Rank: 3 + i, Reading: r, Value: 9, Unit: "ppm", Level: soil.Low, Text: "Little. Very little."})
			}
		}, "", "3 Potassium 9 ppm, low: little.\n4 Phosphorus 9 ppm, low: little."},
		{"nothing left out", program(wide), func(p *schedule.Program) { p.LeftOut = nil }, "OH, zone 6a, 12 Sep 2026 to 11 Sep 2027. 1 job planned, 1 done, 1 notice, 1 left out.\nLeft out\n- Late nitrogen: the stand is too young. Next time 30 Oct 2027.", "OH, zone 6a, 12 Sep 2026 to 11 Sep 2027. 1 job planned, 1 done, 1 notice."},
		{"no next time", program(wide), func(p *schedule.Program) { p.LeftOut[0].CarriedTo = schedule.Date{} }, "- Late nitrogen: the stand is too young. Next time 30 Oct 2027.", "- Late nitrogen: the stand is too young."},
		{"nothing assumed", program(wide), func(p *schedule.Program) { p.Assumptions = nil }, "Assumed\n- Care not given, taken as medium.", ""},
		{"the spread of the days", program(wide), func(p *schedule.Program) { p.Season.SpreadDays = 1 }, "", "- 8 years in 10 the autumn days fall within 1 day of these; trust a soil thermometer over them."},
		{"no law", program(wide), func(p *schedule.Program) { p.Laws = nil }, "Law: Ohio Rev. Code § 905.326; local codes may add to it, and the label counts before all. No legal advice: ask the\nextension office.", "Law: none found here; ask the extension office. The label counts before all."},
		{"nothing of law", program(wide), func(p *schedule.Program) { p.Laws, p.LawNotes = nil, nil }, "Law: Ohio Rev. Code § 905.326; local codes may add to it, and the label counts before all. No legal advice: ask the\nextension office.", ""},
		// The full program.
		{"full: nothing of law", full, func(p *schedule.Program) { p.Laws, p.LawNotes = nil, nil }, "Law: Ohio Rev. Code § 905.326; local codes may add to it, and the label counts before all. No legal advice: ask the\nextension office.\nLaw\n- No fertilizer on frozen ground. [Ohio Rev. Code § 905.326; as of 2024-01; low, read]\nThis is no legal advice.", ""},
		{"full: no shed", full, func(p *schedule.Program) { p.InTheShed = nil }, "If nothing more is bought\n- The limestone runs out at east/lime/1.", ""},
		{"full: the place as found", full, func(p *schedule.Program) { p.Place.Where, p.Place.Hardiness = "Cleveland", "" }, "OH, zone 6a, 12 Sep 2026 to 11 Sep 2027. 1 job planned, 1 done, 1 notice, 1 left out.\nOH, hardiness zone 6a, climate from state and hardiness zone.",
			"Cleveland, 12 Sep 2026 to 11 Sep 2027. 1 job planned, 1 done, 1 notice, 1 left out.\nCleveland, climate from state and hardiness zone."},
		{"full: as exact as can be", full, func(p *schedule.Program) { p.Place.Better = nil }, "More exact with: elevation.", ""},
		{"full: early frost in the ground", full, func(p *schedule.Program) {
			p.Season.GroundFreeze = schedule.Freeze{Early: d("2026-12-05"), Median: d("2026-12-15")}
		}, "", "Ground frozen  15 Dec 2026  in an early year by 5 Dec 2026"},
		{"full: no odds", full, func(p *schedule.Program) { p.Season.FirstFreeze.P10 = schedule.Date{} }, "First freeze   13 Oct 2026  8 years in 10: 27 Sep to 29 Oct 2026", "First freeze   13 Oct 2026"},
		{"nobody, and nothing to weigh", program(wide), first(func(e *schedule.Entry) { e.Who, e.WhoName, e.Pounds, e.Packs = "", "", 0, 0 }),
			"Lime the long eastern strip  96 lb (2.4 packs)  Mara  last safe day Mon 16 Nov\nAll jobs                                                    last safe\nSat 19 Sep  Lime the long eastern strip  96 lb      Mara  16 Nov     east/lime/1\nSat 26 Sep  Feed                         102 fl oz        done       east/nitrogen/1",
			"Lime the long eastern strip  last safe day Mon 16 Nov\nAll jobs                                              last safe\nSat 19 Sep  Lime the long eastern strip  -          16 Nov     east/lime/1\nSat 26 Sep  Feed                         102 fl oz  done       east/nitrogen/1"},
		{"four laws", program(wide), func(p *schedule.Program) {
			for _, c := range []string{"A § 1", "B § 2", "B § 2", "C § 3"} {
				p.Laws = append(p.Laws, schedule.LawLine{Text: "x", Citation: c})
			}
		}, "Law: Ohio Rev. Code § 905.326; local codes may add to it, and the label counts before all. No legal advice: ask the\nextension office.",
			"Law: Ohio Rev. Code § 905.326, A § 1 and 2 more provisions; local codes may add to it, and the label counts before all.\nNo legal advice: ask the extension office."},
		{"three laws", program(wide), func(p *schedule.Program) {
			p.Laws = append(p.Laws, schedule.LawLine{Text: "x", Citation: "A § 1"}, schedule.LawLine{Text: "x", Citation: "B § 2"})
		}, "Law: Ohio Rev. Code § 905.326; local codes may add to it, and the label counts before all. No legal advice: ask the\nextension office.",
			"Law: Ohio Rev. Code § 905.326, A § 1 and B § 2; local codes may add to it, and the label counts before all. No legal\nadvice: ask the extension office."},
		{"left out without a source", func(p *schedule.Program) string { return Check("fine", p, wide) }, func(p *schedule.Program) { p.LeftOut[0].Source = "" },
			"- east/late-nitrogen/1: the stand is too young. Its next time is 30 Oct 2027. [common practice]", "- east/late-nitrogen/1: the stand is too young. Its next time is 30 Oct 2027."},
		{"nothing left out or assumed", func(p *schedule.Program) string { return Check("fine", p, wide) }, func(p *schedule.Program) { p.LeftOut, p.Assumptions = nil, nil },
			"Assumed, as the file does not say\n- care not given, taken as medium\nLeft out\n- east/late-nitrogen/1: the stand is too young. Its next time is 30 Oct 2027. [common practice]", ""},
		// The working of a job.
		{"why: to buy", why, first(func(e *schedule.Entry) { e.ToBuy = true }), "Material      pelletized limestone", "Material      pelletized limestone, to buy"},
		{"why: no name", why, first(func(e *schedule.Entry) { e.MaterialName = "" }), "Material      pelletized limestone\nWhat goes with pelletized limestone, in full", "Material      limestone\nWhat goes with , in full"},
		{"why: a liquid", why, first(func(e *schedule.Entry) { e.Gallons = 2 }), "For the area  96 lb, 2.4 packs", "For the area  2 gal, 96 lb, 2.4 packs"},
		{"why: hardly a pack", why, first(func(e *schedule.Entry) { e.Packs = 0.04 }), "For the area  96 lb, 2.4 packs", "For the area  96 lb"},
		{"why: what it brings", why, first(func(e *schedule.Entry) { e.N, e.SlowN, e.K2O = 0.5, 0.2, 0.3 }), "", "Brings        0.5 lb N per 1,000 sq ft; 0.3 lb K₂O per 1,000 sq ft\nOf that slow  0.2 lb N per 1,000 sq ft"},
		{"why: no water", why, first(func(e *schedule.Entry) { e.WaterIn = 0 }), "Water in      0.25 in", ""},
		{"why: a note", why, first(func(e *schedule.Entry) { e.Note = "later" }), "", "Record book: later"},
		{"why: bound by nothing", why, first(func(e *schedule.Entry) { e.BoundBy = nil }), "- Work days are Saturday and Wednesday.", "The best day was free."},
		{"why: done, and bound by nothing", why, first(func(e *schedule.Entry) { e.BoundBy, e.State = nil, schedule.Finished }), "Sat 19 Sep 2026, planned; job east/lime/1.\nWindow 12 Sep to 16 Nov 2026, its last safe day; best about 12 Sep 2026.\n- Work days are Saturday and Wednesday.", "Sat 19 Sep 2026, done; job east/lime/1."},
		{"why: no ideal day", why, first(func(e *schedule.Entry) { e.BoundBy, e.Ideal = nil, schedule.Date{} }), "Window 12 Sep to 16 Nov 2026, its last safe day; best about 12 Sep 2026.\n- Work days are Saturday and Wednesday.", "Window 12 Sep to 16 Nov 2026, its last safe day."},
		{"why: no words for the window", why, first(func(e *schedule.Entry) { e.Window = "" }), "The start to the last safe day.", ""},
		{"why: no steps", why, first(func(e *schedule.Entry) { e.Steps = nil }), "How to do it\n1. Set the spreader to half.\n- Rain: wait.", ""},
		{"why: ten steps", why, first(func(e *schedule.Entry) { e.Steps = append(slices.Repeat(e.Steps, 9), "Catch test: 3 oz.") }), "1. Set the spreader to half.",
			"1. Set the spreader to half.\n2. Set the spreader to half.\n3. Set the spreader to half.\n4. Set the spreader to half.\n5. Set the spreader to half.\n6. Set the spreader to half.\n7. Set the spreader to half.\n8. Set the spreader to half.\n9. Set the spreader to half.\n10. Catch test: 3 oz.\nWhat fell in a catch test, as a rate: swardbook figure spreader."},
		{"why: no cautions", why, first(func(e *schedule.Entry) { e.Cautions = nil }), "Take care\n- Dust.", ""},
		{"why: no working", why, first(func(e *schedule.Entry) { e.Why = e.Why[1:] }), "1. pH 5.1 to 6.5 takes 45.9 lb/1000 sq ft of effective lime. [Laboski; common practice]\n2. The law allows 0.7 lb N per 1,000 sq ft. [Md. Code, Agric. § 6-224]\n- Laboski, C. (University of Wisconsin-Madison). Undated, read 2026. Liming terminology and analysis. Slides: sieves\nby state; Iowa fineness factors with an example (J. Sawyer); Iowa lime table from PM 1688, 2002. Checked in part.\nsoils.wisc.edu/extension/materials/Liming_Terms.pdf\n- Common practice in turf care; no published source. Common practice, no published source.",
			"1. The law allows 0.7 lb N per 1,000 sq ft. [Md. Code, Agric. § 6-224]"},
		{"why left out: no next time", sources, func(p *schedule.Program) { p.LeftOut[0].CarriedTo = schedule.Date{} }, "Its next time is 30 Oct 2027.", ""},
		{"why left out: no source", sources, func(p *schedule.Program) { p.LeftOut[0].Source = "" }, "Sources\n- Common practice in turf care; no published source. Common practice, no published source.", ""},
		// The report.
		{"soil: none", report, func(p *schedule.Program) { p.Areas[0].Findings = nil }, "1. pH 5.1, very low. Sour. [common practice]\n2. Organic matter 2.1 %. Ordinary.", "There is no soil report for this area: what wants one is left out."},
		{"soil: moved", report, func(p *schedule.Program) { p.Areas[0].Moved = []string{"pH 5.0 in 2023"} }, "", "How the readings moved:\n- pH 5.0 in 2023"},
		{"soil: not pale", report, func(p *schedule.Program) { p.Areas[0].Pale = nil }, "Why is it pale here?\n- Fits: sour soil.", ""},
		{"soil: no needs", report, func(p *schedule.Program) { p.Areas[0].Needs = nil }, "Needs:\n- lime: 57 lb per 1,000 sq ft", ""},
		{"soil: the working of the need alone", working, func(p *schedule.Program) { p.Areas[0].Findings[0].Why = nil }, "1. pH 5.1 to 6.5 takes 45.9 lb/1000 sq ft of effective lime. [Laboski; common practice]\n2. The law allows 0.7 lb N per 1,000 sq ft. [Md. Code, Agric. § 6-224]", ""},
		{"soil: no value", report, func(p *schedule.Program) { p.Areas[0].Findings[0].Value = 0 }, "1. pH 5.1, very low. Sour. [common practice]", "1. pH very low. Sour. [common practice]"},
		{"soil: no level", report, func(p *schedule.Program) { p.Areas[0].Findings[0].Level = "unknown" }, "1. pH 5.1, very low. Sour. [common practice]", "1. pH 5.1. Sour. [common practice]"},
	} {
		p := lawn(t, false)
		before := f.write(p)
		q := lawn(t, false)
		f.change(q)
		if lost, gained := differ(before, f.write(q)); lost != f.lost || gained != f.gained {
			t.Errorf("%s: lost\n%s\nwant\n%s\ngained\n%s\nwant\n%s", f.what, lost, f.lost, gained, f.gained)
		}
	}
}
