package sitefile

import (
	"strings"
	"testing"
)

func TestWith(t *testing.T) {
	const file = `id = "x" # name
start = 2026-09-12
[place]
hardiness = "6a"   # half-zone
[area.east]
size = "2600 sq ft"
days = ["sat",
  "wed"]
[area.east.soil]
ph = 5.1
buffer = { method = "smp", ph = 6.4 } # lab
[area.west]
size = "100 m2"`
	for _, c := range []struct{ key, value, has, path string }{
		{"hardiness", "5b", "hardiness = \"5b\"   # half-zone\n", "place.hardiness"},
		{"area.east.soil.ph", "6.25", "\nph = 6.25\nbuffer", "area.east.soil.ph"},
		{"buffer.ph", "6.6", `{ method = "smp", ph = 6.6 } # lab`, "area.east.soil.buffer.ph"},
		{"start", "2026-10-01", "start = 2026-10-01\n[place]", "start"},
		{"area.west.size", "200 m2", "size = \"200 m2\"", "area.west.size"},
		{"area.west.texture", "loam", "[area.west]\ntexture = \"loam\"\nsize", "area.west.texture"},
		{"area.west.soil.ph", "6", "size = \"100 m2\"\n\n[area.west.soil]\nph = 6\n", "area.west.soil.ph"},
		{"title", `A "b"`, "title = \"A \\\"b\\\"\"\nid", "title"},
		{"place.latitude", "40", "[place]\nlatitude = 40\nhardiness", "place.latitude"},
	} {
		got, path, err := With([]byte(file), c.key, c.value)
		if err != nil || path != c.path || !strings.Contains(string(got), c.has) {
			t.Errorf("%s = %s: path %q, err %v, got\n%s", c.key, c.value, path, err, got)
		}
	}
	for _, c := range []struct{ key, value, says string }{
		{"size", "1 m2", "fits several keys: area.east.size, area.west.size"},
		{"hardines", "6a", "place.hardiness"},
		{"area.east.soil", "x", "unknown key"},
		{"area.east.soil.ph", "low", "not a number"},
		{"start", "soon", "not a date"},
		{"hardiness", "", "no value"},
		{"hardiness", "6a\nx = 1", "no value"},
	} {
		if _, _, err := With([]byte(file), c.key, c.value); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s = %q: %v, want %q", c.key, c.value, err, c.says)
		}
	}
}

func TestWithoutAndBeside(t *testing.T) {
	const file = `[area.east]
size = "2600 sq ft" # measured
days = ["sat",
  "wed"]
[area.east.soil]
ph = 5.1
buffer = { method = "smp", ph = 6.4 } # lab`
	for path, want := range map[string]string{
		"area.east.size":           "[area.east]\ndays",
		"area.east.days":           "# measured\n[area.east.soil]",
		"area.east.soil.buffer":    "ph = 5.1\n",
		"area.east.soil.buffer.ph": "ph = 6.4", // no line of its own
		"area.east.soil.cec":       "# lab",    // not there
	} {
		if got := string(Without([]byte(file), path)); !strings.Contains(got, want) {
			t.Errorf("without %s: %s", path, got)
		}
	}
	if got := strings.Join(Beside([]byte(file), "area.east.soil.ph"), " "); got != "area.east.soil.buffer" {
		t.Errorf("beside the pH stand %q", got)
	}
	if got := strings.Join(Beside([]byte(file), "area.east.size"), " "); !strings.HasPrefix(got, "area.east.days") {
		t.Errorf("beside the size stand %q", got)
	}
}
