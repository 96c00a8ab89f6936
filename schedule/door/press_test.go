package door

import (
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/ask"
	"swardbook/schedule/page"
)

func fields(pairs ...string) (f ask.Form) {
	for i := 0; i < len(pairs); i += 2 {
		f = append(f, ask.Answer{Key: pairs[i], Value: pairs[i+1]})
	}
	return f
}

// Where each button leads, with answers that are whole, and without the size.
func TestWhereButtonsLead(t *testing.T) {
	whole, few := sheet().Set("form.people", ""), fields("place.zip", "44109", "area.lawn.grass", "tall fescue")
	for _, c := range []struct {
		what, press, at string
		form            ask.Form
		screen          string // "" the program
		told            bool   // what is missing
	}{
		{"a screen", "shed", "where", few, "shed", true},
		{"the first", "where", "", few, "where", false},
		{"the second", "grass-lawn", "where", few, "grass-lawn", false},
		{"the third", "sheet-lawn", "grass-lawn", few, "sheet-lawn", true}, // the size is missing on the second
		{"the program, too early", "program", "where", few, "wrong", true},
		{"the program", "program", "who", whole, "", false},
		{"Enter, at first", "enter", "", few, "grass-lawn", false},
		{"Enter", "enter", "where", few, "grass-lawn", false},
		{"Enter further on", "enter", "sheet-lawn", few, "shed", true},
		{"Enter at the bags", "enter", "more-bag", few, "already", true},
		{"Enter at the lines", "enter", "more-line", few, "who", true},
		{"Enter at the end", "enter", "who", few, "wrong", true},
		{"Enter where there is no such screen", "enter", "nowhere", few, "grass-lawn", false},
		{"Enter with all answers", "enter", "where", whole, "", false},
		{"another bag", "more-bag", "", whole, "shed", false},
		{"another line", "more-line", "", whole, "already", false},
		{"another area", "more-area", "", whole, "grass-lawn2", false},
		{"another bag, the size missing", "more-bag", "", few, "shed", true},
		{"another line, the size missing", "more-line", "", few, "already", true},
		{"another area, the size missing", "more-area", "", few, "grass-lawn2", true},
		{"an area less", "less-lawn2", "", append(slices.Clone(whole), ask.Answer{Key: "area.lawn2.size", Value: "x"}), "where", false},
	} {
		for _, d := range []Door{{}, {File: "lawn.toml"}} {
			next, err := d.Press(Turn{Form: c.form, Press: c.press, At: c.at, Today: today, ID: ask.ID{9}})
			if err != nil {
				t.Fatal(c.what, err)
			}
			through := c.screen == ""
			if through != (next.Page == nil) || through != (next.Answers != nil) || through && (next.Code == "") != (d.File != "") {
				t.Errorf("%s, file %q: page %d bytes, %d answers, code %q", c.what, d.File, len(next.Page), len(next.Answers), next.Code)
				continue
			}
			if !through && (next.Screen != c.screen || bytes.Contains(next.Page, []byte("aria-invalid")) != c.told) {
				t.Errorf("%s, file %q: to %s, told %v", c.what, d.File, next.Screen, bytes.Contains(next.Page, []byte("aria-invalid")))
			}
			if !through && (next.Code != "" || (next.Draft != "") != (d.File == "")) {
				t.Errorf("%s, file %q: code %q, draft %q", c.what, d.File, next.Code, next.Draft)
			}
		}
	}
}

// A row that is added gets the first name that no row on the page has; the first area has
// no number.
func TestOneMore(t *testing.T) {
	for _, c := range []struct {
		form ask.Form
		what string
		want string
	}{
		{nil, "bag", "[material.bag1.kind]"},
		{fields("material.bag1.kind", ""), "bag", "[material.bag2.kind]"},
		{fields("form.material.bag1.n", "", "material.bag3.pack", ""), "bag", "[material.bag2.kind]"},
		{fields("material.bag10.kind", ""), "bag", "[material.bag1.kind]"},
		{nil, "line", "[record.1.material]"},
		{fields("record.1.date", "", "form.record.2.was", ""), "line", "[record.3.material]"},
		{nil, "area", "[area.lawn.size area.lawn2.size]"},
		{fields("area.lawn.size", ""), "area", "[area.lawn2.size]"},
		{fields("area.lawn.size", "", "form.area.lawn2.size.unit", ""), "area", "[area.lawn3.size]"},
	} {
		var got []string
		for _, f := range another(c.form, c.what) {
			if got = append(got, f.Name); f.Value != "" {
				t.Errorf("%v: %+v", c, f)
			}
		}
		if fmt.Sprint(got) != c.want {
			t.Errorf("%v %s: %v, want %s", c.form, c.what, got, c.want)
		}
	}
	f := fields("area.lawn.size", "1", "area.lawn2.size", "2", "form.area.lawn.size.unit", "sq ft", "form.area.lawn2.size.unit", "sq m", "title", "x", "form.who.lawn", "Bo")
	if got := fmt.Sprint(without(f, "lawn")); got != fmt.Sprint(fields("area.lawn2.size", "2", "form.area.lawn2.size.unit", "sq m", "title", "x", "form.who.lawn", "Bo")) {
		t.Error(got)
	}
	if len(f) != 6 {
		t.Error("the form itself was changed")
	}
}

