package plan

import (
	"cmp"
	"slices"

	"swardbook/schedule"
	scrule "swardbook/schedule/rule"
)

// sownOn notes the days of the sowings on record, and gives the part of the seed that is
// not down of stands that are sown in part. The stand counts from the first of its parts;
// the seedlings of the others are spared as those of an overseeding are. A line that the
// sowing was missed, after a part of it, calls the rest off.
func (pl *planner) sownOn(book []schedule.Done) map[string]float64 {
	season := func(a *schedule.Area, d schedule.Date) int { return pl.almanac.SeasonOf(d, a.Stand.Season()) }
	left, off := map[string]float64{}, map[string]schedule.Date{}
	for _, d := range inOrder(slices.Clone(book)) {
		area, k, _, _, err := pl.kinds.JobName(d.Job)
		a := pl.site.Area(cmp.Or(d.Area, area))
		if err != nil || k != schedule.Sow || a == nil {
			continue
		}
		if d.Missed {
			off[a.ID] = d.Date
			continue
		}
		delete(off, a.ID)
		part := a.SeedPart(k, &d)
		was, again := left[a.ID]
		full, whole := was < schedule.LeastRest, part > 1-schedule.LeastRest
		other := again && season(a, d.Date) != season(a, pl.sown[a.ID])
		switch {
		case !again || full && whole || other && (full || whole): // sown anew
			left[a.ID], pl.sown[a.ID], pl.resown[a.ID] = 1-part, d.Date, nil
		default:
			left[a.ID] = was - part
			if d.Date != pl.sown[a.ID] {
				pl.resown[a.ID] = append(pl.resown[a.ID], d.Date)
			}
		}
	}
	for i := range pl.site.Areas {
		a := &pl.site.Areas[i]
		if day, called := off[a.ID]; called && left[a.ID] >= schedule.LeastRest {
			pl.sowing.Left = append(pl.sowing.Left, noRest(a, schedule.Sow, season(a, pl.sown[a.ID]), 1, left[a.ID], calledOff, day))
			left[a.ID] = 0
		}
	}
	return left
}

const calledOff = "it was called off on"

// sowRest dates what is left of a sowing done in part, as long as the window lasts in
// which the last part went down.
func (pl *planner) sowRest(a *schedule.Area, left float64) {
	first, last := pl.sown[a.ID], pl.sown[a.ID]
	if n := len(pl.resown[a.ID]); n > 0 {
		last = pl.resown[a.ID][n-1]
	}
	season := pl.almanac.SeasonOf(first, a.Stand.Season())
	from := schedule.Later(last, pl.site.Start)
	c := pl.newCase(&life{area: a, year: season, from: from}, schedule.NewShed(pl.site, nil))
	c.Start, c.Begins, c.Through, c.Opens, c.Seeded = last, last, from.AddDays(sowAhead), lineOpens, last
	p := scrule.Sow(&scrule.Treatment{Case: c})
	p.Jobs = slices.DeleteFunc(p.Jobs, func(j schedule.Job) bool { return !j.Windows[0].Has(last) || j.Windows[0].To.Before(from) })
	if len(p.Jobs) == 0 {
		pl.sowing.Left = append(pl.sowing.Left, noRest(a, schedule.Sow, season, 1, left, "its days were over by", from))
		return
	}
	j := &p.Jobs[0]
	w := j.Windows[0]
	w.From, w.Ideal = schedule.Later(w.From, from), schedule.Later(w.Ideal, from)
	j.Season, j.Rest, j.Part, j.Windows = season, true, left, []schedule.Window{w}
	c.Start, c.Begins, c.Seeded = from, from, from
	scrule.DescribeRest(c, j)
	pl.cases = []*schedule.Case{c}
	days := pl.placeJobs(p.Jobs, nil)
	if !days.has(0) {
		pl.sowing.Left = append(pl.sowing.Left, pl.noDay(j, days, 0))
		return
	}
	j.Bound = pl.bound(j, days, 0)
	pl.sowing.Jobs = append(pl.sowing.Jobs, *j)
}
