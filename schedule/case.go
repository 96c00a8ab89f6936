package schedule

import (
	"slices"
	"sort"

	"swardbook/agronomy"
	"swardbook/agronomy/nutrient"
	"swardbook/climate"
	"swardbook/schedule/law"
	"swardbook/schedule/word"
)

// Case is all that the rules read about one area in one season, as it was known
// on one day: its soil report, what is down, the days that are left.
type Case struct {
	*Site
	Area       *Area  // with the soil report in force
	Year       int    // the season, named by the year it begins
	Begins     Date   // first day of the season, or of the program if that is later
	Start      Date   // first day on which anything new may be placed
	Opens      string // what that day is, in words
	Through    Date   // last day of the season
	Answer     Date   // when the answer to a sample already taken comes; unset: none is awaited
	Almanac    *Almanac
	Days       []Workday
	Season     climate.Season
	Growth     *Growth
	Law        *SiteLaw
	MostN      nutrient.NitrogenLimits
	Asked      law.Question    // the area as the law sees it, on no day in particular
	Report     agronomy.Report // zero without a soil report
	NeedP      nutrient.Need
	NoP        error // why there is no NeedP
	Seedlings  nutrient.SeedlingRules
	Down       []Down // what the record book says of this area, by date
	Shed       *Shed
	Seeded     Date        // when the stand was or will be sown; unset: established
	Oversown   []Date      // when the stand was or will be sown over, not long before the season, by date
	OverseedOn Date        // the day that the crew has for the overseeding, where it has not the best; unset: not known yet
	opened     []Opening   // what Open gives, worked out once
	NoStarter  LeftOut     // why the starter is left out, where it finds no day
	NoFeeding  map[int]int // how many doses of a feeding's season, by its number, found no day beside the other jobs
	NoLate     string      // why the late dose found no day beside the other jobs; "" if it was not planned in vain
	LimeLate   bool        // no lime finds a day before the sowing, so it is for the turf
	NoStand    bool        // the sowing found no day, so there is nothing to feed

	Needs         []Need
	Yearly        []YearlyN
	Notes         []string // what was assumed
	InShed        []string // what the lime on hand will do
	StarterCounts bool     // the feedings were planned with a starter beside them
}

// Future tells whether the stand is still to be sown.
func (c *Case) Future() bool { return !c.Seeded.IsZero() && !c.Seeded.Before(c.Start) }

// Sprouts gives the day from which the days to emergence count: that of sowing or,
// where seed lies through the cold as after a dormant sowing, the day on which growth
// begins.
func (c *Case) Sprouts() Date {
	if !c.Lies() {
		return c.Seeded
	}
	return c.green(c.Seeded)
}

// Lies tells whether seed was or will be sown into cold and lies there until spring: for
// more than a month, as seed sown in a cold April comes up soon enough.
func (c *Case) Lies() bool {
	return c.green(c.Seeded).DaysFrom(c.Seeded) > 30 // [common]
}

// green gives a day itself or, where winter keeps growth shut on it, the day on which
// growth begins.
func (c *Case) green(d Date) Date {
	if d.IsZero() || c.Growth.Begins.Never || c.Growth.on(d) > nutrient.GrowthFloor {
		return d
	}
	if begins := c.Almanac.After(c.Growth.Begins, d); begins.DaysFrom(d) < 200 { // [common] a winter; not the heat of summer
		return begins
	}
	return d
}

// Emerged gives the day by which most of the seedlings are up; unset for an
// established stand.
func (c *Case) Emerged() Date {
	if c.Seeded.IsZero() {
		return Date{}
	}
	days, _, _ := c.Area.Stand.MostUp()
	return c.Sprouts().AddDays(days)
}

// OverGreen gives the day on which the seed of an overseeding finds the grass growing: its
// own, or that on which growth begins. Its starter and its days to emergence count from
// there.
func (c *Case) OverGreen(over Date) Date { return c.green(over) }

// OverUp gives the day by which most of the seed of an overseeding is up.
func (c *Case) OverUp(over Date) Date {
	days, _, _ := c.Area.Stand.MostUp()
	return c.green(over).AddDays(days)
}

