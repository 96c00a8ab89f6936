package plan

import (
	"fmt"
	"slices"

	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// notices gives the closing and the reopening of each season: once for the site, or
// for each area where cool-season and warm-season grass share a site and their days
// differ.
func (pl *planner) notices() (out []schedule.Job) {
	seasons := []climate.Season{pl.season()}
	for i := range pl.site.Areas {
		if s := pl.site.Areas[i].Stand.Season(); !slices.Contains(seasons, s) {
			seasons = append(seasons, s)
		}
	}
	shut, open := pl.seasonEnds(seasons)
	for _, ends := range []func(climate.Season) ending{shut, open} {
		if one := ends(seasons[0]); len(seasons) == 1 || ends(seasons[1]).when == one.when {
			out = append(out, pl.tell(nil, one)...)
			continue
		}
		for i := range pl.site.Areas {
			a := &pl.site.Areas[i]
			out = append(out, pl.tell(a, ends(a.Stand.Season()))...)
		}
	}
	return out
}

// ending is one of the notices, on an event of the year.
type ending struct {
	kind           schedule.Kind
	when           climate.When
	title, summary string
	why            []schedule.Reason
	steps          []string
}

// seasonEnds gives the two notices as they hold for a season's grass. Where several
// seasons share open ground, each kind of grass wakes on its own day.
func (pl *planner) seasonEnds(seasons []climate.Season) (shut, open func(climate.Season) ending) {
	a, m := pl.almanac, pl.site.Measure()
	never := a.Ground.Kind == climate.GroundNever
	shut = func(s climate.Season) ending {
		e := ending{kind: schedule.LastSafe, when: a.Ground.LastSafe, title: "Last safe day to spread",
			summary: "From now on the ground may freeze: spread nothing more until it is open again.",
			steps: []string{"Put away what is left, dry and off the floor, in its own bag.",
				"Trust a soil thermometer over the date: under " + m.Temperature(40) + " at 2 in, stop sooner."}}
		e.why = []schedule.Reason{{Text: fmt.Sprintf("soil at 2 in is expected to fall through %s a week later; the date is good to %s either way", m.Temperature(40), word.Plural(e.when.Within(), "day")), Source: "model"}}
		if never {
			e.when = a.GrowthOf(s).Ends
			e.summary = "Growth ends about now: the grass no longer takes up feed. The ground does not freeze here."
			e.why = []schedule.Reason{{Text: "growth potential falls through a tenth", Source: "gp-pace"}}
		}
		return e
	}
	open = func(s climate.Season) ending {
		e := ending{kind: schedule.Reopen, when: a.Ground.Reopens, title: "Ground and growth open again",
			summary: "Ground and grass are expected to be ready: the season's jobs begin.",
			why:     []schedule.Reason{{Text: "the ground reopens, or growth begins where it never freezes", Source: "model, gp-pace"}},
			steps:   []string{"Look before the first job: no frost in the top inch, no standing water."}}
		wakes := a.GrowthOf(s).Begins
		if never || len(seasons) > 1 && s == climate.Warm && !wakes.Never && wakes.D > e.when.D {
			e.when = wakes
		}
		return e
	}
	return shut, open
}

// tell gives a notice on each of its days in the program, for an area or for all.
func (pl *planner) tell(area *schedule.Area, e ending) (out []schedule.Job) {
	if e.when.Never {
		return nil
	}
	season := pl.season()
	if area != nil {
		season, e.title = area.Stand.Season(), word.Cut(e.title+", "+area.Name, schedule.TitleLength)
	}
	first := pl.almanac.After(e.when, pl.site.Start)
	year := pl.almanac.TurfYear(first, season)
	for d := first; !d.After(pl.last); d = pl.almanac.After(e.when, d.AddDays(1)) {
		out = append(out, schedule.Job{Kind: e.kind, Season: year, N: 1, Area: area, Title: e.title, Summary: e.summary, Steps: e.steps, Why: e.why, On: d, Bound: []string{"the ideal day"},
			Windows: []schedule.Window{{Span: schedule.Span{From: d, To: d}, Ideal: d, Opens: e.when.Words, Closes: e.when.Words}}})
		year++
	}
	return out
}
