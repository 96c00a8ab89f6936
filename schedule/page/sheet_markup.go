package page

import (
	"html/template"
	"strconv"
)

// write puts the sheet, below its head.
func (v *sheetView) write(m *markup) {
	m.put("\n<body class=\"sheet")
	if v.Full {
		m.put(" full")
	}
	m.put("\">\n<header class=\"top\">\n<h1>", v.Title)
	m.ifPut(": ", v.For, "")
	m.flow("</h1>\n<p class=\"s\">Lawn program, ", v.Span, ". ")
	m.ifPut("", v.Place, ". ")
	m.put(`As of <time datetime="`, v.ISO, `">`)
	m.flow("", v.Today, "</time>.</p>\n</header>\n<main>\n")
	m.ifPut(`<p class="err" role="status">`, v.Warning, "</p>\n")
	v.Visit.write(m, v.Record, v.Changed)
	m.put("\n<div class=\"grid\">\n")
	v.Dates.write(m)
	m.put("\n")
	v.ask(m)
	m.put("</div>\n")
	v.Year.write(m)
	v.rest(m)
	m.put("\n</main>\n</body>\n</html>\n")
}

// Next is the visit, Calendar are all dates, and Rest is the rest, where a template has
// the page.
func (v *sheetView) Next() template.HTML {
	var m markup
	v.Visit.write(&m, v.Record, v.Changed)
	return m.html()
}

func (v *sheetView) Calendar() template.HTML {
	var m markup
	v.Dates.write(&m)
	return m.html()
}

func (v *sheetView) Rest() template.HTML {
	var m markup
	v.rest(&m)
	return m.html()
}

// ask puts what to buy, and whom to ask.
func (v *sheetView) ask(m *markup) {
	m.put("<section id=\"ask\" class=\"ask\" aria-labelledby=\"ask-h\">\n<h2 id=\"ask-h\">")
	if len(v.Visit.Buy) > 0 {
		m.put("To buy, whom to ask</h2>\n<dl>\n<dt>To buy</dt>")
		for _, b := range v.Visit.Buy {
			m.flow("<dd>", b, "</dd>\n")
		}
	} else {
		m.put("Whom to ask</h2>\n<dl>\n")
	}
	m.put("<dt>Amounts, days, safety</dt><dd>The label on the bag. Where it is stricter, it counts.</dd>\n<dt>Local rules</dt><dd>", v.Ask.Offices, "</dd>\n")
	m.flow("<dt>The law</dt><dd>", v.Ask.Law, " Rules change. This is no legal advice.</dd>\n")
	if v.Link != "" {
		m.put(`<dt>Newest dates, the calendar</dt><dd class="addr"><a href="`, v.Link, `">`, v.Link, "</a></dd>\n")
	}
	m.put("</dl>\n</section>\n")
}

// write puts the drawing of the year, with its key.
func (v *yearView) write(m *markup) {
	m.put("<section id=\"year\" class=\"year\" aria-labelledby=\"year-h\">\n<div class=\"drawn\">\n<h2 id=\"year-h\">The year</h2>\n<ul class=\"key\">\n")
	for _, k := range v.Key {
		m.put("<li>"+string(k.SVG), k.Text, "</li>\n")
	}
	m.put("</ul>\n<div class=\"scroll\" role=\"region\" aria-label=\"Drawing of the year\" tabindex=\"0\">\n")
	for _, f := range []*figure{v.Drawn.Narrow, v.Drawn.Wide, v.Drawn.Paper} {
		f.write(m)
		m.put("\n")
	}
	m.put("</div>\n")
	m.ifFlow(`<p class="s">`, v.Note, "</p>\n")
	m.put("</div>\n</section>\n")
}

// write puts what to do now: the jobs of the visit, how to do them, what to mind, and what
// comes next. record is where what was done is entered, and changed where answers are.
func (v *visitView) write(m *markup, record, changed string) {
	m.put(`<section id="next" class="next" aria-labelledby="next-h">
<h2 id="next-h" class="when">`)
	m.day(v.ISO, v.Day)
	m.flow(" <small>", v.Small, "</small></h2>\n")
	if len(v.Jobs) == 0 {
		m.put("<p>The next season’s program goes on from here.</p>\n</section>")
		return
	}
	v.table(m)
	if v.Lost != "" {
		m.flow("<p><b>Leave out:</b> no good day is left for ", v.Lost, ". Write down that it was missed.</p>\n")
	}
	v.how(m, record, changed)
	if len(v.After) > 0 {
		m.put(`<h3 class="then">`)
		m.day(v.After[0].ISO, v.After[0].Day)
		m.put(", ", v.Then, "</h3>\n<ul class=\"plain\">\n")
		for _, r := range v.After {
			m.put("<li>", r.Name)
			m.ifFlow(", <b>", r.Amount, "</b>")
			m.ifPut(", ", r.Who, "")
			m.ifFlow("; last safe day ", r.LastSafe, "")
			m.put("</li>\n")
		}
		m.put("</ul>\n")
	}
	m.put("</section>")
}