// WithSeedDays is how long after the seed of an overseeding its starter still goes with it.
const WithSeedDays = 14 // [common]

// OverFed gives the last day on which the starter of an overseeding still goes with the
// seed.
func (c *Case) OverFed(over Date) Date { return c.green(over).AddDays(WithSeedDays) }

// Repaired tells whether a job of day d belongs to an overseeding.
func (c *Case) Repaired(d Date) bool {
	return slices.ContainsFunc(c.Oversown, func(over Date) bool { return !d.Before(over) && !d.After(c.OverFed(over)) })
}

// Young tells whether the stand is in its first year on day d.
func (c *Case) Young(d Date) bool {
	return !c.Seeded.IsZero() && !d.Before(c.Seeded) && d.Before(c.Seeded.AddMonths(12))
}

// Open gives the openings in which anything may be spread on the stand: open
// ground, and for a young stand not before it stands a first mowing.
func (c *Case) Open() []Opening {
	if c.opened == nil {
		c.opened = c.openings()
	}
	return c.opened
}

// openings works out what [Case.Open] gives.
func (c *Case) openings() []Opening {
	os := c.Almanac.Open
	if up := c.Emerged(); !up.IsZero() {
		gap, _ := nutrient.Spacing(nutrient.SeedUp, nutrient.FirstMow)
		first := up.AddDays(gap.Days)
		if first.After(c.Start) {
			os = From(os, first, "the seedlings stand a first mowing")
		}
	}
	gap, _ := nutrient.Spacing(nutrient.SeedUp, nutrient.FirstMow)
	for _, over := range c.Oversown {
		os = append(Until(os, over.AddDays(-1), "the overseeding"),
			From(os, c.OverUp(over).AddDays(gap.Days), "the seedlings stand a first mowing")...)
	}
	return os
}

// LastUseful cuts openings at the last day before winter on which a kind of work is
// still worth doing, with the reason.
func (c *Case) LastUseful(os []Opening, k nutrient.LastKind) ([]Opening, []Reason) {
	u := c.Almanac.lastDays(k, c.Season)
	if len(u.cuts) == 0 {
		return os, nil
	}
	return Meet(os, u.cuts), []Reason{u.why}
}

// lastRule is a rule for the last useful day, laid on dates: in each year the work may be
// done from the coldest day to the last useful one, or to the end of the year if nothing
// ends it before.
type lastRule struct {
	cuts []Opening
	why  Reason
}

// lastDays gives the rule for a kind of work, laid out once.
func (a *Almanac) lastDays(k nutrient.LastKind, s climate.Season) lastRule {
	key := lastKey{k, s}
	r, known := a.lasts[key]
	if known {
		return r
	}
	if u, ok := nutrient.LastUsefulFor(k, s); ok {
		r = lastRule{a.layLastDays(u), u.Why}
	}
	a.lasts[key] = r
	return r
}

// layLastDays lays a rule on the years around the program. Of its bounds the earliest
// holds.
func (a *Almanac) layLastDays(u nutrient.LastUseful) []Opening {
	type bound struct {
		event  climate.When
		before int
		words  string
	}
	var bounds []bound
	add := func(w climate.When, before int, words string) {
		if before > 0 && !w.Never {
			if before > 1 {
				words = word.Plural(before, "day") + " before " + words
			}
			bounds = append(bounds, bound{w, before, words})
		}
	}
	if u.Growth > 0 {
		w := a.GrowthOf(u.Season).Slows
		if !w.Never {
			bounds = append(bounds, bound{w, 0, "growth falls to a fifth of its best"})
		}
	}
	add(a.GrowthOf(u.Season).Ends, u.BeforeGrowthEnds, "growth ends")
	add(a.Ground.Median, u.BeforeFreeze, "the ground freezes")
	add(a.Ground.Early, u.BeforeEarlyFreeze, "the ground freezes in an early year")
	frost := u.BeforeFirstFrost
	if u.InSouth > 0 && a.southUS() {
		frost = u.InSouth
	}
	add(a.freeze, frost, "the average first freeze")
	add(a.soil50, u.BeforeSoil50, "soil at 2 in falls through 50 °F") // [common] 50 °F
	if len(bounds) == 0 {
		return nil
	}
	years := a.Years()
	out := make([]Opening, 0, len(years))
	for _, y := range years {
		o := Opening{Span{a.On(a.Coldest, y), a.On(a.Coldest, y+1).AddDays(-1)}, "the year turns", ""}
		for _, b := range bounds {
			if last := a.On(b.event, y).AddDays(-b.before); !last.After(o.To) {
				o.To, o.Closes = last, b.words
			}
		}
		if o.Days() > 0 {
			out = append(out, o)
		}
	}
	return out
}

