package page_test

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/page"
	"swardbook/schedule/sitefile"
)

// asked is a page of questions with a few grasses and methods to choose from; fields come
// in pairs of name and value.
func asked(fields ...string) page.Asked {
	a := page.Asked{Today: schedule.Date{Year: 2026, Month: 9, Day: 14}, Action: "ask", Grasses: []string{"tall fescue", "fine fescue"}, Textures: []string{"loam", "clay loam"},
		Methods: []string{"mehlich-3", "bray-1"}, Buffers: []string{"smp", "modified-mehlich"}, Units: func(key string) []string { return []string{"lb", "kg"} }}
	for i := 0; i < len(fields); i += 2 {
		a.Fields = append(a.Fields, page.Field{Name: fields[i], Value: fields[i+1]})
	}
	return a
}

// control is an input or a select of the page.
type control struct {
	kind, value string
	attr        map[string]string
	chosen      []string // of a select, or of the buttons of one name
	offers      []string
	hidden      bool
}

// controls reads the form by the names of its fields, in their order.
func controls(t *testing.T, what string, b []byte) (names []string, all map[string]*control) {
	t.Helper()
	s := regexp.MustCompile(` (selected|checked|novalidate)([ >])`).ReplaceAllString(string(b), ` $1=""$2`)
	all = map[string]*control{}
	var last *control
	for _, e := range elements(t, what, []byte(s)) {
		name := e.attr["name"]
		_, on := e.attr["checked"]
		switch {
		case e.name == "option" && last != nil:
			value, has := e.attr["value"]
			if !has {
				value = strings.TrimSpace(e.text)
			}
			last.offers = append(last.offers, value)
			if _, on := e.attr["selected"]; on {
				last.chosen = append(last.chosen, value)
			}
		case e.name != "input" && e.name != "select" || name == "press":
		case all[name] == nil:
			last = &control{kind: e.attr["type"], value: e.attr["value"], attr: e.attr, hidden: e.attr["type"] == "hidden"}
			if e.name == "select" {
				last.kind = "select"
			}
			names, all[name] = append(names, name), last
			fallthrough
		default:
			c := all[name]
			if c.kind == "radio" || c.kind == "checkbox" {
				c.offers = append(c.offers, e.attr["value"])
				if on {
					c.chosen = append(c.chosen, e.attr["value"])
				}
			}
		}
	}
	return names, all
}

