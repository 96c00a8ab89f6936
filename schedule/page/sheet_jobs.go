package page

import (
	"fmt"
	"slices"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// jobView is one entry as the sheet shows it.
type jobView struct {
	Anchor              string // name inside the page
	ISO, Date, Day      string // "2026-09-19", "Sat 19 Sep 2026", "Sat 19 Sep"
	Title, Summary, Box string
	LastSafe            string // last safe day, with its year if that is another
	Standing            string // "done", "due", …; "" as planned
	Done                bool
	Facts               []fact
	Rain                string // what to do if it rains
	Steps, Cautions     []string
	Next, Record, Note  string
	Notice              bool

	on       schedule.Date
	open     bool // still to be done
	spreads  bool
	area, id string
	material string
}

type fact struct{ Label, Text string }

func (b *sheetBuilder) job(e *schedule.Entry) jobView {
	v := jobView{
		Anchor: anchor("job-", e.ID), ISO: e.Date.String(), Date: e.Date.Words(), Day: dayMonth(e.Date),
		Title: e.Title, Summary: e.Summary, Steps: e.Steps, Cautions: e.Cautions, Next: e.Next, Note: e.Note,
		Notice: e.Kind.Notice(), Done: e.State == schedule.Finished,
		on: e.Date, area: e.Area, id: e.ID, spreads: e.Material != "", material: e.MaterialName,
	}
	if n, _, err := b.p.Find(e.Next); err == nil && n != nil {
		v.Next = n.Title + ", " + n.Date.Words()
	}
	if s := b.p.Standing(e, b.today); s != string(schedule.Planned) {
		v.Standing = s
	}
	v.open = e.State == schedule.Planned && !e.Date.Before(b.today)
	if v.Notice {
		return v
	}
	v.Box = "Done: " + e.Title + ", " + v.Date
	v.Record = b.o.recordLink(e.ID)
	add := func(label, text string) {
		if text != "" {
			v.Facts = append(v.Facts, fact{label, text})
		}
	}
	if e.State == schedule.Planned {
		add("Window", span(e.Earliest, e.Latest))
		if !e.LastSafe.IsZero() {
			v.LastSafe = e.LastSafe.DayMonth()
			if e.LastSafe.Year != e.Date.Year {
				v.LastSafe = e.LastSafe.Short()
			}
			add("Last safe day", e.LastSafe.Words())
		}
	}
	who := e.WhoName
	if who == "" {
		who = e.Who
	}
	add("Who", who)
	if e.WaterIn > 0 {
		add("Water in", b.measure.Depth(e.WaterIn))
	}
	v.Rain = e.IfRain
	return v
}

// nextView is the answer to "what do I do next?".
type nextView struct {
	Heading string
	Jobs    []jobView // all of the next day with work
	Every   []everyView
	After   []jobView // the two days of work that follow
	Due     []jobView // their day has passed, their window has not
	Overdue []jobView // their window has passed too
}

func (b *sheetBuilder) next(jobs []jobView) nextView {
	var v nextView
	var days []schedule.Date
	for _, j := range jobs {
		switch {
		case j.Standing == "taken":
			v.Overdue = append(v.Overdue, j)
		case j.Standing == "due" && !j.open:
			v.Due = append(v.Due, j)
		}
		if !j.open || j.Notice {
			continue
		}
		if !slices.Contains(days, j.on) {
			days = append(days, j.on)
		}
		switch n := len(days); {
		case n == 1:
			v.Jobs = append(v.Jobs, j)
		case n <= 3:
			v.After = append(v.After, j)
		}
	}
	v.Every, v.Jobs = lift(v.Jobs, false)
	switch {
	case len(days) == 0:
		v.Heading = "Nothing is left to do in this program"
	case days[0] == b.today:
		v.Heading = "Today: " + days[0].Words()
	default:
		v.Heading = "Next: " + days[0].Words()
	}
	return v
}

// areaView is one area: what its report says and what is to be done.
type areaView struct {
	ID, Anchor, Name, Sub string
	Findings              []findingView
	Needs                 []string
	Pale                  []string
	Verdict               string
	Every                 []everyView
	Jobs                  []jobView
}

type findingView struct {
	Name, Value, Level string
	Text               cited
}

func (b *sheetBuilder) areas(jobs []jobView) (areas []areaView, whole []jobView) {
	verdicts := map[string]string{}
	for _, l := range b.p.Ledger(b.today).Areas {
		verdicts[l.Area] = l.Verdict
	}
	for _, a := range b.p.Areas {
		v := areaView{ID: a.ID, Anchor: anchor("area-", a.ID), Name: a.Name, Sub: b.measure.Area(a.Size) + ", " + a.Stand, Pale: a.Pale, Verdict: verdicts[a.ID]}
		for _, f := range a.Findings {
			v.Findings = append(v.Findings, b.finding(f))
		}
		for _, n := range a.Needs {
			v.Needs = append(v.Needs, word.Capital(n.Text))
		}
		for _, j := range jobs {
			if j.area == a.ID {
				v.Jobs = append(v.Jobs, j)
			}
		}
		v.Every, v.Jobs = lift(v.Jobs, true)
		areas = append(areas, v)
	}
	for _, j := range jobs {
		if !slices.ContainsFunc(b.p.Areas, func(a schedule.AreaShown) bool { return a.ID == j.area }) {
			whole = append(whole, j)
		}
	}
	return areas, whole
}

func (b *sheetBuilder) finding(f schedule.FindingShown) findingView {
	v := findingView{Name: readingWords(f.Reading), Text: cited{f.Text, b.cite.refs(f.Source)}}
	if f.Value != 0 {
		v.Value = f.Amount()
	}
	if f.Level != "unknown" {
		v.Level = string(f.Level)
	}
	return v
}

// supplyView is one material to have at hand.
type supplyView struct {
	Name, Uses, OnHand, Buy, By, Cost, Left, Note string
}

// supplies lists the materials of the whole program; on a narrowed sheet only
// those that its jobs use, still with the amounts of the whole program, as all
// draw from one shed.
func (b *sheetBuilder) supplies() []supplyView {
	var out []supplyView
	for _, s := range b.whole.Supplies() {
		ours := func(u schedule.Use) bool {
			return slices.ContainsFunc(b.p.Entries, func(e schedule.Entry) bool { return e.ID == u.Job })
		}
		if b.p != b.whole && !slices.ContainsFunc(s.Uses, ours) {
			continue
		}
		v := supplyView{Name: s.Name, Uses: b.measure.Weight(s.Pounds), Note: s.Note}
		if s.Gallons > 0 {
			v.Uses = b.measure.Volume(s.Gallons)
		}
		if s.PackSize != "" {
			v.Name += ", " + s.PackSize
		}
		if s.Packs > 0 {
			v.Uses += " (" + word.Packs(s.Packs) + ")"
		}
		if s.OnHand > 0 {
			v.OnHand = word.Packs(s.OnHand)
		}
		if s.Buy > 0 {
			v.Buy, v.By = word.Plural(s.Buy, "pack"), s.By.Short()
			if s.Priced {
				v.Cost = fmt.Sprintf("%.2f", s.Cost)
			}
		} else if s.Packs == 0 && s.OnHand == 0 && (s.Pounds > 0 || s.Gallons > 0) {
			v.Buy, v.By = v.Uses, s.By.Short()
		}
		if s.Left > 0 {
			v.Left = word.Packs(s.Left)
		}
		out = append(out, v)
	}
	return out
}
