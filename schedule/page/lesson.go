package page

import (
	"slices"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// A lesson is made once and written as HTML or as Markdown.

// lessonView is a class worksheet, or its key.
type lessonView struct {
	head
	Key        bool
	Span, Site string
	Chapters   []chapter
	Sources    []source
}

// chapter is the way of one area from its report to its dates.
type chapter struct {
	Anchor, Name, Sub string
	Parts             []part
}

// part is one step: what is needed for it, then what is asked.
type part struct {
	Title     string
	Say       []string
	Tables    []table
	Questions []question
}

type table struct {
	Caption string
	Head    []string
	Rows    [][]string // the first cell names the row
	Note    cited
}

// question is asked on the worksheet, with room for the answer, and worked out
// on the key.
type question struct {
	N      int
	Text   string
	Room   int // ruled lines to write on
	Answer []cited
}

// Lesson writes a worksheet for a class as one HTML file: from the report of
// each area, step by step, to the dated program, with the tables that the
// steps need and room to answer. With key it writes the answers, each with its
// working and sources, in place of the room.
func Lesson(p *schedule.Program, key bool, o Options) ([]byte, error) {
	v, err := newLesson(p, key, o)
	if err != nil {
		return nil, err
	}
	return render("lesson.html", v)
}

func newLesson(p *schedule.Program, key bool, o Options) (*lessonView, error) {
	p, err := o.view(p)
	if err != nil {
		return nil, err
	}
	title := p.Title + ": worksheet"
	if key {
		title = p.Title + ": key to the worksheet"
	}
	cite := newCitations()
	v := &lessonView{head: newHead(title), Key: key, Span: span(p.Start, p.Through), Site: p.Title}
	asked := 0
	for i := range p.Site.Areas {
		a := &p.Site.Areas[i]
		shown, ok := areaShown(p, a.ID)
		if !ok {
			continue // narrowed to another area
		}
		l := &lesson{p: p, site: p.Site, area: a, shown: shown, cite: cite, measure: word.Measure{Metric: p.Metric}, key: key, asked: &asked, worked: map[schedule.Kind]bool{}}
		v.Chapters = append(v.Chapters, chapter{
			Anchor: anchor("area-", a.ID), Name: a.Name, Sub: l.measure.Area(a.Size) + ", " + a.Stand.String(),
			Parts: l.parts(),
		})
	}
	v.Sources = cite.list
	return v, nil
}

func areaShown(p *schedule.Program, id string) (schedule.AreaShown, bool) {
	for _, a := range p.Areas {
		if a.ID == id {
			return a, true
		}
	}
	return schedule.AreaShown{}, false
}

// lesson makes the chapter of one area.
type lesson struct {
	p       *schedule.Program
	site    *schedule.Site
	area    *schedule.Area
	shown   schedule.AreaShown
	cite    *citations
	measure word.Measure
	key     bool
	asked   *int
	worked  map[schedule.Kind]bool // kinds whose doses a question asks for
}

// ask numbers a question. The working is kept for the key only, so that the
// worksheet lists the sources of its tables and no others.
func (l *lesson) ask(text string, room int, answer ...schedule.Reason) question {
	*l.asked++
	q := question{N: *l.asked, Text: text, Room: room}
	if l.key {
		q.Answer = l.cite.reasons(answer)
		if len(q.Answer) == 0 {
			q.Answer = []cited{{Text: "Nothing: the program has no such job here."}}
		}
	}
	return q
}

func (l *lesson) note(text, source string) cited { return cited{text, l.cite.refs(source)} }

// parts are the steps in the order in which they are worked.
func (l *lesson) parts() []part {
	parts := []part{l.siteAndReport()}
	if _, ok := l.area.Report(); ok {
		parts = append(parts, l.levels(), l.lime())
	}
	parts = append(parts, l.nitrogen(), l.straights(), l.dates(), l.judgement())
	return parts
}

// said is a plain statement, without a source.
func said(text string) schedule.Reason { return schedule.Reason{Text: text} }

// need finds what the program wants of a kind.
func (l *lesson) need(k schedule.Kind) (schedule.Need, bool) {
	for _, n := range l.shown.Needs {
		if n.Kind == k {
			return n, true
		}
	}
	return schedule.Need{}, false
}

// kindsThat lists the kinds of which something is true.
func (l *lesson) kindsThat(is func(schedule.Kind) bool) []schedule.Kind {
	return slices.DeleteFunc(l.p.Kinds(), func(k schedule.Kind) bool { return !is(k) })
}

// entries lists the dated jobs of the area of some kinds.
func (l *lesson) entries(kinds ...schedule.Kind) []schedule.Entry {
	var out []schedule.Entry
	for _, e := range l.p.Entries {
		for _, k := range kinds {
			if e.Area == l.area.ID && e.Kind == k {
				out = append(out, e)
			}
		}
	}
	return out
}

// doses gives the jobs of some kinds as answers: what goes down, then why, no
// reason twice.
func (l *lesson) doses(known []schedule.Reason, kinds ...schedule.Kind) []schedule.Reason {
	seen := map[schedule.Reason]bool{}
	for _, r := range known {
		seen[r] = true
	}
	for _, k := range kinds {
		l.worked[k] = true
	}
	var out []schedule.Reason
	for _, e := range l.entries(kinds...) {
		out = append(out, said(word.Capital(e.Kind.Noun())+", "+e.Date.Words()+": "+e.Summary))
		for _, r := range e.Why {
			if !seen[r] {
				seen[r] = true
				out = append(out, r)
			}
		}
	}
	for _, left := range l.p.LeftOut {
		for _, k := range kinds {
			if left.Area == l.area.ID && left.Kind == k {
				out = append(out, schedule.Reason{Text: word.Capital(k.Noun()) + " left out: " + left.Reason, Source: left.Source})
			}
		}
	}
	return out
}
