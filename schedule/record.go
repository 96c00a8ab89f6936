package schedule

import (
	"fmt"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

// Down is a line of the record book, worked out: which job it is and what it
// brought.
type Down struct {
	Done
	AreaID   string
	Kind     Kind
	Season   int
	N        int // number of the job within kind, area and season
	Dose     material.Dose
	NotDone  bool
	Taken    bool // on record as taken as done: nobody knows
	Presumed *Job // not on record: a job planned for the day, which counts as down
}

// JobName splits the job column of a record: a kind ("lime"), a kind with season
// and number ("lime/2026-1"), or a whole id ("east/lime/2026-1"). Season and
// number are 0 if none was given; older books have numbers alone ("lime/1").
func JobName(job string) (area string, k Kind, season, n int, err error) { return kinds.JobName(job) }

func (t KindTable) JobName(job string) (area string, k Kind, season, n int, err error) {
	parts := strings.Split(job, "/")
	_, alone := t.named(parts[0])
	if len(parts) == 3 || len(parts) == 2 && !alone {
		area, parts = parts[0], parts[1:]
	}
	if len(parts) > 2 {
		return "", Kind{}, 0, 0, fmt.Errorf("%q is no job; write a kind such as lime, or an id such as east/lime/2026-1", job)
	}
	k, ok := t.named(parts[0])
	if !ok {
		return "", Kind{}, 0, 0, fmt.Errorf("unknown kind of job %q", parts[0])
	}
	if len(parts) == 2 {
		year, number, both := strings.Cut(parts[1], "-")
		if !both {
			year, number = "0", year
		}
		season, err = strconv.Atoi(year)
		n, _ = strconv.Atoi(number)
		if err != nil || n < 1 || both && (season < 1900 || season > 2200) {
			return "", Kind{}, 0, 0, fmt.Errorf("%q has no season and number after the kind; write it as %s/2026-1", job, k)
		}
	}
	return area, k, season, n, nil
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

// SulfurOf gives the elemental sulfur that a sulfur job brought.
func SulfurOf(d Down) agronomy.PerThousand {
	if d.Kind != Sulfur {
		return 0
	}
	return d.Dose.Rate * agronomy.PerThousand(d.Dose.Material.Sulfur) / 100
}
