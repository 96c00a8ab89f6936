package plan

import (
	"testing"

	"swardbook/schedule"
)

// A job planned for a day before an awaited answer is not taken as done before that
// answer comes: until then it is planned or due as any other, its bag is to be bought,
// and the ledger counts it as to come.
func TestJobBeforeAnAwaitedAnswer(t *testing.T) {
	site := lawn(t, "kentucky bluegrass", 3000, 60, 200)
	site.Start = mustDate(t, "2026-08-25")
	site.Areas[0].Sampled, site.Areas[0].Received = mustDate(t, "2026-08-20"), mustDate(t, "2026-09-28")
	p := plan(t, site)
	e := entry(t, p, "a/nitrogen/2026-1")
	if !e.Date.Before(site.Areas[0].Received) || e.Latest.Before(site.Areas[0].Received) {
		t.Fatalf("the first feeding is on %s, its window ends on %s", e.Date, e.Latest)
	}
	for _, row := range []struct {
		today schedule.Date
		want  schedule.State
		note  string
	}{
		{site.Start, schedule.Planned, ""},
		{e.Date, schedule.Due, ""},
		{site.Areas[0].Received.AddDays(-1), schedule.Due, ""},
		{site.Areas[0].Received, schedule.Taken, "not on record: taken as done as planned"},
	} {
		if e.Date == site.Start && row.want == schedule.Planned {
			continue
		}
		now := p.AsOf(row.today)
		is := entry(t, now, e.ID)
		if is.State != row.want || is.Note != row.note {
			t.Errorf("on %s the feeding is %s (%q), want %s", row.today, is.State, is.Note, row.want)
		}
		needs := false
		for _, s := range now.Supplies() {
			for _, u := range s.Uses {
				needs = needs || u.Job == e.ID
			}
		}
		if needs != (row.want != schedule.Taken) {
			t.Errorf("on %s its bag is counted: %v", row.today, needs)
		}
	}
}

// A starter goes down with the seed: while the sowing is due it is due as well, and taken
// as done no sooner, whatever answer comes between; also where the program is cut to it.
func TestStarterWaitsForTheSeed(t *testing.T) {
	for name, answer := range map[string]string{"no answer": "", "an answer": "2026-04-24"} {
		site := sown(t, "MD", "7a", "tall fescue", "2026-04-08", "2026-04-20")
		if answer != "" {
			site.Areas[0].Sampled, site.Areas[0].Received = mustDate(t, "2026-04-01"), mustDate(t, answer)
		}
		p := plan(t, site)
		sow := entry(t, p, "a/sow/1")
		starter := entry(t, p, "a/starter/1")
		if starter.Date != sow.Date || !sow.Latest.After(sow.Date.AddDays(5)) {
			t.Fatalf("%s: the starter on %s, the sowing from %s to %s", name, starter.Date, sow.Date, sow.Latest)
		}
		for day, want := range map[schedule.Date]schedule.State{
			sow.Date.AddDays(-1): schedule.Planned,
			sow.Date:             schedule.Due,
			sow.Date.Next():      schedule.Due,
			sow.Date.AddDays(5):  schedule.Due,
			sow.Latest:           schedule.Due,
			sow.Latest.Next():    schedule.Taken,
		} {
			cut := p.Settled(day).Filter("", "", []schedule.Kind{schedule.Starter})
			for what, now := range map[string]*schedule.Entry{"whole": entry(t, p.AsOf(day), starter.ID), "cut": entry(t, cut.AsOf(day), starter.ID)} {
				if now.State != want || want == schedule.Due && (day != sow.Date && now.Latest != sow.Latest || now.Note != "") {
					t.Errorf("%s, %s, on %s: the starter is %s until %s (%q), want %s", name, what, day, now.State, now.Latest, now.Note, want)
				}
			}
		}
	}
}