// What the page does not ask for: a title, the first day, names of several areas.
func TestCompleted(t *testing.T) {
	for _, c := range []struct {
		typed, want ask.Answers
	}{
		{nil, ask.Answers(fields("title", "My lawn", "start", "2026-10-15"))},
		{ask.Answers(fields("title", "Green", "start", "2026-09-01")), ask.Answers(fields("title", "Green", "start", "2026-09-01"))},
		{ask.Answers(fields("title", "G", "start", "2026-09-01", "area.lawn.size", "1")), ask.Answers(fields("title", "G", "start", "2026-09-01", "area.lawn.size", "1"))},
		{ask.Answers(fields("title", "G", "start", "2026-09-01", "area.lawn.size", "1", "area.lawn2.size", "1", "area.shade.size", "1", "area.lawn9.size", "1")),
			ask.Answers(fields("title", "G", "start", "2026-09-01", "area.lawn.size", "1", "area.lawn2.size", "1", "area.shade.size", "1", "area.lawn9.size", "1", "area.lawn.name", "Lawn", "area.lawn2.name", "Lawn 2"))},
		{ask.Answers(fields("title", "G", "start", "2026-09-01", "area.lawn.size", "1", "area.lawn.name", "Front", "area.b.size", "1")),
			ask.Answers(fields("title", "G", "start", "2026-09-01", "area.lawn.size", "1", "area.lawn.name", "Front", "area.b.size", "1"))},
	} {
		if got := complete(c.typed, nil, today); !slices.Equal(got, c.want) {
			t.Errorf("%v\nbecomes\n%v\nwant\n%v", c.typed, got, c.want)
		}
	}
}

// A link serves a site for ten years from its first day, to the day.
func TestTenYears(t *testing.T) {
	a := complete(ask.FromForm(sheet().Set("form.people", "")), nil, today).Set("id", "x2x2-aaaa").Set("area.lawn.seeded", "")
	a = slices.DeleteFunc(a, func(one ask.Answer) bool { return strings.HasPrefix(one.Key, "record.") })
	for start, good := range map[string]bool{"2016-10-15": true, "2016-10-14": false, "2026-10-15": true} {
		site, _, problems := Load(a.Set("start", start), today)
		old := slices.ContainsFunc(problems, func(p schedule.Problem) bool {
			return p.Key == "start" && p.Message == "lies more than 10 years back" && !p.Warning && p.Hint != ""
		})
		if old == good || (site == nil) == good && !schedule.Fatal(problems) {
			t.Errorf("from %s: %v %v", start, site != nil, problems)
		}
	}
}

// The parts are the whole calendar, that of each person who has a job, and that of each
// area if there are several.
func TestParts(t *testing.T) {
	p := &schedule.Program{Title: "Green", Site: &schedule.Site{}, Entries: []schedule.Entry{{Who: "bo"}, {Who: ""}}}
	p.Site.Crew.People = []schedule.Person{{ID: "ana", Name: "Ana"}, {ID: "bo", Name: "Bo"}}
	p.Site.Areas = []schedule.Area{{ID: "east", Name: "East"}}
	words := func() (out []string) {
		for _, part := range Parts(p) {
			out = append(out, part.Name+" "+part.Path())
		}
		return out
	}
	if got := words(); !slices.Equal(got, []string{"Green ", "Bo person/bo"}) {
		t.Errorf("%q", got)
	}
	p.Site.Areas = append(p.Site.Areas, schedule.Area{ID: "west", Name: "West"})
	if got := words(); !slices.Equal(got, []string{"Green ", "Bo person/bo", "East area/east", "West area/west"}) {
		t.Errorf("%q", got)
	}
}

