package schedule

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"swardbook/schedule/word"
)

// Change is one difference between two programs.
type Change struct {
	ID   string `json:"id"`
	What string `json:"what"` // "moved", "grew", "shrank", "changed", "appeared", "vanished", "left out", "no longer left out"
	Text string `json:"text"`
	Why  string `json:"why,omitzero"` // of a job still to do: what its working says now and did not say before; why one is there, or is not
	Was  Date   `json:"was,omitzero"`
	Is   Date   `json:"is,omitzero"`
}

// Compare lists what moved, grew, appeared or vanished from one program to
// another, in the order of the days.
func Compare(was, is *Program) []Change {
	var out []Change
	m := word.Measure{Metric: is.Metric}
	old := map[string]*Entry{}
	for i := range was.Entries {
		old[was.Entries[i].ID] = &was.Entries[i]
	}
	now := map[string]bool{}
	for i := range is.Entries {
		e := &is.Entries[i]
		now[e.ID] = true
		o, ok := old[e.ID]
		if !ok {
			out = append(out, Change{ID: e.ID, What: "appeared", Is: e.Date, Why: firstSentence(e.Because), Text: fmt.Sprintf("%s on %s", e.Title, e.Date.Short())})
			continue
		}
		if o.Date != e.Date {
			days := e.Date.DaysFrom(o.Date)
			dir := "later"
			if days < 0 {
				dir = "earlier"
			}
			out = append(out, Change{ID: e.ID, What: "moved", Was: o.Date, Is: e.Date, Why: newBound(o, e),
				Text: fmt.Sprintf("from %s to %s, %s %s", o.Date.Short(), e.Date.Short(), word.Plural(int(math.Abs(float64(days))), "day"), dir)})
		}
		if e.State != Missed && m.Weight(o.Pounds) != m.Weight(e.Pounds) && (math.Abs(float64(e.Rate-o.Rate)) > 0.005 || math.Abs(float64(e.Pounds-o.Pounds)) > 0.05) { // less is not seen on a scale
			what := "grew"
			if e.Pounds < o.Pounds {
				what = "shrank"
			}
			out = append(out, Change{ID: e.ID, What: what, Was: o.Date, Is: e.Date, Why: newWhy(o, e),
				Text: fmt.Sprintf("from %s to %s", m.Weight(o.Pounds), m.Weight(e.Pounds))})
		}
		if e.State != Missed && o.Material != e.Material {
			out = append(out, Change{ID: e.ID, What: "changed", Was: o.Date, Is: e.Date, Text: fmt.Sprintf("%s instead of %s", e.MaterialName, o.MaterialName)})
		}
		if o.State != e.State {
			out = append(out, Change{ID: e.ID, What: "changed", Was: o.Date, Is: e.Date, Text: fmt.Sprintf("%s, was %s", e.State, o.State)})
		}
	}
	for i := range was.Entries {
		if o := &was.Entries[i]; !now[o.ID] && !o.Date.Before(is.Start) { // what lies before a later start is history
			why := ""
			if !slices.ContainsFunc(is.LeftOut, func(l LeftOut) bool { return l.ID == o.ID }) { // which says why itself
				why = "Nothing of it is wanted by now."
			}
			out = append(out, Change{ID: o.ID, What: "vanished", Was: o.Date, Why: why, Text: fmt.Sprintf("%s, was planned for %s", o.Title, o.Date.Short())})
		}
	}
	out = append(out, compareLeft(was, is)...)
	slices.SortStableFunc(out, func(a, b Change) int {
		return cmp.Or(firstDate(a).Compare(firstDate(b)), cmp.Compare(a.ID, b.ID))
	})
	return out
}

// newBound gives the first thing that binds the day of a job now and did not before; "" if
// nothing new does, or the job is not planned any more.
func newBound(was, is *Entry) string {
	if is.State != Planned {
		return ""
	}
	i := slices.IndexFunc(is.BoundBy, func(t string) bool { return t != idealDay && !slices.Contains(was.BoundBy, t) })
	switch {
	case i >= 0:
		return is.BoundBy[i]
	case is.Earliest != was.Earliest:
		return "it may be done from " + is.Earliest.Short() + " now"
	}
	return ""
}

// firstSentence is the short reason for a job.
func firstSentence(because string) string {
	text, _, _ := strings.Cut(because, ". ")
	return text
}

// newWhy gives the first step in a job's working that is new; "" if none is, or the job is
// not planned any more.
func newWhy(was, is *Entry) string {
	if is.State != Planned || is.Rest {
		return ""
	}
	i := slices.IndexFunc(is.Why, func(r Reason) bool {
		return !slices.ContainsFunc(was.Why, func(o Reason) bool { return o.Text == r.Text })
	})
	if i < 0 {
		return ""
	}
	return is.Why[i].Text
}

func firstDate(c Change) Date {
	if c.Is.IsZero() {
		return c.Was
	}
	return c.Is
}

// compareLeft lists what is left out now and was not before, what no longer is, and what
// is for another reason. Jobs left out are known by area, kind and reason, as their numbers
// may differ from program to program.
func compareLeft(was, is *Program) []Change {
	var out []Change
	key := func(l LeftOut) string { return l.Area + "\x00" + l.Kind.String() + "\x00" + l.Reason }
	old, now := map[string]bool{}, map[string]bool{}
	ids := map[string]bool{} // the jobs that were left out for a reason which holds no longer
	for _, l := range is.LeftOut {
		now[key(l)] = true
	}
	for _, l := range was.LeftOut {
		old[key(l)] = true
		ids[l.ID] = ids[l.ID] || !now[key(l)]
	}
	for _, l := range is.LeftOut {
		switch {
		case old[key(l)]:
		case ids[l.ID]:
			ids[l.ID] = false
			out = append(out, Change{ID: l.ID, What: "changed", Is: l.CarriedTo, Text: "left out for another reason: " + l.Reason})
		default:
			out = append(out, Change{ID: l.ID, What: "left out", Is: l.CarriedTo, Text: l.Reason})
		}
	}
	for _, l := range was.LeftOut {
		if !now[key(l)] && ids[l.ID] {
			out = append(out, Change{ID: l.ID, What: "no longer left out", Text: "before: " + l.Reason})
		}
	}
	return out
}
