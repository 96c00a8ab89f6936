package plan

import (
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
	"swardbook/schedule/place"
)

// TestLimitsAtTheirEdges holds what keeps two jobs of an area apart to the
// distances of the trade (agronomy/nutrient, TestCellsSpacing), at the last dose
// that may come together and at the first that may not.
func TestLimitsAtTheirEdges(t *testing.T) {
	area := &schedule.Area{ID: "a", Soil: &agronomy.Report{}}
	bare := &schedule.Area{ID: "b"} // no soil report
	feed := func(kind schedule.Kind, n int, quick, slow, k2o agronomy.PerThousand) schedule.Job {
		m := material.Material{Kind: material.FertilizerMaterial}
		if quick+slow > 0 {
			m.Analysis.N = 20
			m.SlowShare = float64(slow / (quick + slow))
		}
		if k2o > 0 {
			m.Analysis.K2O = 10
		}
		return schedule.Job{Kind: kind, N: n, Area: area, Dose: material.Dose{Material: m, Rate: 5, N: quick + slow, SolubleN: quick, SlowN: slow, K2O: k2o}}
	}
	nitrogen, late, potassium := schedule.Nitrogen, schedule.LateNitrogen, schedule.Potassium
	lime := func(n int) schedule.Job {
		return schedule.Job{Kind: schedule.Lime, N: n, Area: area, Dose: material.Dose{Material: material.Material{Kind: material.LimeMaterial}, Rate: 40}}
	}
	sample := schedule.Job{Kind: schedule.SoilTest, N: 1, Area: area}
	on := func(j schedule.Job, day string) schedule.Job {
		j.On, j.State = mustDate(t, day), schedule.Finished
		return j
	}
	at := func(a *schedule.Area, j schedule.Job) schedule.Job { j.Area = a; return j }
	again := func(j schedule.Job) schedule.Job { j.Again = true; return j }
	tilled := func(j schedule.Job) schedule.Job { j.Tilled = true; return j }
	open := func(j schedule.Job, from, to string) schedule.Job {
		j.Windows = []schedule.Window{{Span: schedule.Span{From: mustDate(t, from), To: mustDate(t, to)}}}
		return j
	}
	notice := func(area *schedule.Area) schedule.Job {
		return schedule.Job{Kind: schedule.LastSafe, N: 1, Area: area}
	}
	const (
		turf  = "Turf should use one feeding before the next; salts add up."
		quick = "more than 1 lb of quick nitrogen may not come together in 30 days"
		much  = "more than 1 lb of potassium (K₂O) may not come together"
		shows = "the retest shows what the lime before it did, and comes before any more"
	)
	for name, c := range map[string]struct {
		a, b          schedule.Job
		ab, ba, order int
		why           string // "" where nothing holds between them
	}{
		"quick nitrogen of 1 lb together":       {feed(nitrogen, 1, 0.5, 0, 0), feed(late, 1, 0.5, 0, 0), 28, 28, 0, turf},
		"quick nitrogen of more together":       {feed(nitrogen, 1, 0.5, 0, 0), feed(late, 1, 0.51, 0, 0), 30, 30, 0, quick},
		"a quick pound and more":                {feed(nitrogen, 1, 1, 0, 0), feed(late, 1, 0.5, 0, 0), 30, 30, 0, quick},
		"more, and a quick pound":               {feed(nitrogen, 1, 0.5, 0, 0), feed(late, 1, 1, 0, 0), 30, 30, 0, quick},
		"more than a quick pound, and none":     {feed(nitrogen, 1, 1.2, 0, 0), feed(late, 1, 0, 1, 0), 28, 42, 0, turf},
		"a slow one first":                      {feed(nitrogen, 1, 0, 1, 0), feed(late, 1, 0.7, 0, 0), 42, 28, 0, turf},
		"a slow one second":                     {feed(nitrogen, 1, 0.7, 0, 0), feed(late, 1, 0, 1, 0), 28, 42, 0, turf},
		"quick parts of slow ones":              {feed(nitrogen, 1, 0.7, 0.7, 0), feed(late, 1, 0.7, 0.7, 0), 42, 42, 0, turf},
		"potassium of 1 lb together":            {feed(nitrogen, 1, 0, 1, 0.4), feed(potassium, 1, 0, 0, 0.6), 0, 0, 0, ""},
		"potassium of more together":            {feed(nitrogen, 1, 0, 1, 0.4), feed(potassium, 1, 0, 0, 0.61), 7, 7, 0, much},
		"potassium of more, 28 days apart":      {feed(nitrogen, 1, 0, 1, 0.6), feed(potassium, 1, 0, 0, 0.6), 28, 28, 0, turf},
		"a little potassium with a feeding":     {feed(nitrogen, 1, 0, 1, 0.49), feed(potassium, 1, 0, 0, 0.3), 0, 0, 0, ""},
		"two of a kind":                         {feed(potassium, 1, 0, 0, 0.2), feed(potassium, 2, 0, 0, 0.2), 28, 28, 1, turf},
		"two of a kind, the later number first": {feed(potassium, 2, 0, 0, 0.2), feed(potassium, 1, 0, 0, 0.2), 28, 28, -1, turf},
		"two of a kind, by their windows":       {open(feed(potassium, 2, 0, 0, 0.2), "2026-09-01", "2026-09-30"), open(feed(potassium, 1, 0, 0, 0.2), "2026-10-01", "2026-10-31"), 28, 28, 1, turf},
		"two of a kind, windows turned round":   {open(feed(potassium, 1, 0, 0, 0.2), "2026-10-01", "2026-10-31"), open(feed(potassium, 2, 0, 0, 0.2), "2026-09-01", "2026-09-30"), 28, 28, -1, turf},
		"two of a kind, windows that meet":      {open(feed(potassium, 2, 0, 0, 0.2), "2026-09-01", "2026-10-01"), open(feed(potassium, 1, 0, 0, 0.2), "2026-10-01", "2026-10-31"), 28, 28, -1, turf},
		"two of a kind, the first has a window": {open(feed(potassium, 1, 0, 0, 0.2), "2026-10-01", "2026-10-31"), feed(potassium, 2, 0, 0, 0.2), 28, 28, 1, turf},
		"two of a kind, the other has one":      {feed(potassium, 1, 0, 0, 0.2), open(feed(potassium, 2, 0, 0, 0.2), "2026-09-01", "2026-09-30"), 28, 28, 1, turf},
		"two of a kind, one of them on record":  {feed(nitrogen, 2, 0.7, 0, 0), on(feed(nitrogen, 1, 0.7, 0, 0), "2026-09-01"), 30, 30, 0, quick},
		"two of a kind that put nothing down":   {schedule.Job{Kind: nitrogen, N: 1, Area: area}, schedule.Job{Kind: nitrogen, N: 2, Area: area}, 1, 1, 1, "jobs of one kind follow each other"},
		"lime twice":                            {lime(1), lime(2), 90, 90, 1, "Lime at the surface needs months to react; published intervals run from one to six months."},
		"lime and ammonium":                     {lime(1), feed(nitrogen, 1, 0.7, 0, 0), 14, 7, 0, "Fresh lime turns ammonium and urea into ammonia gas."},
		"ammonium and lime":                     {feed(nitrogen, 1, 0.7, 0, 0), lime(1), 7, 14, 0, "Fresh lime turns ammonium and urea into ammonia gas."},
		"lime and ammonium, both tilled in":     {tilled(lime(1)), tilled(feed(nitrogen, 1, 0.7, 0, 0)), 0, 0, 0, ""},
		"lime and ammonium, one tilled in":      {tilled(lime(1)), feed(nitrogen, 1, 0.7, 0, 0), 14, 7, 0, "Fresh lime turns ammonium and urea into ammonia gas."},
		"a sample and lime":                     {sample, lime(1), 14, 180, 0, shows},
		"lime and a sample":                     {lime(1), sample, 180, 14, 0, shows},
		"a sample and lime on top of lime":      {sample, again(lime(1)), 14, 180, 1, shows},
		"lime on top of lime and a sample":      {again(lime(1)), sample, 180, 14, -1, shows},
		"a sample and lime that is down":        {sample, on(again(lime(1)), "2026-09-01"), 14, 180, 0, shows},
		"a first sample and lime":               {at(bare, sample), at(bare, lime(1)), 14, 180, 1, "the sample comes before lime"},
		"lime and a first sample":               {at(bare, lime(1)), at(bare, sample), 180, 14, -1, "the sample comes before lime"},
		"a first sample and feed":               {at(bare, sample), at(bare, feed(nitrogen, 1, 0.7, 0, 0)), 0, 42, 1, "the sample comes before anything is spread"},
		"feed and a first sample":               {at(bare, feed(nitrogen, 1, 0.7, 0, 0)), at(bare, sample), 42, 0, -1, "the sample comes before anything is spread"},
		"a sample and feed":                     {sample, feed(nitrogen, 1, 0.7, 0, 0), 0, 42, 0, "Fertilizer still lying in the soil would be read as fertility."},
		"a first sample and feed that is down":  {at(bare, sample), at(bare, on(feed(nitrogen, 1, 0.7, 0, 0), "2026-09-01")), 0, 42, 0, "Fertilizer still lying in the soil would be read as fertility."},
		"a sample and potassium":                {sample, feed(potassium, 1, 0, 0, 0.6), 14, 42, 0, "Fertilizer still lying in the soil would be read as fertility."},
		"potassium and a sample":                {feed(potassium, 1, 0, 0, 0.6), sample, 42, 14, 0, "Fertilizer still lying in the soil would be read as fertility."},
		"a sample and potassium that is down":   {sample, on(feed(potassium, 1, 0, 0, 0.6), "2026-09-01"), 0, 42, 0, "Fertilizer still lying in the soil would be read as fertility."},
		"a sample and gypsum":                   {sample, schedule.Job{Kind: schedule.Gypsum, N: 1, Area: area, Dose: material.DoseOf(material.Material{Kind: material.GypsumMaterial}, 20)}, 14, 0, 0, "the answer to the sample decides first"},
		"a notice and a first sample":           {notice(bare), at(bare, sample), 0, 0, 0, ""},
		"two that are down":                     {on(lime(1), "2026-09-01"), on(lime(2), "2026-09-02"), 0, 0, 0, ""},
		"two areas":                             {lime(1), at(bare, lime(1)), 0, 0, 0, ""},
		"the site as a whole":                   {notice(nil), notice(nil), 0, 0, 0, ""},
	} {
		got := limitsBetween([]*schedule.Job{{Kind: schedule.Reopen}, &c.a, &c.b})
		if c.why == "" {
			if len(got) != 0 {
				t.Errorf("%s: %+v, want no limit", name, got)
			}
			continue
		}
		want := limit{Limit: place.Limit{A: 1, B: 2, AThenB: c.ab, BThenA: c.ba, Order: c.order}, why: c.why}
		if len(got) != 1 || got[0] != want {
			t.Errorf("%s: %+v, want %+v", name, got, want)
		}
	}
}
