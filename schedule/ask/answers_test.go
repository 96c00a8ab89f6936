package ask

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/sitefile"
)

// siteFiles are the examples and the files with every key.
func siteFiles(t testing.TB) map[string][]byte {
	t.Helper()
	names, err := filepath.Glob("../../examples/*/site.toml")
	if err != nil || len(names) < 3 {
		t.Fatalf("%d examples, %v", len(names), err)
	}
	out := map[string][]byte{}
	for _, name := range append(names, "../sitefile/testdata/full.toml", "../sitefile/testdata/three.toml") {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		out[filepath.ToSlash(name)] = text
	}
	return out
}

// A file that is taken apart and put together again makes the same site.
func TestReadAndFile(t *testing.T) {
	for name, text := range siteFiles(t) {
		a, problems := Read(text, nil)
		if len(problems) > 0 {
			t.Errorf("%s: %v", name, problems)
		}
		again, _ := File(a)
		want, _ := sitefile.Load(siteName, text, nil)
		got, _, ps := Load(a, nil)
		if want == nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%s: another site after\n%s%v", name, again, ps)
		}
		if b, _ := File(a.Tidy()); !bytes.Equal(again, b) || !slices.Equal(a.Tidy(), a.Tidy().Tidy()) {
			t.Errorf("%s: not tidy after one turn", name)
		}
	}
}

const book = `date,area,kind,season,n,material,analysis,slow,lime_value,amount,of,by,note
2026-09-20,lawn,lime,2026,1,bag1,,,85,96 lb,96 lb,,"the far, shady end"
2026-10-02,lawn,nitrogen,2026,1,bag2,22-2-8,0.3,,half,,,=formula
date,job,amount
2026-10-03,lawn/potassium/1,missed
`

func TestRecordBook(t *testing.T) {
	site, _ := File(plainLawn)
	a, problems := Read(site, []byte(book))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for key, want := range map[string]string{"record.1.note": "the far, shady end", "record.2.note": "=formula", "record.3.job": "lawn/potassium/1"} {
		if got := a.Get(key); got != want {
			t.Errorf("%s is %q, not %q", key, got, want)
		}
	}
	_, again := File(a)
	b, _ := Read(site, again)
	if !slices.Equal(a.Tidy(), b) {
		t.Errorf("after a turn: %v\n%s", b, again)
	}
	_, want := mustLoad(t, site, []byte(book))
	_, got, ps := Load(a, nil)
	if !slices.EqualFunc(got, want, func(x, y schedule.Done) bool {
		x.Line, y.Line, x.Content, y.Content = 0, 0, nil, nil
		return x == y
	}) {
		t.Errorf("done %v, not %v (%v)", got, want, ps)
	}
}

func mustLoad(t *testing.T, site, record []byte) (*schedule.Site, []schedule.Done) {
	t.Helper()
	s, ps := sitefile.Load(siteName, site, nil)
	if s == nil {
		t.Fatal(ps)
	}
	done, ps := sitefile.LoadRecord(recordName, record, s)
	if schedule.Fatal(ps) {
		t.Fatal(ps)
	}
	return s, done
}

// Each problem has the key of its answer, and the words of the file's own problem.
func TestProblems(t *testing.T) {
	for _, c := range []struct{ key, value, at, message string }{
		{"place.zip", "", "place", "nothing is said about the place"},
		{"place.zip", "4410", "place.zip", `"4410" is no ZIP`},
		{"area.lawn.size", "big", "area.lawn.size", `"big"`},
		{"area.lawn.size", "", "area.lawn.size", "is missing"},
		{"area.lawn.grass", "tall fescu", "area.lawn.grass", `unknown grass "tall fescu"`},
		{`area.lawn.grass."tall fescue"`, "60", `area.lawn.grass."tall fescue"`, "stands below a key that has a value"},
		{"area.lawn.seeded", "9/3/2026", "area.lawn.seeded", "is text where a day is wanted"},
		{"area.lawn.soil.ph", "54", "area.lawn.soil.ph", "54 is outside 2 to 12"},
		{"area.lawn.soil.ph", "sour", "area.lawn.soil.ph", "is text where a plain number is wanted"},
		{"area.lawn.soil.buffer.ph", "64", "area.lawn.soil.buffer.ph", "64 is outside 3 to 9"},
		{"area.lawn.colour", "green", "area.lawn.colour", "unknown key"},
		{"material.bag2.analysis", "22-2", "material.bag2.analysis", ""},
		{"title", "a\nb", "title", "holds a line break"},
		{"title", "a\u202eb", "title", "U+202E"},
		{"no key", "x", "no key", "is no key"},
		{"record.1.date", "yesterday", "record.1.date", `"yesterday" is not a date`},
		{"record.1.date", "#", "record.1.date", "is not a date"},
		{"record.1.amount", "some", "record.1.amount", "is not an amount"},
		{"record.1.kind", "limes", "record.1.kind", "unknown kind"},
		{"record.1.note", "a\nb", "record.1.note", "holds a line break"},
		{"record.2.date", "2026-10-02", "record.2.kind", "is missing"},
		{"record.1.colour", "green", "record.1.colour", "unknown column"},
	} {
		a := plainLawn.Set("record.1.date", "2026-10-01").Set("record.1.kind", "nitrogen").Set("record.1.material", "bag2").Set("record.1.amount", "4 lb")
		if ps := Problems(a); len(ps) > 0 {
			t.Fatal(ps)
		}
		ps := Problems(a.Set(c.key, c.value))
		found := slices.ContainsFunc(ps, func(p schedule.Problem) bool {
			return p.Key == c.at && strings.Contains(p.Message, c.message) && p.Hint != "" && !p.Warning
		})
		if !found {
			t.Errorf("%s = %q: %+v", c.key, c.value, ps)
		}
	}
	for name, text := range siteFiles(t) {
		text := strings.Replace(string(text), "ph = ", "ph = 5", 1)
		text = strings.Replace(text, "size = \"", "size = \"x", 1)
		a, _ := Read([]byte(text), nil)
		_, want := sitefile.Load(siteName, []byte(text), nil)
		words := func(ps []schedule.Problem) (out []string) {
			for _, p := range ps {
				out = append(out, p.Key+": "+p.Message+" "+p.Hint)
			}
			slices.Sort(out)
			return out
		}
		if got := Problems(a); !slices.Equal(words(got), words(want)) {
			t.Errorf("%s: %q, not %q", name, words(got), words(want))
		}
	}
}

