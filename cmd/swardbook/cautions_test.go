package main

import (
	"maps"
	"os"
	"regexp"
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

// cautious is a site that spreads and sprays every kind of material.
const cautious = `id = "plum-row-9"
title = "Thrum End"
start = 2026-08-20
[place]
state = "OH"
hardiness = "6a"
[area.sour]
size = "2000 sq ft"
grass = "tall fescue"
texture = "loam"
[area.sour.soil]
sampled = 2026-07-20
depth = "4 in"
method = "mehlich-3"
ph = 5.2
cec = 9
phosphorus = "12 ppm"
potassium = "45 ppm"
magnesium = "150 ppm"
[area.salty]
size = "2000 sq ft"
grass = "tall fescue"
texture = "clay loam"
[area.salty.soil]
sampled = 2026-07-20
depth = "4 in"
method = "mehlich-3"
ph = 7.8
cec = 20
lower_ph = true
phosphorus = "60 ppm"
potassium = "200 ppm"
magnesium = "40 ppm"
sodium = "1100 ppm"
[area.ashy]
size = "1500 sq ft"
grass = "tall fescue"
texture = "loam"
[area.ashy.soil]
sampled = 2026-07-20
ph = 5.4
[area.burnt]
size = "1500 sq ft"
grass = "tall fescue"
texture = "loam"
[area.burnt.soil]
sampled = 2026-07-20
ph = 5.6
[material.ash]
kind = "wood ash"
pack = "5 lb"
on_hand = 6
`

// Every output that tells how to do a job says what to wear, who stays off, what to
// keep clean and dry, and that the label comes first; iron also that it stains, and
// stays apart from weed killers.
func TestEveryOutputCautions(t *testing.T) {
	site, problems := sitefile.Load("plum.toml", []byte(cautious), nil)
	if site == nil || schedule.Fatal(problems) {
		t.Fatal(problems)
	}
	p, err := plan.Program(site, nil, schedule.Date{})
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	if err := os.WriteFile("plum.toml", []byte(cautious), 0o644); err != nil {
		t.Fatal(err)
	}
	flat := func(s string) string {
		s = strings.NewReplacer("\r\n ", "", `\,`, ",", `\;`, ";", "&#39;", "'", "’", "'", "\u2060", "", "\u00a0", " ").Replace(s)
		return strings.Join(strings.Fields(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(s, " ")), " ")
	}
	run := func(args ...string) string {
		out, talk, code := sward(args...)
		if code != 0 {
			t.Fatalf("%v: %s", args, talk)
		}
		return flat(out)
	}
	whole := map[string]string{
		"program --next": run("program", "plum.toml", "--next", "60", "--today", "2026-08-20"),
		"program --full": run("program", "plum.toml", "--full", "--today", "2026-08-20"),
		"JSON":           run("program", "plum.toml", "--format", "json", "--today", "2026-08-20"),
		"calendar":       run("calendar", "plum.toml"),
	}
	topics := map[string]string{"what to wear": "gloves|goggles", "children": "hildren", "pets": "pets", "paving": "paving", "water": "drain|water", "label": "label"}
	seen := map[string]bool{}
	for i := range p.Entries {
		e := &p.Entries[i]
		if e.Material == "" {
			continue
		}
		seen[string(e.Dose.Material.Kind)] = true
		need := topics
		if e.Kind == schedule.Iron {
			need = map[string]string{"stains": "stain", "weed killers": "weed killer"}
			maps.Copy(need, topics)
		}
		whole["why"] = run("why", "plum.toml", e.ID, "--today", "2026-08-20")
		said := strings.Join(e.Cautions, " ")
		for topic, words := range need {
			if !regexp.MustCompile(words).MatchString(said) {
				t.Errorf("%s: nothing on %s: %s", e.ID, topic, said)
			}
			if !regexp.MustCompile(words).MatchString(whole["why"]) {
				t.Errorf("why %s: nothing on %s", e.ID, topic)
			}
		}
		for name, text := range whole {
			for _, c := range e.Cautions {
				if core := strings.TrimSuffix(c, "."); name != "program --full" && name != "program --next" && !strings.Contains(text, core) {
					t.Errorf("%s, %s: does not say %q", name, e.ID, c)
				}
			}
		}
		sheet := run("sheet", "plum.toml", "--today", e.Date.String())
		for topic, words := range need {
			if !regexp.MustCompile(words).MatchString(sheet) {
				t.Errorf("sheet on %s: nothing on %s", e.Date, topic)
			}
			if !regexp.MustCompile(words).MatchString(whole["program --next"]) {
				t.Errorf("program --next: nothing on %s", topic)
			}
		}
	}
	for _, kind := range []string{"lime", "wood ash", "fertilizer", "sulfur", "gypsum", "magnesium", "iron"} {
		if !seen[kind] {
			t.Errorf("no job spreads %s, so nothing of it was tested", kind)
		}
	}
}
