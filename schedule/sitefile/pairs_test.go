package sitefile

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule"
)

// A file taken apart and put together again says the same, whatever is in it.
func TestPairsComeBack(t *testing.T) {
	for _, name := range []string{"full", "three", "place-celsius", "place-normals"} {
		text := mustRead(t, "testdata/"+name+".toml")
		pairs, ps := Pairs(name, text)
		if len(ps) > 0 || len(pairs) < 5 {
			t.Fatalf("%s: %v", name, ps)
		}
		composed, ps := Compose(pairs)
		if len(ps) > 0 {
			t.Fatalf("%s: %v", name, ps)
		}
		again, _ := Pairs(name, composed)
		if name == "full" { // in the order of the list of keys already
			for _, p := range pairs {
				if !slices.Contains(again, p) {
					t.Errorf("%s: %v is lost", name, p)
				}
			}
		}
		a, ps := load(t, string(text))
		b, more := load(t, string(composed))
		if (a == nil) != (b == nil) || len(ps) != len(more) || a != nil && !reflect.DeepEqual(a, b) {
			t.Errorf("%s: %v became %v:\n%s", name, ps, more, composed)
		}
	}
}

// Each value comes as a person types it; what no line can hold is reported.
func TestPairs(t *testing.T) {
	pairs, ps := Pairs("s.toml", []byte(`title = " Thrum End "
start = 2026-09-12
through = 2026-09-12T10:00:00Z
units = ""
[place]
latitude = 40.10
longitude = -83
elevation = 1e3
[crew]
paid = true
days = [ "sat", "wed" ]
away = []
[area."east lawn"]
size = "2,600 sq ft"
grass = { "fine fescue" = 100 }
[local]
no_nitrogen = [["11-15/03-01"]]
no_phosphorus = ["a, b"]
note = "a, b"
[calendar]
remind = ["15h before", ""]
[material]
a = [{ x = 1 }]
b = [1, "a,b", true]
`))
	want := []Pair{{"title", "Thrum End"}, {"start", "2026-09-12"}, {"through", "2026-09-12T10:00:00Z"}, {"place.latitude", "40.1"}, {"place.longitude", "-83"}, {"place.elevation", "1000"},
		{"crew.paid", "true"}, {"crew.days", "sat, wed"}, {`area."east lawn".size`, "2,600 sq ft"}, {`area."east lawn".grass."fine fescue"`, "100"}, {"local.note", "a, b"}, {"material.b", "1, a,b, true"}}
	if !slices.Equal(pairs, want) {
		t.Errorf("%q, want\n%q", pairs, want)
	}
	var told []string
	for _, p := range ps {
		told = append(told, p.Key)
		if p.File != "s.toml" || p.Line == 0 || p.Message != "cannot be asked for as one line" {
			t.Errorf("%+v", p)
		}
	}
	if want := []string{"local.no_nitrogen", "local.no_phosphorus", "calendar.remind", "material.a"}; !slices.Equal(told, want) {
		t.Errorf("told %q, want %q", told, want)
	}
	if pairs, ps = Pairs("s.toml", []byte("title = ")); pairs != nil || !schedule.Fatal(ps) {
		t.Errorf("%v, %v", pairs, ps)
	}
}

// A file is written in the order of the keys, each value in the type of its key.
func TestCompose(t *testing.T) {
	text, ps := Compose([]Pair{
		{"area.west.soil.buffer.ph", "6.40"}, {"area.west.soil.buffer.method", "smp"}, {"area.west.size", "100 m2"}, {"area.east.grass", "tall fescue"}, {"area.east.size", " 2,600 sq ft "},
		{"title", `A "b" \ c`}, {"start", "2026-09-12"}, {"through", "soon"}, {"place.latitude", "40"}, {"place.longitude", "west"}, {"crew.paid", "true"}, {"crew.budget", "1e3"}, {"crew.jobs_per_day", "2"},
		{"crew.days", "sat, wed"}, {"crew.days", "fri"}, {"crew.away", "2026-10-03"}, {"place.mean_high_f", "36, 40.50, x"}, {"area.west.grass.fine fescue", ""}, {`area.west.grass."fine fescue"`, "60"}, {"area.west.soil.phosphorus.wanted", "12 ppm, 20 ppm"},
		{"area.west.soil.phosphorus.found", "9 ppm"}, {"area.west.soil.potassium.wanted", "12 ppm"}, {"area.west.dormant", "yes"}, {"area.west.cored", "false"}, {"strange.key", "1"}, {"title2", "x"}, {"local.note", "a, b"}, {"place.zip", "04609"}, {"material.m.cce", "-0"}, {"material.m.ecce", "1_0"}, {"material.m.price", "12345678901234567890"},
	})
	want := `title = "A \"b\" \\ c"
start = 2026-09-12
through = "soon"
title2 = "x"

[place]
zip = "04609"
latitude = 40
longitude = "west"
mean_high_f = [36, 40.5, "x"]

[crew]
paid = true
budget = 1000
days = ["sat", "wed", "fri"]
away = ["2026-10-03"]
jobs_per_day = 2

[area.west]
size = "100 m2"
grass = { "fine fescue" = 60 }
dormant = "yes"
cored = false

[area.west.soil]
buffer = { method = "smp", ph = 6.4 }
phosphorus = { found = "9 ppm", wanted = ["12 ppm", "20 ppm"] }
potassium = { wanted = "12 ppm" }

[area.east]
size = "2,600 sq ft"
grass = "tall fescue"

[material.m]
cce = 0
ecce = "1_0"
price = "12345678901234567890"

[local]
note = "a, b"

[strange]
key = "1"
`
	got := strings.TrimPrefix(string(text), "\n")
	if got != want || len(ps) > 0 {
		t.Errorf("%v:\n%s", ps, got)
	}
}

