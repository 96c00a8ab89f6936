package sitefile

import (
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/schedule"
)

// lawn is a small site whose soil report the tests add to.
const lawn = `id = "plum-row-1"
title = "Thrum End"
start = 2026-09-12
[place]
state = "OH"
hardiness = "6a"
[area.east]
size = "2600 sq ft"
grass = "tall fescue"
texture = "loam"
[area.east.soil]
sampled = 2026-08-11
`

// says looks for a problem by a part of its message, or of its hint.
func says(ps []schedule.Problem, key, part string) bool {
	for _, p := range ps {
		if p.Key == key && (strings.Contains(p.Message, part) || strings.Contains(p.Hint, part)) {
			return true
		}
	}
	return false
}

// The amounts that the laboratory recommends are read, those of lime as effective lime.
func TestPrintedByTheLaboratory(t *testing.T) {
	s, ps := load(t, lawn+`depth = "4 in"
method = "Mehlich I"
ph = 5.4
lime = "60 lb/1000 sq ft"
lime_ecce = 70
nitrogen = "3 lb/1000 sq ft"
phosphate = "1 lb/1000 sq ft"
potash = "10 g/m2"
`)
	if s == nil {
		t.Fatal(ps)
	}
	r := s.Areas[0].Soil
	p := r.Printed
	if r.Method != agronomy.Mehlich1 || p.Lime == nil || *p.Lime != 42 || *p.Nitrogen != 3 || *p.Phosphate != 1 || *p.Potash < 2.04 || *p.Potash > 2.05 {
		t.Errorf("%s, %+v", r.Method, p)
	}
	if _, ps = load(t, lawn+"lime_ecce = 70\n"); !says(ps, "area.east.soil.lime_ecce", "no lime is given") {
		t.Errorf("a value without lime: %v", ps)
	}
	if _, ps = load(t, lawn+"ph = 6\nnitrogen = \"130 lb/1000 sq ft\"\n"); !says(ps, "area.east.soil.nitrogen", "by the acre") {
		t.Errorf("pounds by the acre as by 1000 sq ft: %v", ps)
	}
}

func TestPoundsByTheAcre(t *testing.T) {
	text := lawn + "depth = \"4 in\"\nmethod = \"M3\"\nphosphorus = \"28 lb/acre\"\n"
	s, ps := load(t, text)
	if s == nil || s.Areas[0].Soil.Phosphorus.PPM != 14 {
		t.Errorf("28 lb/acre is not 14 ppm: %v", ps)
	}
	s, ps = load(t, text+"lb_per_acre_depth = true\n")
	if s == nil || int(s.Areas[0].Soil.Phosphorus.PPM) != 23 {
		t.Errorf("28 lb in 4 in of an acre are not 23 ppm: %v", ps)
	}
	_, ps = load(t, lawn+"method = \"M3\"\nphosphorus = \"28 lb/acre\"\nlb_per_acre_depth = true\n")
	if !says(ps, "area.east.soil.depth", "is missing") {
		t.Errorf("pounds in a depth that is not given: %v", ps)
	}
}

func TestStateByName(t *testing.T) {
	for _, name := range []string{"Ohio", "OHIO", "ohio", "oh"} {
		s, ps := load(t, strings.Replace(lawn, `"OH"`, `"`+name+`"`, 1))
		if s == nil || s.Place.State != "OH" {
			t.Errorf("%q: %v", name, ps)
		}
	}
}

// Slips that look like values: each is a warning that names the likely slip.
func TestSlips(t *testing.T) {
	report := lawn + "depth = \"4 in\"\nmethod = \"M3\"\n"
	stone := lawn + "[material.stone]\nkind = \"lime\"\n"
	feed := lawn + "[material.feed]\nanalysis = \"24-0-8\"\nlasts = \"8 weeks\"\n"
	sized := func(size string) string { return strings.Replace(lawn, "2600 sq ft", size, 1) }
	for name, c := range map[string]struct{ text, key, part string }{
		"decimal comma after zero":  {sized("0,250 acre"), "area.east.size", "write a point: 0.250 acre"},
		"point for thousands":       {sized("5.200 sq ft"), "area.east.size", "write 5,200 sq ft"},
		"small area":                {sized("26 sq ft"), "area.east.size", "square meters"},
		"vast area":                 {sized("26 acres"), "area.east.size", "square feet"},
		"CCE of calcium":            {stone + "cce = 36\n", "material.stone.cce", "calcium that was noted"},
		"fineness lacks a digit":    {stone + "cce = 90\nfineness = { \"8\" = 100, \"20\" = 98, \"60\" = 7 }\n", "material.stone.fineness.60", "digit missing"},
		"buffer that asks for lime": {report + "ph = 7.7\nbuffer = { method = \"smp\", ph = 6.3 }\n", "area.east.soil.buffer", "another sample"},
		"acidity above the CEC":     {report + "ph = 5.2\ncec = 6\nacidity = 14\n", "area.east.soil.acidity", "changed places"},
		"slow share as a part":      {feed + "slow_share = 0.004\n", "material.feed.slow_share", "0.4 for 40 %"},
		"longitude":                 {strings.Replace(lawn, "hardiness", "latitude = 40.1\nlongitude = 83.1\nhardiness", 1), "place.longitude", "did you mean -83.1?"},
		"away in another year":      {lawn + "[crew]\naway = [\"2025-10-03/2025-10-11\"]\n", "crew.away", "year right"},
		"cap by the acre":           {lawn + "[local]\nnote = \"x\"\nmax_n_per_application = \"0.7 lb/acre\"\n", "local.max_n_per_application", "not lb/acre"},
	} {
		if _, ps := load(t, c.text); !says(ps, c.key, c.part) {
			t.Errorf("%s: nothing at %s says %q: %v", name, c.key, c.part, ps)
		}
	}
	for name, text := range map[string]string{
		"whole": report + "ph = 5.6\ncec = 8\nacidity = 3\n", "small part of an acre": sized("1.250 acre"), "fine stone": stone + "cce = 90\nfineness = { \"8\" = 100, \"20\" = 98, \"60\" = 75, \"100\" = 60 }\n",
		"away": lawn + "[crew]\naway = [\"2026-10-03/2026-10-11\"]\n", "buffer at a high pH": report + "ph = 7.2\nbuffer = { method = \"smp\", ph = 7.1 }\n",
	} {
		if _, ps := load(t, text); len(ps) > 0 {
			t.Errorf("%s: %v (%s)", name, ps, ps[0].Hint)
		}
	}
}
