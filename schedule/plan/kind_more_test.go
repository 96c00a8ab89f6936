package plan_test

import (
	"encoding/json"
	"html"
	"io"
	"os"
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy/material"
	"swardbook/schedule"
	"swardbook/schedule/ical"
	"swardbook/schedule/page"
	"swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
	"swardbook/schedule/text"
)

// A kind is added by its row and its rule: every output shows it, and a record
// book may name it.
func TestOneKindMore(t *testing.T) {
	site := garden(t)
	usual, err := plan.Program(site, nil, schedule.Date{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.PlanWithMore(site, nil)
	if err != nil {
		t.Fatal(err)
	}
	changes := schedule.Compare(usual, p)
	v := []page.Variant{{Label: "usual", Program: usual}, {Label: "more", Program: p}}
	outputs := map[string]string{
		"text":       text.Full(p, text.Style{}),
		"table":      text.Entries(p, p.Start).CSV(),
		"comparison": text.Compare("Compared", []text.Variant{{Label: "usual", Program: usual}, {Label: "more", Program: p, Changes: changes}}, text.Style{}),
	}
	asText := func(name string, b []byte, err error) {
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		outputs[name] = html.UnescapeString(string(b))
	}
	b, err := json.Marshal(p)
	asText("JSON", b, err)
	b, err = page.Sheet(p, page.Options{})
	asText("sheet", b, err)
	b, err = page.Comparison(v, page.Options{})
	asText("comparison page", b, err)

	for _, want := range []struct {
		kind            schedule.Kind
		title, category string
		sheetSays, said string
	}{
		{plan.Verticut, "Verticut East lawn", "Lawn,Verticut", "verticutting", "Verticutting 2026-1 on East lawn"},
		{plan.Topdress, "Topdress East lawn", "Lawn,Topdress", "topdressing", "Topdressing 2026-1 on East lawn"},
		{plan.Wetting, "Wet East lawn", "Lawn,Wetting", "wetting agent", "Wetting agent 2026-1 on East lawn"},
	} {
		e, _, err := p.Find("east/" + want.kind.String() + "/1")
		if err != nil || e == nil {
			t.Fatalf("%s is not planned: %v", want.kind, err)
		}
		if !strings.HasPrefix(e.Title, want.title) {
			t.Errorf("title %q, want %q", e.Title, want.title)
		}
		for name, word := range map[string]string{"text": e.Title, "table": want.kind.String(), "JSON": `"kind":"` + want.kind.String() + `"`,
			"sheet": want.sheetSays, "comparison": "Appeared: " + want.title, "comparison page": want.said} {
			if !strings.Contains(outputs[name], word) {
				t.Errorf("%s: no %q", name, word)
			}
		}
		if !slices.ContainsFunc(changes, func(c schedule.Change) bool { return c.ID == e.ID && c.What == "appeared" }) {
			t.Errorf("%s does not appear in what changed", e.ID)
		}
		only, err := ical.Write(p, ical.Options{Kinds: []schedule.Kind{want.kind}}, p.Start.Time())
		if err != nil {
			t.Fatal(err)
		}
		events, err := ical.Events(only)
		if err != nil {
			t.Fatal(err)
		}
		i := slices.IndexFunc(events, func(v ical.Event) bool { return v.UID == e.UID })
		if i < 0 || events[i].Summary != e.Title || events[i].Categories != want.category {
			t.Errorf("%s in the calendar: %+v", want.kind, events)
		}
	}
}

// What is on record of a new kind counts: as planned, and by a bag that can only
// have been meant for it.
func TestOneKindMoreOnRecord(t *testing.T) {
	site := garden(t)
	p, err := plan.PlanWithMore(site, nil)
	if err != nil {
		t.Fatal(err)
	}
	verticut, _, err := p.Find("east/verticut/1")
	if err != nil {
		t.Fatal(err)
	}
	topdress, _, err := p.Find("east/topdress/1")
	if err != nil {
		t.Fatal(err)
	}
	p, err = plan.PlanWithMore(site, []schedule.Done{
		{Line: 2, Date: topdress.Date, Area: "east", Job: topdress.ID, AsPlanned: true},
		{Line: 3, Date: topdress.Date.AddDays(1), Area: "east", Job: "wetting", Weight: 2.6},
		{Line: 4, Date: verticut.Date.AddDays(1), Area: "east", Job: "verticut"},
	})
	if err != nil {
		t.Fatal(err)
	}
	for id, want := range map[string]string{"east/topdress/1": "Topdressing on East lawn, 104 lb", "east/wetting/1": "Wetting agent on East lawn, 2.6 lb", "east/verticut/1": "Verticutting on East lawn"} {
		e, _, err := p.Find(id)
		if err != nil || e == nil || e.State != schedule.Finished || e.Title != want {
			t.Errorf("%s is not on record: %+v, %v", id, e, err)
		}
	}
	wetting, _, _ := p.Find("east/wetting/1")
	if wetting == nil || wetting.Material != "wetting" || wetting.Pounds != 2.6 {
		t.Errorf("wetting on record: %+v", wetting)
	}
	usual, err := plan.Program(site, []schedule.Done{{Line: 3, Date: topdress.Date, Area: "east", Job: "wetting", Weight: 2.6}}, schedule.Date{})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.ContainsFunc(usual.Assumptions, func(a string) bool { return strings.Contains(a, `unknown kind of job "wetting"`) }) {
		t.Error("the usual table knows wetting")
	}
}

// garden is an example site with sand and a wetting agent in the shed.
func garden(t *testing.T) *schedule.Site {
	t.Helper()
	const dir = "../../examples/reading-garden/"
	file, err := os.ReadFile(dir + "site.toml")
	if err != nil {
		t.Fatal(err)
	}
	site, problems := sitefile.Load("site.toml", file, func(name string) (io.ReadCloser, error) { return os.Open(dir + name) })
	if schedule.Fatal(problems) {
		t.Fatal(problems)
	}
	site.Materials = append(site.Materials,
		material.Material{ID: "sand", Name: "sand", Kind: material.FertilizerMaterial, Pack: 40, OnHand: 9},
		material.Material{ID: "wetting", Name: "wetting agent", Kind: material.FertilizerMaterial, Pack: 5, OnHand: 9})
	return site
}
