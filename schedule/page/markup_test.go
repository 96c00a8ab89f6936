package page_test

import (
	"encoding/xml"
	"fmt"
	"io"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule"
	"swardbook/schedule/lesson"
	"swardbook/schedule/page"
	"swardbook/schedule/word"
)

// everyPage gives every kind of page of every site, written once for all tests.
func everyPage(t *testing.T) map[string][]byte {
	t.Helper()
	if written == nil {
		written = writeEveryPage(t)
	}
	return written
}

var written map[string][]byte

func writeEveryPage(t *testing.T) map[string][]byte {
	t.Helper()
	pages := map[string][]byte{}
	add := func(name string, b []byte, err error) {
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		pages[name] = b
	}
	for _, name := range names {
		p := planned(t, name)
		for _, today := range []schedule.Date{{}, p.Start.AddDays(90), p.Through.AddDays(30)} {
			b, err := page.Sheet(p, page.Options{Today: today, Link: "https://example.org/a?b=c&d=e", Record: "https://example.org/done", Full: today.IsZero()})
			add(fmt.Sprintf("%s sheet %s", name, today), b, err)
		}
		area := p.Areas[0].ID
		b, err := page.Sheet(p, page.Options{Area: area, Person: "teo"})
		add(name+" sheet of one area", b, err)
		l := []*lesson.Lesson{lessonOf(t, p, lesson.Options{Long: true})}
		b, err = page.Lesson(l)
		add(name+" worksheet", b, err)
		b, err = page.LessonKey(l)
		add(name+" key", b, err)
	}
	examples, err := filepath.Glob("../../examples/*/site.toml")
	if err != nil || len(examples) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	taught := taught(t)
	for _, file := range examples {
		p := plan(t, file)
		b, err := page.Sheet(p, page.Options{})
		add(file+" sheet", b, err)
		if !slices.Contains(taught, file) {
			continue
		}
		sets := []*lesson.Lesson{lessonOf(t, p, lesson.Options{Set: 1}), lessonOf(t, p, lesson.Options{Set: 2})}
		b, err = page.Lesson(sets)
		add(file+" two worksheets", b, err)
		b, err = page.LessonKey(sets)
		add(file+" key to two", b, err)
	}
	b, err := page.Comparison([]page.Variant{{Label: `a "long" <label> & more`, Program: planned(t, "garden")}, {Label: "b", Program: planned(t, "unread")}}, page.Options{})
	add("comparison", b, err)
	return pages
}

// void are the elements that HTML never closes.
var void = regexp.MustCompile(`<(meta|input|br)([^>]*[^/>])?>`)

// slip is what a page holds when a figure or a template went wrong.
var slip = regexp.MustCompile(`\bNaN\b|\bInf\b|ZgotmplZ|%!|<no value>|&lt;nil`)

// element is one start tag with its attributes, and the text inside.
type element struct {
	name string
	attr map[string]string
	text string
}

// elements reads a page as XML, so that every tag must be closed and nested,
// and lists what is on it.
func elements(t *testing.T, name string, b []byte) []*element {
	t.Helper()
	s := strings.TrimPrefix(string(b), "<!DOCTYPE html>\n")
	s = regexp.MustCompile(`(?s)<style>.*?</style>`).ReplaceAllString(s, "")
	s = strings.NewReplacer(" open>", ` open="">`).Replace(s)
	s = void.ReplaceAllString(s, "<$1$2/>")
	d := xml.NewDecoder(strings.NewReader(s))
	d.Entity = xml.HTMLEntity
	var all, open []*element
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return all
		}
		if err != nil {
			t.Fatalf("%s: not well formed: %v", name, err)
		}
		switch tok := tok.(type) {
		case xml.StartElement:
			e := &element{name: tok.Name.Local, attr: map[string]string{}}
			for _, a := range tok.Attr {
				e.attr[a.Name.Local] = a.Value
			}
			all, open = append(all, e), append(open, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			for _, e := range open {
				e.text += string(tok)
			}
		}
	}
}

