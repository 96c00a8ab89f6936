package sitefile

import (
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/schedule"
)

// lawn is a small site whose soil report the tests add to.
const lawn = `id = "plum-row-1"
title = "Plum Row"
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

// The laboratory's own amounts are read, lime by what acts of it.
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
