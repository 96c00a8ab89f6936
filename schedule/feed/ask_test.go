package feed

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"swardbook/schedule/ask"
)

// Nothing that was typed is lost, and each problem stands at its field.
func TestAskProblems(t *testing.T) {
	w := opened(t)
	r := w.send(homeLawn.Set("area.lawn.soil.ph", "54").Set("area.lawn.texture", "like cake").Set("place.zip", ""), "/ask")
	to, _, _ := strings.Cut(r.Header.Get("Location"), "#")
	if r.StatusCode != 303 || !strings.HasSuffix(to, "/ask?go=program") {
		t.Fatalf("%s to %q", r.Status, to)
	}
	for range 2 { // reloading asks for nothing to be sent again
		text := body(t, w.ask("GET", "/"+to, ""))
		for _, want := range []string{`value="54" inputmode="decimal" aria-invalid="true" aria-describedby="q-area-lawn-soil-ph-err"`, "54 is outside 2 to 12",
			`<option value="like cake" selected>like cake</option>`, "Unknown value", "othing is said about the place", `value="2200"`} {
			if !strings.Contains(text, want) {
				t.Errorf("the form does not have %s", want)
			}
		}
	}
	code := strings.TrimSuffix(strings.TrimPrefix(to, "p/"), "/ask?go=program")
	if r := w.ask("GET", "/p/"+code, ""); r.StatusCode != 303 || r.Header.Get("Location") != code+"/ask#wrong" {
		t.Errorf("the page of answers with errors: %s to %q", r.Status, r.Header.Get("Location"))
	}
	if r := w.ask("GET", "/p/"+code+".ics", ""); r.StatusCode != 422 {
		t.Error("their calendar:", r.Status)
	}
	more := w.send(homeLawn, "/ask", "press=more-bag").Header.Get("Location")
	if more, at, _ := strings.Cut(more, "#"); at == "shed" {
		if text := body(t, w.ask("GET", "/"+more, "")); !strings.Contains(text, `name="form.material.bag1.n" type="text" value="22"`) || !strings.Contains(text, `name="form.material.bag2.n" type="text" value=""`) {
			t.Errorf("%s has no place for another bag", more)
		}
	} else {
		t.Error("another bag is at", at)
	}
	old := w.send(homeLawn.Set("start", "2015-09-14"), "/ask").Header.Get("Location")
	old, _, _ = strings.Cut(old, "#")
	if text := body(t, w.ask("GET", "/"+old, "")); !strings.Contains(text, "ies more than 10 years back") {
		t.Error("a site of ten years is worked out again and again")
	}
	// What no address can bring again comes at once.
	r = w.send(homeLawn, "/ask", "form.area.lawn.mix.1.grass=", "area.lawn.sown_by=Bo", "press=sheet-lawn")
	if text := body(t, r); r.StatusCode != 200 || !strings.Contains(text, `name="area.lawn.sown_by" value="Bo"`) {
		t.Error("what no address carries is lost:", r.Status)
	}
}

