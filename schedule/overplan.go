package schedule

import (
	"fmt"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule/word"
)

// OverPlanned is how many times what was planned a job on record may bring before
// it looks like a slip of the unit or the point.
const OverPlanned = 2 // [common]

// OverPlan doubts the lines of the record book that brought over twice what a
// program of the same site without a book plans for the job, or for the largest
// of its kind in the area where it plans no such job. A line for which it plans
// nothing at all is not judged.
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

// likest gives the entry for a job on record: its own, else the largest of its
// kind in its area; nil without one.
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
	switch k {
	case Lime:
		return c.EffectiveLime(c.Area, d)
	case Gypsum, Iron:
		return d.Rate
	case Sulfur:
		return SulfurOf(Down{Kind: k, Dose: d})
	case Phosphorus:
		return d.P2O5
	case Potassium:
		return d.K2O
	case Magnesium:
		return d.Mg
	}
	return d.N
}
