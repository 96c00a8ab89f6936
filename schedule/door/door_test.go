package door

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"html"
	"html/template"
	"regexp"
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/ask"
	"swardbook/schedule/page"
	"swardbook/schedule/plan"
)

var today = schedule.Date{Year: 2026, Month: 10, Day: 15}

// sheet is a lab sheet of our own invention, and what its owner typed beside it.
func sheet() (f ask.Form) {
	for _, kv := range [][2]string{{"place.zip", "44109"}, {"title", ""}, {"area.lawn.size", "40 x 65 - 24 x 30"}, {"form.area.lawn.size.unit", "sq ft"}, {"area.lawn.grass", "mixture"},
		{"form.area.lawn.mix.1.grass", "perennial ryegrass"}, {"form.area.lawn.mix.1.share", "50"}, {"form.area.lawn.mix.2.grass", "Kentucky bluegrass"}, {"form.area.lawn.mix.2.share", "50"},
		{"area.lawn.seeded", "2026-09-03"}, {"area.lawn.care", "medium"}, {"area.lawn.clippings", "returned"},
		{"area.lawn.soil.sampled", "2026-10-08"}, {"area.lawn.soil.method", "mehlich-3"}, {"area.lawn.soil.ph", "5.2"}, {"area.lawn.soil.buffer.ph", "6.4"}, {"area.lawn.soil.buffer.method", "smp"},
		{"form.area.lawn.soil.unit", "ppm"}, {"area.lawn.soil.phosphorus", "14"}, {"area.lawn.soil.potassium", "61"}, {"area.lawn.soil.magnesium", "48"},
		{"material.bag1.kind", "lime"}, {"material.bag1.cce", "90"}, {"material.bag1.pack", "40"}, {"material.bag1.on_hand", "3"},
		{"material.bag2.kind", "fertilizer"}, {"form.material.bag2.n", "22"}, {"form.material.bag2.p", "2"}, {"form.material.bag2.k", "8"}, {"material.bag2.pack", "36 lb"}, {"material.bag2.on_hand", "0.5"},
		{"record.1.date", "2026-10-04"}, {"record.1.material", "bag2"}, {"record.1.amount", "9"},
		{"crew.days", "sat"}, {"form.people", "Ana, Bo"},
	} {
		f = append(f, ask.Answer{Key: kv[0], Value: kv[1]})
	}
	return f
}

