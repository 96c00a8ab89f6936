package rule

import (
	"fmt"
	"math"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/nutrient"
	"swardbook/climate"
	"swardbook/schedule"
)

// Days around the warmest day in which cool-season grass is left alone, where
// no heat of its own bounds the season.
const (
	afterWarmest  = 25 // [umn-2023] the autumn window opens in early August, about 25 days on
	beforeWarmest = 45 // [unl-calc, ill-1995] spring feeding ends in May to early June
	beforeHeat    = 14 // [common]
	afterGrowth   = 14 // [common] green and mowed before it is fed
)

// growSeasons gives the feeding seasons of a turf year with their shares: for
// cool-season grass an autumn and the spring after it, for warm-season grass
// the months from warm soil to six weeks before the first freeze.
func (c *Treatment) growSeasons(y int) ([]growSeason, schedule.Reason) {
	seasons, why := c.wholeSeasons(y)
	if c.Season == climate.Warm && len(seasons) == 1 && c.wintered(seasons[0].span.Span) {
		return c.partInJune(seasons[0]), why
	}
	return seasons, why
}

// wintered tells whether a summer is the first in which a warm-season stand is fed, and the
// stand was up before the winter.
func (c *Treatment) wintered(summer schedule.Span) bool {
	return !c.Seeded.IsZero() && c.Emerged().Before(c.Almanac.On(c.Almanac.Coldest, summer.From.Year)) && c.firstSeason() == summer
}

// partInJune parts the first summer of a stand that has come through a winter: until June
// it is fed as seedlings are, from then on it has been mown and takes full doses. A quick
// dose of the first part is used up when the second begins.
func (c *Treatment) partInJune(s growSeason) []growSeason {
	june := schedule.Date{Year: s.span.From.Year, Month: 6, Day: 1}                 // [common]
	to := schedule.Later(june.AddDays(-schedule.QuickDays), s.span.From.AddDays(6)) // [common] a week at least
	from := to.AddDays(schedule.QuickDays)
	need, err := nutrient.NitrogenYear(c.nitrogenCase(false))
	if err != nil || need.Year <= 0 || !s.span.From.AddDays(14).Before(june) || !from.Before(s.span.To) {
		return []growSeason{s}
	}
	even := float64(schedule.Span{From: s.span.From, To: june}.Days()) / float64(s.span.Days())
	amount := min(need.Year*agronomy.PerThousand(even), c.Seedlings.SpringN[1])
	if whole := c.Seedlings.FirstN; amount > whole { // whole doses of seedlings
		amount = whole * agronomy.PerThousand(math.Floor(float64(amount/whole)+1e-9))
	}
	early, late := s, s
	early.name, early.span.To, early.span.Closes = "spring", to, "about a month before the first full dose"
	late.span.From, late.span.Opens = from, "the stand has come through the winter and been mown"
	early.share = s.share * float64(amount/need.Year)
	late.share = s.share - early.share
	early.why = append(slices.Clip(s.why), schedule.Reason{Text: "The stand was sown before the winter: small doses until about June, full ones once it has been mown.", Source: "common"})
	late.why = early.why
	return []growSeason{early, late}
}

// tenderSeason gives the season after that of the sowing in which the stand is still fed as
// seedlings are: its first, or of a warm-season stand that has come through a winter the part
// of it before June.
func (c *Treatment) tenderSeason() schedule.Span {
	first := c.firstSeason()
	if first == (schedule.Span{}) || c.Season == climate.Cool || !c.wintered(first) {
		return first
	}
	seasons, _ := c.growSeasons(c.Almanac.TurfYear(first.From, c.Season))
	if len(seasons) < 2 {
		return schedule.Span{} // it begins in June or ends before it
	}
	return seasons[0].span.Span
}

// wholeSeasons gives the seasons of a turf year before the first of a young stand is parted.
func (c *Treatment) wholeSeasons(y int) ([]growSeason, schedule.Reason) {
	shares := nutrient.SharesOf(c.Season)
	if c.Season == climate.Warm {
		if o, ok := c.warmSeason(y); ok {
			return c.spareSeedlings(c.byCalendar(y, []growSeason{{name: "summer", share: 1, span: o}})), shares.Why
		}
		return nil, shares.Why
	}
	var out []growSeason
	if o, ok := c.autumn(y); ok {
		out = append(out, growSeason{name: "autumn", share: shares.Fall / (shares.Fall + shares.Spring), span: o})
	}
	if o, ok := c.spring(y + 1); ok {
		spring := growSeason{name: "spring", share: shares.Spring / (shares.Fall + shares.Spring), span: o}
		if c.upInSpring(y + 1) {
			spring.why = []schedule.Reason{{Text: "Seedlings of this spring are fed until " + o.To.Short() + ", " + o.Closes + ", and then not before the autumn: quick nitrogen burns them in the heat.", Source: "common"}}
		}
		out = append(out, spring)
	}
	return c.spareSeedlings(c.byCalendar(y+1, out)), shares.Why
}

