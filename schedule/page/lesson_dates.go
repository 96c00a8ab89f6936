package page

import (
	"fmt"
	"strings"

	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// dates asks for the windows and the days.
func (l *lesson) dates() part {
	p := part{Title: "Windows and dates"}
	b := &sheetBuilder{p: l.p, measure: l.measure, cite: l.cite}
	t := table{Caption: "The place's year", Head: []string{"Event", "Half of the years by", "8 years in 10 between"},
		Note: cited{Text: "Climate from " + l.p.Place.ClimateFrom + ".", Refs: l.cite.refs("model")}}
	for _, e := range b.events() {
		t.Rows = append(t.Rows, []string{e.What, e.When, e.Between})
	}
	p.Tables = append(p.Tables, t, l.spacing())
	for _, e := range l.entries(l.p.Kinds()...) {
		if e.State != schedule.Planned {
			continue
		}
		answer := []schedule.Reason{
			said("Window: " + span(e.Earliest, e.Latest) + " (" + e.Window + ")."),
			said("Ideal day: " + e.Ideal.Words() + "."),
			said("Chosen day: " + e.Date.Words() + "; " + named(l.p, strings.Join(e.BoundBy, "; ")) + "."),
		}
		if !e.LastSafe.IsZero() {
			answer = append(answer, said("Last safe day: "+e.LastSafe.Words()+"."))
		}
		if !l.worked[e.Kind] { // asked nowhere else
			answer = append([]schedule.Reason{said(e.Summary)}, answer...)
		}
		p.Questions = append(p.Questions, l.ask(l.which(e)+": between which days may it be done, which day do you choose, and which is the last safe day?", 4, answer...))
	}
	return p
}

// which names a job without giving its day or amount away.
func (l *lesson) which(e schedule.Entry) string {
	words := word.Capital(e.Kind.Noun())
	of := l.entries(e.Kind)
	for i, o := range of {
		if o.ID == e.ID && len(of) > 1 {
			words += fmt.Sprintf(", %d of %d", i+1, len(of))
		}
	}
	return words
}

// spacing is the table of days to keep between two things.
func (l *lesson) spacing() table {
	t := table{Caption: "Days to keep between two things", Head: []string{"First", "Then", "Days", "Reason"}}
	seen := map[ref]bool{}
	for _, r := range nutrient.SpacingRules() {
		first, then := r.First&^nutrient.HydratedLimeDown, r.Then&^nutrient.HydratedLimeDown
		if first == 0 || then == 0 {
			continue // a material of its own, seldom at hand
		}
		t.Rows = append(t.Rows, []string{word.Capital(first.String()), then.String(), fmt.Sprint(r.Days), r.Why.Text})
		for _, c := range l.cite.refs(r.Why.Source) {
			if !seen[c] {
				seen[c] = true
				t.Note.Refs = append(t.Note.Refs, c)
			}
		}
	}
	t.Note.Text = "Hydrated lime keeps longer distances; it is not in this table."
	return t
}

// judgement asks what to do when things go otherwise.
func (l *lesson) judgement() part {
	p := part{Title: "When it goes otherwise"}
	for _, e := range l.entries(l.p.Kinds()...) {
		if e.Kind.Sows() || e.IfRain == "" || e.State != schedule.Planned {
			continue
		}
		p.Questions = append(p.Questions, l.ask(fmt.Sprintf("It rains on the day of this job: %s. What do you do?", strings.ToLower(l.which(e))), 3, said(e.IfRain)))
		break
	}
	season := l.area.Stand.Season()
	p.Questions = append(p.Questions, l.ask("Somebody has put down twice the nitrogen of one dose. What does that change, and which limits do you look at?", 5,
		append(append([]schedule.Reason{}, nutrient.LimitsOfNitrogen(season).Why...),
			said("What is down counts against the year and against the next dose: enter it in the record book, then the next dose shrinks, moves or is left out. Nothing is put down to make up for it."))...))
	var left []schedule.Reason
	for _, o := range l.p.LeftOut {
		if o.Area != l.area.ID {
			continue
		}
		text := word.Capital(o.Kind.Noun()) + ": " + o.Reason
		if !o.CarriedTo.IsZero() {
			text += "; carried to " + o.CarriedTo.Short()
		}
		left = append(left, schedule.Reason{Text: text, Source: o.Source})
	}
	if len(left) == 0 {
		left = append(left, said("Nothing is left out here."))
	}
	p.Questions = append(p.Questions, l.ask("What did you leave out, or carry into another season, and why?", 4, left...))
	var laws []schedule.Reason
	for _, w := range l.p.Laws {
		laws = append(laws, schedule.Reason{Text: w.Text, Source: w.Citation})
	}
	for _, n := range l.p.LawNotes {
		laws = append(laws, said(n))
	}
	if len(laws) > 0 {
		p.Questions = append(p.Questions, l.ask("Which laws touch this program, and whom do you ask about local ones?", 4, laws...))
	}
	return p
}
