package rule

import (
	"fmt"

	"swardbook/climate"
	"swardbook/schedule"
)

// sowJobs dates a sowing that is still to come, by the warmth of the soil and
// the odds of frost before the seedlings are old enough. A wish outside every
// window moves to the next one.
func Sow(c *Treatment) schedule.Proposal {
	var p schedule.Proposal
	if !c.Future() {
		return p
	}
	j := schedule.Job{Kind: schedule.Sow, N: 1, Area: c.Area}
	seeding := c.Almanac.SeedWindow(c.Season)
	windows := []climate.SowWindow{seeding.Main, seeding.Spring}
	if c.Area.Dormant {
		windows = []climate.SowWindow{seeding.Dormant}
	}
	var os []schedule.Opening
	best := map[schedule.Date]schedule.Date{} // of each opening
	for _, w := range windows {
		if !w.OK {
			j.Why = append(j.Why, schedule.Reason{Text: w.Words, Source: "germ-soil-temp"})
			continue
		}
		if w.AllYear {
			os = append(os, schedule.Opening{Span: schedule.Span{From: c.Start, To: c.Through.AddDays(schedule.Endless)}, Opens: "any time of the year", Closes: "any time of the year"})
			continue
		}
		for _, y := range c.Almanac.Years() {
			o := schedule.Opening{Span: schedule.Span{From: c.Almanac.On(w.Open, y), To: c.Almanac.On(w.Close, y)}, Opens: w.Open.Words, Closes: w.Close.Words}
			if o.Days() <= 0 {
				continue
			}
			os = append(os, o)
			best[o.From] = c.Almanac.On(w.Best, y)
		}
		odds := ""
		if w.FreezeOdds > 0 {
			odds = fmt.Sprintf("; sown on the last day, %.0f in 100 years bring a freeze within six weeks", w.FreezeOdds*100)
		}
		j.Why = append(j.Why, schedule.Reason{Text: w.Words + odds, Source: "germ-soil-temp, common"})
	}
	schedule.SortOpenings(os)
	wish := c.Seeded
	c.Finish(&p, j, os, func(o schedule.Opening) schedule.Date {
		if o.Has(wish) {
			return wish
		}
		if b, ok := best[o.From]; ok {
			return b
		}
		return o.From
	})
	return p
}