// From the sheet to a link, and from the link to page, sheet and calendar.
func TestFromSheetToProgram(t *testing.T) {
	nameless := sheet().Set("form.people", "")
	next, err := Door{}.Press(Turn{Form: nameless, Press: "program", Today: today, ID: ask.ID{1, 2}})
	if err != nil || next.Code == "" {
		t.Fatalf("no link: %v\n%s", err, next.Page)
	}
	if len(next.Code) > 250 {
		t.Errorf("a code of %d characters", len(next.Code))
	}
	if got := next.Answers.Get("area.lawn.soil.received"); got != today.String() {
		t.Errorf("the answer of the laboratory is here, and came on %q", got)
	}
	a, err := ask.Decode(next.Code)
	if err != nil {
		t.Fatal(err)
	}
	same, err := Door{}.Press(Turn{Form: Door{}.Form(a), Press: "program", Was: a, Today: today.AddDays(3), ID: ask.ID{3}})
	if err != nil || same.Code != next.Code {
		t.Error("the same answers, another link", err)
	}
	other, err := Door{}.Press(Turn{Form: nameless.Set("area.lawn.size", "1000"), Press: "program", Today: today})
	if err != nil {
		t.Fatal(err)
	}
	was, err := ask.Decode(other.Code)
	if err != nil {
		t.Fatal(err)
	}
	at := "https://example.org/ask#/" + next.Code
	out, err := Answer(a, was, page.Answered{Today: today, Change: "#change", Link: at, Calendar: at + ".ics"}, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"What limits the grass", "pH 5.2, very low", "What moved", "44109, Cleveland OH", "1,880", "a copy: it does not update", "QR code", "GeoNames", "limestone"} {
		if !strings.Contains(string(out), want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	if strings.Contains(string(out), "bag1<") {
		t.Error("a bag is called by its id")
	}
	one, err := Calendar(a, "", today, at)
	if err != nil || !bytes.Contains(one, []byte("BEGIN:VEVENT")) {
		t.Fatal(err)
	}
	if again, err := Calendar(a, "", today, at); err != nil || !bytes.Equal(one, again) {
		t.Error("the same link, other bytes", err)
	}
	if page, err := Sheet(a, today, at); err != nil || !strings.Contains(string(page), "All dates") {
		t.Error("no sheet", err)
	}
	filled, err := Door{}.Fill(a, today)
	if err != nil || !strings.Contains(string(filled), `value="40 x 65 - 24 x 30"`) {
		t.Error("the size that was typed is not in the page to change answers", err)
	}
}

// What is wrong stands at its field, in the words of check, and nothing typed is lost.
func TestWrongAnswers(t *testing.T) {
	f := sheet().Set("area.lawn.soil.buffer.ph", "64").Set("form.area.lawn.mix.2.share", "40").Set("area.lawn.soil.phosphorus", "fourteen <b>").Set("record.1.amount", "")
	f = append(f, ask.Answer{Key: "place.elevation", Value: "high"})
	next, err := Door{}.Press(Turn{Form: f, Press: "program", Today: today})
	if err != nil || next.Code != "" || next.Screen != "wrong" {
		t.Fatal("a link of wrong answers", err)
	}
	text := string(next.Page)
	for _, one := range f {
		if v := strings.NewReplacer("<", "&lt;", ">", "&gt;").Replace(one.Value); v != "" && one.Key != "form.area.lawn.size.unit" && !strings.Contains(text, `value="`+v+`"`) {
			t.Errorf("%s: %q is lost", one.Key, one.Value)
		}
	}
	for _, p := range ask.Problems(ask.FromForm(f)) {
		if words := strings.NewReplacer(`"`, "&#34;", "<", "&lt;", ">", "&gt;", "+", "&#43;").Replace(p.Message[1:]); !strings.Contains(text, words) {
			t.Errorf("%s: the page does not say %q", p.Key, p.Message)
		}
	}
	for _, id := range []string{"q-area-lawn-soil-buffer-ph", "q-area-lawn-soil-phosphorus", "q-area-lawn-grass"} {
		if !strings.Contains(text, `aria-describedby="`+id+`-err"`) || !strings.Contains(text, `id="`+id+`-err"`) {
			t.Errorf("%s: nothing is said at the field", id)
		}
	}
}

// Whatever is typed into any field of the page, right or wrong, is there again when the
// page comes back: at once, at every door, and from the link of a draft, if there is one.
func TestNothingTypedIsLost(t *testing.T) {
	two := append(sheet(), ask.Answer{Key: "area.lawn2.size", Value: "400"}, ask.Answer{Key: "area.lawn2.grass", Value: "mixture"})
	whole, err := Door{}.Press(Turn{Form: two, Press: "more-bag", Today: today})
	if err != nil {
		t.Fatal(err)
	}
	names := map[string]bool{}
	for _, m := range regexp.MustCompile(`<(?:input|select)[^>]* name="([^"]+)"`).FindAllStringSubmatch(string(whole.Page), -1) {
		names[m[1]] = true
	}
	if len(names) < 80 {
		t.Fatalf("only %d fields", len(names))
	}
	const typed = `9 o'clock "<b>" & half`
	shown := template.HTMLEscapeString(typed)
	back := func(what string, page []byte) {
		t.Helper()
		if text := html.UnescapeString(string(page)); !strings.Contains(string(page), "<form") || !strings.Contains(text, typed) {
			t.Errorf("%s: %s is lost", what, shown)
		}
		if strings.Contains(string(page), "<b>\"") {
			t.Errorf("%s: what was typed became markup", what)
		}
	}
	drafts := 0
	for name := range names {
		if name == "form.share" || name == "crew.days" || strings.HasSuffix(name, ".unit") || name == "press" { // chosen, never typed
			continue
		}
		f := two.Set("form.people", "").Set(name, typed)
		for _, d := range []Door{{}, {File: "lawn.toml"}} {
			for _, press := range []string{"program", "more-line"} {
				next, err := d.Press(Turn{Form: f, Press: press, Today: today})
				if err != nil {
					t.Fatal(name, err)
				}
				if next.Page != nil { // else it was right, and is in the program
					back(name+" "+press, next.Page)
				}
				if next.Draft == "" {
					continue
				}
				a, err := ask.Decode(next.Draft)
				if err != nil {
					t.Fatal(name, err)
				}
				again, err := d.Fill(a, today)
				if err != nil {
					t.Fatal(name, err)
				}
				drafts++
				back(name+" from its draft", again)
			}
		}
	}
	if drafts < 50 {
		t.Errorf("only %d drafts", drafts)
	}
}

// Going on to another screen shows the place as it was understood, and the problems of
// the screens that were left, but not those of the screens to come.
func TestGoingOn(t *testing.T) {
	next, err := Door{}.Press(Turn{Form: ask.Form{{Key: "place.zip", Value: "44109"}}, Press: "grass-lawn", Today: today})
	if err != nil {
		t.Fatal(err)
	}
	text := string(next.Page)
	if !strings.Contains(text, "Understood: 44109, Cleveland OH.") || !strings.Contains(text, "Last safe day near ") || strings.Contains(text, "aria-invalid") {
		t.Error("the ZIP is not said back, or what is not asked yet is called wrong")
	}
	if a, err := ask.Decode(next.Draft); err != nil || a.Get("place.zip") != "44109" {
		t.Error("a page with a ZIP can be made again from the ZIP", err)
	}
	next, err = Door{}.Press(Turn{Form: ask.Form{{Key: "place.zip", Value: "00000"}}, Press: "grass-lawn", Today: today})
	if err != nil || strings.Count(string(next.Page), "aria-invalid") != 1 {
		t.Error("a ZIP that is none is not said", err)
	}
	for what, field := range map[string]string{"bag": `name="material.bag3.kind"`, "line": `name="record.2.date"`} {
		next, err = Door{}.Press(Turn{Form: sheet(), Press: "more-" + what, Today: today})
		if err != nil || !strings.Contains(string(next.Page), field) {
			t.Errorf("no other %s, %v", what, err)
		}
	}
}

// Names of people go into a link only if that is ticked, and until then stay in the form.
func TestNames(t *testing.T) {
	next, err := Door{}.Press(Turn{Form: sheet(), Press: "program", Today: today})
	if err != nil || next.Code != "" || next.Draft != "" || !strings.Contains(string(next.Page), `id="q-form-share-err"`) || !strings.Contains(string(next.Page), `value="Ana, Bo"`) {
		t.Fatal("not ticked, and no word of it", err)
	}
	next, err = Door{}.Press(Turn{Form: sheet().Set("form.share", "yes").Set("form.who.lawn", "Ana").Set("form.who.lawn.lime", "Cy"), Press: "program", Today: today})
	a, err2 := ask.Decode(next.Code)
	if err != nil || err2 != nil || a.Get("crew.people.ana") != "Ana" || a.Get("crew.who.lawn") != "ana" || a.Get(`crew.who."lawn/lime"`) != "cy" || a.Get("crew.people.cy") != "Cy" {
		t.Fatal("ticked, and not in the link", err, err2)
	}
	own := 0
	out, err := Answer(a, nil, page.Answered{Today: today}, func(p Part) page.Own { own++; return page.Own{Name: p.Name, Calendar: p.Path()} })
	if err != nil || own == 0 || !strings.Contains(string(out), `href="person/ana"`) {
		t.Errorf("%d calendars of people, %v", own, err)
	}
	if c, err := Calendar(a, "person/ana", today, "https://example.org/"); err != nil || !strings.Contains(string(c), "Ana") {
		t.Error("no calendar of Ana", err)
	}
	if _, err := Calendar(a, "person/eve", today, ""); err == nil {
		t.Error("a calendar of nobody")
	}
	filled, err := Door{}.Fill(a, today)
	if err != nil || !strings.Contains(string(filled), `name="form.share" value="yes" checked`) || !strings.Contains(string(filled), `name="form.who.lawn.lime" type="text" value="Cy"`) {
		t.Error("the tick is lost", err)
	}
}

// A new report counts as received on the day on which it is typed. One that was there
// before keeps its day, or goes on without one; a report with another sampling day is a
// new one.
func TestReceived(t *testing.T) {
	const sampled, received = "area.lawn.soil.sampled", "area.lawn.soil.received"
	first := complete(ask.FromForm(sheet()), nil, today)
	later := today.AddDays(30)
	old := ask.Answers{{Key: sampled, Value: "2026-03-02"}}
	for name, c := range map[string]struct {
		now, was ask.Answers
		want     string
	}{
		"new":                   {first.Set(received, ""), nil, later.String()},
		"there before":          {first, first, today.String()},
		"a file that says none": {old, old, ""},
		"sampled later":         {first.Set(sampled, "2026-11-01"), first, later.String()},
		"not sampled yet":       {first.Set(sampled, "2027-11-01"), first, ""},
		"no report":             {first.Set(sampled, ""), first, ""},
	} {
		if got := complete(c.now, c.was, later).Get(received); got != c.want {
			t.Errorf("%s: %q, not %q", name, got, c.want)
		}
	}
}

// There may be any number of areas; each can be left out again.
func TestAreas(t *testing.T) {
	f := sheet().Set("form.people", "").Set("record.1.area", "lawn")
	next, err := Door{}.Press(Turn{Form: f, Press: "more-area", Today: today})
	if err != nil || next.Screen != "grass-lawn2" || !strings.Contains(string(next.Page), `name="area.lawn2.size"`) || !strings.Contains(string(next.Page), `value="less-lawn2"`) {
		t.Fatal("no other area", next.Screen, err)
	}
	f = append(f, ask.Answer{Key: "area.lawn2.size", Value: "400 sq ft"}, ask.Answer{Key: "area.lawn2.grass", Value: "tall fescue"})
	two, err := Door{}.Press(Turn{Form: f, Press: "program", Today: today})
	a, err2 := ask.Decode(two.Code)
	if err != nil || err2 != nil || a.Get("area.lawn2.name") != "Lawn 2" || a.Get("area.lawn.name") != "Lawn" {
		t.Fatalf("%v %v %v\n%s", err, err2, a, two.Page)
	}
	less, err := Door{}.Press(Turn{Form: f, Press: "less-lawn2", Today: today})
	if err != nil || strings.Contains(string(less.Page), "lawn2") {
		t.Error("it is still there", err)
	}
}

// The Enter key goes on from the screen that was shown, and to the program once there is
// nothing wrong.
func TestEnter(t *testing.T) {
	next, err := Door{}.Press(Turn{Form: ask.Form{{Key: "place.zip", Value: "44109"}}, Press: "enter", Today: today})
	if err != nil || next.Screen != "grass-lawn" {
		t.Error(next.Screen, err)
	}
	next, err = Door{}.Press(Turn{Form: ask.Form{{Key: "place.zip", Value: "44109"}}, Press: "enter", At: "already", Today: today})
	if err != nil || next.Screen != "who" {
		t.Error(next.Screen, err)
	}
	next, err = Door{}.Press(Turn{Form: sheet().Set("form.people", ""), Press: "enter", Today: today})
	if err != nil || next.Code == "" {
		t.Error("no program", err)
	}
}

func TestMark(t *testing.T) {
	if !strings.HasSuffix(Mark, fmt.Sprintf(" %d", plan.Release)) {
		t.Errorf("the mark %q is not of release %d", Mark, plan.Release)
	}
}

// The page that is published names its files by their content, and takes no other thing
// for a planner.
func TestStatic(t *testing.T) {
	pack := func(wasm string) Planner {
		var b bytes.Buffer
		z := gzip.NewWriter(&b)
		z.Write([]byte(wasm))
		z.Close()
		return Planner{b.Bytes(), []byte("globalThis.Go = class {}")}
	}
	build := ""
	for _, more := range []string{"one", "two"} {
		files, err := Static(pack("\x00asm" + Mark + more))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			if f.Name == "sw.js" {
				if strings.Contains(string(f.Data), "BUILD") || string(f.Data) == build {
					t.Error("another planner, and the same build")
				}
				build = string(f.Data)
			}
			if f.Name == "index.html" && (!strings.Contains(string(f.Data), "<noscript>") || strings.Contains(string(f.Data), `action=""`) || !strings.Contains(string(f.Data), "wasm-unsafe-eval")) {
				t.Error("the page says nothing without scripts, or forbids its planner")
			}
		}
	}
	for _, wrong := range []Planner{{}, pack("MZ"), pack("\x00asm of another release"), {pack("\x00asm" + Mark).Packed, []byte("no script")}} {
		if _, err := Static(wrong); err == nil {
			t.Error("taken for a planner")
		}
	}
}
