package page

import (
	"errors"
	"net/url"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// Options say for whom and for when a page is written. The zero value writes
// the whole program as on its first day.
type Options struct {
	Today   schedule.Date // what is next, due and done is told by it; unset: the first day of the program
	Area    string        // only this area, by id
	Person  string        // only this person's jobs, by id
	Link    string        // address of the calendar or the page, printed at the end; "" none
	Record  string        // address of the form on which what was done is entered; "" none
	Warning string        // what the reader must know first, at the top; "" none
}

func (o Options) today(p *schedule.Program) schedule.Date {
	if o.Today.IsZero() {
		return p.Start
	}
	return o.Today
}

// view narrows the program to the options' area and person.
func (o Options) view(p *schedule.Program) (*schedule.Program, error) {
	if p == nil || p.Site == nil {
		return nil, errors.New("page: the program carries no site to draw the year of")
	}
	if o.Area == "" && o.Person == "" {
		return p, nil
	}
	return p.Filter(o.Area, o.Person, nil), nil
}

// sheetView is the sheet as its template reads it.
type sheetView struct {
	head
	For, Span, Place, Today, Warning string
	Next                             nextView
	Dates                            []datesOfYear
	Year                             yearView
	Areas                            []areaView
	Whole                            []jobView // jobs of the site as a whole
	Supplies                         []supplyView
	Narrowed                         bool // the materials are those of some jobs only
	Shed                             []string
	LeftOut                          []leftView
	Assumptions                      []string
	Laws                             []schedule.LawLine
	LawNotes                         []string
	Workings                         []workingsView
	Sources                          sources
	Through                          string
	Link                             string
	Record                           bool
}

// datesOfYear is the program at a glance: one year of it.
type datesOfYear struct {
	Year  int
	Lines []jobView
}

type leftView struct {
	What, Carried string
	Why           cited
}

// Sheet writes the program as one HTML file to read on a phone and to print.
// The program must carry its site, whose place gives the drawing of the year;
// a place whose climate cannot be worked out is an error.
func Sheet(p *schedule.Program, o Options) ([]byte, error) {
	whole := p
	p, err := o.view(p)
	if err != nil {
		return nil, err
	}
	year, err := p.Site.Place.Year()
	if err != nil {
		return nil, err
	}
	cite := newCitations()
	b := &sheetBuilder{p: p, whole: whole, o: o, cite: cite, measure: word.Measure{Metric: p.Metric}, today: o.today(p)}
	v := &sheetView{
		head: newHead(p.Title), For: b.forWhom(), Span: span(p.Start, p.Through),
		Place: placeWords(p), Today: b.today.Words(), Warning: o.Warning,
		Assumptions: p.Assumptions, Laws: p.Laws, LawNotes: p.LawNotes,
		Through: p.Through.Short(), Link: o.Link, Record: o.Record != "",
	}
	jobs := make([]jobView, len(p.Entries))
	for i := range p.Entries {
		jobs[i] = b.job(&p.Entries[i])
	}
	v.Next = b.next(jobs)
	v.Dates = glance(jobs)
	v.Year = b.year(year)
	v.Areas, v.Whole = b.areas(jobs)
	if p == whole {
		for _, s := range p.InTheShed {
			v.Shed = append(v.Shed, named(p, s))
		}
	}
	v.Supplies, v.Narrowed = b.supplies(), p != whole
	for _, l := range p.LeftOut {
		v.LeftOut = append(v.LeftOut, b.left(l))
	}
	cite.frontEnds()
	v.Workings = workings(p, cite)
	v.Sources = cite.sources()
	return render("sheet.html", v)
}

type sheetBuilder struct {
	p       *schedule.Program // as narrowed by the options
	whole   *schedule.Program
	o       Options
	cite    *citations
	measure word.Measure
	today   schedule.Date
}

func (b *sheetBuilder) forWhom() string {
	var whom []string
	if b.o.Area != "" {
		whom = append(whom, b.areaName(b.o.Area))
	}
	for _, w := range b.p.Site.Crew.People {
		if w.ID == b.o.Person && w.ID != "" {
			whom = append(whom, "for "+w.Name)
		}
	}
	return strings.Join(whom, ", ")
}

func (b *sheetBuilder) areaName(id string) string {
	for _, a := range b.p.Areas {
		if a.ID == id {
			return a.Name
		}
	}
	return id
}

func placeWords(p *schedule.Program) string {
	var out []string
	switch {
	case p.Place.Where != "":
		out = append(out, p.Place.Where)
	case p.Place.State != "":
		out = append(out, p.Place.State)
	}
	if p.Place.Hardiness != "" {
		out = append(out, "hardiness zone "+p.Place.Hardiness)
	}
	return strings.Join(out, ", ")
}

func glance(jobs []jobView) []datesOfYear {
	var out []datesOfYear
	for _, j := range jobs {
		if len(out) == 0 || out[len(out)-1].Year != j.on.Year {
			out = append(out, datesOfYear{Year: j.on.Year})
		}
		last := &out[len(out)-1]
		last.Lines = append(last.Lines, j)
	}
	return out
}

func (b *sheetBuilder) left(l schedule.LeftOut) leftView {
	v := leftView{What: word.Capital(l.Kind.Noun()), Why: cited{word.Sentence(named(b.p, l.Reason)), b.cite.refs(l.Source)}}
	if l.Area != "" {
		v.What += ", " + b.areaName(l.Area)
	}
	if !l.CarriedTo.IsZero() {
		v.Carried = "Carried to " + l.CarriedTo.Words() + "."
	}
	return v
}

// recordLink gives the address of the form for one job.
func (o Options) recordLink(job string) string {
	if o.Record == "" {
		return ""
	}
	mark := "?"
	if strings.Contains(o.Record, "?") {
		mark = "&"
	}
	return o.Record + mark + "job=" + url.QueryEscape(job)
}
