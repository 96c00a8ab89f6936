package book

import (
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
	"swardbook/schedule/sitefile"
)

// Line is a line that is about to be added to a record book.
type Line struct {
	Text   string             // the text to give to [Append]
	Done   []schedule.Done    // all lines of the book, with this one at the end
	Before []int              // older lines about the same job, which count as well
	Wrong  []schedule.Problem // why the line cannot be added; then only Before is set as well
	Doubts []schedule.Problem // what is probably a slip
}

// NewLine writes what was done as a line for the record book called name, which now holds
// text; p is the program of the site with that book. The line stands by itself: what the
// bag held is written out, and so is an amount that was given as a part of the plan ("half",
// "as planned"), so that no later edit of the site file changes what counts as put down. If
// the contents or the amount are not known, the line is written as it was given.
func NewLine(name string, text []byte, p *schedule.Program, d schedule.Done, amount string, today schedule.Date) Line {
	book := string(text)
	if book != "" && !strings.HasSuffix(book, "\n") {
		book += "\n"
	}
	area, kind, season, n, err := schedule.JobName(d.Job)
	if d.Area == "" {
		d.Area = area
	}
	where := p.Site.Area(d.Area)
	l := Line{}
	given, ok := l.given(d, amount, p.Site)
	if !ok {
		return l
	}
	if where == nil || err != nil {
		l.Wrong = []schedule.Problem{{Key: "job", Message: "names no area of the site", Hint: "like east/lime"}}
		return l
	}
	season, n, entry := p.Meant(d.Area, kind, season, n, d.Date)
	down := schedule.Down{Done: given, AreaID: d.Area, Kind: kind, Season: season, N: n}
	down.By, down.Note = d.By, d.Note
	whole := season > 0
	if !given.Missed {
		l.Wrong = l.unweighed(kind, &given, where)
	}
	if len(l.Wrong) > 0 {
		return Line{Wrong: l.Wrong}
	}
	if kind.Sows() {
		if down.Part = where.SeedPart(kind, &given); given.AsPlanned && entry != nil && entry.Rest {
			for _, o := range p.CaseOf(d.Area).Down {
				if o.Kind == kind && o.Season == season && o.N == n && !o.NotDone {
					down.Part -= o.Part
				}
			}
		}
	}
	if whole && kind.Spreads() && !given.Missed {
		whole = l.weigh(&down, entry, p, where)
	}
	head := ""
	if whole {
		if l.Text = sitefile.WholeLine(down, p.Site, p.CaseOf(d.Area).Area); !sitefile.IsWhole(text) {
			head = sitefile.Header
		}
	} else {
		l.Text = sitefile.ShortLine(d, amount)
		if sitefile.IsWhole(text) {
			head = sitefile.ShortHeader
		}
	}
	l.Text = head + l.Text
	if book == "" { // [Append] begins a new book so
		book = sitefile.Header
	}
	l.read(name, book, p.Site)
	if len(l.Wrong) > 0 {
		return Line{Wrong: l.Wrong}
	}
	l.Doubts = doubts(p, down, entry, today)
	l.before(p, down)
	if len(l.Before) > 0 && !whole && !given.Missed {
		return Line{Wrong: []schedule.Problem{{Key: "amount", Message: "the job is on record in whole already", Hint: "give what went down beside it, or let this line take the place of that one"}}, Before: l.Before}
	}
	return l
}

// unweighed tells what is wrong with the amount of a job that spreads nothing: seed is
// recorded by its weight or as a part of all, and a soil sample is taken whole.
func (l *Line) unweighed(kind schedule.Kind, d *schedule.Done, a *schedule.Area) []schedule.Problem {
	seed, _ := a.Seed(kind)
	wrong := func(message, hint string) []schedule.Problem {
		return []schedule.Problem{{Key: "amount", Message: message, Hint: hint}}
	}
	switch {
	case kind.Spreads():
	case kind.Sows() && d.Weight > 0 && seed == 0:
		return wrong("how much seed "+a.Stand.String()+" takes is not known, so a weight says nothing of what is left", "give the part that is sown, like half")
	case !kind.Sows() && d.Share != 1:
		return wrong("a "+kind.Noun()+" is taken in whole or not at all", "leave the amount out, or record it with --missed")
	}
	return nil
}

// before finds the older lines about the same job.
func (l *Line) before(p *schedule.Program, down schedule.Down) {
	for _, c := range p.Cases {
		for _, o := range c.Down {
			if o.AreaID == down.AreaID && o.Kind == down.Kind && o.Season == down.Season && o.N == down.N && o.Presumed == nil && !o.NotDone {
				l.Before = append(l.Before, o.Line)
			}
		}
	}
}

