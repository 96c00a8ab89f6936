package plan

import (
	"math"
	"strings"
	"testing"

	"swardbook/schedule"
)

// Once the days for the rest of a job are over, the job is what the record book says of
// it: done, with what went down, whatever line comes in a later season. The rest is neither done nor
// taken as done, and the ledger counts none of it.
func TestTheRestOfAJobIsNeverDown(t *testing.T) {
	site := bluegrass(t)
	whole := entry(t, plan(t, site), "a/lime/1")
	part := schedule.Done{Line: 2, Date: whole.Date, Area: "a", Job: "lime/2026-1", Material: whole.Material, Weight: whole.Pounds / 4}
	later := schedule.Done{Line: 3, Date: mustDate(t, "2027-09-10"), Area: "a", Job: "nitrogen", Material: "trade-urea", Weight: 5}
	for name, book := range map[string][]schedule.Done{"no other line": {part}, "a later line": {part, later}} {
		p := plan(t, site, book...)
		if rest := entry(t, p, whole.ID); !rest.Rest || math.Abs(float64(rest.Pounds-whole.Pounds*3/4)) > 0.5 {
			t.Fatalf("%s: the rest is %.2f of %.2f lb", name, rest.Pounds, whole.Pounds)
		}
		today := later.Date.Next()
		e := entry(t, p.AsOf(today), whole.ID)
		if e.State != schedule.Finished || e.Rest || math.Abs(float64(e.Pounds-part.Weight)) > 0.01 || e.Date != part.Date {
			t.Errorf("%s: %s on %s, %.2f lb, want %.2f lb done", name, e.State, e.Date, e.Pounds, part.Weight)
		}
		for _, j := range p.Roster(today).Nobody {
			if j.ID == whole.ID && (j.Title != e.Title || j.State != string(schedule.Finished)) {
				t.Errorf("%s: the roster has %q %s", name, j.Title, j.State)
			}
		}
		for _, area := range p.Ledger(today).Areas {
			for _, x := range area.Lines {
				if x.Job == whole.ID && (x.State != schedule.OnRecord || math.Abs(float64(x.Lime-whole.Rate/4)) > 0.01) {
					t.Errorf("%s: the ledger has %.2f lb of lime %s", name, x.Lime, x.State)
				}
			}
		}
	}
}

// What is left of a job says what it brings itself, once, however often it is planned anew.
func TestTheRestSaysWhatItBrings(t *testing.T) {
	site := lawn(t, "kentucky bluegrass", 6000, 24, 95)
	a := &site.Areas[0]
	a.Sampled, a.Received = mustDate(t, "2026-08-20"), mustDate(t, "2026-09-10")
	whole := entry(t, plan(t, site), "a/nitrogen/2026-1")
	half := schedule.Done{Line: 2, Date: mustDate(t, "2026-09-04"), Area: "a", Job: whole.ID, Share: 0.5}
	rest := entry(t, plan(t, site, half), whole.ID)
	if !rest.Rest || rest.Rate > 0.6*whole.Rate {
		t.Fatalf("%s: %.2f of %.2f lb", rest.Title, float64(rest.Rate), float64(whole.Rate))
	}
	if brings := "This brings " + site.Measure().Brings(rest.Dose); strings.Count(rest.Because, "This brings") != 1 || !strings.Contains(rest.Because, brings) {
		t.Errorf("%q, want %q once", rest.Because, brings)
	}
}
