package plan

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/climate"
	"swardbook/schedule"
	"swardbook/schedule/law"
)

func mustDate(t *testing.T, s string) schedule.Date {
	t.Helper()
	d, err := schedule.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func plan(t *testing.T, site *schedule.Site, book ...schedule.Done) *schedule.Program {
	t.Helper()
	p, err := Program(site, book, schedule.Date{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func entry(t *testing.T, p *schedule.Program, id string) *schedule.Entry {
	t.Helper()
	e, _, err := p.Find(id)
	if err != nil || e == nil {
		t.Fatalf("%s is not planned (%v)", id, err)
	}
	return e
}

func leftOut(p *schedule.Program, id string) *schedule.LeftOut {
	_, l, _ := p.Find(id)
	return l
}

// bluegrass is an established, sour lawn in Ohio 6a that starts in September.
func bluegrass(t *testing.T) *schedule.Site {
	t.Helper()
	return situations[0].site(t, "OH", "6a", "kentucky bluegrass")
}

func TestLimeAfterTheLastSafeDayIsCarriedToSpring(t *testing.T) {
	site := bluegrass(t)
	site.Start = mustDate(t, "2026-11-25")
	site.Through = site.Start.AddDays(300)
	p := plan(t, site)
	e := entry(t, p, "a/lime/1")
	if !e.Date.After(mustDate(t, "2027-03-01")) {
		t.Errorf("limed on %s", e.Date)
	}
	if len(e.BoundBy) == 0 || !strings.Contains(e.BoundBy[0], "too late for the window that closed on") {
		t.Errorf("bound by %q", e.BoundBy)
	}
	site.Through = site.Start.AddDays(60)
	l := leftOut(plan(t, site), "a/lime/1")
	if l == nil || l.CarriedTo.IsZero() || l.CarriedTo.Month < 3 {
		t.Errorf("short program: %+v", l)
	}
}

func TestHalfTheLimeLeavesTheRest(t *testing.T) {
	site := bluegrass(t)
	before := plan(t, site)
	first := entry(t, before, "a/lime/1")
	p := plan(t, site, schedule.Done{Line: 2, Date: first.Date, Area: "a", Job: "a/lime/1", Share: 0.5})
	rest := entry(t, p, "a/lime/1")
	if !rest.Rest || rest.State != schedule.Planned || rest.UID != first.UID || rest.Latest != first.Latest || rest.Rate < first.Rate*0.49 || rest.Rate > first.Rate*0.51 {
		t.Errorf("the rest is %v: %.1f of %.1f planned, until %s", rest.State, float64(rest.Rate), float64(first.Rate), rest.Latest)
	}
	whole := plan(t, site, schedule.Done{Line: 2, Date: first.Date, Area: "a", Job: "a/lime/1", Share: 0.5},
		schedule.Done{Line: 3, Date: first.Date.AddDays(2), Area: "a", Job: "a/lime/2026-1", Material: first.Material, Weight: first.Pounds / 2})
	if e := entry(t, whole, "a/lime/1"); e.State != schedule.Finished || e.Rest || e.Rate < first.Rate-0.01 || e.Rate > first.Rate+0.01 || e.UID != first.UID {
		t.Errorf("two halves are %.1f of %.1f", float64(e.Rate), float64(first.Rate))
	}
	var was, is agronomy.PerThousand
	for _, e := range before.Entries {
		if e.Kind == schedule.Lime {
			was += e.Rate
		}
	}
	for _, e := range p.Entries {
		if e.Kind == schedule.Lime {
			is += e.Rate
		}
	}
	for _, d := range p.Cases[0].Down {
		if d.Presumed == nil {
			is += d.Dose.Rate
		}
	}
	if d := was - is; d > 0.01 || d < -0.01 {
		t.Errorf("%.2f lb/1000 sq ft of lime before, %.2f after", float64(was), float64(is))
	}
}

func TestTwiceTheNitrogenCutsWhatFollows(t *testing.T) {
	site := bluegrass(t)
	site.Start = mustDate(t, "2026-08-01") // the whole autumn lies ahead
	before := plan(t, site)
	var first *schedule.Entry
	for i := range before.Entries {
		if before.Entries[i].Kind == schedule.Nitrogen {
			first = &before.Entries[i]
			break
		}
	}
	as := plan(t, site, schedule.Done{Line: 2, Date: first.Date, Area: "a", Job: first.ID, AsPlanned: true})
	twice := plan(t, site, schedule.Done{Line: 2, Date: first.Date, Area: "a", Job: first.ID, Share: 2})
	autumn := func(p *schedule.Program) (n agronomy.PerThousand) {
		for _, e := range p.Entries {
			if e.Date.Year == 2026 {
				n += e.N
			}
		}
		return n
	}
	share := first.N * 4.1 // two thirds of the year, in four doses
	if a, b := autumn(as), autumn(twice); a > share || b > share {
		t.Errorf("autumn nitrogen: %.2f as planned, %.2f after twice the dose, of %.2f", float64(a), float64(b), float64(share))
	}
	ahead := func(p *schedule.Program) (n agronomy.PerThousand) {
		for _, e := range p.Entries {
			if e.Date.Year == 2026 && e.State == schedule.Planned {
				n += e.N
			}
		}
		return n
	}
	if a, b := ahead(as), ahead(twice); b > a-0.05 {
		t.Errorf("%.2f lb N still to come this autumn after twice the dose, %.2f after one", float64(b), float64(a))
	}
	if !slices.ContainsFunc(twice.LeftOut, func(l schedule.LeftOut) bool {
		return l.Kind == schedule.Nitrogen && strings.Contains(l.Reason, "what is down this autumn covers it")
	}) {
		t.Errorf("nothing says why: %+v", twice.LeftOut)
	}
	if v := twice.Ledger(schedule.Date{}).Areas[0].Verdict; !strings.HasPrefix(v, "Over the limit") || twice.Cases[0].Verdict(twice, schedule.Date{}) != v {
		t.Errorf("verdict %q", v)
	}
}

func TestAMissedJobIsProposedAgain(t *testing.T) {
	site := bluegrass(t)
	first := entry(t, plan(t, site), "a/lime/1")
	missed := first.Date.AddDays(3)
	p := plan(t, site, schedule.Done{Line: 2, Date: missed, Area: "a", Job: "lime", Missed: true})
	again := entry(t, p, "a/lime/1")
	if !again.Date.After(missed) || again.UID != first.UID || !strings.Contains(again.Note, "missed on") {
		t.Errorf("proposed for %s, note %q", again.Date, again.Note)
	}
}

func TestWhatIsNotOnRecordIsTakenAsDone(t *testing.T) {
	site := bluegrass(t)
	before := plan(t, site)
	later := schedule.Done{Line: 2, Date: mustDate(t, "2026-11-10"), Area: "a", Job: "nitrogen", Weight: 2, Material: "blend"}
	after := plan(t, site, later)
	for _, e := range before.Entries {
		if e.Date.Before(later.Date) && e.Area != "" {
			if now := entry(t, after, e.ID); now.Date != e.Date || now.UID != e.UID || now.Title != e.Title {
				t.Errorf("%s moved from %s to %s", e.ID, e.Date, now.Date)
			}
		}
	}
}

func TestALaterStartRenamesNothing(t *testing.T) {
	site := bluegrass(t)
	before := plan(t, site)
	site.Start = site.Start.AddDays(40)
	after := plan(t, site)
	for _, e := range after.Entries {
		if e.Kind != schedule.Nitrogen {
			continue
		}
		was, left, err := before.Find(e.ID)
		if left != nil {
			continue
		}
		if err != nil || was == nil {
			t.Errorf("%s on %s is new", e.ID, e.Date)
		} else if d := e.Date.DaysFrom(was.Date); d > 40 || d < -40 {
			t.Errorf("%s moved from %s to %s", e.ID, was.Date, e.Date)
		}
	}
}

func TestASowingTooLateMovesToTheNextWindow(t *testing.T) {
	site := situations[4].site(t, "MN", "4b", "kentucky bluegrass")
	p := plan(t, site)
	e := entry(t, p, "a/sow/1")
	if e.Date.Before(mustDate(t, "2027-04-01")) {
		t.Errorf("sown on %s", e.Date)
	}
	starter := entry(t, p, "a/starter/1")
	if starter.Date != e.Date {
		t.Errorf("starter on %s, sown on %s", starter.Date, e.Date)
	}
	if lime := entry(t, p, "a/lime/1"); !lime.Date.Before(e.Date) && lime.Date != e.Date {
		t.Errorf("limed on %s, sown on %s", lime.Date, e.Date)
	}
	site.Areas[0].Dormant = true
	if e := entry(t, plan(t, site), "a/sow/1"); e.Date.Month != 10 && e.Date.Month != 11 && e.Date.Month != 12 {
		t.Errorf("dormant sowing on %s", e.Date)
	}
}

func TestSameDayForTheSameMaterial(t *testing.T) {
	site := bluegrass(t)
	b := site.Areas[0]
	b.ID, b.Name, b.Size = "b", "Other plot", 900
	site.Areas = append(site.Areas, b)
	p := plan(t, site)
	if x, y := entry(t, p, "a/lime/1"), entry(t, p, "b/lime/1"); x.Date != y.Date {
		t.Errorf("limed on %s and %s", x.Date, y.Date)
	}
}

func TestStandingThroughTheSeason(t *testing.T) {
	p := plan(t, bluegrass(t))
	e := entry(t, p, "a/lime/1")
	for _, row := range []struct {
		today schedule.Date
		want  string
	}{
		{e.Date.AddDays(-1), "planned"}, {e.Date, "due"}, {e.Latest, "due"}, {e.Latest.AddDays(1), "taken"},
	} {
		if got := p.Standing(e, row.today); got != row.want {
			t.Errorf("on %s: %s, want %s", row.today, got, row.want)
		}
	}
}

func TestCompareNamesEveryChange(t *testing.T) {
	site := bluegrass(t)
	was := plan(t, site)
	if c := schedule.Compare(was, was); len(c) != 0 {
		t.Errorf("a program differs from itself: %+v", c)
	}
	soil := sour()
	soil.PH = 6.8
	site.Areas[0].Soil = soil
	vanished := false
	for _, c := range schedule.Compare(was, plan(t, site)) {
		vanished = vanished || c.ID == "a/lime/2026-1" && c.What == "vanished"
	}
	if !vanished {
		t.Error("the lime did not vanish with the acid")
	}
}

func TestASampleIsStillTakenAfterSomethingWentDown(t *testing.T) {
	site := bluegrass(t)
	site.Areas[0].Soil, site.Areas[0].Sampled = nil, schedule.Date{}
	p := plan(t, site, schedule.Done{Line: 2, Date: site.Start.AddDays(2), Area: "a", Job: "lime", Material: "stone", Weight: 40})
	if e, _, _ := p.Find("a/soil-test/1"); e == nil {
		t.Errorf("no sample: %+v", leftOut(p, "a/soil-test/1"))
	}
}

func TestASampleOnRecordWaitsForItsResults(t *testing.T) {
	site := bluegrass(t)
	e := entry(t, plan(t, site), "a/soil-test/1")
	p := plan(t, site, schedule.Done{Line: 2, Date: e.Date, Area: "a", Job: e.ID, AsPlanned: true})
	if l := leftOut(p, "a/soil-test/2"); l == nil || !strings.Contains(l.Reason, "enter its results") {
		t.Errorf("left out: %+v", l)
	}
}

func TestNitrogenBetweenTheSeasonsCountsAgainstTheYear(t *testing.T) {
	site := bluegrass(t)
	site.Start = mustDate(t, "2026-08-20")
	p := plan(t, site, schedule.Done{Line: 2, Date: mustDate(t, "2026-08-01"), Area: "a", Job: "nitrogen", Material: "blend", Weight: 8})
	const year, down = 4, 0.96
	var planned agronomy.PerThousand
	for _, e := range p.Entries {
		if e.Season == 2026 {
			planned += e.N
		}
	}
	if planned < 1 || planned > year-down+1e-9 {
		t.Errorf("%.2f lb N planned after %.2f in summer, of %d a year", float64(planned), down, year)
	}
}

func TestALateDoseOnRecordLeavesTheNextAutumnsAlone(t *testing.T) {
	site := bluegrass(t)
	site.Start, site.Through = mustDate(t, "2026-08-01"), mustDate(t, "2027-12-31")
	const second = "a/late-nitrogen/2027-1"
	down := schedule.Done{Date: mustDate(t, "2026-10-30"), Area: "a", Job: "late-nitrogen/1", Material: "blend", Weight: 4}
	e, l, err := plan(t, site, down).Find(second)
	if err != nil || e == nil && l.Reason == "" {
		t.Errorf("the second autumn's late dose is neither planned nor left out with a reason: %v", err)
	}
}

// TestTwelveMonthsHoldAcrossTheStart puts heavy nitrogen down just before the
// program: next summer's doses wait until it is a year old.
func TestTwelveMonthsHoldAcrossTheStart(t *testing.T) {
	site := situations[9].site(t, "NH", "5b", "centipedegrass") // N.H.: 3.25 lb N in a year
	waited := false
	for day := 1; day <= 31; day++ {
		before := schedule.Done{Line: 2, Date: schedule.Date{Year: 2026, Month: 8, Day: day}, Area: "a", Job: "nitrogen", Material: "blend", Weight: 14}
		p := plan(t, site, before)
		for _, e := range p.Entries {
			for _, b := range e.BoundBy {
				waited = waited || strings.Contains(b, "in any 12 months") && e.Date.DaysFrom(before.Date) >= 365
			}
		}
		for _, l := range p.Ledger(schedule.Date{}).Areas[0].Limits {
			if strings.Contains(l.What, "12 months") && l.Passed {
				t.Errorf("%s: %.2f against %.2f", l.What, float64(l.Most), float64(l.Limit))
			}
		}
	}
	if !waited {
		t.Error("no dose waits")
	}
}

func TestLocalRulesAreToldWithoutAState(t *testing.T) {
	site := bluegrass(t)
	site.Place = climate.Place{Hardiness: "6a", Latitude: new(40.0)}
	site.Local = law.Local{NoNitrogen: []law.Span{{From: law.MonthDay{Month: 11, Day: 15}, To: law.MonthDay{Month: 3, Day: 1}}}, Note: "see the clerk"}
	if p := plan(t, site); len(p.Laws) != 1 {
		t.Errorf("laws: %+v", p.Laws)
	}
}

func TestASowingOnRecordNeedsNoAreaBesideItsID(t *testing.T) {
	site := situations[3].site(t, "OH", "6a", "tall fescue")
	day := site.Areas[0].Seeded.AddDays(3)
	if p := plan(t, site, schedule.Done{Line: 2, Date: day, Job: "a/sow/1"}); entry(t, p, "a/starter/1").Date != day {
		t.Errorf("the starter does not go down with the seed: %+v", entry(t, p, "a/starter/1").Date)
	}
}

// TestHalfANitrogenDoseIsMadeUp puts half of a dose down: what follows brings
// the rest as far as the caps let, and what they do not let is told.
func TestHalfANitrogenDoseIsMadeUp(t *testing.T) {
	site := situations[0].site(t, "OH", "6a", "bermudagrass")
	site.Start, site.Through = schedule.Date{Year: 2027, Month: 4, Day: 1}, schedule.Date{Year: 2027, Month: 12, Day: 31}
	p := plan(t, site)
	first := entry(t, p, "a/nitrogen/1")
	sum := func(p *schedule.Program) (n agronomy.PerThousand) {
		for _, e := range p.Entries {
			n += e.N
		}
		return n
	}
	half := plan(t, site, schedule.Done{Line: 2, Date: first.Date, Area: "a", Job: first.ID, Share: 0.5})
	short := sum(p) - sum(half) - first.N/2
	told := slices.ContainsFunc(half.LeftOut, func(l schedule.LeftOut) bool { return strings.Contains(l.Reason, "short") })
	if short > schedule.LeastDose && !told {
		t.Errorf("%.2f lb less comes down, and not a word", float64(short))
	}
	next := entry(t, half, "a/nitrogen/2")
	if was := entry(t, p, next.ID); next.N < was.N-1e-9 {
		t.Errorf("%s brings %.2f, not %.2f", next.ID, float64(next.N), float64(was.N))
	}
	for _, r := range next.Why {
		if strings.Contains(r.Text, " at once: ") && strings.Contains(r.Text, "doses of") {
			var total, most, each float64
			var n int
			if _, err := fmt.Sscanf(r.Text, "%f lb ÷ %f lb at once: %d doses of %f", &total, &most, &n, &each); err != nil || each > most+0.005 || math.Abs(total-float64(n)*each) > 0.005*float64(n+1) {
				t.Errorf("the working does not add up: %s (%v)", r.Text, err)
			}
		}
	}
}

func TestAnotherReasonIsOneChange(t *testing.T) {
	was := &schedule.Program{LeftOut: []schedule.LeftOut{{ID: "a/lime/1", Kind: schedule.Lime, Area: "a", Reason: "frozen"}, {ID: "a/lime/2", Kind: schedule.Lime, Area: "a", Reason: "late"}}}
	is := &schedule.Program{LeftOut: []schedule.LeftOut{{ID: "a/lime/1", Kind: schedule.Lime, Area: "a", Reason: "wet"}, {ID: "a/lime/3", Kind: schedule.Lime, Area: "a", Reason: "late"}}}
	got := schedule.Compare(was, is)
	if len(got) != 1 || got[0].ID != "a/lime/1" || got[0].What != "changed" || got[0].Text != "left out for another reason: wet" {
		t.Errorf("%+v", got)
	}
}

func TestGrassThatHardlyGrowsIsNotFed(t *testing.T) {
	site := situations[0].site(t, "WA", "9a", "bermudagrass")
	p := plan(t, site)
	for _, e := range p.Entries {
		if e.N > 0 {
			t.Errorf("%s brings %.2f lb N", e.ID, float64(e.N))
		}
	}
	if l := leftOut(p, "a/nitrogen/1"); l == nil || !strings.Contains(l.Reason, "never warm enough for nitrogen") {
		t.Errorf("left out: %+v", l)
	}
}

// What a season cannot hold is told once, with what bound it.
func TestShortSeason(t *testing.T) {
	for _, c := range []struct {
		name, state, zone, grass string
		at                       int // of situations
		id, reason               string
	}{
		{"no day left", "ND", "3b", "kentucky bluegrass", 0, "a/nitrogen/2026-4", "0.68 lb N per 1,000 sq ft of the autumn share is left out: the season has room for 2 doses of at most 1 lb N per 1,000 sq ft"},
	} {
		p, err := Program(situations[c.at].site(t, c.state, c.zone, c.grass), []schedule.Done{{Job: "a/nitrogen/1", Area: "a", Date: schedule.Date{Year: 2026, Month: 9, Day: 25}, Missed: true}}, schedule.Date{})
		if err != nil {
			t.Fatal(err)
		}
		told := 0
		for _, l := range p.LeftOut {
			if l.ID == c.id && l.Reason == c.reason {
				told++
			} else if strings.Contains(l.Reason, "is short") {
				t.Errorf("%s: also %s: %s", c.name, l.ID, l.Reason)
			}
		}
		if told != 1 {
			t.Errorf("%s: %s told %d times in %v", c.name, c.id, told, p.LeftOut)
		}
	}
}

// A field of five acres on limy soil is written out in full, without powers of ten.
func TestLargeFiguresAreWrittenInFull(t *testing.T) {
	site := bluegrass(t)
	a := &site.Areas[0]
	a.Size = 217_800
	a.Soil.Calcium = agronomy.Reading{Given: true, PPM: 1830}
	text, err := json.Marshal(plan(t, site))
	if err != nil {
		t.Fatal(err)
	}
	if i := bytes.Index(text, []byte("e+0")); i >= 0 {
		t.Errorf("…%s…", text[max(0, i-80):i+20])
	}
	if !bytes.Contains(text, []byte("217,800 sq ft ÷ 1000")) || !bytes.Contains(text, []byte("1830 ppm")) {
		t.Error("the area or the calcium is not in the working")
	}
}

func TestMixedSeasonsAreTold(t *testing.T) {
	site := bluegrass(t)
	a := &site.Areas[0]
	if p := plan(t, site); strings.Contains(strings.Join(p.Assumptions, "\n"), "mixes seasons") {
		t.Error("one grass mixes seasons")
	}
	warm, ok := agronomy.LookupGrass("zoysiagrass")
	if !ok {
		t.Fatal("no zoysiagrass")
	}
	a.Stand = append(agronomy.Stand{{Grass: warm, Percent: 30}}, agronomy.Share{Grass: a.Stand[0].Grass, Percent: 70})
	want := "Test plot: the stand mixes seasons: its larger part, cool-season grass, sets the calendar, and the other 30 % is fed at its wrong time"
	if p := plan(t, site); !slices.Contains(p.Assumptions, want) {
		t.Errorf("%q", p.Assumptions)
	}
}

// Where lime is due, the program says that the form of a material's nitrogen is not
// known, as the distance between nitrogen and lime depends on it.
func TestTheFormOfNitrogenIsToldBesideLime(t *testing.T) {
	told := func(site *schedule.Site) bool {
		p := plan(t, site)
		i := slices.IndexFunc(p.Entries, func(e schedule.Entry) bool { return e.Kind == schedule.Nitrogen })
		if i < 0 {
			t.Fatal("no nitrogen is planned")
		}
		return slices.ContainsFunc(p.Entries[i].Why, func(r schedule.Reason) bool {
			return strings.Contains(r.Text, "the form of its nitrogen is not given")
		})
	}
	site := bluegrass(t)
	if !told(site) {
		t.Error("not told beside lime")
	}
	site.Areas[0].Soil.PH = 6.5
	if told(site) {
		t.Error("told without lime")
	}
}
