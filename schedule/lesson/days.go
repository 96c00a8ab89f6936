package lesson

import (
	"fmt"
	"slices"

	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// dated is a job whose day follows from the rules of the sheet.
type dated struct {
	schedule.Entry
	rules []string
	steps []schedule.Reason
}

// mostDated is how many jobs the question on days asks about.
const mostDated = 2

// firstMowing is how long after the seedlings are up the stand is first mown.
func firstMowing() int {
	gap, _ := nutrient.Spacing(nutrient.SeedUp, nutrient.FirstMow)
	return gap.Days
}

// days asks for the windows and days of two jobs.
func (m *maker) days() (task, bool) {
	t := task{topic: daysTopic, urgent: 8, Question: Question{Title: "The days"}}
	var jobs []dated
	rules := []string{}
	if last, _, ok := m.area.Stand.MostUp(); ok && m.young() {
		rules = append(rules, fmt.Sprintf("Most of the stand is up %d days after sowing. Nothing is spread before its first mowing, %d days later.", last, firstMowing()))
	}
	for _, e := range m.candidates() {
		if len(jobs) == mostDated || len(jobs) > 0 && (jobs[0].Kind == e.Kind || e.Date.Before(jobs[0].Date)) {
			continue
		}
		if d, ok := m.dated(e, jobs); ok {
			jobs = append(jobs, d)
		}
	}
	if len(jobs) == 0 {
		return t, false
	}
	var names []string
	for _, j := range jobs {
		rules = append(rules, j.rules...)
		t.Steps = append(t.Steps, j.steps...)
		t.Draw = append(t.Draw, j.Kind)
		name := word.Capital(j.Kind.Noun())
		names = append(names, j.Kind.Noun())
		t.Answers = append(t.Answers,
			Answer{name + " from", j.Earliest.Short()}, Answer{name + " until", j.Latest.Short()}, Answer{name + " on", j.Date.Words()})
	}
	rules = append(rules, "Where no best day is named, take the first work day on which every rule holds.")
	t.given = []Given{{Title: "Rules for the days", Rules: rules, Wide: true}}
	t.Text = fmt.Sprintf("Draw the window and the day of %s into the year. Write the dates beside them.", word.List(firstOf(names)))
	return t, true
}

// candidates are the jobs of the first season, each kind once: lime and feed, which
// keep their distance, before the rest.
func (m *maker) candidates() []schedule.Entry {
	var lime, feed, rest []schedule.Entry
	seen := map[schedule.Kind]bool{}
	for _, e := range m.jobs {
		if seen[e.Kind] || e.Season != m.jobs[0].Season {
			continue
		}
		seen[e.Kind] = true
		switch {
		case isLime(e.Kind):
			lime = append(lime, e)
		case e.Kind.Feeds():
			feed = append(feed, e)
		default:
			rest = append(rest, e)
		}
	}
	return slices.Concat(lime, feed, rest)
}

func firstOf(names []string) []string {
	var out []string
	for _, n := range names {
		out = append(out, "the first "+n)
	}
	return out
}

// dated works out the day of a job from the rules of the sheet; false if the program has
// another day, as then something that the sheet does not hold has decided it.
func (m *maker) dated(e schedule.Entry, before []dated) (dated, bool) {
	d := dated{Entry: e}
	noun := e.Kind.Noun()
	first := e.Earliest
	opens := fmt.Sprintf("%s may go down from %s", word.Capital(noun), e.Earliest.Short())
	from := word.Capital(noun) + " from " + e.Earliest.Words() + ", as given"
	if last, why, ok := m.area.Stand.MostUp(); ok && m.young() {
		source := why.Source
		up := m.area.Seeded.AddDays(last)
		mown := up.AddDays(firstMowing())
		feed := nutrient.SeedlingsOf(m.area.Stand).FirstDays
		switch fed := up.AddDays(feed); first {
		case mown:
			opens = word.Capital(noun) + " may go down from the first mowing"
			from = fmt.Sprintf("Up %s, first mowing %s: %s from %s", up.Short(), mown.Short(), noun, first.Words())
			d.steps = append(d.steps, said(from+".", source, "common"))
		case fed:
			opens = fmt.Sprintf("%s goes down from %d days after most of the stand is up", word.Capital(noun), feed)
			from = fmt.Sprintf("Up %s; %d days later is %s: %s from then on", up.Short(), feed, first.Words(), noun)
			d.steps = append(d.steps, said(from+".", source))
		}
	}
	if len(d.steps) == 0 {
		d.steps = append(d.steps, said(from+"."))
	}
	closes := ""
	if e.LastSafe == e.Latest {
		closes = ", the last safe day for " + noun
	}
	d.rules = append(d.rules, fmt.Sprintf("%s, until %s%s.", opens, e.Latest.Short(), closes))
	for _, b := range before {
		gap, ok := nutrient.Between(thingsOf(b.Entry), thingsOf(e), false)
		if !ok {
			continue
		}
		d.rules = append(d.rules, fmt.Sprintf("At least %d days lie between %s and %s.", gap.Days, b.Kind.Noun(), noun))
		if after := b.Date.AddDays(gap.Days); after.After(first) {
			first = after
			d.steps = append(d.steps, said(fmt.Sprintf("%d days after %s: %s.", gap.Days, b.Kind.Noun(), after.Words()), gap.Why.Source))
		}
	}
	if day, ok := m.workDay(first, e); ok && day == e.Date {
		d.steps = append(d.steps, said(fmt.Sprintf("First work day: %s. Last day: %s.", day.Words(), e.Latest.Short()), m.lastSource()))
		return d, true
	}
	if best, ok := m.workDayBy(e.Ideal, first, e); ok && best == e.Date {
		d.rules = append(d.rules, fmt.Sprintf("The best day for %s is %s: take the work day nearest to it, of two the earlier.", noun, e.Ideal.Short()))
		d.steps = append(d.steps, said(fmt.Sprintf("Work day nearest to %s: %s. Last day: %s.", e.Ideal.Short(), best.Words(), e.Latest.Short()), m.lastSource()))
		return d, true
	}
	return d, false
}

// lastSource is the source key of the days of the place's year.
func (m *maker) lastSource() string { return "model" }

// thingsOf is what a job counts as for spacing.
func thingsOf(e schedule.Entry) nutrient.Things {
	j := schedule.Job{Kind: e.Kind, Dose: e.Dose}
	return j.Things()
}

// works tells whether somebody works on a day.
func (m *maker) works(d schedule.Date) bool {
	_, away := m.site.Crew.AwayOn(d)
	return m.site.Crew.Works(d) && !away
}

// workDay is the first work day from a day on, within the window.
func (m *maker) workDay(from schedule.Date, e schedule.Entry) (schedule.Date, bool) {
	for d := from; !d.After(e.Latest); d = d.Next() {
		if m.works(d) {
			return d, true
		}
	}
	return schedule.Date{}, false
}

// workDayBy is the work day of the window nearest to the best day.
func (m *maker) workDayBy(best, from schedule.Date, e schedule.Entry) (schedule.Date, bool) {
	for away := range e.Latest.DaysFrom(from) + 1 {
		for _, d := range []schedule.Date{best.AddDays(-away), best.AddDays(away)} {
			if m.works(d) && !d.Before(from) && !d.After(e.Latest) {
				return d, true
			}
		}
	}
	return schedule.Date{}, false
}
