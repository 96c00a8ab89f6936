package ask

import (
	"encoding/base32"
	"fmt"
	"slices"
	"strings"
	"testing"
)

func form(pairs ...string) (f Form) {
	for i := 0; i < len(pairs); i += 2 {
		f = append(f, answer(pairs[i], pairs[i+1]))
	}
	return f
}

// A number without a unit gets the one that was chosen, else the usual one; text stays.
func TestUnitsOfNumbers(t *testing.T) {
	const soil = "area.a.soil."
	for _, c := range []struct{ key, typed, chosen, want string }{
		{"area.a.size", "2200", "", "2200 sq ft"},
		{"area.a.size", "2,200", "sq m", "2,200 sq m"},
		{"area.a.size", "0.2", "acres", "0.2 acres"},
		{"area.a.size", "2200 sq yd", "sq m", "2200 sq yd"},
		{"area.a.size", "40 x 65", "", "40 x 65 ft"},
		{"area.a.size", "40 x 65", "sq ft", "40 x 65 ft"},
		{"area.a.size", "12 × 20 - 3*4", "sq m", "12 × 20 - 3*4 m"},
		{"area.a.size", "40 x 65 ft", "sq m", "40 x 65 ft"},
		{"area.a.size", "forty", "sq m", "forty"},
		{"place.elevation", "900", "", "900 ft"},
		{"place.water_within", "30", "", "30 ft"},
		{"area.a.sprinkler", "0.5", "", "0.5 in/h"},
		{soil + "depth", "4", "", "4 in"},
		{soil + "organic_matter", "3.5", "", "3.5 %"},
		{soil + "lime", "40", "", "40 lb/1000 sq ft"},
		{soil + "lime", "1.5", "tons/acre", "1.5 tons/acre"},
		{soil + "nitrogen", "3", "", "3 lb/1000 sq ft"},
		{soil + "phosphate", "3", "lb/acre", "3 lb/acre"},
		{soil + "potash", "3", "", "3 lb/1000 sq ft"},
		{soil + "phosphorus", "14", "", "14 ppm"},
		{soil + "potassium", "61 ppm K2O", "", "61 ppm K2O"},
		{soil + "ph", "5.2", "", "5.2"},
		{soil + "cec", "9", "", "9"},
		{"material.b.pack", "36", "", "36 lb"},
		{"material.b.pack", "2.5 gal", "", "2.5 gal"},
		{"material.b.lasts", "8", "", "8 weeks"},
		{"material.b.on_hand", "2", "", "2"},
		{"record.1.amount", "9", "", "9 lb"},
		{"record.1.amount", "half", "", "half"},
		{"title", "12", "", "12"},
	} {
		f := form(c.key, " "+c.typed+" ")
		if c.chosen != "" {
			f = append(f, answer("form."+c.key+".unit", c.chosen))
		}
		if got := FromForm(f).Get(c.key); got != c.want {
			t.Errorf("%s %q in %q: %q, want %q", c.key, c.typed, c.chosen, got, c.want)
		}
	}
	for _, reading := range []string{"phosphorus", "potassium", "calcium", "magnesium", "sulfur", "sodium", "iron"} {
		if got := FromForm(form(soil+reading, "14", "form.area.a.soil.unit", "lb/acre")).Get(soil + reading); got != "14 lb/acre" {
			t.Errorf("%s on a sheet in lb/acre: %q", reading, got)
		}
	}
	for key, want := range map[string]string{
		soil + "phosphorus": "[ppm lb/acre]", "area.a.soil": "[ppm lb/acre]", "area.a.size": "[sq ft sq m acres]", soil + "lime": "[lb/1000 sq ft tons/acre lb/acre]",
		soil + "nitrogen": "[lb/1000 sq ft lb/acre]", soil + "phosphate": "[lb/1000 sq ft lb/acre]", soil + "potash": "[lb/1000 sq ft lb/acre]",
		"material.b.pack": "[lb]", "material.b.lasts": "[weeks]", "place.elevation": "[ft]", soil + "depth": "[in]", soil + "ph": "[]", "title": "[]",
	} {
		if got := fmt.Sprint(Units(key)); got != want {
			t.Errorf("units of %s: %s, want %s", key, got, want)
		}
	}
}