// Step by step without a script: each button leads to an address of the next screen, and
// the program says what moved since the answers that were changed.
func TestAskSteps(t *testing.T) {
	w := opened(t)
	steps := func(from string, a ask.Answers, press string) string {
		t.Helper()
		to := w.send(a, from, "press="+press).Header.Get("Location")
		if to == "" {
			t.Fatalf("%s leads nowhere", press)
		}
		u, err := url.Parse("https://example.org" + from)
		if err == nil {
			u, err = u.Parse(to)
		}
		if err != nil {
			t.Fatal(err)
		}
		if u.Fragment != "" && u.Fragment != press && press != "enter" {
			t.Errorf("%s leads to %s", press, u.Fragment)
		}
		return u.RequestURI()
	}
	few := ask.Answers{{Key: "place.zip", Value: "44109"}}
	at := steps("/ask", few, "grass-lawn")
	if text := body(t, w.ask("GET", at, "")); !strings.Contains(text, "Understood: 44109, Cleveland OH.") {
		t.Error(at, "does not say the place back")
	}
	if at = steps(at, few, "enter"); !strings.HasSuffix(at, "/ask?go=sheet-lawn") {
		t.Error("Enter leads to", at)
	}
	at = steps(at, homeLawn, "program")
	first, _, _ := strings.Cut(strings.TrimPrefix(at, "/p/"), "?")
	at = steps(at+"/ask", homeLawn.Set("area.lawn.size", "900 sq ft"), "shed")
	if !strings.HasSuffix(at, "/ask?go=shed&was="+first) {
		t.Error("the answers from before are forgotten:", at)
	}
	at = steps(at, homeLawn.Set("area.lawn.size", "900 sq ft"), "program")
	if text := body(t, w.ask("GET", at, "")); !strings.HasSuffix(at, "?was="+first) || !strings.Contains(text, "What moved") {
		t.Error(at, "does not say what moved")
	}
}

// Names go into an address only if that is ticked, and until then are kept in the form.
func TestAskNames(t *testing.T) {
	w := opened(t)
	named := homeLawn.Set("crew.people.mo", "Mo").Set("crew.who.lawn", "mo")
	r := w.send(named.Set("crew.people.mo", ""), "/ask", "form.people=Mo")
	if text := body(t, r); r.StatusCode != 422 || !strings.Contains(text, `value="Mo"`) || !strings.Contains(text, "only if this is ticked") {
		t.Errorf("not ticked: %s", r.Status)
	}
	to := w.send(named, "/ask").Header.Get("Location")
	if a, err := ask.Decode(strings.TrimPrefix(to, "p/")); err != nil || a.Get("crew.people.mo") != "Mo" {
		t.Errorf("ticked: %v %v", a, err)
	}
	if text := body(t, w.ask("GET", "/"+to+"/ask", "")); !strings.Contains(text, `name="form.share" value="yes" checked`) {
		t.Error("the tick is lost")
	}
	if text := body(t, w.ask("GET", "/"+to, "")); !strings.Contains(text, "/person/mo.ics") {
		t.Error("Mo has no calendar")
	}
	for _, key := range []string{"place.normals", "calendar.secret", `"calendar".link`} {
		if r := w.send(homeLawn.Set(key, "x"), "/ask"); r.StatusCode != 422 {
			t.Errorf("%s: %s", key, r.Status)
		}
	}
}

func TestAskRefuses(t *testing.T) {
	w := opened(t)
	for name, c := range map[string]struct {
		body, kind string
		want       int
	}{
		"another kind":     {"{}", "application/json", http.StatusUnsupportedMediaType},
		"no kind":          {"title=x", "", http.StatusUnsupportedMediaType},
		"too long":         {"title=" + strings.Repeat("x", mostAnswers), formKind, http.StatusRequestEntityTooLarge},
		"not to be packed": {"title=%01x&press=program", formKind, http.StatusUnprocessableEntity},
		"too many areas":   {strings.Repeat("area.x=1&", 3) + manyAreas() + "&press=program", formKind, http.StatusUnprocessableEntity},
		"no escape":        {"title=%zz&place.zip=44109", formKind, http.StatusSeeOther},
		"nothing":          {"", formKind, http.StatusOK},
	} {
		if r := w.ask("POST", "/ask", c.body, "Content-Type", c.kind); r.StatusCode != c.want {
			t.Errorf("%s: %s, not %d", name, r.Status, c.want)
		}
	}
}

func manyAreas() string {
	var out []string
	for c := 'a'; c < 'k'; c++ {
		out = append(out, "area."+string(c)+".size=2600+sq+ft")
	}
	return strings.Join(out, "&")
}

