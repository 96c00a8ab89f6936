package page

import (
	"cmp"
	"strings"
)

// rest puts all that stands behind headings, below the page to pin up.
func (v *sheetView) rest(m *markup) {
	m.put("<section id=\"rest\" class=\"rest\" aria-labelledby=\"rest-h\">\n<h2 id=\"rest-h\">The rest</h2>\n")
	v.past(m)
	for i := range v.Jobs {
		v.Jobs[i].write(m, v.Full)
	}
	for i := range v.Areas {
		v.Areas[i].write(m, v.Full)
	}
	if len(v.Supplies) > 0 {
		v.materials(m)
	}
	if len(v.LeftOut) > 0 {
		m.folded(v.Full, ` id="left-out"`)
		m.put("Left out, and why</h3></summary>\n<ul>\n")
		v.LeftOut.write(m)
		m.put("</ul>\n</details>\n")
	}
	if len(v.Assumed) > 0 {
		m.folded(v.Full, ` id="assumed"`)
		m.put("Taken for granted</h3></summary>\n<ul>\n")
		m.each("<li>", v.Assumed, "</li>\n")
		m.put("</ul>\n</details>\n")
	}
	v.place(m)
	if len(v.Laws)+len(v.LawNotes) > 0 {
		m.folded(v.Full, ` id="law"`)
		m.put("Law</h3></summary>\n<ul>\n")
		v.laws(m)
		m.put("</ul>\n")
		m.each("<p>", v.LawNotes, "</p>\n")
		m.put("</details>\n")
	}
	for i := range v.Workings {
		v.Workings[i].write(m, v.Full)
	}
	m.folded(v.Full, ` id="sources"`)
	m.put("Sources</h3></summary>\n<ol class=\"sources\">\n")
	v.Sources.write(m)
	m.put("</ol>\n</details>\n</section>")
}

// past puts what lies before the page's first day.
func (v *sheetView) past(m *markup) {
	if len(v.Past) == 0 {
		return
	}
	m.folded(v.Full)
	m.put("What is behind</h3></summary>\n<ul>\n")
	for _, r := range v.Past {
		m.put(`<li><a href="#`, r.Anchor, `">`, r.Name, "</a>")
		m.ifFlow(", ", r.Amount, "")
		m.flow(", ", r.Day, ": ")
		m.put("", r.Standing, ".")
		m.ifPut(" ", r.Note, "")
		m.ifPut(` <a href="`, r.Record, `">Write it down</a>`)
		m.put("</li>\n")
	}
	m.put("</ul>\n</details>\n")
}

// materials puts what to have at hand.
func (v *sheetView) materials(m *markup) {
	m.folded(v.Full, ` id="materials"`)
	m.put("What to have, by when</h3></summary>\n")
	if v.Narrowed {
		m.put("<p>Of the materials that these jobs use, the amounts for the whole program: all draw from one shed.</p>\n")
	}
	m.put("<ul>\n")
	v.Supplies.write(m)
	m.put("</ul>\n")
	if len(v.Shed) > 0 {
		m.put("<h4>If nothing more is bought</h4>\n<ul>\n")
		m.each("<li>", v.Shed, "</li>\n")
		m.put("</ul>\n")
	}
	m.put("</details>\n")
}

// place puts the place and its year.
func (v *sheetView) place(m *markup) {
	m.folded(v.Full, ` id="season"`)
	m.put("The place and its seasons</h3></summary>\n<p>Worked out from ", v.Year.From, ".")
	m.each(" ", v.Year.Words, "")
	m.put("</p>\n")
	if len(v.Year.Better) > 0 {
		m.put("<p>What would make the dates surer: ", strings.Join(v.Year.Better, "; "), ".</p>\n")
	}
	v.Year.tables(m)
	m.put("</details>\n")
}

// folded begins a part of the page behind a heading that opens.
func (m *markup) folded(open bool, attributes ...string) {
	m.put("<details")
	m.put(attributes...)
	if open {
		m.put(" open")
	}
	m.put(">\n<summary><h3>")
}

