package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/ical"
	"swardbook/schedule/plan"
	"swardbook/schedule/sitefile"
)

// keyChanges has a change for each key of the site file, and what else must be
// set so that it can matter.
var keyChanges = []struct {
	key, value string
	first      []string // key=value, set in both
}{
	{"id", "other-1", nil},
	{"title", "Another lawn", nil},
	{"start", "2026-10-10", nil},
	{"through", "2027-05-01", nil},
	{"units", "metric", nil},
	{"place.zip", "55401", nil},
	{"place.county", "Lucas", nil},
	{"place.state", "MN", nil},
	{"place.hardiness", "5a", nil},
	{"place.elevation", "2400 ft", nil},
	{"place.latitude", "41.5", []string{"place.longitude=-83"}},
	{"place.longitude", "-81", []string{"place.latitude=40.1"}},
	{"place.mean_high_f", "[30, 34, 45, 58, 69, 78, 82, 80, 73, 61, 47, 35]", []string{normalsF, normalsLowF}},
	{"place.mean_low_f", "[10, 14, 25, 36, 47, 56, 60, 58, 50, 39, 29, 17]", []string{normalsF, normalsLowF}},
	{"place.mean_high_c", "[-1, 1, 7, 14, 20, 25, 27, 26, 22, 16, 8, 1]", []string{normalsC, normalsLowC}},
	{"place.mean_low_c", "[-12, -10, -4, 2, 8, 13, 15, 14, 10, 4, -2, -9]", []string{normalsC, normalsLowC}},
	{"place.normals", "station.csv", nil},
	{"place.first_freeze", "09-20", nil},
	{"place.last_freeze", "05-20", nil},
	{"place.water_within", "8 ft", []string{"place.state=MD"}},
	{"crew.paid", "true", []string{"place.state=MD"}},
	{"crew.budget", "5", nil},
	{"crew.days", `["mon"]`, nil},
	{"crew.away", `["2026-09-12/2026-10-20"]`, nil},
	{"crew.jobs_per_day", "1", nil},
	{"crew.people.*", "Mara B.", nil},
	{"crew.absent.*", `["2026-09-01/2027-08-30"]`, nil},
	{"crew.who.*", "tovi", nil},
	{"area.*.name", "Eastern lawn", nil},
	{"area.*.size", "3000 sq ft", nil},
	{"area.*.grass", "tall fescue", nil},
	{"area.*.grass.*", `{ "perennial ryegrass" = 90, "fine fescue" = 10 }`, nil},
	{"area.*.seeded", "2026-05-01", nil},
	{"area.*.overseed", "2026-09-20", []string{"area.east.seeded=2020-05-01"}},
	{"area.*.dormant", "true", []string{"area.east.seeded=2026-11-20"}},
	{"area.*.texture", "clay", []string{"area.west.soil.ph=5.2"}},
	{"area.*.care", "high", []string{"area.east.seeded=2020-05-01"}},
	{"area.*.clippings", "removed", []string{"area.east.seeded=2020-05-01"}},
	{"area.*.sprinkler", "0.4 in/h", nil},
	{"area.*.soluble_only", "true", nil},
	{"area.*.cored", "true", []string{"area.east.seeded=2020-05-01"}},
	{"area.*.soil.sampled", "2022-01-15", []string{"place.state=MN", "area.east.seeded=2018-05-01"}},
	{"area.*.soil.received", "2026-10-20", nil},
	{"area.*.soil.depth", "6 in", nil},
	{"area.*.soil.method", "bray-1", nil},
	{"area.*.soil.ph", "5.6", nil},
	{"area.*.soil.buffer.method", "sikora", []string{"place.state=OR"}},
	{"area.*.soil.buffer.ph", "6.0", nil},
	{"area.*.soil.acidity", "9", []string{"place.state=PA", "area.west.soil.ph=5.2"}},
	{"area.*.soil.cec", "20", nil},
	{"area.*.soil.organic_matter", "30 %", nil},
	{"area.*.soil.phosphorus", "3 ppm", nil},
	{"area.*.soil.potassium", "20 ppm", nil},
	{"area.*.soil.calcium", "100 ppm", nil},
	{"area.*.soil.magnesium", "20 ppm", nil},
	{"area.*.soil.sulfur", "2 ppm", nil},
	{"area.*.soil.sodium", "900 ppm", nil},
	{"area.*.soil.iron", "200 ppm", nil},
	{"area.*.soil.lb_per_acre_depth", "true", []string{"area.east.soil.phosphorus=28 lb/acre"}},
	{"area.*.soil.lower_ph", "true", []string{"area.east.soil.ph=7.8"}},
	{"material.*.iron", "5", []string{"area.east.soil.ph=7.8", "material.extra.kind=iron", "material.extra.iron=20"}},
	{"area.*.soil.lime", "20 lb/1000 sq ft", nil},
	{"area.*.soil.lime_ecce", "50", []string{"area.east.soil.lime=20 lb/1000 sq ft"}},
	{"area.*.soil.nitrogen", "1.5 lb/1000 sq ft", nil},
	{"area.*.soil.phosphate", "0.2 lb/1000 sq ft", nil},
	{"area.*.soil.potash", "0.5 lb/1000 sq ft", nil},
	{"area.*.soil.target_ph", "6.8", nil},
	{"material.*.name", "ground stone", nil},
	{"material.*.kind", "magnesium", []string{"material.extra.kind=gypsum", "material.extra.magnesium=10"}},
	{"material.*.cce", "100", nil},
	{"material.*.ecce", "60", nil},
	{"material.*.fineness.*", "65", nil},
	{"material.*.hydrated", "true", nil},
	{"material.*.analysis", "10-10-10", nil},
	{"material.*.slow_share", "0.9", nil},
	{"material.*.lasts", "20 weeks", nil},
	{"material.*.density", "12 lb/gal", []string{"material.starter.form=liquid", "material.starter.pack=2.5 gal", "material.starter.density=10 lb/gal"}},
	{"material.*.magnesium", "10", []string{"area.east.soil.magnesium=20 ppm"}},
	{"material.*.sulfur", "12", nil},
	{"material.*.pesticide", "true", nil},
	{"material.*.pack", "50 lb", nil},
	{"material.*.on_hand", "9", nil},
	{"material.*.rebuy", "false", nil},
	{"material.*.price", "9.5", nil},
	{"local.no_nitrogen", `["04-01/06-30"]`, nil},
	{"local.no_phosphorus", `["09-01/12-31"]`, nil},
	{"local.max_n_per_application", "0.3 lb/1000 sq ft", nil},
	{"local.note", "Borough ordinance", []string{"local.max_n_per_application=0.3 lb/1000 sq ft"}},
	{"sprayer.tank", "2 gal", liquid},
	{"sprayer.covers", "500 sq ft per gal", liquid},
	{"spreader.width", "4 ft", nil},
	{"calendar.remind", `["2h before"]`, nil},
	{"calendar.link", "https://example.org/lawn/", nil},
}

