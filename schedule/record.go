package schedule

import (
	"fmt"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule/word"
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
	Part     float64 // of a sowing: the part of the seed that went down; 0: all of it
	NotDone  bool
	Taken    bool // the line says that the job was taken as done, as nobody had recorded it
	Presumed *Job // not on record: a job planned for the day, which counts as down
}

// JobName splits the job column of a record: a kind ("lime"), a kind with season
// and number ("lime/2026-1"), or a whole id ("east/lime/2026-1"). Season and
// number are 0 if none was given; older books have numbers alone ("lime/1").
func JobName(job string) (area string, k Kind, season, n int, err error) { return kinds.JobName(job) }

// JobName is [JobName] for the kinds of a table.
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
func SulfurOf(d *Down) agronomy.PerThousand {
	if d.Kind != Sulfur {
		return 0
	}
	return sulfurIn(d.Dose)
}

func sulfurIn(d material.Dose) agronomy.PerThousand {
	return d.Rate * agronomy.PerThousand(d.Material.Sulfur) / 100
}

// OverPlanned is how many times what was planned a job on record may bring before
// it looks like a slip of the unit or the point.
const OverPlanned = 2 // [common]

// OverPlan doubts the lines of the record book that brought over twice what is planned
// for the job in bare, the program of the same site without a book. If bare does not plan
// that job, the largest of its kind in the area counts; if it plans none, the line is not
// judged.
func (p *Program) OverPlan(bare *Program) (out []Problem) {
	for _, c := range p.Cases {
		for _, d := range c.Down {
			e := bare.likest(d, c)
			if d.Presumed != nil || d.AsPlanned || e == nil {
				continue
			}
			brought, planned := c.Brings(d.Kind, d.Dose), c.Brings(d.Kind, e.Dose)
			if planned <= 0 || brought <= OverPlanned*planned+Dust {
				continue
			}
			m := c.Measure()
			out = append(out, Problem{Line: d.Line, Key: "amount", Warning: true,
				Message: fmt.Sprintf("%s on %s is %s times what is planned, %s", m.Amount(d.Dose, c.Area.Size), c.Area.Name, word.Figures(float64(brought/planned), 2), m.DoseWords(e.Dose, c.Area.Size)),
				Hint:    "are the unit and the decimal point right? if it did go down, leave it: what follows is cut by it"})
		}
	}
	return out
}

// likest gives the entry most like a job on record: its own, else the largest of its
// kind in its area; nil if there is none.
func (p *Program) likest(d Down, c *Case) (best *Entry) {
	for i := range p.Entries {
		e := &p.Entries[i]
		if e.Area != d.AreaID || e.Kind != d.Kind || e.Rate == 0 {
			continue
		}
		if e.ID == JobID(d.AreaID, d.Kind, d.Season, d.N) {
			return e
		}
		if best == nil || c.Brings(d.Kind, e.Dose) > c.Brings(d.Kind, best.Dose) {
			best = e
		}
	}
	return best
}

// Brings gives what a dose brings of what a kind of job is for.
func (c *Case) Brings(k Kind, d material.Dose) agronomy.PerThousand {
	if brings := k.Of().Brings; brings != nil {
		return brings(c, d)
	}
	return d.N
}

// Seed gives the weight of seed for a sowing of a kind, from the least that its grasses
// take to the most; 0 if their rates are not known.
func (a *Area) Seed(k Kind) (low, high agronomy.Pounds) {
	for i, s := range a.Stand {
		rates := s.Grass.SeedRate
		if k == Overseed {
			rates[0], rates[1] = agronomy.OverseedRate(rates[0]), agronomy.OverseedRate(rates[1])
		}
		part := agronomy.PerThousand(a.Stand.Weight(i))
		low += (rates[0] * part).Over(a.Size)
		high += (rates[1] * part).Over(a.Size)
	}
	return low, high
}

// SeedPart gives the part of the seed that a line of the record book put down: by weight
// the part of the least that the grasses take.
func (a *Area) SeedPart(k Kind, d *Done) float64 {
	whole := d.Of
	if whole == 0 {
		whole, _ = a.Seed(k)
	}
	switch {
	case d.Weight > 0 && whole > 0:
		return min(1, float64(d.Weight/whole))
	case d.Share > 0:
		return d.Share
	}
	return 1
}

// LeastRest is the part of a sowing from which what is missing is worth going out again:
// less is within what a person weighs out.
const LeastRest = 0.1 // [common]
