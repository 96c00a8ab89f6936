package plan

import (
	"fmt"
	"maps"
	"math"
	"math/rand"
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
	"swardbook/schedule/sitefile"
)

// lived is one invented life of a lawn: what was done of each job when it came due,
// as lines that stand by themselves.
type lived struct {
	site *schedule.Site
	book []schedule.Done
	over float64         // effective lime that went down beyond the plan
	put  map[int]float64 // by season: nitrogen that went down, lb/1000 sq ft
	seen map[string]schedule.Entry
}

// liveFor goes through five seasons job by job: most are done as planned, some late, in
// halves, with another bag, too much, or never; a report comes back in between.
func liveFor(t *testing.T, r *rand.Rand, site *schedule.Site, check func(before, after *schedule.Program, on schedule.Date)) *lived {
	t.Helper()
	l := &lived{site: site, put: map[int]float64{}, seen: map[string]schedule.Entry{}}
	today := site.Start
	end := site.Start.AddDays(5 * 365)
	for today.Before(end) {
		last, err := Through(site, today)
		if err != nil {
			t.Fatal(err)
		}
		before, err := Program(site, l.book, last)
		if err != nil {
			t.Fatal(err)
		}
		i := slices.IndexFunc(before.Entries, func(e schedule.Entry) bool {
			return e.Area != "" && e.State == schedule.Planned && !e.Date.Before(today)
		})
		if i < 0 {
			break
		}
		e := before.Entries[i]
		today = e.Date
		lines := l.act(r, &e)
		l.book = append(l.book, lines...)
		for _, d := range lines {
			today = schedule.Later(today, d.Date)
		}
		after, err := Program(site, l.book, last)
		if err != nil {
			t.Fatal(err)
		}
		check(before, after, e.Date)
		today = today.AddDays(1)
	}
	return l
}

// act says what was done of a job. Each line goes through the book's own text, as
// written and read.
func (l *lived) act(r *rand.Rand, e *schedule.Entry) []schedule.Done {
	area := l.site.Area(e.Area)
	line := func(on schedule.Date, share float64, m material.Material, missed bool) schedule.Done {
		d := schedule.Down{Done: schedule.Done{Date: on, Missed: missed}, AreaID: e.Area, Kind: e.Kind, Season: e.Season}
		_, _, _, d.N, _ = schedule.JobName(e.ID)
		if e.Rate > 0 && !missed {
			d.Dose = material.DoseOf(m, e.Rate*agronomy.PerThousand(share))
			d.Of = e.Rate.Over(area.Size)
		}
		text := sitefile.Header + strings.Repeat("#\n", len(l.book)) + sitefile.WholeLine(d, l.site, area)
		read, ps := sitefile.LoadRecord("book", []byte(text), l.site)
		if len(read) != 1 {
			panic(fmt.Sprint(text, ps))
		}
		l.put[e.Season] += float64(d.Dose.N)
		l.over += max(0, share-1) * float64(l.site.EffectiveLime(area, e.Dose))
		return read[0]
	}
	m := e.Dose.Material
	switch n := r.Intn(20); {
	case n < 9:
		return []schedule.Done{line(e.Date, 1, m, false)}
	case n < 12:
		late := min(50, max(6, e.Latest.DaysFrom(e.Date)+1)) // any day of its window
		return []schedule.Done{line(e.Date.AddDays(r.Intn(late)), 1, m, false)}
	case n < 14 && e.Rate > 0:
		return []schedule.Done{line(e.Date, 0.5, m, false), line(e.Date.AddDays(r.Intn(4)), 0.5, m, false)}
	case n < 15 && e.Rate > 0:
		return []schedule.Done{line(e.Date, 0.5, m, false)}
	case n < 16:
		return []schedule.Done{line(e.Date, 1, m, true)}
	case n < 17 && e.Rate > 0:
		return []schedule.Done{line(e.Date, 1.8, m, false)}
	case n < 18 && e.Rate > 0:
		m.ID, m.Name = "gone-"+m.ID, ""
		return []schedule.Done{line(e.Date, 1, m, false)}
	}
	return nil // nobody wrote it down
}