const (
	normalsF    = "place.mean_high_f=[36, 40, 51, 63, 73, 82, 85, 84, 77, 65, 52, 40]"
	normalsLowF = "place.mean_low_f=[20, 23, 31, 40, 51, 60, 64, 62, 55, 43, 34, 25]"
	normalsC    = "place.mean_high_c=[2, 4, 11, 17, 23, 28, 29, 29, 25, 18, 11, 4]"
	normalsLowC = "place.mean_low_c=[-7, -5, -1, 4, 11, 16, 18, 17, 13, 6, 1, -4]"
)

var liquid = []string{"material.starter.form=liquid", "material.starter.pack=2.5 gal", "material.starter.density=10 lb/gal",
	"sprayer.tank=4 gal", "sprayer.covers=1000 sq ft per gal"}

// Every key of the site file changes what comes out: the program, its calendar,
// its materials or its ledger. None is read for nothing.
func TestEveryKeyHasAnEffect(t *testing.T) {
	base, err := os.ReadFile("testdata/site/fern.toml")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{
		"calendar.secret":    true, // names the feed's path
		"material.*.counted": true, // with a record book; see testdata/script/materials.txtar
		"material.*.form":    true, // goes with density, and is set with it
	}
	for _, c := range keyChanges {
		seen[c.key] = true
		text := base
		for _, s := range c.first {
			key, value, _ := strings.Cut(s, "=")
			text = with(t, text, key, value)
		}
		if bytes.Equal(outcome(t, c.key, text), outcome(t, c.key, with(t, text, concrete(c.key), c.value))) {
			t.Errorf("%s = %s changes nothing", c.key, c.value)
		}
	}
	for _, k := range sitefile.Keys() {
		if !slices.ContainsFunc([]string{"material.*.fineness", "found", "wanted", "buffer"}, func(end string) bool { return k == end || path.Base(strings.ReplaceAll(k, ".", "/")) == end }) && !seen[k] {
			t.Errorf("%s is not tried here", k)
		}
	}
}

// concrete gives a pattern the names of the base file.
func concrete(pattern string) string {
	of := map[string]string{
		"crew.people.*": "crew.people.mara", "crew.who.*": "crew.who.east", "crew.absent.*": "crew.absent.mara", "area.*.grass.*": "area.east.grass",
		"area.*.soil.acidity": "area.west.soil.acidity", "area.*.texture": "area.west.texture", "material.*.kind": "material.extra.kind", "material.*.iron": "material.extra.iron", "material.*.fineness.*": "material.limestone.fineness.60",
	}
	if c, ok := of[pattern]; ok {
		return c
	}
	for _, k := range []string{"analysis", "slow_share", "lasts", "form", "density", "sulfur"} {
		if pattern == "material.*."+k {
			return "material.starter." + k
		}
	}
	return strings.NewReplacer("area.*", "area.east", "material.*", "material.limestone").Replace(pattern)
}

func with(t *testing.T, text []byte, key, value string) []byte {
	t.Helper()
	changed, _, err := sitefile.With(text, key, value)
	if err != nil {
		t.Fatalf("%s = %s: %v", key, value, err)
	}
	return changed
}

// outcome is everything that a site comes to.
func outcome(t *testing.T, key string, text []byte) []byte {
	t.Helper()
	site, problems := sitefile.Load("site.toml", text, opener("testdata/site"))
	if site == nil {
		t.Fatalf("%s: %s", key, problemText(problems))
	}
	p, err := plan.Program(site, nil, schedule.Date{})
	if err != nil {
		t.Fatalf("%s: %v", key, err)
	}
	program, err := schedule.EncodeJSON(p)
	if err != nil {
		t.Fatalf("%s: %v", key, err)
	}
	calendar, err := ical.Write(p, ical.Options{}, p.Start.Time())
	if err != nil {
		t.Fatalf("%s: %v", key, err)
	}
	materials, err := json.Marshal(p.Supplies())
	if err != nil {
		t.Fatal(err)
	}
	spending, _ := p.Spending(p.Supplies())
	budget, err := json.Marshal(spending)
	if err != nil {
		t.Fatal(err)
	}
	ledger, err := json.Marshal(p.Ledger(schedule.Date{}))
	if err != nil {
		t.Fatal(err)
	}
	return slices.Concat(program, calendar, materials, budget, ledger)
}