// A second value for a key that takes one is said, and for a list is one more.
func TestTwice(t *testing.T) {
	a := slices.Concat(plainLawn, Answers{{Key: "crew.days", Value: "sat"}, {Key: "crew.days", Value: "wed"}, {Key: "title", Value: "Other"}})
	if got := a.Tidy().Get("crew.days"); got != "sat, wed" {
		t.Errorf("days %q", got)
	}
	if ps := Problems(a); len(ps) != 1 || ps[0].Key != "title" {
		t.Error(ps)
	}
}

func TestShare(t *testing.T) {
	text := siteFiles(t)["../sitefile/testdata/full.toml"]
	a, _ := Read(text, []byte("date,kind,area,by\n2026-10-01,lime,east,mara\n"))
	a = append(a, Answer{Key: `"place".normals`, Value: "station.csv"}, Answer{Key: `"calendar".link`, Value: "https://example.org"})
	for _, people := range []bool{false, true} {
		shared, left := Share(a, people)
		text := fmt.Sprint(shared)
		if strings.Contains(text, "mara") != people || strings.Contains(text, "Tovi") != people {
			t.Errorf("people %v: %s", people, text)
		}
		for _, never := range []string{"normals", "station", "calendar", "heron", "example.org"} {
			if strings.Contains(text, never) {
				t.Errorf("%s is shared", never)
			}
		}
		if want := map[bool]int{false: 3, true: 2}[people]; len(left) != want {
			t.Errorf("people %v: said %q", people, left)
		}
		if _, err := Encode(shared, ID{}); err != nil {
			t.Error(err)
		}
	}
	for _, key := range []string{"place.normals", "calendar.secret", `"calendar".secret`, "area.lawn.nothing"} {
		if _, err := Encode(plainLawn.Set(key, "x"), ID{}); err == nil {
			t.Errorf("%s goes into an address", key)
		}
	}
}

// randomly gives answers out of the table with values that may or may not fit.
func randomly(r *rand.Rand) Answers {
	values := []string{"5", "5.10", "-0", "1e3", "true", "2026-09-03", "sat, wed", "14 ppm", "12 ppm, 20 ppm", "tall fescue", `a "b" \ c`, "é ü 芝", "[x]", "{", "'", "#", "=1", "date", "kind", " x ", "nan"}
	names := []string{"lawn", "a b", "8", "2026-08-11", "x-y", "ü", `q"`, "."}
	var a Answers
	for range r.IntN(20) {
		parts := strings.Split(table[r.IntN(len(table))], ".")
		for i := range parts {
			if parts[i] == "*" {
				parts[i] = names[r.IntN(len(names))]
			}
		}
		a = append(a, Answer{Key: sitefile.JoinPath(parts...), Value: values[r.IntN(len(values))]})
	}
	return a
}

func TestRandomAnswers(t *testing.T) {
	r := rand.New(rand.NewPCG(20, 6))
	coded := 0
	for range 600 {
		a := randomly(r)
		tidy := a.Tidy()
		if !slices.Equal(tidy, tidy.Tidy()) {
			t.Fatalf("%q: %q, then %q", a, tidy, tidy.Tidy())
		}
		code, err := Encode(a, ID{7})
		if err != nil {
			continue
		}
		coded++
		got, err := Decode(code)
		if err != nil || !slices.Equal(got[1:], tidy) {
			t.Fatalf("%q becomes %q, %v, not %q", a, got, err, tidy)
		}
	}
	if coded < 150 {
		t.Errorf("only %d had a code", coded)
	}
}