// Text in a code is anybody's: on no page does it become markup, script or another address,
// and in no calendar another line.
func TestHostileText(t *testing.T) {
	w := opened(t)
	const evil = `<script>alert(1)</script><img src=x onerror=alert(2)>"'><a href="javascript:alert(3)">x</a>]]>--><style>*{}</style>{{.}}`
	a := homeLawn.Set("title", evil).Set("area.lawn.name", evil).Set("material.bag1.name", evil).Set("crew.people.mo", evil).Set("crew.who.lawn", "mo").
		Set("local.note", evil).Set("local.no_nitrogen", "12-20/12-21").
		Set("record.1.date", "2026-09-20").Set("record.1.kind", "nitrogen").Set("record.1.material", "bag1").Set("record.1.amount", "3 lb").Set("record.1.note", evil)
	code := codeOf(t, a)
	for _, path := range []string{"", "/ask", "/sheet"} {
		r := w.ask("GET", "/p/"+code+path, "")
		text := body(t, r)
		if r.StatusCode != 200 || !strings.Contains(text, "alert(1)") {
			t.Errorf("%q: %s, and the text is not even there", path, r.Status)
		}
		for _, bad := range []string{"<script", "<img", `href="javascript`, "<style>*", "onerror=alert(2)>\""} {
			if strings.Contains(text, bad) {
				t.Errorf("%q holds %s", path, bad)
			}
		}
		csp := r.Header.Get("Content-Security-Policy")
		if !strings.HasPrefix(csp, "default-src 'none';") || strings.Contains(csp, "unsafe") || strings.Contains(csp, "script-src") || r.Header.Get("X-Content-Type-Options") != "nosniff" {
			t.Errorf("%q: %s", path, csp)
		}
	}
	r := w.ask("GET", "/p/"+code+".ics", "")
	text := body(t, r)
	if r.StatusCode != 200 || r.Header.Get("Content-Type") != calendarType {
		t.Fatal(r.Status)
	}
	for line := range strings.Lines(strings.ReplaceAll(text, "\r\n ", "")) {
		name, _, _ := strings.Cut(line, ":")
		if name, _, _ = strings.Cut(name, ";"); strings.Trim(name, "ABCDEFGHIJKLMNOPQRSTUVWXYZ-") != "" {
			t.Errorf("a line of its own: %q", line)
		}
	}
	if r := w.ask("GET", "/p/"+code+"/site.toml", ""); r.Header.Get("Content-Disposition") != `attachment; filename="site.toml"` || r.Header.Get("Content-Type") != tomlType {
		t.Error(r.Header)
	}
	if r := w.ask("GET", "/p/"+code+"/site.record.csv", ""); r.StatusCode != 200 || !strings.HasPrefix(body(t, r), "date,area,kind") {
		t.Error(r.Status)
	}
	if r := w.ask("GET", "/p/"+code+"/ask?more="+url.QueryEscape(evil), ""); strings.Contains(body(t, r), "alert(1)<") {
		t.Error("the question in the address is shown")
	}
}

// A site file of the name of the questions is not in their way.
func TestAskBesideSites(t *testing.T) {
	w := newWorld(t)
	for _, name := range []string{"ask.toml", "p.toml", "mill.toml"} {
		w.put(name, lawn)
	}
	f, err := New(Options{Sites: w.root, Ask: true, Base: base, Now: w.now, Log: logTo(w)})
	if err != nil {
		t.Fatal(err)
	}
	w.feed = f
	w.refresh()
	for path, want := range map[string]string{"/ask": "<form", "/mill/": "program.html", "/": "<h2>Lawns here</h2>"} {
		if r := w.ask("GET", path, ""); r.StatusCode != 200 || !strings.Contains(body(t, r), want) {
			t.Errorf("%s: %s, without %s", path, r.Status, want)
		}
	}
	if log := w.logged(); strings.Count(log, "rename the file") != 2 {
		t.Error(log)
	}
	begin := body(t, w.ask("GET", "/", ""))
	wants(t, "where one begins", begin, `href="ask"`, "What your lawn needs")
	lacks(t, "where one begins", begin, "No site is listed")
}
