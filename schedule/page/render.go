package page

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"html/template"
	"strings"
	"sync"

	"swardbook/schedule/word"
)

//go:embed *.html *.css
var files embed.FS

// style is the one style sheet of all pages, as it stands between its tags.
var style = sync.OnceValue(func() string {
	b, err := files.ReadFile("page.css")
	if err != nil {
		panic(err) // embedded: cannot be missing
	}
	return "\n" + string(b)
})

// Style is the one style sheet of all pages, for those that other packages
// write in the same look.
func Style() string { return style() }

var templates = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("").Funcs(template.FuncMap{
		"tied":     tied,
		"sentence": word.Sentence,
	}).ParseFS(files, "*.html"))
})

// head is what stands at the top of every page.
type head struct {
	Title string
	Style template.CSS
	// Policy lets the page use its own style, by its hash, and nothing else.
	Policy string
}

// commonHead is the head of the pages that have no style of their own, without its title.
var commonHead = sync.OnceValue(func() head { return headOf("", style()) })

func newHead(title string) head {
	h := commonHead()
	h.Title = title
	return h
}

// headWith is the head of a page that has a style of its own beside the common one.
func headWith(title, own string) head {
	b, err := files.ReadFile(own)
	if err != nil {
		panic(err) // embedded: cannot be missing
	}
	return headOf(title, style()+string(b))
}

func headOf(title, style string) head {
	sum := sha256.Sum256([]byte(style))
	return head{
		Title: title,
		Style: template.CSS(style),
		Policy: "default-src 'none'; style-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) +
			"'; base-uri 'none'; form-action 'none'",
	}
}

// drafts are buffers in which pages were written, for the next: a page is large,
// and is copied once, when it is done, rather than each time it outgrows its room.
var drafts = sync.Pool{New: func() any { return new(markup) }}

// written gives what is written on a draft.
func written(write func(*markup) error) ([]byte, error) {
	m := drafts.Get().(*markup)
	defer drafts.Put(m)
	m.Reset()
	if err := write(m); err != nil {
		return nil, err
	}
	return bytes.Clone(m.Bytes()), nil
}

func render(name string, view any) ([]byte, error) {
	return written(func(m *markup) error { return templates().ExecuteTemplate(m, name, view) })
}

// anchor turns a job's id into a name inside the page.
func anchor(prefix, id string) string {
	return prefix + strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9':
			return r
		}
		return '-'
	}, id)
}
