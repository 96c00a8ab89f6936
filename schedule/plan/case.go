package plan

import (
	"swardbook/agronomy/nutrient"
	"swardbook/schedule"
)

func (pl *planner) newCase(a *schedule.Area, book []schedule.Down, sh *schedule.Shed) *schedule.Case {
	season := a.Stand.Season()
	c := &schedule.Case{Site: pl.site, Area: a, Almanac: pl.almanac, Days: pl.days, Season: season, Growth: pl.almanac.GrowthOf(season), Law: pl.law, MostN: nutrient.LimitsOfNitrogen(season), Shed: sh, Seeded: a.Seeded}
	c.Report, _ = a.Report()
	for _, d := range book {
		if d.AreaID == a.ID {
			c.Down = append(c.Down, d)
		}
	}
	return c
}
