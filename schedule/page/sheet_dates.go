package page

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
	"swardbook/schedule/law"
	"swardbook/schedule/word"
)

// rowView is one entry in a table: a line to act on.
type rowView struct {
	Anchor, ISO, Day string // name inside the page, "2026-09-19", "Sat 19 Sep"
	Name             string // "Lime, East lawn"
	With             string // the material
	Amount, Packs    string // "83 lb", "2.1 packs"
	Who              string
	LastSafe         string // last safe day, with its year if that is another
	Standing, Record string
	Same             bool   // of the same day as the row above
	Now              bool   // due or next
	Fence            bool   // the row is the season's last safe day
	Tells, After     string // of a notice: what the day is, what comes after
	Note             string // of the record book
	From             string // of a due job: the next good day, where others have another
}

// fewPacks is the part of a pack below which only pounds are given, as they say more.
const fewPacks = 0.25

func (b *sheetBuilder) row(e *schedule.Entry) rowView {
	r := rowView{Anchor: anchor("job-", e.ID), ISO: e.Date.String(), Day: dayMonth(e.Date), Name: jobWords(b.p, e),
		With: e.MaterialName, Amount: amountOf(e, b.measure), Who: e.WhoName}
	if r.Who == "" {
		r.Who = e.Who
	}
	if e.Packs >= fewPacks {
		r.Packs = word.Packs(e.Packs)
	}
	r.Standing, _ = b.standing(e)
	r.Now = r.Standing == "due" || r.Standing == string(schedule.Planned) && e.Date == b.next
	if e.Kind.Notice() {
		r.Fence, r.Now = e.Kind == schedule.LastSafe, false
		r.Tells = r.Name + "."
		if r.Fence {
			r.Tells = "Last safe day to spread."
			if !b.p.Season.GroundFreeze.Median.IsZero() || !b.p.Season.GroundFreeze.Early.IsZero() {
				r.After = "After it the ground may freeze."
			}
		}
		return r
	}
	if !e.LastSafe.IsZero() {
		r.LastSafe = e.LastSafe.DayMonth()
		if e.LastSafe.Year != e.Date.Year {
			r.LastSafe = e.LastSafe.Short()
		}
	}
	if r.Standing != string(schedule.Planned) || !b.today.Before(e.Earliest) { // it can have been done
		r.Record = b.o.recordLink(e.ID)
	}
	return r
}

// datesView is the program at a glance, from today on.
type datesView struct {
	Year    int // of the first row
	Years   []datesOfYear
	Who     bool
	After   string // what lies beyond the page
	Columns int
}

// datesOfYear is the program at a glance: one year of it.
type datesOfYear struct {
	Year  int
	First bool
	Rows  []rowView
}

func (b *sheetBuilder) dates() datesView {
	var v datesView
	var before schedule.Date
	beyond := 0
	twice := b.twoMaterials()
	for i := range b.p.Entries {
		e := &b.p.Entries[i]
		if _, open := b.standing(e); !open {
			continue
		}
		if e.Date.After(b.to) {
			beyond++
			continue
		}
		r := b.row(e)
		r.Same = e.Date == before && !e.Kind.Notice()
		before = e.Date
		r.With = ""
		if slices.Contains(twice, e.Kind) {
			r.With = shortMaterial(e)
		}
		if n := len(v.Years); n == 0 || v.Years[n-1].Year != e.Date.Year {
			v.Years = append(v.Years, datesOfYear{Year: e.Date.Year, First: n == 0})
			r.Same = false
		}
		last := &v.Years[len(v.Years)-1]
		last.Rows = append(last.Rows, r)
		v.Who = v.Who || r.Who != ""
	}
	if len(v.Years) > 0 {
		v.Year = v.Years[0].Year
	}
	if beyond > 0 {
		v.After = fmt.Sprintf("After %s the program goes on: %s.", b.to.Short(), word.Plural(beyond, "more day"))
	}
	v.Columns = 5
	if v.Who {
		v.Columns = 6
	}
	return v
}

// shortMaterial is what tells one material from the others of a kind of job, in a
// narrow column: the numbers on the bag, else its name without the word that all
// lime has.
func shortMaterial(e *schedule.Entry) string {
	m := e.Dose.Material
	if m.Analysis != (agronomy.Analysis{}) && m.Kind == material.FertilizerMaterial {
		return word.Analysis(m.Analysis)
	}
	for _, said := range []string{" limestone", " lime"} {
		if short, ok := strings.CutSuffix(e.MaterialName, said); ok && short != "ground" { // "ground" alone is misread
			return short
		}
	}
	return e.MaterialName
}

// twoMaterials lists the kinds that are not always done with one material.
func (b *sheetBuilder) twoMaterials() []schedule.Kind {
	with := map[schedule.Kind]string{}
	var out []schedule.Kind
	for _, e := range b.p.Entries {
		switch was, known := with[e.Kind]; {
		case e.Material == "":
		case !known:
			with[e.Kind] = e.Material
		case was != e.Material && !slices.Contains(out, e.Kind):
			out = append(out, e.Kind)
		}
	}
	return out
}

// past lists what lies behind: done, missed, or taken as done.
func (b *sheetBuilder) past() []rowView {
	var out []rowView
	for i := range b.p.Entries {
		e := &b.p.Entries[i]
		s, open := b.standing(e)
		if open || e.Kind.Notice() {
			continue
		}
		r := b.row(e)
		r.Day = e.Date.Words()
		switch s {
		case string(schedule.Finished), string(schedule.Missed):
			r.Standing = s
		default:
			r.Standing = "taken as done: its window has closed, and the record book says nothing"
		}
		r.Note = e.Note
		out = append(out, r)
	}
	return out
}

// askView is whom to ask.
type askView struct{ Offices, Law string }

func (b *sheetBuilder) ask() askView {
	v := askView{Offices: "The county extension office, then the city, town or county clerk."}
	s, _, err := law.For(b.p.Place.State, b.p.Site.County, b.p.Site.CrewIs())
	switch {
	case err != nil:
		v.Law = "No state is given, so no state's law is looked up."
		return v
	case s.Ask != "":
		v.Offices = offices(s.Ask)
	}
	if len(b.p.Laws) == 0 {
		v.Law = s.Name + ": no rule for lawns was found. That is not permission: ask."
		return v
	}
	var places []string
	for _, l := range b.p.Laws {
		place := l.Citation
		if l.AsOf != "" {
			place += ", as of " + l.AsOf
		}
		if !slices.Contains(places, place) {
			places = append(places, place)
		}
	}
	most := min(len(places), mostPlaces)
	v.Law = "Days and amounts here keep " + strings.Join(places[:most], "; ")
	if more := len(places) - most; more > 0 {
		v.Law += fmt.Sprintf("; and %d more", more)
	}
	v.Law = word.Sentence(v.Law)
	return v
}

// mostPlaces is how many places of law are named beside the dates.
const mostPlaces = 2

// offices completes those that a state's entry names: the extension office
// first, the clerk last.
func offices(named string) string {
	list := strings.Split(named, "; ")
	if !strings.Contains(named, "extension") {
		list = append([]string{"county extension office"}, list...)
	}
	if !strings.Contains(named, "clerk") && !strings.Contains(named, "county and city") {
		list = append(list, "city, town or county clerk")
	}
	return word.Capital(word.Sentence(strings.Join(list, "; ")))
}
