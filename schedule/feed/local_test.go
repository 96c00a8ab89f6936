package feed

import (
	"context"
	"net"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"swardbook/schedule/ask"
	"swardbook/schedule/door"
	"swardbook/schedule/plan"
)

const commentedLawn = `# Ours since 2019.
id = "back-4x7q"
title = "Back lawn" # short
start = 2026-09-01

[place]
zip = "44109" # the house

[area.lawn]
size = "1,800 sq ft"
grass = "tall fescue"

# The report of the autumn.
[area.lawn.soil]
sampled = 2026-08-20
method = "mehlich-3"
ph = 5.6
`

// local is one person at the ask page of a file in a folder.
type local struct {
	*testing.T
	*Local
	dir string
}

func atHome(t *testing.T, text string) *local {
	t.Helper()
	dir := t.TempDir()
	if text != "" {
		if err := os.WriteFile(filepath.Join(dir, "lawn.toml"), []byte(text), 0o640); err != nil {
			t.Fatal(err)
		}
	}
	l, problems, err := NewLocal(LocalOptions{Root: openRoot(t, dir), Site: "lawn", File: "lawn.toml", Host: "127.0.0.1:4711", Plan: plan.Program,
		Now: func() time.Time { return time.Date(2026, 9, 14, 9, 0, 0, 0, time.UTC) }, Log: logTo(newWorld(t))})
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	return &local{t, l, dir}
}

func (l *local) ask(method, path, body string, header ...string) *http.Response {
	q := httptest.NewRequest(method, "http://127.0.0.1:4711"+path, strings.NewReader(body))
	q.Header.Set("Content-Type", formKind)
	for i := 0; i < len(header); i += 2 {
		if q.Header.Set(header[i], header[i+1]); header[i] == "Host" {
			q.Host = header[i+1]
		}
	}
	w := httptest.NewRecorder()
	l.ServeHTTP(w, q)
	return w.Result()
}

func (l *local) file(name string) string {
	b, _ := os.ReadFile(filepath.Join(l.dir, name)) // "" if it is not there
	return string(b)
}

// page gives the form as the page has it: the answers of the file and its mark.
func (l *local) form() ask.Form {
	l.Helper()
	a, text, problems, err := l.read()
	if err != nil || len(problems) > 0 {
		l.Fatal(err, problems)
	}
	return l.door("", "").Form(a).Set(door.MarkField, text.mark())
}

func (l *local) send(f ask.Form, press string) *http.Response {
	v := []string{"press=" + press}
	for _, one := range f {
		v = append(v, url.QueryEscape(one.Key)+"="+url.QueryEscape(one.Value))
	}
	return l.ask("POST", l.Path(), strings.Join(v, "&"), "Origin", "null", "Sec-Fetch-Site", "same-origin")
}

// A file that is there is changed where an answer is another, and nowhere else, and the
// page says what moved.
func TestLocalChanges(t *testing.T) {
	l := atHome(t, commentedLawn)
	if text := body(t, l.ask("GET", l.Path(), "")); !strings.Contains(text, `name="area.lawn.soil.ph" type="text" value="5.6"`) || !strings.Contains(text, "Write lawn.toml") {
		t.Fatal("the answers of the file are not in the page")
	}
	if r := l.send(l.form(), "program"); r.StatusCode != 303 || l.file("lawn.toml") != commentedLawn {
		t.Fatalf("%s, and the file is\n%s", r.Status, l.file("lawn.toml"))
	}
	f := l.form().Set("area.lawn.soil.ph", "5.2").Set("material.bag1.kind", "lime").Set("material.bag1.cce", "90").Set("material.bag1.pack", "40").
		Set("record.1.date", "2026-09-10").Set("record.1.material", "bag1").Set("record.1.amount", "20")
	r := l.send(f, "program")
	want := strings.Replace(commentedLawn, "ph = 5.6", "ph = 5.2", 1) + "\n[material.bag1]\nname = \"limestone\"\nkind = \"lime\"\ncce = 90\npack = \"40 lb\"\n"
	if r.StatusCode != 303 || r.Header.Get("Location") != "program" || l.file("lawn.toml") != want {
		to, _, _ := strings.Cut(strings.TrimPrefix(r.Header.Get("Location"), "./"), "#")
		_, wrong, _ := strings.Cut(body(t, l.ask("GET", l.Path()+to, "")), `id="wrong"`)
		t.Fatalf("%s, %.500s, and the file is\n%s", r.Status, wrong, l.file("lawn.toml"))
	}
	if b := l.file("lawn.record.csv"); strings.Count(b, "\n") != 2 || !strings.Contains(b, "2026-09-10,") {
		t.Errorf("the record book is\n%s", b)
	}
	if info, err := os.Stat(filepath.Join(l.dir, "lawn.toml")); err != nil || info.Mode().Perm() != 0o640 {
		t.Error(info.Mode(), err)
	}
	for range 2 {
		if text := body(t, l.ask("GET", l.Path()+"program", "")); !strings.Contains(text, "What moved") || !strings.Contains(text, "lawn.toml is written") {
			t.Error("the program does not say what moved")
		}
	}
	for path, begins := range map[string]string{"program.html": "<!doctype html>", "program.ics": "BEGIN:VCALENDAR"} {
		if text := body(t, l.ask("GET", l.Path()+path, "")); !strings.HasPrefix(strings.ToLower(text), strings.ToLower(begins)) {
			t.Errorf("%s begins %.40q", path, text)
		}
	}
}

