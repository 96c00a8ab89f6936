package plan

import (
	"strings"
	"testing"

	"swardbook/schedule"
)

// The day that the site file asks for stands wherever grass can come up, with the
// odds in the first words of the job; else the job says why not, and moves on. The
// usual times are those of climate.SeedWindow, whose tests hold them to the
// published windows.
func TestTheDayAskedForStandsWhereGrassComesUp(t *testing.T) {
	for _, c := range []struct{ name, state, zone, grass, start, asked, sown, says, not string }{
		{"in the window", "OH", "6a", "tall fescue", "2026-08-01", "2026-09-12", "2026-09-12", "comes up before winter in 99 years of 100 and makes a stand in 94.", "usual"},
		{"too late for a stand", "OH", "6a", "tall fescue", "2026-08-01", "2026-10-10", "2026-10-10", "in 70 years of 100 and makes a stand in 5; the usual time here is 18 Aug to 25 Sep or 21 Mar to 27 May.", "moves"},
		{"in the heat", "OH", "6a", "tall fescue", "2026-06-01", "2026-07-04", "2026-07-04", "The day is outside the usual time here, 18 Aug to 25 Sep or 21 Mar to 27 May; it is left as asked.", "moves"},
		{"too late to come up", "OH", "6a", "tall fescue", "2026-08-01", "2026-10-25", "2027-03-21", "Not on 25 Oct 2026 as asked: sown then, grass comes up before winter in 11 years of 100; it moves to 21 Mar 2027.", "too late for the window"},
		{"on frozen ground", "MN", "4b", "kentucky bluegrass", "2026-12-20", "2027-03-01", "2027-04-06", "Not on 1 Mar 2027 as asked: the ground may be frozen; it moves to 6 Apr 2027.", "27 May 2026"},
		{"in the second window of the program", "OH", "6a", "tall fescue", "2026-08-01", "2027-04-10", "2027-04-10", "", "Sown on"},
		{"warm-season grass in late autumn", "GA", "8a", "bermudagrass", "2026-08-01", "2026-11-25", "2027-05-14", "Not on 25 Nov 2026 as asked: sown then, grass comes up before winter in 0 years of 100", ""},
	} {
		site := situations[3].site(t, c.state, c.zone, c.grass)
		site.Start, site.Areas[0].Seeded = mustDate(t, c.start), mustDate(t, c.asked)
		site.Through = site.Start.AddMonths(12).AddDays(-1)
		p := plan(t, site)
		e := entry(t, p, "a/sow/1")
		if e.Date != mustDate(t, c.sown) || !strings.Contains(e.Summary, c.says) || c.not != "" && strings.Contains(e.Summary+strings.Join(e.BoundBy, " "), c.not) {
			t.Errorf("%s: sown on %s, want %s; %s; bound by %s", c.name, e.Date, c.sown, e.Summary, e.BoundBy)
		}
	}
}

// A crew without time on the day asked for sows within a week of it.
func TestTheCrewMovesASowingByDays(t *testing.T) {
	site := situations[3].site(t, "OH", "6a", "tall fescue")
	site.Start, site.Areas[0].Seeded = mustDate(t, "2026-08-01"), mustDate(t, "2026-10-07")
	site.Crew.Away = []schedule.Span{{From: mustDate(t, "2026-10-06"), To: mustDate(t, "2026-10-09")}}
	if e := entry(t, plan(t, site), "a/sow/1"); e.Date != mustDate(t, "2026-10-05") || !strings.Contains(e.Summary, "Sown on 5 Oct 2026") || !e.LastSafe.IsZero() {
		t.Errorf("sown on %s: %s; last safe %s", e.Date, e.Summary, e.LastSafe)
	}
}

// A sowing has the season of the day that it gets, and so its name, also if the day asked
// for was of the season before: what is asked for before the summer and has to wait for
// its end is the first job of the season that begins with it.
func TestASowingIsOfTheSeasonOfItsDay(t *testing.T) {
	for _, c := range []struct {
		away   schedule.Span
		season int
	}{{schedule.Span{}, 2026}, {schedule.Span{From: mustDate(t, "2027-05-22"), To: mustDate(t, "2027-06-12")}, 2027}} {
		site := sown(t, "OH", "6a", "kentucky bluegrass", "2027-04-20", "2027-06-01")
		if c.away.Days() > 0 {
			site.Crew.Away = []schedule.Span{c.away}
		}
		p := plan(t, site)
		for _, kind := range []schedule.Kind{schedule.Sow, schedule.Starter} {
			all := ofKind(p, kind)
			if len(all) != 1 || all[0].Season != c.season || all[0].ID != schedule.JobID("a", kind, c.season, 1) {
				t.Errorf("away %v: %+v, want one of season %d", c.away, all, c.season)
			}
		}
	}
}