func TestComposeRefuses(t *testing.T) {
	for _, c := range []struct {
		pairs     []Pair
		key, says string
	}{
		{[]Pair{{"title", "a"}, {"title", "b"}}, "title", `is given twice, as "a" and as "b"`},
		{[]Pair{{"area.east", "x"}, {"area.east.size", "1"}}, "area.east.size", "stands below a key that has a value itself"},
		{[]Pair{{"area.east.size", "1"}, {"area.east", "x"}}, "area.east", "is a table with keys of its own"},
		{[]Pair{{"a b", "x"}}, "a b", "is no key of a site file"}, {[]Pair{{"", "x"}}, "", "is no key of a site file"}, {[]Pair{{"a..b", "x"}}, "a..b", "is no key"}, {[]Pair{{`a."b`, "x"}}, `a."b`, "is no key"}, {[]Pair{{"a.ö", "x"}}, "a.ö", "is no key"},
	} {
		_, ps := Compose(c.pairs)
		if len(ps) != 1 || ps[0].Key != c.key || !strings.Contains(ps[0].Message, c.says) || ps[0].Hint == "" {
			t.Errorf("%v: %v", c.pairs, ps)
		}
	}
	if text, ps := Compose([]Pair{{"title", "a\xffb"}, {"place.state", "  "}}); string(text) != "title = \"a\ufffdb\"\n" || len(ps) > 0 {
		t.Errorf("%q, %v", text, ps)
	}
}