// The other way: number and unit part where the page offers the unit, and stay together
// where it does not.
func TestNumbersFromUnits(t *testing.T) {
	const soil = "area.a.soil."
	for _, c := range []struct{ key, value, want string }{
		{"area.a.size", "2200 sq ft", "area.a.size=2200 form.area.a.size.unit=sq ft"},
		{"area.a.size", "0.2 acres", "area.a.size=0.2 form.area.a.size.unit=acres"},
		{"area.a.size", "2200 sq yd", "area.a.size=2200 sq yd"},
		{"area.a.size", "40 x 65 ft", "area.a.size=40 x 65 form.area.a.size.unit=sq ft"},
		{"area.a.size", "12 x 20 m", "area.a.size=12 x 20 form.area.a.size.unit=sq m"},
		{soil + "lime", "1.5 tons/acre", soil + "lime=1.5 form." + soil + "lime.unit=tons/acre"},
		{soil + "depth", "4 in", soil + "depth=4"},
		{soil + "depth", "10 cm", soil + "depth=10 cm"},
		{"material.b.pack", "36 lb", "material.b.pack=36"},
		{"material.b.pack", "2.5 gal", "material.b.pack=2.5 gal"},
		{"material.b.on_hand", "2", "material.b.on_hand=2"},
		{soil + "phosphorus", "14 ppm", soil + "phosphorus=14 form.area.a.soil.unit=ppm"},
		{soil + "phosphorus", "28 lb/acre", soil + "phosphorus=28 form.area.a.soil.unit=lb/acre"},
		{soil + "phosphorus", "14 mg/kg", soil + "phosphorus=14 mg/kg"},
		{"record.1.amount", "9 lb", "record.1.amount=9"},
		{"title", "12 lb", "title=12 lb"},
	} {
		var got []string
		for _, one := range ToForm(Answers{answer(c.key, c.value)}) {
			got = append(got, one.Key+"="+one.Value)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s = %q: %q, want %q", c.key, c.value, got, c.want)
		}
	}
	// Readings of one sheet share the unit of the first; another stays beside its number.
	f := ToForm(Answers{answer(soil+"phosphorus", "14 ppm"), answer(soil+"potassium", "122 lb/acre"), answer(soil+"magnesium", "48 ppm"), answer(soil+"calcium", "none")})
	for key, want := range map[string]string{soil + "phosphorus": "14", soil + "potassium": "122 lb/acre", soil + "magnesium": "48", soil + "calcium": "none", "form.area.a.soil.unit": "ppm"} {
		if got := f.Get(key); got != want {
			t.Errorf("%s: %q, want %q", key, got, want)
		}
	}
}

