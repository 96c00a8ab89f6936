package page

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// What tells materials of one kind of job apart: the numbers on a bag of fertilizer, else
// the name without the word that all lime has.
func TestShortMaterials(t *testing.T) {
	npk := agronomy.Analysis{N: 18, P2O5: 24, K2O: 12}
	for _, c := range []struct {
		name string
		m    material.Material
		want string
	}{
		{"starter", material.Material{Kind: material.FertilizerMaterial, Analysis: npk}, "18-24-12"},
		{"compost", material.Material{Kind: material.FertilizerMaterial}, "compost"},
		{"cold ash", material.Material{Kind: material.WoodAsh, Analysis: agronomy.Analysis{K2O: 5}}, "cold ash"},
		{"pelletized limestone", material.Material{Kind: material.LimeMaterial}, "pelletized"},
		{"dolomitic lime", material.Material{Kind: material.LimeMaterial}, "dolomitic"},
		{"ground limestone", material.Material{Kind: material.LimeMaterial}, "ground limestone"},
		{"limestone", material.Material{Kind: material.LimeMaterial}, "limestone"},
	} {
		e := &schedule.Entry{MaterialName: c.name, Dose: material.Dose{Material: c.m}}
		if got := shortMaterial(e); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	b := &sheetBuilder{p: &schedule.Program{Entries: []schedule.Entry{
		{Kind: schedule.Lime, Material: "a"}, {Kind: schedule.Lime, Material: "b"}, {Kind: schedule.Lime, Material: "c"}, {Kind: schedule.Nitrogen, Material: "d"}, {Kind: schedule.Nitrogen},
		{Kind: schedule.Nitrogen, Material: "d"}, {Kind: schedule.Potassium}, {Kind: schedule.Potassium, Material: "e"},
	}}}
	if got := fmt.Sprint(b.twoMaterials()); got != "[lime]" {
		t.Errorf("of more than one material: %s", got)
	}
}

// Job by job: each in every program, on its day, left out with the reason, or not in it; in
// the order of the first days; and apart what all leave out.
func TestJobsCompared(t *testing.T) {
	entry := func(id string, k schedule.Kind, day string) schedule.Entry {
		return schedule.Entry{ID: id, Kind: k, AreaName: "East", Date: on(t, day), Summary: "Do " + id + "."}
	}
	one := &schedule.Program{Entries: []schedule.Entry{entry("e/lime/2026-1", schedule.Lime, "2026-10-05"), entry("e/nitrogen/2026-1", schedule.Nitrogen, "2026-10-01")},
		LeftOut: []schedule.LeftOut{{ID: "e/sulfur/2026-1", Kind: schedule.Sulfur, Reason: "no."}}}
	two := &schedule.Program{Entries: []schedule.Entry{entry("e/lime/2026-1", schedule.Lime, "2026-09-20"), entry("e/iron/2026-1", schedule.Iron, "2026-10-01")},
		LeftOut: []schedule.LeftOut{{ID: "e/nitrogen/2026-1", Kind: schedule.Nitrogen, Reason: "no day."}, {ID: "e/sulfur/2026-1", Kind: schedule.Sulfur, Reason: "not here."}}}
	words := func(all []comparedJob) (out []string) {
		for _, j := range all {
			s := j.Name
			for _, r := range j.Rows {
				s += " | " + r.Label + ": " + r.Day + " " + r.What
			}
			out = append(out, s)
		}
		return out
	}
	jobs, left := comparedJobs([]Variant{{Label: "one", Program: one}, {Label: "two", Program: two}})
	want := []string{
		"Lime 2026-1 on East | one: Mon 5 Oct 2026 Do e/lime/2026-1. | two: Sun 20 Sep 2026 Do e/lime/2026-1.",
		"Iron 2026-1 on East | one: not in it  | two: Thu 1 Oct 2026 Do e/iron/2026-1.",
		"Nitrogen 2026-1 on East | one: Thu 1 Oct 2026 Do e/nitrogen/2026-1. | two: left out no day.",
	}
	if got := words(jobs); !slices.Equal(got, want) {
		t.Errorf("%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if got := words(left); !slices.Equal(got, []string{"Sulfur 2026-1 | one: left out no. | two: left out not here."}) {
		t.Errorf("left out of all: %q", got)
	}
	// What follows, added up by hand.
	one.Entries[1].N, one.Entries[1].Pounds, one.Entries[1].Area = 0.75, 7, "e"
	two.Entries[0].Pounds, two.Entries[1].Gallons = 40, 2
	one.Areas = []schedule.AreaShown{{ID: "e", Name: "East"}}
	one.Season.LastSafe = on(t, "2026-11-16")
	var rows []string
	for _, c := range consequences([]Variant{{Label: "one", Program: one}, {Label: "two", Program: two}}) {
		rows = append(rows, fmt.Sprintf("%s: %s, %s %v%v", c.What, c.Cells[0].Text, c.Cells[1].Text, c.Cells[0].Other, c.Cells[1].Other))
	}
	want = []string{
		"Lime: 1 job, 1 job, 40 lb falsetrue", "Feed: 1 job, 7 lb, none falsetrue", "Iron: none, 1 job, 2 gal falsetrue",
		"Nitrogen, East: 0.75 lb N per 1,000 sq ft, none falsetrue", "First day with work: 1 Oct 2026, 20 Sep 2026 falsetrue", "Last day with work: 5 Oct 2026, 1 Oct 2026 falsetrue",
		"Last safe day: 16 Nov 2026, none falsetrue", "Left out: 1 job, 2 jobs falsetrue",
	}
	if !slices.Equal(rows, want) {
		t.Errorf("%s\nwant\n%s", strings.Join(rows, "\n"), strings.Join(want, "\n"))
	}
}

// Many days of one window stand on one bar if their label is no wider than the drawing, on
// two if each half's is, and else as they were; marks that lie too close stay apart.
func TestDaysTogether(t *testing.T) {
	l := &artist{f: &figure{W: 328, letter: 11}, t: timeline{from: on(t, "2026-09-01"), to: on(t, "2027-08-31"), start: 28, end: 324}}
	bar := func(every int, pounds ...float64) (*bar, [][]*chosenDay) {
		b := &bar{from: l.t.from, to: l.t.to}
		var parts [][]*chosenDay
		for i, p := range pounds {
			d := &chosenDay{on: l.t.from.AddDays(i * every), jobs: []*schedule.Entry{{Pounds: agronomy.Pounds(p)}}}
			if p > 100 { // in many areas
				for range 9 {
					d.jobs = append(d.jobs, &schedule.Entry{Pounds: agronomy.Pounds(p)})
				}
			}
			b.days, parts = append(b.days, d), append(parts, []*chosenDay{d})
		}
		return b, parts
	}
	for _, c := range []struct {
		what   string
		every  int
		pounds []float64
		want   string // days on each bar
	}{
		{"all alike", 60, []float64{9, 9, 9, 9}, "[4]"},
		{"each another", 40, []float64{12.5, 13.5, 14.5, 15.5, 16.5, 17.5}, "[3 3]"},
		{"an odd number", 40, []float64{12.5, 13.5, 14.5, 15.5, 16.5}, "[3 2]"},
		{"a wide half", 60, []float64{12, 13, 250, 260}, "[1 1 1 1]"},
		{"the other half wide", 60, []float64{250, 260, 12, 13}, "[1 1 1 1]"},
		{"too close", 11, []float64{9, 9, 9, 9}, "[1 1 1 1]"}, // 11 days are 8.9 units, 13 are 10.5
		{"just not", 13, []float64{9, 9, 9, 9}, "[4]"},
	} {
		b, parts := bar(c.every, c.pounds...)
		var got []int
		for _, p := range l.together(b, parts) {
			got = append(got, len(p))
		}
		if fmt.Sprint(got) != c.want {
			t.Errorf("%s: %v, want %s", c.what, got, c.want)
		}
	}
}

// A form's address takes the job as one more value.
func TestRecordLinks(t *testing.T) {
	for record, want := range map[string]string{"": "", "done": "done?job=e%2Flime%2F1", "https://example.org/x?site=a": "https://example.org/x?site=a&job=e%2Flime%2F1"} {
		if got := (Options{Record: record}).recordLink("e/lime/1"); got != want {
			t.Errorf("%q: %q, want %q", record, got, want)
		}
	}
	for titles, want := range map[string]string{"": "", "a": "“a”", "a,b": "“a” and “b”", "a,b,c": "“a”, “b” and “c”"} {
		var all []string
		if titles != "" {
			all = strings.Split(titles, ",")
		}
		if got := quoted(all); got != want {
			t.Errorf("%q: %s, want %s", titles, got, want)
		}
	}
	for text, want := range map[string]string{
		"One. Two.": "One.|Two.", "One (see Smith. Later). Two.": "One (see Smith. Later).|Two.", "1.5 lb. It is.": "1.5 lb.|It is.", "No. of": "No. of", "A.B": "A.B", "End. ": "End. ", "": "",
		"At 50 °F. Zero. A": "At 50 °F.|Zero.|A",
	} {
		if got := strings.Join(sentences([]string{text}), "|"); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	for named, want := range map[string]string{
		"city office": "County extension office; city office; city, town or county clerk.", "county extension agent": "County extension agent; city, town or county clerk.",
		"county and city": "County extension office; county and city.", "extension; town clerk": "Extension; town clerk.",
	} {
		if got := offices(named); got != want {
			t.Errorf("%q: %q, want %q", named, got, want)
		}
	}
}