func TestSplitPath(t *testing.T) {
	long := strings.Repeat("a", 400)
	for path, want := range map[string][]string{
		"title": {"title"}, "area.east.soil.ph": {"area", "east", "soil", "ph"}, `crew.who."east/lime"`: {"crew", "who", "east/lime"}, `a."b.c".d`: {"a", "b.c", "d"}, `a."ö"`: {"a", "ö"}, `a."\""`: {"a", `"`}, `""`: {""}, long: {long},
		strings.TrimSuffix(strings.Repeat("a.", 11), "."): strings.Split(strings.TrimSuffix(strings.Repeat("a.", 11), "."), "."),
		"": nil, "a.": nil, ".a": nil, "a b": nil, `"a`: nil, "a.\"b\tc\"": nil, "\xff": nil, long + "a": nil, strings.TrimSuffix(strings.Repeat("a.", 12), "."): nil,
	} {
		got, ok := SplitPath(path)
		if ok != (want != nil) || ok && !slices.Equal(got, want) {
			t.Errorf("%q: %q, %t", path, got, ok)
		}
		if ok && path != "" && !strings.Contains(path, `\`) && JoinPath(got...) != path {
			t.Errorf("%q came back as %q", path, JoinPath(got...))
		}
	}
}

// A name stands bare in a path if TOML lets it, else in quotes; a text that a line cannot
// show is written by the number of its character. [TOML v1.0.0, "Keys", "String"]
func TestNamesAndTextsAsTOML(t *testing.T) {
	for want, names := range map[string][]string{
		"area.azAZ09-_.size": {"area", "azAZ09-_", "size"}, `area."a b".size`: {"area", "a b", "size"}, `"a{"."z."."@Z"."[A"`: {"a{", "z.", "@Z", "[A"}, `"/0"."9:"."` + "`a" + `".""`: {"/0", "9:", "`a", ""},
	} {
		if got := JoinPath(names...); got != want {
			t.Errorf("%q: %s, want %s", names, got, want)
		}
	}
	for text, want := range map[string]string{"plain": `"plain"`, `a "b" \ c`: `"a \"b\" \\ c"`, "a\tb": `"a\u0009b"`, "a\x7fb": `"a\u007Fb"`, "\n": `"\u000A"`} {
		if got := quoted(text); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
}

// The lines of a record book taken apart and put together again are the same; a cell in a
// column without a name is reported.
func TestCellsComeBack(t *testing.T) {
	book := Header + "2026-10-10,east,lime,2026,1,stone,0-0-0,,85,96 lb,,mara,\"dry, cold\"\n\n# mine\n2026-10-11,west,nitrogen,,,,,,,half,,,'=x\n"
	lines, ps := Cells("r.csv", []byte(book))
	want := [][]Pair{
		{{"date", "2026-10-10"}, {"area", "east"}, {"kind", "lime"}, {"season", "2026"}, {"n", "1"}, {"material", "stone"}, {"analysis", "0-0-0"}, {"lime_value", "85"}, {"amount", "96 lb"}, {"by", "mara"}, {"note", "dry, cold"}},
		{{"date", "2026-10-11"}, {"area", "west"}, {"kind", "nitrogen"}, {"amount", "half"}, {"note", "=x"}},
	}
	if !reflect.DeepEqual(lines, want) || len(ps) > 0 {
		t.Errorf("%v, %v", lines, ps)
	}
	if at := CellLines([]byte(book)); !slices.Equal(at, []int{2, 5}) {
		t.Errorf("on lines %v", at)
	}
	text, at, ps := ComposeBook(lines)
	if string(text) != strings.ReplaceAll(book, "\n\n# mine", "") || !slices.Equal(at, []int{2, 3}) || len(ps) > 0 {
		t.Errorf("%s, %v, %v", text, at, ps)
	}
	if _, ps = Cells("r.csv", []byte(ShortHeader+"2026-10-10,east,lime,,half,,,extra\n")); len(ps) != 1 || ps[0].Line != 2 || !strings.Contains(ps[0].Message, `a cell "extra" after the last column`) {
		t.Errorf("%v", ps)
	}
}

func TestComposeBook(t *testing.T) {
	text, at, ps := ComposeBook([][]Pair{
		{{"date", "2026-10-10"}, {"job", "east/lime/1"}, {"note", "a\nb"}},
		{{"date", " #1 "}, {"by", "=x"}, {"note", "\xff"}},
		{{"kind", "lime"}, {"kind", "iron"}, {"colour", "red"}, {"job", " "}},
		{{"area", "date"}, {"kind", "kind"}},
	})
	want := strings.TrimSuffix(Header, "\n") + ",job\n2026-10-10,,,,,,,,,,,,\"a\nb\",east/lime/1\n'#1,,,,,,,,,,,'=x,\ufffd,\n,,lime,,,,,,,,,,,\n,,kind,,,,,,,,,,,\n"
	if string(text) != want || !slices.Equal(at, []int{2, 4, 5, 6}) {
		t.Errorf("%v\n%q, want\n%q", at, text, want)
	}
	var told []string
	for _, p := range ps {
		told = append(told, p.Error())
	}
	if got := strings.Join(told, "|"); len(ps) != 3 || ps[0].Line != 5 || ps[0].Key != "kind" || !strings.Contains(ps[0].Message, "given twice") || ps[1].Key != "colour" || !strings.Contains(ps[1].Message, "unknown column") || ps[2].Line != 6 || ps[2].Key != "area" || !strings.Contains(ps[2].Message, "reads like the names of the columns") {
		t.Errorf("%s", got)
	}
	if text, _, ps = ComposeBook([][]Pair{{{"date", "2026-10-10"}, {"job", " "}}}); string(text) != Header+"2026-10-10,,,,,,,,,,,,\n" || len(ps) > 0 {
		t.Errorf("%q %v: an empty job asks for no column", text, ps)
	}
}

// Text that a spreadsheet would run as a formula is written so that it does not, and is read
// back as it was.
func TestFormulas(t *testing.T) {
	for s, cell := range map[string]string{"": "", "x": "x", "=1": "'=1", "+1": "'+1", "-1": "'-1", "@x": "'@x", "'=1": "''=1", "''": "''", "'tis": "'tis", "a=1": "a=1", "1-1": "1-1"} {
		if got := toCell(s); got != cell || fromCell(cell) != s {
			t.Errorf("%q: %q, and back %q", s, got, fromCell(cell))
		}
	}
	if got := csvLine([]string{"a", " b \n c ", "=1", "d, e"}); got != "a,b c,'=1,\"d, e\"\n" {
		t.Errorf("%q", got)
	}
}