// What went down has its kind by what is in the bag, and by how near the sowing it was: 28
// days before or after it a feed with phosphorus is the starter. // common practice
func TestKindsOfLines(t *testing.T) {
	for _, c := range []struct{ kind, n, p, k, date, want string }{
		{"lime", "", "", "", "2026-09-05", "lime"},
		{"wood ash", "", "", "", "2026-09-05", "lime"},
		{"sulfur", "", "", "", "2026-09-05", "sulfur"},
		{"gypsum", "", "", "", "2026-09-05", "gypsum"},
		{"fertilizer", "18", "24", "12", "2026-09-30", "starter"},  // 28 days after
		{"fertilizer", "18", "24", "12", "2026-10-01", "nitrogen"}, // 29
		{"fertilizer", "18", "24", "12", "2026-08-05", "starter"},  // 28 before
		{"fertilizer", "18", "24", "12", "2026-08-04", "nitrogen"},
		{"fertilizer", "18", "0", "12", "2026-09-05", "nitrogen"},
		{"", "46", "", "", "2026-11-05", "nitrogen"},
		{"", "", "46", "", "2026-11-05", "phosphorus"},
		{"", "", "46", "10", "2026-11-05", "phosphorus"},
		{"", "", "", "50", "2026-11-05", "potassium"},
		{"", "", "46", "", "2026-09-05", "starter"},
		{"", "5", "", "50", "2026-11-05", "nitrogen"},
		{"", "many", "", "", "2026-11-05", "nitrogen"},
		{"fertilizer", "18", "24", "12", "soon", "nitrogen"},
	} {
		f := form("area.a.seeded", "2026-09-02", "material.b.kind", c.kind, "form.material.b.n", c.n, "form.material.b.p", c.p, "form.material.b.k", c.k,
			"record.1.material", "b", "record.1.date", c.date, "record.1.amount", "9")
		if got := FromForm(f).Get("record.1.kind"); got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
	two := form("area.a.seeded", "2026-09-02", "area.b.size", "3", "form.material.m.p", "46", "record.1.material", "m", "record.1.date", "2026-09-05")
	if got := FromForm(two).Get("record.1.kind"); got != "phosphorus" {
		t.Errorf("nobody says in which area: %q", got)
	}
	if got := FromForm(append(two, answer("record.1.area", "a"))).Get("record.1.kind"); got != "starter" {
		t.Errorf("in the area that was sown: %q", got)
	}
	for _, f := range []Form{form("record.1.note", "x"), form("record.1.kind", "iron", "record.1.date", "2026-09-05"), form("record.1.job", "a/lime/1", "record.1.date", "2026-09-05")} {
		n := 0
		for _, one := range FromForm(f) {
			n += strings.Count(one.Key, ".kind")
		}
		if n > 1 || f.Get("record.1.kind") == "" && n > 0 {
			t.Errorf("%v becomes %v", f, FromForm(f))
		}
	}
}

// The three numbers of a bag, and the name of one that nobody named.
func TestBags(t *testing.T) {
	for _, c := range []struct{ kind, n, p, k, name, analysis, called string }{
		{"fertilizer", "22", "2", "8", "", "22-2-8", "fertilizer 22-2-8"},
		{"", "22", "", "", "", "22-0-0", "fertilizer 22-0-0"},
		{"", "", " 46 ", "", "", "0-46-0", "fertilizer 0-46-0"},
		{"fertilizer", "", "", "50", "Potash", "0-0-50", "Potash"},
		{"fertilizer", "", "", "", "", "", "fertilizer"},
		{"lime", "", "", "", "", "", "limestone"},
		{"lime", "", "", "", " ", "", "limestone"},
		{"sulfur", "", "", "", "", "", "sulfur"},
		{"wood ash", "", "", "5", "", "0-0-5", "wood ash"},
		{"", "", "", "", "", "", ""},
	} {
		a := FromForm(form("material.b.kind", c.kind, "form.material.b.n", c.n, "form.material.b.p", c.p, "form.material.b.k", c.k, "material.b.name", c.name, "material.b.pack", "36"))
		if got := a.Get("material.b.analysis"); got != c.analysis {
			t.Errorf("%+v: analysis %q", c, got)
		}
		if got := a.Get("material.b.name"); got != c.called {
			t.Errorf("%+v: called %q", c, got)
		}
		if f := ToForm(a); c.analysis != "" {
			if got := f.Get("form.material.b.n") + "-" + f.Get("form.material.b.p") + "-" + f.Get("form.material.b.k"); got != c.analysis {
				t.Errorf("%+v: back as %q", c, got)
			}
			if got := f.Get("material.b.name"); got != strings.TrimSpace(c.name) {
				t.Errorf("%+v: the name comes back as %q", c, got)
			}
		}
	}
	for _, f := range []Form{form("material.b.analysis", "1-2-3", "form.material.b.n", "22"), form("form.material.b.n", "22", "material.b.analysis", "1-2-3")} { // the fields count
		if n := slices.DeleteFunc(FromForm(f), func(one Answer) bool { return one.Key != "material.b.analysis" }); len(n) != 1 || n[0].Value != "22-0-0" {
			t.Errorf("%v: %v", f, n)
		}
	}
	if f := ToForm(Answers{answer("material.b.analysis", "22-2")}); f.Get("form.material.b.n") != "22-2" || f.Get("form.material.b.p") != "" {
		t.Errorf("an analysis of two numbers: %v", f)
	}
}

// People keep the ids that they have; others get one of their name, no two the same.
func TestPeople(t *testing.T) {
	for name, want := range map[string]string{"Mara": "mara", "Teo Q": "teo-q", "O'Neil_2": "oneil-2", " -x- ": "x", "李": "person", "Ünal": "nal", "--": "person", "a0z9": "a0z9", "AZ": "az"} {
		if got := idOf(name); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
	a := FromForm(form("area.front.size", "3", "crew.people.boss", "Mara", "crew.people.gone", "Old", "form.people", "Mara, mara ,MARA,, Teo, Teo", "form.who.front", " Cy ", "form.who.front.lime", "Mara",
		"crew.who.front", "gone", "crew.who.nitrogen", "boss"))
	var got []string
	for _, one := range a {
		got = append(got, one.Key+"="+one.Value)
	}
	want := []string{"area.front.size=3 sq ft", "crew.who.nitrogen=boss",
		"crew.people.boss=Mara", "crew.people.mara=mara", "crew.people.mara2=MARA", "crew.people.teo=Teo", "crew.people.cy=Cy", "crew.who.front=cy", `crew.who."front/lime"=boss`}
	if !slices.Equal(got, want) {
		t.Errorf("%q\nwant\n%q", got, want)
	}
	f := ToForm(a)
	for key, want := range map[string]string{"form.people": "Mara, mara, MARA, Teo, Cy", "form.who.front": "Cy", "form.who.front.lime": "Mara", "crew.who.nitrogen": "boss"} {
		if got := f.Get(key); got != want {
			t.Errorf("%s: %q, want %q", key, got, want)
		}
	}
	if f := ToForm(Answers{answer("crew.who.front", "nobody")}); f.Get("crew.who.front") != "nobody" || f.Get("form.who.front") != "" {
		t.Errorf("who is not known stays: %v", f)
	}
}

// Days of work, mixtures, and lines of the book find their fields again.
func TestFieldsFilled(t *testing.T) {
	f := ToForm(Answers{answer("crew.days", "sat, sun"), answer(`area.a.grass."fine fescue"`, "60"), answer("area.a.grass.bermudagrass", "40"), answer("record.2.material", "bag1"), answer("record.1.date", "2026-09-05")})
	want := form("crew.days", "sat", "crew.days", "sun", "area.a.grass", "mixture", "form.area.a.mix.1.grass", "fine fescue", "form.area.a.mix.1.share", "60",
		"form.area.a.mix.2.grass", "bermudagrass", "form.area.a.mix.2.share", "40", "record.2.material", "bag1", "record.1.date", "2026-09-05", "form.record.2.was", "bag1")
	if !slices.Equal(f, want) {
		t.Errorf("%v\nwant\n%v", f, want)
	}
	for _, c := range []struct {
		typed Form
		want  Answers
	}{
		{form("area.a.grass", "tall fescue"), form("area.a.grass", "tall fescue")},
		{form("area.a.grass", "mixture"), nil},
		{form("area.a.grass", "mixture", "form.area.a.mix.1.grass", "tall fescue"), form(`area.a.grass."tall fescue"`, "0")},
		{form("area.a.grass", "green"), form(`area.a.grass."Kentucky bluegrass"`, "40", `area.a.grass."perennial ryegrass"`, "30", `area.a.grass."fine fescue"`, "30")},
		{form("area.a.grass", "straw"), form("area.a.grass.zoysiagrass", "100")},
	} {
		if got := FromForm(c.typed); !slices.Equal(got, c.want) {
			t.Errorf("%v: %v, want %v", c.typed, got, c.want)
		}
	}
	for name, want := range map[string]string{"a-b_9": "a-b_9", "a b": `"a b"`, "ä": `"ä"`, "a.b": `"a.b"`, "AZ": "AZ", "az09": "az09", "a/b": `"a/b"`} {
		if got := quoted(name); got != want {
			t.Errorf("%q: %s, want %s", name, got, want)
		}
	}
}

// An id is base32 of RFC 4648, section 6, in small letters and without padding: 13
// letters for 8 bytes, of which the last holds only four bits.
func TestIDs(t *testing.T) {
	for _, id := range []ID{{}, someID, {255, 255, 255, 255, 255, 255, 255, 255}, {0, 1}} {
		want := strings.ToLower(strings.TrimRight(base32.StdEncoding.EncodeToString(id[:]), "="))
		if id.String() != want || len(want) != 13 {
			t.Errorf("%v: %s, want %s", id, id, want)
		}
		if got, ok := IDOf(Answers{answer("id", want)}); got != id || !ok {
			t.Errorf("%s: %v %v", want, got, ok)
		}
		for _, bad := range []string{want + "a", want[:12], strings.ToUpper(want), want[:12] + "b"} {
			if _, ok := IDOf(Answers{answer("id", bad)}); ok && bad != want {
				t.Errorf("%s is the id of a link", bad)
			}
		}
	}
}

// The most that an address carries is carried, and not one more.
func TestJustEnough(t *testing.T) {
	plain := func(key string, n int) (a Answers) {
		for i := range n {
			a = append(a, answer(fmt.Sprintf(key, i), "1"))
		}
		return a
	}
	for key, most := range map[string]int{"area.x%d.size": 8, "record.%d.note": 60, "material.m%d.price": 400} {
		if err := plain(key, most).few(); err != nil {
			t.Errorf("%d of %s: %v", most, key, err)
		}
		if err := plain(key, most+1).few(); err == nil || !strings.HasPrefix(err.Error(), fmt.Sprint(most+1)) {
			t.Errorf("%d of %s: %v", most+1, key, err)
		}
	}
	for n, good := range map[int]bool{800: true, 801: false} {
		if err := carried(answer("title", strings.Repeat("x", n))); (err == nil) != good {
			t.Errorf("%d letters: %v", n, err)
		}
	}
	// A code of at most 1,500 characters is read, one that would be longer is refused with its length.
	longest, refused := 0, 0
	for n := range 130 {
		code, err := Encode(many("material.x%d.name", n), someID)
		if err == nil {
			longest = max(longest, len(code))
			if _, err := Decode(code); err != nil {
				t.Errorf("%d characters: %v", len(code), err)
			}
		} else if refused++; !strings.Contains(err.Error(), "1500 are the most") {
			t.Error(err)
		}
	}
	if longest > 1500 || longest < 1450 || refused == 0 {
		t.Errorf("the longest has %d characters, %d were refused", longest, refused)
	}
}

// Marks: a byte for each of the first 28 keys, two for the others, 95 of them a page.
func TestMarks(t *testing.T) {
	seen := map[string]int{}
	for n := range 28 + 3*95 {
		m := mark(n)
		want := []byte{byte(n)}
		if n >= 28 {
			want = []byte{byte(28 + (n-28)/95), byte(' ' + (n-28)%95)}
		}
		if string(m) != string(want) {
			t.Errorf("the mark of %d is %v, want %v", n, m, want)
		}
		if was, twice := seen[string(m)]; twice {
			t.Errorf("%d and %d have one mark", was, n)
		}
		seen[string(m)] = n
	}
	if len(table) > 28+3*95 {
		t.Errorf("%d keys and no marks for all", len(table))
	}
}
