package plan

import (
	"fmt"

	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// notices gives the closing and the reopening of each season of the site: that of
// its first area.
func (pl *planner) notices() (out []schedule.Job) {
	a, m := pl.almanac, pl.site.Measure()
	closes, reopens := a.Ground.LastSafe, a.Ground.Reopens
	last := "After today the ground may freeze: nothing more is spread until it is open again."
	lastWhy := []schedule.Reason{{Text: fmt.Sprintf("soil at 2 in is expected to fall through %s a week later; the date is good to %s either way", m.Temperature(40), word.Plural(closes.Within(), "day")), Source: "model"}}
	if a.Ground.Kind == climate.GroundNever {
		g := a.GrowthOf(pl.season())
		closes, reopens = g.Ends, g.Begins
		last = "Growth ends about now: what is fed after this is not taken up. The ground itself does not freeze here."
		lastWhy = []schedule.Reason{{Text: "growth potential falls through a tenth", Source: "gp-pace"}}
	}
	add := func(k schedule.Kind, w climate.When, title, summary string, why []schedule.Reason, steps ...string) {
		if w.Never {
			return
		}
		first := a.After(w, pl.site.Start)
		year := a.TurfYear(first, pl.season())
		for d := first; !d.After(pl.last); d = a.After(w, d.AddDays(1)) {
			out = append(out, schedule.Job{Kind: k, Season: year, N: 1, Title: title, Summary: summary, Steps: steps, Why: why, On: d, Bound: []string{"the ideal day"},
				Windows: []schedule.Window{{Span: schedule.Span{From: d, To: d}, Ideal: d, Opens: w.Words, Closes: w.Words}}})
			year++
		}
	}
	add(schedule.LastSafe, closes, "Last safe day to spread", last, lastWhy,
		"Put away what is left, dry and off the floor, in its own bag.",
		"Trust a soil thermometer over the date: under "+m.Temperature(40)+" at 2 in, stop sooner.")
	add(schedule.Reopen, reopens, "Ground and growth open again", "The ground is expected to be open and the grass to wake: the season's jobs begin.",
		[]schedule.Reason{{Text: "the ground reopens, or growth begins where it never freezes", Source: "model, gp-pace"}},
		"Look before the first job: no frost in the top inch, no standing water.")
	return out
}
