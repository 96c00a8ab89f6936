package plan

import (
	"slices"

	"swardbook/agronomy/material"
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
)

// standing gives the jobs that have their day already and that others must heed: what went
// down in the areas so lately that jobs keep their distance from it, and what is planned in
// the other areas, as it takes days of the same crew. Without lives it is a sowing that is
// being dated, before anything else is planned.
func (pl *planner) standing(jobs []schedule.Job, lives []*life) []*schedule.Job {
	var out []*schedule.Job
	add := func(jobs []schedule.Job) {
		for i := range jobs {
			out = append(out, &jobs[i])
		}
	}
	for _, c := range pl.cases {
		add(lately(c, jobs))
	}
	if lives == nil {
		return out
	}
	for _, l := range pl.lives {
		if slices.Contains(lives, l) {
			continue
		}
		for i := range l.planned {
			if j := &l.planned[i]; !j.Kind.Notice() {
				out = append(out, j)
			}
		}
	}
	add(pl.sowing.Jobs)
	return out
}

// lately gives what went down in an area within the longest spacing, the latest first,
// as few jobs as will do. What a kind of job brought on one day is one job, and one that
// keeps others no farther away than a later job of its kind is left out. A job of which a
// rest is among jobs is never joined with another or left out for one, as the rest need
// not keep a distance from that job, but must from the others.
func lately(c *schedule.Case, jobs []schedule.Job) (out []schedule.Job) {
	var rests []*schedule.Job
	for i := range jobs {
		if j := &jobs[i]; j.Rest && j.Area == c.Area {
			rests = append(rests, j)
		}
	}
	own := func(j *schedule.Job) bool {
		return slices.ContainsFunc(rests, func(o *schedule.Job) bool { return o.Kind == j.Kind && o.Season == j.Season && o.N == j.N })
	}
	var on []schedule.Job // jobs of the day
	for i := len(c.Down) - 1; i >= 0; {
		day := c.Down[i].Date
		if c.Start.DaysFrom(day) >= nutrient.LongestSpacing() {
			break
		}
		for on = on[:0]; i >= 0 && c.Down[i].Date == day; i-- {
			d := &c.Down[i]
			if d.NotDone {
				continue
			}
			j := schedule.Job{Kind: d.Kind, Season: d.Season, N: d.N, Area: c.Area, Dose: d.Dose, On: day, State: schedule.Finished,
				Tilled: c.Future()} // what is down before the seed is worked in with the bed
			if o := find(on, func(o *schedule.Job) bool { return o.Kind == j.Kind && thingsOf(o) == thingsOf(&j) && !own(o) }); o != nil && !own(&j) {
				o.Dose = material.Sum(j.Dose, o.Dose)
			} else {
				on = append(on, j)
			}
		}
		later := out
		for k := range on {
			j := &on[k]
			if day == c.Start || own(j) || find(later, func(o *schedule.Job) bool { return asMuch(o, j) && !own(o) }) == nil {
				out = append(out, *j)
			}
		}
	}
	return out
}

// find gives the first job that fits; nil if none does.
func find(jobs []schedule.Job, fits func(*schedule.Job) bool) *schedule.Job {
	for i := range jobs {
		if fits(&jobs[i]) {
			return &jobs[i]
		}
	}
	return nil
}

// thingsOf gives what a job counts as for spacing, whatever its dose.
func thingsOf(j *schedule.Job) nutrient.Things { return nutrient.ThingsOf(j.Dose.Material) }

// asMuch tells whether two jobs are of one kind, and the first keeps others at least as
// far away as the second.
func asMuch(a, b *schedule.Job) bool {
	t := b.Things()
	return a.Kind == b.Kind && a.Things()&t == t && a.Dose.SolubleN >= b.Dose.SolubleN && a.Dose.K2O >= b.Dose.K2O
}