func lifeSite(t *testing.T, r *rand.Rand) *schedule.Site {
	cells := [][3]string{{"OH", "6a", "kentucky bluegrass"}, {"MN", "4b", "fine fescue"}, {"GA", "8a", "bermudagrass"}, {"OR", "8b", "perennial ryegrass"}}
	c := cells[r.Intn(len(cells))]
	site := situations[[]int{0, 2, 3}[r.Intn(3)]].site(t, c[0], c[1], c[2])
	site.Through = schedule.Date{}
	a := &site.Areas[0]
	if a.Soil != nil {
		a.Reports = []schedule.SoilReport{{Sampled: a.Sampled, Soil: a.Soil}}
		again := *a.Soil
		again.PH += 0.3
		a.Reports = append(a.Reports, schedule.SoilReport{Sampled: site.Start.AddDays(500 + r.Intn(200)), Soil: &again})
	}
	return site
}

// TestLawsOfALife checks five seasons of invented lives for what may never happen.
func TestLawsOfALife(t *testing.T) {
	lives := 12
	if testing.Short() {
		lives = 3
	}
	for seed := range lives {
		r := rand.New(rand.NewSource(int64(seed)))
		site := lifeSite(t, r)
		l := liveFor(t, r, site, func(before, after *schedule.Program, on schedule.Date) {
			for _, bad := range brokenPast(before, after, on) {
				t.Errorf("life %d: %s", seed, bad)
			}
		})
		p, err := Program(site, l.book, site.Start.AddDays(5*365))
		if err != nil {
			t.Fatal(err)
		}
		for _, bad := range slices.Concat(brokenLife(p, l), brokenLater(t, site, l.book)) {
			t.Errorf("life %d: %s", seed, bad)
		}
	}
}

// brokenPast says what a line changed of the days before it: nothing may appear or
// vanish there, and no job there may change its day or its amount.
func brokenPast(before, after *schedule.Program, on schedule.Date) (bad []string) {
	was := map[string]schedule.Entry{}
	for _, e := range before.Entries {
		was[e.ID] = e
	}
	for _, e := range after.Entries {
		if !e.Date.Before(on) || e.Kind.Notice() {
			continue
		}
		o, known := was[e.ID]
		delete(was, e.ID)
		if !known {
			bad = append(bad, fmt.Sprintf("%s appeared on %s, before the line of %s", e.ID, e.Date, on))
		} else if o.Date != e.Date && !o.Rest || math.Abs(float64(o.Rate-e.Rate)) > 1e-9 && !o.Rest {
			bad = append(bad, fmt.Sprintf("%s was %.2f on %s, and is %.2f on %s after the line of %s", e.ID, float64(o.Rate), o.Date, float64(e.Rate), e.Date, on))
		}
	}
	for id, o := range was {
		if o.Date.Before(on) && !o.Kind.Notice() && !o.Rest {
			if e, _, _ := after.Find(id); e == nil {
				bad = append(bad, fmt.Sprintf("%s of %s vanished with the line of %s", id, o.Date, on))
			}
		}
	}
	return bad
}

// brokenLife holds a whole life to its sums and names.
func brokenLife(p *schedule.Program, l *lived) (bad []string) {
	down := map[int]float64{}
	fed := map[int]bool{}
	var lime, wantLime float64
	for _, d := range p.Cases[0].Down {
		if d.Presumed == nil && !d.NotDone {
			down[d.Season] += float64(d.Dose.N)
		}
	}
	for season, n := range l.put {
		if math.Abs(down[season]-n) > 0.03*n+0.01 {
			bad = append(bad, fmt.Sprintf("season %d: %.3f lb N was put down, the book says %.3f", season, n, down[season]))
		}
	}
	ids := map[string]bool{}
	for _, e := range p.Entries {
		if ids[e.UID] {
			bad = append(bad, e.UID+" is used twice")
		}
		ids[e.UID] = true
		fed[e.Season] = fed[e.Season] || e.N > 0 || e.Kind.Feeds()
	}
	for _, o := range p.LeftOut {
		fed[o.Season] = fed[o.Season] || o.Kind.Feeds()
	}
	first, last := p.Chapters[0].Year, p.Chapters[len(p.Chapters)-1].Year
	for y := first; y <= last; y++ {
		if !fed[y] {
			bad = append(bad, fmt.Sprintf("season %d has no feeding, and not a word", y))
		}
	}
	// The lime of a report goes down once: what is planned on top of what is down
	// brings no more than it asked for, but for what was put down beyond the plan.
	for _, c := range p.Chapters {
		lime = 0
		for _, d := range p.Cases[0].Down {
			if !d.NotDone && d.Presumed != nil && !d.Date.Before(c.Area.Sampled) {
				lime += float64(p.Site.EffectiveLime(c.Area, d.Dose))
			}
		}
		for _, n := range c.Needs {
			if n.Kind == schedule.Lime {
				wantLime = max(wantLime, float64(n.Total))
			}
		}
	}
	if lime > wantLime*1.1+1 {
		bad = append(bad, fmt.Sprintf("%.1f lb of effective lime is planned of %.1f", lime, wantLime))
	}
	return bad
}