func TestPagesAreWellFormedAndLabelled(t *testing.T) {
	for name, b := range everyPage(t) {
		all := elements(t, name, b)
		ids, level, h1 := map[string]bool{}, 0, 0
		for _, e := range all {
			if id := e.attr["id"]; id != "" {
				if ids[id] {
					t.Errorf("%s: id %q stands twice", name, id)
				}
				ids[id] = true
			}
		}
		for _, e := range all {
			if h := strings.TrimPrefix(e.name, "h"); len(e.name) == 2 && h >= "1" && h <= "6" {
				n := int(h[0] - '0')
				if n > level+1 {
					t.Errorf("%s: heading %q jumps from level %d to %d", name, e.text, level, n)
				}
				if n == 1 {
					h1++
				}
				if strings.TrimSpace(e.text) == "" {
					t.Errorf("%s: an empty heading", name)
				}
				level = n
			}
			switch e.name {
			case "html":
				if e.attr["lang"] != "en" {
					t.Errorf("%s: no language", name)
				}
			case "a":
				if to, ok := strings.CutPrefix(e.attr["href"], "#"); ok && !ids[to] {
					t.Errorf("%s: link to %q, which is not there", name, to)
				}
				if strings.TrimSpace(e.text) == "" {
					t.Errorf("%s: a link without words", name)
				}
			case "th":
				if e.attr["scope"] == "" {
					t.Errorf("%s: header cell %q has no scope", name, e.text)
				}
			case "input":
				if e.attr["aria-label"] == "" {
					t.Errorf("%s: a box without a label", name)
				}
			case "svg":
				if e.attr["aria-hidden"] != "true" && (!ids[strings.Fields(e.attr["aria-labelledby"])[0]] || e.attr["role"] != "img") {
					t.Errorf("%s: a drawing without a title", name)
				}
			}
			for key := range e.attr {
				if key == "style" || strings.HasPrefix(key, "on") {
					t.Errorf("%s: <%s %s>: the page's policy forbids it", name, e.name, key)
				}
			}
			if labelled := e.attr["aria-labelledby"]; labelled != "" {
				for id := range strings.FieldsSeq(labelled) {
					if !ids[id] {
						t.Errorf("%s: <%s> is labelled by %q, which is not there", name, e.name, id)
					}
				}
			}
		}
		if h1 != 1 {
			t.Errorf("%s: %d first headings", name, h1)
		}
		if bad := slip.Find(b); bad != nil {
			t.Errorf("%s: holds %q", name, bad)
		}
	}
}

// A page asks the network for nothing: only links that are followed by hand
// name another place, and only those that were asked for.
func TestPagesAskForNothing(t *testing.T) {
	allowed := []string{"https://example.org/a?b=c&d=e", "https://example.org/done"}
	for name, b := range everyPage(t) {
		for _, e := range elements(t, name, b) {
			for key, v := range e.attr {
				outside := strings.Contains(v, "//") && key != "xmlns" && key != "content"
				if outside && !(e.name == "a" && key == "href" && slices.ContainsFunc(allowed, func(a string) bool { return strings.HasPrefix(v, a) })) {
					t.Errorf("%s: <%s %s=%q>", name, e.name, key, v)
				}
				if key == "src" || key == "srcset" || key == "ping" || e.name == "link" || e.name == "script" || e.name == "iframe" {
					t.Errorf("%s: <%s %s>", name, e.name, key)
				}
			}
		}
	}
}

func TestEveryJobIsOnTheSheet(t *testing.T) {
	for _, name := range names {
		p := planned(t, name)
		b, err := page.Sheet(p, page.Options{})
		if err != nil {
			t.Fatal(err)
		}
		var text strings.Builder
		boxes := 0
		for _, e := range elements(t, name, b) {
			if e.name == "body" {
				text.WriteString(plain(e.text))
			}
			if e.name == "i" {
				boxes++
			}
		}
		has := func(what, s string) {
			if s = strings.Join(strings.Fields(s), " "); !strings.Contains(text.String(), s) {
				t.Errorf("%s: %s is not on the sheet: %s", name, what, s)
			}
		}
		jobs := 0
		for _, e := range p.Entries {
			if s := schedule.State(p.Standing(&e, p.Start)); !e.Kind.Notice() && (s == schedule.Planned || s == schedule.Due) { // the sheet is of that day
				jobs++
			}
			has("a day", e.Date.Words())
			has("a summary", e.Summary)
			for _, s := range e.Steps {
				has("a step", s)
			}
			for _, c := range e.Cautions {
				has("a caution", c)
			}
			has("the rain", e.IfRain)
			for _, r := range e.Why {
				has("a reason", r.Text)
			}
			for _, s := range e.BoundBy {
				if !namesAJob(p, s) { // ids are put in words
					has("what bound the day", s)
				}
			}
		}
		if boxes != jobs {
			t.Errorf("%s: %d boxes for %d jobs", name, boxes, jobs)
		}
		for _, l := range p.LeftOut {
			if !namesAJob(p, l.Reason) {
				has("what was left out", l.Reason)
			}
		}
		for _, a := range p.Areas {
			for _, f := range a.Findings {
				has("a finding", f.Text)
			}
		}
		for _, lists := range [][]string{p.Assumptions, p.LawNotes} {
			for _, s := range lists {
				has("a note", word.Capital(s))
			}
		}
		for _, l := range p.Laws {
			has("a law", l.Text)
			has("its citation", l.Citation)
		}
	}
}

// namesAJob tells whether a text holds the id of a job.
func namesAJob(p *schedule.Program, text string) bool {
	return slices.ContainsFunc(p.Entries, func(e schedule.Entry) bool { return strings.Contains(text, e.ID) }) ||
		slices.ContainsFunc(p.LeftOut, func(l schedule.LeftOut) bool { return strings.Contains(text, l.ID) })
}

func TestSameProgramSameBytes(t *testing.T) {
	a, b := everyPage(t), writeEveryPage(t)
	for name := range a {
		if string(a[name]) != string(b[name]) {
			t.Errorf("%s: two writings differ", name)
		}
	}
}
