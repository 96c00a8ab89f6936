package schedule

import (
	"fmt"

	"swardbook/climate"
)

// sowJobs dates a sowing that is still to come, by the warmth of the soil and
// the odds of frost before the seedlings are old enough. A wish outside every
// window moves to the next one.
func sowJobs(c *treatment) proposal {
	var p proposal
	if !c.future() {
		return p
	}
	j := Job{Kind: Sow, N: 1, Area: c.Area}
	seeding := c.almanac.SeedWindow(c.season)
	windows := []climate.SowWindow{seeding.Main, seeding.Spring}
	if c.Area.Dormant {
		windows = []climate.SowWindow{seeding.Dormant}
	}
	var os []opening
	best := map[Date]Date{} // of each opening
	for _, w := range windows {
		if !w.OK {
			j.Why = append(j.Why, Reason{Text: w.Words, Source: "germ-soil-temp"})
			continue
		}
		if w.AllYear {
			os = append(os, opening{Span{c.Start, c.Through.AddDays(endless)}, "any time of the year", "any time of the year"})
			continue
		}
		for _, y := range c.almanac.years() {
			o := opening{Span{c.almanac.on(w.Open, y), c.almanac.on(w.Close, y)}, w.Open.Words, w.Close.Words}
			if o.Days() <= 0 {
				continue
			}
			os = append(os, o)
			best[o.From] = c.almanac.on(w.Best, y)
		}
		odds := ""
		if w.FreezeOdds > 0 {
			odds = fmt.Sprintf("; sown on the last day, %.0f in 100 years bring a freeze within six weeks", w.FreezeOdds*100)
		}
		j.Why = append(j.Why, Reason{Text: w.Words + odds, Source: "germ-soil-temp, common"})
	}
	sortOpenings(os)
	wish := c.seeded
	c.finish(&p, j, os, func(o opening) Date {
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