// The same answers have one link, other answers one with a new id. An id from before is
// kept only if the answers stayed the same.
func TestIDOfALink(t *testing.T) {
	typed := sheet().Set("form.people", "")
	press := func(f ask.Form, was ask.Answers, id byte) ask.Answers {
		t.Helper()
		next, err := Door{}.Press(Turn{Form: f, Press: "program", Was: was, Today: today, ID: ask.ID{id}})
		if err != nil || next.Code == "" {
			t.Fatalf("%v\n%s", err, next.Page)
		}
		a, err := ask.Decode(next.Code)
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	first := press(typed, nil, 1)
	if got, _ := ask.IDOf(first); got != (ask.ID{1}) {
		t.Errorf("the first has id %v", got)
	}
	if got, _ := ask.IDOf(press(Door{}.Form(first), first, 2)); got != (ask.ID{1}) {
		t.Errorf("the same again has id %v", got)
	}
	if got, _ := ask.IDOf(press(Door{}.Form(first).Set("area.lawn.size", "900"), first, 3)); got != (ask.ID{3}) {
		t.Errorf("other answers have id %v", got)
	}
	for id, want := range map[string]string{"": ask.ID{5}.String(), "back-4x7q": "back-4x7q"} { // a file keeps its own
		next, err := Door{File: "lawn.toml"}.Press(Turn{Form: typed.Set("id", id), Press: "program", Today: today, ID: ask.ID{5}})
		if err != nil || next.Answers.Get("id") != want {
			t.Errorf("a file with the id %q gets %q, %v", id, next.Answers.Get("id"), err)
		}
	}
	file := first.Set("id", "back-4x7q")
	if got, _ := ask.IDOf(press(Door{}.Form(file), file, 4)); got != (ask.ID{4}) {
		t.Errorf("those of a file have id %v", got)
	}
}

// What a link cannot carry is a problem where the answers become a link, and none where
// they go into a file, which keeps it. Problems that the door itself has found are shown
// in both cases.
func TestWhatStaysBehind(t *testing.T) {
	f := append(sheet().Set("form.people", ""), fields("place.normals", "station.csv", "calendar.link", "https://example.org/x")...)
	said := []schedule.Problem{{Message: "the file was changed meanwhile"}}
	opened := 0
	open := func(name string) (io.ReadCloser, error) {
		if opened++; name != "station.csv" {
			t.Errorf("%s was opened", name)
		}
		return nil, errors.New("there is none")
	}
	for _, d := range []Door{{}, {File: "lawn.toml", Open: open}} {
		next, err := d.Press(Turn{Form: f, Press: "program", Today: today, Wrong: said})
		if err != nil || next.Page == nil {
			t.Fatal(err)
		}
		for part, want := range map[string]bool{"stays behind": d.File == "", "stay behind": d.File == "", "was changed meanwhile": true} {
			if got := bytes.Contains(next.Page, []byte(part)); got != want {
				t.Errorf("file %q: %q is said: %v", d.File, part, got)
			}
		}
		if next.Draft != "" {
			t.Errorf("file %q: a draft of what no link carries", d.File)
		}
	}
	if opened == 0 {
		t.Error("the station file was not looked for")
	}
}

// A tick lets names into the link; without names it does nothing, and the mark of a file
// goes along with the page.
func TestTickAndMark(t *testing.T) {
	for value, want := range map[string]bool{"yes": true, "": false, "no": false} {
		if got := shares(fields("form.share", value)); got != want {
			t.Errorf("%q: %v", value, got)
		}
	}
	named := ask.Answers(fields("crew.people.ana", "Ana"))
	for _, c := range []struct {
		door Door
		a    ask.Answers
		want string
	}{{Door{}, named, "yes"}, {Door{File: "x"}, named, ""}, {Door{}, ask.Answers(fields("title", "x")), ""}} {
		if got := c.door.Form(c.a).Get("form.share"); got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
	body, err := Door{File: "lawn.toml", Mark: "abc"}.Begin(today)
	if err != nil || !bytes.Contains(body, []byte(`name="form.mark" value="abc"`)) {
		t.Errorf("the mark is lost: %v", err)
	}
	if body, _ = (Door{}).Begin(today); bytes.Contains(body, []byte("form.mark")) {
		t.Error("a mark of nothing")
	}
}

// The ZIP alone is enough to say back the place; a ZIP that is wrong or not there yet
// says nothing.
func TestPlaceSaidBack(t *testing.T) {
	for zip, want := range map[string]string{"44109": "Understood: 44109, Cleveland OH.", "": "", "00000": "", "4410": ""} {
		got := Understood(fields("place.zip", zip, "area.lawn.size", "nonsense"), today)
		if strings.Join(got, "") == "" != (want == "") || want != "" && (got[0] != want || len(got) != 2) {
			t.Errorf("%q: %q", zip, got)
		}
	}
	if got := Understood(fields("title", "x"), today); got != nil {
		t.Errorf("of no place: %q", got)
	}
}

// Faults of the answers come back as errors, at each of the link's files.
func TestNoProgram(t *testing.T) {
	bad := ask.Answers(fields("title", "x", "start", "2026-10-15", "area.lawn.size", "big", "area.lawn.grass", "tall fescue", "place.zip", "44109"))
	for what, do := range map[string]func() ([]byte, error){
		"page":     func() ([]byte, error) { return Answer(bad, nil, page.Answered{Today: today}, nil) },
		"sheet":    func() ([]byte, error) { return Sheet(bad, today, "") },
		"calendar": func() ([]byte, error) { return Calendar(bad, "", today, "") },
	} {
		if b, err := do(); err == nil || b != nil || !strings.Contains(err.Error(), "big") {
			t.Errorf("%s: %d bytes, %v", what, len(b), err)
		}
	}
	good := complete(ask.FromForm(sheet().Set("form.people", "")), nil, today).Set("id", "x2x2-aaaa")
	if b, err := Answer(good, bad, page.Answered{Today: today}, nil); err != nil || bytes.Contains(b, []byte("What moved")) {
		t.Errorf("told against what makes no program: %v", err)
	}
	if b, err := Answer(good, good, page.Answered{Today: today}, nil); err != nil || !bytes.Contains(b, []byte("nothing moved")) {
		t.Errorf("told against the same: %v", err)
	}
	link := "https://example.org/p/abc"
	if b, err := Sheet(good, today, link); err != nil || !bytes.Contains(b, []byte(link)) {
		t.Errorf("no link on the sheet: %v", err)
	}
	b, err := Calendar(good, "", today, link)
	if err != nil || strings.Count(strings.ReplaceAll(string(b), "\r\n ", ""), "remove this one.") != 1 || !bytes.Contains(b, []byte(link)) {
		t.Errorf("no closing words, or no link, in the calendar: %v", err)
	}
	for _, path := range []string{"person/x", "area/lawn", "x"} {
		if _, err := Calendar(good, path, today, link); err == nil || !strings.Contains(err.Error(), path) {
			t.Errorf("%s: %v", path, err)
		}
	}
}

// The published page has its five files in this order; the build that the service worker
// names depends on the content of each, and on nothing else.
func TestPublishedFiles(t *testing.T) {
	pack := func(wasm string) []byte {
		var b bytes.Buffer
		z := gzip.NewWriter(&b)
		z.Write([]byte(wasm))
		z.Close()
		return b.Bytes()
	}
	const run = "globalThis.Go = class {}"
	build := func(p Planner) (names []string, worker string) {
		t.Helper()
		files, err := Static(p)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			if names = append(names, f.Name); f.Name == "sw.js" {
				worker = string(f.Data)
			}
			if len(f.Data) == 0 {
				t.Errorf("%s is empty", f.Name)
			}
		}
		return names, worker
	}
	one := Planner{pack("\x00asm" + Mark), []byte(run)}
	names, worker := build(one)
	if fmt.Sprint(names) != "[index.html sw.js ask.js wasm_exec.js planner.bin]" {
		t.Errorf("%v", names)
	}
	if _, again := build(one); again != worker {
		t.Error("the same files, another build")
	}
	if _, other := build(Planner{pack("\x00asm" + Mark + "x"), []byte(run)}); other == worker {
		t.Error("another planner, the same build")
	}
	if _, other := build(Planner{one.Packed, []byte(run + " ")}); other == worker {
		t.Error("another script, the same build")
	}
	if _, after, ok := strings.Cut(worker, "swardbook-ask-"); !ok || len(after) < 16 || strings.Trim(after[:16], "0123456789abcdef") != "" {
		t.Errorf("the build is not named by 16 digits: %.40q", after)
	}
	for what, c := range map[string]struct {
		p    Planner
		says string
	}{
		"not packed":      {Planner{[]byte("\x00asm" + Mark), []byte(run)}, "planner.bin is no packed planner"},
		"cut short":       {Planner{one.Packed[:len(one.Packed)-9], []byte(run)}, "planner.bin is no packed planner"},
		"no planner":      {Planner{pack("asm" + Mark), []byte(run)}, "planner.bin is no packed planner"},
		"another release": {Planner{pack("\x00asm" + Mark[:len(Mark)-1]), []byte(run)}, "of another release"},
		"no script":       {Planner{one.Packed, []byte("Go")}, "wasm_exec.js is not the script"},
	} {
		if _, err := Static(c.p); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", what, err)
		}
	}
}
