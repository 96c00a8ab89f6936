package page

import (
	"errors"
	"fmt"
	"net/url"
	"slices"
	"strings"

	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/law"
	"swardbook/schedule/word"
)

// Options say for whom and for when a page is written. The zero value writes
// the whole program as on its first day.
type Options struct {
	Today   schedule.Date // what is next, due and done is told by it; unset: the first day of the program
	Area    string        // only this area, by id
	Person  string        // only this person's jobs, by id
	Link    string        // address of the calendar or the page, printed on it; "" none
	Record  string        // address of the form on which what was done is entered; "" none
	Warning string        // what the reader must know first, at the top; "" none
	Full    bool          // print the reports, workings and sources too
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
	for _, address := range []string{o.Link, o.Record} {
		if err := linkable(address); err != nil {
			return nil, err
		}
	}
	if o.Area == "" && o.Person == "" {
		return p, nil
	}
	return p.Filter(o.Area, o.Person, nil), nil
}

// sheetView is what the sheet says: the page to pin up, and the rest.
type sheetView struct {
	head
	For, Span, Place, Today, ISO, Warning string
	Visit                                 visitView
	Dates                                 datesView
	Ask                                   askView
	Year                                  yearView
	Link, Record                          string
	Changed                               string // where answers are changed; "" they stand in a site file

	Full     bool
	Past     []rowView
	Jobs     []jobView
	Areas    []areaView
	Supplies supplies
	Narrowed bool // the materials are those of some jobs only
	Shed     []string
	LeftOut  leftOut
	Assumed  []string
	Laws     []schedule.LawLine
	LawNotes []string
	Workings []workingsView
	Sources  sources
}

// Sheet writes the program as one HTML file: a page to print and pin up, the
// same to read on a phone, and behind headings whatever else the program says.
// The program must carry its site, whose place gives the drawing of the year; a
// place whose climate cannot be worked out is an error.
func Sheet(p *schedule.Program, o Options) ([]byte, error) {
	if p != nil {
		p = p.Settled(o.today(p))
	}
	whole := p
	p, err := o.view(p)
	if err != nil {
		return nil, err
	}
	year, err := p.Year()
	if err != nil {
		return nil, err
	}
	v := &sheetView{head: newHead(p.Title)}
	v.fill(p, whole, o, year)
	return written(func(m *markup) error {
		if err := templates().ExecuteTemplate(m, "head", v.head); err != nil {
			return err
		}
		v.write(m)
		return nil
	})
}

// fill writes what the program says into the view.
func (v *sheetView) fill(p, whole *schedule.Program, o Options, year *climate.Year) {
	cite := newCitations()
	b := &sheetBuilder{p: p, whole: whole, o: o, cite: cite, measure: word.Measure{Metric: p.Metric}, today: o.today(p)}
	b.now = whole.AsOf(b.today)
	b.from, b.to = front(p, b.today)
	b.next = b.nextDay()
	*v = sheetView{
		head: v.head, For: b.forWhom(), Span: span(p.Start, p.Through), Place: strings.Replace(placeWords(p), "hardiness ", "", 1),
		Today: b.today.Words(), ISO: b.today.String(), Warning: o.Warning, Link: o.Link, Record: o.Record, Full: o.Full,
		Laws: p.Laws, LawNotes: p.LawNotes, Narrowed: p != whole,
	}
	v.Supplies = b.supplies()
	v.Visit = b.visit(v.Supplies)
	v.Dates = b.dates()
	v.Ask = b.ask()
	v.Year = b.year(year)
	v.Past, v.Jobs = b.past(), b.jobs()
	v.Areas = b.areas()
	if p == whole {
		for _, s := range p.InTheShed {
			v.Shed = append(v.Shed, named(p, s))
		}
	}
	for _, a := range p.Assumptions {
		v.Assumed = append(v.Assumed, word.Sentence(word.Capital(a)))
	}
	for _, l := range p.LeftOut {
		v.LeftOut = append(v.LeftOut, b.left(l))
	}
	cite.frontEnds()
	v.Workings = workings(p, cite)
	v.Sources = cite.sources()
}

type sheetBuilder struct {
	p        *schedule.Program // as narrowed by the options
	whole    *schedule.Program
	now      *schedule.Program // the whole as it stands today
	o        Options
	cite     *citations
	measure  word.Measure
	today    schedule.Date
	next     schedule.Date // the next day with work after today; unset: none
	from, to schedule.Date // what the page to pin up shows
}

// A program of at most oneSeason days is shown whole on the page to pin up. Of a longer
// one, the page begins lookBack days before today.
const (
	oneSeason = 400
	lookBack  = 60
)

// front gives the days that the page to pin up shows: all days of a program of one
// season; of a longer one, the year ahead and the lookBack days before today.
func front(p *schedule.Program, today schedule.Date) (from, to schedule.Date) {
	if p.Through.DaysFrom(p.Start) <= oneSeason || today.After(p.Through) {
		return p.Start, p.Through
	}
	from = schedule.Later(p.Start, today.AddDays(-lookBack))
	return from, schedule.Earlier(p.Through, from.AddDays(lookBack).AddMonths(12))
}

// standing tells how an entry stands today; open, whether it is still to do.
func (b *sheetBuilder) standing(e *schedule.Entry) (s string, open bool) {
	s = b.p.Standing(e, b.today)
	return s, s == "due" || s == string(schedule.Planned)
}

// nextDay is the first day after today, or today, on which something is
// planned that is not due yet.
func (b *sheetBuilder) nextDay() schedule.Date {
	var first schedule.Date
	for i := range b.p.Entries {
		e := &b.p.Entries[i]
		if s, _ := b.standing(e); s != string(schedule.Planned) || e.Kind.Notice() {
			continue
		}
		if first.IsZero() || e.Date.Before(first) {
			first = e.Date
		}
	}
	return first
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
	if s, _, err := law.For(p.Place.State, p.Site.County, p.Site.CrewIs()); p.Place.Where != "" {
		out = append(out, p.Place.Where)
	} else if err == nil {
		out = append(out, s.Name)
	}
	if p.Place.Hardiness != "" {
		out = append(out, "hardiness zone "+p.Place.Hardiness)
	}
	return strings.Join(out, ", ")
}

// linkable refuses an address to which no page may lead, such as a script. "", an address
// below the page, one of the web and that of a page kept on the reader's machine are fine.
func linkable(address string) error {
	u, err := url.Parse(address)
	if err != nil || !slices.Contains([]string{"", "http", "https", "file", "content", "blob"}, u.Scheme) {
		return fmt.Errorf("page: %q is not the address of a page", address)
	}
	return nil
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
