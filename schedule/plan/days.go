package plan

import "swardbook/schedule"

// workdays lists the days from the site's first to a last.
func (pl *planner) workdays(last schedule.Date) []schedule.Workday {
	start := pl.site.Start
	crew, open := &pl.site.Crew, pl.almanac.Open
	days := make([]schedule.Workday, schedule.Span{From: start, To: last}.Days())
	for n := range days {
		days[n].Frozen = true
	}
	if len(crew.Days)+len(crew.Away) > 0 {
		words := crew.DayWords()
		for n, d := 0, start; n < len(days); n, d = n+1, d.Next() {
			if !crew.Works(d) {
				days[n].Shut = words
			} else if s, away := crew.AwayOn(d); away {
				days[n].Shut = "the crew is away from " + s.From.Short() + " to " + s.To.Short()
			}
		}
	}
	for _, o := range open {
		from, to := o.From.DaysFrom(start), o.To.DaysFrom(start)
		for n := max(0, from); n <= min(len(days)-1, to); n++ {
			days[n].Frozen = false
		}
	}
	return days
}
