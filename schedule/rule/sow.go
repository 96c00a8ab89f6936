package rule

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// Sow dates a sowing that is still to come. The day that the site file asks for
// stands wherever seed can come up in the open ground; else the sowing moves to
// the next of the windows that follow from the warmth of the soil and the odds of
// frost before the seedlings are old enough.
func Sow(c *Treatment) schedule.Proposal {
	var p schedule.Proposal
	if !c.Future() {
		return p
	}
	j := schedule.Job{Kind: schedule.Sow, N: 1, Area: c.Area}
	days := c.sowingDays(schedule.Sow, c.Seeded)
	j.Why = days.why
	c.Finish(&p, j, days.openings, days.ideal)
	days.mark(&p)
	return p
}

// sowingDays are the openings in which seed may go down about a wished day.
type sowingDays struct {
	openings []schedule.Opening
	ideal    func(schedule.Opening) schedule.Date
	not      string // why seed cannot go down on the wished day; "": it can
	why      []schedule.Reason
}

// sowingDays gives the windows of seed from a wished day on, and days around the day
// itself where seed can come up then.
func (c *Treatment) sowingDays(k schedule.Kind, wish schedule.Date) (out sowingDays) {
	seeding := c.Almanac.SeedWindow(c.Season)
	windows := []climate.SowWindow{seeding.Main, seeding.Spring}
	if k == schedule.Sow && c.Area.Dormant {
		windows = []climate.SowWindow{seeding.Dormant}
	}
	var os []schedule.Opening
	best := map[schedule.Date]schedule.Date{} // of each opening
	for _, w := range windows {
		if !w.OK {
			out.why = append(out.why, schedule.Reason{Text: w.Words, Source: "common"})
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
		out.why = append(out.why, schedule.Reason{Text: w.Words + odds, Source: "common"})
	}
	schedule.SortOpenings(os)
	asked, not := c.askedFor(k, wish, os)
	if asked.Days() > 0 && !slices.ContainsFunc(os, func(o schedule.Opening) bool { return o.Has(wish) }) {
		os = append(os, asked)
		schedule.SortOpenings(os)
	}
	if k == schedule.Overseed { // an overseeding long before the wished day is not the one that was asked for
		os = schedule.From(os, wish.AddDays(-nearOverseed), "two months before the day asked for")
	}
	if later := notBefore(os, wish); slices.ContainsFunc(later, func(o schedule.Opening) bool { return !o.From.After(c.Through) }) {
		os = later
	}
	out.openings, out.not = os, not
	out.ideal = func(o schedule.Opening) schedule.Date {
		if o.Has(wish) {
			return wish
		}
		if b, ok := best[o.From]; ok {
			return b
		}
		return o.From
	}
	return out
}

// mark notes in the windows of a sowing why the sowing is not on the wished day.
func (d sowingDays) mark(p *schedule.Proposal) {
	if len(p.Jobs) > 0 {
		ws := p.Jobs[0].Windows
		if d.not != "" {
			ws[0].Carried = d.not
		}
		for i := range ws {
			if ws[i].Closes == weekAfter {
				ws[i].Last = schedule.Date{} // no day of the year closes it
			}
		}
	}
}

const (
	canComeUp = 0.5 // [common] as likely as not
	nearAsked = 7   // [common] days on which a crew that has no time on the day may still sow
	weekAfter = "a week after the day asked for"
)

// askedFor gives the days around the wished one, where seed can come up then, or
// why it cannot. Dormant seed is to lie in the cold: its window alone decides. Seed
// over standing turf can wait for a better time, so it must make a stand as well.
func (c *Treatment) askedFor(k schedule.Kind, wish schedule.Date, os []schedule.Opening) (schedule.Opening, string) {
	if slices.ContainsFunc(os, func(o schedule.Opening) bool { return o.Has(wish) }) {
		return schedule.Opening{}, ""
	}
	no := "not on " + wish.Short() + " as asked: "
	up, stands := c.Almanac.SowingOdds(wish.DayOfYear(), c.Season)
	switch {
	case k == schedule.Sow && c.Area.Dormant:
		return schedule.Opening{}, no + "the soil is too warm for seed that is to lie dormant, or the ground may be frozen"
	case c.frozenOn(wish):
		return schedule.Opening{}, no + "the ground may be frozen"
	case up < canComeUp:
		return schedule.Opening{}, no + "sown then, grass comes up before winter in " + inHundred(up) + " years of 100"
	case k == schedule.Overseed && stands < canComeUp:
		return schedule.Opening{}, no + "seed sown over then makes a stand before winter in " + inHundred(stands) + " years of 100"
	}
	return schedule.Opening{Span: schedule.Span{From: wish.AddDays(-nearAsked), To: wish.AddDays(nearAsked)},
		Opens: "a week before the day asked for", Closes: weekAfter}, ""
}

func (c *Treatment) frozenOn(d schedule.Date) bool {
	n := d.DaysFrom(c.Start)
	return n >= 0 && n < len(c.Days) && c.Days[n].Frozen
}

// notBefore drops the openings that close before d.
func notBefore(os []schedule.Opening, d schedule.Date) []schedule.Opening {
	return slices.DeleteFunc(slices.Clone(os), func(o schedule.Opening) bool { return o.To.Before(d) })
}

// SowingWords say of a sowing that has its day what the odds are, and whether it
// is the day that the site file asks for. Dormant seed has none.
func SowingWords(c *schedule.Case, j *schedule.Job) string {
	if why := j.Window().Carried; why != "" {
		return word.Capital(why) + "; it moves to " + j.On.Short() + "."
	}
	if c.Area.Dormant && j.Kind == schedule.Sow {
		return ""
	}
	up, stands := c.Almanac.SowingOdds(j.On.DayOfYear(), c.Season)
	words := fmt.Sprintf("Sown on %s, grass comes up before winter in %s years of 100 and makes a stand in %s", j.On.Short(), inHundred(up), inHundred(stands))
	if up == 1 && stands == 1 {
		words = ""
	}
	if SownAsAsked(j) {
		usual := usualTimes(c)
		if words == "" {
			return "The day is outside the usual time here, " + usual + "; it is left as asked."
		}
		return words + "; the usual time here is " + usual + "."
	}
	if words != "" {
		words += "."
	}
	return words
}

// SownAsAsked tells whether a sowing has a day outside the usual time, because the site
// file asks for it.
func SownAsAsked(j *schedule.Job) bool { return j.Window().Closes == weekAfter }

// inHundred writes a chance as years of 100. Only certainty is written as 100.
func inHundred(chance float64) string {
	n := math.Round(chance * 100)
	if n >= 100 && chance < 1 {
		return "99"
	}
	return strconv.Itoa(int(n))
}

// usualTimes names the windows of the kind of grass, as days of the year.
func usualTimes(c *schedule.Case) string {
	var out []string
	seeding := c.Almanac.SeedWindow(c.Season)
	for _, w := range []climate.SowWindow{seeding.Main, seeding.Spring} {
		if w.OK && !w.AllYear {
			out = append(out, w.Open.Day().String()+" to "+w.Close.Day().String())
		}
	}
	if len(out) == 0 {
		return "not known"
	}
	return strings.Join(out, " or ")
}
