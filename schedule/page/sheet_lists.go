package page

import (
	"cmp"
	"html/template"
)

// The lists of a sheet that have many items.

// spokenList is what is said of the jobs of a visit.
type spokenList []spoken

// HTML is the items of the list.
func (l spokenList) HTML() template.HTML {
	var m markup
	m.Grow(4 << 10)
	for _, s := range l {
		m.put("<li>")
		if s.Of != "" {
			m.put("<b>", s.Of, ".</b> ")
		}
		m.flow("", s.Text, "</li>\n")
	}
	return m.html()
}

// HTML is the rows of the year; who tells whether a column names people.
func (y datesOfYear) HTML(who bool) template.HTML {
	var m markup
	m.Grow(len(y.Rows) << 9)
	for _, r := range y.Rows {
		r.write(&m, who)
	}
	return m.html()
}

// HTML is the area with what its report says and what it needs, behind its heading.
func (v areaView) HTML(open bool) template.HTML {
	var m markup
	m.Grow(4 << 10)
	m.folded(open, ` id="`, v.Anchor, `"`)
	m.put("", v.Name, ": what limits the grass, what it needs</h3></summary>\n<p>", tied(v.Sub), "</p>\n")
	if len(v.Findings) == 0 {
		m.put("<p>There is no soil report for this area.</p>\n")
	} else {
		m.put("<ol class=\"findings\">\n")
		for _, f := range v.Findings {
			m.put("<li><b>", f.Name)
			if f.Value != "" {
				m.put(" ", f.Value)
			}
			if f.Level != "" {
				m.put(", ", f.Level)
			}
			m.put(".</b> ")
			f.Text.write(&m)
			m.put("</li>\n")
		}
		m.put("</ol>\n")
	}
	list := func(heading string, texts []string) {
		if len(texts) == 0 {
			return
		}
		m.put("<h4>" + heading + "</h4>\n<ul>\n")
		for _, t := range texts {
			m.put("<li>", t, "</li>\n")
		}
		m.put("</ul>\n")
	}
	list("What the area needs", v.Needs)
	if v.Verdict != "" {
		m.put("<h4>Is too much down?</h4>\n<p>", v.Verdict, "</p>\n")
	}
	list("Why is it pale here?", v.Pale)
	m.put("</details>\n")
	return m.html()
}

// supplies are the materials to have at hand.
type supplies []supplyView

// HTML is the items of the list.
func (l supplies) HTML() template.HTML {
	var m markup
	for _, s := range l {
		m.put("<li><b>", s.Name, "</b>")
		if s.Size != "" {
			m.flow(", packs of ", s.Size, "")
		}
		m.put(": ", tied(s.Uses), " needed; ", cmp.Or(s.OnHand, "none"), " on hand; ")
		if s.Buy == "" {
			m.put("nothing to buy")
		} else {
			m.put("buy ", s.Buy)
			if s.By != "" {
				m.flow(" by ", s.By, "")
			}
			if s.Cost != "" {
				m.put(", costs ", s.Cost)
			}
		}
		if s.Left != "" {
			m.put("; ", s.Left, " left over")
		}
		m.put(".")
		if s.Note != "" {
			m.put(" ", s.Note, ".")
		}
		m.put("</li>\n")
	}
	return m.html()
}

// leftOut is what the program leaves out.
type leftOut []leftView

// HTML is the items of the list.
func (l leftOut) HTML() template.HTML {
	var m markup
	m.Grow(len(l) << 8)
	for _, o := range l {
		m.put("<li><b>", o.What, ":</b> ")
		o.Why.write(&m)
		m.put(" ", o.Carried, "</li>\n")
	}
	return m.html()
}

// LawLines are the items of the list of laws.
func (v *sheetView) LawLines() template.HTML {
	var m markup
	m.Grow(len(v.Laws) << 9)
	for _, l := range v.Laws {
		m.put("<li>", l.Text, ` <span class="law">`, l.Citation)
		if l.AsOf != "" {
			m.put(", as of ", l.AsOf)
		}
		if l.Sure != "" {
			m.put("; ", l.Sure)
		}
		m.put("</span></li>\n")
	}
	return m.html()
}
