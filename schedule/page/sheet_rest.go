package page

import (
	"fmt"
	"slices"

	"swardbook/schedule"
	"swardbook/schedule/word"
)

// jobView is one entry with all that the program says of it.
type jobView struct {
	rowView
	Date, Title, Summary string // "Sat 19 Sep 2026"
	Facts                []fact
	Rain                 string // what to do if it rains
	Steps, Cautions      []string
	Because, Next        string
}

type fact struct{ Label, Text string }

func (b *sheetBuilder) jobs() []jobView {
	var out []jobView
	for i := range b.p.Entries {
		out = append(out, b.job(&b.p.Entries[i]))
	}
	return out
}

func (b *sheetBuilder) job(e *schedule.Entry) jobView {
	v := jobView{rowView: b.row(e), Date: e.Date.Words(), Title: e.Title, Summary: e.Summary,
		Steps: e.Steps, Cautions: e.Cautions, Rain: e.IfRain, Because: e.Because}
	v.Note = e.Note
	if i := slices.IndexFunc(b.p.Entries, func(n schedule.Entry) bool { return e.Next != "" && n.ID == e.Next }); i >= 0 {
		n := &b.p.Entries[i]
		v.Next = jobWords(b.p, n) + ", " + n.Date.Words()
	}
	if e.Kind.Notice() {
		return v
	}
	add := func(label, text string) {
		if text != "" {
			v.Facts = append(v.Facts, fact{label, text})
		}
	}
	if _, open := b.standing(e); open {
		add("Any day", span(e.Earliest, e.Latest))
		if !e.LastSafe.IsZero() {
			add("Last safe day", e.LastSafe.Words())
		}
	}
	add("Who", v.Who)
	if e.WaterIn > 0 {
		add("Water in", b.measure.Depth(e.WaterIn))
	}
	return v
}

// areaView is one area: what its report says and what it needs.
type areaView struct {
	ID, Anchor, Name, Sub string
	Findings              []findingView
	Needs                 []string
	Pale                  []string
	Verdict               string
}

type findingView struct {
	Name, Value, Level string
	Text               cited
}

func (b *sheetBuilder) areas() (areas []areaView) {
	verdicts := map[string]string{}
	for _, c := range b.p.Cases {
		verdicts[c.Area.ID] = c.Verdict(b.p, b.today)
	}
	for _, a := range b.p.Areas {
		v := areaView{ID: a.ID, Anchor: anchor("area-", a.ID), Name: a.Name, Sub: b.measure.Area(a.Size) + ", " + a.Stand, Pale: a.Pale, Verdict: verdicts[a.ID]}
		for _, f := range a.Findings {
			v.Findings = append(v.Findings, b.finding(f))
		}
		for _, n := range a.Needs {
			v.Needs = append(v.Needs, word.Capital(n.Text))
		}
		areas = append(areas, v)
	}
	return areas
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

type leftView struct {
	What, Carried string
	Why           cited
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

// supplyView is one material to have at hand.
type supplyView struct {
	Name, Size, Uses, OnHand, Buy, By, Cost, Left, Note string
	ByDate                                              schedule.Date // when it must be there
	Enough                                              bool          // the shed has what the program uses of it
}

// supplies lists the materials of the whole program; on a narrowed sheet only
// those that its jobs use, still with the amounts of the whole program, as all
// draw from one shed.
func (b *sheetBuilder) supplies() []supplyView {
	var out []supplyView
	for _, s := range b.now.Supplies() {
		ours := func(u schedule.Use) bool {
			return slices.ContainsFunc(b.p.Entries, func(e schedule.Entry) bool { return e.ID == u.Job })
		}
		if b.p != b.whole && !slices.ContainsFunc(s.Uses, ours) {
			continue
		}
		v := supplyView{Name: s.Name, Size: s.PackSize, Uses: b.measure.Weight(s.Pounds), Note: s.Note, ByDate: s.By,
			Enough: s.OnHand > 0 && len(s.Uses) > 0 && s.Buy == 0 && s.Note == ""}
		if s.Gallons > 0 {
			v.Uses = b.measure.Volume(s.Gallons)
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
