package sitefile

import (
	"strings"
	"testing"

	"swardbook/schedule"
)

// A record book that a spreadsheet saved with semicolons or tabs, with or without
// the line that says so, reads as one with commas; so does one to which lines with
// commas were added since. Lines keep their numbers.
func TestSeparators(t *testing.T) {
	const plain = "date,area,job,material,amount,by,note\n2026-09-23,east,lime,limestone,41 lb,mara,\"one bag, wet\"\n2026-09-26,east,starter,,half,,\n"
	want, ps := LoadRecord("book", []byte(plain), nil)
	if len(want) != 2 || schedule.Fatal(ps) {
		t.Fatal(want, ps)
	}
	semicolons := "date;area;job;material;amount;by;note\n2026-09-23;east;lime;limestone;41 lb;mara;one bag, wet\n2026-09-26;east;starter;;half;;\n"
	for name, text := range map[string]string{
		"semicolons":      semicolons,
		"CRLF":            strings.ReplaceAll(semicolons, "\n", "\r\n"),
		"mark":            "\xef\xbb\xbf" + semicolons,
		"quotes":          strings.ReplaceAll(semicolons, "one bag, wet", `"one bag, wet"`),
		"tabs":            strings.ReplaceAll(semicolons, ";", "\t"),
		"a line appended": strings.Replace(semicolons, "2026-09-26;east;starter;;half;;", "2026-09-26,east,starter,,half,,", 1),
	} {
		got, ps := LoadRecord("book", []byte(text), nil)
		if len(ps) > 0 || len(got) != 2 || got[0] != want[0] || got[1] != want[1] {
			t.Errorf("%s: %+v %v", name, got, ps)
		}
	}
	noted := strings.Replace(semicolons, "2026-09-26;east;starter;;half;;", "2026-09-26,east,starter,,half,,dry; wind", 1)
	if got, ps := LoadRecord("book", []byte(noted), nil); len(ps) > 0 || len(got) != 2 || got[0] != want[0] || got[1].Note != "dry; wind" {
		t.Errorf("a line appended, with a semicolon in its note: %+v %v", got, ps)
	}
	for _, text := range []string{"sep=;\n" + semicolons, "SEP=;\r\n" + semicolons, "sep=,\n" + plain, "# mine\nsep=;\n" + semicolons} {
		got, ps := LoadRecord("book", []byte(text), nil)
		if len(ps) > 0 || len(got) != 2 || got[0].Line != want[0].Line+strings.Count(text, "\n")-3 || got[0].Note != want[0].Note {
			t.Errorf("%q: %+v %v", text, got, ps)
		}
	}
	if _, ps := LoadRecord("book", []byte(strings.Replace(semicolons, "2026-09-26", "26.9.2026", 1)), nil); len(ps) != 1 || ps[0].Line != 3 {
		t.Errorf("a wrong date: %v", ps)
	}
}

// A character that turns the direction of text is refused by its name, in the site file
// and in the record book, and no message repeats it.
func TestDirection(t *testing.T) {
	for _, c := range []string{"\u202e", "\u202a", "\u2066", "\u2069", "\u200f", "\u061c"} {
		_, ps := Load("site.toml", []byte("title = \"Fern"+c+"bank\"\n"), nil)
		_, more := LoadRecord("book", []byte("2026-09-23,east,lime,limestone,41 lb,,no"+c+"te\n"), nil)
		for _, ps := range [][]schedule.Problem{ps, more} {
			said := false
			for _, p := range ps {
				said = said || strings.Contains(p.Message, "holds the invisible character U+")
				if strings.Contains(p.Error()+p.Hint, c) {
					t.Errorf("%q is repeated: %q", c, p.Error())
				}
			}
			if !said || !schedule.Fatal(ps) {
				t.Errorf("%q: %v", c, ps)
			}
		}
	}
}

// A byte order mark before a site file is passed over, also where [With] sets a key.
func TestMark(t *testing.T) {
	const text = "\xef\xbb\xbfid = \"fern\"\ntitle = \"Odderwyn\"\nstart = 2026-09-12\n[place]\nstate = \"OH\"\nhardiness = \"6a\"\n[area.east]\nsize = \"2600 sq ft\"\ngrass = \"tall fescue\"\n"
	s, ps := Load("site.toml", []byte(text), nil)
	if s == nil || s.ID != "fern" {
		t.Fatal(ps)
	}
	changed, _, err := With([]byte(text), "title", "Other")
	if err != nil {
		t.Fatal(err)
	}
	if s, ps = Load("site.toml", changed, nil); s == nil || s.Title != "Other" {
		t.Error(ps)
	}
}

// [With] refuses a value that is no list, table or number in the project's own words, not
// in those of the TOML library.
func TestVaryWords(t *testing.T) {
	const text = "start = 2026-09-12\n[area.east]\nsize = \"2600 sq ft\"\n[area.east.soil]\nph = 5.1\n"
	for kv, want := range map[string]string{
		"crew.days=[sat":                `crew.days: "[sat" cannot be read; a list is written in brackets, like ["sat", "wed"], and text in double quotes`,
		"area.east.soil.buffer=smp":     `area.east.soil.buffer: "smp" cannot be read; a table is written in braces, like { method = "smp", ph = 6.4 }, and text in double quotes`,
		"area.east.soil.ph=nan":         `area.east.soil.ph: "nan" is not a number; write it like 7.4`,
		"area.east.soil.ph=1_0":         `area.east.soil.ph: "1_0" is not a number; write it like 7.4`,
		"crew.jobs_per_day=2.5":         `crew.jobs_per_day: "2.5" is not a whole number`,
		`area."east".soil.ph=5`:         "",
		"area.east.soil.ph=5.":          "",
		"area.east.soil.ph=.5":          "",
		`crew.days=["sat", "wed"]`:      "",
		"crew.jobs_per_day=2.0":         "",
		"area.east.grass={ \"x\" = 1 }": "",
	} {
		key, value, _ := strings.Cut(kv, "=")
		got, _, err := With([]byte(text), key, value)
		if said := ""; err != nil {
			if said = err.Error(); said != want {
				t.Errorf("%s: %s, want %s", kv, said, want)
			}
			continue
		}
		if want != "" || strings.Count(string(got), "ph = ") > 1 {
			t.Errorf("%s: read as\n%s", kv, got)
		}
	}
}
