package rule

import (
	"fmt"
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/nutrient"
	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

// growSeason is one feeding season of a turf year.
type growSeason struct {
	name  string // "autumn", "spring", "summer"
	share float64
	span  schedule.Opening

	calendar string // name of the published calendar that it follows; "": none, it goes by the climate
	why      []schedule.Reason

	overs []schedule.Date // the overseedings whose seedlings are young in it
	usual *growSeason     // with seedlings: the season without them, which counts its places

	first, places, more int // numbers of its doses, see [nitrogenYear.number]
}

// planNitrogen plans the nitrogen of the season.
func (c *Treatment) planNitrogen(p, k *want) {
	c.feeding.first = c.tenderSeason()
	y := turfYear{year: c.Year}
	y.seasons, y.sharesWhy = c.growSeasons(c.Year)
	y.need, y.unknown = nutrient.NitrogenYear(c.nitrogenCase(false))
	if ahead := c.nitrogenAhead(y); ahead > 0 {
		came := c.Since(schedule.Later(c.Begins, c.Area.Sampled), func(d *schedule.Down) agronomy.PerThousand {
			if d.Kind != schedule.Nitrogen {
				return 0
			}
			return d.Dose.K2O
		})
		c.feeding.potash = (k.left + came) / ahead
	}
	c.turfYearNitrogen(y, 0, p, k)
}

// turfYear is what is known of a turf year before its nitrogen is planned.
type turfYear struct {
	year      int
	seasons   []growSeason
	sharesWhy schedule.Reason
	need      nutrient.NitrogenNeed // of a stand that is not in its first year
	unknown   error                 // why the need is not known
}

// nitrogenAhead gives about how much nitrogen an area gets in the feeding seasons that are
// not over when its season, or the program, begins; what is down of it counts too.
func (c *Treatment) nitrogenAhead(y turfYear) (sum agronomy.PerThousand) {
	if y.unknown != nil {
		return 0
	}
	for i := range y.seasons {
		if s := &y.seasons[i]; !s.span.To.Before(c.Begins) {
			sum += y.need.Year * agronomy.PerThousand(s.share)
		}
	}
	return sum
}

// firstSeason gives the feeding season in which the stand may first be fed: the
// one that holds the day, or the next where it falls between two, as after a
// dormant sowing.
func (c *Treatment) firstSeason() schedule.Span {
	if c.Seeded.IsZero() {
		return schedule.Span{}
	}
	day := c.firstFeed()
	year := c.Almanac.TurfYear(day, c.Season)
	for y := year; y <= year+1; y++ {
		seasons, _ := c.wholeSeasons(y)
		for _, s := range seasons {
			if !s.span.To.Before(day) {
				return s.span.Span
			}
		}
	}
	return schedule.Span{}
}

// turfYearNitrogen plans the nitrogen of one turf year. n is the number of the last dose
// before it; the result is that of its own last dose.
func (c *Treatment) turfYearNitrogen(y turfYear, n int, p, k *want) int {
	f := &c.feeding
	young := !c.Seeded.IsZero() && c.SeasonOf(c.Seeded) == y.year
	need, err := y.need, y.unknown
	if young {
		need, err = nutrient.NitrogenYear(c.nitrogenCase(true))
	}
	if err != nil {
		f.found.Leave(c.Area, schedule.Nitrogen, n+1, err.Error(), "")
		return n
	}
	year, why := need.Year, need.Why
	if n == 0 {
		for _, a := range need.Assumed {
			f.found.Assumed = append(f.found.Assumed, c.Area.Name+": "+a.Text)
		}
	}
	if young {
		rules := &c.Seedlings
		low, high := rules.FirstYear[0], rules.FirstYear[1]
		year = min(max(year, low), high)
		why = slices.Concat(why, rules.Why, []schedule.Reason{{Text: fmt.Sprintf("first year of the stand: %.2f lb N held within %g to %g lb is %.2f lb N/1000 sq ft in all", need.Year, low, high, year), Source: "common"}})
	}
	if l, ok := c.Law.AnnualNCap(c.Asked); ok && agronomy.PerThousand(l.Value) < year {
		year = agronomy.PerThousand(l.Value)
		why = append(slices.Clip(why), schedule.LawReason(l.Rule))
	}
	f.yearly = append(f.yearly, schedule.YearlyN{Year: y.year, Total: year})
	b := nitrogenYear{c: c, turfYear: y, total: year, why: why, n: n, young: young, p: p, k: k, potash: f.potash}
	b.plan()
	if starter := c.overseedStarter(y.year, c.Oversown); !young && starter > 0 {
		b.met, b.wanted = true, b.wanted+starter
		b.parts = append(b.parts, c.Measure().NutrientRate(starter, "N")+" with the starter of the overseeding")
	}
	if b.met {
		text := fmt.Sprintf("nitrogen: %s a year", c.Measure().NutrientRate(year, "N"))
		if len(b.parts) > 0 {
			text = fmt.Sprintf("nitrogen: %s (%s a year)", word.List(b.parts), c.Measure().NutrientRate(year, "N"))
		}
		f.found.Needs = append(f.found.Needs, schedule.Need{Kind: schedule.Nitrogen, Total: b.wanted, Text: text, Why: b.why})
	}
	if young && !b.met { // its feeding seasons lie outside the program: only a starter can count
		var starter agronomy.PerThousand
		for _, s := range f.starter {
			starter += s.dose.N
		}
		if starter > 0 {
			f.found.Needs = append(f.found.Needs, schedule.Need{Kind: schedule.Nitrogen, Total: starter, Text: fmt.Sprintf("nitrogen: %s with the starter", c.Measure().NutrientRate(starter, "N")), Why: b.why})
		}
	}
	return b.n
}

// nitrogenCase is what the year's nitrogen is worked out from.
func (c *Treatment) nitrogenCase(young bool) nutrient.NitrogenCase {
	nc := nutrient.NitrogenCase{Printed: c.Report.Printed.Nitrogen, Stand: c.Area.Stand, Care: c.Area.Care, State: c.Place.State, Florida: c.floridaPart(),
		ClippingsReturned: c.Area.Clippings, OrganicMatter: c.Report.OrganicMatter, New: young}
	if !c.Seeded.IsZero() {
		nc.Age = max(0, float64(c.Begins.DaysFrom(c.Seeded))/365)
	}
	return nc
}

// floridaPart tells the part of Florida, by the most exact of what is known of the place.
func (c *Treatment) floridaPart() nutrient.Florida {
	if c.Place.State != "FL" {
		return 0
	}
	lat, hardiness := c.Place.Latitude, ""
	if zip, err := climate.FindZIP(c.Place.ZIP); lat == nil && err == nil {
		lat = &zip.Latitude
	}
	if zone, err := climate.ParseZone(c.Place.Hardiness); err == nil {
		hardiness = zone.String()
	}
	return nutrient.FloridaPart(hardiness, lat)
}

// zone gives the number of the hardiness zone, 0 when it is not known.
func (c *Treatment) zone() int {
	z, err := climate.ParseZone(c.Place.Hardiness)
	if err != nil {
		return 0
	}
	return int(z)/2 + 1
}

// nitrogenYear shares a turf year's nitrogen out to its seasons.
type nitrogenYear struct {
	turfYear
	c      *Treatment
	total  agronomy.PerThousand
	why    []schedule.Reason
	n      int // number of the last dose
	young  bool
	met    bool // whether a feeding season lies inside the program
	told   bool // whether the program already says that a season has no day for its nitrogen
	p, k   *want
	potash agronomy.PerThousand // lb of K₂O that may come along with a pound of nitrogen
	wanted agronomy.PerThousand // nitrogen of the seasons inside the program
	parts  []string             // wanted, season by season, in words
}

// plan goes from season to season. left is what the year's total still has for the
// seasons to come.
func (b *nitrogenYear) plan() {
	c := b.c
	seasons := b.seasons
	if len(seasons) == 0 {
		if b.n == 0 {
			c.feeding.found.Leave(c.Area, schedule.Nitrogen, 1, fmt.Sprintf("the place is never warm enough for nitrogen to be worth it on %s grass", c.Season), "")
		}
		return
	}
	b.why = append(slices.Clip(b.why), b.sharesWhy)
	b.inOneDose(seasons)
	left := b.total
	if b.young {
		left -= c.between(schedule.Span{From: c.Seeded.AddDays(-14), To: c.Almanac.YearBegins(b.year+1, c.Season).AddDays(-1)}, nitrogenOf)
		for _, s := range c.feeding.starter {
			left -= s.dose.N
		}
		for _, s := range seasons { // added back, as season subtracts what is down in each
			left += b.youngDown(s)
		}
	} else {
		left = max(0, left-b.outside(seasons))
		if !slices.ContainsFunc(seasons, func(s growSeason) bool { return len(s.overs) > 0 }) { // where there are some, lessStarter takes the starter off the season of their seedlings
			for _, s := range c.feeding.starter {
				left = max(0, left-s.dose.N)
			}
		}
	}
	b.scheme(seasons)
	for _, s := range seasons {
		left = b.season(s, left)
	}
	if last := seasons[len(seasons)-1]; !b.met && !b.young && c.between(schedule.Span{From: seasons[0].span.From, To: last.span.To}, nitrogenOf) == 0 {
		b.leave(max(b.n, 1), fmt.Sprintf("its days this %s ended by %s: %s", last.name, last.span.To.Short(), last.span.Closes))
	}
	if b.met && b.young && !b.told && left >= schedule.LeastDose {
		next := "before the summer; the next autumn counts it"
		if last := seasons[len(seasons)-1]; c.upInSpring(b.year + 1) {
			next = fmt.Sprintf("before the summer, as seedlings are not fed after %s, %s; the next autumn counts it", last.span.To.Short(), last.span.Closes)
		}
		if c.Season == climate.Warm {
			next = "before growth ends; the next summer counts it"
		}
		b.leave(b.n+1, fmt.Sprintf("%s of the first year does not fit %s", c.Measure().NutrientRate(left, "N"), next))
	}
}

// aPound is the nitrogen of a year that cool-season grass gets in one dose.
const aPound agronomy.PerThousand = 1 // [ill-1995, ksu-eckert] "one pound: early September"; "low: September"

// inOneDose gives the whole of a small year to the autumn, as published calendars do, if
// one dose holds it. Where the autumn is over, the spring still has its share of what is
// not down; a young stand is fed by its own rules.
func (b *nitrogenYear) inOneDose(seasons []growSeason) {
	c := b.c
	if b.young || b.total > aPound || len(seasons) != 2 || seasons[0].name != "autumn" || seasons[0].span.To.Before(c.Start) || c.upInSpring(b.year+1) {
		return
	}
	autumn := seasonPlan{growSeason: seasons[0], openings: c.Open(), amount: b.total,
		inside: schedule.Span{From: schedule.Later(seasons[0].span.From, c.Start), To: schedule.Earlier(seasons[0].span.To, c.Through)}}
	caps, _ := b.caps(&autumn)
	m, _, ok := b.carrier(&autumn, b.total, caps)
	if !ok || doseCap(m, caps) < b.total-schedule.LeastDose {
		return
	}
	seasons[0].share, seasons[1].share = seasons[0].share+seasons[1].share, 0
	seasons[0].why = append(slices.Clip(seasons[0].why), schedule.Reason{Text: fmt.Sprintf("Where grass gets no more than %g lb N in a year, all of it goes down in autumn: the spring's part alone is not worth a walk.", float64(aPound)), Source: "ill-1995, ksu-eckert"})
}

// outside sums what went down in the turf year between its feeding seasons,
// for example in the heat of summer: it counts against the year all the same.
func (b *nitrogenYear) outside(seasons []growSeason) agronomy.PerThousand {
	var sum agronomy.PerThousand
	for _, d := range b.c.DownOf(b.year) {
		inSeason := func(s growSeason) bool { return b.c.counts(s).Has(d.Date) }
		if !d.NotDone && d.Kind != schedule.LateNitrogen && !slices.ContainsFunc(seasons, inSeason) {
			sum += d.Dose.N
		}
	}
	return sum
}

func nitrogenOf(d *schedule.Down) agronomy.PerThousand { return d.Dose.N }

// season plans one season's doses and gives what the year has left after it.
func (b *nitrogenYear) season(s growSeason, left agronomy.PerThousand) agronomy.PerThousand {
	c := b.c
	plan := seasonPlan{growSeason: s, openings: c.Open(), amount: b.total * agronomy.PerThousand(s.share), why: slices.Clip(b.why),
		inside: schedule.Span{From: schedule.Later(s.span.From, c.Start), To: schedule.Earlier(s.span.To, c.Through)}}
	plan.why = append(plan.why, s.why...)
	if len(s.overs) > 0 {
		plan.openings = c.afterOverseeding(s.overs)
	}
	if b.young {
		b.youngSeason(&plan, left)
	} else {
		if s.share < 1 {
			plan.why = append(plan.why, schedule.Reason{Text: s.name + " share: " + word.Hundredths(b.total) + " × " + word.Hundredths(s.share) + " = " + word.Hundredths(plan.amount) + " lb N/1000 sq ft"})
		}
		left -= b.lessStarter(&plan)
		b.lessDown(&plan, left)
	}
	if plan.inside.Days() <= 0 {
		b.skip(plan)
		return left - plan.down
	}
	b.hold(&plan)
	left -= plan.down
	wanted := plan.down
	for _, d := range b.planDoses(&plan) {
		left -= d.dose.N
		if b.young {
			wanted += d.dose.N
		}
	}
	if b.young {
		b.wanted = b.total
		wanted += c.starterN(plan.inside)
	} else {
		wanted += plan.due
		b.wanted += wanted
	}
	if b.met = true; wanted < schedule.LeastDose {
		return left
	}
	b.parts = append(b.parts, fmt.Sprintf("%s in %s %d", c.Measure().NutrientRate(wanted, "N"), s.name, s.span.From.Year))
	return left
}

// lessStarter takes what the starter of an overseeding brings off the amount of the
// season in which its seedlings stand, and gives how much that is.
func (b *nitrogenYear) lessStarter(s *seasonPlan) agronomy.PerThousand {
	c := b.c
	if len(s.overs) == 0 {
		return 0
	}
	starter := c.overseedStarter(b.year, s.overs)
	if starter > 0 {
		left := max(0, s.amount-starter)
		s.why = append(s.why, schedule.Reason{Text: "the starter brings some of it: " + word.Hundredths(s.amount) + " − " + word.Hundredths(starter) + " = " + word.Hundredths(left) + " lb N/1000 sq ft"})
		s.amount = left
	}
	return starter
}

// lessDown notes what is on record in a season, and cuts its amount to what the seasons
// before it have left of the year.
func (b *nitrogenYear) lessDown(s *seasonPlan, left agronomy.PerThousand) {
	s.down = b.c.between(b.c.counts(s.growSeason), func(d *schedule.Down) agronomy.PerThousand {
		if d.Kind == schedule.LateNitrogen || len(s.overs) > 0 && d.Kind == schedule.Starter {
			return 0
		}
		return d.Dose.N
	})
	if s.name == "autumn" { // the late dose is part of the autumn's amount, though it goes down after the autumn's days
		s.lateDown = b.c.lateDown(b.year)
		s.down += s.lateDown
	}
	if s.down > 0 {
		s.why = append(s.why, schedule.Reason{Text: fmt.Sprintf("already down this %s: %.2f − %.2f = %.2f lb N/1000 sq ft left", s.name, float64(s.amount), float64(s.down), float64(max(0, s.amount-s.down)))})
	}
	if s.down > s.amount {
		s.why = append(s.why, schedule.Reason{Text: fmt.Sprintf("%.2f lb N more than planned went down this %s; what follows is cut by it", float64(s.down-s.amount), s.name)})
	}
	if s.amount > left {
		s.amount = max(0, left)
		s.why = append(s.why, schedule.Reason{Text: fmt.Sprintf("only %.2f lb N/1000 sq ft of the year is left", float64(s.amount))})
	}
}

// youngDown sums the feedings on record that a season of the first year counts
// among its own doses: all but the starter.
func (b *nitrogenYear) youngDown(s growSeason) agronomy.PerThousand {
	c := b.c
	return c.between(schedule.Span{From: schedule.Later(s.span.From, c.Seeded.AddDays(-14)), To: s.span.To}, func(d *schedule.Down) agronomy.PerThousand {
		if d.Kind == schedule.Starter {
			return 0
		}
		return d.Dose.N
	})
}

// youngSeason limits a season of the first year to the nitrogen that seedlings bear.
func (b *nitrogenYear) youngSeason(s *seasonPlan, left agronomy.PerThousand) {
	c := b.c
	rules := &c.Seedlings
	s.openings = c.firstFeeds()
	s.amount, s.down = max(0, left), b.youngDown(s.growSeason)
	if s.amount < b.total {
		s.why = append(s.why, schedule.Reason{Text: "down or planned before it, the starter with them: " + word.Hundredths(b.total) + " − " + word.Hundredths(b.total-s.amount) + " = " + word.Hundredths(s.amount) + " lb N/1000 sq ft left of the first year"})
	}
	first := c.firstFeed()
	if s.span.To.Before(first) {
		s.amount = 0
		return
	}
	if s.name == "spring" && s.span.From.After(first) {
		s.amount = min(s.amount, rules.SpringN[1])
		s.why = append(s.why, schedule.Reason{Text: fmt.Sprintf("the spring after sowing: up to %.1f lb N/1000 sq ft, once mowed %d times", float64(rules.SpringN[1]), rules.SpringMowings), Source: "common"})
	}
}

// between sums what has gone down in a span.
func (c *Treatment) between(s schedule.Span, of func(*schedule.Down) agronomy.PerThousand) agronomy.PerThousand {
	var sum agronomy.PerThousand
	down := c.DownIn(s)
	for i := range down {
		if r := &down[i]; !r.NotDone {
			sum += of(r)
		}
	}
	return sum
}
