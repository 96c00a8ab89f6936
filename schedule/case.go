package schedule

import (
	"slices"

	"swardbook/agronomy"
	"swardbook/agronomy/nutrient"
	"swardbook/climate"
	"swardbook/schedule/law"
)

// Case is all that the rules read about one area.
type Case struct {
	*Site
	Area      *Area
	almanac   *almanac
	days      []workday
	season    climate.Season
	growth    *growth
	law       *siteLaw
	mostN     nutrient.NitrogenLimits
	asked     law.Question    // the area as the law sees it, on no day in particular
	report    agronomy.Report // zero without a soil report
	needP     nutrient.Need
	noP       error // why there is no needP
	seedlings nutrient.SeedlingRules
	down      []down // what the record book says of this area, by date
	shed      *shed
	seeded    Date      // when the stand was or will be sown; unset: established
	opened    []opening // see open
	noStarter LeftOut   // why the starter is left out, where it finds no day
	noStand   bool      // the sowing found no day, so there is nothing to feed

	needs         []Need
	yearly        []yearlyN
	starterCounts bool // the feedings count on a starter
}

func (pl *planner) newCase(a *Area, book []down, sh *shed) *Case {
	season := a.Stand.Season()
	c := &Case{Site: pl.site, Area: a, almanac: pl.almanac, days: pl.days, season: season, growth: pl.almanac.growth(season), law: pl.law, mostN: nutrient.LimitsOfNitrogen(season), shed: sh, seeded: a.Seeded}
	c.report, _ = a.Report()
	for _, d := range book {
		if d.area == a.ID {
			c.down = append(c.down, d)
		}
	}
	return c
}

// future tells whether the stand is still to be sown.
func (c *Case) future() bool { return !c.seeded.IsZero() && !c.seeded.Before(c.Start) }

// emerged gives the day by which the seedlings of all grasses are up; unset
// for an established stand.
func (c *Case) emerged() Date {
	if c.seeded.IsZero() {
		return Date{}
	}
	days := 0
	for _, s := range c.Area.Stand {
		days = max(days, s.Grass.EmergeDays[1])
	}
	return c.seeded.AddDays(days)
}

// young tells whether the stand is in its first year on day d.
func (c *Case) young(d Date) bool {
	return !c.seeded.IsZero() && !d.Before(c.seeded) && d.Before(c.seeded.AddMonths(12))
}

// open gives the openings in which anything may be spread on the stand: open
// ground, and for a young stand not before it stands a first mowing.
func (c *Case) open() []opening {
	if c.opened == nil {
		c.opened = c.openings()
	}
	return c.opened
}

func (c *Case) openings() []opening {
	os := c.almanac.open
	if up := c.emerged(); !up.IsZero() {
		gap, _ := nutrient.Spacing(nutrient.SeedUp, nutrient.FirstMow)
		first := up.AddDays(gap.Days)
		if first.After(c.Start) {
			os = from(os, first, "the seedlings stand a first mowing")
		}
	}
	return os
}

// lastUseful cuts openings at the last day on which a kind of work is worth
// doing before winter.
func (c *Case) lastUseful(os []opening, k nutrient.LastKind) ([]opening, []Reason) {
	u := c.almanac.lastDays(k, c.season)
	if len(u.cuts) == 0 {
		return os, nil
	}
	return meet(os, u.cuts), []Reason{u.why}
}

// lastRule is a last-useful rule laid on dates: each cut runs from the time the
// limiting season is over to the next last useful day.
type lastRule struct {
	cuts []opening
	why  Reason
}

