package plan

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/schedule"
	"swardbook/schedule/place"
	"swardbook/schedule/word"
)

// placement is a [place.Problem] made of jobs, and its answer.
type placement struct {
	place.Answer
	jobs    []*schedule.Job // first those to place, then those that have their day
	problem place.Problem
	limits  []limit          // those of the problem, with their reasons
	blocked []map[string]int // of each job: how many days its own rules take away, by reason
	waits   map[int]string   // of jobs that had to wait for room in 12 months: why
	trial   bool             // all is proposed again, so that jobs not on record may get other days
}

// togetherBonus is what a job gains on the day of the same job in other areas.
// With weight 1 it is worth moving a job by a seventh of its window (0.02 = 0.14²).
const togetherBonus = 0.02 // [common]

// has tells whether a job was given a day.
func (p *placement) has(i int) bool { return p.Day[i] != place.Left }

// on gives the day of a job that has one.
func (p *placement) on(i int) schedule.Date {
	return schedule.FromNumber(p.problem.Tasks[i].Days[p.Day[i]])
}

// blockedBy puts a cause into words, with the other job if it is a limit, and its day if
// that stands.
func (p *placement) blockedBy(c place.Cause) string {
	switch c.By {
	case place.ByRoom:
		if p.problem.PerDay == 1 {
			return "no more than 1 job a day"
		}
		return fmt.Sprintf("no more than %d jobs a day", p.problem.PerDay)
	case place.ByGroup:
		return "done on the day of the same job in other areas"
	case place.ByStop:
		return "not every arrangement of the days was tried"
	}
	other := p.jobs[c.Other].Kind.Noun()
	if p.has(c.Other) && (!p.trial || p.jobs[c.Other].State == schedule.Finished) {
		other += ", " + p.on(c.Other).Short()
	}
	return fmt.Sprintf("%s (%s)", word.Inside(strings.TrimSuffix(p.limits[c.Limit].why, ".")), other)
}

// placeJobs puts the jobs of some areas on days, beside those that have their day. The
// most nitrogen in 12 months is no limit between two jobs: so jobs are placed, the first
// that exceeds it is made to wait, and all are placed again.
func (pl *planner) placeJobs(jobs []schedule.Job, lives []*life) *placement {
	stand := pl.standing(jobs, lives)
	all := make([]*schedule.Job, 0, len(jobs)+len(stand))
	for i := range jobs {
		all = append(all, &jobs[i])
	}
	all = append(all, stand...)
	out := &placement{jobs: all, limits: limitsBetween(all), blocked: make([]map[string]int, len(all)), waits: map[int]string{}}
	out.problem = place.Problem{Tasks: make([]place.Task, len(all)), Limits: make([]place.Limit, len(out.limits)), PerDay: pl.site.Crew.JobsPerDay, Bonus: schedule.Units(togetherBonus)}
	for i, j := range all {
		t := place.Task{Area: pl.areaIndex(j.Area), Who: pl.site.Who(j.ID()), LeaveOut: schedule.LeaveOut(pl.kinds.Rank(j.Kind))}
		switch {
		case !j.On.IsZero():
			t.Fixed, t.Days, t.Cost = true, []int{j.On.Number()}, []int64{0}
		default:
			t.Days, t.Cost, out.blocked[i] = pl.caseOf(j.Area).Candidates(j)
		}
		switch {
		case j.Kind.Notice():
			t.Who = "notice/" + j.ID() // a notice is nobody's work
		case withSeed(j):
			t.Who = "seed/" + j.ID() // one job with the sowing, however few jobs a day may have
		}
		if j.Spreads() {
			t.Group = j.Kind.String() + "/" + j.Dose.Material.ID
		}
		out.problem.Tasks[i] = t
	}
	for i, l := range out.limits {
		out.problem.Limits[i] = l.Limit
	}
	for {
		out.Answer = place.Place(out.problem)
		i, until, why, over := pl.overTwelve(out)
		if !over {
			return out
		}
		out.wait(i, until, why)
	}
}

// withSeed tells the starter that goes down with the seed, as it has that day alone.
func withSeed(j *schedule.Job) bool {
	return j.Kind == schedule.Starter && len(j.Windows) == 1 && j.Windows[0].From == j.Windows[0].To
}

// wait takes from a job its days before until, the first day on which the 12 months that
// end there have room for its nitrogen.
func (p *placement) wait(i int, until schedule.Date, why string) {
	t := &p.problem.Tasks[i]
	n, _ := slices.BinarySearch(t.Days, until.Number())
	t.Days, t.Cost = t.Days[n:], t.Cost[n:]
	if p.blocked[i] == nil {
		p.blocked[i] = map[string]int{}
	}
	p.blocked[i][why] += n
	p.waits[i] = why
}

func (pl *planner) areaIndex(a *schedule.Area) int {
	if a == nil {
		return -1
	}
	return slices.IndexFunc(pl.site.Areas, func(b schedule.Area) bool { return b.ID == a.ID })
}

func (pl *planner) caseOf(a *schedule.Area) *schedule.Case {
	for _, c := range pl.cases {
		if a != nil && c.Area.ID == a.ID {
			return c
		}
	}
	return nil
}

// noDay says why a job was left out.
func (pl *planner) noDay(j *schedule.Job, days *placement, i int) schedule.LeftOut {
	l := schedule.LeftOut{ID: j.ID(), Season: j.Season, N: j.N, Kind: j.Kind, Area: j.AreaID(), Date: j.Windows[0].From}
	var whys []string
	for _, b := range days.Causes[i] {
		if w := days.blockedBy(b); !slices.Contains(whys, w) {
			whys = append(whys, w)
		}
	}
	if w := schedule.MostBlocks(days.blocked[i]); w != "" {
		whys = append(whys, w)
	}
	if len(whys) == 0 {
		whys = []string{"another job matters more"}
	}
	w := j.Windows[len(j.Windows)-1]
	l.Reason = fmt.Sprintf("no day from %s to %s is possible: %s", j.Windows[0].From.Short(), w.To.Short(), word.List(whys))
	return l
}
