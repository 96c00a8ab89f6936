package schedule

import (
	"fmt"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/agronomy/material"
	"swardbook/schedule/word"
)

// Down is a line of the record book, worked out: which job it is and what it
// brought.
type Down struct {
	Done
	AreaID   string
	Kind     Kind
	N        int // number of the job within kind and area
	Dose     material.Dose
	NotDone  bool
	Presumed *Job // not on record: a job taken as done as planned
}

// JobName splits the job column of a record: a kind ("lime"), a kind with its
// number ("lime/1"), or a whole id ("east/lime/1"). The number is 0 if none was
// given.
func JobName(job string) (area string, k Kind, n int, err error) { return kinds.JobName(job) }

func (t KindTable) JobName(job string) (area string, k Kind, n int, err error) {
	parts := strings.Split(job, "/")
	if len(parts) == 3 {
		area, parts = parts[0], parts[1:]
	}
	if len(parts) > 2 {
		return "", Kind{}, 0, fmt.Errorf("%q is no job; write a kind such as lime, or an id such as east/lime/1", job)
	}
	k, ok := t.named(parts[0])
	if !ok {
		return "", Kind{}, 0, fmt.Errorf("unknown kind of job %q", parts[0])
	}
	if len(parts) == 2 {
		n, err = strconv.Atoi(parts[1])
		if err != nil || n < 1 {
			return "", Kind{}, 0, fmt.Errorf("%q has no number after the kind; write it as %s/1", job, k)
		}
	}
	return area, k, n, nil
}

// Area finds an area by its id.
func (s *Site) Area(id string) *Area {
	for i := range s.Areas {
		if s.Areas[i].ID == id {
			return &s.Areas[i]
		}
	}
	return nil
}

// RecordedJobs turns what is down in the program's time into jobs with a day.
func (c *Case) RecordedJobs() []Job {
	var out []Job
	m := c.Measure()
	for _, d := range c.ThisYear() {
		if d.NotDone || d.Date.Before(c.Start) || d.Date.After(c.Through) {
			continue
		}
		if d.Presumed != nil {
			j := *d.Presumed
			j.Note = "not on record: taken as done as planned"
			out = append(out, j)
			continue
		}
		j := Job{Kind: d.Kind, N: d.N, Area: c.Area, Dose: d.Dose, On: d.Date, State: Finished, Note: d.Note}
		j.Title = word.Capital(d.Kind.Noun()) + " on " + c.Area.Name
		j.Summary = j.Title
		if d.Dose.Rate > 0 {
			j.Summary += ", " + m.DoseWords(d.Dose, c.Area.Size)
		}
		if d.By != "" {
			j.Summary += ", by " + c.PersonName(d.By)
		}
		j.Summary += "."
		j.Why = []Reason{{Text: fmt.Sprintf("line %d of the record book", d.Line)}}
		out = append(out, j)
	}
	return out
}

// EffectiveLime gives the fully effective lime that a job brought.
func EffectiveLime(d Down) agronomy.PerThousand {
	if d.Dose.Material.Kind != material.LimeMaterial {
		return 0
	}
	value, _ := lime.Effective(d.Dose.Material, false)
	return d.Dose.Rate * agronomy.PerThousand(value) / 100
}

// SulfurOf gives the elemental sulfur that a sulfur job brought.
func SulfurOf(d Down) agronomy.PerThousand {
	if d.Kind != Sulfur {
		return 0
	}
	return d.Dose.Rate * agronomy.PerThousand(d.Dose.Material.Sulfur) / 100
}
