package page

import (
	"cmp"
	"html/template"
	"strconv"
)

// folded begins a part of the page behind a heading that opens.
func (m *markup) folded(open bool, attributes ...string) {
	m.put("<details")
	m.put(attributes...)
	if open {
		m.put(" open")
	}
	m.put(">\n<summary><h3>")
}

// HTML is the job with all that the program says of it, behind its heading.
func (v jobView) HTML(open bool) template.HTML {
	var m markup
	m.Grow(4 << 10)
	m.folded(open, ` id="`, v.Anchor, `" class="one"`)
	m.put(`<time datetime="`, v.ISO, `">`, tied(v.Day), "</time> ", v.Name)
	if v.Amount != "" {
		m.flow(", ", v.Amount, "")
	}
	m.put("</h3></summary>\n<p>", tied(v.Date), ". ", tied(v.Summary), "</p>\n")
	if len(v.Facts) > 0 {
		m.put("<dl class=\"facts\">\n")
		for _, f := range v.Facts {
			m.put("<div><dt>", f.Label, "</dt><dd>", tied(f.Text), "</dd></div>\n")
		}
		m.put("</dl>\n")
	}
	m.items("ol", v.Steps)
	say := func(label, text string) {
		if text != "" {
			m.flow("<p><b>"+label+".</b> ", text, "</p>\n")
		}
	}
	say("Rain", v.Rain)
	if len(v.Cautions) > 0 {
		m.put("<p><b>Mind.</b></p>\n")
		m.items("ul", v.Cautions)
	}
	say("Why", v.Because)
	say("Record book", v.Note)
	say("Next here", v.Next)
	if v.Record != "" {
		m.put(`<p class="scr"><a href="`, v.Record, "\">Done, or part of it</a></p>\n")
	}
	m.put("</details>\n")
	return m.html()
}

// HTML is the way to each figure and day of an area, behind its name.
func (v workingsView) HTML(open bool) template.HTML {
	var m markup
	m.Grow(8 << 10)
	m.folded(open, ` class="workings"`)
	m.put("Workings: ", v.Title, "</h3></summary>\n")
	for _, w := range v.Parts {
		m.put(`<div id="`, w.Anchor, "\">\n<h4>", w.Title, "</h4>\n")
		if len(w.Steps) > 0 {
			m.put("<ol>\n")
			for _, s := range w.Steps {
				m.put("<li>")
				s.write(&m)
				m.put("</li>\n")
			}
			m.put("</ol>\n")
		}
		for _, end := range [][3]string{{"<p>And the working of ", w.Also, ", above.</p>\n"}, {"<p><b>Window:</b> ", w.Window, ".</p>\n"}, {"<p><b>The day:</b> ", w.Day, ".</p>\n"}} {
			if end[1] != "" {
				m.put(end[:]...)
			}
		}
		m.put("</div>\n")
	}
	m.put("</details>\n")
	return m.html()
}

// write puts the entry as a row of the dates; who tells whether a column names people.
func (v rowView) write(m *markup, who bool) {
	if v.Tells != "" {
		fence, columns := "", 3
		if v.Fence {
			fence = " fence"
		}
		if who {
			columns++
		}
		m.put(`<tr role="row" class="note`+fence+`"><td role="cell" class="box"></td><th scope="row" role="rowheader" class="day"><time datetime="`, v.ISO, `">`, v.Day,
			`</time></th><td role="cell" class="tell" colspan="`+strconv.Itoa(columns)+`"><a href="#`, v.Anchor, `">`, v.Tells, "</a>")
		if v.After != "" {
			m.put(" <span>", v.After, "</span>")
		}
		m.put("</td></tr>\n")
		return
	}
	now, same := "", ""
	if v.Now {
		now = "now"
	}
	if v.Same {
		same = " same"
	}
	m.put(`<tr role="row" class="` + now + same + `"><td role="cell" class="box"><i></i></td>`)
	if v.Same {
		m.put(`<td role="cell" class="day"></td>`)
	} else {
		m.put(`<th scope="row" role="rowheader" class="day"><time datetime="`, v.ISO, `">`, v.Day, "</time></th>")
	}
	m.put(`<td role="cell" class="job"><a href="#`, v.Anchor, `">`, v.Name, "</a>")
	if v.With != "" {
		m.put(` <span class="s">`, v.With, "</span>")
	}
	if v.Standing == "due" {
		m.put(` <span class="s">due</span>`)
	}
	m.put(`</td><td role="cell" class="amt">`, tied(v.Amount), "</td>")
	if who {
		m.put(`<td role="cell" class="who">`, v.Who, "</td>")
	}
	m.put(`<td role="cell" class="stop">`, tied(v.LastSafe), "</td></tr>\n")
}

// Tables are the year in figures: its events, then soil and growth by month.
func (v yearView) Tables() template.HTML {
	var m markup
	m.Grow(4 << 10)
	m.put(`<table>
<caption>Events of the year</caption>
<thead><tr><th scope="col">Event</th><th scope="col">Half of the years by</th><th scope="col">8 years in 10 between</th></tr></thead>
<tbody>
`)
	for _, e := range v.Events {
		m.put(`<tr><th scope="row">`, e.What, "</th><td>", e.When, "</td><td>", e.Between, "</td></tr>\n")
	}
	m.put(`</tbody></table>
<table>
<caption>Soil and growth in the middle of each month</caption>
<thead><tr><th scope="col">Month</th><th scope="col">`, v.Soil, "</th>")
	for _, g := range v.Growth {
		m.put(`<th scope="col">`, g, "</th>")
	}
	m.put("</tr></thead>\n<tbody>\n")
	for _, r := range v.Months {
		m.put(`<tr><th scope="row">`, r.Month, "</th><td>", r.Soil, "</td>")
		for _, g := range r.Growth {
			m.put("<td>", g, "</td>")
		}
		m.put("</tr>\n")
	}
	m.put("</tbody></table>\n")
	return m.html()
}

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
