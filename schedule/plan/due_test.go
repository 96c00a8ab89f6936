package plan

import (
	"maps"
	"slices"
	"testing"
	"time"

	"swardbook/schedule"
)

// states gives the state of each job on a day, by its id.
func states(p *schedule.Program, today schedule.Date) map[string]schedule.State {
	out := map[string]schedule.State{}
	for _, e := range p.AsOf(today).Entries {
		out[e.ID] = e.State
	}
	return out
}

// A job that is not on record is due to the end of its window, or until a later line of
// its area: who writes down a later job has done the earlier one, or would have said that
// it was missed.
func TestALaterLineOfTheAreaClosesADueJob(t *testing.T) {
	site := bluegrass(t)
	p := plan(t, site)
	first, second := entry(t, p, "a/nitrogen/2026-2"), entry(t, p, "a/nitrogen/2026-3")
	phosphorus, lime := entry(t, p, "a/phosphorus/2026-1"), entry(t, p, "a/lime/2026-1")
	if !first.Date.Before(lime.Date) || !lime.Date.Before(first.Latest) || second.Date.After(first.Latest) {
		t.Fatalf("nitrogen on %s until %s, lime on %s, nitrogen on %s: the case tells nothing", first.Date, first.Latest, lime.Date, second.Date)
	}
	for day, want := range map[schedule.Date]schedule.State{lime.Date: schedule.Due, first.Latest: schedule.Due, first.Latest.Next(): schedule.Taken} {
		if got := states(p, day)[first.ID]; got != want {
			t.Errorf("with no line the feeding of %s is %s on %s, want %s", first.Date, got, day, want)
		}
	}
	limed := schedule.Done{Line: 2, Date: lime.Date, Area: "a", Job: lime.ID, AsPlanned: true}
	if got := states(plan(t, site, limed), lime.Date)[first.ID]; got != schedule.Taken {
		t.Errorf("limed on %s: the feeding of %s is %s", lime.Date, first.Date, got)
	}
	// A line that names only the kind, on the last day of the window, weeks after the
	// planned day, is about the same job.
	late := schedule.Done{Line: 3, Date: phosphorus.Latest, Area: "a", Job: "phosphorus", AsPlanned: true}
	if e := entry(t, plan(t, site, limed, late), phosphorus.ID); e.State != schedule.Finished || e.Date != phosphorus.Latest {
		t.Errorf("done on %s: %s is %s on %s", phosphorus.Latest, e.ID, e.State, e.Date)
	}
}

// What is left of a job done in part stays due while its window is open, whatever else is
// written down.
func TestTheRestOfAJobStaysDue(t *testing.T) {
	site := bluegrass(t)
	lime := entry(t, plan(t, site), "a/lime/2026-1")
	half := schedule.Done{Line: 2, Date: lime.Date, Area: "a", Job: lime.ID, Share: 0.5}
	fed := schedule.Done{Line: 3, Date: lime.Date.AddDays(14), Area: "a", Job: "a/nitrogen/2026-2", AsPlanned: true}
	if !fed.Date.Before(lime.Latest) {
		t.Fatalf("limed on %s until %s: the case tells nothing", lime.Date, lime.Latest)
	}
	for _, book := range [][]schedule.Done{{half}, {half, fed}} {
		p := plan(t, site, book...)
		if e := entry(t, p, lime.ID); !e.Rest || states(p, fed.Date)[lime.ID] == schedule.Taken || states(p, lime.Latest)[lime.ID] != schedule.Due {
			t.Errorf("%d lines: the rest of %s is %s on %s, %s on %s", len(book), e.Date, states(p, fed.Date)[lime.ID], fed.Date, states(p, lime.Latest)[lime.ID], lime.Latest)
		}
	}
}

// A sample that the program asks for at the start and that was taken five weeks later is
// one sample: none counts as taken on a day on which nobody took one.
func TestASampleTakenLateIsNoSecondOne(t *testing.T) {
	site := bluegrass(t)
	a := &site.Areas[0]
	report := schedule.SoilReport{Soil: a.Soil, Sampled: site.Start.AddDays(33), Received: site.Start.AddDays(36)}
	a.Soil, a.Sampled = nil, schedule.Date{}
	asked := entry(t, plan(t, site), "a/soil-test/1")
	if asked.Date.DaysFrom(report.Sampled) > -22 || asked.Latest.Before(report.Sampled) {
		t.Fatalf("asked for on %s until %s, taken on %s: the case tells nothing", asked.Date, asked.Latest, report.Sampled)
	}
	a.Reports = []schedule.SoilReport{report}
	var samples []schedule.Entry
	for _, e := range plan(t, site).Entries {
		if e.Kind == schedule.SoilTest && !e.Date.After(report.Sampled) {
			samples = append(samples, e)
		}
	}
	if len(samples) != 1 || samples[0].UID != asked.UID || samples[0].Date != report.Sampled || samples[0].State != schedule.Finished {
		t.Errorf("asked for on %s, taken on %s: %+v", asked.Date, report.Sampled, samples)
	}
}

// A due job names the next day on which it can be done: the crew works, and what goes
// down before it is far enough behind. By hand: on Thursday 17 September the next work
// day is Saturday 19; on Thursday 1 October it is Saturday 3, and lime keeps two weeks
// from the phosphorus of that day, until Saturday 17 October.
func TestADueJobNamesItsNextGoodDay(t *testing.T) {
	site := bluegrass(t)
	site.Crew = schedule.Crew{Days: []time.Weekday{time.Saturday, time.Wednesday}}
	for today, want := range map[string]map[string]string{
		"2026-09-17": {"a/phosphorus/2026-1": "2026-09-19", "a/potassium/2026-1": "2026-09-19"},
		"2026-10-01": {"a/phosphorus/2026-1": "2026-10-03", "a/nitrogen/2026-2": "2026-10-03", "a/lime/2026-1": "2026-10-17"},
	} {
		got := map[string]string{}
		for _, e := range plan(t, site).AsOf(mustDate(t, today)).Entries {
			if (e.State == schedule.Due) != !e.GoodDay.IsZero() {
				t.Errorf("%s: %s is %s, next good day %s", today, e.ID, e.State, e.GoodDay)
			}
			if e.State == schedule.Due {
				got[e.ID] = e.GoodDay.String()
			}
		}
		if !maps.Equal(got, want) {
			t.Errorf("%s: %v, want %v", today, got, want)
		}
	}
}

// A line with a wrong year may lie far after the last day: that is no error, and moves
// nothing before it.
func TestALineFarAhead(t *testing.T) {
	site := bluegrass(t)
	site.Through = schedule.Date{}
	last := site.Start.AddDays(700)
	without := programTo(t, site, nil, last)
	for _, year := range []int{2029, 2062, 2100} {
		with := programTo(t, site, []schedule.Done{{Line: 2, Date: schedule.Date{Year: year, Month: 5, Day: 1}, Area: "a", Job: "nitrogen", Material: "blend", Weight: 2}}, last)
		if bad := movedByLater(without, with); len(bad) > 0 {
			t.Errorf("a line of %d: %q", year, bad)
		}
		later := *site
		later.Areas = slices.Clone(site.Areas)
		a := &later.Areas[0]
		a.Reports = append(a.AllReports(), schedule.SoilReport{Soil: a.Soil, Sampled: schedule.Date{Year: year, Month: 5, Day: 1}})
		if bad := movedByLater(without, programTo(t, &later, nil, last)); len(bad) > 0 {
			t.Errorf("a sample of %d: %q", year, bad)
		}
	}
}
