package schedule

import (
	"fmt"
	"slices"
	"strings"

	"swardbook/agronomy/nutrient"
)

// placement is the answer of the search with what it was asked.
type placement struct {
	placed
	jobs    []Job // those to place, and after them what went down before the program
	tasks   []task
	blocked []map[string]int
	waits   map[int]string // why a job had to wait for room in 12 months
}

// byDay lists the tasks by their day; those left out keep their place among
// themselves.
func (p placement) byDay() []int {
	order := make([]int, len(p.tasks))
	number := make([]int, len(p.tasks))
	for i := range order {
		order[i] = i
		if d := p.day[i]; d >= 0 {
			number[i] = p.tasks[i].days[d].number()
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return number[a] - number[b] })
	return order
}

// blockedBy says in words what shut a day, and which other job did it.
func (p placement) blockedBy(b blocker) string {
	if b.other < 0 {
		return b.why
	}
	other := p.jobs[b.other].Kind.Noun()
	if d := p.day[b.other]; d >= 0 {
		other += ", " + p.tasks[b.other].days[d].Short()
	}
	return fmt.Sprintf("%s (%s)", inside(strings.TrimSuffix(b.why, ".")), other)
}

func (pl *planner) placeJobs(jobs []Job) placement {
	all := append(slices.Clip(jobs), pl.before()...)
	out := placement{jobs: all, tasks: make([]task, len(all)), blocked: make([]map[string]int, len(all)), waits: map[int]string{}}
	for i := range all {
		j := &all[i]
		t := task{id: j.ID(), rank: pl.kinds.rank(j.Kind), who: pl.site.who(j.Kind, j.Area)}
		switch {
		case !j.On.IsZero():
			t.fixed, t.days, t.cost = true, []Date{j.On}, []float64{0}
		default:
			t.days, t.cost, out.blocked[i] = pl.caseOf(j.Area).candidates(j)
		}
		if j.Kind.Notice() {
			t.who = "notice/" + t.id // a notice is nobody's work
		}
		if j.spreads() {
			t.group = j.Kind.String() + "/" + j.Dose.Material.ID
		}
		out.tasks[i] = t
	}
	limits := limitsBetween(all)
	for {
		out.placed = place(out.tasks, limits, pl.site.Crew.JobsPerDay)
		i, until, why, over := pl.overTwelve(out)
		if !over {
			return out
		}
		out.wait(i, until, why)
	}
}

// wait closes to a job the days before one on which its nitrogen has room.
func (p *placement) wait(i int, until Date, why string) {
	t := &p.tasks[i]
	n, _ := slices.BinarySearchFunc(t.days, until, Date.Compare)
	t.days, t.cost = t.days[n:], t.cost[n:]
	if p.blocked[i] == nil {
		p.blocked[i] = map[string]int{}
	}
	p.blocked[i][why] += n
	p.waits[i] = why
}

// before gives what went down so shortly before the program that its jobs
// still keep their distance from it.
func (pl *planner) before() []Job {
	var out []Job
	for _, c := range pl.cases {
		for _, d := range c.down {
			if !d.missed && d.Date.Before(c.Start) && c.Start.DaysFrom(d.Date) < nutrient.LongestSpacing() {
				out = append(out, Job{Kind: d.kind, N: d.n, Area: c.Area, Dose: d.dose, On: d.Date, State: Finished})
			}
		}
	}
	return out
}

func (pl *planner) areaIndex(a *Area) int {
	if a == nil {
		return -1
	}
	return slices.IndexFunc(pl.site.Areas, func(b Area) bool { return b.ID == a.ID })
}

func (pl *planner) caseOf(a *Area) *Case {
	if i := pl.areaIndex(a); i >= 0 {
		return pl.cases[i]
	}
	return &pl.whole
}

// noDay says why a job was left out.
func (pl *planner) noDay(j *Job, days placement, i int) LeftOut {
	l := LeftOut{ID: j.ID(), Kind: j.Kind, Area: j.areaID()}
	var whys []string
	for _, b := range days.bound[i] {
		if w := days.blockedBy(b); !slices.Contains(whys, w) {
			whys = append(whys, w)
		}
	}
	if w := mostBlocks(days.blocked[i]); w != "" {
		whys = append(whys, w)
	}
	if len(whys) == 0 {
		whys = []string{"another job matters more"}
	}
	w := j.Windows[len(j.Windows)-1]
	l.Reason = fmt.Sprintf("no day from %s to %s holds: %s", j.Windows[0].From.Short(), w.To.Short(), list(whys))
	return l
}

// window gives the window that holds the job's day, or its first.
func (j *Job) window() Window {
	for _, w := range j.Windows {
		if w.Has(j.On) {
			return w
		}
	}
	if len(j.Windows) > 0 {
		return j.Windows[0]
	}
	return Window{Span: Span{j.On, j.On}, Ideal: j.On}
}