// write puts the job with all that the program says of it, behind its heading.
func (v *jobView) write(m *markup, open bool) {
	m.folded(open, ` id="`, v.Anchor, `" class="one"`)
	m.put(`<time datetime="`, v.ISO, `">`)
	m.flow("", v.Day, "</time> ")
	m.text(v.Name)
	m.ifFlow(", ", v.Amount, "")
	m.flow("</h3></summary>\n<p>", v.Date, ". ")
	m.flow("", v.Summary, "</p>\n")
	if len(v.Facts) > 0 {
		m.put("<dl class=\"facts\">\n")
		for _, f := range v.Facts {
			m.put("<div><dt>", f.Label, "</dt>")
			m.flow("<dd>", f.Text, "</dd></div>\n")
		}
		m.put("</dl>\n")
	}
	m.items("ol", v.Steps)
	say := func(label, text string) { m.ifFlow("<p><b>"+label+".</b> ", text, "</p>\n") }
	say("Rain", v.Rain)
	if len(v.Cautions) > 0 {
		m.put("<p><b>Mind.</b></p>\n")
		m.items("ul", v.Cautions)
	}
	say("Why", v.Because)
	say("Record book", v.Note)
	say("Next here", v.Next)
	m.ifPut(`<p class="scr"><a href="`, v.Record, "\">Done, or part of it</a></p>\n")
	m.put("</details>\n")
}

// write puts the way to each figure and day of an area, behind its name.
func (v *workingsView) write(m *markup, open bool) {
	m.folded(open, ` class="workings"`)
	m.put("Workings: ", v.Title, "</h3></summary>\n")
	for _, w := range v.Parts {
		m.put(`<div id="`, w.Anchor, "\">\n<h4>", w.Title, "</h4>\n")
		if len(w.Steps) > 0 {
			m.put("<ol>\n")
			for _, s := range w.Steps {
				m.put("<li>")
				s.write(m)
				m.put("</li>\n")
			}
			m.put("</ol>\n")
		}
		m.ifPut("<p>And the working of ", w.Also, ", above.</p>\n")
		m.ifPut("<p><b>Window:</b> ", w.Window, ".</p>\n")
		m.ifPut("<p><b>The day:</b> ", w.Day, ".</p>\n")
		m.put("</div>\n")
	}
	m.put("</details>\n")
}

// write puts the area with what its report says and what it needs, behind its heading.
func (v *areaView) write(m *markup, open bool) {
	m.folded(open, ` id="`, v.Anchor, `"`)
	m.put("", v.Name, ": what limits the grass, what it needs</h3></summary>\n")
	m.flow("<p>", v.Sub, "</p>\n")
	if len(v.Findings) == 0 {
		m.put("<p>There is no soil report for this area.</p>\n")
	} else {
		m.put("<ol class=\"findings\">\n")
		for _, f := range v.Findings {
			m.put("<li><b>", f.Name)
			m.ifPut(" ", f.Value, "")
			m.ifPut(", ", f.Level, "")
			m.put(".</b> ")
			f.Text.write(m)
			m.put("</li>\n")
		}
		m.put("</ol>\n")
	}
	list := func(heading string, texts []string) {
		if len(texts) == 0 {
			return
		}
		m.put("<h4>" + heading + "</h4>\n<ul>\n")
		m.each("<li>", texts, "</li>\n")
		m.put("</ul>\n")
	}
	list("What the area needs", v.Needs)
	m.ifPut("<h4>Is too much down?</h4>\n<p>", v.Verdict, "</p>\n")
	list("Why is it pale here?", v.Pale)
	m.put("</details>\n")
}

// supplies are the materials to have at hand.
type supplies []supplyView

// write puts the items of the list.
func (l supplies) write(m *markup) {
	for _, s := range l {
		m.put("<li><b>", s.Name, "</b>")
		m.ifFlow(", packs of ", s.Size, "")
		m.flow(": ", s.Uses, " needed; ")
		m.put("", cmp.Or(s.OnHand, "none"), " on hand; ")
		if s.Buy == "" {
			m.put("nothing to buy")
		} else {
			m.put("buy ", s.Buy)
			m.ifFlow(" by ", s.By, "")
			m.ifPut(", costs ", s.Cost, "")
		}
		m.ifPut("; ", s.Left, " left over")
		m.put(".")
		m.ifPut(" ", s.Note, ".")
		m.put("</li>\n")
	}
}

// leftOut is what the program leaves out.
type leftOut []leftView

// write puts the items of the list.
func (l leftOut) write(m *markup) {
	for _, o := range l {
		m.put("<li><b>", o.What, ":</b> ")
		o.Why.write(m)
		m.put(" ", o.Carried, "</li>\n")
	}
}

// tables puts the year in figures: its events, then soil and growth by month.
func (v *yearView) tables(m *markup) {
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
}

// laws puts the items of the list of laws.
func (v *sheetView) laws(m *markup) {
	for _, l := range v.Laws {
		m.put("<li>", l.Text, ` <span class="law">`, l.Citation)
		m.ifPut(", as of ", l.AsOf, "")
		m.ifPut("; ", l.Sure, "")
		m.put("</span></li>\n")
	}
}
