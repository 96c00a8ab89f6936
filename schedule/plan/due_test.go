package plan

import (
	"testing"

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

// A job that is not on record stays due to the end of its window, whatever else of its
// area is written down meanwhile, but for a later job of its own kind.
func TestALineAboutAnotherJobLeavesADueJobDue(t *testing.T) {
	site := bluegrass(t)
	p := plan(t, site)
	first, second := entry(t, p, "a/nitrogen/2026-2"), entry(t, p, "a/nitrogen/2026-3")
	phosphorus, lime := entry(t, p, "a/phosphorus/2026-1"), entry(t, p, "a/lime/2026-1")
	if !first.Date.Before(lime.Date) || !lime.Date.Before(first.Latest) || second.Date.After(first.Latest) {
		t.Fatalf("nitrogen on %s until %s, lime on %s, nitrogen on %s: the case tells nothing", first.Date, first.Latest, lime.Date, second.Date)
	}
	limed := schedule.Done{Line: 2, Date: lime.Date, Area: "a", Job: lime.ID, AsPlanned: true}
	p = plan(t, site, limed)
	for day, want := range map[schedule.Date]schedule.State{lime.Date: schedule.Due, first.Latest: schedule.Due, first.Latest.Next(): schedule.Taken} {
		if got := states(p, day)[first.ID]; got != want {
			t.Errorf("limed on %s: the feeding of %s is %s on %s, want %s", lime.Date, first.Date, got, day, want)
		}
	}
	fed := schedule.Done{Line: 3, Date: second.Date, Area: "a", Job: second.ID, AsPlanned: true}
	if got := states(plan(t, site, limed, fed), second.Date); got[first.ID] != schedule.Taken || got[phosphorus.ID] != schedule.Due {
		t.Errorf("the second feeding is on record, the first is %s, and phosphorus %s", got[first.ID], got[phosphorus.ID])
	}
	// Written down by its kind alone on its last day, weeks after its own, it is the same job.
	late := schedule.Done{Line: 3, Date: phosphorus.Latest, Area: "a", Job: "phosphorus", AsPlanned: true}
	if e := entry(t, plan(t, site, limed, late), phosphorus.ID); e.State != schedule.Finished || e.Date != phosphorus.Latest {
		t.Errorf("done on %s: %s is %s on %s", phosphorus.Latest, e.ID, e.State, e.Date)
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