func askPage(t *testing.T, a page.Asked) []byte {
	t.Helper()
	b, err := page.Ask(a)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// The fields of the page are keys of the site file and columns of the record book, or
// parts of them (package ask names them), each of the sort that its key takes.
func TestAskFieldsAreKeys(t *testing.T) {
	const text, number, date, choice, radio, check = "text", "text decimal", "date", "select", "radio", "checkbox"
	want := [][2]string{{"place.zip", text}, {"title", text}}
	add := func(kind string, names ...string) {
		for _, n := range names {
			want = append(want, [2]string{n, kind})
		}
	}
	const at, soil = "area.lawn.", "area.lawn.soil."
	add(text, at+"size")
	add(choice, "form."+at+"size.unit", at+"grass")
	for _, n := range []string{"1", "2", "3"} {
		add(choice, "form."+at+"mix."+n+".grass")
		add(number, "form."+at+"mix."+n+".share")
	}
	add(date, at+"seeded", at+"overseed")
	add(choice, at+"care")
	add(radio, at+"clippings")
	add(date, soil+"sampled")
	add(choice, soil+"method")
	add(number, soil+"ph", soil+"buffer.ph")
	add(choice, soil+"buffer.method")
	add(radio, "form."+soil+"unit")
	add(number, soil+"phosphorus", soil+"potassium", soil+"magnesium", soil+"calcium", soil+"sulfur", soil+"sodium", soil+"iron", soil+"cec", soil+"acidity", soil+"organic_matter", soil+"depth")
	for _, n := range []string{"lime", "nitrogen", "phosphate", "potash"} {
		add(number, soil+n)
		add(choice, "form."+soil+n+".unit")
	}
	add(choice, at+"texture", "material.bag1.kind")
	add(number, "form.material.bag1.n", "form.material.bag1.p", "form.material.bag1.k", "material.bag1.cce", "material.bag1.ecce")
	add(text, "material.bag1.pack")
	add(number, "material.bag1.on_hand")
	add(text, "material.bag1.name", "material.bag1.slow_share", "material.bag1.lasts")
	add(number, "material.bag1.magnesium", "material.bag1.sulfur", "material.bag1.iron")
	add(choice, "material.bag1.pesticide", "record.1.material")
	add(date, "record.1.date")
	add(text, "record.1.amount", "form.people", "form.who.lawn", "form.who.lawn.lime")
	add(check, "form.share", "crew.days")

	names, all := controls(t, "questions", askPage(t, asked()))
	keys := append(sitefile.Keys(), "record.*.date", "record.*.material", "record.*.amount")
	var got [][2]string
	for _, n := range names {
		kind := all[n].kind
		if all[n].attr["inputmode"] == "decimal" {
			kind += " decimal"
		}
		got = append(got, [2]string{n, kind})
		pattern := regexp.MustCompile(`^(area|material|record)\.[^.]+`).ReplaceAllString(n, "$1.*")
		if !strings.HasPrefix(n, "form.") && !slices.Contains(keys, pattern) && !slices.Contains(keys, pattern+".*") {
			t.Errorf("%s is no key", n)
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("the fields are\n%v\nwant\n%v", got, want)
	}
	if z := all["place.zip"].attr["autocomplete"]; z != "postal-code" { // HTML Living Standard, section 4.10.18.7.1
		t.Errorf("the browser is told that the ZIP is %q", z)
	}
}

// Choices are those that a site file takes; what nobody offered is kept as it was typed.
func TestAskChoices(t *testing.T) {
	for name, c := range map[string]struct{ offers, typed, chosen string }{
		"area.lawn.grass":              {"[ tall fescue fine fescue mixture green straw]", "fine fescue", "[fine fescue]"},
		"form.area.lawn.mix.2.grass":   {"[ tall fescue fine fescue]", "tall fescue", "[tall fescue]"},
		"area.lawn.care":               {"[medium low high]", "high", "[high]"},
		"area.lawn.clippings":          {"[returned removed]", "removed", "[removed]"},
		"area.lawn.soil.method":        {"[ mehlich-3 bray-1]", "bray-1", "[bray-1]"},
		"area.lawn.soil.buffer.method": {"[ smp modified-mehlich]", "smp", "[smp]"},
		"form.area.lawn.soil.unit":     {"[ppm lb/acre]", "lb/acre", "[lb/acre]"},
		"form.area.lawn.size.unit":     {"[lb kg]", "kg", "[kg]"},
		"area.lawn.texture":            {"[ loam clay loam]", "clay loam", "[clay loam]"},
		"material.bag1.kind":           {"[ fertilizer lime sulfur gypsum magnesium wood ash iron]", "wood ash", "[wood ash]"},
		"material.bag1.pesticide":      {"[ true false]", "false", "[false]"},
		"record.1.material":            {"[ bag1]", "bag1", "[bag1]"},
		"form.share":                   {"[yes]", "yes", "[yes]"},
		"crew.days":                    {"[mon tue wed thu fri sat sun]", "sat", "[sat]"},
	} {
		_, all := controls(t, name, askPage(t, asked()))
		if got := fmt.Sprint(all[name].offers); got != c.offers {
			t.Errorf("%s offers %s, want %s", name, got, c.offers)
		}
		want := "[]"
		if all[name].kind == "radio" || all[name].offers[0] == "" { // one is always chosen, or nothing by its name
			want = fmt.Sprint(all[name].offers[:1])
		}
		if got := fmt.Sprint(all[name].chosen); got != want {
			t.Errorf("%s: chosen of nothing: %s", name, got)
		}
		_, all = controls(t, name, askPage(t, asked(name, c.typed)))
		if got := fmt.Sprint(all[name].chosen); got != c.chosen {
			t.Errorf("%s: of %q are chosen %s", name, c.typed, got)
		}
		if all[name].kind == "checkbox" || strings.HasSuffix(name, "size.unit") {
			continue
		}
		_, all = controls(t, name, askPage(t, asked(name, "else")))
		if got := all[name]; fmt.Sprint(got.chosen) != "[else]" || !slices.Contains(got.offers, "else") {
			t.Errorf("%s: what was typed is lost: %v of %v", name, got.chosen, got.offers)
		}
	}
	_, all := controls(t, "days", askPage(t, asked("crew.days", "sat", "crew.days", "wed")))
	if got := fmt.Sprint(all["crew.days"].chosen); got != "[wed sat]" {
		t.Errorf("days: %s", got)
	}
	// A browser's date field would drop a text that is no date: such a text gets a text
	// field.
	for value, kind := range map[string]string{"2026-09-03": "date", "": "date", "in spring": "text", "2026-13-01": "text"} {
		if _, all := controls(t, value, askPage(t, asked("area.lawn.seeded", value))); all["area.lawn.seeded"].kind != kind || all["area.lawn.seeded"].value != value {
			t.Errorf("%q: %+v", value, all["area.lawn.seeded"])
		}
	}
}

// Methods are written as laboratories do.
func TestMethodsByName(t *testing.T) {
	a := asked()
	want := map[string]string{"smp": "SMP", "bray-1": "Bray P1", "mehlich-1": "Mehlich-1", "mehlich-3": "Mehlich-3", "olsen": "Olsen", "adams-evans": "Adams-Evans",
		"modified-mehlich": "Modified Mehlich", "modified-morgan": "Modified Morgan", "morgan": "Morgan", "ammonium-acetate": "Ammonium acetate", "sikora": "Sikora"}
	for m := range want {
		a.Methods = append(a.Methods, m)
	}
	text := string(askPage(t, a))
	for m, w := range want {
		if !strings.Contains(text, `<option value="`+m+`">`+w+"</option>") {
			t.Errorf("%s is not called %s", m, w)
		}
	}
}

// The screens, their buttons and their numbers, of one piece of grass and of two.
func TestAskScreens(t *testing.T) {
	for _, c := range []struct {
		fields []string
		want   []string
	}{
		{nil, []string{"where", "grass-lawn", "sheet-lawn", "shed", "already", "who"}},
		{[]string{"area.front.size", "3", "area.back.size", "4"}, []string{"where", "grass-front", "sheet-front", "grass-back", "sheet-back", "shed", "already", "who"}},
	} {
		a := asked(c.fields...)
		if got := page.Screens(a); !slices.Equal(got, c.want) {
			t.Errorf("%v, want %v", got, c.want)
		}
		text := string(askPage(t, a))
		var sections []string
		for _, s := range strings.Split(text, `<section class="step" id="`)[1:] {
			id, rest, _ := strings.Cut(s, `"`)
			sections = append(sections, id)
			if n := fmt.Sprintf("<p class=\"s\">%d of %d</p>", len(sections), len(c.want)); !strings.Contains(rest, n) {
				t.Errorf("%s has no %s", id, n)
			}
			press := regexp.MustCompile(`name="press" value="([^"]*)">`).FindAllStringSubmatch(rest, -1)
			var buttons []string
			for _, b := range press {
				buttons = append(buttons, b[1])
			}
			next := "program"
			if i := len(sections); i < len(c.want) {
				next = c.want[i]
			}
			want := []string{next}
			switch {
			case id == "shed":
				want = []string{"more-bag", next}
			case id == "already":
				want = []string{"more-line", next}
			case strings.HasPrefix(id, "sheet-") && next == "shed":
				want = []string{"more-area", next}
			case strings.HasPrefix(id, "grass-") && len(c.fields) > 0:
				want = []string{"less-" + strings.TrimPrefix(id, "grass-"), next}
			}
			if !slices.Equal(buttons, want) {
				t.Errorf("%s has the buttons %v, want %v", id, buttons, want)
			}
		}
		if !slices.Equal(sections, c.want) {
			t.Errorf("sections %v", sections)
		}
	}
	// Where there are several areas, headings and questions name theirs.
	two := string(askPage(t, asked("area.front.size", "3", "area.front.name", "the green", "area.back.size", "4")))
	for _, want := range []string{"The green: the grass<", "The green: the lab sheet<", "Back: the grass<", "Back: the lab sheet<", "Who does the jobs on the green?", "Who spreads the lime on back?"} {
		if !strings.Contains(two, want) {
			t.Errorf("two pieces of grass: no %q", want)
		}
	}
	names, all := controls(t, "two", []byte(two))
	for _, want := range []string{"area.front.name", "area.back.name", "record.1.area", "form.who.front", "form.who.back.lime"} {
		if !slices.Contains(names, want) || all[want].hidden {
			t.Errorf("two pieces of grass: no field %s", want)
		}
	}
	if got := fmt.Sprint(all["record.1.area"].offers); got != "[ front back]" {
		t.Errorf("where a line went: %s", got)
	}
	// Where there is one area, its name has no field on the page and is sent along
	// hidden.
	names, all = controls(t, "one", askPage(t, asked("area.lawn.size", "3", "area.lawn.name", "Green")))
	if c := all["area.lawn.name"]; c == nil || !c.hidden || c.value != "Green" || slices.Contains(names, "record.1.area") {
		t.Errorf("one piece of grass: %+v", c)
	}
}

// An answer without a field on the page is sent along in a hidden one, and no other is.
func TestAskCarries(t *testing.T) {
	_, all := controls(t, "carried", askPage(t, asked("place.elevation", "900 ft", "place.county", "", "title", "Green", "form.area.lawn.mix.1.grass", "tall fescue", "material.bag1.analysis", "1-2-3")))
	var hidden []string
	for name, c := range all {
		if c.hidden {
			hidden = append(hidden, name+"="+c.value)
		}
	}
	if fmt.Sprint(hidden) != "[place.elevation=900 ft]" {
		t.Errorf("carried: %v", hidden)
	}
}

// Rows of a mixture: three, or as many as were filled in.
func TestMixtureRows(t *testing.T) {
	for _, c := range []struct{ filled, want []string }{
		{nil, []string{"1", "2", "3"}},
		{[]string{"2"}, []string{"2", "1", "3"}},
		{[]string{"1", "2", "3", "4"}, []string{"1", "2", "3", "4"}},
	} {
		var fields []string
		for _, n := range c.filled {
			fields = append(fields, "form.area.lawn.mix."+n+".grass", "tall fescue", "form.area.lawn.mix."+n+".share", "1"+n)
		}
		names, all := controls(t, "mixture", askPage(t, asked(fields...)))
		var rows []string
		for _, name := range names {
			if row, ok := strings.CutSuffix(strings.TrimPrefix(name, "form.area.lawn.mix."), ".share"); ok && row != "form" {
				rows = append(rows, row)
				if slices.Contains(c.filled, row) && all[name].value != "1"+row {
					t.Errorf("row %s holds %q", row, all[name].value)
				}
			}
		}
		if !slices.Equal(rows, c.want) {
			t.Errorf("rows %v, want %v", rows, c.want)
		}
	}
}

// Problems stand at their fields once their screen was left, and are listed at the top
// with a link to the field; a warning stands at the field alone.
func TestAskProblems(t *testing.T) {
	problem := func(key, message, hint string) schedule.Problem {
		return schedule.Problem{Key: key, Message: message, Hint: hint}
	}
	fields := []string{"place.zip", "0", "area.lawn.size", "x", "area.lawn.soil.ph", "54", "form.material.bag1.n", "x", "area.lawn.grass", "mixture", "form.area.lawn.mix.1.grass", "fine fescue"}
	at := map[string]schedule.Problem{
		"q-place-zip":                  problem("place.zip", "is no ZIP", "like 44109"),
		"q-area-lawn-size":             problem("area.lawn.size", `"x" is no size`, ""),
		"q-area-lawn-soil-ph":          problem("area.lawn.soil.ph", "54 is outside 2 to 12", "did you mean 5.4? give a value from 2 to 12"),
		"q-area-lawn-soil-phosphorus":  problem("area.lawn.soil.phosphorus.found", "is missing", ""),
		"q-form-material-bag1-n":       problem("material.bag1.analysis", "cannot be read", ""),
		"q-record-1-material":          problem("record.1.kind", "is missing", ""),
		"q-form-people":                problem("crew.people.a", "is too long", ""),
		"q-form-who-lawn":              problem("crew.who.lawn", "names nobody", ""),
		"q-form-who-lawn-lime":         problem(`crew.who."lawn/lime"`, "names nobody", ""),
		"q-form-area-lawn-mix-1-share": problem(`area.lawn.grass."fine fescue"`, "is too little", ""),
	}
	words := map[string]string{
		"q-place-zip":                  "ZIP is no ZIP. Like 44109.",
		"q-area-lawn-size":             "&#34;x&#34; is no size.",
		"q-area-lawn-soil-ph":          "54 is outside 2 to 12. Did you mean 5.4? Give a value from 2 to 12.",
		"q-area-lawn-soil-phosphorus":  "Phosphorus, P is missing.",
		"q-form-material-bag1-n":       "The three numbers cannot be read.",
		"q-record-1-material":          "What is missing.",
		"q-form-people":                "Names is too long.",
		"q-form-area-lawn-mix-1-share": "Part 1 is too little.",
	}
	screen := map[string]string{"q-place-zip": "where", "q-area-lawn-size": "grass-lawn", "q-form-area-lawn-mix-1-share": "grass-lawn", "q-area-lawn-soil-ph": "sheet-lawn", "q-area-lawn-soil-phosphorus": "sheet-lawn",
		"q-form-material-bag1-n": "shed", "q-record-1-material": "already", "q-form-people": "who", "q-form-who-lawn": "who", "q-form-who-lawn-lime": "who"}
	order := page.Screens(asked())
	for _, seen := range append([]string{"", "all", "nowhere"}, order...) {
		a := asked(fields...)
		a.Seen = seen
		var all []string
		for id, p := range at {
			a.Problems = append(a.Problems, p)
			if seen == "all" || slices.Index(order, screen[id]) <= slices.Index(order, seen) {
				all = append(all, id)
			}
		}
		text := string(askPage(t, a))
		for id := range at {
			told := slices.Contains(all, id)
			if got := strings.Contains(text, `id="`+id+`-err"`); got != told {
				t.Errorf("seen %q: told at %s: %v", seen, id, got)
			}
			if got := strings.Contains(text, `<li><a href="#`+id+`">`); got != told {
				t.Errorf("seen %q: %s is in the list: %v", seen, id, got)
			}
			if w := words[id]; told && w != "" && strings.Count(text, w) != 2 { // above and at the field
				t.Errorf("seen %q: %d times %q", seen, strings.Count(text, w), w)
			}
		}
		if n := strings.Count(text, `aria-invalid="true"`); n != len(all) {
			t.Errorf("seen %q: %d fields are called wrong, want %d", seen, n, len(all))
		}
		want := fmt.Sprintf("%d answers do not fit yet.", len(all))
		if len(all) == 1 {
			want = "One answer does not fit yet."
		}
		if got := strings.Contains(text, want); got != (len(all) > 0) {
			t.Errorf("seen %q: %q is said: %v", seen, want, got)
		}
	}
	// A problem that belongs to no field is listed at the top without a link; a warning
	// stands at its field alone.
	a := asked(fields...)
	a.Seen = "all"
	a.Problems = []schedule.Problem{problem("place", "nothing is said about the place", ""), {Key: "place.zip", Message: "is far away", Warning: true}, {Key: "place", Message: "only a thought", Warning: true}}
	text := string(askPage(t, a))
	if !strings.Contains(text, "<li>Nothing is said about the place.</li>") || !strings.Contains(text, "One answer does not fit") || strings.Count(text, "ZIP is far away.") != 1 || strings.Contains(text, "only a thought") {
		t.Error("what is no field's, or what is only a warning")
	}
	a = asked(fields...)
	a.Problems = a.Problems[:0]
	a.Problems = append(a.Problems, problem("place.zip", "is no ZIP", ""), problem("nothing.here", "x", ""))
	if text := string(askPage(t, a)); strings.Contains(text, "id=\"wrong\"") || strings.Contains(text, "is no ZIP") {
		t.Error("told before anything was answered")
	}
	// A question mark takes no colon after it.
	a = asked()
	a.Seen, a.Problems = "all", []schedule.Problem{problem("area.lawn.size", "is missing", ""), problem("area.lawn.soil.ph", "is missing", "")}
	text = string(askPage(t, a))
	for _, want := range []string{"How big is the grass?</a> How big", "pH</a>: pH is missing."} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
}

// A message that begins with a verb gets the name of its field before it.
func TestProblemsAsSentences(t *testing.T) {
	for message, want := range map[string]string{
		"is wrong": "ZIP is wrong.", "are wrong": "ZIP are wrong.", "means two": "ZIP means two.", "differs": "Differs.", "differs here": "ZIP differs here.", "stands below": "ZIP stands below.",
		"cannot be": "ZIP cannot be.", "has none": "ZIP has none.", "holds none": "ZIP holds none.", "brings none": "ZIP brings none.", "with it": "ZIP with it.", "makes none": "ZIP makes none.",
		"nothing is said": "Nothing is said.", "isolated": "Isolated.", "14 is outside": "14 is outside.",
	} {
		a := asked()
		a.Seen, a.Problems = "all", []schedule.Problem{{Key: "place.zip", Message: message}}
		if text := string(askPage(t, a)); strings.Count(text, want+"<") != 2 {
			t.Errorf("%q is not said as %q", message, want)
		}
	}
}

// What was understood of the place is said back at the ZIP.
func TestUnderstood(t *testing.T) {
	day := schedule.Date{Year: 2026, Month: 11, Day: 16}
	for _, c := range []struct {
		where string
		safe  schedule.Date
		want  string
	}{{"", day, "[]"}, {"44109: Cleveland OH", schedule.Date{}, "[Understood: 44109: Cleveland OH.]"}, {"Cleveland OH", day, "[Understood: Cleveland OH. Last safe day near 16 Nov.]"}} {
		if got := fmt.Sprint(page.Understood(c.where, c.safe)); got != c.want {
			t.Errorf("%s, want %s", got, c.want)
		}
	}
	a := asked("place.zip", "44109")
	a.Where = "Cleveland OH"
	_, all := controls(t, "understood", askPage(t, a))
	if got := all["place.zip"].attr["aria-describedby"]; got != "q-place-zip-got" {
		t.Errorf("heard with the ZIP: %q", got)
	}
	a.Seen, a.Problems = "all", []schedule.Problem{{Key: "place.zip", Message: "is odd"}}
	_, all = controls(t, "understood", askPage(t, a))
	if got := all["place.zip"].attr["aria-describedby"]; got != "q-place-zip-err q-place-zip-got" {
		t.Errorf("heard with the ZIP: %q", got)
	}
}

// A bag is titled by its name, else by its analysis, else by its kind, else by its place
// in the list.
func TestBagsByName(t *testing.T) {
	b := askPage(t, asked("material.a.name", "old stock", "form.material.b.n", "22", "form.material.b.k", "8", "material.c.kind", "lime", "material.d.pack", "40 lb", "form.material.e.p", "46"))
	text := string(b)
	for _, want := range []string{`<option value="a">Old stock<`, `<option value="b">Fertilizer 22-0-8<`, `<option value="c">Lime<`, `<option value="d">Bag 3<`, `<option value="e">Fertilizer 0-46-0<`} {
		if !strings.Contains(text, want) {
			t.Errorf("no %s", want)
		}
	}
	for _, want := range []string{"Bag 1<", "Bag 5<", `id="q-material-e"`, "Spreading 1<"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %s", want)
		}
	}
	names, _ := controls(t, "lines", askPage(t, asked("record.7.amount", "9 lb", "record.3.date", "2026-09-01")))
	var lines []string
	for _, n := range names {
		if line, ok := strings.CutSuffix(n, ".amount"); ok {
			lines = append(lines, line)
		}
	}
	if fmt.Sprint(lines) != "[record.7 record.3]" {
		t.Errorf("lines %v", lines)
	}
	// A group that folds starts open if one of its fields is filled in.
	for field, open := range map[string]bool{"material.bag1.pack": false, "material.bag1.lasts": true} {
		text := string(askPage(t, asked(field, "8")))
		_, fold, _ := strings.Cut(text, `id="shed"`)
		if got := strings.Contains(fold, `<details class="more" open>`); got != open {
			t.Errorf("%s: open %v", field, got)
		}
	}
}

// What the page says and may do depends on where the answers go: into a link, into a
// file, or to the planner in the browser.
func TestAskAtEachDoor(t *testing.T) {
	link, file, planner := asked(), asked(), asked()
	file.File, planner.Planner, planner.Action = "lawn.toml", true, ""
	texts := map[string]string{}
	for name, a := range map[string]page.Asked{"link": link, "file": file, "planner": planner} {
		texts[name] = string(askPage(t, a))
	}
	for part, want := range map[string][3]bool{ // at the link, the file, the planner
		"Nothing is stored":                                    {true, false, true},
		"are written to lawn.toml":                             {false, true, false},
		`name="form.share"`:                                    {true, false, true},
		"Write lawn.toml and see the program":                  {false, true, false},
		"Work out the program":                                 {true, false, true},
		`action="ask"`:                                         {true, true, false},
		"script-src &#39;self&#39; &#39;wasm-unsafe-eval&#39;": {false, false, true},
		`src="ask.js"`:                                         {false, false, true},
		"form-action &#39;self&#39;":                           {true, true, true},
		"form-action &#39;none&#39;":                           {false, false, false},
		climate.ZIPCredit:                                      {true, true, true},
	} {
		for i, name := range []string{"link", "file", "planner"} {
			if got := strings.Contains(texts[name], part); got != want[i] {
				t.Errorf("at the %s: %q is there: %v", name, part, got)
			}
		}
	}
}

// The page of a program offers what it has an address for, and nothing else.
func TestAnswerOffers(t *testing.T) {
	p := planned(t, "garden")
	today := p.Start.AddDays(10)
	write := func(change func(*page.Answered)) string {
		t.Helper()
		to := page.Answered{Today: today}
		change(&to)
		b, err := page.Answer(p.AsOf(today), to)
		if err != nil {
			t.Fatal(err)
		}
		return string(b)
	}
	bare := write(func(*page.Answered) {})
	elements(t, "answer", []byte(bare))
	for _, c := range []struct {
		change func(*page.Answered)
		parts  []string
	}{
		{func(a *page.Answered) { a.Change = "/ask?x" }, []string{`<a href="/ask?x">Change an answer`}},
		{func(a *page.Answered) { a.Link = "https://example.org/p/abc" }, []string{`<a href="https://example.org/p/abc" id="link">`, `aria-label="QR code`}},
		{func(a *page.Answered) { a.Subscribe = "https://example.org/p/abc.ics" }, []string{`href="webcal://example.org/p/abc.ics"`, `<p class="address">https://example.org/p/abc.ics`}},
		{func(a *page.Answered) { a.Calendar = "abc.ics" }, []string{`href="abc.ics" download`, "a copy: it does not update"}},
		{func(a *page.Answered) { a.Site = "abc/site.toml" }, []string{`href="abc/site.toml" download`}},
		{func(a *page.Answered) { a.Record = "abc/book.csv" }, []string{`href="abc/book.csv" download`}},
		{func(a *page.Answered) { a.Sheet = "abc/sheet" }, []string{`href="abc/sheet"`}},
		{func(a *page.Answered) { a.Again = "../ask" }, []string{`<a href="../ask">Another lawn`}},
		{func(a *page.Answered) { a.File = "lawn.toml" }, []string{"lawn.toml is written.", "swardbook program lawn.toml"}},
		{func(a *page.Answered) {
			a.Each = []page.Own{{Name: "Ines", Subscribe: "http://a/b.ics", Calendar: "b.ics"}}
		}, []string{`Ines: <a href="webcal://a/b.ics">subscribe`, `<a href="b.ics" download`}},
		{func(a *page.Answered) { a.Was = p.AsOf(today) }, []string{"Another answer, and nothing moved."}},
	} {
		got := write(c.change)
		for _, part := range c.parts {
			if !strings.Contains(got, part) {
				t.Errorf("%q is missing", part)
			}
			if strings.Contains(bare, part) {
				t.Errorf("%q is offered without an address", part)
			}
		}
	}
	if got := write(func(a *page.Answered) {
		a.Subscribe, a.Each = "no address", []page.Own{{Name: "Ines", Subscribe: "none"}}
	}); strings.Contains(got, "webcal") || strings.Contains(got, "ZgotmplZ") {
		t.Error("an address that is none becomes one")
	}
	// What moved: the days of one job, and nothing else.
	late := *p
	late.Entries = slices.Clone(p.Entries)
	last := len(late.Entries) - 1
	for late.Entries[last].Kind.Notice() {
		last--
	}
	e := &late.Entries[last]
	was := e.Date
	e.Date = e.Date.AddDays(3)
	now := late
	b, err := page.Answer(now.AsOf(today), page.Answered{Today: today, Was: p.AsOf(today)})
	if err != nil {
		t.Fatal(err)
	}
	text := section(t, b, "moved")
	wants(t, "moved", text, "Last day with work"+was.Short()+e.Date.Short(), "3 days later")
	if strings.Contains(text, "First day with work") {
		t.Errorf("what did not move: %s", text)
	}
	wants(t, "limits", section(t, []byte(bare), "limits"), "East lawn", "West lawn", "pH")
	for _, a := range p.Areas {
		if !strings.Contains(plain(bare), plain(a.Stand)) {
			t.Errorf("%s: its stand is not said", a.Name)
		}
	}
}

// The classes of the fields are those that the style sheet of the page knows.
func TestAskClassesAreStyled(t *testing.T) {
	b := askPage(t, asked("area.a.size", "1", "area.b.size", "2", "material.x.name", "y"))
	style := string(b[:bytes.Index(b, []byte("</style>"))])
	seen := map[string]bool{}
	for _, e := range elements(t, "ask", regexp.MustCompile(` (selected|checked|novalidate)([ >])`).ReplaceAll(b, []byte(` $1=""$2`))) {
		for class := range strings.FieldsSeq(e.attr["class"]) {
			seen[class] = true
		}
	}
	for class := range seen {
		if !regexp.MustCompile(`\.` + class + `\b`).MatchString(style) {
			t.Errorf("class %s has no style", class)
		}
	}
	if len(seen) < 10 {
		t.Errorf("only %v", seen)
	}
}
