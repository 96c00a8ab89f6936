package plan

import (
	"fmt"
	"math"
	"math/rand"
	"slices"
	"testing"
	"time"

	"swardbook/agronomy"
	"swardbook/schedule"
)

// yearsIn are the places and grasses for which these tests plan several years.
var yearsIn = [][3]string{{"OH", "6a", "kentucky bluegrass"}, {"MN", "4b", "fine fescue"}, {"GA", "8a", "bermudagrass"},
	{"OR", "8b", "perennial ryegrass"}, {"VA", "7a", "tall fescue"}, {"FL", "9b", "st. augustinegrass"}}

// openSite is a site of a place that goes on by itself, of an established lawn.
func openSite(t *testing.T, in [3]string) *schedule.Site {
	site := situations[0].site(t, in[0], in[1], in[2])
	site.Through = schedule.Date{}
	return site
}

func programTo(t *testing.T, site *schedule.Site, book []schedule.Done, last schedule.Date) *schedule.Program {
	t.Helper()
	p, err := Program(site, book, last)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// A season's nitrogen is the same whether the site was begun the summer before it or
// five years ago: a lawn is not fed more because its site file is older.
func TestSameNitrogenHoweverOldTheSite(t *testing.T) {
	for _, in := range yearsIn {
		feeds := func(start schedule.Date) map[string]agronomy.PerThousand {
			site := openSite(t, in)
			a := &site.Areas[0]
			site.Start, a.Seeded, a.Soil, a.Sampled = start, schedule.Date{}, nil, schedule.Date{}
			p := programTo(t, site, nil, schedule.Date{Year: 2034, Month: 12, Day: 31})
			out := map[string]agronomy.PerThousand{}
			for _, e := range p.Entries {
				if e.N > 0 && (e.Season == 2032 || e.Season == 2033) {
					out[e.ID] += e.N
				}
			}
			return out
		}
		season := openSite(t, in).Areas[0].Stand.Season()
		year, err := openSite(t, in).Place.Year()
		if err != nil {
			t.Fatal(err)
		}
		begins := schedule.NewAlmanac(year, schedule.Date{Year: 2031, Month: 1, Day: 1}, schedule.Date{Year: 2031, Month: 1, Day: 1}).YearBegins(2031, season)
		young, old := feeds(begins), feeds(schedule.Date{Year: begins.Year - 5, Month: begins.Month, Day: begins.Day})
		if bad := unlike(young, old); bad != "" || len(old) == 0 {
			t.Errorf("%v: begun in 2031 or in 2026: %s", in, bad)
		}
		planted := map[string]agronomy.PerThousand{}
		for id, n := range old {
			planted[id] = n + 0.05
		}
		if unlike(young, planted) == "" {
			t.Errorf("%v: a planted difference was not found", in)
		}
	}
}

// unlike names the first feeding that differs; "" if none does.
func unlike(a, b map[string]agronomy.PerThousand) string {
	for _, of := range [][2]map[string]agronomy.PerThousand{{a, b}, {b, a}} {
		for id, n := range of[0] {
			if off := float64(n - of[1][id]); math.Abs(off) > 0.02 {
				return fmt.Sprintf("%s brings %.3f or %.3f lb N", id, float64(n), float64(of[1][id]))
			}
		}
	}
	return ""
}

// If the start, or the sowing, moves by a week past the warmest day of the year, events
// of the calendar move, but none is cancelled and made anew under another name.
func TestAWeekOverTheWarmestDayRenamesNothing(t *testing.T) {
	for _, in := range yearsIn[:5] {
		for _, sown := range []bool{false, true} {
			at := func(off int) (*schedule.Program, schedule.Date) {
				site := openSite(t, in)
				year, err := site.Place.Year()
				if err != nil {
					t.Fatal(err)
				}
				a := &site.Areas[0]
				site.Start = schedule.Date{Year: 2026, Month: 1, Day: 1}
				turn := schedule.NewAlmanac(year, site.Start, site.Start).YearBegins(2027, a.Stand.Season())
				day := turn.AddDays(off)
				site.Start, a.Seeded, a.Soil, a.Sampled = day, schedule.Date{}, nil, schedule.Date{}
				if sown {
					site.Start, a.Seeded = turn.AddDays(-40), day
				}
				return programTo(t, site, nil, schedule.Date{Year: 2029, Month: 6, Day: 30}), day
			}
			for _, off := range []int{-9, -6, -4, -1, 0, 3} {
				was, _ := at(off)
				is, day := at(off + 7)
				for _, bad := range renamed(was, is, day) {
					t.Errorf("%v sown %v, from %d to %d days after the turn: %s", in, sown, off, off+7, bad)
				}
			}
			// The check itself: were seasons named by the warmest day alone, without the
			// 45 days before it that belong to the season to come, the same jobs would be
			// named after another season.
			was, _ := at(-6)
			is, day := at(1)
			for i := range was.Entries {
				if e := &was.Entries[i]; e.Area != "" {
					_, _, season, n, err := schedule.JobName(e.ID)
					if err != nil {
						t.Fatal(err)
					}
					e.UID = schedule.UID("laws", e.Area, e.Kind, season-1, n)
				}
			}
			if len(renamed(was, is, day)) == 0 {
				t.Errorf("%v sown %v: jobs that were renamed by a week were not found", in, sown)
			}
		}
	}
}

// renamed lists the jobs that have another name in another program of the same lawn:
// the first name is gone and a job of its kind has come within six weeks of its day, or
// the name has gone to a job of another season.
func renamed(was, is *schedule.Program, from schedule.Date) (bad []string) {
	uids := func(p *schedule.Program) map[string]schedule.Date {
		out := map[string]schedule.Date{}
		for _, e := range p.Entries {
			out[e.UID] = e.Date
		}
		return out
	}
	had, has := uids(was), uids(is)
	for _, e := range was.Entries {
		if e.Date.Before(from) {
			continue
		}
		if on, known := has[e.UID]; known {
			if off := on.DaysFrom(e.Date); max(off, -off) > 180 { // the name is that of another season's job
				bad = append(bad, fmt.Sprintf("%s on %s is on %s", e.ID, e.Date, on))
			}
			continue
		}
		for _, o := range is.Entries {
			off := o.Date.DaysFrom(e.Date)
			if _, known := had[o.UID]; !known && o.Kind == e.Kind && o.Area == e.Area && max(off, -off) <= 42 {
				bad = append(bad, fmt.Sprintf("%s on %s became %s on %s", e.ID, e.Date, o.ID, o.Date))
			}
		}
	}
	return bad
}

// twoAreas is a site of two lawns that a crew of one shares on two days a week.
func twoAreas(t *testing.T, r *rand.Rand) *schedule.Site {
	site := lifeSite(t, r)
	b := site.Areas[0]
	b.ID, b.Name, b.Size = "b", "Other lawn", 900
	site.Areas = append(site.Areas, b)
	site.Crew = schedule.Crew{Days: []time.Weekday{time.Saturday, time.Wednesday}, JobsPerDay: 2}
	return site
}

// TestLawsOfALifeOfTwo lives five seasons with two areas and a crew, with edits between:
// other days of the crew, another place, another care. What is on record stays what it
// was, lime goes down once, and a later last day moves nothing.
func TestLawsOfALifeOfTwo(t *testing.T) {
	lives := 8
	if testing.Short() {
		lives = 2
	}
	for seed := range lives {
		r := rand.New(rand.NewSource(int64(100 + seed)))
		site := twoAreas(t, r)
		step := 0
		var done map[string]schedule.Entry
		l := liveFor(t, r, site, func(before, after *schedule.Program, on schedule.Date) {
			for _, bad := range brokenPast(before, after, on) {
				t.Errorf("life %d: %s", seed, bad)
			}
			if step++; step%9 != 0 {
				return
			}
			edit(r, site)
		})
		for _, change := range []func(){func() {}, func() { edit(r, site) }, func() { edit(r, site) }} {
			change()
			p := programTo(t, site, l.book, site.Start.AddDays(5*365))
			for _, bad := range brokenBook(done, p) {
				t.Errorf("life %d: %s", seed, bad)
			}
			done = onRecord(p)
		}
		p := programTo(t, site, l.book, site.Start.AddDays(5*365))
		for _, bad := range slices.Concat(twice(p), brokenLime(p, l.over), brokenLater(t, site, l.book)) {
			t.Errorf("life %d: %s", seed, bad)
		}
		// Each law is shown to fail.
		planted := onRecord(p)
		for id, e := range planted {
			e.Date = e.Date.Next()
			planted[id] = e
			break
		}
		if len(planted) > 0 && len(brokenBook(planted, p)) == 0 {
			t.Errorf("life %d: a line that another edit moved was not found", seed)
		}
		q := *p
		q.Entries = append(slices.Clone(p.Entries), p.Entries[0])
		if limed := brokenLime(p, -1e4); slices.ContainsFunc(p.Entries, func(e schedule.Entry) bool { return e.Kind == schedule.Lime }) && len(limed) == 0 {
			t.Errorf("life %d: lime beyond the need was not found", seed)
		}
		if len(twice(&q)) == 0 {
			t.Errorf("life %d: a name used twice was not found", seed)
		}
	}
}

// edit changes what a person changes in a site file over the years.
func edit(r *rand.Rand, site *schedule.Site) {
	switch r.Intn(4) {
	case 0:
		site.Crew.Days = []time.Weekday{time.Weekday(r.Intn(7)), time.Saturday}
	case 1:
		site.Place.Hardiness = map[string]string{"6a": "6b", "6b": "6a", "4b": "5a", "5a": "4b", "8a": "7b", "7b": "8a", "8b": "8a"}[site.Place.Hardiness]
	case 2:
		site.Crew.JobsPerDay = 1 + r.Intn(3)
	case 3:
		site.Materials = nil
	}
}

func onRecord(p *schedule.Program) map[string]schedule.Entry {
	out := map[string]schedule.Entry{}
	for _, e := range p.Entries {
		if e.State == schedule.Finished {
			out[e.UID] = e
		}
	}
	return out
}

// brokenBook tells which lines an edit changed.
func brokenBook(was map[string]schedule.Entry, p *schedule.Program) (bad []string) {
	for _, e := range p.Entries {
		if o, known := was[e.UID]; known && e.State == schedule.Finished && (o.Date != e.Date || !alike(o.Rate, e.Rate)) {
			bad = append(bad, fmt.Sprintf("%s was %.2f on %s, and is %.2f on %s after an edit", e.ID, float64(o.Rate), o.Date, float64(e.Rate), e.Date))
		}
		delete(was, e.UID)
	}
	for _, o := range was {
		bad = append(bad, fmt.Sprintf("%s of %s vanished with an edit", o.ID, o.Date))
	}
	return bad
}

// twice lists the calendar ids that are used twice.
func twice(p *schedule.Program) (bad []string) {
	seen := map[string]bool{}
	for _, e := range p.Entries {
		if seen[e.UID] {
			bad = append(bad, e.UID+" is used twice")
		}
		seen[e.UID] = true
	}
	return bad
}

// brokenLime adds up the lime of each report, on record, presumed and planned: it is
// what the report asked for, and what was put down beyond the plan, and no more.
func brokenLime(p *schedule.Program, over float64) (bad []string) {
	for _, c := range p.Cases {
		reports := c.Site.Area(c.Area.ID).AllReports()
		for i, r := range reports {
			want, sum := 0.0, 0.0
			for _, ch := range p.Chapters {
				if ch.Area.ID != c.Area.ID || ch.Area.Sampled != r.Sampled {
					continue
				}
				for _, n := range ch.Needs {
					if n.Kind == schedule.Lime {
						want = max(want, float64(n.Total))
					}
				}
			}
			within := func(d schedule.Date) bool {
				return !d.Before(r.Sampled) && (i+1 == len(reports) || d.Before(reports[i+1].Sampled))
			}
			for _, e := range p.Entries {
				if e.Area == c.Area.ID && e.Kind == schedule.Lime && within(e.Date) && e.State != schedule.Missed {
					sum += float64(p.Site.EffectiveLime(c.Area, e.Dose))
				}
			}
			if sum > want*1.1+1+over {
				bad = append(bad, fmt.Sprintf("%s: %.1f lb of effective lime goes down for the report of %s, which asks for %.1f", c.Area.ID, sum, r.Sampled, want))
			}
		}
	}
	return bad
}