// A new file is written once the answers make a site, and what was typed until then comes
// again with reloading and going back.
func TestLocalBegins(t *testing.T) {
	l := atHome(t, "")
	if r := l.ask("GET", l.Path()+"program", ""); r.StatusCode != 404 {
		t.Error("a program of nothing:", r.Status)
	}
	mark := (&reading{}).mark()
	f := ask.Form{{Key: "place.zip", Value: "44109"}, {Key: "area.lawn.size", Value: "forty by <b>"}, {Key: door.MarkField, Value: mark}}
	one := l.send(f, "grass-lawn").Header.Get("Location")
	two := l.send(f, "program").Header.Get("Location")
	if l.file("lawn.toml") != "" {
		t.Fatal("written with errors")
	}
	at := func(to string) string {
		to, _, _ = strings.Cut(strings.TrimPrefix(to, "./"), "#")
		return body(t, l.ask("GET", l.Path()+to, ""))
	}
	for range 2 {
		if text := at(one); !strings.Contains(text, "44109, Cleveland OH") || strings.Contains(text, "aria-invalid") {
			t.Error("the first turn is lost")
		}
		if text := at(two); !strings.Contains(text, `value="forty by &lt;b&gt;"`) || !strings.Contains(text, `id="q-area-lawn-size-err"`) {
			t.Error("what was typed, or what is wrong with it, is lost")
		}
	}
	f = f.Set("area.lawn.size", "40 x 65").Set("area.lawn.grass", "tall fescue")
	if r := l.send(f, "program"); r.Header.Get("Location") != "program" {
		t.Fatal(r.Status, at(r.Header.Get("Location")))
	}
	if text := l.file("lawn.toml"); !strings.Contains(text, "id = ") || !strings.Contains(text, `size = "40 x 65 ft"`) || !strings.Contains(text, "start = 2026-09-14") {
		t.Error(text)
	}
	if text := body(t, l.ask("GET", l.Path()+"program", "")); strings.Contains(text, "What moved") || !strings.Contains(text, "lawn.toml is written") {
		t.Error("no program")
	}
}

// What somebody else wrote meanwhile is not written over unasked.
func TestLocalMeanwhile(t *testing.T) {
	l := atHome(t, commentedLawn)
	f := l.form().Set("area.lawn.soil.ph", "5.2")
	other := strings.Replace(commentedLawn, "1,800", "1,900", 1)
	if err := os.WriteFile(filepath.Join(l.dir, "lawn.toml"), []byte(other), 0o640); err != nil {
		t.Fatal(err)
	}
	to, _, _ := strings.Cut(strings.TrimPrefix(l.send(f, "program").Header.Get("Location"), "./"), "#")
	text := body(t, l.ask("GET", l.Path()+to, ""))
	if l.file("lawn.toml") != other || !strings.Contains(text, "hanged by somebody else") || !strings.Contains(text, `value="5.2"`) {
		t.Fatalf("%s\n%s", l.file("lawn.toml"), text)
	}
	_, mark, _ := strings.Cut(text, `name="form.mark" value="`)
	if l.send(f.Set(door.MarkField, mark[:16]), "program"); l.file("lawn.toml") != strings.Replace(commentedLawn, "5.6", "5.2", 1) {
		t.Error(l.file("lawn.toml"))
	}
	if err := os.WriteFile(filepath.Join(l.dir, "lawn.toml"), []byte("no [ toml"), 0o640); err != nil {
		t.Fatal(err)
	}
	if r := l.send(f, "program"); r.StatusCode != 409 || l.file("lawn.toml") != "no [ toml" {
		t.Error(r.Status)
	}
}

// Whatever would write the file looks whether it is still the one that was shown, Enter as
// the button; what only goes on does not.
func TestLocalMeanwhileByAnyButton(t *testing.T) {
	for press, told := range map[string]bool{"program": true, "enter": true, "shed": false, "more-bag": false} {
		l := atHome(t, commentedLawn)
		f := l.form().Set("area.lawn.soil.ph", "5.2").Set(door.MarkField, "0123456789abcdef")
		to, _, _ := strings.Cut(strings.TrimPrefix(l.send(f, press).Header.Get("Location"), "./"), "#")
		text := body(t, l.ask("GET", l.Path()+to, ""))
		if got := strings.Contains(text, "hanged by somebody else"); got != told || l.file("lawn.toml") != commentedLawn || !strings.Contains(text, `value="5.2"`) {
			t.Errorf("%s: told %v, and the file is\n%s", press, got, l.file("lawn.toml"))
		}
	}
}