// table puts the jobs of the visit.
func (v *visitView) table(m *markup) {
	m.put(`<table class="jobs" role="table">
<thead role="rowgroup"><tr role="row"><th scope="col" role="columnheader">Job</th><th scope="col" role="columnheader" class="amt">In all</th>`)
	if v.With {
		m.put(`<th scope="col" role="columnheader" class="with">Of what</th>`)
	}
	if v.Who {
		m.put(`<th scope="col" role="columnheader" class="who">Who</th>`)
	}
	m.put(`<th scope="col" role="columnheader" class="stop">Last safe day</th></tr></thead>
<tbody role="rowgroup">
`)
	for _, r := range v.Jobs {
		m.put(`<tr role="row"><th scope="row" role="rowheader">`, r.Name)
		m.ifFlow(` <span class="s">on `, r.From, "</span>")
		m.ifPut(` <a class="scr" href="`, r.Record, `">Done, or part of it</a>`)
		m.flow(`</th><td role="cell" class="amt" data-l="In all"><span><b>`, r.Amount, "</b>")
		m.ifFlow(" (", r.Packs, ")")
		m.put("</span></td>")
		if v.With {
			m.flow(`<td role="cell" data-l="Of what"><span>`, r.With, "</span></td>")
		}
		if v.Who {
			m.put(`<td role="cell" data-l="Who"><span>`, r.Who, "</span></td>")
		}
		m.put(`<td role="cell" class="stop" data-l="Last safe day">`)
		m.ifFlow("<span>", r.LastSafe, "</span>")
		m.put("</td></tr>\n")
	}
	m.put("</tbody></table>\n")
}

// how puts how the visit's jobs are done, where that is written down, and what to mind.
func (v *visitView) how(m *markup, record, changed string) {
	m.put("<div class=\"how\">\n<h3>How</h3>\n<ol>\n")
	v.How.write(m)
	m.put("</ol>\n")
	for _, r := range v.Rain {
		m.put("<p><b>Rain")
		m.ifPut(" (", r.Of, ")")
		m.flow(".</b> ", r.Text, "</p>\n")
	}
	if v.Spreads {
		m.put("<p><b>Only half done, or there?</b> At the same setting, as far as it goes; write down how much, and where you stopped. The rest stays due until its last safe day.</p>\n")
	}
	switch {
	case changed != "":
		m.put(`<p class="scr"><b>Done, or part of it?</b> <a href="`, changed, "\">Add it to what went down</a>: the rest is worked out anew.</p>\n")
	case record != "":
		m.put(`<p><b>Tell the others.</b> <a href="`, record, "\">Write down what was done</a>: everybody’s calendar follows.</p>\n")
	default:
		m.put("<p><b>Tell the others.</b> <span class=\"paper\">Tick it here and tell</span><span class=\"scr\">Tell</span> whoever keeps this program: once it is in the record book, everybody’s calendar follows.</p>\n")
	}
	if len(v.Mind) > 0 {
		m.put("<h3>Mind</h3>\n<ul>\n")
		v.Mind.write(m)
		m.put("</ul>\n")
	}
	m.put("</div>\n")
}

// spokenList is what is said of the jobs of a visit.
type spokenList []spoken

// write puts the items of the list.
func (l spokenList) write(m *markup) {
	for _, s := range l {
		m.put("<li>")
		m.ifPut("<b>", s.Of, ".</b> ")
		m.flow("", s.Text, "</li>\n")
	}
}

// write puts all dates as a table.
func (v *datesView) write(m *markup) {
	m.put("<section id=\"dates\" aria-labelledby=\"dates-h\">\n<h2 id=\"dates-h\">All dates</h2>\n")
	if len(v.Years) == 0 {
		m.put("<p>No job is left in this time.</p>\n</section>")
		return
	}
	m.put(`<table class="dates" role="table">
<thead role="rowgroup"><tr role="row"><th scope="col" role="columnheader" class="box">Done</th><th scope="col" role="columnheader" class="day">Day, `, strconv.Itoa(v.Year), `</th><th scope="col" role="columnheader" class="job">Job</th><th scope="col" role="columnheader" class="amt">Amount</th>`)
	if v.Who {
		m.put(`<th scope="col" role="columnheader" class="who">Who</th>`)
	}
	m.put("<th scope=\"col\" role=\"columnheader\" class=\"stop\">Last safe day</th></tr></thead>\n")
	for _, y := range v.Years {
		m.put("<tbody role=\"rowgroup\">\n")
		if !y.First {
			m.put(`<tr role="row" class="yr"><th scope="rowgroup" role="rowheader" colspan="`, strconv.Itoa(v.Columns), `">`, strconv.Itoa(y.Year), "</th></tr>\n")
		}
		for _, r := range y.Rows {
			r.write(m, v.Who)
		}
		m.put("</tbody>\n")
	}
	m.put("</table>\n")
	m.ifPut(`<p class="s">`, v.After, "</p>\n")
	m.put("</section>")
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
		m.ifPut(" <span>", v.After, "</span>")
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
	m.ifPut(` <span class="s">`, v.With, "</span>")
	if v.Standing == "due" {
		m.put(` <span class="s">due</span>`)
	}
	m.flow(`</td><td role="cell" class="amt">`, v.Amount, "</td>")
	if who {
		m.put(`<td role="cell" class="who">`, v.Who, "</td>")
	}
	m.flow(`<td role="cell" class="stop">`, v.LastSafe, "</td></tr>\n")
}