// lastDays gives the rule for a kind of work, laid out once.
func (a *almanac) lastDays(k nutrient.LastKind, s climate.Season) lastRule {
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

func (a *almanac) layLastDays(u nutrient.LastUseful) []opening {
	type bound struct {
		event  climate.When
		before int
		words  string
	}
	var bounds []bound
	add := func(w climate.When, before int, words string) {
		if before > 0 && !w.Never {
			if before > 1 {
				words = Plural(before, "day") + " before " + words
			}
			bounds = append(bounds, bound{w, before, words})
		}
	}
	if u.Growth > 0 {
		w := a.growth(u.Season).slows
		if !w.Never {
			bounds = append(bounds, bound{w, 0, "growth falls to a fifth of its best"})
		}
	}
	add(a.growth(u.Season).ends, u.BeforeGrowthEnds, "growth ends")
	add(a.ground.Median, u.BeforeFreeze, "the ground freezes")
	add(a.ground.Early, u.BeforeEarlyFreeze, "the ground freezes in an early year")
	frost := u.BeforeFirstFrost
	if u.InSouth > 0 && a.southUS() {
		frost = u.InSouth
	}
	add(a.freeze, frost, "the average first freeze")
	add(a.soil50, u.BeforeSoil50, "soil at 2 in falls through 50 °F") // [common] 50 °F
	if len(bounds) == 0 {
		return nil
	}
	years := a.years()
	out := make([]opening, 0, len(years))
	for _, y := range years {
		o := opening{Span{a.on(a.coldest, y), a.on(a.coldest, y+1).AddDays(-1)}, "the year turns", ""}
		for _, b := range bounds {
			if last := a.on(b.event, y).AddDays(-b.before); !last.After(o.To) {
				o.To, o.closes = last, b.words
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
func (a *almanac) southUS() bool {
	f := a.freeze
	return f.Never || f.D-a.warmest.D > 110 // [common] about 10 November
}

// number gives the next free number of a kind: recorded jobs of this turf year
// keep theirs.
func (c *Case) number(k Kind) func() int {
	taken := map[int]bool{}
	for _, d := range c.thisYear() {
		if d.kind == k && !d.missed {
			taken[d.n] = true
		}
	}
	n := 0
	return func() int {
		for n++; taken[n]; n++ {
		}
		return n
	}
}

// thisYear gives the records of the turf year in which the program starts, and
// after.
func (c *Case) thisYear() []down {
	begins := c.almanac.yearBegins(c.almanac.turfYear(c.Start, c.season), c.season)
	i := slices.IndexFunc(c.down, func(d down) bool { return !d.Date.Before(begins) })
	if i < 0 {
		return nil
	}
	return c.down[i:]
}

// since sums what has gone down on or after d.
func (c *Case) since(d Date, of func(down) agronomy.PerThousand) agronomy.PerThousand {
	var sum agronomy.PerThousand
	for _, r := range c.down {
		if !r.missed && !r.Date.Before(d) {
			sum += of(r)
		}
	}
	return sum
}

// notBefore gives the first day after the last missed attempt at a kind.
func (c *Case) notBefore(k Kind, n int) (Date, bool) {
	var last Date
	for _, r := range c.down {
		if r.kind == k && r.n == n && r.missed {
			last = Later(last, r.Date)
		}
	}
	return last.AddDays(1), !last.IsZero()
}

// after gives the first day of the program that lies the given days after the
// last job of a kind on record.
func (c *Case) after(k Kind, days int) Date {
	first := c.Start
	for _, r := range c.down {
		if r.kind == k && !r.missed {
			first = Later(first, r.Date.AddDays(days))
		}
	}
	return first
}

// who finds the person for a job: by area first, then by kind.
func (s *Site) who(k Kind, a *Area) string {
	for _, key := range []string{areaKey(a), k.String()} {
		for _, w := range s.Crew.Who {
			if w.KindOrArea == key && key != "" {
				return w.Person
			}
		}
	}
	return ""
}

func areaKey(a *Area) string {
	if a == nil {
		return ""
	}
	return a.ID
}

// personName gives the name behind a person's id.
func (s *Site) personName(id string) string {
	for _, p := range s.Crew.People {
		if p.ID == id {
			return p.Name
		}
	}
	return id
}