// A file that cannot be written is told of, by Enter as by the button, and what was typed
// is kept.
func TestLocalCannotWrite(t *testing.T) {
	for _, press := range []string{"program", "enter"} {
		l := atHome(t, commentedLawn)
		f := l.form().Set("area.lawn.soil.ph", "5.2").Set("record.1.date", "2026-09-10").Set("record.1.kind", "nitrogen").Set("record.1.amount", "2 lb")
		if err := os.Mkdir(filepath.Join(l.dir, "lawn.record.csv"), 0o777); err != nil { // no file, and in the way of one
			t.Fatal(err)
		}
		r := l.send(f, press)
		to, _, _ := strings.Cut(strings.TrimPrefix(r.Header.Get("Location"), "./"), "#")
		if text := body(t, l.ask("GET", l.Path()+to, "")); to == "program" || !strings.Contains(text, "ould not be written") || !strings.Contains(text, `value="5.2"`) {
			t.Errorf("%s: to %s", press, to)
		}
	}
}

// What is wrong with the two files is told under the names that their owner gave them.
func TestLocalNamesItsFiles(t *testing.T) {
	for book, want := range map[string]string{"date,area,\"job\n": "garden/lawn.record.csv", "": "garden/lawn.toml"} {
		dir := t.TempDir()
		site := commentedLawn
		if book == "" {
			site = "no [ toml"
		} else if err := os.WriteFile(filepath.Join(dir, "lawn.record.csv"), []byte(book), 0o666); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, "lawn.toml"), []byte(site), 0o666); err != nil {
			t.Fatal(err)
		}
		o := LocalOptions{Root: openRoot(t, dir), Site: "lawn", File: "garden/lawn.toml", Host: "127.0.0.1:1", Plan: plan.Program, Now: time.Now, Log: logTo(newWorld(t))}
		_, problems, err := NewLocal(o)
		if err != nil || len(problems) == 0 || problems[0].File != want {
			t.Errorf("%q: %v %v", book, problems, err)
		}
		if err := os.Remove(filepath.Join(dir, "lawn.toml")); err != nil {
			t.Fatal(err)
		}
		if err := os.Mkdir(filepath.Join(dir, "lawn.toml"), 0o777); err != nil {
			t.Fatal(err)
		}
		if _, _, err := NewLocal(o); err == nil || !strings.HasPrefix(err.Error(), "garden/lawn.toml: ") || !strings.Contains(err.Error(), "no ordinary file") {
			t.Errorf("a folder in its place: %v", err)
		}
	}
}

// Nobody but the browser that was given the address is answered: no page from elsewhere,
// also under a name of its own, and no other user of the machine.
func TestLocalRefuses(t *testing.T) {
	l := atHome(t, commentedLawn)
	changed := "press=program&area.lawn.size=5+sq+ft"
	for name, c := range map[string]struct {
		method, path string
		header       []string
		want         int
	}{
		"another name":        {"GET", l.Path(), []string{"Host", "lawn.example:4711"}, 403},
		"another port":        {"GET", l.Path(), []string{"Host", "127.0.0.1:80"}, 403},
		"its name":            {"GET", l.Path(), []string{"Host", "localhost:4711"}, 200},
		"without the word":    {"GET", "/", nil, 404},
		"another word":        {"POST", "/abc/", nil, 404},
		"from elsewhere":      {"POST", l.Path(), []string{"Sec-Fetch-Site", "cross-site"}, 403},
		"from another port":   {"POST", l.Path(), []string{"Sec-Fetch-Site", "same-site"}, 403},
		"of an older browser": {"POST", l.Path(), []string{"Origin", "http://lawn.example"}, 403},
		"removing":            {"DELETE", l.Path(), []string{"Sec-Fetch-Site", "same-origin"}, 405},
		"as another type":     {"POST", l.Path(), []string{"Content-Type", "text/plain", "Sec-Fetch-Site", "same-origin"}, 415},
		"out of the folder":   {"GET", l.Path() + "../lawn.toml", nil, 404},
		"the file itself":     {"GET", l.Path() + "lawn.toml", nil, 404},
	} {
		if r := l.ask(c.method, c.path, changed, c.header...); r.StatusCode != c.want {
			t.Errorf("%s: %s, not %d", name, r.Status, c.want)
		}
	}
	if l.file("lawn.toml") != commentedLawn {
		t.Error("the file was changed")
	}
}

// It ends at once, also while a browser holds connections open.
func TestLocalEnds(t *testing.T) {
	l := atHome(t, commentedLawn)
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- ServeLocal(ctx, listener, l.Local) }()
	for range 3 {
		c, err := net.Dial("tcp", listener.Addr().String())
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		c.Write([]byte("GET / HTTP/1.1\r\n")) // and no more
	}
	time.Sleep(50 * time.Millisecond)
	from := time.Now()
	cancel()
	select {
	case err := <-ended:
		if took := time.Since(from); err != nil || took > 2*time.Second {
			t.Errorf("ended after %s: %v", took, err)
		}
	case <-time.After(8 * time.Second):
		t.Fatal("it does not end")
	}
}
