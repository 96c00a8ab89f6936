package schedule

import (
	"fmt"

	"swardbook/climate"
)

// notices adds the closing and the reopening of the season.
func (pl *planner) notices(p *proposal) {
	a, m := pl.almanac, pl.site.Measure()
	closes, reopens := a.ground.LastSafe, a.ground.Reopens
	last := "After today the ground may freeze: nothing more is spread until it is open again."
	lastWhy := []Reason{{Text: fmt.Sprintf("soil at 2 in is expected to fall through %s a week later; the date is good to %s either way", m.Temperature(40), Plural(int(1.28*closes.SD+0.5), "day")), Source: "model"}}
	if a.ground.Kind == climate.GroundNever {
		g := a.growth(pl.season())
		closes, reopens = g.ends, g.begins
		last = "Growth ends about now: what is fed after this is not taken up. The ground itself does not freeze here."
		lastWhy = []Reason{{Text: "growth potential falls through a tenth", Source: "gp-pace"}}
	}
	add := func(k Kind, w climate.When, title, summary string, why []Reason, steps ...string) {
		if w.Never {
			return
		}
		n := 0
		for d := a.after(w, pl.site.Start); !d.After(pl.site.Through); d = a.after(w, d.AddDays(1)) {
			n++
			p.jobs = append(p.jobs, Job{Kind: k, N: n, Title: title, Summary: summary, Steps: steps, Why: why,
				Windows: []Window{{Span: Span{d, d}, Ideal: d, Opens: w.Words, Closes: w.Words}}})
		}
	}
	add(LastSafe, closes, "Last safe day to spread", last, lastWhy,
		"Put away what is left, dry and off the floor, in its own bag.",
		"Trust a soil thermometer over the date: under "+m.Temperature(40)+" at 2 in, stop sooner.")
	add(Reopen, reopens, "Ground and growth open again", "The ground is expected to be open and the grass to wake: the season's jobs begin.",
		[]Reason{{Text: "the ground reopens, or growth begins where it never freezes", Source: "model, gp-pace"}},
		"Look before the first job: no frost in the top inch, no standing water.")
}