// brokenLater asks for a later last day: it may move nothing that lay before.
func brokenLater(t *testing.T, site *schedule.Site, book []schedule.Done) (bad []string) {
	short, err := Program(site, book, site.Start.AddDays(4*365))
	if err != nil {
		t.Fatal(err)
	}
	long, err := Program(site, book, site.Start.AddDays(7*365))
	if err != nil {
		t.Fatal(err)
	}
	return movedByLater(short, long)
}

// movedByLater says which entries of a program differ in the one with a later last day.
func movedByLater(short, long *schedule.Program) (bad []string) {
	for _, e := range short.Entries {
		o, _, _ := long.Find(e.ID)
		if o == nil || o.Date != e.Date || o.Rate != e.Rate || o.UID != e.UID {
			bad = append(bad, fmt.Sprintf("%s on %s is another with a later last day: %+v", e.ID, e.Date, o))
		}
	}
	return bad
}

// TestALawIsShownToFail plants one fault for each law.
func TestALawIsShownToFail(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	site := situations[0].site(t, "OH", "6a", "kentucky bluegrass")
	site.Through = schedule.Date{}
	l := liveFor(t, r, site, func(_, _ *schedule.Program, _ schedule.Date) {})
	plan := func() *schedule.Program {
		p, err := Program(site, l.book, site.Start.AddDays(5*365))
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	for name, plant := range map[string]func(p *schedule.Program, l *lived){
		"is used twice": func(p *schedule.Program, _ *lived) { p.Entries[1].UID = p.Entries[0].UID },
		"the book says": func(_ *schedule.Program, l *lived) { l.put[2027]++ },
		"no feeding":    func(p *schedule.Program, _ *lived) { p.Chapters[len(p.Chapters)-1].Year += 2 },
		"effective lime is plan": func(p *schedule.Program, _ *lived) {
			c := p.Cases[0]
			stone := material.Material{Kind: material.LimeMaterial, ECCE: 100}
			c.Down = append(slices.Clone(c.Down), schedule.Down{Kind: schedule.Lime, Dose: material.DoseOf(stone, 500), Presumed: &schedule.Job{}, Done: schedule.Done{Date: schedule.Date{Year: 2031, Month: 1, Day: 1}}})
		},
	} {
		p, put := plan(), map[int]float64{}
		maps.Copy(put, l.put)
		copied := &lived{site: site, book: l.book, put: put}
		plant(p, copied)
		if !slices.ContainsFunc(brokenLife(p, copied), func(s string) bool { return strings.Contains(s, name) }) {
			t.Errorf("a planted fault was not found: %s", name)
		}
	}
	for name, plant := range map[string]func(e *schedule.Entry){ // the fault that a season not closed before the next one would make
		"a day later": func(e *schedule.Entry) { e.Date = e.Date.Next() },
		"a bit less":  func(e *schedule.Entry) { e.Rate *= 0.99 },
		"renamed":     func(e *schedule.Entry) { e.ID, e.UID = e.ID+"0", "x"+e.UID },
	} {
		short, long := plan(), plan()
		if bad := movedByLater(short, long); len(bad) > 0 {
			t.Fatal(bad)
		}
		half := long.Entries[len(long.Entries)/2:]
		plant(&half[slices.IndexFunc(half, func(e schedule.Entry) bool { return e.Rate > 0 })])
		if bad := movedByLater(short, long); len(bad) != 1 {
			t.Errorf("%s: an entry that a later last day changed was not found: %q", name, bad)
		}
	}
	before, after := plan(), plan()
	before.Entries = before.Entries[1:]
	if bad := brokenPast(before, after, site.Start.AddDays(400)); len(bad) == 0 {
		t.Error("a job that appeared on a day gone by was not found")
	}
	before, after = plan(), plan()
	after.Entries = after.Entries[1:]
	if bad := brokenPast(before, after, site.Start.AddDays(400)); len(bad) == 0 {
		t.Error("a job that vanished from a day gone by was not found")
	}
}
