package page

import (
	"bytes"
	"html/template"
	"strconv"
)

// What a page has by the hundred is written in Go rather than by a template,
// which takes ten times as long over it: the marks of a drawing, sentences with
// their sources, the rows of the dates, all that is said of each job.

// escaped is what a byte is written as to stand for itself in HTML, in an element as in a
// quoted attribute, as [template] does it; "" as it is.
var escaped = [256]string{0: "\uFFFD", '"': "&#34;", '&': "&amp;", '\'': "&#39;", '+': "&#43;", '<': "&lt;", '>': "&gt;"}

// markup gathers pieces: those of our own as they are, texts escaped.
type markup struct{ bytes.Buffer }

// put writes our own markup and texts by turns, markup first.
func (m *markup) put(parts ...string) {
	for i, p := range parts {
		if i%2 == 0 {
			m.WriteString(p)
		} else {
			m.text(p)
		}
	}
}

// text puts a text so that it stands for itself.
func (m *markup) text(s string) {
	from := 0
	for i := range len(s) {
		if as := escaped[s[i]]; as != "" {
			m.WriteString(s[from:i])
			m.WriteString(as)
			from = i + 1
		}
	}
	m.WriteString(s[from:])
}

// flow puts a text whose measures and dates do not break at a line's end.
func (m *markup) flow(before, text, after string) {
	m.WriteString(before)
	tie(text, m.text)
	m.WriteString(after)
}

// ifPut and ifFlow put nothing where there is no text.
func (m *markup) ifPut(before, text, after string) {
	if text != "" {
		m.put(before, text, after)
	}
}

func (m *markup) ifFlow(before, text, after string) {
	if text != "" {
		m.flow(before, text, after)
	}
}

// each puts every text between the same markup.
func (m *markup) each(before string, texts []string, after string) {
	for _, t := range texts {
		m.put(before, t, after)
	}
}

// day puts a day's words, with its date where it has one.
func (m *markup) day(iso, words string) {
	if iso == "" {
		m.text(words)
		return
	}
	m.put(`<time datetime="`, iso, `">`, words, "</time>")
}

// items puts a list, and nothing where it has no items.
func (m *markup) items(kind string, texts []string) {
	if len(texts) == 0 {
		return
	}
	m.put("<" + kind + ">\n")
	for _, t := range texts {
		m.flow("<li>", t, "</li>\n")
	}
	m.put("</" + kind + ">\n")
}

func (m *markup) html() template.HTML { return template.HTML(m.String()) }

// HTML is the sentence, and its sources after it.
func (c cited) HTML() template.HTML {
	var m markup
	m.Grow(len(c.Text) + 80*len(c.Refs))
	c.write(&m)
	return m.html()
}

func (c cited) write(m *markup) {
	m.put("", c.Text)
	for _, r := range c.Refs {
		if r.N == 0 {
			m.put(` <span class="law">(`, r.Text, `)</span>`)
			continue
		}
		n := strconv.Itoa(r.N)
		m.put(` <a class="ref" href="#source-`, n, `" aria-label="source `, n, `">[`, n, `]</a>`)
	}
}

// write puts the list of the sources.
func (s sources) write(m *markup) {
	for _, part := range [][]source{s.Front, s.Behind} {
		for _, one := range part {
			one.write(m)
		}
	}
}

// HTML is the source as an entry of the list.
func (s source) HTML() template.HTML {
	var m markup
	s.write(&m)
	return m.html()
}

func (s source) write(m *markup) {
	n := strconv.Itoa(s.N)
	m.put(`<li id="source-`, n, `" value="`, n, `">`, s.Cite, ` <span class="soft">`, s.Checked, "</span>")
	m.ifPut(" ", s.Where, "")
	m.put("</li>\n")
}
