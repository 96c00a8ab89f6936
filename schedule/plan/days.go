package plan

import (
	"swardbook/schedule"
)

// workdays lists the days of the program.
func (pl *planner) workdays() []schedule.Workday {
	crew, open := &pl.site.Crew, pl.almanac.Open
	days := make([]schedule.Workday, 0, schedule.Span{From: pl.site.Start, To: pl.site.Through}.Days())
	words := crew.DayWords()
	for d := pl.site.Start; len(days) < cap(days); d = d.Next() {
		day := schedule.Workday{Date: d, Frozen: true}
		if !crew.Works(d) {
			day.Shut = words
		} else if s, away := crew.AwayOn(d); away {
			day.Shut = "the crew is away from " + s.From.Short() + " to " + s.To.Short()
		}
		days = append(days, day)
	}
	for _, o := range open {
		from, to := o.From.DaysFrom(pl.site.Start), o.To.DaysFrom(pl.site.Start)
		for n := max(0, from); n <= min(len(days)-1, to); n++ {
			days[n].Frozen = false
		}
	}
	return days
}
