package page

import (
	"html/template"
	"strconv"
	"strings"
)

// What a page has by the hundred is written here rather than by a template,
// which takes ten times as long over it: the marks of a drawing, and sentences
// with their sources.

// escaped makes a text stand for itself in HTML, in an element as in a quoted
// attribute, as [template] does it.
var escaped = strings.NewReplacer("\x00", "\uFFFD", `"`, "&#34;", "&", "&amp;", "'", "&#39;", "+", "&#43;", "<", "&lt;", ">", "&gt;")

// markup gathers pieces: those of our own as they are, texts escaped.
type markup struct{ strings.Builder }

// put writes our own markup and texts by turns, markup first.
func (m *markup) put(parts ...string) {
	for i, p := range parts {
		if i%2 == 0 {
			m.WriteString(p)
		} else {
			escaped.WriteString(m, p)
		}
	}
}

func (m *markup) html() template.HTML { return template.HTML(m.String()) }

// HTML is the sentence, and its sources after it.
func (c cited) HTML() template.HTML {
	var m markup
	m.Grow(len(c.Text) + 80*len(c.Refs))
	m.put("", c.Text)
	for _, r := range c.Refs {
		if r.N == 0 {
			m.put(` <span class="law">(`, r.Text, `)</span>`)
			continue
		}
		n := strconv.Itoa(r.N)
		m.put(` <a class="ref" href="#source-`, n, `" aria-label="source `, n, `">[`, n, `]</a>`)
	}
	return m.html()
}