// byCalendar gives the summer of warm-season grass, or the spring of cool-season grass, the
// days of the region's published calendar, if there is one: it is closer than the rule.
// Seedlings that come up this spring are fed when they need it, and not by the calendar.
func (c *Treatment) byCalendar(y int, seasons []growSeason) []growSeason {
	cal, ok := nutrient.CalendarFor(c.Place.State, c.floridaPart(), c.Area.Stand)
	if !ok || c.upInSpring(y) {
		return seasons
	}
	for i := range seasons {
		s := &seasons[i]
		if s.name == "autumn" {
			continue
		}
		in := schedule.Span{From: schedule.Date{Year: y, Month: cal.In.FromMonth, Day: cal.In.From}, To: schedule.Date{Year: y, Month: cal.In.ToMonth, Day: cal.In.To}}
		if s.name == "summer" { // the place's own soil and freezes hold as well
			in = schedule.Span{From: schedule.Later(in.From, s.span.From), To: schedule.Earlier(in.To, s.span.To)}
		}
		if in.Days() <= 0 {
			continue
		}
		s.span.Span, s.calendar = in, cal.Name
		s.span.Opens, s.span.Closes = "the calendar of "+cal.Name, "the calendar of "+cal.Name
		s.why = []schedule.Reason{{Text: "This season follows the calendar of " + cal.Name + ": " + cal.Says + ".", Source: cal.Source}}
	}
	return seasons
}

func (c *Treatment) autumn(y int) (schedule.Opening, bool) {
	a := c.Almanac
	top := a.On(a.Warmest, y)
	o := schedule.Opening{Span: schedule.Span{From: top.AddDays(afterWarmest), To: a.On(a.Coldest, y+1).AddDays(-1)},
		Opens: fmt.Sprintf("%d days after the warmest day", afterWarmest), Closes: "midwinter"}
	if _, to, ok := a.Heat(c.Season); ok {
		if end := top.OnDay(to).AddDays(1); end.After(o.From) && end.DaysFrom(top) < 180 {
			o.From, o.Opens = end, "normal highs fall under 85 °F"
		}
	}
	if slows := c.Growth.Slows; !slows.Never {
		if last := a.On(slows, y); last.Before(o.To) {
			o.To, o.Closes = last, "growth falls to a fifth of its best"
		}
	}
	return o, o.Days() > 0
}

func (c *Treatment) spring(y int) (schedule.Opening, bool) {
	a := c.Almanac
	top := a.On(a.Warmest, y)
	o := schedule.Opening{Span: schedule.Span{From: a.On(a.Coldest, y).AddDays(30), To: top.AddDays(-beforeWarmest)}, Opens: "a month after midwinter",
		Closes: fmt.Sprintf("%d days before the warmest day", beforeWarmest)}
	if begins := c.Growth.Begins; !begins.Never {
		o.From, o.Opens = a.On(begins, y).AddDays(afterGrowth), "two weeks after growth begins"
	} else if begins.Below {
		return o, false
	}
	if from, _, ok := a.Heat(c.Season); ok {
		if start := top.AddDays(-364).OnDay(from); top.DaysFrom(start) >= 0 && top.DaysFrom(start) < 180 {
			if end := start.AddDays(-beforeHeat); end.Before(o.To) {
				o.To, o.Closes = end, "two weeks before normal highs reach 85 °F"
			}
		}
	}
	return o, o.Days() > 0
}

// upInSpring tells whether the stand comes up in the spring of year y.
func (c *Treatment) upInSpring(y int) bool {
	up := c.Emerged()
	return !up.IsZero() && up.After(c.Almanac.On(c.Almanac.Coldest, y)) && up.Before(c.Almanac.On(c.Almanac.Warmest, y))
}

// firstFeed gives the day from which the seedlings of the stand may be fed: four weeks
// after most of them are up. Where the heat of summer comes before that, it is up to two
// weeks sooner, a week before the spring closes; if that is too soon for them as well, they
// wait for the autumn with their first feeding.
func (c *Treatment) firstFeed() schedule.Date {
	up := c.Emerged()
	first := up.AddDays(c.Seedlings.FirstDays)
	if up.IsZero() || c.Season == climate.Warm || !c.upInSpring(up.Year) {
		return first
	}
	soonest := up.AddDays(soonestFeed)
	if o, ok := c.spring(up.Year); ok && !soonest.After(o.To) {
		return schedule.Earlier(first, schedule.Later(soonest, o.To.AddDays(-7))) // [common] a week to do it in
	}
	return first
}

// soonestFeed is how many days after most of the seedlings are up they may first be fed,
// if they cannot wait longer.
const soonestFeed = 14 // [common] custom runs from two weeks to six

// warmSoil is the soil temperature at 2 in from which warm-season grass is fed.
const warmSoil climate.Fahrenheit = 65 // [uga-hall]

func (c *Treatment) warmSeason(y int) (schedule.Opening, bool) {
	a := c.Almanac
	o := schedule.Opening{Span: schedule.Span{From: a.On(a.Coldest, y).AddDays(30), To: a.On(a.Coldest, y+1).AddDays(-1)}, Opens: "a month after midwinter", Closes: "midwinter"}
	switch rises := a.SoilRises(2, warmSoil); {
	case !rises.Never:
		o.From, o.Opens = a.On(rises, y), "soil at 2 in rises through 65 °F"
	case rises.Below:
		return o, false
	}
	if slows := c.Growth.Slows; slows.Never && slows.Below { // it grows, but never enough to use what it is fed
		return o, false
	}
	if ends := c.Growth.Ends; !ends.Never {
		if end := a.On(ends, y); end.Before(o.To) {
			o.To, o.Closes = end, "growth ends"
		}
	} else if ends.Below {
		return o, false
	}
	return o, o.Days() > 0
}

// lastDay gives the day before an event comes again a year later.
func lastDay(w climate.When) climate.When {
	w.D += 364
	return w
}