// Last gives the line itself, without a header that goes before it.
func (l *Line) Last() string {
	text := strings.TrimSuffix(l.Text, "\n")
	return text[strings.LastIndexByte(text, '\n')+1:]
}

// Beside says in a sentence which lines the new one adds to; "" for none.
func (l *Line) Beside() string {
	if len(l.Before) == 0 {
		return ""
	}
	return "It adds to " + Numbered(l.Before) + " about the same job"
}

// Numbered names lines of a book: "line 3 and line 5".
func Numbered(lines []int) string {
	var out []string
	for _, n := range lines {
		out = append(out, "line "+strconv.Itoa(n))
	}
	return strings.Join(out, " and ")
}

// given reads amount and material as the person wrote them.
func (l *Line) given(d schedule.Done, amount string, site *schedule.Site) (schedule.Done, bool) {
	read, problems := sitefile.LoadRecord("", []byte(sitefile.ShortHeader+sitefile.ShortLine(d, amount)), nil)
	_, more := sitefile.LoadRecord("", []byte(sitefile.ShortHeader+sitefile.ShortLine(d, amount)), site)
	for _, p := range append(problems, more...) {
		if !p.Warning && !slices.ContainsFunc(l.Wrong, func(o schedule.Problem) bool { return o.Message == p.Message }) {
			l.Wrong = append(l.Wrong, p)
		}
	}
	if len(read) == 0 || len(l.Wrong) > 0 {
		return d, false
	}
	return read[0], true
}

// weigh works out the dose of the line, and the dose first planned, from what was given and
// what is planned; it reports whether they are known.
func (l *Line) weigh(d *schedule.Down, planned *schedule.Entry, p *schedule.Program, a *schedule.Area) bool {
	m, ok := materialOf(p.Site, d, planned)
	if !ok {
		return false
	}
	per := func(w agronomy.Pounds) agronomy.PerThousand {
		return agronomy.PerThousand(float64(w) * 1000 / float64(a.Size))
	}
	var rate agronomy.PerThousand
	switch {
	case d.Weight > 0:
		rate = per(d.Weight)
	case d.Volume > 0:
		w, ok := m.WeightOf(d.Volume)
		if rate = per(w); !ok {
			return false
		}
	case d.Packs > 0:
		w, ok := m.PackWeight()
		if rate = per(w * agronomy.Pounds(d.Packs)); !ok {
			return false
		}
	case planned == nil || planned.Rate == 0:
		return false
	default:
		rate = planned.Rate * agronomy.PerThousand(d.Share)
	}
	d.Dose = material.DoseOf(m, rate)
	if planned != nil && planned.Rate > 0 {
		d.Of = planned.Rate.Over(a.Size)
		for _, o := range p.CaseOf(d.AreaID).Down { // if only the rest is planned, the dose first planned includes what is down already
			if planned.Rest && o.Presumed == nil && o.Kind == d.Kind && o.Season == d.Season && o.N == d.N {
				d.Of += o.Dose.Rate.Over(a.Size)
			}
		}
	}
	return true
}

// materialOf finds the material of a line: the one it names, else the planned one, else
// the only one in the shed that serves the job.
func materialOf(site *schedule.Site, d *schedule.Down, planned *schedule.Entry) (material.Material, bool) {
	if d.Material == "" && planned != nil && planned.Dose.Rate > 0 {
		return planned.Dose.Material, true
	}
	var fit []material.Material
	for _, m := range append(slices.Clone(site.Materials), material.TradeMaterials()...) {
		if m.ID == d.Material {
			return m, true
		}
		if !m.ToBuy && d.Kind.ServedBy(m) {
			fit = append(fit, m)
		}
	}
	if d.Material == "" && len(fit) == 1 { // only one bag in the shed can have been meant
		return fit[0], true
	}
	return material.Material{}, false
}

// read reads the book with the line at its end.
func (l *Line) read(name, book string, site *schedule.Site) {
	at := strings.Count(book, "\n") + 1
	done, problems := sitefile.LoadRecord(name, []byte(book+l.Text), site)
	for _, p := range problems {
		if p.Line >= at && !p.Warning {
			l.Wrong = append(l.Wrong, p)
		}
	}
	if len(l.Wrong) == 0 && !slices.ContainsFunc(done, func(d schedule.Done) bool { return d.Line >= at }) {
		// something is wrong with the book as a whole, such as its length
		l.Wrong = slices.DeleteFunc(problems, func(p schedule.Problem) bool { return p.Warning })
	}
	l.Done = done
}
