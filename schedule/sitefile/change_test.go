package sitefile

import (
	"strings"
	"testing"
)

// A change touches the key it is for, and nothing else of the file.
func TestChangeOfOneKey(t *testing.T) {
	const file = `# Ours.
title = "Back lawn"  # short
start = 2026-09-01

[place]
zip = "44109" # the house

[area.lawn]
size = "1,800 sq ft"
grass = { "tall fescue" = 60, "fine fescue" = 40 } # mixed

# The report.
[area.lawn.soil]
ph = 5.6
buffer = { method = "smp", ph = 6.5 } # small print

[crew]
days = [
  "sat", # early
  "wed",
]`
	for _, c := range []struct{ key, value, old, is string }{
		{"title", "Front lawn", `title = "Back lawn"  # short`, `title = "Front lawn"  # short`},
		{"area.lawn.soil.ph", "5.9", "ph = 5.6\n", "ph = 5.9\n"},
		{"area.lawn.soil.buffer.ph", "6.6", "ph = 6.5 }", "ph = 6.6 }"},
		{`area.lawn.grass."fine fescue"`, "", `{ "tall fescue" = 60, "fine fescue" = 40 }`, `{ "tall fescue" = 60 }`},
		{`area.lawn.grass."tall fescue"`, "", `{ "tall fescue" = 60, "fine fescue" = 40 }`, `{ "fine fescue" = 40 }`},
		{`area.lawn.grass.zoysiagrass`, "10", `"fine fescue" = 40 }`, `"fine fescue" = 40, zoysiagrass = 10 }`},
		{"start", "2027-09-01", "2026-09-01", "2027-09-01"},
		{"crew.days", "fri", "[\n  \"sat\", # early\n  \"wed\",\n]", `["fri"]`},
		{"crew.days", "", "\n\n[crew]\ndays = [\n  \"sat\", # early\n  \"wed\",\n]", "\n\n"},
		{"place.zip", "", "[place]\nzip = \"44109\" # the house\n", ""},
		{"place.state", "OH", `zip = "44109" # the house`, "zip = \"44109\" # the house\nstate = \"OH\""},
		{"units", "metric", "start = 2026-09-01\n", "start = 2026-09-01\nunits = \"metric\"\n"},
		{"area.lawn.soil.cec", "9", "# small print\n", "# small print\ncec = 9\n"},
		{"area.lawn.soil.magnesium.found", "48 ppm", "# small print\n", "# small print\nmagnesium.found = \"48 ppm\"\n"},
		{"crew.paid", "true", "  \"wed\",\n]", "  \"wed\",\n]\npaid = true\n"},
		{"local.note", "a \"b\"", "  \"wed\",\n]", "  \"wed\",\n]\n\n[local]\nnote = \"a \\\"b\\\"\"\n"},
		{"area.new.size", "100 m2", "  \"wed\",\n]", "  \"wed\",\n]\n\n[area.new]\nsize = \"100 m2\"\n"},
		{"crew.people.mara", "Mara", "  \"wed\",\n]", "  \"wed\",\n]\n\n[crew.people]\nmara = \"Mara\"\n"},
		{"strange", "x", "start = 2026-09-01\n", "start = 2026-09-01\nstrange = \"x\"\n"},
	} {
		before, ps := Pairs("", []byte(file))
		if len(ps) > 0 {
			t.Fatal(ps)
		}
		var after []Pair
		for _, p := range before {
			if p.Key != c.key {
				after = append(after, p)
			} else if c.value != "" {
				after = append(after, Pair{c.key, c.value})
			}
		}
		if found := valuesOf(before)[c.key]; found == "" {
			after = append(after, Pair{c.key, c.value})
		}
		got, err := Change([]byte(file), before, after)
		want := strings.Replace(file, c.old, c.is, 1)
		if err != nil || want == file || string(got) != want {
			t.Errorf("%s = %q: %v\n%s\nwant\n%s", c.key, c.value, err, got, want)
		}
	}
}

// With the only key in a pair of braces the braces go as well; so does the header of a table
// of which nothing is left, whatever stands below it.
func TestChangeLeavesNothing(t *testing.T) {
	for _, c := range []struct{ file, key, want string }{
		{"title = \"x\"\n[area.a]\nsize = \"1 m2\"\ngrass = { \"tall fescue\" = 100 }\n", `area.a.grass."tall fescue"`, "title = \"x\"\n[area.a]\nsize = \"1 m2\"\n"},
		{"title = \"x\"\n[place]\n[place.deep]\nzip = \"1\"\n", "place.deep.zip", "title = \"x\"\n"},
		{"title = \"x\"\n[place]\nstate = \"OH\"\n[crew]\npaid = true", "crew.paid", "title = \"x\"\n[place]\nstate = \"OH\"\n"},
		{"\xef\xbb\xbftitle = \"x\"\r\nunits = \"us\"\r\n", "units", "title = \"x\"\r\n"},
	} {
		before, _ := Pairs("", []byte(c.file))
		var after []Pair
		for _, p := range before {
			if p.Key != c.key {
				after = append(after, p)
			}
		}
		got, err := Change([]byte(c.file), before, after)
		if err != nil || string(got) != c.want {
			t.Errorf("without %s: %v\n%q, want\n%q", c.key, err, got, c.want)
		}
	}
	got, err := Change(nil, nil, []Pair{{"title", "x"}, {"place.zip", "44109"}})
	if want := "title = \"x\"\n\n[place]\nzip = \"44109\"\n"; err != nil || string(got) != want {
		t.Errorf("%v: %q, want %q", err, got, want)
	}
}

// A file in a form that cannot be changed key by key is left alone, and the key named.
func TestChangeRefuses(t *testing.T) {
	file := []byte("title = \"x\"\narea.east.size = \"1 m2\"\n")
	before, _ := Pairs("", file)
	for _, c := range []struct {
		after Pair
		says  string
	}{{Pair{"area.east", "x"}, "area.east stands in the file in a form that is better changed by hand"}} {
		if got, err := Change(file, before, append(before[:len(before):len(before)], c.after)); err == nil || got != nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%v: %s, %v", c.after, got, err)
		}
	}
}
