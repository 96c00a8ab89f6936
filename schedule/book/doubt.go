package book

import (
	"fmt"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// doubts tells what in a line is probably a slip: a wrong unit, decimal point, year, job or
// bag.
func doubts(p *schedule.Program, d schedule.Down, planned *schedule.Entry, today schedule.Date) (out []schedule.Problem) {
	add := func(key, hint, format string, args ...any) {
		out = append(out, schedule.Problem{Key: key, Message: fmt.Sprintf(format, args...), Hint: hint})
	}
	c := p.CaseOf(d.AreaID)
	m := c.Measure()
	if !today.IsZero() && d.Date.After(today) {
		add("date", "is the year right?", "%s is still to come", d.Date.Short())
	}
	early := d.Kind.Sows() || d.Kind.Samples() || d.Kind == schedule.Lime || d.Kind == schedule.Starter
	if !early && !c.Seeded.IsZero() && d.Date.Before(c.Seeded) {
		add("date", "is the year right?", "%s is before %s was sown, %s", d.Date.Short(), c.Area.Name, c.Seeded.Short())
	}
	asked := planned != nil && !d.Date.Before(planned.Earliest) // the plan itself asks for it by then
	if begins := c.SeasonBegins(d.Season); !asked && d.Date.Before(begins) {
		add("date", "is the year right, and the job the one that is meant?", "%s is before the season of the job begins, %s", d.Date.Short(), begins.Short())
	}
	if _, most := c.Area.Seed(d.Kind); d.Kind.Sows() && d.Weight > schedule.OverPlanned*most {
		add("amount", "are the unit and the decimal point right?", "%s of seed on %s is over twice what it takes, %s", m.Weight(d.Weight), c.Area.Name, m.Weight(most))
	}
	if d.Dose.Rate == 0 {
		return out
	}
	if its := planned != nil && planned.Dose.Material.ID == d.Dose.Material.ID; !its && !d.Kind.ServedBy(d.Dose.Material) {
		add("material", "is it the bag that is meant, and the job?", "%s does not serve for %s", word.MaterialName(d.Dose.Material), d.Kind.Noun())
	}
	if planned != nil && planned.Rate > 0 {
		if brought, was := c.Brings(d.Kind, d.Dose), c.Brings(d.Kind, planned.Dose); brought > schedule.OverPlanned*was+schedule.Dust {
			add("amount", "are the unit and the decimal point right?", "%s on %s is %s times what is planned, %s",
				m.Amount(d.Dose, c.Area.Size), c.Area.Name, word.Figures(float64(brought/was), 2), m.DoseWords(planned.Dose, c.Area.Size))
			return out
		}
	}
	if most := mostLime(c, d, planned); d.Kind == schedule.Lime && d.Dose.Rate > most*scale {
		add("amount", "are the unit and the decimal point right?", "%s is more than goes down at once, %s", m.Rate(d.Dose.Rate), m.Rate(most))
	}
	if most := c.MostN.Single; d.Dose.N > most*scale {
		add("amount", "are the unit and the decimal point right?", "%s is more than goes down at once, %s", m.NutrientRate(d.Dose.N, "N"), m.NutrientRate(most, "N"))
	}
	return out
}

// scale is how many times the limit a recorded amount may be before it is doubted: no
// spreader and no scale at home is more exact.
const scale = 1.05 // [common]

// mostLime is the most of a lime that goes down at once, by the rule of lime for turf, cored
// turf or a seedbed; or what was planned, if that is more.
func mostLime(c *schedule.Case, d schedule.Down, planned *schedule.Entry) agronomy.PerThousand {
	stone := d.Dose.Material
	turf := c.Seeded.IsZero() || d.Date.After(c.Seeded)
	most, _ := lime.Cap(stone, turf)
	if turf && c.Area.Cored && !stone.Hydrated {
		most = lime.CapCored
	}
	if planned != nil && planned.Dose.Material.ID == stone.ID {
		most = max(most, planned.Rate)
	}
	return most
}