// southUS tells the places where a warm-season seeding needs less time: the
// average first freeze comes after 10 November.
func (a *Almanac) southUS() bool {
	f := a.freeze
	return f.Never || f.D-a.Warmest.D > 110 // [common] about 10 November
}

// Number gives a counter of the free numbers of a kind in the season, one at each call:
// jobs that are down keep theirs.
func (c *Case) Number(k Kind) func() int {
	taken := map[int]bool{}
	for i := range c.Down {
		if d := &c.Down[i]; d.Season == c.Year && d.Kind == k && !d.NotDone {
			taken[d.N] = true
		}
	}
	n := 0
	return func() int {
		for n++; taken[n]; n++ {
		}
		return n
	}
}

// ThisYear gives what is down under the name of the season.
func (c *Case) ThisYear() []*Down {
	var out []*Down
	for i := range c.Down {
		if d := &c.Down[i]; d.Season == c.Year {
			out = append(out, d)
		}
	}
	return out
}

// DownIn gives what is down in a span.
func (c *Case) DownIn(s Span) []Down {
	at := func(d Date) int {
		return sort.Search(len(c.Down), func(i int) bool { return !c.Down[i].Date.Before(d) })
	}
	from := at(s.From)
	return c.Down[from:max(from, at(s.To.Next()))]
}

// DownOf gives what went down on the days of a turf year, whichever season its jobs
// belong to.
func (c *Case) DownOf(year int) []Down {
	return c.DownIn(Span{c.Almanac.YearBegins(year, c.Season), c.Almanac.YearBegins(year+1, c.Season).AddDays(-1)})
}

// SeasonOf names the season of the area to which a start or a sowing belongs.
func (c *Case) SeasonOf(d Date) int { return c.Almanac.SeasonOf(d, c.Season) }

// StaleAfter is how old a soil report may be before lime, phosphorus and
// potassium ask for a new one, in months.
const StaleAfter = 36 // [psu-report-notes, vt-fall-2008] three years

// Stale tells whether the report is too old to plan by, and says so.
func (c *Case) Stale() (string, bool) {
	if c.Area.Soil == nil || c.Area.Sampled.IsZero() || c.Area.Sampled.AddMonths(StaleAfter).After(c.Start) {
		return "", false
	}
	return "the report of " + c.Area.Sampled.Short() + " is more than three years old: a new sample comes first", true
}

// Since sums what has gone down on or after d.
func (c *Case) Since(d Date, of func(*Down) agronomy.PerThousand) agronomy.PerThousand {
	var sum agronomy.PerThousand
	for i := len(c.Down) - 1; i >= 0 && !c.Down[i].Date.Before(d); i-- {
		if r := &c.Down[i]; !r.NotDone {
			sum += of(r)
		}
	}
	return sum
}

// NotBefore gives the day after a job was last recorded as missed, the first on which it
// may be tried again; false if it never was.
func (c *Case) NotBefore(k Kind, n int) (Date, bool) {
	var last Date
	for i := range c.Down {
		if r := &c.Down[i]; r.Kind == k && r.N == n && r.Season == c.Year && r.NotDone {
			last = Later(last, r.Date)
		}
	}
	return last.AddDays(1), !last.IsZero()
}

// After gives the first day of the program that lies the given days after the
// last job of a kind on record.
func (c *Case) After(k Kind, days int) Date {
	first := c.Start
	for i := range c.Down {
		if r := &c.Down[i]; r.Kind == k && !r.NotDone {
			first = Later(first, r.Date.AddDays(days))
		}
	}
	return first
}
